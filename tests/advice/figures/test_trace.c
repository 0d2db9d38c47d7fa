/* The way of a figure down to the lines of the file, for every figure of every ready car. */
#include "advice/figures/trace.h"

#include <math.h>
#include <string.h>

#include "advice/figures/chain.h"
#include "advice/figures/figure_asked.h"
#include "base/text.h"
#include "support/near.h"
#include "support/ready_cars.h"
#include "support/sanitized.h"

#define VAN "systems/village-van.ini"

static struct weighing weigh(const struct result *result, struct arena *arena)
{
    return weighing_of(result->system, result->network, (struct force){NAN}, &result->figures,
                       arena);
}

static struct trace *trace_at(const struct result *result, const struct weighing *weighing,
                              int index, struct arena *arena)
{
    return trace_of(result->system, result->network, (struct force){NAN}, &result->figures,
                    weighing, index, arena);
}

static struct trace *trace_named(const struct result *result, const char *id, const char *of,
                                 struct arena *arena)
{
    const char *trouble = NULL;
    int index = figure_asked(&result->figures, id, of, arena, &trouble);
    assert_true(index >= 0);
    struct weighing *weighing = ARENA_NEW(arena, struct weighing);
    *weighing = weigh(result, arena);
    return trace_at(result, weighing, index, arena);
}

static const struct trace_input *input_named(const struct result *result, const struct trace *trace,
                                             const char *part, const char *key)
{
    for (int i = 0; i < trace->input_count; i++)
        if (strcmp(result->system->parts[trace->inputs[i].cited.part].name, part) == 0 &&
            strcmp(trace->inputs[i].cited.key->name, key) == 0)
            return &trace->inputs[i];
    return NULL;
}

static bool is_input(const struct trace *trace, const struct cited_key *cited)
{
    for (int i = 0; i < trace->input_count; i++)
        if (trace->inputs[i].cited.part == cited->part && trace->inputs[i].cited.key == cited->key)
            return true;
    return false;
}

/* Whatever the table of figures gives, its trace hangs together. */
static void holds_together(const struct result *result, const struct trace *trace)
{
    const struct figure *figure = trace->figure;
    bool *named = ARENA_ARRAY(result->system->arena, (size_t)trace->input_count + 1, bool);
    assert_ptr_equal(trace->steps[0].figure, figure);
    for (int i = 0; i < figure->assumed_count; i++)
        assert_true(is_input(trace, &figure->assumed[i]));
    for (int s = 0; s < trace->step_count; s++)
        for (int i = 0; i < trace->steps[s].input_count; i++)
            named[trace->steps[s].inputs[i]] = true;
    for (int i = 0; i < trace->input_count; i++) {
        const struct trace_input *input = &trace->inputs[i];
        assert_true(named[i]);
        assert_true(i == 0 || trace->inputs[i - 1].weight->telling >= input->weight->telling);
        if (input->origin.kind == ORIGIN_ASSUMED)
            continue;
        assert_non_null(input->origin.place.file);
        assert_true(input->origin.place.line > 0);
    }
    if (isnan(figure->value))
        assert_true(figure->needs_count > 0 || figure->reason != NULL);
}

static void every_figure_of_every_ready_car_is_traced_down_to_its_lines(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    int traced = 0;
    for (const char **car = ready_cars(arena); *car != NULL; car++) {
        if (SANITIZED && strstr(*car, "van") == NULL && strstr(*car, "motorcycle") == NULL)
            continue;
        struct arena *of_car = arena_create();
        struct result *result = ready_result(of_car, *car, NULL);
        struct weighing weighing = weigh(result, of_car);
        for (int i = 0; i < result->figures.count; i++, traced++)
            holds_together(result, trace_at(result, &weighing, i, of_car));
        arena_destroy(of_car);
    }
    arena_destroy(arena);
    assert_true(SANITIZED || traced > 300);
}

/* A quotient of two sides or axles, the lesser of two, what is left on the floor, and one cause of
 * several need not move with each of their parts; a load hides what rounding leaves of a rate. */
static bool may_stand_still(const struct figure *figure)
{
    static const char *const ids[] = {"front-share",
                                      "rear-lock-margin",
                                      "side-difference-front",
                                      "side-difference-rear",
                                      "stopping-distance",
                                      "stroke-left",
                                      "wheel-pressure",
                                      "volume-by-cause",
                                      "pedal-left",
                                      "left-circuit-lost",
                                      "stopping-distance-wet",
                                      "grip-efficiency",
                                      "pull-friction-front",
                                      "pull-friction-rear",
                                      "pull-seized-front",
                                      "pull-seized-rear",
                                      "yaw-seized-front",
                                      "yaw-seized-rear",
                                      "hand-brake-slope",
                                      "hand-brake-slope-down",
                                      "heat-per-stop",
                                      "rear-lock-margin-wet",
                                      "surface-rise-per-stop",
                                      "travel-circuit-lost",
                                      "deceleration-circuit-lost",
                                      "front-load-at-lock",
                                      "rear-load-at-lock",
                                      "load-at-lock"};
    for (size_t i = 0; i < sizeof ids / sizeof *ids; i++)
        if (strcmp(figure->row->id, ids[i]) == 0)
            return true;
    return false;
}

/* How many values move a part of a figure, where the car is now, but not the figure. */
static int unmoved(const struct weighing *weighing, int figure, int part, int *moved)
{
    int still = 0;
    for (size_t k = 0; k < weighing->keys.count; k++) {
        const struct weight *of_part = weighing_weight(weighing, k, part);
        if (!of_part->moves || of_part->beyond)
            continue;
        bool moves = weighing_weight(weighing, k, figure)->moves;
        still += !moves;
        *moved += moves;
    }
    return still;
}

/* A figure's way is the table's word; what moves it is found. Here they are held against each
 * other: what moves a part of a figure moves the figure. */
static void what_moves_a_part_of_a_figure_moves_the_figure(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    int moved = 0;
    for (const char **car = ready_cars(arena); *car != NULL; car++) {
        if (SANITIZED && strstr(*car, "van") == NULL && strstr(*car, "motorcycle") == NULL)
            continue;
        struct arena *of_car = arena_create();
        struct result *result = ready_result(of_car, *car, NULL);
        const struct figures *figures = &result->figures;
        struct weighing weighing = weigh(result, of_car);
        int *from = ARENA_ARRAY(of_car, (size_t)figures->count + 1, int);
        for (int f = 0; f < figures->count; f++) {
            if (isnan(figures->items[f].value) || may_stand_still(&figures->items[f]))
                continue;
            int count = chain_from(result->system, result->network, figures, f, from);
            for (int i = 0; i < count; i++)
                if (unmoved(&weighing, f, from[i], &moved) > 0)
                    fail_msg("%s: %s %s does not move with %s %s", *car, figures->items[f].row->id,
                             figures->items[f].of, figures->items[from[i]].row->id,
                             figures->items[from[i]].of);
        }
        arena_destroy(of_car);
    }
    arena_destroy(arena);
    assert_true(SANITIZED || moved > 1000);
}

static void every_row_of_the_way_names_figures_and_leads_down(void **state)
{
    (void)state;
    size_t count;
    const struct chain_row *rows = chain_rows(&count);
    for (size_t i = 0; i < count; i++) {
        assert_non_null(figure_row(rows[i].figure));
        assert_non_null(figure_row(rows[i].from));
        assert_true(rows[i].or_from == NULL || figure_row(rows[i].or_from) != NULL);
    }
    /* no figure comes back to itself: as many steps as there are rows lead nowhere */
    for (size_t i = 0; i < count; i++) {
        const char *at = rows[i].figure;
        for (size_t step = 0; at != NULL && step <= count; step++) {
            const char *next = NULL;
            for (size_t r = 0; r < count && next == NULL; r++)
                if (strcmp(rows[r].figure, at) == 0)
                    next = rows[r].from;
            at = next;
        }
        assert_null(at);
    }
}

/* By hand: pressure goes with 1/D^2, so a hundredth more bore takes 1 - 1/1.01^2 = 1.97 % off;
 * deceleration goes with 1/mass: 1 - 1/1.01 = 0.99 %. */
static void weights_are_those_of_the_formulas(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct result *result = ready_result(arena, VAN, NULL);
    struct trace *trace = trace_named(result, "line-pressure", "front circuit", arena);
    double base = trace->figure->value;
    near(input_named(result, trace, "brake master", "bore")->weight->more / base, 1 / (1.01 * 1.01),
         1e-9);
    trace = trace_named(result, "deceleration", NULL, arena);
    near(input_named(result, trace, "vehicle", "mass")->weight->more / trace->figure->value,
         1 / 1.01, 1e-9);
    arena_destroy(arena);
}

/* The van's servo is used up a little below the effort of the check: its ratio is given and matters
 * only below. The effort of the knee by hand, from F_o = j + r (F - c) = F + e A q - F_r:
 * A = pi 0.1778^2/4 = 0.024829 m2, e A q - F_r = 0.86 * 0.024829 * 0.7e5 - 60 = 1434.7 N,
 * F = (1434.7 + 2.8 * 40 - 150)/1.8 = 775.9 N at the rod, so 775.9/(0.95 * 290/76) = 214.0 N at the
 * pad, 0.9729 times the 220 N of the check. */
static void a_given_value_that_matters_only_beyond_a_knee_says_so(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct result *result = ready_result(arena, VAN, NULL);
    struct trace *trace = trace_named(result, "line-pressure", "front circuit", arena);
    const struct trace_input *ratio = input_named(result, trace, "servo", "ratio");
    assert_non_null(ratio);
    assert_int_equal(ratio->origin.kind, ORIGIN_GIVEN);
    assert_true(ratio->weight->beyond);
    assert_false(input_named(result, trace, "servo", "diameter")->weight->beyond);
    bool found = false;
    for (int i = 0; i < trace->knee_count; i++)
        found = found || fabs(trace->knees[i].effort - 0.9729) < 5e-4;
    assert_true(found);
    arena_destroy(arena);
}

static void the_case_that_holds_is_named(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct result *result = ready_result(arena, VAN, NULL);
    struct trace *trace = trace_named(result, "wheel-pressure", "rear left drum", arena);
    bool servo = false, valve = false;
    for (int i = 0; i < trace->branch_count; i++) {
        const struct branch *branch = &trace->branches[i];
        enum part_kind kind = result->system->parts[branch->part].kind;
        /* 0.95 * 290/76 * 220 N into the servo, above the knee */
        if (kind == KIND_SERVO) {
            near(branch->now, 797.5, 0.1);
            near(branch->from, 775.9, 0.1);
            servo = branch->index == 2;
        }
        if (kind == KIND_VALVE)
            valve = branch->index == 1 && branch->from == 28e5;
    }
    assert_true(servo && valve);
    arena_destroy(arena);
}

static void what_a_work_file_says_points_into_it(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct result *result = ready_result(arena, VAN, "demo/village-van-work.ini");
    struct trace *trace = trace_named(result, "line-pressure", "front circuit", arena);
    const struct trace_input *bore = input_named(result, trace, "brake master", "bore");
    assert_int_equal(bore->origin.kind, ORIGIN_WORK);
    assert_true(text_ends(bore->origin.place.file, "demo/village-van-work.ini"));
    assert_int_equal(bore->origin.place.line, 11);
    assert_string_equal(bore->origin.text, "7/8 in");
    arena_destroy(arena);
}

static void a_figure_that_cannot_be_had_names_what_is_missing(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct result *result = ready_result(arena, VAN, NULL);
    struct trace *trace = trace_named(result, "reservoir-volume-needed", "front circuit", arena);
    near_unknown(trace->figure->value);
    assert_int_equal(trace->figure->needs_count, 2);
    assert_string_equal(trace->figure->needs[0].key->name, "pad left");
    arena_destroy(arena);
}

/* By hand: no gap is given, so the servo's output rod has its usual 0.3 mm; 290/76 * 0.3 mm. */
static void a_gap_is_lost_times_the_ratio(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct result *result = ready_result(arena, VAN, NULL);
    const struct figure *lost = figures_find(&result->figures, "pedal-lost-rod-gap", NULL);
    assert_non_null(lost);
    near(lost->value, 290.0 / 76.0 * 0.3e-3, 1e-9);
    arena_destroy(arena);
}

static void the_subject_is_asked_for_where_there_are_several(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct result *result = ready_result(arena, VAN, NULL);
    const char *trouble = NULL;
    assert_int_equal(figure_asked(&result->figures, "line-pressure", NULL, arena, &trouble), -1);
    assert_non_null(strstr(trouble, "\"rear circuit\""));
    assert_int_equal(figure_asked(&result->figures, "line-presure", NULL, arena, &trouble), -1);
    assert_non_null(strstr(trouble, "nearest: line-pressure"));
    assert_int_equal(figure_asked(&result->figures, NULL, NULL, arena, &trouble), -1);
    assert_non_null(strstr(trouble, "stopping-distance"));
    assert_int_equal(figure_asked(&result->figures, "deceleration", "roof", arena, &trouble), -1);
    assert_true(figure_asked(&result->figures, "Pedal-Travel", "brake pedal", arena, &trouble) > 0);
    arena_destroy(arena);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_figure_of_every_ready_car_is_traced_down_to_its_lines),
        cmocka_unit_test(what_moves_a_part_of_a_figure_moves_the_figure),
        cmocka_unit_test(every_row_of_the_way_names_figures_and_leads_down),
        cmocka_unit_test(weights_are_those_of_the_formulas),
        cmocka_unit_test(a_given_value_that_matters_only_beyond_a_knee_says_so),
        cmocka_unit_test(the_case_that_holds_is_named),
        cmocka_unit_test(what_a_work_file_says_points_into_it),
        cmocka_unit_test(a_figure_that_cannot_be_had_names_what_is_missing),
        cmocka_unit_test(a_gap_is_lost_times_the_ratio),
        cmocka_unit_test(the_subject_is_asked_for_where_there_are_several),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
