#ifndef FIRMPEDAL_REPORT_JSON_JSON_TRACE_H
#define FIRMPEDAL_REPORT_JSON_JSON_TRACE_H

#include <jansson.h>

#include "advice/result.h"

/* The way of one figure down to the lines of the file. */
json_t *trace_object(struct arena *arena, const struct result *result);

#endif
