#include "input/quantity.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "units/number.h"
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

/* Units of one kind that people write for another: a gauge says lb where it means psi. */
static const struct {
    enum dimension dimension;
    const char *written, *meant, *words;
} slang[] = {
    {DIMENSION_PRESSURE, "lb", "psi", "lb on a gauge are lbf to the square inch: psi"},
    {DIMENSION_PRESSURE, "kg", "kgf/cm2", "kg on a gauge are kgf to the square centimetre"},
    {DIMENSION_FORCE, "lb", "lbf", "lb is a mass; a force is in lbf"},
    {DIMENSION_FORCE, "kg", "kgf", "kg is a mass; a force is in kgf"},
};

/* The row for a unit of another kind than the one that is wanted, or -1. */
static int find_slang(const struct reading *reading, enum dimension dimension)
{
    if (reading->outcome != READING_WRONG_KIND || !reading->unit)
        return -1;
    for (size_t i = 0; i < sizeof slang / sizeof *slang; i++)
        if (slang[i].dimension == dimension && text_same(slang[i].written, reading->unit->name))
            return (int)i;
    return -1;
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
        if (find_slang(reading, dimension) >= 0) {
            int row = find_slang(reading, dimension);
            message = mistake_add(input, MISTAKE_WRONG_UNIT, at, "%s", slang[row].words);
            write = text_print(arena, "%.*s%s%s", (int)reading->start, value.text, slang[row].meant,
                               value.text + reading->start + reading->length);
            break;
        }
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

/* "7 ft 6 in" as inches, "5 to 1" as a ratio; NULL for all else. */
static const char *in_one_number(const struct key *key, const char *text, struct arena *arena)
{
    struct number_found first = number_read(text);
    const char *end = text + first.length + strspn(text + first.length, " ");
    if (first.outcome != NUMBER_FINE)
        return NULL;
    if (key->dimension == DIMENSION_NUMBER && text_same(end, "to 1"))
        return text_copy_part(arena, text, first.length);
    if (key->dimension != DIMENSION_LENGTH || !text_begins(end, "ft "))
        return NULL;
    end += strlen("ft ");
    struct number_found second = number_read(end);
    if (second.outcome != NUMBER_FINE ||
        !text_same(end + second.length + strspn(end + second.length, " "), "in"))
        return NULL;
    double inches = 12 * first.value + second.value;
    return text_print(arena, "%s in", number_print(arena, inches, inches > floor(inches) ? 3 : 0));
}

/* "2 of 7/8 in" for a length that stands alone, and "132." whose figures behind the point are lost;
 * both would else be taken for something. */
static bool is_of_another_form(const struct key *key, struct written value, struct input *input)
{
    struct arena *arena = input->arena;
    size_t digits = strspn(value.text, "0123456789");
    if (digits > 0 && text_begins(value.text + digits, " of ")) {
        const char *rest = value.text + digits + 4;
        mistake_add(input, MISTAKE_MORE_THAN_A_VALUE, written_part(arena, value, 0, digits + 3),
                    "%s is %s alone; no count stands before it", key->name,
                    dimension_words(key->dimension))
            ->write = text_print(arena, "%s = %s", key->name, rest);
        return true;
    }
    const char *write = in_one_number(key, value.text, arena);
    if (write) {
        mistake_add(input, MISTAKE_MORE_THAN_A_VALUE, value, "%s is one number%s", key->name,
                    key->dimension == DIMENSION_NUMBER ? "" : " with one unit")
            ->write = text_print(arena, "%s = %s", key->name, write);
        return true;
    }
    for (const char *point = value.text; (point = strchr(point, '.')) != NULL; point++) {
        bool behind_digit = point > value.text && strchr("0123456789", point[-1]);
        if (!behind_digit || (point[1] != '\0' && strchr("0123456789", point[1])))
            continue;
        size_t at = (size_t)(point - value.text);
        mistake_add(input, MISTAKE_NOT_A_NUMBER, written_part(arena, value, 0, at + 1),
                    "nothing stands behind the point; write the figures that belong there, or no "
                    "point")
            ->example = text_print(arena, "%s = %.*s%s", key->name, (int)at, value.text, point + 1);
        return true;
    }
    return false;
}

/* Whether a number is below among the fractions of an inch tape. */
static bool is_on_a_tape(unsigned long lower)
{
    return (lower & (lower - 1)) == 0 || lower == 10 || lower == 100 || lower == 1000;
}

/* Remarks on an inch fraction that no tape has, or that is more than an inch: a figure is missing.
 */
static void look_at_fraction(const struct key *key, struct written value,
                             const struct reading *reading, struct input *input)
{
    const char *slash = strchr(value.text, '/');
    if (key->dimension != DIMENSION_LENGTH || !slash || !reading->unit ||
        strcmp(reading->unit->name, "in") != 0)
        return;
    const char *start = slash;
    while (start > value.text && strchr("0123456789", start[-1]))
        start--;
    unsigned long upper = strtoul(start, NULL, 10), lower = strtoul(slash + 1, NULL, 10);
    if (lower == 0 || (upper < lower && is_on_a_tape(lower)))
        return;
    struct message *message = mistake_add(
        input, MISTAKE_UNUSUAL_VALUE, value, "%lu/%lu in is %s; is a figure missing?", upper, lower,
        is_on_a_tape(lower) ? "more than an inch" : "on no tape, which has halves to 64ths");
    for (unsigned long tape = 8; tape <= 64; tape *= 2)
        if (tape % 10 == lower % 10 && lower < 10 && upper < tape && tape != lower) {
            message->example = text_print(input->arena, "%s = %lu/%lu in", key->name, upper, tape);
            return;
        }
}

bool quantity_read(const struct key *key, struct written value, double *si, double *tolerance,
                   struct input *input)
{
    struct written words = value;
    bool about = text_begins(value.text, "about ");
    if (about)
        words = written_part(input->arena, value, 6, strlen(value.text) - 6);
    if (is_of_another_form(key, words, input))
        return false;
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
    look_at_fraction(key, words, &reading, input);
    return limits_keep(key, reading.value, value, input);
}
