/* V. B. Bhandari, Design of Machine Elements, example 12.14: a drum brake stops a flywheel. Read in
 * the FOSSEE transcription, which notes that the answer printed in the book is wrong.
 *
 * Flywheel 100 kg, radius of gyration 350 mm, 500 rpm; drum 5 kg, 460 J/(kg K).
 * Answer of the transcription: 7.300885 K. */
#include "physics/heat.h"

#include <math.h>

#include "support/near.h"
#include "support/outside.h"

static const struct outside source = {
    "T2", "V. B. Bhandari, Design of Machine Elements, example 12.14", "transcription"};

/* All of the mass runs at the radius of gyration. */
static void the_flywheel_warms_the_drum(void **state)
{
    (void)state;
    double speed = 500 / 60.0 * 2 * acos(-1) * 0.350;
    struct energy heat = heat_of_stop((struct mass){100}, (struct speed){speed}, (struct speed){0},
                                      (struct share){0});
    outside_printed(&source, "warming of the drum, 460 J/(kg K)", "K", 7.300885,
                    heat_rise(heat, (struct mass){5}, 460).k, 5e-7);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(the_flywheel_warms_the_drum)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
