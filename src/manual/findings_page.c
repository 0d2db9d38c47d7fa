#include "manual/findings_page.h"

#include <string.h>

#include "advice/result.h"
#include "report/words/words.h"
#include "parts/words.h"
#include "units/unit.h"

enum { WIDTH = 78 };

static void add_checks(struct text *into)
{
    size_t count;
    const struct check_row *rows = check_rows(&count);
    text_add(into,
             "## Findings\n\nWorst first. `danger`: do not drive. `warning`: before the road. "
             "`advice`: when there\nis time. `note`: good to know.\n");
    for (int severity = SEVERITY_DANGER; severity >= SEVERITY_NOTE; severity--)
        for (size_t i = 0; i < count; i++) {
            if ((int)rows[i].severity != severity)
                continue;
            text_add(into, "\n### %s\n\n%s. %s\n", rows[i].id, severity_word(rows[i].severity),
                     rows[i].what);
            if (rows[i].why != NULL)
                text_add(into, "Why: %s\n", rows[i].why);
            text_add(into, "Do: %s\n", rows[i].remedy);
            if (rows[i].limit != NULL)
                text_add(into, "Limit: [%s](#%s).\n", rows[i].limit, rows[i].limit);
            text_add(into, "Source: %s.\n", rows[i].source);
        }
}

static const char *limit_words(struct arena *arena, const struct limit_row *row)
{
    return unit_text(arena, row->value, row->dimension, UNITS_METRIC);
}

static void add_limits(struct text *into)
{
    size_t count;
    const struct limit_row *rows = limit_rows(&count);
    text_add(into, "\n## Limits behind the verdicts\n");
    for (size_t i = 0; i < count; i++)
        text_add(into, "\n### %s\n\n%s: %s.\nSource: %s.\n", rows[i].id, rows[i].words,
                 limit_words(into->arena, &rows[i]), rows[i].source);
}

static void add_rules(struct text *into)
{
    size_t count;
    const struct rule_row *rows = rule_rows(&count);
    text_add(into,
             "\n## Published rules\n\nNumbers that cars are measured against on paper. None of "
             "them decides here what an inspection\nwould say. Rows marked \"from memory\" "
             "were not read for this table.\n\n| id | what | asks for | first used | where and "
             "how | source |\n| --- | --- | --- | --- | --- | --- |\n");
    for (size_t i = 0; i < count; i++)
        text_add(into, "| %s | %s | %s %s | %s | %s, %s: %s | %s, %s (%s) |\n", rows[i].id,
                 rows[i].title, rows[i].at_most ? "at most" : "at least",
                 unit_text(into->arena, rows[i].value, rows[i].dimension, UNITS_METRIC),
                 rule_dates(&rows[i], into->arena), rows[i].where,
                 rows[i].occasion == RULE_IN_USE ? "vehicles in use"
                                                 : "new types, or a date not read",
                 rows[i].scope, rows[i].source, rows[i].clause,
                 rows[i].known == RULE_READ ? "read" : "from memory");
}

static void add_figures(struct text *into)
{
    size_t count;
    const struct figure_row *rows = figure_rows(&count);
    text_add(into, "\n## Figures\n\n| id | figure | how | holds within |\n| --- | --- | --- | --- "
                   "|\n");
    for (size_t i = 0; i < count; i++)
        text_add(into, "| [%s](physics.md#%s) | %s | %s | %s |\n", rows[i].id, rows[i].anchor,
                 rows[i].title, rows[i].formula != NULL ? rows[i].formula : "",
                 rows[i].limits != NULL ? rows[i].limits : "");
}

static void add_reasons(struct text *into)
{
    size_t count;
    const struct reason_row *rows = reason_rows(&count);
    text_add(into,
             "\n## Why a nipple comes where it comes\n\n| id | reason | source |\n| --- | --- "
             "| --- |\n");
    for (size_t i = 0; i < count; i++)
        text_add(into, "| %s | %s | %s |\n", rows[i].id, rows[i].words, rows[i].source);
}

static void add_steps(struct text *into)
{
    size_t count;
    const struct step_row *rows = step_rows(&count);
    text_add(into, "\n## Steps\n\n| id | words | why | undone by | source |\n"
                   "| --- | --- | --- | --- | --- |\n");
    for (size_t i = 0; i < count; i++)
        text_add(into, "| %s | %s | %s | %s | %s |\n", rows[i].id, rows[i].words,
                 rows[i].why != NULL ? rows[i].why : "",
                 rows[i].undo[0] != STEP_NONE ? step_row_of(rows[i].undo[0])->id : "",
                 rows[i].source != NULL ? rows[i].source : "");
}

static void add_cautions(struct text *into)
{
    size_t count;
    const struct caution_row *rows = caution_rows(&count);
    text_add(into, "\n## Cautions\n");
    for (size_t i = 0; i < count; i++)
        text_add(into, "\n- **%s. %s** (%s): %s %s\n", rows[i].signal, rows[i].hazard, rows[i].id,
                 rows[i].harm, rows[i].avoid);
    text_add(into, "\n%s\n", caution_deference());
}

void findings_page(struct text *into)
{
    text_add(into, "# Findings, limits, figures, steps, cautions\n\n"
                   "Printed by `firmpedal page findings` from the tables that the program itself "
                   "walks; do not\nedit. Words in braces are filled in for the car at hand. "
                   "`firmpedal explain ID` says the same.\n\n");
    add_checks(into);
    add_limits(into);
    add_rules(into);
    add_figures(into);
    add_reasons(into);
    add_steps(into);
    add_cautions(into);
}

static void add_labelled(struct text *into, const char *label, const char *words)
{
    if (words == NULL)
        return;
    text_add(into, "  %s: ", label);
    text_add_wrapped(into, words, text_letters(label) + 4, 4, WIDTH);
}

/* What stands for a slot where there is no car to fill it. */
static const char *slot_words(struct arena *arena, const char *slot, const struct check_row *check)
{
    static const struct {
        const char *slots, *words;
    } rows[] = {
        {"part, nipple, circuit, cylinder, axle, reservoir, figure, rule, rules, plug", NULL},
        {"other, twin", "other part"},
        {"date, was", "such a date"},
        {"where", "at such a place"},
        {"reason, hint", "for such a reason"},
        {"grade, found", "such a fluid"},
        {"years, clicks, strokes, ports, trips", "so many"},
        {"text", "the parts concerned"},
    };
    size_t count;
    const struct limit_row *limits = limit_rows(&count);
    for (size_t i = 0; check != NULL && check->limit != NULL && i < count; i++)
        if (words_among(slot, "most, least, limit") && text_same(limits[i].id, check->limit))
            return limit_words(arena, &limits[i]);
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
        if (words_among(slot, rows[i].slots))
            return rows[i].words != NULL ? rows[i].words : slot;
    return "so much";
}

/* Words of a table without the slots that only a car can fill: check's own limit is filled in. */
static const char *without_slots(struct arena *arena, const char *words,
                                 const struct check_row *check)
{
    struct text plain = text_start(arena);
    if (words == NULL)
        return NULL;
    for (const char *slot; (slot = strchr(words, '{')) != NULL;) {
        const char *end = strchr(slot, '}');
        if (end == NULL)
            break;
        text_add_bytes(&plain, words, (size_t)(slot - words));
        const char *name = text_copy_part(arena, slot + 1, (size_t)(end - slot - 1));
        text_add(&plain, "%s", slot_words(arena, name, check));
        words = end + 1;
    }
    text_add(&plain, "%s", words);
    return plain.items;
}

bool findings_explain(struct text *into, const char *id)
{
    struct arena *arena = into->arena;
    const struct check_row *check = check_row(id);
    const struct figure_row *figure = figure_row(id);
    const struct reason_row *reason = reason_row(id);
    const struct step_row *step = step_row(id);
    bool known = false;
    if (check != NULL) {
        text_add(into, "%s, a finding (%s)\n", check->id, severity_word(check->severity));
        add_labelled(into, "what", without_slots(arena, check->what, check));
        add_labelled(into, "why", without_slots(arena, check->why, check));
        add_labelled(into, "do", without_slots(arena, check->remedy, check));
        add_labelled(into, "limit", check->limit);
        add_labelled(into, "source", check->source);
        known = true;
    }
    if (figure != NULL) {
        text_add(into, "%s, a figure: %s\n", figure->id, figure->title);
        add_labelled(into, "how", figure->formula);
        add_labelled(into, "holds within", figure->limits);
        add_labelled(into, "how to read it at the car",
                     reading_row(figure->id) != NULL ? reading_row(figure->id)->key.help : NULL);
        add_labelled(into, "more", text_print(into->arena, "docs/physics.md#%s", figure->anchor));
        known = true;
    }
    size_t count;
    const struct limit_row *limits = limit_rows(&count);
    for (size_t i = 0; i < count; i++) {
        if (!text_same(limits[i].id, id))
            continue;
        text_add(into, "%s, a limit: %s\n", limits[i].id, limit_words(into->arena, &limits[i]));
        add_labelled(into, "what", limits[i].words);
        add_labelled(into, "source", limits[i].source);
        known = true;
    }
    const struct rule_row *rule = rule_row(id);
    if (rule != NULL) {
        text_add(into, "%s, a published rule: %s %s\n", rule->id,
                 rule->at_most ? "at most" : "at least",
                 unit_text(into->arena, rule->value, rule->dimension, UNITS_METRIC));
        add_labelled(into, "what", rule->title);
        add_labelled(into, "of",
                     text_print(into->arena, "%s, %s, %s", rule->where,
                                rule->occasion == RULE_IN_USE ? "vehicles in use"
                                                              : "new types, or a date not read",
                                rule_dates(rule, into->arena)));
        add_labelled(into, "how", rule->scope);
        add_labelled(into, "source",
                     text_print(into->arena, "%s, %s (%s)", rule->source, rule->clause,
                                rule->known == RULE_READ ? "read" : "from memory"));
        known = true;
    }
    if (reason != NULL) {
        text_add(into, "%s, a reason for the place of a nipple in the order\n", reason->id);
        add_labelled(into, "words", without_slots(arena, reason->words, NULL));
        add_labelled(into, "source", reason->source);
        known = true;
    }
    if (step != NULL) {
        text_add(into, "%s, a step\n", step->id);
        add_labelled(into, "words", without_slots(arena, step->words, NULL));
        add_labelled(into, "why", without_slots(arena, step->why, NULL));
        add_labelled(into, "undone by", step_row_of(step->undo[0])->id);
        add_labelled(into, "source", step->source);
        known = true;
    }
    return known;
}

const char *const *findings_ids(struct arena *arena, size_t *count)
{
    size_t checks, figures, limits, reasons, rules, steps;
    const struct check_row *check = check_rows(&checks);
    const struct figure_row *figure = figure_rows(&figures);
    const struct limit_row *limit = limit_rows(&limits);
    const struct reason_row *reason = reason_rows(&reasons);
    const struct step_row *step = step_rows(&steps);
    const struct rule_row *rule = rule_rows(&rules);
    const char **ids =
        ARENA_ARRAY(arena, checks + figures + limits + reasons + rules + steps + 1, const char *);
    size_t n = 0;
    for (size_t i = 0; i < checks; i++)
        ids[n++] = check[i].id;
    for (size_t i = 0; i < figures; i++)
        ids[n++] = figure[i].id;
    for (size_t i = 0; i < limits; i++)
        ids[n++] = limit[i].id;
    for (size_t i = 0; i < reasons; i++)
        ids[n++] = reason[i].id;
    for (size_t i = 0; i < rules; i++)
        ids[n++] = rule[i].id;
    for (size_t i = 0; i < steps; i++)
        ids[n++] = step[i].id;
    *count = n;
    return ids;
}
