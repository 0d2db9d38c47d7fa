#include "input/part_rules.h"

#include <string.h>

#include "base/text.h"
#include "input/value.h"

static const struct entry *line_of(const struct part *part, const struct entry *const *entries,
                                   size_t field)
{
    const struct entry *entry = entries[key_index(part->kind, key_of(part->kind, field))];
    return entry && entry->value.text && !value_is_asked(entry) ? entry : NULL;
}

/* Pistons of a fixed caliper face each other: a bare diameter does not say how many there are, and
 * an odd number is none unless a second size makes up for it. */
static void check_pistons(const struct part *part, const struct entry *const *entries,
                          struct input *input)
{
    const struct disc *disc = &part->as.disc;
    const struct entry *bore = line_of(part, entries, FIELD(as.disc.bores));
    const struct entry *second = line_of(part, entries, FIELD(as.disc.second_bores));
    const struct entry *line = bore ? bore : second;
    int pistons = disc->bores.count + disc->second_bores.count;
    if (disc->caliper != CALIPER_FIXED || !line || disc->bores.count == 0)
        return;
    bool counted = !bore || strstr(bore->value.text, " of ") != NULL;
    bool two_sizes = disc->second_bores.count > 0;
    if (counted && (two_sizes ? pistons >= 2 : pistons % 2 == 0))
        return;
    const char *size = strstr(line->value.text, " of ");
    size = size ? size + 4 : line->value.text;
    mistake_add(
        input, MISTAKE_NOT_A_COUNT, line->value,
        "a fixed caliper has pistons on both sides: write how many the whole caliper has, an "
        "even number, two at least")
        ->example = text_print(input->arena, "%s = 2 of %s", line->key.text, size);
}

/* A mass that the usual range of all vehicles together lets pass.
 * Source: common practice, no source; a small car with its driver has more than 300 kg. */
static void check_mass(const struct part *part, const struct entry *const *entries,
                       struct input *input)
{
    static const double car_least = 300, motorcycle_most = 600;
    const struct vehicle *vehicle = &part->as.vehicle;
    const struct entry *line = line_of(part, entries, FIELD(as.vehicle.mass));
    bool motorcycle = vehicle->type == VEHICLE_MOTORCYCLE;
    if (!line || !(motorcycle ? vehicle->mass.kg > motorcycle_most : vehicle->mass.kg < car_least))
        return;
    mistake_add(input, MISTAKE_UNUSUAL_VALUE, line->value,
                motorcycle ? "mass of %s is much for a motorcycle; is a figure too many?"
                           : "mass of %s is little for a car; is a figure missing?",
                line->value.text);
}

void part_rules_check(const struct part *part, const struct entry *const *entries,
                      struct input *input)
{
    static const struct {
        enum part_kind kind;
        void (*check)(const struct part *, const struct entry *const *, struct input *);
    } rules[] = {
        {KIND_DISC, check_pistons},
        {KIND_VEHICLE, check_mass},
    };
    for (size_t i = 0; i < sizeof rules / sizeof *rules; i++)
        if (rules[i].kind == part->kind)
            rules[i].check(part, entries, input);
}

static const char *day_words(struct arena *arena, struct date date)
{
    char day[16];
    date_write(date, day);
    return text_copy(arena, day);
}

static void tell_after_today(struct input *input, struct place place, const char *what,
                             struct date date, struct date today)
{
    struct written at = {.place = place};
    mistake_add(
        input, MISTAKE_STRANGE_DATE, at,
        "%s %s is after today, %s, so its age counts as nothing; --date says what day it is", what,
        day_words(input->arena, date), day_words(input->arena, today));
}

/* A bare year or month begins as early as it can: only what is after today as a whole is told. */
static bool is_after(struct date date, struct date today)
{
    return date_known(date) && date_known(today) && date_compare(date, today) > 0;
}

static void check_part_dates(const struct part *part, struct date today, struct input *input)
{
    size_t count;
    const struct key *rows = key_table(part->kind, &count);
    for (size_t i = 0; i < count; i++) {
        struct date date;
        if (rows[i].form != FORM_DATE || part->origins[i].kind == ORIGIN_WORK)
            continue;
        memcpy(&date, (const char *)part + rows[i].field, sizeof date);
        if (is_after(date, today))
            tell_after_today(input, part->origins[i].place, rows[i].name, date, today);
    }
}

void dates_check(const struct system *car, struct date today, struct input *input)
{
    struct date first_used = system_vehicle(car)->first_used;
    for (int i = 0; i < car->part_count; i++)
        check_part_dates(&car->parts[i], today, input);
    for (int i = 0; i < car->work_count; i++) {
        const struct work *work = &car->works[i];
        struct written at = {.place = work->place};
        if (is_after(work->date, today))
            tell_after_today(input, work->place, "the work of", work->date, today);
        if (date_known(first_used) && date_known(work->date) &&
            date_compare(work->date, first_used) < 0)
            mistake_add(input, MISTAKE_STRANGE_DATE, at,
                        "the work of %s was done before the car was first used, %s",
                        day_words(input->arena, work->date), day_words(input->arena, first_used));
    }
}
