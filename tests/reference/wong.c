/* J. Y. Wong, Theory of Ground Vehicles, example in the section on braking. From memory. Wheelbase
 * 2.87 m, centre of mass 1.27 m behind the front axle and 0.508 m high, 21.24 kN, 60 % of the
 * braking in front, rolling resistance 0.02. Recomputed: share of load on the front, which the
 * braking should follow, and the braking rate at which each axle locks. The book, from memory: the
 * rear first on the road of friction 0.8, the front first on that of 0.2. The book lets the brakes
 * alone reach the friction and adds rolling to the deceleration; here rolling is within the grip,
 * so that the grip is friction and rolling together. */
#include "physics/grip_use.h"

#include "support/near.h"
#include "support/outside.h"

static const struct outside book = {
    "V5", "J. Y. Wong, Theory of Ground Vehicles, example in the section on braking",
    "from memory"};

static struct vehicle wong_car(double rolling)
{
    return (struct vehicle){.mass = {21240 / 9.80665},
                            .front_share = {1.60 / 2.87},
                            .wheelbase = {2.87},
                            .centre_height = {0.508},
                            .rolling = {rolling}};
}

static void the_front_carries_more_on_the_better_road(void **state)
{
    (void)state;
    struct vehicle car = wong_car(0.02);
    outside_again(&book, "load on the front at 0.82 g", "%", 70.263,
                  vehicle_axle_loads(&car, 0.82).front.n / 212.40, 5e-4);
    outside_again(&book, "load on the front at 0.22 g", "%", 59.643,
                  vehicle_axle_loads(&car, 0.22).front.n / 212.40, 5e-4);
}

static struct grip_use use_at(const struct vehicle *car, double z)
{
    double braking = (z - car->rolling.value) * 21240;
    return grip_use(car, (struct force){0.6 * braking}, (struct force){0.4 * braking});
}

/* Braking rate at which the brakes of an axle ask for all the friction; halving between nothing
 * and 1.2 g. */
static double locks_at(const struct vehicle *car, double friction, bool rear)
{
    double low = car->rolling.value, high = 1.2;
    for (int i = 0; i < 60; i++) {
        double z = (low + high) / 2;
        struct grip_use use = use_at(car, z);
        if ((rear ? use.rear : use.front) < friction + car->rolling.value)
            low = z;
        else
            high = z;
    }
    return low;
}

static void rolling_resistance_stops_the_car_a_little_sooner_than_the_grip(void **state)
{
    (void)state;
    struct vehicle car = wong_car(0.02);
    outside_again(&book, "front locks, friction 0.8", "g", 0.99912, locks_at(&car, 0.8, false),
                  5e-6);
    outside_again(&book, "rear locks, friction 0.8", "g", 0.66840, locks_at(&car, 0.8, true), 5e-6);
    outside_again(&book, "front locks, friction 0.2", "g", 0.218736, locks_at(&car, 0.2, false),
                  5e-7);
    outside_again(&book, "rear locks, friction 0.2", "g", 0.221639, locks_at(&car, 0.2, true),
                  5e-7);
}

static void without_rolling_resistance_both_axles_lock_together_once(void **state)
{
    (void)state;
    struct vehicle car = wong_car(0);
    struct grip_use use = use_at(&car, 0.24016);
    near(use.front, use.rear, 1e-5);
    assert_true(use_at(&car, 0.20).front > use_at(&car, 0.20).rear);
    assert_true(use_at(&car, 0.30).front < use_at(&car, 0.30).rear);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_front_carries_more_on_the_better_road),
        cmocka_unit_test(rolling_resistance_stops_the_car_a_little_sooner_than_the_grip),
        cmocka_unit_test(without_rolling_resistance_both_axles_lock_together_once),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
