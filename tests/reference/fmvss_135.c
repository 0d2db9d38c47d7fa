/* 49 CFR 571.135, S7.5: from 100 km/h to rest within 70 m at no more than 500 N; read in a
 * regulator's interpretation letter. From memory: S = 0.10 V + 0.0060 V2, and 0.0158 V2 with a
 * circuit lost or no assistance (S7.10, S7.11), S in m, V in km/h; they give just 70 m and 168 m.
 * The first term is the way in 0.36 s, the second a mean deceleration of 1/(25.92 * 0.0060). */
#include "parts/vehicle.h"

#include "support/near.h"
#include "support/outside.h"

static const struct outside rule = {"V6", "49 CFR 571.135, S7.5", "quoted"};
static const struct outside formula = {"V6", "49 CFR 571.135, S7.5, S7.10, S7.11, the formulas",
                                       "from memory"};

static double way(double km_h, double deceleration)
{
    return vehicle_stopping_distance((struct speed){km_h / 3.6},
                                     (struct acceleration){deceleration}, (struct duration){0.36},
                                     (struct duration){0})
        .m;
}

static void the_decelerations_of_the_rule_stop_the_car_in_its_distances(void **state)
{
    (void)state;
    double service = 1 / (25.92 * 0.0060), failed = 1 / (25.92 * 0.0158);
    outside_printed(&rule, "way from 100 km/h", "m", 70, way(100, service), 0.005);
    outside_again(&formula, "mean deceleration", "m/s2", 6.43, service, 0.005);
    outside_again(&formula, "way from 100 km/h, circuit lost", "m", 168, way(100, failed), 0.005);
    for (double v = 40; v <= 160; v += 20) {
        near_rel(way(v, service), 0.10 * v + 0.0060 * v * v, 1e-9);
        near_rel(way(v, failed), 0.10 * v + 0.0158 * v * v, 1e-9);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_decelerations_of_the_rule_stop_the_car_in_its_distances)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
