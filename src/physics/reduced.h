#ifndef FIRMPEDAL_PHYSICS_REDUCED_H
#define FIRMPEDAL_PHYSICS_REDUCED_H

#include "physics/press.h"
#include "physics/travel.h"

/* A car boiled down to what a state of it rests on: where the plumbing has one pressure it is a
 * stretch, and all that gives way along a stretch is a few terms. A pedal pressed then walks no
 * network. What it says is what solve() says.
 * Checked by tests/physics/test_reduced.c */

enum { REDUCED_TERMS = 8, REDUCED_MASTERS = 2, REDUCED_CHAMBERS = 2 };

/* Volumes that a stretch takes at a pressure p. */
struct reduced_terms {
    /* volume * p/threshold up to the threshold, then all of it */
    struct {
        double threshold, volume; /* Pa, m3 */
    } steps[REDUCED_TERMS];
    int step_count;
    /* amount * what a hose of that inside may swell at p */
    struct {
        double inside, amount; /* m, m */
    } hoses[REDUCED_TERMS];
    int hose_count;
    double linear; /* m3/Pa: pads, shoes, bodies, pipes */
    double fluid;  /* m3 that is pressed */
    double room;   /* m3 at rest, over which air is spread */
    bool overflow; /* more different ones than there is room for: nothing is said */
};

struct reduced_stretch {
    int circuit, before;        /* the stretch that it is fed from; -1: the master */
    const struct part *passage; /* the valve or servo between; NULL */
    bool backwards;             /* that is fed through its outlet: no law */
};

/* A brake force that rises from a threshold on. */
struct reduced_force {
    int brake, stretch; /* part index */
    double threshold;   /* Pa */
    double per_pa;      /* N at the tyre for each Pa beyond it */
};

struct reduced_master {
    int part; /* -1: the pedal works none there */
    const struct master *data;
    const struct servo *servo;                                 /* in front of it, or NULL */
    int circuits[REDUCED_CHAMBERS], sources[REDUCED_CHAMBERS]; /* stretches; -1: nothing joined */
    int remotes[REDUCED_CHAMBERS]; /* the stretch behind a remote servo; -1 */
    int count;                     /* of pistons */
    bool lost[REDUCED_CHAMBERS];
    double air[REDUCED_CHAMBERS]; /* m3 */
    struct squeeze squeeze[REDUCED_CHAMBERS];
    double gap; /* m that its rod goes before the piston */
};

struct reduced_pedal {
    int part;
    const struct pedal *data;
    struct reduced_master masters[REDUCED_MASTERS];
    int master_count;
    bool dead; /* its one piston has lost its circuit */
};

struct reduced {
    const struct system *system;
    const struct network *network;
    struct state state;
    struct reduced_stretch *stretches;
    struct reduced_terms *terms; /* by stretch */
    int stretch_count;
    struct reduced_force *forces;
    int force_count;
    struct reduced_pedal *pedals;
    int pedal_count;
    int *stretch_of; /* by vertex; -1 */
};

/* Boils a car down for a state; its effort does not matter.
 *
 *   without  by part: brakes and cylinders whose terms are left out; NULL: none is
 *   room     for the memory of shoe factors */
struct reduced *reduce(const struct system *system, const struct network *network,
                       const struct state *state, const bool *without, struct solution *room,
                       struct arena *arena);
/* Adds the terms of one part of a car of the same plumbing, by stretch. */
void reduced_add_part(const struct reduced *reduced, const struct system *system, int part,
                      struct reduced_terms *terms);
/* Its forces; gives how many there are, at most REDUCED_CHAMBERS. */
int reduced_forces_of(const struct reduced *reduced, const struct system *system, int part,
                      struct solution *room, struct reduced_force *into);

/* Pressures of all stretches that a pedal makes with an effort, by stretch.
 *   gives  force on the masters' pistons, summed */
struct force reduced_pressures(const struct reduced *reduced, int pedal, struct force effort,
                               double *pressures);

/* What the chambers of a pedal's masters send off, m3: at the pressures now, and of a stepped
 * master at its take-up pressure. Linear in the terms. */
struct reduced_volumes {
    double now[REDUCED_MASTERS][REDUCED_CHAMBERS], up[REDUCED_MASTERS][REDUCED_CHAMBERS];
};
/* own: with air and what servos need themselves; only one of the shares that are added has them.
 * scratch: as many pressures as there are stretches. */
struct reduced_volumes reduced_volumes_of(const struct reduced *reduced, int pedal,
                                          const double *pressures,
                                          const struct reduced_terms *terms, bool own,
                                          double *scratch);
/* How far these take the pedal. */
struct reach reduced_reach(const struct reduced *reduced, int pedal, struct force effort,
                           struct force rod, const struct reduced_volumes *volumes);
/* By how much they go beyond the floor, then beyond the ends of the bores, m; below 0 what is left.
 * Each is linear in the volumes beside a constant, so that shares of them may be added up.
 *   gives  how many, at most REDUCED_EXCESSES */
enum { REDUCED_EXCESSES = 1 + REDUCED_MASTERS * (REDUCED_CHAMBERS + 1) };
int reduced_excesses(const struct reduced *reduced, int pedal, struct force effort,
                     const struct reduced_volumes *volumes, double *into);
/* What is left to the floor: 0 where floor or bore ends first; NaN where it is not known. */
double reduced_left(const struct reduced *reduced, int pedal, const struct reach *reach);

/* Force of a brake at the pressures, N. */
double reduced_force_at(const struct reduced_force *force, const double *pressures);

/* A pedal pressed: what solve() gives of it, the search of its end included. */
struct pedal_state reduced_pressed(const struct reduced *reduced, int pedal, struct force effort,
                                   double *pressures, double *scratch);
/* The whole car with one effort on every pedal: deceleration as solve() gives it. */
struct acceleration reduced_deceleration(const struct reduced *reduced, const double *pressures);

#endif
