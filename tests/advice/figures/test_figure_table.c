/* Every figure has a value that was found otherwise, rows of the way or a reason to have none, and
 * a relation here or a test elsewhere that names it: a new one without them fails. The relations
 * are those of docs/physics.md, worked out from keys and from other figures, over all ready cars.
 */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "advice/figures/chain.h"
#include "advice/figures/figures.h"
#include "support/near.h"
#include "support/ready_cars.h"
#include "support/run_cli.h"

#define ATMOSPHERE 101325.0 /* Pa, by definition */

/* A ready car with the values of its figures. */
struct looked {
    const struct system *system;
    const struct network *network;
    const struct figures *figures;
    struct arena *arena;
};

static double value(const struct looked *car, const char *id, int subject)
{
    for (int i = 0; i < car->figures->count; i++) {
        const struct figure *figure = &car->figures->items[i];
        if (strcmp(figure->row->id, id) == 0 && figure->subject == subject)
            return figure->value;
    }
    return NAN;
}

static const struct part *part_at(const struct looked *car, int part)
{
    return &car->system->parts[part];
}

/* The circuit of a clutch slave. */
static const struct circuit *circuit_of(const struct looked *car, int part)
{
    int vertex = network_vertex(car->network, part, 0);
    return &car->network->circuits[car->network->vertices[vertex].circuit];
}

static double area_of(struct length bore)
{
    return 3.14159265358979 / 4 * bore.m * bore.m;
}

static double slave_face(const struct slave *slave)
{
    double sleeve = slave->type == SLAVE_CONCENTRIC ? area_of(slave->inner_bore) : 0;
    return area_of(slave->bore) - sleeve;
}

static double lever_of(const struct slave *slave)
{
    return slave->type == SLAVE_CONCENTRIC ? 1 : slave->fork_ratio.value;
}

/* ---- relations: what a figure is by hand, NAN where the relation does not speak */

#define BY_HAND(name) static double name(const struct looked *car, int subject)

/* A pedal that stands somewhere on its way keeps the rest of it; one at an end keeps nothing. */
static double rest_of_way(const struct looked *car, int pedal, const char *travel, const char *left)
{
    double end = pedal_end(&part_at(car, pedal)->as.pedal).m;
    double kept = value(car, left, pedal);
    return kept > 0 ? end - value(car, travel, pedal) : 0;
}

#define REST(name, of)                                                                             \
    BY_HAND(rest_##name)                                                                           \
    {                                                                                              \
        return rest_of_way(car, subject, "pedal-travel-" of, "pedal-left-" of);                    \
    }
REST(slack, "slack")
REST(worn, "worn")
REST(worn_hoses, "worn-hoses")

BY_HAND(rest_with_it_lost)
{
    int pedal = -1;
    for (int i = 0; i < car->system->part_count && pedal < 0; i++)
        if (part_at(car, i)->kind == KIND_PEDAL && !isnan(value(car, "pedal-travel", i)))
            pedal = i;
    double left = value(car, "left-circuit-lost", subject);
    double end = pedal_end(&part_at(car, pedal)->as.pedal).m;
    return left > 0 && system_vehicle(car->system)->type != VEHICLE_MOTORCYCLE ? end - left : NAN;
}

/* Of brake forces by axle: 0 front, 1 rear; left and right in their order. */
static double forces_of(const struct looked *car, enum axle axle, double sides[2])
{
    double sum = 0;
    sides[0] = sides[1] = NAN;
    for (int i = 0; i < car->system->part_count; i++) {
        const struct part *part = part_at(car, i);
        double force = value(car, "brake-force", i);
        if (!kind_is_brake(part->kind) || part->axle != axle || isnan(force))
            continue;
        sum += force;
        if (part->side != SIDE_NONE)
            sides[part->side == SIDE_RIGHT] = force;
    }
    return sum;
}

BY_HAND(share_of_front)
{
    (void)subject;
    double sides[2];
    double front = forces_of(car, AXLE_FRONT, sides), rear = forces_of(car, AXLE_REAR, sides);
    return front / (front + rear);
}

static double difference_of(const struct looked *car, enum axle axle)
{
    double sides[2];
    forces_of(car, axle, sides);
    return fabs(sides[0] - sides[1]) / fmax(sides[0], sides[1]);
}

BY_HAND(difference_front)
{
    (void)subject;
    return difference_of(car, AXLE_FRONT);
}

BY_HAND(difference_rear)
{
    (void)subject;
    return difference_of(car, AXLE_REAR);
}

/* At the effort that locks an axle on a wet road the brakes give the rate at which it locks. */
BY_HAND(wet_lock_effort)
{
    (void)subject;
    double effort = value(car, "front-locks-effort-wet", -1);
    if (isnan(effort) || system_vehicle(car->system)->type == VEHICLE_MOTORCYCLE)
        return NAN;
    struct situation *at =
        situation_room(car->system, car->network, (struct force){effort}, car->arena);
    situation_solve(at);
    double rate = figure_row("deceleration")->get(at, -1, 0);
    near_rel(rate, value(car, "front-locks-at-wet", -1), 1e-4);
    return effort;
}

/* A push rod's gap is taken up at the pad the ratio times. */
BY_HAND(gap_at_pad)
{
    const struct pedal *pedal = &part_at(car, subject)->as.pedal;
    if (pedal->works.count != 1 || part_at(car, pedal->works.parts[0])->kind != KIND_MASTER)
        return NAN;
    return pedal_ratio(pedal).value * part_at(car, pedal->works.parts[0])->as.master.rod_gap.m;
}

BY_HAND(slave_pressure_end)
{
    const struct slave *slave = &part_at(car, subject)->as.slave;
    double force = isnan(slave->release_end.n) ? slave->release_force.n : slave->release_end.n;
    return force / (lever_of(slave) * slave_face(slave) * slave->efficiency.value);
}

/* The same levers and areas for both pressures, without a servo. */
BY_HAND(slave_effort_end)
{
    return value(car, "clutch-effort", subject) * value(car, "clutch-pressure-end", subject) /
           value(car, "clutch-pressure", subject);
}

BY_HAND(until_it_touches)
{
    const struct slave *slave = &part_at(car, subject)->as.slave;
    const struct master *master = &part_at(car, circuit_of(car, subject)->master)->as.master;
    for (int i = 0; i < car->system->part_count; i++) {
        const struct pedal *pedal = &part_at(car, i)->as.pedal;
        if (part_at(car, i)->kind != KIND_PEDAL ||
            pedal->works.parts[0] != circuit_of(car, subject)->master)
            continue;
        double pushed = slave_face(slave) * lever_of(slave) * slave->play.m / area_of(master->bore);
        double gaps = master->rod_gap.m + master->cut_off.m + pushed;
        return fmax(pedal->free_play.m, 0) + pedal_ratio(pedal).value * gaps;
    }
    return NAN;
}

BY_HAND(stroke_kept)
{
    return part_at(car, subject)->as.slave.stroke.m - value(car, "slave-travel", subject);
}

BY_HAND(bearing_way)
{
    const struct slave *slave = &part_at(car, subject)->as.slave;
    return value(car, "slave-travel", subject) / lever_of(slave) - slave->play.m;
}

BY_HAND(bearing_beyond)
{
    return value(car, "bearing-travel", subject) - part_at(car, subject)->as.slave.bearing_travel.m;
}

BY_HAND(bearing_short_of)
{
    return part_at(car, subject)->as.slave.bearing_most.m - value(car, "bearing-travel", subject);
}

BY_HAND(plate_lift)
{
    const struct slave *slave = &part_at(car, subject)->as.slave;
    return value(car, "bearing-travel", subject) * (1 - slave->flex.of_1) /
           slave->finger_ratio.value;
}

BY_HAND(face_clearance)
{
    const struct slave *slave = &part_at(car, subject)->as.slave;
    return (value(car, "clutch-lift", subject) - slave->cushion.m) / 2 - slave->plate_run_out.m / 2;
}

BY_HAND(lift_lost_to_air)
{
    const struct slave *slave = &part_at(car, subject)->as.slave;
    double p = value(car, "clutch-pressure-end", subject);
    return 1e-6 * (1 - ATMOSPHERE / (ATMOSPHERE + p)) * (1 - slave->flex.of_1) /
           (slave_face(slave) * lever_of(slave) * slave->finger_ratio.value);
}

BY_HAND(cable_at_shoes)
{
    const struct parking *parking = &part_at(car, subject)->as.parking;
    double brakes = 0;
    for (size_t i = 0; i < parking->works.count; i++)
        brakes += parking->works.parts[i] >= 0;
    double loss = isnan(parking->cable_bends.rad)
                      ? parking->cable_loss.of_1
                      : 1 - exp(-parking->cable_friction.value * parking->cable_bends.rad);
    return parking->effort.n * parking->lever_ratio.value * (1 - loss) / brakes *
           parking->shoe_ratio.value;
}

static const struct relation {
    const char *figure;
    double (*by_hand)(const struct looked *car, int subject);
} relations[] = {
    {"front-share", share_of_front},
    {"front-locks-effort-wet", wet_lock_effort},
    {"side-difference-front", difference_front},
    {"side-difference-rear", difference_rear},
    {"pedal-left-slack", rest_slack},
    {"pedal-left-worn", rest_worn},
    {"pedal-left-worn-hoses", rest_worn_hoses},
    {"travel-circuit-lost", rest_with_it_lost},
    {"pedal-lost-rod-gap", gap_at_pad},
    {"clutch-pressure-end", slave_pressure_end},
    {"clutch-effort-end", slave_effort_end},
    {"clutch-touch", until_it_touches},
    {"slave-stroke-left", stroke_kept},
    {"bearing-travel", bearing_way},
    {"bearing-travel-spare", bearing_beyond},
    {"bearing-travel-room", bearing_short_of},
    {"clutch-lift", plate_lift},
    {"clutch-clearance-per-face", face_clearance},
    {"clutch-air-cost", lift_lost_to_air},
    {"hand-brake-shoe-force", cable_at_shoes},
};
enum { RELATIONS = sizeof relations / sizeof *relations };

/* Tests elsewhere that set a figure against a value found otherwise, and name it; where a test
 * knows the law and not the figure, the name in brackets is what it calls. */
static const struct {
    const char *test, *figures;
} elsewhere[] = {
    {"tests/reference/gillespie.c", "deceleration"},
    {"tests/cli/test_textbook.c",
     "front-locks-at front-locks-effort rear-locks-at rear-locks-effort rear-lock-margin "
     "front-load-at-lock rear-load-at-lock front-locks-at-wet rear-locks-at-wet grip-used-front "
     "grip-used-rear grip-efficiency stopping-distance shoe-torque-front shoe-torque-rear "
     "lining-pressure-most pad-pressure-most brake-force heat-per-stop clutch-pressure "
     "clutch-effort clutch-torque"},
    {"tests/advice/figures/test_figures.c",
     "rear-locks-effort-wet effort-for-half-g-unassisted deceleration-unassisted "
     "effort-that-locks load-at-lock its-wheels-lock-at-wet effort-that-locks-wet bar-tilt "
     "pedal-travel-new pedal-left-new pedal-travel-knocked-back pedal-left-knocked-back "
     "unassisted-pressure residual-pressure pipe-run-longest reservoir-volume-needed "
     "release-pressure brake-torque-reverse pad-pressure valve-knee shuttle-difference "
     "shuttle-difference-lost hand-brake-slope"},
    {"tests/cross/car_roots.c", "rear-lock-margin-wet pedal-effort"},
    {"tests/advice/figures/test_road.c",
     "rear-lifts-at stopping-distance-wet effort-for-half-g deceleration-by-it "
     "its-wheels-lock-at deceleration-circuit-lost"},
    {"tests/reference/constructed_whole_car.c",
     "rod-force rod-travel pedal-travel line-pressure volume-taken volume-by-cause air-cost "
     "fluid-in-circuit port-blocked-pressure clamp-force brake-torque"},
    {"tests/cli/test_textbook_hydraulics.c", "pedal-left rise-per-stop"},
    {"tests/advice/figures/test_figure_cases.c",
     "stroke-left pedal-travel-hot pedal-left-hot pedal-travel-worn-hoses piston-stroke "
     "piston-stroke-left left-circuit-lost stroke-left-circuit-lost wheel-pressure "
     "assisted-strokes-left"},
    {"tests/advice/figures/test_figure_values_brakes.c",
     "brake-torque-low brake-torque-high friction-sensitivity drum-growth-hot tip-travel-hot "
     "boiling-margin-dry boiling-margin-wet"},
    {"tests/cross/warm_up.c", "temperature-after-ten-stops fluid-after-ten-stops"},
    {"tests/advice/fitting/test_fit.c", "slave-travel"},
    {"tests/physics/test_side_pull.c",
     "pull-friction-front(side_pull_friction) pull-friction-rear(side_pull_friction) "
     "pull-seized-front(side_pull_seized) yaw-seized-front(side_pull_seized) "
     "pull-seized-rear(side_pull_seized) yaw-seized-rear(side_pull_seized)"},
    {"tests/cross/whole_car.m", "pedal-travel-worn(worn)"},
    {"tests/physics/test_clutch_release.c", "clutch-volume-lost(clutch.lost)"},
    {"tests/parts/test_clutch.c", "clutch-torque-new(clutch_torque)"},
    {"tests/physics/test_travel.c",
     "pedal-travel-slack(slack_shoes_take_three_times_the_clearance)"},
    {"tests/physics/test_heat.c", "surface-rise-per-stop(surface)"},
    {"tests/physics/test_balance.c",
     "hand-brake-slope-down(FACING_DOWN) hand-brake-clicks(balance_hand_brake_clicks) "
     "pedal-lost-tight-cable(balance_pedal_lost)"},
};
enum { ELSEWHERE = sizeof elsewhere / sizeof *elsewhere };

/* Figures that are made of keys alone or found by a search of their own: no way leads down. */
static const char made_of_keys[] =
    " front-locks-at rear-locks-at front-locks-at-wet rear-locks-at-wet rear-lifts-at "
    "grip-used-front grip-used-rear effort-for-half-g effort-for-half-g-unassisted "
    "its-wheels-lock-at its-wheels-lock-at-wet pedal-effort pedal-lost-rod-gap residual-pressure "
    "stroke-left-circuit-lost fluid-in-circuit pipe-run-longest reservoir-volume-needed "
    "friction-sensitivity drum-growth-hot clutch-pressure clutch-pressure-end clutch-touch "
    "clutch-torque clutch-torque-new assisted-strokes-left valve-knee hand-brake-shoe-force "
    "hand-brake-clicks pedal-lost-tight-cable ";

/* Where a word stands in a list with blanks between; NULL. */
static const char *listed(const char *list, const char *word)
{
    size_t length = strlen(word);
    for (const char *at = strstr(list, word); at != NULL; at = strstr(at + 1, word)) {
        bool begins = at == list || at[-1] == ' ';
        if (begins && (at[length] == ' ' || at[length] == '\0' || at[length] == '('))
            return at;
    }
    return NULL;
}

/* Whether the test is there and names the figure, or what stands in brackets behind it. */
static bool names_it(const char *test, const char *entry, const char *id)
{
    char word[80];
    const char *bracket = entry + strlen(id);
    if (*bracket == '(')
        snprintf(word, sizeof word, "%.*s", (int)strcspn(bracket + 1, ")"), bracket + 1);
    else
        snprintf(word, sizeof word, "\"%s\"", id);
    char *path = source_path(test), *text = read_whole(path, NULL);
    bool named = text != NULL && strstr(text, word) != NULL;
    free(text);
    free(path);
    return named;
}

static bool has_value(const char *id)
{
    for (size_t i = 0; i < RELATIONS; i++)
        if (strcmp(relations[i].figure, id) == 0)
            return true;
    for (size_t i = 0; i < ELSEWHERE; i++) {
        const char *entry = listed(elsewhere[i].figures, id);
        if (entry != NULL)
            return names_it(elsewhere[i].test, entry, id);
    }
    return false;
}

static void every_figure_has_a_value_that_was_found_otherwise(void **state)
{
    (void)state;
    size_t count;
    const struct figure_row *rows = figure_rows(&count);
    int without = 0;
    for (size_t i = 0; i < count; i++)
        if (!has_value(rows[i].id)) {
            print_message("no test sets %s against a value found otherwise\n", rows[i].id);
            without++;
        }
    assert_int_equal(without, 0);
}

static void every_figure_has_its_way_or_is_made_of_keys(void **state)
{
    (void)state;
    size_t count, links;
    const struct figure_row *rows = figure_rows(&count);
    const struct chain_row *chain = chain_rows(&links);
    int wrong = 0;
    for (size_t i = 0; i < count; i++) {
        bool linked = false;
        for (size_t c = 0; c < links; c++)
            linked = linked || strcmp(chain[c].figure, rows[i].id) == 0;
        if (linked == (listed(made_of_keys, rows[i].id) != NULL)) {
            print_message("%s: %s\n", rows[i].id, linked ? "has a way after all" : "no way");
            wrong++;
        }
    }
    assert_int_equal(wrong, 0);
}

/* The figures of that id are what their relation says, where it speaks; how many it spoke of. */
static int compare(const struct looked *car, const struct relation *relation, const char *name)
{
    int held = 0;
    for (int i = 0; i < car->figures->count; i++) {
        const struct figure *figure = &car->figures->items[i];
        if (strcmp(figure->row->id, relation->figure) != 0 || isnan(figure->value))
            continue;
        double by_hand = relation->by_hand(car, figure->subject);
        if (isnan(by_hand))
            continue;
        if (!near_enough(figure->value, by_hand, 1e-6, true) &&
            !near_enough(figure->value, by_hand, 1e-9, false))
            fail_msg("%s: %s %s is %.9g, by hand %.9g", name, relation->figure, figure->of,
                     figure->value, by_hand);
        held++;
    }
    return held;
}

static void compare_all(const char *name, int held[RELATIONS])
{
    struct arena *arena = arena_create();
    struct result *result = ready_result(arena, name, NULL);
    struct looked car = {result->system, result->network, &result->figures, arena};
    for (size_t i = 0; i < RELATIONS; i++)
        held[i] += compare(&car, &relations[i], name);
    arena_destroy(arena);
}

static void figures_are_what_their_relations_say_on_every_ready_car(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    int held[RELATIONS] = {0};
    for (const char **name = ready_cars(arena); *name != NULL; name++)
        compare_all(*name, held);
    compare_all("tests/cases/findings/clutch-over-travel.ini", held);
    arena_destroy(arena);
    for (size_t i = 0; i < RELATIONS; i++)
        if (held[i] == 0)
            fail_msg("%s: on no car", relations[i].figure);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_figure_has_a_value_that_was_found_otherwise),
        cmocka_unit_test(every_figure_has_its_way_or_is_made_of_keys),
        cmocka_unit_test(figures_are_what_their_relations_say_on_every_ready_car),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
