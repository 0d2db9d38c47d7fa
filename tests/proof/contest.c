#include "contest.h"

#include <math.h>

#include "advice/bleeding/bleed_search.h"
#include "dice.h"

/* The share of fluid by which a plan may lie above the best. */
static const double allowed = 0.05;

const char *difference_words(enum difference difference)
{
    static const char *const words[DIFFERENCES] = {
        "no more air than the best order, at most 5 % more fluid",
        "less than one whole stroke more than the best order",
        "more fluid than any order of single turns, and less air left",
        "worse than the best order, and nothing explains it",
    };
    return words[difference];
}

static enum difference difference_of(const struct trial *trial, const struct trial *best,
                                     double stroke)
{
    if (!judge_as_clear(trial, best))
        return DIFFERS_WORSE;
    if (!(judge_more_fluid(trial, best) > allowed))
        return DIFFERS_NOT;
    if (trial->air < best->air - judge_air())
        return DIFFERS_CLEARER;
    return trial->fluid - best->fluid < stroke * (1 + 1e-9) ? DIFFERS_STROKE : DIFFERS_WORSE;
}

static void throw_order(struct dice *dice, int *order, int count)
{
    for (int i = 0; i < count; i++)
        order[i] = i;
    for (int i = count - 1; i > 0; i--) {
        int with = dice_pick(dice, i + 1), kept = order[i];
        order[i] = order[with];
        order[with] = kept;
    }
}

static struct trial best_of(const struct trial *a, const struct trial *b, const struct trial *c)
{
    const struct trial *best = judge_compare(b, a) < 0 ? b : a;
    return judge_compare(c, best) < 0 ? *c : *best;
}

struct contest contest_of(const struct purge_net *net, const struct purge_way *way,
                          unsigned long number, struct given_plan given, struct arena *arena)
{
    struct contest contest = {.verdict = {.nipples = net->nipple_count}};
    if (net->nipple_count < 1 || net->nipple_count > JUDGE_MOST)
        return contest;
    struct purge_room *room = purge_room(net, JUDGE_MOST_TURNS, false, arena);
    struct trial *trials = ARENA_ARRAY(arena, JUDGE_MOST_ORDERS, struct trial);
    struct dice dice = dice_start(UINT64_C(20261125), number);
    int order[JUDGE_MOST];
    struct purge_turn turns[JUDGE_MOST_TURNS];
    contest.verdict = judge_all(net, way, room, trials);
    contest.plan_is_rule = true;
    if (given.turns != NULL) {
        contest.plan = judge_turns(net, way, given.turns, given.count, room);
    } else {
        struct bleed_choice choice = bleed_best_order(net, way, NULL, arena);
        contest.plan = judge_turns(net, way, choice.turns, choice.count, room);
        contest.plan_is_rule = choice.by_rule;
    }
    contest.rule = judge_turns(net, way, turns, bleed_rule_order(net, NULL, turns), room);
    judge_nearest_first(net, order);
    contest.nearest = judge_order(net, way, order, room);
    judge_farthest_first(net, order);
    contest.farthest = judge_order(net, way, order, room);
    contest.simple = best_of(&contest.farthest, &contest.nearest, &contest.rule);
    throw_order(&dice, order, net->nipple_count);
    contest.random = judge_order(net, way, order, room);
    contest.difference = difference_of(&contest.plan, &contest.verdict.best, way->stroke);
    contest.simple_difference = difference_of(&contest.simple, &contest.verdict.best, way->stroke);
    contest.rule_difference = difference_of(&contest.rule, &contest.verdict.best, way->stroke);
    return contest;
}
