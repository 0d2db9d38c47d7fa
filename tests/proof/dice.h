#ifndef FIRMPEDAL_TESTS_PROOF_DICE_H
#define FIRMPEDAL_TESTS_PROOF_DICE_H

#include <stdbool.h>
#include <stdint.h>

/* Random numbers that are the same on every machine: xorshift64* (S. Vigna, ACM Transactions on
 * Mathematical Software 42 (2016) no. 4, article 30), from memory. */
struct dice {
    uint64_t state;
};

/* Two numbers give one row of numbers; neighbours give rows that have nothing in common. */
struct dice dice_start(uint64_t seed, uint64_t number);
/* From 0 to below 1. */
double dice_share(struct dice *dice);
double dice_between(struct dice *dice, double least, double most);
/* From 0 to count - 1. */
int dice_pick(struct dice *dice, int count);
/* True in so large a share of all throws. */
bool dice_happens(struct dice *dice, double share);

#endif
