/* Sections in another order, the car mirrored, joints renamed: the same answers. */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "support/cmocka_all.h"
#include "variant.h"

/* Swaps two words wherever they stand as words; the caller frees the result. */
static char *swap_words(const char *text, const char *a, const char *b)
{
    size_t longest = strlen(a) > strlen(b) ? strlen(a) : strlen(b);
    char *out = calloc(1, strlen(text) * (longest + 1) + 1);
    assert_non_null(out);
    char *end = out;
    for (const char *at = text; *at != '\0';) {
        bool starts = at == text || strchr(" \n[.,=", at[-1]) != NULL;
        const char *words[2] = {a, b};
        int hit = -1;
        for (int i = 0; i < 2 && starts; i++) {
            size_t length = strlen(words[i]);
            if (strncmp(at, words[i], length) == 0 && strchr(" \n].,=", at[length]) != NULL)
                hit = i;
        }
        if (hit < 0) {
            *end++ = *at++;
            continue;
        }
        end += sprintf(end, "%s", words[1 - hit]);
        at += strlen(words[hit]);
    }
    return out;
}

static char *join(const struct lines *lines)
{
    size_t size = 1;
    for (size_t i = 0; i < lines->count; i++)
        size += strlen(lines->items[i]) + 1;
    char *text = calloc(1, size);
    assert_non_null(text);
    char *end = text;
    for (size_t i = 0; i < lines->count; i++)
        end += sprintf(end, "%s\n", lines->items[i]);
    return text;
}

/* Every section stands whole, the last first. */
static char *reversed_sections(const struct lines *lines)
{
    size_t starts[MOST_LINES + 1], count = 0;
    for (size_t i = 0; i < lines->count; i++)
        if (lines->items[i][0] == '[')
            starts[count++] = i;
    starts[count] = lines->count;
    struct lines turned = {0};
    for (size_t s = count; s-- > 0;)
        for (size_t i = starts[s]; i < starts[s + 1]; i++)
            turned.items[turned.count++] = lines->items[i];
    return join(&turned);
}

static int compare_figures(const char *what, json_t *before, json_t *after, bool mirrored)
{
    int wrong = 0;
    size_t index;
    json_t *figure;
    json_array_foreach(json_object_get(before, "figures"), index, figure)
    {
        json_t *sought = json_deep_copy(figure);
        if (mirrored) {
            char padded[256];
            snprintf(padded, sizeof padded, "%s ", text_of(figure, "of"));
            char *of = swap_words(padded, "left", "right");
            of[strlen(of) - 1] = '\0';
            json_object_set_new(sought, "of", json_string(of));
            free(of);
        }
        json_t *other = same_figure(after, sought);
        double a = json_number_value(json_object_get(figure, "value"));
        double b = other != NULL ? json_number_value(json_object_get(other, "value")) : NAN;
        if (!(fabs(a - b) <= 1e-9 * (fabs(a) + fabs(b)))) {
            fprintf(stderr, "%s: %s of %s is %g, was %g\n", what, text_of(figure, "id"),
                    text_of(sought, "of"), b, a);
            wrong++;
        }
        json_decref(sought);
    }
    return wrong;
}

static double run_at(json_t *steps, size_t i)
{
    return i < json_array_size(steps)
               ? json_number_value(json_object_get(json_array_get(steps, i), "run"))
               : NAN;
}

/* Two nipples with the same run on a vehicle without a driver's side tie: which of the two comes
 * first says nothing about the vehicle, and stays the same when it is mirrored. */
static bool is_a_tie(json_t *a, json_t *b, size_t i)
{
    return strcmp(text_of(json_array_get(a, i), "part"), text_of(json_array_get(b, i), "part")) ==
               0 &&
           (run_at(a, i) == run_at(a, i + 1) || (i > 0 && run_at(a, i) == run_at(a, i - 1)));
}

static int compare_steps(const char *what, json_t *before, json_t *after, bool mirrored)
{
    json_t *a = json_object_get(json_object_get(before, "bleed"), "steps");
    json_t *b = json_object_get(json_object_get(after, "bleed"), "steps");
    int wrong = json_array_size(a) != json_array_size(b);
    for (size_t i = 0; i < json_array_size(a) && i < json_array_size(b); i++) {
        char padded[256];
        snprintf(padded, sizeof padded, "%s ", text_of(json_array_get(a, i), "part"));
        char *part = mirrored ? swap_words(padded, "left", "right") : strdup(padded);
        part[strlen(part) - 1] = '\0';
        if (strcmp(part, text_of(json_array_get(b, i), "part")) != 0 && !is_a_tie(a, b, i)) {
            fprintf(stderr, "%s: step %zu is at %s, should be at %s\n", what, i + 1,
                    text_of(json_array_get(b, i), "part"), part);
            wrong++;
        }
        free(part);
    }
    return wrong;
}

static int compare(const char *car, const char *how, const char *before, const char *after,
                   bool mirrored)
{
    char what[512];
    snprintf(what, sizeof what, "%s %s", strrchr(car, '/') + 1, how);
    int wrong = 0;
    for (int question = 0; question < 2; question++) {
        enum fp_question asked = question == 0 ? FP_CHECK : FP_BLEED;
        json_t *a = ask_text(before, asked);
        json_t *b = ask_text(after, asked);
        if (a == NULL || b == NULL) {
            fprintf(stderr, "%s: cannot be read\n", what);
            wrong++;
        } else if (asked == FP_CHECK) {
            wrong += compare_figures(what, a, b, mirrored);
        } else {
            wrong += compare_steps(what, a, b, mirrored);
        }
        json_decref(a);
        json_decref(b);
    }
    return wrong;
}

static void each_car(int (*check)(const char *path, const struct lines *lines))
{
    char *paths[MOST_CARS];
    size_t count = variant_cars(paths);
    int wrong = 0;
    for (size_t i = 0; i < count; i++) {
        struct lines lines = variant_lines(paths[i]);
        wrong += check(paths[i], &lines);
        variant_finish(&lines);
        free(paths[i]);
    }
    assert_int_equal(wrong, 0);
}

static int turn_sections(const char *path, const struct lines *lines)
{
    char *before = join(lines), *after = reversed_sections(lines);
    int wrong = compare(path, "with its sections turned round", before, after, false);
    free(before);
    free(after);
    return wrong;
}

static int mirror(const char *path, const struct lines *lines)
{
    char *before = join(lines), *after = swap_words(before, "left", "right");
    int wrong = compare(path, "mirrored", before, after, true);
    free(before);
    free(after);
    return wrong;
}

static int rename_joints(const char *path, const struct lines *lines)
{
    char *before = join(lines), *once = swap_words(before, "axle tee", "zebra tee");
    char *after = swap_words(once, "front tee", "aardvark tee");
    int wrong = compare(path, "with other names", before, after, false);
    free(before);
    free(once);
    free(after);
    return wrong;
}

static void the_order_of_sections_changes_nothing(void **state)
{
    (void)state;
    each_car(turn_sections);
}

static void a_mirrored_car_gets_mirrored_answers(void **state)
{
    (void)state;
    each_car(mirror);
}

static void names_of_joints_change_nothing(void **state)
{
    (void)state;
    each_car(rename_joints);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_order_of_sections_changes_nothing),
        cmocka_unit_test(a_mirrored_car_gets_mirrored_answers),
        cmocka_unit_test(names_of_joints_change_nothing),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
