/* strtod_l and uselocale */
#ifndef _GNU_SOURCE
#define _GNU_SOURCE
#endif
#include "units/number.h"

#include <locale.h>
#include <math.h>
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"

/* The C locale needs no memory of its own in the GNU library, so this cannot fail. */
static locale_t plain_locale(void)
{
    return newlocale(LC_ALL_MASK, "C", (locale_t)0);
}

static size_t digits_at(const char *text)
{
    return strspn(text, "0123456789");
}

/* Length of "-", "+" or the minus sign of Unicode. */
static size_t sign_at(const char *text, bool *negative)
{
    static const char minus[] = "−";
    bool is_long = strncmp(text, minus, sizeof minus - 1) == 0;
    *negative = *text == '-' || is_long;
    return is_long ? sizeof minus - 1 : *text == '-' || *text == '+' ? 1 : 0;
}

static struct number_found nothing(enum number_outcome outcome, size_t length)
{
    return (struct number_found){outcome, NAN, length};
}

/* Length of digits with a point and an exponent among them, as far as they are a number. */
static size_t decimal_length(const char *text)
{
    size_t whole = digits_at(text);
    size_t length = whole;
    if (text[length] == '.') {
        size_t part = digits_at(text + length + 1);
        if (whole + part == 0)
            return 0;
        length += 1 + part;
    }
    if (length > 0 && (text[length] == 'e' || text[length] == 'E')) {
        size_t sign = text[length + 1] == '-' || text[length + 1] == '+' ? 1 : 0;
        size_t exponent = digits_at(text + length + 1 + sign);
        if (exponent > 0)
            length += 1 + sign + exponent;
    }
    return length;
}

static bool has_digit_above_zero(const char *text, size_t length)
{
    for (size_t i = 0; i < length && text[i] != 'e' && text[i] != 'E'; i++)
        if (text[i] >= '1' && text[i] <= '9')
            return true;
    return false;
}

/* Reads a number without sign, given how long it is. */
static struct number_found read_decimal(const char *text, size_t length)
{
    char *end;
    double value = strtod_l(text, &end, plain_locale());
    /* strtod sees more in a text such as 0x10; then it is none of our numbers. */
    if (length == 0 || end != text + length)
        return nothing(NUMBER_NONE, 0);
    if (!isfinite(value) || (value == 0 && has_digit_above_zero(text, length)))
        return nothing(NUMBER_OUT_OF_RANGE, length);
    return (struct number_found){NUMBER_FINE, value, length};
}

/* Length of "5/8", or 0. */
static size_t fraction_length(const char *text)
{
    size_t upper = digits_at(text);
    if (upper == 0 || text[upper] != '/')
        return 0;
    size_t lower = digits_at(text + upper + 1);
    return lower == 0 ? 0 : upper + 1 + lower;
}

static struct number_found read_fraction(const char *text, size_t length)
{
    size_t upper_length = digits_at(text);
    struct number_found upper = read_decimal(text, upper_length);
    struct number_found lower = read_decimal(text + upper_length + 1, length - upper_length - 1);
    if (upper.outcome != NUMBER_FINE || lower.outcome != NUMBER_FINE || !(lower.value > 0))
        return nothing(NUMBER_OUT_OF_RANGE, length);
    return (struct number_found){NUMBER_FINE, upper.value / lower.value, length};
}

/* Reads what follows a whole number in 1-1/16 or 1 1/16; the outcome is NUMBER_NONE when it is
 * nothing of the kind. */
static struct number_found read_further_fraction(const char *text)
{
    size_t gap = *text == '-' ? 1 : strspn(text, " \t");
    size_t length = gap > 0 ? fraction_length(text + gap) : 0;
    if (length == 0)
        return nothing(NUMBER_NONE, 0);
    struct number_found found = read_fraction(text + gap, length);
    if (found.outcome == NUMBER_FINE && !(found.value < 1))
        return nothing(NUMBER_NONE, 0);
    found.length += gap;
    return found;
}

static struct number_found read_unsigned(const char *text)
{
    size_t length = fraction_length(text);
    if (length > 0)
        return read_fraction(text, length);
    struct number_found found = read_decimal(text, decimal_length(text));
    if (found.outcome != NUMBER_FINE || found.length != digits_at(text))
        return found;
    struct number_found more = read_further_fraction(text + found.length);
    if (more.outcome == NUMBER_NONE)
        return found;
    more.value += found.value;
    more.length += found.length;
    return more;
}

struct number_found number_read(const char *text)
{
    bool negative;
    size_t sign = sign_at(text, &negative);
    size_t whole = digits_at(text + sign);
    if (text[sign + whole] == ',' && digits_at(text + sign + whole + 1) > 0)
        return nothing(NUMBER_DECIMAL_COMMA, sign + whole + 1 + digits_at(text + sign + whole + 1));
    struct number_found found = read_unsigned(text + sign);
    if (found.length == 0)
        return found;
    found.length += sign;
    if (text[found.length] == ',' && digits_at(text + found.length + 1) > 0)
        return nothing(NUMBER_DECIMAL_COMMA, found.length + 1 + digits_at(text + found.length + 1));
    if (negative)
        found.value = -found.value;
    return found;
}

char *number_print(struct arena *arena, double value, int decimals)
{
    locale_t before = uselocale(plain_locale());
    int length = snprintf(NULL, 0, "%.*f", decimals, value);
    uselocale(before);
    /* The arena may jump out, so it is asked while the caller's locale holds. */
    char *printed = arena_new(arena, (size_t)length + 1);
    before = uselocale(plain_locale());
    snprintf(printed, (size_t)length + 1, "%.*f", decimals, value);
    uselocale(before);
    bool is_minus_zero = *printed == '-' && strspn(printed + 1, "0.") == (size_t)length - 1;
    return is_minus_zero ? printed + 1 : printed;
}

int number_decimals(double value, int significant, int most)
{
    if (!isfinite(value) || value == 0)
        return significant - 1 < most ? significant - 1 : most;
    /* Printed in exponent form the number is rounded already, so 9.996 counts as 10.0. */
    char rounded[32];
    snprintf(rounded, sizeof rounded, "%.*e", significant - 1, value);
    int exponent = atoi(strchr(rounded, 'e') + 1);
    int decimals = significant - 1 - exponent;
    return decimals < 0 ? 0 : decimals < most ? decimals : most;
}
