#include "advice/bleed_settings.h"

#include <stddef.h>

#include "advice/finding.h"
#include "advice/phrases.h"
#include "base/text.h"
#include "physics/pressure.h"

struct settings {
    const struct system *system;
    const struct bleed_set *set;
    enum bleed_method method;
    struct steps *steps;
    bool *touched; /* by part index: on a circuit in scope, or feeding one */
    struct arena *arena;
};

static void touch_parts(struct settings *settings, const struct network *network)
{
    for (int c = 0; c < network->circuit_count; c++) {
        const struct circuit *circuit = &network->circuits[c];
        if (!settings->set->circuit_open[c]) {
            continue;
        }
        settings->touched[circuit->master] = true;
        int pedal = pressure_pedal_of(settings->system, circuit->master);
        int servo = pressure_servo_of(settings->system, circuit->master);
        int reservoir = reservoir_of(settings->system, circuit->master);
        int feeding[] = {pedal, servo, reservoir};
        for (int i = 0; i < 3; i++) {
            if (feeding[i] >= 0) {
                settings->touched[feeding[i]] = true;
            }
        }
        for (int i = 0; i < circuit->vertex_count; i++) {
            settings->touched[network->vertices[circuit->vertices[i]].part] = true;
        }
    }
}

static struct step *add_for(struct settings *settings, const char *id, int part)
{
    struct step *step = steps_add(settings->steps, id);
    step->part = part;
    return step;
}

static void place_the_car(struct settings *settings)
{
    const struct system *system = settings->system;
    bool motorcycle = system_vehicle(system)->type == VEHICLE_MOTORCYCLE;
    steps_add(settings->steps, motorcycle ? "set-level-motorcycle" : "set-level");
    bool lifts_paint = true;
    int fluid = system_first(system, KIND_FLUID);
    if (fluid >= 0) {
        const struct fluid_row *row = fluid_row(system->parts[fluid].as.fluid.grade);
        lifts_paint = row == NULL || row->family == FAMILY_GLYCOL;
    }
    if (lifts_paint) {
        steps_add(settings->steps, "set-paint");
    }
}

/* The reservoir that is filled from in most steps. */
static int first_reservoir(const struct settings *settings)
{
    for (int i = 0; i < settings->system->part_count; i++) {
        if (settings->touched[i] && settings->system->parts[i].kind == KIND_RESERVOIR) {
            return i;
        }
    }
    return -1;
}

static void set_kit(struct settings *settings)
{
    static const char *const ids[METHOD_COUNT] = {
        [METHOD_PEDAL] = "set-second-person", [METHOD_PRESSURE] = "set-kit-pressure",
        [METHOD_VACUUM] = "set-kit-vacuum",   [METHOD_GRAVITY] = "set-kit-gravity",
        [METHOD_REVERSE] = "set-kit-reverse",
    };
    struct step *step = steps_add(settings->steps, ids[settings->method]);
    step->part = first_reservoir(settings);
    if (settings->method == METHOD_PRESSURE) {
        step->pressure.pa = limit_value("kit-pressure");
        step->pressure_most.pa = limit_value("kit-pressure-most");
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
        struct step *step = add_for(
            settings, found->family == wanted->family ? "set-other-grade" : "set-wrong-fluid", i);
        step->text = text_print(settings->arena, "%s was found in the car, and %s belongs there",
                                found->word, wanted->word);
    }
}

static void set_rods(struct settings *settings, int part)
{
    const struct system *system = settings->system;
    int servo = pressure_servo_of(system, part);
    struct step *step = add_for(settings, servo >= 0 ? "set-servo-rod-gap" : "set-rod-gap",
                                servo >= 0 ? servo : part);
    step->least.m = servo >= 0 ? 0.0 : limit_value("rod-gap-least");
    step->most.m = limit_value(servo >= 0 ? "servo-rod-gap-most" : "rod-gap-most");
}

static bool pedal_has_servo(const struct system *system, int pedal)
{
    for (int i = 0; i < system->part_count; i++) {
        if (system->parts[i].kind == KIND_MASTER && pressure_pedal_of(system, i) == pedal &&
            pressure_servo_of(system, i) >= 0) {
            return true;
        }
    }
    return false;
}

static void set_free_play(struct settings *settings, int pedal)
{
    if (settings->system->parts[pedal].as.pedal.type == PEDAL_HAND) {
        return;
    }
    bool servo = pedal_has_servo(settings->system, pedal);
    struct step *step = add_for(settings, "set-free-play", pedal);
    step->least.m = limit_value(servo ? "servo-free-play-least" : "free-play-least");
    step->most.m = limit_value(servo ? "servo-free-play-most" : "free-play-most");
}

static void set_brakes(struct settings *settings)
{
    const struct system *system = settings->system;
    bool brakes = false;
    for (int i = 0; i < system->part_count; i++) {
        brakes = brakes || (settings->touched[i] && kind_is_brake(system->parts[i].kind));
    }
    for (int i = 0; brakes && i < system->part_count; i++) {
        if (system->parts[i].kind == KIND_PARKING) {
            add_for(settings, "set-hand-brake-slack", i);
        }
    }
    int count;
    const char **phrases = adjuster_phrases(system, settings->touched, settings->arena, &count);
    for (int i = 0; i < count; i++) {
        steps_add(settings->steps, "set-shoes-up")->text = phrases[i];
    }
    for (int i = 0; i < settings->set->count; i++) {
        int part = settings->set->items[i].nipple.part;
        struct length below = system->parts[part].fitted.nipple_below;
        if (system->parts[part].kind == KIND_DISC && below.m > 0 &&
            settings->set->items[i].nipple.index == 0) {
            add_for(settings, "set-caliper-up", part)->least = below;
        }
    }
}

static const char *valve_setting(enum valve_type type)
{
    switch (type) {
    case VALVE_LOAD_SENSING:
        return "set-load-valve";
    case VALVE_HOLD_OFF:
        return "set-hold-off";
    case VALVE_SHUTTLE:
        return "set-shuttle";
    case VALVE_RESIDUAL:
        return "set-residual";
    case VALVE_NOT_SAID:
    case VALVE_LIMITING:
    case VALVE_PROPORTIONING:
        break;
    }
    return NULL;
}

/* The pad travel that keeps an old master to the first part of its stroke. */
static struct length pad_stop(const struct system *system, int master)
{
    struct length stop = {-1};
    int pedal = pressure_pedal_of(system, master);
    if (pedal < 0) {
        return stop;
    }
    const struct pedal *data = &system->parts[pedal].as.pedal;
    double by_stroke = system->parts[master].as.master.stroke.m * pedal_ratio(data).value;
    double travel = pedal_end(data).m;
    double whole = !(by_stroke > 0) || travel < by_stroke ? travel : by_stroke;
    stop.m = limit_value("old-master-stroke") * whole;
    return stop;
}

static void set_master(struct settings *settings, int part)
{
    const struct system *system = settings->system;
    if (settings->method == METHOD_PEDAL && !part_is_new(&system->parts[part])) {
        int pedal = pressure_pedal_of(system, part);
        bool hand = pedal >= 0 && system->parts[pedal].as.pedal.type == PEDAL_HAND;
        struct length stop = pad_stop(system, part);
        if (stop.m > 0) {
            add_for(settings, hand ? "set-lever-block" : "set-pedal-block", part)->most = stop;
        } else {
            add_for(settings, hand ? "set-lever-block-plain" : "set-pedal-block-plain", part);
        }
    }
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
    case KIND_SERVO:
        add_for(settings, "set-servo-empty", index);
        break;
    case KIND_VALVE: {
        const char *id = valve_setting(part->as.valve.type);
        if (id != NULL) {
            add_for(settings, id, index);
        }
        break;
    }
    case KIND_SLAVE:
        add_for(settings, "set-slave", index);
        break;
    case KIND_JOINT:
        if (part->as.joint.blanked > 0) {
            add_for(settings, "set-dead-leg", index)->text =
                part->as.joint.blanked == 1
                    ? "a plug or a lamp switch"
                    : text_print(settings->arena, "%d plugs or lamp switches",
                                 part->as.joint.blanked);
        }
        break;
    case KIND_VEHICLE:
    case KIND_FLUID:
    case KIND_RESERVOIR:
    case KIND_PIPE:
    case KIND_HOSE:
    case KIND_DISC:
    case KIND_DRUM:
    case KIND_PARKING:
    case KIND_COUNT:
        break;
    }
}

struct steps bleed_settings_of(const struct system *system, const struct network *network,
                               const struct bleed_set *set, enum bleed_method method,
                               struct arena *arena)
{
    struct steps steps = {.arena = arena};
    struct settings settings = {
        .system = system,
        .set = set,
        .method = method,
        .steps = &steps,
        .touched = ARENA_ARRAY(arena, (size_t)system->part_count + 1, bool),
        .arena = arena,
    };
    if (set->count == 0) {
        return steps;
    }
    touch_parts(&settings, network);
    set_fluids(&settings);
    place_the_car(&settings);
    set_kit(&settings);
    steps_add(&steps, "set-nipple-tried");
    set_brakes(&settings);
    for (int i = 0; i < system->part_count; i++) {
        if (settings.touched[i]) {
            set_part(&settings, i);
        }
    }
    for (int i = 0; i < system->part_count; i++) {
        if (settings.touched[i] && system->parts[i].kind == KIND_MASTER) {
            set_master(&settings, i);
        }
    }
    for (int i = 0; i < system->part_count; i++) {
        if (settings.touched[i] && system->parts[i].kind == KIND_MASTER) {
            int reservoir = reservoir_of(system, i);
            if (reservoir >= 0 && settings.touched[reservoir]) {
                struct step *step = add_for(&settings, "set-reservoir", reservoir);
                step->text = fluid_words(system, i);
                settings.touched[reservoir] = false; /* once */
            }
        }
    }
    return steps;
}
