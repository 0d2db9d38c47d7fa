#include "advice/result.h"

#include <math.h>
#include <stddef.h>

#include "advice/bleed_finish.h"
#include "advice/bleed_scope.h"
#include "advice/phrases.h"
#include "base/text.h"
#include "physics/pressure.h"

struct testing {
    const struct system *system;
    const struct network *network;
    const struct figures *figures;
    struct date today;
    struct steps *steps;
    struct arena *arena;
};

static struct step *add_for(struct testing *testing, const char *id, int part)
{
    struct step *step = steps_add(testing->steps, id);
    step->part = part;
    return step;
}

static double value_of(const struct testing *testing, const char *id, int subject)
{
    for (int i = 0; i < testing->figures->count; i++) {
        const struct figure *figure = &testing->figures->items[i];
        if (figure->row == figure_row(id) && figure->subject == subject &&
            figure->state != FIGURE_NOT_COMPUTED) {
            return figure->value;
        }
    }
    return NAN;
}

/* Whether a pedal works brakes; clutch pedals have tests of their own. */
static bool works_brakes(const struct testing *testing, int pedal)
{
    for (int c = 0; c < testing->network->circuit_count; c++) {
        const struct circuit *circuit = &testing->network->circuits[c];
        if (!circuit->clutch && pressure_pedal_of(testing->system, circuit->master) == pedal) {
            return true;
        }
    }
    return false;
}

static int brake_circuits(const struct network *network)
{
    int count = 0;
    for (int c = 0; c < network->circuit_count; c++) {
        count += !network->circuits[c].clutch;
    }
    return count;
}

static void set_shoes(struct testing *testing)
{
    const struct system *system = testing->system;
    bool *all = ARENA_ARRAY(testing->arena, (size_t)system->part_count + 1, bool);
    for (int i = 0; i < system->part_count; i++) {
        all[i] = true;
    }
    int count;
    const char **phrases = adjuster_phrases(system, all, testing->arena, &count);
    for (int i = 0; i < count; i++) {
        steps_add(testing->steps, "test-shoes")->text = phrases[i];
    }
    for (int i = 0; i < system->part_count; i++) {
        if (system->parts[i].kind == KIND_PARKING) {
            add_for(testing, "test-hand-brake", i)->slope.of_1 =
                limit_value("hand-brake-slope-least");
        }
    }
}

static void hold_pedals(struct testing *testing)
{
    for (int i = 0; i < testing->system->part_count; i++) {
        const struct part *part = &testing->system->parts[i];
        if (part->kind != KIND_PEDAL || !works_brakes(testing, i)) {
            continue;
        }
        leak_tests_add(testing->steps, testing->system, i);
        if (part->as.pedal.type == PEDAL_HAND) {
            continue;
        }
        struct step *reserve = add_for(testing, "test-reserve", i);
        reserve->force.n = limit_value("reserve-force");
        double left = value_of(testing, "pedal-left", i) / pedal_end(&part->as.pedal).m;
        reserve->text = left >= 0 ? text_print(testing->arena, "%.0f %% left", 100 * left)
                                  : "not known, something is missing";
    }
}

static void try_servos(struct testing *testing)
{
    for (int i = 0; i < testing->system->part_count; i++) {
        const struct part *part = &testing->system->parts[i];
        if (part->kind == KIND_SERVO) {
            add_for(testing, "test-servo", i);
            add_for(testing, "test-servo-holds", i);
        }
        if (part->kind == KIND_VALVE && part->as.valve.type == VALVE_SHUTTLE) {
            add_for(testing, "test-shuttle", i);
        }
    }
}

static void try_clutch(struct testing *testing)
{
    for (int i = 0; i < testing->system->part_count; i++) {
        if (testing->system->parts[i].kind != KIND_SLAVE) {
            continue;
        }
        struct step *step = add_for(testing, "test-clutch", i);
        step->most.m = value_of(testing, "slave-travel", i);
        step->least.m = value_of(testing, "bearing-travel", i);
        if (isnan(step->least.m) || isnan(step->most.m)) {
            step->row = step_row("test-clutch-plain");
        }
    }
}

/* Only work on brakes asks for bedding in and for a look after a hundred kilometres. */
static void drive(struct testing *testing)
{
    steps_add(testing->steps, "test-overnight");
    steps_add(testing->steps, "test-free-wheels");
    if (brake_circuits(testing->network) > 1 &&
        system_vehicle(testing->system)->type != VEHICLE_MOTORCYCLE) {
        steps_add(testing->steps, "test-circuits");
    }
    steps_add(testing->steps, "test-wheel-nuts");
    steps_add(testing->steps, "test-second-person");
    steps_add(testing->steps, "test-first-drive");
    steps_add(testing->steps, "test-bed-in");
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

static int interval_years(const struct part *fluid)
{
    const struct fluid_row *row = fluid_row(fluid->as.fluid.grade);
    bool takes_water = row == NULL || row->family == FAMILY_GLYCOL;
    return takes_water ? (int)limit_value("fluid-age-most") : row->change_years;
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
            due = date_add_years(part->as.fluid.renewed, interval_years(part));
        }
        if (date_compare(due, testing->today) < 0) {
            due = testing->today;
        }
        add_for(testing, "later-fluid", i)->date = due;
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
        struct step *step = steps_add(testing->steps, "later-hoses");
        step->text = name_list_words(testing->arena, &names);
        step->date = date_add_years(first, (int)limit_value("hose-age-most"));
    }
}

static bool has_shoes(const struct system *system)
{
    for (int i = 0; i < system->part_count; i++) {
        if (system->parts[i].kind == KIND_DRUM) {
            return true;
        }
    }
    return false;
}

struct steps tests_of(const struct system *system, const struct network *network,
                      const struct figures *figures, struct date today, struct arena *arena)
{
    struct steps steps = {.arena = arena};
    struct testing testing = {
        .system = system,
        .network = network,
        .figures = figures,
        .today = today,
        .steps = &steps,
        .arena = arena,
    };
    set_shoes(&testing);
    hold_pedals(&testing);
    try_servos(&testing);
    try_clutch(&testing);
    drive(&testing);
    steps_add(&steps, "later-next-day")->date = next_day(today);
    steps_add(&steps, has_shoes(system) ? "later-100-km" : "later-100-km-discs");
    change_fluid(&testing);
    renew_hoses(&testing);
    return steps;
}
