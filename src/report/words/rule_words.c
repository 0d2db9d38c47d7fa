#include "report/words/rule_words.h"

#include <string.h>

#include "base/text.h"
#include "report/words/words.h"

const char *ruling_words(const struct ruling *ruling)
{
    switch (ruling->outcome) {
    case RULE_MEETS:
        return "meets the number";
    case RULE_FALLS_SHORT:
        return "falls short";
    case RULE_NOT_COMPUTED:
        break;
    }
    return "not computed";
}

const char *ruling_concern_words(enum rule_concern concern)
{
    switch (concern) {
    case RULE_CONCERNS:
        return "concerns it";
    case RULE_FOR_COMPARISON:
        return "for comparison";
    case RULE_OTHER_DATE:
        return "of another date";
    case RULE_NEEDS_DATE:
        return "needs the date of first use";
    case RULE_OTHER_CLASS:
        return "of another class";
    case RULE_SPARES:
        return "spared";
    }
    return "";
}

const char *ruling_assumed_words(const struct ruling *ruling)
{
    if (ruling->outcome == RULE_NOT_COMPUTED || ruling->rests_on == NULL ||
        ruling->rests_on->state != FIGURE_ASSUMED)
        return "";
    return figure_mostly_assumed(ruling->rests_on) ? ", mostly assumed" : ", assumed";
}

const char *ruling_lack_words(struct arena *arena, const struct system *system,
                              const struct ruling *ruling)
{
    enum { MOST_NEEDS = 3 };
    if (ruling->rests_on == NULL || ruling->rests_on->state != FIGURE_NOT_COMPUTED)
        return ruling->rule->lacks != NULL
                   ? text_print(arena, "cannot say: %s", ruling->rule->lacks)
                   : "not computed";
    return figure_state_words(arena, system, ruling->rests_on, MOST_NEEDS);
}

const char *rulings_elsewhere_words(struct arena *arena, const struct result *result)
{
    struct text words = text_start(arena);
    for (int i = 0; i < result->rulings.count; i++) {
        const struct ruling *ruling = &result->rulings.items[i];
        const char *why = ruling->concern == RULE_OTHER_DATE ? rule_dates(ruling->rule, arena)
                          : ruling->concern == RULE_SPARES   ? ruling->why
                                                             : NULL;
        if (why != NULL)
            text_add(&words, "%s%s (%s)",
                     words.count > 0 ? ", " : "Not of this car: ", ruling->rule->id, why);
    }
    if (words.count > 0)
        text_add(&words, ".");
    return words.count > 0 ? words.items : NULL;
}

bool rule_is_of(const struct rule_row *rule, const char *country)
{
    size_t length = strlen(country), where = strlen(rule->where);
    bool state = text_begins(rule->where, country) && rule->where[length] == ',';
    bool above =
        length > where + 2 && text_ends(country, rule->where) && country[length - where - 2] == ',';
    return text_same(rule->where, country) || state || above;
}

const char *rule_countries(struct arena *arena)
{
    size_t count;
    const struct rule_row *rows = rule_rows(&count);
    struct text words = text_start(arena);
    for (size_t i = 0; i < count; i++) {
        bool again = false;
        for (size_t k = 0; k < i; k++)
            again = again || strcmp(rows[k].where, rows[i].where) == 0;
        if (!again)
            text_add(&words, "%s\"%s\"", words.count > 0 ? ", " : "", rows[i].where);
    }
    return words.items;
}
