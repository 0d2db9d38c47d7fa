#include "advice/figures/part_bore.h"

#include <math.h>

#include "parts/keys/key.h"

#define NO_BORE ((size_t)-1)

size_t part_bore_field(enum part_kind kind)
{
    switch (kind) {
    case KIND_MASTER:
        return FIELD(as.master.bore);
    case KIND_DRUM:
        return FIELD(as.drum.bore);
    case KIND_DISC:
        return FIELD(as.disc.bores);
    case KIND_SLAVE:
        return FIELD(as.slave.bore);
    case KIND_SERVO:
        return FIELD(as.servo.bore);
    case KIND_VEHICLE:
    case KIND_FLUID:
    case KIND_PEDAL:
    case KIND_RESERVOIR:
    case KIND_PIPE:
    case KIND_HOSE:
    case KIND_JOINT:
    case KIND_VALVE:
    case KIND_PARKING:
    case KIND_COUNT:
        break;
    }
    return NO_BORE;
}

struct length part_bore(const struct part *part)
{
    struct length bore = {NAN};
    size_t field = part_bore_field(part->kind);
    if (field != NO_BORE) {
        bore.m = key_value(part, key_of(part->kind, field));
    }
    return bore;
}

bool part_is_cylinder(const struct part *part)
{
    return part_bore_field(part->kind) != NO_BORE && part->kind != KIND_SERVO;
}
