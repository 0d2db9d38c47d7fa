#include "network/work.h"

#include <math.h>
#include <string.h>

#include "base/text.h"

static struct date date_of(const struct work_file *file)
{
    return file->head.date;
}

/* The order in which files are laid over: by date, equal dates as they were given. */
static size_t *by_date(const struct work_file *files, size_t count, struct arena *arena)
{
    size_t *order = ARENA_ARRAY(arena, count, size_t);
    for (size_t i = 0; i < count; i++) {
        size_t place = i;
        for (; place > 0 && date_compare(date_of(&files[i]), date_of(&files[order[place - 1]])) < 0;
             place--)
            order[place] = order[place - 1];
        order[place] = i;
    }
    return order;
}

/* A part gets origins of its own before the first change; rows[kind] stay shared otherwise. */
static void own_origins(struct part *part, const struct part *original, struct arena *arena)
{
    if (!part->origins || part->origins != original->origins)
        return;
    size_t count;
    key_table(part->kind, &count);
    struct origin *own = ARENA_ARRAY(arena, count, struct origin);
    memcpy(own, part->origins, count * sizeof *own);
    part->origins = own;
}

static void set_origin(struct part *part, const struct key *key, struct origin origin)
{
    if (part->origins)
        part->origins[key_index(part->kind, key)] = origin;
}

/* The row of a kind's date renewed, NULL when it has none. */
static const struct key *renewed_key(enum part_kind kind)
{
    switch (kind) {
    case KIND_PIPE:
        return key_of(kind, FIELD(as.pipe.renewed));
    case KIND_HOSE:
        return key_of(kind, FIELD(as.hose.renewed));
    case KIND_FLUID:
        return key_of(kind, FIELD(as.fluid.renewed));
    case KIND_VEHICLE:
    case KIND_PEDAL:
    case KIND_RESERVOIR:
    case KIND_SERVO:
    case KIND_MASTER:
    case KIND_JOINT:
    case KIND_VALVE:
    case KIND_DISC:
    case KIND_DRUM:
    case KIND_SLAVE:
    case KIND_PARKING:
    case KIND_COUNT:
        break;
    }
    return NULL;
}

static void set_renewed(struct part *part, struct date date, struct place place,
                        struct arena *arena)
{
    const struct key *key = renewed_key(part->kind);
    if (!key || !date_known(date))
        return;
    char words[16];
    date_write(date, words);
    memcpy((char *)part + key->field, &date, sizeof date);
    set_origin(part, key,
               (struct origin){ORIGIN_WORK, place, text_copy(arena, words), (double)NAN});
}

static void set_value(struct part *part, const struct work_value *value)
{
    char *field = (char *)part + value->key->field;
    switch (value->key->form) {
    case FORM_QUANTITY:
    case FORM_COUNT:
    case FORM_CHOICE:
        key_set(part, value->key, value->number);
        break;
    case FORM_BORES:
        memcpy(field, &value->bores, sizeof value->bores);
        break;
    case FORM_TEXT:
        memcpy(field, &value->text, sizeof value->text);
        break;
    case FORM_DATE:
        memcpy(field, &value->date, sizeof value->date);
        break;
    case FORM_PART:
    case FORM_PARTS:
    case FORM_WORDS:
        /* what a part is joined to is not changed by work */
        return;
    }
    set_origin(part, value->key, value->origin);
}

/* What holds of a part that was just fitted, whatever stood there: a hose swells as a new one. */
static void set_new(struct part *part, struct place place)
{
    if (part->kind != KIND_HOSE)
        return;
    part->as.hose.state = HOSE_NEW;
    set_origin(part, key_of(KIND_HOSE, FIELD(as.hose.state)),
               (struct origin){ORIGIN_WORK, place, "new", (double)NAN});
    part->as.hose.expansion.m3_m = (double)NAN; /* measured on the old one */
    set_origin(part, key_of(KIND_HOSE, FIELD(as.hose.expansion)),
               (struct origin){ORIGIN_NONE, {0}, NULL, (double)NAN});
}

static void mark_done(struct part *part, const struct work_item *item, struct date date)
{
    part->done.opened = true;
    part->done.renewed |= item->deed == DEED_RENEWED;
    part->done.replaced |= item->deed == DEED_REPLACED;
    part->done.date = date;
    part->done.place = item->place;
    /* a new part has none of the faults of the old one */
    if (item->deed != DEED_OPENED)
        part->found = (struct found){0};
}

static void add_found(struct part *part, const struct found *found, struct date date)
{
    if (date_compare(part->done.date, date) < 0) {
        part->done.renewed = false;
        part->done.replaced = false;
    }
    if (found->pistons != PISTONS_NOT_SAID)
        part->found.pistons = found->pistons;
    if (found->bore != BORE_NOT_SAID)
        part->found.bore = found->bore;
    if (found->nipple != NIPPLE_NOT_SAID)
        part->found.nipple = found->nipple;
    if (found->leak != LEAK_NOT_SAID)
        part->found.leak = found->leak;
}

/* Another grade goes in: what was there before is what is found in the car. */
static void find_other_grade(struct part *part, enum fluid_grade before, struct place place)
{
    struct fluid *fluid = &part->as.fluid;
    if (before == GRADE_NOT_SAID || before == fluid->grade || fluid->found != GRADE_NOT_SAID)
        return;
    fluid->found = before;
    set_origin(part, key_of(KIND_FLUID, FIELD(as.fluid.found)),
               (struct origin){ORIGIN_WORK, place, fluid_row(before)->word, (double)NAN});
}

static void apply_item(struct system *car, const struct system *original,
                       const struct work_item *item, struct date date)
{
    struct part *part = &car->parts[item->part];
    own_origins(part, &original->parts[item->part], car->arena);
    switch (item->deed) {
    case DEED_RENEWED:
    case DEED_REPLACED: {
        enum fluid_grade before = part->kind == KIND_FLUID ? part->as.fluid.grade : GRADE_NOT_SAID;
        set_renewed(part, date, item->place, car->arena);
        set_new(part, item->place);
        for (size_t i = 0; i < item->value_count; i++)
            set_value(part, &item->values[i]);
        mark_done(part, item, date);
        if (part->kind == KIND_FLUID)
            find_other_grade(part, before, item->place);
        break;
    }
    case DEED_OPENED:
        mark_done(part, item, date);
        break;
    case DEED_RAN_DRY:
        car->ran_dry[item->part] = true;
        break;
    case DEED_FOUND:
        /* the state comes after all else of the file; a fluid's grade is a value */
        for (size_t i = 0; i < item->value_count; i++)
            set_value(part, &item->values[i]);
        break;
    }
}

static void renew_fluid(struct system *car, const struct system *original,
                        const struct work_file *file)
{
    car->fluid_renewed = true;
    car->fluid_renewed_date = file->head.date;
    for (int i = 0; i < car->part_count; i++) {
        if (car->parts[i].kind != KIND_FLUID)
            continue;
        own_origins(&car->parts[i], &original->parts[i], car->arena);
        set_renewed(&car->parts[i], file->head.date, file->head.place, car->arena);
        car->parts[i].done.renewed = true;
        car->parts[i].done.date = file->head.date;
        car->parts[i].done.place = file->head.place;
    }
}

static void add_readings(struct system *car, const struct work_file *file)
{
    for (size_t i = 0; i < file->reading_count; i++) {
        struct taken_reading *reading = &car->readings[car->reading_count++];
        *reading = file->readings[i];
        if (!date_known(reading->date))
            reading->date = file->head.date;
    }
}

static void add_notes(struct system *car, const struct work_file *file)
{
    for (size_t i = 0; i < file->note_count; i++) {
        struct done_note *note = &car->notes[car->note_count++];
        *note = file->notes[i];
        note->work = car->work_count - 1;
    }
}

static void apply_file(struct system *car, const struct system *original,
                       const struct work_file *file)
{
    const struct work *before = car->work_count > 0 ? &car->works[car->work_count - 1] : NULL;
    if (!before || file->open_ends != OPEN_ENDS_NOT_SAID ||
        date_compare(before->date, file->head.date) != 0)
        car->open_ends = file->open_ends;
    car->works[car->work_count++] = file->head;
    for (size_t i = 0; i < file->count; i++)
        apply_item(car, original, &file->items[i], file->head.date);
    for (size_t i = 0; i < file->count; i++) {
        const struct work_item *item = &file->items[i];
        if (item->deed == DEED_FOUND)
            add_found(&car->parts[item->part], &item->found, file->head.date);
    }
    if (file->fluid_renewed)
        renew_fluid(car, original, file);
    add_readings(car, file);
    add_notes(car, file);
}

/* Lists of the car's own, with room for what the files add. */
static void make_room(struct system *car, const struct system *original,
                      const struct work_file *files, size_t count)
{
    size_t readings = (size_t)car->reading_count, notes = (size_t)car->note_count;
    bool dry = car->ran_dry != NULL;
    for (size_t f = 0; f < count; f++) {
        readings += files[f].reading_count;
        notes += files[f].note_count;
        for (size_t i = 0; i < files[f].count; i++)
            dry |= files[f].items[i].deed == DEED_RAN_DRY;
    }
    car->readings = ARENA_ARRAY(car->arena, readings, struct taken_reading);
    for (int i = 0; i < car->reading_count; i++)
        car->readings[i] = original->readings[i];
    car->notes = ARENA_ARRAY(car->arena, notes, struct done_note);
    for (int i = 0; i < car->note_count; i++)
        car->notes[i] = original->notes[i];
    car->works = ARENA_ARRAY(car->arena, (size_t)car->work_count + count, struct work);
    for (int i = 0; i < car->work_count; i++)
        car->works[i] = original->works[i];
    car->ran_dry = NULL;
    if (!dry)
        return;
    car->ran_dry = ARENA_ARRAY(car->arena, (size_t)car->part_count, bool);
    for (int i = 0; i < car->part_count && original->ran_dry; i++)
        car->ran_dry[i] = original->ran_dry[i];
}

struct system *work_apply(const struct system *system, const struct work_file *files, size_t count,
                          struct arena *arena)
{
    struct system *car = system_copy(system, arena);
    car->before = system->before ? system->before : system;
    make_room(car, system, files, count);
    const size_t *order = by_date(files, count, arena);
    for (size_t i = 0; i < count; i++)
        apply_file(car, system, &files[order[i]]);
    return car;
}
