#ifndef FIRMPEDAL_REPORT_DOCUMENT_DOCUMENT_H
#define FIRMPEDAL_REPORT_DOCUMENT_DOCUMENT_H

#include <stdbool.h>
#include <stddef.h>

#include "base/arena.h"

/* An answer as a plain value: heads, paragraphs, rows to tick, tables, cautions, pictures. It knows
 * neither terminal nor paper; report/text sets it in columns, report/sheet on sides.
 *
 * All words are copied into the document's arena, and a blank between a number and its unit becomes
 * one that no line ends at (U+00A0). NULL words count as "". */

enum tone {
    TONE_PLAIN,
    TONE_STRONG,
    TONE_SMALL,  /* what is read at a desk: sources, remarks */
    TONE_DANGER, /* the three are of signal words and marks, which say it without colour too */
    TONE_WARNING,
    TONE_ADVICE
};

/* What the cells of a column hold. */
enum cell_kind {
    CELL_WORDS,  /* may go over several lines */
    CELL_FIGURE, /* numbers with units, marks: never torn */
    CELL_CIRCLE, /* the number of a step at the car; a circle around it on paper */
    CELL_BOX,    /* to tick */
    CELL_LINE    /* to write on */
};
enum cell_align { CELL_LEFT, CELL_RIGHT, CELL_CENTRE };

struct table_column {
    const char *head; /* NULL or "": none */
    enum cell_kind kind;
    enum cell_align align;
    double least, wanted; /* shares of the width there is, 0 to 1; 0: as its cells want. A line to
                           * write on is as long as wanted */
    bool close;           /* stands close to the column before: a mark to a figure */
};

/* An empty cell of a box or line column has no box and no line: what is not to be done here. */
struct cell {
    const char *words; /* beside a box or before a line: small words that say what */
    enum tone tone;
    bool asked; /* of a box or line column: there is a box, a line */
    bool done;  /* of a box: it is ticked */
};

struct table_row {
    struct cell *cells; /* as many as there are columns */
    int filled;
};

enum { TABLE_MOST_COLUMNS = 16 };
struct table {
    struct arena *arena;
    struct table_column *columns;
    int column_count;
    bool ruled; /* thin lines between rows on paper */
    struct table_row *items;
    size_t count;
    size_t capacity;
};

enum block_kind {
    BLOCK_HEAD,
    BLOCK_WORDS,
    BLOCK_TICK, /* a box, words, perhaps a line to write on */
    BLOCK_TABLE,
    BLOCK_CAUTION, /* a signal word and what it is about */
    BLOCK_PICTURE,
    BLOCK_GAP,
    BLOCK_TURN /* a new side begins; nothing on a screen */
};

struct block {
    enum block_kind kind;
    enum tone tone;
    int level;          /* of a head: 1 the answer's, 2 of what follows */
    int indent;         /* steps to the right */
    int hang;           /* further lines stand so many steps further right */
    bool done;          /* of a row to tick: it is ticked */
    bool if_room;       /* on paper only where it, and such ones after it, still find room on a
                         * side; nothing on a screen */
    const char *words;  /* of all but tables, gaps, turns; of a picture its name */
    const char *aside;  /* of a head: plain words that follow it on its line, or NULL */
    const char *signal; /* of a caution: "WARNING"; of a row to tick a letter or number, or NULL */
    const char *blank;  /* of a row to tick: what is to be written on its line; NULL: no line */
    double share;       /* length of that line; least height of a picture, of the width */
    struct table *table;
};

struct document {
    struct arena *arena;
    struct block *items;
    size_t count;
    size_t capacity;
};

struct document document_start(struct arena *arena);

/* Each adds a block and gives it, for what is seldom set: indent, tone, if_room. The pointer holds
 * until the next block is added. */
struct block *document_head(struct document *document, int level, const char *words);
struct block *document_words(struct document *document, const char *words);
/* A row with a box. blank: what is to be written down, a line of a quarter of the width; NULL. */
struct block *document_tick(struct document *document, const char *words, const char *blank);
/* The tone follows from the signal word; an unknown one is strong. */
struct block *document_caution(struct document *document, const char *signal, const char *words);
/* A picture by its name, at least so high: share of the width. */
struct block *document_picture(struct document *document, const char *name, double share);
void document_gap(struct document *document);
/* A new side, called "Car: words" from there on; its tone small: what is read at a desk. */
struct block *document_turn(struct document *document, const char *words);

/* A table; the columns are copied. Gives it for its rows; it may be filled after other blocks were
 * added. */
struct table *document_table(struct document *document, const struct table_column *columns,
                             int count);
/* A new row, its cells empty; then cell by cell from the left. More cells than columns is an
 * error of the caller (assert). */
void table_row(struct table *table);
struct cell *table_cell(struct table *table, const char *words);
/* A box, or a line with what is to be written on it (NULL: the column's head says it). */
struct cell *table_ask(struct table *table, const char *words);
void table_skip(struct table *table);

/* The tone of a signal word or severity in any case: "warning". */
enum tone tone_of_signal(const char *signal);

/* Words with no-break blanks between numbers and units; lives in the arena. */
const char *words_kept(struct arena *arena, const char *words);
#define KEPT_BLANK "\u00a0"

#endif
