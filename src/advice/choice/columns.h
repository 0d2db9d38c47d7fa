#ifndef FIRMPEDAL_ADVICE_CHOICE_COLUMNS_H
#define FIRMPEDAL_ADVICE_CHOICE_COLUMNS_H

#include "physics/reduced.h"

/* Every car of a product of bores, one after the other, without walking a network for each: what a
 * cylinder adds is worked out once for each of its bores, a car is their sum. */

enum { COLUMN_AXES = 4 };

/* Cylinders that get the same bore, and the bores that are tried on them. */
struct bore_axis {
    const int *parts;
    int part_count;
    const struct length *bores;
    int count;
};

/* What a car of the product does; NaN: not known. */
struct column_car {
    double foot;    /* N for the stop; infinite where no leg reaches it, floors left out */
    double left;    /* m left to the floor at the usual effort, the pedal that has least */
    double lost;    /* the same with the circuit lost that leaves least, where another goes on */
    double at_most; /* m left at the most foot; 0 on the floor */
    double balance; /* grip asked for in front less behind, over the grip, at the first lock;
                       infinite where nothing locks */
};

struct columns_asked {
    const struct system *system;
    const struct network *network;
    struct bore_axis axes[COLUMN_AXES];
    int axis_count;
    struct force effort;      /* on every pedal; NaN: each its own */
    struct acceleration stop; /* that foot is for */
    struct force most_foot;   /* NaN: at_most is not asked */
};

/* Called for each car with the place of each axis' bore. */
typedef void (*column_take)(const int *at, const struct column_car *car, void *context);
/* Called now and then with the share that is done; false stops. */
typedef bool (*column_progress)(double done, void *context);

/* Goes through the whole product, the last axis fastest. false: air is described, the car has more
 * kinds of brakes or knees than there is room for, or it was stopped. The memory does not grow with
 * the product. */
bool columns_run(const struct columns_asked *asked, column_take take, void *context,
                 column_progress progress, void *progress_context, struct arena *arena);

/* Sets the bore of a cylinder; of a caliper all of its first size. */
void bore_set(struct part *part, struct length bore);

#endif
