#include "base/first_bytes.h"

#include <string.h>

#include "support/cmocka_all.h"

#define KIND_OF(bytes) first_bytes_kind(bytes, sizeof(bytes) - 1, &(const char *){NULL})

/* ISO 32000-1, 7.5.2: %PDF-1.4. W3C PNG, 5.2: 137 80 78 71 13 10 26 10. */
static void what_the_program_writes_is_told_by_its_first_bytes(void **state)
{
    (void)state;
    static const char png[] = {(char)137, 80, 78, 71, 13, 10, 26, 10, 0, 0};
    const char *words = NULL;
    assert_int_equal(KIND_OF("%PDF-1.4\n%\xB5\xED\xAE\xFB\n"), FILE_PDF);
    assert_int_equal(first_bytes_kind(png, sizeof png, &words), FILE_PNG);
    assert_string_equal(words, "a PNG picture");
    assert_int_equal(KIND_OF("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<svg "), FILE_SVG);
    assert_int_equal(KIND_OF("<svg xmlns="), FILE_SVG);
    assert_int_equal(KIND_OF(""), FILE_EMPTY);
}

static void a_beginning_cut_short_is_not_taken_for_the_whole(void **state)
{
    (void)state;
    assert_int_equal(KIND_OF("%PDF"), FILE_TEXT);
    assert_int_equal(KIND_OF("<?xml version=\"1.0\"?><accounts/>"), FILE_TEXT);
    assert_int_equal(KIND_OF(" %PDF-1.4"), FILE_TEXT);
}

static void a_few_strange_letters_are_still_text_and_many_are_not(void **state)
{
    (void)state;
    assert_int_equal(KIND_OF("[vehicle]\ntitle = Caf\xE9\x01\n"), FILE_TEXT);
    assert_int_equal(KIND_OF("[vehicle]\r\n\tmass = 900 kg\r\n"), FILE_TEXT);
    char random[600];
    for (size_t i = 0; i < sizeof random; i++)
        random[i] = (char)(i * 37 % 251);
    const char *words = NULL;
    assert_int_equal(first_bytes_kind(random, sizeof random, &words), FILE_UNKNOWN);
    assert_int_equal(KIND_OF("PK\x03\x04"), FILE_FOREIGN);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(what_the_program_writes_is_told_by_its_first_bytes),
        cmocka_unit_test(a_beginning_cut_short_is_not_taken_for_the_whole),
        cmocka_unit_test(a_few_strange_letters_are_still_text_and_many_are_not),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
