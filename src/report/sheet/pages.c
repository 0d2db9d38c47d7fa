#include "report/sheet/pages.h"

#include <ctype.h>
#include <math.h>

#include "base/text.h"
#include "report/words/words.h"

#define STEP_BOX    0.0 /* from the left margin */
#define STEP_NUMBER 6.5
#define STEP_WORDS  14.0
#define STEP_BLANK  46.0 /* room at the right for a reading */

const char *pages_signal_word(enum severity severity)
{
    switch (severity) {
    case SEVERITY_NOTE:
        return "NOTE";
    case SEVERITY_ADVICE:
        return "ADVICE";
    case SEVERITY_WARNING:
        return "WARNING";
    case SEVERITY_DANGER:
        return "DANGER";
    }
    return "";
}

const char *pages_date(struct arena *arena, struct date date)
{
    static const char *const months[] = {"January",   "February", "March",    "April",
                                         "May",       "June",     "July",     "August",
                                         "September", "October",  "November", "December"};
    if (!date_known(date))
        return "no date";
    if (date.month < 1 || date.month > 12)
        return text_print(arena, "%d", date.year);
    if (date.day < 1)
        return text_print(arena, "%s %d", months[date.month - 1], date.year);
    return text_print(arena, "%d %s %d", date.day, months[date.month - 1], date.year);
}

const char *pages_sentence(struct arena *arena, const char *words)
{
    char *copy = text_copy(arena, words ? words : "");
    copy[0] = (char)toupper((unsigned char)copy[0]);
    return copy;
}

const char *pages_hoses_verdict(struct arena *arena, const struct result *result)
{
    const char *words = hoses_verdict_words(arena, &result->hoses);
    return pages_sentence(arena,
                          text_begins(words, "Hoses: ") ? words + sizeof "Hoses: " - 1 : words);
}

double pages_signal(struct flow *flow, double x, double y, const char *word, bool filled)
{
    struct font font = {.size = 6.8, .bold = true};
    double width = ruler_width(flow->ruler, word, font) + 3.0;
    struct box box = {x, y, x + width, y + 4.0};
    sketch_box(flow_page(flow), box, 0.7, pen_of(0.35, INK_BLACK), filled ? INK_BLACK : INK_WHITE);
    sketch_words(flow_page(flow), x + width / 2, y + 2.9, word, font, ALIGN_MIDDLE,
                 filled ? INK_WHITE : INK_BLACK);
    return width;
}

/* What a step says on paper, line by line; drawn or only measured. */
static double step_text(struct flow *flow, const struct result *result, const struct steps *steps,
                        size_t at, double y, double width, bool draw)
{
    const struct step *step = &steps->items[at];
    double x = FLOW_LEFT + STEP_WORDS;
    struct arena *arena = flow->arena;
    const char *words = pages_sentence(arena, step_words(arena, result, step, step->row->words));
    y = flow_words(flow, x, y, width, words, flow_plain(), INK_BLACK, draw);
    const char *why = step->row->why && steps_first_of_row(steps, at)
                          ? step_words(arena, result, step, step->row->why)
                          : NULL;
    if (step->reason)
        why = pages_sentence(arena, step_words(arena, result, step, step->reason->words));
    return flow_words(flow, x, y + 0.3, width, why, flow_slanted(), INK_DARK, draw);
}

static double words_width(const struct flow *flow, const struct step *step)
{
    const char *boxes[STEP_MOST_BOXES];
    bool beside = step->row->expect || step_boxes(step, boxes) > 0;
    return flow_width(flow) - STEP_WORDS - (beside ? STEP_BLANK : 2);
}

double pages_step_height(struct flow *flow, const struct result *result, const struct steps *steps,
                         size_t at)
{
    const struct step *step = &steps->items[at];
    double left = step_text(flow, result, steps, at, 0, words_width(flow, step), false);
    return fmax(left, step->row->expect ? 5.4 : 0) + 2.8;
}

/* One box for the step, or one for each of its parts at the right. */
static void step_ticks(struct flow *flow, const struct step *step, double y)
{
    const char *names[STEP_MOST_BOXES];
    int count = step_boxes(step, names);
    double x = flow_right(flow) - STEP_BLANK + 1;
    if (count == 0)
        flow_tick_box(flow, FLOW_LEFT + STEP_BOX, y - 0.1);
    for (int i = 0; i < count; i++, x += 15.6) {
        flow_tick_box(flow, x, y - 0.1);
        sketch_words(flow_page(flow), x + 4.3, y + 2.8, names[i], flow_small(), ALIGN_LEFT,
                     INK_BLACK);
    }
}

void pages_step(struct flow *flow, const struct result *result, const struct steps *steps,
                size_t at)
{
    const struct step *step = &steps->items[at];
    flow_need(flow, pages_step_height(flow, result, steps, at));
    double y = flow->y + 1.4, right = y;
    step_ticks(flow, step, y);
    sketch_words(flow_page(flow), FLOW_LEFT + STEP_NUMBER + 4.4, y + 3.0,
                 text_print(flow->arena, "%d", step->number), flow_bold(), ALIGN_RIGHT, INK_BLACK);
    double below = step_text(flow, result, steps, at, y, words_width(flow, step), true);
    if (step->row->expect) {
        flow_blank(flow, flow_right(flow) - STEP_BLANK + 4, flow_right(flow), right + 3.6,
                   pages_sentence(flow->arena, step->row->expect));
        right += 5.4;
    }
    flow->y = fmax(below, right) + 1.4;
    flow_rule(flow);
}
