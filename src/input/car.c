#include "input/car.h"

#include <string.h>

#include "base/list.h"
#include "base/text.h"

struct described *describe(const struct section *section, enum part_kind kind, struct input *input)
{
    struct arena *arena = input->arena;
    struct described *described = ARENA_NEW(arena, struct described);
    described->section = section;
    part_blank(&described->part, kind, arena);
    size_t count;
    const struct key *rows = key_table(kind, &count);
    described->bound = bound_start(arena, rows, count, &described->part);
    described->bound.origins = described->part.origins;
    rows = ends_keys(kind, &count);
    described->where = bound_start(arena, rows, count, &described->ends);
    for (size_t i = 0; i < section->count; i++) {
        const struct entry *entry = &section->items[i];
        if (bound_take(&described->bound, entry, input) ||
            bound_take(&described->where, entry, input))
            continue;
        bound_refuse(&described->bound, &described->where, entry, section->name, input);
    }
    described->incomplete = section->missed || section->count == 0;
    if (section->count == 0 && !section->missed)
        mistake_add(input, MISTAKE_EMPTY_SECTION, section->name, "[%s] says nothing of the part",
                    section->name.text);
    return described;
}

/* Whether low-pressure hoses share a key with all hoses. */
static bool is_shared_by_all(const struct key *key)
{
    return key->field == FIELD(as.hose.renewed) || key->field == FIELD(as.hose.state);
}

static void lay_row(struct draft *draft, const struct described *from, size_t row,
                    enum origin_kind origin)
{
    const struct bound *bound = &from->bound;
    if (!bound->entries[row])
        return;
    field_copy(&bound->rows[row], &draft->part, &from->part);
    draft->entries[row] = bound->entries[row];
    draft->part.origins[row] = from->part.origins[row];
    if (draft->part.origins[row].kind == ORIGIN_GIVEN)
        draft->part.origins[row].kind = origin;
}

void car_check_name(struct car *car, const char *name, struct written at)
{
    struct arena *arena = car->input->arena;
    const char *behind, *sign = strpbrk(name, NAME_SIGNS);
    if (sign != NULL)
        mistake_add(car->input, MISTAKE_BAD_NAME, at, "a name cannot hold the sign %c", *sign)
            ->write = name_without_signs(arena, at.text);
    else if (special_find(name, &behind) != NULL)
        mistake_add(car->input, MISTAKE_BAD_NAME, at,
                    "%s would begin like a header of another kind; find another name", name);
    else if (strlen(name) > HEADER_MOST)
        mistake_add(car->input, MISTAKE_HEADER_TOO_LONG, at,
                    "the name %s is longer than %d bytes; find a shorter one", name, HEADER_MOST);
}

int car_add(struct car *car, enum part_kind kind, const char *name, struct written header,
            enum hose_use use)
{
    struct arena *arena = car->input->arena;
    if (car->count == CAR_MOST_PARTS) {
        mistake_add(car->input, MISTAKE_TOO_MANY_PARTS, header,
                    "this is part %d with all pipes and joints; a description has up to %d",
                    CAR_MOST_PARTS + 1, CAR_MOST_PARTS);
        car->full = true;
    }
    struct draft *draft = LIST_ADD(arena, car);
    part_blank(&draft->part, kind, arena);
    draft->part.name = name_tidy(arena, name);
    draft->part.place = header.place;
    draft->header = header;
    size_t count;
    key_table(kind, &count);
    draft->entries = ARENA_ARRAY(arena, count, const struct entry *);
    roll_add(&car->roll, draft->part.name);
    const struct described *all = kind == KIND_PIPE   ? car->all_pipes
                                  : kind == KIND_HOSE ? car->all_hoses
                                                      : NULL;
    bool low_pressure = use == HOSE_SUPPLY || use == HOSE_VACUUM;
    for (size_t i = 0; all && i < count; i++)
        if (!low_pressure || is_shared_by_all(&all->bound.rows[i]))
            lay_row(draft, all, i, ORIGIN_SHARED);
    return (int)car->count - 1;
}

void car_lay(struct car *car, int part, const struct described *described, enum origin_kind origin)
{
    struct draft *draft = &car->items[part];
    bool fills = origin == ORIGIN_SHARED && draft->has_section;
    for (size_t i = 0; i < described->bound.count; i++)
        if (!fills || !draft->entries[i])
            lay_row(draft, described, i, origin);
    draft->incomplete = draft->incomplete || described->incomplete;
    if (!fills)
        draft->part.place = described->section->name.place;
    if (described->where.count == 0)
        return;
    draft->ends = described->ends;
    bool is_joint = draft->part.kind == KIND_JOINT;
    draft->from = is_joint ? NULL : described->where.entries[0];
    draft->to = is_joint ? NULL : described->where.entries[1];
    if (is_joint)
        draft->part.as.joint.implied = described->ends.implied == YES;
}

void car_unknown(struct car *car, struct written name)
{
    const char *nearest = roll_nearest(&car->roll, name.text);
    mistake_suggest(mistake_add(car->input, MISTAKE_UNKNOWN_PART, name,
                                "no part of this car is called %s", name.text),
                    name.text, nearest, nearest);
}

int car_one(struct car *car, struct written name)
{
    int found[2];
    int count = roll_find_sides(&car->roll, name.text, found);
    if (count == 0)
        car_unknown(car, name);
    if (count == 2)
        mistake_add(car->input, MISTAKE_WHICH_SIDE, name,
                    "%s means both sides; say which: %s or %s", name.text,
                    car->items[found[0]].part.name, car->items[found[1]].part.name)
            ->example = car->items[found[0]].part.name;
    return count == 1 ? found[0] : -1;
}

static void count_use(struct car *car, int part)
{
    if (part >= 0)
        car->items[part].uses++;
}

void car_connect(struct car *car, struct port a, struct port b, struct written at)
{
    count_use(car, a.part);
    count_use(car, b.part);
    if (a.part < 0 || b.part < 0)
        return;
    struct link *link = LIST_ADD(car->input->arena, &car->links);
    *link = (struct link){{a, b, at.place}, at};
}

const char *car_free_joint(struct car *car, const char *words)
{
    const char *name = words;
    for (int number = 2;; number++) {
        int part = roll_find(&car->roll, name);
        if (part < 0 || (car->items[part].part.kind == KIND_JOINT && car->items[part].uses == 0))
            return name;
        name = text_print(car->input->arena, "%s %d", words, number);
    }
}

int car_spring(struct car *car, const char *name, struct written words, bool implied)
{
    int part = roll_find(&car->roll, name);
    if (part < 0) {
        car_check_name(car, name, words);
        part = car_add(car, KIND_JOINT, name, words, HOSE_USE_NOT_SAID);
        car->items[part].part.from_run = true;
        part_read_name(&car->items[part].part);
    }
    if (implied)
        car->items[part].part.as.joint.implied = 1;
    return part;
}
