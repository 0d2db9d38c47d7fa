#include "starters/starter.h"

#include <string.h>

#include "input/read.h"
#include "manual/template.h"
#include "network/graph.h"
#include "parts/keys/key.h"
#include "support/cmocka_all.h"

static struct starter starter_in(struct arena *arena, const char *words)
{
    struct text trouble = text_start(arena);
    picks said = 0;
    if (!picks_read(&trouble, words, &said))
        fail_msg("%s: %s", words, trouble.items);
    return starter_of(said, arena);
}

/* The description reads, and its fluid reaches all that it must. */
static void reads(const char *words)
{
    struct arena *arena = arena_create();
    struct starter starter = starter_in(arena, words);
    struct text text = text_start(arena);
    template_start(&text, &starter);
    struct source source = {"starter.ini", text.items, text.count};
    struct messages messages = messages_start(arena);
    const struct system *system = read_car(&source, arena, &messages);
    if (system != NULL)
        network_build(system, arena, &messages);
    for (size_t m = 0; m < messages.count; m++)
        if (messages.items[m].severity >= SEVERITY_ADVICE)
            print_error("%s:%d %s [%s]\n", words, messages.items[m].place.line,
                        messages.items[m].words, messages.items[m].id);
    assert_non_null(system);
    assert_false(messages_reach(&messages, SEVERITY_ADVICE));
    arena_destroy(arena);
}

static void every_usual_set_reads_without_a_mistake(void **state)
{
    (void)state;
    size_t count;
    const struct usual_set *sets = usual_sets(&count);
    for (size_t i = 0; i < count; i++)
        reads(sets[i].word);
}

/* Brakes, split, servo, clutch and rear axle are what shapes the plumbing: every four words that
 * go together, from these groups. */
static void every_plumbing_reads_without_a_mistake(void **state)
{
    (void)state;
    static const enum pick_group shapes[] = {GROUP_FRONT, GROUP_SPLIT, GROUP_SERVO, GROUP_REAR_AXLE,
                                             GROUP_VALVE};
    struct arena *arena = arena_create();
    const struct pick_row *rows = pick_rows();
    int cars = 0, choice[5] = {0};
    for (int round = 0; round < 4 * 4 * 4 * 4 * 4; round++) {
        struct text words = text_start(arena), trouble = text_start(arena);
        for (int i = 0, left = round; i < 5; i++, left /= 4) {
            choice[i] = left % 4;
            int nth = 0;
            for (int p = 0; p < PICK_COUNT; p++)
                if (rows[p].group == shapes[i] && nth++ == choice[i])
                    text_add(&words, "%s%s", words.count > 0 ? ", " : "", rows[p].word);
        }
        picks said = 0;
        /* A fourth word of a group of three is none: those cars come again. */
        if (picks_read(&trouble, words.items, &said) && round % 3 == 0) {
            reads(words.items);
            cars++;
        }
    }
    assert_true(cars > 60);
    arena_destroy(arena);
}

static void every_word_reads_without_a_mistake(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    const struct pick_row *rows = pick_rows();
    for (int i = 0; i < PICK_COUNT; i++) {
        const char *with = "";
        if (i == PICK_FRONT_SINGLE || i == PICK_REAR_DRY)
            with = "motorcycle, ";
        else if (rows[i].group == GROUP_SLAVE)
            with = "hydraulic clutch with its own reservoir, ";
        reads(text_print(arena, "%s%s", with, rows[i].word));
    }
    reads("motorcycle, single front disc, rear brake without fluid");
    reads("twin masters, hydraulic clutch with its own reservoir, remote servo, rear drums");
    reads("diagonal, live rear axle, load-sensing valve");
    arena_destroy(arena);
}

static void lines_of_sections_are_rows_and_hold_what_is_required(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    static const char *const cars[] = {
        "front discs",
        "drums",
        "diagonal",
        "twin masters",
        "motorcycle",
        "rear engine",
        "two remote servos, limiting valve, hydraulic clutch, concentric slave"};
    for (size_t c = 0; c < sizeof cars / sizeof *cars; c++) {
        struct starter starter = starter_in(arena, cars[c]);
        for (size_t s = 0; s < starter.section_count; s++) {
            const struct outline *outline = &starter.sections[s];
            enum part_kind kind;
            size_t rows;
            assert_true(kind_of_words(outline->header, &kind));
            const struct key *keys = key_table(kind, &rows);
            for (size_t k = 0; k < rows; k++) {
                int times = 0;
                for (size_t line = 0; line < outline->count; line++)
                    times += outline->lines[line].field == keys[k].field;
                if (times > 1 || (keys[k].required && times == 0))
                    fail_msg("%s [%s] has %s %d times", cars[c], outline->header, keys[k].name,
                             times);
            }
        }
    }
    arena_destroy(arena);
}

/* The asked-for car: each of its words shows in sections or runs. */
static void the_words_shape_the_car(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct starter starter = starter_in(arena, "front discs, rear drums, remote servo, hydraulic "
                                               "clutch with its own reservoir, right");
    static const char *const headers[] = {"brake servo", "front disc", "rear drum",
                                          "clutch reservoir", "clutch slave"};
    for (size_t h = 0; h < sizeof headers / sizeof *headers; h++) {
        size_t s = 0;
        while (s < starter.section_count && strcmp(starter.sections[s].header, headers[h]) != 0)
            s++;
        if (s == starter.section_count)
            fail_msg("no [%s]", headers[h]);
    }
    assert_string_equal(starter.runs[0],
                        "front feed = brake master.front, pipe, brake servo, pipe, front tee");
    arena_destroy(arena);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_usual_set_reads_without_a_mistake),
        cmocka_unit_test(every_plumbing_reads_without_a_mistake),
        cmocka_unit_test(every_word_reads_without_a_mistake),
        cmocka_unit_test(lines_of_sections_are_rows_and_hold_what_is_required),
        cmocka_unit_test(the_words_shape_the_car),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
