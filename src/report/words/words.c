#include "report/words/words.h"

#include <math.h>

#include "advice/figures/holds.h"
#include "base/text.h"
#include "units/unit.h"

const char *severity_word(enum severity severity)
{
    switch (severity) {
    case SEVERITY_NOTE:
        return "note";
    case SEVERITY_ADVICE:
        return "advice";
    case SEVERITY_WARNING:
        return "warning";
    case SEVERITY_DANGER:
        return "danger";
    }
    return "";
}

const char *cited_words(struct arena *arena, const struct system *system,
                        const struct cited_key *cited)
{
    if (cited->part < 0)
        return text_print(arena, "[vehicle] %s", cited->key->name);
    return text_print(arena, "[%s] %s", system->parts[cited->part].name, cited->key->name);
}

const char *cited_list(struct arena *arena, const struct system *system,
                       const struct cited_key *keys, int count, int most)
{
    struct text words = text_start(arena);
    for (int i = 0; i < count && i < most; i++)
        text_add(&words, "%s%s", i > 0 ? ", " : "", cited_words(arena, system, &keys[i]));
    if (count > most)
        text_add(&words, " and %d more", count - most);
    return words.items;
}

const char *figure_state_word(const struct figure *figure)
{
    switch (figure->state) {
    case FIGURE_COMPUTED:
        return "computed";
    case FIGURE_ASSUMED:
        return figure_mostly_assumed(figure) ? "mostly assumed" : "assumed";
    case FIGURE_NOT_COMPUTED:
        break;
    }
    return "";
}

const char *figure_state_words(struct arena *arena, const struct system *system,
                               const struct figure *figure, int most)
{
    switch (figure->state) {
    case FIGURE_COMPUTED:
        return "computed";
    case FIGURE_ASSUMED:
        return text_print(arena, "%s: %s", figure_state_word(figure),
                          cited_list(arena, system, figure->assumed, figure->assumed_count, most));
    case FIGURE_NOT_COMPUTED:
        if (figure->needs_count > 0)
            return text_print(arena, "not computed: needs %s",
                              cited_list(arena, system, figure->needs, figure->needs_count, most));
        return text_print(arena, "not computed: %s",
                          figure->reason != NULL ? figure->reason : "outside its limits");
    }
    return "";
}

const char *curve_lack_words(struct arena *arena, const struct system *system,
                             const struct car_curve *drawn)
{
    enum { MOST_NEEDS = 3 };
    if (drawn->needs_count == 0)
        return "not computed";
    return text_print(arena, "not computed: needs %s",
                      cited_list(arena, system, drawn->needs, drawn->needs_count, MOST_NEEDS));
}

const char *figure_broken_words(struct arena *arena, const struct figure *figure)
{
    size_t count;
    const struct hold_row *rows = hold_rows(&count);
    struct text words = text_start(arena);
    for (size_t i = 0; i < count; i++)
        if ((figure->holds_broken & rows[i].bit) != 0)
            text_add(&words, "%s%s", words.count > 0 ? "; " : "", rows[i].broken);
    return words.count > 0 ? words.items : NULL;
}

const char *figure_value_words(struct arena *arena, const struct figure *figure,
                               enum unit_system units)
{
    if (figure->state == FIGURE_NOT_COMPUTED || isnan(figure->value))
        return "-";
    if (figure->row->bore_like)
        return unit_show_bore(arena, figure->value, units);
    return unit_text(arena, figure->value, figure->row->dimension, units);
}

const char *comparing_words(enum comparing outcome)
{
    switch (outcome) {
    case COMPARED_AGREES:
        return "agrees";
    case COMPARED_OFF:
        return "off";
    case COMPARED_IMPOSSIBLE:
        return "not possible";
    case COMPARED_NOT:
        return "not computed";
    }
    return "";
}

const char *reading_words(struct arena *arena, const struct result *result,
                          const struct compared *compared)
{
    enum { MOST_LACKS = 3 };
    const struct figure *figure = compared->figure;
    const struct taken_reading *reading = compared->reading;
    enum dimension dimension = figure->row->dimension;
    const char *read = unit_text(arena, reading->value, dimension, result->units);
    if (!isnan(reading->effort.n))
        read = text_print(arena, "%s at %s", read,
                          unit_text(arena, reading->effort.n, DIMENSION_FORCE, result->units));
    if (compared->outcome == COMPARED_IMPOSSIBLE)
        return text_print(arena, "%s: not possible, %s is %s", read, compared->end_words,
                          unit_text(arena, compared->end, dimension, result->units));
    const struct hold_row *law = holds_broken_law(figure);
    if (compared->outcome == COMPARED_NOT)
        return text_print(arena, "%s; %s", read,
                          figure->state == FIGURE_NOT_COMPUTED
                              ? figure_state_words(arena, result->system, figure, MOST_LACKS)
                          : law != NULL
                              ? text_print(arena, "nothing to compare with: %s", law->broken)
                              : "not computed at that effort");
    const char *off = "";
    if (compared->outcome == COMPARED_OFF)
        off = text_print(
            arena, " by %s [reading-off]",
            unit_text(arena, fabs(reading->value - compared->computed), dimension, result->units));
    return text_print(arena, "%s; computed %s%s: %s%s", read,
                      unit_text(arena, compared->computed, dimension, result->units),
                      figure->state == FIGURE_ASSUMED ? " *" : "",
                      comparing_words(compared->outcome), off);
}

const char *hoses_verdict_words(struct arena *arena, const struct hose_list *hoses)
{
    switch (hoses->verdict) {
    case HOSES_COMPLETE:
        return text_print(arena, "Hoses: complete. %d needed, %d there, none old.", hoses->needed,
                          hoses->has);
    case HOSES_OLD_LEFT: {
        int left = hoses->old + hoses->unknown;
        const char *are = hoses->needed == 1 ? "The one there must be is there"
                          : hoses->needed == 0
                              ? "None must be there"
                              : text_print(arena, "All %d are there", hoses->needed);
        return text_print(arena, "Hoses: not complete. %s, but %d %s old or of unknown age.", are,
                          left, left == 1 ? "is" : "are");
    }
    case HOSES_MISSING:
        return text_print(arena, "Hoses: not complete. %d of %d missing.", hoses->missing,
                          hoses->needed);
    case HOSES_CANNOT_TELL:
        if (hoses->needs != NULL)
            return text_print(arena, "Hoses: cannot say: needs %s.", hoses->needs);
        return "Hoses: cannot say. What some parts are mounted on is not known.";
    }
    return "";
}

static const char *counted_words(enum severity severity, int count)
{
    switch (severity) {
    case SEVERITY_NOTE:
        return count == 1 ? "note" : "notes";
    case SEVERITY_ADVICE:
        return count == 1 ? "piece of advice" : "pieces of advice";
    case SEVERITY_WARNING:
        return count == 1 ? "warning" : "warnings";
    case SEVERITY_DANGER:
        return count == 1 ? "danger" : "dangers";
    }
    return "";
}

const char *summary_words(struct arena *arena, const struct result *result)
{
    int by_severity[SEVERITY_DANGER + 1] = {0};
    for (size_t i = 0; i < result->findings.count; i++)
        by_severity[result->findings.items[i].severity]++;
    int all = result->figures.count, lacking = 0;
    for (int i = 0; i < all; i++)
        lacking += result->figures.items[i].state == FIGURE_NOT_COMPUTED;
    if (result->findings.count == 0 && lacking == 0)
        return "Nothing found against this car on paper. Measuring and testing come next.";
    if (result->findings.count == 0)
        return text_print(arena,
                          "Nothing found in what could be worked out, %d of %d figures. Measuring "
                          "and testing come next.",
                          all - lacking, all);
    struct text words = text_start(arena);
    text_add(&words, "Found:");
    const char *join = "";
    for (int severity = SEVERITY_DANGER; severity >= SEVERITY_NOTE; severity--) {
        if (by_severity[severity] == 0)
            continue;
        text_add(&words, "%s %d %s", join, by_severity[severity],
                 counted_words((enum severity)severity, by_severity[severity]));
        join = ",";
    }
    text_add(&words, ".");
    if (lacking > 0)
        text_add(&words, " Not worked out: %d of %d figures.", lacking, all);
    return words.items;
}
