#include "input/part_rules.h"

#include <string.h>

#include "base/text.h"
#include "car_text.h"
#include "support/cmocka_all.h"

/* Two discs more, at the rear, by these lines. */
static bool takes(const char *lines)
{
    struct arena *arena = arena_create();
    struct car_text car = car_read_more(text_print(
        arena, "r = front tee, 1 m pipe, rear tee\nb = rear tee, rear disc\n[rear disc]\n%s",
        lines));
    bool fine = car.system != NULL;
    assert_true(fine || car_has(&car, "not-a-count"));
    car_finish(&car);
    arena_destroy(arena);
    return fine;
}

static void the_pistons_of_a_fixed_caliper_are_counted_and_even(void **state)
{
    (void)state;
    assert_true(takes("caliper = fixed\nbore = 2 of 48 mm\n"));
    assert_true(takes("caliper = fixed\nbore = 4 of 36 mm\n"));
    assert_false(takes("caliper = fixed\nbore = 48 mm\n"));
    assert_false(takes("caliper = fixed\npistons = 54 mm\n"));
    assert_false(takes("caliper = fixed\nbore = 1 of 48 mm\n"));
    assert_false(takes("caliper = fixed\nbore = 3 of 48 mm\n"));
    /* one large against two small, 2 x 34^2 = 48^2 */
    assert_true(takes("caliper = fixed\nbore = 1 of 48 mm\nsecond bore = 2 of 34 mm\n"));
    assert_false(takes("caliper = fixed\nbore = 48 mm\nsecond bore = 2 of 34 mm\n"));
    assert_true(takes("caliper = fixed\nbore = ?\n"));
}

static void a_sliding_caliper_has_one_piston_or_more(void **state)
{
    (void)state;
    assert_true(takes("caliper = sliding\nbore = 48 mm\n"));
    assert_true(takes("caliper = sliding\nbore = 1 of 48 mm\n"));
    assert_true(takes("caliper = sliding\nbore = 3 of 27 mm\n"));
}

static bool remarks(const char *vehicle)
{
    struct arena *arena = arena_create();
    struct source source = source_below(arena, "systems/village-van.ini");
    const char *car = text_copy_part(arena, source.bytes, source.count);
    const char *mass = strstr(car, "mass = 1320 kg");
    struct car_text read = car_read(text_print(arena, "%.*s%s%s", (int)(mass - car), car, vehicle,
                                               mass + strlen("mass = 1320 kg")));
    assert_non_null(read.system);
    bool any = car_has(&read, "unusual-value");
    car_finish(&read);
    arena_destroy(arena);
    return any;
}

static void a_mass_is_judged_by_what_has_it(void **state)
{
    (void)state;
    assert_true(remarks("mass = 132 kg"));
    assert_true(remarks("mass = 299 kg"));
    assert_false(remarks("mass = 301 kg"));
    assert_false(remarks("mass = 1320 kg"));
    assert_false(remarks("type = motorcycle\nmass = 132 kg"));
    assert_true(remarks("type = motorcycle\nmass = 700 kg"));
}

/* A car and one visit, with remarks on dates as of a day; gives how many there are. */
static int date_remarks(const char *lines, const char *work_date, const char *today)
{
    struct car_text car = car_read_more(lines);
    assert_non_null(car.system);
    struct source source = {"work.ini", NULL, 0};
    source.bytes = text_print(car.arena, "[work]\ncar = %s\ndate = %s\nrenewed = hoses\n",
                              system_vehicle(car.system)->title, work_date);
    source.count = strlen(source.bytes);
    struct work_file work;
    assert_true(read_work(&source, car.system, car.arena, &car.messages, &work));
    struct system *after = work_apply(car.system, &work, 1, car.arena);
    struct input input = {car.arena, &car.messages, ""};
    struct date day = {0, 0, 0};
    if (today)
        assert_true(date_read(today, &day));
    dates_check(after, day, &input);
    int count = 0;
    for (size_t i = 0; i < car.messages.count; i++)
        count += strcmp(car.messages.items[i].id, "strange-date") == 0;
    car_finish(&car);
    return count;
}

static void dates_after_today_and_work_older_than_the_car_are_remarked_upon(void **state)
{
    (void)state;
    assert_int_equal(date_remarks("", "2026-11-20", "2026-11-25"), 0);
    assert_int_equal(date_remarks("", "2026-11-25", "2026-11-25"), 0);
    assert_int_equal(date_remarks("", "2026-11-26", "2026-11-25"), 1);
    assert_int_equal(date_remarks("", "2030", "2026-11-25"), 1);
    assert_int_equal(date_remarks("", "2026", "2026-11-25"), 0);
    assert_int_equal(date_remarks("", "2030", NULL), 0);
    assert_int_equal(date_remarks("[all pipes]\nrenewed = 2062\n", "2026-11-20", "2026-11-25"), 1);
}

static void work_before_the_car_was_first_used_is_remarked_upon(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct car_text car = car_load("systems/village-van.ini");
    struct input input = {car.arena, &car.messages, ""};
    struct source source = {"work.ini", NULL, 0};
    source.bytes = "[work]\ncar = Village van\ndate = 1978-04-30\nrenewed = front left hose\n";
    source.count = strlen(source.bytes);
    struct work_file work;
    assert_true(read_work(&source, car.system, car.arena, &car.messages, &work));
    dates_check(work_apply(car.system, &work, 1, car.arena), (struct date){2026, 11, 25}, &input);
    assert_true(car_has(&car, "strange-date"));
    car_finish(&car);
    arena_destroy(arena);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_pistons_of_a_fixed_caliper_are_counted_and_even),
        cmocka_unit_test(a_sliding_caliper_has_one_piston_or_more),
        cmocka_unit_test(a_mass_is_judged_by_what_has_it),
        cmocka_unit_test(dates_after_today_and_work_older_than_the_car_are_remarked_upon),
        cmocka_unit_test(work_before_the_car_was_first_used_is_remarked_upon),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
