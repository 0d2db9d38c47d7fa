#ifndef FIRMPEDAL_ADVICE_FIGURES_FIGURE_ASKED_H
#define FIRMPEDAL_ADVICE_FIGURES_FIGURE_ASKED_H

#include "advice/figures/figures.h"

/* Which figure a person means.
 *
 *   id        of a figure: "pedal-travel", or NULL
 *   of        its subject's name, or NULL where there is but one
 *   gives     its index; -1 with *trouble set to what there is instead */
int figure_asked(const struct figures *figures, const char *id, const char *of, struct arena *arena,
                 const char **trouble);

#endif
