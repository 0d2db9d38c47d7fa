#ifndef FIRMPEDAL_REPORT_WORDS_PLAN_WORDS_H
#define FIRMPEDAL_REPORT_WORDS_PLAN_WORDS_H

#include "advice/result.h"

/* Words about joints, parts and steps of the plan that screen and paper share. */

/* What a step says in short, with the one of the other side that says the same; that one is then
 * done. done: by index in the plan. */
const char *plan_brief(struct arena *arena, const struct result *result, size_t at, bool *done);
/* "12 to 18 N m", "maker's" */
const char *plan_torque_words(struct arena *arena, const struct plan_joint *joint,
                              enum unit_system units);
/* "front left pipe at the front left hose" */
const char *plan_joint_words(const struct result *result, struct arena *arena,
                             const struct plan_joint *joint);
/* "22.22 mm (7/8 in)", "" where it is not known */
const char *plan_bore_words(struct arena *arena, struct length bore, enum unit_system units);
/* Whether something about a part is written down or ticked: a bore, a filling at the bench. */
bool plan_part_has_row(const struct plan_part *part);

#endif
