#include "support/fixture_result.h"

#include <math.h>
#include <stddef.h>
#include <string.h>

#include "base/text.h"
#include "parts/keys/key.h"

enum { MOST_PARTS = 48, MOST_CONNECTIONS = 64 };

struct builder {
    struct arena *arena;
    struct fixture_choice choice;
    struct system *system;
    struct messages messages;
};

static enum side side_for(const struct builder *b, enum side side)
{
    if (!b->choice.driver_left || side == SIDE_NONE)
        return side;
    return side == SIDE_LEFT ? SIDE_RIGHT : SIDE_LEFT;
}

static int add(struct builder *b, enum part_kind kind, const char *name, enum axle axle,
               enum side side)
{
    int index = b->system->part_count++;
    struct part *part = &b->system->parts[index];
    part_blank(part, kind, b->arena);
    part->kind = kind;
    part->axle = axle;
    part->side = side_for(b, side);
    part->name = b->choice.other_names ? text_print(b->arena, "thing %d", 97 - index)
                                       : text_copy(b->arena, name);
    return index;
}

static struct part *part_at(struct builder *b, int index)
{
    return &b->system->parts[index];
}

static void join(struct builder *b, int a, int a_chamber, int other, int other_chamber)
{
    b->system->connections[b->system->connection_count++] =
        (struct connection){{a, a_chamber, NULL}, {other, other_chamber, NULL}, {0}};
}

/* A pipe or hose from one part to another. */
static int lay(struct builder *b, enum part_kind kind, const char *name, double length, int from,
               int from_chamber, int to, int to_chamber)
{
    int carrier = add(b, kind, name, AXLE_NONE, SIDE_NONE);
    if (kind == KIND_PIPE) {
        part_at(b, carrier)->as.pipe.length.m = length;
    } else {
        part_at(b, carrier)->as.hose.length.m = length;
        part_at(b, carrier)->as.hose.use = HOSE_PRESSURE;
    }
    join(b, from, from_chamber, carrier, 0);
    join(b, carrier, 1, to, to_chamber);
    return carrier;
}

static int joint(struct builder *b, const char *name, enum joint_type type, enum mount on)
{
    int index = add(b, KIND_JOINT, name, AXLE_NONE, SIDE_NONE);
    part_at(b, index)->as.joint.type = type;
    part_at(b, index)->as.joint.implied = type == JOINT_BRACKET || type == JOINT_UNION;
    part_at(b, index)->fitted.on = on;
    part_at(b, index)->fitted.nipples = 0;
    return index;
}

static void set_works(struct builder *b, int part, struct part_names *works, int target)
{
    (void)part;
    works->names = ARENA_ARRAY(b->arena, 1, const char *);
    works->parts = ARENA_ARRAY(b->arena, 1, int);
    works->names[0] = part_at(b, target)->name;
    works->parts[0] = target;
    works->count = 1;
}

struct van {
    int brake_pedal, clutch_pedal, servo, master, clutch_master, slave, reservoir, valve;
    int brakes[4]; /* front passenger, front driver, rear passenger, rear driver */
    int hoses[4];
};

static void add_parts(struct builder *b, struct van *van)
{
    int vehicle = add(b, KIND_VEHICLE, "vehicle", AXLE_NONE, SIDE_NONE);
    struct vehicle *v = &part_at(b, vehicle)->as.vehicle;
    v->title = "Village van";
    v->driver = b->choice.driver_left ? DRIVER_LEFT : DRIVER_RIGHT;
    v->front_axle = AXLE_INDEPENDENT;
    v->rear_axle = AXLE_LIVE;
    int fluid = add(b, KIND_FLUID, "fluid", AXLE_NONE, SIDE_NONE);
    part_at(b, fluid)->as.fluid.grade = GRADE_DOT4;
    van->reservoir = add(b, KIND_RESERVOIR, "brake reservoir", AXLE_NONE, SIDE_NONE);
    van->master = add(b, KIND_MASTER, "brake master", AXLE_NONE, SIDE_NONE);
    part_at(b, van->master)->as.master.type = MASTER_TANDEM;
    part_at(b, van->master)->as.master.bore.m = 0.022225;
    van->servo = add(b, KIND_SERVO, "servo", AXLE_NONE, SIDE_NONE);
    part_at(b, van->servo)->as.servo.type = SERVO_DIRECT;
    part_at(b, van->servo)->as.servo.works = van->master;
    part_at(b, van->servo)->as.servo.vacuum_hose.m = 0.9;
    van->brake_pedal = add(b, KIND_PEDAL, "brake pedal", AXLE_NONE, SIDE_NONE);
    set_works(b, van->brake_pedal, &part_at(b, van->brake_pedal)->as.pedal.works, van->servo);
    van->clutch_master = add(b, KIND_MASTER, "clutch master", AXLE_NONE, SIDE_NONE);
    part_at(b, van->clutch_master)->as.master.type = MASTER_SINGLE;
    part_at(b, van->clutch_master)->as.master.bore.m = 0.015875;
    part_at(b, van->clutch_master)->as.master.supply_hose.m = 0.35;
    van->clutch_pedal = add(b, KIND_PEDAL, "clutch pedal", AXLE_NONE, SIDE_NONE);
    set_works(b, van->clutch_pedal, &part_at(b, van->clutch_pedal)->as.pedal.works,
              van->clutch_master);
    van->slave = add(b, KIND_SLAVE, "clutch slave", AXLE_NONE, SIDE_NONE);
    part_at(b, van->slave)->as.slave.type = SLAVE_OUTSIDE;
    part_at(b, van->slave)->as.slave.bore.m = 0.022225;
    van->valve = add(b, KIND_VALVE, "load valve", AXLE_NONE, SIDE_NONE);
    part_at(b, van->valve)->as.valve.type = VALVE_LOAD_SENSING;
    part_at(b, van->valve)->fitted.on = MOUNT_BODY;
    static const char *const names[] = {"front left disc", "front right disc", "rear left drum",
                                        "rear right drum"};
    for (int i = 0; i < 4; i++) {
        van->brakes[i] = add(b, i < 2 ? KIND_DISC : KIND_DRUM, names[i],
                             i < 2 ? AXLE_FRONT : AXLE_REAR, i % 2 ? SIDE_RIGHT : SIDE_LEFT);
        struct part *part = part_at(b, van->brakes[i]);
        if (i < 2)
            part->as.disc.bores = (struct bores){2, {0.048}};
        else
            part->as.drum.bore.m = 0.01905;
    }
}

static void lay_brakes(struct builder *b, struct van *van)
{
    int front_tee = joint(b, "front tee", JOINT_TEE, MOUNT_BODY);
    int axle_tee = joint(b, "axle tee", JOINT_TEE, MOUNT_REAR_AXLE);
    int bridge = joint(b, "rear feed joint", JOINT_UNION, MOUNT_BODY);
    int brackets[2];
    for (int i = 0; i < 2; i++)
        brackets[i] =
            joint(b, i ? "front right bracket" : "front left bracket", JOINT_BRACKET, MOUNT_BODY);
    lay(b, KIND_PIPE, "front feed pipe", 0.7, van->master, 1, front_tee, 0);
    lay(b, KIND_PIPE, "front left pipe", 1.4, front_tee, 0, brackets[0], 0);
    lay(b, KIND_PIPE, "front right pipe", 0.5, front_tee, 0, brackets[1], 0);
    van->hoses[0] = lay(b, KIND_HOSE, "front left hose", 0.36, brackets[0], 0, van->brakes[0], 0);
    van->hoses[1] = lay(b, KIND_HOSE, "front right hose", 0.36, brackets[1], 0, van->brakes[1], 0);
    lay(b, KIND_PIPE, "rear feed pipe", 2.6, van->master, 0, van->valve, 0);
    lay(b, KIND_PIPE, "rear feed pipe 2", 0.3, van->valve, 1, bridge, 0);
    van->hoses[2] = lay(b, KIND_HOSE, "rear feed hose", 0.31, bridge, 0, axle_tee, 0);
    lay(b, KIND_PIPE, "rear left pipe", 0.7, axle_tee, 0, van->brakes[2], 0);
    lay(b, KIND_PIPE, "rear right pipe", 0.5, axle_tee, 0, van->brakes[3], 0);
    int clutch_joint = joint(b, "clutch line joint", JOINT_UNION, MOUNT_BODY);
    lay(b, KIND_PIPE, "clutch line pipe", 0.9, van->clutch_master, 0, clutch_joint, 0);
    van->hoses[3] = lay(b, KIND_HOSE, "clutch line hose", 0.28, clutch_joint, 0, van->slave, 0);
}

static int turned(int count, int index)
{
    return index < 0 ? index : count - 1 - index;
}

/* Puts the parts in the opposite order and mends every index. */
static void reverse(struct builder *b, struct van *van)
{
    struct system *s = b->system;
    int n = s->part_count;
    for (int i = 0; i < n / 2; i++) {
        struct part part = s->parts[i];
        s->parts[i] = s->parts[n - 1 - i];
        s->parts[n - 1 - i] = part;
    }
    for (int i = 0; i < s->connection_count; i++) {
        s->connections[i].a.part = turned(n, s->connections[i].a.part);
        s->connections[i].b.part = turned(n, s->connections[i].b.part);
    }
    for (int i = 0; i < n; i++) {
        struct part *part = &s->parts[i];
        if (part->kind == KIND_PEDAL)
            part->as.pedal.works.parts[0] = turned(n, part->as.pedal.works.parts[0]);
        if (part->kind == KIND_SERVO)
            part->as.servo.works = turned(n, part->as.servo.works);
    }
    int *all = (int *)van;
    for (size_t i = 0; i < sizeof *van / sizeof(int); i++)
        all[i] = turned(n, all[i]);
}

static const struct reason_row reason = {"longest-run-first", "the longest run comes first",
                                         "common practice, no source"};
static struct bleed_plan *bleeding_of(struct builder *b, const struct van *van)
{
    struct bleed_plan *plan = ARENA_NEW(b->arena, struct bleed_plan);
    plan->settings.arena = plan->steps.arena = b->arena;
    plan->fluid.m3 = 0.0011;
    plan->scope = BLEED_ALL;
    plan->scope_reason = "the fluid is renewed";
    plan->settings.items = ARENA_ARRAY(b->arena, 1, struct step);
    plan->settings.items[0] = (struct step){.row = step_row_of(STEP_SET_ROD_GAP),
                                            .number = 1,
                                            .part = van->master,
                                            .nipple = -1,
                                            .circuit = -1};
    plan->settings.count = 1;
    int order[] = {van->brakes[2], van->brakes[3], van->brakes[0], van->brakes[1], van->slave};
    plan->steps.items = ARENA_ARRAY(b->arena, 5, struct step);
    for (int i = 0; i < 5; i++)
        plan->steps.items[i] = (struct step){.row = step_row_of(STEP_BLEED_NIPPLE),
                                             .number = i + 1,
                                             .part = order[i],
                                             .nipple = 0,
                                             .circuit = 0,
                                             .place_words = "on the backplate, at the top",
                                             .reason = &reason,
                                             .run = {3.6},
                                             .volume = {0.00012},
                                             .strokes = 14,
                                             .torque = {NAN}};
    plan->steps.count = b->choice.plain ? 0 : 5;
    return plan;
}

static struct hose_list hoses_for(struct builder *b, const struct van *van)
{
    static const char *const names[] = {"front left hose", "front right hose", "rear feed hose",
                                        "clutch line hose"};
    struct hose_list list = {
        .count = 4, .needed = 4, .has = 4, .renewed = 3, .old = 1, .verdict = HOSES_OLD_LEFT};
    list.items = ARENA_ARRAY(b->arena, 4, struct hose_line);
    for (int i = 0; i < 4; i++) {
        const char *name = b->choice.other_names ? part_at(b, van->hoses[i])->name : names[i];
        list.items[i] =
            (struct hose_line){.standing = i == 2 ? HOSE_IS_OLD : HOSE_IS_NEW,
                               .hose = van->hoses[i],
                               .name = name,
                               .where = "from the body to what moves",
                               .use = "pressure",
                               .near = -1,
                               .far = -1,
                               .renewed = {i == 2 ? 2008 : 2026, i == 2 ? 0 : 11, i == 2 ? 0 : 20},
                               .renewed_in_work = i != 2};
    }
    return list;
}

static double no_value(const struct situation *situation, int subject, int sub)
{
    (void)situation;
    (void)subject;
    (void)sub;
    return NAN;
}

static const struct figure_row figure_table[] = {{.id = "line-pressure",
                                                  .title = "Line pressure",
                                                  .scope = SCOPE_CIRCUIT,
                                                  .dimension = DIMENSION_PRESSURE,
                                                  .get = no_value},
                                                 {.id = "pedal-travel",
                                                  .title = "Pedal travel",
                                                  .scope = SCOPE_PEDAL,
                                                  .dimension = DIMENSION_LENGTH,
                                                  .get = no_value},
                                                 {.id = "deceleration",
                                                  .title = "Deceleration",
                                                  .scope = SCOPE_CAR,
                                                  .dimension = DIMENSION_ACCELERATION,
                                                  .get = no_value}};

static struct figures figures_for(struct builder *b)
{
    struct figure *items = ARENA_ARRAY(b->arena, 4, struct figure);
    items[0] = (struct figure){.row = &figure_table[0], .of = "front circuit", .value = 5.2e6};
    items[1] = (struct figure){.row = &figure_table[0],
                               .subject = 1,
                               .of = "rear circuit",
                               .value = 5.1e6,
                               .state = FIGURE_ASSUMED};
    items[2] = (struct figure){.row = &figure_table[1], .of = "brake pedal", .value = 0.066};
    items[3] = (struct figure){.row = &figure_table[2],
                               .subject = -1,
                               .of = "",
                               .value = NAN,
                               .state = FIGURE_NOT_COMPUTED,
                               .reason = "the mass is not described"};
    return (struct figures){items, 4};
}

static const struct check_row old_hose = {.id = "hose-old",
                                          .severity = SEVERITY_WARNING,
                                          .what = "The {part} is older than {most}.",
                                          .why = "Old rubber swells shut or bursts.",
                                          .remedy = "Renew it now.",
                                          .source = "common practice, no source"};

static struct findings findings_for(struct builder *b, const struct van *van)
{
    struct findings findings = {.arena = b->arena, .count = 1, .capacity = 1};
    findings.items = ARENA_NEW(b->arena, struct finding);
    findings.items[0] = (struct finding){.check = &old_hose,
                                         .severity = SEVERITY_WARNING,
                                         .part = van->hoses[2],
                                         .place = {"van.ini", 79, 1}};
    findings.items[0].quantities[0] = (struct named_quantity){.name = "most", .text = "10 years"};
    findings.items[0].quantity_count = 1;
    return findings;
}

const struct result *fixture_result(struct arena *arena, struct fixture_choice choice)
{
    struct builder b = {.arena = arena, .choice = choice, .messages = messages_start(arena)};
    struct van van;
    b.system = ARENA_NEW(arena, struct system);
    b.system->arena = arena;
    b.system->file = "van.ini";
    b.system->parts = ARENA_ARRAY(arena, MOST_PARTS, struct part);
    b.system->connections = ARENA_ARRAY(arena, MOST_CONNECTIONS, struct connection);
    add_parts(&b, &van);
    lay_brakes(&b, &van);
    for (int i = 0; i < b.system->part_count; i++)
        part_assume(&b.system->parts[i]);
    if (choice.reversed)
        reverse(&b, &van);
    struct result *result = ARENA_NEW(arena, struct result);
    result->system = b.system;
    result->network = network_build(b.system, arena, &b.messages);
    result->figures = figures_for(&b);
    result->findings = findings_for(&b, &van);
    result->hoses = hoses_for(&b, &van);
    result->bleed = bleeding_of(&b, &van);
    const size_t parts = (size_t)b.system->part_count;
    result->touched = (struct touched){.part = ARENA_ARRAY(arena, parts, bool),
                                       .bled = ARENA_ARRAY(arena, parts, bool),
                                       .brakes = true,
                                       .clutch = true};
    for (size_t i = 0; i < parts; i++)
        result->touched.part[i] = result->touched.bled[i] = true;
    result->opening.arena = result->tests.arena = arena;
    result->tests.items = ARENA_NEW(arena, struct step);
    result->tests.items[0] = (struct step){
        .row = step_row_of(STEP_TEST_HOLD), .number = 1, .part = -1, .nipple = -1, .circuit = -1};
    result->tests.count = 1;
    result->plan = ARENA_NEW(arena, struct plan);
    result->plan->arena = arena;
    result->today = (struct date){2026, 11, 20};
    result->units = UNITS_METRIC;
    return result;
}
