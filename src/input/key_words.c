#include "input/key_words.h"

#include <math.h>
#include <string.h>

#include "base/text.h"
#include "units/unit.h"

const char *key_choice_words(struct arena *arena, const struct key *key)
{
    struct text words = text_start(arena);
    for (const struct choice *choice = key->choices; choice != NULL && choice->word; choice++)
        text_add(&words, "%s%s", words.count > 0 ? ", " : "", choice->word);
    return words.items;
}

const char *key_form_words(struct arena *arena, const struct key *key)
{
    switch (key->form) {
    case FORM_QUANTITY:
        return dimension_words(key->dimension);
    case FORM_BORES:
        return "a count and a length";
    case FORM_COUNT:
        return "a whole number";
    case FORM_CHOICE:
        return text_print(arena, "one of: %s", key_choice_words(arena, key));
    case FORM_TEXT:
        return "free words";
    case FORM_DATE:
        return "a date";
    case FORM_PART:
        return "the name of a part";
    case FORM_PARTS:
        return "names of parts";
    case FORM_WORDS:
        return "names, with commas";
    }
    return "";
}

/* A quantity without the zeros at the end of its number: "20 kg" for "20.0 kg". */
static const char *short_text(struct arena *arena, double si, enum dimension dimension)
{
    struct shown shown = unit_show(arena, si, dimension, UNITS_METRIC);
    size_t length = strlen(shown.number);
    if (strchr(shown.number, '.') != NULL) {
        while (shown.number[length - 1] == '0')
            length--;
        if (shown.number[length - 1] == '.')
            length--;
    }
    return text_print(arena, "%.*s%s%s", (int)length, shown.number,
                      shown.unit[0] != '\0' ? " " : "", shown.unit);
}

/* A value as the form of the key has it. */
static const char *value_words(struct arena *arena, const struct key *key, double value)
{
    if (key->form == FORM_COUNT)
        return text_print(arena, "%d", (int)value);
    if (key->form == FORM_CHOICE)
        return choice_of_value(key, (int)value)->word;
    return short_text(arena, value, key->dimension);
}

static const char *range_words(struct arena *arena, const struct key *key, double low, double high)
{
    if (isnan(low) || isnan(high))
        return "";
    return text_print(arena, "%s to %s", value_words(arena, key, low),
                      value_words(arena, key, high));
}

const char *key_limit_words(struct arena *arena, const struct key *key)
{
    return range_words(arena, key, key->least, key->most);
}

const char *key_usual_words(struct arena *arena, const struct key *key)
{
    return range_words(arena, key, key->usual_least, key->usual_most);
}

const char *key_unsaid_words(struct arena *arena, const struct key *key)
{
    if (key->required)
        return "must be given";
    if (key->assume_by != NULL)
        return key->assumed_source;
    if (isnan(key->assumed))
        return "";
    return text_print(arena, "%s (%s)", value_words(arena, key, key->assumed), key->assumed_source);
}
