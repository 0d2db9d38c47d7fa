#include "report/words/plan_words.h"

#include <math.h>
#include <string.h>

#include "base/text.h"
#include "report/words/pair_words.h"
#include "report/words/step_words.h"
#include "units/unit.h"

const char *plan_brief(struct arena *arena, const struct result *result, size_t at, bool *done)
{
    const struct steps *steps = &result->plan->steps;
    const struct part *parts = result->system->parts;
    const struct step *step = &steps->items[at];
    const char *words = step_brief(arena, result, step);
    for (size_t i = at + 1; i < steps->count && step->part >= 0; i++) {
        const struct step *other = &steps->items[i];
        if (other->row != step->row || other->part < 0 || done[i])
            continue;
        const char *one = parts[step->part].name, *two = parts[other->part].name;
        const char *pair = pair_words(arena, one, two);
        if (pair == NULL ||
            strcmp(words_renamed(arena, words, one, two), step_brief(arena, result, other)) != 0)
            continue;
        done[i] = true;
        return words_renamed(arena, words, one, pair);
    }
    return words;
}

const char *plan_torque_words(struct arena *arena, const struct plan_joint *joint,
                              enum unit_system units)
{
    if (isnan(joint->least.nm))
        return "maker's";
    const char *least = unit_text(arena, joint->least.nm, DIMENSION_TORQUE, units);
    if (isnan(joint->most.nm) || joint->most.nm == joint->least.nm)
        return least;
    return text_print(arena, "%s to %s",
                      unit_show(arena, joint->least.nm, DIMENSION_TORQUE, units).number,
                      unit_text(arena, joint->most.nm, DIMENSION_TORQUE, units));
}

const char *plan_joint_words(const struct result *result, struct arena *arena,
                             const struct plan_joint *joint)
{
    const struct part *parts = result->system->parts;
    return text_print(arena, "%s at the %s", parts[joint->part].name, parts[joint->at].name);
}

const char *plan_bore_words(struct arena *arena, struct length bore, enum unit_system units)
{
    return isnan(bore.m) ? "" : unit_show_bore(arena, bore.m, units);
}

bool plan_part_has_row(const struct plan_part *part)
{
    return !isnan(part->old_bore.m) || !isnan(part->new_bore.m) || part->fill >= 0;
}
