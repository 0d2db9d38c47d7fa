/* The program from outside: what it answers, where, and with which exit status. */
#include <jansson.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "support/near.h"
#include "support/run_cli.h"

#define CAR  "systems/village-van.ini"
#define WORK "demo/village-van-work.ini"

static void expect(struct run run, int status, const char *in_out, const char *in_err)
{
    if (run.status != status || (in_out != NULL && !says(run.out, in_out)) ||
        (in_err != NULL && !says(run.err, in_err)))
        fprintf(stderr, "status %d\n--- out\n%.2000s\n--- err\n%.2000s\n", run.status, run.out,
                run.err);
    assert_int_equal(run.status, status);
    if (in_out != NULL)
        assert_true(says(run.out, in_out));
    if (in_err != NULL)
        assert_true(says(run.err, in_err));
    run_finish(&run);
}

static void without_a_command_it_says_which_there_are(void **state)
{
    (void)state;
    expect(run_cli_list(NULL, (const char *const[]){NULL}), 2, NULL, "check");
    expect(run_cli("--help"), 0, "Exit status", NULL);
    expect(run_cli("check", "--help"), 0, "check CAR", NULL);
    expect(run_cli("--version"), 0, "firmpedal ", NULL);
}

static void help_is_a_command_too(void **state)
{
    (void)state;
    expect(run_cli("help"), 0, "firmpedal check van.ini", NULL);
    expect(run_cli("help", "bleed"), 0, "--shut-early", NULL);
    expect(run_cli("help", "bled"), 2, NULL, "no command bled");
}

/* A terminal's width comes by COLUMNS; none is narrower than 40 nor wider than 100. Colour needs a
 * terminal, so there is none here. */
static void lines_are_as_long_as_columns_says(void **state)
{
    (void)state;
    static const int widths[][2] = {{20, 40}, {40, 40}, {64, 64}, {100, 100}, {300, 100}};
    for (size_t i = 0; i < sizeof widths / sizeof *widths; i++) {
        static const char *const asked[] = {"help", "help bleed", "check " CAR, "bleed " CAR " -a",
                                            "explain line-pressure"};
        char command[200];
        for (size_t a = 0; a < sizeof asked / sizeof *asked; a++) {
            snprintf(command, sizeof command, "COLUMNS=%d \"$FIRMPEDAL\" %s | LC_ALL=C.UTF-8 wc -L",
                     widths[i][0], asked[a]);
            struct run run = run_program(
                getenv("SOURCE_ROOT"), (const char *const[]){"sh", "-c", command, NULL}, NULL, 60);
            assert_true(atoi(run.out) <= widths[i][1]);
            assert_true(atoi(run.out) > widths[i][1] / 2);
            run_finish(&run);
        }
    }
}

static void wrong_use_ends_with_two(void **state)
{
    (void)state;
    expect(run_cli("chek", CAR), 2, NULL, "no command chek");
    expect(run_cli("check"), 2, NULL, "check CAR");
    expect(run_cli("check", CAR, "--unit", "metric"), 2, NULL, "no option --unit");
    expect(run_cli("check", CAR, "--units", "furlongs"), 2, NULL, "metric|imperial");
    expect(run_cli("check", CAR, "--effort", "300"), 2, NULL, "--effort");
    expect(run_cli("check", CAR, "--date", "yesterday"), 2, NULL, "--date");
    expect(run_cli("check", CAR, "--bore", "1 in"), 2, NULL, "no option --bore");
    expect(run_cli("fit", CAR), 2, NULL, "--cylinder");
    expect(run_cli("fit", CAR, "--cylinder", "gearbox", "--bore", "1 in"), 2, NULL, "brake master");
    expect(run_cli("fit", CAR, "--cylinder", "brake master", "--bore", "22"), 2, NULL, "unit");
    expect(run_cli("bleed", CAR, "--order", "rear lefd"), 2, NULL, "nearest is \"rear left\"");
    expect(run_cli("bleed", CAR, "--order", "disc"), 2, NULL, "front left disc, front right disc");
    expect(run_cli("bleed", CAR, "--method", "prayer"), 2, NULL, "gravity");
    expect(run_cli("check", CAR, "--shut-early"), 2, NULL, "no option --shut-early");
    expect(run_cli("sheet", CAR), 2, NULL, "--output");
    expect(run_cli("explain", "line-presure"), 2, NULL, "line-pressure");
}

static void a_file_that_cannot_be_used_ends_with_three(void **state)
{
    (void)state;
    expect(run_cli("check", "systems/no-such-car.ini"), 3, NULL, "no-such-car.ini");
    expect(run_cli("check", "systems"), 3, NULL, "systems");
    expect(run_cli("check", CAR, CAR), 3, NULL, "village-van.ini:");
    expect(run_cli("check", "README.md"), 3, NULL, "README.md:");
}

static void hoses_tell_complete_or_not_in_one_line_and_by_status(void **state)
{
    (void)state;
    struct run run = run_cli("hoses", CAR, WORK, "--date", "2026-11-25");
    assert_int_equal(run.status, 1);
    char *end = strchr(run.out, '\n');
    assert_non_null(end);
    *end = '\0';
    assert_non_null(strstr(run.out, "not complete"));
    run_finish(&run);
    run = run_cli("hoses", "systems/hill-coupe.ini", "--date", "2026-11-25");
    assert_int_equal(run.status, 0);
    end = strchr(run.out, '\n');
    *end = '\0';
    assert_non_null(strstr(run.out, "complete"));
    assert_null(strstr(run.out, "not complete"));
    run_finish(&run);
}

static void what_is_mostly_assumed_or_beyond_its_limits_says_so_beside_the_figure(void **state)
{
    (void)state;
    expect(run_cli("check", CAR, "--all", "--fail-at", "danger"), 0, "mm ** pedal-travel\n", NULL);
    expect(run_cli("check", CAR, "--json", "--fail-at", "danger"), 0, "\"mostly_assumed\": true",
           NULL);
    expect(run_cli("check", CAR, "--json", "--fail-at", "danger"), 0, "\"met\": true", NULL);
    const char *floor = "tests/cases/findings/pedal-on-floor.ini";
    expect(run_cli("check", floor, "--all", "--effort", "900 N"), 1,
           "LIMITS NOT MET: the pedal meets its floor", NULL);
    expect(run_cli("check", floor, "--json", "--effort", "900 N"), 1, "\"met\": false", NULL);
    expect(run_cli("trace", floor, "-g", "pedal-travel", "-i", "brake pedal", "--effort", "900 N"),
           0, "NOT MET", NULL);
}

static void a_figure_is_traced_to_its_lines(void **state)
{
    (void)state;
    expect(run_cli("trace", CAR, "--all", "--figure", "deceleration"), 0, "village-van.ini:10",
           NULL);
    expect(run_cli("trace", CAR, "-a", "-g", "line-pressure", "-i", "front circuit"), 0,
           "only beyond a knee", NULL);
    expect(run_cli("trace", CAR, WORK, "-a", "-g", "line-pressure", "-i", "front circuit"), 0,
           "taken from a work file, demo/village-van-work.ini:11", NULL);
    expect(run_cli("trace", CAR, "-g", "reservoir-volume-needed", "-i", "front circuit"), 0,
           "for example pad left = ", NULL);
    expect(run_cli("trace", CAR, "-g", "pedal-travel", "--effort", "300 N"), 0, "as asked for",
           NULL);
    expect(run_cli("trace", CAR), 2, NULL, "pedal-travel");
    expect(run_cli("trace", CAR, "-g", "pedal-travl"), 2, NULL, "nearest: pedal-travel");
    expect(run_cli("trace", CAR, "-g", "line-pressure"), 2, NULL, "\"rear circuit\"");
    expect(run_cli("check", CAR, "-g", "line-pressure"), 2, NULL, "no option --figure");
}

/* The same in JSON: the file's line, the text as it stands there, and by hand what a hundredth more
 * of the bore takes off the pressure: 1/1.01^2 - 1 = -0.019704. */
static void a_trace_in_json_gives_the_line_and_its_text(void **state)
{
    (void)state;
    struct run run = run_cli("trace", CAR, "-j", "-g", "line-pressure", "-i", "front circuit");
    assert_int_equal(run.status, 0);
    json_t *answer = json_loads(run.out, 0, NULL), *input;
    assert_non_null(answer);
    json_t *trace = json_object_get(answer, "trace");
    assert_true(json_array_size(json_object_get(trace, "steps")) > 2);
    assert_true(json_array_size(json_object_get(trace, "cases")) > 1);
    bool found = false;
    size_t index;
    json_array_foreach(json_object_get(trace, "inputs"), index, input)
    {
        if (strcmp(json_string_value(json_object_get(input, "part")), "brake master") != 0 ||
            strcmp(json_string_value(json_object_get(input, "key")), "bore") != 0)
            continue;
        found = true;
        assert_int_equal(json_integer_value(json_object_get(input, "line")), 41);
        assert_string_equal(json_string_value(json_object_get(input, "text")), "13/16 in");
        assert_string_equal(json_string_value(json_object_get(input, "origin")), "given");
        near(json_real_value(json_object_get(input, "for_1_percent_more")), -0.0197039506, 1e-9);
    }
    assert_true(found);
    json_decref(answer);
    run_finish(&run);
}

static void the_curve_says_what_takes_the_travel_in_each_case(void **state)
{
    (void)state;
    expect(run_cli("curve", CAR), 0, "free play", NULL);
    expect(run_cli("curve", CAR), 0, "front circuit lost", NULL);
    expect(run_cli("curve", CAR, WORK, "--units", "imperial"), 0, "lbf", NULL);
    expect(run_cli("curve", CAR, "--json"), 0, "\"taken_by\"", NULL);
    expect(run_cli("curve", "systems/twin-disc-motorcycle.ini"), 0, "against effort", NULL);
    expect(run_cli("curve", CAR, "--figure", "deceleration"), 2, NULL, "no option --figure");
}

static void the_forgotten_hose_is_named(void **state)
{
    (void)state;
    expect(run_cli("hoses", CAR, WORK, "--date", "2026-11-25"), 1, "rear feed hose", NULL);
    struct run run = run_cli("check", CAR, WORK, "--date", "2026-11-25");
    assert_int_equal(run.status, 1);
    char *finding = strstr(run.out, "hoses are");
    assert_non_null(finding);
    assert_non_null(strstr(finding, "rear feed hose"));
    run_finish(&run);
}

static void the_fail_at_option_moves_the_status(void **state)
{
    (void)state;
    expect(run_cli("check", CAR, WORK, "--date", "2026-11-25", "--fail-at", "note"), 1, NULL, NULL);
    expect(run_cli("check", "systems/family-saloon.ini", "--date", "2025-11-01", "--fail-at",
                   "danger"),
           0, NULL, NULL);
}

static void another_bore_gets_a_verdict(void **state)
{
    (void)state;
    struct run run =
        run_cli("fit", CAR, "--cylinder", "brake master", "--bore", "7/8 in", "--json");
    assert_true(run.status == 0 || run.status == 1);
    assert_non_null(strstr(run.out, "\"verdict\""));
    assert_non_null(strstr(run.out, "line-pressure"));
    run_finish(&run);
    expect(run_cli("fit", CAR, "--cylinder", "brake master", "--bore", "1-3/8 in"), 1, NULL, NULL);
    run = run_cli("fit", CAR, "--cylinder", "rear drum", "--bore", "11/16 in");
    assert_true(run.status == 0 || run.status == 1);
    assert_non_null(strstr(run.out, "17.46 mm"));
    run_finish(&run);
}

/* One bore, the same as a change, and the same as a file are one question. */
static void what_is_tried_may_be_said_in_three_ways(void **state)
{
    (void)state;
    char path[] = "/tmp/firmpedal-tried-XXXXXX";
    const char *words = "[replaced rear drum]\nbore = 11/16 in\n";
    int file = mkstemp(path);
    assert_true(file >= 0 && write(file, words, strlen(words)) == (ssize_t)strlen(words));
    close(file);
    struct run bore = run_cli("fit", CAR, "--cylinder", "rear drum", "--bore", "11/16 in");
    struct run change = run_cli("fit", CAR, "--change", "rear drum: bore = 11/16 in");
    struct run tried = run_cli("fit", CAR, "--try", path);
    assert_string_equal(bore.out, change.out);
    assert_string_equal(bore.out, tried.out);
    run_finish(&bore);
    run_finish(&change);
    run_finish(&tried);
    expect(run_cli("fit", CAR, "--change", "rear drum: bore = 11/16 in, drum diameter = 210 mm",
                   "--change", "brake pedal: pad to pivot = 300 mm"),
           0, "rear drums, drum diameter: 210 mm instead of 203 mm", NULL);
    expect(run_cli("fit", CAR, "--change", "rear drum"), 2, NULL, "a colon");
    expect(run_cli("fit", CAR, "--change", "gearbox: bore = 1 in"), 2, NULL, "gearbox");
    expect(run_cli("fit", CAR, "--change", "rear drum: bore = 11"), 2, NULL, "unit");
    expect(run_cli("fit", CAR, "--change", "brake master: type = single"), 2, NULL,
           "join the pipes otherwise");
    expect(run_cli("fit", CAR, "--try", "/tmp/there/is/none"), 2, NULL, "/tmp/there/is/none");
    unlink(path);
}

static void bores_are_chosen(void **state)
{
    (void)state;
    expect(run_cli("choose", CAR), 2, NULL, "--among");
    expect(run_cli("choose", CAR, "--among", "gearbox"), 2, NULL, "brake master");
    expect(run_cli("choose", CAR, "--among", "brake master, brake master"), 2, NULL, "twice");
    expect(run_cli("choose", CAR, "--among", "brake master", "--at-hand", "22"), 2, NULL, "unit");
    expect(run_cli("choose", CAR, "--among", "brake master", "--at-hand", "rear drum: 1 in"), 2,
           NULL, "none of those");
    expect(run_cli("choose", CAR, "--among", "brake master", "--limit", "foot"), 2, NULL,
           "pedal left");
    expect(run_cli("choose", CAR, "--among", "brake master, rear drum", "--at-hand",
                   "3/4 in, 13/16 in", "--at-hand", "rear drum: 3/4 in"),
           0, "of 2 suit", NULL);
    expect(run_cli("choose", CAR, "--among", "brake master, rear drum"), 0,
           "rests on values of the car that are assumed", NULL);
    expect(run_cli("choose", CAR, "--among", "brake master, rear drum", "--limit", "foot = 20 N"),
           1, "foot stands in the way", NULL);
    static const char *const endings[] = {"svg", "png", "pdf"};
    for (size_t i = 0; i < sizeof endings / sizeof *endings; i++) {
        char path[64];
        snprintf(path, sizeof path, "/tmp/firmpedal-choice-%d.%s", (int)getpid(), endings[i]);
        expect(run_cli("choose", CAR, "--among", "brake master, rear drum", "-o", path), 0, path,
               NULL);
        expect(run_cli("choose", CAR, "--among", "brake master", "-o", path, "--replace"), 4, NULL,
               "two cylinders");
        unlink(path);
    }
    expect(run_cli("choose", CAR, "--among", "brake master, rear drum", "-o", "a.txt"), 2, NULL,
           "picture");
    struct run run = run_cli("choose", CAR, "--among", "brake master, clutch slave", "--limit",
                             "stop = 4 m/s2", "--json");
    assert_int_equal(run.status, 0);
    assert_non_null(strstr(run.out, "\"nearest_misses\""));
    run_finish(&run);
}

/* A hose's inside, a pipe's and a joint's are called a bore too; none of them is a cylinder. */
static void what_is_no_cylinder_is_refused_and_not_offered(void **state)
{
    (void)state;
    const char *const others[] = {"rear feed hose",  "rear feed pipe", "axle tee", "load valve",
                                  "brake reservoir", "brake pedal",    "vehicle"};
    for (size_t i = 0; i < sizeof others / sizeof *others; i++) {
        struct run run = run_cli("fit", CAR, "--cylinder", others[i], "--bore", "1/8 in");
        assert_int_equal(run.status, 2);
        const char *offered = strstr(run.err, "It has: ");
        assert_non_null(offered);
        assert_non_null(strstr(offered, "brake master, "));
        assert_non_null(strstr(offered, "rear left drum"));
        assert_non_null(strstr(offered, "clutch slave"));
        assert_null(strstr(offered, "hose"));
        assert_null(strstr(offered, "pipe"));
        run_finish(&run);
    }
}

/* Of what it was read is looked up in the car as it stands after the work. */
static void readings_stand_beside_their_figures_and_wrong_places_are_refused(void **state)
{
    (void)state;
    static const struct {
        const char *line, *words;
        int status;
    } rows[] = {
        {"pedal travel = 66 mm at 220 N", "66.0 mm at 220 N; computed 55.8 mm *: agrees", 1},
        {"line pressure of front = 10 bar at 100 N", "reading-off", 1},
        {"pedal left = 160 mm", "160 mm: not possible, the way of the", 1},
        {"line pressure = 60 bar", "say of which it was read: front circuit, rear circuit", 3},
        {"wheel pressure of boot = 60 bar", "front left disc, front right disc", 3},
        {"wheel pressure of front disc = 60 bar", "wheel pressure of front left disc = 60 bar", 3},
        {"deceleration of car = 5 m/s2", "of the whole car", 3},
        {"residual pressure of rear = 0.5 bar", "nothing that a residual pressure", 3},
    };
    char folder[] = "/tmp/firmpedal-readings-XXXXXX", path[64];
    assert_non_null(mkdtemp(folder));
    snprintf(path, sizeof path, "%s/work.ini", folder);
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        FILE *out = fopen(path, "w");
        assert_non_null(out);
        fprintf(out,
                "[work]\ncar = Village van\ndate = 2026-11-20\nrenewed = clutch slave\n"
                "[readings]\n%s\n",
                rows[i].line);
        fclose(out);
        expect(run_cli("check", CAR, path), rows[i].status,
               rows[i].status == 3 ? NULL : rows[i].words,
               rows[i].status == 3 ? rows[i].words : NULL);
    }
    remove(path);
    remove(folder);
}

static char *temporary_car(const char *words)
{
    static char path[] = "/tmp/firmpedal-car-XXXXXX";
    memcpy(path + sizeof path - 7, "XXXXXX", 6);
    int file = mkstemp(path);
    assert_true(file >= 0);
    assert_int_equal(write(file, words, strlen(words)), (ssize_t)strlen(words));
    close(file);
    return path;
}

/* Nothing is fine, complete or met that could not be worked out, and what would tell is named. */
static void what_is_not_worked_out_is_said_at_the_top(void **state)
{
    (void)state;
    const char *car = temporary_car("[vehicle]\n"
                                    "title = Bores alone\n"
                                    "[brake fluid]\n"
                                    "grade = DOT 4\n"
                                    "[brake master]\n"
                                    "type = single\n"
                                    "bore = 3/4 in\n"
                                    "[front drum]\n"
                                    "shoes = leading and trailing\n"
                                    "bore = 7/8 in\n"
                                    "[rear drum]\n"
                                    "shoes = leading and trailing\n"
                                    "bore = 3/4 in\n"
                                    "[runs]\n"
                                    "front left = brake master, pipe, hose, front left drum\n"
                                    "front right = brake master, pipe, hose, front right drum\n"
                                    "rear left = brake master, pipe, hose, rear left drum\n"
                                    "rear right = brake master, pipe, hose, rear right drum\n");
    struct run run = run_cli("check", car);
    assert_non_null(strstr(run.out, "Not worked out: "));
    assert_true(says(run.out, "no pedal is described that works its master"));
    assert_null(strstr(run.out, "meets the number"));
    run_finish(&run);
    expect(run_cli("hoses", car), 1, "cannot say: needs [vehicle] front axle, [vehicle] rear axle",
           NULL);
    expect(run_cli("bleed", car, "--all"), 0, "? gravity alone", NULL);
    expect(run_cli("fit", car, "-c", "brake master", "-b", "7/8 in"), 1,
           "cannot say: no pedal is described", NULL);
    remove(car);
    expect(run_cli("check", CAR, "--all", "-f", "danger"), 0,
           "30 %; this car: cannot say: both sides", NULL);
}

/* A nipple at the bottom of its chamber lets none of the air out: nothing is drawn off in vain. */
static void no_step_draws_off_nothing(void **state)
{
    (void)state;
    size_t size;
    char *path = source_path("systems/hill-coupe.ini"), *words = read_whole(path, &size);
    char changed[16384] = "", *at = words;
    for (char *line; (line = strsep(&at, "\n")) != NULL;) {
        strcat(strcat(changed, line), "\n");
        if (strstr(line, "disc]") != NULL)
            strcat(changed, "nipple below top = 50 mm\n");
    }
    assert_true(strlen(changed) > size);
    const char *car = temporary_car(changed);
    struct run run = run_cli("bleed", car, "--all");
    assert_null(strstr(run.out, "0.00 mL (assumed)"));
    assert_true(says(run.out, "no air that can leave comes out here"));
    assert_true(says(run.out, "of air stay above the nipple"));
    run_finish(&run);
    run = run_cli("bleed", car);
    assert_null(strstr(run.out, "0.00 mL *"));
    assert_true(says(run.out, "of air stay above the nipple"));
    run_finish(&run);
    remove(car);
    free(words);
    free(path);
}

static void one_hose_is_not_all_of_them(void **state)
{
    (void)state;
    const char *car = temporary_car("[vehicle]\n"
                                    "title = Clutch alone\n"
                                    "[clutch fluid]\n"
                                    "grade = DOT 4\n"
                                    "[clutch pedal]\n"
                                    "works = clutch master\n"
                                    "ratio = 5.5\n"
                                    "travel = 140 mm\n"
                                    "[clutch master]\n"
                                    "type = single\n"
                                    "bore = 5/8 in\n"
                                    "stroke = 30 mm\n"
                                    "[clutch slave]\n"
                                    "type = outside\n"
                                    "bore = 7/8 in\n"
                                    "fork ratio = 1.7\n"
                                    "[runs]\n"
                                    "line = clutch master, 0.9 m pipe, 0.3 m hose, clutch slave\n");
    struct run run = run_cli("hoses", car);
    assert_null(strstr(run.out, "All 1"));
    assert_non_null(strstr(run.out, "The one there must be is there, but 1 is old or of"));
    run_finish(&run);
    remove(car);
}

static void the_verdict_of_a_fit_stands_in_the_third_line(void **state)
{
    (void)state;
    static const struct {
        const char *car, *cylinder, *bore, *verdict;
        int status;
    } rows[] = {
        {CAR, "brake master", "7/8 in", "suits, with care", 0},
        {CAR, "brake master", "13/16 in", "nothing changes", 0},
        {CAR, "brake master", "2 in", "does not suit", 1},
        {CAR, "rear drum", "5/8 in", "", 1},
        {CAR, "clutch slave", "15/16 in", "", 1},
        {"systems/hill-coupe.ini", "front master", "18 mm", "", 1},
    };
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        struct run run =
            run_cli("fit", rows[i].car, "--cylinder", rows[i].cylinder, "--bore", rows[i].bore);
        if (*rows[i].verdict != '\0')
            assert_int_equal(run.status, rows[i].status);
        int lines = 0;
        const char *third = run.out;
        for (const char *at = run.out; (at = strchr(at, '\n')) != NULL; at++)
            if (++lines == 2)
                third = at + 1;
        assert_true(lines <= 20);
        assert_memory_equal(third, rows[i].verdict, strlen(rows[i].verdict));
        run_finish(&run);
    }
    expect(run_cli("fit", CAR, "-c", "brake master", "-b", "7/8 in", "--all"), 0,
           "Brake torque, front left disc", NULL);
    expect(run_cli("hoses", CAR, "--all"), 2, NULL, "no option --all");
}

static void efforts_and_units_can_be_chosen(void **state)
{
    (void)state;
    expect(run_cli("check", CAR, "--effort", "70 lbf", "--units", "imperial"), 1, "psi", NULL);
    expect(run_cli("check", CAR, "--effort", "300 N"), 1, "bar", NULL);
}

static void what_show_prints_reads_back_to_the_same_figures(void **state)
{
    (void)state;
    struct run shown = run_cli("show", CAR);
    assert_int_equal(shown.status, 0);
    char path[] = "/tmp/firmpedal-shown-XXXXXX";
    int file = mkstemp(path);
    assert_true(file >= 0);
    FILE *out = fdopen(file, "w");
    assert_non_null(out);
    fputs(shown.out, out);
    fclose(out);
    struct run before = run_cli("check", CAR, "--json", "--date", "2026-11-25");
    struct run after = run_cli("check", path, "--json", "--date", "2026-11-25");
    assert_int_equal(after.status, before.status);
    /* Values, one after the other, are the same; assumed marks are lost on purpose when a value is
     * written out, so only numbers are compared. */
    const char *a = before.out, *b = after.out;
    int figures = 0;
    while ((a = strstr(a, "\"value\": ")) != NULL && (b = strstr(b, "\"value\": ")) != NULL) {
        double x = strtod(a + 9, NULL), y = strtod(b + 9, NULL);
        if (!(x - y <= 1e-6 * (x + 1e-9) && y - x <= 1e-6 * (x + 1e-9)) && x >= 0)
            fprintf(stderr, "%.60s | %.60s\n", a, b);
        assert_true(x < 0 || (x - y <= 1e-6 * x + 1e-12 && y - x <= 1e-6 * x + 1e-12));
        a++;
        b++;
        figures++;
    }
    assert_true(figures > 20);
    run_finish(&shown);
    run_finish(&before);
    run_finish(&after);
    remove(path);
}

/* The list names a layout a line, two blanks in. */
static void every_layout_has_a_starter_and_a_measuring_sheet(void **state)
{
    (void)state;
    struct run list = run_cli("start");
    int layouts = 0;
    for (char *line = strtok(list.out, "\n"); line != NULL; line = strtok(NULL, "\n")) {
        char *end = strncmp(line, "  ", 2) == 0 ? strstr(line + 2, "  ") : NULL;
        if (end == NULL)
            continue;
        *end = '\0';
        expect(run_cli("start", line + 2), 0, "[vehicle]", NULL);
        expect(run_cli("measure", line + 2), 0, "MEASURING SHEET", NULL);
        layouts++;
    }
    assert_true(layouts >= 6);
    run_finish(&list);
    expect(run_cli("start", "rear", "drums,", "right,", "front", "discs"), 0, "driver = right",
           NULL);
    expect(run_cli("start", "twin masters, direct servo"), 2, NULL, NULL);
    expect(run_cli("start", "steam"), 2, NULL, NULL);
    expect(run_cli("measure", "steam"), 2, NULL, NULL);
}

static void what_a_soft_pedal_feels_like_is_told_as_text_and_json(void **state)
{
    (void)state;
    expect(run_cli("soft", CAR), 0, "high and hard at the third", NULL);
    struct run run = run_cli("soft", CAR, "--json");
    json_t *json = json_loads(run.out, 0, NULL);
    assert_non_null(json);
    json_decref(json);
    run_finish(&run);
    expect(run_cli("soft"), 2, NULL, "soft CAR");
}

static void words_are_explained_and_pages_are_printed(void **state)
{
    (void)state;
    expect(run_cli("explain", "bore"), 0, "caliper", NULL);
    expect(run_cli("explain", "hose-old"), 0, "source", NULL);
    expect(run_cli("page", "input"), 0, "[vehicle]", NULL);
    expect(run_cli("page", "findings"), 0, "hose-old", NULL);
    expect(run_cli("page", "weather"), 2, NULL, NULL);
}

static void a_step_at_a_time_fits_a_small_screen(void **state)
{
    (void)state;
    struct run run = run_cli("bleed", CAR, WORK, "--step", "1");
    assert_true(run.status == 0 || run.status == 1);
    int lines = 0, longest = 0, letters = 0;
    for (const char *at = run.out; *at != '\0'; at++) {
        if (*at == '\n') {
            lines++;
            letters = 0;
        } else if (++letters > longest) {
            longest = letters;
        }
    }
    assert_true(lines > 2 && lines <= 20);
    assert_true(longest <= 40);
    run_finish(&run);
}

static void text_stays_within_eighty_columns(void **state)
{
    (void)state;
    static const char *const commands[] = {"check", "bleed", "open", "hoses"};
    for (size_t i = 0; i < 4; i++) {
        struct run run = run_cli(commands[i], CAR, WORK, "--date", "2026-11-25");
        int letters = 0;
        for (const unsigned char *at = (const unsigned char *)run.out; *at != '\0'; at++) {
            if (*at == '\n')
                letters = 0;
            else if ((*at & 0xC0) != 0x80)
                letters++;
            if (letters > 80)
                fprintf(stderr, "%s: ...%.40s\n", commands[i], at);
            assert_true(letters <= 80);
        }
        run_finish(&run);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(without_a_command_it_says_which_there_are),
        cmocka_unit_test(help_is_a_command_too),
        cmocka_unit_test(lines_are_as_long_as_columns_says),
        cmocka_unit_test(wrong_use_ends_with_two),
        cmocka_unit_test(a_file_that_cannot_be_used_ends_with_three),
        cmocka_unit_test(hoses_tell_complete_or_not_in_one_line_and_by_status),
        cmocka_unit_test(what_is_mostly_assumed_or_beyond_its_limits_says_so_beside_the_figure),
        cmocka_unit_test(a_figure_is_traced_to_its_lines),
        cmocka_unit_test(a_trace_in_json_gives_the_line_and_its_text),
        cmocka_unit_test(the_curve_says_what_takes_the_travel_in_each_case),
        cmocka_unit_test(the_forgotten_hose_is_named),
        cmocka_unit_test(the_fail_at_option_moves_the_status),
        cmocka_unit_test(another_bore_gets_a_verdict),
        cmocka_unit_test(what_is_tried_may_be_said_in_three_ways),
        cmocka_unit_test(bores_are_chosen),
        cmocka_unit_test(what_is_no_cylinder_is_refused_and_not_offered),
        cmocka_unit_test(readings_stand_beside_their_figures_and_wrong_places_are_refused),
        cmocka_unit_test(what_is_not_worked_out_is_said_at_the_top),
        cmocka_unit_test(no_step_draws_off_nothing),
        cmocka_unit_test(one_hose_is_not_all_of_them),
        cmocka_unit_test(the_verdict_of_a_fit_stands_in_the_third_line),
        cmocka_unit_test(efforts_and_units_can_be_chosen),
        cmocka_unit_test(what_show_prints_reads_back_to_the_same_figures),
        cmocka_unit_test(every_layout_has_a_starter_and_a_measuring_sheet),
        cmocka_unit_test(what_a_soft_pedal_feels_like_is_told_as_text_and_json),
        cmocka_unit_test(words_are_explained_and_pages_are_printed),
        cmocka_unit_test(a_step_at_a_time_fits_a_small_screen),
        cmocka_unit_test(text_stays_within_eighty_columns),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
