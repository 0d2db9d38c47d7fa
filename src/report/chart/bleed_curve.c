#include "report/chart/bleed_curve.h"

#include <math.h>

#include "base/text.h"
#include "report/diagram/symbols.h"
#include "units/unit.h"

#define TICK_LENGTH 1.2
#define MARK_HEIGHT 5.2 /* of a row of step numbers above the curve */
#define MARK_WIDTH  5.6

struct scale {
    struct box box; /* of the curve itself */
    double most_fluid, most_air;
    double unit; /* m3 */
    const char *unit_name;
};

double bleed_curve_step(double most)
{
    if (!(most > 0) || !isfinite(most))
        return 1;
    double power = pow(10, floor(log10(most)));
    double whole = most / power;
    return whole < 1.6 ? 0.2 * power : whole < 4 ? 0.5 * power : power;
}

static double x_of(const struct scale *scale, double fluid)
{
    return scale->box.left + (scale->box.right - scale->box.left) * fluid / scale->most_fluid;
}

static double y_of(const struct scale *scale, double air)
{
    return scale->box.bottom - (scale->box.bottom - scale->box.top) * air / scale->most_air;
}

static struct scale scale_of(const struct result *result, struct box box)
{
    const struct bleed_plan *plan = result->bleed;
    struct scale scale = {.box = box};
    scale.unit_name = result->units == UNITS_IMPERIAL ? "in3" : "mL";
    scale.unit =
        unit_read(result->units == UNITS_IMPERIAL ? "1 in3" : "1 mL", DIMENSION_VOLUME).value;
    for (int i = 0; i < plan->point_count; i++) {
        scale.most_fluid = fmax(scale.most_fluid, plan->curve[i].fluid);
        scale.most_air = fmax(scale.most_air, plan->curve[i].air);
    }
    return scale;
}

static const char *tick_words(struct arena *arena, double value, double step)
{
    int decimals = step >= 1 ? 0 : (int)ceil(-log10(step) - 1e-9);
    return text_print(arena, "%.*f", decimals, value);
}

static void draw_axes(struct sketch *sketch, const struct scale *scale)
{
    const struct box *box = &scale->box;
    struct font font = {.size = 8};
    struct pen thin = pen_of(0.3, INK_BLACK), faint = pen_of(0.15, INK_LIGHT);
    double most_fluid = scale->most_fluid / scale->unit, most_air = scale->most_air / scale->unit;
    double step = bleed_curve_step(most_fluid);
    for (int i = 0; i * step <= most_fluid * (1 + 1e-9); i++) {
        double x = x_of(scale, i * step * scale->unit);
        sketch_line(sketch, x, box->bottom, x, box->bottom + TICK_LENGTH, thin);
        sketch_words(sketch, x, box->bottom + 4.2, tick_words(sketch->arena, i * step, step), font,
                     ALIGN_MIDDLE, INK_BLACK);
    }
    step = bleed_curve_step(most_air);
    for (int i = 0; i * step <= most_air * (1 + 1e-9); i++) {
        double y = y_of(scale, i * step * scale->unit);
        sketch_line(sketch, box->left, y, box->right, y, faint);
        sketch_line(sketch, box->left - TICK_LENGTH, y, box->left, y, thin);
        sketch_words(sketch, box->left - 2, y + 0.9, tick_words(sketch->arena, i * step, step),
                     font, ALIGN_RIGHT, INK_BLACK);
    }
    sketch_line(sketch, box->left, box->bottom, box->right, box->bottom, thin);
    sketch_line(sketch, box->left, box->top, box->left, box->bottom, thin);
    sketch_words(sketch, box->right, box->bottom + 7.6,
                 text_print(sketch->arena, "fluid drawn off, %s", scale->unit_name), font,
                 ALIGN_RIGHT, INK_BLACK);
}

/* The number of the step that a point belongs to; 0 for a step at no nipple. */
static int number_of_turn(const struct steps *steps, int turn)
{
    bool drawn = turn >= 0 && (size_t)turn < steps->count && steps->items[turn].nipple >= 0;
    return drawn ? steps->items[turn].number : 0;
}

/* A dashed line where each nipple begins, its number above; numbers that would meet go a row
 * higher. */
static void draw_marks(struct sketch *sketch, const struct result *result,
                       const struct scale *scale)
{
    enum { ROWS = 3 };
    const struct bleed_plan *plan = result->bleed;
    double taken[ROWS];
    for (int row = 0; row < ROWS; row++)
        taken[row] = -INFINITY;
    for (int i = 0; i < plan->point_count; i++) {
        if (i > 0 && plan->curve[i].turn == plan->curve[i - 1].turn)
            continue;
        int number = number_of_turn(&plan->steps, plan->curve[i].turn);
        double x = x_of(scale, i > 0 ? plan->curve[i - 1].fluid : 0);
        int row = 0;
        while (row < ROWS - 1 && x - taken[row] < MARK_WIDTH)
            row++;
        if (number == 0 || x - taken[row] < MARK_WIDTH)
            continue; /* steps that draw next to nothing */
        taken[row] = x;
        double y = scale->box.top - 2.4 - row * MARK_HEIGHT;
        sketch_line(sketch, x, y + 2.2, x, scale->box.bottom,
                    (struct pen){0.25, INK_DARK, DASH_SHORT});
        symbol_nipple(sketch, (struct point){x, y}, number);
    }
}

void bleed_curve_draw(struct sketch *sketch, const struct result *result, struct box box)
{
    const struct bleed_plan *plan = result->bleed;
    struct box inner = {box.left + 12, box.top + 3 * MARK_HEIGHT + 2, box.right - 4,
                        box.bottom - 9};
    struct scale scale = scale_of(result, inner);
    if (plan->point_count < 2 || !(scale.most_fluid > 0) || !(scale.most_air > 0))
        return;
    sketch_words(sketch, box.left, box.top + 2.8,
                 text_print(sketch->arena, "air left, %s", scale.unit_name),
                 (struct font){.size = 8}, ALIGN_LEFT, INK_BLACK);
    draw_axes(sketch, &scale);
    draw_marks(sketch, result, &scale);
    struct point *points = ARENA_ARRAY(sketch->arena, (size_t)plan->point_count, struct point);
    for (int i = 0; i < plan->point_count; i++)
        points[i] =
            (struct point){x_of(&scale, plan->curve[i].fluid), y_of(&scale, plan->curve[i].air)};
    sketch_path(sketch, points, plan->point_count, pen_of(0.7, INK_BLACK));
}
