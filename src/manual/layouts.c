#include "manual/template.h"

#include <stdbool.h>

#include "manual/layouts.h"
#include "parts/keys/key.h"
#include "parts/words.h"

/* clang-format off */

#define OUTLINE(symbol, header, ...)                                                               \
    static const struct filled symbol##_lines[] = {__VA_ARGS__};                                   \
    static const struct outline symbol = {                                                         \
        header, symbol##_lines, sizeof symbol##_lines / sizeof *symbol##_lines}
#define ASK(path)        {FIELD(as.path), NULL}
#define FILL(path, value) {FIELD(as.path), value}

/* The driver's side is filled in by template_start. */
#define LIVES(front, rear)                                                                         \
    FILL(vehicle.title, "Name this car"), ASK(vehicle.first_used), ASK(vehicle.driver),            \
    FILL(vehicle.front_axle, front), FILL(vehicle.rear_axle, rear), ASK(vehicle.mass),             \
    ASK(vehicle.front_share), ASK(vehicle.wheelbase), ASK(vehicle.front_tyre),                     \
    ASK(vehicle.rear_tyre)

OUTLINE(car_live, "vehicle", LIVES("independent", "live"));
OUTLINE(car_independent, "vehicle", LIVES("independent", "independent"));
OUTLINE(car_rear_engine, "vehicle",
        FILL(vehicle.title, "Name this car"), ASK(vehicle.driver), FILL(vehicle.engine, "rear"),
        FILL(vehicle.front_axle, "independent"), FILL(vehicle.rear_axle, "independent"),
        ASK(vehicle.mass), ASK(vehicle.front_share));
OUTLINE(motorcycle, "vehicle",
        FILL(vehicle.title, "Name this motorcycle"), FILL(vehicle.type, "motorcycle"),
        FILL(vehicle.front_axle, "fork"), FILL(vehicle.rear_axle, "swinging arm"),
        ASK(vehicle.mass), ASK(vehicle.front_share), ASK(vehicle.wheelbase));

OUTLINE(fluid, "brake fluid", FILL(fluid.grade, "DOT 4"), ASK(fluid.renewed));
OUTLINE(new_fluid, "brake fluid", FILL(fluid.grade, "DOT 4"));
OUTLINE(reservoir, "brake reservoir", ASK(reservoir.capacity));
OUTLINE(front_reservoir, "front reservoir", ASK(reservoir.capacity));
OUTLINE(rear_reservoir, "rear reservoir", ASK(reservoir.capacity));

#define ARMS ASK(pedal.pad_arm), ASK(pedal.rod_arm), ASK(pedal.travel)
OUTLINE(pedal_servo, "brake pedal", FILL(pedal.works, "brake servo"), ARMS);
OUTLINE(pedal_master, "brake pedal", FILL(pedal.works, "brake master"), ARMS);
OUTLINE(pedal_bar, "brake pedal", FILL(pedal.works, "front master, rear master"), ARMS,
        ASK(pedal.bar_first), ASK(pedal.bar_second));
OUTLINE(pedal_rear, "rear pedal", FILL(pedal.works, "rear master"), ARMS);
OUTLINE(lever_front, "front lever", FILL(pedal.works, "front master"), ARMS);
OUTLINE(pedal_clutch, "clutch pedal", FILL(pedal.works, "clutch master"), ARMS);

OUTLINE(servo, "brake servo", FILL(servo.type, "direct"), FILL(servo.works, "brake master"),
        ASK(servo.diameter), ASK(servo.vacuum_hose), ASK(servo.vacuum_hose_renewed));

OUTLINE(master_axles, "brake master", FILL(master.type, "tandem"), ASK(master.bore),
        ASK(master.stroke), FILL(master.primary_outlets, "front"),
        FILL(master.secondary_outlets, "rear"));
OUTLINE(master_diagonal, "brake master", FILL(master.type, "tandem"), ASK(master.bore),
        ASK(master.stroke), FILL(master.primary_outlets, "front left, rear right"),
        FILL(master.secondary_outlets, "front right, rear left"));
OUTLINE(master_single, "brake master", FILL(master.type, "single"), ASK(master.bore),
        ASK(master.stroke));
OUTLINE(master_front, "front master", FILL(master.type, "single"), ASK(master.bore),
        ASK(master.stroke), FILL(master.reservoir, "front reservoir"));
OUTLINE(master_rear, "rear master", FILL(master.type, "single"), ASK(master.bore),
        ASK(master.stroke), FILL(master.reservoir, "rear reservoir"));
OUTLINE(master_front_shared, "front master", FILL(master.type, "single"), ASK(master.bore),
        ASK(master.stroke));
OUTLINE(master_rear_shared, "rear master", FILL(master.type, "single"), ASK(master.bore),
        ASK(master.stroke));
OUTLINE(master_clutch, "clutch master", FILL(master.type, "single"), ASK(master.bore),
        ASK(master.stroke));

#define DISC(type) FILL(disc.caliper, type), ASK(disc.bores), ASK(disc.disc_outer),                \
        ASK(disc.pad_height)
OUTLINE(front_disc, "front disc", DISC("fixed"));
OUTLINE(front_disc_sliding, "front disc", DISC("sliding"));
OUTLINE(rear_disc, "rear disc", DISC("fixed"));
OUTLINE(rear_right_disc, "rear right disc", DISC("fixed"));
OUTLINE(front_left_disc, "front left disc", DISC("fixed"), {FIELD(fitted.on), "fork"});
OUTLINE(front_right_disc, "front right disc", DISC("fixed"), {FIELD(fitted.on), "fork"});

OUTLINE(rear_drum, "rear drum", FILL(drum.shoes, "leading and trailing"),
        FILL(drum.cylinder, "two pistons"), ASK(drum.bore), ASK(drum.diameter),
        ASK(drum.adjuster));
OUTLINE(rear_drum_plain, "rear drum", FILL(drum.shoes, "leading and trailing"),
        ASK(drum.bore), ASK(drum.diameter));
OUTLINE(front_drum, "front drum", FILL(drum.shoes, "two leading"),
        FILL(drum.cylinder, "one each"), ASK(drum.bore), ASK(drum.diameter), ASK(drum.adjuster));

OUTLINE(slave_outside, "clutch slave", FILL(slave.type, "outside"), ASK(slave.bore),
        ASK(slave.fork_ratio), ASK(slave.bearing_travel));

OUTLINE(axle_tee, "axle tee", {FIELD(fitted.on), "rear axle"});
OUTLINE(rear_tee, "rear tee", {FIELD(fitted.on), "body"});
OUTLINE(front_tee, "front tee", {FIELD(fitted.on), "body"});
OUTLINE(front_tee_fork, "front tee", {FIELD(fitted.on), "handlebar"});
OUTLINE(pipe_block, "front block", {FIELD(fitted.on), "body"});

OUTLINE(hand_brake, "hand brake", FILL(parking.works, "rear drum"));

#define FRONT_AXLE_RUNS                                                                            \
    "front left = front tee, pipe, bracket, hose, front left disc",                                \
    "front right = front tee, pipe, bracket, hose, front right disc"
#define REAR_AXLE_RUNS                                                                             \
    "rear left = axle tee, pipe, rear left drum",                                                  \
    "rear right = axle tee, pipe, rear right drum"
#define CLUTCH_RUN "clutch line = clutch master, pipe, hose, clutch slave"

static const struct outline *const front_discs[] = {
    &car_live, &fluid, &reservoir, &pedal_servo, &servo, &master_axles, &front_disc, &rear_drum,
    &front_tee, &axle_tee, &hand_brake, NULL};
static const char *const front_discs_runs[] = {
    "front feed = brake master.front, pipe, front tee", FRONT_AXLE_RUNS,
    "rear feed = brake master.rear, pipe, hose, axle tee", REAR_AXLE_RUNS, NULL};

static const struct outline *const drums[] = {
    &car_live, &fluid, &reservoir, &pedal_master, &master_single, &front_drum, &rear_drum,
    &pipe_block, &axle_tee, &hand_brake, NULL};
static const char *const drums_runs[] = {
    "feed = brake master, pipe, front block",
    "front left = front block, pipe, bracket, hose, front left drum",
    "front right = front block, pipe, bracket, hose, front right drum",
    "rear feed = front block, pipe, hose, axle tee", REAR_AXLE_RUNS, NULL};

static const struct outline *const diagonal[] = {
    &car_independent, &fluid, &reservoir, &pedal_servo, &servo, &master_diagonal,
    &front_disc_sliding, &rear_drum, &hand_brake, NULL};
static const char *const diagonal_runs[] = {
    "front left = brake master.front left, pipe, bracket, hose, front left disc",
    "rear right = brake master.rear right, pipe, bracket, hose, rear right drum",
    "front right = brake master.front right, pipe, bracket, hose, front right disc",
    "rear left = brake master.rear left, pipe, bracket, hose, rear left drum", NULL};

static const struct outline *const twin_masters[] = {
    &car_independent, &fluid, &reservoir, &pedal_bar, &master_front_shared, &master_rear_shared,
    &front_disc, &rear_disc, &front_tee, &rear_tee, NULL};
static const char *const twin_masters_runs[] = {
    "front feed = front master, pipe, front tee", FRONT_AXLE_RUNS,
    "rear feed = rear master, pipe, rear tee",
    "rear left = rear tee, pipe, bracket, hose, rear left disc",
    "rear right = rear tee, pipe, bracket, hose, rear right disc", NULL};

static const struct outline *const motorcycle_sections[] = {
    &motorcycle, &new_fluid, &front_reservoir, &rear_reservoir, &lever_front, &pedal_rear,
    &master_front, &master_rear, &front_left_disc, &front_right_disc, &rear_right_disc, &front_tee_fork,
    NULL};
static const char *const motorcycle_runs[] = {
    "front feed = front master, pipe, front tee",
    "front left = front tee, hose, front left disc",
    "front right = front tee, hose, front right disc",
    "rear = rear master, hose, rear right disc", NULL};

static const struct outline *const rear_engine[] = {
    &car_rear_engine, &new_fluid, &reservoir, &pedal_master, &master_axles, &front_disc,
    &rear_drum_plain, &front_tee, &rear_tee, &pedal_clutch, &master_clutch, &slave_outside, NULL};
static const char *const rear_engine_runs[] = {
    "front feed = brake master.front, pipe, front tee", FRONT_AXLE_RUNS,
    "rear feed = brake master.rear, pipe, rear tee",
    "rear left = rear tee, pipe, bracket, hose, rear left drum",
    "rear right = rear tee, pipe, bracket, hose, rear right drum", CLUTCH_RUN, NULL};

static const struct car_layout rows[] = {
    {"front discs", "discs in front, drums behind, tandem master, direct servo", front_discs,
     front_discs_runs, false},
    {"drums", "drums all round, single master, one circuit", drums, drums_runs, false},
    {"diagonal", "each circuit a front disc and the rear drum across, servo", diagonal,
     diagonal_runs, false},
    {"twin masters", "two masters on a balance bar, four discs", twin_masters, twin_masters_runs,
     false},
    {"motorcycle", "hand lever with two front discs, pedal with a rear disc", motorcycle_sections,
     motorcycle_runs, true},
    {"rear engine", "engine behind, two circuits, clutch with a long pipe", rear_engine,
     rear_engine_runs, false},
};

/* clang-format on */

const struct car_layout *layout_rows(size_t *count)
{
    *count = sizeof rows / sizeof *rows;
    return rows;
}

const struct car_layout *layout_find(const char *word)
{
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
        if (words_same(rows[i].word, word))
            return &rows[i];
    return NULL;
}

const char *layout_nearest(struct arena *arena, const char *word)
{
    size_t count = sizeof rows / sizeof *rows;
    const char **words = ARENA_ARRAY(arena, count, const char *);
    for (size_t i = 0; i < count; i++)
        words[i] = rows[i].word;
    return text_nearest(word, words, count);
}
