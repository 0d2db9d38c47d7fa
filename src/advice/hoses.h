#ifndef FIRMPEDAL_ADVICE_HOSES_H
#define FIRMPEDAL_ADVICE_HOSES_H

#include "base/date.h"
#include "network/mounts.h"

enum hose_standing {
    HOSE_IS_NEW, /* renewed in the work at hand, or within the interval */
    HOSE_IS_OLD, /* older than the interval */
    HOSE_AGE_NOT_KNOWN,
    HOSE_IS_MISSING,  /* a moving gap without one */
    HOSE_IS_ACCEPTED, /* none, a hard pipe is accepted with a reason */
    HOSE_CANNOT_TELL,
    HOSE_IS_IDLE /* a hose where nothing moves */
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
    const char *reason; /* of an accepted hard pipe; or what is not known */
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
    int needed, has, renewed, old, missing, unknown;
    enum hose_verdict verdict;
};
/* The hose interval is the limit hose-age-most. */
struct hose_list hoses_of(const struct system *system, const struct network *network,
                          struct date today, struct arena *arena);
const char *hose_standing_words(enum hose_standing standing);

#endif
