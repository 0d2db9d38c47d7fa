#include "report/answers/answers.h"

#include "base/date.h"
#include "report/answers/answer.h"

static void add_hose(struct document *into, struct table *table, const struct hose_line *line)
{
    char date[16] = "no date";
    if (date_known(line->renewed))
        date_write(line->renewed, date);
    table_row(table);
    table_cell(table, line->standing == HOSE_IS_NEW ? "[x]" : "[ ]");
    table_cell(table,
               text_print(into->arena, "%s\n%s: %s%s%s", line->name, line->where,
                          hose_standing_words(line->standing), line->reason != NULL ? ": " : "",
                          line->reason != NULL ? line->reason : ""));
    table_cell(table, line->use);
    table_cell(table, line->hose >= 0 ? date : "");
}

void answer_hoses(struct document *into, const struct result *result)
{
    static const struct table_column columns[] = {{"", CELL_FIGURE, CELL_LEFT, 0, 0, false},
                                                  {"", CELL_WORDS, CELL_LEFT, 0, 0, true},
                                                  {"", CELL_FIGURE, CELL_LEFT, 0, 0, false},
                                                  {"", CELL_FIGURE, CELL_LEFT, 0, 0, false}};
    const struct hose_list *hoses = &result->hoses;
    document_words(into, hoses_verdict_words(into->arena, hoses))->hang = 1;
    document_gap(into);
    answer_title_in_full(into, result);
    document_gap(into);
    struct table *table = document_table(into, columns, 4);
    for (int i = 0; i < hoses->count; i++)
        add_hose(into, table, &hoses->items[i]);
    document_gap(into);
    document_words(into, text_print(into->arena,
                                    "needed %d, there %d, renewed in this work %d, old %d, age not "
                                    "known %d, missing %d",
                                    hoses->needed, hoses->has, hoses->renewed, hoses->old,
                                    hoses->unknown, hoses->missing))
        ->indent = 1;
    answer_deference(into, false);
}
