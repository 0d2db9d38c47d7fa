#ifndef FIRMPEDAL_REPORT_DIAGRAM_LETTERS_H
#define FIRMPEDAL_REPORT_DIAGRAM_LETTERS_H

#include "report/diagram/layout.h"

/* Where a joint of the plan is: the end of a pipe or hose, what stands between the two where they
 * meet on a way, or the middle of a direct joint. Needs finished chains.
 *
 *   connection   index in the system
 *   gives        false where it is not drawn: it lies in no circuit */
bool letters_target(const struct layout *layout, int connection, struct box *target);

#endif
