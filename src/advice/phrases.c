#include "advice/phrases.h"

#include "base/text.h"

struct name_list name_list_room(struct arena *arena, int most)
{
    struct name_list list = {ARENA_ARRAY(arena, (size_t)most + 1, const char *), 0};
    return list;
}

const char *name_list_words(struct arena *arena, const struct name_list *names)
{
    struct text words = text_start(arena);
    for (int i = 0; i < names->count; i++) {
        if (i > 0) {
            text_add(&words, "%s", i + 1 == names->count ? " and " : ", ");
        }
        text_add(&words, "%s", names->items[i]);
    }
    return words.items;
}

const char *fluid_words(const struct system *system, int master)
{
    int fluid = system_fluid_of(system, master);
    const struct fluid_row *row = fluid < 0 ? NULL : fluid_row(system->parts[fluid].as.fluid.grade);
    return row == NULL ? "fluid of the right grade" : row->word;
}

const char *adjuster_words(enum adjuster adjuster)
{
    switch (adjuster) {
    case ADJUSTER_CAM:
        return "snail cams";
    case ADJUSTER_WHEEL:
        return "adjuster wheels";
    case ADJUSTER_WEDGE:
        return "wedge adjusters";
    case ADJUSTER_SELF:
        return "self-adjusters";
    case ADJUSTER_NOT_SAID:
        break;
    }
    return "adjusters (not if they set themselves)";
}

struct adjuster_phrase *adjuster_phrases(const struct system *system, const bool *take,
                                         struct arena *arena, int *count)
{
    struct adjuster_phrase *phrases = ARENA_ARRAY(arena, ADJUSTER_SELF + 1, struct adjuster_phrase);
    *count = 0;
    for (int kind = ADJUSTER_NOT_SAID; kind <= ADJUSTER_SELF; kind++) {
        struct name_list names = name_list_room(arena, system->part_count);
        for (int i = 0; i < system->part_count; i++) {
            const struct part *part = &system->parts[i];
            if (part->kind == KIND_DRUM && take[i] && (int)part->as.drum.adjuster == kind) {
                names.items[names.count++] = part->name;
            }
        }
        if (names.count > 0) {
            phrases[(*count)++] = (struct adjuster_phrase){
                (enum adjuster)kind,
                text_print(arena, "%s of the %s", adjuster_words((enum adjuster)kind),
                           name_list_words(arena, &names))};
        }
    }
    return phrases;
}
