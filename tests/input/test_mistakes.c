#include "input/mistakes.h"

#include <dirent.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "input/read.h"
#include "support/cmocka_all.h"

/* tests/cases/bad holds descriptions and work files (work-*.ini, done to the village van), each
 * with the messages that it must give: a line "line:column id" each, in this order, and behind it,
 * indented, words that must stand in the message ("earlier N": the earlier line it points to;
 * "write: X" and "for example: X": just that, under it; "nothing to write": neither). */

static const char *path_of(struct arena *arena, const char *below)
{
    const char *root = getenv("SOURCE_ROOT");
    return text_print(arena, "%s/%s", root ? root : ".", below);
}

static struct source load(struct arena *arena, struct messages *messages, const char *below)
{
    struct source source;
    if (!source_load(path_of(arena, below), arena, messages, &source))
        fail_msg("%s cannot be read", below);
    return source;
}

static struct messages read_case(struct arena *arena, const char *name)
{
    struct messages messages = messages_start(arena);
    struct source source =
        load(arena, &messages, text_print(arena, "tests/cases/bad/%s.ini", name));
    if (!text_begins(name, "work-")) {
        read_car(&source, arena, &messages);
        return messages;
    }
    struct source van = load(arena, &messages, "systems/village-van.ini");
    struct system *system = read_car(&van, arena, &messages);
    assert_non_null(system);
    struct work_file work;
    assert_false(read_work(&source, system, arena, &messages, &work));
    return messages;
}

static bool says(const struct message *message, const char *words)
{
    int earlier;
    if (sscanf(words, "earlier %d", &earlier) == 1)
        return message->earlier.line == earlier;
    if (text_begins(words, "write: "))
        return message->write && strcmp(message->write, words + 7) == 0;
    if (text_begins(words, "for example: "))
        return message->example && strcmp(message->example, words + 13) == 0;
    if (strcmp(words, "nothing to write") == 0)
        return !message->write && !message->example;
    return strstr(message->words, words) || (message->write && strstr(message->write, words));
}

static void show(const struct messages *messages)
{
    for (size_t i = 0; i < messages->count; i++)
        print_message("  %d:%d %s | %s | %s\n", messages->items[i].place.line,
                      messages->items[i].place.column, messages->items[i].id,
                      messages->items[i].words,
                      messages->items[i].write ? messages->items[i].write : "");
}

/* Compares one case; gives how many differences. */
static int check_case(struct arena *arena, const char *name)
{
    struct messages messages = read_case(arena, name);
    struct messages other = messages_start(arena);
    struct source expected = load(arena, &other, text_print(arena, "tests/cases/bad/%s.txt", name));
    char *lines = text_copy_part(arena, expected.bytes, expected.count);
    size_t next = 0;
    const char *wrong = NULL;
    char *rest;
    for (char *line = strtok_r(lines, "\n", &rest); line && !wrong;
         line = strtok_r(NULL, "\n", &rest)) {
        if (*line == ' ') {
            if (next == 0 || !says(&messages.items[next - 1], line + 2))
                wrong = line;
            continue;
        }
        if (next == messages.count) {
            wrong = line;
            continue;
        }
        const struct message *message = &messages.items[next++];
        const char *got =
            text_print(arena, "%d:%d %s", message->place.line, message->place.column, message->id);
        if (strcmp(got, line) != 0)
            wrong = line;
    }
    if (!wrong && next == messages.count)
        return 0;
    print_message("%s: expected %s, got\n", name, wrong ? wrong : "no more");
    show(&messages);
    return 1;
}

static void each_bad_file_gives_its_messages_and_no_others(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    DIR *folder = opendir(path_of(arena, "tests/cases/bad"));
    assert_non_null(folder);
    int count = 0, wrong = 0;
    for (struct dirent *item; (item = readdir(folder)) != NULL;) {
        if (!text_ends(item->d_name, ".ini"))
            continue;
        count++;
        wrong += check_case(arena, text_copy_part(arena, item->d_name, strlen(item->d_name) - 4));
    }
    closedir(folder);
    arena_destroy(arena);
    assert_true(count > 100);
    assert_int_equal(wrong, 0);
}

/* What no file of text alone can show; test_source.c and test_part_rules.c try it. */
static bool is_tried_elsewhere(const char *id)
{
    return strcmp(id, "cannot-read") == 0 || strcmp(id, "not-a-file") == 0 ||
           strcmp(id, "file-too-big") == 0 || strcmp(id, "strange-date") == 0;
}

static void every_mistake_has_a_bad_file_of_its_own(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    size_t count;
    const struct mistake_row *rows = mistake_rows(&count);
    assert_int_equal(count, MISTAKE_COUNT);
    for (size_t i = 0; i < count; i++) {
        if (is_tried_elsewhere(rows[i].id))
            continue;
        const char *plain = text_print(arena, "tests/cases/bad/%s.txt", rows[i].id);
        const char *work = text_print(arena, "tests/cases/bad/work-%s.txt", rows[i].id);
        struct messages messages = messages_start(arena);
        struct source source;
        if (!source_load(path_of(arena, plain), arena, &messages, &source) &&
            !source_load(path_of(arena, work), arena, &messages, &source))
            fail_msg("no file for %s", rows[i].id);
        const char *text = text_copy_part(arena, source.bytes, source.count);
        if (!strstr(text, text_print(arena, " %s\n", rows[i].id)))
            fail_msg("the file for %s does not expect it", rows[i].id);
    }
    arena_destroy(arena);
}

static void ids_are_words_and_no_two_are_alike(void **state)
{
    (void)state;
    size_t count;
    const struct mistake_row *rows = mistake_rows(&count);
    for (size_t i = 0; i < count; i++) {
        assert_int_equal(strspn(rows[i].id, "abcdefghijklmnopqrstuvwxyz0123456789-"),
                         strlen(rows[i].id));
        assert_true(strlen(rows[i].help) > 10);
        for (size_t j = 0; j < i; j++)
            assert_string_not_equal(rows[i].id, rows[j].id);
    }
}

static void the_same_mistake_of_the_same_place_is_told_once(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct messages messages = messages_start(arena);
    struct input input = {arena, &messages, "car.ini"};
    struct written at = {"bore", "bore = x", {"car.ini", 3, 1}};
    mistake_add(&input, MISTAKE_NOT_A_NUMBER, at, "no number");
    mistake_add(&input, MISTAKE_NOT_A_NUMBER, at, "no number");
    assert_int_equal(messages.count, 1);
    assert_int_equal(messages.items[0].length, 4);
    at.place.line = 4;
    mistake_add(&input, MISTAKE_NOT_A_NUMBER, at, "no number");
    assert_int_equal(messages.count, 2);
    arena_destroy(arena);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(each_bad_file_gives_its_messages_and_no_others),
        cmocka_unit_test(every_mistake_has_a_bad_file_of_its_own),
        cmocka_unit_test(ids_are_words_and_no_two_are_alike),
        cmocka_unit_test(the_same_mistake_of_the_same_place_is_told_once),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
