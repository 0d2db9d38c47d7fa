#include "manual/measuring_sheet.h"

#include <string.h>

#include "parts/keys/key.h"

#define WIDTH 80
#define BLANK "__________"

static void add_rule(struct text *into, char sign)
{
    for (int i = 0; i < WIDTH; i++)
        text_add(into, "%c", sign);
    text_add(into, "\n");
}

/* What the layout fills in, as a part, so that a row can tell whether it has meaning. */
static struct part outline_part(struct arena *arena, const struct outline *outline,
                                enum part_kind kind)
{
    struct part part;
    part_blank(&part, kind, arena);
    part.name = outline->header;
    part_read_name(&part);
    for (size_t i = 0; i < outline->count; i++) {
        const struct key *key = key_of(kind, outline->lines[i].field);
        const char *value = outline->lines[i].value;
        if (value != NULL && key->field == FIELD(as.pedal.works) && kind == KIND_PEDAL)
            part.as.pedal.works.count = strchr(value, ',') != NULL ? 2 : 1;
        if (key->form != FORM_CHOICE || value == NULL)
            continue;
        const struct choice *choice = choice_find(key, value);
        if (choice != NULL)
            key_set(&part, key, choice->value);
    }
    return part;
}

static void add_row(struct text *into, const struct key *key, bool both_sides)
{
    if (both_sides) {
        text_add(into, "  %-20s left " BLANK "  right " BLANK "   M  C  B  G\n", key->name);
    } else {
        text_add(into, "  %-36s " BLANK BLANK "   M  C  B  G\n", key->name);
    }
    text_add(into, "      ");
    text_add_wrapped(into, key->help, 6, 6, WIDTH);
    if (key->form == FORM_CHOICE) {
        struct text words = text_start(into->arena);
        for (const struct choice *choice = key->choices; choice->word != NULL; choice++)
            text_add(&words, "%s( ) %s", words.count > 0 ? "   " : "", choice->word);
        text_add(into, "      ");
        text_add_wrapped(into, words.items, 6, 6, WIDTH);
    }
}

static void add_ports(struct text *into)
{
    text_add(into, "  ports   thread (pitch gauge)   seat (flare)     leads to\n");
    for (int port = 1; port <= 3; port++)
        text_add(into, "   %d      " BLANK BLANK "   " BLANK "____   " BLANK BLANK "__\n", port);
}

static void add_section(struct text *into, const struct outline *outline)
{
    enum part_kind kind;
    if (!kind_of_words(outline->header, &kind))
        return;
    struct part part = outline_part(into->arena, outline, kind);
    bool both_sides = kind_is_brake(kind) && part.side == SIDE_NONE;
    size_t count;
    const struct key *keys = key_table(kind, &count);
    text_add(into, "\n[%s]\n", outline->header);
    for (size_t i = 0; i < count; i++)
        if (keys[i].measured && key_applies(&part, &keys[i]))
            add_row(into, &keys[i], both_sides);
    if (kind_is_wet(kind) && part_chambers(&part) > 0)
        add_ports(into);
}

/* A pipe or hose of a run: items are parted by commas, and each ends with its word. */
static void add_piece(struct text *into, const char *item, size_t length)
{
    while (length > 0 && *item == ' ')
        item++, length--;
    if (length >= 4 && strncmp(item + length - 4, "pipe", 4) == 0)
        text_add(into, "  pipe  length ________  size ______  thread ________  "
                       "flare ________  M B G\n");
    else if (length >= 4 && strncmp(item + length - 4, "hose", 4) == 0)
        text_add(into, "  hose  length ________  made ______  thread ________  "
                       "state ________  M B G\n");
    else
        text_add(into, "  %.*s\n", (int)length, item);
}

static void add_run(struct text *into, const char *run)
{
    size_t name = strcspn(run, "=");
    text_add(into, "\n%.*s\n", (int)name, run);
    for (const char *item = run + name; *item != '\0';) {
        item++; /* the sign that parts */
        size_t length = strcspn(item, ",");
        add_piece(into, item, length);
        item += length;
    }
}

static const char opening[] =
    "Write the unit beside each value. Ring where the value comes from: M measured, C cast in or "
    "printed on, B from a book, G guessed. Measure bores at three depths and two ways across: a "
    "worn bore reads over, never under. Note the tolerance where you doubt a reading.";

void measuring_sheet(struct text *into, const struct starter *starter)
{
    add_rule(into, '=');
    text_add(into, "MEASURING SHEET   ");
    text_add_wrapped(into, picks_words(into->arena, starter->all), 18, 18, WIDTH);
    add_rule(into, '=');
    text_add(into, "car " BLANK BLANK BLANK "   date " BLANK "   measured by " BLANK "\n\n");
    text_add_wrapped(into, opening, 0, 0, WIDTH);
    for (size_t i = 0; i < starter->section_count; i++)
        add_section(into, &starter->sections[i]);
    text_add(into, "\n");
    add_rule(into, '-');
    text_add(into, "PIPES AND HOSES, in the order of the fluid's way\n");
    for (size_t i = 0; i < starter->run_count; i++)
        add_run(into, starter->runs[i]);
    text_add(into, "\n");
    add_rule(into, '-');
    text_add(into, "What else was seen (leaks, rust under clips, cracked hoses):\n\n");
    for (int line = 0; line < 4; line++)
        add_rule(into, '_');
}
