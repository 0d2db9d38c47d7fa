#include "advice/bleeding/bleed_search.h"

#include <math.h>
#include <stddef.h>
#include <string.h>

/* At most so much more fluid, or strokes, as a share, may an order by rule take. */
#define MORE_FLUID_MOST 0.05
/* Shares of volume that differ by less are rounding. */
#define ROUNDING 1e-9

bool order_better(const struct order_trial *a, const struct order_trial *b)
{
    if (fabs(a->air_left - b->air_left) > ORDER_AIR_EQUAL) {
        return a->air_left < b->air_left;
    }
    return a->fluid < b->fluid * (1.0 - ROUNDING);
}

bool order_stands(const struct order_trial *trial, const struct order_trial *best, double slack)
{
    double most = fmax(best->fluid * (1.0 + MORE_FLUID_MOST), best->fluid + slack);
    return trial->air_left <= best->air_left + ORDER_AIR_EQUAL &&
           trial->fluid <= most * (1.0 + ROUNDING);
}

/* The worst leaves more air, or takes more strokes. */
static bool is_worse(const struct order_trial *a, const struct order_trial *b)
{
    if (fabs(a->air_left - b->air_left) > ORDER_AIR_EQUAL) {
        return a->air_left > b->air_left;
    }
    return a->strokes > b->strokes * (1.0 + ROUNDING);
}

/* The next order in lexical order; false after the last. */
static bool next_order(int *order, int count)
{
    int at = count - 2;
    while (at >= 0 && order[at] >= order[at + 1]) {
        at--;
    }
    if (at < 0) {
        return false;
    }
    int with = count - 1;
    while (order[with] <= order[at]) {
        with--;
    }
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

/* All orders that were tried, in lexical order. */
struct tried {
    struct order_trial *trials;
    int *orders; /* things each */
};

static void try_all(const struct order_search *search, struct order_found *found,
                    struct tried *tried, struct arena *arena)
{
    int order[SEARCH_MOST], all = 1;
    for (int i = 0; i < search->things; i++) {
        order[i] = i;
        all *= i + 1;
    }
    size_t things = (size_t)search->things;
    tried->trials = ARENA_ARRAY(arena, (size_t)all, struct order_trial);
    tried->orders = ARENA_ARRAY(arena, (size_t)all * things + 1, int);
    do {
        struct thing_order one = {order, search->things};
        struct order_trial trial = search->judge(&one, search->with);
        memcpy(&tried->orders[(size_t)found->tried * things], order, things * sizeof *order);
        tried->trials[found->tried] = trial;
        if (found->tried == 0 || order_better(&trial, &found->best)) {
            found->best = trial;
        }
        if (found->tried == 0 || is_worse(&trial, &found->worst)) {
            found->worst = trial;
            found->worst_order.items = &tried->orders[(size_t)found->tried * things];
            found->worst_order.count = search->things;
        }
        found->tried++;
    } while (next_order(order, search->things));
}

/* Of the orders and proposals that stand beside the best, the one with the fewest strokes: fluid
 * that flows back is not drawn off, but takes strokes. */
static void pick(const struct order_search *search, const struct tried *tried,
                 struct order_found *found)
{
    bool any = false;
    for (int i = 0; i < search->proposal_count; i++) {
        if (order_stands(&found->proposals[i], &found->best, 0) &&
            (!any || found->proposals[i].strokes < found->chosen.strokes)) {
            found->chosen = found->proposals[i];
            found->order = search->proposals[i];
            any = true;
        }
    }
    for (int i = 0; i < found->tried; i++) {
        if (order_stands(&tried->trials[i], &found->best, 0) &&
            (!any || tried->trials[i].strokes < found->chosen.strokes * (1.0 - ROUNDING))) {
            found->chosen = tried->trials[i];
            found->order = (struct thing_order){&tried->orders[i * search->things], search->things};
            any = true;
        }
    }
}

struct order_found order_find(const struct order_search *search, struct arena *arena)
{
    struct order_found found = {.proposal = -1};
    struct tried tried = {.trials = NULL};
    found.proposals = ARENA_ARRAY(arena, (size_t)search->proposal_count, struct order_trial);
    if (search->things <= SEARCH_MOST) {
        try_all(search, &found, &tried, arena);
    }
    for (int i = 0; i < search->proposal_count; i++) {
        found.proposals[i] = search->judge(&search->proposals[i], search->with);
        bool first = found.tried == 0 && i == 0;
        if (first || order_better(&found.proposals[i], &found.best)) {
            found.best = found.proposals[i];
        }
        if (first || is_worse(&found.proposals[i], &found.worst)) {
            found.worst = found.proposals[i];
            found.worst_order = search->proposals[i];
        }
    }
    pick(search, &tried, &found);
    double most = found.chosen.strokes * (1.0 + MORE_FLUID_MOST) + (search->slack > 0 ? 1 : 0);
    for (int i = 0; i < search->proposal_count && found.proposal < 0; i++) {
        if (order_stands(&found.proposals[i], &found.best, search->slack) &&
            found.proposals[i].strokes <= most * (1.0 + ROUNDING)) {
            found.proposal = i;
            found.order = search->proposals[i];
            found.chosen = found.proposals[i];
        }
    }
    return found;
}

struct order_trial bleed_try(const struct purge_net *net, const struct purge_way *way,
                             const struct purge_turn *turns, int count, struct purge_room *room)
{
    const struct purge_result *result = purge_run(net, way, turns, count, room);
    struct order_trial trial = {
        .fluid = result->fluid, .strokes = result->strokes, .air_left = result->air_left};
    for (int i = 0; i < result->turn_count; i++) {
        trial.gave_up = trial.gave_up || result->turns[i].gave_up;
    }
    return trial;
}

static int leg_of(const struct purge_net *net, int nipple)
{
    const struct purge_nipple *at = &net->nipples[nipple];
    return at->pot >= 0 ? net->pots[at->pot].leg : at->leg;
}

double bleed_air_on_way(const struct purge_net *net, int nipple)
{
    double air = 0;
    for (int leg = leg_of(net, nipple); leg >= 0; leg = net->legs[leg].above) {
        air += net->legs[leg].air;
    }
    for (int pot = net->nipples[nipple].pot; pot >= 0; pot = net->pots[pot].behind) {
        air += net->pots[pot].air;
    }
    return air;
}

double bleed_run_to(const struct purge_net *net, int nipple)
{
    double run = 0;
    for (int leg = leg_of(net, nipple); leg >= 0; leg = net->legs[leg].above) {
        run += net->legs[leg].length;
    }
    return run;
}

/* Lengths and volumes that come out of a sum differ in their last digits. */
static int compare_about(double a, double b, double equal)
{
    return a > b + equal ? -1 : b > a + equal ? 1 : 0;
}

static int compare_by_rule(const struct purge_net *net, int a, int b)
{
    bool upstream_a = net->nipples[a].pot < 0, upstream_b = net->nipples[b].pot < 0;
    if (upstream_a != upstream_b) {
        return upstream_a ? -1 : 1;
    }
    if (upstream_a) {
        return compare_about(bleed_run_to(net, b), bleed_run_to(net, a), 1e-6);
    }
    int by_air = compare_about(bleed_air_on_way(net, a), bleed_air_on_way(net, b), 1e-12);
    return by_air != 0 ? by_air : compare_about(bleed_run_to(net, a), bleed_run_to(net, b), 1e-6);
}

/* The nipple of the pot that stands behind this one's in the same part, so that this one is passed
 * by what goes there; -1. */
static int passed_by(const struct purge_net *net, const bool *shut, int nipple)
{
    int pot = net->nipples[nipple].pot;
    for (int n = 0; pot >= 0 && n < net->nipple_count; n++) {
        int other = net->nipples[n].pot;
        if (other >= 0 && net->pots[other].behind == pot && !(shut != NULL && shut[n])) {
            return n;
        }
    }
    return -1;
}

int bleed_rule_order(const struct purge_net *net, const bool *shut, struct purge_turn *into)
{
    int count = 0;
    for (int n = 0; n < net->nipple_count; n++) {
        if ((shut != NULL && shut[n]) || passed_by(net, shut, n) >= 0) {
            continue; /* near halves are put behind their far ones below */
        }
        int at = count++;
        while (at > 0 && compare_by_rule(net, n, into[at - 1].nipple) < 0) {
            into[at] = into[at - 1];
            at--;
        }
        into[at] = (struct purge_turn){n, -1};
    }
    for (int n = 0; n < net->nipple_count; n++) {
        int far = shut != NULL && shut[n] ? -1 : passed_by(net, shut, n);
        for (int at = 0; far >= 0 && at < count; at++) {
            if (into[at].nipple == far) {
                memmove(&into[at + 3], &into[at + 1], (size_t)(count - at - 1) * sizeof *into);
                into[at + 1] = (struct purge_turn){n, -1};
                into[at + 2] = (struct purge_turn){far, -1};
                count += 2;
                break;
            }
        }
    }
    return count;
}

/* A net as a judge of orders sees it: things are the nipples that may be opened. */
struct net_judge {
    const struct purge_net *net;
    const struct purge_way *way;
    const int *nipple_of; /* by thing */
    struct purge_turn *turns;
    struct purge_room *room;
};

static struct order_trial judge_net(const struct thing_order *order, void *with)
{
    struct net_judge *judge = with;
    for (int i = 0; i < order->count; i++) {
        judge->turns[i] = (struct purge_turn){judge->nipple_of[order->items[i]], -1};
    }
    return bleed_try(judge->net, judge->way, judge->turns, order->count, judge->room);
}

const char *bleed_departure(const struct purge_net *net, int first, int rule)
{
    bool in_legs_apart = false;
    double shared = 0;
    for (int leg = 0; leg < net->leg_count; leg++) {
        bool on_first = false, on_rule = false;
        for (int at = leg_of(net, first); at >= 0; at = net->legs[at].above) {
            on_first = on_first || at == leg;
        }
        for (int at = leg_of(net, rule); at >= 0; at = net->legs[at].above) {
            on_rule = on_rule || at == leg;
        }
        if (on_first && on_rule) {
            shared += net->legs[leg].air;
        } else if (on_rule && net->legs[leg].air > ORDER_AIR_EQUAL) {
            in_legs_apart = true;
        }
    }
    bool shorter = purge_path_volume(net, first) < purge_path_volume(net, rule);
    return shared > ORDER_AIR_EQUAL && !in_legs_apart && shorter ? "shared-air-shortest-way"
                                                                 : "tried-cheaper";
}

struct bleed_choice bleed_best_order(const struct purge_net *net, const struct purge_way *way,
                                     const bool *shut, struct arena *arena)
{
    size_t room = 2 * (size_t)net->nipple_count + 2;
    struct bleed_choice choice = {.turns = ARENA_ARRAY(arena, room, struct purge_turn)};
    choice.count = bleed_rule_order(net, shut, choice.turns);
    int *nipple_of = ARENA_ARRAY(arena, room, int), *rule = ARENA_ARRAY(arena, room, int);
    int things = 0;
    for (int n = 0; n < net->nipple_count; n++) {
        if (!(shut != NULL && shut[n])) {
            nipple_of[things++] = n;
        }
    }
    for (int i = 0; i < choice.count; i++) {
        while (nipple_of[rule[i]] != choice.turns[i].nipple) {
            rule[i]++;
        }
    }
    struct thing_order proposal = {rule, choice.count};
    struct net_judge judge = {net, way, nipple_of, ARENA_ARRAY(arena, room, struct purge_turn),
                              purge_room(net, (int)room, false, arena)};
    struct order_search search = {things, judge_net, &judge, &proposal, 1, 0};
    if (things == 0) {
        choice.by_rule = true;
        return choice;
    }
    struct order_found found = order_find(&search, arena);
    choice.by_rule = found.proposal == 0;
    choice.rule = found.proposals[0];
    choice.chosen = found.chosen;
    choice.best = found.best;
    choice.worst = found.worst;
    choice.tried = found.tried;
    if (!choice.by_rule) {
        choice.reason =
            bleed_departure(net, nipple_of[found.order.items[0]], choice.turns[0].nipple);
        choice.count = found.order.count;
        for (int i = 0; i < choice.count; i++) {
            choice.turns[i] = (struct purge_turn){nipple_of[found.order.items[i]], -1};
        }
    }
    return choice;
}
