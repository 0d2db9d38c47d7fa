#include "input/order.h"

#include <string.h>

#include "base/list.h"
#include "base/text.h"
#include "parts/words.h"

struct nipples {
    struct nipple *items;
    size_t count;
    size_t capacity;
};

/* Length of the words without what means "nipple" at their end. */
static size_t without_nipple(const char *words)
{
    static const char *const endings[] = {"bleed nipple", "bleeder screw", "bleed screw", "nipple",
                                          "bleeder"};
    for (size_t i = 0; i < sizeof endings / sizeof *endings; i++) {
        size_t letters;
        if (words_end_with(words, endings[i], &letters))
            return strlen(words) - letters;
    }
    return strlen(words);
}

/* A nipple's own name by its number, from the comma-separated names; NULL when it has none. */
static const char *nipple_name(const struct part *part, int nipple, struct arena *arena)
{
    const char *rest = part->fitted.nipple_names;
    size_t length;
    const char *item = words_next(&rest, &length);
    for (int i = 0; item && i < nipple; i++)
        item = words_next(&rest, &length);
    return item ? text_copy_part(arena, item, length) : NULL;
}

const char *order_words(const struct part *part, int nipple, struct arena *arena)
{
    if (part->fitted.nipples <= 1)
        return part->name;
    const char *name = nipple_name(part, nipple, arena);
    return name ? text_print(arena, "%s %s nipple", part->name, name)
                : text_print(arena, "%s nipple %d", part->name, nipple + 1);
}

/* The number that a nipple's words mean, from 0; -1 when they mean none. */
static int find_nipple(const struct part *part, const char *words, struct arena *arena)
{
    int count = part->fitted.nipples < 0 ? 1 : part->fitted.nipples;
    for (int i = 0; i < count; i++) {
        const char *name = nipple_name(part, i, arena);
        if ((name && words_same(name, words)) || words_same(text_print(arena, "%d", i + 1), words))
            return i;
    }
    return -1;
}

static const char *known_nipples(const struct part *part, struct arena *arena)
{
    struct text known = text_start(arena);
    for (int i = 0; i < part->fitted.nipples; i++)
        text_add(&known, "%s%s", i > 0 ? ", " : "", order_words(part, i, arena));
    return known.items;
}

/* A name of a part, and the words behind it that mean one of its nipples. */
struct split {
    int part;
    struct written name;
    struct written nipple;
};

/* The longest beginning of the words that names a part (or both sides, part -2); the rest is the
 * nipple. part -1 when there is none. */
static struct split split_item(const struct car *car, struct written item)
{
    struct arena *arena = car->input->arena;
    size_t length = without_nipple(item.text);
    /* "nipple 2": the number stands behind. */
    size_t digits = strlen(item.text);
    while (digits > 0 && strchr("0123456789", item.text[digits - 1]))
        digits--;
    struct written front = written_part(arena, item, 0, digits);
    size_t shorter = without_nipple(front.text);
    bool numbered = item.text[digits] != '\0' && shorter < strlen(front.text);
    if (numbered)
        length = shorter;
    for (size_t end = length; end > 0; end--) {
        if (end < length && item.text[end] != ' ')
            continue;
        struct written name = written_part(arena, item, 0, end);
        int found[2];
        int count = roll_find_sides(&car->roll, name.text, found);
        if (count == 0)
            continue;
        struct written nipple = numbered
                                    ? written_part(arena, item, digits, strlen(item.text) - digits)
                                    : written_part(arena, item, end, length - end);
        return (struct split){count == 2 ? -2 : found[0], name, nipple};
    }
    return (struct split){-1, written_part(arena, item, 0, length), item};
}

static void take_item(struct car *car, struct nipples *nipples, struct written item)
{
    struct input *input = car->input;
    struct split split = split_item(car, item);
    if (split.part < 0) {
        car_one(car, split.name);
        return;
    }
    const struct part *part = &car->items[split.part].part;
    int nipple = 0;
    if (*split.nipple.text)
        nipple = find_nipple(part, split.nipple.text, input->arena);
    if (nipple < 0 || part->fitted.nipples == 0 || !kind_is_wet(part->kind)) {
        const char *known = known_nipples(part, input->arena);
        mistake_add(input, MISTAKE_NO_SUCH_NIPPLE, item, "%s has %s%s", part->name,
                    *known ? "no such nipple; it has " : "no nipple", known);
        return;
    }
    if (!*split.nipple.text && part->fitted.nipples > 1) {
        mistake_add(input, MISTAKE_WHICH_NIPPLE, item, "%s has several nipples; say which: %s",
                    part->name, known_nipples(part, input->arena))
            ->example = order_words(part, 0, input->arena);
        return;
    }
    *LIST_ADD(input->arena, nipples) = (struct nipple){split.part, nipple};
}

struct own_order order_read(struct car *car)
{
    struct own_order order = {0};
    const struct section *section = car->bleed_order;
    if (!section)
        return order;
    struct input *input = car->input;
    struct order_lines lines = {0};
    size_t count;
    const struct special *special = &special_rows(&count)[SPECIAL_BLEED_ORDER];
    struct bound bound = bound_start(input->arena, special->keys, special->key_count, &lines);
    struct nipples nipples = {0};
    for (size_t i = 0; i < section->count; i++) {
        const struct entry *entry = &section->items[i];
        if (!bound_take(&bound, entry, input)) {
            bound_refuse(&bound, NULL, entry, section->name, input);
            continue;
        }
        if (!entry->value.text || value_is_asked(entry))
            continue;
        struct written_list list = written_split(entry->value, input->arena);
        for (size_t j = 0; j < list.count; j++)
            if (*list.items[j].text)
                take_item(car, &nipples, list.items[j]);
    }
    if (!section->missed && section->count > 0)
        bound_require(&bound, section->name, input);
    order.items = nipples.items;
    order.count = nipples.count;
    order.place = bound.entries[0] ? bound.entries[0]->value.place : section->name.place;
    return order;
}
