#include "report/answers/answer_rules.h"

#include "base/text.h"
#include "report/answers/answers.h"
#include "report/words/rule_words.h"

static void add_ruling(struct document *into, const struct result *result,
                       const struct ruling *ruling)
{
    struct arena *arena = into->arena;
    const struct rule_row *rule = ruling->rule;
    document_words(into, rule->title)->indent = 1;
    const char *has =
        ruling->outcome == RULE_NOT_COMPUTED
            ? ruling_lack_words(arena, result->system, ruling)
            : text_print(arena, "%s, %s",
                         unit_text(arena, ruling->value, rule->dimension, result->units),
                         ruling_words(ruling));
    document_words(into, text_print(arena, "%s: asks for %s %s; this car: %s%s", rule->id,
                                    rule->at_most ? "at most" : "at least",
                                    unit_text(arena, rule->value, rule->dimension, result->units),
                                    has, ruling_assumed_words(ruling)))
        ->indent = 3;
    document_words(into,
                   text_print(arena, "%s, %s; %s. %s, %s (%s)", rule->where,
                              rule_dates(rule, arena), rule->scope, rule->source, rule->clause,
                              rule->known == RULE_READ ? "read" : "from memory"))
        ->indent = 3;
}

static void add_rulings_of(struct document *into, const struct result *result,
                           enum rule_concern concern, const char *heading)
{
    bool any = false;
    for (int i = 0; i < result->rulings.count; i++) {
        if (result->rulings.items[i].concern != concern)
            continue;
        if (!any)
            document_words(into, heading);
        any = true;
        add_ruling(into, result, &result->rulings.items[i]);
    }
}

void answer_all_rules(struct document *into, const struct result *result)
{
    document_head(into, 2, "Measured against published rules");
    document_words(into, RULES_INTRODUCTION);
    add_rulings_of(into, result, RULE_CONCERNS, "Of vehicles in use, its class and date:");
    add_rulings_of(into, result, RULE_NEEDS_DATE,
                   "Hang on [vehicle] first used, which is not said exactly enough:");
    add_rulings_of(
        into, result, RULE_FOR_COMPARISON,
        "For comparison (asked of new types in its day, or of a date that was not read):");
    const char *others = rulings_elsewhere_words(into->arena, result);
    if (others != NULL)
        document_words(into, others);
}

/* --- of one country -------------------------------------------------------------------------- */

static const char *car_words(struct arena *arena, const struct result *result,
                             const struct ruling *ruling)
{
    if (ruling->outcome == RULE_NOT_COMPUTED)
        return "-";
    return text_print(arena, "%s%s",
                      unit_text(arena, ruling->value, ruling->rule->dimension, result->units),
                      *ruling_assumed_words(ruling) != '\0' ? " *" : "");
}

static const char *verdict_words(const struct ruling *ruling)
{
    return ruling->outcome == RULE_NOT_COMPUTED ? "not computed" : ruling_words(ruling);
}

/* Whether a rule is for this car, or may be: of its class, and of its date or of one not said. */
static bool is_asked(const struct ruling *ruling)
{
    return ruling->concern == RULE_CONCERNS || ruling->concern == RULE_NEEDS_DATE ||
           ruling->concern == RULE_FOR_COMPARISON;
}

void answer_rules(struct document *into, const struct result *result, const char *country)
{
    static const struct table_column columns[] = {{"", CELL_WORDS, CELL_LEFT, 0, 0, false},
                                                  {"asks", CELL_FIGURE, CELL_LEFT, 0, 0, false},
                                                  {"car", CELL_FIGURE, CELL_RIGHT, 0, 0, false},
                                                  {"", CELL_WORDS, CELL_LEFT, 0, 0, false}};
    struct arena *arena = into->arena;
    document_head(into, 2, text_print(arena, "Published rules, %s", country));
    document_words(into, RULES_INTRODUCTION);
    struct table *table = document_table(into, columns, 4);
    for (int i = 0; i < result->rulings.count; i++) {
        const struct ruling *ruling = &result->rulings.items[i];
        const struct rule_row *rule = ruling->rule;
        if (!rule_is_of(rule, country) || !is_asked(ruling))
            continue;
        table_row(table);
        table_cell(table, text_print(arena, "%s [%s]", rule->title, rule->id));
        table_cell(table,
                   text_print(arena, "%s %s", rule->at_most ? "at most" : "at least",
                              unit_text(arena, rule->value, rule->dimension, result->units)));
        table_cell(table, car_words(arena, result, ruling));
        table_cell(table, text_print(arena, "%s%s", verdict_words(ruling),
                                     ruling->concern == RULE_CONCERNS ? "" : ", for comparison"));
    }
    if (table->count == 0)
        document_words(into, "None that was read is for a car of this kind and date.");
}
