/* The same finding and figure ids come out in JSON, text and on the sheet, in either system of
 * units. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "support/cmocka_all.h"
#include "support/run_cli.h"
#include "variant.h"

static int missing_in(const char *where, const char *car, const char *text, json_t *answer,
                      const char *list, const char *key)
{
    int missing = 0;
    size_t index;
    json_t *item;
    json_array_foreach(json_object_get(answer, list), index, item)
    {
        /* rules of another class of vehicle are counted in JSON alone */
        const char *concern = json_string_value(json_object_get(item, "concern"));
        if (concern != NULL && strcmp(concern, "of another class") == 0)
            continue;
        if (strstr(text, text_of(item, key)) == NULL) {
            fprintf(stderr, "%s: %s lacks %s\n", car, where, text_of(item, key));
            missing++;
        }
    }
    return missing;
}

/* Text of a PDF as poppler reads it, lines joined. */
static char *sheet_text(const char *car)
{
    char pdf[] = "/tmp/firmpedal-sheet-XXXXXX.pdf";
    int file = mkstemps(pdf, (int)strlen(".pdf"));
    assert_true(file >= 0);
    close(file);
    struct run run =
        run_cli("sheet", car, "-o", pdf, "--replace", "--annex", "all", "--date", "2026-11-25");
    if (run.status != 0)
        fprintf(stderr, "%s: %s\n", car, run.err);
    assert_int_equal(run.status, 0);
    run_finish(&run);
    const char *const words[] = {"pdftotext", "-layout", pdf, "-", NULL};
    run = run_program(NULL, words, NULL, 60);
    assert_int_equal(run.status, 0);
    char *text = strdup(run.out);
    run_finish(&run);
    unlink(pdf);
    return text;
}

static void ids_are_the_same_in_text_json_and_sheet(void **state)
{
    (void)state;
    char *paths[MOST_CARS];
    size_t count = variant_cars(paths);
    int missing = 0;
    for (size_t i = 0; i < count; i++) {
        struct lines lines = variant_lines(paths[i]);
        json_t *answer = ask_lines(&lines, -1, FP_CHECK);
        assert_non_null(answer);
        assert_true(json_array_size(json_object_get(answer, "figures")) > 20);
        char *sheet = sheet_text(paths[i]);
        missing += missing_in("sheet", paths[i], sheet, answer, "figures", "id");
        missing += missing_in("sheet", paths[i], sheet, answer, "findings", "id");
        assert_true(json_array_size(json_object_get(answer, "rules")) > 20);
        missing += missing_in("sheet", paths[i], sheet, answer, "rules", "id");
        free(sheet);
        struct run run =
            run_cli("check", paths[i], "--all", "--date", "2026-11-25", "--units", "imperial");
        assert_true(run.status == 0 || run.status == 1);
        missing += missing_in("text", paths[i], run.out, answer, "figures", "id");
        missing += missing_in("text", paths[i], run.out, answer, "findings", "id");
        missing += missing_in("text", paths[i], run.out, answer, "rules", "id");
        run_finish(&run);
        json_decref(answer);
        variant_finish(&lines);
        free(paths[i]);
    }
    assert_int_equal(missing, 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(ids_are_the_same_in_text_json_and_sheet),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
