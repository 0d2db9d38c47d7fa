#ifndef FIRMPEDAL_ADVICE_BLEEDING_TOUCHED_H
#define FIRMPEDAL_ADVICE_BLEEDING_TOUCHED_H

#include "advice/bleeding/bleed_scope.h"
#include "advice/common/phrases.h"

/* What the work has to do with: steps and tests are about this and nothing else of the car. Without
 * a work file it is the whole car. */
struct touched {
    bool *part; /* by part index: on a circuit that is bled, or feeding one; a servo, or a master
                 * and its pedal, that was off */
    bool *bled; /* by part index: a brake or clutch slave that air or old fluid is let out of */
    bool brakes, clutch; /* a brake circuit, a clutch circuit is among them */
};
struct touched touched_by(const struct system *system, const struct network *network,
                          const struct bleed_set *set, struct arena *arena);

/* The names of the touched pedals and levers in running words; "pedal" where none is described. */
const char *pedal_names(const struct system *system, const struct touched *touched,
                        struct arena *arena);
/* Whether a part is a caliper that stays, is bled, whose pistons move and whose nipple opens, as
 * far as is known: its pistons are pushed home before anything is undone. */
bool pistons_go_home(const struct part *part, bool bled);
/* Names of these, bled by part index. */
struct name_list pistons_to_go_home(const struct system *system, const bool *bled,
                                    struct arena *arena);
/* The direct servo that helps a pedal, -1. */
int servo_of_pedal(const struct system *system, int pedal);
/* Whether a hand brake works one of the brakes for which take is true, by part index. */
bool parking_works_any(const struct system *system, int parking, const bool *take);

#endif
