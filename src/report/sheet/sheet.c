#include "report/sheet/sheet.h"

#include <math.h>

#include "base/text.h"
#include "report/diagram/diagram.h"
#include "report/paint/drawing.h"
#include "report/chart/bleed_curve.h"
#include "report/sheet/parts_of_sheet.h"
#include "report/chart/pedal_drawing.h"
#include "report/sides/sides.h"

#define DIAGRAM_LEAST 120.0 /* mm */
#define DIAGRAM_MOST  150.0
#define CURVE_HEIGHT  60.0

enum { WORKS_NAMED = 2 };

struct sheet_order_and_ruler {
    const struct sheet_order *order;
    const struct ruler *ruler;
};

static const char *title_of(const struct result *result)
{
    const char *title = system_vehicle(result->system)->title;
    return title ? title : "Car without a title";
}

/* Why there is no diagram, in its place. */
static double say_refusal(const struct sheet_order_and_ruler *drawing, struct sketch *into,
                          const char *refusal)
{
    struct font font = {.size = 10, .bold = true};
    struct lines lines =
        sketch_wrap(into->arena, drawing->ruler, text_print(into->arena, "Not drawn: %s.", refusal),
                    font, into->width);
    for (int i = 0; i < lines.count; i++)
        sketch_words(into, 0, 5.0 * (i + 1), lines.items[i], font, ALIGN_LEFT, INK_BLACK);
    return 5.0 * lines.count + 2;
}

/* The car in plan and below it what its lines mean. */
static double draw_diagram(const struct sheet_order_and_ruler *drawing, struct sketch *into,
                           double most)
{
    double legend_room = 14;
    struct layout *layout =
        layout_within(drawing->order->result, drawing->ruler, into->arena, into->width,
                      DIAGRAM_LEAST, fmax(DIAGRAM_LEAST, fmin(most - legend_room, DIAGRAM_MOST)));
    if (layout_refusal(layout) != NULL)
        return say_refusal(drawing, into, layout_refusal(layout));
    struct sketch car = diagram_sketch(layout, drawing->ruler, into->arena);
    struct sketch legend = diagram_legend(layout, drawing->ruler, into->arena, into->width);
    sketch_place(into, &car, (into->width - car.width) / 2, 0);
    sketch_place(into, &legend, 0, car.height + 0.5);
    return car.height + 0.5 + legend.height;
}

static double draw_air(const struct result *result, struct sketch *into)
{
    size_t before = into->count;
    bleed_curve_draw(into, result, (struct box){0, 0, into->width, CURVE_HEIGHT});
    return into->count > before ? CURVE_HEIGHT : 0;
}

/* The first pedal that has a curve. */
static double draw_pedal(const struct result *result, struct sketch *into, double height)
{
    size_t before = into->count;
    if (result->curves == NULL)
        return 0;
    for (int i = 0; i < result->curves->count && into->count == before; i++)
        pedal_drawing_curves(into, result, &result->curves->items[i],
                             (struct box){0, 0, into->width, height});
    return into->count > before ? height : 0;
}

static double draw_causes(const struct result *result, struct sketch *into)
{
    if (result->curves == NULL || result->curves->count == 0)
        return 0;
    return pedal_drawing_causes(into, result, &result->curves->items[0], 0, 0, into->width);
}

static double draw_picture(const void *context, const char *name, struct sketch *into, double most)
{
    const struct sheet_order_and_ruler *drawing = context;
    const struct result *result = drawing->order->result;
    if (text_same(name, "diagram"))
        return draw_diagram(drawing, into, most);
    if (text_same(name, "air"))
        return draw_air(result, into);
    if (text_same(name, "pedal"))
        return draw_pedal(result, into, CURVE_HEIGHT);
    return text_same(name, "causes") ? draw_causes(result, into) : 0;
}

/* What is known of the car's identity; lines to fill where it is not. */
static int items_of(const struct result *result, struct side_item items[4])
{
    const struct vehicle *vehicle = system_vehicle(result->system);
    items[0] = (struct side_item){"registration", vehicle->registration, 0.22};
    items[1] = (struct side_item){"chassis number", vehicle->chassis, 0.32};
    items[2] = (struct side_item){"distance", vehicle->distance, 0.2};
    items[3] = (struct side_item){"workshop", vehicle->workshop, 0.26};
    return 4;
}

static const char *foot_of(const struct sheet_order *order, struct arena *arena)
{
    const struct system *system = order->result->system;
    struct text words = text_start(arena);
    text_add(&words, "%s", system->file);
    if (system->work_count > WORKS_NAMED)
        text_add(&words, ", %d work files", system->work_count);
    for (int i = 0; system->work_count <= WORKS_NAMED && i < system->work_count; i++)
        text_add(&words, ", %s", system->works[i].file);
    text_add(&words,
             "  \u00b7  firmpedal %s  \u00b7  * assumed, ** mostly; ! beyond what it holds for",
             order->version != NULL ? order->version : "");
    return words.items;
}

struct document sheet_document(const struct sheet_order *order, struct arena *arena)
{
    struct document document = document_start(arena);
    sheet_to_the_car(&document, order->result);
    sheet_readings(&document, order->result);
    sheet_record(&document, order->result);
    sheet_annexes(&document, order);
    return document;
}

struct sketch *sheet_sides(const struct sheet_order *order, const struct ruler *ruler,
                           struct arena *arena, size_t *count)
{
    /* ISO 216 A4; ANSI Y14.1 A (letter), 8.5 by 11 in */
    double width = order->paper == PAPER_A4 ? 210.0 : 215.9;
    double height = order->paper == PAPER_A4 ? 297.0 : 279.4;
    struct side_item items[4];
    struct document document = sheet_document(order, arena);
    struct side_frame frame = {.title = title_of(order->result),
                               .date = sheet_date(arena, order->result->today),
                               .foot = foot_of(order, arena),
                               .items = items,
                               .item_count = items_of(order->result, items)};
    struct sheet_order_and_ruler drawing = {order, ruler};
    struct side_pictures pictures = {draw_picture, &drawing};
    return sides_of(&document, &frame, width, height, &pictures, ruler, arena, count);
}

static bool paint_sheet(const struct ruler *ruler, const void *order, struct bytes *out,
                        const char **error)
{
    const struct sheet_order *o = order;
    size_t count;
    struct sketch *sides = sheet_sides(o, ruler, out->arena, &count);
    return paint_pdf(sides, (int)count, title_of(o->result), o->result->today, out, error);
}

bool sheet_pdf(const struct sheet_order *order, struct bytes *out, const char **error)
{
    return drawing_run(paint_sheet, order, out, error);
}
