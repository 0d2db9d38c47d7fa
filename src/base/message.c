#include "base/message.h"

#include <string.h>

#include "base/list.h"
#include "base/text.h"

struct messages messages_start(struct arena *arena)
{
    return (struct messages){.arena = arena};
}

struct message *messages_add(struct messages *messages, enum severity severity, const char *id,
                             struct place place)
{
    struct message *message = LIST_ADD(messages->arena, messages);
    message->severity = severity;
    message->id = id;
    message->place = place;
    return message;
}

bool messages_reach(const struct messages *messages, enum severity severity)
{
    for (size_t i = 0; i < messages->count; i++)
        if (messages->items[i].severity >= severity)
            return true;
    return false;
}

/* A message and the rank of its file, which is how many files were met before it. */
struct ranked {
    size_t file;
    struct message message;
};

static bool same_file(const char *a, const char *b)
{
    return a == b || (a && b && strcmp(a, b) == 0);
}

static bool comes_after(const struct ranked *a, const struct ranked *b)
{
    if (a->file != b->file)
        return a->file > b->file;
    if (a->message.place.line != b->message.place.line)
        return a->message.place.line > b->message.place.line;
    return a->message.place.column > b->message.place.column;
}

static void rank_files(struct arena *arena, const struct messages *messages, struct ranked *ranked)
{
    const char **files = ARENA_ARRAY(arena, messages->count, const char *);
    size_t file_count = 0;
    for (size_t i = 0; i < messages->count; i++) {
        const char *file = messages->items[i].place.file;
        size_t rank = 0;
        while (rank < file_count && !same_file(files[rank], file))
            rank++;
        if (rank == file_count)
            files[file_count++] = file;
        ranked[i] = (struct ranked){rank, messages->items[i]};
    }
}

/* Merges the sorted runs [low, middle) and [middle, high); equal ones keep their order. */
static void merge(const struct ranked *from, struct ranked *to, size_t low, size_t middle,
                  size_t high)
{
    size_t left = low;
    size_t right = middle;
    for (size_t i = low; i < high; i++) {
        bool take_right =
            left == middle || (right < high && comes_after(&from[left], &from[right]));
        to[i] = from[take_right ? right++ : left++];
    }
}

void messages_sort(struct messages *messages)
{
    size_t count = messages->count;
    if (count < 2)
        return;
    struct arena_mark mark = arena_mark(messages->arena);
    struct ranked *from = ARENA_ARRAY(messages->arena, count, struct ranked);
    struct ranked *to = ARENA_ARRAY(messages->arena, count, struct ranked);
    rank_files(messages->arena, messages, from);
    for (size_t width = 1; width < count; width *= 2) {
        for (size_t low = 0; low < count; low += 2 * width) {
            size_t middle = low + width < count ? low + width : count;
            size_t high = low + 2 * width < count ? low + 2 * width : count;
            merge(from, to, low, middle, high);
        }
        struct ranked *sorted = to;
        to = from;
        from = sorted;
    }
    for (size_t i = 0; i < count; i++)
        messages->items[i] = from[i].message;
    arena_release(messages->arena, mark);
}

/* How many messages of a file there are from one on, and how many of them no line can do without.
 */
static size_t count_file(const struct messages *messages, size_t from, size_t *dangers)
{
    size_t end = from;
    *dangers = 0;
    for (; end < messages->count &&
           same_file(messages->items[end].place.file, messages->items[from].place.file);
         end++)
        *dangers += messages->items[end].severity == SEVERITY_DANGER;
    return end - from;
}

struct messages messages_shown(struct messages *messages)
{
    struct messages shown = messages_start(messages->arena);
    messages_sort(messages);
    for (size_t from = 0, count; from < messages->count; from += count) {
        size_t dangers;
        count = count_file(messages, from, &dangers);
        size_t bad_room = dangers < MOST_SHOWN ? dangers : MOST_SHOWN;
        size_t other_room = MOST_SHOWN - bad_room, left_out = 0;
        for (size_t i = from; i < from + count; i++) {
            size_t *room = messages->items[i].severity == SEVERITY_DANGER ? &bad_room : &other_room;
            if (*room > 0) {
                *LIST_ADD(shown.arena, &shown) = messages->items[i];
                --*room;
            } else {
                left_out++;
            }
        }
        if (left_out == 0)
            continue;
        struct place place = {.file = messages->items[from].place.file};
        enum severity severity = dangers > MOST_SHOWN ? SEVERITY_DANGER : SEVERITY_ADVICE;
        messages_add(&shown, severity, "more", place)->words =
            text_print(shown.arena, "and %zu more; mend these %d first", left_out, MOST_SHOWN);
    }
    return shown;
}
