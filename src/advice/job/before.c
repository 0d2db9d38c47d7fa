#include "advice/job/before.h"

#include <math.h>
#include <stddef.h>

#include "advice/common/fluid_age.h"
#include "advice/common/phrases.h"
#include "base/text.h"
#include "physics/pressure.h"

struct before {
    const struct system *system;
    const struct network *network;
    const struct hose_list *hoses;
    const struct steps *opening;
    enum bleed_method method;
    struct bleed_set set;
    struct touched touched;
    struct steps *steps;
    struct arena *arena;
};

static const struct part *part_at(const struct before *before, int part)
{
    return &before->system->parts[part];
}

static struct step *add_for(struct before *before, enum step_id id, int part)
{
    struct step *step = steps_add(before->steps, id);
    step->part = part;
    return step;
}

static bool opens(const struct before *before)
{
    return before->opening->count > 0;
}

/* Names of the parts that are touched, or bled, and are wanted. */
static struct name_list names_of(const struct before *before, const bool *among,
                                 bool (*wanted)(const struct part *))
{
    struct name_list names = name_list_room(before->arena, before->system->part_count);
    for (int i = 0; i < before->system->part_count; i++) {
        if (among[i] && wanted(part_at(before, i))) {
            names.items[names.count++] = part_at(before, i)->name;
        }
    }
    return names;
}

static void add_named(struct before *before, enum step_id id, const struct name_list *names)
{
    if (names->count > 0) {
        steps_add(before->steps, id)->text = name_list_words(before->arena, names);
    }
}

static bool is_pedal(const struct part *part)
{
    return part->kind == KIND_PEDAL;
}

static bool is_load_valve(const struct part *part)
{
    return part->kind == KIND_VALVE && part->as.valve.type == VALVE_LOAD_SENSING;
}

/* Hand brakes that work a brake which is opened. */
static bool works_what_is_off(const struct before *before, int parking)
{
    bool *off = ARENA_ARRAY(before->arena, (size_t)before->system->part_count + 1, bool);
    for (int i = 0; i < before->system->part_count; i++) {
        off[i] = part_was_opened(part_at(before, i));
    }
    return parking_works_any(before->system, parking, off);
}

static void read_what_stands(struct before *before)
{
    struct arena *arena = before->arena;
    struct name_list what = name_list_room(arena, before->system->part_count + 2);
    struct name_list pedals = names_of(before, before->touched.part, is_pedal);
    if (pedals.count > 0) {
        what.items[what.count++] =
            text_print(arena, "height and free play of the %s", name_list_words(arena, &pedals));
    }
    for (int i = 0; i < before->system->part_count; i++) {
        const struct part *part = part_at(before, i);
        if (part->kind == KIND_PARKING && works_what_is_off(before, i)) {
            what.items[what.count++] = text_print(arena, "clicks of the %s", part->name);
        } else if (before->touched.part[i] && is_load_valve(part)) {
            what.items[what.count++] = text_print(
                arena, "where the lever of the %s stands with the car on its wheels", part->name);
        }
    }
    if (opens(before)) {
        add_named(before, STEP_BEFORE_READ, &what);
    }
}

static bool is_due(const struct hose_line *line)
{
    switch (line->standing) {
    case HOSE_IS_OLD:
    case HOSE_AGE_NOT_KNOWN:
    case HOSE_IS_MISSING:
        return true;
    case HOSE_IS_NEW:
    case HOSE_IS_ACCEPTED:
    case HOSE_CANNOT_TELL:
    case HOSE_IS_IDLE:
        break;
    }
    return false;
}

/* Whether a hose belongs to what the work has to do with. */
static bool is_of_the_job(const struct before *before, const struct hose_line *line)
{
    const bool *touched = before->touched.part;
    int owner = line->hose >= 0 ? soft_hose_owner(before->system, line->hose) : -1;
    return line->hose >= 0 ? touched[line->hose] || (owner >= 0 && touched[owner])
                           : line->far >= 0 && touched[line->far];
}

static void settle_what_stays(struct before *before)
{
    struct name_list due = name_list_room(before->arena, before->hoses->count);
    for (int i = 0; i < before->hoses->count; i++) {
        const struct hose_line *line = &before->hoses->items[i];
        bool handled = line->hose >= 0 && part_was_opened(part_at(before, line->hose));
        if (is_due(line) && !handled && is_of_the_job(before, line)) {
            due.items[due.count++] = line->name;
        }
    }
    add_named(before, STEP_BEFORE_LIST, &due);
}

static void look_at_masters(struct before *before)
{
    const struct network *network = before->network;
    for (int i = 0; i < before->system->part_count; i++) {
        if (part_at(before, i)->kind == KIND_MASTER && part_is_new(part_at(before, i))) {
            add_for(before, STEP_BEFORE_COMPARE, i);
        }
    }
    for (int c = 0; c < network->circuit_count; c++) {
        const struct circuit *circuit = &network->circuits[c];
        for (int v = 0; circuit->clutch && v < circuit->vertex_count; v++) {
            int part = network->vertices[circuit->vertices[v]].part;
            if (part_at(before, part)->kind == KIND_SLAVE && part_is_new(part_at(before, part)) &&
                !part_is_new(part_at(before, circuit->master))) {
                add_for(before, STEP_BEFORE_OLD_CUPS, circuit->master);
            }
        }
    }
}

static bool is_at_a_wheel(const struct part *part)
{
    return kind_is_brake(part->kind);
}

static bool stays_untried(const struct part *part)
{
    return !part_is_new(part) && nipples_of(part) > 0 && part->found.nipple == NIPPLE_NOT_SAID;
}

/* Behind a drum nobody sees them. */
static bool stays_unmoved(const struct part *part)
{
    return !part_is_new(part) && part->kind == KIND_DISC && part->found.pistons == PISTONS_NOT_SAID;
}

static bool has_pistons(const struct part *part)
{
    return kind_is_brake(part->kind) || part->kind == KIND_SLAVE;
}

static bool is_bad(const struct part *part)
{
    return !part_is_new(part) &&
           (part->found.nipple == NIPPLE_SEIZED || part->found.nipple == NIPPLE_SHEARED);
}

/* What is renewed takes its nipple and its pistons with it: only what stays is tried. */
static void try_what_stays(struct before *before)
{
    const bool *bled = before->touched.bled;
    struct name_list nipples = names_of(before, bled, stays_untried);
    add_named(before, STEP_OPEN_TRY_NIPPLE, &nipples);
    if (!opens(before)) {
        return;
    }
    for (int i = 0; i < before->system->part_count; i++) {
        const struct part *part = part_at(before, i);
        if (is_bad(part)) {
            add_for(before, STEP_OPEN_NIPPLE_KNOWN, i)->text =
                part->found.nipple == NIPPLE_SEIZED ? "seized" : "sheared off";
        }
        if (has_pistons(part) && !part_is_new(part) && part->found.pistons == PISTONS_STUCK) {
            add_for(before, STEP_OPEN_FREE_PISTONS, i);
        }
    }
    struct name_list pistons = names_of(before, bled, stays_unmoved);
    add_named(before, STEP_OPEN_PISTONS_EARLY, &pistons);
}

static void try_servos(struct before *before)
{
    for (int i = 0; opens(before) && i < before->system->part_count; i++) {
        const struct part *part = part_at(before, i);
        if (part->kind == KIND_SERVO && before->touched.part[i] && !part_is_new(part)) {
            add_for(before, STEP_BEFORE_SERVO, i);
        }
    }
}

static void count_plugs(struct before *before)
{
    int plugs = 0;
    for (size_t i = 0; i < before->opening->count; i++) {
        plugs += before->opening->items[i].plug != NULL;
    }
    if (plugs > 0) {
        steps_add(before->steps, STEP_BEFORE_PLUGS)->text =
            plugs == 1
                ? "a plug or a cap for the open end"
                : text_print(before->arena, "%d plugs or caps, one for each open end", plugs);
    }
}

/* Whether the work goes to a brake circuit, or to the clutch, that hangs on a reservoir. */
static bool works_on(const struct before *before, int reservoir, bool clutch)
{
    for (int c = 0; c < before->network->circuit_count; c++) {
        const struct circuit *circuit = &before->network->circuits[c];
        if (circuit->clutch == clutch && before->set.circuit_open[c] &&
            reservoir_of(before->system, circuit->master) == reservoir) {
            return true;
        }
    }
    return false;
}

static bool feeds_brakes(const struct before *before, int reservoir)
{
    for (int c = 0; c < before->network->circuit_count; c++) {
        const struct circuit *circuit = &before->network->circuits[c];
        if (!circuit->clutch && reservoir_of(before->system, circuit->master) == reservoir) {
            return true;
        }
    }
    return false;
}

/* The masters of a reservoir: whether one of them comes off whose fluid can all go, whether the
 * fluid of one is changed; for the words, the clutch's. */
struct above {
    bool comes_off, changed;
    int clutch;
};

static struct above above_masters(const struct before *before, int reservoir)
{
    const struct system *system = before->system;
    struct above above = {part_was_opened(&system->parts[reservoir]), false, -1};
    for (int c = 0; c < before->network->circuit_count; c++) {
        const struct circuit *circuit = &before->network->circuits[c];
        if (reservoir_of(system, circuit->master) != reservoir) {
            continue;
        }
        int fluid = system_fluid_of(system, circuit->master);
        bool off = part_was_opened(&system->parts[circuit->master]);
        above.changed = above.changed || (fluid >= 0 && fluid_is_changed(system, fluid));
        above.comes_off =
            above.comes_off || (off && (!circuit->clutch || !feeds_brakes(before, reservoir)));
        above.clutch = circuit->clutch ? circuit->master : above.clutch;
    }
    return above;
}

/* What stands above what comes off, and old fluid that is changed, is drawn out; for the clutch
 * alone only as far as the ports of the brakes stay covered; else the ports are shut. */
static void lower_reservoirs(struct before *before)
{
    const struct system *system = before->system;
    for (int i = 0; i < system->part_count; i++) {
        if (system->parts[i].kind != KIND_RESERVOIR || !before->touched.part[i]) {
            continue;
        }
        struct above above = above_masters(before, i);
        bool brakes = works_on(before, i, false);
        if (above.comes_off && opens(before)) {
            add_for(before, STEP_OPEN_EMPTY_RESERVOIR, i);
        } else if (above.changed && before->method != METHOD_REVERSE) {
            add_for(before, STEP_SET_DRAW_OLD, i);
        } else if (opens(before) && works_on(before, i, true) && !brakes &&
                   feeds_brakes(before, i)) {
            add_for(before, STEP_OPEN_LOWER_RESERVOIR, i)->text = system->parts[above.clutch].name;
        } else if (opens(before) && brakes && !above.changed) {
            add_for(before, STEP_OPEN_FILM, i)->text =
                pedal_names(system, &before->touched, before->arena);
        }
    }
}

/* What renewing takes, beside what this work takes as it is. */
static const char *renewal_words(const struct before *before, const struct bleed_plan *bleed)
{
    const struct renewal *renewal = &bleed->renewal;
    if (isnan(renewal->fluid.m3) || isnan(renewal->strokes) || isnan(renewal->strokes_now))
        return "what it adds is not known, lengths are missing";
    return text_print(before->arena,
                      "%.0f mL and about %.0f strokes in all, instead of %.0f mL and %.0f%s",
                      1e6 * renewal->fluid.m3, renewal->strokes, 1e6 * bleed->fluid.m3,
                      renewal->strokes_now, bleed->fluid_assumed ? " (assumed)" : "");
}

/* Fluid that is due, or of unknown age, and that the work does not renew. */
static void decide_renewal(struct before *before, const struct bleed_plan *bleed, struct date today)
{
    for (int i = 0; bleed->renewal.open && i < before->system->part_count; i++) {
        const struct part *fluid = part_at(before, i);
        if (fluid->kind != KIND_FLUID || !fluid_is_due(fluid, today) ||
            fluid_is_changed(before->system, i))
            continue;
        struct step *step = add_for(before, STEP_DECIDE_RENEWAL, i);
        struct date renewed = fluid->as.fluid.renewed;
        step->text = !date_known(renewed) ? "is of unknown age"
                                          : text_print(before->arena, "is %d years old",
                                                       date_years_between(renewed, today));
        step_say_words(step, "more", renewal_words(before, bleed));
    }
}

struct steps before_of(const struct system *system, const struct network *network,
                       const struct hose_list *hoses, const struct steps *opening,
                       const struct bleed_plan *bleed, struct date today, struct arena *arena)
{
    struct steps steps = {.arena = arena};
    struct before before = {.system = system,
                            .network = network,
                            .hoses = hoses,
                            .opening = opening,
                            .method = bleed->method,
                            .set = bleed_set_of(system, network, arena),
                            .steps = &steps,
                            .arena = arena};
    before.touched = touched_by(system, network, &before.set, arena);
    read_what_stands(&before);
    if (opens(&before) || before.set.count > 0) {
        settle_what_stays(&before);
    }
    decide_renewal(&before, bleed, today);
    look_at_masters(&before);
    if (system_vehicle(system)->type != VEHICLE_MOTORCYCLE) {
        struct name_list brakes = names_of(&before, before.touched.bled, is_at_a_wheel);
        add_named(&before, STEP_BEFORE_WHEELS, &brakes);
    }
    try_what_stays(&before);
    try_servos(&before);
    count_plugs(&before);
    struct name_list home = pistons_to_go_home(system, before.touched.bled, arena);
    add_named(&before, STEP_OPEN_PISTONS_HOME, &home);
    if (before.set.count > 0) {
        lower_reservoirs(&before);
    }
    return steps;
}
