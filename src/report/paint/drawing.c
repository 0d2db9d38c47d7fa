#include "report/paint/drawing.h"

#include <setjmp.h>
#include <stdlib.h>

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
