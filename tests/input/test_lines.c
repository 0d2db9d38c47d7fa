#include "input/lines.h"

#include <string.h>

#include "base/text.h"
#include "support/cmocka_all.h"

/* The silent habits of inih that reading makes up for; those that it reports are the files of
 * tests/cases/bad. */

struct read {
    struct arena *arena;
    struct messages messages;
    struct read_lines document;
};

static struct read *read_bytes(const char *bytes, size_t count)
{
    struct arena *arena = arena_create();
    struct read *read = ARENA_NEW(arena, struct read);
    read->arena = arena;
    read->messages = messages_start(arena);
    struct input input = {arena, &read->messages, "car.ini"};
    struct source source = {"car.ini", bytes, count};
    read->document = lines_read(&source, &input);
    return read;
}

static struct read *read_text(const char *text)
{
    return read_bytes(text, strlen(text));
}

static const struct entry *entry_at(const struct read *read, size_t section, size_t entry)
{
    assert_true(section < read->document.count);
    assert_true(entry < read->document.items[section].count);
    return &read->document.items[section].items[entry];
}

static void keys_and_values_come_with_their_places(void **state)
{
    (void)state;
    struct read *read = read_text("[rear drum]\n\n  bore   =  3/4 in \n");
    const struct entry *entry = entry_at(read, 0, 0);
    assert_string_equal(read->document.items[0].name.text, "rear drum");
    assert_int_equal(read->document.items[0].name.place.column, 2);
    assert_string_equal(entry->key.text, "bore");
    assert_string_equal(entry->value.text, "3/4 in");
    assert_int_equal(entry->key.place.line, 3);
    assert_int_equal(entry->key.place.column, 3);
    assert_int_equal(entry->value.place.column, 13);
    assert_string_equal(entry->value.line, "  bore   =  3/4 in ");
    arena_destroy(read->arena);
}

static void columns_count_letters_and_not_bytes(void **state)
{
    (void)state;
    struct read *read = read_text("[a]\nré = 3 mm ± 1 mm\n");
    assert_int_equal(entry_at(read, 0, 0)->value.place.column, 6);
    arena_destroy(read->arena);
}

static void an_indented_line_is_a_key_of_its_own(void **state)
{
    (void)state;
    struct read *read = read_text("[a]\nbore = 1 in\n  stroke = 2 in\n\tlength = 3 in\n");
    assert_int_equal(read->document.items[0].count, 3);
    assert_string_equal(entry_at(read, 0, 0)->value.text, "1 in");
    assert_string_equal(entry_at(read, 0, 1)->key.text, "stroke");
    assert_string_equal(entry_at(read, 0, 2)->key.text, "length");
    arena_destroy(read->arena);
}

static void an_indented_header_begins_a_section(void **state)
{
    (void)state;
    struct read *read = read_text("[a]\nbore = 1 in\n  [b]\nbore = 2 in\n");
    assert_int_equal(read->document.count, 2);
    assert_string_equal(read->document.items[1].name.text, "b");
    assert_int_equal(read->document.items[1].count, 1);
    arena_destroy(read->arena);
}

static void a_line_of_198_bytes_is_whole_and_the_next_has_the_right_number(void **state)
{
    (void)state;
    char text[512] = "[a]\nnote = ";
    size_t start = strlen(text) - strlen("note = ");
    memset(text + strlen(text), 'x', 198 - strlen("note = "));
    strcpy(text + start + 198, "\nbore = 1 in\n");
    struct read *read = read_text(text);
    assert_int_equal(read->messages.count, 0);
    assert_int_equal(strlen(entry_at(read, 0, 0)->value.text), 198 - strlen("note = "));
    assert_int_equal(entry_at(read, 0, 1)->key.place.line, 3);
    arena_destroy(read->arena);
}

static void the_tail_of_a_long_line_is_no_line_of_its_own(void **state)
{
    (void)state;
    /* inih would read the tail of 199 bytes and more as a new line, here a key and a header */
    for (size_t length = 190; length < 420; length++) {
        char text[700] = "[a]\nnote = ";
        memset(text + strlen(text), 'x', length - strlen("note = "));
        strcpy(text + 4 + length, "[b]\nbore = 1 in\n");
        struct read *read = read_text(text);
        assert_int_equal(read->document.count, 1);
        bool fits = length + 3 <= LINE_MOST;
        assert_int_equal(read->messages.count, fits ? 0 : 1);
        assert_int_equal(read->document.items[0].count, fits ? 2 : 1);
        assert_int_equal(entry_at(read, 0, fits ? 1 : 0)->key.place.line, 3);
        arena_destroy(read->arena);
    }
}

static void a_long_remark_does_no_harm(void **state)
{
    (void)state;
    char text[700] = "[a]\n; ";
    memset(text + strlen(text), 'x', 197);
    strcat(text, "bore = 2 in\nbore = 1 in\n");
    struct read *read = read_text(text);
    assert_int_equal(read->messages.count, 0);
    assert_int_equal(read->document.items[0].count, 1);
    assert_string_equal(entry_at(read, 0, 0)->value.text, "1 in");
    assert_int_equal(entry_at(read, 0, 0)->key.place.line, 3);
    arena_destroy(read->arena);
}

static void remarks_begin_with_a_semicolon_or_a_hash(void **state)
{
    (void)state;
    struct read *read = read_text("; one\n# two\n[a] ; three\nbore = 5/8 in ; four\n ; five\n");
    assert_int_equal(read->messages.count, 0);
    assert_int_equal(read->document.items[0].count, 1);
    assert_string_equal(entry_at(read, 0, 0)->value.text, "5/8 in");
    arena_destroy(read->arena);
}

static void only_the_first_equals_sign_parts(void **state)
{
    (void)state;
    struct read *read = read_text("[a]\nnote = a = b: c\n");
    assert_string_equal(entry_at(read, 0, 0)->key.text, "note");
    assert_string_equal(entry_at(read, 0, 0)->value.text, "a = b: c");
    arena_destroy(read->arena);
}

static void repeated_keys_and_sections_all_arrive(void **state)
{
    (void)state;
    struct read *read = read_text("[a]\nbore = 1 in\nbore = 2 in\n[a]\nbore = 3 in\n[b]\n");
    assert_int_equal(read->document.count, 3);
    assert_int_equal(read->document.items[0].count, 2);
    assert_int_equal(read->document.items[1].count, 1);
    assert_int_equal(read->document.items[2].count, 0);
    arena_destroy(read->arena);
}

static void cr_lf_a_mark_at_the_start_and_no_last_line_end_are_fine(void **state)
{
    (void)state;
    struct read *read = read_text("\xEF\xBB\xBF[a]\r\nbore = 1 in\r\nstroke = 2 in");
    assert_int_equal(read->messages.count, 0);
    assert_string_equal(entry_at(read, 0, 0)->value.text, "1 in");
    assert_string_equal(entry_at(read, 0, 1)->value.text, "2 in");
    assert_int_equal(entry_at(read, 0, 1)->value.place.line, 3);
    assert_int_equal(read->document.items[0].name.place.column, 2);
    arena_destroy(read->arena);
}

static void lines_that_end_with_cr_alone_are_told_of_once_and_read(void **state)
{
    (void)state;
    struct read *read = read_text("[a]\rbore = 1 in\rstroke = 2 in\r");
    assert_int_equal(read->messages.count, 1);
    assert_string_equal(read->messages.items[0].id, "lone-cr");
    assert_int_equal(read->document.items[0].count, 2);
    arena_destroy(read->arena);
}

static void a_header_of_49_bytes_arrives_whole(void **state)
{
    (void)state;
    struct read *read = read_text("[123456789 123456789 123456789 123456789 123456789]\nx = 1\n");
    assert_int_equal(read->messages.count, 0);
    assert_int_equal(strlen(read->document.items[0].name.text), 49);
    arena_destroy(read->arena);
}

static void a_nul_does_not_hide_what_follows(void **state)
{
    (void)state;
    static const char text[] = "[a]\nbore = 1\0 in\nstroke = 2 in\n";
    struct read *read = read_bytes(text, sizeof text - 1);
    assert_int_equal(read->messages.count, 1);
    assert_string_equal(read->messages.items[0].id, "nul-byte");
    assert_int_equal(read->messages.items[0].place.column, 9);
    assert_string_equal(entry_at(read, 0, 0)->key.text, "stroke");
    assert_true(read->document.items[0].missed);
    arena_destroy(read->arena);
}

static void what_a_message_shows_is_safe_to_print(void **state)
{
    (void)state;
    struct read *read = read_text("[a]\nnote = \x1b[31m\xff red\n");
    assert_int_equal(read->messages.count, 1);
    assert_string_equal(read->messages.items[0].line, "note = ?[31m? red");
    arena_destroy(read->arena);
}

static void other_letters_are_fine_and_so_are_other_blanks_in_remarks(void **state)
{
    (void)state;
    struct read *read = read_text("[a]\nnote = Größe 3 µm − ¾ ; ein\u00a0Wort\n");
    assert_int_equal(read->messages.count, 0);
    assert_string_equal(entry_at(read, 0, 0)->value.text, "Größe 3 µm − ¾");
    arena_destroy(read->arena);
}

static void every_bad_line_is_told_of(void **state)
{
    (void)state;
    struct read *read = read_text("[a]\none\ntwo\nthree = 3\nfour\n");
    assert_int_equal(read->messages.count, 3);
    assert_int_equal(read->document.items[0].count, 1);
    arena_destroy(read->arena);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(keys_and_values_come_with_their_places),
        cmocka_unit_test(columns_count_letters_and_not_bytes),
        cmocka_unit_test(an_indented_line_is_a_key_of_its_own),
        cmocka_unit_test(an_indented_header_begins_a_section),
        cmocka_unit_test(a_line_of_198_bytes_is_whole_and_the_next_has_the_right_number),
        cmocka_unit_test(the_tail_of_a_long_line_is_no_line_of_its_own),
        cmocka_unit_test(a_long_remark_does_no_harm),
        cmocka_unit_test(remarks_begin_with_a_semicolon_or_a_hash),
        cmocka_unit_test(only_the_first_equals_sign_parts),
        cmocka_unit_test(repeated_keys_and_sections_all_arrive),
        cmocka_unit_test(cr_lf_a_mark_at_the_start_and_no_last_line_end_are_fine),
        cmocka_unit_test(lines_that_end_with_cr_alone_are_told_of_once_and_read),
        cmocka_unit_test(a_header_of_49_bytes_arrives_whole),
        cmocka_unit_test(a_nul_does_not_hide_what_follows),
        cmocka_unit_test(what_a_message_shows_is_safe_to_print),
        cmocka_unit_test(other_letters_are_fine_and_so_are_other_blanks_in_remarks),
        cmocka_unit_test(every_bad_line_is_told_of),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
