#include "input/build.h"

#include <string.h>

#include "base/list.h"
#include "base/text.h"
#include "input/part_rules.h"
#include "parts/words.h"

/* Sections of parts, in the order of the file. */
struct descriptions {
    struct described **items;
    size_t count;
    size_t capacity;
};

static void tell_unknown(const struct section *section, struct input *input)
{
    struct arena *arena = input->arena;
    size_t count;
    const char *const *known = kind_all_words(&count);
    const char *name = name_tidy(arena, section->name.text);
    const char *last = strrchr(name, ' ');
    last = last ? last + 1 : name;
    const char *nearest = text_nearest(last, known, count);
    struct message *message = mistake_add(
        input, MISTAKE_UNKNOWN_SECTION, section->name,
        "a header ends with the word of a kind of part (master, disc, drum, hose, ...), "
        "and %s is none",
        last);
    /* A plural has a kind as well: [front drum brakes], and [pipes] for what all of them share. */
    enum part_kind kind;
    size_t length = strlen(name);
    const char *singular = text_copy_part(arena, name, length > 0 ? length - 1 : 0);
    if (length > 1 && (name[length - 1] == 's' || name[length - 1] == 'S') &&
        name_kind(arena, singular, &kind)) {
        bool all = (kind == KIND_PIPE || kind == KIND_HOSE) && *name_stem(arena, singular) == '\0';
        message->write = all ? text_print(arena, "[all %ss]", kind_word(kind))
                             : text_print(arena, "[%s]", singular);
        return;
    }
    mistake_suggest(
        message, last, nearest,
        text_print(arena, "[%.*s%s]", (int)(last - name), name, nearest ? nearest : ""));
}

/* Keeps a special section for its step; false when it was there before. */
static bool keep_special(struct car *car, const struct section *section, enum special_kind kind)
{
    switch (kind) {
    case SPECIAL_ALL_PIPES:
        if (car->all_pipes)
            return false;
        car->all_pipes = describe(section, KIND_PIPE, car->input);
        return true;
    case SPECIAL_ALL_HOSES:
        if (car->all_hoses)
            return false;
        car->all_hoses = describe(section, KIND_HOSE, car->input);
        return true;
    case SPECIAL_RUNS:
        if (car->runs)
            return false;
        car->runs = section;
        return true;
    case SPECIAL_BLEED_ORDER:
        if (car->bleed_order)
            return false;
        car->bleed_order = section;
        return true;
    case SPECIAL_WORK:
    case SPECIAL_REPLACED:
    case SPECIAL_FOUND:
    case SPECIAL_READINGS:
    case SPECIAL_DONE:
    case SPECIAL_COUNT:
        break;
    }
    return true;
}

/* Where a special section stood first. */
static struct place first_place(const struct car *car, enum special_kind kind)
{
    const struct section *first = kind == SPECIAL_ALL_PIPES   ? car->all_pipes->section
                                  : kind == SPECIAL_ALL_HOSES ? car->all_hoses->section
                                  : kind == SPECIAL_RUNS      ? car->runs
                                                              : car->bleed_order;
    return first->name.place;
}

static void take_special(struct car *car, const struct section *section,
                         const struct special *special)
{
    struct input *input = car->input;
    if (special->in_work_file) {
        mistake_add(input, MISTAKE_WRONG_FILE, section->name,
                    "[%s] belongs in a work file, since a description is of the car as it was",
                    section->name.text);
        return;
    }
    enum special_kind kind = special_kind_of(special);
    if (!keep_special(car, section, kind)) {
        mistake_add(input, MISTAKE_DUPLICATE_SECTION, section->name,
                    "[%s] stands here a second time; put its lines into one", section->name.text)
            ->earlier = first_place(car, kind);
        return;
    }
    bool told = kind == SPECIAL_ALL_PIPES || kind == SPECIAL_ALL_HOSES;
    if (section->count == 0 && !section->missed && !told)
        mistake_add(input, MISTAKE_EMPTY_SECTION, section->name, "[%s] says nothing",
                    section->name.text);
}

/* Left and right, front and rear by header and key must not differ. */
static void check_sides(const struct described *described, struct input *input)
{
    const struct part *part = &described->part;
    enum side side = name_side(input->arena, part->name);
    enum axle axle = name_axle(input->arena, part->name);
    bool clash =
        (side != SIDE_NONE && side != part->side) || (axle != AXLE_NONE && axle != part->axle);
    const char *stem = name_stem(input->arena, part->name);
    if (words_among(stem,
                    "transmission, rear transmission, front transmission, gearbox, propshaft, "
                    "propeller shaft, prop shaft, drive shaft, output shaft"))
        mistake_add(
            input, MISTAKE_NO_AXLE, described->section->name,
            "a brake on the %s is no wheel brake, and nothing here is computed for it: leave "
            "it and its lever out, and say it in the car's note",
            stem)
            ->example = text_print(input->arena, "note = hand brake on the %s", stem);
    else if (clash)
        mistake_add(input, MISTAKE_SIDE_CLASH, described->section->name,
                    "header and key of [%s] name different sides or axles", part->name);
    else if (part->axle == AXLE_NONE && !described->section->missed)
        mistake_add(input, MISTAKE_NO_AXLE, described->section->name,
                    "a brake says by its name whether it is at the front or the rear axle")
            ->example = text_print(input->arena, "[front %s]", part->name);
}

static void sort_sections(struct car *car, const struct read_lines *document,
                          struct descriptions *descriptions)
{
    struct input *input = car->input;
    for (size_t i = 0; i < document->count; i++) {
        const struct section *section = &document->items[i];
        const char *behind;
        enum part_kind kind;
        if (section->refused)
            continue;
        const struct special *special = special_find(section->name.text, &behind);
        if (special) {
            take_special(car, section, special);
        } else if (!name_kind(input->arena, section->name.text, &kind)) {
            tell_unknown(section, input);
        } else {
            struct described *described = describe(section, kind, input);
            described->part.name = name_tidy(input->arena, section->name.text);
            part_read_name(&described->part);
            if (kind_is_brake(kind))
                check_sides(described, input);
            *LIST_ADD(input->arena, descriptions) = described;
        }
    }
}

static bool is_of_both_sides(const struct described *described)
{
    return kind_is_brake(described->part.kind) && described->part.side == SIDE_NONE;
}

static void tell_duplicate(struct car *car, const struct section *section, int before)
{
    mistake_add(car->input, MISTAKE_DUPLICATE_SECTION, section->name,
                "%s has been described before; put its lines into one section", section->name.text)
        ->earlier = car->items[before].part.place;
}

/* A section of both sides; one of a single side may stand before or behind it. */
static void add_both(struct car *car, const struct described *described)
{
    for (int side = SIDE_LEFT; side <= SIDE_RIGHT; side++) {
        const char *name = name_with_side(car->input->arena, described->part.name, (enum side)side);
        int part = roll_find(&car->roll, name);
        if (part >= 0 && car->items[part].has_both) {
            tell_duplicate(car, described->section, part);
            return;
        }
        if (part < 0) {
            car_check_name(car, name, described->section->name);
            part = car_add(car, described->part.kind, name, described->section->name,
                           HOSE_USE_NOT_SAID);
        }
        car_lay(car, part, described, ORIGIN_SHARED);
        car->items[part].has_both = true;
        car->items[part].header = described->section->name;
    }
}

static void add_one(struct car *car, const struct described *described)
{
    const char *name = described->part.name;
    int part = roll_find(&car->roll, name);
    if (part >= 0 &&
        (car->items[part].has_section || car->items[part].part.kind != described->part.kind)) {
        tell_duplicate(car, described->section, part);
        return;
    }
    if (part < 0)
        part = car_add(car, described->part.kind, name, described->section->name,
                       described->part.as.hose.use);
    car_lay(car, part, described, ORIGIN_GIVEN);
    car->items[part].has_section = true;
}

/* Copies what a part's key says of its hose into the hose, unless a section of the hose says it. */
static void hand_over(struct car *car, int hose, size_t to_field, int owner, size_t from_field)
{
    struct draft *draft = &car->items[hose];
    const struct draft *of = &car->items[owner];
    const struct key *to = key_of(KIND_HOSE, to_field);
    const struct key *from = key_of(of->part.kind, from_field);
    size_t row = key_index(KIND_HOSE, to);
    size_t from_row = key_index(of->part.kind, from);
    bool by_section = draft->entries[row] && draft->part.origins[row].kind != ORIGIN_SHARED;
    if (by_section || !of->entries[from_row])
        return;
    memcpy((char *)&draft->part + to_field, (const char *)&of->part + from_field,
           to->form == FORM_DATE ? sizeof(struct date) : sizeof(double));
    draft->part.origins[row] = of->part.origins[from_row];
    draft->entries[row] = of->entries[from_row];
}

static void add_low_pressure(struct car *car, int owner, enum hose_use use, size_t length,
                             size_t renewed)
{
    const struct draft *of = &car->items[owner];
    enum part_kind kind = of->part.kind;
    const struct entry *said = of->entries[key_index(kind, key_of(kind, length))];
    if (!said)
        said = of->entries[key_index(kind, key_of(kind, renewed))];
    if (!said)
        return;
    const char *name = text_print(car->input->arena, "%s %s hose", of->part.name,
                                  use == HOSE_SUPPLY ? "supply" : "vacuum");
    int hose = roll_find(&car->roll, name);
    if (hose < 0) {
        car_check_name(car, name, said->key);
        hose = car_add(car, KIND_HOSE, name, said->key, use);
    }
    struct draft *draft = &car->items[hose];
    const struct key *row = key_of(KIND_HOSE, FIELD(as.hose.use));
    if (!key_said(&draft->part, row)) {
        draft->part.as.hose.use = use;
        draft->part.origins[key_index(KIND_HOSE, row)].kind = ORIGIN_DERIVED;
    }
    hand_over(car, hose, FIELD(as.hose.length), owner, length);
    hand_over(car, hose, FIELD(as.hose.renewed), owner, renewed);
    draft->placed = true;
    draft->placed_at = said->key;
}

void build_parts(struct car *car, const struct read_lines *document)
{
    struct descriptions descriptions = {0};
    sort_sections(car, document, &descriptions);
    for (size_t i = 0; i < descriptions.count && !car->full; i++) {
        if (is_of_both_sides(descriptions.items[i]))
            add_both(car, descriptions.items[i]);
        else
            add_one(car, descriptions.items[i]);
    }
    size_t count = car->count;
    for (size_t i = 0; i < count && !car->full; i++) {
        part_read_name(&car->items[i].part);
        if (car->items[i].part.kind == KIND_MASTER)
            add_low_pressure(car, (int)i, HOSE_SUPPLY, FIELD(as.master.supply_hose),
                             FIELD(as.master.supply_hose_renewed));
        if (car->items[i].part.kind == KIND_SERVO)
            add_low_pressure(car, (int)i, HOSE_VACUUM, FIELD(as.servo.vacuum_hose),
                             FIELD(as.servo.vacuum_hose_renewed));
    }
}

static void check_car(struct car *car)
{
    struct input *input = car->input;
    const struct draft *vehicle = NULL;
    bool has_master = false;
    for (size_t i = 0; i < car->count; i++) {
        const struct draft *draft = &car->items[i];
        has_master = has_master || draft->part.kind == KIND_MASTER;
        if (draft->part.kind != KIND_VEHICLE)
            continue;
        if (vehicle)
            mistake_add(input, MISTAKE_SECOND_VEHICLE, draft->header,
                        "a description is of one car, and this is the second")
                ->earlier = vehicle->part.place;
        else
            vehicle = draft;
    }
    if (!vehicle)
        mistake_of_file(input, MISTAKE_NO_VEHICLE,
                        "has no [vehicle] section, which says what car it is")
            ->write = "[vehicle]";
    if (!has_master)
        mistake_of_file(input, MISTAKE_NO_MASTER,
                        "has no master, so nothing can make pressure in this car")
            ->example = "[brake master]";
}

void build_finish(struct car *car)
{
    for (size_t i = 0; i < car->count; i++) {
        struct draft *draft = &car->items[i];
        size_t count;
        const struct key *rows = key_table(draft->part.kind, &count);
        struct bound bound = {.rows = rows, .count = count, .entries = draft->entries};
        part_rules_check(&draft->part, draft->entries, car->input);
        if (!draft->incomplete)
            bound_require(&bound, draft->header, car->input);
        part_assume(&draft->part);
    }
    check_car(car);
}
