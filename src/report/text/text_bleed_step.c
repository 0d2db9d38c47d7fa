#include "report/text/text_report.h"

#include <ctype.h>
#include <math.h>

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

/* Letters stand apart where the line holds them so: "R E A R   L E F T". */
static void add_large(struct text *into, const char *words)
{
    const char *large = capitals(into->arena, words);
    if (2 * text_letters(large) - 1 > SCREEN_COLUMNS) {
        text_add_wrapped(into, large, 0, 0, SCREEN_COLUMNS);
        return;
    }
    for (const char *letter = large; *letter != '\0'; letter++) {
        bool first_byte = ((unsigned char)*letter & 0xC0) != 0x80;
        text_add(into, "%s%c", first_byte && letter > large ? " " : "", *letter);
    }
    text_add(into, "\n");
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

static void add_next(struct text *into, const struct result *result, size_t at)
{
    const struct steps *steps = &result->bleed->steps;
    text_add(into, "\n");
    if (at + 1 < steps->count)
        add_labelled(into, "NEXT",
                     text_print(into->arena, "--step %zu: %s", at + 2,
                                bleed_step_name(into->arena, result, &steps->items[at + 1])));
    else if (at + 1 < text_bleed_step_count(result))
        add_labelled(into, "NEXT",
                     text_print(into->arena, "--step %zu: what follows bleeding", at + 2));
    else
        add_labelled(into, "NEXT", "that was the last");
}

size_t text_bleed_step_count(const struct result *result)
{
    return result->bleed->refused ? 0 : result->bleed->steps.count + result->tests.count;
}

/* What follows the bleeding: its words fill the screen. */
static void add_step_after(struct text *into, const struct result *result, size_t at)
{
    const struct step *step = &result->tests.items[at - result->bleed->steps.count];
    struct arena *arena = into->arena;
    text_add(into, "AFTER BLEEDING %d OF %zu\n\n", step->number, result->tests.count);
    text_add_wrapped(into, step_words(arena, result, step, step->row->words), 0, 0, SCREEN_COLUMNS);
    enum { NEXT_LINES = 3 };
    if (step->row->why != NULL)
        add_if_room(into, step_words(arena, result, step, step->row->why), NEXT_LINES);
    add_next(into, result, at);
}

void text_bleed_step(struct text *into, const struct result *result, int number)
{
    const struct bleed_plan *plan = result->bleed;
    struct arena *arena = into->arena;
    if (number < 1 || (size_t)number > text_bleed_step_count(result)) {
        text_add(into, "There is no step %d; the plan has %zu.\n", number,
                 text_bleed_step_count(result));
        return;
    }
    size_t at = (size_t)number - 1;
    if (at >= plan->steps.count) {
        add_step_after(into, result, at);
        return;
    }
    const struct step *step = &plan->steps.items[at];
    text_add(into, "STEP %d OF %d\n\n", number, (int)plan->steps.count);
    add_large(into, bleed_step_name(arena, result, step));
    if (step->row == step_row_of(STEP_BLEED_AGAIN))
        text_add(into, "ONCE MORE\n");
    if (bleed_with_words(arena, result, step) != NULL)
        text_add_wrapped(into, bleed_with_words(arena, result, step), 0, 0, SCREEN_COLUMNS);
    if (step->place_words != NULL && step->nipple >= 0)
        text_add_wrapped(into, step->place_words, 0, 0, SCREEN_COLUMNS);
    if (step->bleed != NULL && step->bleed->way_up != NULL)
        text_add_wrapped(into, text_print(arena, "nipple %s", step->bleed->way_up), 0, 0,
                         SCREEN_COLUMNS);
    text_add(into, "\n");
    if (step->nipple >= 0)
        add_amounts(into, result, step);
    else
        text_add_wrapped(into, step_words(arena, result, step, step->row->words), 0, 0,
                         SCREEN_COLUMNS);
    enum { NEXT_LINES = 3 };
    const char *reason =
        step->reason != NULL ? step_words(arena, result, step, step->reason->words) : NULL;
    if (step->nipple >= 0)
        add_how(into, plan, reason, NEXT_LINES);
    if (reason != NULL)
        add_if_room(into, reason, NEXT_LINES);
    add_next(into, result, at);
}
