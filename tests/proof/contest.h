#ifndef FIRMPEDAL_TESTS_PROOF_CONTEST_H
#define FIRMPEDAL_TESTS_PROOF_CONTEST_H

#include "judge.h"

/* The plan and its rivals on one net, beside what all orders come to. */

/* How a plan that is not the best of all orders differs from it. */
enum difference {
    DIFFERS_NOT,     /* no more air, at most 5 % more fluid */
    DIFFERS_STROKE,  /* more than 5 %, but no more than one whole stroke: strokes are not halved */
    DIFFERS_CLEARER, /* it draws more because it gets more air out, by opening a nipple twice */
    DIFFERS_WORSE,   /* nothing explains it */
    DIFFERENCES
};
const char *difference_words(enum difference difference);

struct contest {
    struct verdict verdict;
    struct trial plan;     /* by rule, checked by the simulation */
    struct trial rule;     /* by rule alone */
    struct trial nearest;  /* shortest way first */
    struct trial farthest; /* longest way first */
    struct trial simple;   /* the best of farthest, nearest and rule, by the simulation */
    struct trial random;   /* one order by dice */
    bool plan_is_rule;
    enum difference difference, rule_difference, simple_difference;
};

/* A plan that was made elsewhere; NULL turns: the planner is asked about the net itself. */
struct given_plan {
    const struct purge_turn *turns;
    int count;
};

/* number: for the dice. Nets of more than six nipples have no verdict: orders 0. */
struct contest contest_of(const struct purge_net *net, const struct purge_way *way,
                          unsigned long number, struct given_plan given, struct arena *arena);

#endif
