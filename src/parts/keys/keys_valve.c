#include "parts/keys/rows.h"

static double passages(const struct part *part)
{
    return part->as.valve.type == VALVE_SHUTTLE ? 2 : 1;
}

/* Whether a valve is of a type, or does not say of which. */
static bool is_type(const struct part *part, enum valve_type type)
{
    return part->as.valve.type == type || part->as.valve.type == VALVE_NOT_SAID;
}

static bool has_knee(const struct part *part)
{
    return is_type(part, VALVE_PROPORTIONING) || is_type(part, VALVE_LOAD_SENSING);
}

static bool follows_load(const struct part *part)
{
    return is_type(part, VALVE_LOAD_SENSING);
}

static bool reduces(const struct part *part)
{
    return has_knee(part) || is_type(part, VALVE_LIMITING);
}

static bool limits(const struct part *part)
{
    return is_type(part, VALVE_LIMITING);
}

static bool holds_off(const struct part *part)
{
    return is_type(part, VALVE_HOLD_OFF);
}

static bool keeps_residue(const struct part *part)
{
    return is_type(part, VALVE_RESIDUAL);
}

static bool shuttles(const struct part *part)
{
    return is_type(part, VALVE_SHUTTLE);
}

/* clang-format off */

static const struct choice valve_types[] = {
    {"residual", "residual pressure, check", VALVE_RESIDUAL, "keeps a little pressure in the pipe"},
    {"limiting", "limiter, pressure limiting", VALVE_LIMITING, "lets no more than a limit through"},
    {"proportioning", "proportioner, pressure reducing, reducing", VALVE_PROPORTIONING,
     "passes on a share of what is above its knee"},
    {"load-sensing", "load, load dependent, height sensing", VALVE_LOAD_SENSING,
     "proportioning, with a knee that rises with the load"},
    {"hold-off", "metering, holdoff", VALVE_HOLD_OFF, "lets the drums touch before the discs begin"},
    {"shuttle", "warning, warning shuttle, pressure differential, differential", VALVE_SHUTTLE,
     "lights a lamp when two circuits differ"},
    {0}};

#define VALVE_PRESSURE(path) PRESSURE(path), WITHIN(1e3, 500e5)

static const struct key rows[] = {
    {.name = "type", CHOICE_OF(as.valve.type), PLAIN, .choices = valve_types, REQUIRED,
     .example = "load-sensing", .help = "what it does"},
    {.name = "passages", .others = "circuits", COUNT(as.valve.passages),
     WITHIN(1, 2), USUALLY(NAN, NAN), ASSUME_BY(passages, "1, or 2 for a shuttle; " PRACTICE),
     .example = "1", .help = "how many circuits pass through it", MEASURED},
    {.name = "knee", .others = "knee point, split point", VALVE_PRESSURE(as.valve.knee), ONLY(has_knee),
     USUALLY(10e5, 60e5), ASSUME_NOTHING,
     .example = "28 bar", .help = "proportioning, load-sensing: pressure from which it holds back "
     "at the present load"},
    {.name = "knee unladen", VALVE_PRESSURE(as.valve.knee_unladen), ONLY(follows_load),
     USUALLY(10e5, 60e5), ASSUME_NOTHING,
     .example = "18 bar", .help = "load-sensing, in place of the knee: with the driver alone"},
    {.name = "knee laden", VALVE_PRESSURE(as.valve.knee_laden), ONLY(follows_load),
     USUALLY(10e5, 90e5), ASSUME_NOTHING,
     .example = "45 bar", .help = "load-sensing, in place of the knee: with all that it may carry"},
    {.name = "load", SHARE(as.valve.load), ONLY(follows_load),
     WITHIN(0, 1), USUALLY(0, 1), ASSUME(0, "the driver alone; " PRACTICE),
     .example = "50 %", .help = "load-sensing: how much of what it may carry is in it"},
    {.name = "gap", .others = "hysteresis", PRESSURE(as.valve.gap), WITHIN(0, 100e5), ONLY(reduces),
     USUALLY(0, 6e5), ASSUME(2e5, MEMORY),
     .example = "2 bar", .help = "how far the pressure in falls on release before that out follows"},
    {.name = "slope", NUMBER(as.valve.slope), ONLY(has_knee),
     WITHIN(0, 1), USUALLY(0.2, 0.7), ASSUME(0.4, MEMORY),
     .example = "0.40", .help = "proportioning, load-sensing: share passed on above the knee"},
    {.name = "limit", VALVE_PRESSURE(as.valve.limit), ONLY(limits),
     USUALLY(15e5, 70e5), ASSUME_NOTHING,
     .example = "35 bar", .help = "limiting: most pressure that it lets through"},
    {.name = "opens", VALVE_PRESSURE(as.valve.opens), ONLY(holds_off),
     USUALLY(2e5, 15e5), ASSUME_NOTHING,
     .example = "7 bar", .help = "hold-off: pressure at which it begins to open"},
    {.name = "equal above", VALVE_PRESSURE(as.valve.equal_above), ONLY(holds_off),
     USUALLY(10e5, 50e5), ASSUME_NOTHING,
     .example = "20 bar", .help = "hold-off: pressure from which it lets all through"},
    {.name = "holds", .others = "residual pressure", VALVE_PRESSURE(as.valve.holds), ONLY(keeps_residue),
     USUALLY(0.1e5, 1.2e5), ASSUME_NOTHING,
     .example = "0.7 bar", .help = "residual: pressure that it keeps"},
    {.name = "trips", VALVE_PRESSURE(as.valve.trips), ONLY(shuttles),
     USUALLY(3e5, 25e5), ASSUME_NOTHING,
     .example = "10 bar", .help = "shuttle: difference of pressure that lights the lamp"},
    ROW_ON, ROW_HEIGHT, ROWS_CHAMBER(NIPPLES_NONE, "1.5 mL"), ROW_RIGID, ROW_NOTE};

const struct key *keys_valve(size_t *count)
{
    return ROWS_OF(rows, count);
}
