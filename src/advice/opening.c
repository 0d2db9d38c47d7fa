#include "advice/opening.h"

#include <math.h>
#include <stddef.h>

#include "advice/bleed_scope.h"
#include "advice/opening_joints.h"
#include "advice/phrases.h"
#include "base/text.h"
#include "network/mounts.h"
#include "physics/pressure.h"

static struct step *add_for(struct opening *opening, const char *id, int part)
{
    struct step *step = steps_add(opening->steps, id);
    step->part = part;
    return step;
}

static const struct part *part_at(const struct opening *opening, int part)
{
    return &opening->system->parts[part];
}

static bool has_pistons(const struct part *part)
{
    return kind_is_brake(part->kind) || part->kind == KIND_SLAVE;
}

/* Before anything is ordered or undone: nipples of the parts in hand, and the old pressure. */
static void try_first(struct opening *opening)
{
    for (int i = 0; i < opening->count; i++) {
        int index = opening->parts[i];
        const struct part *part = part_at(opening, index);
        if (nipples_of(part) > 0 && part->found.nipple == NIPPLE_NOT_SAID) {
            add_for(opening, "open-try-nipple", index);
        } else if (part->found.nipple == NIPPLE_SEIZED || part->found.nipple == NIPPLE_SHEARED) {
            add_for(opening, "open-nipple-known", index)->text =
                part->found.nipple == NIPPLE_SEIZED ? "seized" : "sheared off";
        }
    }
    for (int i = 0; i < opening->count; i++) {
        int index = opening->parts[i];
        const struct part *part = part_at(opening, index);
        if (has_pistons(part) && part->found.pistons == PISTONS_STUCK) {
            add_for(opening, "open-free-pistons", index);
        } else if (has_pistons(part) && part->found.pistons == PISTONS_NOT_SAID) {
            add_for(opening, "open-pistons-early", index);
        }
    }
}

/* A master, or the reservoir itself, comes off: then what stands above it is drawn out. */
static void empty_reservoirs(struct opening *opening)
{
    bool *emptied = ARENA_ARRAY(opening->arena, (size_t)opening->system->part_count + 1, bool);
    for (int i = 0; i < opening->count; i++) {
        int index = opening->parts[i];
        int reservoir = part_at(opening, index)->kind == KIND_MASTER
                            ? reservoir_of(opening->system, index)
                        : part_at(opening, index)->kind == KIND_RESERVOIR ? index
                                                                          : -1;
        if (reservoir >= 0 && !emptied[reservoir]) {
            emptied[reservoir] = true;
            add_for(opening, "open-empty-reservoir", reservoir);
        }
    }
}

static void take_off_master(struct opening *opening, int index)
{
    const struct part *part = part_at(opening, index);
    int servo = pressure_servo_of(opening->system, index);
    if (part->as.master.supply_hose.m > 0) {
        add_for(opening, "open-supply", index);
    }
    opening_undo_joints(opening, index);
    if (servo >= 0) {
        add_for(opening, "open-off-servo", index)->text = part_at(opening, servo)->name;
        return;
    }
    add_for(opening, "open-pedal-rod", index);
    add_for(opening, "open-take-off", index);
}

static void take_off(struct opening *opening, int index)
{
    const struct part *part = part_at(opening, index);
    switch (part->kind) {
    case KIND_MASTER:
        take_off_master(opening, index);
        break;
    case KIND_SERVO:
        if (part->as.servo.vacuum_hose.m > 0) {
            add_for(opening, "open-vacuum-hose", index);
        }
        opening_undo_joints(opening, index);
        add_for(opening, "open-take-off", index);
        break;
    case KIND_DRUM:
        add_for(opening, "open-band-shoes", index);
        opening_undo_joints(opening, index);
        add_for(opening, "open-take-off", index);
        break;
    case KIND_DISC:
        opening_undo_joints(opening, index);
        add_for(opening, "open-block-pads", index);
        add_for(opening, "open-take-off", index);
        break;
    case KIND_SLAVE:
        add_for(opening, "open-strap-slave", index);
        opening_undo_joints(opening, index);
        add_for(opening, "open-take-off", index);
        break;
    case KIND_HOSE:
    case KIND_PIPE:
        opening_undo_carrier(opening, index);
        break;
    case KIND_JOINT:
    case KIND_VALVE:
    case KIND_RESERVOIR:
        opening_undo_joints(opening, index);
        add_for(opening, "open-take-off", index);
        break;
    case KIND_VEHICLE:
    case KIND_FLUID:
    case KIND_PEDAL:
    case KIND_PARKING:
    case KIND_COUNT:
        break;
    }
    if (has_pistons(part) || part->kind == KIND_MASTER) {
        add_for(opening, "open-measure", index);
    }
}

/* A circuit's master, for the fluid that wets its seals. */
static int master_of(const struct opening *opening, int index)
{
    if (part_at(opening, index)->kind == KIND_MASTER) {
        return index;
    }
    int vertex = network_vertex(opening->network, index, 0);
    int circuit = vertex < 0 ? -1 : opening->network->vertices[vertex].circuit;
    return circuit < 0 ? system_first(opening->system, KIND_MASTER)
                       : opening->network->circuits[circuit].master;
}

static void put_on(struct opening *opening, int index)
{
    const struct part *part = part_at(opening, index);
    switch (part->kind) {
    case KIND_HOSE:
        add_for(opening, "close-hose", index);
        opening_close_carrier(opening, index);
        return;
    case KIND_PIPE:
        opening_close_carrier(opening, index);
        return;
    case KIND_VEHICLE:
    case KIND_FLUID:
    case KIND_PEDAL:
    case KIND_PARKING:
    case KIND_COUNT:
        return;
    case KIND_RESERVOIR:
    case KIND_SERVO:
    case KIND_MASTER:
    case KIND_JOINT:
    case KIND_VALVE:
    case KIND_DISC:
    case KIND_DRUM:
    case KIND_SLAVE:
        break;
    }
    int master = master_of(opening, index);
    add_for(opening, "close-part", index)->text =
        master < 0 ? "fluid of the right grade" : fluid_words(opening->system, master);
    if (part->kind == KIND_DRUM && part->as.drum.shoes == SHOES_TWO_LEADING) {
        add_for(opening, "close-handed", index);
    }
    if (part->kind == KIND_DISC) {
        add_for(opening, "close-caliper-side", index);
    }
    opening_close_joints(opening, index);
    if (part->kind == KIND_MASTER && pressure_servo_of(opening->system, index) < 0) {
        add_for(opening, "close-rod", index);
    }
    if (nipples_of(part) > 0) {
        opening_torque(add_for(opening, "close-nipple", index),
                       part->kind == KIND_DISC ? "nipple-caliper" : "nipple-cylinder");
    }
}

static void add_missing_hoses(struct opening *opening)
{
    struct gaps gaps = mounts_gaps(opening->system, opening->network, opening->arena);
    for (int i = 0; i < gaps.count; i++) {
        const struct gap *gap = &gaps.items[i];
        if (gap->state == GAP_BARE) {
            add_for(opening, "close-missing-hose", gap->far)->text =
                text_print(opening->arena, "between the %s and the %s (from %s to %s)",
                           part_at(opening, gap->near)->name, part_at(opening, gap->far)->name,
                           mount_words(gap->from), mount_words(gap->to));
        }
    }
}

/* From the ends of the pipes towards the master, so that what drips, drips last. */
static int undoing_rank(const struct part *part)
{
    switch (part->kind) {
    case KIND_HOSE:
        return 0;
    case KIND_PIPE:
        return 1;
    case KIND_DISC:
    case KIND_DRUM:
        return 2;
    case KIND_SLAVE:
        return 3;
    case KIND_JOINT:
    case KIND_VALVE:
        return 4;
    case KIND_SERVO:
        return 5;
    case KIND_MASTER:
        return 6;
    case KIND_RESERVOIR:
        return 7;
    case KIND_VEHICLE:
    case KIND_FLUID:
    case KIND_PEDAL:
    case KIND_PARKING:
    case KIND_COUNT:
        break;
    }
    return 8;
}

static void take_parts(struct opening *opening, const int *parts, int part_count)
{
    const struct system *system = opening->system;
    opening->parts = ARENA_ARRAY(opening->arena, (size_t)system->part_count + 1, int);
    opening->in_hand = ARENA_ARRAY(opening->arena, (size_t)system->part_count + 1, bool);
    for (int i = 0; i < (parts == NULL ? system->part_count : part_count); i++) {
        int index = parts == NULL ? i : parts[i];
        const struct part *part = &system->parts[index];
        if ((parts == NULL && !part_is_new(part)) || undoing_rank(part) > 7 ||
            opening->in_hand[index]) {
            continue;
        }
        opening->in_hand[index] = true;
        int at = opening->count++;
        while (at > 0 &&
               undoing_rank(&system->parts[opening->parts[at - 1]]) > undoing_rank(part)) {
            opening->parts[at] = opening->parts[at - 1];
            at--;
        }
        opening->parts[at] = index;
    }
}

struct steps opening_of(const struct system *system, const struct network *network,
                        const int *parts, int part_count, struct arena *arena)
{
    struct steps steps = {.arena = arena};
    struct opening opening = {
        .system = system, .network = network, .steps = &steps, .arena = arena};
    take_parts(&opening, parts, part_count);
    if (opening.count > 0) {
        opening.undone = ARENA_ARRAY(arena, (size_t)system->connection_count + 1, bool);
        opening.closed = ARENA_ARRAY(arena, (size_t)system->connection_count + 1, bool);
        try_first(&opening);
        empty_reservoirs(&opening);
    }
    for (int i = 0; i < opening.count; i++) {
        take_off(&opening, opening.parts[i]);
    }
    if (opening.count > 0) {
        steps_add(&steps, "close-threads");
        steps_add(&steps, "close-washers");
    }
    for (int i = opening.count - 1; i >= 0; i--) {
        put_on(&opening, opening.parts[i]);
    }
    if (parts == NULL) {
        add_missing_hoses(&opening);
    }
    return steps;
}
