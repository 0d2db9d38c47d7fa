#include "report/answers/answers.h"

#include "report/answers/answer.h"

void answer_soft(struct document *into, const struct result *result)
{
    answer_title(into, result);
    document_gap(into);
    document_words(into,
                   "Where a pedal or lever does not come firm: what it feels like, what to do "
                   "first, what then (common practice, no source). Only what can be on this car.");
    for (int i = 0; i < result->soft.count; i++) {
        const struct soft_line *line = &result->soft.items[i];
        document_gap(into);
        document_words(into, line->row->feel)->tone = TONE_STRONG;
        struct table *table = answer_labels(into, 1);
        answer_label(table, "first", line->first);
        answer_label(table, "then", line->then);
    }
    answer_deference(into, false);
}
