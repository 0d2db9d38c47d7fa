/* rand_r */
#ifndef _GNU_SOURCE
#define _GNU_SOURCE
#endif
#include "input/expand.h"

#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "car_text.h"
#include "support/near.h"

static const char *const cars[] = {"village-van",  "family-saloon",       "diagonal-hatch",
                                   "hill-coupe",   "little-two-seater",   "rear-engined-saloon",
                                   "servo-estate", "twin-disc-motorcycle"};

/* Expands, reads what came out and compares. */
static void expect_the_same(const struct system *system, const char *name)
{
    struct arena *arena = arena_create();
    struct text text = text_start(arena);
    expand_car(&text, system);
    struct car_text again = car_read(text.items);
    if (!again.system)
        for (size_t i = 0; i < again.messages.count; i++)
            print_message("%d: %s\n%s\n", again.messages.items[i].place.line,
                          again.messages.items[i].words, again.messages.items[i].line);
    assert_non_null(again.system);
    const char *difference = car_difference(system, again.system, arena);
    if (difference)
        fail_msg("%s: %s", name, difference);
    car_finish(&again);
    arena_destroy(arena);
}

static void every_ready_car_reads_back_the_same(void **state)
{
    (void)state;
    for (size_t i = 0; i < sizeof cars / sizeof *cars; i++) {
        struct arena *arena = arena_create();
        struct car_text car = car_load(text_print(arena, "systems/%s.ini", cars[i]));
        car_part(&car, "vehicle");
        expect_the_same(car.system, cars[i]);
        car_finish(&car);
        arena_destroy(arena);
    }
}

static void a_car_after_work_reads_back_the_same(void **state)
{
    (void)state;
    struct car_text car = car_load("systems/village-van.ini");
    struct source source = source_below(car.arena, "demo/village-van-work.ini");
    struct work_file work;
    assert_true(read_work(&source, car.system, car.arena, &car.messages, &work));
    struct system *after = work_apply(car.system, &work, 1, car.arena);
    expect_the_same(after, "the van after work");
    assert_non_null(car_difference(car.system, after, car.arena));
    car_finish(&car);
}

static void what_is_hard_to_write_reads_back_the_same(void **state)
{
    (void)state;
    struct car_text car = car_read_more(
        "more = front tee, about 2.9 m pipe, warning valve.1\n"
        "again = warning valve.1, load valve, 1/3 ft pipe, ? hose, bracket, rear drum\n"
        "last = front tee, pipe, warning valve.2, union, hose, rear block\n"
        "back = rear block, pipe, rear disc\n"
        "[warning valve]\ntype = shuttle\n"
        "[load valve]\ntype = load-sensing\nknee = 400 psi\nslope = 1/3\n"
        "[rear drum]\nshoes = two leading\nbore = 19.05 mm ± 0.05 mm\nnipples = 3\n"
        "nipple names = upper, lower\nfriction = 0.41\nlining arc = 110 deg\n"
        "[rear disc]\ncaliper = sliding\nbore = ?\n"
        "[rear left disc]\nbore = 1 of 1-7/16 in\nsecond bore = 2 of 38.1 mm ± 0.1 mm\n"
        "[rear left drum]\nhard pipe accepted = coiled, as built = fine\n"
        "[clutch master]\ntype = single\nbore = 5/8 in\nreservoir = reservoir\n"
        "supply hose renewed = 2019-05\n[clutch master supply hose]\ninside = 8 mm\n"
        "[return hose]\nuse = supply\n[all pipes]\nsize = 1/4 in\n"
        "[bleed order]\norder = rear left drum upper, rear right drum 3, front left disc\n"
        "order 2 = rear left disc, rear right disc, front right disc, rear left drum lower, "
        "rear left drum upper, rear right drum lower, rear right drum upper\n");
    if (!car.system)
        car_part(&car, "any"); /* shows the messages */
    expect_the_same(car.system, "a hard car");
    car_finish(&car);
}

/* Names by dice from all that can be typed: a car either is refused or reads back. */
static const char *random_name(struct arena *arena, unsigned *seed)
{
    static const char signs[] = "abAB 12.-_/\\()+*'\"?!%&$<>@^~|:[]=;,#{}";
    struct text name = text_start(arena);
    for (int left = 1 + rand_r(seed) % 6; left > 0; left--)
        text_add(&name, "%c", signs[(size_t)rand_r(seed) % (sizeof signs - 1)]);
    return name.items;
}

static void names_by_dice_are_refused_or_read_back(void **state)
{
    (void)state;
    enum { CARS = 3000 };
    unsigned seed = 8;
    int fine = 0, refused = 0;
    for (int i = 0; i < CARS; i++) {
        struct arena *arena = arena_create();
        const char *tee = random_name(arena, &seed), *run = random_name(arena, &seed);
        const char *master = random_name(arena, &seed), *hose = random_name(arena, &seed);
        const char *outlet = random_name(arena, &seed);
        struct car_text car = car_read(text_print(
            arena,
            "[vehicle]\ntitle = %s\n[fluid]\ngrade = DOT 4\n[%s reservoir]\ncapacity = 200 mL\n"
            "[brake pedal]\nworks = %s master\nratio = 5\n"
            "[%s master]\ntype = tandem\nbore = 3/4 in\nprimary outlets = %s\n"
            "secondary outlets = rear\n[front disc]\ncaliper = fixed\nbore = 2 of 48 mm\n"
            "[rear drum]\nshoes = leading and trailing\ncylinder = two pistons\nbore = 3/4 in\n"
            "[%s hose]\nfrom = %s master.rear\nto = rear tee\n"
            "[runs]\n%s = %s master.%s, 0.6 m pipe, %s tee\nb = %s tee, 0.3 m pipe, hose, front "
            "disc\n"
            "r = rear tee, rear drum\n",
            tee, tee, master, master, outlet, hose, master, run, master, outlet, tee, tee));
        if (car.system) {
            expect_the_same(car.system, run);
            fine++;
        } else {
            assert_true(messages_reach(&car.messages, SEVERITY_DANGER));
            refused++;
        }
        car_finish(&car);
        arena_destroy(arena);
    }
    /* Both happen often enough to mean something. */
    assert_true(fine > 100 && refused > 100);
}

static const char *expand(const struct car_text *car)
{
    struct text text = text_start(car->arena);
    expand_car(&text, car->system);
    return text.items;
}

static void a_car_with_two_reservoirs_names_them_in_full(void **state)
{
    (void)state;
    struct car_text car = car_load("systems/hill-coupe.ini");
    assert_non_null(strstr(expand(&car), "reservoir = front reservoir ; given"));
    car_finish(&car);
}

static void each_value_says_where_it_comes_from(void **state)
{
    (void)state;
    struct car_text car = car_load("systems/village-van.ini");
    const char *text = expand(&car);
    assert_non_null(strstr(text, "bore = 13/16 in ; given, "));
    assert_non_null(strstr(text, "given, line 41\n"));
    assert_non_null(strstr(text, "size = 3/16 in ; given for several, "));
    assert_non_null(strstr(text, "\n; friction = 0.38 ; assumed\n"));
    assert_non_null(
        strstr(text, "\n[rear feed pipe 2]\nfrom = load valve\nto = rear feed union\n"));
    car_finish(&car);
}

static void no_line_is_too_long_to_be_read(void **state)
{
    (void)state;
    struct car_text car = car_load("systems/village-van.ini");
    for (const char *line = expand(&car); *line; line += strcspn(line, "\n") + 1)
        assert_true(strcspn(line, "\n") <= 198);
    car_finish(&car);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_ready_car_reads_back_the_same),
        cmocka_unit_test(a_car_after_work_reads_back_the_same),
        cmocka_unit_test(what_is_hard_to_write_reads_back_the_same),
        cmocka_unit_test(names_by_dice_are_refused_or_read_back),
        cmocka_unit_test(a_car_with_two_reservoirs_names_them_in_full),
        cmocka_unit_test(each_value_says_where_it_comes_from),
        cmocka_unit_test(no_line_is_too_long_to_be_read),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
