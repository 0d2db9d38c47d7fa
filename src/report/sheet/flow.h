#ifndef FIRMPEDAL_REPORT_SHEET_FLOW_H
#define FIRMPEDAL_REPORT_SHEET_FLOW_H

#include <stdbool.h>

#include "report/paint/sketch.h"

/* Text and rows that run down a page and on to the next. Lengths in millimetres. */

struct flow_pages {
    struct sketch *items;
    size_t count;
    size_t capacity;
};

struct flow {
    struct arena *arena;
    const struct ruler *ruler;
    struct flow_pages pages;
    double width, height; /* of the paper */
    double y;             /* where the next thing comes */
    const char *head;     /* what stands at the top of each page but the first */
    const char *date;
};

#define FLOW_MARGIN 15.0
#define FLOW_LEFT   FLOW_MARGIN
#define FLOW_LINE   1.34 /* lines of text apart, in sizes of the font */

/* The fonts of the sheet. */
struct font flow_plain(void);
struct font flow_bold(void);
struct font flow_small(void);
struct font flow_slanted(void);
struct font flow_id(void);

void flow_start(struct flow *flow, struct arena *arena, const struct ruler *ruler, double width,
                double height, const char *head, const char *date);
/* The page that is being filled. */
struct sketch *flow_page(struct flow *flow);
/* Width between the margins, and the right margin's place. */
double flow_width(const struct flow *flow);
double flow_right(const struct flow *flow);
/* Space left on this page. */
double flow_left_over(const struct flow *flow);

void flow_new_page(struct flow *flow);
/* A new page unless so much space is left on this one; true when it turned the page. */
bool flow_need(struct flow *flow, double height);
void flow_skip(struct flow *flow, double height);

/* Height of a line of a font. */
double flow_line(struct font font);
/* Words in lines from x, no wider than width, from a height down. Gives the height below them;
 * draws nothing with draw false, so that a row can be measured first. */
double flow_words(struct flow *flow, double x, double y, double width, const char *words,
                  struct font font, enum ink ink, bool draw);

/* A chapter begins: a rule and large words; kept together with so much of what follows. */
void flow_heading(struct flow *flow, const char *words, double keep);
/* A smaller heading. */
void flow_subheading(struct flow *flow, const char *words, double keep);
/* A paragraph over the whole width. */
void flow_paragraph(struct flow *flow, const char *words, struct font font, enum ink ink);
/* A thin line across. */
void flow_rule(struct flow *flow);
/* A box to tick, its upper left corner. */
void flow_tick_box(struct flow *flow, double x, double y);
/* A line to write on, with small words before it that say what. */
void flow_blank(struct flow *flow, double x, double right, double baseline, const char *what);

/* Heads and feet with page numbers, when all pages are there. */
void flow_finish(struct flow *flow);

#endif
