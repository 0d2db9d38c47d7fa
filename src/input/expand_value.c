#include "input/expand_value.h"

#include <math.h>
#include <string.h>

#include "base/text.h"
#include "input/value.h"
#include "units/number.h"
#include "units/unit.h"

/* Whether two doubles are the same, unknown ones included. */
static bool same(double a, double b)
{
    return (isnan(a) && isnan(b)) || !(a < b || a > b || isnan(a) || isnan(b));
}

static int bores_count(const struct part *part, const struct key *key)
{
    struct bores bores;
    memcpy(&bores, (const char *)part + key->field, sizeof bores);
    return bores.count;
}

/* Whether words read back to what the part holds. */
static bool says_the_same(const char *words, const struct part *part, const struct key *key,
                          double tolerance, struct arena *arena)
{
    struct messages messages = messages_start(arena);
    struct input input = {arena, &messages, ""};
    struct entry entry = {.key = {.text = key->name}, .value = {.text = words}};
    struct origin origin = {.tolerance = NAN};
    struct part again = *part;
    if (!value_read(key, &entry, &again, &origin, &input))
        return false;
    bool bores = key->form != FORM_BORES || bores_count(part, key) == bores_count(&again, key);
    return bores && same(key_value(&again, key), key_value(part, key)) &&
           same(origin.tolerance, tolerance);
}

/* The unit that is SI itself; else the first of the dimension. NULL for plain numbers. */
static const struct unit *plain_unit(enum dimension dimension)
{
    size_t count;
    const struct unit *units = unit_table(&count);
    const struct unit *first = NULL;
    for (size_t i = 0; i < count; i++) {
        if (units[i].dimension != dimension)
            continue;
        bool is_si = same(units[i].factor, 1) && same(units[i].offset, 0);
        if (is_si)
            return &units[i];
        if (!first)
            first = &units[i];
    }
    return dimension == DIMENSION_SHARE ? NULL : first;
}

/* A number in a unit, with the fewest decimals that read back to it. */
static const char *measure(double si, enum dimension dimension, struct arena *arena)
{
    enum { MOST_DECIMALS = 30 };
    const struct unit *unit = plain_unit(dimension);
    double number = unit ? (si - unit->offset) / unit->factor : si;
    const char *words = "?";
    for (int decimals = 0; decimals <= MOST_DECIMALS; decimals++) {
        words = number_print(arena, number, decimals);
        if (unit)
            words = text_print(arena, "%s %s", words, unit->name);
        struct reading reading = unit_read(words, dimension);
        if (reading.outcome == READING_FINE && same(reading.value, si))
            break;
    }
    return words;
}

static const char *measured(const struct part *part, const struct key *key,
                            const struct origin *origin, struct arena *arena)
{
    double value = key_value(part, key);
    if (origin->text && says_the_same(origin->text, part, key, origin->tolerance, arena))
        return origin->text;
    const char *words = measure(value, key->dimension, arena);
    if (key->form == FORM_BORES)
        words = text_print(arena, "%d of %s", bores_count(part, key), words);
    if (!isnan(origin->tolerance))
        words =
            text_print(arena, "%s ± %s", words, measure(origin->tolerance, key->dimension, arena));
    return words;
}

static const char *listed(const struct part *part, const struct key *key, struct arena *arena)
{
    struct part_names names;
    memcpy(&names, (const char *)part + key->field, sizeof names);
    struct text list = text_start(arena);
    for (size_t i = 0; i < names.count; i++)
        text_add(&list, "%s%s", i > 0 ? ", " : "", names.names[i]);
    return list.items;
}

const char *expand_value(const struct system *system, const struct part *part,
                         const struct key *key, struct arena *arena)
{
    if (!key_said(part, key))
        return NULL;
    const struct origin *origin = &part->origins[key_index(part->kind, key)];
    const char *text;
    struct date date;
    char day[16];
    switch (key->form) {
    case FORM_QUANTITY:
    case FORM_BORES:
        return measured(part, key, origin, arena);
    case FORM_COUNT:
        return text_print(arena, "%.0f", key_value(part, key));
    case FORM_CHOICE:
        return choice_of_value(key, (int)key_value(part, key))->word;
    case FORM_TEXT:
        memcpy(&text, (const char *)part + key->field, sizeof text);
        return text;
    case FORM_DATE:
        memcpy(&date, (const char *)part + key->field, sizeof date);
        date_write(date, day);
        return text_copy(arena, day);
    case FORM_PART:
        return system->parts[(int)key_value(part, key)].name;
    case FORM_PARTS:
    case FORM_WORDS:
        return listed(part, key, arena);
    }
    return NULL;
}
