#ifndef FIRMPEDAL_ADVICE_CHOICE_ROWS_H
#define FIRMPEDAL_ADVICE_CHOICE_ROWS_H

#include "physics/reduced.h"

/* What presses at the brakes for every effort. Levers, servos, masters and valves all go straight
 * from knee to knee, so the efforts at the knees are enough: between two rows every column is a
 * straight line. */

enum { ROWS_MOST = 64, ROWS_COLUMNS = 16 };

/* A pressure beyond a threshold. */
struct row_column {
    int stretch;
    double threshold; /* Pa */
};
struct rows {
    struct row_column columns[ROWS_COLUMNS];
    int column_count;
    double effort[ROWS_MOST];
    double beyond[ROWS_MOST][ROWS_COLUMNS]; /* Pa beyond the threshold, 0 below it */
    int count;
    bool overflow; /* more knees or columns than there is room for */
};

/* The column for a force, a new one where there is none yet; -1 where there is no more room. */
int rows_column(struct rows *rows, const struct reduced_force *force);
/* Fills the rows for efforts from 0 to MOST_EFFORT on every pedal. pressures: as many as there are
 * stretches. Knees are found to 1e-9 of the pressures. */
void rows_fill(struct rows *rows, const struct reduced *reduced, double *pressures);

#endif
