#include "base/date.h"

#include <stdio.h>

static bool is_leap(int year)
{
    return (year % 4 == 0 && year % 100 != 0) || year % 400 == 0;
}

static int days_in(int year, int month)
{
    static const int days[] = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
    return month == 2 && is_leap(year) ? 29 : days[month - 1];
}

/* Reads exactly count digits; gives what follows them, or NULL. */
static const char *read_digits(const char *text, int count, int *value)
{
    *value = 0;
    for (int i = 0; i < count; i++, text++) {
        if (*text < '0' || *text > '9')
            return NULL;
        *value = *value * 10 + (*text - '0');
    }
    return text;
}

bool date_read(const char *text, struct date *date)
{
    struct date read = {0, 0, 0};
    text = read_digits(text, 4, &read.year);
    if (!text || read.year < 1)
        return false;
    if (*text == '-') {
        text = read_digits(text + 1, 2, &read.month);
        if (!text || read.month < 1 || read.month > 12)
            return false;
    }
    if (read.month > 0 && *text == '-') {
        text = read_digits(text + 1, 2, &read.day);
        if (!text || read.day < 1 || read.day > days_in(read.year, read.month))
            return false;
    }
    if (*text != '\0')
        return false;
    *date = read;
    return true;
}

void date_write(struct date date, char buffer[static 16])
{
    /* The remainders tell the compiler that it fits; a date holds no more digits. */
    unsigned year = (unsigned)date.year % 10000u;
    unsigned month = (unsigned)date.month % 100u;
    unsigned day = (unsigned)date.day % 100u;
    if (!date_known(date))
        buffer[0] = '\0';
    else if (month == 0)
        snprintf(buffer, 16, "%04u", year);
    else if (day == 0)
        snprintf(buffer, 16, "%04u-%02u", year, month);
    else
        snprintf(buffer, 16, "%04u-%02u-%02u", year, month, day);
}

bool date_known(struct date date)
{
    return date.year > 0;
}

static int first_if_missing(int part)
{
    return part > 0 ? part : 1;
}

int date_compare(struct date a, struct date b)
{
    if (a.year != b.year)
        return a.year < b.year ? -1 : 1;
    int month_a = first_if_missing(a.month);
    int month_b = first_if_missing(b.month);
    if (month_a != month_b)
        return month_a < month_b ? -1 : 1;
    return first_if_missing(a.day) - first_if_missing(b.day);
}

int date_years_between(struct date a, struct date b)
{
    int years = b.year - a.year;
    if (years > 0 && date_compare(date_add_years(a, years), b) > 0)
        years--;
    return years > 0 ? years : 0;
}

struct date date_add_years(struct date date, int years)
{
    date.year += years;
    if (date.month == 2 && date.day == 29 && !is_leap(date.year))
        date.day = 28;
    return date;
}
