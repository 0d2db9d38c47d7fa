#ifndef FIRMPEDAL_ADVICE_CHOICE_CHOICE_H
#define FIRMPEDAL_ADVICE_CHOICE_CHOICE_H

#include "advice/choice/columns.h"
#include "advice/figures/figures.h"

/* Which bores would suit, out of a table or of those at hand, for up to four cylinders. */

enum choice_limit {
    CHOICE_FOOT,        /* most effort for the stop */
    CHOICE_LEFT,        /* least left to the floor */
    CHOICE_LOST,        /* least left with a circuit lost */
    CHOICE_BALANCE,     /* least margin until the rear locks */
    CHOICE_CLUTCH_FOOT, /* most effort at the clutch pedal */
    CHOICE_LIFT,        /* least bearing travel beyond what frees the clutch */
    CHOICE_LIMITS
};
struct choice_limit_row {
    const char *name; /* "foot", "pedal left": as it is written */
    enum dimension dimension;
    bool most;          /* the value may not exceed it; else not fall below it */
    bool clutch;        /* it is of the clutch, the others of the brakes */
    const char *figure; /* that must be computed for it */
    const char *help;
};
const struct choice_limit_row *choice_limit_row(enum choice_limit limit);

struct choice_asked {
    struct bore_axis axes[COLUMN_AXES];
    int axis_count;
    double limits[CHOICE_LIMITS]; /* SI; NaN: the usual one */
    struct acceleration stop;     /* that the foot is for; NaN: what the car does now */
    struct force effort;          /* NaN: each pedal's own */
    bool map;                     /* wanted of two cylinders of the brakes */
    column_progress progress;     /* may be NULL */
    void *progress_context;
};

enum { CHOICE_SHOWN = 5 };

struct choice_car {
    int at[COLUMN_AXES]; /* place of each axis' bore; -1: of the other group */
    double values[CHOICE_LIMITS];
    double beyond;        /* by how much it breaks the limit that it breaks most, as a part of
                             that; below 0 what it keeps of the one that it is nearest to */
    enum choice_limit by; /* that limit */
};

/* Two bores against each other: the first across, the second up, at even steps from the least bore
 * that is tried to the greatest, as far as they are like the one that is there. */
enum { CHOICE_MAP = 61 };
struct choice_map {
    double least[2], most[2];                                          /* m */
    double foot[CHOICE_MAP][CHOICE_MAP], left[CHOICE_MAP][CHOICE_MAP]; /* by first, second */
    bool suits[CHOICE_MAP][CHOICE_MAP];
    bool *tried; /* whether it suits, by place of the first bore, then of the second */
};

/* Axes whose circuits touch, all with all; those of the clutch and those of the brakes do not. */
struct choice_group {
    bool clutch;
    int axes[COLUMN_AXES], axis_count;
    double limits[CHOICE_LIMITS]; /* that hold; NaN: none */
    struct choice_car before;     /* the car as it is */
    long count, suits;
    struct choice_car best[CHOICE_SHOWN], nearest[CHOICE_SHOWN];
    int best_count, nearest_count; /* best first; misses nearest first */
    long broken[CHOICE_LIMITS];    /* how many cars break it */
    long alone[CHOICE_LIMITS];     /* and no other one */
    double shift[CHOICE_LIMITS];   /* by how much it would have to give for the first of those */
    const struct figure *lacks;    /* a figure that is not computed: nothing can be said; or NULL */
    struct choice_map *map;        /* NULL unless wanted */
    bool unfinished;               /* stopped, or a car of too many kinds of brakes */
};
struct chosen {
    const struct choice_asked *asked;
    struct acceleration stop;
    struct choice_group groups[2];
    int group_count;
    bool assumed; /* some value of the car that figures hang on is assumed */
};

/* A car suits that breaks no limit. Usual limits: for the same stop no more foot than is hardly
 * felt, left to the floor and with a circuit lost as fit asks it, balance no worse than before; the
 * clutch freed as fit asks it, with no more foot than is custom.
 *
 * Best is what keeps most of the limit that it is nearest to (balance apart: it is kept or not);
 * the nearest miss is what breaks least of the one that it breaks most.
 * Checked by tests/advice/choice/test_choice.c, tests/advice/choice/test_columns.c */
struct chosen *choose(const struct system *system, const struct network *network,
                      const struct choice_asked *asked, struct arena *arena);

#endif
