#ifndef FIRMPEDAL_PARTS_MASTER_H
#define FIRMPEDAL_PARTS_MASTER_H

#include <stdbool.h>

#include "base/date.h"
#include "parts/names.h"
#include "units/quantity.h"

enum master_type { MASTER_NOT_SAID, MASTER_SINGLE, MASTER_TANDEM };

struct master {
    enum master_type type;          /* key "type" = single | tandem */
    struct length bore;             /* "bore" */
    struct length stroke;           /* "stroke": of the push rod until all is used up */
    struct length primary_stroke;   /* "primary stroke": tandem, first piston against the second */
    struct length secondary_stroke; /* "secondary stroke": tandem, second piston to the end */
    struct length cut_off;         /* "cut off": travel until the port is covered; assumed 1.2 mm */
    struct length rod_gap;         /* "rod gap": push rod to piston at rest; assumed 0.8 mm */
    struct force primary_spring;   /* "primary spring": of the first piston; tandem: between both */
    struct force secondary_spring; /* "secondary spring": tandem, second piston to the bore's end */
    struct force seal_friction;    /* "seal friction": of each piston, whatever the pressure */
    struct length large_bore;      /* "large bore": of a stepped one; NaN: the bore is plain */
    struct pressure take_up;       /* "take-up pressure" at which the large bore stops delivering */
    struct number efficiency;      /* "efficiency" of its seals; assumed 0.95 */
    struct part_names primary_outlets;   /* "primary outlets": names that runs use; tandem */
    struct part_names secondary_outlets; /* "secondary outlets" */
    int reservoir;                       /* "reservoir" that feeds it; -1 */
    struct length supply_hose;           /* "supply hose": length, where the reservoir is remote */
    struct date supply_hose_renewed;     /* "supply hose renewed" */
    int casting;                         /* "casting": the other master in the same casting; -1 */
};

/* Area of a circle, m2, from its diameter, m; NaN unless that is > 0.
 * Checked by: tests/parts/test_master.c */
struct area circle_area(struct length diameter);

/* Pressures that a master makes, by chamber: first (or only) piston, second. */
struct master_pressures {
    struct pressure of[2];
};
/* Which of its chambers has no fluid to stand against. */
enum master_loss { MASTER_WHOLE, MASTER_FIRST_LOST, MASTER_SECOND_LOST };

/* Pressures of a master from the force on its push rod.
 *
 *   master   bore m > 0; efficiency over 0 and up to 1; springs and seal friction N, >= 0; a
 *            stepped one: large bore m, over the bore, and take-up pressure Pa >= 0
 *   rod      force on the push rod R, N, >= 0
 *   gives    Pa gauge, never below 0; the second NaN for a single one. NaN outside
 *
 *   first     A p1 = e R - S1 - f;  stepped: A p1 + (A_L - A) min(p1, p_q) = e R - S1 - f
 *   second    A p2 = A p1 + S1 - S2 - f, and A p2 = e R - S2 - 2 f while the first piston only
 *             pushes the spring before it
 *   first lost: the pistons stand against each other, S1 drops out: A p2 = e R - S2 - 2 f
 *   second lost: the second piston stands at its end: A p1 = e R - S1 - f
 *
 * A and A_L areas of the bore and the large bore, e efficiency, S1 and S2 primary and secondary
 * spring, f seal friction, p_q take-up pressure. Holds for pistons at rest that cover their ports.
 * The springs count with one force each, though they push harder at the end of the stroke.
 * Source: force balance on each piston.
 * Checked by: tests/parts/test_master.c
 */
struct master_pressures master_pressures(const struct master *master, struct force rod,
                                         enum master_loss loss);
/* The pressure of the first or only piston, nothing lost.
 * Checked by: tests/reference/openstax_college_physics.c, tests/reference/serway.c
 */
struct pressure master_pressure(const struct master *master, struct force rod);
/* The force on the push rod that a pressure of the first or only piston asks for: master_pressure()
 * the other way round; N. NaN outside.
 *
 *   p   Pa gauge, >= 0
 *
 * Checked by: tests/parts/test_master.c
 */
struct force master_rod_force(const struct master *master, struct pressure p);
/* Area of its bore, m2; NaN unless the bore is > 0. */
struct area master_area(const struct master *master);
/* Area that delivers up to the take-up pressure: that of the large bore, m2; that of the bore where
 * there is no large one. NaN when the large bore is not over the bore. */
struct area master_take_up_area(const struct master *master);
/* Whether the spring between a tandem's pistons carries the second one along, so that both pass
 * their ports in one movement: S1 >= S2 + f. False for a single one, and where a force is NaN.
 * Source: force balance on the second piston.
 * Checked by: tests/parts/test_master.c */
bool master_carries_second(const struct master *master);
/* How far the piston of a chamber can go, m: a tandem's by its own stroke, 0 the primary one. NaN
 * where it is not known.
 * Checked by: tests/parts/test_master.c */
struct length master_full_stroke(const struct master *master, int chamber);
/* What the piston of a chamber goes by itself until its port is shut, m: 0 for a primary one that
 * carries the second along, for then both ports shut in the second's movement.
 * Checked by: tests/parts/test_master.c */
struct length master_own_cut_off(const struct master *master, int chamber);
/* Whether it is stepped. */
bool master_is_stepped(const struct master *master);

#endif
