#ifndef FIRMPEDAL_ADVICE_RULES_RULES_H
#define FIRMPEDAL_ADVICE_RULES_RULES_H

#include "advice/figures/figures.h"
#include "base/date.h"

/* Numbers that published rules ask for, measured against the car on paper: which rule, for which
 * class and date of vehicle, under which conditions, and how the rule's text is known. Nothing here
 * says what an inspection would decide: that takes the car itself and the rule as it stands today.
 */

enum rule_class { RULE_CARS, RULE_MOTORCYCLES };
/* Asked at inspections of vehicles in use; or of new types when they are type tested, or of
 * vehicles of a date that was not read: the latter are there for comparison. */
enum rule_occasion { RULE_IN_USE, RULE_NEW_TYPES };
enum rule_known { RULE_READ, RULE_FROM_MEMORY };

/* A rule's number as the car has it. */
struct rule_car {
    const struct system *system;
    const struct network *network;
    const struct figures *figures;
    struct solution *room;
};

struct rule_row {
    const char *id;    /* "mot-service" */
    const char *title; /* "Service brake, brake force over weight" */
    bool at_most;      /* else at least */
    double value;      /* SI */
    enum dimension dimension;
    enum rule_class of;
    enum rule_occasion occasion;
    struct date from, until; /* first used on or after, before; unknown: no such bound */
    double most_mass;        /* of passenger cars and light vans: kg as driven; 0: of any mass */
    const char *where;       /* "United Kingdom" */
    const char *scope;       /* which vehicles and how it is tested, in words */
    const char *source, *clause;
    enum rule_known known;
    const char *figure; /* id of the figure it rests on, for what is missing or assumed */
    /* The car's number, NaN when it is not known. argument is the row's. */
    double (*measure)(const struct rule_car *car, double argument);
    double argument;
    const char *lacks; /* what it needs where nothing of the figure is missing, or NULL */
    /* Why it does not concern this car, or NULL. */
    const char *(*spares)(const struct rule_car *car);
};
const struct rule_row *rule_rows(size_t *count);
const struct rule_row *rule_row(const char *id);

/* Whether a rule concerns the car at hand. */
enum rule_concern {
    RULE_CONCERNS,
    RULE_FOR_COMPARISON, /* a rule for new types, of its class and date as far as is known */
    RULE_OTHER_DATE,
    RULE_NEEDS_DATE, /* hangs on [vehicle] first used, which is not said (exactly enough) */
    RULE_OTHER_CLASS,
    RULE_SPARES /* something else about the car; why says what */
};
enum rule_outcome { RULE_MEETS, RULE_FALLS_SHORT, RULE_NOT_COMPUTED };

struct ruling {
    const struct rule_row *rule;
    enum rule_concern concern;
    enum rule_outcome outcome;     /* of the number, whether the rule concerns the car or not */
    double value;                  /* the car's, SI */
    const char *why;               /* of RULE_SPARES */
    const struct figure *rests_on; /* most like it among the figures; NULL: there is none */
};
struct rulings {
    struct ruling *items;
    int count;
};

/* Measures a car against all rows.
 *
 * Efforts are the rule's own where it has one, else 500 N; where the pedal's travel does not let so
 * much through, what it does. A stop is pressed no harder than the first wheel locks, and on
 * rollers a wheel brakes no more than grip times what stands on it. Checked by:
 * tests/advice/rules/test_rules.c */
struct rulings rules_measure(const struct system *system, const struct network *network,
                             const struct figures *figures, struct arena *arena);

/* Whether the rule of that id is for vehicles of the car's class and date of first use; false where
 * that date is not said exactly enough. */
bool rule_is_for(const char *id, const struct system *system);

/* "asked of cars first used before 2010-09-01", "first used from 1968-01-01" */
const char *rule_dates(const struct rule_row *row, struct arena *arena);

#endif
