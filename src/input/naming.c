#include "input/naming.h"

#include <stdlib.h>
#include <string.h>

#include "base/list.h"
#include "base/text.h"
#include "parts/words.h"

static bool is_gap(char letter)
{
    return letter == ' ' || letter == '\t' || letter == '-' || letter == '_';
}

/* A name taken apart. */
struct name {
    const char **words; /* as written */
    size_t count;       /* the number at the end, if any, left out */
    const char *number; /* "2", or NULL */
    bool has_kind;
    enum part_kind kind;
    size_t kind_at, kind_count; /* the words that name the kind */
};

static bool is_number(const char *word)
{
    return strspn(word, "0123456789") == strlen(word);
}

static char *join(struct arena *arena, const char *const *words, size_t count)
{
    struct text joined = text_start(arena);
    for (size_t i = 0; i < count; i++)
        text_add(&joined, "%s%s", i > 0 ? " " : "", words[i]);
    return joined.items;
}

/* Whether words stand for a kind as a whole. */
static bool is_kind(const char *words, enum part_kind *kind)
{
    size_t count;
    const char *const *known = kind_all_words(&count);
    for (size_t i = 0; i < count; i++)
        if (words_same(words, known[i]))
            return kind_of_words(known[i], kind);
    return false;
}

static void find_kind(struct arena *arena, struct name *name)
{
    enum { MOST_WORDS = 3 };
    size_t most = name->count < MOST_WORDS ? name->count : MOST_WORDS;
    for (size_t length = most; length > 0 && !name->has_kind; length--) {
        name->kind_at = name->count - length;
        name->kind_count = length;
        name->has_kind = is_kind(join(arena, name->words + name->kind_at, length), &name->kind);
    }
    for (size_t length = most; length > 0 && !name->has_kind; length--) {
        name->kind_at = 0;
        name->kind_count = length;
        name->has_kind = is_kind(join(arena, name->words, length), &name->kind);
    }
}

static struct name take_apart(struct arena *arena, const char *text)
{
    struct name name = {.words = ARENA_ARRAY(arena, strlen(text) / 2 + 1, const char *)};
    while (*text) {
        if (is_gap(*text)) {
            text++;
            continue;
        }
        size_t length = 0;
        while (text[length] && !is_gap(text[length]))
            length++;
        name.words[name.count++] = text_copy_part(arena, text, length);
        text += length;
    }
    if (name.count > 1 && is_number(name.words[name.count - 1]))
        name.number = name.words[--name.count];
    find_kind(arena, &name);
    return name;
}

static void make_small(char *text)
{
    for (; *text; text++)
        if (*text >= 'A' && *text <= 'Z')
            *text = (char)(*text - 'A' + 'a');
}

static int compare_words(const void *a, const void *b)
{
    return strcmp(*(const char *const *)a, *(const char *const *)b);
}

char *name_tidy(struct arena *arena, const char *name)
{
    struct text tidy = text_start(arena);
    while (*name) {
        size_t gap = strspn(name, " \t");
        name += gap;
        size_t length = strcspn(name, " \t");
        if (length > 0)
            text_add(&tidy, "%s%.*s", tidy.count > 0 ? " " : "", (int)length, name);
        name += length;
    }
    return tidy.items;
}

char *name_without_signs(struct arena *arena, const char *name)
{
    char *copy = text_copy(arena, name), *into = copy;
    for (; *name; name++)
        if (!strchr(NAME_SIGNS, *name))
            *into++ = *name;
    *into = '\0';
    return name_tidy(arena, copy);
}

char *name_key(struct arena *arena, const char *text)
{
    struct name name = take_apart(arena, text);
    /* A kind's word may be two words: "hand brake". */
    const char **words = ARENA_ARRAY(arena, name.count + 4, const char *);
    size_t count = 0;
    bool replaces = name.has_kind && name.kind != KIND_JOINT;
    for (size_t i = 0; i < name.count; i++)
        if (!replaces || i < name.kind_at || i >= name.kind_at + name.kind_count)
            words[count++] = name.words[i];
    if (replaces)
        words[count++] = kind_word(name.kind);
    char *small = join(arena, words, count);
    make_small(small);
    /* Split the small letters again, so that sorting does not look at case. */
    size_t again = 0;
    char *rest;
    for (char *word = strtok_r(small, " ", &rest); word; word = strtok_r(NULL, " ", &rest))
        words[again++] = word;
    qsort(words, again, sizeof *words, compare_words);
    const char *key = join(arena, words, again);
    return text_print(arena, "%s %s", key, name.number ? name.number : "");
}

bool name_kind(struct arena *arena, const char *text, enum part_kind *kind)
{
    struct name name = take_apart(arena, text);
    *kind = name.kind;
    return name.has_kind;
}

char *name_stem(struct arena *arena, const char *text)
{
    struct name name = take_apart(arena, text);
    if (!name.has_kind)
        return join(arena, name.words, name.count);
    size_t after = name.kind_at + name.kind_count;
    memmove(name.words + name.kind_at, name.words + after,
            (name.count - after) * sizeof *name.words);
    return join(arena, name.words, name.count - name.kind_count);
}

enum side name_side(struct arena *arena, const char *text)
{
    struct name name = take_apart(arena, text);
    for (size_t i = 0; i < name.count; i++)
        for (int side = SIDE_LEFT; side <= SIDE_RIGHT; side++)
            if (text_same(name.words[i], side_word((enum side)side)))
                return (enum side)side;
    return SIDE_NONE;
}

enum axle name_axle(struct arena *arena, const char *text)
{
    struct name name = take_apart(arena, text);
    for (size_t i = 0; i < name.count; i++)
        for (int axle = AXLE_FRONT; axle <= AXLE_REAR; axle++)
            if (text_same(name.words[i], axle_word((enum axle)axle)))
                return (enum axle)axle;
    return AXLE_NONE;
}

char *name_with_side(struct arena *arena, const char *text, enum side side)
{
    struct name name = take_apart(arena, text);
    size_t before = name.has_kind && name.kind_at > 0 ? name.kind_at : name.count;
    struct text whole = text_start(arena);
    for (size_t i = 0; i <= name.count; i++) {
        if (i == before)
            text_add(&whole, "%s%s", whole.count > 0 ? " " : "", side_word(side));
        if (i < name.count)
            text_add(&whole, "%s%s", whole.count > 0 ? " " : "", name.words[i]);
    }
    if (name.number)
        text_add(&whole, " %s", name.number);
    return whole.items;
}

struct roll roll_start(struct arena *arena)
{
    return (struct roll){.arena = arena};
}

void roll_add(struct roll *roll, const char *name)
{
    struct roll_name *item = LIST_ADD(roll->arena, roll);
    item->name = name;
    item->key = name_key(roll->arena, name);
}

static int find_key(const struct roll *roll, const char *key)
{
    for (size_t i = 0; i < roll->count; i++)
        if (strcmp(roll->items[i].key, key) == 0)
            return (int)i;
    return -1;
}

int roll_find(const struct roll *roll, const char *name)
{
    return find_key(roll, name_key(roll->arena, name));
}

int roll_find_sides(const struct roll *roll, const char *name, int found[static 2])
{
    found[0] = roll_find(roll, name);
    found[1] = -1;
    if (found[0] >= 0)
        return 1;
    int count = 0;
    enum part_kind kind;
    size_t length = strlen(name);
    if (!name_kind(roll->arena, name, &kind) && length > 1 &&
        strchr("sS", name[length - 1]) != NULL)
        name = text_copy_part(roll->arena, name, length - 1);
    if (!name_kind(roll->arena, name, &kind) || !kind_is_brake(kind) ||
        name_side(roll->arena, name) != SIDE_NONE)
        return 0;
    for (int side = SIDE_LEFT; side <= SIDE_RIGHT; side++) {
        int part = roll_find(roll, name_with_side(roll->arena, name, (enum side)side));
        if (part >= 0)
            found[count++] = part;
    }
    return count;
}

/* The words of a group apart: "front" of "front hoses". kinds: those its last words mean, as bits.
 */
struct group {
    struct name stem;
    unsigned kinds;
    const char *joint; /* of joints, the one that is meant: "tee"; NULL */
};

/* The kinds that a plural stands for, as bits; 0 when it is none. */
static unsigned kinds_of_plural(struct arena *arena, const char *words, const char **joint)
{
    enum part_kind kind;
    size_t length = strlen(words);
    *joint = NULL;
    if (words_same(words, "brakes") || words_same(words, "wheel brakes") ||
        words_same(words, "cylinders"))
        return 1u << KIND_DISC | 1u << KIND_DRUM;
    if (length < 2 || (words[length - 1] != 's' && words[length - 1] != 'S'))
        return 0;
    const char *singular = text_copy_part(arena, words, length - 1);
    if (!is_kind(singular, &kind))
        return 0;
    if (kind == KIND_JOINT && !words_same(singular, kind_word(KIND_JOINT)))
        *joint = singular;
    return 1u << kind;
}

static bool take_group(struct arena *arena, const char *text, struct group *group)
{
    enum { MOST_WORDS = 3 };
    struct name name = take_apart(arena, text);
    size_t most = name.count < MOST_WORDS ? name.count : MOST_WORDS;
    *group = (struct group){.kinds = 0};
    for (size_t length = most; length > 0 && group->kinds == 0 && !name.number; length--) {
        const char *words = join(arena, name.words + name.count - length, length);
        group->kinds = kinds_of_plural(arena, words, &group->joint);
        group->stem = name;
        group->stem.count = name.count - length;
    }
    return group->kinds != 0;
}

static bool has_word(const struct name *name, const char *word)
{
    for (size_t i = 0; i < name->count; i++)
        if (text_same(name->words[i], word))
            return true;
    return false;
}

static bool is_in_group(struct arena *arena, const struct group *group, const char *text)
{
    struct name name = take_apart(arena, text);
    if (!name.has_kind || !(group->kinds & 1u << name.kind) ||
        (group->joint && !has_word(&name, group->joint)))
        return false;
    for (size_t i = 0; i < group->stem.count; i++)
        if (!has_word(&name, group->stem.words[i]))
            return false;
    return true;
}

int roll_find_group(const struct roll *roll, const char *name, int **found)
{
    *found = ARENA_ARRAY(roll->arena, roll->count + 2, int);
    int count = roll_find_sides(roll, name, *found);
    struct group group;
    if (count > 0 || !take_group(roll->arena, name, &group))
        return count;
    for (size_t i = 0; i < roll->count; i++)
        if (is_in_group(roll->arena, &group, roll->items[i].name))
            (*found)[count++] = (int)i;
    return count;
}

/* Names without their side word, for those parts that have one. */
static const char *name_of_both(const struct roll *roll, const char *text)
{
    struct name name = take_apart(roll->arena, text);
    size_t count = 0;
    for (size_t i = 0; i < name.count; i++)
        if (!text_same(name.words[i], "left") && !text_same(name.words[i], "right"))
            name.words[count++] = name.words[i];
    return join(roll->arena, name.words, count);
}

/* Whether both are said (not 0) and are not the same. */
static bool differs(unsigned a, unsigned b)
{
    return a != 0 && b != 0 && a != b;
}

const char *roll_nearest(const struct roll *roll, const char *name)
{
    const char **known = ARENA_ARRAY(roll->arena, 2 * roll->count + 1, const char *);
    size_t count = 0;
    for (size_t i = 0; i < roll->count; i++)
        known[count++] = roll->items[i].name;
    for (size_t i = 0; i < roll->count; i++) {
        enum part_kind kind;
        bool is_brake = name_kind(roll->arena, roll->items[i].name, &kind) && kind_is_brake(kind);
        if (is_brake)
            known[count++] = name_of_both(roll, roll->items[i].name);
    }
    const char *nearest = text_nearest(name_tidy(roll->arena, name), known, count);
    /* Another axle or side was not meant by mistake. */
    if (nearest && (differs(name_axle(roll->arena, name), name_axle(roll->arena, nearest)) ||
                    differs(name_side(roll->arena, name), name_side(roll->arena, nearest))))
        return NULL;
    return nearest;
}
