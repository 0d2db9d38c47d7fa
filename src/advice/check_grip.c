#include "advice/checks.h"

#include <math.h>

#include "physics/grip_use.h"

/* Braking rates at which the curves are looked at: 0.10, 0.15 to 0.80. */
enum { RATES = 15 };
#define LEAST_RATE 0.10
#define STEP       0.05
/* The order of the axles is asked for from here on, the band within these grips. */
#define ORDER_FROM 0.15
#define BAND_FROM  0.2
#define BAND_TO    0.8
#define BAND_BASE  0.1

/* The use of grip over the braking rates; false for a motorcycle, whose rider works the wheels one
 * by one, and where it is not known. */
static bool curves(const struct checking *checking, struct grip_use uses[RATES])
{
    if (system_vehicle(checking->system)->type == VEHICLE_MOTORCYCLE ||
        figure_about(checking, "grip-used-front", -1) == NULL ||
        figure_about(checking, "grip-used-rear", -1) == NULL)
        return false;
    struct solution *room = solution_room(checking->system, checking->network, checking->arena);
    struct state state = state_usual();
    for (int i = 0; i < RATES; i++)
        uses[i] =
            grip_use_at(checking->system, checking->network, &state, LEAST_RATE + STEP * i, room);
    return true;
}

void check_grip_order(struct checking *checking, const struct check_row *row)
{
    struct grip_use uses[RATES];
    if (!curves(checking, uses))
        return;
    double from = NAN, to = NAN;
    for (int i = 0; i < RATES; i++) {
        if (!(uses[i].z > ORDER_FROM - STEP / 2) ||
            !(uses[i].front - uses[i].rear < limit_value(row->limit)))
            continue;
        from = isnan(from) ? uses[i].z : from;
        to = uses[i].z;
    }
    if (isnan(from))
        return;
    struct finding *finding = finding_add(checking, row, -1, NO_FIELD);
    finding_quantity(finding, "from", from, DIMENSION_NUMBER);
    finding_quantity(finding, "to", to, DIMENSION_NUMBER);
    finding_rests_on(finding, figure_about(checking, "grip-used-front", -1));
    finding_rests_on(finding, figure_about(checking, "grip-used-rear", -1));
}

/* The least rate that the band asks for on a road of that grip. */
static double asked(double grip, double slope)
{
    return BAND_BASE + slope * (grip - BAND_FROM);
}

void check_grip_band(struct checking *checking, const struct check_row *row)
{
    struct grip_use uses[RATES];
    if (!curves(checking, uses))
        return;
    double slope = limit_value(row->limit), worst = INFINITY;
    const struct grip_use *at = NULL;
    for (int i = 0; i < RATES; i++) {
        double grip = fmax(uses[i].front, uses[i].rear);
        double spare = uses[i].z - asked(grip, slope);
        if (grip >= BAND_FROM && grip <= BAND_TO && spare < 0 && spare < worst) {
            worst = spare;
            at = &uses[i];
        }
    }
    if (at == NULL)
        return;
    double grip = fmax(at->front, at->rear);
    struct finding *finding = finding_add(checking, row, -1, NO_FIELD);
    finding_quantity(finding, "grip", grip, DIMENSION_NUMBER);
    finding_quantity(finding, "rate", at->z, DIMENSION_NUMBER);
    finding_quantity(finding, "least", asked(grip, slope), DIMENSION_NUMBER);
    finding_rests_on(finding, figure_about(checking, "grip-used-front", -1));
    finding_rests_on(finding, figure_about(checking, "grip-used-rear", -1));
}
