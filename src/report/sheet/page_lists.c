#include "report/sheet/pages.h"

#include <math.h>
#include <string.h>

#include "base/text.h"
#include "report/words/words.h"

/* Columns of the hose list, from the left margin. */
static const double hose_columns[] = {6.5, 54, 108, 124, 158};

static const char *tag_for(enum hose_standing standing)
{
    switch (standing) {
    case HOSE_IS_NEW:
        return "NEW";
    case HOSE_IS_OLD:
        return "OLD";
    case HOSE_AGE_NOT_KNOWN:
        return "AGE NOT KNOWN";
    case HOSE_IS_MISSING:
        return "MISSING";
    case HOSE_IS_ACCEPTED:
        return "ACCEPTED";
    case HOSE_CANNOT_TELL:
        return "CANNOT TELL";
    case HOSE_IS_IDLE:
        return "NOT NEEDED";
    }
    return "";
}

static void hose_head(struct flow *flow)
{
    static const char *const heads[] = {"hose", "where", "use", "state", "dated"};
    for (int i = 0; i < 5; i++)
        sketch_words(flow_page(flow), FLOW_LEFT + hose_columns[i], flow->y + 2.6, heads[i],
                     flow_small(), ALIGN_LEFT, INK_DARK);
    flow_skip(flow, 4.0);
    flow_rule(flow);
}

static double hose_text(struct flow *flow, const struct hose_line *line, double y, bool draw)
{
    double name = flow_words(flow, FLOW_LEFT + hose_columns[0], y, 45, line->name, flow_bold(),
                             INK_BLACK, draw);
    double where = flow_words(flow, FLOW_LEFT + hose_columns[1], y, 51, line->where, flow_plain(),
                              INK_BLACK, draw);
    if (line->reason)
        where = flow_words(flow, FLOW_LEFT + hose_columns[1], where, 51, line->reason,
                           flow_slanted(), INK_DARK, draw);
    return fmax(name, where);
}

static void hose_row(struct flow *flow, const struct hose_line *line)
{
    double below = hose_text(flow, line, flow->y, false);
    flow_need(flow, below - flow->y + 2.4);
    double y = flow->y + 1.2;
    bool fine = line->standing == HOSE_IS_NEW || line->standing == HOSE_IS_ACCEPTED ||
                line->standing == HOSE_IS_IDLE;
    flow_tick_box(flow, FLOW_LEFT, y - 0.1);
    below = hose_text(flow, line, y, true);
    sketch_words(flow_page(flow), FLOW_LEFT + hose_columns[2], y + 3.1, line->use, flow_small(),
                 ALIGN_LEFT, INK_DARK);
    pages_signal(flow, FLOW_LEFT + hose_columns[3], y - 0.1, tag_for(line->standing), !fine);
    const char *dated = date_known(line->renewed)           ? pages_date(flow->arena, line->renewed)
                        : line->standing == HOSE_IS_MISSING ? ""
                                                            : "no date";
    sketch_words(flow_page(flow), flow_right(flow), y + 3.1, dated, flow_small(), ALIGN_RIGHT,
                 INK_BLACK);
    flow->y = below + 1.2;
    flow_rule(flow);
}

void pages_hoses(struct flow *flow, const struct result *result)
{
    const struct hose_list *hoses = &result->hoses;
    flow_heading(flow, "Hoses", 35);
    flow_paragraph(flow, pages_hoses_verdict(flow->arena, result), flow_bold(), INK_BLACK);
    flow_paragraph(flow,
                   text_print(flow->arena,
                              "Needed %d, there %d, renewed in this work %d, old %d, age not "
                              "known %d, missing %d.",
                              hoses->needed, hoses->has, hoses->renewed, hoses->old, hoses->unknown,
                              hoses->missing),
                   flow_plain(), INK_BLACK);
    flow_skip(flow, 1);
    hose_head(flow);
    for (int i = 0; i < hoses->count; i++)
        hose_row(flow, &hoses->items[i]);
}

static const char *place_of(struct arena *arena, const struct finding *finding)
{
    if (finding->place.line <= 0)
        return NULL;
    const char *file = finding->place.file ? finding->place.file : "";
    const char *slash = strrchr(file, '/');
    return text_print(arena, "%s:%d", slash ? slash + 1 : file, finding->place.line);
}

#define FINDING_WORDS 24.0

static double finding_text(struct flow *flow, const struct result *result,
                           const struct finding *finding, double y, bool draw)
{
    struct arena *arena = flow->arena;
    const struct check_row *row = finding->check;
    double x = FLOW_LEFT + FINDING_WORDS;
    double width = flow_width(flow) - FINDING_WORDS;
    const char *parts[3];
    const char *const from[] = {row->what, row->why, row->remedy};
    for (int i = 0; i < 3; i++)
        parts[i] = from[i] ? fill_words(arena, from[i], finding->quantities,
                                        finding->quantity_count, result->units)
                           : NULL;
    y = flow_words(flow, x, y, width, pages_sentence(arena, parts[0]), flow_bold(), INK_BLACK,
                   draw);
    y = flow_words(flow, x, y, width, parts[1], flow_plain(), INK_BLACK, draw);
    if (parts[2])
        y = flow_words(flow, x, y, width, text_print(arena, "Do: %s", parts[2]), flow_plain(),
                       INK_BLACK, draw);
    struct text small = text_start(arena);
    text_add(&small, "%s", row->id);
    if (place_of(arena, finding))
        text_add(&small, "   %s", place_of(arena, finding));
    if (finding->measure != NULL)
        text_add(&small, "   mostly assumed: measure first the %s", finding->measure);
    else if (finding->assumed)
        text_add(&small, "   rests on assumed values");
    y = flow_words(flow, x, y + 0.4, width, small.items, flow_id(), INK_GREY, draw);
    return flow_words(flow, x, y, width,
                      row->source ? text_print(arena, "Source: %s", row->source) : NULL,
                      (struct font){.size = 6.2}, INK_GREY, draw);
}

void pages_findings(struct flow *flow, const struct result *result)
{
    flow_heading(flow, "Findings", 35);
    flow_paragraph(flow, summary_words(flow->arena, result), flow_plain(), INK_BLACK);
    flow_rule(flow);
    for (size_t i = 0; i < result->findings.count; i++) {
        const struct finding *finding = &result->findings.items[i];
        double below = finding_text(flow, result, finding, flow->y, false);
        flow_need(flow, below - flow->y + 3.4);
        double y = flow->y + 1.6;
        pages_signal(flow, FLOW_LEFT, y, pages_signal_word(finding->severity),
                     finding->severity >= SEVERITY_WARNING);
        flow->y = finding_text(flow, result, finding, y, true) + 1.4;
        flow_rule(flow);
    }
}
