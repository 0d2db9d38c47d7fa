#ifndef FIRMPEDAL_ADVICE_FITTING_FIT_RULES_H
#define FIRMPEDAL_ADVICE_FITTING_FIT_RULES_H

#include "advice/fitting/fit.h"

/* The car before or after. */
struct fit_side {
    const struct system *system;
    struct figures figures;
};
/* What efforts are compared for. */
enum fit_same { SAME_NOTHING, SAME_STOP, SAME_BRAKING, SAME_PRESSURE, SAME_CLUTCH };

/* Efforts for the same; NaN where there is none. */
struct fit_effort {
    enum fit_same same;
    double before, after; /* N */
};

struct fitting {
    const struct network *network;
    bool *circuits;      /* by circuit: something is changed in it, or what makes its pressure */
    bool *pedals;        /* by part: the pedal works such a circuit */
    bool brakes, clutch; /* what it has to do with: one, the other, both */
    bool feeds_all;      /* all changes lie before the one master of every brake */
    bool alone;          /* all changes lie before the only master of their pedal */
    bool farther;        /* without floors the brake pedal goes farther for the same foot */
    struct fit_effort brake_effort, clutch_effort;
    struct fit_side before, after;
    struct fit *fit;
    struct arena *arena;
};

/* Finds what the changes have to do with: circuits, pedals, clutch. */
void fit_look(struct fitting *fitting, const struct work_file *changes);
/* Whether a figure's subject has to do with them. */
bool fit_concerns(const struct fitting *fitting, const struct figure *figure);

/* Fills the reasons of a fit: each limit that the new parts meet or break, once, for the subject
 * that they press hardest. */
void fit_give_reasons(struct fitting *fitting);
/* Fills the answers, after the reasons. */
void fit_answer_questions(struct fitting *fitting);

/* Whether a figure can be compared: it was computed, and its law holds where the car is. */
bool fit_is_usable(const struct figure *figure);
/* The figure of that id about a subject, NULL when it cannot be compared. */
const struct figure *fit_figure(const struct fit_side *side, const char *id, int subject);
/* Whether a change is of the bore of a cylinder. */
bool fit_is_bore(const struct fitting *fitting, const struct fit_change *change);

#endif
