#include "input/order.h"

#include "base/text.h"
#include "car_text.h"
#include "support/cmocka_all.h"

static struct car_text read_order(const char *order)
{
    struct arena *arena = arena_create();
    struct car_text car = car_read_more(
        text_print(arena,
                   "[rear left drum]\nshoes = two leading\nbore = 1 in\nnipples = 2\n"
                   "nipple names = outer, inner\n[rear right drum]\nshoes = two leading\n"
                   "bore = 1 in\nnipples = 2\n[bleed order]\norder = %s\n",
                   order));
    arena_destroy(arena);
    return car;
}

static void expect(const struct car_text *car, size_t at, const char *part, int nipple)
{
    assert_non_null(car->system);
    assert_true(at < car->system->own_order.count);
    const struct nipple *item = &car->system->own_order.items[at];
    assert_string_equal(car->system->parts[item->part].name, part);
    assert_int_equal(item->index, nipple);
}

static void nipples_are_found_by_name_and_by_number(void **state)
{
    (void)state;
    struct car_text car = read_order("rear left drum inner nipple, left rear drum outer, "
                                     "rear right drum nipple 2, rear right drum 1, "
                                     "front left disc, front right disc bleed nipple");
    expect(&car, 0, "rear left drum", 1);
    expect(&car, 1, "rear left drum", 0);
    expect(&car, 2, "rear right drum", 1);
    expect(&car, 3, "rear right drum", 0);
    expect(&car, 4, "front left disc", 0);
    expect(&car, 5, "front right disc", 0);
    assert_int_equal(car.system->own_order.place.line, 29);
    car_finish(&car);
}

static void a_nipple_may_come_up_again(void **state)
{
    (void)state;
    struct car_text car = read_order("rear left drum outer, rear left drum inner, "
                                     "rear left drum outer");
    expect(&car, 2, "rear left drum", 0);
    car_finish(&car);
}

static void the_words_of_a_nipple_read_back(void **state)
{
    (void)state;
    struct car_text car = read_order("rear left drum inner, rear right drum 2, front left disc");
    const struct system *system = car.system;
    struct text words = text_start(car.arena);
    for (size_t i = 0; i < 3; i++)
        text_add(&words, "%s%s", i > 0 ? ", " : "",
                 order_words(&system->parts[system->own_order.items[i].part],
                             system->own_order.items[i].index, car.arena));
    assert_string_equal(words.items,
                        "rear left drum inner nipple, rear right drum nipple 2, front left disc");
    struct car_text again = read_order(words.items);
    assert_null(car_difference(car.system, again.system, car.arena));
    car_finish(&again);
    car_finish(&car);
}

static void a_car_without_a_section_has_no_order(void **state)
{
    (void)state;
    struct car_text car = car_read_more("");
    assert_non_null(car.system);
    assert_int_equal(car.system->own_order.count, 0);
    assert_int_equal(car.system->own_order.place.line, 0);
    car_finish(&car);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(nipples_are_found_by_name_and_by_number),
        cmocka_unit_test(a_nipple_may_come_up_again),
        cmocka_unit_test(the_words_of_a_nipple_read_back),
        cmocka_unit_test(a_car_without_a_section_has_no_order),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
