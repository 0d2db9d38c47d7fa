#include "input/runs.h"

#include <string.h>

#include "base/list.h"
#include "base/text.h"
#include "input/value.h"
#include "parts/words.h"

/* Whether words end with one that means pipe or hose; letters it takes up. */
static bool ends_with_piece(const char *words, enum item_kind *kind, size_t *letters)
{
    size_t count;
    const char *const *known = kind_all_words(&count);
    *letters = 0;
    for (size_t i = 0; i < count; i++) {
        enum part_kind of;
        size_t length;
        /* The costly question last: most words end with few of those known. */
        if (!words_end_with(words, known[i], &length) || length <= *letters ||
            !kind_of_words(known[i], &of) || (of != KIND_PIPE && of != KIND_HOSE))
            continue;
        *letters = length;
        *kind = of == KIND_PIPE ? ITEM_PIPE : ITEM_HOSE;
    }
    return *letters > 0;
}

static bool begins_a_length(const char *words)
{
    return strchr("0123456789.+-?", *words) != NULL || text_begins(words, "about ");
}

static struct run_item read_item(struct written words, struct input *input)
{
    struct run_item item = {.kind = ITEM_PART, .words = words};
    enum item_kind kind;
    size_t letters;
    if (ends_with_piece(words.text, &kind, &letters)) {
        size_t rest = strlen(words.text) - letters;
        if (rest == 0) {
            item.kind = kind;
        } else if (begins_a_length(words.text)) {
            item.kind = kind;
            item.length = written_part(input->arena, words, 0, rest);
        }
        return item;
    }
    if (*words.text && strchr("0123456789.", *words.text)) {
        mistake_add(input, MISTAKE_UNKNOWN_PART, words,
                    "is this a pipe or a hose? Say so behind the length")
            ->example = text_print(input->arena, "%s hose", words.text);
        item.refused = true;
    }
    return item;
}

/* Whether an item and the next are the two halves of a number with a decimal comma. */
static bool is_cut_number(const char *first, const char *second)
{
    if (text_begins(first, "about "))
        first += strlen("about ");
    bool digits = *first && strspn(first, "0123456789") == strlen(first);
    return digits && *second >= '0' && *second <= '9';
}

static struct run_item read_cut_number(struct written words, struct input *input)
{
    struct arena *arena = input->arena;
    char *with_point = text_copy(arena, words.text);
    char *comma = strchr(with_point, ',');
    *comma = '.';
    size_t blanks = strspn(comma + 1, " ");
    memmove(comma + 1, comma + 1 + blanks, strlen(comma + 1 + blanks) + 1);
    mistake_add(input, MISTAKE_DECIMAL_COMMA, words,
                "a comma parts the items of a run, and decimals stand behind a point: write %s",
                with_point)
        ->write = with_point;
    struct run_item item = {.words = words, .refused = true};
    size_t letters;
    if (!ends_with_piece(words.text, &item.kind, &letters))
        item.kind = ITEM_PIPE;
    return item;
}

/* Length of the next item with its decimal comma, if it has one; 0 when it has none. */
static size_t cut_number_length(struct written value, size_t start, struct arena *arena)
{
    size_t length = strcspn(value.text + start, ",");
    if (value.text[start + length] == '\0')
        return 0;
    size_t next = start + length + 1;
    size_t next_length = strcspn(value.text + next, ",");
    struct written first = written_part(arena, value, start, length);
    struct written second = written_part(arena, value, next, next_length);
    return is_cut_number(first.text, second.text) ? length + 1 + next_length : 0;
}

struct run run_read(const struct entry *entry, struct input *input)
{
    struct arena *arena = input->arena;
    struct run run = {.name = entry->key};
    struct written value = entry->value;
    bool told_of_empty = false;
    for (size_t start = 0, length; start <= strlen(value.text); start += length + 1) {
        length = cut_number_length(value, start, arena);
        if (length > 0) {
            struct written words = written_part(arena, value, start, length);
            *LIST_ADD(arena, &run) = read_cut_number(words, input);
            continue;
        }
        length = strcspn(value.text + start, ",");
        struct written words = written_part(arena, value, start, length);
        if (*words.text) {
            *LIST_ADD(arena, &run) = read_item(words, input);
            continue;
        }
        words.text = ",";
        if (!told_of_empty)
            mistake_add(input, MISTAKE_EMPTY_ITEM, words,
                        "nothing stands between two commas, or before the first or after the last");
        told_of_empty = true;
    }
    return run;
}
