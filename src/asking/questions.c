#include "asking/questions.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "base/list.h"
#include "input/naming.h"
#include "input/schema.h"
#include "parts/words.h"

/* What the list is made from. */
struct asker {
    const struct rough *rough;
    const struct starter *starter;
    const struct tellings *tellings;
    struct arena *arena;
    struct questions list;
};

/* The part that a section describes; of both sides the left one. */
static int section_part(const struct asker *asker, const struct section *section)
{
    int part = system_find(asker->rough->system, section->name.text);
    if (part < 0)
        part = system_find(asker->rough->system,
                           name_with_side(asker->arena, section->name.text, SIDE_LEFT));
    return part;
}

static const struct entry *entry_of(const struct section *section, const struct key *key,
                                    enum part_kind kind)
{
    for (size_t i = 0; i < section->count; i++)
        if (section->items[i].key.text != NULL && key_find(kind, section->items[i].key.text) == key)
            return &section->items[i];
    return NULL;
}

/* What stands there by custom, as the starter filled it in. */
static const char *guess_of(const struct asker *asker, const char *header, const struct key *key)
{
    for (size_t s = 0; asker->starter != NULL && s < asker->starter->section_count; s++) {
        const struct outline *outline = &asker->starter->sections[s];
        for (size_t i = 0; words_same(outline->header, header) && i < outline->count; i++)
            if (outline->lines[i].field == key->field && outline->lines[i].guess)
                return outline->lines[i].value;
    }
    return NULL;
}

static double telling_by(const struct asker *asker, const struct key *key, int part)
{
    double tells = 0;
    for (size_t i = 0; asker->tellings != NULL && i < asker->tellings->count; i++) {
        const struct telling *telling = &asker->tellings->items[i];
        /* What all hoses share is told by any of them. */
        if (telling->key == key && (telling->part == part || (part < 0 && key != NULL)))
            tells += telling->tells;
    }
    return tells;
}

static bool is_assumed(const struct key *key)
{
    return !isnan(key->assumed) || key->assume_by != NULL;
}

static double telling_of(const struct asker *asker, const struct question *question)
{
    const struct key *key = question->blank.key;
    double tells = telling_by(asker, key, question->part);
    bool may_stand_for = question->stage == STAGE_NEEDED && key->measured && !is_assumed(key) &&
                         key->form == FORM_QUANTITY && key->solves == SOLVES_ALL;
    if (tells == 0 && may_stand_for)
        tells = telling_by(asker, NULL, question->part);
    return tells;
}

/* Without figures: what pressures rest on before travels before the rest, and what nothing is
 * assumed for before what is. */
static double by_its_row(const struct key *key)
{
    return (key->required ? 0 : 1) + 2.0 * (double)key->solves + (is_assumed(key) ? 1 : 0);
}

static void add_question(struct asker *asker, struct question question)
{
    const double tells = telling_of(asker, &question);
    const struct key *key = question.blank.key;
    bool names_the_car =
        key->field == FIELD(as.vehicle.title) && question.blank.kind == KIND_VEHICLE;
    if (names_the_car)
        question.before = -INFINITY;
    else if (question.guess != NULL)
        question.before = -1e3;
    else
        question.before = tells > 0 ? -tells : by_its_row(key);
    question.nth = asker->list.count;
    *LIST_ADD(asker->arena, &asker->list) = question;
}

/* Whether the car says it already, by a line or by its name. */
static bool is_known(const struct part *part, const struct key *key)
{
    enum origin_kind origin = part_origin(part, key->field)->kind;
    return key_said(part, key) && origin != ORIGIN_ASSUMED && origin != ORIGIN_ASKED;
}

/* A pipe or hose has its length from its run. */
static bool is_said_by_runs(enum part_kind kind, const struct key *key)
{
    return (kind == KIND_PIPE && key->field == FIELD(as.pipe.length)) ||
           (kind == KIND_HOSE && key->field == FIELD(as.hose.length));
}

static void ask_key(struct asker *asker, const char *header, const struct section *section,
                    enum part_kind kind, const struct key *key)
{
    struct question question = {
        .id = text_print(asker->arena, "%s/%s", header, key->name),
        .blank = {.header = header, .section = section, .kind = kind, .key = key},
        .part = -1};
    if (section != NULL) {
        question.part = section_part(asker, section);
        question.blank.entry = entry_of(section, key, kind);
    }
    const struct part *part =
        question.part >= 0 ? &asker->rough->system->parts[question.part] : NULL;
    const struct entry *entry = question.blank.entry;
    bool left = entry != NULL && entry_is_left(entry);
    if (!left)
        question.guess = guess_of(asker, header, key);
    if (entry != NULL && !left && question.guess == NULL)
        return;
    if (entry == NULL && (is_said_by_runs(kind, key) ||
                          (part != NULL && (!key_applies(part, key) || is_known(part, key)))))
        return;
    question.stage = entry != NULL ? STAGE_NEEDED : key->measured ? STAGE_MEASURED : STAGE_REST;
    add_question(asker, question);
}

static void ask_section(struct asker *asker, const char *header, const struct section *section,
                        enum part_kind kind)
{
    size_t count;
    const struct key *keys = key_table(kind, &count);
    for (size_t i = 0; i < count; i++)
        ask_key(asker, header, section, kind, &keys[i]);
}

static const char *item_words(const struct run *run, size_t index)
{
    static const char *const pieces[] = {[ITEM_PIPE] = "pipe", [ITEM_HOSE] = "hose"};
    const struct run_item *item = &run->items[index];
    return item->kind == ITEM_PART ? item->words.text : pieces[item->kind];
}

/* The part that a pipe or hose of a run is: "rear feed pipe", "rear feed pipe 2"; -1 where it has
 * another name. */
static int piece_part(const struct asker *asker, const char *run, enum part_kind kind, int nth)
{
    const char *name = text_print(asker->arena, "%s %s", run, kind_word(kind));
    if (nth > 1)
        name = text_print(asker->arena, "%s %d", name, nth);
    return system_find(asker->rough->system, name);
}

/* The lengths of a run that are not said. */
static void ask_run(struct asker *asker, const struct entry *entry)
{
    struct messages unread = messages_start(asker->arena);
    struct input input = {asker->arena, &unread, ""};
    struct run run = run_read(entry, &input);
    int met[] = {[ITEM_PIPE] = 0, [ITEM_HOSE] = 0};
    for (size_t i = 0; i < run.count; i++) {
        const struct run_item *item = &run.items[i];
        bool left = item->length.text != NULL && words_same(item->length.text, "?");
        met[item->kind]++;
        if (item->kind == ITEM_PART || (item->length.text != NULL && !left))
            continue;
        enum part_kind kind = item->kind == ITEM_PIPE ? KIND_PIPE : KIND_HOSE;
        size_t field = kind == KIND_PIPE ? FIELD(as.pipe.length) : FIELD(as.hose.length);
        add_question(asker, (struct question){
                                .id = text_print(asker->arena, "%s/%zu", entry->key.text, i),
                                .stage = left ? STAGE_NEEDED : STAGE_MEASURED,
                                .blank = {"runs", NULL, kind, key_of(kind, field), entry, item},
                                .part = piece_part(asker, entry->key.text, kind, met[item->kind]),
                                .from = i > 0 ? item_words(&run, i - 1) : "",
                                .to = i + 1 < run.count ? item_words(&run, i + 1) : "",
                                .run = entry->key.text});
    }
}

static void ask_special(struct asker *asker, const struct section *section,
                        const struct special *special)
{
    if (special_kind_of(special) == SPECIAL_RUNS)
        for (size_t i = 0; i < section->count; i++)
            if (section->items[i].value.text != NULL)
                ask_run(asker, &section->items[i]);
}

/* Whether the description has that section. */
static bool has_section(const struct rough *rough, const char *name)
{
    for (size_t i = 0; i < rough->lines.count; i++)
        if (words_same(rough->lines.items[i].name.text, name))
            return true;
    return false;
}

static int by_order(const void *a, const void *b)
{
    const struct question *one = a, *two = b;
    if (one->stage != two->stage)
        return one->stage < two->stage ? -1 : 1;
    if (one->before != two->before)
        return one->before < two->before ? -1 : 1;
    return one->nth < two->nth ? -1 : one->nth > two->nth;
}

struct questions questions_of(const struct rough *rough, const struct starter *starter,
                              const struct tellings *tellings, struct arena *arena)
{
    struct asker asker = {rough, starter, tellings, arena, {0}};
    for (size_t i = 0; i < rough->lines.count; i++) {
        const struct section *section = &rough->lines.items[i];
        enum part_kind kind;
        const char *part;
        const struct special *special = special_find(section->name.text, &part);
        if (section_kind(section, &kind))
            ask_section(&asker, section->name.text, section, kind);
        else if (special != NULL)
            ask_special(&asker, section, special);
    }
    size_t count;
    const struct special *specials = special_rows(&count);
    if (!has_section(rough, specials[SPECIAL_ALL_PIPES].name))
        ask_section(&asker, specials[SPECIAL_ALL_PIPES].name, NULL, KIND_PIPE);
    if (!has_section(rough, specials[SPECIAL_ALL_HOSES].name))
        ask_section(&asker, specials[SPECIAL_ALL_HOSES].name, NULL, KIND_HOSE);
    qsort(asker.list.items, asker.list.count, sizeof *asker.list.items, by_order);
    return asker.list;
}
