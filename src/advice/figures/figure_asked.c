#include "advice/figures/figure_asked.h"

#include <string.h>

#include "base/text.h"

/* The ids that this car has, each once. */
static const char *ids_of(const struct figures *figures, struct arena *arena)
{
    struct text words = text_start(arena);
    for (int i = 0; i < figures->count; i++) {
        const char *id = figures->items[i].row->id;
        if (i == 0 || strcmp(figures->items[i - 1].row->id, id) != 0)
            text_add(&words, "%s%s", i > 0 ? ", " : "", id);
    }
    return words.items;
}

static const char *nearest_id(const struct figures *figures, const char *id, struct arena *arena)
{
    const char **known = ARENA_ARRAY(arena, (size_t)figures->count + 1, const char *);
    for (int i = 0; i < figures->count; i++)
        known[i] = figures->items[i].row->id;
    return text_nearest(id, known, (size_t)figures->count);
}

static const char *subjects_of(const struct figures *figures, const char *id, struct arena *arena)
{
    struct text words = text_start(arena);
    for (int i = 0; i < figures->count; i++)
        if (text_same(figures->items[i].row->id, id))
            text_add(&words, "%s\"%s\"", words.count > 0 ? ", " : "", figures->items[i].of);
    return words.items;
}

int figure_asked(const struct figures *figures, const char *id, const char *of, struct arena *arena,
                 const char **trouble)
{
    int found = -1, count = 0, named = -1;
    for (int i = 0; id != NULL && i < figures->count; i++) {
        const struct figure *figure = &figures->items[i];
        if (!text_same(figure->row->id, id))
            continue;
        found = count++ == 0 ? i : found;
        if (of != NULL && text_same(figure->of, of))
            named = i;
    }
    if (named >= 0 || (count == 1 && of == NULL))
        return named >= 0 ? named : found;
    if (count > 0 && *figures->items[found].of == '\0')
        *trouble = text_print(arena, "%s is a figure of the whole car; leave --of away",
                              figures->items[found].row->id);
    else if (count > 0)
        *trouble =
            text_print(arena, "say with --of which one: %s", subjects_of(figures, id, arena));
    else if (id != NULL && nearest_id(figures, id, arena) != NULL)
        *trouble = text_print(arena, "this car has no figure %s; nearest: %s", id,
                              nearest_id(figures, id, arena));
    else
        *trouble = text_print(arena, "this car has the figures %s", ids_of(figures, arena));
    return -1;
}
