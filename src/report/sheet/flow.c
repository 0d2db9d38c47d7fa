#include "report/sheet/flow.h"

#include "base/list.h"
#include "base/text.h"

#define TOP_OF_LATER_PAGES (FLOW_MARGIN + 9.0)
#define FOOT               7.0 /* kept free above the lower margin */
#define TICK               3.6

struct font flow_plain(void)
{
    return (struct font){.size = 8.6};
}

struct font flow_bold(void)
{
    return (struct font){.size = 8.6, .bold = true};
}

struct font flow_small(void)
{
    return (struct font){.size = 7.0};
}

struct font flow_slanted(void)
{
    return (struct font){.size = 7.6, .slanted = true};
}

struct font flow_id(void)
{
    return (struct font){.size = 6.0, .mono = true};
}

struct sketch *flow_page(struct flow *flow)
{
    return &flow->pages.items[flow->pages.count - 1];
}

double flow_width(const struct flow *flow)
{
    return flow->width - 2 * FLOW_MARGIN;
}

double flow_right(const struct flow *flow)
{
    return flow->width - FLOW_MARGIN;
}

double flow_left_over(const struct flow *flow)
{
    return flow->height - FLOW_MARGIN - FOOT - flow->y;
}

static void add_page(struct flow *flow)
{
    struct sketch page = sketch_start(flow->arena, flow->width, flow->height);
    *LIST_ADD(flow->arena, &flow->pages) = page;
}

void flow_start(struct flow *flow, struct arena *arena, const struct ruler *ruler, double width,
                double height, const char *head, const char *date)
{
    *flow = (struct flow){.arena = arena,
                          .ruler = ruler,
                          .width = width,
                          .height = height,
                          .y = FLOW_MARGIN,
                          .head = head,
                          .date = date};
    add_page(flow);
}

void flow_new_page(struct flow *flow)
{
    add_page(flow);
    flow->y = TOP_OF_LATER_PAGES;
}

bool flow_need(struct flow *flow, double height)
{
    /* What is higher than a whole page goes where it stands. */
    if (height <= flow_left_over(flow) || flow->y <= TOP_OF_LATER_PAGES)
        return false;
    flow_new_page(flow);
    return true;
}

void flow_skip(struct flow *flow, double height)
{
    flow->y += height;
}

double flow_line(struct font font)
{
    return points_to_mm(font.size) * FLOW_LINE;
}

double flow_words(struct flow *flow, double x, double y, double width, const char *words,
                  struct font font, enum ink ink, bool draw)
{
    if (!words || !*words)
        return y;
    struct lines lines = sketch_wrap(flow->arena, flow->ruler, words, font, width);
    for (int i = 0; i < lines.count; i++) {
        if (draw)
            sketch_words(flow_page(flow), x, y + points_to_mm(font.size) * 1.02, lines.items[i],
                         font, ALIGN_LEFT, ink);
        y += flow_line(font);
    }
    return y;
}

void flow_heading(struct flow *flow, const char *words, double keep)
{
    bool turned = flow_need(flow, keep + 12);
    if (!turned && flow->y > TOP_OF_LATER_PAGES + 1)
        flow_skip(flow, 5);
    sketch_line(flow_page(flow), FLOW_LEFT, flow->y, flow_right(flow), flow->y,
                pen_of(0.7, INK_BLACK));
    sketch_words(flow_page(flow), FLOW_LEFT, flow->y + 6.0, words,
                 (struct font){.size = 13, .bold = true}, ALIGN_LEFT, INK_BLACK);
    flow_skip(flow, 9.5);
}

void flow_subheading(struct flow *flow, const char *words, double keep)
{
    flow_need(flow, keep + 8);
    flow_skip(flow, 2.4);
    sketch_words(flow_page(flow), FLOW_LEFT, flow->y + 3.4, words,
                 (struct font){.size = 9.6, .bold = true}, ALIGN_LEFT, INK_BLACK);
    flow_skip(flow, 5.6);
}

void flow_paragraph(struct flow *flow, const char *words, struct font font, enum ink ink)
{
    double below = flow_words(flow, FLOW_LEFT, flow->y, flow_width(flow), words, font, ink, false);
    flow_need(flow, below - flow->y);
    flow->y = flow_words(flow, FLOW_LEFT, flow->y, flow_width(flow), words, font, ink, true);
    flow_skip(flow, 1.0);
}

void flow_rule(struct flow *flow)
{
    sketch_line(flow_page(flow), FLOW_LEFT, flow->y, flow_right(flow), flow->y,
                pen_of(0.2, INK_LIGHT));
}

void flow_tick_box(struct flow *flow, double x, double y)
{
    sketch_box(flow_page(flow), (struct box){x, y, x + TICK, y + TICK}, 0.4, pen_of(0.4, INK_BLACK),
               INK_WHITE);
}

void flow_blank(struct flow *flow, double x, double right, double baseline, const char *what)
{
    double start = x;
    if (what && *what) {
        sketch_words(flow_page(flow), x, baseline, what, flow_small(), ALIGN_LEFT, INK_DARK);
        start += ruler_width(flow->ruler, what, flow_small()) + 1.5;
    }
    if (start < right)
        sketch_line(flow_page(flow), start, baseline + 0.6, right, baseline + 0.6,
                    pen_of(0.25, INK_GREY));
}

void flow_finish(struct flow *flow)
{
    double foot = flow->height - FLOW_MARGIN + 1.5;
    for (size_t i = 0; i < flow->pages.count; i++) {
        struct sketch *page = &flow->pages.items[i];
        const char *number = text_print(flow->arena, "page %zu of %zu", i + 1, flow->pages.count);
        sketch_line(page, FLOW_LEFT, foot - 4.2, flow_right(flow), foot - 4.2,
                    pen_of(0.25, INK_GREY));
        sketch_words(page, FLOW_LEFT, foot, flow->date, flow_small(), ALIGN_LEFT, INK_DARK);
        sketch_words(page, flow_right(flow), foot, number, flow_small(), ALIGN_RIGHT, INK_DARK);
        if (i == 0)
            continue;
        sketch_words(page, FLOW_LEFT, FLOW_MARGIN + 2.5, flow->head, flow_small(), ALIGN_LEFT,
                     INK_DARK);
        sketch_words(page, flow_right(flow), FLOW_MARGIN + 2.5, "Wet side service sheet",
                     flow_small(), ALIGN_RIGHT, INK_DARK);
        sketch_line(page, FLOW_LEFT, FLOW_MARGIN + 4.5, flow_right(flow), FLOW_MARGIN + 4.5,
                    pen_of(0.25, INK_GREY));
    }
}
