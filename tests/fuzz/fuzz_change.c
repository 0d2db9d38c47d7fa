#define _GNU_SOURCE

#include <ctype.h>
#include <stdio.h>
#include <string.h>

#include "fuzz_run.h"
#include "parts/keys/key.h"
#include "units/unit.h"

/* A text that is changed about, and the dice. */
struct change {
    char *text;
    size_t size, most;
    unsigned dice;
};

static unsigned throw(struct change * change, unsigned sides)
{
    change->dice = change->dice * 1664525u + 1013904223u;
    return sides == 0 ? 0 : (change->dice >> 8) % sides;
}

struct span {
    size_t from, to;
};

/* Puts words in place of a span, where there is room. */
static void put(struct change *change, struct span span, const char *words, size_t length)
{
    if (change->size - (span.to - span.from) + length > change->most)
        return;
    memmove(change->text + span.from + length, change->text + span.to, change->size - span.to);
    memcpy(change->text + span.from, words, length);
    change->size += length - (span.to - span.from);
}

static size_t line_start(const struct change *change, size_t at)
{
    while (at > 0 && change->text[at - 1] != '\n')
        at--;
    return at;
}

static size_t line_end(const struct change *change, size_t at)
{
    while (at < change->size && change->text[at] != '\n')
        at++;
    return at < change->size ? at + 1 : at;
}

/* A line by chance, its end of line included. */
static struct span some_line(struct change *change)
{
    size_t at = throw(change, (unsigned)change->size + 1);
    return (struct span){line_start(change, at), line_end(change, at)};
}

/* What stands behind the equal sign of a line, without blanks around it; empty without one. */
static struct span value_of(const struct change *change, struct span line)
{
    const char *equal = memchr(change->text + line.from, '=', line.to - line.from);
    if (equal == NULL)
        return (struct span){line.to, line.to};
    struct span value = {(size_t)(equal - change->text) + 1, line.to};
    while (value.from < value.to && isspace((unsigned char)change->text[value.from]))
        value.from++;
    while (value.to > value.from && isspace((unsigned char)change->text[value.to - 1]))
        value.to--;
    return value;
}

static struct span key_of_line(const struct change *change, struct span line)
{
    const char *equal = memchr(change->text + line.from, '=', line.to - line.from);
    struct span key = {line.from, equal == NULL ? line.from : (size_t)(equal - change->text)};
    while (key.to > key.from && isspace((unsigned char)change->text[key.to - 1]))
        key.to--;
    return key;
}

/* A line with a value, by chance; empty where none was hit. */
static struct span some_value_line(struct change *change)
{
    for (int i = 0; i < 8; i++) {
        struct span line = some_line(change), value = value_of(change, line);
        if (value.to > value.from)
            return line;
    }
    return (struct span){0, 0};
}

/* From a section's head up to the next one. */
static struct span some_section(struct change *change)
{
    struct span line = some_line(change);
    while (line.from > 0 && change->text[line.from] != '[')
        line.from = line_start(change, line.from - 1);
    size_t end = line_end(change, line.from);
    while (end < change->size && change->text[end] != '[')
        end = line_end(change, end);
    return (struct span){line.from, end};
}

/* The row of the first kind after one by chance that has a key of that name; NULL. */
static const struct key *row_of(struct change *change, struct span key)
{
    char name[64];
    snprintf(name, sizeof name, "%.*s", (int)(key.to - key.from), change->text + key.from);
    unsigned first = throw(change, KIND_COUNT);
    for (unsigned k = 0; k < KIND_COUNT; k++) {
        const struct key *row = key_find((enum part_kind)((first + k) % KIND_COUNT), name);
        if (row != NULL)
            return row;
    }
    return NULL;
}

static void change_number(struct change *change)
{
    static const char *const odd[] = {"0",      "-1",   "1e300", "1e-300", "nan",  "1/3",
                                      "1-1/2",  "1e5",  "0.001", "2.5",    "1000", "?",
                                      "3 of 5", "2, 3", "1/0",   "1",      "2",    ""};
    struct span line = some_value_line(change), value = value_of(change, line);
    size_t from = value.from;
    while (from < value.to && !isdigit((unsigned char)change->text[from]))
        from++;
    size_t to = from;
    while (to < value.to && (isdigit((unsigned char)change->text[to]) || change->text[to] == '.'))
        to++;
    if (to == from)
        return;
    char words[64];
    if (throw(change, 6) == 0) {
        snprintf(words, sizeof words, "%s", odd[throw(change, sizeof odd / sizeof *odd)]);
    } else {
        double was = 0;
        snprintf(words, sizeof words, "%.*s", (int)(to - from), change->text + from);
        sscanf(words, "%lf", &was);
        snprintf(words, sizeof words, "%.4g", was * (0.5 + throw(change, 1000) / 800.0));
    }
    put(change, (struct span){from, to}, words, strlen(words));
}

/* Another unit behind the number: mostly of the same dimension's row. */
static void change_unit(struct change *change)
{
    static const char *const units[] = {"mm", "in", "bar", "psi", "N",   "lbf", "kg",
                                        "m",  "%",  "mL",  "cc",  "deg", "s",   "MPa"};
    struct span value = value_of(change, some_value_line(change));
    size_t from = value.to;
    while (from > value.from && change->text[from - 1] != ' ')
        from--;
    if (from == value.from)
        return;
    const char *unit = units[throw(change, sizeof units / sizeof *units)];
    put(change, (struct span){from, value.to}, unit, strlen(unit));
}

/* A word of the key's own choices, or the row's example. */
static void change_choice(struct change *change)
{
    struct span line = some_value_line(change);
    const struct key *row = row_of(change, key_of_line(change, line));
    const char *words = row == NULL ? NULL : row->example;
    if (row != NULL && row->choices != NULL) {
        unsigned count = 0;
        while (row->choices[count].word != NULL)
            count++;
        words = row->choices[throw(change, count)].word;
    }
    if (words != NULL)
        put(change, value_of(change, line), words, strlen(words));
}

static void swap_values(struct change *change)
{
    struct span one = value_of(change, some_value_line(change));
    struct span other = value_of(change, some_value_line(change));
    char words[256];
    int length = snprintf(words, sizeof words, "%.*s", (int)(other.to - other.from),
                          change->text + other.from);
    if (length > 0 && (size_t)length < sizeof words)
        put(change, one, words, (size_t)length);
}

static void drop_line(struct change *change)
{
    put(change, some_line(change), "", 0);
}

static void copy(struct change *change, struct span span, size_t to)
{
    char words[2048];
    size_t length = span.to - span.from;
    if (length == 0 || length > sizeof words)
        return;
    memcpy(words, change->text + span.from, length);
    put(change, (struct span){to, to}, words, length);
}

static void double_line(struct change *change)
{
    struct span line = some_line(change);
    copy(change, line, throw(change, 3) == 0 ? some_line(change).from : line.to);
}

static void drop_section(struct change *change)
{
    put(change, some_section(change), "", 0);
}

static void double_section(struct change *change)
{
    copy(change, some_section(change), some_section(change).from);
}

/* A key of the tables with its example, under some head whose last word is of its kind. */
static void add_key(struct change *change)
{
    struct span section = some_section(change);
    size_t head_end = line_end(change, section.from);
    char head[128], words[256];
    snprintf(head, sizeof head, "%.*s", (int)(head_end - section.from),
             change->text + section.from);
    for (int k = 0; k < KIND_COUNT; k++) {
        size_t count;
        const struct key *rows = key_table((enum part_kind)k, &count);
        if (count == 0 || strstr(head, kind_word((enum part_kind)k)) == NULL)
            continue;
        const struct key *row = &rows[throw(change, (unsigned)count)];
        if (row->example == NULL)
            return;
        int length = snprintf(words, sizeof words, "%s = %s\n", row->name, row->example);
        put(change, (struct span){head_end, head_end}, words, (size_t)length);
        return;
    }
}

/* Found, renewed, readings: lines that only a work file has. */
static void add_work(struct change *change)
{
    static const char *const lines[] = {
        "\n[work]\ncar = Case saloon\ndate = 2026-11-20\nopened = rear left drum\n",
        "\n[work]\ncar = Case saloon\ndate = 2026-11-20\nrenewed = brake master\n",
        "\n[work]\ncar = Case saloon\ndate = 2026-11-20\nfluid renewed = yes\n",
        "\n[found rear left drum]\npistons = stuck\nbore surface = pitted\nnipple = sheared\n",
        "\n[readings]\npedal travel = 66 mm\n",
        "\n[replaced brake master]\nbore = 7/8 in\n"};
    const char *line = lines[throw(change, sizeof lines / sizeof *lines)];
    put(change, (struct span){change->size, change->size}, line, strlen(line));
}

static void change_byte(struct change *change)
{
    static const char marks[] = "[]=,;?.#\n\t \"'-/%0\x80\xff\\";
    if (change->size > 0)
        change->text[throw(change, (unsigned)change->size)] =
            marks[throw(change, sizeof marks - 1)];
}

size_t fuzz_change(uint8_t *text, size_t size, size_t most, unsigned seed)
{
    static const struct {
        void (*by)(struct change *change);
        unsigned weight;
    } ways[] = {{change_number, 12}, {change_unit, 1}, {change_choice, 5}, {swap_values, 2},
                {drop_line, 3},      {double_line, 1}, {drop_section, 1},  {double_section, 1},
                {add_key, 5},        {add_work, 1},    {change_byte, 1}};
    struct change change = {(char *)text, size, most, seed};
    unsigned sum = 0;
    for (size_t i = 0; i < sizeof ways / sizeof *ways; i++)
        sum += ways[i].weight;
    for (unsigned times = 1 + throw(&change, 3); times > 0; times--) {
        unsigned at = throw(&change, sum);
        size_t way = 0;
        while (at >= ways[way].weight)
            at -= ways[way++].weight;
        ways[way].by(&change);
    }
    return change.size;
}
