#ifndef FIRMPEDAL_REPORT_DIAGRAM_CHAINS_H
#define FIRMPEDAL_REPORT_DIAGRAM_CHAINS_H

#include "report/diagram/layout.h"

/* Finds the chains of pipes and hoses between symbols and the ways they take, then where each pipe
 * and hose of a chain lies on paper. Needs placed symbols. Fills chains and unrouted. */
void chains_find(struct layout *layout);
void chains_route(struct layout *layout);
/* After symbols have their place on paper and feeds were found. Fills points, crossings, pieces and
 * marks. */
void chains_finish(struct layout *layout);

/* A grid point on paper. */
struct point chains_on_paper(struct spot spot);

#endif
