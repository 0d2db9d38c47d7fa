#include "parts/pedal.h"

#include <math.h>

#include "support/near.h"

static struct pedal pedal(double ratio, double pad, double rod)
{
    return (struct pedal){.ratio = {ratio},
                          .pad_arm = {pad},
                          .rod_arm = {rod},
                          .efficiency = {0.9},
                          .bar_first = {NAN},
                          .bar_second = {NAN}};
}

static double ratio_of(double ratio, double pad, double rod)
{
    struct pedal p = pedal(ratio, pad, rod);
    return pedal_ratio(&p).value;
}

static void a_given_ratio_wins_over_the_arms(void **state)
{
    (void)state;
    near(ratio_of(5.5, 0.3, 0.1), 5.5, 0);
    near(ratio_of(NAN, 0.3, 0.075), 4, 1e-12);
}

static void no_ratio_is_made_up(void **state)
{
    (void)state;
    near_unknown(ratio_of(NAN, NAN, 0.1));
    near_unknown(ratio_of(NAN, 0.3, NAN));
    near_unknown(ratio_of(NAN, 0.3, 0));
    near_unknown(ratio_of(NAN, -0.3, 0.1));
    near_unknown(ratio_of(NAN, 0, 0.1));
    near_unknown(ratio_of(0, 0.3, 0.1));
    near_unknown(ratio_of(-4, 0.3, 0.1));
}

static double rod_force(double efficiency, double foot)
{
    struct pedal p = pedal(4, NAN, NAN);
    p.efficiency.value = efficiency;
    return pedal_rod_force(&p, (struct force){foot}).n;
}

static void the_rod_gets_the_foot_times_ratio_less_the_loss(void **state)
{
    (void)state;
    near(rod_force(0.9, 100), 360, 1e-12);
    near(rod_force(1, 100), 400, 1e-12);
    near(rod_force(1, 0), 0, 0);
}

static void the_rod_force_is_unknown_outside_its_ranges(void **state)
{
    (void)state;
    near_unknown(rod_force(0, 100));
    near_unknown(rod_force(1.01, 100));
    near_unknown(rod_force(NAN, 100));
    near_unknown(rod_force(0.9, -1));
    near_unknown(rod_force(0.9, NAN));
    struct pedal p = pedal(NAN, NAN, NAN);
    near_unknown(pedal_rod_force(&p, (struct force){100}).n);
}

static void a_return_spring_takes_its_force_first(void **state)
{
    (void)state;
    struct pedal p = pedal(4, NAN, NAN); /* of efficiency 0.9 */
    p.return_spring.n = 25;
    near(pedal_rod_force(&p, (struct force){100}).n, 0.9 * 4 * 75, 1e-12);
    near(pedal_rod_force(&p, (struct force){25}).n, 0, 0);
    near(pedal_rod_force(&p, (struct force){24}).n, 0, 0);
    near(pedal_rod_force(&p, (struct force){26}).n, 3.6, 1e-12);
    p.return_spring.n = -1;
    near_unknown(pedal_rod_force(&p, (struct force){100}).n);
    p.return_spring.n = NAN;
    near_unknown(pedal_rod_force(&p, (struct force){100}).n);
}

static double end_of(double travel, double stop)
{
    struct pedal p = pedal(4, NAN, NAN);
    p.travel.m = travel;
    p.stop.m = stop;
    return pedal_end(&p).m;
}

static void the_way_ends_at_a_stop_or_at_the_floor(void **state)
{
    (void)state;
    near(end_of(0.15, 0.12), 0.12, 0);
    near(end_of(0.11, 0.12), 0.11, 0);
    near(end_of(0.15, NAN), 0.15, 0);
    near(end_of(NAN, 0.12), 0.12, 0);
    near_unknown(end_of(NAN, NAN));
}

static double bar_share(double first, double second)
{
    struct pedal p = pedal(4, NAN, NAN);
    p.bar_first.m = first;
    p.bar_second.m = second;
    return pedal_bar_share(&p).of_1;
}

/* The rod nearer to the pivot gets more: at 20 and 30 mm three fifths. */
static void the_nearer_rod_of_a_balance_bar_gets_more(void **state)
{
    (void)state;
    near(bar_share(0.020, 0.030), 0.6, 1e-12);
    near(bar_share(0, 0.030), 1, 0);
    near(bar_share(0.030, 0), 0, 0);
}

static void an_unmeasured_bar_shares_evenly_and_a_bad_one_not_at_all(void **state)
{
    (void)state;
    near(bar_share(NAN, NAN), 0.5, 0);
    near(bar_share(0.03, NAN), 0.5, 0);
    near_unknown(bar_share(0, 0));
    near_unknown(bar_share(-0.02, 0.03));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_given_ratio_wins_over_the_arms),
        cmocka_unit_test(no_ratio_is_made_up),
        cmocka_unit_test(the_rod_gets_the_foot_times_ratio_less_the_loss),
        cmocka_unit_test(the_rod_force_is_unknown_outside_its_ranges),
        cmocka_unit_test(a_return_spring_takes_its_force_first),
        cmocka_unit_test(the_way_ends_at_a_stop_or_at_the_floor),
        cmocka_unit_test(the_nearer_rod_of_a_balance_bar_gets_more),
        cmocka_unit_test(an_unmeasured_bar_shares_evenly_and_a_bad_one_not_at_all),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
