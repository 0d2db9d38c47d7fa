#include "report/words/input_words.h"

#include <math.h>
#include <string.h>

#include "base/text.h"
#include "report/words/words.h"

const char *key_value_words(struct arena *arena, const struct key *key, double value,
                            enum unit_system units)
{
    if (isnan(value))
        return "not known";
    if (key->form == FORM_CHOICE) {
        const struct choice *choice = choice_of_value(key, (int)value);
        return choice != NULL ? choice->word : "not said";
    }
    if (key->form == FORM_COUNT)
        return text_print(arena, "%.0f", value);
    if (key->form == FORM_BORES)
        return unit_show_bore(arena, value, units);
    return unit_text(arena, value, key->dimension, units);
}

/* Whether two texts end with the same unit, or are plain numbers. */
static bool same_unit(const char *written, const char *shown)
{
    const char *a = strrchr(written, ' '), *b = strrchr(shown, ' ');
    return (a == NULL && b == NULL) || (a != NULL && b != NULL && text_same(a, b));
}

const char *input_value_words(struct arena *arena, const struct trace_input *input,
                              enum unit_system units)
{
    const char *shown = key_value_words(arena, input->cited.key, input->value, units);
    const char *written = input->origin.text;
    if (input->origin.kind == ORIGIN_ASSUMED || written == NULL ||
        input->cited.key->form == FORM_CHOICE)
        return shown;
    if (same_unit(written, shown))
        return written;
    return text_print(arena, "%s (%s)", written, shown);
}

const char *origin_words(enum origin_kind kind)
{
    switch (kind) {
    case ORIGIN_NONE:
        return "not said";
    case ORIGIN_GIVEN:
        return "given";
    case ORIGIN_SHARED:
        return "given for several";
    case ORIGIN_WORK:
        return "taken from a work file";
    case ORIGIN_ASSUMED:
        return "assumed";
    case ORIGIN_DERIVED:
        return "follows from other words";
    case ORIGIN_ASKED:
        return "asked for";
    }
    return "";
}

const char *place_words(struct arena *arena, struct place place)
{
    if (place.file == NULL || place.line <= 0)
        return "";
    return text_print(arena, "%s:%d", place.file, place.line);
}

const char *change_words(struct arena *arena, const struct figure *figure, double now,
                         enum unit_system units)
{
    if (isnan(now))
        return "no figure";
    if (now == figure->value)
        return "no change";
    if (!(fabs(figure->value) > 0)) {
        struct figure moved = *figure;
        moved.value = now;
        return text_print(arena, "becomes %s", figure_value_words(arena, &moved, units));
    }
    double part = 100 * (now - figure->value) / fabs(figure->value);
    double size = fabs(part);
    if (size < 0.001)
        return part > 0 ? "less than +0.001 %" : "less than -0.001 %";
    return text_print(arena, "%+.*f %%",
                      size < 0.01  ? 3
                      : size < 10  ? 2
                      : size < 100 ? 1
                                   : 0,
                      part);
}
