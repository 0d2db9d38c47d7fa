#ifndef FIRMPEDAL_INPUT_EXPAND_VALUE_H
#define FIRMPEDAL_INPUT_EXPAND_VALUE_H

#include "network/system.h"

/* The value of a part's row as it would be written: as it was written where that still says the
 * same, else with as many digits as read back to the very same number. NULL when it is not said. */
const char *expand_value(const struct system *system, const struct part *part,
                         const struct key *key, struct arena *arena);

#endif
