#include "advice/job/tests_after.h"

#include <math.h>
#include <stddef.h>
#include <string.h>

#include "advice/job/expected.h"
#include "advice/job/opening.h"
#include "advice/common/fluid_age.h"
#include "advice/common/phrases.h"
#include "advice/bleeding/touched.h"
#include "advice/checks/hoses.h"
#include "base/text.h"
#include "physics/pressure.h"

struct testing {
    const struct system *system;
    const struct network *network;
    const struct bleed_set *set;
    struct touched touched;
    struct expecting expecting;
    struct date today;
    struct steps *steps;
    struct arena *arena;
};

static struct step *add_for(struct testing *testing, enum step_id id, int part)
{
    struct step *step = steps_add(testing->steps, id);
    step->part = part;
    return step;
}

static bool is_kind(const struct testing *testing, int part, enum part_kind kind)
{
    return testing->touched.part[part] && testing->system->parts[part].kind == kind;
}

static bool is_motorcycle(const struct testing *testing)
{
    return system_vehicle(testing->system)->type == VEHICLE_MOTORCYCLE;
}

static bool is_circuit_of(const struct testing *testing, int circuit, int pedal)
{
    return is_brake_circuit_of(testing->system, testing->network, circuit, pedal);
}

/* Brake circuits that a pedal works; a clutch pedal has none. */
static int brake_circuits_of(const struct testing *testing, int pedal)
{
    int count = 0;
    for (int c = 0; c < testing->network->circuit_count; c++) {
        count += is_circuit_of(testing, c, pedal);
    }
    return count;
}

static void shut_nipples(struct testing *testing)
{
    static const char *const torques[] = {"nipple-caliper", "nipple-cylinder"};
    for (int kind = 0; kind < 2; kind++) {
        struct name_list names = name_list_room(testing->arena, testing->set->count);
        for (int i = 0; i < testing->set->count; i++) {
            int index = testing->set->items[i].nipple.part;
            const struct part *part = &testing->system->parts[index];
            bool caliper = part->kind == KIND_DISC;
            if (caliper == (kind == 0) && testing->set->items[i].nipple.index == 0) {
                names.items[names.count++] = part->name;
            }
        }
        if (names.count > 0) {
            struct step *step = steps_add(testing->steps, STEP_FINISH_NIPPLES);
            step->text = name_list_words(testing->arena, &names);
            step_torque(step, torques[kind]);
        }
    }
}

/* Small bubbles do not count in the simulation. Before anything that was set for it is undone. */
static void bleed_again(struct testing *testing)
{
    if (testing->set->count > 0) {
        steps_add(testing->steps, STEP_TEST_SECOND_ROUND);
    }
}

static void fill_up(struct testing *testing)
{
    bool discs = false;
    for (int i = 0; i < testing->system->part_count; i++) {
        discs = discs || is_kind(testing, i, KIND_DISC);
    }
    for (int i = 0; i < testing->system->part_count; i++) {
        if (is_kind(testing, i, KIND_RESERVOIR)) {
            add_for(testing, discs ? STEP_FINISH_LEVELS : STEP_FINISH_LEVELS_PLAIN, i);
        }
    }
}

static void feel_pedals(struct testing *testing)
{
    for (int i = 0; i < testing->system->part_count; i++) {
        if (is_kind(testing, i, KIND_PEDAL)) {
            bool hand = testing->system->parts[i].as.pedal.type == PEDAL_HAND;
            add_for(testing,
                    brake_circuits_of(testing, i) == 0 ? STEP_FINISH_CLUTCH
                    : hand                             ? STEP_FINISH_LEVER
                                                       : STEP_FINISH_PEDAL,
                    i);
        }
    }
}

static void hold(struct testing *testing, enum step_id id, int pedal, const char *limit,
                 const char *most, const char *time, bool assisted)
{
    struct step *step = add_for(testing, id, pedal);
    step_say_limit(step, "force", limit);
    if (most != NULL) {
        step_say_limit(step, "force_most", most);
    }
    step_say_limit(step, "time", time);
    struct expected lines = expected_lines(&testing->expecting, pedal,
                                           limit_value(most != NULL ? most : limit), assisted);
    step_say(step, "pressure", lines.value, DIMENSION_PRESSURE);
    step->pressure_assumed = lines.assumed;
    step->text = lines.at_end ? "By the figures the pedal meets its end before that." : NULL;
}

static const char *mark(const struct expected *expected)
{
    return expected->assumed ? " (assumed)" : "";
}

static void try_reserve(struct testing *testing, int pedal, bool assisted)
{
    struct step *step =
        add_for(testing, assisted ? STEP_TEST_RESERVE_ASSISTED : STEP_TEST_RESERVE, pedal);
    step_say_limit(step, "force", "reserve-force");
    struct expected left = expected_left(&testing->expecting, pedal);
    step->text = left.value >= 0
                     ? text_print(testing->arena, "%.0f %% left%s", 100 * left.value, mark(&left))
                     : "not known, something is missing";
}

/* A servo that helps a pedal: before its master, or in its line; -1. */
static int servo_that_helps(const struct testing *testing, int pedal)
{
    int direct = servo_of_pedal(testing->system, pedal);
    for (int v = 0; direct < 0 && v < testing->network->vertex_count; v++) {
        const struct vertex *vertex = &testing->network->vertices[v];
        if (vertex->circuit >= 0 && is_circuit_of(testing, vertex->circuit, pedal) &&
            testing->system->parts[vertex->part].kind == KIND_SERVO) {
            return vertex->part;
        }
    }
    return direct;
}

/* How many strokes it must still help: what the trade asks, or what its shell can give where that
 * is less. */
static void add_servo_holds(struct testing *testing, int servo)
{
    struct expected left = expected_strokes(&testing->expecting, servo);
    double asked = limit_value("assisted-strokes-least");
    double demanded = left.value < asked ? left.value : asked;
    const char *more =
        isnan(left.value) ? "; how many its shell gives is not known"
        : left.value < asked
            ? text_print(testing->arena, "; its shell gives no more%s, where %.0f are usual",
                         mark(&left), asked)
            : text_print(testing->arena, "; computed %.0f%s", left.value, mark(&left));
    add_for(testing, STEP_TEST_SERVO_HOLDS, servo)->text =
        text_print(testing->arena, "%.0f stroke%s%s", demanded, demanded == 1 ? "" : "s", more);
}

/* Whether a brake circuit of a pedal was let air or fresh fluid into. */
static bool is_open(const struct testing *testing, int pedal)
{
    for (int c = 0; c < testing->network->circuit_count; c++) {
        if (testing->set->circuit_open[c] && is_circuit_of(testing, c, pedal)) {
            return true;
        }
    }
    return false;
}

/* Pressure only grows from one to the next; the servo's push comes last. */
static void hold_pedal(struct testing *testing, int pedal)
{
    if (testing->system->parts[pedal].as.pedal.type == PEDAL_HAND) {
        step_say_limit(add_for(testing, STEP_TEST_HOLD_LEVER, pedal), "time", "hold-time");
        return;
    }
    int servo = servo_that_helps(testing, pedal);
    if (servo >= 0) {
        add_for(testing, STEP_TEST_ENGINE_OFF, servo);
    }
    if (!is_open(testing, pedal)) { /* only its servo was off */
        add_for(testing, STEP_TEST_SERVO, servo);
        add_servo_holds(testing, servo);
        return;
    }
    hold(testing, STEP_TEST_HOLD_LONG, pedal, "hold-light-force-least", "hold-light-force-most",
         "hold-long-time", false);
    hold(testing, STEP_TEST_HOLD_MINUTE, pedal, "hold-minute-force-least", "hold-minute-force-most",
         "hold-minute-time", false);
    hold(testing, STEP_TEST_HOLD, pedal, "hold-force", NULL, "hold-time", false);
    if (servo >= 0) {
        add_for(testing, STEP_TEST_SERVO, servo);
        hold(testing, STEP_TEST_HOLD_ASSISTED, pedal, "hold-force", NULL, "hold-time", true);
    }
    try_reserve(testing, pedal, servo >= 0);
    if (servo >= 0) {
        add_servo_holds(testing, servo);
    }
}

static void hold_pedals(struct testing *testing)
{
    for (int i = 0; i < testing->system->part_count; i++) {
        if (is_kind(testing, i, KIND_PEDAL) && brake_circuits_of(testing, i) > 0) {
            hold_pedal(testing, i);
        }
    }
    for (int i = 0; i < testing->system->part_count; i++) {
        if (is_kind(testing, i, KIND_VALVE) &&
            testing->system->parts[i].as.valve.type == VALVE_SHUTTLE) {
            add_for(testing, STEP_TEST_SHUTTLE, i);
        }
    }
}

/* Nipples of a circuit that stayed shut are not opened for a test. */
static void try_circuits(struct testing *testing)
{
    for (int i = 0; i < testing->system->part_count; i++) {
        bool all = is_kind(testing, i, KIND_PEDAL) && brake_circuits_of(testing, i) > 1;
        for (int c = 0; c < testing->network->circuit_count; c++) {
            all = all && (!is_circuit_of(testing, c, i) || testing->set->circuit_open[c]);
        }
        if (all) {
            add_for(testing, STEP_TEST_CIRCUITS, i);
        }
    }
}

static void try_clutch(struct testing *testing)
{
    for (int i = 0; i < testing->system->part_count; i++) {
        if (!is_kind(testing, i, KIND_SLAVE) ||
            testing->system->parts[i].as.slave.type == SLAVE_CONCENTRIC) {
            continue; /* nobody sees a concentric one */
        }
        struct step *step = add_for(testing, STEP_TEST_CLUTCH, i);
        struct expected travel = expected_slave(&testing->expecting, i);
        double bearing = expected_bearing(&testing->expecting, i).value;
        step_say(step, "most", travel.value, DIMENSION_LENGTH);
        step_say(step, "least", bearing, DIMENSION_LENGTH);
        step->text = mark(&travel);
        if (isnan(bearing) || isnan(travel.value)) {
            step->row = step_row_of(STEP_TEST_CLUTCH_PLAIN);
        }
    }
    for (int i = 0; i < testing->system->part_count; i++) {
        if (is_kind(testing, i, KIND_PEDAL) && brake_circuits_of(testing, i) == 0) {
            add_for(testing, STEP_TEST_CLUTCH_GEAR, i);
        }
    }
}

static void leave_overnight(struct testing *testing)
{
    struct name_list names = name_list_room(testing->arena, testing->system->part_count);
    for (int i = 0; i < testing->system->part_count; i++) {
        if (is_kind(testing, i, KIND_RESERVOIR)) {
            names.items[names.count++] = testing->system->parts[i].name;
        }
    }
    steps_add(testing->steps, STEP_TEST_OVERNIGHT)->text =
        names.count > 0 ? name_list_words(testing->arena, &names) : "reservoir";
}

static bool brake_was_off(const struct testing *testing)
{
    for (int i = 0; i < testing->system->part_count; i++) {
        const struct part *part = &testing->system->parts[i];
        if (kind_is_brake(part->kind) && testing->touched.part[i] &&
            (testing->system->work_count == 0 || part_was_opened(part))) {
            return true;
        }
    }
    return false;
}

static void drive(struct testing *testing)
{
    const struct system *system = testing->system;
    steps_add(testing->steps, STEP_TEST_SECOND_PERSON);
    if (!testing->touched.brakes) {
        steps_add(testing->steps, STEP_TEST_FIRST_DRIVE_CLUTCH);
        return;
    }
    steps_add(testing->steps,
              is_motorcycle(testing) ? STEP_TEST_CALIPER_BOLTS : STEP_TEST_WHEEL_NUTS);
    int parking = system_first(system, KIND_PARKING);
    steps_add(testing->steps, STEP_TEST_FIRST_DRIVE)->text =
        parking >= 0 ? ", hand brake ready" : "";
    steps_add(testing->steps, STEP_DRIVE_LOOK);
    for (int i = 0; i < system->part_count; i++) {
        if (system->parts[i].kind == KIND_PARKING &&
            parking_works_any(system, i, testing->touched.bled)) {
            step_say_limit(add_for(testing, STEP_TEST_SLOPE, i), "slope", "hand-brake-slope-least");
        }
    }
    if (brake_was_off(testing)) {
        steps_add(testing->steps, STEP_TEST_BED_IN);
    }
}

static struct date next_day(struct date date)
{
    static const int days[] = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
    if (date.day == 0 || date.month < 1 || date.month > 12) {
        return date;
    }
    bool leap = (date.year % 4 == 0 && date.year % 100 != 0) || date.year % 400 == 0;
    int last = days[date.month - 1] + (date.month == 2 && leap ? 1 : 0);
    struct date next = {date.year, date.month, date.day + 1};
    if (next.day > last) {
        next.day = 1;
        next.month++;
    }
    if (next.month > 12) {
        next.month = 1;
        next.year++;
    }
    return next;
}

/* Fluid that is due already, or of unknown age, is due today. */
static void change_fluid(struct testing *testing)
{
    for (int i = 0; i < testing->system->part_count; i++) {
        const struct part *part = &testing->system->parts[i];
        if (part->kind != KIND_FLUID) {
            continue;
        }
        struct date due = testing->today;
        if (date_known(part->as.fluid.renewed)) {
            due = date_add_years(part->as.fluid.renewed, fluid_years_most(part));
        }
        if (date_compare(due, testing->today) < 0) {
            due = testing->today;
        }
        struct step *step = add_for(testing, STEP_LATER_FLUID, i);
        step->date = due;
        const struct fluid_row *row = fluid_row(part->as.fluid.grade);
        step_say_words(step, "of_fluid",
                       fluid_aging_words(row == NULL ? FAMILY_UNKNOWN : row->family));
    }
}

/* The hoses that come due first, in one step. */
static void renew_hoses(struct testing *testing)
{
    struct hose_list hoses =
        hoses_of(testing->system, testing->network, testing->today, testing->arena);
    struct name_list names = name_list_room(testing->arena, hoses.count);
    struct date first = {0};
    for (int i = 0; i < hoses.count; i++) {
        const struct hose_line *line = &hoses.items[i];
        if (line->standing != HOSE_IS_NEW || !date_known(line->renewed)) {
            continue;
        }
        int order = date_known(first) ? date_compare(line->renewed, first) : -1;
        if (order < 0) {
            first = line->renewed;
            names.count = 0;
        }
        if (order <= 0) {
            names.items[names.count++] = line->name;
        }
    }
    if (names.count > 0) {
        struct step *step = steps_add(testing->steps, STEP_LATER_HOSES);
        step->text = name_list_words(testing->arena, &names);
        step->date = date_add_years(first, (int)limit_value("hose-age-most"));
    }
}

static bool has_shoes(const struct testing *testing)
{
    for (int i = 0; i < testing->system->part_count; i++) {
        if (testing->touched.bled[i] && testing->system->parts[i].kind == KIND_DRUM) {
            return true;
        }
    }
    return false;
}

static bool any_touched(const struct touched *touched)
{
    return touched->brakes || touched->clutch;
}

struct steps tests_of(const struct system *system, const struct network *network, struct date today,
                      struct arena *arena)
{
    struct steps steps = {.arena = arena};
    struct bleed_set set = bleed_set_of(system, network, arena);
    struct testing testing = {
        .system = system,
        .network = network,
        .set = &set,
        .touched = touched_by(system, network, &set, arena),
        .expecting = expecting_start(system, network, arena),
        .today = today,
        .steps = &steps,
        .arena = arena,
    };
    if (any_touched(&testing.touched)) {
        bleed_again(&testing);
        shut_nipples(&testing);
        fill_up(&testing);
        feel_pedals(&testing);
        hold_pedals(&testing);
        try_circuits(&testing);
        if (testing.touched.brakes) {
            steps_add(&steps, STEP_TEST_FREE_WHEELS);
        }
        try_clutch(&testing);
        if (set.count > 0) {
            leave_overnight(&testing);
        }
        drive(&testing);
        steps_add(&steps, STEP_LATER_NEXT_DAY)->date = next_day(today);
        steps_add(&steps, has_shoes(&testing) ? STEP_LATER_100_KM : STEP_LATER_100_KM_DISCS);
    }
    change_fluid(&testing);
    renew_hoses(&testing);
    return steps;
}
