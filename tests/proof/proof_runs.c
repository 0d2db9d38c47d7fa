#include <math.h>

#include "cars.h"
#include "proof_tables.h"

static const char *order_words(const struct trial *trial, struct arena *arena)
{
    struct text words = text_start(arena);
    for (int i = 0; i < trial->count; i++)
        text_add(&words, "%s%d", i > 0 ? "-" : "", trial->order[i] + 1);
    return words.items;
}

static void list_trial(struct text *listing, const struct trial *trial, struct arena *arena)
{
    text_add(listing, " %7.1f %4.0f %6.2f %-11s", trial->fluid * 1e6, trial->strokes,
             trial->air * 1e6, order_words(trial, arena));
}

static void list_head(struct text *listing)
{
    text_add(listing,
             "%-50s n  | best: mL, strokes, air mL, order | plan                          | "
             "worst                         | spread: fluid, strokes; orders that leave air\n",
             "");
}

static void list_contest(struct text *listing, const char *name, const struct contest *contest,
                         struct arena *arena)
{
    const struct verdict *verdict = &contest->verdict;
    text_add(listing, "%-50.50s %d |", name, verdict->nipples);
    list_trial(listing, &verdict->best, arena);
    text_add(listing, "|");
    list_trial(listing, &contest->plan, arena);
    text_add(listing, "|");
    list_trial(listing, &verdict->worst, arena);
    text_add(listing, "| %5.1f %% %5.1f %% %4d%s%s\n", 100 * verdict->fluid_spread,
             100 * verdict->stroke_spread, verdict->left_air,
             contest->difference != DIFFERS_NOT ? "  " : "",
             contest->difference != DIFFERS_NOT ? difference_words(contest->difference) : "");
}

static const char *practice_words(bool shut_under_pressure)
{
    return shut_under_pressure ? "shut" : "open";
}

static void run_car(struct proof *proof, const struct ready_car *car, struct tally *tally,
                    bool every, struct text *listing, struct arena *arena)
{
    for (int c = 0; c < car->network->circuit_count; c++)
        for (int which = 0; which < CAR_WHEEL + JUDGE_MOST; which++)
            for (int shut = 0; shut < 2; shut++) {
                struct arena_mark mark = arena_mark(arena);
                const char *words = "";
                struct purge_net *net = cars_net(car, c, which, &words, arena);
                if (net == NULL || net->nipple_count < 2) {
                    arena_release(arena, mark);
                    continue;
                }
                struct purge_way way = cars_way(car, c, shut == 1);
                struct contest contest =
                    contest_of(net, &way, (unsigned long)which,
                               cars_plan(car, net, c, which, shut == 1, arena), arena);
                if (contest.verdict.orders == 0) {
                    proof->refused++;
                    arena_release(arena, mark);
                    continue;
                }
                tally_add(tally, &contest);
                tally_add(&proof->all_cars, &contest);
                const char *name =
                    text_print(listing->arena, "%s, %s, %s", car->network->circuits[c].name, words,
                               practice_words(shut == 1));
                if (every || contest.difference != DIFFERS_NOT)
                    list_contest(listing, name, &contest, listing->arena);
                arena_release(arena, mark);
            }
}

void proof_cars(struct proof *proof, const char *root, bool every, struct text *listing,
                struct arena *arena)
{
    int count = 0;
    struct ready_car *cars = cars_read(root, arena, &count);
    struct arena *scratch = arena_create();
    proof->failed = cars == NULL || scratch == NULL;
    if (proof->failed) {
        arena_destroy(scratch);
        return;
    }
    proof->cars = ARENA_ARRAY(arena, (size_t)count + 1, struct car_tally);
    proof->car_count = count;
    list_head(listing);
    for (int i = 0; i < count; i++) {
        proof->cars[i].title = cars[i].title;
        if (every)
            text_add(listing, "%s\n", cars[i].title);
        run_car(proof, &cars[i], &proof->cars[i].tally, every, listing, scratch);
    }
    arena_destroy(scratch);
}

void proof_made_up(struct proof *proof, bool every, struct text *listing, struct arena *arena)
{
    struct arena *scratch = arena_create();
    if (scratch == NULL) {
        proof->failed = true;
        return;
    }
    for (unsigned long number = 1; number <= proof->networks; number++) {
        struct arena_mark mark = arena_mark(scratch);
        struct made_up made = made_up_of(proof->seed, number, scratch);
        struct contest contest =
            contest_of(made.net, &made.way, number, (struct given_plan){0}, scratch);
        tally_add(&proof->made_up, &contest);
        tally_add(&proof->by_air[made.air], &contest);
        tally_add(&proof->by_practice[made.way.shut_under_pressure], &contest);
        if (every || contest.difference != DIFFERS_NOT)
            list_contest(listing,
                         text_print(arena, "network %lu, %s, %s", number, air_words(made.air),
                                    practice_words(made.way.shut_under_pressure)),
                         &contest, arena);
        arena_release(scratch, mark);
    }
    arena_destroy(scratch);
}

void proof_toy(struct proof *proof, struct arena *arena)
{
    static const int near_first[] = {0, 1}, far_first[] = {1, 0};
    static const double pressures[TOY_COUNT] = {0, 0, 0.3e5, 1e5};
    for (int i = 0; i < TOY_COUNT; i++) {
        struct made_up toy = made_up_toy(i != TOY_OPEN, pressures[i], arena);
        struct purge_room *room = purge_room(toy.net, 2, false, arena);
        proof->toy[i] = (struct toy_run){
            .far_first = judge_order(toy.net, &toy.way, far_first, room),
            .near_first = judge_order(toy.net, &toy.way, near_first, room),
        };
    }
}

static void list_net(struct text *listing, const struct made_up *made)
{
    const struct purge_net *net = made->net;
    text_add(listing, "%s, nipple %s, stroke %.1f mL\n", air_words(made->air),
             made->way.shut_under_pressure ? "shut under pressure" : "held open",
             made->way.stroke * 1e6);
    for (int i = 0; i < net->leg_count; i++)
        text_add(listing,
                 "  leg %d on %d: bore %.2f mm, %.2f m, climbs %+.2f m, %.1f mL, air %.1f mL\n", i,
                 net->legs[i].above, net->legs[i].bore * 1e3, net->legs[i].length,
                 net->legs[i].climb, net->legs[i].volume * 1e6, net->legs[i].air * 1e6);
    for (int i = 0; i < net->pot_count; i++)
        text_add(listing, "  pot %d at leg %d behind %d: %.1f mL, trapped %.1f, air %.1f mL\n", i,
                 net->pots[i].leg, net->pots[i].behind, net->pots[i].volume * 1e6,
                 net->pots[i].trapped * 1e6, net->pots[i].air * 1e6);
    for (int i = 0; i < net->nipple_count; i++)
        text_add(listing, "  nipple %d opens pot %d, leg %d\n", i + 1, net->nipples[i].pot,
                 net->nipples[i].leg);
}

void proof_only(unsigned long seed, unsigned long number, struct text *listing, struct arena *arena)
{
    struct made_up made = made_up_of(seed, number, arena);
    struct purge_room *room = purge_room(made.net, JUDGE_MOST_TURNS, false, arena);
    struct trial *trials = ARENA_ARRAY(arena, JUDGE_MOST_ORDERS, struct trial);
    struct contest contest = contest_of(made.net, &made.way, number, (struct given_plan){0}, arena);
    struct verdict verdict = judge_all(made.net, &made.way, room, trials);
    list_net(listing, &made);
    list_head(listing);
    list_contest(listing, text_print(arena, "network %lu", number), &contest, arena);
    text_add(listing, "rule:   ");
    list_trial(listing, &contest.rule, arena);
    text_add(listing, "\nnearest:");
    list_trial(listing, &contest.nearest, arena);
    text_add(listing, "\nall orders:\n");
    for (int i = 0; i < verdict.orders; i++) {
        list_trial(listing, &trials[i], arena);
        text_add(listing, "%s\n", trials[i].gave_up ? " gave up" : "");
    }
}
