#include "parts/drum_brake.h"

#include <math.h>

#include "parts/master.h"
#include "units/constants.h"

/* No shoe locks at as little friction. */
#define LEAST_FRICTION 0.02
/* Give is stated at this line pressure. */
#define REFERENCE_PRESSURE 10e6
/* Clearance of shoes whose adjusters were not set, as a multiple of the set one. */
#define SLACK_CLEARANCE 3
/* Squash of a hot lining, as a multiple of a cold one's; from memory. */
#define SQUASH_HOT 2
/* Linear expansion of grey iron, 1/K; from memory. */
#define IRON_EXPANSION 11.5e-6
/* The clearance is set at this temperature, degC. */
#define COLD 20

/* Where a pinned lining begins, from the pin. */
static double lining_start(const struct drum *drum)
{
    double start = drum->lining_start.rad;
    return isnan(start) ? PI / 2 - drum->lining_arc.rad / 2 : start;
}

static double pinned_factor(const struct drum *drum, double mu, bool leading)
{
    double pin = drum->pin_distance.m, arc = drum->lining_arc.rad, start = lining_start(drum);
    return shoe_factor_pin(mu, drum->diameter.m / 2, pin, pin + drum->tip_distance.m, start,
                           start + arc, leading);
}

static double sliding_factor(const struct drum *drum, double mu, bool leading)
{
    const struct shoe_abutment face = {drum->abutment_angle.rad, drum->abutment_friction.value};
    return shoe_factor_sliding(mu, drum->diameter.m / 2, drum->tip_distance.m, drum->pin_distance.m,
                               drum->lining_arc.rad / 2, face, leading);
}

static double one_shoe(const struct drum *drum, double mu, bool leading)
{
    return drum->anchor == ANCHOR_PIN ? pinned_factor(drum, mu, leading)
                                      : sliding_factor(drum, mu, leading);
}

struct shoe_factors drum_shoe_factors(const struct drum *drum, struct number friction, bool forward)
{
    double radius = drum->diameter.m / 2, mu = friction.value, front = NAN, rear = NAN;
    switch (radius > 0 ? drum->shoes : SHOES_NOT_SAID) {
    case SHOES_NOT_SAID:
        break;
    case SHOES_LEADING_TRAILING:
        front = one_shoe(drum, mu, forward);
        rear = one_shoe(drum, mu, !forward);
        break;
    case SHOES_TWO_LEADING:
        front = rear = one_shoe(drum, mu, forward);
        break;
    case SHOES_DUO_SERVO:
        return duo_servo_factors(mu, radius, drum->tip_distance.m, drum->tip_distance.m,
                                 drum->pin_distance.m, drum->lining_arc.rad / 2,
                                 drum->lining_arc.rad / 2);
    }
    return (struct shoe_factors){front, rear, front};
}

double drum_factor_with(const struct drum *drum, struct number friction, bool forward)
{
    struct shoe_factors shoes = drum_shoe_factors(drum, friction, forward);
    return shoes.front + shoes.rear;
}

double drum_factor(const struct drum *drum, bool forward)
{
    return drum_factor_with(drum, drum->friction, forward);
}

bool drum_near_lock(const struct drum *drum, struct number friction, bool forward)
{
    return isnan(drum_factor_with(drum, friction, forward)) &&
           drum_factor_with(drum, (struct number){LEAST_FRICTION}, forward) > 0 &&
           friction.value > LEAST_FRICTION;
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

/* Force of a tip; NaN outside its ranges. */
static double tip_force(const struct drum *drum, struct pressure p)
{
    double efficiency = drum->efficiency.value;
    if (!(p.pa >= 0) || !(drum->threshold.pa >= 0) || !(efficiency > 0 && efficiency <= 1))
        return NAN;
    return efficiency * fmax(p.pa - drum->threshold.pa, 0) * circle_area(drum->bore).m2;
}

struct torque drum_torque_by_factor(const struct drum *drum, struct pressure p, double factor)
{
    return (struct torque){factor * tip_force(drum, p) * drum->diameter.m / 2};
}

struct shoe_torques drum_torques_by_factors(const struct drum *drum, struct pressure p,
                                            const struct shoe_factors *shoes)
{
    double other = shoes->front - shoes->own + shoes->rear;
    return (struct shoe_torques){drum_torque_by_factor(drum, p, shoes->own),
                                 drum_torque_by_factor(drum, p, other)};
}

struct shoe_torques drum_shoe_torques(const struct drum *drum, struct pressure p)
{
    struct shoe_factors shoes = drum_shoe_factors(drum, drum->friction, true);
    return drum_torques_by_factors(drum, p, &shoes);
}

/* Peak pressure over torque of one shoe. */
static double peak_of_shoe(const struct drum *drum, bool pinned, double start, bool leading)
{
    const struct shoe_abutment face = {drum->abutment_angle.rad, drum->abutment_friction.value};
    double mu = drum->friction.value, radius = drum->diameter.m / 2, width = drum->lining_width.m;
    if (pinned)
        return shoe_peak_pin(mu, radius, width, start, start + drum->lining_arc.rad);
    return shoe_peak_sliding(mu, radius, width, drum->tip_distance.m, drum->pin_distance.m,
                             drum->lining_arc.rad / 2, face, leading);
}

struct pressure drum_lining_pressure(const struct drum *drum, struct shoe_torques torques)
{
    double front = NAN, rear = NAN, start = lining_start(drum);
    bool pinned = drum->anchor == ANCHOR_PIN;
    switch (drum->shoes) {
    case SHOES_NOT_SAID:
        break;
    case SHOES_LEADING_TRAILING:
        front = peak_of_shoe(drum, pinned, start, true);
        rear = peak_of_shoe(drum, pinned, start, false);
        break;
    case SHOES_TWO_LEADING:
        front = rear = peak_of_shoe(drum, pinned, start, true);
        break;
    case SHOES_DUO_SERVO: { /* the primary slides on the link, square and free of friction */
        struct drum primary = *drum;
        primary.pin_distance = drum->tip_distance;
        primary.abutment_angle.rad = primary.abutment_friction.value = 0;
        front = peak_of_shoe(&primary, false, 0, true);
        rear = peak_of_shoe(drum, true, PI / 2 - drum->lining_arc.rad / 2, true);
        break;
    }
    }
    double pressures[] = {front * torques.front.nm, rear * torques.rear.nm};
    if (isnan(pressures[0]) || isnan(pressures[1]))
        return (struct pressure){NAN};
    return (struct pressure){fmax(pressures[0], pressures[1])};
}

struct torque drum_torque(const struct drum *drum, struct pressure p, bool forward)
{
    return drum_torque_by_factor(drum, p, drum_factor(drum, forward));
}

double drum_tip_ratio(const struct drum *drum)
{
    double pin = drum->pin_distance.m, tip = drum->tip_distance.m, sine = 1;
    if (drum->shoes == SHOES_DUO_SERVO)
        pin = tip;
    else if (drum->anchor == ANCHOR_PIN && !isnan(drum->lining_start.rad))
        sine = sin(drum->lining_start.rad + drum->lining_arc.rad / 2);
    if (!(pin > 0) || !(tip > 0) || !(sine > 0))
        return NAN;
    return (pin + tip) / (pin * sine);
}

struct length drum_growth(const struct drum *drum, struct temperature at)
{
    double radius = drum->diameter.m / 2;
    return (struct length){radius > 0 ? IRON_EXPANSION * radius * (at.celsius - COLD) : NAN};
}

struct length drum_hot_tip_travel(const struct drum *drum)
{
    double apart = drum_growth(drum, drum->hot).m - drum_growth(drum, drum->shoes_hot).m;
    return (struct length){drum_tip_ratio(drum) * apart};
}

/* Thickness of a lining as it is now: as measured, or new. */
static double lining_now(const struct drum *drum)
{
    double now = isnan(drum->lining_left.m) ? drum->lining_new.m : drum->lining_left.m;
    return now > 0 ? now : NAN;
}

static double lining_as(const struct drum *drum, enum linings linings)
{
    switch (linings) {
    case LININGS_AS_SAID:
        break;
    case LININGS_NEW:
        return drum->lining_new.m > 0 ? drum->lining_new.m : NAN;
    case LININGS_WORN:
        return drum->lining_worn.m > 0 ? drum->lining_worn.m : NAN;
    }
    return lining_now(drum);
}

static double clearance_as(const struct drum *drum, const struct brake_case *as)
{
    double clearance = drum->clearance.m;
    if (as->slack) {
        double slack = SLACK_CLEARANCE * clearance;
        if (as->linings == LININGS_WORN) {
            double worn = lining_now(drum) - lining_as(drum, LININGS_WORN);
            clearance += drum_tip_ratio(drum) * worn;
        }
        clearance = clearance > slack || isnan(clearance) ? clearance : slack;
    }
    if (as->hot)
        clearance += drum_hot_tip_travel(drum).m;
    return isnan(clearance) ? NAN : fmax(clearance, 0);
}

static double give_as(const struct drum *drum, const struct brake_case *as)
{
    double linings = 1;
    if (as->linings != LININGS_AS_SAID)
        linings = lining_as(drum, as->linings) / lining_now(drum);
    if (as->hot)
        linings *= SQUASH_HOT;
    if (linings == 1) /* the lining's own part need not be known */
        return drum->give.m;
    double squash = drum->lining_squash.m;
    if (!(squash >= 0))
        return NAN;
    return drum->give.m + (linings - 1) * fmin(squash, drum->give.m);
}

/* Give as a measured travel of the pistons has it. */
static struct drum by_travel(const struct drum *drum)
{
    struct drum measured = *drum;
    if (drum->piston_travel.m > 0)
        measured.give.m = fmax(drum->piston_travel.m - drum->clearance.m, 0);
    return measured;
}

struct drum_volumes drum_volume(const struct drum *described, struct pressure p,
                                const struct brake_case *as)
{
    const struct drum measured = by_travel(described), *drum = &measured;
    static const struct brake_case as_described = {0};
    struct drum_volumes volumes = {{NAN}, {NAN}};
    if (drum_pistons(drum) == 0 || !(p.pa >= 0) || !(drum->threshold.pa >= 0) ||
        !(drum->clearance.m >= 0) || !(drum->give.m >= 0))
        return volumes;
    /* Two tips move in every layout. The body of a sliding cylinder carries the second tip the
     * other way, so its one bore opens by both travels. */
    double swept = 2 * circle_area(drum->bore).m2;
    double taken_up = p.pa < drum->threshold.pa ? p.pa / drum->threshold.pa : p.pa > 0;
    const struct brake_case *stands = as == NULL ? &as_described : as;
    volumes.clearance.m3 = swept * clearance_as(drum, stands) * taken_up;
    volumes.give.m3 = swept * give_as(drum, stands) * p.pa / REFERENCE_PRESSURE;
    return volumes;
}
