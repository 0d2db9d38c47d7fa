#include "advice/checks/readings.h"

#include <math.h>
#include <string.h>

#include "advice/checks/finding.h"
#include "advice/figures/holds.h"
#include "base/text.h"

int readings_places(const struct figures *listed, const struct reading_row *row, const char **names)
{
    int count = 0;
    for (int i = 0; i < listed->count; i++) {
        const struct figure *figure = &listed->items[i];
        if (strcmp(figure->row->id, row->figure) != 0)
            continue;
        names[count++] = figure->of;
    }
    return count;
}

/* What a pedal, a slave or a share ends at, whatever the fluid does. */
static double end_of(const struct system *system, const struct compared *compared,
                     const char **words, struct arena *arena)
{
    const struct taken_reading *reading = compared->reading;
    const struct part *part =
        reading->row->of == READING_OF_PEDAL || reading->row->of == READING_OF_CLUTCH
            ? &system->parts[compared->figure->subject]
            : NULL;
    if (part == NULL)
        return NAN;
    if (part->kind == KIND_PEDAL) {
        *words = text_print(arena, "the way of the %s from rest to its end", part->name);
        return pedal_end(&part->as.pedal).m;
    }
    const struct slave *slave = &part->as.slave;
    *words = text_print(arena, "the stroke of the %s", part->name);
    if (strcmp(reading->row->figure, "slave-travel") == 0)
        return slave->stroke.m;
    if (strcmp(reading->row->figure, "bearing-travel") != 0)
        return NAN;
    *words = text_print(arena, "the stroke of the %s over its fork ratio", part->name);
    return slave->type == SLAVE_CONCENTRIC ? slave->stroke.m
                                           : slave->stroke.m / slave->fork_ratio.value;
}

static double allowance(const struct taken_reading *reading)
{
    return isnan(reading->tolerance) ? reading->row->resolves
                                     : fmax(reading->row->resolves, reading->tolerance);
}

/* NaN also where the figure's law does not hold: nothing agrees with such a number. */
static double computed_at(const struct compared *compared, const struct situation *at_own)
{
    struct figure figure = *compared->figure;
    if (at_own != NULL) {
        double value = figure.row->get(at_own, figure.subject, figure.sub);
        figure.value = isfinite(value) ? value : NAN;
        holds_look(at_own, &figure);
    }
    return holds_broken_law(&figure) == NULL ? figure.value : NAN;
}

static void judge(struct compared *compared, const struct system *system, struct arena *arena)
{
    const struct taken_reading *reading = compared->reading;
    double apart = fabs(reading->value - compared->computed);
    /* of a computed 0 any other reading is off without measure */
    compared->off = compared->computed != 0 ? apart / fabs(compared->computed)
                    : apart > 0             ? INFINITY
                                            : 0;
    compared->end = end_of(system, compared, &compared->end_words, arena);
    if (reading->value > compared->end + allowance(reading))
        compared->outcome = COMPARED_IMPOSSIBLE;
    else if (isnan(compared->computed))
        compared->outcome = COMPARED_NOT;
    else if (apart <= allowance(reading) || compared->off <= limit_value("reading-off-most"))
        compared->outcome = COMPARED_AGREES;
    else
        compared->outcome = COMPARED_OFF;
}

static const struct figure *figure_read(const struct figures *figures,
                                        const struct taken_reading *reading)
{
    for (int i = 0; i < figures->count; i++)
        if (strcmp(figures->items[i].row->id, reading->row->figure) == 0 &&
            (reading->of == NULL || text_same(figures->items[i].of, reading->of)))
            return &figures->items[i];
    return NULL;
}

struct comparisons readings_compare(const struct system *system, const struct network *network,
                                    const struct figures *figures, struct arena *arena)
{
    struct comparisons all = {
        ARENA_ARRAY(arena, (size_t)system->reading_count + 1, struct compared), 0};
    struct situation *at_own = NULL;
    for (int i = 0; i < system->reading_count; i++) {
        const struct taken_reading *reading = &system->readings[i];
        struct compared *compared = &all.items[all.count];
        *compared = (struct compared){.reading = reading, .figure = figure_read(figures, reading)};
        if (compared->figure == NULL)
            continue;
        all.count++;
        bool own = !isnan(reading->effort.n);
        if (own && (at_own == NULL || at_own->effort.n != reading->effort.n)) {
            at_own = situation_room(system, network, reading->effort, arena);
            situation_solve(at_own);
        }
        compared->computed = computed_at(compared, own ? at_own : NULL);
        judge(compared, system, arena);
    }
    return all;
}
