#ifndef FIRMPEDAL_ADVICE_JOB_PLAN_H
#define FIRMPEDAL_ADVICE_JOB_PLAN_H

#include "advice/bleeding/bleed_plan.h"
#include "advice/checks/hoses.h"
#include "advice/common/steps.h"

/* The whole job in one order. Everything that a person is told to do is a step of it: text, small
 * screen, sheet and JSON are views of this one list and add, drop or reorder nothing. */

/* A joint that the work undoes or does up: one row, whatever is done to it. */
struct plan_joint {
    char letter[4]; /* "A", "B", ... "Z", "AA"; without I and O, which look like figures */
    int joint;      /* the connection */
    int part;       /* that is screwed in, and where: "front left pipe" at "front left hose" */
    int at;
    int undo; /* its steps, as indices in the plan; -1: none */
    int clip;
    int tighten;
    bool plugged;        /* an open end stays on the car meanwhile */
    struct torque least; /* of doing up; NaN where there is no figure */
    struct torque most;
};

/* A part that comes off, goes on or is filled: one row. */
struct plan_part {
    int part;
    struct length old_bore, new_bore; /* NaN where it has none */
    int off;                          /* steps, as indices in the plan; -1: none */
    int measure;
    int fill; /* at the bench */
    int fit;
    int nipple; /* that its nipple is shut with */
};

/* A line of a work file that notes as done what is no step of this plan. */
struct stray_note {
    const char *name;
    struct place place;
};

struct plan {
    struct arena *arena;
    struct steps steps; /* numbered from 1 through the whole job */
    struct plan_joint *joints;
    int joint_count;
    struct plan_part *parts;
    int part_count;
    struct stray_note *strays;
    int stray_count;
};

/* Puts the job together.
 *
 *   bleed   the bleeding steps and their method; refused: the job without bleeding
 *   gives   every step after all that its row needs, as far as the plan has it; what is set for the
 *           work alone is undone before the car moves */
struct plan *plan_of(const struct system *system, const struct network *network,
                     const struct hose_list *hoses, const struct bleed_plan *bleed,
                     struct date today, struct arena *arena);

/* The steps from one phase to another, both included; a view into the plan. */
struct steps plan_phases(const struct plan *plan, enum step_phase first, enum step_phase last);
/* The first step that is not noted as done; -1: all are. */
int plan_next(const struct plan *plan);
/* Words by which a step is called in a work file and on the command line, unique in its plan: its
 * id and what it is about, "close-part rear left drum". */
const char *plan_step_name(const struct plan *plan, int step);
/* The step of that name, or of that number written out; -1. */
int plan_step_named(const struct plan *plan, const char *name);
/* The row of the joint that a step is about; NULL. */
const struct plan_joint *plan_joint_of(const struct plan *plan, const struct step *step);

#endif
