#ifndef FIRMPEDAL_REPORT_JSON_JSON_CHOOSE_H
#define FIRMPEDAL_REPORT_JSON_JSON_CHOOSE_H

#include "report/json/json_pieces.h"

/* Which bores would suit: groups, their limits, the best, the nearest misses. */
json_t *choose_object(struct arena *arena, const struct result *result);

#endif
