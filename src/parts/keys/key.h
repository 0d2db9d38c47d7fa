#ifndef FIRMPEDAL_PARTS_KEYS_KEY_H
#define FIRMPEDAL_PARTS_KEYS_KEY_H

#include "parts/part.h"

/* The one table that each section of a description rests on: reader, messages, docs/input.md, the
 * starter description, the measuring sheet, `explain` and the fuzz dictionary all walk it. A key's
 * name is written nowhere else. */

enum key_form {
    FORM_QUANTITY, /* a double at field, NaN when unknown */
    FORM_COUNT,    /* an int at field, -1 when unknown */
    FORM_CHOICE,   /* an int (enum) at field; 0 always means "not said" */
    FORM_TEXT,     /* a const char * at field */
    FORM_DATE,     /* a struct date at field */
    FORM_PART,     /* an int at field: index of another part, -1 when not said */
    FORM_PARTS,    /* a struct part_names at field: several parts by name */
    FORM_WORDS,    /* a struct part_names at field: several free words, comma-separated */
    FORM_BORES     /* a struct bores at field: "2 of 48 mm" or "48 mm" */
};

/* What of the car must be solved again once a value of a row is another one. */
enum key_solves {
    SOLVES_ALL,     /* pressures or brake forces may rest on it */
    SOLVES_TRAVELS, /* only volumes and travels may, no pressure that a foot makes, no brake force
                     */
    SOLVES_NOTHING  /* figures are made of it directly: heat, the road, the hand brake */
};

struct choice {
    const char *word;   /* as it is written */
    const char *others; /* comma-separated other words understood, or NULL */
    int value;          /* never 0 */
    const char *help;
};

struct key {
    const char *name;
    const char *others; /* comma-separated other names understood, or NULL */
    enum key_form form;
    enum dimension dimension;     /* for FORM_QUANTITY and FORM_BORES */
    size_t field;                 /* offset in struct part */
    const struct choice *choices; /* for FORM_CHOICE; ends with word NULL */
    bool required;
    double least, most;             /* outside these it is a mistake; NaN: no limit */
    double usual_least, usual_most; /* outside these it is remarked upon; NaN: no opinion */
    double assumed;                 /* taken when nothing is said; NaN: nothing is assumed */
    /* Finds the value that is taken, from other things said of the part; NaN when it cannot. NULL
     * when assumed is that value. */
    double (*assume_by)(const struct part *part);
    const char *assumed_source; /* why that value, or the rule of assume_by, and its source: a
                                   printed one, or "common practice, no source" */
    bool (*applies)(const struct part *part); /* whether it has meaning; NULL: always */
    const char *example;                      /* a value as it would be written */
    const char *help; /* one line: what it is, where to put the tape or caliper */
    bool measured;    /* whether it goes on the measuring sheet */
    enum key_solves solves;
};

/* The rows of a kind, in the order in which pages print them. */
const struct key *key_table(enum part_kind kind, size_t *count);
/* The row with that name or other name (blanks and case do not matter), or NULL. */
const struct key *key_find(enum part_kind kind, const char *name);
/* The index of a row in its kind's table. */
size_t key_index(enum part_kind kind, const struct key *key);
/* The row whose field has that offset; always found for fields of the kind. For
 * "needs [vehicle] wheelbase": key_of(part, offsetof(struct part, as.vehicle.wheelbase)). */
const struct key *key_of(enum part_kind kind, size_t field);

/* The origin of a part's field. */
const struct origin *part_origin(const struct part *part, size_t field);

/* Sets every field of a part to "not said" (NaN, -1, 0, NULL) and all origins to ORIGIN_NONE, with
 * the origins taken from the arena. */
void part_blank(struct part *part, enum part_kind kind, struct arena *arena);
/* Fills what is not said with the assumed value of its row, where the row has one and the field
 * has meaning for this part, and marks it ORIGIN_ASSUMED. One that was asked for keeps its place
 * and its text, "?". */
void part_assume(struct part *part);
/* Whether a field of that row has meaning for this part: the fork ratio of a concentric slave, the
 * output rod gap of a remote servo have none. Where the part does not say what decides it, all
 * fields have. */
bool key_applies(const struct part *part, const struct key *key);

/* Whether the part's field of that row is said (or assumed): not NaN, -1, 0 or NULL. */
bool key_said(const struct part *part, const struct key *key);
/* The choice of a FORM_CHOICE row with that word or other word (blanks, hyphens and case do not
 * matter), or with that value; NULL when there is none. */
const struct choice *choice_find(const struct key *key, const char *words);
const struct choice *choice_of_value(const struct key *key, int value);

/* Reading and setting a numeric field by row, for perturbing values: quantities as they are, the
 * bore of FORM_BORES, choices and counts as doubles. NaN when not numeric or not said. */
double key_value(const struct part *part, const struct key *key);
void key_set(struct part *part, const struct key *key, double value);

#define FIELD(path) offsetof(struct part, path)

#endif
