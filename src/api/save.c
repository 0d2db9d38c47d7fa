/* The public face: what is written to a file, whole or not at all. */
#include <errno.h>
#include <string.h>

#include "base/save.h"
#include "base/text.h"
#include "api/desk.h"
#include "report/chart/choice_chart.h"
#include "report/diagram/diagram.h"
#include "report/sheet/sheet.h"

enum { DOTS = 200 /* to the inch */ };

/* The annex that a word names, one bit; 0: none. */
static unsigned annex_named(const char *word, size_t length)
{
    for (int i = 0; i < ANNEX_COUNT; i++)
        if (strlen(annex_word((enum annex)i)) == length &&
            strncmp(annex_word((enum annex)i), word, length) == 0)
            return 1u << i;
    return length == 3 && strncmp(word, "all", 3) == 0 ? (1u << ANNEX_COUNT) - 1 : 0;
}

static const char *annex_words(struct arena *arena)
{
    struct text words = text_start(arena);
    for (int i = 0; i < ANNEX_COUNT; i++)
        text_add(&words, "%s, ", annex_word((enum annex)i));
    text_add(&words, "all");
    return words.items;
}

/* "figures, curves" as bits. */
static bool read_annexes(const char *asked, struct arena *arena, unsigned *annexes,
                         const char **trouble)
{
    static const char between[] = " ,";
    for (const char *at = asked != NULL ? asked : ""; *(at += strspn(at, between)) != '\0';) {
        size_t length = strcspn(at, between);
        unsigned bit = annex_named(at, length);
        if (bit == 0) {
            *trouble = text_print(arena, "firmpedal: there is no annex %.*s; there are %s\n",
                                  (int)length, at, annex_words(arena));
            return false;
        }
        *annexes |= bit;
        at += length;
    }
    return true;
}

/* The files that a drawing can become, by their endings. */
struct file_row {
    enum fp_drawing drawing;
    const char *ending;
    enum file_kind kind;
    enum picture_form form;
};
static const struct file_row rows[] = {
    {FP_SHEET, ".pdf", FILE_PDF, PICTURE_PDF},   {FP_DIAGRAM, ".svg", FILE_SVG, PICTURE_SVG},
    {FP_DIAGRAM, ".png", FILE_PNG, PICTURE_PNG}, {FP_DIAGRAM, ".pdf", FILE_PDF, PICTURE_PDF},
    {FP_CHOICE, ".svg", FILE_SVG, PICTURE_SVG},  {FP_CHOICE, ".png", FILE_PNG, PICTURE_PNG},
    {FP_CHOICE, ".pdf", FILE_PDF, PICTURE_PDF},
};
enum { ROWS = sizeof rows / sizeof *rows };

static bool draw_sheet(const struct result *result, const struct fp_wishes *wishes,
                       unsigned annexes, struct bytes *bytes, const char **trouble)
{
    struct sheet_order order = {.result = result,
                                .paper = wishes->paper == FP_LETTER ? PAPER_LETTER : PAPER_A4,
                                .annexes = annexes,
                                .country = wishes->country != NULL
                                               ? wishes->country
                                               : system_vehicle(result->system)->country,
                                .version = fp_version()};
    return sheet_pdf(&order, bytes, trouble);
}

static const char *name_of(enum fp_drawing drawing)
{
    static const char *const names[] = {
        [FP_SHEET] = "sheet", [FP_DIAGRAM] = "diagram", [FP_CHOICE] = "picture"};
    return names[drawing];
}

/* The kinds of file that a drawing may replace; an empty one is no loss. */
static unsigned kinds_of(enum fp_drawing drawing)
{
    unsigned kinds = 1u << FILE_EMPTY;
    for (size_t i = 0; i < ROWS; i++)
        if (rows[i].drawing == drawing)
            kinds |= 1u << rows[i].kind;
    return kinds;
}

static const char *endings_of(struct arena *arena, enum fp_drawing drawing)
{
    size_t left = 0;
    for (size_t i = 0; i < ROWS; i++)
        left += rows[i].drawing == drawing;
    struct text words = text_start(arena);
    for (size_t i = 0; i < ROWS; i++)
        if (rows[i].drawing == drawing)
            text_add(&words, "%s%s", rows[i].ending, --left > 1 ? ", " : left == 1 ? " or " : "");
    return words.items;
}

static void complain(struct fp_desk *desk, const char *path, const char *id, const char *words,
                     const char *mend)
{
    struct place place = {text_copy(desk->arena, path), 0, 0};
    struct message *message = messages_add(&desk->messages, SEVERITY_DANGER, id, place);
    message->words = words;
    message->mend = mend;
}

static enum fp_outcome save_bytes(struct fp_desk *desk, enum fp_drawing drawing, const char *path,
                                  const struct bytes *bytes, bool replace)
{
    const char *what = "";
    struct save_rules rules = {.inputs = desk->inputs.items,
                               .input_count = desk->inputs.count,
                               .replace = replace,
                               .kinds = kinds_of(drawing),
                               .what = &what};
    switch (save_file(path, bytes->items, bytes->count, &rules)) {
    case SAVE_DONE:
        return FP_FINE;
    case SAVE_IS_AN_INPUT:
        complain(desk, path, "output-is-an-input",
                 "this is one of the files that were read; it was left as it is",
                 "another name after -o");
        return FP_OUTPUT;
    case SAVE_EXISTS:
        complain(desk, path, "output-exists", "this file is there already; it was left as it is",
                 "another name after -o, or add --replace");
        return FP_OUTPUT;
    case SAVE_IS_FOREIGN:
        complain(desk, path, "output-is-foreign",
                 text_print(desk->arena,
                            "this file is %s, and a %s replaces only what a %s can be; it was "
                            "left as it is",
                            what, name_of(drawing), name_of(drawing)),
                 "another name after -o");
        return FP_OUTPUT;
    case SAVE_CHANGED:
    case SAVE_FAILED:
        complain(desk, path, "output-failed",
                 text_print(desk->arena, "could not be written: %s", strerror(errno)), NULL);
        return FP_OUTPUT;
    }
    return FP_OUTPUT;
}

/* What a path's ending says that it is to become; NULL, with the reason as the answer, when it ends
 * as none. */
static const struct file_row *find_row(struct arena *arena, enum fp_drawing drawing,
                                       const char *path, const char **answer)
{
    for (size_t i = 0; i < ROWS; i++)
        if (rows[i].drawing == drawing && text_ends(path, rows[i].ending))
            return &rows[i];
    *answer = text_print(arena, "firmpedal: the name of a %s ends with %s; %s does not\n",
                         name_of(drawing), endings_of(arena, drawing), path);
    return NULL;
}

enum fp_outcome fp_may_draw(struct fp_desk *desk, enum fp_drawing drawing, const char *path,
                            const char **answer)
{
    ON_NO_MEMORY(desk, FP_OUTPUT);
    *answer = "";
    return find_row(desk->arena, drawing, path, answer) != NULL ? FP_FINE : FP_WRONG_USE;
}

/* What a drawing is of, with what it needs beyond the plain result; NULL with the reason. */
static struct result *result_for(struct fp_desk *desk, enum fp_drawing drawing,
                                 const struct fp_wishes *wishes, unsigned *annexes,
                                 const char **answer)
{
    static const unsigned parts[] = {[FP_SHEET] = RESULT_FIGURES | RESULT_JUDGED | RESULT_PLAN,
                                     [FP_DIAGRAM] = RESULT_PLAN,
                                     [FP_CHOICE] = 0};
    if (!read_annexes(wishes->annexes, desk->arena, annexes, answer))
        return NULL;
    struct result *result = desk_result(desk, wishes, parts[drawing], answer);
    if (result != NULL && drawing == FP_CHOICE &&
        !desk_add_choice(desk, wishes, true, result, answer))
        return NULL;
    if (result != NULL && drawing == FP_SHEET)
        desk_add_curves(desk, wishes, result);
    return result;
}

static bool draw(const struct file_row *row, const struct result *result,
                 const struct fp_wishes *wishes, unsigned annexes, struct bytes *bytes,
                 const char **trouble)
{
    switch (row->drawing) {
    case FP_SHEET:
        return draw_sheet(result, wishes, annexes, bytes, trouble);
    case FP_DIAGRAM:
        return diagram_picture(result, row->form, DOTS, bytes, trouble);
    case FP_CHOICE:
        break;
    }
    return choice_picture(result, row->form, DOTS, bytes, trouble);
}

enum fp_outcome fp_draw(struct fp_desk *desk, enum fp_drawing drawing, const char *path,
                        const struct fp_wishes *wishes)
{
    ON_NO_MEMORY(desk, FP_OUTPUT);
    if (desk->car == NULL)
        return FP_INPUT;
    const char *answer = "";
    unsigned annexes = 0;
    const struct file_row *row = find_row(desk->arena, drawing, path, &answer);
    struct result *result =
        row != NULL ? result_for(desk, drawing, wishes, &annexes, &answer) : NULL;
    if (result == NULL) {
        complain(desk, path, "wrong-option", answer, NULL);
        return FP_WRONG_USE;
    }
    struct bytes bytes = {.arena = desk->arena};
    const char *trouble = NULL;
    if (!draw(row, result, wishes, annexes, &bytes, &trouble)) {
        complain(desk, path, "picture-failed", trouble != NULL ? trouble : "could not be drawn",
                 NULL);
        return FP_OUTPUT;
    }
    return save_bytes(desk, drawing, path, &bytes, wishes->replace);
}
