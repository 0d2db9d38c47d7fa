#ifndef FIRMPEDAL_REPORT_DIAGRAM_DESCRIPTION_H
#define FIRMPEDAL_REPORT_DIAGRAM_DESCRIPTION_H

#include "report/diagram/layout.h"

/* What the diagram shows, in sentences, for those who do not see it: each circuit with what it
 * reaches, the order of the nipples, hoses that are not good. */
const char *description_of(const struct layout *layout);

#endif
