#ifndef FIRMPEDAL_REPORT_TEXT_ANSWER_H
#define FIRMPEDAL_REPORT_TEXT_ANSWER_H

#include "advice/result.h"
#include "report/document/document.h"
#include "report/words/notes.h"

/* What all answers share: title, cautions, steps, the last lines. Each adds to a document. */

/* The car's title, which works are laid over it. */
void answer_title(struct document *into, const struct result *result);
/* The same with the files, then the notes on the car and on works. */
void answer_title_in_full(struct document *into, const struct result *result);
void answer_note(struct document *into, const struct note *note);
/* The notes on the car and on works. */
void answer_notes(struct document *into, const struct result *result);

/* A label and words beside it, a row of a table of two columns. */
struct table *answer_labels(struct document *into, int indent);
void answer_label(struct table *table, const char *label, const char *words);

/* A row of what to type and what it tells. */
struct table *answer_next(struct document *into);
/* The car's own manual, local rules and licensed inspection come first; in one line unless all. */
void answer_deference(struct document *into, bool all);

/* With a capital at its beginning. */
const char *answer_capital(struct arena *arena, const char *words);
/* The mark of a figure, one sign: "*" rests on something assumed, "**" mostly, "!" its limits are
 * not met here; "" for the rest. */
const char *answer_mark(const struct figure *figure);
#define ANSWER_MARKS "* rests on something assumed, ** mostly; ! outside what it holds for"

#endif
