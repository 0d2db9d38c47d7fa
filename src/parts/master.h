#ifndef FIRMPEDAL_PARTS_MASTER_H
#define FIRMPEDAL_PARTS_MASTER_H

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
    struct length cut_off;    /* "cut off": travel until the port is covered; assumed 1.2 mm */
    struct length rod_gap;    /* "rod gap": push rod to piston at rest; assumed 0.8 mm */
    struct number efficiency; /* "efficiency" of its seals; assumed 0.95 */
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

/* Pressure of a master from the force on its push rod; in a tandem both circuits get it.
 *
 *   master   bore m > 0; efficiency over 0 and up to 1
 *   rod      force on the push rod, N, >= 0
 *   gives    efficiency * rod / area, Pa gauge; NaN outside
 *
 * Holds for a piston at rest that covers its port. Leaves out the piston springs: 0.1 to 0.3 MPa
 * between the circuits of a tandem (from memory).
 * Source: force balance on the piston.
 * Checked by: tests/reference/openstax_college_physics.c, tests/reference/serway.c
 */
struct pressure master_pressure(const struct master *master, struct force rod);
/* Area of its bore, m2; NaN unless the bore is > 0. */
struct area master_area(const struct master *master);

#endif
