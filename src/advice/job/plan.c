#include "advice/job/plan.h"

#include <stddef.h>
#include <string.h>

#include "advice/bleeding/bleed_bench.h"
#include "advice/bleeding/bleed_settings.h"
#include "advice/bleeding/touched.h"
#include "advice/common/phrases.h"
#include "advice/job/before.h"
#include "advice/job/opening.h"
#include "advice/job/plan_tables.h"
#include "advice/job/tests_after.h"
#include "base/list.h"
#include "base/text.h"

struct joining {
    const struct system *system;
    enum bleed_method method;
    struct steps *steps; /* all of them, in no order yet */
    struct arena *arena;
};

static void take_all(struct joining *joining, const struct steps *from)
{
    for (size_t i = 0; i < from->count; i++) {
        *LIST_ADD(joining->arena, joining->steps) = from->items[i];
    }
}

static void take_bleeding(struct joining *joining, const struct steps *from)
{
    size_t first = joining->steps->count;
    take_all(joining, from);
    for (size_t i = first; i < joining->steps->count; i++) {
        joining->steps->items[i].turn = (int)(i - first) + 1;
    }
}

static const struct step *find_row(const struct joining *joining, enum step_id id)
{
    for (size_t i = 0; i < joining->steps->count; i++) {
        if (joining->steps->items[i].row == step_row_of(id)) {
            return &joining->steps->items[i];
        }
    }
    return NULL;
}

static bool same_words(const char *one, const char *two)
{
    return one == two || (one != NULL && two != NULL && strcmp(one, two) == 0);
}

/* Whether a step undoes what another set: of a part the same one, else by the same words. */
static bool undoes(const struct step *step, const struct step *set)
{
    return step_names(set->row->undo, STEP_MOST_UNDOING, step_id_of(step->row)) &&
           (set->part >= 0 ? step_shares_part(step, set) : same_words(step->text, set->text));
}

static bool is_undone(const struct joining *joining, const struct step *set)
{
    for (size_t i = 0; i < joining->steps->count; i++) {
        if (undoes(&joining->steps->items[i], set)) {
            return true;
        }
    }
    return false;
}

/* Of two ways of undoing: the note stays where nobody presses a pedal for the bleeding; pads go to
 * their discs when no caliper hangs any more. */
static enum step_id undoing_row(const struct joining *joining, const struct step *set)
{
    switch (step_id_of(set->row)) {
    case STEP_OPEN_NO_PEDAL:
        return set->row->undo[joining->method != METHOD_PEDAL];
    case STEP_OPEN_PISTONS_HOME:
        return set->row->undo[find_row(joining, STEP_SET_CALIPER_UP) != NULL];
    default:
        return set->row->undo[0];
    }
}

/* What is set for the work alone and that nothing undoes yet. */
static void undo_all(struct joining *joining)
{
    size_t count = joining->steps->count;
    for (size_t i = 0; i < count; i++) {
        struct step set = joining->steps->items[i];
        if (set.row->undo[0] == STEP_NONE || is_undone(joining, &set)) {
            continue;
        }
        struct step *step = steps_add(joining->steps, undoing_row(joining, &set));
        step->part = set.part;
        step->other = set.other;
        step->text = set.text;
        step->place_words = set.place_words;
    }
}

/* What is set for the bleeding, in a few words for a label. */
static void hang_label(struct joining *joining)
{
    struct name_list set = name_list_room(joining->arena, (int)joining->steps->count);
    for (size_t i = 0; i < joining->steps->count; i++) {
        const struct step *step = &joining->steps->items[i];
        if (step->row->label != NULL) {
            set.items[set.count++] =
                text_print(joining->arena, "%s %s",
                           step->part >= 0 ? joining->system->parts[step->part].name : step->text,
                           step->row->label);
        }
    }
    if (set.count == 0) {
        return;
    }
    struct step *label = steps_add(joining->steps, STEP_SET_LABEL);
    label->text = name_list_words(joining->arena, &set);
    label->place_words = note_place_words(joining->system);
}

/* Rows that the car puts into order count as the first of those that stand together. */
static int rank_of(const struct step *step)
{
    enum step_id id = step_id_of(step->row);
    while (step->row->in_turn && id > STEP_NONE + 1 && step_row_of(id - 1)->in_turn &&
           step_row_of(id - 1)->phase == step->row->phase) {
        id--;
    }
    return (int)id;
}

/* The table of steps stands in the order of the work; what is alike stays as it came. */
static void put_in_order(struct steps *steps)
{
    for (size_t i = 1; i < steps->count; i++) {
        struct step step = steps->items[i];
        int rank = rank_of(&step);
        size_t at = i;
        for (; at > 0 && rank_of(&steps->items[at - 1]) > rank; at--) {
            steps->items[at] = steps->items[at - 1];
        }
        steps->items[at] = step;
    }
    for (size_t i = 0; i < steps->count; i++) {
        steps->items[i].number = (int)i + 1;
    }
}

static const char *about(const struct system *system, const struct step *step, struct arena *arena)
{
    if (step->joint >= 0) {
        bool turned = plan_screws_in(system, step->other, step->part);
        int part = turned ? step->other : step->part, at = turned ? step->part : step->other;
        return text_print(arena, " %s at %s", system->parts[part].name, system->parts[at].name);
    }
    if (step->part < 0) {
        return "";
    }
    struct nipple nipple = {step->part, step->nipple};
    return text_print(arena, " %s", nipple_words(system, nipple, arena));
}

static void name_all(const struct system *system, struct steps *steps)
{
    for (size_t i = 0; i < steps->count; i++) {
        struct step *step = &steps->items[i];
        const char *name =
            text_print(steps->arena, "%s%s", step->row->id, about(system, step, steps->arena));
        int before = 0;
        for (size_t k = 0; k < i; k++) {
            before += steps->items[k].row == step->row &&
                      strncmp(steps->items[k].name, name, strlen(name)) == 0 &&
                      strchr(" ", steps->items[k].name[strlen(name)]) != NULL;
        }
        step->name = before == 0 ? name : text_print(steps->arena, "%s %d", name, before + 1);
    }
}

static void note_done(const struct system *system, struct plan *plan)
{
    plan->strays = ARENA_ARRAY(plan->arena, (size_t)system->note_count + 1, struct stray_note);
    for (int i = 0; i < system->note_count; i++) {
        const struct done_note *note = &system->notes[i];
        if (!work_is_at_hand(system, system->works[note->work].date)) {
            continue; /* of an earlier job */
        }
        int at = plan_step_named(plan, note->name);
        if (at < 0) {
            plan->strays[plan->stray_count++] = (struct stray_note){note->name, note->place};
            continue;
        }
        struct step *step = &plan->steps.items[at];
        step->done = true;
        step->done_on = note->date;
        step->done_words = note->words;
    }
}

struct plan *plan_of(const struct system *system, const struct network *network,
                     const struct hose_list *hoses, const struct bleed_plan *bleed,
                     struct date today, struct arena *arena)
{
    struct plan *plan = ARENA_NEW(arena, struct plan);
    struct bleed_set set = bleed_set_of(system, network, arena);
    struct joining joining = {system, bleed->method, &plan->steps, arena};
    plan->arena = plan->steps.arena = arena;
    struct steps opening = opening_of(system, network, arena);
    struct steps before = before_of(system, network, hoses, &opening, bleed, today, arena);
    struct steps bench = bleed_bench_of(system, network, &set, arena);
    take_all(&joining, &before);
    take_all(&joining, &opening);
    take_all(&joining, &bench);
    if (!bleed->refused) {
        struct steps settings = bleed_settings_of(system, network, &set, bleed, arena);
        struct steps after = tests_of(system, network, today, arena);
        take_all(&joining, &settings);
        take_bleeding(&joining, &bleed->steps);
        take_all(&joining, &after);
    }
    hang_label(&joining);
    undo_all(&joining);
    put_in_order(&plan->steps);
    name_all(system, &plan->steps);
    plan_fill_tables(system, plan);
    note_done(system, plan);
    return plan;
}

struct steps plan_phases(const struct plan *plan, enum step_phase first, enum step_phase last)
{
    struct steps slice = {.arena = plan->arena};
    size_t from = 0;
    while (from < plan->steps.count && plan->steps.items[from].row->phase < first) {
        from++;
    }
    while (from + slice.count < plan->steps.count &&
           plan->steps.items[from + slice.count].row->phase <= last) {
        slice.count++;
    }
    slice.items = slice.count > 0 ? plan->steps.items + from : NULL;
    slice.capacity = slice.count;
    return slice;
}

int plan_next(const struct plan *plan)
{
    for (size_t i = 0; i < plan->steps.count; i++) {
        if (!plan->steps.items[i].done) {
            return (int)i;
        }
    }
    return -1;
}

const char *plan_step_name(const struct plan *plan, int step)
{
    return plan->steps.items[step].name;
}

int plan_step_named(const struct plan *plan, const char *name)
{
    for (size_t i = 0; i < plan->steps.count; i++) {
        if (text_same(plan->steps.items[i].name, name) ||
            text_same(text_print(plan->arena, "%zu", i + 1), name)) {
            return (int)i;
        }
    }
    return -1;
}

const struct plan_joint *plan_joint_of(const struct plan *plan, const struct step *step)
{
    for (int i = 0; step->joint >= 0 && i < plan->joint_count; i++) {
        if (plan->joints[i].joint == step->joint) {
            return &plan->joints[i];
        }
    }
    return NULL;
}
