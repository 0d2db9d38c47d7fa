#ifndef FIRMPEDAL_REPORT_TEXT_WRAP_H
#define FIRMPEDAL_REPORT_TEXT_WRAP_H

#include "base/text.h"
#include "report/document/document.h"

/* Words as lines no longer than a width, and a line that is put together from the left. */

struct set_lines {
    const char **items;
    size_t count;
    size_t capacity;
};

/* Words in lines of at most width letters (>= 1), ended at blanks and at \n; a word that is longer
 * is cut. The first line may be shorter by first letters. No words: one empty line. */
struct set_lines wrap(struct arena *arena, const char *words, int first, int width);

/* Adds a finished text with its long lines ended at blanks; what goes on stands a little further in
 * than its line. Short lines stay as they are. */
void wrap_text(struct text *into, const char *finished, int width);

/* Letters of the longest word: as narrow as it can be set uncut. */
int wrap_longest_word(const char *words);

/* How a document is set: columns there are, and whether the terminal shows bold and colour. */
struct setting {
    int width;
    bool lively;
};
enum { SETTING_LEAST = 40, SETTING_MOST = 100, SETTING_USUAL = 80 };

/* A line that is written from the left; blanks are written only when something follows them. */
struct pen_line {
    struct text *into;
    const struct setting *setting;
    int column; /* letters written */
    int blanks; /* still to write */
};
struct pen_line line_start(struct text *into, const struct setting *setting);
/* From this column on; at once where the line is already further. */
void line_move(struct pen_line *line, int column);
void line_put(struct pen_line *line, const char *words, enum tone tone);
void line_end(struct pen_line *line);

#endif
