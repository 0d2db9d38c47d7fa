#ifndef FIRMPEDAL_ADVICE_RESULT_H
#define FIRMPEDAL_ADVICE_RESULT_H

#include "advice/bleeding/bleed_plan.h"
#include "advice/job/cautions.h"
#include "advice/figures/curves.h"
#include "advice/figures/figures.h"
#include "advice/checks/finding.h"
#include "advice/choice/choice.h"
#include "advice/fitting/fit.h"
#include "advice/checks/hoses.h"
#include "advice/job/opening.h"
#include "advice/job/plan.h"
#include "advice/job/soft.h"
#include "advice/checks/readings.h"
#include "advice/rules/rules.h"
#include "advice/common/steps.h"
#include "advice/job/tests_after.h"
#include "advice/figures/to_measure.h"
#include "advice/figures/trace.h"
#include "units/unit.h"

/* What of a result takes long and is worked out only when asked for; the rest is always there. */
enum result_part {
    RESULT_FIGURES = 1, /* with what they rest on */
    RESULT_JUDGED = 2,  /* what the figures are judged by: findings, rulings; with figures */
    RESULT_PLAN = 4     /* the bleed plan and the tests that follow it */
};

/* All that a report needs, in one value. */
struct result {
    const struct system *system;
    const struct network *network;
    struct figures figures;      /* empty unless asked */
    struct measurings measure;   /* what to measure first; with figures */
    struct findings findings;    /* empty unless asked */
    struct rulings rulings;      /* empty unless asked */
    struct comparisons readings; /* empty unless asked */
    struct touched touched;      /* what the work has to do with */
    struct hose_list hoses;
    struct soft_list soft;       /* where the pedal does not come firm */
    struct bleed_plan *bleed;    /* NULL unless asked */
    struct plan *plan;           /* the whole job; NULL unless asked */
    struct steps opening;        /* of the plan: until all is together again */
    struct findings unsettled;   /* found bad on parts that stay: plan and opening say it first */
    struct steps tests;          /* of the plan: what follows the nipples */
    struct fit *fit;             /* NULL unless asked */
    struct chosen *chosen;       /* which bores would suit; NULL unless asked */
    const struct curves *curves; /* NULL unless asked */
    struct trace *trace;         /* NULL unless asked */
    struct date today;
    enum unit_system units;
};

/* Works all of it out, for the car as it stands (work included). fit is left NULL and units are
 * metric; effort NaN: each pedal's own. The plan is one without wishes. */
struct result *result_of(const struct system *system, const struct network *network,
                         struct force effort, struct date today, struct arena *arena);

/* The same with the plan as wished, and of the parts that take long only those asked for.
 *
 *   parts   enum result_part, or-ed */
struct result *result_asked(const struct system *system, const struct network *network,
                            struct force effort, struct date today, unsigned parts,
                            const struct bleed_wishes *wishes, struct arena *arena);

/* Puts {name} of a template's quantities into words in the reader's units; unknown names stay. */
const char *fill_words(struct arena *arena, const char *words,
                       const struct named_quantity *quantities, int count, enum unit_system units);
/* The same for a step. */
const char *step_words(struct arena *arena, const struct result *result, const struct step *step,
                       const char *words);

#endif
