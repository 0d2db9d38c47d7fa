#include "report/words/notes.h"

#include <string.h>

#include "base/list.h"
#include "base/text.h"

struct notes {
    struct note *items;
    size_t count;
    size_t capacity;
};

static void add(struct notes *notes, struct arena *arena, const char *of, const char *words,
                bool of_part)
{
    if (words == NULL)
        return;
    for (size_t i = 0; of_part && i < notes->count; i++) {
        struct note *before = &notes->items[i];
        if (before->of_part && strcmp(before->words, words) == 0) {
            before->of = text_print(arena, "%s, %s", before->of, of);
            return;
        }
    }
    *LIST_ADD(arena, notes) = (struct note){of, words, of_part};
}

size_t notes_of(const struct system *system, struct arena *arena, struct note **notes)
{
    struct notes all = {0};
    for (int i = 0; i < system->part_count; i++)
        if (system->parts[i].kind == KIND_VEHICLE)
            add(&all, arena, "the car", system->parts[i].fitted.note, false);
    for (int i = 0; i < system->work_count; i++) {
        char day[16];
        date_write(system->works[i].date, day);
        add(&all, arena, text_print(arena, "the work of %s", day), system->works[i].note, false);
    }
    for (int i = 0; i < system->part_count; i++)
        if (system->parts[i].kind != KIND_VEHICLE)
            add(&all, arena, system->parts[i].name, system->parts[i].fitted.note, true);
    *notes = all.items;
    return all.count;
}
