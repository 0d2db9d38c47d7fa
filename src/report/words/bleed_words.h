#ifndef FIRMPEDAL_REPORT_WORDS_BLEED_WORDS_H
#define FIRMPEDAL_REPORT_WORDS_BLEED_WORDS_H

#include "advice/result.h"

/* Words about the bleed plan that text, sheet and the small screen share. */

/* The heading that begins at this step of the plan, or NULL when the step goes on under the one
 * before: the master, what lies upstream of the wheels, then each circuit. */
const char *bleed_stage(struct arena *arena, const struct result *result, size_t at);

/* "rear left drum, outer nipple" of a step; the part's name when it is about no nipple. */
const char *bleed_step_name(struct arena *arena, const struct result *result,
                            const struct step *step);
/* What else is open at the same time: "together with the rear right drum", or NULL. */
const char *bleed_with_words(struct arena *arena, const struct result *result,
                             const struct step *step);

/* "120 mL", "-" when not known; imperial: "120 mL (4.06 US fl oz)", as tins and jars are marked. */
const char *bleed_volume(struct arena *arena, const struct result *result, double m3);
/* Whether a step draws off a volume of its own; a nipple that comes up once more does not. */
bool bleed_draws(const struct step *step);
/* What is said of a step whose air does not come, by the simulation. */
extern const char bleed_gave_up[];
/* "7", "-" when not known; whole strokes, upwards. */
const char *bleed_strokes(struct arena *arena, double strokes);
/* "45 s", "4 min", "1.5 h"; none when it does not run at all (NaN). */
const char *bleed_time(struct arena *arena, double seconds, const char *none);
/* Strokes of this step after which to top up: every 4 where the reservoir's size is not known
 * (common practice, no source); 0: not during it. */
int bleed_top_up_every(const struct step *step);
/* When to top up at this step: "every 5 strokes", "not during it"; before it is half empty where
 * nobody counts strokes. */
const char *bleed_top_up(struct arena *arena, const struct bleed_plan *plan,
                         const struct step *step);

/* The way the plan counts on, in words: "pedal with a helper, nipple shut before the pedal comes
 * back up". NULL when the plan has no verdicts. */
const char *bleed_method_words(const struct bleed_plan *plan);
/* How each nipple is gone about, in a sentence or two; by the pedal or by the plan's other way. */
const char *bleed_how(struct arena *arena, const struct bleed_plan *plan);
/* The same in few words, for the small screen. */
const char *bleed_how_short(struct arena *arena, const struct bleed_plan *plan);
/* What the volumes of a step mean. */
const char *bleed_amount_words(const struct bleed_plan *plan);
/* A reason for or against a method with its quantities filled in. */
const char *bleed_note_words(struct arena *arena, const struct result *result,
                             const struct method_note *note);
/* "rear left drum, rear right drum, front ..." */
const char *bleed_order_words(struct arena *arena, const struct result *result,
                              const struct nipple *order, int count);

/* The costs of orders that were worked out, in the order in which they are shown. */
struct bleed_cost_row {
    const char *id;   /* "planned" */
    const char *name; /* "this plan" */
    const struct order_cost *cost;
};
enum { BLEED_MOST_COSTS = 6 };
/* That all orders cost the same; NULL: they differ, or there is no other to compare with. */
const char *bleed_same_cost_words(struct arena *arena, const struct result *result);
/* What to have ready of fluid; NULL where it is not known. */
const char *bleed_fluid_words(struct arena *arena, const struct result *result);
/* What "0.00 mL left" means. */
extern const char bleed_ideal[];
int bleed_cost_rows(const struct bleed_plan *plan, struct bleed_cost_row rows[BLEED_MOST_COSTS]);
/* A sentence where the lengths of some ways are missing and the simulation takes usual ones, or
 * NULL. */
const char *bleed_guess_words(const struct bleed_plan *plan);
/* What the same order costs by the other practice: "nipples shut early". */
const char *bleed_other_words(const struct bleed_plan *plan);
/* The order of a row that comes after the plan's, or how it stands to the plan. */
const char *bleed_cost_words(struct arena *arena, const struct result *result,
                             const struct bleed_cost_row *row);

/* The same of a row of a table: "49 mL *", "clear", "no bubbles"; "8", "3 to 5", "-"; "every 7",
 * "-". */
const char *bleed_amount_short(struct arena *arena, const struct result *result,
                               const struct step *step);
/* What stands above a column of them. */
const char *bleed_amount_head(const struct result *result);
const char *bleed_strokes_short(struct arena *arena, const struct result *result,
                                const struct step *step);
const char *bleed_top_up_short(struct arena *arena, const struct result *result,
                               const struct step *step);
/* Nipples that stay shut, "a, b"; "" where there are none. */
const char *bleed_untouched_words(struct arena *arena, const struct result *result);

#endif
