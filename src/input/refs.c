#include "input/refs.h"

#include "base/text.h"

static const char *kinds_in_words(unsigned kinds, struct arena *arena)
{
    struct text words = text_start(arena);
    for (int kind = 0; kind < KIND_COUNT; kind++)
        if (kinds & 1u << kind)
            text_add(&words, "%s%s", words.count > 0 ? " or " : "",
                     kind_word((enum part_kind)kind));
    return words.items;
}

/* Whether a part may stand in a row, with a message when not. */
static bool fits(struct car *car, int owner, const struct key *key, int part, struct written name)
{
    unsigned kinds = key_names_kinds(car->items[owner].part.kind, key);
    const struct part *found = &car->items[part].part;
    if (!(kinds & 1u << found->kind)) {
        mistake_add(car->input, MISTAKE_WRONG_PART, name, "%s is a %s, but here stands a %s",
                    name.text, kind_word(found->kind), kinds_in_words(kinds, car->input->arena));
        return false;
    }
    if (part == owner) {
        mistake_add(car->input, MISTAKE_WRONG_PART, name, "this is the part itself");
        return false;
    }
    return true;
}

static void resolve_one(struct car *car, int owner, const struct key *key, struct written name)
{
    int part = car_one(car, name);
    if (part >= 0 && fits(car, owner, key, part, name))
        *(int *)((char *)&car->items[owner].part + key->field) = part;
}

static void resolve_list(struct car *car, int owner, const struct key *key, struct written value)
{
    struct arena *arena = car->input->arena;
    struct written_list list = written_split(value, arena);
    struct part_names names = {
        .names = ARENA_ARRAY(arena, list.count * (car->count + 2), const char *),
        .parts = ARENA_ARRAY(arena, list.count * (car->count + 2), int),
    };
    for (size_t i = 0; i < list.count; i++) {
        if (*list.items[i].text == '\0')
            continue;
        int *found;
        int count = roll_find_group(&car->roll, list.items[i].text, &found);
        if (count == 0)
            car_unknown(car, list.items[i]);
        for (int k = 0; k < count; k++) {
            if (!fits(car, owner, key, found[k], list.items[i]))
                break;
            names.names[names.count] = car->items[found[k]].part.name;
            names.parts[names.count++] = found[k];
        }
    }
    *(struct part_names *)((char *)&car->items[owner].part + key->field) = names;
}

static void resolve_draft(struct car *car, int owner)
{
    struct draft *draft = &car->items[owner];
    size_t count;
    const struct key *rows = key_table(draft->part.kind, &count);
    for (size_t i = 0; i < count; i++) {
        const struct entry *entry = draft->entries[i];
        if (!entry || !entry->value.text || value_is_asked(entry))
            continue;
        if (rows[i].form == FORM_PART)
            resolve_one(car, owner, &rows[i], entry->value);
        else if (rows[i].form == FORM_PARTS)
            resolve_list(car, owner, &rows[i], entry->value);
    }
}

/* The only part of a kind; -1 when there is none, -2 when there are several. */
static int only_one(const struct car *car, enum part_kind kind)
{
    int found = -1;
    for (size_t i = 0; i < car->count; i++) {
        if (car->items[i].part.kind != kind)
            continue;
        if (found >= 0)
            return -2;
        found = (int)i;
    }
    return found;
}

/* Takes the only part of a kind for a row that says nothing, or asks which of several. */
static void take_only(struct car *car, int owner, size_t field, enum part_kind kind)
{
    struct draft *draft = &car->items[owner];
    const struct key *key = key_of(draft->part.kind, field);
    size_t row = key_index(draft->part.kind, key);
    if (draft->entries[row] || draft->incomplete)
        return;
    int only = only_one(car, kind);
    if (only == -2)
        mistake_add(car->input, MISTAKE_WHICH_ONE, draft->header,
                    "there are several parts of kind %s; say which belongs to %s", kind_word(kind),
                    draft->part.name)
            ->example = text_print(car->input->arena, "%s = %s", key->name, key->example);
    if (only < 0)
        return;
    *(int *)((char *)&draft->part + field) = only;
    draft->part.origins[row].kind = ORIGIN_ASSUMED;
}

static bool shares_casting(const struct car *car, int master)
{
    if (car->items[master].part.as.master.casting >= 0)
        return true;
    for (size_t i = 0; i < car->count; i++)
        if (car->items[i].part.kind == KIND_MASTER &&
            car->items[i].part.as.master.casting == master)
            return true;
    return false;
}

void refs_resolve(struct car *car)
{
    for (size_t i = 0; i < car->count; i++)
        resolve_draft(car, (int)i);
    for (size_t i = 0; i < car->count; i++) {
        const struct part *part = &car->items[i].part;
        bool alone = part->kind == KIND_MASTER &&
                     (only_one(car, KIND_RESERVOIR) >= 0 || !shares_casting(car, (int)i));
        if (alone)
            take_only(car, (int)i, FIELD(as.master.reservoir), KIND_RESERVOIR);
        if (part->kind == KIND_RESERVOIR)
            take_only(car, (int)i, FIELD(as.reservoir.fluid), KIND_FLUID);
        if (part->kind == KIND_SERVO && part->as.servo.type == SERVO_DIRECT)
            take_only(car, (int)i, FIELD(as.servo.works), KIND_MASTER);
    }
}
