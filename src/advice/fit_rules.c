#include "advice/fit_rules.h"

#include <math.h>
#include <stddef.h>
#include <string.h>

#include "advice/part_bore.h"
#include "advice/rule_stop.h"

/* A limit that a figure must keep. */
struct rule {
    const char *limit, *figure;
    bool most;      /* the figure may not exceed it; else not fall below it */
    bool of_travel; /* the figure is looked at as a part of the pedal's travel */
    bool used;      /* and that part is what is used, not what is left */
    bool grave;
    bool met_breaks; /* the limit itself is broken already: a pedal on the floor */
    const char *words;
};
static const struct rule rules[] = {
    {.limit = "pedal-floor-least",
     .met_breaks = true,
     .figure = "pedal-left",
     .grave = true,
     .words = "Pedal left to the floor, {of}: {before}, then {after}"},
    {.limit = "pedal-used-most",
     .figure = "pedal-left",
     .most = true,
     .of_travel = true,
     .used = true,
     .grave = true,
     .words = "Pedal travel used, {of}: {before}, then {after}; at most {limit}"},
    {.limit = "pedal-left-least",
     .figure = "pedal-left",
     .of_travel = true,
     .words = "Pedal travel left, {of}: {before}, then {after}; the trade keeps {limit}"},
    {.limit = "stroke-left-least",
     .figure = "stroke-left",
     .grave = true,
     .words = "Stroke left in the master, {of}: {before}, then {after}; at least {limit}"},
    {.limit = "line-pressure-most",
     .figure = "line-pressure",
     .most = true,
     .words = "Line pressure, {of}: {before}, then {after}; usual cars stay below {limit}"},
    {.limit = "lost-left-least",
     .met_breaks = true,
     .figure = "left-circuit-lost",
     .grave = true,
     .words = "Pedal left with the {of} lost: {before}, then {after}"},
    {.limit = "rear-lock-margin-least",
     .figure = "rear-lock-margin",
     .grave = true,
     .words = "Rear wheels lock later than the front ones by {before}, then {after}; below {limit} "
              "they lock first"},
    {.limit = "side-difference-most",
     .figure = "side-difference-front",
     .most = true,
     .grave = true,
     .words = "Front brakes, left against right: {before} apart, then {after}; at most {limit}"},
    {.limit = "side-difference-most",
     .figure = "side-difference-rear",
     .most = true,
     .grave = true,
     .words = "Rear brakes, left against right: {before} apart, then {after}; at most {limit}"},
    {.limit = "bearing-spare-least",
     .figure = "bearing-travel-spare",
     .grave = true,
     .words = "Bearing travel beyond what frees the clutch: {before}, then {after}"},
    {.limit = "bearing-room-least",
     .figure = "bearing-travel-room",
     .grave = true,
     .words = "Bearing travel short of what overstresses the clutch: {before}, then {after}"},
    {.limit = "stroke-left-least",
     .figure = "slave-stroke-left",
     .grave = true,
     .words = "Stroke left in the slave, {of}: {before}, then {after}; at least {limit}"},
};

const struct figure *fit_figure(const struct fit_side *side, const char *id, int subject)
{
    for (int i = 0; i < side->figures.count; i++) {
        const struct figure *figure = &side->figures.items[i];
        if (strcmp(figure->row->id, id) == 0 && figure->subject == subject) {
            return figure->state == FIGURE_NOT_COMPUTED ? NULL : figure;
        }
    }
    return NULL;
}

/* A value before and after, against a limit. */
struct comparison {
    double before, after, limit;
    enum dimension dimension;
    bool most;
    const char *of;
    bool met_breaks;
};

static bool breaks(const struct comparison *found, double value)
{
    return (found->most ? value > found->limit : value < found->limit) ||
           (found->met_breaks && value == found->limit);
}

static void add_quantity(struct fit_reason *reason, const char *name, double value,
                         enum dimension dimension)
{
    struct named_quantity *quantity = &reason->quantities[reason->quantity_count++];
    quantity->name = name;
    quantity->value = value;
    quantity->dimension = dimension;
}

/* Whether the new bore is to blame: it breaks what was kept, or makes much worse what was not. */
static bool is_to_blame(const struct comparison *found)
{
    double worse = found->most ? found->after - found->before : found->before - found->after;
    return !breaks(found, found->before) ||
           worse > limit_value("fit-worse-most") * fabs(found->before);
}

static void add_reason(struct fitting *fitting, const char *limit, const char *words, bool grave,
                       const struct comparison *found)
{
    struct fit_reason *reason = &fitting->fit->reasons[fitting->fit->reason_count++];
    reason->limit = limit;
    reason->words = words;
    reason->against = breaks(found, found->after);
    reason->grave = grave && reason->against && is_to_blame(found);
    add_quantity(reason, "before", found->before, found->dimension);
    add_quantity(reason, "after", found->after, found->dimension);
    add_quantity(reason, "limit", found->limit, found->dimension);
    if (found->of != NULL) {
        struct named_quantity *of = &reason->quantities[reason->quantity_count++];
        of->name = "of";
        of->value = NAN;
        of->text = found->of;
    }
}

static double seen_by(const struct rule *rule, const struct fit_side *side,
                      const struct figure *figure)
{
    if (!rule->of_travel) {
        return figure->value;
    }
    double left = figure->value / pedal_end(&side->system->parts[figure->subject].as.pedal).m;
    return rule->used ? 1 - left : left;
}

/* Its wheels are worked one by one, so that no rule about the car as a whole holds for it. */
static bool is_motorcycle(const struct fitting *fitting)
{
    return system_vehicle(fitting->before.system)->type == VEHICLE_MOTORCYCLE;
}

/* The subject that the new bore presses hardest, of those that it changes. */
static bool find_worst(const struct fitting *fitting, const struct rule *rule,
                       struct comparison *worst)
{
    bool found = false;
    if (is_motorcycle(fitting) && strcmp(rule->figure, "rear-lock-margin") == 0) {
        return false;
    }
    for (int i = 0; i < fitting->after.figures.count; i++) {
        const struct figure *after = &fitting->after.figures.items[i];
        if (strcmp(after->row->id, rule->figure) != 0 || after->state == FIGURE_NOT_COMPUTED) {
            continue;
        }
        const struct figure *before = fit_figure(&fitting->before, rule->figure, after->subject);
        if (before == NULL || fabs(after->value - before->value) <= 1e-9 * fabs(before->value)) {
            continue;
        }
        double value = seen_by(rule, &fitting->after, after);
        if (found && !(rule->most ? value > worst->after : value < worst->after)) {
            continue;
        }
        found = true;
        *worst = (struct comparison){
            .before = seen_by(rule, &fitting->before, before),
            .after = value,
            .limit = limit_value(rule->limit),
            .dimension = rule->of_travel ? DIMENSION_SHARE : after->row->dimension,
            .most = rule->most,
            .of = after->of,
            .met_breaks = rule->met_breaks,
        };
    }
    return found;
}

static void judge_effort(struct fitting *fitting)
{
    double before = fitting->before.stop_effort.n, after = fitting->after.stop_effort.n;
    if (!(before > 0)) {
        return;
    }
    struct comparison effort = {.before = before,
                                .after = after,
                                .limit = limit_value("effort-most"),
                                .dimension = DIMENSION_FORCE,
                                .most = true};
    struct comparison change = {.after = fabs(after / before - 1),
                                .limit = limit_value("fit-effort-change-most"),
                                .dimension = DIMENSION_SHARE,
                                .most = true};
    if (isnan(after)) {
        const struct comparison none = {
            .before = 1, .after = 0, .limit = 1, .dimension = DIMENSION_SHARE};
        add_reason(fitting, "asked-stop", "The same stop is not reached any more", true, &none);
        return;
    }
    if (fabs(after - before) <= 1e-6 * before) {
        return;
    }
    add_reason(fitting, "effort-most",
               "Effort for the same stop: {before}, then {after}; at most {limit}", true, &effort);
    add_reason(fitting, "fit-effort-change-most",
               "The effort for the same stop changes by {after}; up to {limit} feels like the same "
               "car",
               false, &change);
}

/* Only what a circuit's loss leaves, at the foot that the rule allows. */
static void judge_lost(struct fitting *fitting)
{
    struct comparison worst = {.after = INFINITY};
    int brakes = 0;
    if (is_motorcycle(fitting)) {
        return;
    }
    for (int c = 0; c < fitting->network->circuit_count; c++) {
        brakes += !fitting->network->circuits[c].clutch;
    }
    for (int c = 0; brakes > 1 && c < fitting->network->circuit_count; c++) {
        if (fitting->network->circuits[c].clutch) {
            continue;
        }
        double after =
            rule_stop(fitting->after.system, fitting->network, true, c, fitting->arena).m_s2;
        double before =
            rule_stop(fitting->before.system, fitting->network, true, c, fitting->arena).m_s2;
        if (after < worst.after && fabs(after - before) > 1e-9 * before) {
            worst = (struct comparison){.before = before,
                                        .after = after,
                                        .limit = limit_value("lost-deceleration-least"),
                                        .dimension = DIMENSION_ACCELERATION,
                                        .of = fitting->network->circuits[c].name};
        }
    }
    if (isfinite(worst.after)) {
        add_reason(fitting, "lost-deceleration-least",
                   "With the {of} lost, foot at the rule's 500 N: {before}, then {after}; at least "
                   "{limit}",
                   true, &worst);
    }
}

static void judge_sides(struct fitting *fitting)
{
    struct comparison apart = {
        .limit = limit_value("bores-differ-most"), .dimension = DIMENSION_LENGTH, .most = true};
    const struct part *part = &fitting->after.system->parts[fitting->fit->part];
    if (part->side == SIDE_NONE || part->axle == AXLE_NONE) {
        return;
    }
    for (int i = 0; i < fitting->after.system->part_count; i++) {
        const struct part *other = &fitting->after.system->parts[i];
        if (other->kind != part->kind || other->axle != part->axle || other->side == part->side ||
            other->side == SIDE_NONE) {
            continue;
        }
        apart.before = fabs(part_bore(&fitting->before.system->parts[i]).m -
                            part_bore(&fitting->before.system->parts[fitting->fit->part]).m);
        apart.after = fabs(part_bore(other).m - part_bore(part).m);
        add_reason(fitting, "bores-differ-most",
                   "Bores of left and right: {before} apart, then {after}; never mix them on an "
                   "axle",
                   true, &apart);
    }
}

static void judge_size(struct fitting *fitting)
{
    const struct part *part = &fitting->after.system->parts[fitting->fit->part];
    const struct bore_row *nearest = bore_nearest(fitting->fit->after);
    if (nearest == NULL || (part->kind == KIND_SLAVE && part->as.slave.type == SLAVE_CONCENTRIC)) {
        return;
    }
    const struct bore_row *was = bore_nearest(fitting->fit->before);
    struct comparison off = {.before =
                                 was == NULL ? NAN : fabs(was->bore.m - fitting->fit->before.m),
                             .after = fabs(nearest->bore.m - fitting->fit->after.m),
                             .limit = limit_value("standard-bore-within"),
                             .dimension = DIMENSION_LENGTH,
                             .most = true,
                             .of = nearest->name};
    if (off.after > off.limit) {
        add_reason(fitting, "standard-bore-within",
                   "No standard bore: {of} is {after} off, more than {limit}", false, &off);
    }
}

void fit_give_reasons(struct fitting *fitting)
{
    size_t count = sizeof rules / sizeof *rules;
    fitting->fit->reasons = ARENA_ARRAY(fitting->arena, count + 8, struct fit_reason);
    for (size_t i = 0; i < count; i++) {
        struct comparison worst;
        if (find_worst(fitting, &rules[i], &worst)) {
            add_reason(fitting, rules[i].limit, rules[i].words, rules[i].grave, &worst);
        }
    }
    judge_effort(fitting);
    judge_lost(fitting);
    judge_sides(fitting);
    judge_size(fitting);
}
