#ifndef FIRMPEDAL_REPORT_JSON_JSON_RULES_H
#define FIRMPEDAL_REPORT_JSON_JSON_RULES_H

#include <jansson.h>

#include "advice/result.h"

/* Every published rule with the car's number, whether it concerns the car or not. */
json_t *rules_array(struct arena *arena, const struct result *result);

#endif
