#ifndef FIRMPEDAL_PHYSICS_SOLUTION_H
#define FIRMPEDAL_PHYSICS_SOLUTION_H

#include <stdbool.h>

#include "base/arena.h"
#include "network/graph.h"
#include "network/system.h"
#include "parts/brake_case.h"

/* The whole car in one state. solve() is pure: the same system, network and state give the same
 * solution, nothing is allocated and nothing else changes, so a sweep may call it millions of
 * times on one solution's room. */

/* N: as far as any leg is followed. From memory, no source. */
#define MOST_EFFORT 2000.0

/* Every hose as described, or all of them as if good or worn. */
enum hose_case { HOSES_AS_SAID, HOSES_GOOD, HOSES_WORN };

struct state {
    struct force effort; /* on every brake pedal or hand lever; NaN: each pedal's own "effort" */
    bool assisted;       /* the servo has vacuum */
    int lost_circuit;    /* index of a circuit that has no pressure, or -1 */
    int pedal;           /* part index of the only pedal that is pressed, the others at rest; -1:
                            all are */
    struct brake_case brakes; /* linings, adjusters, cold or hot */
    enum hose_case hoses;
    struct volume more_air; /* free air in each circuit beside what is described, at 1 atm */
    bool no_floor;          /* travel without end, for the travel that would be needed */
    bool no_clutch;         /* clutches are left out: a state changes nothing of them */
};
/* Engine running, nothing lost, adjusters set, each pedal's own effort, all of them pressed. */
struct state state_usual(void);

/* Where fluid (and so pedal travel) goes. */
enum cause {
    CAUSE_CLEARANCE, /* roll-back of pistons, clearance of shoes */
    CAUSE_LININGS,   /* pads and linings squashed, shoes and drums bent */
    CAUSE_BODY,      /* caliper bodies opening */
    CAUSE_HOSES,
    CAUSE_FLUID,
    CAUSE_PIPES,
    CAUSE_AIR,
    CAUSE_SLAVE, /* the clutch slave's own travel */
    CAUSE_COUNT
};
const char *cause_words(enum cause cause);

struct circuit_state {
    struct pressure pressure; /* at the master's outlet */
    struct volume by_cause[CAUSE_COUNT];
    struct volume volume; /* their sum */
    struct length stroke; /* of the piston that makes it, cut-off included */
    /* What of the travel of the master's push rod it takes: for the port, for a lost piston's way
     * to its end, and by cause. */
    struct length rod_cut_off, rod_lost;
    struct length rod_by_cause[CAUSE_COUNT];
};
struct pedal_state {
    struct force effort;      /* at which it was solved */
    struct force rod;         /* on the master's push rod, after the servo; sum on a balance bar */
    struct length rod_travel; /* of the push rod, gap and cut-off included; of a bar's bearing */
    struct length travel;     /* at the pad, free play, rod gap and flexing included */
    struct length left;       /* to the floor; 0 on the floor or bottomed; NaN: travel not known */
    bool on_floor;            /* the pedal met the floor before the effort was reached */
    bool bottomed;            /* a master piston met the end of its bore */
    struct angle bar_tilt;    /* of a balance bar; NaN without */
};
struct brake_state {
    struct pressure pressure[2]; /* by inlet */
    struct force clamp;          /* of a caliper; NaN for drums */
    struct torque torque;        /* going forward */
    struct torque torque_reverse;
    struct force force; /* at the tyre */
};
struct clutch_state {
    int pedal, master;            /* part indices, -1 when not found */
    struct pressure pressure;     /* that the peak of the release force asks for */
    struct force effort;          /* at the pedal for it */
    struct pressure pressure_end; /* the same two at full travel */
    struct force effort_end;
    struct length touch;     /* pedal travel until the bearing touches the fingers */
    struct volume delivered; /* by the master at full pedal */
    struct volume lost;      /* to hoses, fluid, pipes and air, at full pedal */
    struct length slave_travel;
    struct length bearing_travel; /* at full pedal travel */
};

struct drum_memory; /* physics/drum_memory.h */

struct solution {
    struct pressure *pressures;     /* by vertex */
    struct circuit_state *circuits; /* by circuit */
    struct pedal_state *pedals;     /* by part index; NaN for parts that are no pedal */
    struct brake_state *brakes;     /* by part index */
    struct clutch_state *clutches;  /* by part index of the slave */
    struct drum_memory *drums;      /* by part index */
    int *brake_pedals, *brakes_at;  /* where these parts are, found once for the room */
    int brake_pedal_count, brake_count;
    struct force front, rear;         /* brake force of the axles at the tyres */
    struct acceleration deceleration; /* of the vehicle on a road with grip enough, its turning
                                         parts slowed with it: (sum of forces / mass + rolling
                                         resistance * g)/(1 + rotating share); NaN without mass or
                                         a tyre radius */
    bool converged;
};

/* Room for one solution. */
struct solution *solution_room(const struct system *system, const struct network *network,
                               struct arena *arena);

/* Solves one state into a solution's room. What is not known comes out as NaN. Brake pedals at the
 * state's effort; a clutch at its pedal's full travel. With a floor: when the effort would need
 * more travel than there is (pedal's or master's), the greatest effort that fits is found by a
 * bounded search, on_floor or bottomed is set and left is 0. The brakes' forces are what they would
 * be on a road with grip enough.
 * Checked by tests/physics/test_solution.c */
void solve(const struct system *system, const struct network *network, const struct state *state,
           struct solution *into);

/* Radius of the tyres of an axle, m; NaN where it is not known. */
struct length solution_tyre_radius(const struct vehicle *vehicle, enum axle axle);

/* Pressures, brakes and deceleration alone, as if no pedal had a floor: for the search of an
 * effort. Volumes, travels and clutches of the room keep what they were. */
void solve_forces(const struct system *system, const struct network *network,
                  const struct state *state, struct solution *into);

/* The effort at which the brakes' forces reach the deceleration, as if no pedal had a floor; found
 * between 0 and 2000 N, NaN when they do not. The same effort on every pedal and hand lever that
 * the state presses.
 * room is used for the solving.
 * Checked by tests/physics/test_solution.c */
struct force solve_effort_by_force(const struct system *system, const struct network *network,
                                   const struct state *state, struct acceleration wanted,
                                   struct solution *room);
/* Whether every brake pedal reaches an effort before its floor and its master's end. */
bool solve_effort_fits(const struct system *system, const struct network *network,
                       const struct state *state, struct force effort, struct solution *room);

#endif
