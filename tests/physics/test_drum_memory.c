#include "physics/drum_memory.h"

#include <math.h>
#include <string.h>

#include "support/driven_car.h"
#include "support/near.h"

/* Whatever is moved of a drum, what the room remembers is what a fresh room works out. */
static void no_value_of_a_drum_is_forgotten(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    struct arena *arena = driven.car.arena;
    int at = driven.usual.rear_left, moved = 0;
    struct part *part = car_part(&driven.car, at);
    const struct part said = *part;
    struct solution *room = solution_room(driven.car.system, driven.network, arena);
    size_t count;
    const struct key *rows = key_table(KIND_DRUM, &count);
    const double by[] = {1.01, 0.5, 2, NAN};
    static const enum shoe_anchor anchors[] = {ANCHOR_SLIDING, ANCHOR_PIN};
    for (size_t a = 0; a < sizeof anchors / sizeof *anchors; a++)
        for (size_t k = 0; k < count; k++)
            for (size_t m = 0; m < sizeof by / sizeof *by; m++) {
                if (rows[k].form != FORM_QUANTITY)
                    continue;
                *part = said;
                part->as.drum.anchor = anchors[a];
                double base = key_value(part, &rows[k]);
                drum_remembered(driven.car.system, at, room);
                key_set(part, &rows[k], base == 0 ? by[m] / 10 : base * by[m]);
                struct solution *fresh = solution_room(driven.car.system, driven.network, arena);
                const struct drum_memory *kept = drum_remembered(driven.car.system, at, room);
                const struct drum_memory *anew = drum_remembered(driven.car.system, at, fresh);
                const double pairs[][2] = {{kept->forward, anew->forward},
                                           {kept->reverse, anew->reverse},
                                           {kept->most, anew->most},
                                           {kept->least, anew->least},
                                           {kept->sensitivity, anew->sensitivity}};
                for (size_t i = 0; i < sizeof pairs / sizeof *pairs; i++)
                    if (memcmp(&pairs[i][0], &pairs[i][1], sizeof(double)) != 0)
                        fail_msg("%s moves a factor that is remembered", rows[k].name);
                moved++;
            }
    assert_true(moved > 150);
    driven_finish(&driven);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(no_value_of_a_drum_is_forgotten)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
