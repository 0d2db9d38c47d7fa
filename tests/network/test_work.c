#include "network/work.h"

#include <math.h>
#include <string.h>

#include "base/list.h"
#include "support/build_car.h"
#include "support/near.h"

struct fixture {
    struct car car;
    struct usual_car usual;
    int fluid, reservoir;
};

static int start(void **state)
{
    static struct fixture fixture;
    fixture.car = car_start();
    fixture.usual = car_usual(&fixture.car);
    fixture.fluid = car_add(&fixture.car, KIND_FLUID, "brake fluid");
    fixture.reservoir = car_add(&fixture.car, KIND_RESERVOIR, "brake reservoir");
    *state = &fixture;
    return 0;
}

static int finish(void **state)
{
    car_finish(&((struct fixture *)*state)->car);
    return 0;
}

static struct work_file file_of(int year, const char *name)
{
    struct work_file file = {0};
    file.head.file = name;
    file.head.date = (struct date){year, 6, 15};
    file.head.place = (struct place){name, 1, 1};
    return file;
}

static struct work_item *add(struct fixture *f, struct work_file *file, enum work_deed deed,
                             int part)
{
    struct work_item *item = LIST_ADD(f->car.arena, file);
    item->deed = deed;
    item->part = part;
    item->place = (struct place){file->head.file, 2 + (int)file->count, 1};
    return item;
}

static void renew_bore(struct fixture *f, struct work_item *item, int part, double bore)
{
    item->values = ARENA_NEW(f->car.arena, struct work_value);
    item->value_count = 1;
    item->values[0].key = key_of(car_part(&f->car, part)->kind, FIELD(as.master.bore));
    item->values[0].number = bore;
    item->values[0].origin = (struct origin){ORIGIN_WORK, item->place, "7/8 in", (double)NAN};
}

static void without_work_the_car_stays_as_it_is(void **state)
{
    struct fixture *f = *state;
    const struct system *car = work_apply(f->car.system, NULL, 0, f->car.arena);
    assert_int_equal(car->part_count, f->car.system->part_count);
    assert_memory_equal(car->parts, f->car.system->parts,
                        (size_t)car->part_count * sizeof *car->parts);
    assert_null(car->ran_dry);
    assert_false(car->fluid_renewed);
}

static void renewing_counts_as_opening_and_dates_a_hose(void **state)
{
    struct fixture *f = *state;
    struct work_file file = file_of(2026, "work.ini");
    add(f, &file, DEED_RENEWED, f->usual.axle_hose);
    const struct system *car = work_apply(f->car.system, &file, 1, f->car.arena);
    const struct part *hose = &car->parts[f->usual.axle_hose];
    assert_true(hose->done.opened && hose->done.renewed && !hose->done.replaced);
    assert_int_equal(hose->as.hose.renewed.year, 2026);
    const struct origin *origin = part_origin(hose, FIELD(as.hose.renewed));
    assert_int_equal(origin->kind, ORIGIN_WORK);
    assert_string_equal(origin->place.file, "work.ini");
    assert_string_equal(origin->text, "2026-06-15");
}

/* A new one, whatever stood there before; what was measured on the old one went with it. */
static void a_hose_renewed_swells_as_a_new_one(void **state)
{
    struct fixture *f = *state;
    struct part *old = car_part(&f->car, f->usual.axle_hose);
    old->as.hose.state = HOSE_WORN;
    old->as.hose.expansion.m3_m = 1e-6;
    struct work_file file = file_of(2026, "work.ini");
    add(f, &file, DEED_RENEWED, f->usual.axle_hose);
    const struct system *car = work_apply(f->car.system, &file, 1, f->car.arena);
    const struct part *hose = &car->parts[f->usual.axle_hose];
    assert_int_equal(hose->as.hose.state, HOSE_NEW);
    near_unknown(hose->as.hose.expansion.m3_m);
    const struct origin *origin = part_origin(hose, FIELD(as.hose.state));
    assert_int_equal(origin->kind, ORIGIN_WORK);
    assert_string_equal(origin->text, "new");
    assert_int_equal(old->as.hose.state, HOSE_WORN);
}

static void the_car_given_is_not_touched(void **state)
{
    struct fixture *f = *state;
    struct work_file file = file_of(2026, "work.ini");
    add(f, &file, DEED_RENEWED, f->usual.axle_hose);
    renew_bore(f, add(f, &file, DEED_REPLACED, f->usual.master), f->usual.master, 22.2e-3);
    work_apply(f->car.system, &file, 1, f->car.arena);
    const struct part *hose = car_part(&f->car, f->usual.axle_hose);
    assert_false(hose->done.opened);
    assert_int_equal(hose->as.hose.renewed.year, 0);
    assert_int_equal(part_origin(hose, FIELD(as.hose.renewed))->kind, ORIGIN_NONE);
    near(car_part(&f->car, f->usual.master)->as.master.bore.m, 20.64e-3, 0);
}

static void a_replaced_master_has_its_new_bore_and_origin(void **state)
{
    struct fixture *f = *state;
    struct work_file file = file_of(2026, "work.ini");
    renew_bore(f, add(f, &file, DEED_REPLACED, f->usual.master), f->usual.master, 22.2e-3);
    const struct system *car = work_apply(f->car.system, &file, 1, f->car.arena);
    const struct part *master = &car->parts[f->usual.master];
    near(master->as.master.bore.m, 22.2e-3, 0);
    assert_true(master->done.opened && master->done.replaced);
    assert_string_equal(part_origin(master, FIELD(as.master.bore))->text, "7/8 in");
    assert_int_equal(part_origin(master, FIELD(as.master.stroke))->kind, ORIGIN_NONE);
}

static void texts_dates_and_bores_can_be_replaced(void **state)
{
    struct fixture *f = *state;
    struct work_file file = file_of(2026, "work.ini");
    struct work_item *item = add(f, &file, DEED_REPLACED, f->usual.front_left);
    struct work_value values[2] = {{0}};
    values[0].key = key_of(KIND_DISC, FIELD(as.disc.bores));
    values[0].bores = (struct bores){4, {38e-3}};
    values[1].key = key_of(KIND_DISC, FIELD(fitted.note));
    values[1].text = "from the shelf";
    item->values = values;
    item->value_count = 2;
    struct work_value made = {.key = key_of(KIND_HOSE, FIELD(as.hose.renewed)),
                              .date = {2025, 3, 0}};
    item = add(f, &file, DEED_REPLACED, f->usual.axle_hose);
    item->values = &made;
    item->value_count = 1;
    const struct system *car = work_apply(f->car.system, &file, 1, f->car.arena);
    assert_int_equal(car->parts[f->usual.front_left].as.disc.bores.count, 4);
    near(car->parts[f->usual.front_left].as.disc.bores.bore.m, 38e-3, 0);
    assert_string_equal(car->parts[f->usual.front_left].fitted.note, "from the shelf");
    /* a date that the work file gives wins over the day of the work */
    assert_int_equal(car->parts[f->usual.axle_hose].as.hose.renewed.year, 2025);
}

static void files_stack_by_date_whatever_their_order(void **state)
{
    struct fixture *f = *state;
    struct work_file files[2] = {file_of(2026, "late.ini"), file_of(2019, "early.ini")};
    renew_bore(f, add(f, &files[0], DEED_REPLACED, f->usual.master), f->usual.master, 22.2e-3);
    renew_bore(f, add(f, &files[1], DEED_REPLACED, f->usual.master), f->usual.master, 19.05e-3);
    const struct system *car = work_apply(f->car.system, files, 2, f->car.arena);
    near(car->parts[f->usual.master].as.master.bore.m, 22.2e-3, 0);
    assert_int_equal(car->parts[f->usual.master].done.date.year, 2026);
    assert_int_equal(car->work_count, 2);
    assert_string_equal(car->works[0].file, "early.ini");
    assert_string_equal(car->works[1].file, "late.ini");
}

static void files_of_one_day_stack_as_given(void **state)
{
    struct fixture *f = *state;
    struct work_file files[2] = {file_of(2026, "morning.ini"), file_of(2026, "evening.ini")};
    renew_bore(f, add(f, &files[0], DEED_REPLACED, f->usual.master), f->usual.master, 22.2e-3);
    renew_bore(f, add(f, &files[1], DEED_REPLACED, f->usual.master), f->usual.master, 19.05e-3);
    const struct system *car = work_apply(f->car.system, files, 2, f->car.arena);
    near(car->parts[f->usual.master].as.master.bore.m, 19.05e-3, 0);
}

/* A later file that does not say so does not keep what an earlier one did; one of the same day
 * does. */
static void open_ends_are_those_of_the_latest_day(void **state)
{
    struct fixture *f = *state;
    struct work_file files[2] = {file_of(2026, "a.ini"), file_of(2026, "b.ini")};
    files[0].open_ends = OPEN_ENDS_PLUGGED;
    assert_int_equal(work_apply(f->car.system, files, 2, f->car.arena)->open_ends,
                     OPEN_ENDS_PLUGGED);
    files[1] = file_of(2027, "b.ini");
    assert_int_equal(work_apply(f->car.system, files, 2, f->car.arena)->open_ends,
                     OPEN_ENDS_NOT_SAID);
}

static void renewed_fluid_dates_every_fluid(void **state)
{
    struct fixture *f = *state;
    struct work_file file = file_of(2026, "work.ini");
    file.fluid_renewed = true;
    const struct system *car = work_apply(f->car.system, &file, 1, f->car.arena);
    assert_true(car->fluid_renewed);
    assert_int_equal(car->fluid_renewed_date.year, 2026);
    assert_int_equal(car->parts[f->fluid].as.fluid.renewed.month, 6);
    assert_int_equal(part_origin(&car->parts[f->fluid], FIELD(as.fluid.renewed))->kind,
                     ORIGIN_WORK);
    assert_false(f->car.system->fluid_renewed);
}

static void a_reservoir_that_ran_dry_is_marked(void **state)
{
    struct fixture *f = *state;
    struct work_file file = file_of(2026, "work.ini");
    add(f, &file, DEED_RAN_DRY, f->reservoir);
    const struct system *car = work_apply(f->car.system, &file, 1, f->car.arena);
    for (int i = 0; i < car->part_count; i++)
        assert_int_equal(car->ran_dry[i], i == f->reservoir);
    assert_null(f->car.system->ran_dry);
}

static struct work_item *find(struct fixture *f, struct work_file *file, int part)
{
    struct work_item *item = add(f, file, DEED_FOUND, part);
    item->found.bore = BORE_PITTED;
    return item;
}

static void what_was_found_stays_beside_the_renewal_of_the_same_day(void **state)
{
    struct fixture *f = *state;
    struct work_file file = file_of(2026, "work.ini");
    find(f, &file, f->usual.rear_left);
    add(f, &file, DEED_RENEWED, f->usual.rear_left);
    const struct system *car = work_apply(f->car.system, &file, 1, f->car.arena);
    assert_int_equal(car->parts[f->usual.rear_left].found.bore, BORE_PITTED);
    assert_true(car->parts[f->usual.rear_left].done.renewed);
}

static void a_later_renewal_clears_what_was_found(void **state)
{
    struct fixture *f = *state;
    struct work_file files[2] = {file_of(2024, "early.ini"), file_of(2026, "late.ini")};
    find(f, &files[0], f->usual.rear_left);
    add(f, &files[1], DEED_RENEWED, f->usual.rear_left);
    const struct system *car = work_apply(f->car.system, files, 2, f->car.arena);
    assert_int_equal(car->parts[f->usual.rear_left].found.bore, BORE_NOT_SAID);
}

static void an_old_renewal_does_not_excuse_what_is_found_later(void **state)
{
    struct fixture *f = *state;
    struct work_file files[2] = {file_of(2014, "early.ini"), file_of(2026, "late.ini")};
    add(f, &files[0], DEED_RENEWED, f->usual.rear_left);
    find(f, &files[1], f->usual.rear_left);
    const struct system *car = work_apply(f->car.system, files, 2, f->car.arena);
    assert_int_equal(car->parts[f->usual.rear_left].found.bore, BORE_PITTED);
    assert_false(car->parts[f->usual.rear_left].done.renewed);
    assert_true(car->parts[f->usual.rear_left].done.opened);
}

static void what_is_found_twice_adds_up(void **state)
{
    struct fixture *f = *state;
    struct work_file files[2] = {file_of(2025, "early.ini"), file_of(2026, "late.ini")};
    find(f, &files[0], f->usual.rear_left);
    struct work_item *item = find(f, &files[1], f->usual.rear_left);
    item->found = (struct found){.nipple = NIPPLE_SHEARED, .pistons = PISTONS_FREE};
    const struct system *car = work_apply(f->car.system, files, 2, f->car.arena);
    const struct found *found = &car->parts[f->usual.rear_left].found;
    assert_int_equal(found->bore, BORE_PITTED);
    assert_int_equal(found->nipple, NIPPLE_SHEARED);
    assert_int_equal(found->pistons, PISTONS_FREE);
    assert_int_equal(found->leak, LEAK_NOT_SAID);
}

static void readings_come_in_the_order_of_their_files_with_a_date(void **state)
{
    struct fixture *f = *state;
    struct work_file files[2] = {file_of(2026, "late.ini"), file_of(2019, "early.ini")};
    struct taken_reading late = {.row = reading_row("pedal-travel"), .value = 0.066};
    struct taken_reading early = {
        .row = reading_row("pedal-travel"), .value = 0.080, .date = {2019, 7, 1}};
    files[0].readings = &late;
    files[0].reading_count = 1;
    files[1].readings = &early;
    files[1].reading_count = 1;
    const struct system *car = work_apply(f->car.system, files, 2, f->car.arena);
    assert_int_equal(car->reading_count, 2);
    near(car->readings[0].value, 0.080, 0);
    assert_int_equal(car->readings[0].date.month, 7);
    assert_int_equal(car->readings[1].date.year, 2026);
}

static void work_can_be_laid_over_work(void **state)
{
    struct fixture *f = *state;
    struct work_file early = file_of(2019, "early.ini");
    struct work_file late = file_of(2026, "late.ini");
    add(f, &early, DEED_RAN_DRY, f->reservoir);
    add(f, &late, DEED_OPENED, f->usual.slave);
    const struct system *once = work_apply(f->car.system, &early, 1, f->car.arena);
    const struct system *twice = work_apply(once, &late, 1, f->car.arena);
    assert_int_equal(twice->work_count, 2);
    assert_true(twice->parts[f->usual.slave].done.opened);
    assert_false(twice->parts[f->usual.slave].done.renewed);
    assert_true(twice->ran_dry[f->reservoir]);
}

#define TEST(name) cmocka_unit_test_setup_teardown(name, start, finish)

int main(void)
{
    const struct CMUnitTest tests[] = {
        TEST(without_work_the_car_stays_as_it_is),
        TEST(renewing_counts_as_opening_and_dates_a_hose),
        TEST(a_hose_renewed_swells_as_a_new_one),
        TEST(the_car_given_is_not_touched),
        TEST(a_replaced_master_has_its_new_bore_and_origin),
        TEST(texts_dates_and_bores_can_be_replaced),
        TEST(files_stack_by_date_whatever_their_order),
        TEST(files_of_one_day_stack_as_given),
        TEST(open_ends_are_those_of_the_latest_day),
        TEST(renewed_fluid_dates_every_fluid),
        TEST(a_reservoir_that_ran_dry_is_marked),
        TEST(what_was_found_stays_beside_the_renewal_of_the_same_day),
        TEST(a_later_renewal_clears_what_was_found),
        TEST(an_old_renewal_does_not_excuse_what_is_found_later),
        TEST(what_is_found_twice_adds_up),
        TEST(readings_come_in_the_order_of_their_files_with_a_date),
        TEST(work_can_be_laid_over_work),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
