#include "starters/starter.h"

#include <string.h>

#include "parts/keys/key.h"

/* A section, or a run, stands in a starter when each set that it names is met by a word. */
enum { MOST_CONDITIONS = 3 };

struct piece {
    picks when[MOST_CONDITIONS]; /* 0: no condition */
    const char *header;
    const struct filled *lines;
    size_t count;
};

/* clang-format off */

#define LINES(symbol, ...) static const struct filled symbol[] = {__VA_ARGS__}
#define ASK(path)               {FIELD(as.path), NULL, 0, false}
#define FILL(path, value)       {FIELD(as.path), value, 0, false}
#define GUESS(path, value)      {FIELD(as.path), value, 0, true}
#define WITH(set, path, value)  {FIELD(as.path), value, (set), false}
#define ASK_WITH(set, path)     {FIELD(as.path), NULL, (set), false}
#define ON(place)               {FIELD(fitted.on), place, 0, false}

#define ANY_DISC_FRONT (P(FRONT_FIXED) | P(FRONT_SLIDING) | P(FRONT_SINGLE))
#define PAIR_FRONT     (P(FRONT_FIXED) | P(FRONT_SLIDING))
#define ANY_DISC_REAR  (P(REAR_FIXED) | P(REAR_SLIDING))
#define BEAM_REAR      (P(REAR_LIVE) | P(REAR_DEAD))
#define ANY_VALVE      (P(VALVE_LIMITS) | P(VALVE_SHARES) | P(VALVE_LOADED))
#define ONE_OR_TWO     (P(ONE_CIRCUIT) | P(TWO_CIRCUITS))
#define STRAIGHT       (P(ONE_CIRCUIT) | P(TWO_CIRCUITS) | P(BAR))
#define SPLIT_AXLES    (P(TWO_CIRCUITS) | P(BAR))
#define ANY_CLUTCH     (P(CLUTCH_SHARED) | P(CLUTCH_OWN))

LINES(car,
    GUESS(vehicle.title, "Name this car"), ASK(vehicle.first_used),
    WITH(P(LEFT), vehicle.driver, "left"), WITH(P(RIGHT), vehicle.driver, "right"),
    WITH(P(MIDDLE), vehicle.driver, "middle"), WITH(P(ENGINE_BEHIND), vehicle.engine, "rear"),
    WITH(P(FRONT_FREE), vehicle.front_axle, "independent"),
    WITH(P(FRONT_LIVE), vehicle.front_axle, "live"),
    WITH(P(FRONT_DEAD), vehicle.front_axle, "dead"),
    WITH(P(REAR_LIVE), vehicle.rear_axle, "live"), WITH(P(REAR_DEAD), vehicle.rear_axle, "dead"),
    WITH(P(REAR_FREE), vehicle.rear_axle, "independent"),
    ASK(vehicle.mass), ASK(vehicle.front_share), ASK(vehicle.wheelbase), ASK(vehicle.front_tyre),
    ASK(vehicle.rear_tyre));
LINES(motorcycle,
    GUESS(vehicle.title, "Name this motorcycle"), FILL(vehicle.type, "motorcycle"),
    FILL(vehicle.front_axle, "fork"), FILL(vehicle.rear_axle, "swinging arm"), ASK(vehicle.mass),
    ASK(vehicle.front_share), ASK(vehicle.wheelbase), ASK(vehicle.front_tyre),
    ASK(vehicle.rear_tyre));
LINES(fluid,
    WITH(P(FLUID_3), fluid.grade, "DOT 3"), WITH(P(FLUID_4), fluid.grade, "DOT 4"),
    WITH(P(FLUID_51), fluid.grade, "DOT 5.1"), WITH(P(FLUID_5), fluid.grade, "DOT 5"),
    WITH(P(FLUID_OIL), fluid.grade, "mineral"), ASK(fluid.renewed));
LINES(reservoir, ASK(reservoir.capacity));

#define ARMS ASK(pedal.pad_arm), ASK(pedal.rod_arm), ASK(pedal.travel)
LINES(pedal,
    WITH(P(SERVO_PEDAL), pedal.works, "brake servo"),
    WITH(P(SERVO_NONE) | P(SERVO_LINE) | P(SERVO_BOTH), pedal.works, "brake master"), ARMS);
LINES(pedal_bar,
    FILL(pedal.works, "front master, rear master"), ARMS, ASK(pedal.bar_first),
    ASK(pedal.bar_second));
LINES(lever_front, FILL(pedal.works, "front master"), ARMS);
LINES(pedal_rear, FILL(pedal.works, "rear master"), ARMS);
LINES(pedal_clutch, FILL(pedal.works, "clutch master"), ARMS);

LINES(servo_direct,
    FILL(servo.type, "direct"), FILL(servo.works, "brake master"), ASK(servo.diameter),
    ASK(servo.vacuum_hose), ASK(servo.vacuum_hose_renewed));
LINES(servo_remote,
    FILL(servo.type, "remote"), ASK(servo.bore), ASK(servo.diameter), ASK(servo.vacuum_hose),
    ASK(servo.vacuum_hose_renewed), ON("body"));

#define MASTER(type_word)                                                                          \
    FILL(master.type, type_word), ASK(master.bore), ASK(master.stroke)
LINES(master_brake,
    WITH(P(ONE_CIRCUIT), master.type, "single"),
    WITH(P(TWO_CIRCUITS) | P(DIAGONAL), master.type, "tandem"), ASK(master.bore),
    ASK(master.stroke), WITH(P(TWO_CIRCUITS), master.primary_outlets, "front"),
    WITH(P(TWO_CIRCUITS), master.secondary_outlets, "rear"),
    WITH(P(DIAGONAL), master.primary_outlets, "front left, rear right"),
    WITH(P(DIAGONAL), master.secondary_outlets, "front right, rear left"),
    WITH(P(CLUTCH_OWN), master.reservoir, "brake reservoir"));
LINES(master_front,
    MASTER("single"), WITH(P(MOTORCYCLE), master.reservoir, "front reservoir"),
    WITH(P(CLUTCH_OWN), master.reservoir, "brake reservoir"));
LINES(master_rear,
    MASTER("single"), WITH(P(MOTORCYCLE), master.reservoir, "rear reservoir"),
    WITH(P(CLUTCH_OWN), master.reservoir, "brake reservoir"));
LINES(master_clutch,
    MASTER("single"), WITH(P(CLUTCH_OWN), master.reservoir, "clutch reservoir"));

#define DISC(fixed, sliding)                                                                       \
    WITH(fixed, disc.caliper, "fixed"), WITH(sliding, disc.caliper, "sliding"), ASK(disc.bores),   \
    ASK(disc.disc_outer), ASK(disc.pad_height)
LINES(disc_front, DISC(P(FRONT_FIXED) | P(FRONT_SINGLE), P(FRONT_SLIDING)));
LINES(disc_fork, DISC(P(FRONT_FIXED) | P(FRONT_SINGLE), P(FRONT_SLIDING)), ON("fork"));
LINES(disc_rear, DISC(P(REAR_FIXED), P(REAR_SLIDING)));
LINES(drum_front,
    GUESS(drum.shoes, "two leading"), GUESS(drum.cylinder, "one each"), ASK(drum.bore),
    ASK(drum.diameter), ASK(drum.adjuster));
LINES(drum_rear,
    GUESS(drum.shoes, "leading and trailing"), GUESS(drum.cylinder, "two pistons"), ASK(drum.bore),
    ASK(drum.diameter), ASK(drum.adjuster));

LINES(slave,
    WITH(P(SLAVE_OUT), slave.type, "outside"), WITH(P(SLAVE_IN), slave.type, "concentric"),
    ASK(slave.bore), ASK_WITH(P(SLAVE_IN), slave.inner_bore),
    ASK_WITH(P(SLAVE_OUT), slave.fork_ratio), ASK(slave.bearing_travel));
LINES(valve,
    WITH(P(VALVE_LIMITS), valve.type, "limiting"), ASK_WITH(P(VALVE_LIMITS), valve.limit),
    WITH(P(VALVE_SHARES), valve.type, "proportioning"),
    WITH(P(VALVE_LOADED), valve.type, "load-sensing"),
    ASK_WITH(P(VALVE_SHARES) | P(VALVE_LOADED), valve.knee));
LINES(on_axle, ON("rear axle"));
LINES(on_body, ON("body"));
LINES(on_handlebar, ON("handlebar"));
LINES(hand_brake,
    WITH(P(REAR_DRUMS), parking.works, "rear drum"),
    WITH(ANY_DISC_REAR, parking.works, "rear disc"));

#define SECTION(header, lines, ...) {{__VA_ARGS__}, header, lines, sizeof lines / sizeof *lines}

/* In the order in which they are written. */
static const struct piece pieces[] = {
    SECTION("vehicle", car, P(CAR)),
    SECTION("vehicle", motorcycle, P(MOTORCYCLE)),
    SECTION("brake fluid", fluid, 0),
    SECTION("brake reservoir", reservoir, P(CAR)),
    SECTION("front reservoir", reservoir, P(MOTORCYCLE)),
    SECTION("rear reservoir", reservoir, P(MOTORCYCLE), ANY_DISC_REAR),
    SECTION("brake pedal", pedal, ONE_OR_TWO | P(DIAGONAL)),
    SECTION("brake pedal", pedal_bar, P(BAR)),
    SECTION("front lever", lever_front, P(MOTORCYCLE)),
    SECTION("rear pedal", pedal_rear, P(MOTORCYCLE), ANY_DISC_REAR),
    SECTION("brake servo", servo_direct, P(SERVO_PEDAL)),
    SECTION("brake servo", servo_remote, P(SERVO_LINE)),
    SECTION("front servo", servo_remote, P(SERVO_BOTH)),
    SECTION("rear servo", servo_remote, P(SERVO_BOTH)),
    SECTION("brake master", master_brake, ONE_OR_TWO | P(DIAGONAL)),
    SECTION("front master", master_front, P(BAR) | P(MOTORCYCLE)),
    SECTION("rear master", master_rear, P(BAR) | P(MOTORCYCLE), P(BAR) | ANY_DISC_REAR),
    SECTION("front disc", disc_front, P(CAR), PAIR_FRONT),
    SECTION("front drum", drum_front, P(CAR), P(FRONT_DRUMS)),
    SECTION("front disc", disc_fork, P(MOTORCYCLE), PAIR_FRONT),
    SECTION("front left disc", disc_fork, P(MOTORCYCLE), P(FRONT_SINGLE)),
    SECTION("rear disc", disc_rear, P(CAR), ANY_DISC_REAR),
    SECTION("rear right disc", disc_rear, P(MOTORCYCLE), ANY_DISC_REAR),
    SECTION("rear drum", drum_rear, P(REAR_DRUMS)),
    SECTION("rear valve", valve, STRAIGHT, ANY_VALVE),
    SECTION("rear left valve", valve, P(DIAGONAL), ANY_VALVE),
    SECTION("rear right valve", valve, P(DIAGONAL), ANY_VALVE),
    SECTION("front block", on_body, P(ONE_CIRCUIT)),
    SECTION("front tee", on_body, SPLIT_AXLES),
    SECTION("front tee", on_handlebar, P(MOTORCYCLE), PAIR_FRONT),
    SECTION("axle tee", on_axle, STRAIGHT, BEAM_REAR),
    SECTION("rear tee", on_body, STRAIGHT, P(REAR_FREE)),
    SECTION("left axle union", on_axle, P(DIAGONAL), BEAM_REAR),
    SECTION("right axle union", on_axle, P(DIAGONAL), BEAM_REAR),
    SECTION("hand brake", hand_brake, P(HAND_REAR)),
    SECTION("clutch reservoir", reservoir, P(CLUTCH_OWN)),
    SECTION("clutch pedal", pedal_clutch, ANY_CLUTCH),
    SECTION("clutch master", master_clutch, ANY_CLUTCH),
    SECTION("clutch slave", slave, ANY_CLUTCH),
};

/* What stands for a word in braces; the first row that holds. */
static const struct {
    const char *token;
    picks when;
    const char *words;
} tokens[] = {
    {"feed", P(ONE_CIRCUIT), "feed"}, {"feed", 0, "front feed"},
    {"front source", P(ONE_CIRCUIT), "brake master"},
    {"front source", P(TWO_CIRCUITS), "brake master.front"}, {"front source", 0, "front master"},
    {"rear source", P(ONE_CIRCUIT), "front block"},
    {"rear source", P(TWO_CIRCUITS), "brake master.rear"}, {"rear source", 0, "rear master"},
    {"front servo", P(SERVO_LINE), "brake servo, pipe, "},
    {"front servo", P(SERVO_BOTH), "front servo, pipe, "}, {"front servo", 0, ""},
    {"rear servo", P(SERVO_BOTH), "rear servo, pipe, "}, {"rear servo", 0, ""},
    {"fork", P(ONE_CIRCUIT), "front block"}, {"fork", 0, "front tee"},
    {"valve", ANY_VALVE, "rear valve, pipe, "}, {"valve", 0, ""},
    {"left valve", ANY_VALVE, "rear left valve, pipe, "}, {"left valve", 0, ""},
    {"right valve", ANY_VALVE, "rear right valve, pipe, "}, {"right valve", 0, ""},
    {"front", P(FRONT_DRUMS), "drum"}, {"front", 0, "disc"},
    {"rear", P(REAR_DRUMS), "drum"}, {"rear", 0, "disc"},
};

static const struct {
    picks when[MOST_CONDITIONS];
    const char *run;
} runs[] = {
    {{STRAIGHT}, "{feed} = {front source}, pipe, {front servo}{fork}"},
    {{STRAIGHT}, "front left = {fork}, pipe, bracket, hose, front left {front}"},
    {{STRAIGHT}, "front right = {fork}, pipe, bracket, hose, front right {front}"},
    {{STRAIGHT, BEAM_REAR}, "rear feed = {rear source}, pipe, {rear servo}{valve}hose, axle tee"},
    {{STRAIGHT, BEAM_REAR}, "rear left = axle tee, pipe, rear left {rear}"},
    {{STRAIGHT, BEAM_REAR}, "rear right = axle tee, pipe, rear right {rear}"},
    {{STRAIGHT, P(REAR_FREE)}, "rear feed = {rear source}, pipe, {rear servo}{valve}rear tee"},
    {{STRAIGHT, P(REAR_FREE)}, "rear left = rear tee, pipe, bracket, hose, rear left {rear}"},
    {{STRAIGHT, P(REAR_FREE)}, "rear right = rear tee, pipe, bracket, hose, rear right {rear}"},
    {{P(DIAGONAL)}, "front left = brake master.front left, pipe, bracket, hose, front left {front}"},
    {{P(DIAGONAL), P(REAR_FREE)},
     "rear right = brake master.rear right, pipe, {right valve}bracket, hose, rear right {rear}"},
    {{P(DIAGONAL), BEAM_REAR}, "rear right = brake master.rear right, pipe, {right valve}hose, "
                               "right axle union, pipe, rear right {rear}"},
    {{P(DIAGONAL)},
     "front right = brake master.front right, pipe, bracket, hose, front right {front}"},
    {{P(DIAGONAL), P(REAR_FREE)},
     "rear left = brake master.rear left, pipe, {left valve}bracket, hose, rear left {rear}"},
    {{P(DIAGONAL), BEAM_REAR}, "rear left = brake master.rear left, pipe, {left valve}hose, "
                               "left axle union, pipe, rear left {rear}"},
    {{P(MOTORCYCLE), PAIR_FRONT}, "front feed = front master, pipe, front tee"},
    {{P(MOTORCYCLE), PAIR_FRONT}, "front left = front tee, hose, front left disc"},
    {{P(MOTORCYCLE), PAIR_FRONT}, "front right = front tee, hose, front right disc"},
    {{P(MOTORCYCLE), P(FRONT_SINGLE)}, "front = front master, hose, front left disc"},
    {{P(MOTORCYCLE), ANY_DISC_REAR}, "rear = rear master, hose, rear right disc"},
    {{ANY_CLUTCH}, "clutch line = clutch master, pipe, hose, clutch slave"},
};

/* clang-format on */

enum {
    PIECES = sizeof pieces / sizeof *pieces,
    TOKENS = sizeof tokens / sizeof *tokens,
    RUNS = sizeof runs / sizeof *runs
};

static bool holds(const picks when[MOST_CONDITIONS], picks all)
{
    for (size_t i = 0; i < MOST_CONDITIONS; i++)
        if (when[i] != 0 && (when[i] & all) == 0)
            return false;
    return true;
}

static struct outline outline_of(const struct piece *piece, picks all, struct arena *arena)
{
    struct filled *lines = ARENA_ARRAY(arena, piece->count, struct filled);
    struct outline outline = {piece->header, lines, 0};
    for (size_t i = 0; i < piece->count; i++)
        if (piece->lines[i].with == 0 || (piece->lines[i].with & all) != 0)
            lines[outline.count++] = piece->lines[i];
    return outline;
}

static const char *token_words(const char *token, size_t length, picks all)
{
    for (size_t i = 0; i < TOKENS; i++)
        if (strlen(tokens[i].token) == length && strncmp(tokens[i].token, token, length) == 0 &&
            (tokens[i].when == 0 || (tokens[i].when & all) != 0))
            return tokens[i].words;
    return "";
}

/* A run with words in place of what stands in braces. */
static const char *run_of(const char *run, picks all, struct arena *arena)
{
    struct text words = text_start(arena);
    while (*run != '\0') {
        size_t plain = strcspn(run, "{");
        text_add_bytes(&words, run, plain);
        run += plain;
        if (*run == '\0')
            break;
        size_t length = strcspn(run, "}") - 1;
        text_add(&words, "%s", token_words(run + 1, length, all));
        run += length + 2;
    }
    return words.items;
}

struct starter starter_of(picks said, struct arena *arena)
{
    struct starter starter = {.said = said,
                              .all = picks_with_usual(said),
                              .sections = ARENA_ARRAY(arena, PIECES, struct outline),
                              .runs = ARENA_ARRAY(arena, RUNS, const char *)};
    for (size_t i = 0; i < PIECES; i++)
        if (holds(pieces[i].when, starter.all))
            starter.sections[starter.section_count++] = outline_of(&pieces[i], starter.all, arena);
    for (size_t i = 0; i < RUNS; i++)
        if (holds(runs[i].when, starter.all))
            starter.runs[starter.run_count++] = run_of(runs[i].run, starter.all, arena);
    return starter;
}
