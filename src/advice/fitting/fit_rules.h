#ifndef FIRMPEDAL_ADVICE_FITTING_FIT_RULES_H
#define FIRMPEDAL_ADVICE_FITTING_FIT_RULES_H

#include "advice/fitting/fit.h"

/* One car with one bore. */
struct fit_side {
    const struct system *system;
    struct figures figures;
    struct force stop_effort; /* for the same stop, or the same line pressure; NaN */
};
/* What efforts are compared for. */
enum fit_same { SAME_NOTHING, SAME_STOP, SAME_BRAKING, SAME_PRESSURE, SAME_CLUTCH };

struct fitting {
    const struct network *network;
    const int *parts; /* that get the new bore */
    int part_count;
    bool *circuits; /* by circuit: the cylinder is in it */
    bool *pedals;   /* by part: the pedal works such a circuit */
    bool clutch;    /* it is of a clutch */
    bool feeds_all; /* it is the master of every brake */
    bool alone;     /* it is the only master of its pedal */
    enum fit_same same;
    struct fit_side before, after;
    struct fit *fit;
    struct arena *arena;
};

/* Finds what the cylinder has to do with: circuits, pedals, clutch. */
void fit_look(struct fitting *fitting);
/* Whether a figure's subject has to do with the cylinder. */
bool fit_concerns(const struct fitting *fitting, const struct figure *figure);

/* Fills the reasons of a fit: each limit that the new bore meets or breaks, once, for the subject
 * that it presses hardest. */
void fit_give_reasons(struct fitting *fitting);
/* Fills the answers, after the reasons. */
void fit_answer_questions(struct fitting *fitting);

/* Whether a figure can be compared: it was computed, and its law holds where the car is. */
bool fit_is_usable(const struct figure *figure);
/* The figure of that id about a subject, NULL when it cannot be compared. */
const struct figure *fit_figure(const struct fit_side *side, const char *id, int subject);

#endif
