#include "parts/keys/rows.h"

static bool is_direct(const struct part *part)
{
    return part->as.servo.type != SERVO_REMOTE;
}

static bool is_remote(const struct part *part)
{
    return part->as.servo.type != SERVO_DIRECT;
}

/* A shell about 0.45 as deep as wide, and a hose of 10 mm inside. */
static double vacuum_volume(const struct part *part)
{
    const struct servo *servo = &part->as.servo;
    double hose = servo->vacuum_hose.m > 0 ? servo->vacuum_hose.m * 78.54e-6 : 0;
    return servo_area(servo).m2 * 0.45 * servo->diameter.m + hose;
}

/* clang-format off */

static const struct choice servo_types[] = {
    {"direct", "on the master, pedal", SERVO_DIRECT, "between the pedal and the master"},
    {"remote", "in the pipe, in line, line", SERVO_REMOTE, "by itself in the pipe from the master"},
    {0}};

static const struct choice yes_or_no[] = {
    {"yes", "true", YES, "it does"}, {"no", "false", NO, "it does not"}, {0}};

static const struct key rows[] = {
    {.name = "type", CHOICE_OF(as.servo.type), PLAIN, .choices = servo_types, REQUIRED,
     .example = "direct", .help = "direct: its rod pushes the master; remote: fluid passes through it"},
    {.name = "works", .others = "acts on, pushes", ONE_PART(as.servo.works),
     .example = "brake master", .help = "direct: the master that its rod pushes",
     ONLY(is_direct)},
    {.name = "diameter", .others = "size, shell diameter", LENGTH(as.servo.diameter),
     WITHIN(20e-3, 0.8), USUALLY(0.11, 0.32), ASSUME_NOTHING,
     .example = "7 in", .help = "of the shell outside, without the clamping edge", MEASURED},
    {.name = "ratio", .others = "boost ratio", NUMBER(as.servo.ratio),
     WITHIN(1, 20), USUALLY(1.5, 7), ASSUME(3.0, MEMORY),
     .example = "2.8", .help = "output over input while the servo helps"},
    {.name = "cut in", FORCE(as.servo.cut_in),
     WITHIN(0, 2000), USUALLY(10, 120), ASSUME(40, MEMORY), ONLY(is_direct),
     .example = "40 N", .help = "direct: force on its rod at which it begins to help"},
    {.name = "jump", .others = "jump in", FORCE(as.servo.jump),
     WITHIN(0, 5000), USUALLY(50, 500), ASSUME(150, MEMORY),
     .example = "150 N", .help = "force that its output makes at once when it cuts in"},
    {.name = "vacuum", .others = "depression", PRESSURE(as.servo.vacuum),
     WITHIN(0, 101325), USUALLY(50e3, 90e3), ASSUME(70e3, MEMORY),
     .example = "0.7 bar", .help = "how far below the outside air, engine idling", MEASURED},
    {.name = "efficiency", NUMBER(as.servo.efficiency),
     WITHIN(0.3, 1), USUALLY(0.75, 0.95),
     ASSUME(0.86, "0.90 of the shell's circle works, 0.95 for the seals; " MEMORY),
     .example = "0.86", .help = "of the shell's circle: effective area of the diaphragm, seals"},
    {.name = "return spring", FORCE(as.servo.return_spring),
     WITHIN(0, 2000), USUALLY(20, 300), ASSUME(60, "60 to 150 N; " MEMORY),
     .example = "60 N", .help = "force of the spring that brings the diaphragm back"},
    {.name = "lost motion", .others = "valve travel", LENGTH(as.servo.lost_motion),
     WITHIN(0, 10e-3), USUALLY(0.5e-3, 1.5e-3), ASSUME(1e-3, MEMORY), ONLY(is_direct),
     .example = "1 mm", .help = "direct: of the pedal's rod into the servo until it begins to help",
     TRAVELS_ONLY},
    {.name = "lost motion without vacuum", LENGTH(as.servo.lost_without),
     WITHIN(0, 20e-3), USUALLY(1.5e-3, 3e-3), ASSUME(2e-3, MEMORY), ONLY(is_direct),
     .example = "2 mm", .help = "direct: the same until it pushes the master without any help",
     TRAVELS_ONLY},
    {.name = "bore", .others = "cylinder bore, piston", LENGTH(as.servo.bore),
     CYLINDER_SIZES, ASSUME_NOTHING, ONLY(is_remote),
     .example = "5/8 in", .help = "remote: bore of its hydraulic cylinder", MEASURED},
    {.name = "line cut in", PRESSURE(as.servo.line_cut_in),
     WITHIN(0, 100e5), USUALLY(1e5, 12e5), ASSUME(4e5, MEMORY), ONLY(is_remote),
     .example = "4 bar", .help = "remote: pressure from the master at which it begins to help"},
    {.name = "vacuum hose", LENGTH(as.servo.vacuum_hose),
     WITHIN(10e-3, 20), USUALLY(0.1, 5), ASSUME_NOTHING,
     .example = "0.9 m", .help = "length of the hose from the engine, check valve included", MEASURED},
    {.name = "vacuum hose renewed", DATE(as.servo.vacuum_hose_renewed),
     .example = "2009", .help = "when that hose was made or fitted, as printed on it"},
    {.name = "vacuum volume", VOLUME(as.servo.vacuum_volume),
     WITHIN(0.1e-3, 50e-3), USUALLY(0.5e-3, 12e-3),
     ASSUME_BY(vacuum_volume, "a shell 0.45 as deep as wide, and a hose of 10 mm inside; " MEMORY),
     .example = "2500 mL", .help = "of the vacuum side at rest: shell, hose, and a reservoir if there is one",
     FIGURES_ONLY},
    {.name = "passes at rest", CHOICE_OF(as.servo.passes), .choices = yes_or_no, UNBOUNDED,
     ASSUME(YES, PRACTICE), ONLY(is_remote),
     .example = "yes", .help = "remote: whether fluid flows through it at rest, so bleeding can"},
    {.name = "rod diameter", LENGTH(as.servo.rod_diameter),
     WITHIN(0, 40e-3), USUALLY(5e-3, 10e-3), ASSUME(6e-3, "a guess; " MEMORY), ONLY(is_remote),
     .example = "6 mm", .help = "remote: of the diaphragm's rod where it stands before the piston"},
    {.name = "valve volume", VOLUME(as.servo.valve_volume),
     WITHIN(0, 20e-6), USUALLY(0.1e-6, 0.3e-6), ASSUME(0.2e-6, MEMORY), ONLY(is_remote),
     .example = "0.2 mL", .help = "remote: fluid that moves its own valve as it begins to help",
     TRAVELS_ONLY},
    {.name = "output rod gap", LENGTH(as.servo.rod_gap),
     WITHIN(0, 20e-3), USUALLY(0.1e-3, 2e-3), ASSUME(0.3e-3, MEMORY), ONLY(is_direct),
     .example = "0.3 mm", .help = "direct: its output rod to the piston of the master at rest", MEASURED,
     TRAVELS_ONLY},
    ROW_ON, ROW_HEIGHT, ROWS_CHAMBER(NIPPLES_NONE, "6 mL"), ROW_RIGID, ROW_NOTE};

const struct key *keys_servo(size_t *count)
{
    return ROWS_OF(rows, count);
}
