#include "input/ports.h"

#include <string.h>

#include "base/text.h"
#include "car_text.h"
#include "support/cmocka_all.h"

/* The small car with a tandem master and what its run calls the outlet. */
static struct car_text read_tandem(const char *outlet, const char *outlets)
{
    struct arena *arena = arena_create();
    struct text text = text_start(arena);
    text_add(&text,
             "[vehicle]\ntitle = Test\n[brake master]\ntype = tandem\nbore = 3/4 in\n%s"
             "[front left disc]\ncaliper = fixed\nbore = 2 of 48 mm\n"
             "[runs]\nfeed = brake master%s, 0.6 m pipe, front left disc\n",
             outlets, outlet);
    struct car_text car = car_read(text.items);
    arena_destroy(arena);
    return car;
}

static const char named[] = "primary outlets = front left, rear right\n"
                            "secondary outlets = front right, rear left\n";

static void expect(const char *outlet, const char *outlets, int chamber, const char *name)
{
    struct car_text car = read_tandem(outlet, outlets);
    assert_non_null(car.system);
    assert_true(car_joined(&car, chamber == 0 ? "brake master" : "brake master:1", "feed pipe"));
    const char *found = car.system->connections[0].a.outlet;
    if (name)
        assert_string_equal(found, name);
    else
        assert_null(found);
    car_finish(&car);
}

static void outlets_are_found_by_their_names(void **state)
{
    (void)state;
    expect(".front left", named, 0, "front left");
    expect(".Left  front", named, 0, "front left");
    expect(".rear left", named, 1, "rear left");
}

static void primary_and_secondary_are_always_understood(void **state)
{
    (void)state;
    expect(".primary", named, 0, NULL);
    expect(".secondary", named, 1, NULL);
    expect(".secondary", "", 1, NULL);
}

static void an_outlet_that_is_not_there_is_told_of_with_those_that_are(void **state)
{
    (void)state;
    struct car_text car = read_tandem(".front", named);
    assert_null(car.system);
    assert_int_equal(car.messages.count, 1);
    assert_string_equal(car.messages.items[0].id, "no-such-outlet");
    assert_non_null(
        strstr(car.messages.items[0].words, "front left, rear right, front right, rear left"));
    car_finish(&car);
}

static void a_tandem_master_needs_an_outlet_and_a_single_one_does_not(void **state)
{
    (void)state;
    struct car_text car = read_tandem("", named);
    assert_true(car_has(&car, "which-outlet"));
    car_finish(&car);
    car = car_read_more("");
    assert_non_null(car.system);
    car_finish(&car);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(outlets_are_found_by_their_names),
        cmocka_unit_test(primary_and_secondary_are_always_understood),
        cmocka_unit_test(an_outlet_that_is_not_there_is_told_of_with_those_that_are),
        cmocka_unit_test(a_tandem_master_needs_an_outlet_and_a_single_one_does_not),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
