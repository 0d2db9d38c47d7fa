#include "advice/result.h"

#include <math.h>
#include <stddef.h>
#include <string.h>

#include "advice/common/phrases.h"
#include "base/text.h"

enum { MOST_QUANTITIES = 32 };

static const char *quantity_text(struct arena *arena, const struct named_quantity *quantity,
                                 enum unit_system units)
{
    if (quantity->text != NULL) {
        return quantity->text;
    }
    if (quantity->bore_like) {
        return unit_show_bore(arena, quantity->value, units);
    }
    return unit_text(arena, quantity->value, quantity->dimension, units);
}

static const struct named_quantity *quantity_named(const struct named_quantity *quantities,
                                                   int count, const char *name, size_t length)
{
    for (int i = 0; i < count; i++) {
        if (strlen(quantities[i].name) == length &&
            strncmp(quantities[i].name, name, length) == 0) {
            return &quantities[i];
        }
    }
    return NULL;
}

const char *fill_words(struct arena *arena, const char *words,
                       const struct named_quantity *quantities, int count, enum unit_system units)
{
    struct text filled = text_start(arena);
    while (*words != '\0') {
        const char *open = strchr(words, '{');
        const char *close = open == NULL ? NULL : strchr(open, '}');
        if (close == NULL) {
            break;
        }
        const struct named_quantity *quantity =
            quantity_named(quantities, count, open + 1, (size_t)(close - open - 1));
        text_add_bytes(&filled, words, (size_t)(open - words));
        if (quantity == NULL) {
            text_add_bytes(&filled, open, (size_t)(close - open + 1));
        } else {
            text_add(&filled, "%s", quantity_text(arena, quantity, units));
        }
        words = close + 1;
    }
    text_add(&filled, "%s", words);
    return filled.items;
}

/* The quantities of a step under the names that its row uses. */
struct step_names {
    struct named_quantity items[MOST_QUANTITIES];
    int count;
};

static void add_text(struct step_names *names, const char *name, const char *text)
{
    if (text != NULL) {
        names->items[names->count++] = (struct named_quantity){.name = name, .text = text};
    }
}

static void add_value(struct step_names *names, const char *name, double value,
                      enum dimension dimension)
{
    if (!isnan(value)) {
        names->items[names->count++] =
            (struct named_quantity){.name = name, .value = value, .dimension = dimension};
    }
}

/* "12 to 18 N m" */
static const char *tight_text(struct arena *arena, const struct step *step, enum unit_system units)
{
    if (isnan(step->torque.nm)) {
        return NULL;
    }
    const char *range = unit_text(arena, step->torque.nm, DIMENSION_TORQUE, units);
    if (step->torque_most.nm > step->torque.nm) {
        const char *most = unit_text(arena, step->torque_most.nm, DIMENSION_TORQUE, units);
        range = text_print(arena, "%.*s to %s", (int)strcspn(range, " "), range, most);
    }
    return range;
}

static const char *torque_text(struct arena *arena, const struct step *step, enum unit_system units)
{
    const char *range = tight_text(arena, step, units);
    return range == NULL
               ? NULL
               : text_print(arena, "%s for %s (%s)", range, step->torque_for, step->torque_source);
}

static const char *date_text(struct arena *arena, struct date date)
{
    if (!date_known(date)) {
        return NULL;
    }
    char *words = arena_new(arena, 16);
    date_write(date, words);
    return words;
}

/* What is not known must not come out as a mark of its absence. */
static const char *volume_text(struct arena *arena, const struct step *step, enum unit_system units)
{
    if (isnan(step->volume.m3)) {
        return "what the pipes and the chamber hold (lengths are missing)";
    }
    return text_print(arena, "%s%s", unit_text(arena, step->volume.m3, DIMENSION_VOLUME, units),
                      step->volume_assumed ? " (assumed)" : "");
}

/* What the lines of a pedal that is held are to stand, or why that is not said. */
static const char *lines_text(struct arena *arena, const struct step *step, enum unit_system units)
{
    if (step->text != NULL) {
        return text_print(arena, " %s", step->text);
    }
    double pressure = step_said(step, "pressure");
    if (isnan(pressure)) {
        return "";
    }
    return text_print(arena, " Computed: up to %s in the lines%s.",
                      unit_text(arena, pressure, DIMENSION_PRESSURE, units),
                      step->pressure_assumed ? " (assumed)" : "");
}

static const char *strokes_text(struct arena *arena, const struct step *step)
{
    if (isnan(step->strokes)) {
        return "as many strokes as it takes";
    }
    return text_print(arena, "about %.0f stroke%s", step->strokes, step->strokes < 1.5 ? "" : "s");
}

const char *step_words(struct arena *arena, const struct result *result, const struct step *step,
                       const char *words)
{
    struct step_names names = {.count = 0};
    enum unit_system units = result->units;
    if (words == NULL) {
        return NULL;
    }
    if (step->part >= 0) {
        struct nipple nipple = {step->part, step->nipple};
        add_text(&names, "part", result->system->parts[step->part].name);
        add_text(&names, "cylinder", cylinder_words(arena, &result->system->parts[step->part]));
        add_text(&names, "nipple", nipple_words(result->system, nipple, arena));
    }
    if (step->circuit >= 0) {
        add_text(&names, "circuit", result->network->circuits[step->circuit].name);
    }
    add_text(&names, "text", step->text);
    add_text(&names, "place", step->place_words);
    add_text(&names, "plug",
             step->plug == NULL
                 ? ""
                 : text_print(arena, " Plug the open end of the %s at once.", step->plug));
    add_text(&names, "volume", volume_text(arena, step, units));
    add_text(&names, "lines", lines_text(arena, step, units));
    add_text(&names, "strokes", strokes_text(arena, step));
    add_text(&names, "torque", torque_text(arena, step, units));
    add_text(&names, "tight", tight_text(arena, step, units));
    add_text(&names, "date", date_text(arena, step->date));
    add_value(&names, "run", step->run.m, DIMENSION_LENGTH);
    for (int i = 0; i < step->quantity_count; i++) {
        names.items[names.count++] = step->quantities[i];
    }
    return fill_words(arena, words, names.items, names.count, units);
}
