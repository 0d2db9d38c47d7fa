#ifndef FIRMPEDAL_BASE_MESSAGE_H
#define FIRMPEDAL_BASE_MESSAGE_H

#include <stdbool.h>
#include <stddef.h>

#include "base/arena.h"
#include "base/place.h"

/* How bad something is, for messages about files and for findings about cars. */
enum severity {
    SEVERITY_NOTE,    /* good to know */
    SEVERITY_ADVICE,  /* should be put right when there is time */
    SEVERITY_WARNING, /* must be looked at before the road */
    SEVERITY_DANGER   /* do not drive; in a file: cannot be used */
};

/* One message about a file. A value: nothing here prints. */
struct message {
    enum severity severity;
    const char *id; /* a word of the table of mistakes, never renamed */
    struct place place;
    const char *line;  /* the line as it was written, or NULL */
    int length;        /* letters to underline from place.column, 0 for none */
    const char *words; /* what is wrong and what was expected */
    /* At most one of these three, or NULL: */
    const char *write;    /* what was meant, as it is written */
    const char *example;  /* what could be written, where what was meant is not known */
    const char *mend;     /* what to do, in words */
    struct place earlier; /* the first of two things that clash; line 0 when there is none */
};

struct messages {
    struct arena *arena;
    struct message *items;
    size_t count;
    size_t capacity;
};

struct messages messages_start(struct arena *arena);

/* Adds a zeroed message to be filled in; the pointer holds until the next call. */
struct message *messages_add(struct messages *messages, enum severity severity, const char *id,
                             struct place place);

/* The messages that are shown, sorted: of each file at most so many, the worst before the rest.
 * Where some are left out the file's last one says how many ("and 12 more"), with the id "more". */
enum { MOST_SHOWN = 40 };
struct messages messages_shown(struct messages *messages);

/* Whether any message is as bad as this or worse. */
bool messages_reach(const struct messages *messages, enum severity severity);

/* Orders messages by file as first met, then line, then column; keeps the order of equal ones. */
void messages_sort(struct messages *messages);

#endif
