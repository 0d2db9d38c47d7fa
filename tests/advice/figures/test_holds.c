/* Each condition that a figure stands under ends somewhere: a car whose one value is moved across
 * that end. Every pair of figure and condition must have such a car. */
#include "advice/figures/holds.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "input/read.h"
#include "support/near.h"
#include "support/run_cli.h"

/* The inner and the outer car differ by at most this much of the moved value. */
#define HAIR 1e-3

struct said {
    const char *part; /* every part whose name ends so */
    const char *key;
    double value;
};

struct end {
    const char *condition;
    const char *car;
    const char *part, *key;
    double inside, outside; /* somewhere on either side of the end */
    double at;              /* where the condition ends if it is a number of its own; else 0 */
    bool gone;              /* beyond it the figure has no value at all */
    struct said said[4];    /* of the car besides */
};

/* A motorcycle with a drum behind: each axle has its own pedal or lever. */
static const char drum_motorcycle[] =
    "[vehicle]\ntype = motorcycle\nfront axle = fork\nrear axle = swinging arm\nmass = 300 kg\n"
    "weight on front = 49 %\nwheelbase = 1.48 m\nheight of mass centre = 0.62 m\n"
    "front tyre radius = 0.31 m\nrear tyre radius = 0.32 m\n"
    "[fluid]\ngrade = DOT 4\n"
    "[hand lever]\nworks = front master\nratio = 5.5\ntravel = 75 mm\neffort = 130 N\n"
    "[front master]\ntype = single\nbore = 11/16 in\nstroke = 14 mm\n"
    "[rear brake pedal]\nworks = rear master\nratio = 4.0\ntravel = 60 mm\neffort = 200 N\n"
    "[rear master]\ntype = single\nbore = 14 mm\nstroke = 16 mm\non = body\n"
    "[front disc]\ncaliper = fixed\nbore = 2 of 42 mm\ndisc diameter = 296 mm\n"
    "pad height = 40 mm\n"
    "[rear right drum]\nshoes = leading and trailing\ncylinder = two pistons\nbore = 19 mm\n"
    "drum diameter = 180 mm\n"
    "[fork tee]\non = handlebar\n"
    "[runs]\nfront feed = front master, 0.25 m pipe, fork tee\n"
    "front brakes = fork tee, 0.55 m hose, front disc\n"
    "rear brake = rear master, 0.3 m pipe, 0.4 m hose, rear right drum\n";

#define VAN        "systems/village-van.ini"
#define TWO_SEATER "systems/little-two-seater.ini"
#define HATCH      "systems/diagonal-hatch.ini"
#define MOTORCYCLE "systems/twin-disc-motorcycle.ini"

#define FACES                                                                                      \
    {"disc", "pad arc", 1.0},                                                                      \
    {                                                                                              \
        "drum", "lining width", 40e-3                                                              \
    }

static const struct end ends[] = {
    {"effort-reached", VAN, "brake pedal", "travel", .inside = 0.15, .outside = 0.05,
     .said = {FACES}},
    {"grip-enough", VAN, "vehicle", "grip", .inside = 2, .outside = 0.05},
    {"grip-enough", MOTORCYCLE, "vehicle", "grip", .inside = 2, .outside = 0.05},
    {"wheels-roll", HATCH, "vehicle", "grip", .inside = 2, .outside = 0.05},
    {"wheels-on-the-road", MOTORCYCLE, "vehicle", "height of mass centre", .inside = 0.4,
     .outside = 2},
    {"wheels-on-the-road", VAN, "vehicle", "height of mass centre", .inside = 0.4, .outside = 4,
     .said = {{"brake pedal", "effort", 900}}},
    {"brakes-touch", VAN, "front left disc", "threshold", .inside = 0.05e6, .outside = 50e6,
     .said = {FACES}},
    {"brakes-touch", VAN, "rear left drum", "threshold", .inside = 0.05e6, .outside = 50e6,
     .said = {FACES}},
    {"within-a-leg", TWO_SEATER, "brake pedal", "effort", .inside = 220, .outside = 3000,
     .at = 2000, .said = {{"brake pedal", "travel", 1}, {"brake master", "stroke", 0.5}}},
    {"shoes-below-locking", VAN, "drum", "friction", .inside = 0.3, .outside = 1.5, .gone = true,
     .said = {FACES}},
    {"shoes-below-locking", TWO_SEATER, "drum", "friction", .inside = 0.3, .outside = 1.5,
     .gone = true, .said = {{"rear left drum", "bore", 35e-3}, {"rear right drum", "bore", 35e-3}}},
    {"shoes-below-locking", drum_motorcycle, "drum", "friction", .inside = 0.3, .outside = 1.5,
     .gone = true},
    {"slave-in-its-bore", VAN, "clutch slave", "stroke", .inside = 40e-3, .outside = 2e-3,
     .said = {{"clutch slave", "most bearing travel", 12e-3}}},
    {"iron-below-600", VAN, "front left disc", "disc mass", .inside = 20, .outside = 0.2,
     .said = {{"front left disc", "cooling time", 1200}, {"front left disc", "thickness", 10e-3}}},
    {"iron-below-600", VAN, "vehicle", "hot stop from", .inside = 10, .outside = 90,
     .said = {{"front left disc", "thickness", 10e-3}}},
    {"disc-solid", VAN, "front left disc", "thickness", .inside = 8e-3, .outside = 25e-3,
     .at = 14e-3, .said = {{"front left disc", "disc mass", 5}}},
};
enum { ENDS = sizeof ends / sizeof *ends };

/* A car of a row, solved again for each value. */
struct moved {
    const struct end *end;
    struct system *system;
    struct situation *situation;
    struct figures figures;
    unsigned bit;
};

static void say(struct system *system, struct said said)
{
    int found = 0;
    for (int i = 0; i < system->part_count; i++) {
        struct part *part = &system->parts[i];
        const struct key *key = key_find(part->kind, said.key);
        if (key == NULL || !text_ends(part->name, said.part))
            continue;
        key_set(part, key, said.value);
        found++;
    }
    if (found == 0)
        fail_msg("no %s has %s", said.part, said.key);
}

static unsigned bit_of(const char *condition)
{
    size_t count;
    const struct hold_row *rows = hold_rows(&count);
    for (size_t i = 0; i < count; i++)
        if (strcmp(rows[i].id, condition) == 0)
            return rows[i].bit;
    fail_msg("there is no condition %s", condition);
    return 0;
}

static struct moved start(const struct end *end, struct arena *arena)
{
    struct moved moved = {.end = end, .bit = bit_of(end->condition)};
    struct messages messages = messages_start(arena);
    const char *text = end->car;
    if (text_ends(text, ".ini")) {
        char *path = source_path(end->car), *whole = read_whole(path, NULL);
        text = text_copy(arena, whole);
        free(whole);
        free(path);
    }
    struct source source = {"car.ini", text, strlen(text)};
    moved.system = read_car(&source, arena, &messages);
    assert_non_null(moved.system);
    for (int i = 0; i < 4 && end->said[i].part != NULL; i++)
        say(moved.system, end->said[i]);
    const struct network *network = network_build(moved.system, arena, &messages);
    assert_non_null(network);
    moved.situation = situation_room(moved.system, network, (struct force){NAN}, arena);
    situation_solve(moved.situation);
    moved.figures = figures_listed(moved.situation, arena);
    return moved;
}

static void put(struct moved *moved, double value)
{
    say(moved->system, (struct said){moved->end->part, moved->end->key, value});
    situation_solve(moved->situation);
}

/* Whether a figure's condition is met now: 1, 0, or -1 where it is not looked up. */
static int met_now(const struct moved *moved, struct figure *figure)
{
    double value = figure->row->get(moved->situation, figure->subject, figure->sub);
    figure->value = isfinite(value) ? value : NAN;
    holds_look(moved->situation, figure);
    if (moved->end->gone && isnan(figure->value))
        return 0;
    return (figure->holds & moved->bit) == 0 ? -1 : (figure->holds_broken & moved->bit) == 0;
}

/* Halves the way between a car inside and one outside until they are a hair apart. Whether the
 * condition told them apart all the way. */
static bool crosses(struct moved *moved, struct figure *figure)
{
    double inside = moved->end->inside, outside = moved->end->outside;
    while (fabs(inside - outside) > HAIR * fabs(inside)) {
        double middle = (inside + outside) / 2;
        put(moved, middle);
        int met = met_now(moved, figure);
        if (met < 0)
            return false;
        *(met ? &inside : &outside) = middle;
    }
    if (moved->end->at > 0)
        near(inside, moved->end->at, HAIR * moved->end->at);
    return true;
}

/* Marks, by figure row, the bits that this row's car has an end for. */
static void walk(const struct end *end, const struct figure_row *rows, size_t count,
                 unsigned *ended)
{
    struct arena *arena = arena_create();
    struct moved moved = start(end, arena);
    int *inside = ARENA_ARRAY(arena, (size_t)moved.figures.count, int);
    int *outside = ARENA_ARRAY(arena, (size_t)moved.figures.count, int);
    int *sides[] = {inside, outside}, found = 0;
    for (int side = 0; side < 2; side++) {
        put(&moved, side ? end->outside : end->inside);
        for (int i = 0; i < moved.figures.count; i++)
            sides[side][i] = met_now(&moved, &moved.figures.items[i]);
    }
    for (int i = 0; i < moved.figures.count; i++) {
        struct figure *figure = &moved.figures.items[i];
        size_t row = (size_t)(figure->row - rows);
        assert_true(row < count);
        if ((holds_asked(figure->row->id) & moved.bit) == 0 || inside[i] != 1 || outside[i] != 0)
            continue;
        found++;
        if ((ended[row] & moved.bit) == 0 && crosses(&moved, figure))
            ended[row] |= moved.bit;
    }
    if (found == 0)
        fail_msg("%s, %s of %s: no figure tells the two cars apart", end->condition, end->key,
                 end->part);
    arena_destroy(arena);
}

/* A number of slaves is no value to move: the van's clutch line with one slave, and with a tee and
 * another slave like it. */
static const char *two_slaves(struct arena *arena)
{
    char *path = source_path(VAN), *whole = read_whole(path, NULL);
    char *runs = strstr(whole, "[runs]"), *last = strstr(whole, "hose, clutch slave");
    assert_non_null(runs);
    assert_non_null(last);
    const char *text = text_print(
        arena,
        "%.*s[second slave]\ntype = outside\nbore = 7/8 in\nstroke = 28 mm\nfork ratio = 1.7\n"
        "release force = 1150 N\nbearing travel = 6.5 mm\nfinger ratio = 4.2\n\n%.*shose, clutch "
        "tee\n"
        "to one = clutch tee, 0.1 m pipe, clutch slave\nto two = clutch tee, 0.1 m pipe, second "
        "slave\n",
        (int)(runs - whole), whole, (int)(last - runs), runs);
    free(whole);
    free(path);
    return text;
}

static void walk_slaves(const struct figure_row *rows, unsigned *ended)
{
    struct arena *arena = arena_create();
    const struct said most = {"clutch slave", "most bearing travel", 12e-3};
    const struct end ends_of[] = {
        {.condition = "slave-alone", .car = VAN, .said = {most}},
        {.condition = "slave-alone", .car = two_slaves(arena), .said = {most}}};
    struct moved one = start(&ends_of[0], arena), two = start(&ends_of[1], arena);
    for (int i = 0; i < one.figures.count; i++)
        for (int j = 0; j < two.figures.count; j++) {
            struct figure *alone = &one.figures.items[i], *other = &two.figures.items[j];
            if (alone->row == other->row && strcmp(alone->of, other->of) == 0 &&
                met_now(&one, alone) == 1 && met_now(&two, other) == 0)
                ended[alone->row - rows] |= one.bit;
        }
    arena_destroy(arena);
}

static void every_condition_of_a_figure_has_a_car_on_either_side(void **state)
{
    (void)state;
    size_t count, conditions;
    const struct figure_row *rows = figure_rows(&count);
    const struct hold_row *holds = hold_rows(&conditions);
    unsigned *ended = calloc(count, sizeof *ended);
    assert_non_null(ended);
    for (int i = 0; i < ENDS; i++)
        walk(&ends[i], rows, count, ended);
    walk_slaves(rows, ended);
    int pairs = 0, without = 0;
    for (size_t i = 0; i < count; i++)
        for (size_t j = 0; j < conditions; j++) {
            if ((holds_asked(rows[i].id) & holds[j].bit) == 0)
                continue;
            pairs++;
            if ((ended[i] & holds[j].bit) != 0)
                continue;
            print_error("%s under %s: no car on either side\n", rows[i].id, holds[j].id);
            without++;
        }
    free(ended);
    assert_true(pairs > 100);
    assert_int_equal(without, 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_condition_of_a_figure_has_a_car_on_either_side),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
