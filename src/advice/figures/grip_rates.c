#include "advice/figures/grip_rates.h"

#include <math.h>

#define LEAST_RATE 0.10
#define STEP       0.05
#define ORDER_FROM 0.15
#define EASED_FROM 0.30
#define EASED_TO   0.45
#define EASED_BY   0.05
#define BAND_FROM  0.2
#define BAND_TO    0.8
#define BAND_BASE  0.1
#define ROUNDING   1e-6 /* of a rate that was searched for */

void grip_rates(const struct system *system, const struct network *network, struct solution *room,
                struct grip_use uses[GRIP_RATES])
{
    struct state state = state_usual();
    for (int i = 0; i < GRIP_RATES; i++)
        uses[i] = grip_use_at(system, network, &state, LEAST_RATE + STEP * i, room);
}

double grip_order_spare(const struct grip_use *use, enum grip_order order)
{
    if (!(use->z > ORDER_FROM - ROUNDING))
        return NAN;
    double strict = use->front - use->rear;
    bool eased = order == GRIP_ORDER_71_320 && use->z > EASED_FROM - ROUNDING &&
                 use->z < EASED_TO + ROUNDING;
    return eased ? fmax(strict, use->z + EASED_BY - use->rear) : strict;
}

double grip_band_least(double grip, double slope)
{
    return BAND_BASE + slope * (grip - BAND_FROM);
}

double grip_band_spare(const struct grip_use *use, double slope)
{
    double grip = fmax(use->front, use->rear);
    return grip >= BAND_FROM && grip <= BAND_TO ? use->z - grip_band_least(grip, slope) : NAN;
}
