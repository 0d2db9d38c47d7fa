#ifndef FIRMPEDAL_ADVICE_FIGURES_FIGURES_H
#define FIRMPEDAL_ADVICE_FIGURES_FIGURES_H

#include "advice/figures/situation.h"

/* A figure that a person may see is a row of one table; text, JSON, sheet, fit and readings all
 * walk it. */

enum figure_scope {
    SCOPE_CAR,
    SCOPE_PEDAL,   /* each brake pedal or hand lever */
    SCOPE_CIRCUIT, /* each brake circuit */
    SCOPE_CALIPER,
    SCOPE_BRAKE,  /* each brake at a wheel */
    SCOPE_CLUTCH, /* each clutch slave */
    SCOPE_HAND_BRAKE,
    SCOPE_SERVO,
    SCOPE_VALVE,
    SCOPE_CAUSE /* each circuit and each cause of lost fluid */
};

struct figure_row {
    const char *id;    /* "line-pressure" */
    const char *title; /* "Line pressure" */
    enum figure_scope scope;
    enum dimension dimension;
    bool bore_like;      /* shown as a bore */
    const char *formula; /* in words and signs, one line */
    const char *anchor;  /* in docs/physics.md */
    const char *limits;  /* within which it holds, one line */
    double (*get)(const struct situation *situation, int subject, int sub);
    /* whether a car, or a subject of the scope, has this figure at all; NULL: always */
    bool (*of_this)(const struct situation *situation, int subject, int sub);
    /* why it has no value though nothing is missing, or NULL; may be NULL itself */
    const char *(*refuses)(const struct situation *situation, int subject, int sub);
};
const struct figure_row *figure_rows(size_t *count);
const struct figure_row *figure_row(const char *id);

enum figure_state { FIGURE_COMPUTED, FIGURE_ASSUMED, FIGURE_NOT_COMPUTED };

/* A key of a part, as something a figure rests on or lacks. */
struct cited_key {
    int part;
    const struct key *key;
    double
        share; /* of a figure's assumed values: the most by which its usual range moves the figure
                  where the car is now, as a part of it; 0 beyond a knee and of what it lacks */
};

struct figure {
    const struct figure_row *row;
    int subject;    /* part or circuit index; -1 for the car */
    int sub;        /* cause for SCOPE_CAUSE */
    const char *of; /* "front circuit", "rear left drum", "" for the car */
    double value;   /* SI; NaN when not computed */
    enum figure_state state;
    struct cited_key *assumed; /* what it rests on that was assumed, most telling first */
    int assumed_count;
    int assumed_here;        /* how many assumed values move it where the car is now */
    int given_here;          /* and how many written ones */
    double assumed_share;    /* 0 to 1: how much of what pulls at it is assumed, each value by the
                                change of the figure for a hundredth of the value */
    struct cited_key *needs; /* what is missing */
    int needs_count;
    const char *reason;    /* why it is not computed where no key is missing */
    const char *remark;    /* what must be said beside the value, or NULL */
    unsigned holds;        /* conditions that could be looked up, by bit: table in holds.h */
    unsigned holds_broken; /* those of them that are not met here */
};
struct figures {
    struct figure *items;
    int count;
};

/* Whether more than half of what a figure rests on is assumed: by number, where the car is now, or
 * by pull. */
bool figure_mostly_assumed(const struct figure *figure);

/* Of what it rests on, the assumed key that tells most among those that the measuring sheet asks
 * for; NULL. */
const struct cited_key *figure_first_to_measure(const struct figure *figure);

/* All figures of a car, with what they rest on found by moving each assumed value (to the ends of
 * its usual range, by a hundredth, to half and double, through all choices) and what they lack
 * found by filling in all that is missing and taking it away again key by key. */
struct figures figures_of(const struct system *system, const struct network *network,
                          struct force effort, struct arena *arena);
/* Which figures a car has, with row, subject and name, but no values. */
struct figures figures_listed(const struct situation *situation, struct arena *arena);
/* The figure with that id and subject name (NULL: the first of that id), or NULL. */
const struct figure *figures_find(const struct figures *figures, const char *id, const char *of);

#endif
