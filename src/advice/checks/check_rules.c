#include "advice/checks/checks.h"

#include <stddef.h>

#include "base/text.h"

static struct finding *add_ruling(struct checking *checking, const struct check_row *row,
                                  const struct ruling *ruling)
{
    const struct rule_row *rule = ruling->rule;
    int vehicle = system_first(checking->system, KIND_VEHICLE);
    struct finding *finding = finding_add(checking, row, vehicle, FIELD(as.vehicle.first_used));
    finding_text(finding, "rule", text_print(checking->arena, "%s (%s)", rule->title, rule->id));
    finding_text(finding, "where",
                 text_print(checking->arena, "%s, %s (%s)%s", rule->where,
                            rule_dates(rule, checking->arena), rule->scope,
                            rule->known == RULE_READ ? "" : "; the number is from memory"));
    if (ruling->rests_on != NULL)
        finding_rests_on(finding, ruling->rests_on);
    return finding;
}

/* Only rules for vehicles in use of its class and date: one for new types is no fault of an older
 * car. */
void check_rule_missed(struct checking *checking, const struct check_row *row)
{
    for (int i = 0; i < checking->rulings.count; i++) {
        const struct ruling *ruling = &checking->rulings.items[i];
        const struct rule_row *rule = ruling->rule;
        if (ruling->concern != RULE_CONCERNS || ruling->outcome != RULE_FALLS_SHORT)
            continue;
        struct finding *finding = add_ruling(checking, row, ruling);
        finding_text(finding, "compared", rule->at_most ? "at most" : "at least");
        finding_quantity(finding, "asks", rule->value, rule->dimension);
        finding_quantity(finding, "value", ruling->value, rule->dimension);
    }
}

/* Once, for all rules that hang on the date. */
void check_rule_needs_date(struct checking *checking, const struct check_row *row)
{
    struct text rules = text_start(checking->arena);
    for (int i = 0; i < checking->rulings.count; i++) {
        const struct ruling *ruling = &checking->rulings.items[i];
        if (ruling->concern == RULE_NEEDS_DATE)
            text_add(&rules, "%s%s", rules.count > 0 ? ", " : "", ruling->rule->id);
    }
    if (rules.count == 0)
        return;
    int vehicle = system_first(checking->system, KIND_VEHICLE);
    struct finding *finding = finding_add(checking, row, vehicle, FIELD(as.vehicle.first_used));
    finding_text(finding, "rules", rules.items);
}
