#ifndef FIRMPEDAL_ADVICE_FIGURES_HOLDS_H
#define FIRMPEDAL_ADVICE_FIGURES_HOLDS_H

#include "advice/figures/figures.h"

/* Conditions within which figures hold and which can be looked up for the car at hand: each is met
 * here or it is not. What a row's "limits" say besides is taken for granted. */

struct hold_row {
    unsigned bit;
    const char *id;     /* "effort-reached" */
    const char *words;  /* what is asked: "the effort is reached before floor and bore's end" */
    const char *broken; /* what is so instead, where it is not met */
    /* Whether it is met for a figure: 1, 0, or -1 where nobody can tell. */
    int (*met)(const struct situation *situation, const struct figure *figure);
};
const struct hold_row *hold_rows(size_t *count);

/* The conditions that a figure of that id stands under, by bit; 0: none. */
unsigned holds_asked(const char *figure);

/* Whether a figure is what its name says: a condition is broken other than that the effort is
 * reached, which leaves it true of the effort that is. No verdict is built on one that is not. */
bool holds_spoiled(const struct figure *figure);

/* The first condition of the machine itself, not of the road under it, that is broken for a figure:
 * the law that made the figure does not hold here. NULL where it does. */
const struct hold_row *holds_broken_law(const struct figure *figure);

/* Sets a figure's holds and holds_broken. */
void holds_look(const struct situation *situation, struct figure *figure);

#endif
