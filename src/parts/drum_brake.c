#include "parts/drum_brake.h"

#include <math.h>

#include "parts/master.h"
#include "units/constants.h"

/* Give is stated at this line pressure. */
#define REFERENCE_PRESSURE 10e6
/* Clearance of shoes whose adjusters were not set, as a multiple of the set one. */
#define SLACK_CLEARANCE 3

double drum_factor(const struct drum *drum, bool forward)
{
    double radius = drum->diameter.m / 2, pin = drum->pin_distance.m, tip = drum->tip_distance.m;
    double mu = drum->friction.value, arc = drum->lining_arc.rad;
    if (!(radius > 0))
        return NAN;
    if (drum->shoes == SHOES_DUO_SERVO)
        return duo_servo_factor(mu, radius, tip, tip, pin, arc / 2, arc / 2);

    double leading, trailing;
    if (drum->anchor == ANCHOR_PIN) {
        double start = drum->lining_start.rad;
        if (isnan(start))
            start = PI / 2 - arc / 2;
        leading = shoe_factor_pin(mu, radius, pin, pin + tip, start, start + arc, true);
        trailing = shoe_factor_pin(mu, radius, pin, pin + tip, start, start + arc, false);
    } else {
        leading = shoe_factor_sliding(mu, radius, tip, pin, arc / 2, true);
        trailing = shoe_factor_sliding(mu, radius, tip, pin, arc / 2, false);
    }
    if (drum->shoes == SHOES_LEADING_TRAILING)
        return leading + trailing;
    if (drum->shoes == SHOES_TWO_LEADING)
        return 2 * (forward ? leading : trailing);
    return NAN;
}

int drum_pistons(const struct drum *drum)
{
    switch (drum->cylinder) {
    case CYLINDER_NOT_SAID:
        break;
    case CYLINDER_TWO_PISTONS:
    case CYLINDER_ONE_EACH:
        return 2;
    case CYLINDER_SLIDING:
        return 1;
    }
    return 0;
}

struct torque drum_torque_by_factor(const struct drum *drum, struct pressure p, double factor)
{
    double efficiency = drum->efficiency.value;
    if (!(p.pa >= 0) || !(drum->threshold.pa >= 0) || !(efficiency > 0 && efficiency <= 1))
        return (struct torque){NAN};
    double tip_force = efficiency * fmax(p.pa - drum->threshold.pa, 0) * circle_area(drum->bore).m2;
    return (struct torque){factor * tip_force * drum->diameter.m / 2};
}

struct torque drum_torque(const struct drum *drum, struct pressure p, bool forward)
{
    return drum_torque_by_factor(drum, p, drum_factor(drum, forward));
}

struct drum_volumes drum_volume(const struct drum *drum, struct pressure p,
                                const struct brake_case *as)
{
    struct drum_volumes volumes = {{NAN}, {NAN}};
    if (drum_pistons(drum) == 0 || !(p.pa >= 0) || !(drum->threshold.pa >= 0) ||
        !(drum->clearance.m >= 0) || !(drum->give.m >= 0))
        return volumes;
    /* Two tips move in every layout. The body of a sliding cylinder carries the second tip the
     * other way, so its one bore opens by both travels. */
    double swept = 2 * circle_area(drum->bore).m2;
    double taken_up = p.pa < drum->threshold.pa ? p.pa / drum->threshold.pa : p.pa > 0;
    double clearance = drum->clearance.m * (as != NULL && as->slack ? SLACK_CLEARANCE : 1);
    volumes.clearance.m3 = swept * clearance * taken_up;
    volumes.give.m3 = swept * drum->give.m * p.pa / REFERENCE_PRESSURE;
    return volumes;
}
