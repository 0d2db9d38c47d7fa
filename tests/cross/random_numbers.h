#ifndef FIRMPEDAL_TESTS_CROSS_RANDOM_NUMBERS_H
#define FIRMPEDAL_TESTS_CROSS_RANDOM_NUMBERS_H

#include <stdbool.h>
#include <stdint.h>

/* Random numbers that are the same on every machine: splitmix64 (G. L. Steele, D. Lea and
 * C. H. Flood, OOPSLA 2014, from memory). */
struct random {
    uint64_t state;
};

/* Evenly between two ends. */
double random_between(struct random *random, double from, double to);
/* One of 0 ... count - 1. */
int random_of(struct random *random, int count);
/* True with this chance, 0 to 1. */
bool random_chance(struct random *random, double chance);

#endif
