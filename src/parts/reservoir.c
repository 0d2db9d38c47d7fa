#include "parts/reservoir.h"

#include <math.h>

struct volume reservoir_usable(const struct reservoir *reservoir)
{
    if (!isnan(reservoir->usable.m3))
        return (struct volume){reservoir->usable.m3 > 0 ? reservoir->usable.m3 : NAN};
    return (struct volume){reservoir->capacity.m3 > 0 ? reservoir->capacity.m3 / 3 : NAN};
}
