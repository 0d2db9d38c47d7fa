#include "tally.h"

#include <math.h>

static const double dear = 0.2, noticed = 0.05;

const char *tally_percent(struct arena *arena, double sum, int count)
{
    return count > 0 ? text_print(arena, "%.1f %%", 100 * sum / count) : "-";
}

static bool is_worse(const struct trial *trial, const struct trial *than)
{
    return !judge_as_clear(trial, than) ||
           (judge_as_clear(than, trial) && judge_more_fluid(trial, than) > noticed);
}

static void rival_add(struct rival *rival, const struct trial *trial, const struct contest *contest)
{
    const struct trial *best = &contest->verdict.best;
    rival->worse += is_worse(trial, &contest->plan);
    rival->better += is_worse(&contest->plan, trial);
    rival->dirty += !judge_as_clear(trial, best);
    if (!judge_as_clear(trial, best) || !(best->fluid > 0))
        return;
    double more = judge_more_fluid(trial, best);
    rival->clear++;
    rival->fluid += more;
    rival->strokes += trial->strokes / contest->verdict.fewest_strokes - 1;
    rival->most_fluid = fmax(rival->most_fluid, more);
}

void tally_add(struct tally *tally, const struct contest *contest)
{
    const struct verdict *verdict = &contest->verdict;
    bool fluid = verdict->fluid_spread >= dear, strokes = verdict->stroke_spread >= dear;
    tally->nets++;
    tally->orders += verdict->orders;
    tally->differences[contest->difference]++;
    tally->rule_differences[contest->rule_difference]++;
    tally->simple_differences[contest->simple_difference]++;
    tally->departures += !contest->plan_is_rule;
    tally->dear_fluid += fluid;
    tally->dear_strokes += strokes;
    tally->dear += fluid || strokes;
    tally->some_leave_air += verdict->left_air > 0;
    tally->dear_or_air += fluid || strokes || verdict->left_air > 0;
    tally->fluid_spread += verdict->fluid_spread;
    tally->stroke_spread += verdict->stroke_spread;
    tally->most_fluid_spread = fmax(tally->most_fluid_spread, verdict->fluid_spread);
    tally->most_stroke_spread = fmax(tally->most_stroke_spread, verdict->stroke_spread);
    tally->worst_balance = fmax(tally->worst_balance, verdict->worst_balance);
    if (verdict->best.fluid > 0)
        tally->mean_fluid += verdict->mean_fluid / verdict->best.fluid - 1;
    rival_add(&tally->plan, &contest->plan, contest);
    rival_add(&tally->rule, &contest->rule, contest);
    rival_add(&tally->nearest, &contest->nearest, contest);
    rival_add(&tally->farthest, &contest->farthest, contest);
    rival_add(&tally->simple, &contest->simple, contest);
    rival_add(&tally->random, &contest->random, contest);
}
