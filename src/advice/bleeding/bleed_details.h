#ifndef FIRMPEDAL_ADVICE_BLEEDING_BLEED_DETAILS_H
#define FIRMPEDAL_ADVICE_BLEEDING_BLEED_DETAILS_H

#include "advice/bleeding/bleed_nets.h"

/* Fills the details of the bleeding steps, and the steps' own volumes and strokes, from a run of
 * the simulation over them; and the curve of the plan, circuit by circuit as the steps go. */
void bleed_details_fill(const struct bleed_nets *nets, const struct bleed_set *set,
                        struct bleed_plan *plan, struct arena *arena);

/* Pedal travel that air takes which stays at a vertex of a circuit, with the pedal hard: 50 bar at
 * the master, and there what valves and a remote servo with its vacuum make of it. Ratio times the
 * air's loss of volume over the master's area, m; beyond a remote servo times the part of its
 * piston's area before it. NaN when it is not known. */
struct length bleed_air_at_pedal(const struct bleed_nets *nets, int vertex, struct volume air);

#endif
