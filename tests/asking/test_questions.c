#include "asking/questions.h"

#include <string.h>

#include "support/cmocka_all.h"

/* A car said in words as a rough text, with its questions. */
struct asked {
    struct arena *arena;
    struct starter starter;
    struct rough rough;
    struct questions list;
};

static struct asked asked_of(const char *words, const struct tellings *tellings)
{
    struct asked asked = {.arena = arena_create()};
    struct text trouble = text_start(asked.arena);
    picks said = 0;
    assert_true(picks_read(&trouble, words, &said));
    asked.starter = starter_of(said, asked.arena);
    rough_read(&asked.rough, rough_of_starter(asked.arena, &asked.starter), asked.arena);
    assert_non_null(asked.rough.system);
    asked.list = questions_of(&asked.rough, &asked.starter, tellings, asked.arena);
    return asked;
}

static size_t place_of(const struct asked *asked, const char *id)
{
    for (size_t i = 0; i < asked->list.count; i++)
        if (strcmp(asked->list.items[i].id, id) == 0)
            return i;
    fail_msg("%s is not asked", id);
    return 0;
}

static void is_not_asked(const struct asked *asked, const char *id)
{
    for (size_t i = 0; i < asked->list.count; i++)
        if (strcmp(asked->list.items[i].id, id) == 0)
            fail_msg("%s is asked", id);
}

static void stages_follow_each_other(void **state)
{
    (void)state;
    struct asked asked = asked_of("drums", NULL);
    for (size_t i = 1; i < asked.list.count; i++)
        assert_true(asked.list.items[i - 1].stage <= asked.list.items[i].stage);
    assert_string_equal(asked.list.items[0].id, "vehicle/title");
    assert_string_equal(asked.list.items[1].guess, "two leading");
    assert_int_equal(asked.list.items[place_of(&asked, "rear drum/lining width")].stage,
                     STAGE_MEASURED);
    assert_int_equal(asked.list.items[place_of(&asked, "rear drum/friction")].stage, STAGE_REST);
    arena_destroy(asked.arena);
}

static void without_figures_the_rows_give_the_order(void **state)
{
    (void)state;
    struct asked asked = asked_of("front discs", NULL);
    /* What must be given, then what pressures rest on, then travels; what is assumed later. */
    assert_true(place_of(&asked, "brake master/bore") <
                place_of(&asked, "brake pedal/pad to pivot"));
    assert_true(place_of(&asked, "brake pedal/pad to pivot") <
                place_of(&asked, "brake master/stroke"));
    assert_true(place_of(&asked, "rear drum/lining width") >
                place_of(&asked, "brake master/stroke"));
    arena_destroy(asked.arena);
}

static void what_tells_more_is_asked_before(void **state)
{
    (void)state;
    struct asked plain = asked_of("front discs", NULL);
    const struct question *stroke = &plain.list.items[place_of(&plain, "brake master/stroke")];
    const struct question *arm = &plain.list.items[place_of(&plain, "brake pedal/pad to pivot")];
    const struct question *length = &plain.list.items[place_of(&plain, "rear feed/2")];
    assert_true(stroke->part >= 0 && arm->part >= 0 && length->part >= 0);
    struct telling items[] = {{stroke->blank.key, stroke->part, 2},
                              {NULL, arm->part, 3},
                              {length->blank.key, length->part, 9}};
    struct tellings tellings = {items, 3, 3};
    struct asked asked = asked_of("front discs", &tellings);
    size_t at_stroke = place_of(&asked, "brake master/stroke");
    size_t at_arm = place_of(&asked, "brake pedal/pad to pivot");
    /* Title, shoes and cylinder, the two arms of the pedal, the stroke. */
    assert_int_equal(at_arm, 3);
    assert_int_equal(at_stroke, 5);
    /* A stage is not jumped over; within its own the length is the first. */
    assert_int_equal(asked.list.items[place_of(&asked, "rear feed/2")].stage, STAGE_MEASURED);
    assert_int_not_equal(asked.list.items[place_of(&asked, "rear feed/2") - 1].stage,
                         STAGE_MEASURED);
    arena_destroy(plain.arena);
    arena_destroy(asked.arena);
}

static void what_has_no_meaning_or_is_known_is_not_asked(void **state)
{
    (void)state;
    struct asked asked = asked_of("drums, hydraulic clutch", NULL);
    is_not_asked(&asked, "brake master/secondary stroke");
    is_not_asked(&asked, "clutch slave/inner bore");
    is_not_asked(&asked, "rear drum/axle");
    is_not_asked(&asked, "vehicle/driver");
    is_not_asked(&asked, "all pipes/length");
    place_of(&asked, "all pipes/size");
    place_of(&asked, "feed/1");
    arena_destroy(asked.arena);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(stages_follow_each_other),
        cmocka_unit_test(without_figures_the_rows_give_the_order),
        cmocka_unit_test(what_tells_more_is_asked_before),
        cmocka_unit_test(what_has_no_meaning_or_is_known_is_not_asked),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
