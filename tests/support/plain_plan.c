#include "support/plain_plan.h"

#include <math.h>

#include "advice/bleeding/bleed_scope.h"

struct plan *plain_plan(const struct system *system, const struct network *network,
                        enum bleed_method method, struct arena *arena)
{
    struct bleed_plan *bleed = ARENA_NEW(arena, struct bleed_plan);
    struct bleed_set set = bleed_set_of(system, network, arena);
    struct date today = {2026, 11, 25};
    struct hose_list hoses = hoses_of(system, network, today, arena);
    bleed->method = method;
    bleed->steps.arena = arena;
    for (int i = 0; i < set.count; i++) {
        struct step *step =
            steps_add(&bleed->steps, method == METHOD_PEDAL     ? STEP_BLEED_NIPPLE
                                     : method == METHOD_REVERSE ? STEP_BLEED_BACKWARDS
                                                                : STEP_BLEED_STEADY);
        step->part = set.items[i].nipple.part;
        step->nipple = set.items[i].nipple.index;
        step->circuit = set.items[i].circuit;
    }
    return plan_of(system, network, &hoses, bleed, today, arena);
}

const struct system *plain_work(const struct system *car, enum work_deed deed, int part,
                                struct arena *arena)
{
    struct work_item *items = ARENA_ARRAY(arena, (size_t)car->part_count + 1, struct work_item);
    struct work_file file = {.head = {.file = "work.ini", .date = {2026, 11, 20}}, .items = items};
    file.fluid_renewed = part < 0;
    for (int i = 0; i < car->part_count; i++) {
        if (part < 0 ? kind_is_wet(car->parts[i].kind) : i == part) {
            items[file.count++] = (struct work_item){.deed = deed, .part = i};
        }
    }
    return work_apply(car, &file, 1, arena);
}
