#ifndef FIRMPEDAL_ADVICE_CHECKS_READINGS_H
#define FIRMPEDAL_ADVICE_CHECKS_READINGS_H

#include "advice/figures/figures.h"

/* Readings taken at the car beside the figures that they are readings of. */

enum comparing {
    COMPARED_AGREES,
    COMPARED_OFF,        /* by more than the limit reading-off-most */
    COMPARED_IMPOSSIBLE, /* no such pedal or piston can do that */
    COMPARED_NOT         /* the figure is not computed */
};

struct compared {
    const struct taken_reading *reading;
    const struct figure *figure; /* as computed at the effort of the check; never NULL */
    double computed;             /* at the reading's own effort, SI; NaN where it is not known */
    double off;                  /* difference over the computed value; NaN without one */
    enum comparing outcome;
    double end;            /* of COMPARED_IMPOSSIBLE: the most that is possible, SI */
    const char *end_words; /* what it is: "the travel of the brake pedal" */
};
struct comparisons {
    struct compared *items;
    int count;
};

/* Sets every reading beside its figure, solved at the reading's own effort where it names one. A
 * difference below what such a reading can tell agrees, whatever share of the figure it is. */
struct comparisons readings_compare(const struct system *system, const struct network *network,
                                    const struct figures *figures, struct arena *arena);

/* Where a reading can be taken on this car: the names of its figure's subjects. Gives how many;
 * names has room for all.
 *
 *   listed   as figures_listed gives them */
int readings_places(const struct figures *listed, const struct reading_row *row,
                    const char **names);

#endif
