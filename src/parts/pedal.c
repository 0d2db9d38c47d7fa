#include "parts/pedal.h"

#include <math.h>

struct number pedal_ratio(const struct pedal *pedal)
{
    if (!isnan(pedal->ratio.value))
        return (struct number){pedal->ratio.value > 0 ? pedal->ratio.value : NAN};
    if (!(pedal->pad_arm.m > 0) || !(pedal->rod_arm.m > 0))
        return (struct number){NAN};
    return (struct number){pedal->pad_arm.m / pedal->rod_arm.m};
}

struct force pedal_rod_force(const struct pedal *pedal, struct force foot)
{
    double efficiency = pedal->efficiency.value;
    if (!(foot.n >= 0) || !(efficiency > 0 && efficiency <= 1) || !(pedal->return_spring.n >= 0))
        return (struct force){NAN};
    double pushed = efficiency * pedal_ratio(pedal).value * (foot.n - pedal->return_spring.n);
    return (struct force){pushed < 0 ? 0 : pushed};
}

struct length pedal_end(const struct pedal *pedal)
{
    return (struct length){fmin(pedal->travel.m, pedal->stop.m)}; /* fmin passes over a NaN */
}

struct share pedal_bar_share(const struct pedal *pedal)
{
    double first = pedal->bar_first.m, second = pedal->bar_second.m;
    if (isnan(first) || isnan(second))
        return (struct share){0.5};
    if (!(first >= 0) || !(second >= 0) || !(first + second > 0))
        return (struct share){NAN};
    return (struct share){second / (first + second)};
}
