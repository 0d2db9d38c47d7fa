#ifndef FIRMPEDAL_ADVICE_COMMON_STEPS_H
#define FIRMPEDAL_ADVICE_COMMON_STEPS_H

#include "advice/common/quantity.h"
#include "base/place.h"
#include "network/system.h"

/* Steps are data: a row of the table of step words, and what it is about. The bleed plan, the
 * opening plan, the settings before and the tests after are all lists of these. */

/* The job from its beginning to its end; a step never comes before one of an earlier phase. */
enum step_phase {
    PHASE_BEFORE,   /* before anything is opened */
    PHASE_APART,    /* taking apart */
    PHASE_BENCH,    /* at the bench, while the parts are off */
    PHASE_TOGETHER, /* putting together */
    PHASE_SETTINGS, /* what decides whether bleeding can succeed */
    PHASE_BLEEDING,
    PHASE_UNDOING, /* what was set for bleeding alone */
    PHASE_RESTING, /* tests of the standing car */
    PHASE_SECOND,  /* a second person, and the wheels on */
    PHASE_DRIVE,   /* the first drive and what follows it the same day */
    PHASE_LATER,   /* next day, after 100 km, next change of fluid */
    PHASE_COUNT
};
/* "before", "apart": for programs; "Before anything is opened": for people. */
const char *phase_id(enum step_phase phase);
const char *phase_words(enum step_phase phase);

enum step_id {
    STEP_NONE,
#define STEP(symbol, ...) STEP_##symbol,
#include "advice/common/steps.def"
#undef STEP
    STEP_COUNT
};
/* Steps that are boxes in a row of a joint or of a part, beside being steps. */
enum step_table { TABLE_NONE, TABLE_JOINTS, TABLE_PARTS };
enum { STEP_MOST_UNDOING = 3, STEP_MOST_NEEDS = 24 };
struct step_row {
    const char *id; /* "bleed-nipple", "set-rod-gap" */
    enum step_phase phase;
    const char *words; /* with {part}, {nipple}, {volume}, {run}, {strokes}, {torque}, {least}... */
    const char *brief; /* the same for one who only needs reminding; NULL: how the words begin */
    const char *why;   /* one sentence, or NULL */
    const char *source; /* or "common practice, no source" */
    const char *expect; /* what to read and write down, or NULL */
    const char *mark;   /* the same in a word or two before a short line, or NULL */
    /* what it sets is only for the work: the rows of which one undoes it; the first where nothing
     * speaks for another */
    enum step_id undo[STEP_MOST_UNDOING];
    /* rows whose steps, as far as the plan has any, come before it: of whatever part, and those
     * that are about one of its own parts */
    enum step_id needs[STEP_MOST_NEEDS];
    enum step_id needs_same[STEP_MOST_NEEDS];
    enum step_table table;
    const char *label; /* how its part then stands, for the label of what is set; or NULL */
    const char *how;   /* of a row in a table: said once for all of them, or NULL */
    bool in_turn;      /* the car gives the order: such rows that stand together go part by part */
};
/* The rows of advice/common/steps.def, in its order. */
const struct step_row *step_rows(size_t *count);
const struct step_row *step_row_of(enum step_id id);
enum step_id step_id_of(const struct step_row *row);
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

enum { STEP_MOST_QUANTITIES = 5 };
struct bleed_detail; /* advice/bleeding/bleed_types.h */

struct step {
    const struct step_row *row;
    int number;       /* from 1 within its list */
    int turn;         /* of a bleeding step: its number among them; 0 */
    const char *name; /* in a plan: what it is called in a work file, "close-part rear left drum" */
    bool done;        /* noted as done in a work file */
    struct date done_on;
    const char *done_words;          /* what was read or noted with it, or NULL */
    int part;                        /* -1 */
    int other;                       /* the second part of a joint, -1 */
    int joint;                       /* the connection that it undoes or does up, -1 */
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
    const char *torque_for; /* the thread and material that it is of */
    bool pressure_assumed;  /* {lines} rests on something assumed */
    struct date date;
    const struct bleed_detail *bleed; /* NULL unless it is a bleed step at a nipple */
    const char *text;                 /* more words for {text}, or NULL */
    const char *plug;                 /* what open end {plug} is about, or NULL */
    /* what else stands in its words by name: {least}, {force}, {time} */
    struct named_quantity quantities[STEP_MOST_QUANTITIES];
    int quantity_count;
};
/* Whether two steps are about a part of both. */
bool step_shares_part(const struct step *one, const struct step *two);
/* Whether a step must come after another, by what its row needs. */
bool step_waits_for(const struct step *step, const struct step *other);
/* Whether a list of a row (undo, needs, needs_same) names a row. */
bool step_names(const enum step_id *list, size_t most, enum step_id id);
struct steps {
    struct arena *arena;
    struct step *items;
    size_t count;
    size_t capacity;
};
/* Adds a step of that row, numbered on, about nothing yet: part, nipple, circuit -1, quantities
 * NaN. */
struct step *steps_add(struct steps *steps, enum step_id id);

/* Says a quantity in a step's words, by the name that stands in braces there; one that is not known
 * (NaN) is not said. At most STEP_MOST_QUANTITIES. */
void step_say(struct step *step, const char *name, double value, enum dimension dimension);
void step_say_words(struct step *step, const char *name, const char *words);
/* The same for the value of a limit. */
void step_say_limit(struct step *step, const char *name, const char *limit);
/* A quantity as it was said, SI; NaN where it was not. */
double step_said(const struct step *step, const char *name);
const char *step_said_words(const struct step *step, const char *name);

/* The boxes of a step that is ticked off in parts: brush, undo, plug. 0: it has one box for all. */
enum { STEP_MOST_BOXES = 3 };
int step_boxes(const struct step *step, const char *names[STEP_MOST_BOXES]);
/* Whether no step before it in the list is of the same row, so that its why was not said yet. */
bool steps_first_of_row(const struct steps *steps, size_t at);

#endif
