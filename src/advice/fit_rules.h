#ifndef FIRMPEDAL_ADVICE_FIT_RULES_H
#define FIRMPEDAL_ADVICE_FIT_RULES_H

#include "advice/fit.h"

/* One car with one bore. */
struct fit_side {
    const struct system *system;
    struct figures figures;
    struct force stop_effort; /* for the same stop; NaN */
};
struct fitting {
    const struct network *network;
    struct fit_side before, after;
    struct fit *fit;
    struct arena *arena;
};

/* Fills the reasons of a fit: each limit that the new bore meets or breaks, once, for the subject
 * that it presses hardest. What the old bore broke as badly is against the new one, but not grave.
 */
void fit_give_reasons(struct fitting *fitting);

/* The figure of that id about a subject, NULL when it was not computed. */
const struct figure *fit_figure(const struct fit_side *side, const char *id, int subject);

#endif
