#include "advice/bleeding/bleed_asked.h"

#include <string.h>

#include "advice_car.h"

static int asked(const struct advice_car *car, const char *words, const char **trouble)
{
    struct nipple *order;
    *trouble = "";
    return bleed_asked_order(car->system, words, car->arena, &order, trouble);
}

static void words_that_leave_one_nipple_are_enough(void **state)
{
    (void)state;
    struct advice_car car = advice_car_load("systems/village-van.ini", NULL);
    struct nipple *order;
    const char *trouble = NULL;
    assert_int_equal(bleed_asked_order(car.system, "Rear left,the front right wheel, clutch slave,",
                                       car.arena, &order, &trouble),
                     3);
    assert_int_equal(order[0].part, advice_part(&car, "rear left drum"));
    assert_int_equal(order[1].part, advice_part(&car, "front right disc"));
    assert_int_equal(order[2].part, advice_part(&car, "clutch slave"));
    advice_car_finish(&car);
}

static void of_several_nipples_of_a_part_the_name_or_number_must_be_said(void **state)
{
    (void)state;
    struct advice_car car = advice_car_load("systems/hill-coupe.ini", NULL);
    struct nipple *order;
    const char *trouble = NULL;
    assert_int_equal(bleed_asked_order(car.system, "front left inner, front left disc nipple 1",
                                       car.arena, &order, &trouble),
                     2);
    assert_int_equal(order[0].index, 1);
    assert_int_equal(order[1].index, 0);
    assert_int_equal(asked(&car, "front left", &trouble), 0);
    assert_non_null(strstr(trouble, "front left disc outer nipple, front left disc inner nipple"));
    advice_car_finish(&car);
}

static void a_mistyped_nipple_is_told_its_nearest(void **state)
{
    (void)state;
    struct advice_car car = advice_car_load("systems/village-van.ini", NULL);
    const char *trouble;
    assert_int_equal(asked(&car, "rear lefd", &trouble), 0);
    assert_non_null(strstr(trouble, "nearest is \"rear left\""));
    assert_int_equal(asked(&car, "tail lamp", &trouble), 0);
    assert_non_null(strstr(trouble, "There are: front left disc"));
    assert_int_equal(asked(&car, " , ", &trouble), 0);
    assert_non_null(strstr(trouble, "names no nipple"));
    assert_int_equal(asked(&car, "the nipple", &trouble), 0);
    advice_car_finish(&car);
}

static void methods_are_known_by_their_words(void **state)
{
    (void)state;
    assert_int_equal(bleed_asked_method("reverse"), 4);
    assert_int_equal(bleed_asked_method("prayer"), -1);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(words_that_leave_one_nipple_are_enough),
        cmocka_unit_test(of_several_nipples_of_a_part_the_name_or_number_must_be_said),
        cmocka_unit_test(a_mistyped_nipple_is_told_its_nearest),
        cmocka_unit_test(methods_are_known_by_their_words),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
