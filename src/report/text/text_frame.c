#include "report/text/text_frame.h"

#include <string.h>

#include "base/date.h"

void frame_note(struct text *into, const struct note *note)
{
    const char *lead = text_print(into->arena, "note on %s: ", note->of);
    text_add_wrapped(into, text_print(into->arena, "%s%s", lead, note->words), 0, 4, FRAME_WIDTH);
}

void frame_car(struct text *into, const struct result *result)
{
    const char *title = system_vehicle(result->system)->title;
    text_add(into, "%s  (%s)\n", title != NULL ? title : "Car without a title",
             result->system->file);
}

void frame_works(struct text *into, const struct result *result)
{
    const struct system *system = result->system;
    for (int i = 0; i < system->work_count; i++) {
        char date[16];
        date_write(system->works[i].date, date);
        text_add(into, "with the work of %s  (%s)\n", date, system->works[i].file);
    }
    struct note *notes;
    size_t count = notes_of(system, into->arena, &notes);
    for (size_t i = 0; i < count; i++)
        if (!notes[i].of_part)
            frame_note(into, &notes[i]);
}

void frame_title(struct text *into, const struct result *result)
{
    frame_car(into, result);
    frame_works(into, result);
}

void frame_heading(struct text *into, const char *heading)
{
    text_add(into, "\n%s\n", heading);
    for (int i = text_letters(heading); i > 0; i--)
        text_add(into, "-");
    text_add(into, "\n");
}

static void add_led(struct text *into, const struct result *result, const struct step *step,
                    const char *lead, const char *words)
{
    text_add(into, "     %s: ", lead);
    text_add_wrapped(into, step_words(into->arena, result, step, words), text_letters(lead) + 7, 5,
                     FRAME_WIDTH);
}

void frame_step(struct text *into, const struct result *result, const struct steps *steps,
                size_t at)
{
    const struct step *step = &steps->items[at];
    const char *boxes[STEP_MOST_BOXES];
    int box_count = step_boxes(step, boxes);
    text_add(into, "%3d. ", step->number);
    text_add_wrapped(into, step_words(into->arena, result, step, step->row->words), 5, 5,
                     FRAME_WIDTH);
    for (int i = 0; i < box_count; i++)
        text_add(into, "%s[ ] %s%s", i > 0 ? "   " : "     ", boxes[i],
                 i + 1 < box_count ? "" : "\n");
    if (step->reason != NULL)
        add_led(into, result, step, "Why here", step->reason->words);
    else if (step->row->why != NULL && steps_first_of_row(steps, at))
        add_led(into, result, step, "Why", step->row->why);
    if (step->row->expect != NULL)
        add_led(into, result, step, "Write down", step->row->expect);
}

void frame_cautions(struct text *into, const struct result *result, enum caution_when when)
{
    size_t count;
    const struct caution_row *rows = caution_rows(&count);
    for (size_t i = 0; i < count; i++) {
        if (rows[i].when != when || !caution_applies(&rows[i], result->system, &result->touched))
            continue;
        const char *words = text_print(into->arena, "%s. %s: %s %s", rows[i].signal, rows[i].hazard,
                                       rows[i].harm, rows[i].avoid);
        text_add_wrapped(into, words, 0, 4, FRAME_WIDTH);
    }
}

void frame_unsettled(struct text *into, const struct result *result)
{
    struct arena *arena = into->arena;
    for (size_t i = 0; i < result->unsettled.count; i++) {
        const struct finding *finding = &result->unsettled.items[i];
        const char *what = fill_words(arena, finding->check->what, finding->quantities,
                                      finding->quantity_count, result->units);
        const char *remedy = fill_words(arena, finding->check->remedy, finding->quantities,
                                        finding->quantity_count, result->units);
        text_add_wrapped(into,
                         text_print(arena, "NOT SETTLED. %s It stays on the car. %s [%s]", what,
                                    remedy, finding->check->id),
                         0, 4, FRAME_WIDTH);
    }
    if (result->unsettled.count > 0)
        text_add(into, "\n");
}

void frame_line(struct text *into, const char *label, const char *words)
{
    enum { LABEL = 18 };
    int gap = LABEL - text_letters(label);
    text_add(into, "     %s%*s", label, gap > 0 ? gap : 1, "");
    text_add_wrapped(into, words, 5 + LABEL, 5 + LABEL, FRAME_WIDTH);
}

void frame_deference(struct text *into)
{
    text_add(into, "\n");
    text_add_wrapped(into, caution_deference(), 0, 0, FRAME_WIDTH);
}
