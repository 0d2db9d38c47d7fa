#include "input/read.h"

#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "car_text.h"
#include "support/failing_arena.h"
#include "support/near.h"

static const char *const cars[] = {"village-van",  "family-saloon",       "diagonal-hatch",
                                   "hill-coupe",   "little-two-seater",   "rear-engined-saloon",
                                   "servo-estate", "twin-disc-motorcycle"};

static void every_ready_car_is_read_without_a_word(void **state)
{
    (void)state;
    for (size_t i = 0; i < sizeof cars / sizeof *cars; i++) {
        struct arena *arena = arena_create();
        struct car_text car = car_load(text_print(arena, "systems/%s.ini", cars[i]));
        car_part(&car, "vehicle");
        for (size_t j = 0; j < car.messages.count; j++)
            print_message("%s:%d %s\n", cars[i], car.messages.items[j].place.line,
                          car.messages.items[j].words);
        assert_int_equal(car.messages.count, 0);
        car_finish(&car);
        arena_destroy(arena);
    }
}

/* Counted by hand in systems/village-van.ini. */
static void the_van_has_all_its_parts(void **state)
{
    (void)state;
    struct car_text car = car_load("systems/village-van.ini");
    int counts[KIND_COUNT] = {0};
    car_part(&car, "vehicle");
    for (int i = 0; i < car.system->part_count; i++)
        counts[car.system->parts[i].kind]++;
    assert_int_equal(counts[KIND_PIPE], 8);
    assert_int_equal(counts[KIND_HOSE], 6);  /* four under pressure, supply and vacuum */
    assert_int_equal(counts[KIND_JOINT], 6); /* two tees, two brackets, two unions */
    assert_int_equal(counts[KIND_DISC], 2);
    assert_int_equal(counts[KIND_DRUM], 2);
    assert_int_equal(counts[KIND_MASTER], 2);
    assert_int_equal(counts[KIND_PEDAL], 2);
    /* a connection at each end of 8 pipes and 4 hoses */
    assert_int_equal(car.system->connection_count, 24);
    assert_true(car_joined(&car, "brake master", "front feed pipe"));
    assert_true(car_joined(&car, "brake master:1", "rear feed pipe"));
    car_finish(&car);
}

/* The sections of a file in another order: the nth of count! orders of a kind. */
static char *shuffle(struct arena *arena, const struct source *source, unsigned seed)
{
    enum { MOST = 64 };
    const char *starts[MOST + 1];
    size_t count = 0;
    char *text = text_copy_part(arena, source->bytes, source->count);
    for (char *line = text; *line; line += strcspn(line, "\n") + 1)
        if (*line == '[' && count < MOST)
            starts[count++] = line;
    starts[count] = text + strlen(text);
    size_t order[MOST];
    for (size_t i = 0; i < count; i++)
        order[i] = i;
    for (size_t i = count - 1; i > 0; i--) {
        seed = seed * 1103515245u + 12345u;
        size_t other = (seed >> 16) % (i + 1);
        size_t kept = order[i];
        order[i] = order[other];
        order[other] = kept;
    }
    struct text shuffled = text_start(arena);
    for (size_t i = 0; i < count; i++)
        text_add_bytes(&shuffled, starts[order[i]],
                       (size_t)(starts[order[i] + 1] - starts[order[i]]));
    return shuffled.items;
}

static void the_order_of_sections_does_not_matter(void **state)
{
    (void)state;
    for (size_t i = 0; i < sizeof cars / sizeof *cars; i++) {
        for (unsigned seed = 1; seed <= 6; seed++) {
            struct arena *arena = arena_create();
            struct source source =
                source_below(arena, text_print(arena, "systems/%s.ini", cars[i]));
            struct messages messages = messages_start(arena);
            struct system *system = read_car(&source, arena, &messages);
            struct car_text shuffled = car_read(shuffle(arena, &source, seed));
            car_part(&shuffled, "vehicle");
            const char *difference = car_difference(system, shuffled.system, arena);
            if (difference)
                fail_msg("%s, seed %u: %s", cars[i], seed, difference);
            car_finish(&shuffled);
            arena_destroy(arena);
        }
    }
}

static void remarks_alone_do_not_stop_a_car(void **state)
{
    (void)state;
    struct car_text car = car_read_more("[ rear left drum ]\nshoes = two leading\nbore = 90 mm\n");
    assert_non_null(car.system);
    assert_int_equal(car.messages.count, 2);
    assert_int_equal(car.messages.items[0].severity, SEVERITY_ADVICE);
    car_finish(&car);
}

static void messages_come_in_the_order_of_the_lines(void **state)
{
    (void)state;
    struct car_text car = car_read_more("[bleed order]\norder = x\n[hand brake]\nworks = y\n"
                                        "[rear left drum]\nshoes = z\n");
    for (size_t i = 1; i < car.messages.count; i++)
        assert_true(car.messages.items[i - 1].place.line <= car.messages.items[i].place.line);
    assert_int_equal(car.messages.count, 4);
    assert_null(car.system);
    car_finish(&car);
}

/* Reads bytes that may be anything; what comes out must be a car or a mistake. */
static void read_anything(const char *bytes, size_t count)
{
    struct arena *arena = arena_create();
    struct messages messages = messages_start(arena);
    struct source source = {"car.ini", bytes, count};
    struct system *system = read_car(&source, arena, &messages);
    assert_true(system || messages_reach(&messages, SEVERITY_DANGER));
    for (size_t i = 0; i < messages.count; i++) {
        assert_non_null(messages.items[i].words);
        assert_true(text_is_utf8(messages.items[i].words, strlen(messages.items[i].words)));
    }
    arena_destroy(arena);
}

static void no_beginning_of_the_van_crashes_reading(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct source van = source_below(arena, "systems/village-van.ini");
    for (size_t count = 0; count <= van.count; count++) {
        char *cut = malloc(count + 1); /* of its own size, so that reading past it shows */
        memcpy(cut, van.bytes, count);
        read_anything(cut, count);
        free(cut);
    }
    arena_destroy(arena);
}

static void no_changed_byte_of_the_van_crashes_reading(void **state)
{
    (void)state;
    static const char others[] = {'\0', '\n', ',', '[', '=', ' ', '?', '9', '.', (char)0xFF};
    struct arena *arena = arena_create();
    struct source van = source_below(arena, "systems/village-van.ini");
    char *changed = text_copy_part(arena, van.bytes, van.count);
    for (size_t at = 0; at < van.count; at++) {
        /* one for each byte, all ten over any ten bytes, since reading takes its time */
        changed[at] = others[at % sizeof others];
        read_anything(changed, van.count);
        changed[at] = van.bytes[at];
    }
    arena_destroy(arena);
}

static void no_changed_byte_of_the_work_crashes_reading(void **state)
{
    (void)state;
    static const char others[] = {'\0', '\n', ',', '[', '=', ' ', '?', (char)0xFF};
    struct car_text car = car_load("systems/village-van.ini");
    struct source work = source_below(car.arena, "demo/village-van-work.ini");
    char *changed = text_copy_part(car.arena, work.bytes, work.count);
    for (size_t at = 0; at < work.count; at++) {
        for (size_t i = 0; i < 2; i++) {
            struct arena *arena = arena_create();
            struct messages messages = messages_start(arena);
            changed[at] = others[(at + 4 * i) % sizeof others];
            struct source source = {"work.ini", changed, work.count};
            struct work_file file;
            bool read = read_work(&source, car.system, arena, &messages, &file);
            assert_true(read != messages_reach(&messages, SEVERITY_DANGER));
            arena_destroy(arena);
        }
        changed[at] = work.bytes[at];
    }
    car_finish(&car);
}

static bool read_with_memory(size_t fails_at, const struct source *source)
{
    struct failing_arena blocks = {.fails_at = fails_at};
    struct arena *arena = arena_create_on(failing_arena_source(&blocks));
    if (!arena)
        return false;
    jmp_buf point;
    arena_escape_to(arena, &point);
    volatile bool finished = false;
    if (setjmp(point) == 0) {
        struct messages messages = messages_start(arena);
        finished = read_car(source, arena, &messages) != NULL;
    }
    arena_destroy(arena);
    assert_int_equal(blocks.out, 0);
    return finished;
}

static void running_out_of_memory_anywhere_leaves_nothing_behind(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct source van = source_below(arena, "systems/village-van.ini");
    size_t fails_at = 1;
    while (!read_with_memory(fails_at, &van)) {
        fails_at++;
        assert_true(fails_at < 1000);
    }
    assert_true(fails_at > 5);
    arena_destroy(arena);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_ready_car_is_read_without_a_word),
        cmocka_unit_test(the_van_has_all_its_parts),
        cmocka_unit_test(the_order_of_sections_does_not_matter),
        cmocka_unit_test(remarks_alone_do_not_stop_a_car),
        cmocka_unit_test(messages_come_in_the_order_of_the_lines),
        cmocka_unit_test(no_beginning_of_the_van_crashes_reading),
        cmocka_unit_test(no_changed_byte_of_the_van_crashes_reading),
        cmocka_unit_test(no_changed_byte_of_the_work_crashes_reading),
        cmocka_unit_test(running_out_of_memory_anywhere_leaves_nothing_behind),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
