#include "parts/valve.h"

#include <math.h>

static double limited(const struct valve *valve, double in)
{
    return valve->limit.pa >= 0 ? fmin(in, valve->limit.pa) : NAN;
}

static double proportioned(const struct valve *valve, double in)
{
    double knee = valve->knee.pa, slope = valve->slope.value;
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
