#include "report/words/notes.h"
#include "report/sheet/pages.h"

#include "base/text.h"

void pages_notes(struct flow *flow, const struct result *result)
{
    struct note *notes;
    size_t count = notes_of(result->system, flow->arena, &notes);
    if (count == 0)
        return;
    flow_heading(flow, "Notes", 20);
    for (size_t i = 0; i < count; i++)
        flow_paragraph(flow,
                       text_print(flow->arena, "%s: %s", pages_sentence(flow->arena, notes[i].of),
                                  notes[i].words),
                       flow_plain(), INK_BLACK);
}
