#include "report/diagram/symbols.h"

#include <math.h>

#include "report/diagram/labels.h"
#include "units/constants.h"

#define EDGE  0.45 /* pens, mm */
#define THIN  0.25
#define THICK 1.1

static struct pen edge_pen(void)
{
    return pen_of(EDGE, INK_BLACK);
}

static struct pen thin_pen(void)
{
    return pen_of(THIN, INK_BLACK);
}

static struct box box_around(struct point at, double half_width, double half_height)
{
    return (struct box){at.x - half_width, at.y - half_height, at.x + half_width,
                        at.y + half_height};
}

/* A spring between two points, upright or level. */
static void spring(struct sketch *sketch, struct point from, struct point to, double half_width,
                   struct pen pen)
{
    struct point points[9];
    bool upright = from.x == to.x;
    for (int i = 0; i < 9; i++) {
        double part = i / 8.0;
        double off = i == 0 || i == 8 ? 0 : i % 2 ? half_width : -half_width;
        points[i] = (struct point){from.x + (to.x - from.x) * part + (upright ? off : 0),
                                   from.y + (to.y - from.y) * part + (upright ? 0 : off)};
    }
    sketch_path(sketch, points, 9, pen);
}

/* A filled head at the end of an arrow that points up (sign -1) or down (1). */
static void arrow_head(struct sketch *sketch, double x, double y, double sign)
{
    struct point head[] = {{x, y}, {x - 0.9, y - 2.0 * sign}, {x + 0.9, y - 2.0 * sign}};
    sketch_polygon(sketch, head, 3, pen_of(0, INK_NONE), INK_BLACK);
}

/* Which way a brake's pipe comes from: to the side in a car, along a motorcycle. */
static struct point inward_of(const struct layout *layout, const struct symbol *symbol)
{
    if (!layout->motorcycle)
        return (struct point){symbol->inward, 0};
    bool rear = layout->system->parts[symbol->part].axle == AXLE_REAR;
    return (struct point){0, rear ? -1 : 1};
}

/* A box at a distance along a direction from a point. */
static struct box box_off(struct point at, struct point direction, double near, double far,
                          double half)
{
    struct point a = {at.x + direction.x * near, at.y + direction.y * near};
    struct point b = {at.x + direction.x * far, at.y + direction.y * far};
    struct box box = labels_box_of((struct point[]){a, b}, 2, 0);
    if (direction.x != 0)
        return (struct box){box.left, at.y - half, box.right, at.y + half};
    return (struct box){at.x - half, box.top, at.x + half, box.bottom};
}

/* Pistons as dots in so many rows along a brake's edge, two abreast where `abreast` is 2. */
static void draw_pistons(struct sketch *sketch, struct point at, struct point in, int count,
                         int abreast)
{
    const double apart = 2.1;
    int rows = (count + abreast - 1) / abreast;
    for (int i = 0; i < count; i++) {
        double aside = (i / abreast - (rows - 1) / 2.0) * fmin(apart, 6.0 / rows);
        double deep = (i % abreast - (abreast - 1) / 2.0) * apart;
        struct point middle = {at.x + in.x * deep + in.y * aside,
                               at.y + in.y * deep + in.x * aside};
        sketch_circle(sketch, middle, PISTON_RADIUS, pen_of(0, INK_NONE), INK_BLACK);
    }
}

static struct point along(struct point at, struct point direction, double by)
{
    return (struct point){at.x + direction.x * by, at.y + direction.y * by};
}

/* A caliper over its disc, with as many pistons as it has: a fixed one has them on both sides. */
static void draw_disc(struct sketch *sketch, const struct layout *layout,
                      const struct symbol *symbol)
{
    struct point in = inward_of(layout, symbol);
    struct point at = symbol->at;
    const struct disc *disc = &layout->system->parts[symbol->part].as.disc;
    bool fixed = disc->caliper != CALIPER_SLIDING;
    sketch_circle(sketch, at, 7.0, edge_pen(), INK_WHITE);
    sketch_circle(sketch, at, 3.2, thin_pen(), INK_NONE);
    sketch_circle(sketch, at, 1.2, thin_pen(), INK_LIGHT);
    double half = disc->inlets == 2 ? 6.2 : 4.0;
    sketch_box(sketch, box_off(at, in, 2.8, 7.5, half), 0.9, edge_pen(), INK_PALE);
    int pistons = disc->bores.count > 0 ? disc->bores.count : 0;
    pistons += disc->second_bores.count > 0 ? disc->second_bores.count : 0;
    draw_pistons(sketch, along(at, in, 5.15), in, pistons, fixed && pistons > 1 ? 2 : 1);
}

/* A wheel cylinder at a distance from the drum's middle. */
static void draw_cylinder(struct sketch *sketch, struct point at, struct point direction,
                          int pistons)
{
    sketch_box(sketch, box_off(at, direction, 4.2, 7.5, 2.2), 0.5, edge_pen(), INK_PALE);
    draw_pistons(sketch, along(at, direction, 5.85), direction, pistons, 1);
}

static void draw_drum(struct sketch *sketch, const struct layout *layout,
                      const struct symbol *symbol)
{
    struct point in = inward_of(layout, symbol), out = {-in.x, -in.y};
    struct point at = symbol->at;
    const struct drum *drum = &layout->system->parts[symbol->part].as.drum;
    bool each = drum->cylinder == CYLINDER_ONE_EACH;
    double turn = in.x > 0 ? 0 : in.x < 0 ? PI : in.y > 0 ? PI / 2 : -PI / 2;
    struct pen shoe = pen_of(THICK, INK_DARK);
    sketch_circle(sketch, at, 7.2, edge_pen(), INK_WHITE);
    sketch_arc(sketch, at, 5.7, turn + 0.45, turn + PI - 0.3, shoe);
    sketch_arc(sketch, at, 5.7, turn + PI + 0.3, turn + 2 * PI - 0.45, shoe);
    if (each)
        draw_cylinder(sketch, at, out, 1);
    else
        sketch_circle(sketch, along(at, out, 5.5), 0.8, thin_pen(), INK_WHITE);
    draw_cylinder(sketch, at, in, drum->cylinder == CYLINDER_TWO_PISTONS ? 2 : 1);
    sketch_circle(sketch, at, 1.2, thin_pen(), INK_LIGHT);
}

static void draw_master(struct sketch *sketch, const struct layout *layout,
                        const struct symbol *symbol)
{
    struct box box = symbol->box;
    double x = symbol->at.x;
    bool tandem = layout->system->parts[symbol->part].as.master.type == MASTER_TANDEM;
    sketch_box(sketch, box, 0.8, edge_pen(), INK_WHITE);
    double pistons[] = {box.bottom - 2.7, symbol->at.y - 0.5};
    double ceilings[] = {tandem ? symbol->at.y + 0.5 : box.top + 0.7, box.top + 0.7};
    for (int i = 0; i < (tandem ? 2 : 1); i++) {
        sketch_line(sketch, x - 2.2, pistons[i], x + 2.2, pistons[i], pen_of(THICK, INK_BLACK));
        spring(sketch, (struct point){x, pistons[i] - 0.5}, (struct point){x, ceilings[i]}, 1.0,
               thin_pen());
    }
    sketch_line(sketch, x, pistons[0], x, box.bottom + GRID_STEP, pen_of(0.7, INK_BLACK));
}

static void draw_servo(struct sketch *sketch, const struct layout *layout,
                       const struct symbol *symbol)
{
    struct point at = symbol->at;
    bool remote = layout->system->parts[symbol->part].as.servo.type == SERVO_REMOTE;
    sketch_circle(sketch, at, 4.75, edge_pen(), INK_WHITE);
    sketch_line(sketch, at.x - 4.6, at.y + 1.0, at.x + 4.6, at.y + 1.0, pen_of(0.8, INK_BLACK));
    for (int side = -1; side <= 1; side += 2)
        spring(sketch, (struct point){at.x + side * 2.2, at.y + 0.7},
               (struct point){at.x + side * 2.2, at.y - 4.0}, 0.85, thin_pen());
    sketch_line(sketch, at.x, at.y - 4.75, at.x, at.y + 4.75, pen_of(0.7, INK_BLACK));
    if (!remote)
        sketch_line(sketch, at.x, at.y - 7.4, at.x, at.y - 4.75, pen_of(0.7, INK_BLACK));
    else
        sketch_box(sketch, box_around((struct point){at.x, at.y - 2.5}, 1.0, 1.5), 0.3, thin_pen(),
                   INK_WHITE);
}

static void draw_pedal(struct sketch *sketch, const struct layout *layout,
                       const struct symbol *symbol)
{
    struct point at = symbol->at;
    bool hand = layout->system->parts[symbol->part].as.pedal.type == PEDAL_HAND;
    struct pen arm = pen_of(0.7, INK_BLACK);
    sketch_line(sketch, at.x, at.y, at.x, symbol->box.top - 2 * GRID_STEP, arm);
    if (hand) {
        double side = at.x < layout->width / 2 ? -1 : 1; /* it points outwards */
        struct point lever[] = {{at.x - side * 2.5, at.y - 0.8},
                                {at.x + side * 1.7, at.y - 0.3},
                                {at.x + side * 6.7, at.y + 1.3}};
        sketch_rounded_path(sketch, lever, 3, 4, pen_of(1.3, INK_BLACK));
        return;
    }
    sketch_box(sketch, box_around(at, 2.4, 2.0), 0.6, edge_pen(), INK_WHITE);
    for (int i = -1; i <= 1; i++)
        sketch_line(sketch, at.x - 1.7, at.y + i, at.x + 1.7, at.y + i, thin_pen());
}

/* A balance bar across the rods of two masters that one pedal works. */
static void draw_bar(struct sketch *sketch, const struct layout *layout,
                     const struct symbol *symbol)
{
    const struct part_names *works = &layout->system->parts[symbol->part].as.pedal.works;
    double left = symbol->at.x;
    double right = symbol->at.x;
    double y = symbol->box.top - 1.4 * GRID_STEP;
    for (size_t i = 0; i < works->count; i++) {
        int part = works->parts ? works->parts[i] : -1;
        if (part < 0 || layout->symbol_of[part] < 0)
            continue;
        const struct symbol *master = &layout->symbols[layout->symbol_of[part]];
        left = master->at.x < left ? master->at.x : left;
        right = master->at.x > right ? master->at.x : right;
        sketch_line(sketch, master->at.x, master->box.bottom, master->at.x, y,
                    pen_of(0.7, INK_BLACK));
    }
    if (right > left)
        sketch_line(sketch, left - 0.6, y, right + 0.6, y, pen_of(THICK, INK_BLACK));
}

/* ISO 1219-1: an open vessel. */
static void draw_reservoir(struct sketch *sketch, const struct symbol *symbol)
{
    struct box box = symbol->box;
    struct box fluid = {box.left, box.top + 1.8, box.right, box.bottom};
    sketch_box(sketch, fluid, 0, pen_of(0, INK_NONE), INK_PALE);
    sketch_line(sketch, box.left, fluid.top, box.right, fluid.top, thin_pen());
    struct point vessel[] = {
        {box.left, box.top}, {box.left, box.bottom}, {box.right, box.bottom}, {box.right, box.top}};
    sketch_path(sketch, vessel, 4, edge_pen());
}

/* The lines from a valve's body to where its pipes end, 2 steps above and below. */
static void draw_ends(struct sketch *sketch, struct point at, double half)
{
    double end = 2 * GRID_STEP;
    sketch_line(sketch, at.x, at.y - end, at.x, at.y - half, pen_of(0.7, INK_BLACK));
    sketch_line(sketch, at.x, at.y + half, at.x, at.y + end, pen_of(0.7, INK_BLACK));
}

/* ISO 1219-1: a square with the passage as an arrow, held by a spring; a dashed line shows which
 * pressure works it. */
static void pressure_valve(struct sketch *sketch, struct point at, double flow, bool open,
                           bool from_outlet)
{
    double offset = open ? 0 : 1.1;
    struct pen pilot = {THIN, INK_BLACK, DASH_SHORT};
    sketch_box(sketch, box_around(at, 3.0, 3.0), 0, edge_pen(), INK_WHITE);
    draw_ends(sketch, at, 3.0);
    sketch_line(sketch, at.x - offset, at.y - 2.7 * flow, at.x - offset, at.y + 1.7 * flow,
                thin_pen());
    arrow_head(sketch, at.x - offset, at.y + 2.7 * flow, flow);
    spring(sketch, (struct point){at.x + 3.0, at.y}, (struct point){at.x + 5.0, at.y}, 0.85,
           thin_pen());
    double y = at.y + (from_outlet ? 4.0 : -4.0) * flow;
    struct point way[] = {{at.x, y}, {at.x - 4.2, y}, {at.x - 4.2, at.y}, {at.x - 3.0, at.y}};
    sketch_path(sketch, way, 4, pilot);
}

static void draw_shuttle(struct sketch *sketch, struct point at, int chambers)
{
    sketch_box(sketch, box_around(at, 4.7, 2.0), 0.5, edge_pen(), INK_WHITE);
    for (int i = 0; i < chambers / 2; i++) {
        double x = chambers <= 2 ? at.x : at.x + (i == 0 ? -GRID_STEP : GRID_STEP);
        draw_ends(sketch, (struct point){x, at.y}, 2.0);
    }
    for (int side = -1; side <= 1; side += 2)
        sketch_box(sketch, box_around((struct point){at.x + side * 1.9, at.y}, 0.75, 1.4), 0,
                   thin_pen(), INK_DARK);
    sketch_line(sketch, at.x - 1.7, at.y, at.x + 1.7, at.y, thin_pen());
    /* the lamp switch, beside the pipe of a single passage */
    double x = chambers <= 2 ? at.x + 3.4 : at.x;
    sketch_circle(sketch, (struct point){x, at.y - 3.5}, 1.0, thin_pen(), INK_WHITE);
    sketch_line(sketch, x, at.y - 2.5, x, at.y - 0.3, thin_pen());
}

static void draw_residual(struct sketch *sketch, struct point at)
{
    /* ISO 1219-1: a ball on its seat, pressed by a spring */
    draw_ends(sketch, at, 2.9);
    sketch_circle(sketch, (struct point){at.x, at.y - 0.8}, 1.6, edge_pen(), INK_WHITE);
    struct point seat[] = {{at.x - 2.2, at.y - 0.5}, {at.x, at.y - 2.75}, {at.x + 2.2, at.y - 0.5}};
    sketch_path(sketch, seat, 3, edge_pen());
    spring(sketch, (struct point){at.x, at.y + 0.8}, (struct point){at.x, at.y + 3.0}, 0.9,
           thin_pen());
}

static void draw_valve(struct sketch *sketch, const struct layout *layout,
                       const struct symbol *symbol)
{
    const struct part *part = &layout->system->parts[symbol->part];
    struct point at = symbol->at;
    double flow = symbol->flow_forward ? -1 : 1;
    sketch_box(sketch, symbol->box, 0, pen_of(0, INK_NONE), INK_WHITE);
    switch (part->as.valve.type) {
    case VALVE_RESIDUAL:
        draw_residual(sketch, at);
        return;
    case VALVE_SHUTTLE:
        draw_shuttle(sketch, at, part_chambers(part));
        return;
    case VALVE_HOLD_OFF:
        pressure_valve(sketch, at, flow, false, false);
        return;
    case VALVE_LOAD_SENSING:
        pressure_valve(sketch, at, flow, true, true);
        /* set by the load: an arrow across the spring, and the lever's roller */
        sketch_line(sketch, at.x + 2.8, at.y + 1.9, at.x + 5.0, at.y - 1.7, thin_pen());
        sketch_circle(sketch, (struct point){at.x + 4.2, at.y + 2.8}, 0.8, thin_pen(), INK_WHITE);
        return;
    case VALVE_PROPORTIONING:
        pressure_valve(sketch, at, flow, true, true);
        /* the kink of its curve */
        sketch_path(sketch,
                    (struct point[]){
                        {at.x + 0.8, at.y + 2.0}, {at.x + 1.6, at.y}, {at.x + 2.7, at.y - 0.5}},
                    3, thin_pen());
        return;
    case VALVE_LIMITING:
    case VALVE_NOT_SAID:
        pressure_valve(sketch, at, flow, true, true);
        return;
    }
}

static void draw_joint(struct sketch *sketch, const struct symbol *symbol)
{
    if (symbol->half_width == 0) {
        sketch_circle(sketch, symbol->at, 1.1, pen_of(0, INK_NONE), INK_BLACK);
        return;
    }
    sketch_box(sketch, box_wider(symbol->box, -0.4), 0.6, edge_pen(), INK_PALE);
    sketch_circle(sketch, symbol->at, 1.1, pen_of(0, INK_NONE), INK_BLACK);
}

static void draw_slave(struct sketch *sketch, const struct layout *layout,
                       const struct symbol *symbol)
{
    struct point at = symbol->at;
    if (layout->system->parts[symbol->part].as.slave.type == SLAVE_CONCENTRIC) {
        sketch_circle(sketch, at, 4.75, edge_pen(), INK_WHITE);
        sketch_circle(sketch, at, 3.0, edge_pen(), INK_PALE);
        sketch_circle(sketch, at, 1.4, thin_pen(), INK_WHITE);
        return;
    }
    /* The pipe comes in at the driver's side; the rod pushes the fork on the other. */
    double rod = layout->mirrored ? 1 : -1;
    sketch_box(sketch, box_off(at, (struct point){rod, 0}, -7.5, 2.5, 2.1), 0.5, edge_pen(),
               INK_WHITE);
    double piston = at.x - rod * 2.1;
    sketch_line(sketch, piston, at.y - 1.75, piston, at.y + 1.75, pen_of(THICK, INK_BLACK));
    sketch_line(sketch, piston, at.y, at.x + rod * 6.6, at.y, pen_of(0.7, INK_BLACK));
    sketch_line(sketch, at.x + rod * 6.6, at.y - 2.4, at.x + rod * 6.6, at.y + 2.4,
                pen_of(THICK, INK_BLACK));
}

void symbol_draw(struct sketch *sketch, const struct layout *layout, const struct symbol *symbol)
{
    switch (layout->system->parts[symbol->part].kind) {
    case KIND_DISC:
        draw_disc(sketch, layout, symbol);
        return;
    case KIND_DRUM:
        draw_drum(sketch, layout, symbol);
        return;
    case KIND_MASTER:
        draw_master(sketch, layout, symbol);
        return;
    case KIND_SERVO:
        draw_servo(sketch, layout, symbol);
        return;
    case KIND_PEDAL:
        draw_bar(sketch, layout, symbol);
        draw_pedal(sketch, layout, symbol);
        return;
    case KIND_RESERVOIR:
        draw_reservoir(sketch, symbol);
        return;
    case KIND_VALVE:
        draw_valve(sketch, layout, symbol);
        return;
    case KIND_JOINT:
        draw_joint(sketch, symbol);
        return;
    case KIND_SLAVE:
        draw_slave(sketch, layout, symbol);
        return;
    case KIND_VEHICLE:
    case KIND_FLUID:
    case KIND_PIPE:
    case KIND_HOSE:
    case KIND_PARKING:
    case KIND_COUNT:
        return;
    }
}
