#include "proof_tables.h"

#include <math.h>
#include <string.h>

static double ml(double m3)
{
    return m3 * 1e6;
}

static void rival_line(struct text *into, const char *name, const struct rival *rival,
                       struct arena *arena)
{
    text_add(into, "| %s | %d | %s | %s | %.0f %% | %d | %d |\n", name, rival->dirty,
             tally_percent(arena, rival->fluid, rival->clear),
             tally_percent(arena, rival->strokes, rival->clear), 100 * rival->most_fluid,
             rival->worse, rival->better);
}

static void rivals(struct text *into, const struct tally *tally, struct arena *arena)
{
    text_add(into, "| planner | leaves more air than the best | fluid above the best, mean | "
                   "strokes above the fewest, mean | fluid, most | worse than the plan | better |\n"
                   "| --- | --- | --- | --- | --- | --- | --- |\n");
    rival_line(into, "the plan: rule, then simulation", &tally->plan, arena);
    rival_line(into, "the rule alone", &tally->rule, arena);
    rival_line(into, "cheapest of far first, near first, most air first", &tally->simple, arena);
    rival_line(into, "by dice", &tally->random, arena);
    rival_line(into, "nearest first", &tally->nearest, arena);
    rival_line(into, "farthest first", &tally->farthest, arena);
}

static void spread_line(struct text *into, const char *name, const struct tally *tally,
                        struct arena *arena)
{
    text_add(into, "| %s | %d | %s | %.0f %% | %s | %.0f %% | %d | %d | %d |\n", name, tally->nets,
             tally_percent(arena, tally->fluid_spread, tally->nets), 100 * tally->most_fluid_spread,
             tally_percent(arena, tally->stroke_spread, tally->nets),
             100 * tally->most_stroke_spread, tally->dear, tally->some_leave_air,
             tally->nets - tally->differences[DIFFERS_NOT]);
}

static void spread_head(struct text *into, const char *first)
{
    text_add(into,
             "| %s | nets | fluid, worst above best: mean | most | strokes: mean | most | "
             "20 %% or more | some order leaves more air | plan not the best |\n"
             "| --- | --- | --- | --- | --- | --- | --- | --- | --- |\n",
             first);
}

static void car_table(const struct proof *proof, struct text *into, struct arena *arena)
{
    spread_head(into, "car");
    for (int i = 0; i < proof->car_count; i++)
        spread_line(into, proof->cars[i].title, &proof->cars[i].tally, arena);
    spread_line(into, "all cars", &proof->all_cars, arena);
}

static void made_up_table(const struct proof *proof, struct text *into, struct arena *arena)
{
    spread_head(into, "networks made up");
    for (int i = 0; i < AIR_COUNT; i++)
        spread_line(into, air_words((enum how_air_came_in)i), &proof->by_air[i], arena);
    spread_line(into, "nipple held open till flow stops", &proof->by_practice[0], arena);
    spread_line(into, "nipple shut under pressure", &proof->by_practice[1], arena);
    spread_line(into, "all", &proof->made_up, arena);
}

static void toy_cell(struct text *into, const struct trial *trial)
{
    if (trial->gave_up)
        text_add(into, " | it does not come, %.1f mL of air stay", ml(trial->air));
    else
        text_add(into, " | %.0f strokes, %.1f mL", trial->strokes, ml(trial->fluid));
}

static void toy_table(const struct proof *proof, struct text *into)
{
    static const char *const words[TOY_COUNT] = {
        "held open till the flow stops",
        "shut under pressure, which the flow makes",
        "shut under pressure, 0.3 bar in the closed branch",
        "shut under pressure, 1 bar in the closed branch",
    };
    text_add(into, "| practice | far first | near first |\n| --- | --- | --- |\n");
    for (int i = 0; i < TOY_COUNT; i++) {
        text_add(into, "| %s", words[i]);
        toy_cell(into, &proof->toy[i].far_first);
        toy_cell(into, &proof->toy[i].near_first);
        text_add(into, " |\n");
    }
}

static void differences(const struct tally *tally, struct text *into)
{
    for (int i = 0; i < DIFFERENCES; i++)
        text_add(into, "- %s: %d (by rule alone: %d; by the cheapest of three: %d)\n",
                 difference_words((enum difference)i), tally->differences[i],
                 tally->rule_differences[i], tally->simple_differences[i]);
}

void proof_summary(const struct proof *proof, struct text *into, struct arena *arena)
{
    const struct tally *made = &proof->made_up;
    text_add(into, "\n");
    car_table(proof, into, arena);
    text_add(into, "\n");
    made_up_table(proof, into, arena);
    text_add(into, "\nThe plan against all orders, networks made up:\n");
    differences(made, into);
    text_add(into, "\nThe plan against all orders, ready cars:\n");
    differences(&proof->all_cars, into);
    text_add(into, "\nPlanners, networks made up:\n");
    rivals(into, made, arena);
    text_add(into, "\nPlanners, ready cars:\n");
    rivals(into, &proof->all_cars, arena);
    text_add(into, "\nThe toy tree:\n");
    toy_table(proof, into);
    text_add(into,
             "\n%ld orders run over %d networks and %ld over %d nets of cars (%d refused: more "
             "than six nipples); the plan left the rule on %d and %d. Worst above best by 20 %% or "
             "more: %d in fluid, %d in strokes, %d in either. Volumes out by %.1e mL at most.\n",
             made->orders, made->nets, proof->all_cars.orders, proof->all_cars.nets, proof->refused,
             made->departures, proof->all_cars.departures, made->dear_fluid, made->dear_strokes,
             made->dear, ml(fmax(made->worst_balance, proof->all_cars.worst_balance)));
}

void proof_page(const struct proof *proof, struct text *into, struct arena *arena)
{
    const struct tally *made = &proof->made_up;
    text_add(into,
             "## Is the order right?\n\n"
             "Planner and judge share one simulation. What follows shows that the plan finds what "
             "this model has\nto give; it does not show that the model is true. In ideal plug flow "
             "the order is neutral: the same\nvolume has to go out whatever the order. What is "
             "left of a difference comes from closed branches\nthat breathe, from film and rising "
             "air, and from whole strokes.\n\n"
             "All orders of up to six nipples were run for every circuit of the ready cars (all "
             "dry, master off,\neach brake new; both practices) and for %lu networks made up by "
             "dice (seed %lu). Best is the order\nthat leaves the least air, then draws the least "
             "fluid. An order that leaves more air than the best\ncounts apart: it stops early and "
             "is no bargain. Made by `tests/proof/order_proof --page`.\n\n",
             proof->networks, proof->seed);
    car_table(proof, into, arena);
    text_add(into, "\n");
    made_up_table(proof, into, arena);
    text_add(into,
             "\nOn %d of the %d networks the dearest order lies 20 %% or more above the cheapest "
             "in fluid or strokes\n(%d in fluid, %d in strokes); on %d some order leaves air that "
             "the best gets out. The plan on them:\n\n",
             made->dear, made->nets, made->dear_fluid, made->dear_strokes, made->some_leave_air);
    differences(made, into);
    text_add(into, "\n");
    rivals(into, made, arena);
    text_add(into,
             "\nThe rule alone takes the way with most air first and breaks ties by the "
             "longer run. Where the air\n"
             "stands in the shared pipe that is the dearest way out, so by itself the rule "
             "does worse than dice:\n"
             "no plan rests on it unless the simulation finds no order that draws a "
             "twentieth less. Of orders\n"
             "that draw off as little, within that twentieth, the plan looks for few strokes: "
             "where nipples are\nshut under pressure, fluid that flows back costs strokes and is "
             "not drawn off.\n");
    const struct tally *cars = &proof->all_cars;
    text_add(
        into,
        "\nNo search would be needed where the best of three orders did as well: far first, near "
        "first, most air\nfirst, the cheapest by the simulation. On the ready cars it does, on "
        "%d of %d nets within 5 %% and on the\nrest within a stroke. On the networks made up "
        "it does on %d of %d within 5 %%, on %d within a stroke; on\n%d it leaves more air, on "
        "%d it draws over 5 %% more, at most %.0f %%. So the search stays: a car is not\nalways "
        "one of ours.\n",
        cars->simple_differences[DIFFERS_NOT], cars->nets, made->simple_differences[DIFFERS_NOT],
        made->nets, made->simple_differences[DIFFERS_STROKE], made->simple.dirty,
        made->simple_differences[DIFFERS_WORSE] - made->simple.dirty,
        100 * made->simple.most_fluid);
    text_add(into,
             "\nThe toy tree has a shared pipe of 20 mL, a near branch of 12 mL and a far one of "
             "22 mL, bore\n3.34 mm, level, all full of air; a stroke is 8 mL in 1.5 s.\n\n");
    toy_table(proof, into);
}

static bool claim(FILE *complaints, bool holds, const char *words)
{
    if (!holds)
        fprintf(complaints, "does not hold: %s\n", words);
    return holds;
}

bool proof_holds(const struct proof *proof, FILE *complaints)
{
    const struct tally *made = &proof->made_up, *cars = &proof->all_cars;
    const struct toy_run *open = &proof->toy[TOY_OPEN], *shut = &proof->toy[TOY_SHUT_LOW];
    bool holds = claim(complaints, !proof->failed && proof->refused == 0, "every car is judged");
    holds &= claim(complaints, made->nets == (int)proof->networks && cars->nets > 0,
                   "every network is judged");
    holds &= claim(complaints, made->worst_balance < 1e-12 && cars->worst_balance < 1e-12,
                   "volume is kept to a millionth of a millilitre");
    holds &= claim(complaints,
                   made->differences[DIFFERS_WORSE] == 0 && cars->differences[DIFFERS_WORSE] == 0,
                   "where the plan is not the best, the difference is explained");
    /* a tenth of the networks, as 100 of 1,000 */
    holds &= claim(complaints, made->dear >= (int)(proof->networks / 10),
                   "on a tenth of the networks the dearest order costs 20 % or more");
    holds &= claim(complaints,
                   made->nearest.worse > made->nearest.better &&
                       made->random.worse > made->random.better,
                   "nearest first and dice do worse than the plan");
    holds &= claim(complaints, cars->simple_differences[DIFFERS_WORSE] == 0,
                   "on the ready cars the best of three orders stands beside the search's");
    holds &= claim(complaints, made->simple_differences[DIFFERS_WORSE] > 0,
                   "on the networks made up the search finds better than the best of three orders");
    holds &=
        claim(complaints,
              made->nearest.fluid / made->nearest.clear > made->plan.fluid / made->plan.clear &&
                  made->random.fluid / made->random.clear > made->plan.fluid / made->plan.clear,
              "nearest first and dice draw more on average than the plan");
    holds &= claim(complaints,
                   !open->far_first.gave_up && !open->near_first.gave_up &&
                       fabs(open->far_first.strokes - open->near_first.strokes) <= 1,
                   "with the nipple held open the toy tree takes as many strokes either way");
    holds &= claim(complaints,
                   !shut->far_first.gave_up && (shut->near_first.gave_up ||
                                                shut->near_first.strokes > shut->far_first.strokes),
                   "shut under 0.3 bar the toy tree is cheaper far first");
    return holds;
}
