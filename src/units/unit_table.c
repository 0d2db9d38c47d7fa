#include "units/unit.h"

#include <string.h>

#include "base/text.h"
#include "units/constants.h"

/* Definitions that others rest on. */
#define INCH            0.0254
#define FOOT            0.3048
#define POUND           0.45359237
#define POUND_FORCE     (POUND * STANDARD_GRAVITY)
#define MERCURY_DENSITY 13595.1

/* Sources. */
#define SI            "SI Brochure, BIPM, 9th edition"
#define YARD          "international yard and pound agreement of 1959: 1 in = 25.4 mm, 1 lb = 0.45359237 kg"
#define GRAVITY       "3rd CGPM (1901): standard gravity 9.80665 m/s2"
#define POUND_GRAVITY YARD "; " GRAVITY
#define MERCURY       "NIST SP 811, appendix B: conventional mercury, 13595.1 kg/m3; " GRAVITY

/* clang-format off */
static const struct unit table[] = {
    {"%", "percent", DIMENSION_SHARE, 1 / 100.0, 0, "a hundredth", "percent"},

    {"mm", "millimetre millimetres millimeter millimeters",
        DIMENSION_LENGTH, 1e-3, 0, SI, "mm"},
    {"cm", "centimetre centimetres centimeter centimeters",
        DIMENSION_LENGTH, 1e-2, 0, SI, "cm"},
    {"m", "metre metres meter meters", DIMENSION_LENGTH, 1, 0, SI, "m"},
    {"in", "inch inches \"", DIMENSION_LENGTH, INCH, 0, YARD, "in"},
    {"ft", "foot feet '", DIMENSION_LENGTH, FOOT, 0, YARD, "ft"},

    {"mm2", "sqmm", DIMENSION_AREA, 1e-6, 0, SI, "mm^2"},
    {"cm2", "sqcm", DIMENSION_AREA, 1e-4, 0, SI, "cm^2"},
    {"m2", "sqm", DIMENSION_AREA, 1, 0, SI, "m^2"},
    {"in2", "sqin", DIMENSION_AREA, INCH * INCH, 0, YARD, "in^2"},
    {"ft2", "sqft", DIMENSION_AREA, FOOT * FOOT, 0, YARD, "ft^2"},

    {"mm3", "cumm", DIMENSION_VOLUME, 1e-9, 0, SI, "mm^3"},
    {"mL", "ml millilitre millilitres milliliter milliliters",
        DIMENSION_VOLUME, 1e-6, 0, SI, "mL"},
    {"cm3", "cc ccm cucm", DIMENSION_VOLUME, 1e-6, 0, SI, "cm^3"},
    {"L", "l litre litres liter liters", DIMENSION_VOLUME, 1e-3, 0, SI, "L"},
    {"m3", "cum", DIMENSION_VOLUME, 1, 0, SI, "m^3"},
    {"in3", "cuin", DIMENSION_VOLUME, INCH * INCH * INCH, 0, YARD, "in^3"},
    {"imp fl-oz", "ukfloz britishfloz", DIMENSION_VOLUME, 4.54609e-3 / 160, 0,
        "Weights and Measures Act 1985 (UK): gallon 4.54609 L, of 160 fluid ounces", "brfloz"},
    {"US fl-oz", NULL, DIMENSION_VOLUME, 231 * (INCH * INCH * INCH) / 128, 0,
        "NIST Handbook 44, appendix C: gallon 231 in3, of 128 fluid ounces", "usfloz"},

    {"Pa", "pascal", DIMENSION_PRESSURE, 1, 0, SI, "Pa"},
    {"kPa", "kilopascal", DIMENSION_PRESSURE, 1e3, 0, SI, "kPa"},
    {"MPa", "megapascal", DIMENSION_PRESSURE, 1e6, 0, SI, "MPa"},
    {"bar", "bars", DIMENSION_PRESSURE, 1e5, 0, SI, "bar"},
    {"mbar", "millibar millibars", DIMENSION_PRESSURE, 1e2, 0, SI, "mbar"},
    {"psi", "lbf/in2 lb/in2 lbs/in2 lbf/sqin lb/sqin lbs/sqin", DIMENSION_PRESSURE,
        POUND_FORCE / (INCH * INCH), 0, POUND_GRAVITY, "psi"},
    {"kgf/cm2", "kg/cm2 kp/cm2 at", DIMENSION_PRESSURE, STANDARD_GRAVITY / 1e-4, 0, GRAVITY,
        "kgf/cm^2"},
    {"atm", NULL, DIMENSION_PRESSURE, STANDARD_ATMOSPHERE, 0, "10th CGPM (1954)", "atm"},
    {"mmHg", NULL, DIMENSION_PRESSURE, MERCURY_DENSITY * STANDARD_GRAVITY * 1e-3, 0, MERCURY,
        "mmHg"},
    {"inHg", NULL, DIMENSION_PRESSURE, MERCURY_DENSITY * STANDARD_GRAVITY * INCH, 0,
        MERCURY "; " YARD, "inHg"},

    {"N", "newton newtons", DIMENSION_FORCE, 1, 0, SI, "N"},
    {"daN", "decanewton", DIMENSION_FORCE, 10, 0, SI, "daN"},
    {"kN", "kilonewton", DIMENSION_FORCE, 1e3, 0, SI, "kN"},
    {"kgf", "kp", DIMENSION_FORCE, STANDARD_GRAVITY, 0, GRAVITY, "kgf"},
    {"lbf", "lbsf", DIMENSION_FORCE, POUND_FORCE, 0, POUND_GRAVITY, "lbf"},

    {"N m", "mN", DIMENSION_TORQUE, 1, 0, SI, "N m"},
    {"kgf m", "mkgf kgm mkg kpm mkp", DIMENSION_TORQUE, STANDARD_GRAVITY, 0, GRAVITY, "kgf m"},
    {"lbf ft", "ftlbf lbft ftlb lbsft ftlbs", DIMENSION_TORQUE, POUND_FORCE * FOOT, 0,
        POUND_GRAVITY, "lbf ft"},
    {"lbf in", "inlbf lbin inlb lbsin inlbs", DIMENSION_TORQUE, POUND_FORCE * INCH, 0,
        POUND_GRAVITY, "lbf in"},

    {"g", "gram grams", DIMENSION_MASS, 1e-3, 0, SI, "g"},
    {"kg", "kilogram kilograms kilo kilos", DIMENSION_MASS, 1, 0, SI, "kg"},
    {"t", "tonne tonnes", DIMENSION_MASS, 1e3, 0, SI, "tonne"},
    {"lb", "lbs pound pounds", DIMENSION_MASS, POUND, 0, YARD, "lb"},

    {"deg", "degree degrees", DIMENSION_ANGLE, PI / 180, 0, SI, "degree"},
    {"rad", "radian radians", DIMENSION_ANGLE, 1, 0, SI, "radian"},

    {"degC", "C celsius", DIMENSION_TEMPERATURE, 1, 0, SI, "tempC"},
    {"degF", "F fahrenheit", DIMENSION_TEMPERATURE, 5 / 9.0, -32 * 5 / 9.0,
        "NIST SP 811, appendix B: (t - 32) / 1.8", "tempF"},
    {"K", "kelvin", DIMENSION_TEMPERATURE, 1, -273.15, SI, "tempK"},

    {"s", "sec second seconds", DIMENSION_DURATION, 1, 0, SI, "s"},
    {"min", "minute minutes", DIMENSION_DURATION, 60, 0, SI, "min"},
    {"h", "hr hour hours", DIMENSION_DURATION, 3600, 0, SI, "hour"},

    {"km/h", "kmh kph", DIMENSION_SPEED, 1e3 / 3600, 0, SI, "km/hour"},
    {"m/s", NULL, DIMENSION_SPEED, 1, 0, SI, "m/s"},
    {"mph", "miles/h mile/h", DIMENSION_SPEED, 5280 * FOOT / 3600, 0, YARD, "mph"},

    {"m/s2", "m/s/s", DIMENSION_ACCELERATION, 1, 0, SI, "m/s^2"},
    {"g", NULL, DIMENSION_ACCELERATION, STANDARD_GRAVITY, 0, GRAVITY, "gravity"},
    {"ft/s2", "ft/s/s", DIMENSION_ACCELERATION, FOOT, 0, YARD, "ft/s^2"},

    {"N/mm", NULL, DIMENSION_STIFFNESS, 1 / 1e-3, 0, SI, "N/mm"},
    {"N/m", NULL, DIMENSION_STIFFNESS, 1, 0, SI, "N/m"},
    {"lbf/in", "lb/in lbs/in", DIMENSION_STIFFNESS, POUND_FORCE / INCH, 0, POUND_GRAVITY,
        "lbf/in"},

    {"kg/m3", NULL, DIMENSION_DENSITY, 1, 0, SI, "kg/m^3"},
    {"g/cm3", "g/cc g/ml kg/l kg/dm3", DIMENSION_DENSITY, 1e-3 / 1e-6, 0, SI, "g/cm^3"},

    {"mm2/s", NULL, DIMENSION_VISCOSITY, 1e-6, 0, SI, "mm^2/s"},
    {"cSt", "centistokes centistoke", DIMENSION_VISCOSITY, 1e-6, 0,
        "NIST SP 811, appendix B: 1 St = 1 cm2/s", "cSt"},
    {"m2/s", NULL, DIMENSION_VISCOSITY, 1, 0, SI, "m^2/s"},

    {"mL/m", "cc/m cm3/m", DIMENSION_SWELLING, 1e-6, 0, SI, "mL/m"},
    {"cc/ft", "cm3/ft ml/ft", DIMENSION_SWELLING, 1e-6 / FOOT, 0, YARD, "cm^3/ft"},

    {"J", "joule joules", DIMENSION_ENERGY, 1, 0, SI, "J"},
    {"kJ", "kilojoule kilojoules", DIMENSION_ENERGY, 1e3, 0, SI, "kJ"},
    {"MJ", "megajoule megajoules", DIMENSION_ENERGY, 1e6, 0, SI, "MJ"},
    {"Btu", NULL, DIMENSION_ENERGY, 4.1868 * POUND / 1e-3 * 5 / 9, 0,
        "5th International Conference on the Properties of Steam (1956): 4.1868 J/(g K); " YARD,
        "btu"},

    {"K warmer", "degC-warmer", DIMENSION_WARMING, 1, 0, SI, "K"},
    {"F warmer", "degF-warmer", DIMENSION_WARMING, 5 / 9.0, 0,
        "NIST SP 811, appendix B: (t - 32) / 1.8", "degF"},
};
/* clang-format on */

static const char *const words[DIMENSION_COUNT] = {
    [DIMENSION_NUMBER] = "a plain number",
    [DIMENSION_SHARE] = "a share",
    [DIMENSION_LENGTH] = "a length",
    [DIMENSION_AREA] = "an area",
    [DIMENSION_VOLUME] = "a volume",
    [DIMENSION_PRESSURE] = "a pressure",
    [DIMENSION_FORCE] = "a force",
    [DIMENSION_TORQUE] = "a torque",
    [DIMENSION_MASS] = "a mass",
    [DIMENSION_ANGLE] = "an angle",
    [DIMENSION_TEMPERATURE] = "a temperature",
    [DIMENSION_DURATION] = "a duration",
    [DIMENSION_SPEED] = "a speed",
    [DIMENSION_ACCELERATION] = "an acceleration",
    [DIMENSION_STIFFNESS] = "a stiffness",
    [DIMENSION_DENSITY] = "a density",
    [DIMENSION_VISCOSITY] = "a viscosity",
    [DIMENSION_SWELLING] = "a swelling per length",
    [DIMENSION_ENERGY] = "an energy",
    [DIMENSION_WARMING] = "a difference of temperatures",
};

const struct unit *unit_table(size_t *count)
{
    *count = sizeof table / sizeof *table;
    return table;
}

const char *dimension_words(enum dimension dimension)
{
    return words[dimension];
}

const char *dimension_units(struct arena *arena, enum dimension dimension)
{
    struct text list = text_start(arena);
    for (size_t i = 0; i < sizeof table / sizeof *table; i++)
        if (table[i].dimension == dimension)
            text_add(&list, "%s%s", list.count > 0 ? ", " : "", table[i].name);
    return list.items;
}
