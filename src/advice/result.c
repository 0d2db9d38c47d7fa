#include "advice/result.h"

#include <stddef.h>

struct result *result_of(const struct system *system, const struct network *network,
                         struct force effort, struct date today, struct arena *arena)
{
    struct bleed_wishes none = {.order = NULL};
    return result_asked(system, network, effort, today, &none, arena);
}

struct result *result_asked(const struct system *system, const struct network *network,
                            struct force effort, struct date today,
                            const struct bleed_wishes *wishes, struct arena *arena)
{
    struct result *result = ARENA_NEW(arena, struct result);
    result->system = system;
    result->network = network;
    result->today = today;
    result->units = UNITS_METRIC;
    result->figures = figures_of(system, network, effort, arena);
    result->findings = findings_of(system, network, &result->figures, today, arena);
    result->rulings = rules_measure(system, network, &result->figures, arena);
    result->hoses = hoses_of(system, network, today, arena);
    result->bleed = wishes == NULL ? NULL : bleed_plan_of(system, network, wishes, arena);
    result->opening = opening_of(system, network, NULL, 0, arena);
    result->tests = tests_of(system, network, &result->figures, today, arena);
    return result;
}
