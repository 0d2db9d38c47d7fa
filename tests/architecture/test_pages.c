/* The printed pages in docs/ are in step with the tables they are printed from. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "support/cmocka_all.h"
#include "support/run_cli.h"

static void compare(const char *page, const char *file)
{
    struct run run = run_cli("page", page);
    assert_int_equal(run.status, 0);
    char *path = source_path(file);
    size_t size = 0;
    char *kept = read_whole(path, &size);
    bool same = size == run.out_size && memcmp(kept, run.out, size) == 0;
    free(kept);
    free(path);
    run_finish(&run);
    if (!same)
        fprintf(stderr, "%s is not what `firmpedal page %s` prints\n", file, page);
    assert_true(same);
}

static void the_input_page_is_in_step(void **state)
{
    (void)state;
    compare("input", "docs/input.md");
}

static void the_findings_page_is_in_step(void **state)
{
    (void)state;
    compare("findings", "docs/findings.md");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_input_page_is_in_step),
        cmocka_unit_test(the_findings_page_is_in_step),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
