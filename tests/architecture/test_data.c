/* The library holds no data that changes: nothing in .data or .bss, read with nm. */
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "support/cmocka_all.h"

static const char *library_path;

static void the_library_has_no_data_that_changes(void **state)
{
    (void)state;
    assert_non_null(library_path);
#if defined(__SANITIZE_ADDRESS__)
    skip(); /* the sanitizer adds data of its own */
#else
    char command[1024], line[1024];
    snprintf(command, sizeof command, "nm --defined-only '%s' 2>/dev/null", library_path);
    FILE *nm = popen(command, "r");
    assert_non_null(nm);
    int functions = 0, changing = 0;
    while (fgets(line, sizeof line, nm) != NULL) {
        char kind, name[512];
        if (sscanf(line, "%*x %c %511s", &kind, name) != 2)
            continue;
        functions += kind == 'T' || kind == 't';
        /* .data.rel.ro (tables of pointers) is 'd' too, but constant after loading; those are
         * told apart by the section that objdump names, asked below. */
        if (strchr("bBC", kind) != NULL) {
            fprintf(stderr, "%s changes\n", name);
            changing++;
        }
    }
    assert_int_equal(pclose(nm), 0);
    assert_true(functions > 100);
    assert_int_equal(changing, 0);
#endif
}

static void no_section_for_changing_data_has_a_size(void **state)
{
    (void)state;
#if defined(__SANITIZE_ADDRESS__)
    skip();
#else
    char command[1024], line[1024];
    snprintf(command, sizeof command, "objdump -h '%s' 2>/dev/null", library_path);
    FILE *objdump = popen(command, "r");
    assert_non_null(objdump);
    int sections = 0, changing = 0;
    char object[512] = "";
    while (fgets(line, sizeof line, objdump) != NULL) {
        char section[256];
        unsigned long size;
        if (strstr(line, "file format") != NULL)
            sscanf(line, "%511s", object);
        if (sscanf(line, " %*d %255s %lx", section, &size) != 2)
            continue;
        sections++;
        bool may_change =
            strcmp(section, ".data") == 0 || strcmp(section, ".bss") == 0 ||
            (strncmp(section, ".data.", 6) == 0 && strncmp(section, ".data.rel.ro", 12) != 0) ||
            strncmp(section, ".bss.", 5) == 0;
        if (may_change && size > 0) {
            fprintf(stderr, "%s %s holds %lu bytes\n", object, section, size);
            changing++;
        }
    }
    assert_int_equal(pclose(objdump), 0);
    assert_true(sections > 50);
    assert_int_equal(changing, 0);
#endif
}

int main(int argc, char **argv)
{
    library_path = argc > 1 ? argv[1] : NULL;
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_library_has_no_data_that_changes),
        cmocka_unit_test(no_section_for_changing_data_has_a_size),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
