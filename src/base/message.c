#include "base/message.h"

#include <string.h>

#include "base/list.h"

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
