/* The list for a pedal that does not come firm holds what can be on the car and nothing else. */
#include "advice/job/soft.h"

#include <string.h>

#include "advice_car.h"

static const struct soft_line *line(const struct advice_car *car, const char *id)
{
    for (int i = 0; i < car->result->soft.count; i++) {
        if (strcmp(car->result->soft.items[i].row->id, id) == 0) {
            return &car->result->soft.items[i];
        }
    }
    return NULL;
}

static bool says(const struct advice_car *car, const char *word)
{
    for (int i = 0; i < car->result->soft.count; i++) {
        const struct soft_line *of = &car->result->soft.items[i];
        if (strstr(of->first, word) != NULL || strstr(of->row->feel, word) != NULL ||
            (of->then != NULL && strstr(of->then, word) != NULL)) {
            return true;
        }
    }
    return false;
}

static void a_row_is_there_only_where_the_car_has_what_it_is_about(void **state)
{
    (void)state;
    static const struct {
        const char *word;
        bool van, bike, old; /* discs and drums, two circuits, servo; discs; drums, one circuit */
    } words[] = {{"shoe", true, false, true},         {"disc", true, true, false},
                 {"servo", true, false, false},       {"clutch", true, false, true},
                 {"one chamber", true, false, false}, {"cable", true, false, true}};
    struct advice_car van = advice_car_load("systems/village-van.ini", NULL);
    struct advice_car bike = advice_car_load("systems/twin-disc-motorcycle.ini", NULL);
    struct advice_car old = advice_car_load("systems/little-two-seater.ini", NULL);
    for (size_t i = 0; i < sizeof words / sizeof *words; i++) {
        assert_int_equal(says(&van, words[i].word), words[i].van);
        assert_int_equal(says(&bike, words[i].word), words[i].bike);
        assert_int_equal(says(&old, words[i].word), words[i].old);
    }
    assert_non_null(line(&van, "one-circuit"));
    assert_null(line(&bike, "one-circuit"));
    assert_null(line(&old, "one-circuit"));
    advice_car_finish(&van);
    advice_car_finish(&bike);
    advice_car_finish(&old);
}

/* Old hoses are renewed, new ones pinched. */
static void new_hoses_are_not_to_be_renewed(void **state)
{
    (void)state;
    struct advice_car old = advice_car_load("systems/village-van.ini", NULL);
    struct advice_car new = advice_car_after(
        "systems/village-van.ini",
        "[work]\ncar = Village van\ndate = 2026-11-20\n"
        "renewed = front right hose, front left hose, rear feed hose, clutch line hose\n");
    assert_true(says(&old, "renew the old hoses"));
    assert_false(says(&new, "renew the old hoses"));
    assert_true(says(&new, "pinch one new hose"));
    advice_car_finish(&old);
    advice_car_finish(&new);
}

static void each_row_says_what_comes_first(void **state)
{
    (void)state;
    struct advice_car van = advice_car_load("systems/village-van.ini", NULL);
    assert_true(van.result->soft.count >= 10);
    for (int i = 0; i < van.result->soft.count; i++) {
        assert_true(strlen(van.result->soft.items[i].first) > 10);
        assert_true(strlen(van.result->soft.items[i].row->feel) > 5);
    }
    advice_car_finish(&van);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_row_is_there_only_where_the_car_has_what_it_is_about),
        cmocka_unit_test(new_hoses_are_not_to_be_renewed),
        cmocka_unit_test(each_row_says_what_comes_first),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
