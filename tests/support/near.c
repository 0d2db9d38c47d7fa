#include "support/near.h"

#include <math.h>

bool near_enough(double actual, double expected, double tolerance, bool relative)
{
    if (actual == expected)
        return true;
    double allowed = relative ? tolerance * fabs(expected) : tolerance;
    return fabs(actual - expected) <= allowed && isfinite(actual);
}

void near_check(double actual, double expected, double tolerance, bool relative, const char *what,
                const char *file, int line)
{
    if (near_enough(actual, expected, tolerance, relative))
        return;
    print_error("%s is %.17g, expected %.17g within %g%s; it is off by %g\n", what, actual,
                expected, tolerance, relative ? " of it" : "", actual - expected);
    _fail(file, line);
}

void near_check_unknown(double actual, const char *what, const char *file, int line)
{
    if (isnan(actual))
        return;
    print_error("%s is %.17g, expected it not to be known\n", what, actual);
    _fail(file, line);
}
