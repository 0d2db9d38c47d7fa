#ifndef FIRMPEDAL_INPUT_SCHEMA_H
#define FIRMPEDAL_INPUT_SCHEMA_H

#include <stdbool.h>
#include <stddef.h>

#include "base/date.h"
#include "parts/keys/key.h"

/* The sections that are no part of a car, and the keys that say where a pipe or hose goes: the rest
 * of the language beside the tables of parts/keys_*.c. Their rows are struct key as well; field is
 * an offset in the struct named beside each. */

enum special_kind {
    SPECIAL_ALL_PIPES,
    SPECIAL_ALL_HOSES,
    SPECIAL_RUNS,
    SPECIAL_BLEED_ORDER,
    SPECIAL_WORK,
    SPECIAL_REPLACED,
    SPECIAL_FOUND,
    SPECIAL_READINGS,
    SPECIAL_DONE,
    SPECIAL_COUNT
};

struct special {
    const char
        *name; /* the words of its header: "bleed order"; for replaced and found, the first */
    bool in_work_file;
    bool names_part;  /* the name of a part follows in the header */
    const char *help; /* what it is for */
    /* Its keys: rows of its own; or those of a kind; or, where left is not NULL, names of one's
     * own choosing: left says what stands before =, right what stands behind. */
    const struct key *keys;
    size_t key_count;
    const char *left;
    const char *right;
    const char *example; /* a line as it would be written, or NULL where the keys have examples */
};

/* All of them, in the order of enum special_kind. */
const struct special *special_rows(size_t *count);
/* The special section that a header names; *part gets the words behind "replaced" or "found", or
 * NULL. NULL when it is none. */
const struct special *special_find(const char *header, const char **part);
enum special_kind special_kind_of(const struct special *special);

/* What stands in [work]; the lists are names of parts. */
struct work_lines {
    const char *car;
    struct date date;
    struct part_names opened;
    struct part_names renewed;
    struct part_names ran_dry;
    int fluid_renewed; /* enum yes_no */
    int open_ends;     /* enum open_ends */
    const char *note;
};

/* What stands in [bleed order]. */
struct order_lines {
    struct part_names order;
};

/* Where the section of a pipe or hose says that it goes, and whether a joint is one that sprang
 * up by itself where a pipe met a hose in a run. */
struct ends {
    const char *from;
    const char *to;
    int implied; /* enum yes_no */
};
/* The rows for struct ends of a kind of part; none (count 0) for most. */
const struct key *ends_keys(enum part_kind kind, size_t *count);

/* The row of that name or other name in any table, or NULL. */
const struct key *row_find(const struct key *rows, size_t count, const char *name);

/* What to say to a key that the table of a kind does not have, where people look for it all the
 * same: "drive" of a vehicle. NULL for others. */
const char *key_elsewhere(const struct key *table, const char *name);

/* Whether a key of that name, in whatever section, holds free words: title, note. */
bool is_of_free_words(const char *name);

/* Kinds of part that a FORM_PART or FORM_PARTS row may name, as bits 1 << kind. */
unsigned key_names_kinds(enum part_kind kind, const struct key *key);

#endif
