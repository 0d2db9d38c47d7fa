#include "advice/bleeding/bleed_settings.h"

#include <math.h>
#include <stddef.h>

#include "advice/bleeding/bleed_stroke.h"
#include "advice/checks/finding.h"
#include "advice/common/phrases.h"
#include "advice/bleeding/touched.h"
#include "base/text.h"
#include "physics/pressure.h"

struct settings {
    const struct system *system;
    const struct network *network;
    const struct bleed_set *set;
    const struct circuit_stroke *each; /* by circuit; NULL */
    enum bleed_method method;
    struct steps *steps;
    struct touched touched;
    struct arena *arena;
};

static struct step *add_for(struct settings *settings, enum step_id id, int part)
{
    struct step *step = steps_add(settings->steps, id);
    step->part = part;
    return step;
}

static void place_the_car(struct settings *settings)
{
    const struct system *system = settings->system;
    bool motorcycle = system_vehicle(system)->type == VEHICLE_MOTORCYCLE;
    steps_add(settings->steps, motorcycle ? STEP_SET_LEVEL_MOTORCYCLE : STEP_SET_LEVEL);
    bool lifts_paint = true;
    int fluid = system_first(system, KIND_FLUID);
    if (fluid >= 0) {
        const struct fluid_row *row = fluid_row(system->parts[fluid].as.fluid.grade);
        lifts_paint = row == NULL || row->family == FAMILY_GLYCOL;
    }
    if (lifts_paint) {
        steps_add(settings->steps, STEP_SET_PAINT);
    }
}

/* A kit goes on the filled reservoir; what else a method needs stands before the filling. Backwards
 * nothing is filled, for it fills from below. */
static bool comes_after_filling(enum bleed_method method)
{
    return method == METHOD_PRESSURE || method == METHOD_GRAVITY;
}

static void set_kit(struct settings *settings)
{
    static const enum step_id ids[METHOD_COUNT] = {
        [METHOD_PEDAL] = STEP_SET_SECOND_PERSON, [METHOD_PRESSURE] = STEP_SET_KIT_PRESSURE,
        [METHOD_VACUUM] = STEP_SET_KIT_VACUUM,   [METHOD_GRAVITY] = STEP_SET_KIT_GRAVITY,
        [METHOD_REVERSE] = STEP_SET_KIT_REVERSE,
    };
    bool each = settings->method != METHOD_PEDAL && settings->method != METHOD_VACUUM;
    for (int i = 0; i < settings->system->part_count; i++) {
        bool reservoir =
            settings->touched.part[i] && settings->system->parts[i].kind == KIND_RESERVOIR;
        if (each ? !reservoir : i > 0) {
            continue;
        }
        struct step *step = add_for(settings, ids[settings->method], each ? i : -1);
        step->text = pedal_names(settings->system, &settings->touched, settings->arena);
        if (settings->method == METHOD_PRESSURE) {
            step_say_limit(step, "pressure", "kit-pressure");
            step_say_limit(step, "pressure_most", "kit-pressure-most");
        }
    }
}

static void fill_reservoirs(struct settings *settings)
{
    const struct system *system = settings->system;
    bool *filled = ARENA_ARRAY(settings->arena, (size_t)system->part_count + 1, bool);
    for (int i = 0; i < system->part_count; i++) {
        int reservoir = settings->touched.part[i] && system->parts[i].kind == KIND_MASTER
                            ? reservoir_of(system, i)
                            : -1;
        if (reservoir >= 0 && !filled[reservoir]) {
            add_for(settings, STEP_SET_RESERVOIR, reservoir)->text = fluid_words(system, i);
            filled[reservoir] = true;
        }
    }
}

/* What was found in the car before counts more than any nipple. */
static void set_fluids(struct settings *settings)
{
    const struct system *system = settings->system;
    for (int i = 0; i < system->part_count; i++) {
        const struct fluid *fluid = &system->parts[i].as.fluid;
        if (system->parts[i].kind != KIND_FLUID || fluid->found == GRADE_NOT_SAID ||
            fluid->grade == GRADE_NOT_SAID || fluid->found == fluid->grade) {
            continue;
        }
        const struct fluid_row *found = fluid_row(fluid->found), *wanted = fluid_row(fluid->grade);
        if (found->family == wanted->family && part_is_new(&system->parts[i])) {
            continue; /* that is what the work does */
        }
        struct step *step = add_for(
            settings, found->family == wanted->family ? STEP_SET_OTHER_GRADE : STEP_SET_WRONG_FLUID,
            i);
        step->text = text_print(settings->arena, "%s was found in the car, and %s belongs there",
                                found->name, wanted->name);
        step_say_words(step, "of_fluid", fluid_cleaning_words(found->family));
    }
}

/* A direct servo's rod is gauged while its master is off: that stands under putting together. */
static void set_rods(struct settings *settings, int part)
{
    if (pressure_servo_of(settings->system, part) >= 0) {
        return;
    }
    int pedal = pressure_pedal_of(settings->system, part);
    bool brakes = false;
    for (int c = 0; c < settings->network->circuit_count; c++) {
        const struct circuit *circuit = &settings->network->circuits[c];
        brakes = brakes || (!circuit->clutch && circuit->master == part);
    }
    bool clutch = pedal >= 0 && !brakes;
    struct step *step =
        add_for(settings, clutch ? STEP_SET_ROD_GAP_CLUTCH : STEP_SET_ROD_GAP, part);
    step_say_limit(step, "least", "rod-gap-least");
    step_say_limit(step, "most", "rod-gap-most");
}

static void set_free_play(struct settings *settings, int pedal)
{
    if (settings->system->parts[pedal].as.pedal.type == PEDAL_HAND) {
        return;
    }
    bool servo = servo_of_pedal(settings->system, pedal) >= 0;
    struct step *step = add_for(settings, STEP_SET_FREE_PLAY, pedal);
    step_say_limit(step, "least", servo ? "servo-free-play-least" : "free-play-least");
    step_say_limit(step, "most", servo ? "servo-free-play-most" : "free-play-most");
}

static void set_brakes(struct settings *settings)
{
    const struct system *system = settings->system;
    for (int i = 0; i < system->part_count; i++) {
        if (system->parts[i].kind == KIND_PARKING &&
            parking_works_any(system, i, settings->touched.bled)) {
            add_for(settings, STEP_SET_HAND_BRAKE_SLACK, i);
        }
    }
    int count;
    const struct adjuster_phrase *phrases =
        adjuster_phrases(system, settings->touched.bled, settings->arena, &count);
    for (int i = 0; i < count; i++) {
        bool self = phrases[i].adjuster == ADJUSTER_SELF;
        steps_add(settings->steps, self ? STEP_SET_SHOES_SELF : STEP_SET_SHOES_UP)->text =
            phrases[i].words;
    }
    for (int i = 0; i < settings->set->count; i++) {
        int part = settings->set->items[i].nipple.part;
        struct length below = system->parts[part].fitted.nipple_below;
        if (system->parts[part].kind == KIND_DISC && below.m > 0 &&
            settings->set->items[i].nipple.index == 0) {
            step_say(add_for(settings, STEP_SET_CALIPER_UP, part), "least", below.m,
                     DIMENSION_LENGTH);
        }
    }
}

static enum step_id valve_setting(enum valve_type type, enum bleed_method method)
{
    switch (type) {
    case VALVE_LOAD_SENSING:
        return STEP_SET_LOAD_VALVE;
    case VALVE_HOLD_OFF:
        return STEP_SET_HOLD_OFF;
    case VALVE_SHUTTLE:
        return STEP_SET_SHUTTLE;
    case VALVE_RESIDUAL:
        return method == METHOD_GRAVITY ? STEP_SET_RESIDUAL : STEP_NONE;
    case VALVE_NOT_SAID:
    case VALVE_LIMITING:
    case VALVE_PROPORTIONING:
        break;
    }
    return STEP_NONE;
}

/* One block for a pedal, however many old masters it works; none for what works no master. */
static void block_pedal(struct settings *settings, int pedal)
{
    const struct system *system = settings->system;
    struct name_list old = name_list_room(settings->arena, system->part_count);
    for (int i = 0; i < system->part_count; i++) {
        if (system->parts[i].kind == KIND_MASTER && pressure_pedal_of(system, i) == pedal &&
            settings->touched.part[i] && !part_is_new(&system->parts[i])) {
            old.items[old.count++] = system->parts[i].name;
        }
    }
    if (old.count == 0) {
        return;
    }
    bool hand = system->parts[pedal].as.pedal.type == PEDAL_HAND;
    struct length stop = bleed_pad_stop(system, pedal);
    enum step_id id = stop.m > 0 ? (hand ? STEP_SET_LEVER_BLOCK : STEP_SET_PEDAL_BLOCK)
                                 : (hand ? STEP_SET_LEVER_BLOCK_PLAIN : STEP_SET_PEDAL_BLOCK_PLAIN);
    struct step *step = add_for(settings, id, pedal);
    step_say(step, "most", stop.m, DIMENSION_LENGTH);
    step->text = name_list_words(settings->arena, &old);
}

static void set_part(struct settings *settings, int index)
{
    const struct part *part = &settings->system->parts[index];
    switch (part->kind) {
    case KIND_MASTER:
        set_rods(settings, index);
        break;
    case KIND_PEDAL:
        set_free_play(settings, index);
        break;
    case KIND_VALVE: {
        enum step_id id = valve_setting(part->as.valve.type, settings->method);
        if (id != STEP_NONE) {
            add_for(settings, id, index);
        }
        break;
    }
    case KIND_SLAVE:
        add_for(settings,
                part->as.slave.type == SLAVE_CONCENTRIC ? STEP_SET_SLAVE_INSIDE : STEP_SET_SLAVE,
                index);
        break;
    case KIND_VEHICLE:
    case KIND_FLUID:
    case KIND_RESERVOIR:
    case KIND_SERVO:
    case KIND_JOINT:
    case KIND_PIPE:
    case KIND_HOSE:
    case KIND_DISC:
    case KIND_DRUM:
    case KIND_PARKING:
    case KIND_COUNT:
        break;
    }
}

static bool circuit_holds_air(const struct settings *settings, int circuit)
{
    const struct circuit *of = &settings->network->circuits[circuit];
    for (int i = 0; i < of->vertex_count; i++) {
        if (settings->set->air[of->vertices[i]]) {
            return true;
        }
    }
    return false;
}

/* What a stroke gives both circuits; false where it is not known. */
static bool say_strokes(const struct settings *settings, int master, struct step *step)
{
    static const char *const full[] = {"first", "second"};
    static const char *const in_air[] = {"first_in_air", "second_in_air"};
    int known = 0;
    for (int c = 0; settings->each != NULL && c < settings->network->circuit_count; c++) {
        const struct circuit *circuit = &settings->network->circuits[c];
        const struct circuit_stroke *each = &settings->each[c];
        if (circuit->master != master || isnan(each->full.m3) || isnan(each->in_air.m3)) {
            continue;
        }
        step_say(step, full[circuit->chamber], each->full.m3, DIMENSION_VOLUME);
        step_say(step, in_air[circuit->chamber], each->in_air.m3, DIMENSION_VOLUME);
        known++;
    }
    return known == 2;
}

/* Of a tandem's pistons each gets the stroke that the other leaves it. */
static void fill_tandem(struct settings *settings, int master)
{
    const struct part *part = &settings->system->parts[master];
    int holding = 0;
    for (int c = 0; c < settings->network->circuit_count; c++) {
        holding +=
            settings->network->circuits[c].master == master && circuit_holds_air(settings, c);
    }
    if (part->as.master.type != MASTER_TANDEM || holding < 2) {
        return;
    }
    struct step *step = add_for(settings, STEP_SET_TANDEM_TOGETHER, master);
    if (!say_strokes(settings, master, step)) {
        step->row = step_row_of(STEP_SET_TANDEM_PLAIN);
        return;
    }
    step_say_words(step, "springs",
                   bleed_springs_assumed(part) ? "springs assumed" : "by its springs");
}

static void keep_bar_level(struct settings *settings, int pedal)
{
    int masters = 0;
    for (int i = 0; i < settings->system->part_count; i++) {
        bool open = false;
        for (int c = 0; c < settings->network->circuit_count; c++) {
            open = open ||
                   (settings->network->circuits[c].master == i && settings->set->circuit_open[c]);
        }
        masters += open && settings->system->parts[i].kind == KIND_MASTER &&
                   pressure_pedal_of(settings->system, i) == pedal;
    }
    if (masters > 1) {
        add_for(settings, STEP_SET_BAR_TOGETHER, pedal);
    }
}

/* What needs fluid in the reservoir. */
static void set_filled_part(struct settings *settings, int index)
{
    const struct part *part = &settings->system->parts[index];
    if (part->kind == KIND_SERVO && settings->method == METHOD_PEDAL) {
        add_for(settings, STEP_SET_SERVO_EMPTY, index);
    } else if (part->kind == KIND_MASTER && settings->method == METHOD_PEDAL) {
        fill_tandem(settings, index);
    } else if (part->kind == KIND_PEDAL && settings->method == METHOD_PEDAL) {
        keep_bar_level(settings, index);
    } else if (part->kind == KIND_JOINT && part->as.joint.blanked > 0) {
        add_for(settings, STEP_SET_DEAD_LEG, index)->text =
            part->as.joint.blanked == 1
                ? "a plug or a lamp switch"
                : text_print(settings->arena, "%d plugs or lamp switches", part->as.joint.blanked);
    }
}

/* Whether a joint was undone that can be looked at. */
static bool anything_opened(const struct system *system)
{
    for (int i = 0; i < system->part_count; i++) {
        if (system->parts[i].kind != KIND_FLUID && part_was_opened(&system->parts[i])) {
            return true;
        }
    }
    return false;
}

struct steps bleed_settings_of(const struct system *system, const struct network *network,
                               const struct bleed_set *set, const struct bleed_plan *plan,
                               struct arena *arena)
{
    const enum bleed_method method = plan->method;
    struct steps steps = {.arena = arena};
    struct settings settings = {
        .system = system,
        .network = network,
        .set = set,
        .each = plan->each,
        .method = method,
        .steps = &steps,
        .touched = touched_by(system, network, set, arena),
        .arena = arena,
    };
    if (set->count == 0) {
        return steps;
    }
    set_fluids(&settings);
    place_the_car(&settings);
    if (!comes_after_filling(method) && method != METHOD_REVERSE) {
        set_kit(&settings);
    }
    if (anything_opened(system) && method != METHOD_REVERSE) { /* backwards nothing is filled */
        steps_add(&steps, STEP_SET_LOOK);
    }
    set_brakes(&settings);
    for (int i = 0; i < system->part_count; i++) {
        if (settings.touched.part[i]) {
            set_part(&settings, i);
        }
    }
    for (int i = 0; method == METHOD_PEDAL && i < system->part_count; i++) {
        block_pedal(&settings, i);
    }
    if (method != METHOD_REVERSE) {
        fill_reservoirs(&settings);
    }
    if (comes_after_filling(method) || method == METHOD_REVERSE) {
        set_kit(&settings);
    }
    for (int i = 0; i < system->part_count; i++) {
        if (settings.touched.part[i]) {
            set_filled_part(&settings, i);
        }
    }
    return steps;
}
