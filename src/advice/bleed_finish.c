#include "advice/bleed_finish.h"

#include <stddef.h>

#include "advice/finding.h"
#include "physics/pressure.h"

static struct step *add_for(struct steps *steps, const char *id, int part)
{
    struct step *step = steps_add(steps, id);
    step->part = part;
    return step;
}

void leak_tests_add(struct steps *steps, const struct system *system, int pedal)
{
    if (system->parts[pedal].as.pedal.type == PEDAL_HAND) {
        add_for(steps, "test-hold-lever", pedal)->time.s = limit_value("hold-time");
        return;
    }
    struct step *hold = add_for(steps, "test-hold", pedal);
    hold->force.n = limit_value("hold-force");
    hold->time.s = limit_value("hold-time");
    struct step *minute = add_for(steps, "test-hold-minute", pedal);
    minute->force.n = limit_value("hold-minute-force-least");
    minute->force_most.n = limit_value("hold-minute-force-most");
    minute->time.s = limit_value("hold-minute-time");
    add_for(steps, "test-hold-long", pedal)->time.s = limit_value("hold-long-time");
}

/* Pedals of open circuits, brakes first; -1 for parts that are none of these. */
enum touch { NOT_TOUCHED, TOUCHED_CLUTCH, TOUCHED_BRAKE };

static void touch(enum touch *touched, int part, bool clutch)
{
    enum touch as = clutch ? TOUCHED_CLUTCH : TOUCHED_BRAKE;
    if (part >= 0 && touched[part] < as) {
        touched[part] = as;
    }
}

struct steps bleed_finish_of(const struct system *system, const struct network *network,
                             const struct bleed_set *set, struct arena *arena)
{
    struct steps steps = {.arena = arena};
    enum touch *touched = ARENA_ARRAY(arena, (size_t)system->part_count + 1, enum touch);
    bool brakes = false;
    if (set->count == 0) {
        return steps;
    }
    for (int c = 0; c < network->circuit_count; c++) {
        const struct circuit *circuit = &network->circuits[c];
        if (set->circuit_open[c]) {
            touch(touched, pressure_pedal_of(system, circuit->master), circuit->clutch);
            touch(touched, reservoir_of(system, circuit->master), circuit->clutch);
            brakes = brakes || !circuit->clutch;
        }
    }
    for (int i = 0; i < system->part_count; i++) {
        if (touched[i] != NOT_TOUCHED && system->parts[i].kind == KIND_PEDAL) {
            add_for(&steps, "finish-pedal", i);
        }
    }
    for (int i = 0; i < system->part_count; i++) {
        if (touched[i] != NOT_TOUCHED && system->parts[i].kind == KIND_RESERVOIR) {
            add_for(&steps, "finish-levels", i);
        }
    }
    for (int i = 0; i < system->part_count; i++) {
        if (touched[i] == TOUCHED_BRAKE && system->parts[i].kind == KIND_PEDAL) {
            leak_tests_add(&steps, system, i);
        }
    }
    steps_add(&steps, "test-overnight");
    if (brakes) {
        steps_add(&steps, "test-free-wheels");
    }
    steps_add(&steps, "test-first-drive");
    return steps;
}
