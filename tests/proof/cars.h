#ifndef FIRMPEDAL_TESTS_PROOF_CARS_H
#define FIRMPEDAL_TESTS_PROOF_CARS_H

#include "contest.h"
#include "network/graph.h"
#include "purge/purge.h"

/* The ready cars, their circuits with air in them, and how they are bled. */

struct ready_car {
    const char *title;
    const struct system *system;
    const struct network *network;
};

/* All of systems/ below a folder, in order of file name; NULL after a message on stderr. */
struct ready_car *cars_read(const char *root, struct arena *arena, int *count);

/* What was done to a circuit. */
enum car_case {
    CAR_DRY,    /* all of it is full of air */
    CAR_MASTER, /* the master was off: air as far as the first place where the pipe parts */
    CAR_WHEEL   /* from here on: one brake was renewed, the first, second ... nipple of the net */
};
/* The net with that air in it; NULL when the circuit has no such case. words says which it is. */
struct purge_net *cars_net(const struct ready_car *car, int circuit, int which, const char **words,
                           struct arena *arena);
/* The plan of the program for that case, as turns of the net: for the whole car when all is dry,
 * for the brake alone when that is new. NULL turns for the master, whose plan begins at the bench.
 */
struct given_plan cars_plan(const struct ready_car *car, const struct purge_net *net, int circuit,
                            int which, bool shut_under_pressure, struct arena *arena);
/* Bleeding it by the pedal. */
struct purge_way cars_way(const struct ready_car *car, int circuit, bool shut_under_pressure);

#endif
