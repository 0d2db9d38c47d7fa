#ifndef FIRMPEDAL_REPORT_JSON_JSON_CURVE_H
#define FIRMPEDAL_REPORT_JSON_JSON_CURVE_H

#include <jansson.h>

#include "advice/result.h"

/* The curves of every brake pedal in every case. */
json_t *curves_array(struct arena *arena, const struct result *result);

#endif
