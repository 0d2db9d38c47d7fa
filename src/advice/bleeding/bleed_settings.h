#ifndef FIRMPEDAL_ADVICE_BLEEDING_BLEED_SETTINGS_H
#define FIRMPEDAL_ADVICE_BLEEDING_BLEED_SETTINGS_H

#include "advice/bleeding/bleed_types.h"
#include "advice/bleeding/bleed_scope.h"

/* The settings that decide whether bleeding can succeed, only those that this car has and that the
 * circuits in scope touch, with the figures wanted; and what the plan's method needs. */
struct steps bleed_settings_of(const struct system *system, const struct network *network,
                               const struct bleed_set *set, const struct bleed_plan *plan,
                               struct arena *arena);

#endif
