#include "report/sheet/parts_of_sheet.h"

#include "base/text.h"
#include "report/answers/answer_figures.h"
#include "report/answers/answer_findings.h"
#include "report/answers/answer_rules.h"
#include "report/answers/answer_steps.h"
#include "report/answers/answers.h"
#include "report/words/rule_words.h"

static void put_curves(struct document *into, const struct sheet_order *order)
{
    document_head(into, 2, "Travel against effort");
    document_picture(into, "pedal", 0.34);
    document_head(into, 2, "What takes the travel");
    document_picture(into, "causes", 0.3);
    document_head(into, 2, "Air that is left against fluid drawn off");
    document_picture(into, "air", 0.34);
    if (order->result->curves != NULL)
        answer_curve(into, order->result, false);
}

static void put_rules(struct document *into, const struct sheet_order *order)
{
    if (order->country != NULL)
        answer_rules(into, order->result, order->country);
    else
        answer_all_rules(into, order->result);
}

static void put_figures(struct document *into, const struct sheet_order *order)
{
    answer_all_figures(into, order->result);
}

static void put_findings(struct document *into, const struct sheet_order *order)
{
    answer_findings_in_full(into, order->result);
}

static void put_ways(struct document *into, const struct sheet_order *order)
{
    answer_ways(into, order->result);
}

static void put_cautions(struct document *into, const struct sheet_order *order)
{
    answer_cautions(into, order->result, ~0u, true);
}

static void put_steps(struct document *into, const struct sheet_order *order)
{
    for (int phase = 0; phase < PHASE_COUNT; phase++) {
        struct steps steps =
            plan_phases(order->result->plan, (enum step_phase)phase, (enum step_phase)phase);
        answer_steps(into, order->result, phase_words((enum step_phase)phase), &steps);
    }
}

static const struct {
    const char *word;
    const char *title; /* what its sides are called */
    void (*put)(struct document *into, const struct sheet_order *order);
} rows[ANNEX_COUNT] = {
    [ANNEX_FIGURES] = {"figures", "figures", put_figures},
    [ANNEX_FINDINGS] = {"findings", "findings", put_findings},
    [ANNEX_CURVES] = {"curves", "curves", put_curves},
    [ANNEX_RULES] = {"rules", "published rules", put_rules},
    [ANNEX_WAYS] = {"ways", "ways of bleeding", put_ways},
    [ANNEX_CAUTIONS] = {"cautions", "cautions", put_cautions},
    [ANNEX_STEPS] = {"steps", "every step", put_steps},
};

const char *annex_word(enum annex annex)
{
    return rows[annex].word;
}

void sheet_annexes(struct document *into, const struct sheet_order *order)
{
    for (int i = 0; i < ANNEX_COUNT; i++) {
        if ((order->annexes & 1u << i) == 0)
            continue;
        document_turn(into, rows[i].title)->tone = TONE_SMALL;
        rows[i].put(into, order);
    }
}
