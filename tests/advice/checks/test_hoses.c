#include "advice/checks/hoses.h"

#include <math.h>
#include <string.h>

#include "network/work.h"
#include "parts/keys/key.h"
#include "support/build_car.h"
#include "support/near.h"

/* The interval behind "old", years. Common practice, no source: 6 to 10; the shorter is used. */
enum { INTERVAL = 6 };

static const struct date today = {2026, 11, 20};

struct fixture {
    struct car car;
    struct usual_car usual;
};

static int start(void **state)
{
    static struct fixture fixture;
    fixture.car = car_start();
    fixture.usual = car_usual(&fixture.car);
    for (int i = 0; i < fixture.car.system->part_count; i++) {
        if (car_part(&fixture.car, i)->kind == KIND_HOSE)
            car_part(&fixture.car, i)->as.hose.renewed = (struct date){2024, 5, 0};
    }
    *state = &fixture;
    return 0;
}

static int finish(void **state)
{
    car_finish(&((struct fixture *)*state)->car);
    return 0;
}

static struct hose_list list_on(const struct fixture *f, const struct system *system,
                                struct date day)
{
    const struct network *network = network_build(system, f->car.arena, NULL);
    return hoses_of(system, network, day, f->car.arena);
}

static struct hose_list list(const struct fixture *f)
{
    return list_on(f, f->car.system, today);
}

static const struct hose_line *line_named(const struct hose_list *hoses, const char *name)
{
    for (int i = 0; i < hoses->count; i++) {
        if (strcmp(hoses->items[i].name, name) == 0)
            return &hoses->items[i];
    }
    fail_msg("no line named %s", name);
    return NULL;
}

static const struct hose_line *line_of(const struct fixture *f, const struct hose_list *hoses,
                                       int hose)
{
    return line_named(hoses, car_part(&f->car, hose)->name);
}

static void forget(struct fixture *f, int hose)
{
    const char *name = car_part(&f->car, hose)->name;
    part_blank(car_part(&f->car, hose), KIND_PIPE, f->car.arena);
    car_part(&f->car, hose)->name = name;
}

static void four_young_hoses_are_complete(void **state)
{
    struct fixture *f = *state;
    const struct hose_list hoses = list(f);
    assert_int_equal(hoses.verdict, HOSES_COMPLETE);
    assert_int_equal(hoses.count, 4);
    assert_int_equal(hoses.needed, 4);
    assert_int_equal(hoses.has, 4);
    assert_int_equal(hoses.missing + hoses.old + hoses.unknown + hoses.renewed, 0);
    const struct hose_line *axle = line_of(f, &hoses, f->usual.axle_hose);
    assert_int_equal(axle->standing, HOSE_IS_NEW);
    assert_string_equal(axle->where, "from the body to the rear axle");
    assert_string_equal(axle->use, "pressure");
    assert_int_equal(axle->far, f->usual.axle_tee);
}

static void a_hose_grows_old_the_day_after_the_interval(void **state)
{
    struct fixture *f = *state;
    car_part(&f->car, f->usual.axle_hose)->as.hose.renewed =
        (struct date){today.year - INTERVAL, 11, 20};
    assert_int_equal(list(f).verdict, HOSES_COMPLETE);
    const struct hose_list hoses = list_on(f, f->car.system, (struct date){2026, 11, 21});
    assert_int_equal(hoses.verdict, HOSES_OLD_LEFT);
    assert_int_equal(hoses.old, 1);
    assert_int_equal(line_of(f, &hoses, f->usual.axle_hose)->standing, HOSE_IS_OLD);
}

static void an_undated_hose_is_not_complete(void **state)
{
    struct fixture *f = *state;
    car_part(&f->car, f->usual.axle_hose)->as.hose.renewed = (struct date){0};
    const struct hose_list hoses = list(f);
    assert_int_equal(hoses.verdict, HOSES_OLD_LEFT);
    assert_int_equal(hoses.unknown, 1);
    assert_int_equal(hoses.old, 0);
    assert_int_equal(line_of(f, &hoses, f->usual.axle_hose)->standing, HOSE_AGE_NOT_KNOWN);
}

static void a_forgotten_hose_is_named_by_what_it_should_reach(void **state)
{
    struct fixture *f = *state;
    forget(f, f->usual.axle_hose);
    const struct hose_list hoses = list(f);
    assert_int_equal(hoses.verdict, HOSES_MISSING);
    assert_int_equal(hoses.needed, 4);
    assert_int_equal(hoses.has, 3);
    assert_int_equal(hoses.missing, 1);
    const struct hose_line *line = line_named(&hoses, "hose to rear axle");
    assert_int_equal(line->standing, HOSE_IS_MISSING);
    assert_int_equal(line->hose, -1);
    assert_int_equal(line->place.line, car_part(&f->car, f->usual.axle_tee)->place.line);
}

static void a_forgotten_clutch_hose_is_named_by_the_slave(void **state)
{
    struct fixture *f = *state;
    forget(f, f->usual.clutch_hose);
    const struct hose_list hoses = list(f);
    assert_string_equal(line_named(&hoses, "hose to clutch slave")->where,
                        "from the body to the engine");
}

static void an_accepted_hard_pipe_is_named_and_complete(void **state)
{
    struct fixture *f = *state;
    forget(f, f->usual.clutch_hose);
    car_part(&f->car, f->usual.slave)->fitted.rigid_accepted = "coiled, as built";
    const struct hose_list hoses = list(f);
    assert_int_equal(hoses.verdict, HOSES_COMPLETE);
    assert_int_equal(hoses.needed, 3);
    const struct hose_line *line = line_named(&hoses, "hard pipe to clutch slave");
    assert_int_equal(line->standing, HOSE_IS_ACCEPTED);
    assert_string_equal(line->reason, "coiled, as built");
}

static void an_unknown_mount_is_never_complete(void **state)
{
    struct fixture *f = *state;
    car_part(&f->car, f->usual.axle_tee)->fitted.on = MOUNT_UNKNOWN;
    const struct hose_list hoses = list(f);
    assert_int_equal(hoses.verdict, HOSES_CANNOT_TELL);
    const struct hose_line *line = line_named(&hoses, "hose at axle tee");
    assert_int_equal(line->standing, HOSE_CANNOT_TELL);
    assert_string_equal(line->reason, "what the axle tee is on is not said");
    /* the hose beside it is still listed with its age */
    const struct hose_line *axle = line_of(f, &hoses, f->usual.axle_hose);
    assert_int_equal(axle->standing, HOSE_IS_NEW);
    assert_string_equal(axle->where, "between the brake master and the axle tee");
}

static void a_missing_hose_outweighs_what_cannot_be_told(void **state)
{
    struct fixture *f = *state;
    car_part(&f->car, f->usual.axle_tee)->fitted.on = MOUNT_UNKNOWN;
    forget(f, f->usual.front_left_hose);
    assert_int_equal(list(f).verdict, HOSES_MISSING);
}

static void a_young_hose_where_nothing_moves_is_idle(void **state)
{
    struct fixture *f = *state;
    car_part(&f->car, f->usual.slave)->fitted.on = MOUNT_BODY;
    const struct hose_list hoses = list(f);
    const struct hose_line *line = line_of(f, &hoses, f->usual.clutch_hose);
    assert_int_equal(line->standing, HOSE_IS_IDLE);
    assert_true(line->idle);
    assert_string_equal(line->where, "between the clutch master and the clutch slave");
    assert_int_equal(hoses.needed, 3);
    assert_int_equal(hoses.has, 3);
    assert_int_equal(hoses.verdict, HOSES_COMPLETE);
}

static void an_old_hose_is_old_even_where_nothing_moves(void **state)
{
    struct fixture *f = *state;
    car_part(&f->car, f->usual.slave)->fitted.on = MOUNT_BODY;
    car_part(&f->car, f->usual.clutch_hose)->as.hose.renewed = (struct date){1998, 0, 0};
    const struct hose_list hoses = list(f);
    const struct hose_line *line = line_of(f, &hoses, f->usual.clutch_hose);
    assert_int_equal(line->standing, HOSE_IS_OLD);
    assert_true(line->idle);
    assert_int_equal(hoses.verdict, HOSES_OLD_LEFT);
}

static void three_of_four_hoses_renewed_leave_the_fourth(void **state)
{
    struct fixture *f = *state;
    for (int i = 0; i < f->car.system->part_count; i++) {
        if (car_part(&f->car, i)->kind == KIND_HOSE)
            car_part(&f->car, i)->as.hose.renewed = (struct date){2008, 0, 0};
    }
    struct work_item items[3] = {
        {.deed = DEED_RENEWED, .part = f->usual.front_left_hose},
        {.deed = DEED_RENEWED, .part = f->usual.front_right_hose},
        {.deed = DEED_RENEWED, .part = f->usual.clutch_hose},
    };
    const struct work_file work = {.head = {.date = today}, .items = items, .count = 3};
    const struct system *car = work_apply(f->car.system, &work, 1, f->car.arena);
    const struct hose_list hoses = list_on(f, car, today);
    assert_int_equal(hoses.renewed, 3);
    assert_int_equal(hoses.old, 1);
    assert_int_equal(hoses.verdict, HOSES_OLD_LEFT);
    assert_int_equal(line_of(f, &hoses, f->usual.axle_hose)->standing, HOSE_IS_OLD);
    assert_true(line_of(f, &hoses, f->usual.clutch_hose)->renewed_in_work);
}

static void what_was_renewed_in_earlier_work_is_not_of_the_work_at_hand(void **state)
{
    struct fixture *f = *state;
    struct work_item early = {.deed = DEED_RENEWED, .part = f->usual.axle_hose};
    struct work_item late = {.deed = DEED_RENEWED, .part = f->usual.clutch_hose};
    const struct work_file works[2] = {
        {.head = {.date = {2009, 4, 1}}, .items = &early, .count = 1},
        {.head = {.date = today}, .items = &late, .count = 1},
    };
    const struct system *car = work_apply(f->car.system, works, 2, f->car.arena);
    const struct hose_list hoses = list_on(f, car, today);
    assert_int_equal(hoses.renewed, 1);
    assert_int_equal(line_of(f, &hoses, f->usual.axle_hose)->standing, HOSE_IS_OLD);
    assert_false(line_of(f, &hoses, f->usual.axle_hose)->renewed_in_work);
}

static void a_servo_always_has_a_vacuum_hose(void **state)
{
    struct fixture *f = *state;
    const int servo = car_add(&f->car, KIND_SERVO, "servo");
    const struct hose_list undated = list(f);
    const struct hose_line *line = line_named(&undated, "servo vacuum hose");
    assert_int_equal(line->standing, HOSE_AGE_NOT_KNOWN);
    assert_string_equal(line->use, "vacuum");
    assert_int_equal(line->far, servo);
    assert_int_equal(undated.verdict, HOSES_OLD_LEFT);
    car_part(&f->car, servo)->as.servo.vacuum_hose_renewed = (struct date){2025, 0, 0};
    const struct hose_list dated = list(f);
    assert_int_equal(dated.verdict, HOSES_COMPLETE);
    assert_int_equal(dated.needed, 5);
}

static void a_supply_hose_counts_where_it_is_said(void **state)
{
    struct fixture *f = *state;
    const int pot = car_add(&f->car, KIND_RESERVOIR, "brake reservoir");
    struct part *master = car_part(&f->car, f->usual.clutch_master);
    master->as.master.supply_hose.m = 0.35;
    master->as.master.reservoir = pot;
    master->as.master.supply_hose_renewed = (struct date){1990, 0, 0};
    const struct hose_list hoses = list(f);
    const struct hose_line *line = line_named(&hoses, "clutch master supply hose");
    assert_int_equal(line->standing, HOSE_IS_OLD);
    assert_string_equal(line->where, "from the brake reservoir to the clutch master");
    assert_int_equal(line->near, pot);
    assert_int_equal(hoses.count, 5);
}

static void a_low_pressure_hose_with_a_section_of_its_own_is_listed_once(void **state)
{
    struct fixture *f = *state;
    car_add(&f->car, KIND_SERVO, "servo");
    const int hose = car_add(&f->car, KIND_HOSE, "vacuum hose");
    car_part(&f->car, hose)->as.hose.use = HOSE_VACUUM;
    car_part(&f->car, hose)->as.hose.renewed = (struct date){2023, 0, 0};
    const struct hose_list hoses = list(f);
    assert_int_equal(hoses.count, 5);
    assert_string_equal(line_named(&hoses, "vacuum hose")->use, "vacuum");
    assert_int_equal(hoses.verdict, HOSES_COMPLETE);
}

static void without_a_day_no_hose_is_old(void **state)
{
    struct fixture *f = *state;
    car_part(&f->car, f->usual.axle_hose)->as.hose.renewed = (struct date){1970, 0, 0};
    assert_int_equal(list_on(f, f->car.system, (struct date){0}).old, 0);
}

static void every_standing_has_its_words(void **state)
{
    (void)state;
    for (int a = HOSE_IS_NEW; a <= HOSE_IS_IDLE; a++) {
        assert_true(strlen(hose_standing_words((enum hose_standing)a)) > 0);
        for (int b = HOSE_IS_NEW; b < a; b++)
            assert_string_not_equal(hose_standing_words((enum hose_standing)a),
                                    hose_standing_words((enum hose_standing)b));
    }
}

#define TEST(name) cmocka_unit_test_setup_teardown(name, start, finish)

int main(void)
{
    const struct CMUnitTest tests[] = {
        TEST(four_young_hoses_are_complete),
        TEST(a_hose_grows_old_the_day_after_the_interval),
        TEST(an_undated_hose_is_not_complete),
        TEST(a_forgotten_hose_is_named_by_what_it_should_reach),
        TEST(a_forgotten_clutch_hose_is_named_by_the_slave),
        TEST(an_accepted_hard_pipe_is_named_and_complete),
        TEST(an_unknown_mount_is_never_complete),
        TEST(a_missing_hose_outweighs_what_cannot_be_told),
        TEST(a_young_hose_where_nothing_moves_is_idle),
        TEST(an_old_hose_is_old_even_where_nothing_moves),
        TEST(three_of_four_hoses_renewed_leave_the_fourth),
        TEST(what_was_renewed_in_earlier_work_is_not_of_the_work_at_hand),
        TEST(a_servo_always_has_a_vacuum_hose),
        TEST(a_supply_hose_counts_where_it_is_said),
        TEST(a_low_pressure_hose_with_a_section_of_its_own_is_listed_once),
        TEST(without_a_day_no_hose_is_old),
        TEST(every_standing_has_its_words),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
