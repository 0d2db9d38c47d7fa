#include "advice/rules/rule_stop.h"

#include <math.h>

#include "advice/figures/part_bore.h"
#include "advice/common/phrases.h"
#include "advice_car.h"

/* Losing nothing gives most; without help or with a circuit lost less; with the only circuit lost
 * nothing. */
static void a_lost_circuit_and_lost_help_weaken_the_stop(void **state)
{
    (void)state;
    struct advice_car car = advice_car_load("systems/village-van.ini", NULL);
    double whole = rule_stop(car.system, car.network, true, -1, car.arena).m_s2;
    double bare = rule_stop(car.system, car.network, false, -1, car.arena).m_s2;
    double lost = rule_stop(car.system, car.network, true, 0, car.arena).m_s2;
    assert_true(whole > bare && whole > lost && lost > 0 && bare > 0);
    advice_car_finish(&car);
    car = advice_car_load("systems/servo-estate.ini", NULL);
    near(rule_stop(car.system, car.network, true, 0, car.arena).m_s2, 0, 1e-9);
    advice_car_finish(&car);
}

static void a_bore_is_found_on_every_cylinder_and_on_nothing_else(void **state)
{
    (void)state;
    struct advice_car car = advice_car_load("systems/village-van.ini", NULL);
    const struct part *parts = car.system->parts;
    near(part_bore(&parts[advice_part(&car, "brake master")]).m, 0.0254 * 13 / 16, 1e-9);
    near(part_bore(&parts[advice_part(&car, "front left disc")]).m, 0.048, 1e-9);
    near(part_bore(&parts[advice_part(&car, "rear left drum")]).m, 0.0254 * 3 / 4, 1e-9);
    near(part_bore(&parts[advice_part(&car, "clutch slave")]).m, 0.0254 * 7 / 8, 1e-9);
    near_unknown(part_bore(&parts[advice_part(&car, "front tee")]).m);
    advice_car_finish(&car);
}

static void names_are_joined_as_people_write_them(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct name_list names = name_list_room(arena, 3);
    static const char *const words[] = {"a", "b", "c"};
    static const char *const joined[] = {"a", "a and b", "a, b and c"};
    for (int i = 0; i < 3; i++) {
        names.items[names.count++] = words[i];
        assert_string_equal(name_list_words(arena, &names), joined[i]);
    }
    arena_destroy(arena);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_lost_circuit_and_lost_help_weaken_the_stop),
        cmocka_unit_test(a_bore_is_found_on_every_cylinder_and_on_nothing_else),
        cmocka_unit_test(names_are_joined_as_people_write_them),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
