#ifndef FIRMPEDAL_PHYSICS_DRUM_MEMORY_H
#define FIRMPEDAL_PHYSICS_DRUM_MEMORY_H

#include <stdbool.h>

#include "physics/solution.h"

/* Shoe factors as they were worked out for these data. They are dear and hardly ever change between
 * two solves, so they are kept; the same data give the same factors either way. */
struct drum_memory {
    struct drum of;                  /* bore 0: nothing is kept yet */
    struct shoe_factors ahead, back; /* rolling forward, rolling back */
    double forward, reverse;         /* sums of the two shoes */
    double most, least;              /* forward, friction moved up and down by its spread */
    double sensitivity;              /* share of the factor for a share of friction, forward, - */
};

/* The factors of a drum brake of the system, from the room's memory where its data, or those of
 * another drum of the car, are the same to the last bit; otherwise worked out and kept.
 *
 *   drum   part index of a drum brake
 *
 * Checked by tests/physics/test_solution.c */
const struct drum_memory *drum_remembered(const struct system *system, int drum,
                                          const struct solution *room);

/* Lets a room use the memory of another room of the same car, so that what one has worked out all
 * of them know. */
void drum_memory_share(struct solution *room, const struct solution *with);

#endif
