#include "parts/keys/key.h"

#include <assert.h>
#include <math.h>
#include <string.h>

#include "parts/keys/rows.h"
#include "parts/words.h"

const struct key *key_table(enum part_kind kind, size_t *count)
{
    switch (kind) {
#define KIND(symbol, word, member, help)                                                           \
    case KIND_##symbol:                                                                            \
        return keys_##member(count);
#include "parts/kinds.def"
#undef KIND
    case KIND_COUNT:
        break;
    }
    *count = 0;
    return NULL;
}

const struct key *key_find(enum part_kind kind, const char *name)
{
    size_t count;
    const struct key *rows = key_table(kind, &count);
    for (size_t i = 0; i < count; i++)
        if (words_same(rows[i].name, name))
            return &rows[i];
    for (size_t i = 0; i < count; i++)
        if (words_among(name, rows[i].others))
            return &rows[i];
    return NULL;
}

size_t key_index(enum part_kind kind, const struct key *key)
{
    size_t count;
    const struct key *rows = key_table(kind, &count);
    assert(key >= rows && key < rows + count);
    return (size_t)(key - rows);
}

const struct key *key_of(enum part_kind kind, size_t field)
{
    size_t count;
    const struct key *rows = key_table(kind, &count);
    for (size_t i = 0; i < count; i++)
        if (rows[i].field == field)
            return &rows[i];
    return NULL;
}

const struct origin *part_origin(const struct part *part, size_t field)
{
    const struct key *key = key_of(part->kind, field);
    assert(key != NULL);
    return &part->origins[key_index(part->kind, key)];
}

const struct choice *choice_find(const struct key *key, const char *words)
{
    const struct choice *choices = key->choices;
    for (const struct choice *c = choices; c != NULL && c->word != NULL; c++)
        if (words_same(words, c->word))
            return c;
    for (const struct choice *c = choices; c != NULL && c->word != NULL; c++)
        if (words_among(words, c->others))
            return c;
    return NULL;
}

const struct choice *choice_of_value(const struct key *key, int value)
{
    for (const struct choice *c = key->choices; c != NULL && c->word != NULL; c++)
        if (c->value == value)
            return c;
    return NULL;
}

bool key_applies(const struct part *part, const struct key *key)
{
    return key->applies == NULL || key->applies(part);
}

/* Reaching a field through its offset. memcpy keeps clear of alignment and aliasing. */
static void take(void *into, size_t size, const struct part *part, const struct key *key)
{
    memcpy(into, (const char *)part + key->field, size);
}

static void put(struct part *part, const struct key *key, const void *from, size_t size)
{
    memcpy((char *)part + key->field, from, size);
}

static void blank_field(struct part *part, const struct key *key)
{
    switch (key->form) {
    case FORM_QUANTITY:
        put(part, key, &(double){NAN}, sizeof(double));
        break;
    case FORM_COUNT:
    case FORM_PART:
        put(part, key, &(int){-1}, sizeof(int));
        break;
    case FORM_BORES:
        put(part, key, &(struct bores){0, {NAN}}, sizeof(struct bores));
        break;
    case FORM_CHOICE:
    case FORM_TEXT:
    case FORM_DATE:
    case FORM_PARTS:
    case FORM_WORDS:
        break; /* zero already */
    }
}

void part_blank(struct part *part, enum part_kind kind, struct arena *arena)
{
    size_t count;
    const struct key *rows = key_table(kind, &count);
    memset(part, 0, sizeof *part);
    part->kind = kind;
    part->fitted.height.m = NAN;
    part->fitted.chamber.m3 = NAN;
    part->fitted.nipples = -1;
    part->fitted.nipple_below.m = NAN;
    part->origins = ARENA_ARRAY(arena, count, struct origin);
    for (size_t i = 0; i < count; i++) {
        blank_field(part, &rows[i]);
        part->origins[i].tolerance = NAN;
    }
}

bool key_said(const struct part *part, const struct key *key)
{
    const char *text;
    struct date date;
    struct part_names names;
    switch (key->form) {
    case FORM_QUANTITY:
    case FORM_COUNT:
    case FORM_CHOICE:
    case FORM_BORES:
    case FORM_PART:
        return !isnan(key_value(part, key));
    case FORM_TEXT:
        take(&text, sizeof text, part, key);
        return text != NULL;
    case FORM_DATE:
        take(&date, sizeof date, part, key);
        return date_known(date);
    case FORM_PARTS:
    case FORM_WORDS:
        take(&names, sizeof names, part, key);
        return names.count > 0;
    }
    return false;
}

double key_value(const struct part *part, const struct key *key)
{
    double quantity;
    int whole;
    struct bores bores;
    switch (key->form) {
    case FORM_QUANTITY:
        take(&quantity, sizeof quantity, part, key);
        return quantity;
    case FORM_COUNT:
    case FORM_PART:
        take(&whole, sizeof whole, part, key);
        return whole >= 0 ? (double)whole : NAN;
    case FORM_CHOICE:
        take(&whole, sizeof whole, part, key);
        return whole != 0 ? (double)whole : NAN;
    case FORM_BORES:
        take(&bores, sizeof bores, part, key);
        return bores.bore.m;
    case FORM_TEXT:
    case FORM_DATE:
    case FORM_PARTS:
    case FORM_WORDS:
        break;
    }
    return NAN;
}

/* A whole number from a double; instead when that is no number. */
static int whole_or(double value, int instead)
{
    return isnan(value) ? instead : (int)lround(value);
}

void key_set(struct part *part, const struct key *key, double value)
{
    int whole;
    struct bores bores;
    switch (key->form) {
    case FORM_QUANTITY:
        put(part, key, &value, sizeof value);
        break;
    case FORM_COUNT:
    case FORM_PART:
        whole = whole_or(value, -1);
        put(part, key, &whole, sizeof whole);
        break;
    case FORM_CHOICE:
        whole = whole_or(value, 0);
        put(part, key, &whole, sizeof whole);
        break;
    case FORM_BORES:
        take(&bores, sizeof bores, part, key);
        bores.bore.m = value;
        put(part, key, &bores, sizeof bores);
        break;
    case FORM_TEXT:
    case FORM_DATE:
    case FORM_PARTS:
    case FORM_WORDS:
        break;
    }
}

void part_assume(struct part *part)
{
    size_t count;
    const struct key *rows = key_table(part->kind, &count);
    for (size_t i = 0; i < count; i++) {
        const struct key *key = &rows[i];
        if (key_said(part, key) || !key_applies(part, key))
            continue;
        double value = key->assume_by != NULL ? key->assume_by(part) : key->assumed;
        if (isnan(value))
            continue;
        key_set(part, key, value);
        part->origins[i].kind = ORIGIN_ASSUMED;
    }
}
