#include "report/text/text_report.h"

#include "report/text/text_frame.h"

void text_soft(struct text *into, const struct result *result)
{
    frame_title(into, result);
    text_add(into, "\n");
    text_add_wrapped(into,
                     "Where a pedal or lever does not come firm: what it feels like, what to do "
                     "first, what then (common practice, no source). Only what can be on this "
                     "car.",
                     0, 0, FRAME_WIDTH);
    for (int i = 0; i < result->soft.count; i++) {
        const struct soft_line *line = &result->soft.items[i];
        text_add(into, "\n");
        text_add_wrapped(into, line->row->feel, 0, 0, FRAME_WIDTH);
        text_add(into, "  first  ");
        text_add_wrapped(into, line->first, 9, 9, FRAME_WIDTH);
        if (line->then == NULL)
            continue;
        text_add(into, "  then   ");
        text_add_wrapped(into, line->then, 9, 9, FRAME_WIDTH);
    }
    frame_deference(into);
}
