#include "input/reading_line.h"

#include <math.h>
#include <string.h>

#include "base/text.h"
#include "input/mistakes.h"
#include "support/near.h"

static struct taken_reading read_into(struct arena *arena, struct messages *messages,
                                      const char *key, const char *value, bool *fine)
{
    struct input input = {arena, messages, "work.ini"};
    struct entry entry = {{key, key, {"work.ini", 7, 1}}, {value, value, {"work.ini", 7, 20}}};
    struct taken_reading reading = {0};
    *fine = reading_line_read(&entry, &reading, &input);
    return reading;
}

static void assert_reads(const char *key, const char *value, const char *figure, const char *of,
                         double si, double effort)
{
    struct arena *arena = arena_create();
    struct messages messages = messages_start(arena);
    bool fine;
    struct taken_reading reading = read_into(arena, &messages, key, value, &fine);
    assert_true(fine);
    assert_int_equal(messages.count, 0);
    assert_string_equal(reading.row->figure, figure);
    assert_string_equal(reading.of != NULL ? reading.of : "", of);
    near(reading.value, si, 1e-9 * (1 + si));
    if (effort > 0)
        near(reading.effort.n, effort, 1e-9);
    else
        near_unknown(reading.effort.n);
    assert_int_equal(reading.place.line, 7);
    arena_destroy(arena);
}

static void assert_refused(const char *key, const char *value, const char *id, const char *words,
                           const char *write)
{
    struct arena *arena = arena_create();
    struct messages messages = messages_start(arena);
    bool fine;
    read_into(arena, &messages, key, value, &fine);
    assert_false(fine);
    assert_int_equal(messages.count, 1);
    assert_string_equal(messages.items[0].id, id);
    assert_non_null(strstr(messages.items[0].words, words));
    const struct message *message = &messages.items[0];
    const char *remedy = message->write != NULL ? message->write : message->example;
    assert_string_equal(remedy != NULL ? remedy : "", write);
    arena_destroy(arena);
}

static void a_reading_is_a_name_of_the_table_a_place_and_an_effort(void **state)
{
    (void)state;
    assert_reads("Pedal  travel", "66 mm", "pedal-travel", "", 0.066, 0);
    assert_reads("pedal-travel", "2.6 in", "pedal-travel", "", 2.6 * 0.0254, 0);
    assert_reads("line pressure of front circuit", "60 bar at 300 N", "line-pressure",
                 "front circuit", 60e5, 300);
    assert_reads("line pressure of the  front circuit", "870 psi at 70 lbf", "line-pressure",
                 "the front circuit", 870 * 4.4482216152605 / 6.4516e-4, 70 * 4.4482216152605);
    assert_reads("clicks", "6", "hand-brake-clicks", "", 6, 0);
    assert_reads("side difference rear", "35 %", "side-difference-rear", "", 0.35, 0);
}

static void a_wrong_name_unit_or_value_is_said_with_what_to_write(void **state)
{
    (void)state;
    assert_refused("pedal travl", "66 mm", "unknown-key", "what can be read: deceleration",
                   "pedal travel = 66 mm");
    assert_refused("banana", "5 mm", "unknown-key", "hand brake clicks", "");
    assert_refused("slave travel", "5 bar", "wrong-unit", "those that fit: mm",
                   "slave travel = 14 mm");
    assert_refused("pedal left", "66", "bare-number", "needs a unit",
                   "pedal left = 84 mm at 220 N");
    assert_refused("pedal travel", "500 mm at 150 N", "outside-limits", "never above 400 mm",
                   "pedal travel = 66 mm at 220 N");
    assert_refused("pedal left", "60 mm at 3000 N", "outside-limits", "never above 2000 N",
                   "pedal left = 60 mm at 300 N");
    assert_refused("clutch effort", "90 N at 200 N", "more-than-a-value", "no effort", "");
}

/* Every row reads its own example, and its name leads to its figure. */
static void every_row_reads_its_example(void **state)
{
    (void)state;
    size_t count;
    const struct reading_row *rows = reading_rows(&count);
    assert_true(count > 10);
    for (size_t i = 0; i < count; i++) {
        struct arena *arena = arena_create();
        struct messages messages = messages_start(arena);
        bool fine;
        struct taken_reading reading =
            read_into(arena, &messages, rows[i].key.name, rows[i].key.example, &fine);
        assert_true(fine);
        assert_ptr_equal(reading.row, &rows[i]);
        assert_int_equal(!isnan(reading.effort.n), strstr(rows[i].key.example, " at ") != NULL);
        const char *figure = text_copy(arena, rows[i].figure);
        for (char *letter = strchr(figure, '-'); letter != NULL; letter = strchr(letter, '-'))
            *letter = ' ';
        assert_string_equal(figure, rows[i].key.name);
        assert_true(rows[i].resolves > 0 && rows[i].key.help != NULL);
        arena_destroy(arena);
    }
}

static struct taken_reading placed(struct arena *arena, struct messages *messages, const char *key,
                                   const char *const *names, bool *found)
{
    struct input input = {arena, messages, "work.ini"};
    bool fine;
    struct taken_reading reading = read_into(arena, messages, key, "60 bar", &fine);
    assert_true(fine);
    struct reading_places places = {(const char **)names, 0};
    while (names[places.count] != NULL)
        places.count++;
    *found = reading_line_place(&reading, &places, &input);
    return reading;
}

static void a_place_is_found_among_those_of_the_car(void **state)
{
    (void)state;
    static const char *const two[] = {"front circuit", "rear circuit", NULL};
    static const char *const one[] = {"brake circuit", NULL};
    static const char *const none[] = {NULL};
    static const struct {
        const char *key;
        const char *const *names;
        const char *of, *id, *words;
    } cases[] = {
        {"line pressure of front circuit", two, "front circuit", NULL, NULL},
        {"line pressure of Rear", two, "rear circuit", NULL, NULL},
        {"line pressure", one, "brake circuit", NULL, NULL},
        {"line pressure", two, NULL, "which-one", "front circuit, rear circuit"},
        {"line pressure of boot", two, NULL, "unknown-part", "front circuit, rear circuit"},
        {"unassisted pressure", none, NULL, "unknown-part", "nothing that"},
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        struct arena *arena = arena_create();
        struct messages messages = messages_start(arena);
        bool found;
        struct taken_reading reading =
            placed(arena, &messages, cases[i].key, cases[i].names, &found);
        assert_int_equal(found, cases[i].id == NULL);
        if (found)
            assert_string_equal(reading.of, cases[i].of);
        else {
            assert_string_equal(messages.items[0].id, cases[i].id);
            assert_non_null(strstr(messages.items[0].words, cases[i].words));
        }
        arena_destroy(arena);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_reading_is_a_name_of_the_table_a_place_and_an_effort),
        cmocka_unit_test(a_wrong_name_unit_or_value_is_said_with_what_to_write),
        cmocka_unit_test(every_row_reads_its_example),
        cmocka_unit_test(a_place_is_found_among_those_of_the_car),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
