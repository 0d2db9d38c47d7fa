#ifndef FIRMPEDAL_ADVICE_CHECKS_FINDING_H
#define FIRMPEDAL_ADVICE_CHECKS_FINDING_H

#include "advice/common/limits.h"
#include "advice/common/quantity.h"
#include "advice/figures/figures.h"
#include "base/message.h"

/* A finding is a row of the table of checks with the quantities of this car. Its words name the
 * quantities in braces: "{pressure}"; reports put them in the reader's units. */

struct checking;
struct check_row {
    const char *id; /* "line-pressure-high" */
    enum severity severity;
    const char *what;   /* words with {quantities} and {part} */
    const char *why;    /* why it matters */
    const char *remedy; /* what to do */
    const char *source; /* or "common practice, no source" */
    const char *limit;  /* id of the limit it compares with, or NULL */
    /* Adds what it finds; reports have no use for it. */
    void (*test)(struct checking *checking, const struct check_row *row);
};

enum { FINDING_QUANTITIES = 6 };

struct finding {
    const struct check_row *check;
    enum severity severity; /* usually the row's */
    int part;               /* -1 */
    struct place place;     /* line of the file it comes from */
    struct named_quantity quantities[FINDING_QUANTITIES];
    int quantity_count;
    bool assumed;               /* rests on assumed values */
    const struct figure *guess; /* a figure that it rests on and that is mostly assumed, or NULL */
    const char *measure; /* of a guess: what to measure first, "bore of the front disc"; NULL */
};
struct findings {
    struct arena *arena;
    struct finding *items;
    size_t count;
    size_t capacity;
};

const struct check_row *check_rows(size_t *count);
const struct check_row *check_row(const char *id);

/* What was found bad on parts that stay, and that makes bleeding vain or the car unsafe: stuck
 * pistons, weeping, a pitted bore, a nipple that is sheared or seized. Worst first. */
struct findings unsettled_of(const struct system *system, const struct network *network,
                             struct arena *arena);
/* Runs every check; worst first, then by place. What is dangerous or a warning comes before advice,
 * and that before notes; within each of the three, findings that rest mostly on assumed values come
 * after those that do not. today: for ages. */
struct findings findings_of(const struct system *system, const struct network *network,
                            const struct figures *figures, struct date today, struct arena *arena);

#endif
