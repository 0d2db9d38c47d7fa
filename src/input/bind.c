#include "input/bind.h"

#include <math.h>
#include <string.h>

#include "base/text.h"

struct bound bound_start(struct arena *arena, const struct key *rows, size_t count, void *base)
{
    struct bound bound = {
        .rows = rows,
        .count = count,
        .entries = ARENA_ARRAY(arena, count, const struct entry *),
        .origins = ARENA_ARRAY(arena, count, struct origin),
        .base = base,
    };
    for (size_t i = 0; i < count; i++)
        bound.origins[i].tolerance = NAN;
    return bound;
}

/* Whether a row's list may go on under its name with a number, and name is that. */
static bool goes_on(const struct key *row, const char *name)
{
    size_t length = strlen(row->name);
    return row->form == FORM_WORDS && text_begins(name, row->name) && name[length] == ' ' &&
           strspn(name + length, " 0123456789") == strlen(name + length);
}

int bound_row(const struct bound *bound, const struct entry *entry)
{
    const struct key *row = row_find(bound->rows, bound->count, entry->key.text);
    for (size_t i = 0; i < bound->count && !row; i++)
        if (goes_on(&bound->rows[i], entry->key.text))
            row = &bound->rows[i];
    return row ? (int)(row - bound->rows) : -1;
}

bool bound_take(struct bound *bound, const struct entry *entry, struct input *input)
{
    int row = bound_row(bound, entry);
    if (row < 0)
        return false;
    const struct key *key = &bound->rows[row];
    const struct entry *before = bound->entries[row];
    bool more = before && goes_on(key, entry->key.text);
    if (before && !more) {
        struct message *message = mistake_add(input, MISTAKE_DUPLICATE_KEY, entry->key,
                                              "%s is given twice; leave one out", key->name);
        message->earlier = before->key.place;
        return true;
    }
    if (!before)
        bound->entries[row] = entry;
    value_read(key, entry, bound->base, &bound->origins[row], input);
    return true;
}

/* Whether a row would take the value of a line; only then can its name have been meant. */
static bool would_take(const struct key *key, const struct entry *entry, struct arena *arena)
{
    struct messages unheard = messages_start(arena);
    struct input quiet = {arena, &unheard, ""};
    struct origin origin = {.tolerance = NAN};
    if (!entry->value.text || !key)
        return entry->value.text != NULL; /* of the other table, whose rows are free words */
    return value_read(key, entry, ARENA_NEW(arena, struct part), &origin, &quiet);
}

void bound_refuse(const struct bound *bound, const struct bound *more, const struct entry *entry,
                  struct written header, struct input *input)
{
    struct arena *arena = input->arena;
    size_t room = bound->count + (more ? more->count : 0);
    const char **known = ARENA_ARRAY(arena, room + 1, const char *);
    struct text words = text_start(arena);
    for (size_t i = 0; i < room; i++) {
        const struct key *row = i < bound->count ? &bound->rows[i] : &more->rows[i - bound->count];
        known[i] = row->name;
        text_add(&words, "%s%s", i > 0 ? ", " : "", row->name);
    }
    const char *nearest = text_nearest(entry->key.text, known, room);
    for (size_t i = 0; i < room; i++)
        if (!(nearest && text_mistyped(entry->key.text, nearest)) &&
            text_mistyped(entry->key.text, known[i]))
            nearest = known[i];
    const char *elsewhere = key_elsewhere(bound->rows, entry->key.text);
    if (elsewhere) {
        mistake_add(input, MISTAKE_UNKNOWN_KEY, entry->key, "[%s] has no key of that name: %s",
                    header.text, elsewhere);
        return;
    }
    bool meant = nearest && text_mistyped(entry->key.text, nearest) &&
                 would_take(row_find(bound->rows, bound->count, nearest), entry, arena);
    struct message *message =
        mistake_add(input, MISTAKE_UNKNOWN_KEY, entry->key,
                    "[%s] has no key of that name; it has %s", header.text, words.items);
    if (meant)
        message->write = text_print(arena, "%s = %s", nearest, entry->value.text);
}

static bool may_be_asked(const struct key *key)
{
    return key->form == FORM_QUANTITY || key->form == FORM_BORES;
}

void bound_require(const struct bound *bound, struct written header, struct input *input)
{
    for (size_t i = 0; i < bound->count; i++) {
        const struct key *key = &bound->rows[i];
        const struct entry *entry = bound->entries[i];
        if (!key->required || (entry && !(value_is_asked(entry) && !may_be_asked(key))))
            continue;
        struct written at = entry ? entry->value : header;
        const char *words = text_print(input->arena, "[%s] %s %s: %s", header.text,
                                       entry ? "cannot do without" : "needs", key->name, key->help);
        mistake_add(input, MISTAKE_MISSING_KEY, at, "%s", words)->example =
            text_print(input->arena, "%s = %s", key->name, key->example);
    }
}
