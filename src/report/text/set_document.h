#ifndef FIRMPEDAL_REPORT_TEXT_SET_DOCUMENT_H
#define FIRMPEDAL_REPORT_TEXT_SET_DOCUMENT_H

#include "report/text/wrap.h"

/* Sets a document in columns. No line is longer than the setting's width; none ends with a blank;
 * two blank lines never follow each other. Pictures and turns are left out. */
void set_document(struct text *into, const struct document *document,
                  const struct setting *setting);

/* Sets a table from a column on. Where its columns do not fit side by side, each row becomes a
 * paragraph: its first words, then "head words" of each other cell. */
void set_table(struct text *into, const struct table *table, int indent,
               const struct setting *setting);

#endif
