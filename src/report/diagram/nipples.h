#ifndef FIRMPEDAL_REPORT_DIAGRAM_NIPPLES_H
#define FIRMPEDAL_REPORT_DIAGRAM_NIPPLES_H

#include "report/diagram/layout.h"

/* The circles at nipples: one for each step of the bleeding order, so two where a nipple comes up
 * twice, and an empty one at a nipple that stays shut. They stand above a car's brake, the outer
 * nipple outside on either side; beside a motorcycle's brake; at the upper corner of anything else.
 * A nipple's second circle stands above its first. */

/* How many circles a part has. */
int nipples_marks(const struct layout *layout, int part);

/* The box around a symbol's circles, mm, driver on the right; false when it has none. */
bool nipples_box(const struct layout *layout, const struct symbol *symbol, struct box *box);

/* Fills nipples. Needs symbols on paper. */
void nipples_place(struct layout *layout);

#endif
