#include "input/value.h"

#include <math.h>
#include <string.h>

#include "base/list.h"
#include "base/text.h"
#include "input/key_words.h"
#include "input/naming.h"
#include "input/quantity.h"

static void put(const struct key *key, void *base, const void *from, size_t size)
{
    memcpy((char *)base + key->field, from, size);
}

static size_t field_size(enum key_form form)
{
    switch (form) {
    case FORM_QUANTITY:
        return sizeof(double);
    case FORM_COUNT:
    case FORM_CHOICE:
    case FORM_PART:
        return sizeof(int);
    case FORM_TEXT:
        return sizeof(const char *);
    case FORM_DATE:
        return sizeof(struct date);
    case FORM_PARTS:
    case FORM_WORDS:
        return sizeof(struct part_names);
    case FORM_BORES:
        return sizeof(struct bores);
    }
    return 0;
}

void field_copy(const struct key *key, void *to, const void *from)
{
    put(key, to, (const char *)from + key->field, field_size(key->form));
}

bool value_is_asked(const struct entry *entry)
{
    return entry->value.text && strcmp(entry->value.text, "?") == 0;
}

struct written_list written_split(struct written list, struct arena *arena)
{
    struct written_list split = {0};
    size_t start = 0;
    for (;;) {
        size_t length = strcspn(list.text + start, ",");
        struct written *item = LIST_ADD(arena, &split);
        *item = written_part(arena, list, start, length);
        if (list.text[start + length] == '\0')
            return split;
        start += length + 1;
    }
}

/* Reads a whole number of at most four digits; -1 when it is none. */
static int read_whole(const char *text)
{
    size_t digits = strspn(text, "0123456789");
    if (digits == 0 || digits > 4 || text[digits] != '\0')
        return -1;
    int value = 0;
    for (size_t i = 0; i < digits; i++)
        value = value * 10 + (text[i] - '0');
    return value;
}

static const char *example_line(const struct key *key, struct input *input)
{
    return text_print(input->arena, "%s = %s", key->name, key->example);
}

static bool read_count(const struct key *key, struct written value, void *base, struct input *input)
{
    int count = text_same(value.text, "none") ? 0 : read_whole(value.text);
    if (count < 0) {
        mistake_add(input, MISTAKE_NOT_A_COUNT, value, "%s is a whole number without a unit",
                    key->name)
            ->example = example_line(key, input);
        return false;
    }
    put(key, base, &count, sizeof count);
    return limits_keep(key, count, value, input);
}

static bool read_bores(const struct key *key, struct written value, void *base,
                       struct origin *origin, struct input *input)
{
    enum { MOST_PISTONS = 12 };
    struct bores bores = {1, {NAN}};
    struct written size = value;
    const char *of = strstr(value.text, " of ");
    if (of) {
        size_t at = (size_t)(of - value.text);
        struct written count = written_part(input->arena, value, 0, at);
        bores.count = read_whole(count.text);
        if (bores.count < 1 || bores.count > MOST_PISTONS) {
            mistake_add(input, MISTAKE_NOT_A_COUNT, count,
                        "before \"of\" stands how many pistons there are, 1 to %d", MOST_PISTONS)
                ->example = example_line(key, input);
            return false;
        }
        size = written_part(input->arena, value, at + 4, strlen(value.text) - at - 4);
    }
    if (!quantity_read(key, size, &bores.bore.m, &origin->tolerance, input))
        return false;
    put(key, base, &bores, sizeof bores);
    return true;
}

static char *choice_words(const struct key *key, struct input *input, const char ***known,
                          size_t *count)
{
    size_t room = 0;
    while (key->choices[room].word)
        room++;
    *known = ARENA_ARRAY(input->arena, room + 1, const char *);
    struct text words = text_start(input->arena);
    for (size_t i = 0; i < room; i++) {
        (*known)[i] = key->choices[i].word;
        text_add(&words, "%s%s", i == 0 ? "" : i + 1 == room ? " or " : ", ", key->choices[i].word);
    }
    *count = room;
    return words.items;
}

/* What to do where no word fits. */
static const char *what_else(const struct key *key, struct input *input)
{
    if (key->required)
        return "; it is one of these: look again at the part, the tin or the manual, and do not "
               "guess";
    const char *taken = key_unsaid_words(input->arena, key);
    if (*taken == '\0')
        return "; if none fits, leave the line out: what needs it is then not computed";
    return text_print(input->arena, "; if none fits, leave the line out: taken is then %s", taken);
}

static bool read_choice(const struct key *key, struct written value, void *base,
                        struct input *input)
{
    const struct choice *choice = choice_find(key, value.text);
    if (choice) {
        put(key, base, &choice->value, sizeof choice->value);
        return true;
    }
    const char **known;
    size_t count;
    const char *words = choice_words(key, input, &known, &count);
    const char *nearest = text_nearest(value.text, known, count);
    struct message *message = mistake_add(input, MISTAKE_UNKNOWN_WORD, value, "%s is %s%s",
                                          key->name, words, nearest ? "" : what_else(key, input));
    if (nearest && text_mistyped(value.text, nearest))
        message->write = text_print(input->arena, "%s = %s", key->name, nearest);
    else
        message->mend =
            text_print(input->arena, "`firmpedal explain \"%s\"` says what each means", key->name);
    return false;
}

static bool read_date(const struct key *key, struct written value, void *base, struct input *input)
{
    struct date date;
    if (!date_read(value.text, &date)) {
        mistake_add(input, MISTAKE_NOT_A_DATE, value, "%s is a date as 2026-03-14, 2026-03 or 2026",
                    key->name)
            ->example = example_line(key, input);
        return false;
    }
    put(key, base, &date, sizeof date);
    return true;
}

static bool read_list(const struct key *key, struct written value, void *base, struct input *input)
{
    struct written_list list = written_split(value, input->arena);
    struct part_names names = {
        .names = ARENA_ARRAY(input->arena, list.count, const char *),
        .parts = ARENA_ARRAY(input->arena, list.count, int),
    };
    bool complete = true;
    for (size_t i = 0; i < list.count; i++) {
        if (*list.items[i].text == '\0' && complete) {
            list.items[i].text = ",";
            mistake_add(input, MISTAKE_EMPTY_ITEM, list.items[i],
                        "nothing stands between two commas, or before the first or after the last");
            complete = false;
        }
        names.names[names.count] = name_tidy(input->arena, list.items[i].text);
        names.parts[names.count++] = -1;
    }
    put(key, base, &names, sizeof names);
    return complete;
}

bool value_read(const struct key *key, const struct entry *entry, void *base, struct origin *origin,
                struct input *input)
{
    struct written value = entry->value;
    origin->place = value.place;
    origin->text = value.text;
    if (!value.text)
        return false;
    origin->kind = ORIGIN_GIVEN;
    if (value_is_asked(entry)) {
        origin->kind = ORIGIN_ASKED;
        return true;
    }
    switch (key->form) {
    case FORM_QUANTITY: {
        double quantity;
        if (!quantity_read(key, value, &quantity, &origin->tolerance, input))
            return false;
        put(key, base, &quantity, sizeof quantity);
        return true;
    }
    case FORM_COUNT:
        return read_count(key, value, base, input);
    case FORM_CHOICE:
        return read_choice(key, value, base, input);
    case FORM_TEXT:
        put(key, base, &value.text, sizeof value.text);
        return true;
    case FORM_DATE:
        return read_date(key, value, base, input);
    case FORM_PART:
        return true;
    case FORM_PARTS:
    case FORM_WORDS:
        return read_list(key, value, base, input);
    case FORM_BORES:
        return read_bores(key, value, base, origin, input);
    }
    return false;
}
