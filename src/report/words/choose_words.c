#include "report/words/choose_words.h"

#include <math.h>

#include "advice/common/bores.h"
#include "advice/figures/part_bore.h"
#include "base/text.h"
#include "report/words/pair_words.h"
#include "report/words/words.h"
#include "units/unit.h"

enum { MOST_NEEDS = 3 };

const char *choose_axis_words(struct arena *arena, const struct result *result, int axis)
{
    const struct bore_axis *of = &result->chosen->asked->axes[axis];
    const struct part *parts = result->system->parts;
    const char *one = parts[of->parts[0]].name;
    if (of->part_count < 2)
        return one;
    const char *pair = pair_words(arena, one, parts[of->parts[1]].name);
    return pair != NULL ? pair : text_print(arena, "%s and %s", one, parts[of->parts[1]].name);
}

const char *choose_bore_words(struct arena *arena, const struct result *result,
                              const struct choice_car *car, int axis)
{
    const struct bore_axis *of = &result->chosen->asked->axes[axis];
    struct length bore = car->at[axis] < 0 ? part_bore(&result->system->parts[of->parts[0]])
                                           : of->bores[car->at[axis]];
    const struct bore_row *nearest = bore_nearest(bore);
    return nearest != NULL && fabs(nearest->bore.m - bore.m) < 5e-6
               ? nearest->name
               : unit_show_bore(arena, bore.m, result->units);
}

/* The limit that most cars break alone; of none alone, the one that most break. */
static int first_obstacle(const struct choice_group *group)
{
    int first = 0;
    for (int limit = 1; limit < CHOICE_LIMITS; limit++)
        if (group->alone[limit] > group->alone[first] ||
            (group->alone[limit] == group->alone[first] &&
             group->broken[limit] > group->broken[first]))
            first = limit;
    return first;
}

const char *choose_headline(struct arena *arena, const struct result *result,
                            const struct choice_group *group)
{
    const char *of = group->clutch ? "clutch: " : "";
    if (group->unfinished)
        return text_print(
            arena, "%scannot say: only a car bled free of air is gone through, and to the end", of);
    if (group->lacks != NULL && group->lacks->needs_count > 0)
        return text_print(arena, "%scannot say: needs %s", of,
                          cited_list(arena, result->system, group->lacks->needs,
                                     group->lacks->needs_count, MOST_NEEDS));
    if (group->lacks != NULL)
        return text_print(arena, "%scannot say: %s", of,
                          group->lacks->reason != NULL ? group->lacks->reason : "not computed");
    if (group->suits > 0)
        return text_print(arena, "%s%ld of %ld suit", of, group->suits, group->count);
    return text_print(arena, "%snone of %ld suits: %s stands in the way", of, group->count,
                      choice_limit_row((enum choice_limit)first_obstacle(group))->name);
}

const char *choose_tried_words(struct arena *arena, const struct result *result,
                               const struct choice_group *group)
{
    struct text words = text_start(arena);
    for (int a = 0; a < group->axis_count; a++)
        text_add(&words, "%s%s with %d bores", a > 0 ? ", " : "",
                 choose_axis_words(arena, result, group->axes[a]),
                 result->chosen->asked->axes[group->axes[a]].count);
    if (!group->clutch)
        text_add(
            &words, "; foot for a stop of %s",
            unit_text(arena, result->chosen->stop.m_s2, DIMENSION_ACCELERATION, result->units));
    return words.items;
}

const char *choose_why_words(struct arena *arena, const struct result *result,
                             const struct choice_group *group, const struct choice_car *car)
{
    const struct choice_limit_row *row = choice_limit_row(car->by);
    if (!(car->beyond > 0))
        return text_print(arena, "keeps %.0f %% of %s", -100 * car->beyond, row->name);
    struct text words = text_start(arena);
    for (int limit = 0; limit < CHOICE_LIMITS; limit++) {
        double at = group->limits[limit], value = car->values[limit];
        row = choice_limit_row((enum choice_limit)limit);
        if (isnan(at) || !(row->most ? value > at : value < at))
            continue;
        text_add(&words, "%s%s", *words.items != '\0' ? ", " : "", row->name);
        if (isfinite(value))
            text_add(&words, " by %s",
                     unit_text(arena, fabs(value - at), row->dimension, result->units));
    }
    return words.items;
}
