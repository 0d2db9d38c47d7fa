#ifndef FIRMPEDAL_REPORT_SIDES_SIDES_H
#define FIRMPEDAL_REPORT_SIDES_SIDES_H

#include "report/document/document.h"
#include "report/paint/sketch.h"

/* Sets a document on sides of paper, in millimetres. Made for oily hands: 10 pt where it is read
 * under a car, 8 pt at least anywhere, boxes of 5 mm. A head stays with what follows it; a table or
 * picture that fits on one side is not torn. */

/* What is to be written down once on the first side and is repeated on all. */
struct side_item {
    const char *label; /* "registration" */
    const char *words; /* NULL: a line to write on */
    double share;      /* of the width */
};

/* What stands on each side around the words. */
struct side_frame {
    const char *title;
    const char *date;
    const char *foot; /* files and version */
    const struct side_item *items;
    int item_count;
};

/* Draws a picture of a document at most so high (mm) into a sketch of that width; gives its height,
 * 0: there is none. */
struct side_pictures {
    double (*draw)(const void *context, const char *name, struct sketch *into, double most);
    const void *context;
};

/* The sides, from the arena; *count of them. width and height of the paper, mm, >= 100. */
struct sketch *sides_of(const struct document *document, const struct side_frame *frame,
                        double width, double height, const struct side_pictures *pictures,
                        const struct ruler *ruler, struct arena *arena, size_t *count);

#endif
