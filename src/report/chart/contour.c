#include "report/chart/contour.h"

#include <math.h>

static double at(const struct field *field, int x, int y)
{
    return field->values[x * field->high + y];
}

static struct point place(const struct field *field, double x, double y)
{
    const struct box *box = &field->box;
    return (struct point){box->left + (box->right - box->left) * x / (field->wide - 1),
                          box->bottom - (box->bottom - box->top) * y / (field->high - 1)};
}

/* Where the side of a cell from one corner to another has the value; whether it has. */
static bool crosses(const struct field *field, double value, const int from[2], const int to[2],
                    struct point *into)
{
    double a = at(field, from[0], from[1]), b = at(field, to[0], to[1]);
    if (!isfinite(a) || !isfinite(b) || (a < value) == (b < value))
        return false;
    double share = (value - a) / (b - a);
    *into = place(field, from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1]));
    return true;
}

struct point contour_draw(struct sketch *sketch, const struct field *field, double value,
                          struct pen pen)
{
    struct point last = {NAN, NAN};
    for (int x = 0; x + 1 < field->wide; x++)
        for (int y = 0; y + 1 < field->high; y++) {
            const int corners[5][2] = {{x, y}, {x + 1, y}, {x + 1, y + 1}, {x, y + 1}, {x, y}};
            struct point points[4];
            int count = 0;
            for (int side = 0; side < 4; side++)
                count += crosses(field, value, corners[side], corners[side + 1], &points[count]);
            for (int i = 0; i + 1 < count; i += 2) {
                sketch_line(sketch, points[i].x, points[i].y, points[i + 1].x, points[i + 1].y,
                            pen);
                if (!(points[i].x <= last.x))
                    last = points[i];
            }
        }
    return last;
}
