#ifndef FIRMPEDAL_ADVICE_FITTING_FIT_H
#define FIRMPEDAL_ADVICE_FITTING_FIT_H

#include "advice/checks/finding.h"
#include "advice/figures/figures.h"

enum fit_verdict {
    FIT_NOTHING_CHANGES, /* the same bore again */
    FIT_SUITS,
    FIT_SUITS_WITH_CARE,
    FIT_CANNOT_SAY, /* some question could not be worked out */
    FIT_DOES_NOT_SUIT
};

/* What a verdict answers. Which of them are asked hangs on the car and the cylinder. */
enum fit_question {
    FIT_EFFORT,
    FIT_TRAVEL,
    FIT_FLOOR,
    FIT_LOST,
    FIT_UNASSISTED,
    FIT_BALANCE,
    FIT_CLUTCH,
    FIT_BORE, /* the size itself; never lacks anything */
    FIT_QUESTION_COUNT
};
/* From good to bad. */
enum fit_standing { FIT_FINE, FIT_CARE, FIT_CANNOT, FIT_AGAINST };

/* A figure before and after. */
struct fit_line {
    const char *id, *title, *of;
    enum dimension dimension;
    double before, after;
    enum figure_state state; /* the worse of the two */
};
/* Something computed that speaks for or against the new bore. */
struct fit_reason {
    enum fit_question question;
    enum fit_standing standing; /* never FIT_CANNOT */
    const char *limit;          /* id of the limit row; NULL: told, not judged */
    const char *words;          /* with {before}, {after}, {limit}, {of}, {change} */
    struct named_quantity quantities[FINDING_QUANTITIES];
    int quantity_count;
    bool assumed; /* rests on assumed values */
};
/* A question with its answer. */
struct fit_answer {
    enum fit_question question;
    enum fit_standing standing;
    int reason;              /* the telling one of the reasons; -1: nothing changes in it */
    struct cited_key *needs; /* what it could not be worked out for want of */
    int needs_count;
    const char *why; /* why it could not where no key is missing, or NULL */
};
struct fit {
    int part;
    int other;                   /* the one of the other side that gets it too; -1 */
    struct length before, after; /* bores */
    bool lever;                  /* a hand lever works it, whose floor is the bar */
    struct acceleration stop;    /* the stop that efforts are compared for; NaN when unknown */
    struct fit_line *lines;
    int line_count;
    struct fit_reason *reasons;
    int reason_count;
    struct fit_answer answers[FIT_QUESTION_COUNT]; /* those that are asked, worst first */
    int answer_count;
    struct cited_key *needs; /* of all answers, each once */
    int needs_count;
    enum fit_verdict verdict;
    const char *nearest; /* name of the nearest standard bore, and how far off; or NULL */
};
/* Another bore for a cylinder: master, wheel cylinder (both sides when the name is of both),
 * caliper piston or clutch slave.
 *
 * A question that lacks a figure on either side cannot be answered, and then the bore is never said
 * to suit. What the old bore kept and the new one breaks is against it; so is what was short
 * already and gets worse. */
struct fit *fit_of(const struct system *system, const struct network *network, const int *parts,
                   int part_count, struct length bore, struct force effort, struct arena *arena);
/* "suits", "cannot say" */
const char *fit_verdict_words(enum fit_verdict verdict);
/* "effort", "left to the floor" */
const char *fit_question_words(const struct fit *fit, enum fit_question question);
/* "fine", "care", "cannot say", "against" */
const char *fit_standing_words(enum fit_standing standing);

#endif
