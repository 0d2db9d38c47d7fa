#include "parts/valve.h"

#include <math.h>

struct pressure valve_knee(const struct valve *valve)
{
    if (!isnan(valve->knee.pa) || valve->type != VALVE_LOAD_SENSING)
        return valve->knee;
    double load = valve->load.of_1;
    if (!(load >= 0 && load <= 1))
        return (struct pressure){NAN};
    return (struct pressure){valve->knee_unladen.pa +
                             load * (valve->knee_laden.pa - valve->knee_unladen.pa)};
}

static double limited(const struct valve *valve, double in)
{
    return valve->limit.pa >= 0 ? fmin(in, valve->limit.pa) : NAN;
}

static double proportioned(const struct valve *valve, double in)
{
    double knee = valve_knee(valve).pa, slope = valve->slope.value;
    if (!(knee >= 0) || !(slope >= 0 && slope <= 1))
        return NAN;
    return in <= knee ? in : knee + slope * (in - knee);
}

static double held_off(const struct valve *valve, double in)
{
    double opens = valve->opens.pa, equal = valve->equal_above.pa;
    if (!(opens >= 0) || !(equal > opens))
        return NAN;
    if (in <= opens)
        return 0;
    return in >= equal ? in : equal * ((in - opens) / (equal - opens));
}

struct pressure valve_output(const struct valve *valve, struct pressure in)
{
    double out = NAN;
    if (!(in.pa >= 0))
        return (struct pressure){NAN};
    switch (valve->type) {
    case VALVE_NOT_SAID:
        break;
    case VALVE_RESIDUAL: /* shows itself only when the pedal comes up */
    case VALVE_SHUTTLE:  /* carries the fluid past its piston */
        out = in.pa;
        break;
    case VALVE_LIMITING:
        out = limited(valve, in.pa);
        break;
    case VALVE_PROPORTIONING:
    case VALVE_LOAD_SENSING:
        out = proportioned(valve, in.pa);
        break;
    case VALVE_HOLD_OFF:
        out = held_off(valve, in.pa);
        break;
    }
    return (struct pressure){out};
}

struct pressure valve_output_falling(const struct valve *valve, struct pressure peak,
                                     struct pressure in)
{
    double out = NAN;
    if (!(in.pa >= 0) || !(peak.pa >= in.pa))
        return (struct pressure){NAN};
    switch (valve->type) {
    case VALVE_NOT_SAID:
        break;
    case VALVE_RESIDUAL:
        if (valve->holds.pa >= 0)
            out = fmin(in.pa + valve->holds.pa, peak.pa);
        break;
    case VALVE_SHUTTLE:
        out = in.pa;
        break;
    case VALVE_LIMITING:
    case VALVE_PROPORTIONING:
    case VALVE_LOAD_SENSING:
        if (valve->gap.pa >= 0) {
            struct pressure later = {fmin(in.pa + valve->gap.pa, peak.pa)};
            double held = valve_output(valve, later).pa;
            out = isnan(held) ? NAN : fmin(held, in.pa);
        }
        break;
    case VALVE_HOLD_OFF: {
        double came = valve_output(valve, peak).pa;
        out = isnan(came) ? NAN : fmin(came, in.pa);
        break;
    }
    }
    return (struct pressure){out};
}
