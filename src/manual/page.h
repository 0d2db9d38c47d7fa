#ifndef FIRMPEDAL_MANUAL_PAGE_H
#define FIRMPEDAL_MANUAL_PAGE_H

#include "base/text.h"

/* Prints docs/input.md: all that can be written in a description and in a work file. Sections,
 * keys, words, units and mistakes come from the tables that the reader walks, so the page cannot
 * fall behind; a test compares the page in the repository with a fresh print. */
void page_input(struct text *into);

#endif
