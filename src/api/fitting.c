#include <math.h>
#include <string.h>

#include "advice/figures/part_bore.h"
#include "api/desk.h"
#include "base/list.h"
#include "base/text.h"
#include "input/naming.h"
#include "input/read.h"
#include "report/text/text_report.h"
#include "units/unit.h"

int desk_parts_named(struct fp_desk *desk, const char *name, int parts[2])
{
    const struct system *system = desk->car;
    int one = system_find(system, name);
    if (one >= 0) {
        parts[0] = one;
        return 1;
    }
    struct roll roll = roll_start(desk->arena);
    for (int i = 0; i < system->part_count; i++)
        roll_add(&roll, system->parts[i].name);
    int *found;
    int count = roll_find_group(&roll, name, &found);
    if (count > 2)
        return 0;
    for (int i = 0; i < count; i++)
        parts[i] = found[i];
    return count;
}

const char *desk_no_cylinder(struct fp_desk *desk, const char *option, const char *name)
{
    struct text words = text_start(desk->arena);
    text_add(&words, "firmpedal: %s %s is no cylinder of this car. It has: ", option, name);
    const char *join = "";
    for (int i = 0; i < desk->car->part_count; i++)
        if (part_is_cylinder(&desk->car->parts[i])) {
            text_add(&words, "%s%s", join, desk->car->parts[i].name);
            join = ", ";
        }
    text_add(&words, ".\n");
    return words.items;
}

static void take_items(struct fp_desk *desk, struct work_file *changes,
                       const struct work_file *more)
{
    for (size_t i = 0; i < more->count; i++)
        *LIST_ADD(desk->arena, changes) = more->items[i];
}

bool desk_bore(struct fp_desk *desk, const char *option, const char *said, struct length *bore,
               const char **answer)
{
    struct reading reading = unit_read(said, DIMENSION_LENGTH);
    bore->m = reading.value;
    if (reading.outcome == READING_FINE && reading.value > 0.002 && reading.value < 0.4)
        return true;
    *answer = text_print(desk->arena,
                         "firmpedal: %s is a diameter with its unit, as \"7/8 in\" or "
                         "\"22.2 mm\", not %s\n",
                         option, said);
    return false;
}

static bool take_bore(struct fp_desk *desk, const char *cylinder, const char *bore,
                      struct work_file *changes, const char **answer)
{
    int parts[2];
    int count = desk_parts_named(desk, cylinder, parts);
    if (count == 0 || !part_is_cylinder(&desk->car->parts[parts[0]])) {
        *answer = desk_no_cylinder(desk, "--cylinder", cylinder);
        return false;
    }
    struct length size;
    if (!desk_bore(desk, "--bore", bore, &size, answer))
        return false;
    struct work_file bores = fit_bore(desk->car, parts, count, size, desk->arena);
    take_items(desk, changes, &bores);
    return true;
}

/* Messages of what is tried, as an answer. */
static const char *mistakes(struct fp_desk *desk, struct messages *messages)
{
    struct text words = text_start(desk->arena);
    struct messages shown = messages_shown(messages);
    text_messages(&words, &shown, desk->screen.width);
    return desk_held(desk, words.items);
}

static bool take_source(struct fp_desk *desk, const struct source *source,
                        struct work_file *changes, const char **answer)
{
    struct messages messages = messages_start(desk->arena);
    struct work_file tried;
    bool fine = read_tried(source, desk->car, desk->arena, &messages, &tried);
    if (fine)
        take_items(desk, changes, &tried);
    else
        *answer = mistakes(desk, &messages);
    return fine;
}

static bool take_file(struct fp_desk *desk, const char *path, struct work_file *changes,
                      const char **answer)
{
    struct messages messages = messages_start(desk->arena);
    struct source source;
    if (source_load(path, desk->arena, &messages, &source))
        return take_source(desk, &source, changes, answer);
    *answer = mistakes(desk, &messages);
    return false;
}

/* "brake pedal: pad to pivot = 300 mm, travel = 150 mm" as the section that says it in a file. */
static bool take_words(struct fp_desk *desk, const char *said, struct work_file *changes,
                       const char **answer)
{
    const char *colon = strchr(said, ':');
    if (colon == NULL) {
        *answer = text_print(desk->arena,
                             "firmpedal: --change is a part, a colon and what it has then, as "
                             "\"rear drum: bore = 5/8 in\", not %s\n",
                             said);
        return false;
    }
    struct text words = text_start(desk->arena);
    text_add(&words, "[replaced %.*s]\n", (int)(colon - said), said);
    for (const char *at = colon + 1; *at != '\0';) {
        at += strspn(at, " ");
        size_t length = strcspn(at, ",");
        text_add(&words, "%.*s\n", (int)length, at);
        at += length + (at[length] == ',');
    }
    struct source source = {"--change", words.items, strlen(words.items)};
    return take_source(desk, &source, changes, answer);
}

static bool same_plumbing(const struct network *a, const struct network *b)
{
    bool same = a->vertex_count == b->vertex_count && a->edge_count == b->edge_count &&
                a->circuit_count == b->circuit_count;
    for (int c = 0; same && c < a->circuit_count; c++)
        same = a->circuits[c].master == b->circuits[c].master &&
               a->circuits[c].chamber == b->circuits[c].chamber;
    return same;
}

/* What is tried may not join the plumbing otherwise: figures of before and after stand beside each
 * other circuit by circuit. */
static bool is_same_plumbing(struct fp_desk *desk, const struct work_file *changes,
                             const char **answer)
{
    struct messages messages = messages_start(desk->arena);
    const struct system *after = work_apply(desk->car, changes, 1, desk->arena);
    const struct network *network = network_build(after, desk->arena, &messages);
    if (same_plumbing(desk->network, network))
        return true;
    *answer = "firmpedal: that would join the pipes otherwise; change the description instead\n";
    return false;
}

bool desk_add_fit(struct fp_desk *desk, const struct fp_wishes *wishes, struct result *result,
                  const char **answer)
{
    struct work_file changes = {0};
    struct force effort = {NAN};
    bool fine = true;
    for (size_t i = 0; fine && i < wishes->tried_count; i++)
        fine = take_file(desk, wishes->tried[i], &changes, answer);
    for (size_t i = 0; fine && i < wishes->change_count; i++)
        fine = take_words(desk, wishes->changes[i], &changes, answer);
    if (fine && wishes->cylinder != NULL)
        fine = take_bore(desk, wishes->cylinder, wishes->bore != NULL ? wishes->bore : "", &changes,
                         answer);
    if (!fine || !is_same_plumbing(desk, &changes, answer) ||
        !desk_effort(desk, wishes->effort, &effort, answer))
        return false;
    result->fit = fit_of(desk->car, desk->network, &changes, effort, desk->arena);
    return true;
}
