#include "report/text_frame.h"

#include <string.h>

#include "base/date.h"

void frame_title(struct text *into, const struct result *result)
{
    const struct system *system = result->system;
    const char *title = system_vehicle(system)->title;
    text_add(into, "%s  (%s)\n", title != NULL ? title : "Car without a title", system->file);
    for (int i = 0; i < system->work_count; i++) {
        char date[16];
        date_write(system->works[i].date, date);
        text_add(into, "with the work of %s  (%s)\n", date, system->works[i].file);
    }
}

void frame_heading(struct text *into, const char *heading)
{
    text_add(into, "\n%s\n", heading);
    for (int i = text_letters(heading); i > 0; i--)
        text_add(into, "-");
    text_add(into, "\n");
}

void frame_step(struct text *into, const struct result *result, const struct step *step)
{
    struct arena *arena = into->arena;
    text_add(into, "%3d. ", step->number);
    text_add_wrapped(into, step_words(arena, result, step, step->row->words), 5, 5, FRAME_WIDTH);
    if (step->reason != NULL) {
        text_add(into, "     Why here: ");
        text_add_wrapped(into, step_words(arena, result, step, step->reason->words), 15, 5,
                         FRAME_WIDTH);
    } else if (step->row->why != NULL) {
        text_add(into, "     Why: ");
        text_add_wrapped(into, step_words(arena, result, step, step->row->why), 10, 5, FRAME_WIDTH);
    }
    if (step->row->expect != NULL) {
        text_add(into, "     Write down: ");
        text_add_wrapped(into, step_words(arena, result, step, step->row->expect), 17, 5,
                         FRAME_WIDTH);
    }
}

void frame_deference(struct text *into)
{
    text_add(into, "\n");
    text_add_wrapped(into, caution_deference(), 0, 0, FRAME_WIDTH);
}
