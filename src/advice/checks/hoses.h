#ifndef FIRMPEDAL_ADVICE_CHECKS_HOSES_H
#define FIRMPEDAL_ADVICE_CHECKS_HOSES_H

#include "base/date.h"
#include "network/mounts.h"

enum hose_standing {
    HOSE_IS_NEW, /* renewed in the work at hand, or within the interval */
    HOSE_IS_OLD, /* older than the interval */
    HOSE_AGE_NOT_KNOWN,
    HOSE_IS_MISSING,  /* a moving gap without one */
    HOSE_IS_ACCEPTED, /* none, a hard pipe is accepted with a reason */
    HOSE_CANNOT_TELL,
    HOSE_IS_IDLE /* a new hose where nothing moves; an old or undated one counts by its age */
};
struct hose_line {
    enum hose_standing standing;
    int hose;          /* part, -1 */
    const char *name;  /* its name, or what it should be called: "hose to rear axle" */
    const char *where; /* "from the body to the rear axle" */
    const char *use;   /* "pressure", "supply", "vacuum" */
    int near, far;     /* parts */
    struct date renewed;
    bool renewed_in_work;
    bool idle;          /* it bridges no gap, whatever its age */
    const char *reason; /* of an accepted hard pipe; what is not known; why it is idle; or NULL */
    struct place place;
};
enum hose_verdict {
    HOSES_COMPLETE, /* every gap bridged, every hose new */
    HOSES_OLD_LEFT, /* every gap bridged, but old or undated hoses are left */
    HOSES_MISSING,
    HOSES_CANNOT_TELL
};
struct hose_list {
    struct hose_line *items;
    int count;
    int needed;  /* places where a hose must be: moving gaps that no hard pipe is accepted for,
                    and low-pressure hoses */
    int has;     /* of these, that have one */
    int missing; /* of these, that have none */
    int renewed; /* hoses renewed in the work at hand (that of the latest day) */
    int old;     /* hoses older than the interval, needed or not */
    int unknown; /* hoses whose age is not known, needed or not */
    enum hose_verdict verdict;
    const char *needs; /* HOSES_CANNOT_TELL: the keys that would tell, or NULL */
};
/* Every place where a hose must be and every hose that is there: pressure hoses circuit by circuit
 * in the order of the network, then hoses that bridge no gap, then supply hoses of remote
 * reservoirs (where their length or date is said) and the vacuum hose that every servo has.
 * A missing hose makes the list incomplete even where something else cannot be told.
 * A hose is old when today is past the date it was renewed plus the limit hose-age-most, years; a
 * month or day that is not known counts as the first. today not known: no hose is old. */
struct hose_list hoses_of(const struct system *system, const struct network *network,
                          struct date today, struct arena *arena);
const char *hose_standing_words(enum hose_standing standing);

#endif
