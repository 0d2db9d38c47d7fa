#ifndef FIRMPEDAL_REPORT_JSON_JSON_BLEED_H
#define FIRMPEDAL_REPORT_JSON_JSON_BLEED_H

#include <jansson.h>

#include "advice/result.h"

/* The bleed plan as JSON: steps with their figures, methods, costs of orders, the curve. Volumes
 * m3, times s, lengths m; null where not known. */
json_t *bleed_object(struct arena *arena, const struct result *result);

#endif
