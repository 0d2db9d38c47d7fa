#ifndef FIRMPEDAL_BASE_DATE_H
#define FIRMPEDAL_BASE_DATE_H

#include <stdbool.h>

/* A day of the Gregorian calendar, or a month (day 0), or a year (month 0). Year 0: not known. */
struct date {
    int year;
    int month;
    int day;
};

/* Reads 2026-03-14, 2026-03 or 2026 (ISO 8601 forms). false when it is no such date. */
bool date_read(const char *text, struct date *date);
/* Writes it in the same form; buffer of 11 bytes or more. */
void date_write(struct date date, char buffer[static 16]);
bool date_known(struct date date);
/* Negative, zero, positive as a is before, equal to or after b; a missing month or day counts as
 * the first. */
int date_compare(struct date a, struct date b);
/* Full years from a to b, never below 0. */
int date_years_between(struct date a, struct date b);
/* The same day some years later; 29 February becomes 28 February where there is none. */
struct date date_add_years(struct date date, int years);

#endif
