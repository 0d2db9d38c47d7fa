#ifndef FIRMPEDAL_PARTS_HOSE_H
#define FIRMPEDAL_PARTS_HOSE_H

#include <stdbool.h>

#include "base/date.h"
#include "units/quantity.h"

enum hose_use { HOSE_USE_NOT_SAID, HOSE_PRESSURE, HOSE_SUPPLY, HOSE_VACUUM };
enum hose_state { HOSE_STATE_NOT_SAID, HOSE_GOOD, HOSE_WORN, HOSE_NEW };

struct hose {
    enum hose_use use;         /* pressure unless the part says supply or vacuum */
    struct length length;      /* key "length": of rubber, between the fittings; from the run */
    struct length inside;      /* "inside": inside diameter, assumed 1/8 in */
    enum hose_state state;     /* "state" = new | good | worn, assumed good */
    struct swelling expansion; /* "expansion": measured, volume per length at 1000 psi */
    struct date renewed;       /* "renewed": year, month or day it was made or fitted */
    const char *thread;        /* "thread" */
};

/* Volume inside a length of hose, m3; NaN unless length >= 0 and inside > 0.
 * Checked by: tests/parts/test_hose.c */
struct volume hose_volume(const struct hose *hose);
/* Swelling that a rule allows a hose: volume per length through the points of Table I for its band
 * of bores (up to 1/8 in; up to 5 mm; over), regular expansion, by power laws between the points. A
 * straight line leads to the first point; beyond the last one the exponent of the last two holds.
 *
 *   inside   inside diameter, m, > 0
 *   p        Pa gauge, >= 0
 *   gives    m3 per m of free length; NaN outside
 *
 * Source: 49 CFR 571.106, S5.3.2, Table I, from memory. It is a ceiling, not a measured curve: the
 * power below 1 between its first points would rise endlessly steeply from 0.
 * Checked by: tests/reference/fmvss_106.c
 */
struct swelling hose_ceiling(struct length inside, struct pressure p);

/* Volume by which a hose swells.
 *
 *   hose    free length m >= 0; inside m > 0; new, good or worn, good when not said; measured
 *           expansion m3 per m at 1000 psi, >= 0, when it was measured
 *   p       Pa gauge, >= 0
 *   gives   share * ceiling(p) * length, m3, never falling with p; share 0.22 for a new hose (one
 *           maker's measurement, quoted), 0.45 for a good one in service and 1.0 for a worn one
 *           (from memory), or what brings the curve to the measured value. NaN outside
 *
 * Checked by: tests/parts/test_hose.c
 */
struct volume hose_swelling(const struct hose *hose, struct pressure p);
/* The same hose as if it were good or worn, whatever is said of it.
 *
 *   as      good: it swells as the usual good one, or less where it is new or less was measured;
 *           worn: as much as the rule allows, or more where more was measured; else as described
 *
 * Checked by: tests/parts/test_hose.c
 */
struct volume hose_swelling_as(const struct hose *hose, enum hose_state as, struct pressure p);

#endif
