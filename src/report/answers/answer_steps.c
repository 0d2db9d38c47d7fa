#include "report/answers/answer_steps.h"

#include <string.h>

#include <math.h>

#include "base/text.h"
#include "report/words/bleed_words.h"
#include "units/unit.h"

static bool grave(const struct caution_row *row)
{
    enum tone tone = tone_of_signal(row->signal);
    return tone == TONE_DANGER || tone == TONE_WARNING;
}

static bool wanted(const struct caution_row *row, const struct result *result, unsigned when)
{
    return (when & 1u << row->when) != 0 && caution_applies(row, result->system, &result->touched);
}

static void in_full(struct document *into, const struct caution_row *row)
{
    document_caution(into, row->signal,
                     text_print(into->arena, "%s: %s %s", row->hazard, row->harm, row->avoid));
}

void answer_cautions(struct document *into, const struct result *result, unsigned when, bool full)
{
    size_t count;
    const struct caution_row *rows = caution_rows(&count);
    struct text minor = text_start(into->arena);
    const char *signal = "";
    for (int worst = 1; worst >= 0; worst--)
        for (size_t i = 0; i < count; i++) {
            if (grave(&rows[i]) != (worst == 1) || !wanted(&rows[i], result, when))
                continue;
            if (full)
                in_full(into, &rows[i]);
            else if (worst == 1)
                document_caution(into, rows[i].signal, rows[i].brief);
            else
                text_add(&minor, "%s%s", minor.count > 0 ? " " : "", rows[i].brief);
            signal = rows[i].signal;
        }
    if (minor.count > 0)
        document_caution(into, signal, minor.items);
}

static void add_led(struct document *into, const struct result *result, const struct step *step,
                    const char *lead, const char *words)
{
    struct arena *arena = into->arena;
    document_words(into, text_print(arena, "%s: %s", lead, step_words(arena, result, step, words)))
        ->indent = 2;
}

static void add_boxes(struct document *into, const struct step *step)
{
    const char *boxes[STEP_MOST_BOXES];
    int count = step_boxes(step, boxes);
    struct text line = text_start(into->arena);
    for (int i = 0; i < count; i++)
        text_add(&line, "%s[ ] %s", i > 0 ? "   " : "", boxes[i]);
    if (count > 0)
        document_words(into, line.items)->indent = 2;
}

static const char *trapped_words(struct arena *arena, const struct result *result,
                                 const struct step *step)
{
    const struct bleed_detail *detail = step->bleed;
    const char *cost =
        isnan(detail->trapped_pedal.m)
            ? ""
            : text_print(
                  arena,
                  detail->trapped_to_floor ? " and cost %s of pedal, more than it has: it goes to "
                                             "the floor,"
                                           : " and cost %s of pedal",
                  unit_text(arena, detail->trapped_pedal.m, DIMENSION_LENGTH, result->units));
    return text_print(arena, "%s of air stay above the nipple%s unless it is turned up",
                      bleed_volume(arena, result, detail->trapped.m3), cost);
}

void answer_bleed_warnings(struct document *into, const struct result *result,
                           const struct step *step, int turn)
{
    struct arena *arena = into->arena;
    if (step->bleed != NULL && step->bleed->trapped.m3 > 0)
        document_caution(into, "WARNING",
                         text_print(arena, "%d: %s.", turn, trapped_words(arena, result, step)));
    if (step->bleed != NULL && step->bleed->gave_up)
        document_caution(into, "WARNING", text_print(arena, "%d: %s", turn, bleed_gave_up));
}

void answer_step(struct document *into, const struct result *result, const struct steps *steps,
                 size_t at)
{
    const struct step *step = &steps->items[at];
    struct arena *arena = into->arena;
    int number = step->turn > 0 ? step->turn : step->number;
    document_words(into, text_print(arena, "%d. %s", number,
                                    step_words(arena, result, step, step->row->words)))
        ->hang = 2;
    add_boxes(into, step);
    if (step->reason != NULL)
        add_led(into, result, step, "Why here", step->reason->words);
    else if (step->row->why != NULL && steps_first_of_row(steps, at))
        add_led(into, result, step, "Why", step->row->why);
    if (step->row->expect != NULL)
        add_led(into, result, step, "Write down", step->row->expect);
}

void answer_steps(struct document *into, const struct result *result, const char *head,
                  const struct steps *steps)
{
    if (steps->count > 0)
        document_head(into, 2, head);
    for (size_t i = 0; i < steps->count; i++)
        answer_step(into, result, steps, i);
}
