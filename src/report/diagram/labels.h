#ifndef FIRMPEDAL_REPORT_DIAGRAM_LABELS_H
#define FIRMPEDAL_REPORT_DIAGRAM_LABELS_H

#include "report/diagram/layout.h"
#include "report/diagram/spots.h"

/* Fills labels: what is named, and places where nothing else is. Comes last. */
void labels_place(struct layout *layout, const struct ruler *ruler);

/* Fills reserved: room beside every symbol and feed for a name of usual length, before ways are
 * laid. After labels were placed: for those that stand badly as well. */
void labels_reserve(struct layout *layout);

/* Fonts of labels, shared with the drawing. */
struct font label_font(bool name);
struct font label_tag_font(void);
#define LABEL_LINE 3.3 /* mm from line to line */

#define LETTER_HEIGHT 3.6 /* of the box around a joint's letter */

/* Boxes of pieces of ways as they are drawn. */
void labels_way_boxes(const struct layout *layout, int chain, struct arena *arena,
                      struct box_list *into);

/* How far a pipe and a hose reach to the sides of their line, mm. */
#define PIPE_HALF 0.4
#define HOSE_HALF 1.15

/* The box around the rods between a pedal and what it works; false when the symbol is no pedal. */
bool labels_rods(const struct layout *layout, const struct symbol *pedal, struct box *box);
/* Whether a symbol is of what a pedal's rods belong to: the pedal, its masters, their servo. */
bool labels_rod_of(const struct layout *layout, int pedal, int symbol);

/* The box around points, made wider. */
struct box labels_box_of(const struct point *points, int count, double wider);

/* Boxes of tyres and of the words on engine and gearbox: labels keep off them. */
enum { MOST_TYRES = 8 };
int labels_tyres(const struct layout *layout, struct box tyres[static MOST_TYRES]);

/* Where the word in the engine stands. */
struct box labels_engine(const struct layout *layout);

/* Where "FRONT" (0), "LEFT" and "RIGHT" stand. */
struct box labels_sides(const struct layout *layout, int index);
#define WHEEL_RADIUS 6.2 /* mm, of a car's steering wheel */

#endif
