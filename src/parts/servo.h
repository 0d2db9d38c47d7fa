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
    struct number efficiency;    /* "efficiency", assumed 0.95 */
    struct force return_spring;  /* "return spring", assumed 0 N */
    struct length bore;          /* "bore" of the hydraulic slave piston, remote only */
    struct pressure line_cut_in; /* "line cut in": remote only, assumed 4 bar */
    struct length vacuum_hose;   /* "vacuum hose": its length */
    struct date vacuum_hose_renewed; /* "vacuum hose renewed" */
    enum yes_no passes;           /* "passes at rest", assumed yes: remote */
    struct length rod_gap;       /* "output rod gap": to the master's piston */
};

/* Effective diaphragm area from the nominal diameter: pi d^2/4 (the efficiency holds the loss). */
struct area servo_area(const struct servo *servo);
/* Greatest help: efficiency * area * vacuum - return spring. */
struct force servo_ceiling(const struct servo *servo);
/* The input force at which the help is used up. */
struct force servo_knee(const struct servo *servo);
/* Output force for an input force: nothing below cut in, then jump + ratio (F - cut_in), above
 * the knee F + ceiling. Without vacuum F - return spring, never below 0. Never less than 0. */
struct force servo_output(const struct servo *servo, struct force input, bool assisted);
/* Remote: pressure out for pressure in, the same law with line pressure in place of force on the
 * area of its own piston. */
struct pressure servo_line_output(const struct servo *servo, struct pressure input, bool assisted);

#endif
