#ifndef FIRMPEDAL_ADVICE_BLEEDING_BLEED_DETAILS_H
#define FIRMPEDAL_ADVICE_BLEEDING_BLEED_DETAILS_H

#include "advice/bleeding/bleed_nets.h"

/* Fills the details of the bleeding steps, and the steps' own volumes and strokes, from a run of
 * the simulation over them; and the curve of the plan, circuit by circuit as the steps go. */
void bleed_details_fill(const struct bleed_nets *nets, const struct bleed_set *set,
                        struct bleed_plan *plan, struct arena *arena);

/* Pedal travel that air takes which stays in a circuit, with the pedal hard: ratio times the air's
 * loss of volume at 50 bar over the master's area, m; NaN when it is not known. */
struct length bleed_air_at_pedal(const struct system *system, const struct circuit *circuit,
                                 struct volume air);

#endif
