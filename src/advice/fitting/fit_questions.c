#include <math.h>
#include <string.h>

#include "advice/figures/holds.h"
#include "advice/fitting/fit_rules.h"
#include "base/text.h"
#include "physics/pressure.h"

/* What a question cannot be answered without. */
static const struct {
    enum fit_question question;
    const char *figure;
} asked[] = {
    {FIT_EFFORT, "deceleration"},
    {FIT_EFFORT, "clutch-effort"},
    {FIT_TRAVEL, "pedal-travel"},
    {FIT_TRAVEL, "stroke-left"},
    {FIT_TRAVEL, "slave-stroke-left"},
    {FIT_FLOOR, "pedal-left"},
    {FIT_FLOOR, "pedal-left-slack"},
    {FIT_LOST, "left-circuit-lost"},
    {FIT_LOST, "deceleration-circuit-lost"},
    {FIT_UNASSISTED, "deceleration-unassisted"},
    {FIT_BALANCE, "rear-lock-margin"},
    {FIT_CLUTCH, "bearing-travel-spare"},
};

static bool touches(const struct fitting *fitting, int part)
{
    for (int chamber = 0; chamber < part_chambers(&fitting->after.system->parts[part]); chamber++) {
        int vertex = network_vertex(fitting->network, part, chamber);
        int circuit = vertex < 0 ? -1 : fitting->network->vertices[vertex].circuit;
        if (circuit >= 0 && fitting->circuits[circuit])
            return true;
    }
    return false;
}

static void mark_master(struct fitting *fitting, int master)
{
    for (int c = 0; c < fitting->network->circuit_count; c++)
        if (fitting->network->circuits[c].master == master)
            fitting->circuits[c] = true;
}

/* Whether a part lies before its masters: what it does, it does to all that they feed. */
static bool is_upstream(const struct part *part)
{
    return part->kind == KIND_MASTER || part->kind == KIND_PEDAL ||
           (part->kind == KIND_SERVO && part->as.servo.type != SERVO_REMOTE);
}

static void mark_circuits(struct fitting *fitting, int part)
{
    const struct network *network = fitting->network;
    const struct system *system = fitting->after.system;
    const struct part *changed = &system->parts[part];
    mark_master(fitting, part);
    if (changed->kind == KIND_SERVO)
        mark_master(fitting, changed->as.servo.works);
    for (size_t i = 0; changed->kind == KIND_PEDAL && i < changed->as.pedal.works.count; i++)
        mark_master(fitting, pressure_worked_master(system, part, i));
    for (int v = 0; v < network->vertex_count; v++)
        if (network->vertices[v].part == part && network->vertices[v].circuit >= 0)
            fitting->circuits[network->vertices[v].circuit] = true;
    for (int e = 0; e < network->edge_count; e++)
        if (network->edges[e].part == part && network->edges[e].circuit >= 0)
            fitting->circuits[network->edges[e].circuit] = true;
    for (int c = 0; changed->kind == KIND_FLUID && c < network->circuit_count; c++)
        if (system_fluid_of(system, network->circuits[c].master) == part)
            fitting->circuits[c] = true;
}

static void mark_pedals(struct fitting *fitting)
{
    const struct system *system = fitting->after.system;
    for (int c = 0; c < fitting->network->circuit_count; c++) {
        int pedal = pressure_pedal_of(system, fitting->network->circuits[c].master);
        if (!fitting->circuits[c] || pedal < 0)
            continue;
        fitting->pedals[pedal] = true;
        fitting->fit->lever = system->parts[pedal].as.pedal.type == PEDAL_HAND;
    }
}

/* The master that all changes lie before or are of; -1. */
static int only_master(const struct fitting *fitting, const struct work_file *changes)
{
    const struct system *system = fitting->after.system;
    int master = -1;
    for (size_t i = 0; i < changes->count; i++) {
        int part = changes->items[i].part, own = part;
        if (!is_upstream(&system->parts[part]))
            return -1;
        if (system->parts[part].kind == KIND_SERVO)
            own = system->parts[part].as.servo.works;
        if (system->parts[part].kind == KIND_PEDAL)
            own = system->parts[part].as.pedal.works.count == 1
                      ? pressure_worked_master(system, part, 0)
                      : -1;
        if (own < 0 || (master >= 0 && own != master))
            return -1;
        master = own;
    }
    return master;
}

void fit_look(struct fitting *fitting, const struct work_file *changes)
{
    const struct network *network = fitting->network;
    const struct system *system = fitting->after.system;
    fitting->circuits = ARENA_ARRAY(fitting->arena, (size_t)network->circuit_count + 1, bool);
    fitting->pedals = ARENA_ARRAY(fitting->arena, (size_t)system->part_count + 1, bool);
    bool brakes = false, others = false, beside = false;
    for (size_t i = 0; i < changes->count; i++) {
        mark_circuits(fitting, changes->items[i].part);
        fitting->clutch |= system->parts[changes->items[i].part].kind == KIND_SLAVE;
    }
    mark_pedals(fitting);
    int master = only_master(fitting, changes);
    for (int c = 0; c < network->circuit_count; c++) {
        const struct circuit *circuit = &network->circuits[c];
        int pedal = pressure_pedal_of(system, circuit->master);
        fitting->clutch |= fitting->circuits[c] && circuit->clutch;
        brakes |= fitting->circuits[c] && !circuit->clutch;
        others |= !circuit->clutch && circuit->master != master;
        beside |= pedal >= 0 && fitting->pedals[pedal] && circuit->master != master;
    }
    fitting->brakes = brakes || !fitting->clutch;
    fitting->feeds_all = master >= 0 && fitting->brakes && !others;
    fitting->alone = master >= 0 && fitting->brakes && !beside;
}

bool fit_concerns(const struct fitting *fitting, const struct figure *figure)
{
    switch (figure->row->scope) {
    case SCOPE_PEDAL:
        return fitting->pedals[figure->subject];
    case SCOPE_CIRCUIT:
    case SCOPE_CAUSE: {
        int master = fitting->network->circuits[figure->subject].master;
        int pedal = pressure_pedal_of(fitting->after.system, master);
        return pedal >= 0 ? fitting->pedals[pedal] : fitting->circuits[figure->subject];
    }
    case SCOPE_CLUTCH:
        return touches(fitting, figure->subject);
    case SCOPE_CAR:
        return fitting->brakes;
    case SCOPE_CALIPER:
    case SCOPE_BRAKE:
    case SCOPE_HAND_BRAKE:
    case SCOPE_SERVO:
    case SCOPE_VALVE:
        break;
    }
    return fitting->brakes;
}

/* More than one circuit on a pedal, so that one may be lost. */
static bool can_lose_one(const struct fitting *fitting)
{
    int circuits = 0;
    for (int c = 0; c < fitting->network->circuit_count; c++) {
        const struct circuit *circuit = &fitting->network->circuits[c];
        int pedal = pressure_pedal_of(fitting->after.system, circuit->master);
        bool concerned = pedal >= 0 ? fitting->pedals[pedal] : fitting->circuits[c];
        circuits += concerned && !circuit->clutch;
    }
    return circuits > 1;
}

static bool is_asked(const struct fitting *fitting, enum fit_question question)
{
    bool car = system_vehicle(fitting->after.system)->type != VEHICLE_MOTORCYCLE;
    switch (question) {
    case FIT_EFFORT:
    case FIT_TRAVEL:
        return true;
    case FIT_FLOOR:
        return fitting->brakes;
    case FIT_LOST:
        return fitting->brakes && car && can_lose_one(fitting);
    case FIT_UNASSISTED:
        return fitting->brakes && car && system_first(fitting->after.system, KIND_SERVO) >= 0;
    case FIT_BALANCE:
        return fitting->brakes && car && !fitting->feeds_all;
    case FIT_CLUTCH:
        return fitting->clutch;
    case FIT_BORE:
    case FIT_QUESTION_COUNT:
        break;
    }
    return false;
}

/* --- what is missing ------------------------------------------------------------------------- */

static int add_need(struct cited_key *list, int count, struct cited_key need)
{
    for (int i = 0; i < count; i++)
        if (list[i].part == need.part && list[i].key == need.key)
            return count;
    list[count] = need;
    return count + 1;
}

static int add_needs(struct cited_key *list, int count, const struct cited_key *needs, int more)
{
    for (int i = 0; i < more; i++)
        count = add_need(list, count, needs[i]);
    return count;
}

static int most_needs(const struct fitting *fitting)
{
    int most = 1;
    for (int i = 0; i < fitting->after.figures.count; i++)
        most += fitting->after.figures.items[i].needs_count;
    for (int i = 0; i < fitting->before.figures.count; i++)
        most += fitting->before.figures.items[i].needs_count;
    return most;
}

/* What no key can be named for: a part that is not described at all, or a circuit that is not. */
static const char *missing_part(const struct fitting *fitting)
{
    bool fed = false, pressed = false;
    for (int c = 0; c < fitting->network->circuit_count; c++)
        fed = fed || fitting->circuits[c];
    for (int p = 0; p < fitting->after.system->part_count; p++)
        pressed = pressed || fitting->pedals[p];
    const char *name = fitting->after.system->parts[fitting->fit->changes[0].part].name;
    if (!fed)
        return text_print(fitting->arena, "no run of [runs] leads from a master to the %s", name);
    if (!pressed)
        return fitting->brakes ? "no pedal is described that works it: [brake pedal], works ="
                               : "no pedal is described that works it: [clutch pedal], works =";
    return NULL;
}

static void lacks(const struct fitting *fitting, struct fit_answer *answer,
                  const struct figure *figure)
{
    answer->standing = FIT_CANNOT;
    answer->needs_count =
        add_needs(answer->needs, answer->needs_count, figure->needs, figure->needs_count);
    if (figure->needs_count > 0 || answer->why != NULL)
        return;
    answer->why = missing_part(fitting);
    if (answer->why == NULL)
        answer->why = figure->reason;
}

/* A figure whose law does not hold here answers nothing, whatever its value. */
static void is_beyond(const struct fitting *fitting, struct fit_answer *answer,
                      const struct figure *figure)
{
    const struct hold_row *law = holds_broken_law(figure);
    answer->standing = FIT_CANNOT;
    if (answer->why == NULL)
        answer->why = text_print(fitting->arena, "beyond what its law covers: %s", law->broken);
}

/* Notes why a figure, before or after, cannot be compared, where it cannot. */
static void look_at(const struct fitting *fitting, struct fit_answer *answer,
                    const struct figure *figure)
{
    if (figure->state == FIGURE_NOT_COMPUTED)
        lacks(fitting, answer, figure);
    else if (!fit_is_usable(figure))
        is_beyond(fitting, answer, figure);
}

static const struct figure *either(const struct fit_side *side, const struct figure *like)
{
    for (int i = 0; i < side->figures.count; i++)
        if (side->figures.items[i].row == like->row &&
            side->figures.items[i].subject == like->subject)
            return &side->figures.items[i];
    return NULL;
}

/* Whether a row has its answer without its figure: the same pressure where no stop can be worked
 * out, wheels that do not lock at all. */
static bool is_answered(const struct fitting *fitting, enum fit_question question,
                        const char *figure)
{
    enum fit_same same = fitting->brake_effort.same;
    if (question == FIT_EFFORT && strcmp(figure, "deceleration") == 0)
        return same == SAME_PRESSURE || same == SAME_BRAKING;
    for (int i = 0; question == FIT_BALANCE && i < fitting->fit->reason_count; i++)
        if (fitting->fit->reasons[i].limit != NULL &&
            strcmp(fitting->fit->reasons[i].limit, "rear-lock-margin-least") == 0)
            return true;
    return false;
}

static void look_for_lacks(struct fitting *fitting, struct fit_answer *answer)
{
    bool any = false;
    for (size_t a = 0; a < sizeof asked / sizeof *asked; a++) {
        if (asked[a].question != answer->question)
            continue;
        bool answered = is_answered(fitting, answer->question, asked[a].figure);
        any = any || answered;
        for (int i = 0; !answered && i < fitting->after.figures.count; i++) {
            const struct figure *after = &fitting->after.figures.items[i];
            if (strcmp(after->row->id, asked[a].figure) != 0 || !fit_concerns(fitting, after))
                continue;
            any = true;
            const struct figure *before = either(&fitting->before, after);
            look_at(fitting, answer, after);
            if (before != NULL && fit_is_usable(after))
                look_at(fitting, answer, before);
        }
    }
    if (any)
        return;
    answer->standing = FIT_CANNOT;
    answer->why = missing_part(fitting);
    if (answer->why == NULL)
        answer->why = fitting->brakes ? "no run of [runs] leads from it to a brake"
                                      : "no run of [runs] leads from it to a clutch slave";
}

/* --- answers --------------------------------------------------------------------------------- */

static void take_reasons(const struct fitting *fitting, struct fit_answer *answer)
{
    for (int i = 0; i < fitting->fit->reason_count; i++) {
        const struct fit_reason *reason = &fitting->fit->reasons[i];
        if (reason->question != answer->question)
            continue;
        bool first = answer->reason < 0;
        if (first || reason->standing > fitting->fit->reasons[answer->reason].standing)
            answer->reason = i;
        if (reason->standing > answer->standing)
            answer->standing = reason->standing;
    }
}

/* Worst first, of equal ones what gets worse, then as they are asked: a place, least first. */
static int place_of(const struct fit *fit, const struct fit_answer *answer)
{
    bool better = answer->reason < 0 || !fit->reasons[answer->reason].worse;
    return ((FIT_AGAINST - (int)answer->standing) * 2 + better) * FIT_QUESTION_COUNT +
           (int)answer->question;
}

static void add_in_order(struct fit *fit, const struct fit_answer *answer)
{
    int at = fit->answer_count++;
    for (; at > 0 && place_of(fit, &fit->answers[at - 1]) > place_of(fit, answer); at--)
        fit->answers[at] = fit->answers[at - 1];
    fit->answers[at] = *answer;
}

void fit_answer_questions(struct fitting *fitting)
{
    struct fit *fit = fitting->fit;
    size_t most = (size_t)most_needs(fitting);
    fit->needs = ARENA_ARRAY(fitting->arena, most, struct cited_key);
    for (int q = 0; q < FIT_QUESTION_COUNT; q++) {
        struct fit_answer answer = {.question = (enum fit_question)q,
                                    .reason = -1,
                                    .needs = ARENA_ARRAY(fitting->arena, most, struct cited_key)};
        bool is = is_asked(fitting, answer.question);
        if (is)
            look_for_lacks(fitting, &answer);
        take_reasons(fitting, &answer);
        if (is || answer.reason >= 0)
            add_in_order(fit, &answer);
        if (answer.standing == FIT_CANNOT)
            fit->needs_count =
                add_needs(fit->needs, fit->needs_count, answer.needs, answer.needs_count);
    }
}

const char *fit_question_words(const struct fit *fit, enum fit_question question)
{
    static const char *const words[] = {[FIT_EFFORT] = "effort",
                                        [FIT_TRAVEL] = "travel",
                                        [FIT_FLOOR] = "left to the floor",
                                        [FIT_LOST] = "lost circuits",
                                        [FIT_UNASSISTED] = "without the servo",
                                        [FIT_BALANCE] = "balance",
                                        [FIT_CLUTCH] = "clutch lift",
                                        [FIT_BORE] = "bore",
                                        [FIT_QUESTION_COUNT] = ""};
    return question == FIT_FLOOR && fit->lever ? "left to the bar" : words[question];
}

const char *fit_standing_words(enum fit_standing standing)
{
    static const char *const words[] = {[FIT_FINE] = "fine",
                                        [FIT_CARE] = "care",
                                        [FIT_CANNOT] = "cannot say",
                                        [FIT_AGAINST] = "against"};
    return words[standing];
}
