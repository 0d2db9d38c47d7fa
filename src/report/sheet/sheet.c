#include "report/sheet/sheet.h"

#include "base/text.h"
#include "report/paint/drawing.h"
#include "report/sheet/pages.h"

static const char *title_of(const struct result *result)
{
    const char *title = system_vehicle(result->system)->title;
    return title ? title : "Car without a title";
}

const struct sketch *sheet_pages(const struct result *result, enum paper paper,
                                 const struct ruler *ruler, struct arena *arena, size_t *count)
{
    /* ISO 216 A4; ANSI Y14.1 A (letter), 8.5 by 11 in */
    double width = paper == PAPER_A4 ? 210.0 : 215.9;
    double height = paper == PAPER_A4 ? 297.0 : 279.4;
    struct flow flow;
    flow_start(&flow, arena, ruler, width, height, title_of(result),
               pages_date(arena, result->today));
    pages_front(&flow, result);
    pages_notes(&flow, result);
    pages_before(&flow, result);
    pages_opening(&flow, result);
    pages_settings(&flow, result);
    pages_bleeding(&flow, result);
    pages_methods(&flow, result);
    pages_hoses(&flow, result);
    pages_findings(&flow, result);
    pages_after(&flow, result);
    pages_figures(&flow, result);
    pages_curve(&flow, result);
    pages_rules(&flow, result);
    flow_finish(&flow);
    *count = flow.pages.count;
    return flow.pages.items;
}

struct sheet_order {
    const struct result *result;
    enum paper paper;
};

static bool paint_sheet(const struct ruler *ruler, const void *order, struct bytes *out,
                        const char **error)
{
    const struct sheet_order *o = order;
    size_t count;
    const struct sketch *pages = sheet_pages(o->result, o->paper, ruler, out->arena, &count);
    return paint_pdf(pages, (int)count, title_of(o->result), o->result->today, out, error);
}

bool sheet_pdf(const struct result *result, enum paper paper, struct bytes *out, const char **error)
{
    return drawing_run(paint_sheet, &(struct sheet_order){result, paper}, out, error);
}
