#include "report/paint/drawing.h"

#include <setjmp.h>
#include <stdlib.h>

#include "report/paint/svg.h"

bool drawing_run(drawing_work *work, const void *order, struct bytes *out, const char **error)
{
    struct ruler ruler = {0};
    jmp_buf here;
    if (!paint_ruler_open(&ruler, error)) {
        paint_ruler_close(&ruler);
        return false;
    }
    jmp_buf *before = arena_escape_to(out->arena, &here);
    if (setjmp(here) != 0) {
        paint_ruler_close(&ruler);
        arena_escape_to(out->arena, before);
        if (!before)
            abort();
        longjmp(*before, 1);
    }
    bool done = work(&ruler, order, out, error);
    arena_escape_to(out->arena, before);
    paint_ruler_close(&ruler);
    return done;
}

static bool paint_picture(const struct ruler *ruler, const void *order, struct bytes *out,
                          const char **error)
{
    const struct picture *picture = order;
    struct sketch page;
    if (!picture->make(ruler, picture->of, out->arena, &page, error))
        return false;
    switch (picture->form) {
    case PICTURE_SVG:
        return paint_svg(&page, ruler, out, error);
    case PICTURE_PNG:
        return paint_png(&page, picture->dots, out, error);
    case PICTURE_PDF:
        break;
    }
    return paint_pdf(&page, 1, picture->title, picture->date, out, error);
}

bool picture_bytes(const struct picture *picture, struct bytes *out, const char **error)
{
    return drawing_run(paint_picture, picture, out, error);
}
