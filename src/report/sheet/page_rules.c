#include <math.h>

#include "base/text.h"
#include "report/sheet/pages.h"
#include "report/words/rule_words.h"
#include "report/words/words.h"

/* Columns, from the left margin: rule with its scope, asks (right end), this car (right end), and
 * how they compare. */
#define ASKS_END  120.0
#define HAS_END   142.0
#define COMPARED  145.0
#define RULE_WIDE 96.0

static void rules_head(struct flow *flow)
{
    struct sketch *page = flow_page(flow);
    double y = flow->y + 2.6;
    sketch_words(page, FLOW_LEFT, y, "rule", flow_small(), ALIGN_LEFT, INK_DARK);
    sketch_words(page, FLOW_LEFT + ASKS_END, y, "asks for", flow_small(), ALIGN_RIGHT, INK_DARK);
    sketch_words(page, FLOW_LEFT + HAS_END, y, "this car", flow_small(), ALIGN_RIGHT, INK_DARK);
    flow_skip(flow, 4.0);
    flow_rule(flow);
}

/* Where it holds, for whom, and where it stands. */
static const char *scope_words(struct arena *arena, const struct rule_row *rule)
{
    return text_print(arena, "%s, %s; %s. %s, %s (%s)", rule->where, rule_dates(rule, arena),
                      rule->scope, rule->source, rule->clause,
                      rule->known == RULE_READ ? "read" : "from memory");
}

static double rule_words_drawn(struct flow *flow, const struct rule_row *rule, double y, bool draw)
{
    y = flow_words(flow, FLOW_LEFT, y, RULE_WIDE, rule->title, flow_plain(), INK_BLACK, draw);
    y = flow_words(flow, FLOW_LEFT, y, RULE_WIDE, rule->id, flow_id(), INK_GREY, draw);
    return flow_words(flow, FLOW_LEFT, y, RULE_WIDE, scope_words(flow->arena, rule), flow_small(),
                      INK_DARK, draw);
}

static const char *compared_words(struct arena *arena, const struct result *result,
                                  const struct ruling *ruling)
{
    if (ruling->outcome == RULE_NOT_COMPUTED)
        return ruling_lack_words(arena, result->system, ruling);
    const char *aside = ruling->concern == RULE_FOR_COMPARISON ? " (for comparison)"
                        : ruling->concern == RULE_NEEDS_DATE   ? " (needs the date of first use)"
                                                               : "";
    return text_print(arena, "%s%s%s", ruling_words(ruling), ruling_assumed_words(ruling), aside);
}

static void rule_row_drawn(struct flow *flow, const struct result *result,
                           const struct ruling *ruling)
{
    const struct rule_row *rule = ruling->rule;
    double compared_wide = flow_width(flow) - COMPARED;
    const char *compared = compared_words(flow->arena, result, ruling);
    double height =
        fmax(rule_words_drawn(flow, rule, 0, false),
             flow_words(flow, 0, 0, compared_wide, compared, flow_plain(), INK_BLACK, false)) +
        2.2;
    if (flow_need(flow, height))
        rules_head(flow);
    double y = flow->y + 1.1, base = y + 3.1;
    rule_words_drawn(flow, rule, y, true);
    sketch_words(flow_page(flow), FLOW_LEFT + ASKS_END, base,
                 text_print(flow->arena, "%s %s", rule->at_most ? "at most" : "at least",
                            unit_text(flow->arena, rule->value, rule->dimension, result->units)),
                 flow_plain(), ALIGN_RIGHT, INK_BLACK);
    sketch_words(flow_page(flow), FLOW_LEFT + HAS_END, base,
                 ruling->outcome == RULE_NOT_COMPUTED
                     ? "-"
                     : unit_text(flow->arena, ruling->value, rule->dimension, result->units),
                 flow_bold(), ALIGN_RIGHT, INK_BLACK);
    flow_words(flow, FLOW_LEFT + COMPARED, y, compared_wide, compared,
               ruling->outcome == RULE_FALLS_SHORT ? flow_bold() : flow_plain(), INK_BLACK, true);
    flow->y += height;
    flow_rule(flow);
}

void pages_rules(struct flow *flow, const struct result *result)
{
    static const enum rule_concern shown[] = {RULE_CONCERNS, RULE_NEEDS_DATE, RULE_FOR_COMPARISON};
    flow_heading(flow, "Measured against published rules", 45);
    flow_paragraph(flow, RULES_INTRODUCTION, flow_plain(), INK_DARK);
    rules_head(flow);
    for (size_t c = 0; c < sizeof shown / sizeof *shown; c++)
        for (int i = 0; i < result->rulings.count; i++)
            if (result->rulings.items[i].concern == shown[c])
                rule_row_drawn(flow, result, &result->rulings.items[i]);
    const char *elsewhere = rulings_elsewhere_words(flow->arena, result);
    if (elsewhere != NULL) {
        flow_skip(flow, 1.5);
        flow_paragraph(flow, elsewhere, flow_small(), INK_DARK);
    }
}
