#ifndef FIRMPEDAL_PARTS_SERVO_H
#define FIRMPEDAL_PARTS_SERVO_H

#include <stdbool.h>

#include "base/date.h"
#include "parts/names.h"
#include "units/quantity.h"

enum yes_no { YES_NO_NOT_SAID, YES, NO };
enum servo_type { SERVO_NOT_SAID, SERVO_DIRECT, SERVO_REMOTE };

struct servo {
    enum servo_type type;        /* key "type" = direct | remote */
    int works;                   /* "works": the master of a direct servo; -1 */
    struct length diameter;      /* "diameter" of the shell (nominal) */
    struct number ratio;         /* "ratio" of output to input force in between, assumed 3.0 */
    struct force cut_in;         /* "cut in": input force at which it begins, assumed 40 N */
    struct force jump;           /* "jump": output that appears at once, assumed 150 N */
    struct pressure vacuum;      /* "vacuum": depression below the air outside, assumed 0.7 bar */
    struct number efficiency;    /* "efficiency": of diaphragm area and seals, assumed 0.86 */
    struct force return_spring;  /* "return spring", assumed 60 N */
    struct length lost_motion;   /* "lost motion" of its rod until it helps, assumed 1 mm: direct */
    struct length lost_without;  /* "lost motion without vacuum", assumed 2 mm: direct */
    struct length bore;          /* "bore" of the hydraulic slave piston, remote only */
    struct pressure line_cut_in; /* "line cut in": remote only, assumed 4 bar */
    struct length vacuum_hose;   /* "vacuum hose": its length */
    struct date vacuum_hose_renewed; /* "vacuum hose renewed" */
    struct volume vacuum_volume;     /* "vacuum volume": of shell, hose and reservoir; see keys */
    enum yes_no passes;              /* "passes at rest", assumed yes: remote */
    struct length rod_diameter; /* "rod diameter" in front of its piston, assumed 6 mm: remote */
    struct volume valve_volume; /* "valve volume" as it begins to help, assumed 0.2 mL: remote */
    struct length rod_gap;      /* "output rod gap": to the master's piston */
};

/* Area of the diaphragm: pi d^2/4 of the shell, m2; the efficiency holds what the rim loses. NaN
 * unless the diameter is > 0.
 * Checked by: tests/parts/test_servo.c */
struct area servo_area(const struct servo *servo);
/* Greatest help that the vacuum gives.
 *
 *   servo   diameter m > 0, vacuum Pa 0 to one atmosphere, efficiency over 0 and up to 1, return
 *           spring N >= 0
 *   gives   efficiency * area * vacuum - return spring, N, below 0 when the spring is the
 *           stronger; NaN outside
 *
 * Source: force balance on the diaphragm.
 * Checked by: tests/reference/constructed_parts.c
 */
struct force servo_ceiling(const struct servo *servo);
/* The input force at which the help is used up.
 *
 *   servo   as for the ceiling; cut in N >= 0, jump N >= 0, ratio > 1
 *   gives   F with jump + ratio (F - cut in) = F + ceiling, N, never below cut in; NaN outside
 *
 * Checked by: tests/reference/constructed_parts.c
 */
struct force servo_knee(const struct servo *servo);
/* Force on the output rod of a direct servo.
 *
 *   input      force on its input rod F, N, >= 0
 *   assisted   whether there is vacuum
 *   gives      with vacuum nothing below cut in, then jump + ratio (F - cut in), above the knee
 *              F + ceiling; without it F - return spring; never below 0, N. NaN outside
 *
 * At rest: a servo that is slow to follow is not shown.
 * Source: force balance on valve, reaction disc and diaphragm.
 * Checked by: tests/parts/test_servo.c, tests/reference/constructed_parts.c
 */
struct force servo_output(const struct servo *servo, struct force input, bool assisted);
/* Help that is left with the engine stopped, when so many strokes were made before.
 *
 *   servo    as for the ceiling; vacuum volume V, m3, > 0
 *   stroke   of its diaphragm, each time, m, > 0; the volume V_w that it sweeps less than V
 *   before   full strokes made since the engine stopped, >= 0
 *   gives    ceiling at the end of the next stroke, N; below 0 when the return spring is the
 *            stronger; NaN outside
 *
 *   at rest, absolute:      p = min(p_a, p_0 + before p_a V_w/V), p_0 = p_a - vacuum
 *   at the stroke's end:    p V/(V - V_w)
 *   ceiling:                efficiency * area * (p_a - that) - return spring
 *
 * Each stroke lets in V_w of outside air, which spreads into the vacuum side when the pedal comes
 * up; one temperature, a check valve that holds, no leak.
 * Source: conservation of the mass of air, Boyle's law.
 * Checked by: tests/parts/test_servo.c
 */
struct force servo_ceiling_after(const struct servo *servo, struct length stroke, int before);
/* How many full strokes, the first one counted, still get at least half of the help that the first
 * gets at its end with the engine stopped; 0 when that is none. NaN as above, and for a servo that
 * a hundred strokes do not empty.
 * Checked by: tests/parts/test_servo.c
 */
double servo_strokes_left(const struct servo *servo, struct length stroke);
/* Pressure out of a remote servo for the pressure into it: the same law in pressures. The line cut
 * in takes the place of cut in; jump, ceiling and return spring act on the area of its own piston.
 *
 *   servo      bore m > 0; line cut in Pa >= 0; else as for the output force
 *   input      Pa gauge, >= 0
 *   assisted   whether there is vacuum
 *   gives      Pa gauge; never below the input, or where the servo is said not to let fluid pass at
 *              rest, never below what pushing its piston makes: a p - spring/area. NaN outside
 *
 * a is the part of its piston's area that the rod leaves before it: servo_area_before(). It takes
 * the place of 1 in the slope above the knee.
 *
 * Source: force balance on the piston.
 * Checked by: tests/parts/test_servo.c
 */
struct pressure servo_line_output(const struct servo *servo, struct pressure input, bool assisted);
/* Whether a remote servo gives more than fluid alone would, at that input.
 *
 * Checked by: tests/parts/test_servo.c
 */
bool servo_line_helps(const struct servo *servo, struct pressure input, bool assisted);
/* Part of the area of a remote servo's piston that the diaphragm's rod leaves to the fluid before
 * it: 1 - (rod diameter/bore)^2; NaN unless bore > rod diameter >= 0.
 * Checked by: tests/parts/test_servo.c */
double servo_area_before(const struct servo *servo);
/* Pressure before a remote servo at which its help is used up, Pa; NaN outside.
 * Checked by: tests/parts/test_servo.c */
struct pressure servo_line_knee(const struct servo *servo);

#endif
