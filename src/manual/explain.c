#include "manual/explain.h"

#include <string.h>

#include "base/list.h"
#include "input/key_words.h"
#include "input/mistakes.h"
#include "network/plumbing.h"
#include "input/schema.h"
#include "parts/keys/key.h"
#include "parts/words.h"
#include "units/unit.h"

#define WIDTH 80

/* A line "label  words", wrapped behind the label; nothing when there are no words. */
static void add_about(struct text *into, const char *label, const char *words)
{
    if (words == NULL || words[0] == '\0')
        return;
    text_add(into, "  %-10s ", label);
    text_add_wrapped(into, words, 13, 13, WIDTH);
}

static void add_choices(struct text *into, const struct key *key)
{
    for (const struct choice *choice = key->choices; choice != NULL && choice->word; choice++) {
        const char *others = "";
        if (choice->others != NULL)
            others = text_print(into->arena, " (understood too: %s)", choice->others);
        add_about(into, choice == key->choices ? "words" : "",
                  text_print(into->arena, "%s: %s%s", choice->word, choice->help, others));
    }
}

static void explain_key(struct text *into, const char *of, const struct key *key)
{
    struct arena *arena = into->arena;
    if (into->count > 0)
        text_add(into, "\n");
    text_add(into, "%s, of %s\n", key->name, of);
    add_about(into, "is", key->help);
    add_about(into, "write", text_print(arena, "%s = %s", key->name, key->example));
    if (key->form == FORM_CHOICE)
        add_choices(into, key);
    else
        add_about(into, "value", key_form_words(arena, key));
    if (key->form == FORM_QUANTITY || key->form == FORM_BORES)
        add_about(into, "units", dimension_units(arena, key->dimension));
    add_about(into, "limits", key_limit_words(arena, key));
    add_about(into, "usual", key_usual_words(arena, key));
    add_about(into, "not said", key_unsaid_words(arena, key));
    add_about(into, "or", key->others);
}

/* Whether two rows tell the same: common rows are alike in all kinds. */
static bool tell_the_same(const struct key *a, const struct key *b)
{
    return a->field == b->field && words_same(a->help, b->help) && a->assumed_source == NULL &&
           b->assumed_source == NULL;
}

static bool explain_keys(struct text *into, const char *word)
{
    const struct key *before = NULL;
    for (int kind = 0; kind < KIND_COUNT; kind++) {
        const struct key *key = key_find((enum part_kind)kind, word);
        if (key == NULL || (before != NULL && tell_the_same(before, key)))
            continue;
        explain_key(into, text_print(into->arena, "a %s", kind_word((enum part_kind)kind)), key);
        before = key;
    }
    return before != NULL;
}

/* A word from the list of a key. */
static bool explain_choice_of(struct text *into, const char *of, const struct key *key,
                              const char *word)
{
    const struct choice *choice = key->form == FORM_CHOICE ? choice_find(key, word) : NULL;
    if (choice == NULL || key->field == FIELD(fitted.on))
        return false;
    text_add(into, "%s%s, a word of %s, of %s\n", into->count > 0 ? "\n" : "", choice->word,
             key->name, of);
    add_about(into, "is", choice->help);
    add_about(into, "write", text_print(into->arena, "%s = %s", key->name, choice->word));
    add_about(into, "or", choice->others);
    return true;
}

static bool explain_choices(struct text *into, const char *word)
{
    bool any = false;
    size_t count;
    for (int kind = 0; kind < KIND_COUNT; kind++) {
        const struct key *keys = key_table((enum part_kind)kind, &count);
        const char *of = text_print(into->arena, "a %s", kind_word((enum part_kind)kind));
        for (size_t i = 0; i < count; i++)
            any = explain_choice_of(into, of, &keys[i], word) || any;
    }
    const struct special *rows = special_rows(&count);
    for (size_t i = 0; i < count; i++)
        for (size_t k = 0; k < rows[i].key_count; k++)
            any = explain_choice_of(into, text_print(into->arena, "[%s]", rows[i].name),
                                    &rows[i].keys[k], word) ||
                  any;
    return any;
}

static bool explain_kind(struct text *into, const char *word)
{
    enum part_kind kind;
    size_t count, key_count;
    const char *const *words = kind_all_words(&count);
    bool known = false;
    for (size_t i = 0; i < count; i++)
        known = known || words_same(words[i], word);
    if (!known || !kind_of_words(word, &kind))
        return false;
    if (into->count > 0)
        text_add(into, "\n");
    text_add(into, "[... %s], a section\n", kind_word(kind));
    add_about(into, "is", kind_help(kind));
    const struct key *keys = key_table(kind, &key_count);
    struct text names = text_start(into->arena);
    for (size_t i = 0; i < key_count; i++)
        text_add(&names, "%s%s", i > 0 ? ", " : "", keys[i].name);
    add_about(into, "keys", names.items);
    return true;
}

/* Special sections and their keys. */
static bool explain_special(struct text *into, const char *word)
{
    size_t count;
    const struct special *rows = special_rows(&count);
    bool any = false;
    for (size_t i = 0; i < count; i++) {
        if (words_same(rows[i].name, word)) {
            text_add(into, "%s[%s%s], a section of a %s\n", into->count > 0 ? "\n" : "",
                     rows[i].name, rows[i].names_part ? " PART" : "",
                     rows[i].in_work_file ? "work file" : "description");
            add_about(into, "holds", rows[i].help);
            add_about(into, "write", rows[i].example);
            any = true;
        }
        const struct key *key = row_find(rows[i].keys, rows[i].key_count, word);
        if (key != NULL) {
            explain_key(into, text_print(into->arena, "[%s]", rows[i].name), key);
            any = true;
        }
    }
    return any;
}

static bool explain_mistake(struct text *into, const char *word)
{
    size_t count;
    const struct mistake_row *rows = mistake_rows(&count);
    for (size_t i = 0; i < count; i++) {
        if (!words_same(rows[i].id, word))
            continue;
        text_add(into, "%s%s, a message about a file\n", into->count > 0 ? "\n" : "", rows[i].id);
        add_about(into, "means", rows[i].help);
        return true;
    }
    const struct plumbing_row *plumbing = plumbing_rows(&count);
    for (size_t i = 0; i < count; i++) {
        if (!words_same(plumbing[i].id, word))
            continue;
        text_add(into, "%s%s, a message about the plumbing\n", into->count > 0 ? "\n" : "",
                 plumbing[i].id);
        add_about(into, "means", plumbing[i].what);
        return true;
    }
    return false;
}

static bool explain_as_written(struct text *into, const char *word)
{
    bool any = explain_keys(into, word);
    any = explain_choices(into, word) || any;
    any = explain_kind(into, word) || any;
    any = explain_special(into, word) || any;
    return explain_mistake(into, word) || any;
}

bool explain_word(struct text *into, const char *word)
{
    if (explain_as_written(into, word))
        return true;
    /* "reading" is looked for under readings, "strokes" under stroke. */
    size_t length = strlen(word);
    if (length > 1 && word[length - 1] == 's' &&
        explain_as_written(into, text_copy_part(into->arena, word, length - 1)))
        return true;
    return explain_as_written(into, text_print(into->arena, "%ss", word));
}

/* A list of words, each once. */
struct known {
    const char **items;
    size_t count;
    size_t capacity;
};

static void add_known(struct arena *arena, struct known *known, const char *word)
{
    for (size_t i = 0; i < known->count; i++)
        if (words_same(known->items[i], word))
            return;
    *LIST_ADD(arena, known) = word;
}

static void add_known_keys(struct arena *arena, struct known *known, const struct key *keys,
                           size_t count)
{
    for (size_t i = 0; i < count; i++) {
        add_known(arena, known, keys[i].name);
        for (const struct choice *c = keys[i].choices; c != NULL && c->word != NULL; c++)
            add_known(arena, known, c->word);
        const char *others = keys[i].others;
        size_t length;
        for (const char *item; (item = words_next(&others, &length)) != NULL;)
            add_known(arena, known, text_copy_part(arena, item, length));
    }
}

static struct known all_known(struct arena *arena)
{
    struct known known = {0};
    size_t count;
    for (int kind = 0; kind < KIND_COUNT; kind++) {
        const struct key *keys = key_table((enum part_kind)kind, &count);
        add_known_keys(arena, &known, keys, count);
    }
    const struct special *specials = special_rows(&count);
    for (size_t i = 0; i < count; i++) {
        add_known(arena, &known, specials[i].name);
        add_known_keys(arena, &known, specials[i].keys, specials[i].key_count);
    }
    const char *const *words = kind_all_words(&count);
    for (size_t i = 0; i < count; i++)
        add_known(arena, &known, words[i]);
    const struct mistake_row *rows = mistake_rows(&count);
    for (size_t i = 0; i < count; i++)
        add_known(arena, &known, rows[i].id);
    const struct plumbing_row *plumbing = plumbing_rows(&count);
    for (size_t i = 0; i < count; i++)
        add_known(arena, &known, plumbing[i].id);
    return known;
}

const char *explain_near(struct arena *arena, const char *word)
{
    struct known known = all_known(arena);
    struct text near = text_start(arena);
    for (int found = 0; found < 3; found++) {
        const char *nearest = text_nearest(word, known.items, known.count);
        if (nearest == NULL)
            break;
        text_add(&near, "%s%s", found > 0 ? ", " : "", nearest);
        /* The next round is without it. */
        for (size_t i = 0; i < known.count; i++)
            if (known.items[i] == nearest)
                known.items[i] = known.items[--known.count];
    }
    return near.items;
}
