#ifndef FIRMPEDAL_ADVICE_FIGURES_TRIAL_H
#define FIRMPEDAL_ADVICE_FIGURES_TRIAL_H

#include "advice/figures/figures.h"

/* A copy of the car whose values are moved about while all figures are watched: what dependence
 * and weighing are made of. */

struct trial {
    const struct system *as_said;
    struct system *moved;
    struct situation *situation;
    const struct figures *figures;
    double *now; /* by figure, as they were looked at last */
    /* what must be solved again for values moved since it was solved last, and for all of them to
     * be back as they were said */
    enum key_solves moved_since, moved_ever;
};

/* A key of a part in a trial. */
struct moved_key {
    int part;
    const struct key *key;
    double base; /* what it is, or what is put in for it */
};
struct moved_keys {
    struct moved_key *items;
    size_t count;
    size_t capacity;
};

struct trial trial_start(const struct system *system, const struct network *network,
                         struct force effort, const struct figures *figures, struct arena *arena);
/* Solves again after values were moved, and reads all figures. */
void trial_look(struct trial *trial);
/* Puts a value into a key of the copy; NaN takes it away. */
void trial_put(struct trial *trial, const struct moved_key *key, double value);
/* Puts a part back as it was said. */
void trial_restore(struct trial *trial, int part);
/* Values of a part that follow from others by rule are found again, as the reader would. */
void trial_follow_rules(struct trial *trial, int part);

/* Whether keys of that form are moved at all: quantities, bores and choices. */
bool trial_moves(const struct key *key);
/* The value of a row's example; NaN where it has none. */
double trial_example(const struct key *key);

/* Every value that is taken for granted: assumed by its row, or a chamber's usual volume. */
struct moved_keys trial_assumed_keys(const struct system *system, const struct network *network,
                                     struct arena *arena);
/* Every value that is written down: in the description, once for several parts, in a work file, or
 * following from other words. A choice that says how the plumbing is joined is not among them. */
struct moved_keys trial_given_keys(const struct system *system, struct arena *arena);

/* What is put in for what is not said: the row's example, or an end of its usual range. */
enum trial_filling { TRIAL_FILL_EXAMPLE, TRIAL_FILL_LEAST, TRIAL_FILL_MOST, TRIAL_FILL_COUNT };
/* Everything that is not said and does not follow by rule, with what is put in as its base. */
struct moved_keys trial_missing_keys(const struct system *system, enum trial_filling filling,
                                     struct arena *arena);
/* Puts such a key in, or takes it away again; what follows from it by rule is found anew. */
void trial_fill(struct trial *trial, const struct moved_key *key, bool in);

/* Where a value is moved to: first a little, then to the ends of its usual range, then farther. */
enum { TRIAL_MOST_MOVES = 16 };
struct moves {
    double to[TRIAL_MOST_MOVES];
    int count;
    int near; /* how many of them, first ones, are near: a figure that does not change by them rests
                 on the value only beyond some knee */
    int usual; /* up to here they are within the usual range */
};
/* A hundredth up and down, the ends of the usual range, half and double, through all choices, to
 * the row's example where the value is 0; never beyond the row's limits, nor to a choice that would
 * join the plumbing otherwise. */
struct moves trial_moves_of(const struct part *part, const struct moved_key *key);

#endif
