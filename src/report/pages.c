#include "report/pages.h"

#include <ctype.h>
#include <math.h>

#include "base/text.h"
#include "report/symbols.h"
#include "report/text_report.h"

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
static double step_text(struct flow *flow, const struct result *result, const struct step *step,
                        double y, double width, bool draw)
{
    double x = FLOW_LEFT + STEP_WORDS;
    struct arena *arena = flow->arena;
    const char *words = pages_sentence(arena, step_words(arena, result, step, step->row->words));
    y = flow_words(flow, x, y, width, words, flow_plain(), INK_BLACK, draw);
    if (step->place_words && step->nipple >= 0)
        y = flow_words(flow, x, y, width, pages_sentence(arena, step->place_words), flow_small(),
                       INK_DARK, draw);
    const char *why = step->row->why ? step_words(arena, result, step, step->row->why) : NULL;
    if (step->reason)
        why = pages_sentence(arena, step_words(arena, result, step, step->reason->words));
    return flow_words(flow, x, y + 0.3, width, why, flow_slanted(), INK_DARK, draw);
}

/* Run, volume and strokes of a bleeding step, at the right. */
static double step_quantities(struct flow *flow, const struct result *result,
                              const struct step *step, double y, bool draw)
{
    double x = flow_right(flow) - STEP_BLANK + 4;
    struct arena *arena = flow->arena;
    const char *rows[3][3] = {{0}};
    int count = 0;
    if (step->nipple < 0)
        return y;
    if (step->run.m > 0) {
        rows[count][0] = "pipe run";
        rows[count][1] = unit_text(arena, step->run.m, DIMENSION_LENGTH, result->units);
        rows[count++][2] = step->run_assumed ? "assumed" : "";
    }
    if (step->volume.m3 > 0) {
        rows[count][0] = "volume";
        rows[count][1] = unit_text(arena, step->volume.m3, DIMENSION_VOLUME, result->units);
        rows[count++][2] = step->volume_assumed ? "assumed" : "";
    }
    if (step->strokes > 0) {
        rows[count][0] = "strokes";
        rows[count][1] = text_print(arena, "about %.0f", ceil(step->strokes));
        rows[count++][2] = "";
    }
    for (int i = 0; i < count; i++, y += flow_line(flow_small()) + 0.3) {
        if (!draw)
            continue;
        double base = y + 2.6;
        sketch_words(flow_page(flow), x, base, rows[i][0], flow_small(), ALIGN_LEFT, INK_DARK);
        sketch_words(flow_page(flow), x + 14, base, rows[i][1],
                     (struct font){.size = 7.4, .bold = true}, ALIGN_LEFT, INK_BLACK);
        sketch_words(flow_page(flow), flow_right(flow), base, rows[i][2], flow_small(), ALIGN_RIGHT,
                     INK_DARK);
    }
    return y;
}

static double words_width(const struct flow *flow, const struct step *step)
{
    bool beside = step->row->expect || step->nipple >= 0;
    return flow_width(flow) - STEP_WORDS - (beside ? STEP_BLANK : 2);
}

double pages_step_height(struct flow *flow, const struct result *result, const struct step *step)
{
    double left = step_text(flow, result, step, 0, words_width(flow, step), false);
    double right = step_quantities(flow, result, step, 0, false);
    return fmax(left, right + (step->row->expect ? 5.4 : 0)) + 2.8;
}

void pages_step(struct flow *flow, const struct result *result, const struct step *step,
                bool circled)
{
    double width = words_width(flow, step);
    flow_need(flow, pages_step_height(flow, result, step));
    double y = flow->y + 1.4;
    const char *number = text_print(flow->arena, "%d", step->number);
    flow_tick_box(flow, FLOW_LEFT + STEP_BOX, y - 0.1);
    if (circled)
        symbol_nipple(flow_page(flow), (struct point){FLOW_LEFT + STEP_NUMBER + 2.2, y + 1.8},
                      step->number);
    else
        sketch_words(flow_page(flow), FLOW_LEFT + STEP_NUMBER + 4.4, y + 3.0, number, flow_bold(),
                     ALIGN_RIGHT, INK_BLACK);
    double below = step_text(flow, result, step, y, width, true);
    double right = step_quantities(flow, result, step, y, true);
    if (step->row->expect) {
        flow_blank(flow, flow_right(flow) - STEP_BLANK + 4, flow_right(flow), right + 3.6,
                   pages_sentence(flow->arena, step->row->expect));
        right += 5.4;
    }
    flow->y = fmax(below, right) + 1.4;
    flow_rule(flow);
}
