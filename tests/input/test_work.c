#include <string.h>

#include "base/text.h"
#include "car_text.h"
#include "support/near.h"

struct done_work {
    struct car_text car;
    struct work_file work;
    bool fine;
};

static struct done_work read_words(const char *words)
{
    struct done_work done = {.car = car_load("systems/village-van.ini")};
    assert_non_null(done.car.system);
    struct source source = {"work.ini", words, strlen(words)};
    done.fine = read_work(&source, done.car.system, done.car.arena, &done.car.messages, &done.work);
    return done;
}

#define HEAD "[work]\ncar = village van\ndate = 2026-11-20\n"

static const struct work_item *item_of(const struct done_work *done, enum work_deed deed,
                                       const char *part)
{
    int index = system_find(done->car.system, part);
    for (size_t i = 0; i < done->work.count; i++)
        if (done->work.items[i].deed == deed && done->work.items[i].part == index)
            return &done->work.items[i];
    fail_msg("nothing was done to %s", part);
    return NULL;
}

static void the_head_names_car_and_day(void **state)
{
    (void)state;
    struct done_work done = read_words(HEAD "fluid renewed = yes\n");
    assert_true(done.fine);
    assert_string_equal(done.work.head.car, "village van");
    assert_string_equal(done.work.head.file, "work.ini");
    assert_int_equal(done.work.head.date.month, 11);
    assert_true(done.work.fluid_renewed);
    assert_int_equal(done.work.open_ends, OPEN_ENDS_NOT_SAID);
    car_finish(&done.car);
    done = read_words(HEAD "open ends = blown through\n");
    assert_int_equal(done.work.open_ends, OPEN_ENDS_BLOWN);
    car_finish(&done.car);
}

static void parts_are_opened_renewed_and_run_dry_by_name(void **state)
{
    (void)state;
    struct done_work done =
        read_words(HEAD "renewed = rear drum, clutch line hose, servo vacuum hose\n"
                        "opened = axle tee\nran dry = brake reservoir\nrenewed 2 = load valve\n");
    assert_true(done.fine);
    assert_int_equal(done.work.count, 7);
    item_of(&done, DEED_RENEWED, "rear left drum");
    item_of(&done, DEED_RENEWED, "rear right drum");
    item_of(&done, DEED_RENEWED, "servo vacuum hose");
    item_of(&done, DEED_RENEWED, "load valve");
    item_of(&done, DEED_OPENED, "axle tee");
    item_of(&done, DEED_RAN_DRY, "brake reservoir");
    assert_int_equal(item_of(&done, DEED_RENEWED, "clutch line hose")->place.line, 4);
    assert_int_equal(item_of(&done, DEED_RENEWED, "clutch line hose")->place.column, 22);
    car_finish(&done.car);
}

static void new_data_come_with_their_origin(void **state)
{
    (void)state;
    struct done_work done =
        read_words(HEAD "[replaced brake master]\nbore = 7/8 in\ntype = single\n"
                        "[replaced front disc]\nbore = 4 of 38 mm\nnote = from the shelf\n");
    assert_true(done.fine);
    const struct work_item *master = item_of(&done, DEED_REPLACED, "brake master");
    assert_int_equal(master->value_count, 2);
    for (size_t i = 0; i < 2; i++) {
        const struct work_value *value = &master->values[i];
        assert_int_equal(value->origin.kind, ORIGIN_WORK);
        assert_string_equal(value->origin.place.file, "work.ini");
        if (strcmp(value->key->name, "bore") == 0)
            near(value->number, 0.022225, 1e-12);
        else
            near(value->number, MASTER_SINGLE, 0);
    }
    const struct work_item *disc = item_of(&done, DEED_REPLACED, "front right disc");
    assert_int_equal(disc->value_count, 2);
    assert_int_equal(disc->values[0].bores.count, 4);
    near(disc->values[0].bores.bore.m, 0.038, 1e-12);
    assert_string_equal(disc->values[1].text, "from the shelf");
    car_finish(&done.car);
}

static void what_was_found_is_kept_by_part(void **state)
{
    (void)state;
    struct done_work done =
        read_words(HEAD "[found rear drum]\npistons = seized\nbore surface = pitted\n"
                        "[found clutch slave]\nnipple = broken\nleak = wet\n");
    assert_true(done.fine);
    const struct found *drum = &item_of(&done, DEED_FOUND, "rear left drum")->found;
    assert_int_equal(drum->pistons, PISTONS_STUCK);
    assert_int_equal(drum->bore, BORE_PITTED);
    assert_int_equal(drum->nipple, NIPPLE_NOT_SAID);
    item_of(&done, DEED_FOUND, "rear right drum");
    const struct found *slave = &item_of(&done, DEED_FOUND, "clutch slave")->found;
    assert_int_equal(slave->nipple, NIPPLE_SHEARED);
    assert_int_equal(slave->leak, LEAK_WEEPING);
    car_finish(&done.car);
}

static void the_wrong_fluid_is_a_value_of_what_was_found(void **state)
{
    (void)state;
    static const char *const keys[] = {"found", "fluid", "grade"};
    for (int i = 0; i < 3; i++) {
        struct arena *arena = arena_create();
        struct done_work done =
            read_words(text_print(arena, HEAD "[found brake fluid]\n%s = mineral\n", keys[i]));
        assert_true(done.fine);
        const struct work_item *fluid = item_of(&done, DEED_FOUND, "brake fluid");
        assert_int_equal(fluid->value_count, 1);
        assert_string_equal(fluid->values[0].key->name, "found");
        near(fluid->values[0].number, GRADE_MINERAL, 0);
        struct system *after = work_apply(done.car.system, &done.work, 1, done.car.arena);
        const struct part *found = &after->parts[system_find(after, "brake fluid")];
        assert_int_equal(found->as.fluid.found, GRADE_MINERAL);
        assert_int_equal(part_origin(found, FIELD(as.fluid.found))->kind, ORIGIN_WORK);
        car_finish(&done.car);
        arena_destroy(arena);
    }
}

static void the_demo_work_is_read(void **state)
{
    (void)state;
    struct car_text car = car_load("systems/village-van.ini");
    struct source source = source_below(car.arena, "demo/village-van-work.ini");
    struct work_file work;
    assert_true(read_work(&source, car.system, car.arena, &car.messages, &work));
    /* six parts renewed, one replaced, two found, as the file says */
    assert_int_equal(work.count, 9);
    assert_int_equal(work.reading_count, 1);
    assert_int_equal(car.messages.count, 0);
    struct system *after = work_apply(car.system, &work, 1, car.arena);
    near(after->parts[system_find(after, "brake master")].as.master.bore.m, 0.022225, 1e-12);
    car_finish(&car);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_head_names_car_and_day),
        cmocka_unit_test(parts_are_opened_renewed_and_run_dry_by_name),
        cmocka_unit_test(new_data_come_with_their_origin),
        cmocka_unit_test(what_was_found_is_kept_by_part),
        cmocka_unit_test(the_wrong_fluid_is_a_value_of_what_was_found),
        cmocka_unit_test(the_demo_work_is_read),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
