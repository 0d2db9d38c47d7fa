#ifndef FIRMPEDAL_ADVICE_JOB_OPENING_JOINTS_H
#define FIRMPEDAL_ADVICE_JOB_OPENING_JOINTS_H

#include "advice/job/opening.h"
#include "advice/bleeding/touched.h"
#include "network/mounts.h"

/* Unions: each is undone, plugged and closed once, however many of the parts in hand meet there. */
struct opening {
    const struct system *system;
    const struct network *network;
    struct steps *steps;
    struct arena *arena;
    const struct touched *touched;
    const struct gaps *gaps;
    int *parts; /* in hand, in the order of undoing */
    int count;
    bool *in_hand; /* by part */
    bool *fitted;  /* by part: of those in hand, back on the car */
    int joint;     /* the connection in hand */
    bool *undone;  /* by connection */
    bool *closed;
};

/* Undoes all unions of a part that is no pipe or hose. */
void opening_undo_joints(struct opening *opening, int part);
/* Undoes both ends of a pipe or hose: of a hose the pipe's nut first. */
void opening_undo_carrier(struct opening *opening, int part);
void opening_close_joints(struct opening *opening, int part);
void opening_close_carrier(struct opening *opening, int part);

#endif
