#include "report/text/text_report.h"

#include <ctype.h>
#include <math.h>
#include <string.h>

#include "report/words/bleed_words.h"
#include "units/unit.h"

/* One step for a phone or a second screen at the car: at most this many lines of so many columns,
 * so that nothing has to be scrolled with oily hands. */
enum { SCREEN_LINES = 20, SCREEN_COLUMNS = 40, LABEL_COLUMNS = 10 };

static const char *capitals(struct arena *arena, const char *words)
{
    char *copy = text_copy(arena, words);
    for (char *letter = copy; *letter != '\0'; letter++)
        *letter = (char)toupper((unsigned char)*letter);
    return copy;
}

static void add_labelled(struct text *into, const char *label, const char *words)
{
    text_add(into, "%-*s", LABEL_COLUMNS, label);
    text_add_wrapped(into, words, LABEL_COLUMNS, LABEL_COLUMNS, SCREEN_COLUMNS);
}

/* What one counts at the car: strokes by the pedal, time where fluid runs by itself. */
static void add_measure(struct text *into, const struct bleed_plan *plan, const struct step *step)
{
    struct arena *arena = into->arena;
    const struct bleed_detail *detail = step->bleed;
    switch (plan->method) {
    case METHOD_PEDAL:
    case METHOD_COUNT:
        add_labelled(into, "STROKES",
                     isnan(step->strokes)
                         ? "as many as it takes"
                         : text_print(arena, "about %s", bleed_strokes(arena, step->strokes)));
        return;
    case METHOD_PRESSURE:
        if (detail != NULL)
            add_labelled(into, "TIME", bleed_time(arena, detail->by_pressure.s, "not known"));
        return;
    case METHOD_GRAVITY:
        if (detail != NULL)
            add_labelled(into, "TIME",
                         bleed_time(arena, detail->by_gravity.s, "it does not run by itself"));
        return;
    case METHOD_VACUUM:
    case METHOD_REVERSE:
        return;
    }
}

static void add_amounts(struct text *into, const struct result *result, const struct step *step)
{
    const struct bleed_plan *plan = result->bleed;
    struct arena *arena = into->arena;
    if (step->bleed != NULL && !bleed_draws(step)) {
        bool pedal = plan->method == METHOD_PEDAL;
        add_labelled(into, pedal ? "STROKES" : "UNTIL",
                     pedal ? "three to five, until they are clear" : "it comes clear");
        return;
    }
    add_measure(into, plan, step);
    if (!isnan(step->volume.m3))
        add_labelled(into, plan->method == METHOD_REVERSE ? "PUSH IN" : "DRAW OFF",
                     text_print(arena, "%s%s", bleed_volume(arena, result, step->volume.m3),
                                step->volume_assumed ? " (assumed)" : ""));
    add_labelled(into, plan->method == METHOD_REVERSE ? "RESERVOIR" : "TOP UP",
                 bleed_top_up(arena, plan, step));
    for (size_t i = 0; i < result->unsettled.count; i++)
        if (result->unsettled.items[i].part == step->part) {
            add_labelled(into, "WARNING", "found bad, and nothing is renewed here: renew it first");
            break;
        }
    if (step->bleed != NULL && step->bleed->gave_up)
        add_labelled(into, "WARNING", "the air does not come out this way");
    if (step->bleed != NULL && step->bleed->trapped.m3 > 0)
        add_labelled(into, "TURN UP",
                     text_print(arena, "%s of air stay above the nipple",
                                bleed_volume(arena, result, step->bleed->trapped.m3)));
}

static int lines_in(const struct text *text)
{
    int lines = 0;
    for (size_t i = 0; i < text->count; i++)
        lines += text->items[i] == '\n';
    return lines;
}

/* Lines that words take, with the empty one before them. */
static int lines_for(struct arena *arena, const char *words)
{
    struct text trial = text_start(arena);
    if (words == NULL)
        return 0;
    text_add_wrapped(&trial, words, 0, 0, SCREEN_COLUMNS);
    return 1 + lines_in(&trial);
}

/* Adds words if so many lines are still free after them. */
static void add_if_room(struct text *into, const char *words, int kept)
{
    if (lines_in(into) + lines_for(into->arena, words) + kept > SCREEN_LINES)
        return;
    text_add(into, "\n");
    text_add_wrapped(into, words, 0, 0, SCREEN_COLUMNS);
}

/* How it is gone about: at length if the reason still fits below, else in few words. */
static void add_how(struct text *into, const struct bleed_plan *plan, const char *reason, int kept)
{
    int taken = lines_in(into) + lines_for(into->arena, reason) + kept;
    bool fits = taken + lines_for(into->arena, bleed_how(into->arena, plan)) <= SCREEN_LINES;
    add_if_room(into, fits ? bleed_how(into->arena, plan) : bleed_how_short(into->arena, plan),
                kept);
}

/* What to type for another step of this job: the whole command where it fits, else its end. */
static const char *command_for(struct arena *arena, const struct result *result, const char *begin,
                               const char *end)
{
    const struct system *system = result->system;
    struct text whole = text_start(arena);
    text_add(&whole, "firmpedal %s %s", begin, system->file != NULL ? system->file : "-");
    for (int i = 0; i < system->work_count; i++)
        text_add(&whole, " %s", system->works[i].file);
    text_add(&whole, " %s", end);
    for (const char *word = whole.items; *word != '\0'; word += strspn(word, " ")) {
        size_t length = strcspn(word, " ");
        if (length > SCREEN_COLUMNS - LABEL_COLUMNS || length == 0)
            return end;
        word += length;
    }
    bool asked = result->bleed->asked_order || result->bleed->method != METHOD_PEDAL ||
                 result->bleed->shut_under_pressure;
    return asked || strstr(whole.items, " - ") != NULL ? end : whole.items;
}

static void add_next(struct text *into, const struct result *result, size_t at)
{
    const struct steps *steps = &result->plan->steps;
    struct arena *arena = into->arena;
    text_add(into, "\n");
    if (at + 1 == steps->count) {
        add_labelled(into, "NEXT", "that was the last");
        return;
    }
    add_labelled(into, "NEXT",
                 command_for(arena, result, "bleed", text_print(arena, "--step=%zu", at + 2)));
}

static void add_boxes(struct text *into, const struct step *step)
{
    const char *names[STEP_MOST_BOXES];
    int count = step_boxes(step, names);
    struct text boxes = text_start(into->arena);
    for (int i = 0; i < count; i++)
        text_add(&boxes, "%s[ ] %s", i > 0 ? "  " : "", names[i]);
    if (count > 0)
        text_add_wrapped(into, boxes.items, 0, 0, SCREEN_COLUMNS);
}

/* Where a reading goes, as long as what goes there. */
static void add_reading(struct text *into, const struct result *result, const struct step *step)
{
    if (step->done_words != NULL)
        add_labelled(into, "READ", step->done_words);
    else if (step->row->expect != NULL)
        add_labelled(into, "READ",
                     text_print(into->arena, "%s ________________",
                                step_words(into->arena, result, step, step->row->expect)));
}

/* Which step of how many, of which phase; what circuit or joint it is about; whether it is done. */
static void add_head(struct text *into, const struct result *result, const struct step *step)
{
    struct arena *arena = into->arena;
    const struct plan_joint *joint = plan_joint_of(result->plan, step);
    text_add(into, "STEP %d OF %zu\n", step->number, result->plan->steps.count);
    text_add_wrapped(into, capitals(arena, phase_words(step->row->phase)), 0, 0, SCREEN_COLUMNS);
    if (step->turn > 0)
        text_add(into, "NIPPLE %d OF %zu\n", step->turn, result->bleed->steps.count);
    if (joint != NULL)
        text_add(into, "JOINT %s\n", joint->letter);
    if (step->circuit >= 0)
        text_add_wrapped(into, result->network->circuits[step->circuit].name, 0, 0, SCREEN_COLUMNS);
    if (step->done)
        text_add(into, "DONE\n");
    text_add(into, "\n");
}

enum { NEXT_LINES = 4 };

/* All but a nipple's step: its words fill the screen. */
static void add_plain_step(struct text *into, const struct result *result, const struct step *step)
{
    struct arena *arena = into->arena;
    const char *why = step->reason != NULL ? step->reason->words : step->row->why;
    text_add_wrapped(into, step_words(arena, result, step, step->row->words), 0, 0, SCREEN_COLUMNS);
    add_boxes(into, step);
    add_reading(into, result, step);
    if (why != NULL)
        add_if_room(into, step_words(arena, result, step, why), NEXT_LINES);
}

static void add_nipple_step(struct text *into, const struct result *result, const struct step *step)
{
    const struct bleed_plan *plan = result->bleed;
    struct arena *arena = into->arena;
    text_add_wrapped(into, capitals(arena, bleed_step_name(arena, result, step)), 0, 0,
                     SCREEN_COLUMNS);
    if (step->row == step_row_of(STEP_BLEED_AGAIN))
        text_add(into, "ONCE MORE\n");
    if (bleed_with_words(arena, result, step) != NULL)
        text_add_wrapped(into, bleed_with_words(arena, result, step), 0, 0, SCREEN_COLUMNS);
    if (step->bleed != NULL && step->bleed->way_up != NULL)
        text_add_wrapped(into, text_print(arena, "nipple %s", step->bleed->way_up), 0, 0,
                         SCREEN_COLUMNS);
    add_amounts(into, result, step);
    add_reading(into, result, step);
    const char *reason =
        step->reason != NULL ? step_words(arena, result, step, step->reason->words) : NULL;
    add_how(into, plan, reason, NEXT_LINES);
    if (reason != NULL)
        add_if_room(into, reason, NEXT_LINES);
}

bool text_step(struct text *into, const struct result *result, const char *which)
{
    const struct plan *plan = result->plan;
    int at = text_same(which, "next") ? plan_next(plan) : plan_step_named(plan, which);
    if (result->bleed->refused) {
        text_add(into, "There are no steps: %s.\n", result->bleed->refusal);
        return true;
    }
    if (at < 0 && text_same(which, "next")) {
        text_add(into, "All %zu steps are done.\n", plan->steps.count);
        return true;
    }
    if (at < 0) {
        text_add(into,
                 "There is no step %s; the plan has %zu, --step next shows the first that is "
                 "not done.\n",
                 which, plan->steps.count);
        return false;
    }
    const struct step *step = &plan->steps.items[at];
    add_head(into, result, step);
    if (step->nipple >= 0)
        add_nipple_step(into, result, step);
    else
        add_plain_step(into, result, step);
    add_next(into, result, (size_t)at);
    return true;
}
