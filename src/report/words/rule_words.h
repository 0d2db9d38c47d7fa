#ifndef FIRMPEDAL_REPORT_WORDS_RULE_WORDS_H
#define FIRMPEDAL_REPORT_WORDS_RULE_WORDS_H

#include "advice/result.h"

/* Words about published rules, for text, JSON and sheet alike. */

/* What such numbers are, and what they are not. */
#define RULES_INTRODUCTION                                                                         \
    "Numbers on paper beside numbers that rules ask for, with brakes as described, cold, and at "  \
    "most what the tyres' grip gives. What an inspection says of this car, the inspection says."

/* Whether a rule is of a country: "United Kingdom"; of a state also what its country asks. */
bool rule_is_of(const struct rule_row *rule, const char *country);
/* The countries of which rules are known, "A, B, C". */
const char *rule_countries(struct arena *arena);

/* "meets the number", "falls short", "not computed" */
const char *ruling_words(const struct ruling *ruling);
/* "concerns it", "for comparison", "of another date", "needs the date of first use", "of another
 * class", "spared" */
const char *ruling_concern_words(enum rule_concern concern);
/* ", assumed", ", mostly assumed" or "" */
const char *ruling_assumed_words(const struct ruling *ruling);
/* "not computed: needs [vehicle] mass" */
const char *ruling_lack_words(struct arena *arena, const struct system *system,
                              const struct ruling *ruling);
/* "Not of this car: r13h-service (first used from 1998-05-11 on), ...", or NULL. */
const char *rulings_elsewhere_words(struct arena *arena, const struct result *result);

#endif
