#include "parts/part.h"

#include <math.h>

#include "parts/hose.h"
#include "parts/keys/key.h"
#include "parts/words.h"

/* Usual figures, from memory: depth of fluid behind a piston (of a caliper: with new pads), and
 * volumes of small bodies. */
#define CALIPER_DEPTH        6e-3
#define WHEEL_CYLINDER_DEPTH 4e-3
#define MASTER_DEPTH         15e-3
#define SLAVE_DEPTH          20e-3
#define JOINT_VOLUME         0.2e-6
#define VALVE_VOLUME         1.5e-6

int part_chambers(const struct part *part)
{
    switch (part->kind) {
    case KIND_MASTER:
        return part->as.master.type == MASTER_TANDEM ? 2 : 1;
    case KIND_SERVO:
        return part->as.servo.type == SERVO_REMOTE ? 2 : 0;
    case KIND_VALVE:
        if (part->as.valve.passages < 1)
            return part->as.valve.type == VALVE_SHUTTLE ? 4 : 2;
        return 2 * part->as.valve.passages;
    case KIND_DISC:
        return part->as.disc.inlets == 2 ? 2 : 1;
    case KIND_PIPE:
    case KIND_HOSE:
        return 2;
    case KIND_JOINT:
    case KIND_DRUM:
    case KIND_SLAVE:
        return 1;
    case KIND_VEHICLE:
    case KIND_FLUID:
    case KIND_PEDAL:
    case KIND_RESERVOIR:
    case KIND_PARKING:
    case KIND_COUNT:
        break;
    }
    return 0;
}

const char *part_chamber_word(const struct part *part, int chamber)
{
    static const char *const master[] = {"primary", "secondary"};
    static const char *const passage[] = {"in", "out", "second in", "second out"};
    static const char *const inlet[] = {"inlet 1", "inlet 2"};
    static const char *const end[] = {"near end", "far end"};
    int count = part_chambers(part);
    if (count < 2 || chamber < 0 || chamber >= count)
        return "";
    switch (part->kind) {
    case KIND_MASTER:
        return master[chamber];
    case KIND_SERVO:
    case KIND_VALVE:
        return passage[chamber];
    case KIND_DISC:
        return inlet[chamber];
    case KIND_PIPE:
    case KIND_HOSE:
        return end[chamber];
    case KIND_JOINT:
    case KIND_DRUM:
    case KIND_SLAVE:
    case KIND_VEHICLE:
    case KIND_FLUID:
    case KIND_PEDAL:
    case KIND_RESERVOIR:
    case KIND_PARKING:
    case KIND_COUNT:
        break;
    }
    return "";
}

static double stroke_or(struct length stroke, double usual, bool *assumed)
{
    *assumed = !(stroke.m > 0);
    return stroke.m > 0 ? stroke.m : usual;
}

static double master_volume(const struct master *master, int chamber, bool *assumed)
{
    struct length stroke = master->stroke;
    if (master->type == MASTER_TANDEM) {
        stroke = chamber == 0 ? master->primary_stroke : master->secondary_stroke;
        if (!(stroke.m > 0))
            stroke.m = master->stroke.m / 2;
    }
    return circle_area(master->bore).m2 * stroke_or(stroke, MASTER_DEPTH, assumed);
}

/* Fluid behind all pistons of one inlet of a caliper, which have followed the pads as these wore.
 */
static double disc_chamber(const struct disc *disc)
{
    double worn = fmax(disc->pad_new.m - disc->pad_left.m, 0); /* 0 where that is not known */
    double depth = CALIPER_DEPTH + (disc->caliper == CALIPER_SLIDING ? 2 : 1) * worn;
    double area = disc->bores.count * circle_area(disc->bores.bore).m2;
    if (disc->second_bores.count > 0 && disc->second_bores.bore.m > 0)
        area += disc->second_bores.count * circle_area(disc->second_bores.bore).m2;
    return area * depth / (disc->inlets == 2 ? 2 : 1);
}

static double computed(const struct part *part, int chamber, bool *assumed)
{
    *assumed = true;
    switch (part->kind) {
    case KIND_MASTER:
        return master_volume(&part->as.master, chamber, assumed);
    case KIND_SERVO:
        return circle_area(part->as.servo.bore).m2 * MASTER_DEPTH;
    case KIND_DISC:
        return disc_chamber(&part->as.disc);
    case KIND_DRUM:
        return drum_pistons(&part->as.drum) * circle_area(part->as.drum.bore).m2 *
               WHEEL_CYLINDER_DEPTH;
    case KIND_SLAVE:
        return slave_area(&part->as.slave).m2 *
               stroke_or(part->as.slave.stroke, SLAVE_DEPTH, assumed);
    case KIND_JOINT:
        return JOINT_VOLUME;
    case KIND_VALVE:
        return VALVE_VOLUME / 2; /* shared by in and out */
    case KIND_PIPE:
        *assumed = false;
        return pipe_volume(&part->as.pipe).m3;
    case KIND_HOSE:
        *assumed = false;
        return hose_volume(&part->as.hose).m3;
    case KIND_VEHICLE:
    case KIND_FLUID:
    case KIND_PEDAL:
    case KIND_RESERVOIR:
    case KIND_PARKING:
    case KIND_COUNT:
        break;
    }
    return NAN;
}

struct volume part_chamber_volume(const struct part *part, int chamber, bool *assumed)
{
    *assumed = false;
    if (part_chambers(part) == 0)
        return (struct volume){NAN};
    if (part->fitted.chamber.m3 > 0)
        return part->fitted.chamber;
    return (struct volume){computed(part, chamber, assumed)};
}
