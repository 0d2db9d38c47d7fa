#include "advice/fitting/fit_rules.h"

#include <math.h>
#include <stddef.h>
#include <string.h>

#include "advice/common/bores.h"
#include "advice/figures/holds.h"
#include "advice/figures/part_bore.h"
#include "advice/rules/rule_stop.h"
#include "advice/rules/rules.h"
#include "base/text.h"
#include "physics/pressure.h"

/* A figure that is looked at, with the limit that it must keep. */
struct rule {
    enum fit_question question;
    const char *limit; /* NULL: told, not judged */
    const char *figure;
    bool most;      /* the figure may not exceed it; else not fall below it */
    bool of_travel; /* the figure is looked at as a part of the pedal's travel */
    bool used;      /* and that part is what is used, not what is left */
    bool grave;     /* what breaks it is refused */
    bool always;    /* even where the old bore broke it as badly */
    const char *words;
};

/* clang-format off */

/* The first row of a question is what its line says where nothing is wrong. */
static const struct rule rules[] = {
    {.question = FIT_EFFORT, .limit = "effort-most", .figure = "effort-for-half-g", .most = true,
     .grave = true,
     .words = "{before}, then {after} for a stop of half g; at most {limit}"},
    {.question = FIT_EFFORT, .limit = "clutch-effort-most", .figure = "clutch-effort",
     .most = true, .words = "{before}, then {after} at the clutch pedal; at most {limit}"},
    {.question = FIT_EFFORT, .limit = "line-pressure-most", .figure = "line-pressure",
     .most = true, .words = "line pressure {before}, then {after}; usual cars stay below {limit}"},
    {.question = FIT_TRAVEL, .figure = "pedal-travel",
     .words = "{before}, then {after}"},
    {.question = FIT_TRAVEL, .limit = "stroke-left-least", .figure = "stroke-left", .grave = true,
     .words = "{before} of stroke left in the master, then {after}; at least {limit}"},
    {.question = FIT_TRAVEL, .limit = "stroke-left-least", .figure = "piston-stroke-left",
     .grave = true,
     .words = "{of}: {before} of stroke left to its piston, then {after}; at least {limit}"},
    {.question = FIT_TRAVEL, .limit = "stroke-left-least", .figure = "slave-stroke-left",
     .grave = true, .always = true, .words = "{before} of stroke left in the slave, then {after}; at least {limit}"},
    {.question = FIT_FLOOR, .limit = "floor-margin-least", .figure = "pedal-left", .grave = true,
     .always = true,
     .words = "{before}, then {after}; at least {limit}"},
    {.question = FIT_FLOOR, .limit = "pedal-used-most", .figure = "pedal-left", .most = true,
     .of_travel = true, .used = true, .grave = true,
     .words = "{before} of the travel used, then {after}; at most {limit}"},
    {.question = FIT_FLOOR, .limit = "pedal-left-least", .figure = "pedal-left", .of_travel = true,
     .words = "{before} of the travel left, then {after}; the trade keeps {limit}"},
    {.question = FIT_FLOOR, .limit = "floor-margin-least", .figure = "pedal-left-slack",
     .grave = true, .words = "adjusters not set: {before}, then {after}; at least {limit}"},
    {.question = FIT_FLOOR, .limit = "floor-margin-least", .figure = "pedal-left-new",
     .grave = true, .words = "new linings: {before}, then {after}; at least {limit}"},
    {.question = FIT_FLOOR, .limit = "floor-margin-least", .figure = "pedal-left-worn",
     .grave = true, .words = "worn linings: {before}, then {after}; at least {limit}"},
    {.question = FIT_FLOOR, .limit = "floor-margin-least", .figure = "pedal-left-hot",
     .grave = true, .words = "brakes hot: {before}, then {after}; at least {limit}"},
    {.question = FIT_FLOOR, .limit = "floor-margin-least", .figure = "pedal-left-knocked-back",
     .grave = true, .words = "pads knocked back: {before}, then {after}; at least {limit}"},
    {.question = FIT_FLOOR, .limit = "floor-margin-least", .figure = "pedal-left-worn-hoses",
     .grave = true, .words = "all hoses worn: {before}, then {after}; at least {limit}"},
    {.question = FIT_LOST, .limit = "floor-margin-least", .figure = "left-circuit-lost",
     .grave = true, .words = "{of} lost: {before} left to the floor, then {after}; at least {limit}"},
    {.question = FIT_BALANCE, .limit = "side-difference-most", .figure = "side-difference-front",
     .most = true, .grave = true,
     .words = "front brakes {before} apart, left against right, then {after}; at most {limit}"},
    {.question = FIT_BALANCE, .limit = "side-difference-most", .figure = "side-difference-rear",
     .most = true, .grave = true,
     .words = "rear brakes {before} apart, left against right, then {after}; at most {limit}"},
    {.question = FIT_CLUTCH, .limit = "bearing-margin-least", .figure = "bearing-travel-spare",
     .grave = true, .always = true,
     .words = "{before} of bearing travel beyond what frees the clutch, then {after}; at least {limit}"},
    {.question = FIT_CLUTCH, .limit = "bearing-room-least", .figure = "bearing-travel-room",
     .grave = true,
     .words = "{before} of bearing travel short of what strains the clutch, then {after}"},
};

/* clang-format on */

bool fit_is_usable(const struct figure *figure)
{
    return figure->state != FIGURE_NOT_COMPUTED && holds_broken_law(figure) == NULL;
}

const struct figure *fit_figure(const struct fit_side *side, const char *id, int subject)
{
    for (int i = 0; i < side->figures.count; i++) {
        const struct figure *figure = &side->figures.items[i];
        if (strcmp(figure->row->id, id) == 0 && figure->subject == subject)
            return fit_is_usable(figure) ? figure : NULL;
    }
    return NULL;
}

/* A value before and after, against a limit. */
struct comparison {
    enum fit_question question;
    const char *limit_id; /* NULL: none */
    double before, after, limit;
    enum dimension dimension;
    bool most;
    bool grave, always;
    bool end;     /* it stands at its end, where a number no longer says what is worse */
    bool farther; /* and there the new parts take more of it */
    bool down;    /* less of it is better though no limit says so */
    bool assumed;
    const char *of;
    const char *words;
};

/* A limit of nothing is broken already where nothing is left: a pedal on the floor. */
static bool breaks(const struct comparison *found, double value)
{
    return found->most ? value > found->limit
                       : value < found->limit || (found->limit == 0 && value == 0);
}

static bool same_value(double a, double b)
{
    return fabs(a - b) <= 1e-9 * fabs(b);
}

static bool gets_worse(const struct comparison *found)
{
    if (same_value(found->after, found->before))
        return false;
    return found->most || found->down ? found->after > found->before : found->after < found->before;
}

static enum fit_standing standing_of(const struct comparison *found)
{
    if (found->limit_id == NULL || !breaks(found, found->after))
        return FIT_FINE;
    if (found->always)
        return FIT_AGAINST;
    if (!breaks(found, found->before))
        return found->grave ? FIT_AGAINST : FIT_CARE;
    if (same_value(found->after, found->before))
        return found->end && found->farther ? FIT_AGAINST : FIT_CARE;
    return gets_worse(found) ? FIT_AGAINST : FIT_CARE;
}

static struct named_quantity *add_quantity(struct fit_reason *reason, const char *name,
                                           double value, enum dimension dimension)
{
    struct named_quantity *quantity = &reason->quantities[reason->quantity_count++];
    *quantity = (struct named_quantity){.name = name, .value = value, .dimension = dimension};
    return quantity;
}

static struct fit_reason *add_reason(struct fitting *fitting, const struct comparison *found)
{
    struct fit_reason *reason = &fitting->fit->reasons[fitting->fit->reason_count++];
    *reason = (struct fit_reason){.question = found->question,
                                  .standing = standing_of(found),
                                  .limit = found->limit_id,
                                  .words = found->words,
                                  .assumed = found->assumed,
                                  .worse = gets_worse(found)};
    add_quantity(reason, "before", found->before, found->dimension);
    add_quantity(reason, "after", found->after, found->dimension);
    if (found->limit_id != NULL)
        add_quantity(reason, "limit", found->limit, found->dimension);
    if (found->of != NULL)
        add_quantity(reason, "of", NAN, found->dimension)->text = found->of;
    return reason;
}

/* --- figures against limits ------------------------------------------------------------------ */

/* The pedal whose travel a figure is of; -1. */
static int pedal_of(const struct fitting *fitting, const struct figure *figure)
{
    if (figure->row->scope == SCOPE_PEDAL)
        return figure->subject;
    if (figure->row->scope != SCOPE_CIRCUIT)
        return -1;
    int master = fitting->network->circuits[figure->subject].master;
    return pressure_pedal_of(fitting->after.system, master);
}

static double pedal_travel(const struct fitting *fitting, const struct figure *figure)
{
    int pedal = pedal_of(fitting, figure);
    return pedal < 0 ? NAN : pedal_end(&fitting->after.system->parts[pedal].as.pedal).m;
}

static double seen_by(const struct rule *rule, const struct fitting *fitting,
                      const struct figure *figure)
{
    if (!rule->of_travel)
        return figure->value;
    double left = figure->value / pedal_travel(fitting, figure);
    return rule->used ? 1 - left : left;
}

/* A pedal whose circuit is lost goes to its floor in any case where it works no other. */
static bool goes_on(const struct fitting *fitting, const struct figure *figure)
{
    int pedal = pedal_of(fitting, figure), circuits = 0;
    for (int c = 0; c < fitting->network->circuit_count; c++)
        circuits +=
            pressure_pedal_of(fitting->after.system, fitting->network->circuits[c].master) == pedal;
    return circuits > 1;
}

static bool is_looked_at(const struct fitting *fitting, const struct figure *figure)
{
    return fit_concerns(fitting, figure) &&
           (strcmp(figure->row->id, "left-circuit-lost") != 0 || goes_on(fitting, figure));
}

/* What a limit that is a share is a part of: the pedal's whole travel, or the bearing travel that
 * frees the clutch. */
static double whole_of(const struct fitting *fitting, const struct figure *figure)
{
    if (figure->row->scope == SCOPE_CLUTCH)
        return fitting->after.system->parts[figure->subject].as.slave.bearing_travel.m;
    return pedal_travel(fitting, figure);
}

static double limit_for(const struct fitting *fitting, const struct rule *rule,
                        const struct figure *figure)
{
    const struct limit_row *limit = rule->limit != NULL ? limit_find(rule->limit) : NULL;
    if (limit == NULL)
        return NAN;
    bool of_whole = limit->dimension == DIMENSION_SHARE && !rule->of_travel &&
                    figure->row->dimension == DIMENSION_LENGTH;
    return of_whole ? limit->value * whole_of(fitting, figure) : limit->value;
}

/* A smaller master and a larger piston take more of what a clutch pedal has. */
static bool clutch_takes_more(const struct fitting *fitting)
{
    double taken = 1;
    for (int i = 0; i < fitting->fit->change_count; i++) {
        const struct fit_change *change = &fitting->fit->changes[i];
        const struct part *part = &fitting->after.system->parts[change->part];
        if (fit_is_bore(fitting, change) && part->kind == KIND_MASTER)
            taken *= change->before / change->after;
        else if (fit_is_bore(fitting, change) && part->kind == KIND_SLAVE)
            taken *= change->after / change->before;
    }
    return taken > 1;
}

static struct comparison comparison_of(const struct fitting *fitting, const struct rule *rule,
                                       const struct figure *before, const struct figure *after)
{
    return (struct comparison){
        .question = rule->question,
        .limit_id = rule->limit,
        .before = seen_by(rule, fitting, before),
        .after = seen_by(rule, fitting, after),
        .limit = limit_for(fitting, rule, after),
        .dimension = rule->of_travel ? DIMENSION_SHARE : after->row->dimension,
        .most = rule->most,
        .grave = rule->grave,
        .always = rule->always,
        .end = after->value == 0,
        .farther =
            after->row->scope == SCOPE_CLUTCH ? clutch_takes_more(fitting) : fitting->farther,
        .down = rule->limit == NULL,
        .assumed = before->state == FIGURE_ASSUMED || after->state == FIGURE_ASSUMED,
        .of = after->of,
        .words = rule->words,
    };
}

/* The subject that the new bore presses hardest: the worst standing, then the worst value. */
static void judge_by(struct fitting *fitting, const struct rule *rule)
{
    struct comparison worst = {0};
    bool found = false;
    for (int i = 0; i < fitting->after.figures.count; i++) {
        const struct figure *after = &fitting->after.figures.items[i];
        if (strcmp(after->row->id, rule->figure) != 0 || !fit_is_usable(after) ||
            !is_looked_at(fitting, after))
            continue;
        const struct figure *before = fit_figure(&fitting->before, rule->figure, after->subject);
        if (before == NULL)
            continue;
        struct comparison one = comparison_of(fitting, rule, before, after);
        if (same_value(one.after, one.before) && standing_of(&one) == FIT_FINE)
            continue;
        bool worse = standing_of(&one) > standing_of(&worst) ||
                     (standing_of(&one) == standing_of(&worst) &&
                      (rule->most ? one.after > worst.after : one.after < worst.after));
        if (!found || worse)
            worst = one;
        found = true;
    }
    if (found)
        add_reason(fitting, &worst);
}

/* --- what figures alone do not say ----------------------------------------------------------- */

static const char *change_words(double times, double most, struct arena *arena)
{
    const char *than = times > 1 ? "more" : "less";
    double change = fabs(times - 1);
    if (!(change > most))
        return text_print(arena, "%.0f %% %s, hardly felt", 100 * change, than);
    return text_print(arena, "%.0f %% %s, and you will feel it", 100 * change, than);
}

/* The effort for the same stop, or for what stands for it. */
static void judge_effort(struct fitting *fitting, const struct fit_effort *compared)
{
    static const char *const words[] = {
        [SAME_STOP] = "{before}, then {after} for the same stop: {change}",
        [SAME_BRAKING] = "{before}, then {after} for the same brake force: {change}",
        [SAME_PRESSURE] = "{before}, then {after} for the same line pressure: {change}",
        [SAME_CLUTCH] = "{before}, then {after} at the clutch pedal: {change}",
    };
    const struct figure *stop = fit_figure(&fitting->before, "deceleration", -1);
    if (compared->same == SAME_NOTHING || !(compared->before > 0) ||
        fabs(compared->after - compared->before) <= 1e-6 * compared->before)
        return;
    struct comparison effort = {.question = FIT_EFFORT,
                                .before = compared->before,
                                .after = compared->after,
                                .dimension = DIMENSION_FORCE,
                                .down = true,
                                .assumed = stop == NULL || stop->state == FIGURE_ASSUMED,
                                .words = words[compared->same]};
    if (isnan(compared->after)) {
        effort.words = "{before} for a stop that is not reached any more";
        add_reason(fitting, &effort)->standing = FIT_AGAINST;
        return;
    }
    double most = limit_value("fit-effort-change-most"), times = effort.after / effort.before;
    double refused = limit_value("fit-times-most");
    bool against = times >= refused || times <= 1 / refused;
    struct fit_reason *reason = add_reason(fitting, &effort);
    reason->limit = against ? "fit-times-most" : "fit-effort-change-most";
    reason->standing = against ? FIT_AGAINST : fabs(times - 1) > most ? FIT_CARE : FIT_FINE;
    add_quantity(reason, "change", NAN, DIMENSION_FORCE)->text =
        change_words(times, most, fitting->arena);
}

/* Where no effort can be worked out: what the two areas say by themselves. The same push on the rod
 * gives pressure as 1 over the master's area, the same pressure gives force as the area of a
 * piston. Source: force balance on the piston. */
static void judge_area(struct fitting *fitting, const struct fit_change *change)
{
    double area = pow(change->after / change->before, 2);
    double refused = limit_value("fit-times-most");
    bool master = fitting->after.system->parts[change->part].kind == KIND_MASTER;
    if (!(area >= refused || area <= 1 / refused))
        return;
    struct comparison found = {.question = FIT_EFFORT,
                               .before = 1,
                               .after = master ? 1 / area : area,
                               .dimension = DIMENSION_SHARE,
                               .words =
                                   master ? "the same push on the rod gives {after} of the pressure"
                                          : "the same pressure gives {after} of the force"};
    struct fit_reason *reason = add_reason(fitting, &found);
    reason->limit = "fit-times-most";
    reason->standing = FIT_AGAINST;
}

/* A stop at the rule's 500 N that the new bore changes. A rule that is not for a car of this class
 * and date is told, and what gets worse by more than is hardly felt asks for care. */
static void judge_stop(struct fitting *fitting, enum fit_question question, const char *rule,
                       const char *limit, bool assisted, int lost, const struct figure *figure)
{
    if (figure == NULL)
        return;
    const struct network *network = fitting->network;
    struct comparison found = {
        .question = question,
        .limit_id = limit,
        .before = rule_stop(fitting->before.system, network, assisted, lost, fitting->arena).m_s2,
        .after = rule_stop(fitting->after.system, network, assisted, lost, fitting->arena).m_s2,
        .limit = limit_value(limit),
        .dimension = DIMENSION_ACCELERATION,
        .grave = true,
        .assumed = figure->state == FIGURE_ASSUMED,
        .of = figure->of,
    };
    if (isnan(found.before) || isnan(found.after))
        return;
    bool is_for_it = rule_is_for(rule, fitting->after.system);
    if (lost >= 0)
        found.words = is_for_it ? "{of} lost: 500 N give {before}, then {after}; at least {limit}"
                                : "{of} lost: 500 N give {before}, then {after}; later cars must "
                                  "have {limit}";
    else
        found.words = is_for_it ? "500 N give {before}, then {after}; at least {limit}"
                                : "500 N give {before}, then {after}; later cars must have {limit}";
    struct fit_reason *reason = add_reason(fitting, &found);
    if (is_for_it)
        return;
    double kept = found.after / found.before;
    bool less = kept < 1 - limit_value("fit-effort-change-most");
    reason->standing = kept <= 1 / limit_value("fit-times-most") ? FIT_AGAINST
                       : less && breaks(&found, found.after)     ? FIT_CARE
                                                                 : FIT_FINE;
}

static bool is_motorcycle(const struct fitting *fitting)
{
    return system_vehicle(fitting->before.system)->type == VEHICLE_MOTORCYCLE;
}

static void judge_stops(struct fitting *fitting)
{
    const struct fit_side *after = &fitting->after;
    if (!fitting->brakes || is_motorcycle(fitting))
        return;
    for (int i = 0; i < after->figures.count; i++) {
        const struct figure *figure = &after->figures.items[i];
        if (strcmp(figure->row->id, "deceleration-circuit-lost") == 0 &&
            figure->state != FIGURE_NOT_COMPUTED && fit_concerns(fitting, figure) &&
            goes_on(fitting, figure))
            judge_stop(fitting, FIT_LOST, "r13h-secondary", "lost-deceleration-least", true,
                       figure->subject, figure);
    }
    judge_stop(fitting, FIT_UNASSISTED, "fmvss135-assist", "unassisted-deceleration-least", false,
               -1, fit_figure(after, "deceleration-unassisted", -1));
}

/* By how much later the rear wheels lock than the front ones, of the front ones' rate; without end
 * where the rear ones never do. NaN where it is not known. */
static double lock_margin(const struct fit_side *side)
{
    const struct figure *margin = fit_figure(side, "rear-lock-margin", -1);
    if (margin != NULL)
        return margin->value;
    bool front = fit_figure(side, "front-locks-at", -1) != NULL;
    bool rear = fit_figure(side, "rear-locks-at", -1) != NULL;
    return front == rear ? NAN : front ? INFINITY : -INFINITY;
}

static void judge_balance(struct fitting *fitting)
{
    if (!fitting->brakes || fitting->feeds_all || is_motorcycle(fitting))
        return;
    const struct figure *front = fit_figure(&fitting->after, "front-locks-at", -1);
    struct comparison found = {
        .question = FIT_BALANCE,
        .limit_id = "rear-lock-margin-least",
        .before = lock_margin(&fitting->before),
        .after = lock_margin(&fitting->after),
        .limit = limit_value("rear-lock-margin-least"),
        .dimension = DIMENSION_SHARE,
        .grave = true,
        .assumed = front == NULL || front->state == FIGURE_ASSUMED,
        .words = "the rear locks {before} later than the front, then {after}; below {limit} it "
                 "locks first"};
    if (isnan(found.before) || isnan(found.after))
        return;
    if (isinf(found.after) || isinf(found.before))
        found.words = found.after == INFINITY ? "the rear wheels do not lock"
                      : isinf(found.after)    ? "only the rear wheels lock"
                                              : "the rear locks {after} later than the front; it "
                                                "did not lock both before";
    add_reason(fitting, &found);
}

/* Never two bores on one axle. */
static void judge_sides(struct fitting *fitting, const struct fit_change *change)
{
    struct comparison apart = {.question = FIT_BALANCE,
                               .limit_id = "bores-differ-most",
                               .limit = limit_value("bores-differ-most"),
                               .dimension = DIMENSION_LENGTH,
                               .most = true,
                               .grave = true,
                               .words = "bores of left and right {before} apart, then {after}; "
                                        "never mix them on an axle"};
    const struct part *part = &fitting->after.system->parts[change->part];
    const struct part *was = &fitting->before.system->parts[change->part];
    for (int i = 0; i < fitting->after.system->part_count; i++) {
        const struct part *other = &fitting->after.system->parts[i];
        if (other->kind != part->kind || other->axle != part->axle || part->axle == AXLE_NONE ||
            part->side == SIDE_NONE || other->side == SIDE_NONE || other->side == part->side)
            continue;
        apart.before = fabs(part_bore(&fitting->before.system->parts[i]).m - part_bore(was).m);
        apart.after = fabs(part_bore(other).m - part_bore(part).m);
        if (breaks(&apart, apart.after))
            add_reason(fitting, &apart);
    }
}

static void judge_size(struct fitting *fitting, const struct fit_change *change)
{
    const struct part *part = &fitting->after.system->parts[change->part];
    const struct bore_row *nearest = bore_nearest((struct length){change->after});
    if (nearest == NULL || (part->kind == KIND_SLAVE && part->as.slave.type == SLAVE_CONCENTRIC))
        return;
    const struct bore_row *was = bore_nearest((struct length){change->before});
    struct comparison off = {
        .question = FIT_BORE,
        .limit_id = "standard-bore-within",
        .before = was == NULL ? NAN : fabs(was->bore.m - change->before),
        .after = fabs(nearest->bore.m - change->after),
        .limit = limit_value("standard-bore-within"),
        .dimension = DIMENSION_LENGTH,
        .most = true,
        .of = nearest->name,
        .words = "no standard size: {of} is {after} off, more than {limit}; measure it again"};
    if (breaks(&off, off.after))
        add_reason(fitting, &off)->standing = FIT_CARE;
}

static void judge_bores(struct fitting *fitting,
                        void (*judge)(struct fitting *, const struct fit_change *))
{
    for (int i = 0; i < fitting->fit->change_count; i++)
        if (fit_is_bore(fitting, &fitting->fit->changes[i]))
            judge(fitting, &fitting->fit->changes[i]);
}

void fit_give_reasons(struct fitting *fitting)
{
    size_t count = sizeof rules / sizeof *rules;
    size_t parts = (size_t)fitting->after.system->part_count;
    size_t most = count + (size_t)fitting->network->circuit_count + parts + 8 +
                  (size_t)fitting->fit->change_count * (parts + 2);
    fitting->fit->reasons = ARENA_ARRAY(fitting->arena, most, struct fit_reason);
    judge_effort(fitting, &fitting->brake_effort);
    judge_effort(fitting, &fitting->clutch_effort);
    if (fitting->brake_effort.same == SAME_NOTHING && fitting->clutch_effort.same == SAME_NOTHING)
        judge_bores(fitting, judge_area);
    judge_balance(fitting);
    for (size_t i = 0; i < count; i++)
        judge_by(fitting, &rules[i]);
    judge_stops(fitting);
    judge_bores(fitting, judge_sides);
    judge_bores(fitting, judge_size);
}
