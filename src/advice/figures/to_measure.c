#include "advice/figures/to_measure.h"

#include <math.h>
#include <stddef.h>
#include <stdlib.h>

#include "base/text.h"

/* What is gathered for one key of one part. */
struct gathering {
    const struct system *system;
    struct measurings list;
    struct arena *arena;
};

static const char *part_words(const struct system *system, int part)
{
    return part < 0 ? "car" : system->parts[part].name;
}

const char *cited_thing_words(struct arena *arena, const struct system *system,
                              const struct cited_key *cited)
{
    return text_print(arena, "%s of the %s", cited->key->name, part_words(system, cited->part));
}

static struct measuring *find(struct measurings *list, const struct cited_key *cited)
{
    for (int i = 0; i < list->count; i++)
        if (list->items[i].key == cited->key && list->items[i].parts[0] == cited->part)
            return &list->items[i];
    return NULL;
}

static struct measuring *add(struct gathering *gathering, const struct cited_key *cited)
{
    struct measuring *thing = find(&gathering->list, cited);
    if (thing != NULL)
        return thing;
    int *part = ARENA_NEW(gathering->arena, int);
    *part = cited->part;
    thing = &gathering->list.items[gathering->list.count++];
    *thing = (struct measuring){
        .key = cited->key, .parts = part, .part_count = 1, .share = NAN, .tells = 0};
    return thing;
}

static void gather_assumed(struct gathering *gathering, const struct figure *figure)
{
    for (int k = 0; k < figure->assumed_count; k++) {
        const struct cited_key *cited = &figure->assumed[k];
        if (!cited->key->measured || !(cited->share > 0))
            continue;
        struct measuring *thing = add(gathering, cited);
        thing->figures++;
        thing->tells += fmin(cited->share, 1);
        if (!(cited->share <= thing->share)) {
            thing->share = cited->share;
            thing->most = figure;
        }
    }
}

static void gather_needs(struct gathering *gathering, const struct figure *figure)
{
    for (int k = 0; k < figure->needs_count; k++) {
        const struct cited_key *cited = &figure->needs[k];
        if (!cited->key->measured)
            continue;
        struct measuring *thing = add(gathering, cited);
        thing->missing = true;
        thing->figures++;
        thing->tells += 1.0 / figure->needs_count;
        if (thing->most == NULL)
            thing->most = figure;
    }
}

static bool same_kind(const struct system *system, int one, int two)
{
    return one >= 0 && two >= 0 && system->parts[one].kind == system->parts[two].kind;
}

/* Left and right of an axle, or the same of several cylinders: told at once. */
static bool is_fellow(const struct system *system, const struct measuring *one,
                      const struct measuring *two)
{
    return one->key == two->key && one->missing == two->missing && one->figures == two->figures &&
           same_kind(system, one->parts[0], two->parts[0]) &&
           fabs(one->tells - two->tells) <= 1e-6 * one->tells;
}

static void take_in(struct gathering *gathering, struct measuring *thing,
                    const struct measuring *fellow)
{
    int count = thing->part_count + 1;
    int *parts = ARENA_ARRAY(gathering->arena, (size_t)count, int);
    for (int i = 0; i + 1 < count; i++)
        parts[i] = thing->parts[i];
    parts[count - 1] = fellow->parts[0];
    thing->parts = parts;
    thing->part_count = count;
    thing->tells += fellow->tells;
}

static void join_fellows(struct gathering *gathering)
{
    struct measurings *list = &gathering->list;
    int kept = 0;
    for (int i = 0; i < list->count; i++) {
        struct measuring alone = list->items[i];
        int with = 0;
        while (with < kept) {
            struct measuring one = list->items[with];
            one.tells /= one.part_count;
            if (is_fellow(gathering->system, &one, &alone))
                break;
            with++;
        }
        if (with < kept)
            take_in(gathering, &list->items[with], &alone);
        else
            list->items[kept++] = alone;
    }
    list->count = kept;
}

/* Most telling first; of two that tell alike the one that comes first in the description. */
static int by_telling(const void *a, const void *b)
{
    const struct measuring *one = a, *two = b;
    if (one->tells != two->tells)
        return one->tells > two->tells ? -1 : 1;
    if (one->parts[0] != two->parts[0])
        return one->parts[0] < two->parts[0] ? -1 : 1;
    return one->key < two->key ? -1 : one->key > two->key;
}

static const char *thing_words(struct gathering *gathering, const struct measuring *thing)
{
    struct text words = text_start(gathering->arena);
    text_add(&words, "%s of the ", thing->key->name);
    for (int i = 0; i < thing->part_count; i++)
        text_add(&words, "%s%s",
                 i == 0                       ? ""
                 : i + 1 == thing->part_count ? " and the "
                                              : ", the ",
                 part_words(gathering->system, thing->parts[i]));
    return words.items;
}

static int cited_count(const struct figures *figures)
{
    int count = 0;
    for (int i = 0; i < figures->count; i++)
        count += figures->items[i].assumed_count + figures->items[i].needs_count;
    return count;
}

struct measurings measurings_of(const struct system *system, const struct figures *figures,
                                struct arena *arena)
{
    struct gathering gathering = {.system = system, .arena = arena};
    gathering.list.items = ARENA_ARRAY(arena, (size_t)cited_count(figures) + 1, struct measuring);
    for (int i = 0; i < figures->count; i++) {
        gather_assumed(&gathering, &figures->items[i]);
        gather_needs(&gathering, &figures->items[i]);
    }
    join_fellows(&gathering);
    struct measurings *list = &gathering.list;
    qsort(list->items, (size_t)list->count, sizeof *list->items, by_telling);
    for (int i = 0; i < list->count; i++)
        list->items[i].words = thing_words(&gathering, &list->items[i]);
    return *list;
}
