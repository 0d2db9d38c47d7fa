#include "input/lines.h"

#include <ini.h>
#include <string.h>

#include "base/first_bytes.h"
#include "base/list.h"
#include "base/text.h"
#include "input/letters.h"
#include "input/naming.h"
#include "input/schema.h"

/* Where reading stands. inih asks for a line, and then calls back with its key and value. */
struct reader {
    const struct source *source;
    struct input *input;
    struct read_lines *document;
    size_t at;
    int number;
    bool told_of_cr;
    bool told_of_no_section;
    /* The line that inih has in hand. */
    bool pending;
    struct written line;
    size_t key_start, key_length, value_start;
};

static bool next_line(struct reader *reader, struct raw_line *line)
{
    const char *bytes = reader->source->bytes;
    size_t count = reader->source->count;
    if (reader->at >= count)
        return false;
    size_t end = reader->at;
    while (end < count && bytes[end] != '\n' && bytes[end] != '\r')
        end++;
    *line = (struct raw_line){bytes + reader->at, end - reader->at, ++reader->number};
    bool is_cr = end < count && bytes[end] == '\r';
    bool is_crlf = is_cr && end + 1 < count && bytes[end + 1] == '\n';
    reader->at = end + (is_crlf ? 2 : 1);
    if (is_cr && !is_crlf && !reader->told_of_cr) {
        /* A single CR at the very end of a file is the rest of a cut CR LF. */
        reader->told_of_cr = true;
        struct written at = {.place = {reader->input->file, line->number, 1}};
        mistake_add(reader->input, MISTAKE_LONE_CR, at,
                    "the line ends with CR alone; save the file with LF or CR LF line ends");
    }
    return true;
}

static struct section *last_section(struct reader *reader)
{
    struct read_lines *document = reader->document;
    return document->count > 0 ? &document->items[document->count - 1] : NULL;
}

/* A line that cannot be used leaves the section it stands in without a key that may be needed. */
static void line_is_lost(struct reader *reader)
{
    struct section *section = last_section(reader);
    if (section)
        section->missed = true;
}

static struct entry *add_entry(struct reader *reader, struct written key)
{
    struct entry *entry = LIST_ADD(reader->input->arena, last_section(reader));
    entry->key = key;
    return entry;
}

/* Whether a section has begun; the first line before any section gets a message for them all. */
static bool has_section(struct reader *reader)
{
    if (last_section(reader))
        return true;
    if (!reader->told_of_no_section)
        mistake_add(reader->input, MISTAKE_NO_SECTION, reader->line,
                    "this line stands before the first header, so it belongs to nothing")
            ->example = "[vehicle]";
    reader->told_of_no_section = true;
    return false;
}

static void add_section(struct reader *reader, struct written name, bool refused)
{
    struct section *section = LIST_ADD(reader->input->arena, reader->document);
    section->name = name;
    section->refused = refused;
}

static bool is_blank(char byte)
{
    return byte == ' ' || byte == '\t';
}

/* Says what is wrong with a header and gives whether its name is of use in spite of it. */
static bool check_header(struct reader *reader, struct written name, struct written rest,
                         bool is_closed, bool has_blanks)
{
    struct input *input = reader->input;
    struct arena *arena = input->arena;
    if (*name.text == '\0') {
        mistake_add(input, MISTAKE_EMPTY_HEADER, reader->line,
                    "the header has no name; a part's name with its kind belongs in it")
            ->example = "[rear drum]";
        return false;
    }
    if (strlen(name.text) > HEADER_MOST) {
        mistake_add(input, MISTAKE_HEADER_TOO_LONG, name,
                    "the name is longer than %d bytes; find a shorter one", HEADER_MOST);
        return false;
    }
    const char *sign = strpbrk(name.text, NAME_SIGNS);
    if (sign != NULL) {
        mistake_add(input, MISTAKE_BAD_NAME, name, "a name cannot hold the sign %c", *sign)->write =
            text_print(arena, "[%s]", name_without_signs(arena, name.text));
        return true;
    }
    if (!is_closed)
        mistake_add(input, MISTAKE_NO_BRACKET, name, "the header's closing bracket is missing")
            ->write = text_print(arena, "[%s]", name.text);
    else if (*rest.text != '\0')
        mistake_add(input, MISTAKE_TEXT_AFTER_HEADER, rest,
                    "a header stands alone on its line; a comment begins with ;")
            ->write = text_print(arena, "[%s]", name.text);
    else if (has_blanks)
        mistake_add(input, MISTAKE_BLANKS_IN_HEADER, name,
                    "blanks inside the brackets are left out")
            ->write = text_print(arena, "[%s]", name.text);
    return true;
}

static void read_header(struct reader *reader, size_t start, size_t end)
{
    struct arena *arena = reader->input->arena;
    const char *text = reader->line.text;
    const char *close = memchr(text + start, ']', end - start);
    /* A bracket within the name is told as such, not as words behind the header. */
    if (close && text[end - 1] == ']')
        close = text + end - 1;
    size_t name_end = close ? (size_t)(close - text) : end;
    struct written name = written_part(arena, reader->line, start + 1, name_end - start - 1);
    size_t rest_start = close ? name_end + 1 : end;
    struct written rest = written_part(arena, reader->line, rest_start, end - rest_start);
    bool has_blanks = close && (is_blank(text[start + 1]) || is_blank(text[name_end - 1]));
    bool is_of_use = check_header(reader, name, rest, close != NULL, has_blanks);
    /* Without its signs the name still says what the lines below it are of. */
    name.text = name_without_signs(arena, name.text);
    add_section(reader, name, !is_of_use);
}

/* The first = or : of a line, as inih looks for it; end when there is none. */
static size_t find_separator(const char *text, size_t start, size_t end)
{
    while (start < end && text[start] != '=' && text[start] != ':')
        start++;
    return start;
}

/* What is wrong with the words behind the separator; false when nothing is. */
static bool value_is_wrong(struct reader *reader, struct written key, struct written value)
{
    struct input *input = reader->input;
    struct arena *arena = input->arena;
    size_t length = strlen(value.text);
    if (length == 0) {
        mistake_add(input, MISTAKE_EMPTY_VALUE, key,
                    "nothing stands behind =; leave the line out, or write ? to have it measured")
            ->write = text_print(arena, "%s = ?", key.text);
        return true;
    }
    if (length > 1 && (*value.text == '"' || *value.text == '\'') &&
        value.text[length - 1] == *value.text) {
        mistake_add(input, MISTAKE_QUOTES, value, "a value stands without quotes")->write =
            text_print(arena, "%s = %s", key.text,
                       text_copy_part(arena, value.text + 1, length - 2));
        return true;
    }
    const char *semicolon = strchr(value.text, ';');
    if (semicolon) {
        size_t at = (size_t)(semicolon - value.text);
        struct message *message =
            mistake_add(input, MISTAKE_SEMICOLON, written_part(arena, value, at, 1),
                        "; begins a comment, with a blank before it; within words write a comma");
        const char *front = text_copy_part(arena, value.text, at);
        /* Free words go on behind it; behind anything else a comment was meant. */
        message->write = is_of_free_words(key.text)
                             ? text_print(arena, "%s = %s, %s", key.text, front,
                                          semicolon + 1 + strspn(semicolon + 1, " \t"))
                             : text_print(arena, "%s = %s %s", key.text, front, semicolon);
        return true;
    }
    const char *hash = strstr(value.text, " # ");
    if (hash) {
        size_t at = (size_t)(hash - value.text);
        mistake_add(input, MISTAKE_HASH, written_part(arena, value, at + 1, length - at - 1),
                    "behind a value, a comment begins with ;")
            ->write = text_print(arena, "%s = %s ;%s", key.text,
                                 text_copy_part(arena, value.text, at), hash + 2);
        return true;
    }
    return false;
}

/* Looks at a line that should be key = value; true when inih may have it. */
static bool check_pair(struct reader *reader, size_t start, size_t end)
{
    struct input *input = reader->input;
    struct arena *arena = input->arena;
    const char *text = reader->line.text;
    size_t separator = find_separator(text, start, end);
    struct written key = written_part(arena, reader->line, start, separator - start);
    if (separator == end || *key.text == '\0') {
        if (separator == end)
            mistake_add(input, MISTAKE_NO_SEPARATOR, key,
                        "this is neither a header nor a key with = and a value");
        else
            mistake_add(input, MISTAKE_EMPTY_KEY, reader->line,
                        "nothing stands before =; the key is missing");
        line_is_lost(reader);
        return false;
    }
    struct written value = written_part(arena, reader->line, separator + 1, end - separator - 1);
    bool is_wrong = text[separator] == ':';
    if (is_wrong)
        mistake_add(input, MISTAKE_COLON, written_part(arena, reader->line, separator, 1),
                    "key and value are parted by =, not by :")
            ->write = text_print(arena, "%s = %s", key.text, value.text);
    else
        is_wrong = value_is_wrong(reader, key, value);
    if (is_wrong) {
        add_entry(reader, key);
        return false;
    }
    reader->key_start = start;
    reader->key_length = separator - start;
    reader->value_start = separator + 1;
    return true;
}

/* Takes a line as far as it needs no splitting; true when it is a pair for inih. */
static bool take_line(struct reader *reader, struct raw_line raw, size_t *start, size_t *end)
{
    size_t comment = letters_comment(raw.bytes, raw.count);
    bool fine;
    reader->line = letters_check(raw, comment, reader->input, &fine);
    *start = 0;
    while (*start < comment && is_blank(raw.bytes[*start]))
        (*start)++;
    *end = comment;
    while (*end > *start && is_blank(raw.bytes[*end - 1]))
        (*end)--;
    bool is_header = *start < *end && raw.bytes[*start] == '[';
    if (!fine) {
        if (is_header)
            add_section(reader, reader->line, true);
        else if (*start < *end)
            line_is_lost(reader);
        return false;
    }
    if (*start == *end)
        return false;
    if (is_header) {
        read_header(reader, *start, *end);
        return false;
    }
    if (*end - *start > LINE_MOST) {
        mistake_add(reader->input, MISTAKE_LINE_TOO_LONG, reader->line,
                    "the line has %zu bytes, and %d are the most; a run can be parted at a joint, "
                    "a list goes on under its key with a number (renewed 2 = ...)",
                    *end - *start, LINE_MOST);
        line_is_lost(reader);
        return false;
    }
    return has_section(reader) && check_pair(reader, *start, *end);
}

/* inih made nothing of a line that it was given; not expected, but never passed over. */
static void tell_of_pending(struct reader *reader)
{
    if (!reader->pending)
        return;
    mistake_add(reader->input, MISTAKE_NO_SEPARATOR, reader->line, "this line cannot be read");
    reader->pending = false;
}

static char *read_line(char *into, int room, void *context)
{
    struct reader *reader = context;
    tell_of_pending(reader);
    struct raw_line raw;
    while (next_line(reader, &raw)) {
        size_t start, end;
        if (!take_line(reader, raw, &start, &end))
            continue;
        reader->pending = true;
        size_t length = end - start;
        if (room < 0 || length + 2 > (size_t)room) {
            tell_of_pending(reader);
            continue;
        }
        memcpy(into, raw.bytes + start, length);
        memcpy(into + length, "\n", 2);
        return into;
    }
    return NULL;
}

static int take_pair(void *context, const char *section, const char *name, const char *value)
{
    (void)section; /* headers never reach inih: it would not tell of an empty section */
    struct reader *reader = context;
    struct arena *arena = reader->input->arena;
    reader->pending = false;
    struct entry *entry =
        add_entry(reader, written_part(arena, reader->line, reader->key_start, reader->key_length));
    entry->key.text = text_copy(arena, name);
    entry->value = written_part(arena, reader->line, reader->value_start,
                                strlen(reader->line.text) - reader->value_start);
    entry->value.text = text_copy(arena, value);
    return 1;
}

struct read_lines lines_read(const struct source *source, struct input *input)
{
    struct read_lines document = {0};
    if (letters_are_utf_16(source->bytes, source->count)) {
        mistake_of_file(input, MISTAKE_UTF_16, "is saved as UTF-16; save it as UTF-8");
        return document;
    }
    const char *what;
    enum file_kind kind = first_bytes_kind(source->bytes, source->count, &what);
    if (kind != FILE_TEXT && kind != FILE_EMPTY) {
        mistake_of_file(input, MISTAKE_NO_TEXT, "is %s; a description or work file is plain text",
                        what);
        return document;
    }
    struct reader reader = {.source = source, .input = input, .document = &document};
    static const char mark[] = "\xEF\xBB\xBF";
    if (source->count >= 3 && memcmp(source->bytes, mark, 3) == 0)
        reader.at = 3;
    ini_parse_stream(read_line, &reader, take_pair, &reader);
    tell_of_pending(&reader);
    return document;
}
