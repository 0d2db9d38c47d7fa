#include "report/chart/pedal_drawing.h"

#include <math.h>

#include "base/text.h"
#include "report/chart/bleed_curve.h"
#include "units/unit.h"

#define TICK       1.2
#define LABEL_ROOM 46.0 /* right of the curves, for the words of the cases */
#define LABEL_STEP 3.6
#define BAR_LEFT   62.0
#define BAR_ROW    4.2

struct scale {
    struct box box;
    double most_effort, most_travel;
    double effort_unit, travel_unit;
    const char *effort_name, *travel_name;
};

static struct font small(void)
{
    return (struct font){.size = 8};
}

static double x_of(const struct scale *scale, double effort)
{
    return scale->box.left + (scale->box.right - scale->box.left) * effort / scale->most_effort;
}

static double y_of(const struct scale *scale, double travel)
{
    return scale->box.bottom - (scale->box.bottom - scale->box.top) * travel / scale->most_travel;
}

static struct scale scale_of(const struct result *result, const struct pedal_curves *curves,
                             struct box box)
{
    bool imperial = result->units == UNITS_IMPERIAL;
    struct scale scale = {
        .box = box, .effort_name = imperial ? "lbf" : "N", .travel_name = imperial ? "in" : "mm"};
    scale.effort_unit = unit_read(imperial ? "1 lbf" : "1 N", DIMENSION_FORCE).value;
    scale.travel_unit = unit_read(imperial ? "1 in" : "1 mm", DIMENSION_LENGTH).value;
    for (int i = 0; i < curves->count; i++) {
        const struct pedal_curve *curve = curves->items[i].curve;
        for (int p = 0; p < curve->count; p++) {
            scale.most_effort = fmax(scale.most_effort, curve->points[p].effort.n);
            scale.most_travel = fmax(scale.most_travel, curve->points[p].travel.m);
        }
    }
    /* fmax passes over a floor that is not known */
    scale.most_travel =
        fmax(scale.most_travel, result->system->parts[curves->pedal].as.pedal.travel.m);
    return scale;
}

static void draw_axes(struct sketch *sketch, const struct scale *scale)
{
    const struct box *box = &scale->box;
    struct pen thin = pen_of(0.3, INK_BLACK), faint = pen_of(0.15, INK_LIGHT);
    double most = scale->most_effort / scale->effort_unit, step = bleed_curve_step(most);
    for (int i = 0; i * step <= most * (1 + 1e-9); i++) {
        double x = x_of(scale, i * step * scale->effort_unit);
        sketch_line(sketch, x, box->bottom, x, box->bottom + TICK, thin);
        sketch_words(sketch, x, box->bottom + 4.2, text_print(sketch->arena, "%g", i * step),
                     small(), ALIGN_MIDDLE, INK_BLACK);
    }
    most = scale->most_travel / scale->travel_unit;
    step = bleed_curve_step(most);
    for (int i = 0; i * step <= most * (1 + 1e-9); i++) {
        double y = y_of(scale, i * step * scale->travel_unit);
        sketch_line(sketch, box->left, y, box->right, y, faint);
        sketch_words(sketch, box->left - 2, y + 0.9, text_print(sketch->arena, "%g", i * step),
                     small(), ALIGN_RIGHT, INK_BLACK);
    }
    sketch_line(sketch, box->left, box->bottom, box->right, box->bottom, thin);
    sketch_line(sketch, box->left, box->top, box->left, box->bottom, thin);
    sketch_words(sketch, box->right, box->bottom + 7.6,
                 text_print(sketch->arena, "effort, %s", scale->effort_name), small(), ALIGN_RIGHT,
                 INK_BLACK);
    sketch_words(sketch, box->left - 10, box->top - 2.4,
                 text_print(sketch->arena, "travel at the pad, %s", scale->travel_name), small(),
                 ALIGN_LEFT, INK_BLACK);
}

static void draw_floor(struct sketch *sketch, const struct scale *scale, double floor)
{
    if (isnan(floor))
        return;
    double y = y_of(scale, floor);
    sketch_line(sketch, scale->box.left, y, scale->box.right, y, pen_of(0.6, INK_BLACK));
    sketch_words(sketch, scale->box.right + 2, y + 0.9, "floor",
                 (struct font){.size = 8, .bold = true}, ALIGN_LEFT, INK_BLACK);
}

static void draw_line(struct sketch *sketch, const struct scale *scale,
                      const struct pedal_curve *curve, struct pen pen)
{
    struct point *points = ARENA_ARRAY(sketch->arena, (size_t)curve->count + 1, struct point);
    for (int i = 0; i < curve->count; i++)
        points[i] = (struct point){x_of(scale, curve->points[i].effort.n),
                                   y_of(scale, curve->points[i].travel.m)};
    sketch_path(sketch, points, curve->count, pen);
}

struct label {
    const char *words;
    struct point end; /* of its line */
    double y;
};

static void sort_labels(struct label *labels, int count)
{
    for (int i = 1; i < count; i++) {
        struct label moving = labels[i];
        int at = i;
        for (; at > 0 && labels[at - 1].y > moving.y; at--)
            labels[at] = labels[at - 1];
        labels[at] = moving;
    }
}

/* Labels from the top down, each at least a step below the one before; pushed up again from the
 * bottom where they would run out. */
static void spread_labels(struct label *labels, int count, double top, double bottom)
{
    sort_labels(labels, count);
    for (int i = 0; i < count; i++)
        labels[i].y = fmax(labels[i].y, i > 0 ? labels[i - 1].y + LABEL_STEP : top);
    for (int i = count; i-- > 0;)
        labels[i].y = fmin(labels[i].y, i + 1 < count ? labels[i + 1].y - LABEL_STEP : bottom);
}

static struct pen pen_of_case(int index)
{
    static const enum dash dashes[] = {DASH_SOLID, DASH_LONG, DASH_CHAIN,       DASH_SHORT,
                                       DASH_DOTS,  DASH_LONG, DASH_DOUBLE_CHAIN};
    size_t count = sizeof dashes / sizeof *dashes;
    return (struct pen){index == 0 ? 0.8 : 0.35, INK_BLACK, dashes[(size_t)index % count]};
}

void pedal_drawing_curves(struct sketch *sketch, const struct result *result,
                          const struct pedal_curves *curves, struct box box)
{
    struct box inner = {box.left + 12, box.top + 6, box.right - LABEL_ROOM, box.bottom - 9};
    struct scale scale = scale_of(result, curves, inner);
    if (curves->items[0].curve->count < 2 || !(scale.most_effort > 0) || !(scale.most_travel > 0))
        return;
    struct label *labels = ARENA_ARRAY(sketch->arena, (size_t)curves->count + 1, struct label);
    int count = 0;
    draw_axes(sketch, &scale);
    draw_floor(sketch, &scale, result->system->parts[curves->pedal].as.pedal.travel.m);
    for (int i = curves->count; i-- > 0;) {
        const struct pedal_curve *curve = curves->items[i].curve;
        if (curve->count < 2)
            continue;
        draw_line(sketch, &scale, curve, pen_of_case(i));
        const struct curve_point *last = &curve->points[curve->count - 1];
        struct point end = {x_of(&scale, last->effort.n), y_of(&scale, last->travel.m)};
        labels[count++] = (struct label){curves->items[i].words, end, end.y};
    }
    spread_labels(labels, count, inner.top + 4, inner.bottom);
    for (int i = 0; i < count; i++) {
        sketch_line(sketch, labels[i].end.x, labels[i].end.y, inner.right + 5, labels[i].y,
                    pen_of(0.15, INK_GREY));
        sketch_words(sketch, inner.right + 6, labels[i].y + 0.9, labels[i].words, small(),
                     ALIGN_LEFT, INK_BLACK);
    }
}

double pedal_drawing_causes(struct sketch *sketch, const struct result *result,
                            const struct pedal_curves *curves, double left, double top,
                            double width)
{
    const struct pedal_curve *curve = curves->items[0].curve;
    if (curve->count < 1)
        return 0;
    const struct curve_point *end = &curve->points[curve->count - 1];
    double most = 0, y = top;
    for (int cause = 0; cause < TRAVEL_CAUSE_COUNT; cause++)
        most = fmax(most, end->by_cause[cause].m);
    for (int cause = 0; cause < TRAVEL_CAUSE_COUNT; cause++) {
        double taken = end->by_cause[cause].m;
        if (!(taken > 0))
            continue;
        sketch_words(sketch, left, y + 2.9, travel_cause_words((enum travel_cause)cause), small(),
                     ALIGN_LEFT, INK_BLACK);
        sketch_words(sketch, left + BAR_LEFT - 2, y + 2.9,
                     unit_text(sketch->arena, taken, DIMENSION_LENGTH, result->units), small(),
                     ALIGN_RIGHT, INK_BLACK);
        struct box bar = {left + BAR_LEFT, y + 0.7,
                          left + BAR_LEFT + (width - BAR_LEFT) * taken / most, y + BAR_ROW - 0.7};
        sketch_box(sketch, bar, 0, pen_of(0.2, INK_BLACK), INK_DARK);
        y += BAR_ROW;
    }
    return y - top;
}
