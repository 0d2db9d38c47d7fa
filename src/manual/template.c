#include "manual/template.h"

#include "input/key_words.h"
#include "parts/keys/key.h"

#define WIDTH 80

/* Where the comment behind a short line begins. */
#define COMMENT 32

static void add_comment(struct text *into, const char *words)
{
    text_add(into, "; ");
    struct text wrapped = text_start(into->arena);
    text_add_wrapped(&wrapped, words, 2, 0, WIDTH - 2);
    for (const char *letter = wrapped.items; *letter != '\0'; letter++)
        text_add(into, *letter == '\n' && letter[1] != '\0' ? "\n; " : "%c", *letter);
}

/* What to say of a line: of a word from a list the other words too. */
static const char *line_help(struct arena *arena, const struct key *key)
{
    if (key->form != FORM_CHOICE || key->field == FIELD(fitted.on))
        return key->help;
    return text_print(arena, "%s (%s)", key->help, key_choice_words(arena, key));
}

void template_line(struct text *into, const struct key *key, const char *value)
{
    const char *help = line_help(into->arena, key);
    const char *line = text_print(into->arena, "%s = %s", key->name, value);
    if (text_letters(help) <= WIDTH - COMMENT - 2 && text_letters(line) < COMMENT) {
        text_add(into, "%-*s; %s\n", COMMENT, line, help);
    } else {
        add_comment(into, help);
        text_add(into, "%s\n", line);
    }
}

/* Whether a row stands among the lines of a section. */
static bool is_filled(const struct outline *outline, const struct key *key)
{
    for (size_t i = 0; i < outline->count; i++)
        if (outline->lines[i].field == key->field)
            return true;
    return false;
}

/* Names what else the section could say. */
static void add_other_keys(struct text *into, const struct outline *outline, enum part_kind kind)
{
    size_t count;
    const struct key *keys = key_table(kind, &count);
    struct text others = text_start(into->arena);
    for (size_t i = 0; i < count; i++)
        if (!is_filled(outline, &keys[i]))
            text_add(&others, "%s%s", others.count > 0 ? ", " : "also: ", keys[i].name);
    if (others.count > 0)
        add_comment(into, others.items);
}

static void add_section(struct text *into, const struct outline *outline)
{
    enum part_kind kind;
    if (!kind_of_words(outline->header, &kind))
        return;
    text_add(into, "\n[%s]\n", outline->header);
    for (size_t i = 0; i < outline->count; i++) {
        const char *value = outline->lines[i].value != NULL ? outline->lines[i].value : "?";
        template_line(into, key_of(kind, outline->lines[i].field), value);
    }
    add_other_keys(into, outline, kind);
}

static const char opening[] =
    "A description to start from. Put what you measure in place of each ?, with its unit: "
    "19.05 mm, 3/4 in, 60 bar. What stays ? is on the measuring list. Change what does not fit "
    "this car, and take out what it has not.";

static const char runs_help[] =
    "A run names in order what lies along the fluid's way. Write lengths as in 0.7 m pipe, "
    "0.36 m hose.";

/* What it was said to be, and what was taken as usual. */
static void add_kind_of_car(struct text *into, const struct starter *starter)
{
    picks taken = starter->all & ~starter->said;
    if (starter->said != 0)
        add_comment(into,
                    text_print(into->arena, "Said: %s.", picks_words(into->arena, starter->said)));
    if (taken != 0)
        add_comment(into, text_print(into->arena, "Taken as usual, to be looked at: %s.",
                                     picks_words(into->arena, taken)));
    text_add(into, ";\n");
}

void template_start(struct text *into, const struct starter *starter)
{
    add_kind_of_car(into, starter);
    add_comment(into, opening);
    for (size_t i = 0; i < starter->section_count; i++)
        add_section(into, &starter->sections[i]);
    text_add(into, "\n[all hoses]\n");
    template_line(into, key_of(KIND_HOSE, FIELD(as.hose.renewed)), "?");
    text_add(into, "\n[runs]\n");
    add_comment(into, runs_help);
    for (size_t i = 0; i < starter->run_count; i++)
        text_add(into, "%s\n", starter->runs[i]);
}
