#ifndef FIRMPEDAL_PHYSICS_PEDAL_CURVE_H
#define FIRMPEDAL_PHYSICS_PEDAL_CURVE_H

#include <stdbool.h>
#include <stddef.h>

#include "base/arena.h"
#include "physics/solution.h"

/* How far a brake pedal or hand lever goes for every effort, from the first touch to the full
 * effort or to its floor, and what takes that travel. */

/* What takes travel at the pad. The order is that of a foot going down, and of a table. */
enum travel_cause {
    TRAVEL_FREE_PLAY, /* until the rod begins to push */
    TRAVEL_ROD_GAP,   /* push rod to piston, or the servo's output rod */
    TRAVEL_SERVO,     /* the servo's own lost motion */
    TRAVEL_CUT_OFF,   /* pistons until they have covered their ports */
    TRAVEL_LOST,      /* the piston of a lost circuit on its way to its end */
    TRAVEL_CLEARANCE, /* and on: as the causes of volume have it */
    TRAVEL_LININGS,
    TRAVEL_BODY,
    TRAVEL_HOSES,
    TRAVEL_FLUID,
    TRAVEL_PIPES,
    TRAVEL_AIR,
    TRAVEL_FLEXING, /* pedal, bracket and bulkhead */
    TRAVEL_CAUSE_COUNT
};
const char *travel_cause_words(enum travel_cause cause);

/* Circuits that one pedal can work: two masters on a bar, each a tandem. */
enum { CURVE_MOST_CIRCUITS = 4, CURVE_LEAST_POINTS = 4, CURVE_USUAL_POINTS = 24 };

struct curve_point {
    struct force effort;                             /* at the pad */
    struct length travel;                            /* at the pad */
    struct length by_cause[TRAVEL_CAUSE_COUNT];      /* at the pad; their sum is the travel */
    struct pressure by_circuit[CURVE_MOST_CIRCUITS]; /* at the master, as curve.circuits says */
};

struct pedal_curve {
    int pedal;                         /* part index */
    int circuits[CURVE_MOST_CIRCUITS]; /* that it works, by their index */
    int circuit_count;
    struct force asked;          /* the full effort */
    struct curve_point *points;  /* by rising effort, the first at 0 N, the last at the end */
    int count;                   /* 0 when nothing can be said */
    struct curve_point *between; /* one in the middle of each piece, for the drawing of it */
    int room;                    /* for so many points */
    struct length left;          /* to the floor at the last point; 0 there; NaN: not known */
    bool on_floor;               /* the pedal met the floor before the full effort */
    bool bottomed;               /* or a piston of a master met its end */
    struct solution *solution;   /* its own room for solving */
};

/* The cases that a curve is worth drawing for. */
struct curve_case {
    const char *id;     /* "hot" */
    const char *words;  /* "hot brakes, hot fluid" */
    struct state state; /* its effort is left open: each pedal's own */
    bool each_circuit;  /* one curve for each circuit of the pedal, put in as the lost one */
};
const struct curve_case *curve_cases(size_t *count);
/* The row with that id, or NULL. */
const struct curve_case *curve_case(const char *id);
/* Whether a case can differ from the usual one for this pedal: no adjusters without drums, no servo
 * that could fail without a servo.
 * Checked by tests/physics/test_pedal_curve.c */
bool curve_case_is_of(const struct system *system, const struct network *network, int pedal,
                      const struct curve_case *row);

/* Room for one curve of so many points (at least CURVE_LEAST_POINTS). */
struct pedal_curve *pedal_curve_room(const struct system *system, const struct network *network,
                                     int points, struct arena *arena);
/* Works out the curve of a pedal in one state; allocates nothing.
 *
 *   pedal   part index of a brake pedal or hand lever
 *   state   as for solve(): its effort is the full effort, NaN for the pedal's own
 *   into    a room; all its points are used, half of them evenly spaced, the others put where the
 *           curve bends most (a servo's knee, shoes and pads that touch, a valve)
 *
 * Every point is explicit in its effort; only the end at a floor is searched for. Where the pedal
 * rests on the floor before it pushes anything the causes are cut short in their order.
 * Source: conservation of volume and the geometry of the lever.
 * Checked by tests/physics/test_pedal_curve.c */
void pedal_curve_solve(const struct system *system, const struct network *network, int pedal,
                       const struct state *state, struct pedal_curve *into);

#endif
