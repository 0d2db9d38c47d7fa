#ifndef FIRMPEDAL_H
#define FIRMPEDAL_H

#include <stdbool.h>
#include <stddef.h>

/* The public face of firmpedal: read a car and its work files, ask, write.
 *
 * A desk holds one car and all memory that belongs to it. Every call that can fail gives an
 * outcome and leaves its reasons as messages on the desk. Nothing here prints or exits. */

struct fp_desk;

/* What a call came to; also the exit status of the program. */
enum fp_outcome {
    FP_FINE = 0,      /* done */
    FP_FINDINGS = 1,  /* done, and there is something at or above the asked severity */
    FP_WRONG_USE = 2, /* an option's value could not be used */
    FP_INPUT = 3,     /* a file could not be used; the messages say why */
    FP_OUTPUT = 4     /* an output could not be written, or there was no memory */
};

enum fp_severity { FP_NOTE, FP_ADVICE, FP_WARNING, FP_DANGER };

/* What a person may ask about a car. */
enum fp_question {
    FP_CHECK,
    FP_BLEED,
    FP_OPEN,
    FP_HOSES,
    FP_SOFT,
    FP_FIT,
    FP_CHOOSE,
    FP_TRACE,
    FP_CURVE
};

/* What can be drawn into a file: the sheet (.pdf), the diagram alone (.svg, .png, .pdf). */
enum fp_drawing { FP_SHEET, FP_DIAGRAM, FP_CHOICE };

enum fp_paper { FP_A4, FP_LETTER };

/* How one bleeds. */
enum fp_method { FP_BY_PEDAL, FP_BY_PRESSURE, FP_BY_VACUUM, FP_BY_GRAVITY, FP_BACKWARDS };

/* How to answer. Zeroed means: metric, no JSON, each pedal's own effort, today's date must be
 * given. Strings belong to the caller. */
struct fp_wishes {
    bool imperial;
    bool json;
    const char *effort;         /* "300 N", or NULL */
    const char *date;           /* "2026-11-25": the day from which ages count */
    enum fp_severity fail_at;   /* from which findings give FP_FINDINGS */
    const char *cylinder;       /* FP_FIT: name of the part */
    const char *bore;           /* FP_FIT: "7/8 in" */
    const char *const *changes; /* FP_FIT: "rear drum: bore = 5/8 in", more of them by commas */
    size_t change_count;
    const char *const *tried; /* FP_FIT: files of [replaced NAME], as work files have them */
    size_t tried_count;
    const char *among;          /* FP_CHOOSE: cylinders, "brake master, rear drum" */
    const char *const *at_hand; /* FP_CHOOSE: "5/8 in, 3/4 in", or of one "rear drum: 5/8 in" */
    size_t at_hand_count;
    const char *const *limits; /* FP_CHOOSE: "foot = 250 N" */
    size_t limit_count;
    /* FP_CHOOSE: called now and then with the share that is done, false stops; NULL */
    bool (*progress)(double done, void *context);
    void *progress_context;
    bool all;              /* everything there is, not the answer in short */
    bool rules;            /* FP_CHECK: published rules of the country as well */
    const char *country;   /* whose; NULL: the one that the car says */
    const char *figure;    /* FP_TRACE: id of the figure, "pedal-travel" */
    const char *of;        /* FP_TRACE: which one, "brake pedal"; NULL where there is but one */
    const char *step;      /* FP_BLEED: only this step of the job, for a small screen: its number
                              or name, or "next"; NULL: all */
    const char *noted;     /* fp_note: what was read or is to be noted with it; NULL */
    const char *order;     /* bleeding: the order to follow, "rear left, rear right", or NULL */
    enum fp_method method; /* bleeding: by which it is done */
    bool shut_early;       /* bleeding: nipples are shut while the pedal still presses */
    enum fp_paper paper;
    const char *annexes; /* FP_SHEET: what is added, "figures, curves", "all"; NULL: nothing */
    bool replace;        /* an existing file may be replaced */
};

/* Creates an empty desk; NULL when there is no memory. The caller owns it. */
struct fp_desk *fp_desk_create(void);
/* Frees a desk and all that it gave out. Accepts NULL. */
void fp_desk_destroy(struct fp_desk *desk);

/* How answers and messages are set: no line longer than so many columns, from 40 to 100 (outside of
 * that the nearest of the two; 80 unless this is called). lively: signal words in colour and heads
 * in bold, for a terminal; they say the same without. What is a file or a page to be read back
 * (fp_show, fp_starter, fp_page) is not set anew. */
void fp_set_screen(struct fp_desk *desk, int columns, bool lively);

/* Reads a description, then each work file, and lays the work over the car. "-" is standard input,
 * which can be read once. FP_INPUT when any of them holds a mistake: then all mistakes of all files
 * are in fp_messages.
 *
 *   today   "2026-11-25": dates after it are remarked upon; NULL, or no date: none are */
enum fp_outcome fp_read(struct fp_desk *desk, const char *car, const char *const *works,
                        size_t work_count, const char *today);

/* The messages so far as text or JSON; "" when there are none. Owned by the desk. */
const char *fp_messages(struct fp_desk *desk, bool json);

/* Answers a question. *answer is text or JSON, owned by the desk. */
enum fp_outcome fp_ask(struct fp_desk *desk, enum fp_question question,
                       const struct fp_wishes *wishes, const char **answer);

/* Writes a drawing, whole or not at all; the ending of the path says which kind of file. A file
 * that is there is replaced only when wished, and only when its first bytes are those of a kind
 * that this drawing can be (or it is empty). */
enum fp_outcome fp_draw(struct fp_desk *desk, enum fp_drawing drawing, const char *path,
                        const struct fp_wishes *wishes);
/* Whether the path ends as that drawing's files do: FP_FINE, or FP_WRONG_USE with the reason as the
 * answer. fp_draw asks it too. */
enum fp_outcome fp_may_draw(struct fp_desk *desk, enum fp_drawing drawing, const char *path,
                            const char **answer);

/* Notes steps of the plan as done in a work file that was read, on the day of the wishes: a line
 * each under [done], all or none; the rest of the file stays as it is. Steps that are noted already
 * stay so. Refused when the file is an earlier work's, was changed since it was read, or a step is
 * none of the plan. *answer says what was noted, what is done in all, and what comes next.
 *
 *   work    its path as it was read
 *   steps   numbers or names of steps; none: only the answer */
enum fp_outcome fp_note(struct fp_desk *desk, const char *work, const char *const *steps,
                        size_t count, const struct fp_wishes *wishes, const char **answer);

/* Describing a car by being asked for one thing after the other. The half-written description is
 * the state: what was left is taken up by the "?" in its file.
 *
 * fp_describe begins for a file that is not there yet, or goes on with a description that is.
 * words: what is said of the kind of car already, as for fp_starter; "". The wishes (date, units)
 * are for what the car shows; their strings must stay. FP_WRONG_USE, with the reason as the answer,
 * when words cannot be used; FP_INPUT when the file holds a mistake. */
enum fp_outcome fp_describe(struct fp_desk *desk, const char *path, const char *words,
                            const struct fp_wishes *wishes, const char **answer);
/* What is asked now. */
enum fp_outcome fp_describe_question(struct fp_desk *desk, const char **question);
/* What became of an answer. */
enum fp_describing {
    FP_ASKS_ON,  /* ask the next question, or the same once more: *reply says why */
    FP_WRITTEN,  /* the file is written, whole; *reply says how to go on */
    FP_DROPPED,  /* it ended, and nothing was written */
    FP_UNWRITTEN /* it could not be written: *reply says why; "leave OTHER" tries another name */
};
/* Takes an answer: a value with its unit, words, "" to pass over, "?" for later; or back, explain,
 * show, leave, leave FILE, drop, help. After the first dozen of values *reply says what the car
 * shows. A file is written whole or not at all, and never over another: one that was not there when
 * this began must not be there now, one that was taken up must still hold the same. */
enum fp_describing fp_describe_answer(struct fp_desk *desk, const char *line, const char **reply);
/* The description so far; NULL as long as it is not said what kind of car it is. */
const char *fp_description(struct fp_desk *desk);

/* The car as it now stands, work included, as a full description that reads back. */
enum fp_outcome fp_show(struct fp_desk *desk, const char **answer);

/* Without a car: a commented description to start from for a car said in words ("front discs, rear
 * drums, remote servo, right"; "drums right"), the measuring sheet for it, what a key, finding,
 * figure, limit or word means; the pages of docs/ by name. FP_WRONG_USE when there is nothing of
 * that name, or words do not go together; *answer then says so and names what there is. */
enum fp_outcome fp_starter(struct fp_desk *desk, const char *car, const char **answer);
enum fp_outcome fp_measuring_sheet(struct fp_desk *desk, const char *car, const char **answer);
enum fp_outcome fp_explain(struct fp_desk *desk, const char *word, const char **answer);
enum fp_outcome fp_page(struct fp_desk *desk, const char *page, const char **answer);

const char *fp_version(void);

/* First thing in main: no file may take the place of a standard stream that is closed; there is
 * nothing to read from such a stream, and writing to it goes on to fail. */
void fp_secure_streams(void);

#endif
