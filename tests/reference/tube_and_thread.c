/* Tubes and threads as printed. Outside sizes, 3/16 in wall, thread diameters and pitches: read in
 * trade print; 4.75 mm tube: DIN 74234, read as cited in print; other walls: SAE J527 and ISO 4038,
 * from memory. */
#include "parts/pipe.h"

#include <stdio.h>
#include <string.h>

#include "support/near.h"
#include "support/outside.h"

#define INCH 0.0254

static const struct outside tubes = {"U1", "Trade print; DIN 74234; walls also SAE J527, ISO 4038",
                                     "quoted; the last two from memory"};
static const struct outside threads = {"U2", "Trade print", "quoted"};

static void three_sixteenths_tube_is_0_1315_in_inside(void **state)
{
    (void)state;
    struct pipe pipe = {.size = {0.1875 * INCH}};
    pipe.wall = tube_usual_wall(pipe.size);
    outside_printed(&tubes, "3/16 in, wall", "in", 0.028, pipe.wall.m / INCH, 0.0005);
    outside_printed(&tubes, "3/16 in, inside", "in", 0.1315, pipe_inside(&pipe).m / INCH, 0.00005);
    outside_printed(&tubes, "3/16 in, inside", "mm", 3.340, pipe_inside(&pipe).m * 1000, 0.0005);
    outside_printed(&tubes, "3/16 in, inside, a builders' list", "in", 0.132,
                    pipe_inside(&pipe).m / INCH, 0.0005 + 1e-12);
}

static void tubes_have_their_printed_walls(void **state)
{
    (void)state;
    const struct {
        const char *name;
        double size, wall; /* mm */
    } printed[] = {{"3/16 in", 4.7625, 0.7112},
                   {"1/4 in", 6.35, 0.7112},
                   {"4.75 mm", 4.75, 0.7},
                   {"6 mm", 6, 1},
                   {"8 mm", 8, 1}};
    size_t count;
    const struct tube_row *rows = tube_rows(&count);
    for (size_t i = 0; i < sizeof printed / sizeof printed[0]; i++) {
        size_t j = 0;
        while (j < count && strcmp(rows[j].name, printed[i].name) != 0)
            j++;
        assert_true(j < count);
        char what[2][80];
        snprintf(what[0], sizeof what[0], "tube %s, outside", printed[i].name);
        snprintf(what[1], sizeof what[1], "tube %s, wall", printed[i].name);
        outside_printed(&tubes, what[0], "mm", printed[i].size, rows[j].size.m * 1000, 5e-5);
        outside_printed(&tubes, what[1], "mm", printed[i].wall, rows[j].wall.m * 1000, 5e-5);
    }
}

static void threads_have_their_printed_diameter_and_pitch(void **state)
{
    (void)state;
    const struct {
        const char *name;
        double major, pitch; /* mm */
    } printed[] = {
        {"3/8-24 UNF", 9.5250, 1.0583},   {"7/16-20 UNF", 11.1125, 1.2700},
        {"7/16-24 UNS", 11.1125, 1.0583}, {"1/2-20 UNF", 12.7000, 1.2700},
        {"5/8-18 UNF", 15.8750, 1.4111},  {"M10 x 1", 10.000, 1.000},
        {"M12 x 1", 12.000, 1.000},       {"M14 x 1.5", 14.000, 1.500},
    };
    size_t count;
    const struct thread_row *rows = thread_rows(&count);
    assert_int_equal(count, sizeof printed / sizeof printed[0]);
    for (size_t i = 0; i < count; i++) {
        size_t j = 0;
        while (j < count && strcmp(rows[j].name, printed[i].name) != 0)
            j++;
        assert_true(j < count);
        double digit = printed[i].name[0] == 'M' ? 5e-4 : 5e-5;
        double major = rows[j].major.m * 1000, pitch = rows[j].pitch.m * 1000;
        char what[2][80];
        snprintf(what[0], sizeof what[0], "%s, outside", printed[i].name);
        snprintf(what[1], sizeof what[1], "%s, pitch", printed[i].name);
        outside_printed(&threads, what[0], "mm", printed[i].major, major, digit);
        outside_printed(&threads, what[1], "mm", printed[i].pitch, pitch, digit);
    }
}

/* Printed as the cause of stripped threads: 0.475 mm and 0.058 mm apart. */
static void the_look_alikes_differ_by_half_a_millimetre(void **state)
{
    (void)state;
    size_t count;
    const struct thread_row *rows = thread_rows(&count), *inch = rows, *metric = rows;
    for (size_t i = 0; i < count; i++) {
        if (strcmp(rows[i].name, "3/8-24 UNF") == 0)
            inch = &rows[i];
        if (strcmp(rows[i].name, "M10 x 1") == 0)
            metric = &rows[i];
    }
    outside_printed(&threads, "M10 x 1 over 3/8-24, outside", "mm", 0.475,
                    (metric->major.m - inch->major.m) * 1000, 0.0005);
    outside_printed(&threads, "3/8-24 over M10 x 1, pitch", "mm", 0.058,
                    (inch->pitch.m - metric->pitch.m) * 1000, 0.0005);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(three_sixteenths_tube_is_0_1315_in_inside),
        cmocka_unit_test(tubes_have_their_printed_walls),
        cmocka_unit_test(threads_have_their_printed_diameter_and_pitch),
        cmocka_unit_test(the_look_alikes_differ_by_half_a_millimetre),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
