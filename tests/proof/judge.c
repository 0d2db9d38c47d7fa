#include "judge.h"

#include <math.h>

double judge_air(void)
{
    return 0.05e-6;
}

int judge_compare(const struct trial *a, const struct trial *b)
{
    if (fabs(a->air - b->air) > judge_air())
        return a->air < b->air ? -1 : 1;
    if (fabs(a->fluid - b->fluid) > 1e-9)
        return a->fluid < b->fluid ? -1 : 1;
    return (a->strokes > b->strokes) - (a->strokes < b->strokes);
}

double judge_more_fluid(const struct trial *trial, const struct trial *than)
{
    return than->fluid > 0 ? trial->fluid / than->fluid - 1 : trial->fluid > 0 ? INFINITY : 0;
}

bool judge_as_clear(const struct trial *trial, const struct trial *as)
{
    return trial->air <= as->air + judge_air();
}

static struct trial trial_of(const struct purge_result *result)
{
    struct trial trial = {.air = result->air_left,
                          .fluid = result->fluid,
                          .strokes = result->strokes,
                          .balance = result->worst_balance};
    for (int i = 0; i < result->turn_count; i++)
        trial.gave_up = trial.gave_up || result->turns[i].gave_up;
    return trial;
}

struct trial judge_turns(const struct purge_net *net, const struct purge_way *way,
                         const struct purge_turn *turns, int count, struct purge_room *room)
{
    struct trial trial = trial_of(purge_run(net, way, turns, count, room));
    for (trial.count = 0; trial.count < count && trial.count < JUDGE_MOST_TURNS; trial.count++)
        trial.order[trial.count] = turns[trial.count].nipple;
    return trial;
}

struct trial judge_order(const struct purge_net *net, const struct purge_way *way, const int *order,
                         struct purge_room *room)
{
    struct purge_turn turns[JUDGE_MOST];
    for (int i = 0; i < net->nipple_count; i++)
        turns[i] = (struct purge_turn){order[i], -1};
    return judge_turns(net, way, turns, net->nipple_count, room);
}

/* The next order in the dictionary of orders; false after the last. */
static bool next_order(int *order, int count)
{
    int at = count - 2;
    while (at >= 0 && order[at] > order[at + 1])
        at--;
    if (at < 0)
        return false;
    int with = count - 1;
    while (order[with] < order[at])
        with--;
    int kept = order[at];
    order[at] = order[with];
    order[with] = kept;
    for (int low = at + 1, high = count - 1; low < high; low++, high--) {
        kept = order[low];
        order[low] = order[high];
        order[high] = kept;
    }
    return true;
}

static void measure_spread(struct verdict *verdict, const struct trial *trials)
{
    double least_fluid = INFINITY, most_fluid = 0, least_strokes = INFINITY, most_strokes = 0;
    for (int i = 0; i < verdict->orders; i++) {
        const struct trial *trial = &trials[i];
        if (!judge_as_clear(trial, &verdict->best)) {
            verdict->left_air++;
            continue;
        }
        least_fluid = fmin(least_fluid, trial->fluid);
        most_fluid = fmax(most_fluid, trial->fluid);
        least_strokes = fmin(least_strokes, trial->strokes);
        most_strokes = fmax(most_strokes, trial->strokes);
    }
    verdict->fewest_strokes = least_strokes;
    verdict->fluid_spread = least_fluid > 0 ? most_fluid / least_fluid - 1 : 0;
    verdict->stroke_spread = least_strokes > 0 ? most_strokes / least_strokes - 1 : 0;
}

struct verdict judge_all(const struct purge_net *net, const struct purge_way *way,
                         struct purge_room *room, struct trial *trials)
{
    struct verdict verdict = {.nipples = net->nipple_count};
    int order[JUDGE_MOST] = {0, 1, 2, 3, 4, 5};
    if (net->nipple_count > JUDGE_MOST || net->nipple_count < 1)
        return verdict;
    do {
        struct trial trial = judge_order(net, way, order, room);
        trials[verdict.orders] = trial;
        if (verdict.orders == 0 || judge_compare(&trial, &verdict.best) < 0)
            verdict.best = trial;
        if (verdict.orders == 0 || judge_compare(&trial, &verdict.worst) > 0)
            verdict.worst = trial;
        verdict.orders++;
        verdict.worst_balance = fmax(verdict.worst_balance, trial.balance);
        verdict.mean_air += trial.air;
        verdict.mean_fluid += trial.fluid;
        verdict.mean_strokes += trial.strokes;
    } while (next_order(order, net->nipple_count));
    verdict.mean_air /= verdict.orders;
    verdict.mean_fluid /= verdict.orders;
    verdict.mean_strokes /= verdict.orders;
    measure_spread(&verdict, trials);
    return verdict;
}

void judge_nearest_first(const struct purge_net *net, int *order)
{
    for (int i = 0; i < net->nipple_count; i++) {
        int at = i;
        double path = purge_path_volume(net, i);
        for (; at > 0 && purge_path_volume(net, order[at - 1]) > path; at--)
            order[at] = order[at - 1];
        order[at] = i;
    }
}

void judge_farthest_first(const struct purge_net *net, int *order)
{
    int nearest[JUDGE_MOST];
    judge_nearest_first(net, nearest);
    for (int i = 0; i < net->nipple_count; i++)
        order[i] = nearest[net->nipple_count - 1 - i];
}
