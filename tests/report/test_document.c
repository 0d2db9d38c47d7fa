/* A document set in columns: widths, wrapping, tables side by side or row by row, colour. Expected
 * texts are set by hand. */
#include "report/document/document.h"

#include <string.h>

#include "report/text/set_document.h"
#include "support/cmocka_all.h"

static int start(void **state)
{
    *state = arena_create();
    return *state ? 0 : -1;
}

static int finish(void **state)
{
    arena_destroy(*state);
    return 0;
}

static const char *set(const struct document *document, int width, bool lively)
{
    struct text text = text_start(document->arena);
    set_document(&text, document, &(struct setting){width, lively});
    return text.items;
}

static int longest_line(const char *text)
{
    int longest = 0, here = 0;
    for (; *text != '\0'; text++) {
        here = *text == '\n' ? 0 : here + (((unsigned char)*text & 0xC0) != 0x80);
        longest = here > longest ? here : longest;
    }
    return longest;
}

static void a_number_keeps_its_unit(void **state)
{
    assert_string_equal(words_kept(*state, "135 mL at 1 1/16 in, 13 N m; 4 discs"),
                        "135" KEPT_BLANK "mL at 1" KEPT_BLANK "1/16" KEPT_BLANK "in, 13" KEPT_BLANK
                        "N" KEPT_BLANK "m; 4 discs");
    assert_string_equal(words_kept(*state, "5 m/s2 and 4 mornings"),
                        "5" KEPT_BLANK "m/s2 and 4 mornings");
    assert_string_equal(words_kept(*state, "5 N" KEPT_BLANK "*"),
                        "5" KEPT_BLANK "N" KEPT_BLANK "*");
    assert_string_equal(words_kept(*state, ""), "");
}

static void a_line_ends_before_a_number_and_not_behind_it(void **state)
{
    struct document document = document_start(*state);
    document_words(&document, "The rear left wheel cylinder holds 1234 mL");
    assert_string_equal(set(&document, 40, false), "The rear left wheel cylinder holds\n1234 mL\n");
}

static void heads_stand_after_a_blank_line(void **state)
{
    struct document document = document_start(*state);
    document_head(&document, 1, "Village van");
    document_head(&document, 2, "Joints")->aside = "by hand first";
    document_gap(&document);
    document_gap(&document);
    document_picture(&document, "diagram", 0.5);
    document_turn(&document, "record");
    document_words(&document, "End.")->indent = 1;
    assert_string_equal(set(&document, 80, false),
                        "Village van\n\nJoints  by hand first\n\n  End.\n");
}

static void a_caution_hangs_beside_its_signal_word(void **state)
{
    struct document document = document_start(*state);
    document_caution(&document, "WARNING", "Brake fluid takes paint off: water at hand");
    assert_string_equal(set(&document, 40, false), "WARNING  Brake fluid takes paint off:\n"
                                                   "         water at hand\n");
    assert_string_equal(set(&document, 80, true),
                        "\033[1;31mWARNING\033[0m  Brake fluid takes paint off: water at hand\n");
}

static void a_row_to_tick_has_a_box_and_a_line(void **state)
{
    struct document document = document_start(*state);
    document_tick(&document, "Free play", "mm");
    document_tick(&document, "Wood in", NULL)->signal = "A";
    assert_string_equal(set(&document, 40, false),
                        "[ ] Free play              mm __________\n[ ] A Wood in\n");
}

static const struct table_column bleeding[] = {
    {"", CELL_CIRCLE, CELL_RIGHT, 0, 0, false},
    {"nipple", CELL_WORDS, CELL_LEFT, 0, 0, false},
    {"draw off", CELL_FIGURE, CELL_RIGHT, 0, 0, false},
    {"done", CELL_BOX, CELL_CENTRE, 0, 0, false},
    {"drawn off", CELL_LINE, CELL_LEFT, 0, 0.125, false},
};

static struct document bleeding_table(struct arena *arena)
{
    struct document document = document_start(arena);
    struct table *table = document_table(&document, bleeding, 5);
    table_row(table);
    table_cell(table, "2");
    table_cell(table, "rear left drum");
    table_cell(table, "134 mL");
    table_ask(table, NULL);
    table_ask(table, NULL);
    table_row(table);
    table_cell(table, "10");
    table_cell(table, "clutch slave, shut before the pedal comes up");
    table_cell(table, "81 mL");
    table_skip(table);
    return document;
}

static void a_table_stands_in_columns(void **state)
{
    struct document document = bleeding_table(*state);
    assert_string_equal(
        set(&document, 80, false),
        "    nipple                                        draw off  done  drawn off\n"
        " 2  rear left drum                                  134 mL  [ ]   __________\n"
        "10  clutch slave, shut before the pedal comes up     81 mL\n");
    assert_string_equal(set(&document, 50, false),
                        "    nipple               draw off  done  drawn off\n"
                        " 2  rear left drum         134 mL  [ ]   _________\n"
                        "10  clutch slave, shut      81 mL\n"
                        "    before the pedal\n"
                        "    comes up\n");
}

static void a_table_that_is_too_wide_becomes_paragraphs(void **state)
{
    struct document document = bleeding_table(*state);
    for (int i = 0; i < 4; i++)
        document.items[0].table->columns[i].head = "headwords";
    assert_string_equal(set(&document, 40, false), "2 rear left drum; headwords 134 mL;\n"
                                                   "  headwords [ ]; drawn off ____________\n"
                                                   "10 clutch slave, shut before the pedal\n"
                                                   "  comes up; headwords 81 mL\n");
}

static void a_mark_stays_with_its_figure(void **state)
{
    static const struct table_column marked[] = {
        {"", CELL_WORDS, CELL_LEFT, 0, 0, false},
        {"pressure in the lines", CELL_FIGURE, CELL_RIGHT, 0, 0, false},
        {"", CELL_FIGURE, CELL_LEFT, 0, 0, true}};
    struct document document = document_start(*state);
    struct table *table = document_table(&document, marked, 3);
    table_row(table);
    table_cell(table, "Front discs, each of the two of them");
    table_cell(table, "51.6 bar");
    table_cell(table, "**");
    assert_string_equal(set(&document, 80, false),
                        "                                      pressure in the lines\n"
                        "Front discs, each of the two of them               51.6 bar **\n");
    table->columns[1].head = "pressureinthelinesofall";
    assert_string_equal(set(&document, 40, false), "Front discs, each of the two of them;\n"
                                                   "  pressureinthelinesofall 51.6 bar **\n");
}

static void no_line_is_longer_than_the_width(void **state)
{
    struct document document = bleeding_table(*state);
    document_words(&document, "averyveryveryveryveryveryveryverylongnameofafilethatdoesnotfit");
    document_words(&document, "words enough for some lines of any width between forty and a "
                              "hundred columns, with 12 mm and 13 N m")
        ->indent = 2;
    document_tick(&document, "Free play of the brake pedal at rest", "measured beside the pad");
    for (int width = 40; width <= 100; width++)
        assert_true(longest_line(set(&document, width, false)) <= width);
}

static void widths_are_held_to_those_that_can_be_read(void **state)
{
    struct document document = document_start(*state);
    document_words(&document, "twelve words that would be longer than forty columns but for a "
                              "hundred they are no trouble at all, are they now");
    assert_string_equal(set(&document, 3, false), set(&document, 40, false));
    assert_string_equal(set(&document, 900, false), set(&document, 100, false));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test_setup_teardown(a_number_keeps_its_unit, start, finish),
        cmocka_unit_test_setup_teardown(a_line_ends_before_a_number_and_not_behind_it, start,
                                        finish),
        cmocka_unit_test_setup_teardown(heads_stand_after_a_blank_line, start, finish),
        cmocka_unit_test_setup_teardown(a_caution_hangs_beside_its_signal_word, start, finish),
        cmocka_unit_test_setup_teardown(a_row_to_tick_has_a_box_and_a_line, start, finish),
        cmocka_unit_test_setup_teardown(a_table_stands_in_columns, start, finish),
        cmocka_unit_test_setup_teardown(a_table_that_is_too_wide_becomes_paragraphs, start, finish),
        cmocka_unit_test_setup_teardown(a_mark_stays_with_its_figure, start, finish),
        cmocka_unit_test_setup_teardown(no_line_is_longer_than_the_width, start, finish),
        cmocka_unit_test_setup_teardown(widths_are_held_to_those_that_can_be_read, start, finish),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
