#include "advice/common/steps.h"

#include <math.h>
#include <string.h>

#include "base/list.h"

#define CUSTOM "common practice, no source"
#define MAKER  "makers' workshop texts"
#define WHY_HOME                                                                                   \
    "The oldest fluid leaves there, not back through the master, and a chamber whose piston is "   \
    "home has the least room for air."
#define WHY_UNION                                                                                  \
    "Dirt in a port cuts the first cup; a circuit that runs empty has to be bled whole."

static const struct step_row rows[STEP_COUNT] = {
#define STEP(symbol, id, phase, words, ...) [STEP_##symbol] = {id, phase, words, __VA_ARGS__},
#include "advice/common/steps.def"
#undef STEP
};

const struct step_row *step_rows(size_t *count)
{
    *count = STEP_COUNT - 1;
    return rows + 1;
}

const struct step_row *step_row_of(enum step_id id)
{
    return &rows[id];
}

const struct step_row *step_row(const char *id)
{
    for (int i = STEP_NONE + 1; i < STEP_COUNT; i++) {
        if (strcmp(rows[i].id, id) == 0) {
            return &rows[i];
        }
    }
    return NULL;
}

struct step *steps_add(struct steps *steps, enum step_id id)
{
    struct step *step = LIST_ADD(steps->arena, steps);
    step->row = step_row_of(id);
    step->number = (int)steps->count;
    step->part = step->nipple = step->circuit = -1;
    step->run.m = NAN;
    step->volume.m3 = NAN;
    step->strokes = NAN;
    step->torque.nm = step->torque_most.nm = NAN;
    step->least.m = step->most.m = NAN;
    step->force.n = NAN;
    step->time.s = NAN;
    step->force_most.n = NAN;
    step->pressure.pa = step->pressure_most.pa = NAN;
    step->angle.rad = NAN;
    step->flow = NAN;
    step->temperature.celsius = NAN;
    step->slope.of_1 = NAN;
    return step;
}

int step_boxes(const struct step *step, const char *names[STEP_MOST_BOXES])
{
    static const enum step_id unions[] = {STEP_OPEN_PIPE_NUT, STEP_OPEN_HOSE_NUT,
                                          STEP_OPEN_HOSE_END, STEP_OPEN_DIRECT};
    for (size_t i = 0; i < sizeof unions / sizeof *unions; i++) {
        if (step->row == step_row_of(unions[i])) {
            names[0] = "brushed";
            names[1] = "undone";
            names[2] = "plugged";
            return step->plug == NULL ? 2 : 3;
        }
    }
    return 0;
}

bool steps_first_of_row(const struct steps *steps, size_t at)
{
    for (size_t i = 0; i < at; i++) {
        if (steps->items[i].row == steps->items[at].row) {
            return false;
        }
    }
    return true;
}
