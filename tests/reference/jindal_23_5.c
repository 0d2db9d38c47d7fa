/* U. C. Jindal, Machine Design, example 23-5, page 621: four drums stop a car. Read in the FOSSEE
 * transcription.
 *
 * 1100 kg, 65 km/h to rest in 4 s, wheel radius 0.22 m, four drums of 12 kg, 460 J/(kg K), rotating
 * parts add 10 %. Printed: 36.11 m; 49 307.97 J for each brake; 300.40 N m; 8.93 K. */
#include "physics/heat.h"

#include <math.h>

#include "support/near.h"
#include "support/outside.h"

static const struct outside source = {"T1", "U. C. Jindal, Machine Design, example 23-5, p. 621",
                                      "transcription"};

static struct energy one_brake(void)
{
    struct energy all = heat_of_stop((struct mass){1100}, (struct speed){65 / 3.6},
                                     (struct speed){0}, (struct share){0.10});
    return (struct energy){all.j / 4};
}

static double distance(void)
{
    double speed = 65 / 3.6;
    return vehicle_stopping_distance((struct speed){speed}, (struct acceleration){speed / 4},
                                     (struct duration){0}, (struct duration){0})
        .m;
}

static void each_brake_takes_a_quarter_of_the_energy(void **state)
{
    (void)state;
    outside_printed(&source, "way to stop", "m", 36.11, distance(), 0.005);
    outside_printed(&source, "energy into each brake", "J", 49307.97, one_brake().j, 0.005);
    outside_again(&source, "energy into each brake, again", "J", 49307.967, one_brake().j, 5e-4);
}

/* Torque times the angle that the wheel turns is that energy. */
static void the_torque_works_it_off(void **state)
{
    (void)state;
    double torque = one_brake().j / (distance() / 0.22);
    outside_printed(&source, "torque of each brake", "N m", 300.40, torque, 0.005);
    outside_again(&source, "torque of each brake, again", "N m", 300.3993, torque, 5e-5);
}

static void each_drum_warms_by_nine_kelvin(void **state)
{
    (void)state;
    double rise = heat_rise(one_brake(), (struct mass){12}, 460).k;
    outside_printed(&source, "warming of a drum, 460 J/(kg K)", "K", 8.93, rise, 0.005);
    outside_again(&source, "warming of a drum, again", "K", 8.932603, rise, 5e-7);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(each_brake_takes_a_quarter_of_the_energy),
        cmocka_unit_test(the_torque_works_it_off),
        cmocka_unit_test(each_drum_warms_by_nine_kelvin),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
