#include "units/unit.h"

#include <math.h>
#include <string.h>

#include "base/text.h"
#include "units/constants.h"
#include "units/number.h"

/* How a kind is shown from a size upwards: in which unit, with how many significant digits and at
 * most how many decimals. Common practice, no source: what a tape, a gauge or a spring balance
 * can be read to. */
struct manner {
    enum dimension dimension;
    enum unit_system system;
    double from; /* SI; the last row that a value reaches is taken */
    const char *unit;
    const char *shown; /* NULL when as in the table */
    int significant;
    int most_decimals;
};

/* clang-format off */
static const struct manner manners[] = {
    {DIMENSION_NUMBER,       UNITS_METRIC,   0,    "",        NULL, 3, 3},
    {DIMENSION_NUMBER,       UNITS_IMPERIAL, 0,    "",        NULL, 3, 3},
    {DIMENSION_SHARE,        UNITS_METRIC,   0,    "%",       NULL, 2, 1},
    {DIMENSION_SHARE,        UNITS_IMPERIAL, 0,    "%",       NULL, 2, 1},
    {DIMENSION_LENGTH,       UNITS_METRIC,   0,    "mm",      NULL, 3, 2},
    {DIMENSION_LENGTH,       UNITS_METRIC,   1,    "m",       NULL, 3, 2},
    {DIMENSION_LENGTH,       UNITS_IMPERIAL, 0,    "in",      NULL, 3, 3},
    {DIMENSION_LENGTH,       UNITS_IMPERIAL, 1,    "ft",      NULL, 3, 2},
    {DIMENSION_AREA,         UNITS_METRIC,   0,    "mm2",     NULL, 3, 1},
    {DIMENSION_AREA,         UNITS_METRIC,   1e-2, "cm2",     NULL, 3, 1},
    {DIMENSION_AREA,         UNITS_IMPERIAL, 0,    "in2",     NULL, 3, 3},
    {DIMENSION_VOLUME,       UNITS_METRIC,   0,    "mL",      NULL, 3, 2},
    {DIMENSION_VOLUME,       UNITS_METRIC,   1e-3, "L",       NULL, 3, 2},
    {DIMENSION_VOLUME,       UNITS_IMPERIAL, 0,    "in3",     NULL, 3, 3},
    {DIMENSION_PRESSURE,     UNITS_METRIC,   0,    "bar",     NULL, 3, 2},
    {DIMENSION_PRESSURE,     UNITS_IMPERIAL, 0,    "psi",     NULL, 3, 1},
    {DIMENSION_FORCE,        UNITS_METRIC,   0,    "N",       NULL, 3, 1},
    {DIMENSION_FORCE,        UNITS_METRIC,   1e4,  "kN",      NULL, 3, 1},
    {DIMENSION_FORCE,        UNITS_IMPERIAL, 0,    "lbf",     NULL, 3, 1},
    {DIMENSION_TORQUE,       UNITS_METRIC,   0,    "N m",     NULL, 3, 1},
    {DIMENSION_TORQUE,       UNITS_IMPERIAL, 0,    "lbf in",  NULL, 3, 1},
    {DIMENSION_TORQUE,       UNITS_IMPERIAL, 12,   "lbf ft",  NULL, 3, 1},
    {DIMENSION_MASS,         UNITS_METRIC,   0,    "kg",      NULL, 3, 2},
    {DIMENSION_MASS,         UNITS_IMPERIAL, 0,    "lb",      NULL, 3, 2},
    {DIMENSION_ANGLE,        UNITS_METRIC,   0,    "deg",     NULL, 3, 1},
    {DIMENSION_ANGLE,        UNITS_IMPERIAL, 0,    "deg",     NULL, 3, 1},
    {DIMENSION_TEMPERATURE,  UNITS_METRIC,   0,    "degC",    "°C", 3, 0},
    {DIMENSION_TEMPERATURE,  UNITS_IMPERIAL, 0,    "degF",    "°F", 3, 0},
    {DIMENSION_DURATION,     UNITS_METRIC,   0,    "s",       NULL, 2, 1},
    {DIMENSION_DURATION,     UNITS_METRIC,   600,  "min",     NULL, 2, 0},
    {DIMENSION_DURATION,     UNITS_METRIC,   7200, "h",       NULL, 2, 1},
    {DIMENSION_DURATION,     UNITS_IMPERIAL, 0,    "s",       NULL, 2, 1},
    {DIMENSION_DURATION,     UNITS_IMPERIAL, 600,  "min",     NULL, 2, 0},
    {DIMENSION_DURATION,     UNITS_IMPERIAL, 7200, "h",       NULL, 2, 1},
    {DIMENSION_SPEED,        UNITS_METRIC,   0,    "km/h",    NULL, 3, 1},
    {DIMENSION_SPEED,        UNITS_IMPERIAL, 0,    "mph",     NULL, 3, 1},
    {DIMENSION_ACCELERATION, UNITS_METRIC,   0,    "m/s2",    NULL, 3, 2},
    {DIMENSION_ACCELERATION, UNITS_IMPERIAL, 0,    "ft/s2",   NULL, 3, 1},
    {DIMENSION_STIFFNESS,    UNITS_METRIC,   0,    "N/mm",    NULL, 3, 1},
    {DIMENSION_STIFFNESS,    UNITS_IMPERIAL, 0,    "lbf/in",  NULL, 3, 1},
    {DIMENSION_DENSITY,      UNITS_METRIC,   0,    "kg/m3",   NULL, 3, 2},
    {DIMENSION_DENSITY,      UNITS_IMPERIAL, 0,    "g/cm3",   NULL, 3, 3},
    {DIMENSION_VISCOSITY,    UNITS_METRIC,   0,    "mm2/s",   NULL, 3, 2},
    {DIMENSION_VISCOSITY,    UNITS_IMPERIAL, 0,    "cSt",     NULL, 3, 2},
    {DIMENSION_SWELLING,     UNITS_METRIC,   0,    "mL/m",    NULL, 3, 2},
    {DIMENSION_SWELLING,     UNITS_IMPERIAL, 0,    "cc/ft",   NULL, 3, 3},
    {DIMENSION_ENERGY,       UNITS_METRIC,   0,    "J",       NULL, 3, 1},
    {DIMENSION_ENERGY,       UNITS_METRIC,   1e3,  "kJ",      NULL, 3, 1},
    {DIMENSION_ENERGY,       UNITS_METRIC,   1e7,  "MJ",      NULL, 3, 2},
    {DIMENSION_ENERGY,       UNITS_IMPERIAL, 0,    "Btu",     NULL, 3, 1},
    {DIMENSION_WARMING,      UNITS_METRIC,   0,    "K warmer", "K", 3, 1},
    {DIMENSION_WARMING,      UNITS_IMPERIAL, 0,    "F warmer", "°F", 3, 1},
};
/* clang-format on */

static const struct manner *find_manner(double si, enum dimension dimension,
                                        enum unit_system system)
{
    const struct manner *found = NULL;
    for (size_t i = 0; i < sizeof manners / sizeof *manners; i++) {
        const struct manner *manner = &manners[i];
        if (manner->dimension != dimension || manner->system != system)
            continue;
        /* A hair below a step is as good as on it: 0.99999 m is 1.00 m, not 1000 mm. */
        if (!found || fabs(si) >= manner->from * (1 - 1e-4))
            found = manner;
    }
    return found;
}

/* Numbers lose the zeros at their end: a ratio of 4 is "4", not "4.00". */
static char *without_end_zeros(char *number)
{
    if (!strchr(number, '.'))
        return number;
    size_t length = strlen(number);
    while (number[length - 1] == '0')
        length--;
    if (number[length - 1] == '.')
        length--;
    number[length] = '\0';
    return number;
}

static double in_unit(double si, enum dimension dimension, const char *name)
{
    size_t count;
    const struct unit *table = unit_table(&count);
    for (size_t i = 0; i < count; i++)
        if (table[i].dimension == dimension && strcmp(table[i].name, name) == 0)
            return (si - table[i].offset) / table[i].factor;
    return si;
}

/* Whether a length is a size of an inch tape, a whole number of 64ths: such a size is known to the
 * hundredth of a millimetre, and 3/4 in would else be 19.0 mm here and 19.05 mm there. */
static bool is_inch_size(double metres)
{
    const double sixtyfourth = 0.0254 / 64, most = 0.1, rounding = 1e-9;
    double count = metres / sixtyfourth;
    return count >= 1 - rounding && metres < most && fabs(count - round(count)) <= rounding * count;
}

struct shown unit_show(struct arena *arena, double si, enum dimension dimension,
                       enum unit_system system)
{
    const struct manner *manner = find_manner(si, dimension, system);
    double value = in_unit(si, dimension, manner->unit);
    struct shown shown = {"?", manner->shown ? manner->shown : manner->unit};
    if (!isfinite(value))
        return shown;
    int decimals = number_decimals(value, manner->significant, manner->most_decimals);
    bool as_sold = dimension == DIMENSION_LENGTH && system == UNITS_METRIC && is_inch_size(si);
    if (as_sold)
        decimals = manner->most_decimals;
    char *number = number_print(arena, value, decimals);
    bool bare = as_sold || dimension == DIMENSION_NUMBER || dimension == DIMENSION_TORQUE;
    shown.number = bare ? without_end_zeros(number) : number;
    return shown;
}

const char *unit_text(struct arena *arena, double si, enum dimension dimension,
                      enum unit_system system)
{
    struct shown shown = unit_show(arena, si, dimension, system);
    if (!isfinite(si) || *shown.unit == '\0')
        return shown.number;
    return text_print(arena, "%s %s", shown.number, shown.unit);
}

/* "7/8 in", "1-1/16 in" or "2 in" for a whole number of sixteenths above 0. */
static const char *inch_fraction(struct arena *arena, long sixteenths)
{
    long whole = sixteenths / 16;
    long upper = sixteenths % 16;
    long lower = 16;
    while (upper > 0 && upper % 2 == 0) {
        upper /= 2;
        lower /= 2;
    }
    if (upper == 0)
        return text_print(arena, "%ld in", whole);
    if (whole == 0)
        return text_print(arena, "%ld/%ld in", upper, lower);
    return text_print(arena, "%ld-%ld/%ld in", whole, upper, lower);
}

const char *unit_show_bore(struct arena *arena, double metres, enum unit_system system)
{
    const double sixteenth = 0.0254 / 16;
    const double close_to = 0.02e-3;
    /* No cylinder is wider than a metre; what is, is shown as any length. */
    if (!(metres > 0 && metres < 1))
        return unit_text(arena, metres, DIMENSION_LENGTH, system);
    const char *millimetres = number_print(arena, metres / 1e-3, 2);
    long sixteenths = lround(metres / sixteenth);
    if (sixteenths > 0 && fabs(metres - (double)sixteenths * sixteenth) <= close_to)
        return text_print(arena, "%s mm (%s)", millimetres, inch_fraction(arena, sixteenths));
    if (system == UNITS_METRIC)
        return text_print(arena, "%s mm", millimetres);
    return text_print(arena, "%s mm (%s)", millimetres,
                      unit_text(arena, metres, DIMENSION_LENGTH, UNITS_IMPERIAL));
}
