#include "input/read.h"

#include <string.h>

#include "base/list.h"
#include "base/text.h"
#include "input/bind.h"
#include "input/naming.h"
#include "input/part_rules.h"
#include "input/reading_line.h"
#include "parts/words.h"

/* A work file on the way. */
struct job {
    struct input *input;
    const struct system *system;
    struct roll roll;
    struct work_file *into;
    bool tried; /* not done: nothing says when */
};

/* What a deed may be done to. */
static bool may_be(enum work_deed deed, enum part_kind kind)
{
    switch (deed) {
    case DEED_OPENED:
        return kind_is_wet(kind);
    case DEED_RAN_DRY:
        return kind == KIND_RESERVOIR;
    case DEED_FOUND:
        return kind_is_wet(kind) || kind == KIND_RESERVOIR || kind == KIND_FLUID;
    case DEED_RENEWED:
        return kind != KIND_VEHICLE && kind != KIND_FLUID;
    case DEED_REPLACED:
        return kind != KIND_VEHICLE;
    }
    return false;
}

static const char *deed_words(enum work_deed deed)
{
    static const char *const words[] = {[DEED_OPENED] = "opened",
                                        [DEED_RENEWED] = "renewed",
                                        [DEED_REPLACED] = "replaced",
                                        [DEED_FOUND] = "found at work",
                                        [DEED_RAN_DRY] = "run dry"};
    return words[deed];
}

/* Finds the parts that a name means, with a message when there are none of use. */
static int find_parts(struct job *job, enum work_deed deed, struct written name, int **parts)
{
    int count = roll_find_group(&job->roll, name.text, parts);
    int *found = *parts;
    if (count == 0) {
        const char *nearest = roll_nearest(&job->roll, name.text);
        mistake_suggest(mistake_add(job->input, MISTAKE_UNKNOWN_PART, name,
                                    "no part of this car is called %s", name.text),
                        name.text, nearest, nearest);
        return 0;
    }
    enum part_kind kind = job->system->parts[found[0]].kind;
    if (may_be(deed, kind))
        return count;
    struct message *message =
        mistake_add(job->input, MISTAKE_NOT_REPLACEABLE, name, "%s is a %s, which cannot be %s",
                    name.text, kind_word(kind), deed_words(deed));
    if (kind == KIND_FLUID)
        message->write = "fluid renewed = yes";
    return 0;
}

static struct work_item *add_item(struct job *job, enum work_deed deed, int part,
                                  struct place place)
{
    struct work_item *item = LIST_ADD(job->input->arena, job->into);
    item->deed = deed;
    item->part = part;
    item->place = place;
    return item;
}

static void take_names(struct job *job, enum work_deed deed, const struct entry *entry)
{
    if (!entry->value.text || value_is_asked(entry))
        return;
    struct written_list list = written_split(entry->value, job->input->arena);
    for (size_t i = 0; i < list.count; i++) {
        int *found;
        if (*list.items[i].text == '\0')
            continue;
        int count = find_parts(job, deed, list.items[i], &found);
        for (int j = 0; j < count; j++)
            add_item(job, deed, found[j], list.items[i].place);
    }
}

static void check_car(struct job *job, const struct bound *bound, const char *car)
{
    const char *title = system_vehicle(job->system)->title;
    if (!car || (title && words_same(title, car)))
        return;
    mistake_add(job->input, MISTAKE_OTHER_CAR, bound->entries[0]->value,
                title ? "the description given is of %s"
                      : "the description given has no title, so this cannot be told%.0s",
                title ? title : "")
        ->write = title ? text_print(job->input->arena, "car = %s", title) : NULL;
}

/* The deed that a list of names in [work] stands for; false for other rows. */
static bool deed_of_row(const struct key *key, enum work_deed *deed)
{
    static const struct {
        size_t field;
        enum work_deed deed;
    } lists[] = {{offsetof(struct work_lines, opened), DEED_OPENED},
                 {offsetof(struct work_lines, renewed), DEED_RENEWED},
                 {offsetof(struct work_lines, ran_dry), DEED_RAN_DRY}};
    for (size_t i = 0; i < sizeof lists / sizeof *lists; i++) {
        if (lists[i].field != key->field)
            continue;
        *deed = lists[i].deed;
        return true;
    }
    return false;
}

static void read_head(struct job *job, const struct section *section)
{
    struct input *input = job->input;
    size_t count;
    const struct special *special = &special_rows(&count)[SPECIAL_WORK];
    struct work_lines lines = {0};
    struct bound bound = bound_start(input->arena, special->keys, special->key_count, &lines);
    for (size_t i = 0; i < section->count; i++) {
        const struct entry *entry = &section->items[i];
        if (!bound_take(&bound, entry, input)) {
            bound_refuse(&bound, NULL, entry, section->name, input);
            continue;
        }
        enum work_deed deed;
        if (deed_of_row(&bound.rows[bound_row(&bound, entry)], &deed))
            take_names(job, deed, entry);
    }
    if (!section->missed)
        bound_require(&bound, section->name, input);
    check_car(job, &bound, lines.car);
    job->into->head = (struct work){.file = input->file,
                                    .car = lines.car,
                                    .note = lines.note,
                                    .date = lines.date,
                                    .place = section->name.place,
                                    .notes_end = job->into->head.notes_end};
    job->into->fluid_renewed = lines.fluid_renewed == YES;
    job->into->open_ends = (enum open_ends)lines.open_ends;
}

static struct work_value make_value(const struct part *part, const struct key *key,
                                    struct origin origin)
{
    struct work_value value = {.key = key, .number = key_value(part, key), .origin = origin};
    const char *field = (const char *)part + key->field;
    if (key->form == FORM_BORES)
        memcpy(&value.bores, field, sizeof value.bores);
    if (key->form == FORM_TEXT)
        memcpy(&value.text, field, sizeof value.text);
    if (key->form == FORM_DATE)
        memcpy(&value.date, field, sizeof value.date);
    if (value.origin.kind == ORIGIN_GIVEN)
        value.origin.kind = ORIGIN_WORK;
    return value;
}

/* What a part is joined to cannot be changed by work. */
static bool may_change(struct job *job, const struct key *key, const struct entry *entry)
{
    bool joins = key->form == FORM_PART || key->form == FORM_PARTS || key->form == FORM_WORDS;
    if (joins)
        mistake_add(job->input, MISTAKE_NOT_REPLACEABLE, entry->key,
                    "%s says what the part is joined to; that is changed in the description",
                    key->name);
    return !joins;
}

/* The part as it is with what the work changes, by the rules across keys. */
static void check_replaced(struct job *job, const struct part *before, const struct part *with,
                           const struct bound *bound)
{
    struct part after = *before;
    for (size_t i = 0; i < bound->count; i++)
        if (bound->entries[i] && key_said(with, &bound->rows[i]))
            field_copy(&bound->rows[i], &after, with);
    part_rules_check(&after, bound->entries, job->input);
}

static void read_replaced(struct job *job, const struct section *section, const int *parts,
                          int part_count)
{
    struct input *input = job->input;
    enum part_kind kind = job->system->parts[parts[0]].kind;
    struct part with;
    part_blank(&with, kind, input->arena);
    size_t count;
    const struct key *rows = key_table(kind, &count);
    struct bound bound = bound_start(input->arena, rows, count, &with);
    struct work_value *values = ARENA_ARRAY(input->arena, count, struct work_value);
    size_t value_count = 0;
    for (size_t i = 0; i < section->count; i++)
        if (!bound_take(&bound, &section->items[i], input))
            bound_refuse(&bound, NULL, &section->items[i], section->name, input);
    for (size_t i = 0; i < count; i++)
        if (bound.entries[i] && may_change(job, &rows[i], bound.entries[i]))
            values[value_count++] = make_value(&with, &rows[i], bound.origins[i]);
    check_replaced(job, &job->system->parts[parts[0]], &with, &bound);
    for (int i = 0; i < part_count; i++) {
        struct work_item *item = add_item(job, DEED_REPLACED, parts[i], section->name.place);
        item->values = values;
        item->value_count = value_count;
    }
}

static void read_found_fluid(struct job *job, const struct section *section, int part)
{
    struct input *input = job->input;
    const struct key *found = key_of(KIND_FLUID, FIELD(as.fluid.found));
    struct key row = *found;
    row.others = "fluid, grade, fluid found";
    struct part with;
    part_blank(&with, KIND_FLUID, input->arena);
    struct bound bound = bound_start(input->arena, &row, 1, &with);
    for (size_t i = 0; i < section->count; i++)
        if (!bound_take(&bound, &section->items[i], input))
            bound_refuse(&bound, NULL, &section->items[i], section->name, input);
    if (!bound.entries[0])
        return;
    struct work_item *item = add_item(job, DEED_FOUND, part, section->name.place);
    item->values = ARENA_NEW(input->arena, struct work_value);
    *item->values = make_value(&with, found, bound.origins[0]);
    item->value_count = 1;
}

static void read_found(struct job *job, const struct section *section, const int *parts,
                       int part_count)
{
    if (job->system->parts[parts[0]].kind == KIND_FLUID) {
        read_found_fluid(job, section, parts[0]);
        return;
    }
    struct input *input = job->input;
    size_t count;
    const struct special *special = &special_rows(&count)[SPECIAL_FOUND];
    struct part with = {0};
    struct bound bound = bound_start(input->arena, special->keys, special->key_count, &with);
    for (size_t i = 0; i < section->count; i++)
        if (!bound_take(&bound, &section->items[i], input))
            bound_refuse(&bound, NULL, &section->items[i], section->name, input);
    for (int i = 0; i < part_count; i++)
        add_item(job, DEED_FOUND, parts[i], section->name.place)->found = with.found;
}

static void read_readings(struct job *job, const struct section *section)
{
    struct taken_reading *readings =
        ARENA_ARRAY(job->input->arena, section->count, struct taken_reading);
    size_t count = 0;
    for (size_t i = 0; i < section->count; i++) {
        const struct entry *entry = &section->items[i];
        if (!reading_line_read(entry, &readings[count], job->input))
            continue;
        bool again = false;
        for (size_t before = 0; before < count && !again; before++)
            again = reading_line_again(&readings[before], &readings[count], entry, job->input);
        if (!again)
            count++;
    }
    job->into->readings = readings;
    job->into->reading_count = count;
}

/* Value of a note: a day, and after a comma what was read. */
static bool read_note(struct job *job, const struct entry *entry, struct done_note *note)
{
    if (!entry->value.text || value_is_asked(entry))
        return false;
    const char *value = entry->value.text;
    size_t length = strcspn(value, ",");
    struct written day = written_part(job->input->arena, entry->value, 0, length);
    *note = (struct done_note){.name = entry->key.text, .place = entry->key.place};
    if (value[length] == ',')
        note->words =
            written_part(job->input->arena, entry->value, length + 1, strlen(value) - length - 1)
                .text;
    if (date_read(day.text, &note->date))
        return true;
    mistake_add(job->input, MISTAKE_NOT_A_DATE, day, "a step is noted with its day, and %s is none",
                day.text)
        ->example = text_print(job->input->arena, "%s = 2026-11-21", entry->key.text);
    return false;
}

/* What the steps of a plan are called is not known here: the plan tells of notes that are none. */
static void read_done(struct job *job, const struct section *section)
{
    struct done_note *notes = ARENA_ARRAY(job->input->arena, section->count, struct done_note);
    size_t count = 0;
    job->into->head.notes_end = section->name.place.line;
    for (size_t i = 0; i < section->count; i++) {
        const struct entry *entry = &section->items[i];
        job->into->head.notes_end = entry->key.place.line;
        if (!read_note(job, entry, &notes[count]))
            continue;
        bool again = false;
        for (size_t k = 0; k < count && !again; k++)
            if (words_same(notes[k].name, notes[count].name)) {
                again = true;
                mistake_add(job->input, MISTAKE_DUPLICATE_KEY, entry->key,
                            "%s is noted twice; leave one out", notes[count].name)
                    ->earlier = notes[k].place;
            }
        count += !again;
    }
    job->into->notes = notes;
    job->into->note_count = count;
}

static void tell_other_section(struct job *job, const struct section *section, bool known)
{
    static const char *const words[] = {"work", "replaced", "found", "readings", "done"};
    size_t length = strcspn(section->name.text, " \t");
    const char *first = text_copy_part(job->input->arena, section->name.text, length);
    const char *nearest = text_nearest(first, words, sizeof words / sizeof *words);
    if (known && !nearest) {
        mistake_add(job->input, MISTAKE_WRONG_FILE, section->name,
                    "[%s] belongs in a description; a work file has [work], [replaced NAME], "
                    "[found NAME], [readings] and [done]",
                    section->name.text);
        return;
    }
    struct message *message =
        mistake_add(job->input, MISTAKE_UNKNOWN_SECTION, section->name,
                    "a work file has [work], [replaced NAME], [found NAME], [readings] and [done]");
    mistake_suggest(message, first, nearest,
                    text_print(job->input->arena, "[%s%s]", nearest ? nearest : "",
                               section->name.text + length));
}

/* The part's name in a header: "rear left drum" of "found rear left drum". */
static struct written name_in_header(const struct section *section, const char *behind,
                                     struct arena *arena)
{
    size_t at = (size_t)(behind - section->name.text);
    return written_part(arena, section->name, at, strlen(behind));
}

/* Whether parts have the same keys, with a message when not. */
static bool of_one_kind(struct job *job, const int *parts, int count, struct written name)
{
    for (int i = 1; i < count; i++)
        if (job->system->parts[parts[i]].kind != job->system->parts[parts[0]].kind) {
            mistake_add(job->input, MISTAKE_WRONG_PART, name,
                        "these are parts of several kinds, which have other keys; write a section "
                        "for each kind")
                ->example =
                text_print(job->input->arena, "[replaced %s]", job->system->parts[parts[0]].name);
            return false;
        }
    return true;
}

static void read_section(struct job *job, const struct section *section)
{
    const char *behind;
    enum part_kind kind;
    const struct special *special = special_find(section->name.text, &behind);
    if (!special || !special->in_work_file) {
        bool known = special || name_kind(job->input->arena, section->name.text, &kind);
        tell_other_section(job, section, known);
        return;
    }
    if (section->count == 0 && !section->missed) {
        mistake_add(job->input, MISTAKE_EMPTY_SECTION, section->name, "[%s] says nothing",
                    section->name.text);
        return;
    }
    enum special_kind which = special_kind_of(special);
    if (which == SPECIAL_WORK) {
        read_head(job, section);
    } else if (which == SPECIAL_READINGS) {
        read_readings(job, section);
    } else if (which == SPECIAL_DONE) {
        read_done(job, section);
    } else {
        bool replaced = which == SPECIAL_REPLACED;
        int *parts;
        struct written name = name_in_header(section, behind, job->input->arena);
        int count = find_parts(job, replaced ? DEED_REPLACED : DEED_FOUND, name, &parts);
        if (count > 0 && replaced && !of_one_kind(job, parts, count, name))
            return;
        if (count > 0 && replaced)
            read_replaced(job, section, parts, count);
        else if (count > 0)
            read_found(job, section, parts, count);
    }
}

/* The section before it with the same header, or NULL. */
static const struct section *same_section(const struct read_lines *document, size_t at,
                                          struct arena *arena)
{
    const char *key = name_key(arena, document->items[at].name.text);
    for (size_t i = 0; i < at; i++)
        if (strcmp(name_key(arena, document->items[i].name.text), key) == 0)
            return &document->items[i];
    return NULL;
}

static void read_document(struct job *job, const struct read_lines *document)
{
    bool has_head = false;
    for (size_t i = 0; i < document->count; i++) {
        const struct section *section = &document->items[i];
        has_head = has_head || words_same(section->name.text, "work");
        if (section->refused)
            continue;
        const struct section *before = same_section(document, i, job->input->arena);
        if (before)
            mistake_add(job->input, MISTAKE_DUPLICATE_SECTION, section->name,
                        "[%s] stands here a second time; put its lines into one",
                        section->name.text)
                ->earlier = before->name.place;
        else
            read_section(job, section);
    }
    if (!has_head && !job->tried)
        mistake_of_file(job->input, MISTAKE_MISSING_KEY,
                        "has no [work] section, which says on what car and when the work was done")
            ->write = "[work]";
}

static bool read_job(const struct source *source, const struct system *system, bool tried,
                     struct arena *arena, struct messages *messages, struct work_file *into)
{
    struct input input = {arena, messages, text_copy(arena, source->name)};
    struct job job = {
        .input = &input, .system = system, .roll = roll_start(arena), .into = into, .tried = tried};
    *into = (struct work_file){0};
    for (int i = 0; i < system->part_count; i++)
        roll_add(&job.roll, system->parts[i].name);
    size_t before = messages->count;
    struct read_lines document = lines_read(source, &input);
    if (document.count > 0)
        read_document(&job, &document);
    else if (messages->count == before)
        mistake_of_file(&input, MISTAKE_NOTHING_IN_IT,
                        "has no section; a work file begins with one")
            ->write = "[work]";
    bool fine = true;
    for (size_t i = before; i < messages->count; i++)
        fine = fine && messages->items[i].severity != SEVERITY_DANGER;
    messages_sort(messages);
    return fine;
}

bool read_work(const struct source *source, const struct system *system, struct arena *arena,
               struct messages *messages, struct work_file *into)
{
    return read_job(source, system, false, arena, messages, into);
}

bool read_tried(const struct source *source, const struct system *system, struct arena *arena,
                struct messages *messages, struct work_file *into)
{
    return read_job(source, system, true, arena, messages, into);
}
