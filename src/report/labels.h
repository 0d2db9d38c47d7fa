#ifndef FIRMPEDAL_REPORT_LABELS_H
#define FIRMPEDAL_REPORT_LABELS_H

#include "report/layout.h"

/* Fills labels: what is named, and places where nothing else is. Comes last. */
void labels_place(struct layout *layout, const struct ruler *ruler);

/* Fonts of labels, shared with the drawing. */
struct font label_font(bool name);
struct font label_tag_font(void);
#define LABEL_LINE 2.9 /* mm from line to line */

/* Boxes of pieces of ways as they are drawn. */
struct box_list {
    struct box *items;
    size_t count;
    size_t capacity;
};
void labels_way_boxes(const struct layout *layout, int chain, struct arena *arena,
                      struct box_list *into);

/* The box around points, made wider. */
struct box labels_box_of(const struct point *points, int count, double wider);

/* Boxes of tyres and of the words on engine and gearbox: labels keep off them. */
enum { MOST_TYRES = 8 };
int labels_tyres(const struct layout *layout, struct box tyres[static MOST_TYRES]);

#endif
