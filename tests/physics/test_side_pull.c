#include "physics/side_pull.h"

#include <math.h>

#include "support/driven_car.h"
#include "support/near.h"

static double left_of_disc(struct bores bores, struct bores second)
{
    struct part part = {.kind = KIND_DISC};
    part.as.disc.bores = bores;
    part.as.disc.second_bores = second;
    return side_pull_left(&part, NULL);
}

/* Areas go with the squares: 34 mm twice and 38 mm twice, less one of 38 mm. */
static void a_caliper_keeps_the_other_pistons(void **state)
{
    (void)state;
    const struct bores none = {0, {NAN}};
    near(left_of_disc((struct bores){1, {48e-3}}, none), 0, 0);
    near(left_of_disc((struct bores){2, {48e-3}}, none), 0.5, 1e-12);
    near(left_of_disc((struct bores){4, {38e-3}}, none), 0.75, 1e-12);
    near(left_of_disc((struct bores){2, {34e-3}}, (struct bores){2, {38e-3}}),
         (2 * 34.0 * 34 + 38 * 38) / (2 * 34 * 34 + 2 * 38 * 38), 1e-12);
    near_unknown(left_of_disc(none, none));
}

static double left_of_drum(enum cylinder_layout cylinder, enum shoe_layout shoes)
{
    struct part part = {.kind = KIND_DRUM};
    part.as.drum = (struct drum){.shoes = shoes,
                                 .cylinder = cylinder,
                                 .diameter = {0.2},
                                 .pin_distance = {0.08},
                                 .tip_distance = {0.08},
                                 .lining_arc = {110 * 3.14159265358979 / 180},
                                 .friction = {0.38},
                                 .anchor = ANCHOR_SLIDING};
    struct shoe_factors factors = drum_shoe_factors(&part.as.drum, part.as.drum.friction, true);
    return side_pull_left(&part, &factors);
}

/* Shoe factors 1.477623 leading and 0.519005 trailing: half arc 55 deg, arms 0.8 of the radius,
 * summed in Octave with the lifted pieces taken away. */
static void a_drum_keeps_the_shoe_of_its_other_piston(void **state)
{
    (void)state;
    near(left_of_drum(CYLINDER_TWO_PISTONS, SHOES_LEADING_TRAILING), 0.519005 / 1.996628, 1e-6);
    near(left_of_drum(CYLINDER_SLIDING, SHOES_TWO_LEADING), 0, 0);
    near(left_of_drum(CYLINDER_ONE_EACH, SHOES_TWO_LEADING), 0.5, 1e-12);
    near(left_of_drum(CYLINDER_ONE_EACH, SHOES_LEADING_TRAILING), 0.519005 / (1.477623 + 0.519005),
         1e-6);
    near_unknown(left_of_drum(CYLINDER_NOT_SAID, SHOES_TWO_LEADING));
}

/* Fixed calipers of two pistons keep half; drums keep their weaker shoe. The car turns by
 * the difference on half of 1.3 m. */
static void a_seized_piston_pulls_the_car_to_a_side(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    struct solution *room = solution_room(driven.car.system, driven.network, driven.car.arena);
    struct state usual = state_usual();
    solve(driven.car.system, driven.network, &usual, room);
    struct side_pull front = side_pull_seized(driven.car.system, room, AXLE_FRONT);
    struct side_pull rear = side_pull_seized(driven.car.system, room, AXLE_REAR);
    near(front.difference.of_1, 0.5, 1e-12);
    near_rel(front.yaw.nm, 0.5 * room->brakes[driven.usual.front_left].force.n * 0.65, 1e-12);
    near(rear.difference.of_1, 1.477623 / 1.996628, 1e-6);
    near_rel(rear.yaw.nm, 1.477623 / 1.996628 * room->brakes[driven.usual.rear_left].force.n * 0.65,
             1e-6);
    driven_unsay(&driven, driven.usual.vehicle, "track");
    near_unknown(side_pull_seized(driven.car.system, room, AXLE_FRONT).yaw.nm);
    near(side_pull_seized(driven.car.system, room, AXLE_FRONT).difference.of_1, 0.5, 1e-12);
    driven_finish(&driven);
}

/* Friction 10 % up on one side and down on the other: a disc keeps 0.9/1.1; drums with leading and
 * trailing shoes S(0.342)/S(0.418), 1.261095 + 0.489485 and 1.715702 + 0.545598 (summed in Octave).
 */
static void drums_make_more_of_unequal_friction_than_discs(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    struct solution *room = solution_room(driven.car.system, driven.network, driven.car.arena);
    struct state usual = state_usual();
    solve(driven.car.system, driven.network, &usual, room);
    struct side_pull front = side_pull_friction(driven.car.system, room, AXLE_FRONT);
    struct side_pull rear = side_pull_friction(driven.car.system, room, AXLE_REAR);
    near(front.difference.of_1, 1 - 0.9 / 1.1, 1e-12);
    near_rel(front.yaw.nm, 0.2 * room->brakes[driven.usual.front_left].force.n * 0.65, 1e-12);
    near(rear.difference.of_1, 1 - (1.261095 + 0.489485) / (1.715702 + 0.545598), 2e-6);
    assert_true(rear.difference.of_1 > 1.1 * front.difference.of_1);
    driven_say(&driven, driven.usual.front_left, "friction spread", 0);
    driven_say(&driven, driven.usual.front_right, "friction spread", 0);
    near(side_pull_friction(driven.car.system, room, AXLE_FRONT).difference.of_1, 0, 1e-12);
    driven_unsay(&driven, driven.usual.front_right, "friction spread");
    near_unknown(side_pull_friction(driven.car.system, room, AXLE_FRONT).difference.of_1);
    driven_finish(&driven);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_caliper_keeps_the_other_pistons),
        cmocka_unit_test(a_drum_keeps_the_shoe_of_its_other_piston),
        cmocka_unit_test(a_seized_piston_pulls_the_car_to_a_side),
        cmocka_unit_test(drums_make_more_of_unequal_friction_than_discs),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
