#include "support/outside.h"

#include <stdio.h>
#include <stdlib.h>

#include "support/near.h"

static void write_down(const struct outside *source, const char *what, const char *unit,
                       bool printed, double theirs, double ours, double tolerance)
{
    const char *path = getenv("OUTSIDE_CHECKS");
    if (path == NULL || path[0] == '\0')
        return;
    FILE *file = fopen(path, "a");
    assert_non_null(file);
    int written =
        fprintf(file, "%s\t%s\t%s\t%s\t%s\t%s\t%.17g\t%.17g\t%.17g\n", source->id, source->source,
                source->status, what, unit, printed ? "printed" : "again", theirs, ours, tolerance);
    int closed = fclose(file);
    assert_true(written > 0 && closed == 0);
}

void outside_check(const struct outside *source, const char *what, const char *unit, bool printed,
                   double theirs, double ours, double tolerance, const char *file, int line)
{
    near_check(ours, theirs, tolerance, false, what, file, line);
    write_down(source, what, unit, printed, theirs, ours, tolerance);
}
