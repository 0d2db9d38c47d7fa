/* Every check has two cases: a car that it finds something about, and a car that it does not. Where
 * the check has a limit the two differ in one line, so that the limit alone flips it. */
#include <math.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "advice_car.h"
#include "base/text.h"
#include "support/run_cli.h"

static bool exists(struct arena *arena, const char *below)
{
    const char *root = getenv("SOURCE_ROOT");
    return access(text_print(arena, "%s/%s", root == NULL ? "." : root, below), R_OK) == 0;
}

/* The paths of a case: with its work file where it has one. */
struct case_paths {
    const char *car, *work;
};
static struct case_paths paths_of(struct arena *arena, const char *id, const char *which)
{
    struct case_paths paths = {text_print(arena, "tests/cases/findings/%s%s.ini", id, which),
                               text_print(arena, "tests/cases/findings/%s%s.work.ini", id, which)};
    if (!exists(arena, paths.work)) {
        paths.work = NULL;
    }
    return paths;
}

/* The car that each check speaks of, by its row: read and judged once for all tests. */
static int load_loud(void **state)
{
    struct arena *arena = arena_create();
    size_t count;
    const struct check_row *rows = check_rows(&count);
    struct advice_car *loud = calloc(count, sizeof *loud);
    for (size_t i = 0; loud != NULL && i < count; i++) {
        struct case_paths yes = paths_of(arena, rows[i].id, "");
        loud[i] = advice_car_judged(yes.car, yes.work);
        if (advice_finds(&loud[i], rows[i].id, NULL))
            continue;
        advice_car_finish(&loud[i]); /* it needs to know what the figures rest on */
        loud[i] = advice_car_load(yes.car, yes.work);
    }
    arena_destroy(arena);
    *state = loud;
    return loud == NULL;
}

static int finish_loud(void **state)
{
    struct advice_car *loud = *state;
    size_t count;
    check_rows(&count);
    for (size_t i = 0; i < count; i++)
        advice_car_finish(&loud[i]);
    free(loud);
    return 0;
}

static void every_check_has_a_car_that_it_speaks_of_and_one_that_it_does_not(void **state)
{
    const struct advice_car *loud = *state;
    struct arena *arena = arena_create();
    size_t count;
    const struct check_row *rows = check_rows(&count);
    int wrong = 0;
    for (size_t i = 0; i < count; i++) {
        struct case_paths no = paths_of(arena, rows[i].id, ".not");
        bool judged = loud[i].result->plan == NULL;
        struct advice_car quiet =
            judged ? advice_car_judged(no.car, no.work) : advice_car_load(no.car, no.work);
        if (!advice_finds(&loud[i], rows[i].id, NULL) || advice_finds(&quiet, rows[i].id, NULL)) {
            print_message("%s does not tell its two cases apart\n", rows[i].id);
            wrong++;
        }
        advice_car_finish(&quiet);
    }
    arena_destroy(arena);
    assert_int_equal(wrong, 0);
}

/* Lines of two files that are not the same, after their equal beginning and end are taken off. */
static int lines_between(const char *a, const char *b)
{
    size_t start = 0, a_end = strlen(a), b_end = strlen(b);
    while (a[start] != '\0' && a[start] == b[start]) {
        start++;
    }
    while (a_end > start && b_end > start && a[a_end - 1] == b[b_end - 1]) {
        a_end--;
        b_end--;
    }
    int breaks_in_a = 0, breaks_in_b = 0;
    for (size_t i = start; i < a_end; i++) {
        breaks_in_a += a[i] == '\n';
    }
    for (size_t i = start; i < b_end; i++) {
        breaks_in_b += b[i] == '\n';
    }
    int most = breaks_in_a > breaks_in_b ? breaks_in_a : breaks_in_b;
    return a_end == start && b_end == start ? 0 : most + 1;
}

static int difference(const char *one, const char *other)
{
    char *paths[] = {source_path(one), source_path(other)};
    char *texts[] = {read_whole(paths[0], NULL), read_whole(paths[1], NULL)};
    int lines = lines_between(texts[0], texts[1]);
    for (int i = 0; i < 2; i++) {
        free(paths[i]);
        free(texts[i]);
    }
    return lines;
}

static void a_limit_flips_its_check_by_one_line_alone(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    size_t count;
    const struct check_row *rows = check_rows(&count);
    int wrong = 0, limited = 0;
    for (size_t i = 0; i < count; i++) {
        if (rows[i].limit == NULL) {
            continue;
        }
        limited++;
        struct case_paths yes = paths_of(arena, rows[i].id, "");
        struct case_paths no = paths_of(arena, rows[i].id, ".not");
        int lines = difference(yes.car, no.car);
        if (yes.work != NULL) {
            lines += difference(yes.work, no.work);
        }
        /* a line that is there in one only reads as two: itself and its neighbour */
        if (lines < 1 || lines > 2) {
            print_message("the cases of %s differ in %d lines\n", rows[i].id, lines);
            wrong++;
        }
    }
    arena_destroy(arena);
    assert_true(limited > 20);
    assert_int_equal(wrong, 0);
}

static void no_word_of_a_finding_is_left_unfilled(void **state)
{
    const struct advice_car *loud = *state;
    size_t count;
    check_rows(&count);
    for (size_t i = 0; i < count; i++) {
        for (size_t f = 0; f < loud[i].result->findings.count; f++) {
            const struct finding *finding = &loud[i].result->findings.items[f];
            const char *words[] = {finding->check->what, finding->check->why,
                                   finding->check->remedy};
            for (int w = 0; w < 3; w++) {
                const char *filled = fill_words(loud[i].arena, words[w], finding->quantities,
                                                finding->quantity_count, UNITS_METRIC);
                if (strpbrk(filled, "{}?") != NULL || strstr(filled, "nan") != NULL) {
                    fail_msg("%s: %s", finding->check->id, filled);
                }
            }
        }
    }
}

static int tier_of(const struct finding *finding)
{
    return finding->severity >= SEVERITY_WARNING ? 2 : finding->severity == SEVERITY_ADVICE;
}

/* Serious ones, advice, notes; in each first what rests on what was written, then guesswork. */
static void findings_come_worst_first_and_then_by_line(void **state)
{
    (void)state;
    struct advice_car car = advice_car_load("systems/village-van.ini", "demo/village-van-work.ini");
    const struct findings *findings = &car.result->findings;
    assert_true(findings->count > 5);
    for (size_t i = 1; i < findings->count; i++) {
        const struct finding *before = &findings->items[i - 1], *after = &findings->items[i];
        assert_true(tier_of(before) >= tier_of(after));
        if (tier_of(before) != tier_of(after))
            continue;
        assert_false(before->guess != NULL && after->guess == NULL);
        if ((before->guess != NULL) != (after->guess != NULL))
            continue;
        assert_true(before->severity >= after->severity);
        if (before->severity == after->severity && before->place.file != NULL &&
            after->place.file != NULL && strcmp(before->place.file, after->place.file) == 0) {
            assert_true(before->place.line <= after->place.line);
        }
    }
    advice_car_finish(&car);
}

/* A pedal on its floor whose travel is mostly assumed comes after a hose that is not there, and
 * says what to measure first; what is found missing, wrong or unequal is no guess. */
static void guesswork_comes_after_what_is_given_and_says_what_to_measure(void **state)
{
    (void)state;
    struct advice_car car = advice_car_load("tests/cases/findings/pedal-on-floor.ini", NULL);
    bool guessed = false;
    for (size_t i = 0; i < car.result->findings.count; i++) {
        const struct finding *finding = &car.result->findings.items[i];
        if (strcmp(finding->check->id, "pedal-on-floor") != 0)
            continue;
        assert_true(finding->assumed);
        assert_non_null(finding->guess);
        assert_true(figure_mostly_assumed(finding->guess));
        assert_non_null(finding->measure);
        assert_true(figure_first_to_measure(finding->guess)->key->measured);
        guessed = true;
    }
    assert_true(guessed);
    advice_car_finish(&car);
    static const char *const never[] = {"hose-missing", "fluid-wrong-found",
                                        "bores-differ-across-axle", "circuit-of-one-side"};
    struct arena *arena = arena_create();
    for (size_t n = 0; n < sizeof never / sizeof *never; n++) {
        struct case_paths yes = paths_of(arena, never[n], "");
        car = advice_car_load(yes.car, yes.work);
        for (size_t i = 0; i < car.result->findings.count; i++)
            if (strcmp(car.result->findings.items[i].check->id, never[n]) == 0)
                assert_null(car.result->findings.items[i].guess);
        advice_car_finish(&car);
    }
    arena_destroy(arena);
}

/* A clutch alone is asked for no stop; brakes that cannot be worked out are not said to fail. */
static void what_was_not_computed_is_not_called_impossible(void **state)
{
    (void)state;
    struct advice_car car = advice_car_read(
        "[vehicle]\nmass = 1000 kg\nfront tyre radius = 0.3 m\nrear tyre radius = 0.3 m\n"
        "[clutch pedal]\nworks = clutch master\nratio = 5.5\ntravel = 150 mm\n"
        "[clutch master]\ntype = single\nbore = 19.05 mm\nstroke = 32 mm\n"
        "[clutch slave]\ntype = outside\nbore = 22.225 mm\nstroke = 30 mm\nfork ratio = 2\n"
        "release force = 1000 N\nbearing travel = 7 mm\n[runs]\n"
        "clutch line = clutch master, 0.9 m pipe, 0.3 m hose, clutch slave\n",
        NULL);
    assert_false(advice_finds(&car, "stop-not-reached", NULL));
    assert_null(figures_find(&car.result->figures, "deceleration", NULL));
    assert_null(figures_find(&car.result->figures, "effort-for-half-g", NULL));
    for (int i = 0; i < car.result->rulings.count; i++)
        assert_true(car.result->rulings.items[i].concern == RULE_SPARES ||
                    car.result->rulings.items[i].concern == RULE_OTHER_CLASS);
    advice_car_finish(&car);
    /* shoes on pins lock by themselves at 0.698; from 0.8 of that they are refused */
    car = advice_car_load("tests/cases/findings/stop-not-reached.not.ini", NULL);
    assert_false(advice_finds(&car, "stop-not-reached", NULL));
    advice_car_finish(&car);
    char *path = source_path("systems/little-two-seater.ini");
    char *text = read_whole(path, NULL), *at = strstr(text, "shoes = leading and trailing");
    assert_non_null(at);
    struct arena *arena = arena_create();
    const char *grabbing =
        text_print(arena, "%.*sanchor = pin\nfriction = 0.6\n%s", (int)(at - text), text, at);
    car = advice_car_read(grabbing, NULL);
    assert_true(isnan(figures_find(&car.result->figures, "deceleration", NULL)->value));
    assert_false(advice_finds(&car, "stop-not-reached", NULL));
    advice_car_finish(&car);
    arena_destroy(arena);
    free(text);
    free(path);
}

/* The demo: another bore, an axle hose forgotten; the bore's change by hand: (13/16)^2/(7/8)^2 is
 * 0.862, so 13.8 % less pressure. */
static void the_demo_is_told_what_follows_from_its_work(void **state)
{
    (void)state;
    struct advice_car car = advice_car_load("systems/village-van.ini", "demo/village-van-work.ini");
    assert_true(advice_finds(&car, "replaced-bore-changes", "brake master"));
    assert_true(advice_finds(&car, "hose-old", "rear feed hose"));
    assert_false(advice_finds(&car, "hose-old", "front left hose"));
    assert_true(advice_finds(&car, "clutch-starves-first", "clutch master"));
    for (size_t i = 0; i < car.result->findings.count; i++) {
        const struct finding *finding = &car.result->findings.items[i];
        if (strcmp(finding->check->id, "replaced-bore-changes") == 0) {
            assert_string_equal(finding->quantities[3].name, "change");
            near(finding->quantities[3].value, 0.138, 0.0005);
            assert_non_null(strstr(finding->place.file, "work"));
        }
    }
    advice_car_finish(&car);
}

/* A tandem whose first piston stands against the second works the second circuit by contact. */
static void a_piston_at_its_end_lets_the_other_circuit_gain(void **state)
{
    (void)state;
    static const struct {
        const char *work;
        bool other_gains;
    } cases[] = {
        {"[replaced brake master]\nprimary stroke = 6 mm\n[replaced brake pedal]\ntravel = 200 "
         "mm\n",
         true},
        {"[replaced brake pedal]\ntravel = 60 mm\n", false}};
    for (int i = 0; i < 2; i++) {
        struct arena *arena = arena_create();
        const char *work =
            text_print(arena, "[work]\ncar = Case saloon\ndate = 2026-11-20\n%s", cases[i].work);
        struct advice_car car = advice_car_after("tests/cases/findings/pedal-on-floor.ini", work);
        int told = 0;
        for (size_t f = 0; f < car.result->findings.count; f++) {
            const struct finding *finding = &car.result->findings.items[f];
            if (strcmp(finding->check->id, "pedal-on-floor") != 0)
                continue;
            told++;
            for (int q = 0; q < finding->quantity_count; q++)
                if (strcmp(finding->quantities[q].name, "more") == 0)
                    assert_true((strstr(finding->quantities[q].text, "other circuit") != NULL) ==
                                cases[i].other_gains);
        }
        assert_int_equal(told, 1);
        advice_car_finish(&car);
        arena_destroy(arena);
    }
}

/* A new cylinder is not a new drum. */
static void of_a_brake_the_cylinder_is_new_and_not_the_drum(void **state)
{
    (void)state;
    static const char *const ids[] = {"bore-easily-mistaken", "replaced-bore-changes"};
    struct advice_car car =
        advice_car_after("systems/village-van.ini", "[work]\ncar = Village van\ndate = 2026-11-20\n"
                                                    "[replaced rear left drum]\nbore = 7/8 in\n");
    for (size_t i = 0; i < sizeof ids / sizeof *ids; i++) {
        const struct finding *found = NULL;
        for (size_t f = 0; f < car.result->findings.count && found == NULL; f++)
            if (strcmp(car.result->findings.items[f].check->id, ids[i]) == 0)
                found = &car.result->findings.items[f];
        assert_non_null(found);
        assert_non_null(strstr(fill_words(car.arena, found->check->what, found->quantities,
                                          found->quantity_count, UNITS_METRIC),
                               "wheel cylinder of the rear left drum"));
    }
    advice_car_finish(&car);
}

/* Without a fluid nobody can say how much pressure a shut port makes. */
static void a_shut_port_without_fluid_still_has_its_words(void **state)
{
    (void)state;
    char *path = source_path("tests/cases/findings/rod-gap-small.ini");
    char *text = read_whole(path, NULL), *fluid = strstr(text, "[fluid]");
    assert_non_null(fluid);
    char *next = strstr(fluid + 1, "\n[");
    memmove(fluid, next + 1, strlen(next + 1) + 1);
    struct advice_car car = advice_car_read(text, NULL);
    bool told = false;
    for (size_t i = 0; i < car.result->findings.count; i++) {
        const struct finding *finding = &car.result->findings.items[i];
        if (strcmp(finding->check->id, "rod-gap-small") == 0)
            told = strstr(fill_words(car.arena, finding->check->why, finding->quantities,
                                     finding->quantity_count, UNITS_METRIC),
                          "more than before") != NULL;
    }
    assert_true(told);
    advice_car_finish(&car);
    free(text);
    free(path);
}

/* A case's car with a line of it said otherwise. */
static struct advice_car case_with(const char *below, const char *line, const char *instead)
{
    char *path = source_path(below), *text = read_whole(path, NULL), *at = strstr(text, line);
    assert_non_null(at);
    struct arena *arena = arena_create();
    struct advice_car car = advice_car_read(
        text_print(arena, "%.*s%s%s", (int)(at - text), text, instead, at + strlen(line)), NULL);
    arena_destroy(arena);
    free(text);
    free(path);
    return car;
}

/* The rule is for cars up to 3500 kg; over that it is not held against anybody. */
static void a_heavy_vehicle_is_not_held_to_the_band_of_a_car(void **state)
{
    (void)state;
    static const char *const masses[] = {"mass = 1000 kg\n", "mass = 4000 kg\n"};
    for (int i = 0; i < 2; i++) {
        struct advice_car car =
            case_with("tests/cases/findings/grip-band.ini", "mass = 1000 kg\n", masses[i]);
        assert_true(advice_finds(&car, "grip-band", NULL) == (i == 0));
        advice_car_finish(&car);
    }
}

/* The pressure behind a shut port rests on what is assumed of hoses and fluid. */
static void a_small_gap_says_that_its_pressure_is_assumed(void **state)
{
    (void)state;
    struct advice_car car = advice_car_load("tests/cases/findings/rod-gap-small.ini", NULL);
    for (size_t i = 0; i < car.result->findings.count; i++)
        if (strcmp(car.result->findings.items[i].check->id, "rod-gap-small") == 0)
            assert_true(car.result->findings.items[i].assumed);
    advice_car_finish(&car);
}

/* What is described first is looked at like the rest: here the only disc. */
static void a_valve_before_the_first_part_of_a_file_is_found(void **state)
{
    (void)state;
    struct advice_car car = advice_car_read(
        "[rear right disc]\ncaliper = fixed\nbore = 2 of 38 mm\ndisc diameter = 280 mm\n"
        "pad height = 38 mm\n[vehicle]\ntype = motorcycle\nmass = 300 kg\n[brake pedal]\n"
        "works = rear master\nratio = 4\ntravel = 60 mm\n[rear master]\ntype = single\n"
        "bore = 14 mm\nstroke = 16 mm\non = body\n[residual valve]\ntype = residual\n"
        "holds = 5 psi\n[runs]\nrear brake = rear master, 0.1 m pipe, residual valve, 0.2 m "
        "pipe, 0.4 m hose, rear right disc\n",
        NULL);
    assert_int_equal(network_vertex(car.network, advice_part(&car, "rear right disc"), 0), 0);
    assert_true(advice_finds(&car, "residual-on-discs", "residual valve"));
    advice_car_finish(&car);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_check_has_a_car_that_it_speaks_of_and_one_that_it_does_not),
        cmocka_unit_test(of_a_brake_the_cylinder_is_new_and_not_the_drum),
        cmocka_unit_test(a_limit_flips_its_check_by_one_line_alone),
        cmocka_unit_test(no_word_of_a_finding_is_left_unfilled),
        cmocka_unit_test(findings_come_worst_first_and_then_by_line),
        cmocka_unit_test(guesswork_comes_after_what_is_given_and_says_what_to_measure),
        cmocka_unit_test(what_was_not_computed_is_not_called_impossible),
        cmocka_unit_test(the_demo_is_told_what_follows_from_its_work),
        cmocka_unit_test(a_piston_at_its_end_lets_the_other_circuit_gain),
        cmocka_unit_test(a_valve_before_the_first_part_of_a_file_is_found),
        cmocka_unit_test(a_shut_port_without_fluid_still_has_its_words),
        cmocka_unit_test(a_heavy_vehicle_is_not_held_to_the_band_of_a_car),
        cmocka_unit_test(a_small_gap_says_that_its_pressure_is_assumed),
    };
    return cmocka_run_group_tests(tests, load_loud, finish_loud);
}
