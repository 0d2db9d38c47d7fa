#include "advice/job/opening.h"

#include <math.h>
#include <stddef.h>

#include "advice/job/opening_joints.h"
#include "advice/checks/finding.h"
#include "advice/common/phrases.h"
#include "base/text.h"
#include "physics/pressure.h"

static struct step *add_for(struct opening *opening, enum step_id id, int part)
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

/* Only some of a part's unions were undone, and the part itself stays. */
static bool only_opened(const struct part *part)
{
    return part->done.opened && !part_is_new(part);
}

static void leave_pedals(struct opening *opening)
{
    struct step *step = steps_add(opening->steps, STEP_OPEN_NO_PEDAL);
    step->text = pedal_names(opening->system, opening->touched, opening->arena);
    step->place_words = note_place_words(opening->system);
}

static const char *pedal_of(const struct opening *opening, int master)
{
    int pedal = master >= 0 ? pressure_pedal_of(opening->system, master) : -1;
    return pedal >= 0 ? part_at(opening, pedal)->name : "pedal";
}

/* Whether the supply or vacuum hose of a master or servo is in hand itself. */
static bool soft_hose_in_hand(const struct opening *opening, int owner)
{
    for (int i = 0; i < opening->count; i++) {
        if (soft_hose_owner(opening->system, opening->parts[i]) == owner) {
            return true;
        }
    }
    return false;
}

static void take_off_master(struct opening *opening, int index)
{
    const struct part *part = part_at(opening, index);
    int servo = pressure_servo_of(opening->system, index);
    if (part->as.master.supply_hose.m > 0 && !soft_hose_in_hand(opening, index)) {
        add_for(opening, STEP_OPEN_SUPPLY, index);
    }
    opening_undo_joints(opening, index);
    if (servo >= 0) {
        add_for(opening, STEP_OPEN_OFF_SERVO, index)->text = part_at(opening, servo)->name;
        return;
    }
    add_for(opening, STEP_OPEN_PEDAL_ROD, index)->text = pedal_of(opening, index);
    add_for(opening, STEP_OPEN_TAKE_OFF, index);
}

static bool is_soft_hose(const struct part *part)
{
    return part->kind == KIND_HOSE &&
           (part->as.hose.use == HOSE_SUPPLY || part->as.hose.use == HOSE_VACUUM);
}

/* Does something with each master that sits on a direct servo and is not in hand itself. */
static void for_masters_on(struct opening *opening, int servo, enum step_id id)
{
    for (int i = 0; i < opening->system->part_count; i++) {
        if (part_at(opening, i)->kind == KIND_MASTER && !opening->in_hand[i] &&
            pressure_servo_of(opening->system, i) == servo) {
            add_for(opening, id, i)->text = part_at(opening, servo)->name;
        }
    }
}

/* The master that a direct servo pushes, -1. */
static int master_on(const struct opening *opening, int servo)
{
    for (int i = 0; i < opening->system->part_count; i++) {
        if (part_at(opening, i)->kind == KIND_MASTER &&
            pressure_servo_of(opening->system, i) == servo) {
            return i;
        }
    }
    return -1;
}

/* Fluid wets what is inside: not so a joint, nor a servo before its master. */
static bool has_seals(const struct part *part)
{
    return part->kind != KIND_JOINT &&
           (part->kind != KIND_SERVO || part->as.servo.type == SERVO_REMOTE);
}

static void take_off_servo(struct opening *opening, int index)
{
    if (part_at(opening, index)->as.servo.vacuum_hose.m > 0 && !soft_hose_in_hand(opening, index)) {
        add_for(opening, STEP_OPEN_VACUUM_HOSE, index);
    }
    opening_undo_joints(opening, index);
    for_masters_on(opening, index, STEP_OPEN_MASTER_ASIDE);
    if (has_seals(part_at(opening, index))) {
        add_for(opening, STEP_OPEN_TAKE_OFF, index);
        return;
    }
    add_for(opening, STEP_OPEN_PEDAL_ROD, index)->text =
        pedal_of(opening, master_on(opening, index));
    add_for(opening, STEP_OPEN_TAKE_OFF_PLAIN, index);
}

/* What must be held or taken away before the part is moved. */
static void get_at(struct opening *opening, int index)
{
    const struct part *part = part_at(opening, index);
    if (part->kind == KIND_DRUM) {
        add_for(opening, STEP_OPEN_BAND_SHOES, index);
    } else if (part->kind == KIND_SLAVE) {
        add_for(opening,
                part->as.slave.type == SLAVE_CONCENTRIC ? STEP_OPEN_BELL_HOUSING
                                                        : STEP_OPEN_STRAP_SLAVE,
                index);
    }
}

static void take_off(struct opening *opening, int index)
{
    const struct part *part = part_at(opening, index);
    if (only_opened(part) && part->kind != KIND_HOSE && part->kind != KIND_PIPE) {
        opening_undo_joints(opening, index);
        return;
    }
    if (is_soft_hose(part)) {
        add_for(opening, STEP_OPEN_SOFT_HOSE, index);
        return;
    }
    switch (part->kind) {
    case KIND_MASTER:
        take_off_master(opening, index);
        break;
    case KIND_SERVO:
        take_off_servo(opening, index);
        break;
    case KIND_DRUM:
    case KIND_SLAVE:
        get_at(opening, index);
        opening_undo_joints(opening, index);
        add_for(opening, STEP_OPEN_TAKE_OFF, index);
        break;
    case KIND_DISC:
        opening_undo_joints(opening, index);
        add_for(opening, STEP_OPEN_BLOCK_PADS, index);
        add_for(opening, STEP_OPEN_TAKE_OFF, index);
        break;
    case KIND_HOSE:
    case KIND_PIPE:
        opening_undo_carrier(opening, index);
        break;
    case KIND_JOINT:
    case KIND_VALVE:
    case KIND_RESERVOIR:
        opening_undo_joints(opening, index);
        add_for(opening, has_seals(part) ? STEP_OPEN_TAKE_OFF : STEP_OPEN_TAKE_OFF_PLAIN, index);
        break;
    case KIND_VEHICLE:
    case KIND_FLUID:
    case KIND_PEDAL:
    case KIND_PARKING:
    case KIND_COUNT:
        break;
    }
    if (has_pistons(part) || part->kind == KIND_MASTER) {
        add_for(opening, STEP_OPEN_MEASURE, index);
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

/* The master is not on its servo yet. */
static void gauge_servo(struct opening *opening, int master, int servo)
{
    struct step *step = add_for(opening, STEP_SET_SERVO_ROD_GAP, servo);
    step->text = part_at(opening, master)->name;
    step_say_limit(step, "least", "servo-rod-gap-least");
    step_say_limit(step, "most", "servo-rod-gap-most");
}

static void put_back_masters(struct opening *opening, int servo)
{
    for (int i = 0; i < opening->system->part_count; i++) {
        if (part_at(opening, i)->kind == KIND_MASTER && !opening->in_hand[i] &&
            pressure_servo_of(opening->system, i) == servo) {
            gauge_servo(opening, i, servo);
        }
    }
    for_masters_on(opening, servo, STEP_CLOSE_MASTER_BACK);
}

/* With seals wetted in the fluid of its circuit. */
static void fit_part(struct opening *opening, int index)
{
    enum part_kind kind = part_at(opening, index)->kind;
    struct step *step = add_for(opening,
                                kind == KIND_DRUM     ? STEP_CLOSE_CYLINDER
                                : kind == KIND_MASTER ? STEP_CLOSE_MASTER
                                                      : STEP_CLOSE_PART,
                                index);
    int master = master_of(opening, index);
    int fluid = master < 0 ? -1 : system_fluid_of(opening->system, master);
    const struct fluid_row *row =
        fluid < 0 ? NULL : fluid_row(part_at(opening, fluid)->as.fluid.grade);
    step->text = master < 0 ? "fluid of the right grade" : fluid_words(opening->system, master);
    step_say_words(step, "of_fluid",
                   fluid_swelling_words(row == NULL ? FAMILY_UNKNOWN : row->family));
}

static void put_on_master(struct opening *opening, int index)
{
    int servo = pressure_servo_of(opening->system, index);
    if (servo >= 0) {
        gauge_servo(opening, index, servo);
    }
    fit_part(opening, index);
    opening_close_joints(opening, index);
    if (servo < 0) {
        add_for(opening, STEP_CLOSE_ROD, index)->text = pedal_of(opening, index);
    }
    if (part_at(opening, index)->as.master.supply_hose.m > 0 &&
        !soft_hose_in_hand(opening, index)) {
        add_for(opening, STEP_CLOSE_SUPPLY, index);
    }
}

/* What was taken away or held to get at the part. */
static void finish_part(struct opening *opening, int index)
{
    const struct part *part = part_at(opening, index);
    if (part->kind == KIND_DRUM) {
        add_for(opening, STEP_CLOSE_DRUM, index);
    } else if (part->kind == KIND_DISC) {
        add_for(opening, STEP_CLOSE_PADS, index);
    } else if (part->kind == KIND_SLAVE) {
        add_for(opening,
                part->as.slave.type == SLAVE_CONCENTRIC ? STEP_CLOSE_BELL_HOUSING
                                                        : STEP_CLOSE_SLAVE,
                index);
    } else if (part->kind == KIND_SERVO) {
        if (!has_seals(part)) {
            add_for(opening, STEP_CLOSE_ROD, index)->text =
                pedal_of(opening, master_on(opening, index));
        }
        put_back_masters(opening, index);
        if (part->as.servo.vacuum_hose.m > 0 && !soft_hose_in_hand(opening, index)) {
            add_for(opening, STEP_CLOSE_VACUUM_HOSE, index);
        }
    }
}

static void put_on(struct opening *opening, int index);

/* A hose that is screwed into a cylinder or caliper goes on with it, before the drum hides it. */
static void put_hoses_on(struct opening *opening, int index)
{
    for (int c = 0; c < opening->system->connection_count; c++) {
        const struct connection *connection = &opening->system->connections[c];
        int other = connection->a.part == index   ? connection->b.part
                    : connection->b.part == index ? connection->a.part
                                                  : -1;
        if (has_pistons(part_at(opening, index)) && other >= 0 && opening->in_hand[other] &&
            !opening->fitted[other] && part_at(opening, other)->kind == KIND_HOSE) {
            opening->fitted[other] = true;
            put_on(opening, other);
        }
    }
}

static void put_on(struct opening *opening, int index)
{
    const struct part *part = part_at(opening, index);
    if (is_soft_hose(part)) {
        add_for(opening, STEP_CLOSE_SOFT_HOSE, index);
        return;
    }
    switch (part->kind) {
    case KIND_HOSE:
        if (!only_opened(part)) {
            add_for(opening, STEP_CLOSE_HOSE, index);
        }
        opening_close_carrier(opening, index);
        return;
    case KIND_PIPE:
        if (!only_opened(part)) {
            add_for(opening, STEP_CLOSE_PIPE, index);
        }
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
    if (only_opened(part)) {
        opening_close_joints(opening, index);
        return;
    }
    if (part->kind == KIND_MASTER) {
        put_on_master(opening, index);
        return;
    }
    if (has_seals(part)) {
        fit_part(opening, index);
    } else {
        add_for(opening, STEP_CLOSE_PLAIN, index);
    }
    if (part->kind == KIND_DRUM && part->as.drum.cylinder == CYLINDER_SLIDING) {
        add_for(opening, STEP_CLOSE_SLIDES, index);
    }
    if (part->kind == KIND_DRUM && part->as.drum.shoes == SHOES_TWO_LEADING) {
        add_for(opening, STEP_CLOSE_HANDED, index);
    }
    if (part->kind == KIND_DISC) {
        add_for(opening, STEP_CLOSE_CALIPER_SIDE, index);
    }
    put_hoses_on(opening, index);
    opening_close_joints(opening, index);
    finish_part(opening, index);
}

static void add_missing_hoses(struct opening *opening)
{
    for (int i = 0; i < opening->gaps->count; i++) {
        const struct gap *gap = &opening->gaps->items[i];
        if (gap->state == GAP_BARE) {
            add_for(opening, STEP_CLOSE_MISSING_HOSE, gap->far)->text =
                text_print(opening->arena, "between the %s and the %s (from %s to %s)",
                           part_at(opening, gap->near)->name, part_at(opening, gap->far)->name,
                           mount_words(gap->from), mount_words(gap->to));
        }
    }
}

/* The order of taking off: the brakes' dry work first, then what drips, the clutch after the brakes
 * since it drips from the same reservoir, the master last of all: it is the highest, and nothing
 * runs over what is still to be undone. */
enum undoing {
    DRUMS,
    HOSES,
    PIPES,
    DISCS,
    VACUUM_HOSES,
    JOINTS,
    CLUTCH_HOSES,
    CLUTCH_PIPES,
    SLAVES,
    SUPPLY_HOSES,
    CLUTCH_MASTERS,
    MASTERS,
    SERVOS,
    RESERVOIRS,
    NOT_UNDONE
};

/* Whether a part lies on a clutch circuit. */
static bool is_of_clutch(const struct opening *opening, int index)
{
    const struct network *network = opening->network;
    for (int c = 0; c < network->circuit_count; c++) {
        if (network->circuits[c].clutch && network->circuits[c].master == index) {
            return true;
        }
    }
    for (int e = 0; e < network->edge_count; e++) {
        if (network->edges[e].part == index && network->edges[e].circuit >= 0) {
            return network->circuits[network->edges[e].circuit].clutch;
        }
    }
    int vertex = network_vertex(network, index, 0);
    int circuit = vertex < 0 ? -1 : network->vertices[vertex].circuit;
    return circuit >= 0 && network->circuits[circuit].clutch;
}

static enum undoing undoing_rank(const struct opening *opening, int index)
{
    const struct part *part = part_at(opening, index);
    bool clutch = is_of_clutch(opening, index);
    switch (part->kind) {
    case KIND_HOSE:
        return part->as.hose.use == HOSE_VACUUM   ? VACUUM_HOSES
               : part->as.hose.use == HOSE_SUPPLY ? SUPPLY_HOSES
               : clutch                           ? CLUTCH_HOSES
                                                  : HOSES;
    case KIND_PIPE:
        return clutch ? CLUTCH_PIPES : PIPES;
    case KIND_DISC:
        return DISCS;
    case KIND_DRUM:
        return DRUMS;
    case KIND_SLAVE:
        return SLAVES;
    case KIND_JOINT:
    case KIND_VALVE:
        return clutch ? CLUTCH_PIPES : JOINTS;
    case KIND_SERVO:
        return part->as.servo.type == SERVO_REMOTE ? JOINTS : SERVOS;
    case KIND_MASTER:
        return clutch ? CLUTCH_MASTERS : MASTERS;
    case KIND_RESERVOIR:
        return RESERVOIRS;
    case KIND_VEHICLE:
    case KIND_FLUID:
    case KIND_PEDAL:
    case KIND_PARKING:
    case KIND_COUNT:
        break;
    }
    return NOT_UNDONE;
}

/* From below upwards; pipes before the cylinders, whose union is begun by hand, hoses when what
 * they join is on; the master last of all: it is full, and stands over the rest. */
static void put_all_on(struct opening *opening)
{
    static const enum undoing order[] = {
        JOINTS,       PIPES,          DRUMS,  DISCS,   HOSES,      CLUTCH_PIPES, SLAVES,
        CLUTCH_HOSES, CLUTCH_MASTERS, SERVOS, MASTERS, RESERVOIRS, SUPPLY_HOSES, VACUUM_HOSES};
    for (size_t k = 0; k < sizeof order / sizeof *order; k++) {
        for (int i = 0; i < opening->count; i++) {
            int index = opening->parts[i];
            if (undoing_rank(opening, index) == order[k] && !opening->fitted[index]) {
                opening->fitted[index] = true;
                put_on(opening, index);
            }
        }
    }
}

static void take_parts(struct opening *opening)
{
    const struct system *system = opening->system;
    opening->parts = ARENA_ARRAY(opening->arena, (size_t)system->part_count + 1, int);
    opening->in_hand = ARENA_ARRAY(opening->arena, (size_t)system->part_count + 1, bool);
    opening->fitted = ARENA_ARRAY(opening->arena, (size_t)system->part_count + 1, bool);
    for (int i = 0; i < system->part_count; i++) {
        enum undoing rank = undoing_rank(opening, i);
        bool implied =
            system->parts[i].kind == KIND_JOINT && system->parts[i].as.joint.implied == 1;
        if (!part_was_opened(&system->parts[i]) || rank == NOT_UNDONE || implied) {
            continue;
        }
        opening->in_hand[i] = true;
        int at = opening->count++;
        while (at > 0 && undoing_rank(opening, opening->parts[at - 1]) > rank) {
            opening->parts[at] = opening->parts[at - 1];
            at--;
        }
        opening->parts[at] = i;
    }
}

/* Whether something is measured or looked at that a decision can be made about. */
static bool anything_off(const struct opening *opening)
{
    for (int i = 0; i < opening->count; i++) {
        if (!only_opened(part_at(opening, opening->parts[i]))) {
            return true;
        }
    }
    return false;
}

struct steps opening_of(const struct system *system, const struct network *network,
                        struct arena *arena)
{
    struct steps steps = {.arena = arena};
    struct opening opening = {
        .system = system, .network = network, .steps = &steps, .arena = arena};
    struct bleed_set set = bleed_set_of(system, network, arena);
    struct touched touched = touched_by(system, network, &set, arena);
    struct gaps gaps = mounts_gaps(system, network, arena);
    opening.touched = &touched;
    opening.gaps = &gaps;
    take_parts(&opening);
    if (opening.count == 0) {
        add_missing_hoses(&opening);
        return steps;
    }
    opening.undone = ARENA_ARRAY(arena, (size_t)system->connection_count + 1, bool);
    opening.closed = ARENA_ARRAY(arena, (size_t)system->connection_count + 1, bool);
    bool wet = set.count > 0;
    if (wet) {
        leave_pedals(&opening);
    }
    for (int i = 0; i < opening.count; i++) {
        take_off(&opening, opening.parts[i]);
    }
    if (anything_off(&opening)) {
        steps_add(&steps, STEP_APART_DECIDE);
    }
    if (wet) {
        steps_add(&steps, STEP_CLOSE_THREADS);
        steps_add(&steps, STEP_CLOSE_WASHERS);
    }
    put_all_on(&opening);
    add_missing_hoses(&opening);
    return steps;
}
