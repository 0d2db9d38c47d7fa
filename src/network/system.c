#include "network/system.h"

#include <math.h>
#include <string.h>

int system_first(const struct system *system, enum part_kind kind)
{
    for (int i = 0; i < system->part_count; i++) {
        if (system->parts[i].kind == kind)
            return i;
    }
    return -1;
}

/* The part of a kind when there is exactly one, else -1. */
static int only_one(const struct system *system, enum part_kind kind)
{
    int found = -1;
    for (int i = 0; i < system->part_count; i++) {
        if (system->parts[i].kind != kind)
            continue;
        if (found >= 0)
            return -1;
        found = i;
    }
    return found;
}

static bool is_blank(char letter)
{
    return letter == ' ' || letter == '\t';
}

static char lower(char letter)
{
    return letter >= 'A' && letter <= 'Z' ? (char)(letter - 'A' + 'a') : letter;
}

static bool same_name(const char *a, const char *b)
{
    for (;;) {
        while (is_blank(*a))
            a++;
        while (is_blank(*b))
            b++;
        if (lower(*a) != lower(*b))
            return false;
        if (*a == '\0')
            return true;
        a++;
        b++;
    }
}

int system_find(const struct system *system, const char *name)
{
    for (int i = 0; i < system->part_count; i++) {
        if (system->parts[i].name && same_name(system->parts[i].name, name))
            return i;
    }
    return -1;
}

static int axle_rank(enum axle axle)
{
    switch (axle) {
    case AXLE_FRONT:
        return 0;
    case AXLE_REAR:
        return 1;
    case AXLE_NONE:
        break;
    }
    return 2;
}

static int side_rank(const struct system *system, enum side side)
{
    if (side == SIDE_NONE)
        return 2;
    const enum side first = system_vehicle(system)->driver == DRIVER_LEFT ? SIDE_RIGHT : SIDE_LEFT;
    return side == first ? 0 : 1;
}

int system_compare(const struct system *system, int a, int b)
{
    const struct part *one = &system->parts[a];
    const struct part *other = &system->parts[b];
    int difference = axle_rank(one->axle) - axle_rank(other->axle);
    if (difference == 0)
        difference = side_rank(system, one->side) - side_rank(system, other->side);
    if (difference == 0 && one->name && other->name)
        difference = strcmp(one->name, other->name);
    return difference != 0 ? difference : a - b;
}

const struct vehicle *system_vehicle(const struct system *system)
{
    static const struct vehicle unsaid = {
        .mass = {NAN},
        .front_share = {NAN},
        .wheelbase = {NAN},
        .centre_height = {NAN},
        .front_tyre = {NAN},
        .rear_tyre = {NAN},
        .tyre_grip = {NAN},
    };
    const int part = system_first(system, KIND_VEHICLE);
    return part < 0 ? &unsaid : &system->parts[part].as.vehicle;
}

/* The reservoir that feeds a master, -1 when that is not clear. */
static int reservoir_of(const struct system *system, int master)
{
    const struct master *said = &system->parts[master].as.master;
    if (said->reservoir >= 0)
        return said->reservoir;
    if (said->casting >= 0 && system->parts[said->casting].kind == KIND_MASTER &&
        system->parts[said->casting].as.master.reservoir >= 0)
        return system->parts[said->casting].as.master.reservoir;
    return only_one(system, KIND_RESERVOIR);
}

int system_fluid_of(const struct system *system, int master)
{
    const int reservoir = reservoir_of(system, master);
    if (reservoir >= 0 && system->parts[reservoir].kind == KIND_RESERVOIR &&
        system->parts[reservoir].as.reservoir.fluid >= 0)
        return system->parts[reservoir].as.reservoir.fluid;
    return only_one(system, KIND_FLUID);
}

struct system *system_copy(const struct system *system, struct arena *arena)
{
    struct system *copy = ARENA_NEW(arena, struct system);
    *copy = *system;
    copy->arena = arena;
    copy->parts = ARENA_ARRAY(arena, (size_t)system->part_count, struct part);
    if (system->part_count > 0)
        memcpy(copy->parts, system->parts, (size_t)system->part_count * sizeof *copy->parts);
    return copy;
}

static enum mount wheel_mount(enum side side, enum mount left, enum mount right)
{
    switch (side) {
    case SIDE_LEFT:
        return left;
    case SIDE_RIGHT:
        return right;
    case SIDE_NONE:
        break;
    }
    return MOUNT_UNKNOWN;
}

static enum mount front_brake_mount(const struct vehicle *vehicle, enum side side)
{
    switch (vehicle->front_axle) {
    case AXLE_INDEPENDENT:
    case AXLE_LIVE:
    case AXLE_DEAD:
        return wheel_mount(side, MOUNT_FRONT_LEFT_WHEEL, MOUNT_FRONT_RIGHT_WHEEL);
    case AXLE_FORK:
        return MOUNT_FORK;
    case AXLE_ARM:
    case AXLE_TYPE_NOT_SAID:
        break;
    }
    return MOUNT_UNKNOWN;
}

static enum mount rear_brake_mount(const struct vehicle *vehicle, enum side side)
{
    switch (vehicle->rear_axle) {
    case AXLE_LIVE:
    case AXLE_DEAD:
    case AXLE_ARM:
        return MOUNT_REAR_AXLE;
    case AXLE_INDEPENDENT:
        return wheel_mount(side, MOUNT_REAR_LEFT_WHEEL, MOUNT_REAR_RIGHT_WHEEL);
    case AXLE_FORK:
    case AXLE_TYPE_NOT_SAID:
        break;
    }
    return MOUNT_UNKNOWN;
}

static enum mount brake_mount(const struct system *system, const struct part *brake)
{
    switch (brake->axle) {
    case AXLE_FRONT:
        return front_brake_mount(system_vehicle(system), brake->side);
    case AXLE_REAR:
        return rear_brake_mount(system_vehicle(system), brake->side);
    case AXLE_NONE:
        break;
    }
    return MOUNT_UNKNOWN;
}

static bool names_part(const struct part_names *names, int part)
{
    for (size_t i = 0; i < names->count; i++) {
        if (names->parts && names->parts[i] == part)
            return true;
    }
    return false;
}

/* Whether a hand lever works a part, by itself or through a direct servo. */
static bool worked_by_hand(const struct system *system, int part)
{
    for (int i = 0; i < system->part_count; i++) {
        const struct part *lever = &system->parts[i];
        if (lever->kind != KIND_PEDAL || lever->as.pedal.type != PEDAL_HAND)
            continue;
        const struct part_names *works = &lever->as.pedal.works;
        if (i == part || names_part(works, part))
            return true;
        for (size_t k = 0; k < works->count; k++) {
            const int servo = works->parts ? works->parts[k] : -1;
            if (servo >= 0 && system->parts[servo].kind == KIND_SERVO &&
                system->parts[servo].as.servo.works == part)
                return true;
        }
    }
    return false;
}

static bool has_handlebar(const struct vehicle *vehicle)
{
    return vehicle->type == VEHICLE_MOTORCYCLE || vehicle->front_axle == AXLE_FORK;
}

static enum mount control_mount(const struct system *system, int part)
{
    if (has_handlebar(system_vehicle(system)) && worked_by_hand(system, part))
        return MOUNT_HANDLEBAR;
    return MOUNT_BODY;
}

/* On the handlebar when all the masters that it feeds are. */
static enum mount reservoir_mount(const struct system *system, int reservoir)
{
    bool feeds = false;
    for (int i = 0; i < system->part_count; i++) {
        if (system->parts[i].kind != KIND_MASTER || reservoir_of(system, i) != reservoir)
            continue;
        if (system_mount(system, i) != MOUNT_HANDLEBAR)
            return MOUNT_BODY;
        feeds = true;
    }
    return feeds ? MOUNT_HANDLEBAR : MOUNT_BODY;
}

enum mount system_mount(const struct system *system, int part)
{
    const struct part *asked = &system->parts[part];
    if (asked->fitted.on != MOUNT_UNKNOWN)
        return asked->fitted.on;
    switch (asked->kind) {
    case KIND_DISC:
    case KIND_DRUM:
        return brake_mount(system, asked);
    case KIND_SLAVE:
        return MOUNT_ENGINE;
    case KIND_PEDAL:
    case KIND_SERVO:
    case KIND_MASTER:
        return control_mount(system, part);
    case KIND_RESERVOIR:
        return reservoir_mount(system, part);
    case KIND_PARKING:
        return MOUNT_BODY;
    case KIND_VEHICLE:
    case KIND_FLUID:
    case KIND_PIPE:
    case KIND_HOSE:
    case KIND_JOINT:
    case KIND_VALVE:
    case KIND_COUNT:
        break;
    }
    return MOUNT_UNKNOWN;
}
