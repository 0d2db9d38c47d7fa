#ifndef FIRMPEDAL_REPORT_JSON_JSON_SOFT_H
#define FIRMPEDAL_REPORT_JSON_JSON_SOFT_H

#include <jansson.h>

#include "advice/result.h"

/* The list for a pedal that does not come firm. */
json_t *soft_array(const struct soft_list *list);

#endif
