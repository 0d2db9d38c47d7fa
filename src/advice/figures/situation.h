#ifndef FIRMPEDAL_ADVICE_FIGURES_SITUATION_H
#define FIRMPEDAL_ADVICE_FIGURES_SITUATION_H

#include "network/graph.h"
#include "network/system.h"
#include "physics/balance.h"
#include "physics/grip_use.h"
#include "physics/solution.h"

/* Cases in which a pedal goes farther than usual. */
enum pedal_case {
    PEDAL_NEW,  /* new linings */
    PEDAL_WORN, /* linings worn to their limit */
    PEDAL_HOT,
    PEDAL_KNOCKED_BACK, /* the first stroke after it */
    PEDAL_WORN_HOSES,
    PEDAL_CASE_COUNT
};

enum road { ROAD_DRY, ROAD_WET, ROADS };

/* All solutions that figures are read from. */
struct situation {
    const struct system *system;
    const struct network *network;
    struct solution *usual;      /* each pedal's own effort (or the asked one), servo working */
    struct solution *unassisted; /* the same effort without vacuum */
    struct solution *slack;      /* adjusters not set */
    struct solution **lost;      /* by circuit: that circuit without pressure; NULL for clutches */
    struct solution *cases[PEDAL_CASE_COUNT];
    struct solution *scratch;      /* room for roots */
    struct pressure *port_blocked; /* by circuit: its port shut and its fluid warmed */
    struct force effort;           /* asked for, NaN: each pedal's own */
    bool servo;                    /* some servo helps */
    bool drums;                    /* some brake has shoes to adjust */
    struct axle_pedals pedals;
    struct solution *alone[GRIP_AXLES]; /* where each axle has its own pedal: that one pressed
                                           alone; forces only, else NULL */
    /* What locks first at the grip of each road, servo working: with each axle's own pedal alone
     * where it has one, else the same for both. */
    struct first_lock lock[ROADS][GRIP_AXLES];
    struct grip_use grip_use; /* in a stop of 0.5 g, servo working */
    struct force half_g;      /* effort for a stop of 0.5 g, floors or not; of the front wheels'
                                 own pedal or lever where they have one */
    struct force half_g_unassisted;
    bool half_g_fits; /* the pedals' travel is enough for it */
    bool half_g_unassisted_fits;
};
struct situation *situation_room(const struct system *system, const struct network *network,
                                 struct force effort, struct arena *arena);
/* Solves all of them again, after values of the system were moved. Allocates nothing. */
void situation_solve(struct situation *situation);
/* The same where only values moved that no pressure and no brake force rests on: data of pipes,
 * hoses, joints, fluids. What was found by searching an effort is kept. */
void situation_solve_travels(struct situation *situation);

/* The stop that efforts are compared for, m/s2. */
struct acceleration figure_half_g(void);

#endif
