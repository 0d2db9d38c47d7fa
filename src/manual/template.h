#ifndef FIRMPEDAL_MANUAL_TEMPLATE_H
#define FIRMPEDAL_MANUAL_TEMPLATE_H

#include <stdbool.h>
#include <stddef.h>

#include "base/text.h"
#include "parts/part.h"

/* Descriptions to start from: for a layout, its sections with the keys that matter, what is known
 * from the layout filled in and the rest as "?", each with its line of help. */

/* A layout that a description can be started for. */
struct car_layout {
    const char *word;                      /* "drums", as it is asked for */
    const char *help;                      /* one line */
    const struct outline *const *sections; /* ends with NULL; see layouts.h */
    const char *const *runs;               /* ends with NULL */
    bool motorcycle;
};

/* The table of layouts, in the order in which they are offered. */
const struct car_layout *layout_rows(size_t *count);
/* The layout with that word, or NULL. */
const struct car_layout *layout_find(const char *word);
/* The word that is nearest to a mistyped one, or NULL. */
const char *layout_nearest(struct arena *arena, const char *word);

/* Writes the description to start from. driver is the side on which the driver sits; a motorcycle
 * takes no notice of it. At most 60 lines of it are not comments. It reads without mistakes. */
void template_start(struct text *into, const struct car_layout *layout, enum driver_side driver);

#endif
