/* A car of as many parts as are taken: a chain of tees. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/resource.h>
#include <unistd.h>

#include "support/cmocka_all.h"
#include "support/run_cli.h"
#include "support/sanitized.h"

/* Beside the tees and the pipes between them: vehicle, fluid, pedal, master, two discs with a pipe
 * and a hose each, and the two unions between these: 13 parts with the pipe to the first tee. */
enum { PARTS_BESIDE = 13, MOST_PARTS = 300 };

static char path[] = "/tmp/firmpedal-chain-XXXXXX";

static int make_file(void **state)
{
    (void)state;
    int file = mkstemp(path);
    return file < 0 || close(file) != 0;
}

static int remove_file(void **state)
{
    (void)state;
    return unlink(path);
}

/* Writes a car with so many tees; gives how many parts that are. */
static int write_chain(int tees)
{
    FILE *file = fopen(path, "w");
    assert_non_null(file);
    fputs("[vehicle]\ntitle = chain\nmass = 1000 kg\nweight on front = 50 %\nwheelbase = 2.4 m\n"
          "height of mass centre = 0.5 m\nfront tyre radius = 0.3 m\nrear tyre radius = 0.3 m\n"
          "front axle = independent\n[fluid]\ngrade = DOT 4\n"
          "[brake pedal]\nworks = brake master\nratio = 5\ntravel = 150 mm\n"
          "[brake master]\ntype = single\nbore = 19.05 mm\nstroke = 30 mm\non = body\n"
          "height = 0.8 m\n[front disc]\ncaliper = fixed\nbore = 2 of 48 mm\n"
          "effective radius = 100 mm\nheight = 0.3 m\n[runs]\n"
          "feed = brake master, 0.1 m pipe, t0 tee\n",
          file);
    for (int i = 1; i < tees; i++)
        fprintf(file, "c%d = t%d tee, 0.1 m pipe, t%d tee\n", i, i - 1, i);
    fprintf(file, "left = t%d tee, 0.5 m pipe, 0.3 m hose, front left disc\n", tees - 1);
    fprintf(file, "right = t%d tee, 0.5 m pipe, 0.3 m hose, front right disc\n", tees - 1);
    assert_int_equal(fclose(file), 0);
    return PARTS_BESIDE + 2 * tees - 1;
}

static double processor_seconds(void)
{
    struct rusage used;
    assert_int_equal(getrusage(RUSAGE_CHILDREN, &used), 0);
    return (double)used.ru_utime.tv_sec + (double)used.ru_utime.tv_usec / 1e6;
}

static const char *const asked[][5] = {
    {"show", path},
    {"hoses", path},
    {"check", path, "--json"},
    {"bleed", path},
    {"curve", path},
    {"open", path},
    {"fit", path, "--cylinder=brake master", "--bore=7/8 in"},
    {"trace", path, "--figure=pedal-travel"},
};
enum { ASKED = sizeof asked / sizeof *asked };

static void ask_all(double seconds[static ASKED])
{
    for (size_t i = 0; i < ASKED; i++) {
        double before = processor_seconds();
        struct run run = run_cli_list(NULL, asked[i]);
        if (run.timed_out || run.signal != 0 || (run.status != 0 && run.status != 1))
            fail_msg("%s: status %d, %.300s", asked[i][0], run.status, run.err);
        run_finish(&run);
        seconds[i] = processor_seconds() - before;
    }
}

/* Each of n values is moved, and each time a car of n parts is solved: the square, four times the
 * work for twice the parts. Eight times would be the cube. */
static void no_answer_grows_faster_than_the_square_of_the_parts(void **state)
{
    (void)state;
    double half[ASKED], whole[ASKED];
    int tees = (MOST_PARTS - PARTS_BESIDE + 1) / 2;
    write_chain(SANITIZED ? tees / 4 : tees / 2);
    ask_all(half);
    if (SANITIZED) /* whose time says nothing */
        return;
    int parts = write_chain(tees);
    assert_int_equal(parts, MOST_PARTS);
    ask_all(whole);
    for (size_t i = 0; i < ASKED; i++)
        if (whole[i] > 0.3 && whole[i] > 6.5 * half[i])
            fail_msg("%s: %.2f s for half the parts, %.2f s for all", asked[i][0], half[i],
                     whole[i]);
}

static void more_parts_are_refused_at_once(void **state)
{
    (void)state;
    static const int tees[] = {(MOST_PARTS - PARTS_BESIDE + 1) / 2 + 1, 5000};
    for (size_t i = 0; i < sizeof tees / sizeof *tees; i++) {
        assert_true(write_chain(tees[i]) > MOST_PARTS);
        double before = processor_seconds();
        struct run run = run_cli("check", path);
        double took = processor_seconds() - before;
        assert_int_equal(run.status, 3);
        assert_non_null(strstr(run.err, "a description has up to 300 [too-many-parts]"));
        assert_null(strstr(strstr(run.err, "too-many-parts") + 1, "mistake:"));
        assert_true(took < 5);
        run_finish(&run);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(no_answer_grows_faster_than_the_square_of_the_parts),
        cmocka_unit_test(more_parts_are_refused_at_once),
    };
    return cmocka_run_group_tests(tests, make_file, remove_file);
}
