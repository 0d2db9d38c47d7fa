#ifndef FIRMPEDAL_ASKING_QUESTION_WORDS_H
#define FIRMPEDAL_ASKING_QUESTION_WORDS_H

#include "asking/questions.h"

/* Questions in words, for lines of any width from 40 columns on. */

/* What is asked, where to put tape or caliper, how it is written, what is usual, what is taken when
 * it is not said. to_go: how many questions of its stage there are, with it. again: it stands just
 * above, so its heading is enough. */
void question_words(struct text *into, const struct rough *rough, const struct question *question,
                    size_t to_go, bool again, int width);

/* What all of it means. */
void question_explain(struct text *into, const struct rough *rough, const struct question *question,
                      int width);

/* The answer as it is to be written: the word for the number of a choice. */
const char *question_value(const struct question *question, const char *answer,
                           struct arena *arena);

/* Lines of words: a number or mark, then words that hang behind it. */
void add_hung(struct text *into, const char *mark, const char *words, int width);

#endif
