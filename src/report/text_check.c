#include "report/text_report.h"

#include <stdio.h>
#include <string.h>

#include "report/rule_words.h"
#include "report/text_frame.h"

enum { TITLE_WIDTH = 40, VALUE_WIDTH = 14, RESTS_NAMED = 2 };

static void add_padded(struct text *into, const char *words, int width, bool right)
{
    int gap = width - text_letters(words);
    if (gap < 0)
        gap = 0;
    text_add(into, "%*s%s%*s", right ? gap : 0, "", words, right ? 0 : gap, "");
}

/* Title, value, whether it is computed or rests on something assumed; below them the id and what
 * the figure rests on or lacks. */
static void add_figure(struct text *into, const struct result *result, const struct figure *figure)
{
    struct arena *arena = into->arena;
    text_add(into, "  ");
    add_padded(into, figure->row->title, TITLE_WIDTH, false);
    add_padded(into,
               figure->state == FIGURE_NOT_COMPUTED
                   ? "not computed"
                   : figure_value_words(arena, figure, result->units),
               VALUE_WIDTH, true);
    text_add(into, "%s%s\n      ", figure->state == FIGURE_NOT_COMPUTED ? "" : "  ",
             figure_state_word(figure));
    const char *rests = figure_state_words(arena, result->system, figure, RESTS_NAMED);
    const char *colon = strchr(rests, ':');
    text_add_wrapped(into,
                     text_print(arena, "%s%s%s", figure->row->id,
                                figure->state == FIGURE_COMPUTED  ? ""
                                : figure->state == FIGURE_ASSUMED ? ": rests on"
                                                                  : ":",
                                figure->state == FIGURE_COMPUTED || colon == NULL ? "" : colon + 1),
                     6, 6, FRAME_WIDTH);
    const char *broken = figure_broken_words(arena, figure);
    if (broken == NULL)
        return;
    text_add(into, "      ");
    text_add_wrapped(into, text_print(arena, "LIMITS NOT MET: %s", broken), 6, 6, FRAME_WIDTH);
}

static void add_causes(struct text *into, const struct result *result, int circuit)
{
    struct text line = text_start(into->arena);
    const char *id = "";
    bool assumed = false;
    for (int i = 0; i < result->figures.count; i++) {
        const struct figure *figure = &result->figures.items[i];
        if (figure->row->scope != SCOPE_CAUSE || figure->subject != circuit ||
            figure->state == FIGURE_NOT_COMPUTED || figure->value == 0)
            continue;
        assumed = assumed || figure->state == FIGURE_ASSUMED;
        id = figure->row->id;
        text_add(&line, "%s%s %s", line.count > 0 ? ", " : "", cause_words((enum cause)figure->sub),
                 figure_value_words(into->arena, figure, result->units));
    }
    if (line.count == 0)
        return;
    text_add(into, "  ");
    text_add_wrapped(into,
                     text_print(into->arena, "Where it goes%s (%s): %s", assumed ? ", assumed" : "",
                                id, line.items),
                     2, 6, FRAME_WIDTH);
}

static const char *scope_heading(struct arena *arena, const struct figure *figure)
{
    if (figure->row->scope == SCOPE_CAR)
        return "The whole car";
    char *heading = text_copy(arena, figure->of);
    if (heading[0] >= 'a' && heading[0] <= 'z')
        heading[0] = (char)(heading[0] - 'a' + 'A');
    return heading;
}

/* Figures of one subject stand together under its name, in the order of the first of each. */
static void add_figures(struct text *into, const struct result *result)
{
    const struct figures *figures = &result->figures;
    bool *done = ARENA_ARRAY(into->arena, (size_t)figures->count + 1, bool);
    for (int i = 0; i < figures->count; i++) {
        const struct figure *first = &figures->items[i];
        if (done[i] || first->row->scope == SCOPE_CAUSE)
            continue;
        frame_heading(into, scope_heading(into->arena, first));
        for (int k = i; k < figures->count; k++) {
            const struct figure *figure = &figures->items[k];
            if (done[k] || figure->row->scope == SCOPE_CAUSE || strcmp(figure->of, first->of) != 0)
                continue;
            done[k] = true;
            add_figure(into, result, figure);
        }
        if (first->row->scope == SCOPE_CIRCUIT)
            add_causes(into, result, first->subject);
    }
}

static void add_finding(struct text *into, const struct result *result,
                        const struct finding *finding)
{
    struct arena *arena = into->arena;
    char signal[16];
    snprintf(signal, sizeof signal, "%s", severity_word(finding->severity));
    for (char *letter = signal; *letter != '\0'; letter++)
        *letter = (char)(*letter - 'a' + 'A');
    text_add(into, "%-8s %s", signal, finding->check->id);
    if (finding->place.line > 0)
        text_add(into, "  (%s:%d)", finding->place.file, finding->place.line);
    text_add(into, "\n");
    const char *parts[3] = {fill_words(arena, finding->check->what, finding->quantities,
                                       finding->quantity_count, result->units),
                            finding->check->why == NULL
                                ? NULL
                                : fill_words(arena, finding->check->why, finding->quantities,
                                             finding->quantity_count, result->units),
                            fill_words(arena, finding->check->remedy, finding->quantities,
                                       finding->quantity_count, result->units)};
    static const char *const labels[3] = {"", "Why: ", "Do: "};
    for (int i = 0; i < 3; i++) {
        if (parts[i] == NULL)
            continue;
        text_add(into, "    %s", labels[i]);
        text_add_wrapped(into, parts[i], 4 + (int)strlen(labels[i]), 4, FRAME_WIDTH);
    }
    text_add(into, "    Source: ");
    text_add_wrapped(into, finding->check->source, 12, 4, FRAME_WIDTH);
    if (finding->assumed)
        text_add(into, "    Rests on assumed values; see the figures above.\n");
}

static void add_ruling(struct text *into, const struct result *result, const struct ruling *ruling)
{
    struct arena *arena = into->arena;
    const struct rule_row *rule = ruling->rule;
    text_add(into, "  %s\n      ", rule->title);
    const char *asks =
        text_print(arena, "%s: asks for %s %s; this car: %s%s", rule->id,
                   rule->at_most ? "at most" : "at least",
                   unit_text(arena, rule->value, rule->dimension, result->units),
                   ruling->outcome == RULE_NOT_COMPUTED
                       ? ruling_lack_words(arena, result->system, ruling)
                       : text_print(arena, "%s, %s",
                                    unit_text(arena, ruling->value, rule->dimension, result->units),
                                    ruling_words(ruling)),
                   ruling_assumed_words(ruling));
    text_add_wrapped(into, asks, 6, 6, FRAME_WIDTH);
    text_add(into, "      ");
    text_add_wrapped(into,
                     text_print(arena, "%s, %s; %s. %s, %s (%s)", rule->where,
                                rule_dates(rule, arena), rule->scope, rule->source, rule->clause,
                                rule->known == RULE_READ ? "read" : "from memory"),
                     6, 6, FRAME_WIDTH);
}

static void add_rulings_of(struct text *into, const struct result *result,
                           enum rule_concern concern, const char *heading)
{
    bool any = false;
    for (int i = 0; i < result->rulings.count; i++) {
        if (result->rulings.items[i].concern != concern)
            continue;
        if (!any)
            text_add_wrapped(into, heading, 0, 0, FRAME_WIDTH);
        any = true;
        add_ruling(into, result, &result->rulings.items[i]);
    }
}

static void add_rules(struct text *into, const struct result *result)
{
    frame_heading(into, "Measured against published rules");
    text_add_wrapped(into, RULES_INTRODUCTION, 0, 0, FRAME_WIDTH);
    add_rulings_of(into, result, RULE_CONCERNS, "Of vehicles in use, its class and date:");
    add_rulings_of(into, result, RULE_NEEDS_DATE,
                   "Hang on [vehicle] first used, which is not said exactly enough:");
    add_rulings_of(
        into, result, RULE_FOR_COMPARISON,
        "For comparison (asked of new types in its day, or of a date that was not read):");
    const char *others = rulings_elsewhere_words(into->arena, result);
    if (others != NULL)
        text_add_wrapped(into, others, 0, 0, FRAME_WIDTH);
}

void text_check(struct text *into, const struct result *result)
{
    frame_title(into, result);
    add_figures(into, result);
    add_rules(into, result);
    frame_heading(into, "Findings, worst first");
    for (size_t i = 0; i < result->findings.count; i++)
        add_finding(into, result, &result->findings.items[i]);
    text_add(into, "\n%s\n%s\n", summary_words(into->arena, result),
             hoses_verdict_words(into->arena, &result->hoses));
    frame_deference(into);
}
