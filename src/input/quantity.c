#include "input/quantity.h"

#include <math.h>
#include <string.h>

#include "base/text.h"
#include "units/unit.h"

/* Of "about 2.9 m", give or take. */
#define ABOUT_SHARE 0.2

/* The value with a point in place of its first comma. */
static char *with_point(struct arena *arena, const char *text)
{
    char *copy = text_copy(arena, text);
    char *comma = strchr(copy, ',');
    if (comma)
        *comma = '.';
    return copy;
}

/* The value with other letters in place of the offending ones. */
static char *with_unit(struct arena *arena, const char *text, const struct reading *reading)
{
    return text_print(arena, "%.*s%s%s", (int)reading->start, text, reading->nearest,
                      text + reading->start + reading->length);
}

/* Whether a number is a fraction, which lengths have in inches alone. */
static bool is_tape_fraction(const struct key *key, const char *number)
{
    return key->dimension == DIMENSION_LENGTH && strchr(number, '/') && !strchr(number, ' ');
}

void quantity_refuse(const struct reading *reading, const char *what, enum dimension dimension,
                     struct written value, const char *example, struct input *input)
{
    const char *write = NULL;
    struct arena *arena = input->arena;
    struct written at = written_part(arena, value, reading->start, reading->length);
    const char *fitting = dimension_units(arena, dimension);
    struct message *message = NULL;
    switch (reading->outcome) {
    case READING_FINE:
        return;
    case READING_EMPTY:
    case READING_NO_NUMBER:
        message =
            mistake_add(input, MISTAKE_NOT_A_NUMBER, value, "%s is %s, so it begins with a number",
                        what, dimension_words(dimension));
        break;
    case READING_BARE_NUMBER:
        message = mistake_add(input, MISTAKE_BARE_NUMBER, at,
                              "%s is %s and needs a unit; those that fit: %s", what,
                              dimension_words(dimension), fitting);
        break;
    case READING_UNKNOWN_UNIT:
        message = mistake_add(input, MISTAKE_UNKNOWN_UNIT, at,
                              "%s is no unit that is known; those that fit: %s", at.text, fitting);
        if (reading->nearest)
            write = with_unit(arena, value.text, reading);
        break;
    case READING_WRONG_KIND:
        message =
            mistake_add(input, MISTAKE_WRONG_UNIT, at, "%s is %s, but %s is %s; those that fit: %s",
                        what, dimension_words(dimension), value.text,
                        dimension_words(reading->other), *fitting ? fitting : "no unit at all");
        break;
    case READING_DECIMAL_COMMA:
        write = with_point(arena, value.text);
        message = mistake_add(input, MISTAKE_DECIMAL_COMMA, value,
                              "decimals stand behind a point: write %s", write);
        break;
    case READING_OUT_OF_RANGE:
        message = mistake_add(input, MISTAKE_NUMBER_OUT_OF_RANGE, at,
                              "this number is too large or too small to be kept");
        break;
    case READING_REST:
        message = mistake_add(input, MISTAKE_MORE_THAN_A_VALUE, at,
                              "%s is %s and nothing more; a comment begins with ;", what,
                              dimension_words(dimension));
        break;
    }
    message->write = write;
    message->example = write ? NULL : example;
}

/* Whether a is below b by more than rounding in the conversion of units. */
static bool is_below(double a, double b)
{
    return a < b - 1e-9 * fabs(b);
}

static const char *show(const struct key *key, double si, struct input *input)
{
    if (key->form == FORM_COUNT)
        return text_print(input->arena, "%.0f", si);
    return unit_text(input->arena, si, key->dimension, UNITS_METRIC);
}

bool limits_keep(const struct key *key, double si, struct written value, struct input *input)
{
    bool low = is_below(si, key->least);
    bool high = is_below(key->most, si);
    if (low || high) {
        const char *limit = show(key, low ? key->least : key->most, input);
        mistake_add(input, MISTAKE_OUTSIDE_LIMITS, value,
                    "%s of %s is not possible; it is never %s %s", key->name, value.text,
                    low ? "below" : "above", limit)
            ->example = text_print(input->arena, "%s = %s", key->name, key->example);
        return false;
    }
    low = is_below(si, key->usual_least);
    high = is_below(key->usual_most, si);
    if (low || high)
        mistake_add(input, MISTAKE_UNUSUAL_VALUE, value,
                    "%s of %s is unusual; most are %s to %s. Measure again if in doubt", key->name,
                    value.text, show(key, key->usual_least, input),
                    show(key, key->usual_most, input));
    return true;
}

bool quantity_read(const struct key *key, struct written value, double *si, double *tolerance,
                   struct input *input)
{
    struct written words = value;
    bool about = text_begins(value.text, "about ");
    if (about)
        words = written_part(input->arena, value, 6, strlen(value.text) - 6);
    struct reading reading = unit_read(words.text, key->dimension);
    if (reading.outcome != READING_FINE) {
        const char *example = text_print(input->arena, "%s = %s", key->name, key->example);
        size_t before = input->messages->count;
        quantity_refuse(&reading, key->name, key->dimension, words, example, input);
        struct message *message = &input->messages->items[before];
        if (reading.outcome == READING_BARE_NUMBER && is_tape_fraction(key, words.text) &&
            key->form == FORM_QUANTITY && input->messages->count > before) {
            message->write = text_print(input->arena, "%s = %s in", key->name, words.text);
            message->example = NULL;
        }
        return false;
    }
    *si = reading.value;
    *tolerance = reading.tolerance;
    if (about && isnan(reading.tolerance))
        *tolerance = ABOUT_SHARE * fabs(reading.value);
    return limits_keep(key, reading.value, value, input);
}
