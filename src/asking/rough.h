#ifndef FIRMPEDAL_ASKING_ROUGH_H
#define FIRMPEDAL_ASKING_ROUGH_H

#include <stdbool.h>

#include "input/lines.h"
#include "input/runs.h"
#include "network/system.h"
#include "starters/starter.h"

/* A description while it is being written: its text, and what reading made of it. A change makes a
 * new text, which is read like any other. */

struct rough {
    const char *text;
    struct read_lines lines;
    const struct system *system;
    struct messages messages; /* of reading it */
};

/* Reads a text; into->system is NULL where it holds a mistake, and the messages say which. */
void rough_read(struct rough *into, const char *text, struct arena *arena);

/* The text for a car, without help beside its lines: what is not known of it is "?". */
const char *rough_of_starter(struct arena *arena, const struct starter *starter);

/* A place where something can be written: the value of a key of a section, or the length of a pipe
 * or hose in a run. */
struct blank {
    const char *header;            /* of the section, "rear drum" */
    const struct section *section; /* NULL where there is none yet: [all pipes] */
    enum part_kind kind;
    const struct key *key;
    const struct entry *entry;    /* the line that holds it; NULL where there is none yet */
    const struct run_item *piece; /* of a run: the pipe or hose; the entry is the run */
};

/* The text with that written there: a value in place of the old one (and of the help beside it),
 * or a new line behind those of earlier rows, or a length before its pipe or hose. In the
 * arena. */
const char *rough_with(const struct rough *rough, const struct blank *blank, const char *value,
                       struct arena *arena);

/* The text as it goes into a file: each "?" has its help beside or above it. */
const char *rough_with_help(const struct rough *rough, struct arena *arena);

/* The kind whose keys a section holds: of a part, or of all pipes or hoses; false for others. */
bool section_kind(const struct section *section, enum part_kind *kind);

/* Whether an entry is the line of a key whose value was left for later. */
bool entry_is_left(const struct entry *entry);

#endif
