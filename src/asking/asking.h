#ifndef FIRMPEDAL_ASKING_ASKING_H
#define FIRMPEDAL_ASKING_ASKING_H

#include "asking/questions.h"

/* A description made by asking for one thing after the other. The half-written description is all
 * there is of its state: it is read anew after each answer, and a file that was left is taken up by
 * its "?". Nothing here reads a line or writes a file. */

struct asking;

/* Begins with the words that are already said of the car (0: none). width: columns of a line. */
struct asking *asking_start(picks said, int width, struct arena *arena);
/* Goes on with a description; NULL where it holds a mistake, with its messages. */
struct asking *asking_take_up(const char *text, int width, struct arena *arena,
                              struct messages *messages);

/* What is asked now, in words. */
void asking_question(struct asking *asking, struct text *into);

/* What an answer came to. */
enum asking_turn {
    ASKING_GOES_ON,
    ASKING_SHOWS,  /* time to say what the car already shows */
    ASKING_LEAVES, /* the description is to be written */
    ASKING_DROPS   /* nothing is to be written */
};
/* Takes an answer; into gets what is said to it, messages those of the reader. name: with
 * ASKING_LEAVES the other name that was asked for, else NULL. In the arena. */
enum asking_turn asking_answer(struct asking *asking, const char *answer, struct text *into,
                               struct messages *messages, const char **name);

/* The description as it goes into a file; NULL as long as it is not said what kind of car it is. */
const char *asking_text(struct asking *asking);
/* The words that are said so far of the kind of car. */
const char *asking_kind(const struct asking *asking);
/* The car as it is described so far; NULL as for asking_text. */
const struct system *asking_system(const struct asking *asking);
/* How much values tell of this car's figures, for the order of questions from here on. */
void asking_take_tellings(struct asking *asking, const struct tellings *tellings);

#endif
