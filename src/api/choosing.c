#include <math.h>
#include <string.h>

#include "advice/common/bores.h"
#include "advice/figures/part_bore.h"
#include "api/desk.h"
#include "base/text.h"
#include "units/unit.h"

enum { MOST_BORES = 64 };

/* The next part of a list, blanks around it taken off; NULL at its end. */
static const char *next_word(const char **list, char end, struct arena *arena)
{
    const char *at = *list + strspn(*list, " ");
    if (*at == '\0')
        return NULL;
    const char *stop = strchr(at, end);
    size_t length = stop != NULL ? (size_t)(stop - at) : strlen(at);
    *list = at + length + (stop != NULL);
    while (length > 0 && at[length - 1] == ' ')
        length--;
    return text_copy_part(arena, at, length);
}

static bool add_axis(struct fp_desk *desk, const char *name, struct choice_asked *asked,
                     const char **answer)
{
    int *parts = ARENA_ARRAY(desk->arena, 2, int);
    int count = desk_parts_named(desk, name, parts);
    if (count == 0 || !part_is_cylinder(&desk->car->parts[parts[0]])) {
        *answer = desk_no_cylinder(desk, "--among", name);
        return false;
    }
    for (int a = 0; a < asked->axis_count; a++)
        for (int p = 0; p < asked->axes[a].part_count; p++)
            if (asked->axes[a].parts[p] == parts[0] ||
                (count > 1 && asked->axes[a].parts[p] == parts[1])) {
                *answer = text_print(desk->arena, "firmpedal: --among names %s twice\n", name);
                return false;
            }
    if (asked->axis_count == COLUMN_AXES) {
        *answer = "firmpedal: --among takes up to four cylinders\n";
        return false;
    }
    asked->axes[asked->axis_count++] = (struct bore_axis){.parts = parts, .part_count = count};
    return true;
}

static bool read_axes(struct fp_desk *desk, const char *among, struct choice_asked *asked,
                      const char **answer)
{
    const char *name;
    while ((name = next_word(&among, ',', desk->arena)) != NULL)
        if (!add_axis(desk, name, asked, answer))
            return false;
    return true;
}

/* The whole table of the trade. */
static void offer_table(struct fp_desk *desk, struct choice_asked *asked)
{
    size_t count;
    const struct bore_row *rows = bore_rows(&count);
    struct length *bores = ARENA_ARRAY(desk->arena, count, struct length);
    for (size_t i = 0; i < count; i++)
        bores[i] = rows[i].bore;
    for (int a = 0; a < asked->axis_count; a++) {
        asked->axes[a].bores = bores;
        asked->axes[a].count = (int)count;
    }
}

/* The axis that a cylinder's name means, -1. */
static int axis_named(struct fp_desk *desk, const struct choice_asked *asked, const char *name)
{
    int parts[2];
    int count = desk_parts_named(desk, name, parts);
    for (int a = 0; count > 0 && a < asked->axis_count; a++)
        if (asked->axes[a].parts[0] == parts[0] || asked->axes[a].parts[0] == parts[count - 1])
            return a;
    return -1;
}

/* "5/8 in, 3/4 in" for all, "rear drum: 5/8 in, 3/4 in" for one. */
static bool take_bores(struct fp_desk *desk, const char *said, struct choice_asked *asked,
                       const char **answer)
{
    const char *colon = strchr(said, ':'), *list = colon != NULL ? colon + 1 : said, *word;
    int only = -1, count = 0;
    if (colon != NULL) {
        const char *name = text_copy_part(desk->arena, said, (size_t)(colon - said));
        only = axis_named(desk, asked, name);
        if (only < 0) {
            *answer = text_print(
                desk->arena, "firmpedal: --at-hand %s is none of those that --among names\n", name);
            return false;
        }
    }
    struct length *bores = ARENA_ARRAY(desk->arena, MOST_BORES, struct length);
    while (count < MOST_BORES && (word = next_word(&list, ',', desk->arena)) != NULL) {
        if (!desk_bore(desk, "--at-hand", word, &bores[count], answer))
            return false;
        count++;
    }
    for (int a = 0; count > 0 && a < asked->axis_count; a++)
        if (only < 0 || a == only) {
            asked->axes[a].bores = bores;
            asked->axes[a].count = count;
        }
    return true;
}

static const char *limits_known(struct arena *arena)
{
    struct text words = text_start(arena);
    for (int limit = 0; limit < CHOICE_LIMITS; limit++)
        text_add(&words, "%s, ", choice_limit_row((enum choice_limit)limit)->name);
    text_add(&words, "stop");
    return words.items;
}

/* "foot = 250 N" */
static bool take_limit(struct fp_desk *desk, const char *said, struct choice_asked *asked,
                       const char **answer)
{
    const char *rest = said, *name = next_word(&rest, '=', desk->arena);
    double *into = NULL;
    enum dimension dimension = DIMENSION_ACCELERATION;
    if (name != NULL && text_same(name, "stop"))
        into = &asked->stop.m_s2;
    for (int limit = 0; name != NULL && limit < CHOICE_LIMITS; limit++) {
        const struct choice_limit_row *row = choice_limit_row((enum choice_limit)limit);
        if (!text_same(name, row->name))
            continue;
        into = &asked->limits[limit];
        dimension = row->dimension;
    }
    struct reading reading = unit_read(rest, dimension);
    if (into != NULL && reading.outcome == READING_FINE && reading.value >= 0) {
        *into = reading.value;
        return true;
    }
    *answer = text_print(desk->arena,
                         "firmpedal: --limit is one of %s, = and a quantity with its unit, as "
                         "\"foot = 250 N\", not %s\n",
                         limits_known(desk->arena), said);
    return false;
}

bool desk_add_choice(struct fp_desk *desk, const struct fp_wishes *wishes, bool map,
                     struct result *result, const char **answer)
{
    struct choice_asked *asked = ARENA_NEW(desk->arena, struct choice_asked);
    *asked = (struct choice_asked){.stop = {NAN},
                                   .map = map,
                                   .progress = wishes->progress,
                                   .progress_context = wishes->progress_context};
    for (int limit = 0; limit < CHOICE_LIMITS; limit++)
        asked->limits[limit] = NAN;
    bool fine = desk_effort(desk, wishes->effort, &asked->effort, answer) &&
                read_axes(desk, wishes->among != NULL ? wishes->among : "", asked, answer);
    if (fine)
        offer_table(desk, asked);
    for (size_t i = 0; fine && i < wishes->at_hand_count; i++)
        fine = take_bores(desk, wishes->at_hand[i], asked, answer);
    for (size_t i = 0; fine && i < wishes->limit_count; i++)
        fine = take_limit(desk, wishes->limits[i], asked, answer);
    if (fine)
        result->chosen = choose(desk->car, desk->network, asked, desk->arena);
    return fine;
}
