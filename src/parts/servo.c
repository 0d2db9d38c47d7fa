#include "parts/servo.h"

#include <math.h>

#include "parts/master.h"
#include "units/constants.h"

enum { MOST_STROKES = 100 };

struct area servo_area(const struct servo *servo)
{
    return circle_area(servo->diameter);
}

struct force servo_ceiling(const struct servo *servo)
{
    double efficiency = servo->efficiency.value;
    if (!(efficiency > 0 && efficiency <= 1) || !(servo->return_spring.n >= 0) ||
        !(servo->vacuum.pa >= 0 && servo->vacuum.pa <= STANDARD_ATMOSPHERE))
        return (struct force){NAN};
    return (struct force){efficiency * servo_area(servo).m2 * servo->vacuum.pa -
                          servo->return_spring.n};
}

struct force servo_ceiling_after(const struct servo *servo, struct length stroke, int before)
{
    double volume = servo->vacuum_volume.m3, swept = servo_area(servo).m2 * stroke.m;
    if (!(volume > 0) || !(swept > 0 && swept < volume) || before < 0 ||
        isnan(servo_ceiling(servo).n))
        return (struct force){NAN};
    double rest = STANDARD_ATMOSPHERE - servo->vacuum.pa;
    rest = fmin(rest + before * STANDARD_ATMOSPHERE * swept / volume, STANDARD_ATMOSPHERE);
    double pressed = fmin(rest * volume / (volume - swept), STANDARD_ATMOSPHERE);
    return (struct force){servo->efficiency.value * servo_area(servo).m2 *
                              (STANDARD_ATMOSPHERE - pressed) -
                          servo->return_spring.n};
}

double servo_strokes_left(const struct servo *servo, struct length stroke)
{
    double first = servo_ceiling_after(servo, stroke, 0).n;
    if (isnan(first))
        return NAN;
    if (first <= 0)
        return 0;
    int strokes = 1;
    while (strokes < MOST_STROKES && servo_ceiling_after(servo, stroke, strokes).n >= first / 2)
        strokes++;
    return strokes < MOST_STROKES ? (double)strokes : NAN;
}

/* The law that direct and remote servos share, in newtons or pascals alike: a servo whose figures
 * are all divided by its piston's area works in pressures. */
struct law {
    double cut_in, jump, ratio, ceiling;
    double beyond; /* output over input past the knee */
};

static double law_knee(struct law law)
{
    if (!(law.cut_in >= 0) || !(law.jump >= 0) || !(law.ratio > 1) || isnan(law.ceiling) ||
        isnan(law.beyond))
        return NAN;
    /* jump + ratio (F - cut in) = beyond F + ceiling */
    double knee = (law.ceiling + law.ratio * law.cut_in - law.jump) / (law.ratio - law.beyond);
    return fmax(knee, law.cut_in);
}

static double law_output(struct law law, double input)
{
    double knee = law_knee(law);
    if (!(input >= 0) || isnan(knee))
        return NAN;
    if (input < law.cut_in)
        return 0;
    double helped = law.jump + law.ratio * (input - law.cut_in);
    return fmax(fmin(helped, law.beyond * input + law.ceiling), 0);
}

static struct law force_law(const struct servo *servo)
{
    return (struct law){servo->cut_in.n, servo->jump.n, servo->ratio.value, servo_ceiling(servo).n,
                        1};
}

struct force servo_knee(const struct servo *servo)
{
    return (struct force){law_knee(force_law(servo))};
}

struct force servo_output(const struct servo *servo, struct force input, bool assisted)
{
    if (assisted)
        return (struct force){law_output(force_law(servo), input.n)};
    if (!(input.n >= 0) || !(servo->return_spring.n >= 0))
        return (struct force){NAN};
    return (struct force){fmax(input.n - servo->return_spring.n, 0)};
}

double servo_area_before(const struct servo *servo)
{
    double rod = servo->rod_diameter.m, bore = servo->bore.m;
    return rod >= 0 && bore > rod ? 1 - rod * rod / (bore * bore) : NAN;
}

static struct law line_law(const struct servo *servo)
{
    double area = circle_area(servo->bore).m2;
    return (struct law){servo->line_cut_in.pa, servo->jump.n / area, servo->ratio.value,
                        servo_ceiling(servo).n / area, servo_area_before(servo)};
}

struct pressure servo_line_knee(const struct servo *servo)
{
    return (struct pressure){law_knee(line_law(servo))};
}

/* What fluid alone brings about: it passes, or pushes the piston. */
static double line_least(const struct servo *servo, double input)
{
    if (servo->passes != NO)
        return input;
    double spring = servo->return_spring.n / circle_area(servo->bore).m2;
    double pushed = servo_area_before(servo) * input - spring;
    return isnan(pushed) ? NAN : fmax(pushed, 0);
}

bool servo_line_helps(const struct servo *servo, struct pressure input, bool assisted)
{
    return assisted && input.pa >= servo->line_cut_in.pa &&
           law_output(line_law(servo), input.pa) > line_least(servo, input.pa);
}

struct pressure servo_line_output(const struct servo *servo, struct pressure input, bool assisted)
{
    if (!(input.pa >= 0) || isnan(circle_area(servo->bore).m2) || !(servo->return_spring.n >= 0))
        return (struct pressure){NAN};
    double least = line_least(servo, input.pa);
    if (!assisted)
        return (struct pressure){least};
    double helped = law_output(line_law(servo), input.pa);
    return (struct pressure){isnan(helped) || isnan(least) ? NAN : fmax(helped, least)};
}
