#ifndef FIRMPEDAL_ASKING_QUESTIONS_H
#define FIRMPEDAL_ASKING_QUESTIONS_H

#include "asking/rough.h"

/* What of a description can still be asked, from the key tables alone: every key of every section
 * that has meaning there and has no value, and every pipe and hose of a run without a length. */

/* What is asked before what. */
enum stage {
    STAGE_NEEDED,   /* "?" in the description, or there by custom only */
    STAGE_MEASURED, /* not in it, and a person can measure it */
    STAGE_REST      /* what else a section can say */
};

struct question {
    const char *id; /* the same after other answers: "rear drum/bore", "rear feed/2" */
    enum stage stage;
    struct blank blank;
    int part;          /* of the car, of both sides the left one; -1: none of its own */
    const char *guess; /* what stands there by custom, or NULL */
    const char *from;  /* of a pipe or hose: what lies before it and behind it */
    const char *to;
    const char *run;
    double before; /* the less, the earlier within its stage */
    size_t nth;    /* as they stand in the description */
};

struct questions {
    struct question *items;
    size_t count;
    size_t capacity;
};

/* What tells more than the rows alone can say: how much the value of a key of a part tells of this
 * car's figures. key NULL: figures need of the part something that is not measured as such
 * (the ratio of a pedal), so that its lengths tell it. */
struct telling {
    const struct key *key;
    int part;
    double tells;
};
struct tellings {
    struct telling *items;
    size_t count;
    size_t capacity;
};

/* All questions in the order in which they are asked: by stage, then what tells most, then what
 * more figures rest on by the rows (pressures before travels before the rest, what nothing is
 * assumed for before what is), then as they stand.
 *
 *   starter   what was filled in by custom; NULL for a description that was taken up */
struct questions questions_of(const struct rough *rough, const struct starter *starter,
                              const struct tellings *tellings, struct arena *arena);

#endif
