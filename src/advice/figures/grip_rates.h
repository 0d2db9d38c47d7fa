#ifndef FIRMPEDAL_ADVICE_FIGURES_GRIP_RATES_H
#define FIRMPEDAL_ADVICE_FIGURES_GRIP_RATES_H

#include "physics/grip_use.h"

/* The use of grip over the braking rates that the rules speak of, and what they ask of it. */

enum { GRIP_RATES = 15 }; /* 0.10, 0.15 to 0.80 of gravity */

/* Fills the uses at those rates, with everything working; NaN at a rate that is not reached. */
void grip_rates(const struct system *system, const struct network *network, struct solution *room,
                struct grip_use uses[GRIP_RATES]);

/* Which lock order: UN Regulation No. 13-H, annex 5, 3.1 (from memory), the front wheels ask for
 * more grip than the rear ones from 0.15 to 0.8; or Directive 71/320/EEC (read), where from 0.3 to
 * 0.45 the rear ones may ask for more, up to the rate + 0.05. */
enum grip_order { GRIP_ORDER_13H, GRIP_ORDER_71_320 };

/* By how much a rate keeps the order, below 0 where it does not; NaN for a rate not asked about. */
double grip_order_spare(const struct grip_use *use, enum grip_order order);

/* By how much the rate is above the least for its grip, 0.1 + slope * (grip - 0.2), for a grip of
 * 0.2 to 0.8; NaN outside. Source: as above, from memory. */
double grip_band_spare(const struct grip_use *use, double slope);
double grip_band_least(double grip, double slope);

#endif
