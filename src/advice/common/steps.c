#include "advice/common/steps.h"

#include <assert.h>
#include <math.h>
#include <string.h>

#include "advice/common/limits.h"
#include "base/list.h"

#define CUSTOM "common practice, no source"
#define MAKER  "makers' workshop texts"
#define WHY_HOME                                                                                   \
    "The oldest fluid leaves there, not back through the master, and a chamber whose piston is "   \
    "home has the least room for air."
#define WHY_UNION                                                                                  \
    "Dirt in a port cuts the first cup; a circuit that runs empty has to be bled whole."

/* Groups of rows that many others wait for. */
#define OLD_PRESSURE_USED                                                                          \
    STEP_OPEN_PISTONS_EARLY, STEP_OPEN_FREE_PISTONS, STEP_BEFORE_SERVO, STEP_OPEN_PISTONS_HOME
#define OLD_IS_OUT STEP_OPEN_EMPTY_RESERVOIR, STEP_OPEN_LOWER_RESERVOIR, STEP_SET_DRAW_OLD
#define BEFORE_A_UNION                                                                             \
    STEP_BEFORE_READ, STEP_BEFORE_LIST, STEP_BEFORE_COMPARE, STEP_BEFORE_PLUGS, STEP_SET_PAINT,    \
        STEP_OPEN_TRY_NIPPLE, STEP_OPEN_FILM, STEP_OPEN_NO_PEDAL, OLD_PRESSURE_USED, OLD_IS_OUT
#define UNDONE STEP_OPEN_PIPE_NUT, STEP_OPEN_HOSE_NUT, STEP_OPEN_HOSE_END, STEP_OPEN_DIRECT
#define FITTED                                                                                     \
    STEP_CLOSE_PART, STEP_CLOSE_CYLINDER, STEP_CLOSE_MASTER, STEP_CLOSE_PLAIN, STEP_CLOSE_HOSE,    \
        STEP_CLOSE_PIPE
#define ALL_TIGHT                                                                                  \
    STEP_CLOSE_PIPE_NUT, STEP_CLOSE_PIPE_NUT_PLAIN, STEP_CLOSE_HOSE_END,                           \
        STEP_CLOSE_HOSE_IN_CALIPER, STEP_CLOSE_DIRECT
#define FILLED STEP_SET_RESERVOIR, STEP_SET_KIT_REVERSE
#define SET_FOR_BLEEDING                                                                           \
    STEP_CLOSE_NOTE, STEP_SET_LOAD_VALVE, STEP_SET_HOLD_OFF, STEP_SET_SHOES_UP,                    \
        STEP_SET_SHOES_SELF, STEP_SET_CALIPER_UP, STEP_SET_SLAVE, STEP_SET_PEDAL_BLOCK,            \
        STEP_SET_LEVER_BLOCK, STEP_SET_SERVO_EMPTY, STEP_SET_KIT_PRESSURE, STEP_SET_LOOK,          \
        STEP_SET_TANDEM_TOGETHER, STEP_SET_TANDEM_PLAIN, STEP_SET_LABEL
#define BLED                                                                                       \
    STEP_BLEED_MASTER, STEP_BLEED_NIPPLE, STEP_BLEED_STEADY, STEP_BLEED_BACKWARDS,                 \
        STEP_BLEED_CLEAR, STEP_BLEED_SLAVE
#define ALL_UNDONE                                                                                 \
    STEP_FINISH_NIPPLES, STEP_UNDO_NOTE, STEP_UNDO_KIT, STEP_UNDO_CALIPER_UP,                      \
        STEP_UNDO_PISTONS_HUNG, STEP_UNDO_SLAVE, STEP_UNDO_PEDAL_BLOCK, STEP_UNDO_LEVER_BLOCK,     \
        STEP_UNDO_LOAD_VALVE, STEP_UNDO_HOLD_OFF, STEP_TEST_SHOES, STEP_TEST_SHOES_SELF,           \
        STEP_TEST_HAND_BRAKE

static const struct step_row rows[STEP_COUNT] = {
#define STEP(symbol, id, phase, words, ...) [STEP_##symbol] = {id, phase, words, __VA_ARGS__},
#include "advice/common/steps.def"
#undef STEP
};

static const struct {
    const char *id, *words;
} phases[PHASE_COUNT] = {
    [PHASE_BEFORE] = {"before", "Before anything is opened"},
    [PHASE_APART] = {"apart", "Taking apart"},
    [PHASE_BENCH] = {"bench", "At the bench"},
    [PHASE_TOGETHER] = {"together", "Putting together"},
    [PHASE_SETTINGS] = {"settings", "Settings for bleeding"},
    [PHASE_BLEEDING] = {"bleeding", "Bleeding"},
    [PHASE_UNDOING] = {"undoing", "Settings undone"},
    [PHASE_RESTING] = {"resting", "Tests of the standing car"},
    [PHASE_SECOND] = {"second", "A second person"},
    [PHASE_DRIVE] = {"drive", "The first drive"},
    [PHASE_LATER] = {"later", "Later"},
};

const char *phase_id(enum step_phase phase)
{
    return phases[phase].id;
}

const char *phase_words(enum step_phase phase)
{
    return phases[phase].words;
}

const struct step_row *step_rows(size_t *count)
{
    *count = STEP_COUNT - 1;
    return rows + 1;
}

const struct step_row *step_row_of(enum step_id id)
{
    return &rows[id];
}

enum step_id step_id_of(const struct step_row *row)
{
    return (enum step_id)(row - rows);
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
    step->part = step->other = step->joint = step->nipple = step->circuit = -1;
    step->run.m = NAN;
    step->volume.m3 = NAN;
    step->strokes = NAN;
    step->torque.nm = step->torque_most.nm = NAN;
    return step;
}

static struct named_quantity *add_quantity(struct step *step, const char *name)
{
    assert(step->quantity_count < STEP_MOST_QUANTITIES);
    struct named_quantity *quantity = &step->quantities[step->quantity_count++];
    *quantity = (struct named_quantity){.name = name};
    return quantity;
}

void step_say(struct step *step, const char *name, double value, enum dimension dimension)
{
    if (!isnan(value)) {
        struct named_quantity *quantity = add_quantity(step, name);
        quantity->value = value;
        quantity->dimension = dimension;
    }
}

void step_say_words(struct step *step, const char *name, const char *words)
{
    add_quantity(step, name)->text = words;
}

void step_say_limit(struct step *step, const char *name, const char *limit)
{
    const struct limit_row *row = limit_find(limit);
    assert(row != NULL);
    step_say(step, name, row->value, row->dimension);
}

static const struct named_quantity *said(const struct step *step, const char *name)
{
    for (int i = 0; i < step->quantity_count; i++) {
        if (strcmp(step->quantities[i].name, name) == 0) {
            return &step->quantities[i];
        }
    }
    return NULL;
}

double step_said(const struct step *step, const char *name)
{
    const struct named_quantity *quantity = said(step, name);
    return quantity != NULL ? quantity->value : (double)NAN;
}

const char *step_said_words(const struct step *step, const char *name)
{
    const struct named_quantity *quantity = said(step, name);
    return quantity != NULL ? quantity->text : NULL;
}

int step_boxes(const struct step *step, const char *names[STEP_MOST_BOXES])
{
    if (step->row->table != TABLE_JOINTS || step->row->phase != PHASE_APART) {
        return 0;
    }
    names[0] = "brushed";
    names[1] = "undone";
    names[2] = "plugged";
    return step->plug == NULL ? 2 : 3;
}

bool step_shares_part(const struct step *one, const struct step *two)
{
    const int ones[] = {one->part, one->other}, twos[] = {two->part, two->other};
    for (int i = 0; i < 4; i++) {
        if (ones[i / 2] >= 0 && ones[i / 2] == twos[i % 2]) {
            return true;
        }
    }
    return false;
}

bool step_names(const enum step_id *list, size_t most, enum step_id id)
{
    for (size_t i = 0; i < most && list[i] != STEP_NONE; i++) {
        if (list[i] == id) {
            return true;
        }
    }
    return false;
}

bool step_waits_for(const struct step *step, const struct step *other)
{
    enum step_id id = step_id_of(other->row);
    return step_names(step->row->needs, STEP_MOST_NEEDS, id) ||
           (step_names(step->row->needs_same, STEP_MOST_NEEDS, id) &&
            step_shares_part(step, other));
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
