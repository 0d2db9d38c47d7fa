#include "asking/rough.h"

#include <string.h>

#include "input/letters.h"
#include "input/read.h"
#include "input/schema.h"
#include "input/value.h"
#include "manual/template.h"
#include "network/graph.h"
#include "parts/words.h"

void rough_read(struct rough *into, const char *text, struct arena *arena)
{
    struct source source = {"description", text, strlen(text)};
    struct messages unread = messages_start(arena);
    struct input input = {arena, &unread, source.name};
    *into = (struct rough){.text = text, .messages = messages_start(arena)};
    into->lines = lines_read(&source, &input);
    into->system = read_car(&source, arena, &into->messages);
    if (into->system == NULL)
        return;
    network_build(into->system, arena, &into->messages);
    if (messages_reach(&into->messages, SEVERITY_DANGER))
        into->system = NULL;
}

static void add_outline(struct text *into, const struct outline *outline)
{
    enum part_kind kind;
    if (!kind_of_words(outline->header, &kind))
        return;
    text_add(into, "\n[%s]\n", outline->header);
    for (size_t i = 0; i < outline->count; i++) {
        const struct key *key = key_of(kind, outline->lines[i].field);
        const char *value = outline->lines[i].value;
        bool is_title = kind == KIND_VEHICLE && key->field == FIELD(as.vehicle.title);
        text_add(into, "%s = %s\n", key->name, value != NULL && !is_title ? value : "?");
    }
}

const char *rough_of_starter(struct arena *arena, const struct starter *starter)
{
    struct text text = text_start(arena);
    struct text words = text_start(arena);
    text_add_wrapped(&words, picks_words(arena, starter->all), 2, 0, 78);
    text_add(&text, "; ");
    for (const char *letter = words.items; *letter != '\0'; letter++)
        text_add(&text, *letter == '\n' && letter[1] != '\0' ? "\n; " : "%c", *letter);
    for (size_t i = 0; i < starter->section_count; i++)
        add_outline(&text, &starter->sections[i]);
    text_add(&text, "\n[all hoses]\n%s = ?\n\n[runs]\n",
             key_of(KIND_HOSE, FIELD(as.hose.renewed))->name);
    for (size_t i = 0; i < starter->run_count; i++)
        text_add(&text, "%s\n", starter->runs[i]);
    return text.items;
}

bool entry_is_left(const struct entry *entry)
{
    return entry->value.text != NULL && value_is_asked(entry);
}

/* The first letter of a line of the text, by its number. */
static const char *line_at(const char *text, int number)
{
    for (; number > 1 && *text != '\0'; number--) {
        text += strcspn(text, "\n");
        text += *text == '\n';
    }
    return text;
}

static const char *line_end(const char *line)
{
    line += strcspn(line, "\n");
    return line + (*line == '\n');
}

/* The text with the bytes from one place to another given as other words. */
static const char *spliced(struct arena *arena, const char *text, const char *from, const char *to,
                           const char *words)
{
    struct text into = text_start(arena);
    text_add_bytes(&into, text, (size_t)(from - text));
    text_add(&into, "%s", words);
    text_add(&into, "%s", to);
    return into.items;
}

/* The words of help that template_line puts above a line, or "" where it puts them beside. */
static const char *help_above(struct arena *arena, const struct key *key, const char **whole)
{
    struct text line = text_start(arena);
    template_line(&line, key, "?");
    *whole = line.items;
    const char *last = line.items;
    for (const char *end = line_end(last); *end != '\0'; end = line_end(end))
        last = end;
    return text_copy_part(arena, line.items, (size_t)(last - line.items));
}

/* Where the help above a line begins; the line itself where there is none. */
static const char *with_help_above(struct arena *arena, const char *text, const char *line,
                                   const struct key *key)
{
    const char *whole;
    const char *above = help_above(arena, key, &whole);
    size_t length = strlen(above);
    if (length == 0 || (size_t)(line - text) < length || strncmp(line - length, above, length) != 0)
        return line;
    return line - length;
}

/* The comment behind a line's value, with its blanks, without the line's end; "" when there is none
 * or it is the help for a value not yet known. */
static const char *comment_kept(struct arena *arena, const char *line, const struct key *key)
{
    size_t length = strcspn(line, "\n");
    size_t comment = letters_comment(line, length);
    if (comment >= length)
        return "";
    const char *whole, *words = text_copy_part(arena, line + comment, length - comment);
    help_above(arena, key, &whole);
    if (strstr(whole, words) != NULL)
        return "";
    size_t blanks = comment;
    while (blanks > 0 && (line[blanks - 1] == ' ' || line[blanks - 1] == '\t'))
        blanks--;
    return text_copy_part(arena, line + blanks, length - blanks);
}

static const char *with_value(const struct rough *rough, const struct blank *blank,
                              const char *value, struct arena *arena)
{
    const char *line = line_at(rough->text, blank->entry->key.place.line);
    const char *from = with_help_above(arena, rough->text, line, blank->key);
    const char *words = text_print(arena, "%s = %s%s\n", blank->entry->key.text, value,
                                   comment_kept(arena, line, blank->key));
    return spliced(arena, rough->text, from, line_end(line), words);
}

/* The line behind which a new one of that row stands: that of the last row before it, or the
 * header. */
static int line_before(const struct blank *blank)
{
    int line = blank->section->name.place.line;
    for (size_t i = 0; i < blank->section->count; i++) {
        const struct entry *entry = &blank->section->items[i];
        const struct key *key =
            entry->key.text != NULL ? key_find(blank->kind, entry->key.text) : NULL;
        if (key == NULL || key_index(blank->kind, key) < key_index(blank->kind, blank->key))
            line = entry->key.place.line > line ? entry->key.place.line : line;
    }
    return line;
}

/* Where a new section stands: before the runs, else at the end. */
static const char *new_section_at(const struct rough *rough)
{
    const char *part;
    for (size_t i = 0; i < rough->lines.count; i++) {
        const struct written *name = &rough->lines.items[i].name;
        const struct special *special = special_find(name->text, &part);
        if (special != NULL && special_kind_of(special) == SPECIAL_RUNS)
            return line_at(rough->text, name->place.line);
    }
    return rough->text + strlen(rough->text);
}

static const char *with_line(const struct rough *rough, const struct blank *blank,
                             const char *value, struct arena *arena)
{
    const char *words = text_print(arena, "%s = %s\n", blank->key->name, value);
    if (blank->section != NULL) {
        const char *at = line_end(line_at(rough->text, line_before(blank)));
        if (at > rough->text && at[-1] != '\n')
            words = text_print(arena, "\n%s", words);
        return spliced(arena, rough->text, at, at, words);
    }
    const char *at = new_section_at(rough);
    bool ended = at == rough->text || at[-1] == '\n';
    return spliced(arena, rough->text, at, at,
                   text_print(arena, "%s%s[%s]\n%s%s", ended ? "" : "\n", *at == '\0' ? "\n" : "",
                              blank->header, words, *at == '\0' ? "" : "\n"));
}

static const char *with_length(const struct rough *rough, const struct blank *blank,
                               const char *value, struct arena *arena)
{
    const struct written *words = &blank->piece->words;
    /* Columns count letters; all before is found again in the raw line by its bytes. */
    const char *line = line_at(rough->text, words->place.line);
    const char *at = line;
    for (int column = 1; column < words->place.column && *at != '\0'; at++)
        column += (at[1] & 0xC0) != 0x80;
    const char *kind = blank->kind == KIND_PIPE ? "pipe" : "hose";
    const char *to = at + strlen(words->text);
    return spliced(arena, rough->text, at, to, text_print(arena, "%s %s", value, kind));
}

const char *rough_with(const struct rough *rough, const struct blank *blank, const char *value,
                       struct arena *arena)
{
    if (blank->piece != NULL)
        return with_length(rough, blank, value, arena);
    if (blank->entry != NULL)
        return with_value(rough, blank, value, arena);
    return with_line(rough, blank, value, arena);
}

bool section_kind(const struct section *section, enum part_kind *kind)
{
    const char *part;
    const struct special *special = special_find(section->name.text, &part);
    if (special == NULL)
        return kind_of_words(section->name.text, kind);
    *kind = special_kind_of(special) == SPECIAL_ALL_PIPES ? KIND_PIPE : KIND_HOSE;
    return special_kind_of(special) == SPECIAL_ALL_PIPES ||
           special_kind_of(special) == SPECIAL_ALL_HOSES;
}

/* Whether a line has words of help already, beside it or above. */
static bool is_commented(const char *text, const char *line)
{
    size_t length = strcspn(line, "\n");
    if (letters_comment(line, length) < length)
        return true;
    const char *above = line;
    if (above > text)
        above--;
    while (above > text && above[-1] != '\n')
        above--;
    return above < line && *above == ';' && above > text;
}

static const struct key *key_on_line(const struct rough *rough, int number)
{
    for (size_t s = 0; s < rough->lines.count; s++) {
        const struct section *section = &rough->lines.items[s];
        enum part_kind kind;
        if (section->refused || !section_kind(section, &kind))
            continue;
        for (size_t i = 0; i < section->count; i++)
            if (section->items[i].key.place.line == number && entry_is_left(&section->items[i]))
                return key_find(kind, section->items[i].key.text);
    }
    return NULL;
}

const char *rough_with_help(const struct rough *rough, struct arena *arena)
{
    struct text into = text_start(arena);
    int number = 1;
    for (const char *line = rough->text; *line != '\0'; line = line_end(line), number++) {
        const struct key *key = key_on_line(rough, number);
        if (key != NULL && !is_commented(rough->text, line))
            template_line(&into, key, "?");
        else
            text_add_bytes(&into, line, (size_t)(line_end(line) - line));
    }
    return into.items;
}
