#include "manual/page.h"

#include "input/key_words.h"
#include "input/mistakes.h"
#include "network/plumbing.h"
#include "network/reading_rows.h"
#include "manual/page_text.h"
#include "input/schema.h"
#include "parts/keys/key.h"
#include "units/unit.h"

/* Text of a cell: what would end the cell is kept from doing so. */
static void add_cell(struct text *into, const char *words)
{
    for (const char *letter = words; *letter != '\0'; letter++)
        text_add(into, *letter == '|' ? "\\|" : "%c", *letter);
    text_add(into, " |");
}

static void add_key(struct text *into, const struct key *key)
{
    const char *form =
        key->form == FORM_CHOICE ? "a word, see below" : key_form_words(into->arena, key);
    const char *limits = key_limit_words(into->arena, key);
    const char *usual = key_usual_words(into->arena, key);
    text_add(into, "| `%s` | %s | `%s` | ", key->name, form, key->example);
    if (usual[0] != '\0')
        add_cell(into, text_print(into->arena, "%s; usual %s", limits, usual));
    else
        add_cell(into, limits);
    text_add(into, " ");
    add_cell(into, key_unsaid_words(into->arena, key));
    text_add(into, " ");
    add_cell(into, key->help);
    text_add(into, "\n");
}

static void add_choices(struct text *into, const struct key *key)
{
    text_add(into, "\nWords of `%s`:\n\n", key->name);
    for (const struct choice *choice = key->choices; choice->word != NULL; choice++) {
        text_add(into, "- `%s`: %s", choice->word, choice->help);
        if (choice->others != NULL)
            text_add(into, " (understood too: %s)", choice->others);
        text_add(into, "\n");
    }
}

/* mount_choices is the same for all kinds and is printed once. */
static bool choices_of_its_own(const struct key *key)
{
    return key->form == FORM_CHOICE && key->field != FIELD(fitted.on);
}

static void add_keys(struct text *into, const struct key *rows, size_t count)
{
    text_add(into, "| key | value | example | limits | when it is not said | what it is |\n"
                   "| --- | --- | --- | --- | --- | --- |\n");
    for (size_t i = 0; i < count; i++)
        add_key(into, &rows[i]);
    for (size_t i = 0; i < count; i++)
        if (choices_of_its_own(&rows[i]))
            add_choices(into, &rows[i]);
    const char *before = "\nOther names understood: ";
    for (size_t i = 0; i < count; i++) {
        if (rows[i].others == NULL)
            continue;
        text_add(into, "%s`%s`: %s", before, rows[i].name, rows[i].others);
        before = "; ";
    }
    text_add(into, before[0] == ';' ? ".\n\n" : "\n");
}

static void add_kind(struct text *into, enum part_kind kind)
{
    size_t count;
    const struct key *rows = key_table(kind, &count);
    text_add(into, "## `[... %s]`\n\nDescribes %s.\n\n", kind_word(kind), kind_help(kind));
    add_keys(into, rows, count);
    rows = ends_keys(kind, &count);
    if (count > 0) {
        text_add(into, "Where its place in the car is said here and not in a run:\n\n");
        add_keys(into, rows, count);
    }
}

static void add_readings(struct text *into)
{
    size_t count;
    const struct reading_row *rows = reading_rows(&count);
    text_add(into,
             "What can be read, and how. `of` and the part or circuit may be left away where "
             "the car has\nbut one; without `at` it counts as read at the effort of the "
             "check. The same may be read at\nseveral efforts. It is said to agree when it is "
             "within the limit `reading-off-most`, or nearer\nthan such a reading can tell "
             "(common practice, no source).\n\n"
             "| reading | of | at an effort | value | example | limits | can tell | how to "
             "take it |\n"
             "| --- | --- | --- | --- | --- | --- | --- | --- |\n");
    for (size_t i = 0; i < count; i++) {
        const struct key *key = &rows[i].key;
        text_add(into, "| `%s` | %s | %s | %s | `%s` | ", key->name, reading_of_words(rows[i].of),
                 rows[i].at_effort ? "yes" : "no", key_form_words(into->arena, key), key->example);
        add_cell(into, key_limit_words(into->arena, key));
        text_add(into, " %s | ",
                 unit_text(into->arena, rows[i].resolves, key->dimension, UNITS_METRIC));
        add_cell(into, key->help);
        text_add(into, "\n");
    }
    text_add(into, "\n");
}

/* Sections that are no part of a car. */
static void add_special(struct text *into, const struct special *special)
{
    text_add(into, "### `[%s%s]`\n\nHolds %s.\n\n", special->name,
             special->names_part ? " PART" : "", special->help);
    if (special->left != NULL)
        text_add(into, "Before the `=` stands %s; behind it, %s.\n\n", special->left,
                 special->right);
    if (special->example != NULL)
        text_add(into, "    %s\n\n", special->example);
    if (special_kind_of(special) == SPECIAL_READINGS)
        add_readings(into);
    if (special->key_count > 0)
        add_keys(into, special->keys, special->key_count);
}

static void add_specials(struct text *into, bool in_work_file)
{
    size_t count;
    const struct special *rows = special_rows(&count);
    for (size_t i = 0; i < count; i++)
        if (rows[i].in_work_file == in_work_file)
            add_special(into, &rows[i]);
}

static void add_kind_words(struct text *into)
{
    size_t count;
    const char *const *words = kind_all_words(&count);
    text_add(into, "Words that name a kind of part:\n\n");
    for (int kind = 0; kind < KIND_COUNT; kind++) {
        text_add(into, "- `%s`: %s", kind_word((enum part_kind)kind),
                 kind_help((enum part_kind)kind));
        const char *before = ". Understood too: ";
        for (size_t i = KIND_COUNT; i < count; i++) {
            enum part_kind named;
            if (kind_of_words(words[i], &named) && (int)named == kind) {
                text_add(into, "%s`%s`", before, words[i]);
                before = ", ";
            }
        }
        text_add(into, "\n");
    }
    text_add(into, "\n");
}

static void add_units(struct text *into)
{
    text_add(into, "## Units\n\n| kind of quantity | units |\n| --- | --- |\n");
    for (int dimension = 0; dimension < DIMENSION_COUNT; dimension++) {
        const char *units = dimension_units(into->arena, (enum dimension)dimension);
        text_add(into, "| %s | ", dimension_words((enum dimension)dimension));
        add_cell(into, units[0] != '\0' ? units : "none");
        text_add(into, "\n");
    }
    text_add(into, "\n");
}

static void add_mounts(struct text *into)
{
    text_add(into, "## What a part is mounted on\n\n"
                   "The key `on` decides between which parts a hose must be.\n");
    add_choices(into, key_of(KIND_JOINT, FIELD(fitted.on)));
    text_add(into, "\n");
}

static void add_mistakes(struct text *into)
{
    size_t count;
    const struct mistake_row *rows = mistake_rows(&count);
    text_add(into,
             "## Mistakes that are reported\n\n"
             "Each message ends with one of these words. A remark does not stop the work. Of "
             "each\nfile at most %d messages are shown, mistakes before remarks; the last "
             "line says how\nmany more there are.\n\n"
             "| word | | what it means |\n| --- | --- | --- |\n",
             MOST_SHOWN);
    for (size_t i = 0; i < count; i++) {
        text_add(into, "| `%s` | %s | ", rows[i].id,
                 rows[i].severity == SEVERITY_DANGER ? "mistake" : "remark");
        add_cell(into, rows[i].help);
        text_add(into, "\n");
    }
    const struct plumbing_row *plumbing = plumbing_rows(&count);
    for (size_t i = 0; i < count; i++) {
        text_add(into, "| `%s` | %s | ", plumbing[i].id,
                 plumbing[i].severity == SEVERITY_DANGER ? "mistake" : "remark");
        add_cell(into, plumbing[i].what);
        text_add(into, "\n");
    }
}

void page_input(struct text *into)
{
    text_add(into, "%s", page_opening);
    add_kind_words(into);
    for (int kind = 0; kind < KIND_COUNT; kind++)
        add_kind(into, (enum part_kind)kind);
    add_mounts(into);
    text_add(into, "%s", page_runs);
    add_specials(into, false);
    text_add(into, "%s", page_work);
    add_specials(into, true);
    add_units(into);
    add_mistakes(into);
}
