#define _GNU_SOURCE

#include "report/diagram/layout.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "input/read.h"
#include "report/diagram/diagram.h"
#include "report/drawn_car.h"
#include "report/sheet/sheet.h"
#include "support/fixture_result.h"
#include "support/near.h"
#include "support/ready_cars.h"

static double width_of(void *context, const char *words, struct font font)
{
    return fixed_width(context, words, font.size);
}
static const struct ruler ruler = {width_of, NULL};

/* Layouts of all ready cars, made once for all tests. */
enum { MOST_LAYOUTS = 64 };
struct shelf {
    struct arena *arena;
    const char *names[MOST_LAYOUTS];
    const struct layout *layouts[MOST_LAYOUTS];
    int count;
};

static void put_on_shelf(struct shelf *shelf, const char *car, const char *work)
{
    assert_true(shelf->count < MOST_LAYOUTS);
    shelf->names[shelf->count] = work ? work : car;
    shelf->layouts[shelf->count++] =
        layout_of(ready_result(shelf->arena, car, work), &ruler, shelf->arena);
}

static int fill_shelf(void **state)
{
    struct shelf *shelf = calloc(1, sizeof *shelf);
    assert_non_null(shelf);
    shelf->arena = arena_create();
    const char **cars = ready_cars(shelf->arena);
    for (size_t i = 0; cars[i]; i++)
        put_on_shelf(shelf, cars[i], NULL);
    put_on_shelf(shelf, "systems/village-van.ini", "demo/village-van-work.ini");
    *state = shelf;
    return 0;
}

static int clear_shelf(void **state)
{
    struct shelf *shelf = *state;
    arena_destroy(shelf->arena);
    free(shelf);
    return 0;
}

static void on_all_ready_cars(void **state,
                              void (*look)(const struct layout *layout, struct arena *arena))
{
    const struct shelf *shelf = *state;
    for (int i = 0; i < shelf->count; i++) {
        print_message("%s\n", shelf->names[i]);
        look(shelf->layouts[i], shelf->arena);
    }
}

static void look_for_overlaps(const struct layout *layout, struct arena *arena)
{
    struct overlaps overlaps = layout_overlaps(layout, arena);
    for (size_t i = 0; i < overlaps.count; i++)
        print_error("%s lies on %s\n", overlaps.items[i].a, overlaps.items[i].b);
    assert_int_equal(overlaps.count, 0);
}

static void nothing_overlaps_on_any_ready_car(void **state)
{
    on_all_ready_cars(state, look_for_overlaps);
}

static void a_label_put_on_a_symbol_is_an_overlap(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct layout *layout =
        layout_of(fixture_result(arena, (struct fixture_choice){0}), &ruler, arena);
    assert_int_equal(layout_overlaps(layout, arena).count, 0);
    layout->labels[0].box = layout->symbols[0].box;
    assert_true(layout_overlaps(layout, arena).count > 0);
    arena_destroy(arena);
}

/* Whether two legs run along the same line for some way. */
static bool legs_share(const struct point *a, const struct point *b)
{
    bool upright = a[0].x == a[1].x;
    if (upright != (b[0].x == b[1].x))
        return false;
    double here = upright ? a[0].x : a[0].y;
    double there = upright ? b[0].x : b[0].y;
    double a0 = upright ? a[0].y : a[0].x, a1 = upright ? a[1].y : a[1].x;
    double b0 = upright ? b[0].y : b[0].x, b1 = upright ? b[1].y : b[1].x;
    double from = fmax(fmin(a0, a1), fmin(b0, b1));
    double to = fmin(fmax(a0, a1), fmax(b0, b1));
    return fabs(here - there) < 1e-9 && to - from > 1e-9;
}

static void look_at_ways(const struct layout *layout, struct arena *arena)
{
    (void)arena;
    assert_int_equal(layout->unrouted, 0);
    for (int i = 0; i < layout->chain_count; i++)
        for (int k = 0; k < i; k++)
            for (int a = 1; a < layout->chains[i].point_count; a++)
                for (int b = 1; b < layout->chains[k].point_count; b++)
                    assert_false(legs_share(&layout->chains[i].points[a - 1],
                                            &layout->chains[k].points[b - 1]));
}

static void every_pipe_has_a_way_and_none_lies_on_another(void **state)
{
    on_all_ready_cars(state, look_at_ways);
}

static void look_for_every_carrier(const struct layout *layout, struct arena *arena)
{
    int *drawn = ARENA_ARRAY(arena, (size_t)layout->system->part_count, int);
    for (int i = 0; i < layout->chain_count; i++)
        for (int k = 0; k < layout->chains[i].edge_count; k++)
            if (layout->chains[i].pieces[k].part >= 0)
                drawn[layout->chains[i].pieces[k].part]++;
    for (int i = 0; i < layout->system->part_count; i++) {
        enum part_kind kind = layout->system->parts[i].kind;
        bool carrier = kind == KIND_PIPE ||
                       (kind == KIND_HOSE && layout->system->parts[i].as.hose.use != HOSE_SUPPLY &&
                        layout->system->parts[i].as.hose.use != HOSE_VACUUM);
        assert_int_equal(drawn[i], carrier ? 1 : 0);
    }
}

static void every_pipe_and_hose_is_drawn_once(void **state)
{
    on_all_ready_cars(state, look_for_every_carrier);
}

static void look_at_numbers(const struct layout *layout, struct arena *arena)
{
    (void)arena;
    const struct steps *steps = &layout->result->bleed->steps;
    for (size_t s = 0; s < steps->count; s++) {
        int found = 0;
        for (int i = 0; i < layout->nipple_count; i++)
            found += steps->items[s].nipple >= 0 &&
                     layout->nipples[i].nipple.part == steps->items[s].part &&
                     layout->nipples[i].nipple.index == steps->items[s].nipple &&
                     layout->nipples[i].number == steps->items[s].number;
        assert_int_equal(found, steps->items[s].nipple >= 0 ? 1 : 0);
    }
    for (int i = 0; i < layout->result->bleed->untouched_count; i++)
        for (int k = 0; k < layout->nipple_count; k++)
            if (layout->nipples[k].nipple.part == layout->result->bleed->untouched[i].part &&
                layout->nipples[k].nipple.index == layout->result->bleed->untouched[i].index)
                assert_int_equal(layout->nipples[k].number, 0);
}

static void nipples_bear_their_number_in_the_bleeding_order(void **state)
{
    on_all_ready_cars(state, look_at_numbers);
}

static struct layout *layout_from(struct arena *arena, const char *text, size_t size)
{
    struct messages messages = messages_start(arena);
    struct source source = {"car.ini", text, size};
    struct system *system = read_car(&source, arena, &messages);
    assert_non_null(system);
    struct network *network = network_build(system, arena, &messages);
    const struct result *result = result_asked(system, network, (struct force){NAN},
                                               (struct date){2026, 11, 20}, 0, NULL, arena);
    return layout_of(result, &ruler, arena);
}

static void look_for_letters(const struct layout *layout, struct arena *arena)
{
    (void)arena;
    const struct plan *plan = layout->result->plan;
    for (int j = 0; j < plan->joint_count; j++) {
        int found = 0;
        for (int i = 0; i < layout->label_count; i++)
            found += layout->labels[i].letter &&
                     strcmp(layout->labels[i].letter, plan->joints[j].letter) == 0;
        assert_int_equal(found, 1);
    }
}

static void joints_of_the_plan_bear_their_letters(void **state)
{
    const struct shelf *shelf = *state;
    int joints = 0;
    for (int i = 0; i < shelf->count; i++)
        joints += shelf->layouts[i]->result->plan->joint_count;
    assert_true(joints > 8);
    on_all_ready_cars(state, look_for_letters);
}

/* What the first side of the sheet has room for. */
static void look_at_the_sheets_paper(const struct layout *layout, struct arena *arena)
{
    const struct layout *low = layout_within(layout->result, &ruler, arena, 180, 120, 150);
    assert_null(layout_refusal(low));
    print_message("    %.0f mm high, %d lines of labels cross something\n", low->height,
                  low->crowded);
    assert_true(low->width <= 180 && low->height <= 150);
    look_for_overlaps(low, arena);
    look_for_letters(low, arena);
}

static void every_ready_car_fits_on_the_sheets_first_side(void **state)
{
    on_all_ready_cars(state, look_at_the_sheets_paper);
}

/* A valve in any one run, one of each shape, the driver on either side. */
static void a_valve_in_any_run_is_drawn(void **state)
{
    (void)state;
    static const char *const types[] = {"limiting", "residual", "shuttle"};
    int drawn = 0;
    for (int type = 0; type < 3; type++)
        for (int run = 0;; run++) {
            struct arena *arena = arena_create();
            char *text = NULL;
            size_t size = 0;
            FILE *file = open_memstream(&text, &size);
            bool any = car_with_one_valve(run, types[type], run % 2, file);
            fclose(file);
            if (any) {
                const struct layout *layout = layout_from(arena, text, size);
                if (layout_refusal(layout))
                    fail_msg("%s", layout_refusal(layout));
                look_for_every_carrier(layout, arena);
                drawn++;
            }
            free(text);
            arena_destroy(arena);
            if (!any)
                break;
        }
    assert_int_equal(drawn, 21);
}

/* More valves in a run than a plan of that size has room for. */
static void a_car_without_room_is_refused_by_name(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct text text = text_start(arena);
    text_add(&text, "[vehicle]\ntitle = Crowded\n[brake pedal]\nworks = brake master\nratio = 5\n"
                    "[brake master]\ntype = single\nbore = 3/4 in\n[front disc]\n"
                    "caliper = fixed\nbore = 2 of 48 mm\n");
    enum { VALVES = 100 };
    for (int i = 0; i < VALVES; i++)
        text_add(&text, "[pressure %d valve]\ntype = limiting\nlimit = 50 bar\n", i);
    text_add(&text, "[runs]\n");
    for (int i = 0; i < VALVES; i++)
        if (i == 0)
            text_add(&text, "run 0 = brake master, 1 m pipe, pressure 0 valve\n");
        else
            text_add(&text, "run %d = pressure %d valve, 1 m pipe, pressure %d valve\n", i, i - 1,
                     i);
    text_add(&text, "last = pressure %d valve, 1 m pipe, tee\nends = tee, 0.3 m hose, front disc\n",
             VALVES - 1);
    const struct layout *layout = layout_from(arena, text.items, strlen(text.items));
    const char *refusal = layout_refusal(layout);
    assert_non_null(refusal);
    assert_non_null(strstr(refusal, "pressure "));
    const char *error = NULL;
    struct bytes bytes = {.arena = arena};
    assert_false(diagram_picture(layout->result, PICTURE_SVG, 0, &bytes, &error));
    assert_string_equal(error, refusal);
    assert_int_equal(bytes.count, 0);
    arena_destroy(arena);
}

/* A name that fits nowhere: the sheet says in place of the plan why there is none. */
static void the_sheet_says_why_there_is_no_plan(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    const struct result *result = fixture_result(arena, (struct fixture_choice){0});
    char name[200];
    memset(name, 'v', sizeof name - 1);
    name[sizeof name - 1] = '\0';
    result->system->parts[system_first(result->system, KIND_VALVE)].name = name;
    const char *refusal = layout_refusal(layout_of(result, &ruler, arena));
    assert_non_null(refusal);
    assert_non_null(strstr(refusal, "no room to name vvv"));
    size_t count;
    struct sheet_order order = {.result = result};
    const struct sketch *pages = sheet_sides(&order, &ruler, arena, &count);
    bool said = false;
    for (size_t i = 0; i < pages[0].count; i++)
        said =
            said || (pages[0].items[i].kind == SHAPE_WORDS &&
                     strncmp(pages[0].items[i].words, "Not drawn: the plan has no room", 31) == 0);
    assert_true(said);
    arena_destroy(arena);
}

/* "outer, inner" or "inner, outer": the outer one is outside on both sides of the car. */
static void outer_nipples_are_outside_on_both_sides(void **state)
{
    (void)state;
    for (int swapped = 0; swapped < 2; swapped++) {
        struct arena *arena = arena_create();
        struct result *result = ready_result(arena, "systems/hill-coupe.ini", NULL);
        for (int i = 0; i < result->system->part_count; i++)
            if (swapped && kind_is_brake(result->system->parts[i].kind))
                result->system->parts[i].fitted.nipple_names = "inner, outer";
        const struct layout *layout = layout_of(result, &ruler, arena);
        int seen = 0;
        for (int i = 0; i < layout->nipple_count; i++)
            for (int k = 0; k < layout->nipple_count; k++) {
                const struct nipple_mark *outer = &layout->nipples[i], *inner = &layout->nipples[k];
                if (outer->nipple.part != inner->nipple.part || outer->nipple.index != swapped ||
                    inner->nipple.index == swapped)
                    continue;
                double middle = layout->width / 2;
                assert_true(fabs(outer->at.x - middle) > fabs(inner->at.x - middle));
                seen++;
            }
        assert_true(seen >= 4);
        arena_destroy(arena);
    }
}

static void a_nipple_that_stays_shut_has_no_number(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct layout *layout =
        layout_of(fixture_result(arena, (struct fixture_choice){.plain = true}), &ruler, arena);
    assert_true(layout->nipple_count > 0);
    for (int i = 0; i < layout->nipple_count; i++)
        assert_int_equal(layout->nipples[i].number, 0);
    arena_destroy(arena);
}

/* A layout as a list of numbers that hangs on nothing but what is drawn where. */
struct traits {
    double items[4096];
    size_t count;
};

static int compare_rows(const void *a, const void *b)
{
    return memcmp(a, b, 6 * sizeof(double));
}

static void add_trait(struct traits *traits, double what, struct point a, struct point b,
                      double more)
{
    double row[6] = {what, round(a.x * 10), round(a.y * 10), round(b.x * 10), round(b.y * 10),
                     more};
    assert_true(traits->count + 6 <= sizeof traits->items / sizeof traits->items[0]);
    memcpy(&traits->items[traits->count], row, sizeof row);
    traits->count += 6;
}

/* Mirrored where width is that of the paper, not 0. */
static struct point turned_over(struct point p, double width)
{
    return (struct point){width > 0 ? width - p.x : p.x, p.y};
}

static void collect(const struct layout *layout, bool turn, struct traits *traits)
{
    double mirror = turn ? layout->width : 0;
    traits->count = 0;
    for (int i = 0; i < layout->symbol_count; i++) {
        const struct symbol *s = &layout->symbols[i];
        struct point size = {s->half_width, s->half_height};
        add_trait(traits, layout->system->parts[s->part].kind, turned_over(s->at, mirror), size,
                  s->flow_forward);
    }
    for (int i = 0; i < layout->chain_count; i++)
        for (int k = 0; k < layout->chains[i].edge_count; k++) {
            const struct piece *piece = &layout->chains[i].pieces[k];
            for (int p = 1; p < piece->count; p++)
                add_trait(
                    traits, piece->hose ? 101 : 100, turned_over(piece->points[p - 1], mirror),
                    turned_over(piece->points[p], mirror), layout->rank[layout->chains[i].circuit]);
        }
    for (int i = 0; i < layout->nipple_count; i++)
        add_trait(traits, 102, turned_over(layout->nipples[i].at, mirror), (struct point){0, 0},
                  layout->nipples[i].number);
    qsort(traits->items, traits->count / 6, 6 * sizeof(double), compare_rows);
}

static void assert_same_drawing(struct fixture_choice choice, bool mirror)
{
    struct arena *arena = arena_create();
    struct traits *one = calloc(1, sizeof *one);
    struct traits *other = calloc(1, sizeof *other);
    assert_non_null(one);
    assert_non_null(other);
    collect(layout_of(fixture_result(arena, (struct fixture_choice){0}), &ruler, arena), false,
            one);
    collect(layout_of(fixture_result(arena, choice), &ruler, arena), mirror, other);
    assert_true(one->count > 0);
    assert_int_equal(one->count, other->count);
    assert_memory_equal(one->items, other->items, one->count * sizeof(double));
    free(one);
    free(other);
    arena_destroy(arena);
}

static void other_names_give_the_same_drawing(void **state)
{
    (void)state;
    assert_same_drawing((struct fixture_choice){.other_names = true}, false);
}

static void another_order_of_parts_gives_the_same_drawing(void **state)
{
    (void)state;
    assert_same_drawing((struct fixture_choice){.reversed = true}, false);
}

static void sides_changed_over_give_the_mirrored_drawing(void **state)
{
    (void)state;
    assert_same_drawing((struct fixture_choice){.driver_left = true}, true);
    assert_same_drawing(
        (struct fixture_choice){.driver_left = true, .reversed = true, .other_names = true}, true);
}

static void parts_stand_where_they_are_in_the_car(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct layout *layout =
        layout_of(fixture_result(arena, (struct fixture_choice){0}), &ruler, arena);
    struct point master = {NAN, NAN};
    for (int i = 0; i < layout->symbol_count; i++) {
        const struct symbol *s = &layout->symbols[i];
        const struct part *part = &layout->system->parts[s->part];
        if (kind_is_brake(part->kind)) {
            assert_true((part->side == SIDE_LEFT) == (s->at.x < layout->width / 2));
            assert_true((part->axle == AXLE_FRONT) == (s->at.y < layout->height / 2));
        }
        if (part->kind == KIND_MASTER && part->as.master.type == MASTER_TANDEM)
            master = s->at;
    }
    assert_true(master.x > layout->width / 2); /* before a driver on the right */
    arena_destroy(arena);
}

static void circuits_differ_by_dash_in_black_and_white(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct layout *layout =
        layout_of(fixture_result(arena, (struct fixture_choice){0}), &ruler, arena);
    struct sketch sketch = diagram_sketch(layout, &ruler, arena);
    int dash_of[INK_COUNT];
    for (int i = 0; i < INK_COUNT; i++)
        dash_of[i] = -1;
    for (size_t i = 0; i < sketch.count; i++) {
        const struct shape *shape = &sketch.items[i];
        if (shape->kind == SHAPE_PATH && shape->pen.ink >= INK_FIRST) {
            if (dash_of[shape->pen.ink] >= 0)
                assert_int_equal(dash_of[shape->pen.ink], (int)shape->pen.dash);
            dash_of[shape->pen.ink] = (int)shape->pen.dash;
        }
    }
    assert_true(dash_of[INK_FIRST] >= 0 && dash_of[INK_SECOND] >= 0 && dash_of[INK_THIRD] >= 0);
    assert_int_not_equal(dash_of[INK_FIRST], dash_of[INK_SECOND]);
    assert_int_not_equal(dash_of[INK_FIRST], dash_of[INK_THIRD]);
    assert_int_not_equal(dash_of[INK_SECOND], dash_of[INK_THIRD]);
    arena_destroy(arena);
}

static int words_in(const struct sketch *sketch, const char *words)
{
    int count = 0;
    for (size_t i = 0; i < sketch->count; i++)
        count += sketch->items[i].kind == SHAPE_WORDS && strcmp(sketch->items[i].words, words) == 0;
    return count;
}

static void the_forgotten_hose_of_the_demo_bears_a_tag(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct result *result =
        ready_result(arena, "systems/village-van.ini", "demo/village-van-work.ini");
    struct layout *layout = layout_of(result, &ruler, arena);
    struct sketch sketch = diagram_sketch(layout, &ruler, arena);
    /* three pressure hoses were renewed; of the fourth, the supply and the vacuum hose none */
    assert_int_equal(words_in(&sketch, "NEW"), 3);
    assert_int_equal(words_in(&sketch, "OLD 2008"), 2);
    assert_int_equal(words_in(&sketch, "OLD 2009"), 1);
    arena_destroy(arena);
}

/* Without the work the same car has no new hose; one that is not old bears its year. */
static void a_hose_is_new_only_where_this_work_renewed_it(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct result *result = ready_result(arena, "systems/twin-disc-motorcycle.ini", NULL);
    struct sketch sketch = diagram_sketch(layout_of(result, &ruler, arena), &ruler, arena);
    assert_int_equal(words_in(&sketch, "NEW"), 0);
    assert_int_equal(words_in(&sketch, "2025"), 3);
    arena_destroy(arena);
}

/* Hoses of one age, every nipple bled, no bracket. */
static void the_legend_shows_only_what_is_on_the_car(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct result *result = ready_result(arena, "systems/twin-disc-motorcycle.ini", NULL);
    struct layout *layout = layout_of(result, &ruler, arena);
    struct sketch legend = diagram_legend(layout, &ruler, arena, layout->width);
    assert_int_equal(words_in(&legend, "hose, good"), 1);
    assert_int_equal(words_in(&legend, "hose, old: renew"), 0);
    assert_int_equal(words_in(&legend, "hose, age not known"), 0);
    assert_int_equal(words_in(&legend, "nipple that stays shut"), 0);
    assert_int_equal(words_in(&legend, "bracket"), 0);
    assert_int_equal(words_in(&legend, "union"), 1);
    assert_int_equal(words_in(&legend, "branch"), 1);
    arena_destroy(arena);
}

/* The clutch's lever is on the left too where no other is described. */
static void a_clutch_lever_alone_is_on_the_left(void **state)
{
    (void)state;
    static const char text[] =
        "[vehicle]\ntitle = One lever\ntype = motorcycle\nfront axle = fork\n"
        "rear axle = swinging arm\n[clutch reservoir]\ncapacity = 30 mL\n"
        "[clutch hand lever]\nworks = clutch master\nratio = 5\n"
        "[clutch master]\ntype = single\nbore = 14 mm\nreservoir = clutch reservoir\n"
        "[clutch slave]\ntype = outside\nbore = 32 mm\n[runs]\n"
        "clutch line = clutch master, 0.9 m hose, clutch slave\n";
    struct arena *arena = arena_create();
    const struct layout *layout = layout_from(arena, text, sizeof text - 1);
    assert_null(layout_refusal(layout));
    const int lever = layout->symbol_of[system_find(layout->system, "clutch hand lever")];
    assert_true(layout->symbols[lever].at.x < layout->width / 2 - 20);
    arena_destroy(arena);
}

/* A motorcycle's clutch lever is on the left, the brake's on the right. */
static void a_second_hand_lever_is_on_the_left(void **state)
{
    (void)state;
    static const char text[] =
        "[vehicle]\ntitle = Two levers\ntype = motorcycle\nfront axle = fork\n"
        "rear axle = swinging arm\n[front reservoir]\ncapacity = 40 mL\n"
        "[clutch reservoir]\ncapacity = 30 mL\n[brake hand lever]\nworks = front master\n"
        "ratio = 5\n[front master]\ntype = single\nbore = 14 mm\n"
        "reservoir = front reservoir\n[clutch hand lever]\nworks = clutch master\nratio = 5\n"
        "[clutch master]\ntype = single\nbore = 14 mm\nreservoir = clutch reservoir\n"
        "[front right disc]\ncaliper = fixed\nbore = 2 of 40 mm\n[clutch slave]\n"
        "type = outside\nbore = 32 mm\n[runs]\n"
        "brake = front master, 0.5 m hose, front right disc\n"
        "clutch line = clutch master, 0.9 m hose, clutch slave\n";
    struct arena *arena = arena_create();
    const struct layout *layout = layout_from(arena, text, sizeof text - 1);
    assert_null(layout_refusal(layout));
    assert_int_equal(layout_overlaps(layout, arena).count, 0);
    const int brake = layout->symbol_of[system_find(layout->system, "brake hand lever")];
    const int clutch = layout->symbol_of[system_find(layout->system, "clutch hand lever")];
    assert_true(layout->symbols[brake].at.x > layout->width / 2 + 20);
    assert_true(layout->symbols[clutch].at.x < layout->width / 2 - 20);
    arena_destroy(arena);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(nothing_overlaps_on_any_ready_car),
        cmocka_unit_test(a_label_put_on_a_symbol_is_an_overlap),
        cmocka_unit_test(every_pipe_has_a_way_and_none_lies_on_another),
        cmocka_unit_test(every_pipe_and_hose_is_drawn_once),
        cmocka_unit_test(nipples_bear_their_number_in_the_bleeding_order),
        cmocka_unit_test(joints_of_the_plan_bear_their_letters),
        cmocka_unit_test(every_ready_car_fits_on_the_sheets_first_side),
        cmocka_unit_test(a_valve_in_any_run_is_drawn),
        cmocka_unit_test(a_car_without_room_is_refused_by_name),
        cmocka_unit_test(the_sheet_says_why_there_is_no_plan),
        cmocka_unit_test(outer_nipples_are_outside_on_both_sides),
        cmocka_unit_test(a_nipple_that_stays_shut_has_no_number),
        cmocka_unit_test(other_names_give_the_same_drawing),
        cmocka_unit_test(another_order_of_parts_gives_the_same_drawing),
        cmocka_unit_test(sides_changed_over_give_the_mirrored_drawing),
        cmocka_unit_test(parts_stand_where_they_are_in_the_car),
        cmocka_unit_test(circuits_differ_by_dash_in_black_and_white),
        cmocka_unit_test(the_forgotten_hose_of_the_demo_bears_a_tag),
        cmocka_unit_test(the_legend_shows_only_what_is_on_the_car),
        cmocka_unit_test(a_clutch_lever_alone_is_on_the_left),
        cmocka_unit_test(a_second_hand_lever_is_on_the_left),
        cmocka_unit_test(a_hose_is_new_only_where_this_work_renewed_it),
    };
    return cmocka_run_group_tests(tests, fill_shelf, clear_shelf);
}
