#include "advice/result.h"

#include <stddef.h>

struct result *result_of(const struct system *system, const struct network *network,
                         struct force effort, struct date today, struct arena *arena)
{
    struct bleed_wishes none = {.order = NULL};
    return result_asked(system, network, effort, today,
                        RESULT_FIGURES | RESULT_JUDGED | RESULT_PLAN, &none, arena);
}

/* What the figures are judged by. */
static void judge(struct result *result, struct arena *arena)
{
    const struct system *system = result->system;
    const struct network *network = result->network;
    result->findings = findings_of(system, network, &result->figures, result->today, arena);
    result->readings = readings_compare(system, network, &result->figures, arena);
    result->rulings = rules_measure(system, network, &result->figures, arena);
}

/* Parts of the plan under the names by which reports ask for them. Where nothing is opened what
 * comes first stands with the settings. */
static void slice(struct result *result)
{
    const struct plan *plan = result->plan;
    struct bleed_plan *bleed = result->bleed;
    bool opens = plan_phases(plan, PHASE_APART, PHASE_TOGETHER).count > 0;
    if (opens)
        result->opening = plan_phases(plan, PHASE_BEFORE, PHASE_TOGETHER);
    bleed->bench = plan_phases(plan, PHASE_BENCH, PHASE_BENCH);
    bleed->settings = plan_phases(plan, opens ? PHASE_SETTINGS : PHASE_BEFORE, PHASE_SETTINGS);
    result->tests = plan_phases(plan, PHASE_BLEEDING, PHASE_LATER);
    while (result->tests.count > 0 && result->tests.items->turn > 0) {
        result->tests.items++;
        result->tests.count--;
    }
}

struct result *result_asked(const struct system *system, const struct network *network,
                            struct force effort, struct date today, unsigned parts,
                            const struct bleed_wishes *wishes, struct arena *arena)
{
    struct result *result = ARENA_NEW(arena, struct result);
    result->system = system;
    result->network = network;
    result->today = today;
    result->units = UNITS_METRIC;
    struct bleed_set set = bleed_set_of(system, network, arena);
    result->touched = touched_by(system, network, &set, arena);
    result->hoses = hoses_of(system, network, today, arena);
    result->soft = soft_of(system, network, &result->hoses, arena);
    result->unsettled = unsettled_of(system, network, arena);
    if ((parts & (RESULT_FIGURES | RESULT_JUDGED)) != 0) {
        result->figures = figures_of(system, network, effort, arena);
        result->measure = measurings_of(system, &result->figures, arena);
    }
    if ((parts & RESULT_JUDGED) != 0)
        judge(result, arena);
    if ((parts & RESULT_PLAN) != 0) {
        result->bleed = bleed_plan_of(system, network, wishes, arena);
        result->plan = plan_of(system, network, &result->hoses, result->bleed, today, arena);
        slice(result);
    }
    return result;
}
