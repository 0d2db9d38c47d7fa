#include "made_up.h"

#include <math.h>

#define MM 1e-3
#define ML 1e-6

enum { MOST_LEGS = 32, MOST_NIPPLES = 6 };

const char *air_words(enum how_air_came_in air)
{
    static const char *const words[AIR_COUNT] = {"all dry", "one wheel renewed", "master off",
                                                 "joints opened", "froth"};
    return words[air];
}

static struct purge_net *start(struct arena *arena)
{
    struct purge_net *net = ARENA_NEW(arena, struct purge_net);
    net->legs = ARENA_ARRAY(arena, MOST_LEGS, struct purge_leg);
    net->pots = ARENA_ARRAY(arena, MOST_LEGS, struct purge_pot);
    net->nipples = ARENA_ARRAY(arena, MOST_NIPPLES, struct purge_nipple);
    /* glycol ether fluid at 20 C; tests here compare orders, not fluids */
    net->density = 1050;
    net->viscosity = 15e-6;
    net->tension = 0.033;
    return net;
}

static int add_leg(struct purge_net *net, int above, double length, double bore, double climb)
{
    struct purge_leg *leg = &net->legs[net->leg_count];
    *leg = (struct purge_leg){.above = above, .part = -1, .bore = bore, .length = length};
    leg->volume = acos(-1.0) / 4 * bore * bore * length;
    leg->climb = fmax(-0.9 * length, fmin(0.9 * length, climb));
    return net->leg_count++;
}

static int add_pot(struct purge_net *net, int leg, int behind, double volume, double trapped)
{
    net->pots[net->pot_count] = (struct purge_pot){
        .leg = leg, .behind = behind, .part = -1, .volume = volume, .trapped = trapped * volume};
    return net->pot_count++;
}

static void add_nipple(struct purge_net *net, int pot, int leg)
{
    if (pot >= 0)
        leg = net->pots[pot].leg;
    net->nipples[net->nipple_count++] = (struct purge_nipple){pot, leg, {-1, -1}};
}

static double pipe_bore(struct dice *dice)
{
    double throw = dice_share(dice);
    return throw < 0.8 ? 3.34 * MM : throw < 0.92 ? 4.93 * MM : 6.51 * MM;
}

static double trapped_share(struct dice *dice)
{
    return dice_happens(dice, 0.12) ? dice_between(dice, 0.02, 0.3) : 0;
}

/* One wheel: pipe, hose, and what it ends in. */
static void add_wheel(struct purge_net *net, struct dice *dice, int tee, double pipe, int room)
{
    int line = add_leg(net, tee, pipe, dice_happens(dice, 0.95) ? 3.34 * MM : 4.93 * MM,
                       dice_between(dice, -0.3, 0.25));
    if (dice_happens(dice, 0.7))
        line = add_leg(net, line, dice_between(dice, 0.22, 0.48), 3.2 * MM,
                       dice_between(dice, -0.15, 0.1));
    if (dice_happens(dice, 0.5)) {
        add_nipple(net, add_pot(net, line, -1, dice_between(dice, 1, 4) * ML, trapped_share(dice)),
                   -1);
        return;
    }
    double volume = dice_between(dice, 20, 60) * ML;
    if (room < 2 || !dice_happens(dice, 0.2)) {
        add_nipple(net, add_pot(net, line, -1, volume, trapped_share(dice)), -1);
        return;
    }
    int near = add_pot(net, line, -1, volume / 2, trapped_share(dice));
    int far = add_pot(net, line, near, volume / 2, trapped_share(dice));
    add_nipple(net, near, -1);
    add_nipple(net, far, -1);
}

static void add_plumbing(struct purge_net *net, struct dice *dice)
{
    int wanted = 2 + dice_pick(dice, MOST_NIPPLES - 1);
    int tee = add_leg(net, -1, dice_between(dice, 0.2, 3.5), pipe_bore(dice),
                      dice_between(dice, -0.6, 0.1));
    if (dice_happens(dice, 0.1))
        add_nipple(net, -1, tee);
    while (net->nipple_count < wanted && net->leg_count < MOST_LEGS - 8) {
        int here = 1 + dice_pick(dice, 3);
        for (int i = 0; i < here && net->nipple_count < wanted; i++)
            add_wheel(net, dice, tee, dice_between(dice, 0.2, 2.2), wanted - net->nipple_count);
        if (net->nipple_count < wanted)
            tee = add_leg(net, tee, dice_between(dice, 0.3, 3.0), pipe_bore(dice),
                          dice_between(dice, -0.4, 0.3));
    }
}

static void air_at_wheel(struct purge_net *net, int nipple)
{
    int leg = net->nipples[nipple].leg;
    net->legs[leg].air = net->legs[leg].volume;
    for (int i = 0; i < net->pot_count; i++)
        if (net->pots[i].leg == leg)
            net->pots[i].air = net->pots[i].volume;
}

static void let_air_in(struct made_up *made, struct dice *dice)
{
    struct purge_net *net = made->net;
    switch (made->air) {
    case AIR_DRY:
        for (int i = 0; i < net->leg_count; i++)
            net->legs[i].air = net->legs[i].volume;
        for (int i = 0; i < net->pot_count; i++)
            net->pots[i].air = net->pots[i].volume;
        break;
    case AIR_WHEEL:
        air_at_wheel(net, dice_pick(dice, net->nipple_count));
        break;
    case AIR_MASTER:
        net->legs[0].air = dice_between(dice, 0.2, 1) * net->legs[0].volume;
        break;
    case AIR_JOINTS:
        for (int i = 0; i < net->leg_count; i++)
            if (dice_happens(dice, 0.4))
                net->legs[i].air = dice_between(dice, 0.05, 1) * net->legs[i].volume;
        for (int i = 0; i < net->pot_count; i++)
            if (dice_happens(dice, 0.5))
                net->pots[i].air = dice_between(dice, 0.05, 1) * net->pots[i].volume;
        break;
    case AIR_FROTH:
        for (int i = 0; i < net->leg_count; i++)
            net->legs[i].air = dice_between(dice, 0.02, 0.1) * net->legs[i].volume;
        for (int i = 0; i < net->pot_count; i++)
            net->pots[i].air = dice_between(dice, 0.02, 0.1) * net->pots[i].volume;
        break;
    case AIR_COUNT:
        break;
    }
}

static struct purge_way pedal_way(bool shut_under_pressure, double stroke)
{
    return (struct purge_way){.method = METHOD_PEDAL,
                              .shut_under_pressure = shut_under_pressure,
                              .stroke = stroke,
                              .stroke_time = 1.5,
                              .pause_time = 3,
                              .push = NAN,
                              .reservoir = NAN,
                              .reserve = 0,
                              .clear_strokes = 3,
                              .most_strokes = 60};
}

struct made_up made_up_of(uint64_t seed, uint64_t number, struct arena *arena)
{
    struct dice dice = dice_start(seed, number);
    struct made_up made = {.net = start(arena)};
    made.way = pedal_way(dice_happens(&dice, 0.5), dice_between(&dice, 4, 12) * ML);
    made.way.stroke_time = dice_between(&dice, 0.8, 2.5);
    made.way.pause_time = dice_between(&dice, 1, 4);
    made.air = (enum how_air_came_in)dice_pick(&dice, AIR_COUNT);
    add_plumbing(made.net, &dice);
    let_air_in(&made, &dice);
    return made;
}

struct made_up made_up_toy(bool shut_under_pressure, double tee_pressure, struct arena *arena)
{
    struct made_up made = {.net = start(arena), .air = AIR_DRY};
    const double bore = 3.34 * MM, area = acos(-1.0) / 4 * bore * bore;
    int trunk = add_leg(made.net, -1, 20 * ML / area, bore, 0);
    int near = add_leg(made.net, trunk, 12 * ML / area, bore, 0);
    int far = add_leg(made.net, trunk, 22 * ML / area, bore, 0);
    add_nipple(made.net, -1, near);
    add_nipple(made.net, -1, far);
    for (int i = 0; i < made.net->leg_count; i++)
        made.net->legs[i].air = made.net->legs[i].volume;
    made.way = pedal_way(shut_under_pressure, 8 * ML);
    made.way.tee_pressure = tee_pressure;
    made.way.most_strokes = 400;
    return made;
}
