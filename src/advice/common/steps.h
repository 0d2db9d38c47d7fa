#ifndef FIRMPEDAL_ADVICE_COMMON_STEPS_H
#define FIRMPEDAL_ADVICE_COMMON_STEPS_H

#include "base/place.h"
#include "network/system.h"

/* Steps are data: a row of the table of step words, and what it is about. The bleed plan, the
 * opening plan, the settings before and the tests after are all lists of these. */

enum step_phase {
    PHASE_PREPARING, /* before anything is undone */
    PHASE_SETTINGS,  /* what decides whether bleeding can succeed */
    PHASE_OPENING,   /* taking apart for renewal */
    PHASE_CLOSING,
    PHASE_BENCH, /* before it goes on the car */
    PHASE_BLEED,
    PHASE_TEST, /* what was set undone, leaks, servo: all that comes before the car moves */
    PHASE_ROAD, /* the first drive and what follows it the same day */
    PHASE_LATER /* after 100 km, next fluid change */
};
enum step_id {
    STEP_NONE,
#define STEP(symbol, ...) STEP_##symbol,
#include "advice/common/steps.def"
#undef STEP
    STEP_COUNT
};
struct step_row {
    const char *id; /* "bleed-nipple", "set-rod-gap" */
    enum step_phase phase;
    const char *words; /* with {part}, {nipple}, {volume}, {run}, {strokes}, {torque}, {least}... */
    const char *why;   /* one sentence, or NULL */
    const char *source; /* or "common practice, no source" */
    const char *expect; /* what to read and write down, or NULL */
    enum step_id undo;  /* what it sets is only for the work: the row that undoes it */
};
/* The rows of advice/common/steps.def, in its order. */
const struct step_row *step_rows(size_t *count);
const struct step_row *step_row_of(enum step_id id);
/* The row that is called so, or NULL. */
const struct step_row *step_row(const char *id);

/* Why a nipple comes where it comes in the order. */
struct reason_row {
    const char *id; /* "longest-run-first" */
    const char *words;
    const char *source;
};
const struct reason_row *reason_rows(size_t *count);
const struct reason_row *reason_row(const char *id);

struct bleed_detail; /* advice/bleeding/bleed_plan.h */

struct step {
    const struct step_row *row;
    int number;                      /* from 1 within its list */
    int part;                        /* -1 */
    int nipple;                      /* index within the part, -1 */
    int circuit;                     /* -1 */
    const char *place_words;         /* "rear left, on the backplate, at the top" */
    const struct reason_row *reason; /* NULL unless it is a bleed step */
    struct length run;               /* of pipe from the master; NaN */
    bool run_assumed;
    struct volume volume; /* to draw off here; NaN */
    bool volume_assumed;
    double strokes;       /* of this pedal; NaN */
    struct torque torque; /* least; NaN */
    struct torque torque_most;
    const char *torque_source;
    const char *torque_for;                  /* the thread and material that it is of */
    struct length least, most;               /* {least} and {most} of what is to be set; NaN */
    struct force force;                      /* {force} to press with; NaN */
    struct force force_most;                 /* {force_most}; NaN */
    struct duration time;                    /* {time} to hold; NaN */
    struct pressure pressure, pressure_most; /* {pressure}, {pressure_most} of a kit; what {lines}
                                              * are to hold; NaN */
    bool pressure_assumed;
    struct angle angle;             /* {angle} by which to tilt; NaN */
    double flow;                    /* {flow}, m3/s, said as a volume a minute; NaN */
    struct temperature temperature; /* {temperature} of the fluid; NaN */
    struct share slope;             /* {slope} to hold on; NaN */
    struct date date;
    const struct bleed_detail *bleed; /* NULL unless it is a bleed step at a nipple */
    const char *text;                 /* more words for {text}, or NULL */
    const char *of_fluid;             /* {of_fluid}: what goes by the fluid's family, or NULL */
    const char *plug;                 /* what open end {plug} is about, or NULL */
};
struct steps {
    struct arena *arena;
    struct step *items;
    size_t count;
    size_t capacity;
};
/* Adds a step of that row, numbered on, about nothing yet: part, nipple, circuit -1, quantities
 * NaN. */
struct step *steps_add(struct steps *steps, enum step_id id);

/* The boxes of a step that is ticked off in parts: brush, undo, plug. 0: it has one box for all. */
enum { STEP_MOST_BOXES = 3 };
int step_boxes(const struct step *step, const char *names[STEP_MOST_BOXES]);
/* Whether no step before it in the list is of the same row, so that its why was not said yet. */
bool steps_first_of_row(const struct steps *steps, size_t at);

#endif
