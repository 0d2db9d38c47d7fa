/* The public face: what is written to a file, whole or not at all. */
#include <errno.h>
#include <string.h>

#include "base/save.h"
#include "base/text.h"
#include "desk.h"
#include "report/diagram.h"
#include "report/sheet.h"

enum { DIAGRAM_DOTS = 200 /* to the inch */ };

static void complain(struct fp_desk *desk, const char *path, const char *id, const char *words,
                     const char *write)
{
    struct place place = {text_copy(desk->arena, path), 0, 0};
    struct message *message = messages_add(&desk->messages, SEVERITY_DANGER, id, place);
    message->words = words;
    message->write = write;
}

static enum fp_outcome save_bytes(struct fp_desk *desk, const char *path, const struct bytes *bytes,
                                  bool replace)
{
    struct save_rules rules = {desk->inputs, desk->input_count, replace};
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
    case SAVE_FAILED:
        complain(desk, path, "output-failed",
                 text_print(desk->arena, "could not be written: %s", strerror(errno)), NULL);
        return FP_OUTPUT;
    }
    return FP_OUTPUT;
}

static enum fp_outcome write_picture(struct fp_desk *desk, const char *path,
                                     const struct fp_wishes *wishes, unsigned parts,
                                     bool (*draw)(const struct result *, const char *path,
                                                  const struct fp_wishes *, struct bytes *,
                                                  const char **))
{
    ON_NO_MEMORY(desk, FP_OUTPUT);
    if (desk->car == NULL)
        return FP_INPUT;
    const char *answer = "";
    struct result *result = desk_result(desk, wishes, parts, &answer);
    if (result == NULL) {
        complain(desk, path, "wrong-option", answer, NULL);
        return FP_WRONG_USE;
    }
    desk_add_curves(desk, wishes, result);
    struct bytes bytes = {.arena = desk->arena};
    const char *trouble = NULL;
    if (!draw(result, path, wishes, &bytes, &trouble)) {
        complain(desk, path, "picture-failed", trouble != NULL ? trouble : "could not be drawn",
                 NULL);
        return FP_OUTPUT;
    }
    return save_bytes(desk, path, &bytes, wishes->replace);
}

static bool draw_sheet(const struct result *result, const char *path,
                       const struct fp_wishes *wishes, struct bytes *bytes, const char **trouble)
{
    (void)path;
    return sheet_pdf(result, wishes->paper == FP_LETTER ? PAPER_LETTER : PAPER_A4, bytes, trouble);
}

static bool draw_diagram(const struct result *result, const char *path,
                         const struct fp_wishes *wishes, struct bytes *bytes, const char **trouble)
{
    (void)wishes;
    if (text_ends(path, ".svg"))
        return diagram_svg(result, bytes, trouble);
    if (text_ends(path, ".png"))
        return diagram_png(result, DIAGRAM_DOTS, bytes, trouble);
    if (text_ends(path, ".pdf"))
        return diagram_pdf(result, bytes, trouble);
    *trouble = "the name of a diagram ends with .svg, .png or .pdf";
    return false;
}

enum fp_outcome fp_write_sheet(struct fp_desk *desk, const char *path,
                               const struct fp_wishes *wishes)
{
    return write_picture(desk, path, wishes, RESULT_FIGURES | RESULT_JUDGED | RESULT_PLAN,
                         draw_sheet);
}

enum fp_outcome fp_write_diagram(struct fp_desk *desk, const char *path,
                                 const struct fp_wishes *wishes)
{
    return write_picture(desk, path, wishes, RESULT_PLAN, draw_diagram);
}
