#include "parts/parking_brake.h"

#include <math.h>

#include "support/near.h"

static struct parking hand_brake(void)
{
    return (struct parking){.works = {NULL, NULL, 2},
                            .lever_ratio = {6},
                            .shoe_ratio = {5},
                            .cable_loss = {0.25},
                            .effort = {400}};
}

/* 400 * 6 * 0.75 = 1800 N, half of it each side, five times that at the shoe. */
static void two_brakes_share_the_pull(void **state)
{
    (void)state;
    struct parking p = hand_brake();
    near(parking_cable_force(&p).n, 900, 1e-9);
    near(parking_shoe_force(&p).n, 4500, 1e-9);
    p.works.count = 1;
    near(parking_cable_force(&p).n, 1800, 1e-9);
    p.cable_loss.of_1 = 0;
    near(parking_cable_force(&p).n, 2400, 1e-9);
    p.effort.n = 0;
    near(parking_cable_force(&p).n, 0, 0);
}

static void force_is_unknown_outside_its_ranges(void **state)
{
    (void)state;
    const struct {
        size_t field;
        double value;
    } bad[] = {
        {offsetof(struct parking, lever_ratio), NAN}, {offsetof(struct parking, effort), NAN},
        {offsetof(struct parking, cable_loss), NAN},  {offsetof(struct parking, cable_loss), 1},
        {offsetof(struct parking, cable_loss), -0.1}, {offsetof(struct parking, effort), -1},
        {offsetof(struct parking, lever_ratio), 0}};
    for (size_t i = 0; i < sizeof bad / sizeof bad[0]; i++) {
        struct parking p = hand_brake();
        *(double *)((char *)&p + bad[i].field) = bad[i].value;
        near_unknown(parking_cable_force(&p).n);
        near_unknown(parking_shoe_force(&p).n);
    }
    struct parking p = hand_brake();
    p.works.count = 0;
    near_unknown(parking_cable_force(&p).n);
    p = hand_brake();
    p.shoe_ratio.value = NAN;
    near_unknown(parking_shoe_force(&p).n);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(two_brakes_share_the_pull),
        cmocka_unit_test(force_is_unknown_outside_its_ranges),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
