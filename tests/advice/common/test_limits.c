/* Each limit by two cars a hair on either side of it, made by moving one value of one car: the
 * check speaks of the one and not of the other. Where the limit lies is typed here from its source,
 * never read from the table. A limit that is no verdict but a quantity of the job is looked for in
 * the step that tells it. */
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "advice/bleeding/bleed_nets.h"
#include "advice/bleeding/bleed_stroke.h"
#include "advice/bleeding/bleed_way.h"
#include "advice/figures/grip_rates.h"
#include "advice/rules/rule_stop.h"
#include "advice_car.h"
#include "base/text.h"
#include "input/read.h"
#include "network/work.h"
#include "parts/flow.h"
#include "support/run_cli.h"
#include "support/sanitized.h"

#define CUSTOM "common practice, no source"
#define OWN    "our own mark, no source"
#define MOT    "UK MOT inspection manual: cars and passenger vehicles, "
#define CFR    "49 CFR "
#define R13H   "UN Regulation No. 13-H (from memory), "
#define OHIO   "Ohio Administrative Code 4501:2-1-08 "

#define G    9.80665                        /* standard gravity, by definition */
#define LBF  4.4482216152605                /* by definition: 0.45359237 kg times G */
#define PSI  (LBF / (0.0254 * 0.0254))      /* by definition */
#define DEG  (3.14159265358979323846 / 180) /* by definition */
#define HAIR 1e-3                           /* of the limit */

/* A car read from words, solved but not judged yet. */
struct looked {
    struct arena *arena;
    const struct system *system;
    const struct network *network;
    struct situation *situation;
    struct figures figures; /* which there are, without values */
};

struct limit_case;
typedef double judged_by(const struct looked *car, const struct limit_case *row, double moved);
typedef bool spoken_by(const struct looked *car, const struct limit_case *row, double moved);

/* A limit, where it lies, and the value of a car that is moved over it. */
struct limit_case {
    const char *limit;
    double value; /* SI, as the source says */
    const char *source;
    const char *check;         /* it speaks beyond the limit; its case file is the car */
    bool over;                 /* beyond is above */
    bool danger;               /* it speaks of a danger only beyond */
    bool work;                 /* what is moved stands in the work file */
    const char *car;           /* another case's file: its id, "pad-thin.not" */
    const char *section, *key; /* what is moved */
    const char *unit;          /* in which it is written */
    double scale;              /* that unit in SI */
    judged_by *judged;         /* what is held against the limit; NULL: what is moved, itself */
    const char *figure;        /* of judged */
    double from, to;           /* between which the search moves it, in its unit */
    double hair;               /* SI; 0: HAIR of the limit */
    bool whole;                /* whole numbers are judged: the limit itself and one beyond it */
    const char *quiet, *loud;  /* the two values, where they are words or whole numbers */
    spoken_by *speaks;         /* NULL: the check's finding */
};

/* ---- cars with one value moved */

/* The text with "key = words" in a section: in place of the line there, or added to it. */
static const char *with_value(struct arena *arena, const char *text, const char *section,
                              const char *key, const char *words)
{
    const char *head = strstr(text, text_print(arena, "[%s]\n", section));
    if (head == NULL)
        return text_print(arena, "%s\n[%s]\n%s = %s\n", text, section, key, words);
    const char *end = strstr(head, "\n["), *line = strchr(head, '\n') + 1;
    const char *old = strstr(head, text_print(arena, "\n%s = ", key)), *rest = line;
    if (old != NULL && (end == NULL || old < end)) {
        line = old + 1;
        rest = strchr(line, '\n') + 1;
    }
    return text_print(arena, "%.*s%s = %s\n%s", (int)(line - text), text, key, words, rest);
}

static const char *text_of(struct arena *arena, const char *below)
{
    char *path = source_path(below), *text = read_whole(path, NULL);
    if (text == NULL)
        fail_msg("%s cannot be read", below);
    const char *copy = text_copy(arena, text);
    free(text);
    free(path);
    return copy;
}

static struct looked read_moved(const struct limit_case *row, const char *words)
{
    struct looked car = {.arena = arena_create()};
    const char *name = row->car != NULL ? row->car : row->check;
    const char *text =
        text_of(car.arena, text_print(car.arena, "tests/cases/findings/%s.ini", name));
    const char *work = NULL;
    if (row->work)
        work = with_value(
            car.arena,
            text_of(car.arena, text_print(car.arena, "tests/cases/findings/%s.work.ini", name)),
            row->section, row->key, words);
    else if (words != NULL)
        text = with_value(car.arena, text, row->section, row->key, words);
    struct messages messages = messages_start(car.arena);
    struct source source = {name, text, strlen(text)};
    struct system *system = read_car(&source, car.arena, &messages);
    if (system == NULL)
        fail_msg("%s: %s = %s cannot be read", row->limit, row->key, words);
    car.system = system;
    struct work_file file = {0};
    struct source worked = {"work", work, work == NULL ? 0 : strlen(work)};
    if (work != NULL && !read_work(&worked, system, car.arena, &messages, &file))
        fail_msg("%s: work with %s = %s cannot be read", row->limit, row->key, words);
    if (work != NULL)
        car.system = work_apply(system, &file, 1, car.arena);
    car.network = network_build(car.system, car.arena, &messages);
    car.situation = situation_room(car.system, car.network, (struct force){NAN}, car.arena);
    situation_solve(car.situation);
    car.figures = figures_listed(car.situation, car.arena);
    return car;
}

static const char *written(struct arena *arena, const struct limit_case *row, double value)
{
    return text_print(arena, "%.12g %s", value, row->unit == NULL ? "" : row->unit);
}

/* ---- what is held against a limit */

static double figure_for(const struct looked *car, const char *id, bool most)
{
    double extreme = NAN;
    for (int i = 0; i < car->figures.count; i++) {
        const struct figure *figure = &car->figures.items[i];
        if (strcmp(figure->row->id, id) != 0)
            continue;
        double value = figure->row->get(car->situation, figure->subject, figure->sub);
        extreme = most ? fmax(extreme, value) : fmin(extreme, value); /* both pass over a NaN */
    }
    return extreme;
}

/* The figure; the most telling where there are several. */
static double by_figure(const struct looked *car, const struct limit_case *row, double moved)
{
    (void)moved;
    return figure_for(car, row->figure, row->over);
}

static double size(const struct looked *car, const struct limit_case *row, double moved)
{
    return fabs(by_figure(car, row, moved));
}

static const struct part *part_of(const struct looked *car, const char *name)
{
    int part = system_find(car->system, name);
    assert_true(part >= 0);
    return &car->system->parts[part];
}

static double share_of_travel(const struct looked *car, const struct limit_case *row, double moved)
{
    (void)moved;
    int pedal = system_find(car->system, "brake pedal");
    double least = NAN;
    for (int i = 0; i < car->figures.count; i++) {
        const struct figure *figure = &car->figures.items[i];
        bool of_pedal = figure->row->scope != SCOPE_PEDAL || figure->subject == pedal;
        if (strcmp(figure->row->id, row->figure) == 0 && of_pedal)
            least = fmin(least, figure->row->get(car->situation, figure->subject, figure->sub));
    }
    return least / car->system->parts[pedal].as.pedal.travel.m;
}

static double share_used(const struct looked *car, const struct limit_case *row, double moved)
{
    return 1 - share_of_travel(car, row, moved);
}

static double beyond_wanted(const struct looked *car, const struct limit_case *row, double moved)
{
    return by_figure(car, row, moved) / part_of(car, "clutch slave")->as.slave.bearing_travel.m - 1;
}

static double stop_with_one_lost(const struct looked *car, const struct limit_case *row,
                                 double moved)
{
    (void)row;
    (void)moved;
    double least = NAN;
    for (int c = 0; c < car->network->circuit_count; c++)
        if (!car->network->circuits[c].clutch)
            least = fmin(least, rule_stop(car->system, car->network, true, c, car->arena).m_s2);
    return least;
}

static double stop_without_help(const struct looked *car, const struct limit_case *row,
                                double moved)
{
    (void)row;
    (void)moved;
    return rule_stop(car->system, car->network, false, -1, car->arena).m_s2;
}

static double lock_margin(const struct looked *car, const struct limit_case *row, double moved)
{
    (void)row;
    (void)moved;
    return fmin(figure_for(car, "rear-lock-margin", false),
                figure_for(car, "rear-lock-margin-wet", false));
}

static void uses_of(const struct looked *car, struct grip_use uses[GRIP_RATES])
{
    grip_rates(car->system, car->network, solution_room(car->system, car->network, car->arena),
               uses);
}

/* Annex 5, 3.1: from 0.15 to 0.8 the front wheels ask for more than the rear ones. */
static double spare_of_order(const struct looked *car, const struct limit_case *row, double moved)
{
    (void)row;
    (void)moved;
    struct grip_use uses[GRIP_RATES];
    uses_of(car, uses);
    double least = NAN;
    for (int i = 0; i < GRIP_RATES; i++)
        if (uses[i].z > 0.15 - 1e-6 && uses[i].z < 0.8 + 1e-6)
            least = fmin(least, uses[i].front - uses[i].rear);
    return least;
}

/* Annex 5, 3.1: z >= 0.1 + slope (k - 0.2) for k from 0.2 to 0.8; the slope that this car keeps. */
static double slope_kept(const struct looked *car, const struct limit_case *row, double moved)
{
    (void)row;
    (void)moved;
    struct grip_use uses[GRIP_RATES];
    uses_of(car, uses);
    double least = NAN;
    for (int i = 0; i < GRIP_RATES; i++) {
        double k = fmax(uses[i].front, uses[i].rear);
        if (k > 0.2 && k <= 0.8)
            least = fmin(least, (uses[i].z - 0.1) / (k - 0.2));
    }
    return least;
}

/* By the day of the tests the fluid of that car, of May 2026, is half a year old. */
static double below_boiling(const struct looked *car, const struct limit_case *row, double moved)
{
    (void)moved;
    const struct part *fluid = &car->system->parts[system_first(car->system, KIND_FLUID)];
    double age = (11.0 - 5.0) / 12 + 24.0 / 365;
    return fluid_boiling(fluid->as.fluid.grade, age).celsius - figure_for(car, row->figure, true);
}

static double times_clearance(const struct looked *car, const struct limit_case *row, double moved)
{
    (void)moved;
    return figure_for(car, row->figure, true) / part_of(car, "rear left drum")->as.drum.clearance.m;
}

static double reverse_share(const struct looked *car, const struct limit_case *row, double moved)
{
    (void)row;
    (void)moved;
    double share = NAN;
    for (int i = 0; i < car->figures.count; i++) {
        const struct figure *back = &car->figures.items[i];
        if (strcmp(back->row->id, "brake-torque-reverse") != 0)
            continue;
        double forward = figure_row("brake-torque")->get(car->situation, back->subject, 0);
        share = fmin(share, back->row->get(car->situation, back->subject, 0) / forward);
    }
    return share;
}

static double off_reading(const struct looked *car, const struct limit_case *row, double moved)
{
    double computed = figure_for(car, row->figure, true);
    return fabs(moved * row->scale - computed) / computed;
}

/* By how much a bore is over the row's other one, which stays. */
static double over_bore(const struct looked *car, const struct limit_case *row, double moved)
{
    (void)car;
    return (moved - row->from) * row->scale;
}

/* Pressure of a master for the same push goes as 1 over its area. */
static double pressure_lost(const struct looked *car, const struct limit_case *row, double moved)
{
    (void)car;
    (void)row;
    return 1 - pow(19.05 / moved, 2);
}

/* ---- another bore asked about */

static struct fit *fit_master(const struct looked *car, double millimetres)
{
    int master = system_find(car->system, "brake master");
    struct work_file bore =
        fit_bore(car->system, &master, 1, (struct length){millimetres * 1e-3}, car->arena);
    return fit_of(car->system, car->network, &bore, (struct force){NAN}, car->arena);
}

static double quantity_of(const struct fit_reason *reason, const char *name)
{
    for (int i = 0; i < reason->quantity_count; i++)
        if (strcmp(reason->quantities[i].name, name) == 0)
            return reason->quantities[i].value;
    return NAN;
}

/* Of the effort for the same stop; one of its two limits stands beside it. */
static double times_effort(const struct looked *car, const struct limit_case *row, double moved)
{
    (void)row;
    struct fit *fit = fit_master(car, moved);
    for (int i = 0; i < fit->reason_count; i++)
        if (fit->reasons[i].limit != NULL && strncmp(fit->reasons[i].limit, "fit-", 4) == 0)
            return quantity_of(&fit->reasons[i], "after") / quantity_of(&fit->reasons[i], "before");
    return NAN;
}

static double effort_change(const struct looked *car, const struct limit_case *row, double moved)
{
    return times_effort(car, row, moved) - 1;
}

/* Whether that limit gives a reason to stand so about the effort. */
static bool reasons_so(const struct looked *car, const char *limit, double moved,
                       enum fit_standing standing)
{
    struct fit *fit = fit_master(car, moved);
    for (int i = 0; i < fit->reason_count; i++)
        if (fit->reasons[i].limit != NULL && strcmp(fit->reasons[i].limit, limit) == 0 &&
            fit->reasons[i].question == FIT_EFFORT && fit->reasons[i].standing == standing)
            return true;
    return false;
}

static bool takes_care(const struct looked *car, const struct limit_case *row, double moved)
{
    return reasons_so(car, row->limit, moved, FIT_CARE);
}

static bool is_refused(const struct looked *car, const struct limit_case *row, double moved)
{
    return reasons_so(car, row->limit, moved, FIT_AGAINST);
}

/* ---- findings */

static bool has_finding(const struct findings *findings, const struct limit_case *row)
{
    for (size_t i = 0; i < findings->count; i++)
        if (strcmp(findings->items[i].check->id, row->check) == 0 &&
            (!row->danger || findings->items[i].severity == SEVERITY_DANGER))
            return true;
    return false;
}

static const struct date today = {2026, 11, 25};

/* What a check says of the figures as they are; what they rest on is not looked for. */
static bool check_speaks(const struct looked *car, const struct limit_case *row)
{
    for (int i = 0; i < car->figures.count; i++) {
        struct figure *figure = &car->figures.items[i];
        figure->value = figure->row->get(car->situation, figure->subject, figure->sub);
        figure->state = isfinite(figure->value) ? FIGURE_COMPUTED : FIGURE_NOT_COMPUTED;
    }
    struct findings findings =
        findings_of(car->system, car->network, &car->figures, today, car->arena);
    return has_finding(&findings, row);
}

/* With what the figures rest on. */
static bool is_mostly_assumed(const struct looked *car, const struct limit_case *row, double moved)
{
    (void)moved;
    struct result *result = result_asked(car->system, car->network, (struct force){NAN}, today,
                                         RESULT_FIGURES | RESULT_JUDGED, NULL, car->arena);
    return has_finding(&result->findings, row);
}

/* ---- the limits */

#define TRAVEL                .section = "brake pedal", .key = "travel", .unit = "mm", .scale = 1e-3
#define OF_BORE(part)         .section = part, .key = "bore", .unit = "mm", .scale = 1e-3
#define LENGTH_OF(part, what) .section = part, .key = what, .unit = "mm", .scale = 1e-3
#define RATIO_OF(part)        .section = part, .key = "ratio", .scale = 1

static const struct limit_case cases[] = {
    {"line-pressure-most", 15e6, CUSTOM, "line-pressure-high", .over = true,
     OF_BORE("brake master"), .judged = by_figure, .figure = "line-pressure", .from = 17, .to = 20},
    {"pedal-left-least", 1.0 / 3, OHIO "(B)(2)", "pedal-reserve-low", TRAVEL,
     .judged = share_of_travel, .figure = "pedal-left", .from = 85, .to = 110},
    {"pedal-left-least", 1.0 / 3, OHIO "(B)(2)", "pedal-long-when-slack", TRAVEL,
     .judged = share_of_travel, .figure = "pedal-left-slack", .from = 105, .to = 130},
    {"floor-margin-least", 0.05, OWN, "pedal-on-floor", TRAVEL, .judged = share_of_travel,
     .figure = "pedal-left", .from = 60, .to = 80},
    {"floor-margin-least", 0.05, OWN, "floor-when-hot", TRAVEL, .judged = share_of_travel,
     .figure = "pedal-left-hot", .from = 34, .to = 45},
    {"floor-margin-least", 0.05, OWN, "floor-when-knocked-back", TRAVEL, .judged = share_of_travel,
     .figure = "pedal-left-knocked-back", .from = 36, .to = 45},
    {"floor-margin-least", 0.05, OWN, "floor-when-hoses-worn", TRAVEL, .judged = share_of_travel,
     .figure = "pedal-left-worn-hoses", .from = 34, .to = 45},
    {"floor-margin-least", 0.05, OWN, "failed-circuit-floor", TRAVEL, .judged = share_of_travel,
     .figure = "left-circuit-lost", .from = 125, .to = 145},
    {"assisted-strokes-least", 2, CUSTOM, "servo-few-strokes", .section = "servo",
     .key = "vacuum volume", .unit = "mL", .scale = 1e-6, .judged = by_figure,
     .figure = "assisted-strokes-left", .from = 700, .to = 3000, .whole = true},
    {"pedal-used-most", 0.80, CFR "570.55(c)", "pedal-reserve-gone", .over = true, TRAVEL,
     .judged = share_used, .figure = "pedal-left", .from = 74, .to = 90},
    {"stroke-left-least", 2.5e-3, CUSTOM, "stroke-used-up", LENGTH_OF("brake master", "stroke"),
     .judged = by_figure, .figure = "stroke-left", .from = 11, .to = 16},
    {"stroke-left-least", 2.5e-3, CUSTOM, "slave-over-travel", LENGTH_OF("clutch slave", "stroke"),
     .judged = by_figure, .figure = "slave-stroke-left", .from = 18, .to = 24},
    {"lost-deceleration-least", 2.44, R13H "annex 3, 2.2", "failed-circuit-weak",
     OF_BORE("rear drum"), .judged = stop_with_one_lost, .from = 16, .to = 18},
    {"unassisted-deceleration-least", 2.44, CFR "571.135, S7.11 (from memory)", "unassisted-weak",
     RATIO_OF("brake pedal"), .judged = stop_without_help, .from = 1.5, .to = 1.9},
    {"rear-lock-margin-least", 0, R13H "annex 5, 3.1", "rear-locks-first", OF_BORE("rear drum"),
     .judged = lock_margin, .from = 17, .to = 20, .hair = 1e-4},
    {"grip-order-least", 0, R13H "annex 5, 3.1", "grip-order", OF_BORE("rear drum"),
     .judged = spare_of_order, .from = 17, .to = 20, .hair = 1e-4},
    {"grip-band-slope", 0.7, R13H "annex 5, 3.1", "grip-band", .section = "vehicle",
     .key = "weight on front", .unit = "%", .scale = 0.01, .judged = slope_kept, .from = 45,
     .to = 56},
    {"bearing-margin-least", 0.05, OWN, "clutch-travel-short",
     LENGTH_OF("clutch slave", "bearing travel"), .judged = beyond_wanted,
     .figure = "bearing-travel", .from = 8, .to = 9.5},
    {"bearing-room-least", 0, CUSTOM, "clutch-over-travel",
     LENGTH_OF("clutch slave", "most bearing travel"), .judged = by_figure,
     .figure = "bearing-travel-room", .from = 8, .to = 10, .hair = 1e-6},
    {"clutch-clearance-least", 0.25e-3, CUSTOM, "clutch-clearance-small", .section = "clutch slave",
     .key = "finger ratio", .scale = 1, .judged = by_figure, .figure = "clutch-clearance-per-face",
     .from = 4, .to = 8},
    {"clutch-effort-most", 200, CUSTOM, "clutch-effort-high", .over = true,
     .section = "clutch slave", .key = "release force", .unit = "N", .scale = 1,
     .judged = by_figure, .figure = "clutch-effort", .from = 1500, .to = 4000},
    {"effort-most", 445, "from memory, no source: 100 lbf", "effort-high", .over = true,
     OF_BORE("brake master"), .judged = by_figure, .figure = "effort-for-half-g", .from = 22,
     .to = 28},
    {"lever-effort-most", 244.7, CFR "571.122, S6.10, edition before 2012 (from memory)",
     "lever-effort-high", .over = true, OF_BORE("front master"), .judged = by_figure,
     .figure = "effort-for-half-g", .from = 18, .to = 22},
    {"side-difference-most", 0.30, MOT "1.2.1", "side-difference", .over = true,
     .section = "front left disc", .key = "friction", .scale = 1, .judged = by_figure,
     .figure = "side-difference-front", .from = 0.15, .to = 0.36},
    {"side-difference-dangerous", 0.50, MOT "1.2.1", "side-difference", .over = true,
     .danger = true, .section = "front left disc", .key = "friction", .scale = 1,
     .judged = by_figure, .figure = "side-difference-front", .from = 0.10, .to = 0.36},
    {"side-difference-most", 0.30, MOT "1.2.1", "pull-by-friction", .over = true,
     .section = "rear drum", .key = "friction spread", .unit = "%", .scale = 0.01,
     .judged = by_figure, .figure = "pull-friction-rear", .from = 5, .to = 25},
    {"hand-brake-slope-least", 0.16, MOT "1.4.2", "hand-brake-weak", .section = "hand brake",
     .key = "lever ratio", .scale = 1, .judged = by_figure, .figure = "hand-brake-slope", .from = 1,
     .to = 3},
    {"hand-brake-clicks-most", 9, "four makers' workshop texts, read", "hand-brake-clicks-many",
     .over = true, .section = "hand brake", .key = "clicks", .scale = 1, .whole = true},
    {"hand-brake-clicks-most", 9, "four makers' workshop texts, read", "hand-brake-clicks-many",
     .over = true, .car = "hand-brake-weak.not", .section = "hand brake", .key = "cable stiffness",
     .unit = "N/mm", .scale = 1e3, .judged = by_figure, .figure = "hand-brake-clicks", .from = 1.05,
     .to = 300},
    {"hand-brake-clicks-least", 3, "four makers' workshop texts, read", "hand-brake-clicks-few",
     .section = "hand brake", .key = "clicks", .scale = 1, .whole = true},
    {"cable-holds-off-most", 0, CUSTOM, "cable-holds-shoes-off", .over = true,
     LENGTH_OF("hand brake", "cable holds off"), .quiet = "0 mm", .loud = "0.001 mm"},
    {"ratio-least", 5, CUSTOM, "pedal-ratio-unusual", RATIO_OF("brake pedal")},
    {"ratio-most", 6, CUSTOM, "pedal-ratio-unusual", .over = true, RATIO_OF("brake pedal")},
    {"assisted-ratio-least", 3, CUSTOM, "assisted-ratio-unusual", RATIO_OF("brake pedal")},
    {"assisted-ratio-most", 4, CUSTOM, "assisted-ratio-unusual", .over = true,
     RATIO_OF("brake pedal")},
    {"clutch-ratio-least", 4.5, CUSTOM, "clutch-ratio-unusual", RATIO_OF("clutch pedal")},
    {"clutch-ratio-most", 6.5, CUSTOM, "clutch-ratio-unusual", .over = true,
     RATIO_OF("clutch pedal")},
    {"bar-tilt-most", 10 * DEG, CUSTOM, "balance-bar-tilt", .over = true, OF_BORE("rear master"),
     .judged = size, .figure = "bar-tilt", .from = 22, .to = 28},
    {"hose-age-most", 6, CUSTOM, "hose-old", .section = "all hoses", .key = "renewed",
     .quiet = "2020-11-25", .loud = "2020-11-24"},
    {"hose-age-most", 6, CUSTOM, "vacuum-hose-old", .section = "servo",
     .key = "vacuum hose renewed", .quiet = "2020-11-25", .loud = "2020-11-24"},
    {"boiling-margin-least", 20, CUSTOM, "fluid-near-boiling", .section = "front disc",
     .key = "disc mass", .unit = "kg", .scale = 1, .judged = below_boiling,
     .figure = "fluid-after-ten-stops", .from = 2, .to = 7},
    {"free-water-boils", 100, "definition, at one atmosphere", "free-water-boils", .over = true,
     .section = "front disc", .key = "heat to fluid", .unit = "%", .scale = 0.01,
     .judged = by_figure, .figure = "fluid-after-ten-stops", .from = 10, .to = 30},
    {"drum-growth-most", 1.5, CUSTOM, "drum-grows-hot", .over = true, .section = "rear drum",
     .key = "temperature hot", .unit = "degC", .scale = 1, .judged = times_clearance,
     .figure = "tip-travel-hot", .from = 320, .to = 370},
    {"fluid-age-most", 2, "trade page; maker's workshop text", "fluid-old", .section = "fluid",
     .key = "renewed", .quiet = "2024-11-26", .loud = "2024-11-25"},
    {"rod-gap-least", 0.5e-3, CUSTOM, "rod-gap-small", LENGTH_OF("brake master", "rod gap")},
    {"rod-gap-most", 1.5e-3, CUSTOM, "rod-gap-large", .over = true,
     LENGTH_OF("brake master", "rod gap")},
    {"servo-rod-gap-least", 0.1e-3, CUSTOM, "servo-rod-gap-small",
     LENGTH_OF("servo", "output rod gap")},
    {"servo-rod-gap-most", 0.5e-3, CUSTOM, "servo-rod-gap-large", .over = true,
     LENGTH_OF("servo", "output rod gap")},
    {"free-play-least", 3e-3, CUSTOM, "free-play-small", LENGTH_OF("brake pedal", "free play")},
    {"free-play-most", 6e-3, CUSTOM, "free-play-large", .over = true,
     LENGTH_OF("brake pedal", "free play")},
    {"servo-free-play-least", 1e-3, CUSTOM, "free-play-small", .car = "servo-rod-gap-small",
     LENGTH_OF("brake pedal", "free play")},
    {"servo-free-play-most", 3e-3, CUSTOM, "free-play-large", .over = true,
     .car = "servo-rod-gap-small", LENGTH_OF("brake pedal", "free play")},
    /* 1 in; 25 and 26 mm lie farther off */
    {"standard-bore-within", 0.15e-3, CUSTOM, "bore-not-standard", .over = true,
     OF_BORE("brake master"), .car = "pad-thin.not", .judged = over_bore, .from = 25.4, .to = 25.7},
    /* of the trade's series 21 mm lies 0.3625 mm from 13/16 in, 0.700 in 0.3175 mm from 11/16 */
    {"danger-pair-within", 0.35e-3, CUSTOM, "bore-easily-mistaken", .work = true,
     .section = "replaced brake master", .key = "bore", .quiet = "13/16 in", .loud = "11/16 in"},
    {"lining-left-least", 0.0254 / 16, CFR "570.59(c)", "lining-thin",
     LENGTH_OF("rear drum", "lining left")},
    {"pad-left-least", 1.5e-3, MOT "1.1.13", "pad-thin", LENGTH_OF("front disc", "pad left")},
    {"riveted-left-least", 1e-3, "Quebec, C-24.2, r. 32, 135(9)(a)", "riveted-lining-thin",
     LENGTH_OF("rear drum", "lining left")},
    {"run-out-most", 0.15e-3, "three makers' workshop texts, quoted", "run-out-high", .over = true,
     LENGTH_OF("front disc", "run out")},
    {"residual-on-discs-most", 2 * PSI, CUSTOM, "residual-on-discs", .over = true,
     .section = "residual valve", .key = "holds", .unit = "psi", .scale = PSI},
    {"reverse-share-least", 0.50, CUSTOM, "weak-in-reverse", .section = "rear drum",
     .key = "friction", .scale = 1, .judged = reverse_share, .from = 0.1, .to = 0.5},
    {"reading-off-most", 0.25, CUSTOM, "reading-off", .over = true, .work = true,
     LENGTH_OF("readings", "pedal travel"), .judged = off_reading, .figure = "pedal-travel",
     .from = 70, .to = 90},
    /* the right one has 17.4625 mm, as the pair of them */
    {"bores-differ-most", 0.10e-3, CUSTOM, "bores-differ-across-axle", .over = true,
     OF_BORE("rear left drum"), .judged = over_bore, .from = 17.4625, .to = 18},
    {"bore-change-most", 0.02, CUSTOM, "replaced-bore-changes", .over = true, .work = true,
     OF_BORE("replaced brake master"), .judged = pressure_lost, .from = 19.05, .to = 20},
    {"fit-effort-change-most", 0.10,
     "our own mark; hands feel 7 % (Pang, Tan, Durlach, Perception and Psychophysics 1991)", NULL,
     .over = true, .car = "pad-thin.not", .judged = effort_change, .from = 19.1, .to = 22,
     .speaks = takes_care},
    {"fit-times-most", 2, "our own mark", NULL, .over = true, .car = "rear-locks-first.not",
     .judged = times_effort, .from = 22, .to = 30, .speaks = is_refused},
    /* the last value that the car of the case lacks takes its figures to the half */
    {"assumed-most", 0.50, CUSTOM, "assumed-mostly", .over = true, .section = "brake pedal",
     .key = "efficiency", .quiet = "0.95", .speaks = is_mostly_assumed},
};

enum { CASES = sizeof cases / sizeof *cases };

static bool speaks_of(const struct limit_case *row, const char *words, double moved)
{
    struct looked car = read_moved(row, words);
    bool speaks = row->speaks != NULL ? row->speaks(&car, row, moved) : check_speaks(&car, row);
    arena_destroy(car.arena);
    return speaks;
}

static const char *words_for(struct arena *arena, const struct limit_case *row, double moved)
{
    return row->key == NULL ? NULL : written(arena, row, moved);
}

static double judged_at(const struct limit_case *row, double moved)
{
    struct arena *arena = arena_create();
    struct looked car = read_moved(row, words_for(arena, row, moved));
    double judged = row->judged(&car, row, moved);
    arena_destroy(car.arena);
    arena_destroy(arena);
    return judged;
}

/* Two points of what is judged, and the value between them that puts it to a target: false
 * position, Illinois, and every third time the middle, for what goes by steps. NAN and a word
 * about it where it does not. */
struct between {
    double a, b, at_a, at_b;
};

static double search(const struct limit_case *row, struct between *found, double target,
                     double within)
{
    double a = found->a, b = found->b, fa = found->at_a - target, fb = found->at_b - target;
    if (fabs(fa) <= within || fabs(fb) <= within)
        return fabs(fa) <= within ? a : b;
    for (int i = 0; i < 60 && fa * fb < 0; i++) {
        double c = i % 3 == 2 ? (a + b) / 2 : (a * fb - b * fa) / (fb - fa);
        double fc = judged_at(row, c) - target;
        if (fabs(fc) <= within)
            return c;
        if (fc * fb < 0) {
            a = b;
            fa = fb;
        } else {
            fa /= 2;
        }
        b = c;
        fb = fc;
    }
    print_message("%s: %s from %g to %g does not come to %g: %g, %g\n", row->limit, row->key,
                  found->a, found->b, target, found->at_a, found->at_b);
    return NAN;
}

static double moved_for(const struct limit_case *row, struct between *found, double target,
                        double hair)
{
    if (row->judged == NULL)
        return target / row->scale;
    return search(row, found, target, hair / 4);
}

static bool tells_apart(const struct limit_case *row)
{
    struct arena *arena = arena_create();
    const char *words[] = {row->quiet, row->loud};
    double moved[2] = {NAN, NAN};
    double hair = row->whole ? 1 : row->hair > 0 ? row->hair : HAIR * row->value;
    struct between ends = {row->from, row->to, NAN, NAN};
    if (row->judged != NULL) {
        ends.at_a = judged_at(row, ends.a);
        ends.at_b = judged_at(row, ends.b);
    }
    for (int i = 0; i < 2 && row->quiet == NULL; i++) {
        double side = i == 0 && row->whole ? 0 : (i == 1) == row->over ? hair : -hair;
        moved[i] = moved_for(row, &ends, row->value + side, hair);
        words[i] = words_for(arena, row, moved[i]);
    }
    bool found = row->quiet != NULL || (!isnan(moved[0]) && !isnan(moved[1]));
    bool quiet = found && speaks_of(row, words[0], moved[0]);
    bool loud = found && speaks_of(row, words[1], moved[1]);
    if (quiet || !loud)
        print_message("%s at %s%s: %s at %s, %s at %s\n", row->limit, row->check ? row->check : "",
                      row->danger ? " (danger)" : "", quiet ? "speaks" : "quiet", words[0],
                      loud ? "speaks" : "quiet", words[1]);
    arena_destroy(arena);
    return !quiet && loud;
}

static void a_hair_on_either_side_of_a_limit_is_told_apart(void **state)
{
    (void)state;
    int wrong = 0;
    for (size_t i = 0; i < CASES; i += SANITIZED ? 4 : 1)
        wrong += !tells_apart(&cases[i]);
    assert_int_equal(wrong, 0);
}

/* ---- quantities of the job */

/* A job on the saloon of the cases: planned by the pedal and by a kit that presses. */
struct job {
    struct looked car;
    const struct result *result, *pressed;
};

static const struct limit_case saloon = {.limit = "job", .check = "pad-thin.not"};
static const char job_work[] = "[work]\ncar = Case saloon\ndate = 2026-11-20\n"
                               "opened = rear feed pipe, rear left drum\nrenewed = brake master\n"
                               "[found rear left drum]\nbore surface = stained\n"
                               "[found rear feed pipe]\nbore surface = stained\n";

static const struct result *ask(const struct looked *car, enum bleed_method method)
{
    struct bleed_wishes wishes = {.method = method};
    return result_asked(car->system, car->network, (struct force){NAN}, today,
                        RESULT_FIGURES | RESULT_JUDGED | RESULT_PLAN, &wishes, car->arena);
}

static struct job plan_job(void)
{
    struct job job = {.car = read_moved(&saloon, NULL)};
    struct messages messages = messages_start(job.car.arena);
    struct source worked = {"work", job_work, sizeof job_work - 1};
    struct work_file file = {0};
    assert_true(read_work(&worked, job.car.system, job.car.arena, &messages, &file));
    job.car.system = work_apply(job.car.system, &file, 1, job.car.arena);
    job.car.network = network_build(job.car.system, job.car.arena, &messages);
    job.result = ask(&job.car, METHOD_PEDAL);
    job.pressed = ask(&job.car, METHOD_PRESSURE);
    return job;
}

static const struct step *told_step(const struct job *job, const char *id)
{
    const struct steps *lists[] = {&job->result->plan->steps, &job->pressed->plan->steps};
    for (int l = 0; l < 2; l++)
        for (size_t i = 0; i < lists[l]->count; i++)
            if (strcmp(lists[l]->items[i].row->id, id) == 0)
                return &lists[l]->items[i];
    fail_msg("the job has no step %s", id);
    return NULL;
}

static struct purge_way way(const struct job *job, enum bleed_method method)
{
    struct bleed_wishes wishes = {.method = method};
    return bleed_way_of(job->car.system, job->car.network, 0, &wishes);
}

static double stroke_time(const struct job *job)
{
    return way(job, METHOD_PEDAL).stroke_time;
}

static double pause_time(const struct job *job)
{
    return way(job, METHOD_PEDAL).pause_time;
}

static double clear_strokes(const struct job *job)
{
    return way(job, METHOD_PEDAL).clear_strokes;
}

static double suction(const struct job *job)
{
    return way(job, METHOD_VACUUM).push;
}

static double usual_head(const struct job *job)
{
    bool assumed = false;
    return bleed_head(job->car.system, system_find(job->car.system, "brake master"), -1, &assumed)
        .m;
}

/* What an ideal tube would pass, over what is told of the same nipple. */
static double slower(const struct job *job)
{
    static const struct bleed_wishes none = {.order = NULL};
    const struct step *step = job->result->bleed->steps.items;
    while (step->bleed == NULL)
        step++;
    const struct system *system = job->car.system;
    const struct network *network = job->car.network;
    struct bleed_set set = bleed_set_of(system, network, job->car.arena);
    struct bleed_nets nets = bleed_nets_of(system, network, &set, &none, 30, job->car.arena);
    const struct bleed_net *net = &nets.items[step->circuit];
    bool assumed = false;
    double head =
        bleed_head(system, network->circuits[step->circuit].master, step->part, &assumed).m;
    int nipple = bleed_net_nipple(net, (struct nipple){step->part, step->nipple});
    return bleed_full_flow(net->net, nipple, flow_head(net->net->density, head)) /
           step->bleed->flow_by_gravity;
}

/* The master's stroke is 32 mm. */
static double bench_share(const struct job *job)
{
    return step_said(told_step(job, "bench-master"), "least") / 32e-3;
}

/* Bore 19.05 mm, both chambers 32 mm. */
static double bench_volumes(const struct job *job)
{
    double chambers = 3.14159265358979 / 4 * 19.05e-3 * 19.05e-3 * 32e-3;
    return told_step(job, "bench-master")->volume.m3 / chambers;
}

/* Of an old master without a pedal that stops it: the clutch's, 32 mm and 1.2 mm of cut-off. */
static double old_share(const struct job *job)
{
    struct circuit alone = {.master = system_find(job->car.system, "clutch master")};
    struct system *system = ARENA_NEW(job->car.arena, struct system);
    *system = *job->car.system;
    system->parts = ARENA_ARRAY(job->car.arena, (size_t)system->part_count, struct part);
    memcpy(system->parts, job->car.system->parts,
           (size_t)system->part_count * sizeof *system->parts);
    system->parts[system_find(system, "clutch pedal")].as.pedal.works.count = 0;
    bool assumed = false;
    double area = 3.14159265358979 / 4 * 19.05e-3 * 19.05e-3;
    return (bleed_stroke(system, &alone, &assumed).m3 / area + 1.2e-3) / 32e-3;
}

static double honed(const struct job *job)
{
    const struct findings *findings = &job->result->findings;
    for (size_t i = 0; i < findings->count; i++)
        for (int q = 0; q < findings->items[i].quantity_count; q++)
            if (strcmp(findings->items[i].check->id, "bore-stained") == 0 &&
                strcmp(findings->items[i].quantities[q].name, "over") == 0)
                return findings->items[i].quantities[q].value;
    return NAN;
}

/* At the effort that is said to be for the asked stop, what the car then does. */
static double stop_at_its_effort(const struct job *job)
{
    double effort = figures_find(&job->result->figures, "effort-for-half-g", NULL)->value;
    struct figures at =
        figures_of(job->car.system, job->car.network, (struct force){effort}, job->car.arena);
    return figures_find(&at, "deceleration", NULL)->value;
}

struct told_row {
    const char *limit;
    double value; /* SI, as the source says */
    const char *source;
    const char *step;     /* of which a quantity tells it */
    const char *quantity; /* which one */
    double (*told)(const struct job *job);
};

#define IN(row, name) row, #name, NULL
#define BY(function)  NULL, NULL, function

static const struct told_row told_rows[] = {
    {"hold-force", 125 * LBF, CFR "570.55(b)", IN("test-hold", force)},
    {"hold-time", 10, CFR "570.55(b)", IN("test-hold", time)},
    {"hold-light-force-least", 50, CUSTOM, IN("test-hold-long", force)},
    {"hold-light-force-most", 100, CUSTOM, IN("test-hold-long", force_most)},
    {"hold-long-time", 300, CUSTOM, IN("test-hold-long", time)},
    {"hold-minute-force-least", 40 * LBF, OHIO "(B)(1)", IN("test-hold-minute", force)},
    {"hold-minute-force-most", 60 * LBF, OHIO "(B)(1)", IN("test-hold-minute", force_most)},
    {"hold-minute-time", 60, OHIO "(B)(1)", IN("test-hold-minute", time)},
    {"reserve-force", 50 * LBF, CFR "570.55(c)", IN("test-reserve", force)},
    {"kit-pressure", 1.0e5, CUSTOM, IN("set-kit-pressure", pressure)},
    {"kit-pressure-most", 1.4e5, CUSTOM, IN("set-kit-pressure", pressure_most)},
    {"kit-vacuum", 0.5e5, CUSTOM, BY(suction)},
    {"bench-angle", 5 * DEG, CUSTOM, IN("bench-master", angle)},
    {"bench-stroke", 1.0 / 3, CUSTOM, BY(bench_share)},
    {"exchange-volumes", 3, "O. Levenspiel, Chemical Reaction Engineering (from memory)",
     BY(bench_volumes)},
    {"flow-test-head", 0.5, CUSTOM, IN("bench-flow", least)},
    {"old-master-stroke", 2.0 / 3, CUSTOM, BY(old_share)},
    {"bleed-head", 0.5, CUSTOM, BY(usual_head)},
    {"gravity-slower", 2, CUSTOM, BY(slower)},
    {"bleed-stroke-time", 2, CUSTOM, BY(stroke_time)},
    {"bleed-pause-time", 3, CUSTOM, BY(pause_time)},
    {"clear-strokes", 4, CUSTOM, BY(clear_strokes)},
    {"bore-over-most", 0.13e-3, CUSTOM, BY(honed)},
    {"asked-stop", 0.50 * G, MOT "1.2.2", BY(stop_at_its_effort)},
    /* limits of findings that the job tells too */
    {"rod-gap-least", 0.5e-3, CUSTOM, IN("set-rod-gap", least)},
    {"rod-gap-most", 1.5e-3, CUSTOM, IN("set-rod-gap", most)},
    {"free-play-least", 3e-3, CUSTOM, IN("set-free-play", least)},
    {"free-play-most", 6e-3, CUSTOM, IN("set-free-play", most)},
    {"hand-brake-slope-least", 0.16, MOT "1.4.2", IN("test-slope", slope)},
};

enum { TOLD = sizeof told_rows / sizeof *told_rows };

static void the_job_tells_quantities_as_their_source_says(void **state)
{
    (void)state;
    struct job job = plan_job();
    int wrong = 0;
    for (size_t i = 0; i < TOLD; i++) {
        const struct told_row *row = &told_rows[i];
        double told = row->told != NULL ? row->told(&job)
                                        : step_said(told_step(&job, row->step), row->quantity);
        if (near_enough(told, row->value, 1e-4, true))
            continue;
        print_message("%s: told %g, by %s %g\n", row->limit, told, row->source, row->value);
        wrong++;
    }
    arena_destroy(job.car.arena);
    assert_int_equal(wrong, 0);
}

/* ---- the count */

/* How often a limit is tried; each time the table must have what the source says. */
static int times_tried(const struct limit_row *limit)
{
    int tried = 0, wrong = 0;
    for (size_t i = 0; i < CASES; i++)
        if (strcmp(cases[i].limit, limit->id) == 0) {
            wrong += !near_enough(limit->value, cases[i].value, 1e-12, false) &&
                     !near_enough(limit->value, cases[i].value, 1e-9, true);
            tried++;
        }
    for (size_t i = 0; i < TOLD; i++)
        if (strcmp(told_rows[i].limit, limit->id) == 0) {
            wrong += !near_enough(limit->value, told_rows[i].value, 1e-9, true);
            tried++;
        }
    if (wrong > 0)
        fail_msg("%s is %.9g in the table, not by its source", limit->id, limit->value);
    return tried;
}

static void every_limit_is_that_of_its_source_and_tried_here(void **state)
{
    (void)state;
    size_t count;
    const struct limit_row *rows = limit_rows(&count);
    int untried = 0, tried = 0;
    for (size_t i = 0; i < count; i++) {
        int times = times_tried(&rows[i]);
        if (times == 0)
            print_message("the limit %s is tried by no car and no job\n", rows[i].id);
        untried += times == 0;
        tried += times;
    }
    assert_int_equal(untried, 0);
    assert_int_equal(tried, CASES + TOLD); /* no row here of a limit that there is not */
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_limit_is_that_of_its_source_and_tried_here),
        cmocka_unit_test(the_job_tells_quantities_as_their_source_says),
        cmocka_unit_test(a_hair_on_either_side_of_a_limit_is_told_apart),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
