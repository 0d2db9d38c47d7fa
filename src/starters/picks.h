#ifndef FIRMPEDAL_STARTERS_PICKS_H
#define FIRMPEDAL_STARTERS_PICKS_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "base/text.h"

/* A kind of car said in words, freely combined: "front discs, rear drums, remote servo, right". */

enum pick_group {
#define GROUP(symbol, asked) GROUP_##symbol,
#define PICK(group, symbol, word, others, help)
#include "starters/picks.def"
#undef GROUP
#undef PICK
    GROUP_COUNT
};

enum pick {
#define GROUP(symbol, asked)
#define PICK(group, symbol, word, others, help) PICK_##symbol,
#include "starters/picks.def"
#undef GROUP
#undef PICK
    PICK_COUNT
};

/* A set of words, a bit each. */
typedef uint64_t picks;
#define P(symbol) ((picks)1 << PICK_##symbol)

struct pick_row {
    enum pick_group group;
    const char *word;
    const char *others; /* comma-separated, or NULL */
    const char *help;
};
/* All words, in the order of enum pick; those of a group stand together. */
const struct pick_row *pick_rows(void);
/* What is asked of a group. */
const char *group_asked(enum pick_group group);
/* The words of a group as a set. */
picks group_picks(enum pick_group group);
/* Whether a group has meaning for a car of which those words are known: a motorcycle has no axles,
 * a clutch worked by cable no slave. */
bool group_applies(enum pick_group group, picks known);
/* The word that is usual where a group has not been said, by those that are known. */
enum pick group_usual(enum pick_group group, picks known);
/* The words of a group that go together with those known. */
picks group_fitting(enum pick_group group, picks known);

/* A name for a usual set of words. */
struct usual_set {
    const char *word;
    const char *help;
    picks named; /* what the name itself says */
    picks usual; /* what a word changes */
};
const struct usual_set *usual_sets(size_t *count);

/* Reads words and names of sets, in any order, commas, "and" and "with" between them or not. *said
 * gets what they say; a word wins over a set. false with the reason in trouble (a line or more):
 * a word that is none, two that do not go together. */
bool picks_read(struct text *trouble, const char *words, picks *said);
/* What was said, with the usual word of every other group that has meaning. */
picks picks_with_usual(picks said);
/* The words of a set, "front discs, rear drums". In the arena. */
const char *picks_words(struct arena *arena, picks set);

/* Adds a list of the sets and the words. */
void picks_list(struct text *into);

#endif
