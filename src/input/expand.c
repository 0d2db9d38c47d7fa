#include "input/expand.h"

#include <string.h>

#include "input/expand_value.h"
#include "input/lines.h"
#include "input/order.h"
#include "input/schema.h"
#include "units/unit.h"

/* What stands behind a value goes above it where the line would be longer. */
enum { WIDTH_MOST = 80 };

/* Where the writing stands. */
struct writer {
    struct text *into;
    const struct system *system;
    struct arena *arena;
    bool must_speak; /* the present section would say nothing but comments */
};

static void line_of(struct writer *writer, const char *key, const char *value, const char *why)
{
    size_t length = strlen(key) + strlen(value) + strlen(why) + strlen(" =  ; ");
    if (*why && length > WIDTH_MOST) {
        text_add(writer->into, "; %s:\n%s = %s\n", why, key, value);
        return;
    }
    text_add(writer->into, "%s = %s%s%s\n", key, value, *why ? " ; " : "", why);
}

/* A file's name within a comment: a line end or another control character in it would end that. */
static const char *file_words(struct arena *arena, const char *file)
{
    char *words = text_copy(arena, file ? file : "");
    for (char *letter = words; *letter; letter++)
        if ((unsigned char)*letter < ' ' || *letter == 0x7F)
            *letter = '?';
    return words;
}

/* Which of the works a file is, " 2"; the car's own file is the one that the head names. */
static const char *work_words(const struct writer *writer, const char *file)
{
    for (int i = 0; i < writer->system->work_count; i++)
        if (file && strcmp(file, writer->system->works[i].file) == 0)
            return text_print(writer->arena, " %d", i + 1);
    return "";
}

/* Where a value comes from, in words. */
static const char *origin_words(const struct writer *writer, const struct origin *origin)
{
    const char *verb = "";
    switch (origin->kind) {
    case ORIGIN_NONE:
        return "";
    case ORIGIN_GIVEN:
        verb = "given";
        break;
    case ORIGIN_SHARED:
        verb = "given for several";
        break;
    case ORIGIN_WORK:
        verb = "from work";
        break;
    case ORIGIN_ASSUMED:
        return "assumed";
    case ORIGIN_DERIVED:
        return "follows from the rest";
    case ORIGIN_ASKED:
        return "to be measured";
    }
    if (origin->place.line == 0)
        return verb;
    return text_print(writer->arena, "%s%s, line %d", verb, work_words(writer, origin->place.file),
                      origin->place.line);
}

/* Whether a value comes back by itself when the rest is read. */
static bool comes_back(const struct origin *origin)
{
    return origin->kind == ORIGIN_ASSUMED || origin->kind == ORIGIN_DERIVED;
}

static bool is_asked(const struct origin *origin)
{
    return origin->text && strcmp(origin->text, "?") == 0;
}

/* A value that is only a comment, in units for people. */
static const char *comment_value(const struct writer *writer, const struct part *part,
                                 const struct key *row, const char *value)
{
    if (row->form != FORM_QUANTITY)
        return value;
    return unit_text(writer->arena, key_value(part, row), row->dimension, UNITS_METRIC);
}

static void write_row(struct writer *writer, const struct part *part, const struct key *row)
{
    const struct origin *origin = &part->origins[key_index(part->kind, row)];
    const char *value = expand_value(writer->system, part, row, writer->arena);
    const char *why = origin_words(writer, origin);
    if (is_asked(origin)) {
        line_of(writer, row->name, "?",
                value ? text_print(writer->arena, "to be measured; assumed %s",
                                   comment_value(writer, part, row, value))
                      : "to be measured");
    } else if (value && comes_back(origin) && !writer->must_speak) {
        text_add(writer->into, "; %s = %s ; %s\n", row->name,
                 comment_value(writer, part, row, value), why);
    } else if (value) {
        line_of(writer, row->name, value, why);
        writer->must_speak = false;
    }
}

/* Whether a row is written as more than a comment. */
static bool row_speaks(const struct part *part, const struct key *row)
{
    const struct origin *origin = &part->origins[key_index(part->kind, row)];
    return is_asked(origin) || (key_said(part, row) && !comes_back(origin));
}

/* A port as a run or the keys from and to name it. */
static const char *port_words(const struct writer *writer, struct port port)
{
    const struct part *part = &writer->system->parts[port.part];
    const char *behind = port.outlet;
    if (!behind && part->kind == KIND_MASTER && part_chambers(part) == 2)
        behind = part_chamber_word(part, port.chamber);
    if (part->kind == KIND_VALVE && part_chambers(part) == 4)
        behind = port.chamber < 2 ? "1" : "2";
    if (part->kind == KIND_DISC && part_chambers(part) == 2)
        behind = port.chamber == 0 ? "1" : "2";
    return behind ? text_print(writer->arena, "%s.%s", part->name, behind) : part->name;
}

/* The port that stands against an end of a pipe or hose; part -1 when none does. */
static struct port against(const struct system *system, int part, int end)
{
    for (int i = 0; i < system->connection_count; i++) {
        const struct connection *connection = &system->connections[i];
        if (connection->a.part == part && connection->a.chamber == end)
            return connection->b;
        if (connection->b.part == part && connection->b.chamber == end)
            return connection->a;
    }
    return (struct port){-1, -1, NULL};
}

static bool is_piece(const struct part *part)
{
    return part->kind == KIND_PIPE || part->kind == KIND_HOSE;
}

static void write_ends(struct writer *writer, int index)
{
    const struct part *part = &writer->system->parts[index];
    size_t count;
    const struct key *rows = ends_keys(part->kind, &count);
    if (part->kind == KIND_JOINT && part->as.joint.implied)
        line_of(writer, rows[0].name, "yes", "sprang up in a run");
    for (int end = 0; is_piece(part) && end < 2; end++) {
        struct port port = against(writer->system, index, end);
        if (port.part >= 0)
            line_of(writer, rows[end].name, port_words(writer, port), "");
    }
}

static void write_done(struct writer *writer, const struct part *part)
{
    const struct done *done = &part->done;
    if (!done->opened && !done->renewed && !done->replaced)
        return;
    char day[16];
    date_write(done->date, day);
    text_add(writer->into, "; %s %s\n",
             done->replaced  ? "replaced"
             : done->renewed ? "renewed"
                             : "opened",
             day);
}

static void write_found(struct writer *writer, const struct part *part)
{
    size_t count;
    const struct special *found = &special_rows(&count)[SPECIAL_FOUND];
    for (size_t i = 0; i < found->key_count; i++) {
        int value;
        memcpy(&value, (const char *)part + found->keys[i].field, sizeof value);
        const struct choice *choice = choice_of_value(&found->keys[i], value);
        if (choice)
            text_add(writer->into, "; found at work: %s %s\n", found->keys[i].name, choice->word);
    }
}

/* A section must say something: where all comes back by itself, the first row is said nonetheless.
 * Pipes, hoses and joints made by a run say more. */
static bool must_speak(const struct part *part)
{
    if (is_piece(part) || (part->kind == KIND_JOINT && part->as.joint.implied))
        return false;
    size_t count;
    const struct key *rows = key_table(part->kind, &count);
    for (size_t i = 0; i < count; i++)
        if (row_speaks(part, &rows[i]))
            return false;
    return true;
}

static void write_part(struct writer *writer, int index)
{
    const struct part *part = &writer->system->parts[index];
    size_t count;
    const struct key *rows = key_table(part->kind, &count);
    text_add(writer->into, "\n[%s]\n", part->name);
    writer->must_speak = must_speak(part);
    write_done(writer, part);
    write_found(writer, part);
    if (writer->system->ran_dry && writer->system->ran_dry[index])
        text_add(writer->into, "; ran dry\n");
    write_ends(writer, index);
    for (size_t i = 0; i < count; i++)
        write_row(writer, part, &rows[i]);
}

/* Parts that stand against each other without pipe or hose between. */
static void write_direct(struct writer *writer)
{
    const struct system *system = writer->system;
    int number = 0;
    for (int i = 0; i < system->connection_count; i++) {
        const struct connection *connection = &system->connections[i];
        if (is_piece(&system->parts[connection->a.part]) ||
            is_piece(&system->parts[connection->b.part]))
            continue;
        if (number == 0)
            text_add(writer->into, "\n[runs]\n");
        text_add(writer->into, "direct %d = %s, %s\n", ++number, port_words(writer, connection->a),
                 port_words(writer, connection->b));
    }
}

static void write_order(struct writer *writer)
{
    enum { ROOM = 150 };
    const struct own_order *order = &writer->system->own_order;
    size_t length = 0;
    int line = 1;
    for (size_t i = 0; i < order->count; i++) {
        const struct part *part = &writer->system->parts[order->items[i].part];
        const char *words = order_words(part, order->items[i].index, writer->arena);
        if (i == 0)
            text_add(writer->into, "\n[bleed order]\norder = %s", words);
        else if (length + strlen(words) > ROOM)
            text_add(writer->into, "\norder %d = %s", ++line, words);
        else
            text_add(writer->into, ", %s", words);
        length = length + strlen(words) > ROOM ? strlen(words) : length + strlen(words) + 2;
    }
    if (order->count > 0)
        text_add(writer->into, "\n");
}

/* What the works did to all of the car. */
static void write_work(struct writer *writer)
{
    const struct system *system = writer->system;
    static const char *const ends[] = {[OPEN_ENDS_NOT_SAID] = "drained (assumed)",
                                       [OPEN_ENDS_PLUGGED] = "plugged",
                                       [OPEN_ENDS_DRAINED] = "drained",
                                       [OPEN_ENDS_BLOWN] = "blown through"};
    for (int i = 0; i < system->work_count; i++) {
        char day[16];
        date_write(system->works[i].date, day);
        text_add(writer->into, "; from work %d, line 12: of %s, %s\n", i + 1, day,
                 file_words(writer->arena, system->works[i].file));
        if (system->works[i].note)
            text_add(writer->into, ";   %s\n", system->works[i].note);
    }
    if (system->work_count > 0)
        text_add(writer->into, "; open ends: %s\n", ends[system->open_ends]);
    if (system->fluid_renewed) {
        char day[16];
        date_write(system->fluid_renewed_date, day);
        text_add(writer->into, "; fluid renewed %s\n", day);
    }
}

void expand_car(struct text *into, const struct system *system)
{
    struct writer writer = {into, system, into->arena, false};
    const char *title = system_vehicle(system)->title;
    text_add(into, "; %s in full: every part, and where each value comes from.\n",
             title ? title : "The car");
    text_add(into, "; given, line 12: of %s\n", file_words(into->arena, system->file));
    write_work(&writer);
    for (int i = 0; i < system->part_count; i++)
        write_part(&writer, i);
    write_direct(&writer);
    write_order(&writer);
}
