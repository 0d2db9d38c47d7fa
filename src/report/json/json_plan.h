#ifndef FIRMPEDAL_REPORT_JSON_JSON_PLAN_H
#define FIRMPEDAL_REPORT_JSON_JSON_PLAN_H

#include <jansson.h>

#include "advice/result.h"

/* The whole job: steps in order, joints, parts, what comes next. */
json_t *plan_object(struct arena *arena, const struct result *result);

#endif
