#ifndef FIRMPEDAL_ADVICE_FITTING_FIT_H
#define FIRMPEDAL_ADVICE_FITTING_FIT_H

#include "advice/checks/finding.h"
#include "advice/figures/figures.h"
#include "network/work.h"

enum fit_verdict {
    FIT_NOTHING_CHANGES, /* the same values again */
    FIT_SUITS,
    FIT_SUITS_WITH_CARE,
    FIT_CANNOT_SAY, /* some question could not be worked out */
    FIT_DOES_NOT_SUIT
};

/* What a verdict answers. Which of them are asked hangs on the car and on what is changed. */
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

/* A value that is another one. */
struct fit_change {
    int part;
    int other; /* the one of the other side that gets it too; -1 */
    const struct key *key;
    double before, after;              /* SI; NaN: not said */
    int pistons_before, pistons_after; /* of a caliper's bore; 0: not said */
    const char *nearest; /* of a bore: name of the nearest standard one, and how far off; or NULL */
};
/* A figure before and after. */
struct fit_line {
    const char *id, *title, *of;
    enum dimension dimension;
    double before, after;
    enum figure_state state; /* the worse of the two */
};
/* Something computed that speaks for or against the change. */
struct fit_reason {
    enum fit_question question;
    enum fit_standing standing; /* never FIT_CANNOT */
    const char *limit;          /* id of the limit row; NULL: told, not judged */
    const char *words;          /* with {before}, {after}, {limit}, {of}, {change} */
    struct named_quantity quantities[FINDING_QUANTITIES];
    int quantity_count;
    bool assumed; /* rests on assumed values */
    bool worse;   /* it gets worse, whatever the limit says */
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
    struct fit_change *changes; /* in the order of parts */
    int change_count;
    bool lever;               /* a hand lever works it, whose floor is the bar */
    struct acceleration stop; /* the stop that efforts are compared for; NaN when unknown */
    struct fit_line *lines;
    int line_count;
    struct fit_reason *reasons;
    int reason_count;
    struct fit_answer answers[FIT_QUESTION_COUNT]; /* those that are asked, worst first, of equal
                                                      ones what gets worse */
    int answer_count;
    struct cited_key *needs; /* of all answers, each once */
    int needs_count;
    enum fit_verdict verdict;
};
/* A car against the same with other parts in it, as a work file would put them there: bores,
 * strokes, arms of a pedal, a servo, any value that does not join the plumbing otherwise.
 *
 * A question that lacks a figure on either side cannot be answered, and then the change is never
 * said to suit. What the old parts kept and the new ones break is against them; so is what was
 * short already and gets worse. */
struct fit *fit_of(const struct system *system, const struct network *network,
                   const struct work_file *changes, struct force effort, struct arena *arena);
/* Another bore as such a change, for a master, wheel cylinder, caliper or clutch slave, on all the
 * parts given. Of a caliper as many bores as it has. */
struct work_file fit_bore(const struct system *system, const int *parts, int part_count,
                          struct length bore, struct arena *arena);
/* "suits", "cannot say" */
const char *fit_verdict_words(enum fit_verdict verdict);
/* "effort", "left to the floor" */
const char *fit_question_words(const struct fit *fit, enum fit_question question);
/* "fine", "care", "cannot say", "against" */
const char *fit_standing_words(enum fit_standing standing);

#endif
