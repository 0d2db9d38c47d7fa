#ifndef FIRMPEDAL_TESTS_PROOF_PROOF_TABLES_H
#define FIRMPEDAL_TESTS_PROOF_PROOF_TABLES_H

#include <stdio.h>

#include "base/text.h"
#include "made_up.h"
#include "tally.h"

/* One car: all its circuits with two nipples or more, all cases, both practices. */
struct car_tally {
    const char *title;
    struct tally tally;
};

/* The toy tree: strokes and fluid far first and near first. */
enum toy_practice { TOY_OPEN, TOY_SHUT, TOY_SHUT_LOW, TOY_SHUT_HIGH, TOY_COUNT };
struct toy_run {
    struct trial far_first, near_first;
};

struct proof {
    unsigned long networks, seed;
    struct car_tally *cars;
    int car_count, refused;
    struct tally all_cars;
    struct tally made_up;
    struct tally by_air[AIR_COUNT], by_practice[2]; /* held open, shut under pressure */
    struct toy_run toy[TOY_COUNT];
    bool failed; /* a car could not be read */
};

/* Each adds to the proof; every: a line for every net goes into the listing, else only those where
 * the plan differs from the best. */
void proof_cars(struct proof *proof, const char *root, bool every, struct text *listing,
                struct arena *arena);
void proof_made_up(struct proof *proof, bool every, struct text *listing, struct arena *arena);
void proof_toy(struct proof *proof, struct arena *arena);
/* One network with all that is in it, and what its orders come to. */
void proof_only(unsigned long seed, unsigned long number, struct text *listing,
                struct arena *arena);

/* The tables as text, and the section of docs/bleeding.md. */
void proof_summary(const struct proof *proof, struct text *into, struct arena *arena);
void proof_page(const struct proof *proof, struct text *into, struct arena *arena);
/* Whether all that is claimed holds; what does not is printed. */
bool proof_holds(const struct proof *proof, FILE *complaints);

#endif
