/* Leave out each line of each ready car in turn: a figure that then changes must say that it rests
 * on an assumed value, or that it is not computed; or the description is refused with a reason. */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "support/cmocka_all.h"
#include "variant.h"

static bool differs(double a, double b)
{
    return fabs(a - b) > 1e-9 * (fabs(a) + fabs(b));
}

/* Lines that say what the car is made of: without one it is another car, whose figures are its
 * own. Named here so that the list can be argued with. */
static bool makes_another_car(const char *section, const char *line)
{
    static const char *const keys[] = {"works", "casting", "title"};
    if (strcmp(section, "[runs]") == 0)
        return true;
    for (size_t i = 0; i < sizeof keys / sizeof keys[0]; i++) {
        size_t length = strlen(keys[i]);
        if (strncmp(line, keys[i], length) == 0 && strspn(line + length, " =") > 0)
            return true;
    }
    return false;
}

static int compare(const char *car, const char *line, json_t *before, json_t *after)
{
    int wrong = 0;
    size_t index;
    json_t *figure;
    json_array_foreach(json_object_get(before, "figures"), index, figure)
    {
        json_t *value = json_object_get(figure, "value");
        if (!json_is_real(value))
            continue;
        json_t *other = same_figure(after, figure);
        if (other == NULL)
            continue;
        json_t *now = json_object_get(other, "value");
        if (json_is_null(now) || !differs(json_number_value(value), json_number_value(now)))
            continue;
        if (strcmp(text_of(other, "state"), "assumed") != 0) {
            fprintf(stderr, "%s without \"%s\": %s of %s goes from %g to %g but says %s\n", car,
                    line, text_of(figure, "id"), text_of(figure, "of"), json_number_value(value),
                    json_number_value(now), text_of(other, "state"));
            wrong++;
        }
    }
    return wrong;
}

static void a_figure_that_changes_for_want_of_a_key_says_so(void **state)
{
    (void)state;
    char *paths[MOST_CARS];
    size_t count = variant_cars(paths);
    int wrong = 0, tried = 0, refused = 0;
    for (size_t car = 0; car < count; car++) {
        struct lines lines = variant_lines(paths[car]);
        json_t *before = ask_lines(&lines, -1, FP_CHECK);
        if (before == NULL)
            fprintf(stderr, "%s cannot be read\n", paths[car]);
        assert_non_null(before);
        char section[256] = "";
        for (size_t i = 0; i < lines.count; i++) {
            const char *line = lines.items[i];
            if (line[0] == '[')
                snprintf(section, sizeof section, "%s", line);
            if (line[0] == '[' || line[0] == ';' || strchr(line, '=') == NULL ||
                makes_another_car(section, line))
                continue;
            json_t *after = ask_lines(&lines, (long)i, FP_CHECK);
            tried++;
            if (after == NULL) {
                refused++;
                continue;
            }
            wrong += compare(strrchr(paths[car], '/') + 1, line, before, after);
            json_decref(after);
        }
        json_decref(before);
        variant_finish(&lines);
        free(paths[car]);
    }
    printf("%d keys left out, %d of them required\n", tried, refused);
    assert_true(tried > 200);
    assert_true(refused < tried / 2);
    assert_int_equal(wrong, 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_figure_that_changes_for_want_of_a_key_says_so),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
