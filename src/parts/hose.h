#ifndef FIRMPEDAL_PARTS_HOSE_H
#define FIRMPEDAL_PARTS_HOSE_H

#include <stdbool.h>

#include "base/date.h"
#include "units/quantity.h"

enum hose_use { HOSE_USE_NOT_SAID, HOSE_PRESSURE, HOSE_SUPPLY, HOSE_VACUUM };
enum hose_state { HOSE_STATE_NOT_SAID, HOSE_GOOD, HOSE_WORN };

struct hose {
    enum hose_use use;         /* pressure unless the part says supply or vacuum */
    struct length length;      /* key "length": free length between its ends; from the run */
    struct length inside;      /* "inside": inside diameter, assumed 1/8 in */
    enum hose_state state;     /* "state" = good | worn, assumed good */
    struct swelling expansion; /* "expansion": measured, volume per length at 1000 psi */
    struct date renewed;       /* "renewed": year, month or day it was made or fitted */
    const char *thread;        /* "thread" */
};

/* Volume inside a length of hose, m3; NaN unless length >= 0 and inside > 0.
 * Checked by: tests/parts/test_hose.c */
struct volume hose_volume(const struct hose *hose);
/* Swelling that a rule allows a hose: volume per length through the points of Table I for its band
 * of bores (up to 1/8 in; up to 5 mm; over), regular expansion, by power laws between the points.
 * From 0 to the first point and beyond the last one the exponents of the nearest two hold.
 *
 *   inside   inside diameter, m, > 0
 *   p        Pa gauge, >= 0
 *   gives    m3 per m of free length; NaN outside
 *
 * Source: 49 CFR 571.106, S5.3.2, Table I, from memory. It is a ceiling, not a measured curve; that
 * hose takes most of its volume early is what the points show.
 * Checked by: tests/reference/fmvss_106.c
 */
struct swelling hose_ceiling(struct length inside, struct pressure p);

/* Volume by which a hose swells.
 *
 *   hose    free length m >= 0; inside m > 0; good or worn, good when not said; measured expansion
 *           m3 per m at 1000 psi, >= 0, when it was measured
 *   p       Pa gauge, >= 0
 *   gives   share * ceiling(p) * length, m3, never falling with p; share 0.45 for a good hose and
 *           1.0 for a worn one (from memory), or what brings the curve to the measured value,
 *           good or worn. NaN outside
 *
 * Checked by: tests/parts/test_hose.c
 */
struct volume hose_swelling(const struct hose *hose, struct pressure p);
/* The same hose as if it were good or worn, whatever is said of it.
 *
 *   as      good: it swells as the usual good one, or less where less was measured; worn: as much
 *           as the rule allows, or more where more was measured; not said: as described
 *
 * Checked by: tests/parts/test_hose.c
 */
struct volume hose_swelling_as(const struct hose *hose, enum hose_state as, struct pressure p);

#endif
