#ifndef FIRMPEDAL_PARTS_HOSE_H
#define FIRMPEDAL_PARTS_HOSE_H

#include <stdbool.h>

#include "base/date.h"
#include "units/quantity.h"

enum hose_use { HOSE_USE_NOT_SAID, HOSE_PRESSURE, HOSE_SUPPLY, HOSE_VACUUM };
enum hose_state { HOSE_STATE_NOT_SAID, HOSE_GOOD, HOSE_WORN };

struct hose {
    enum hose_use use;          /* pressure unless the part says supply or vacuum */
    struct length length;       /* key "length": free length between its ends; from the run */
    struct length inside;       /* "inside": inside diameter, assumed 1/8 in */
    enum hose_state state;      /* "state" = good | worn, assumed good */
    struct swelling expansion;  /* "expansion": measured, volume per length at 1000 psi */
    struct date renewed;        /* "renewed": year, month or day it was made or fitted */
    const char *thread;         /* "thread" */
};

/* Volume inside a length of hose. */
struct volume hose_volume(const struct hose *hose);
/* Swelling at pressure p: share * ceiling(p) * length, where the ceiling goes through the points of
 * the bore's band in 49 CFR 571.106 Table I (from memory) by power laws between them and from 0,
 * share 0.45 for a good hose, 1.0 for a worn one (from memory); with a measured expansion the
 * curve is scaled to it. p >= 0. Monotone. */
struct volume hose_swelling(const struct hose *hose, struct pressure p);
/* The ceiling itself, m3 per m. */
struct swelling hose_ceiling(struct length inside, struct pressure p);

#endif
