#include "units/unit.h"

#include <math.h>
#include <string.h>

#include "units/number.h"
#include "units/unit_name.h"

/* A stretch of the text that is being read. */
struct stretch {
    size_t start;
    size_t length;
};

static struct stretch stretch_trimmed(const char *text, size_t start, size_t end)
{
    while (start < end && strchr(" \t\r\n", text[start]))
        start++;
    while (end > start && strchr(" \t\r\n", text[end - 1]))
        end--;
    return (struct stretch){start, end - start};
}

static struct reading failed(enum reading_outcome outcome, struct stretch at)
{
    return (struct reading){
        .outcome = outcome, .value = NAN, .tolerance = NAN, .start = at.start, .length = at.length};
}

/* Finds the tolerance sign; sign_length is 0 and the end of the text is given without one. */
static size_t find_tolerance(const char *text, size_t *sign_length)
{
    static const char *const signs[] = {"±", "+/-", "+-"};
    size_t first = strlen(text);
    *sign_length = 0;
    for (size_t i = 0; i < sizeof signs / sizeof *signs; i++) {
        const char *found = strstr(text, signs[i]);
        if (found && (size_t)(found - text) < first) {
            first = (size_t)(found - text);
            *sign_length = strlen(signs[i]);
        }
    }
    return first;
}

static bool is_letter(char letter)
{
    return (letter >= 'a' && letter <= 'z') || (letter >= 'A' && letter <= 'Z');
}

/* Whether a unit could begin there, be it known or not. "3/4-inch" is written too. */
static bool looks_like_a_unit(const char *letters)
{
    if (*letters == '-')
        return is_letter(letters[1]);
    return is_letter(*letters) || strchr("\"'%", *letters) || (unsigned char)*letters >= 0x80;
}

/* A number and the words behind it, the unit not yet understood. */
struct measure {
    double number;
    bool is_ratio;
    struct stretch digits;
    struct stretch unit;
};

static struct reading refuse_number(struct number_found found, size_t start, struct stretch all)
{
    struct stretch at = {start, found.length};
    switch (found.outcome) {
    case NUMBER_DECIMAL_COMMA:
        return failed(READING_DECIMAL_COMMA, at);
    case NUMBER_OUT_OF_RANGE:
        return failed(READING_OUT_OF_RANGE, at);
    case NUMBER_FINE:
    case NUMBER_NONE:
        break;
    }
    return failed(READING_NO_NUMBER, all);
}

/* Goes on from a number to ":1" when it is there. */
static struct reading read_ratio(const char *text, size_t end, struct measure *measure)
{
    size_t at = measure->digits.start + measure->digits.length;
    at += strspn(text + at, " ");
    if (at >= end || text[at] != ':')
        return (struct reading){.outcome = READING_FINE};
    at++;
    at += strspn(text + at, " ");
    struct number_found found = number_read(text + at);
    if (found.outcome != NUMBER_FINE)
        return refuse_number(found, at, stretch_trimmed(text, at, end));
    measure->is_ratio = true;
    measure->digits.length = at + found.length - measure->digits.start;
    if (!(found.value > 0))
        return failed(READING_OUT_OF_RANGE, measure->digits);
    measure->number /= found.value;
    if (!isfinite(measure->number))
        return failed(READING_OUT_OF_RANGE, measure->digits);
    return (struct reading){.outcome = READING_FINE};
}

/* Splits text from start to end into a number and a unit. */
static struct reading split_measure(const char *text, size_t start, size_t end,
                                    enum dimension wanted, struct measure *measure)
{
    struct stretch all = stretch_trimmed(text, start, end);
    struct number_found found = number_read(text + all.start);
    if (found.outcome != NUMBER_FINE)
        return refuse_number(found, all.start, all);
    *measure = (struct measure){.number = found.value, .digits = {all.start, found.length}};
    if (wanted == DIMENSION_NUMBER) {
        struct reading ratio = read_ratio(text, end, measure);
        if (ratio.outcome != READING_FINE)
            return ratio;
    }
    measure->unit = stretch_trimmed(text, measure->digits.start + measure->digits.length, end);
    if (measure->unit.length > 0 && !looks_like_a_unit(text + measure->unit.start))
        return failed(READING_REST, measure->unit);
    return (struct reading){.outcome = READING_FINE};
}

/* What to say of words that are no unit as a whole: a good unit and more, or an unknown one. */
static struct reading refuse_unit(const char *text, struct stretch words, enum dimension wanted)
{
    if (wanted == DIMENSION_NUMBER)
        return failed(READING_REST, words);
    for (size_t length = words.length; length > 0; length--) {
        if (!strchr(" ,;([", text[words.start + length]) || length == words.length)
            continue;
        const struct unit *unit = unit_find(text + words.start, length, wanted);
        if (unit && unit->dimension == wanted)
            return failed(READING_REST,
                          stretch_trimmed(text, words.start + length, words.start + words.length));
    }
    struct reading unknown = failed(READING_UNKNOWN_UNIT, words);
    unknown.nearest = unit_nearest(text + words.start, words.length, wanted);
    return unknown;
}

static struct reading find_unit(const char *text, struct stretch words, enum dimension wanted)
{
    const struct unit *unit = unit_find(text + words.start, words.length, wanted);
    if (!unit)
        return refuse_unit(text, words, wanted);
    if (unit->dimension != wanted) {
        struct reading wrong = failed(READING_WRONG_KIND, words);
        wrong.unit = unit;
        wrong.other = unit->dimension;
        return wrong;
    }
    return (struct reading){.outcome = READING_FINE, .unit = unit};
}

/* Whether a kind may stand without a unit. */
static bool needs_no_unit(double number, enum dimension wanted)
{
    return wanted == DIMENSION_NUMBER || (wanted == DIMENSION_SHARE && number >= 0 && number <= 1);
}

/* Finds the unit of a value and that of its tolerance, each of which may lend it to the other:
 * "19.05 ± 0.05 mm". tolerance is NULL when there is none. */
static struct reading find_units(const char *text, const struct measure *value,
                                 const struct measure *tolerance, enum dimension wanted,
                                 const struct unit **tolerance_unit)
{
    struct stretch of_value = value->unit;
    struct stretch of_tolerance = tolerance ? tolerance->unit : of_value;
    if (of_value.length == 0)
        of_value = of_tolerance;
    if (of_tolerance.length == 0)
        of_tolerance = of_value;
    *tolerance_unit = NULL;
    if (of_value.length == 0) {
        if (needs_no_unit(value->number, wanted))
            return (struct reading){.outcome = READING_FINE};
        return failed(READING_BARE_NUMBER, value->digits);
    }
    struct reading second = find_unit(text, of_tolerance, wanted);
    struct reading first = find_unit(text, of_value, wanted);
    *tolerance_unit = second.unit;
    return first.outcome != READING_FINE ? first : second.outcome != READING_FINE ? second : first;
}

struct reading unit_read(const char *text, enum dimension wanted)
{
    size_t sign_length;
    size_t sign = find_tolerance(text, &sign_length);
    struct stretch all = stretch_trimmed(text, 0, strlen(text));
    if (all.length == 0)
        return failed(READING_EMPTY, all);
    struct measure value;
    struct reading reading = split_measure(text, 0, sign, wanted, &value);
    if (reading.outcome != READING_FINE)
        return reading;
    struct measure tolerance;
    if (sign_length > 0) {
        reading = split_measure(text, sign + sign_length, strlen(text), wanted, &tolerance);
        if (reading.outcome != READING_FINE)
            return reading;
        if (!(tolerance.number >= 0))
            return failed(READING_NO_NUMBER, tolerance.digits);
    }
    const struct unit *tolerance_unit;
    reading =
        find_units(text, &value, sign_length > 0 ? &tolerance : NULL, wanted, &tolerance_unit);
    if (reading.outcome != READING_FINE)
        return reading;
    const struct unit *unit = reading.unit;
    reading.value = unit ? value.number * unit->factor + unit->offset : value.number;
    reading.tolerance = NAN;
    if (sign_length > 0)
        reading.tolerance = tolerance.number * (tolerance_unit ? tolerance_unit->factor : 1);
    if (!isfinite(reading.value) || isinf(reading.tolerance))
        return failed(READING_OUT_OF_RANGE, value.digits);
    return reading;
}
