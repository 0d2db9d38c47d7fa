#include "report/diagram/diagram.h"

#include <math.h>
#include <string.h>

#include "base/text.h"
#include "report/diagram/description.h"
#include "report/diagram/labels.h"
#include "report/diagram/symbols.h"

#define PIPE_WIDTH 0.85
#define AXLE_HALF  2.4 /* mm, of a beam */

struct pen diagram_circuit_pen(const struct layout *layout, int circuit)
{
    static const enum ink inks[] = {INK_FIRST, INK_SECOND, INK_THIRD, INK_FOURTH};
    static const enum dash lines[MOST_CIRCUITS] = {
        DASH_SOLID,        DASH_LONG,       DASH_CHAIN,        DASH_DOTS,
        DASH_DOUBLE_CHAIN, DASH_LONG_SHORT, DASH_TRIPLE_CHAIN, DASH_PAIRS};
    if (circuit < 0)
        return (struct pen){PIPE_WIDTH, INK_GREY, DASH_SHORT};
    int rank = layout->rank[circuit];
    return (struct pen){PIPE_WIDTH, inks[rank % 4], lines[rank % MOST_CIRCUITS]};
}

static enum tag tag_of_hose(const struct layout *layout, int part)
{
    for (int i = 0; i < layout->label_count; i++)
        if (layout->labels[i].part == part)
            return layout->labels[i].tag;
    return TAG_NONE;
}

/* A steering wheel of which half is covered would be taken for something else. */
static bool wheel_shows(const struct layout *layout)
{
    struct box wheel = labels_box_of(&layout->wheel, 1, WHEEL_RADIUS);
    for (int i = 0; i < layout->label_count; i++)
        if (boxes_meet(wheel, layout->labels[i].box))
            return false;
    for (int i = 0; i < layout->symbol_count; i++)
        if (boxes_meet(wheel, layout->symbols[i].box))
            return false;
    for (int i = 0; i < layout->axle_count; i++) {
        double y = layout->axles[i].line * GRID_STEP;
        if (y + AXLE_HALF > wheel.top && y - AXLE_HALF < wheel.bottom)
            return false;
    }
    return true;
}

static void draw_car(struct sketch *sketch, const struct layout *layout)
{
    struct pen faint = pen_of(0.35, INK_LIGHT);
    double left = LAYOUT_BODY_EDGE;
    double right = layout->width - left;
    struct point outline[] = {{left + 6, 4},
                              {right - 6, 4},
                              {right, 24},
                              {right, layout->height - 15},
                              {right - 4, layout->height - 4},
                              {left + 4, layout->height - 4},
                              {left, layout->height - 15},
                              {left, 24}};
    sketch_polygon(sketch, outline, 8, faint, INK_NONE);
    sketch->items[sketch->count - 1].rounding = 14;
    double y = layout->bulkhead * GRID_STEP;
    sketch_line(sketch, left, y, right, y, faint);
    sketch_line(sketch, left, y + 0.9, right, y + 0.9, faint);
    if (!wheel_shows(layout))
        return;
    sketch_circle(sketch, layout->wheel, WHEEL_RADIUS, pen_of(0.7, INK_LIGHT), INK_NONE);
    sketch_circle(sketch, layout->wheel, 1.6, faint, INK_NONE);
}

static bool beam(enum axle_type type)
{
    return type == AXLE_LIVE || type == AXLE_DEAD;
}

static void draw_axles(struct sketch *sketch, const struct layout *layout)
{
    const struct vehicle *vehicle = system_vehicle(layout->system);
    struct pen faint = pen_of(0.35, INK_LIGHT);
    for (int i = 0; i < layout->axle_count; i++) {
        double y = layout->axles[i].line * GRID_STEP;
        bool rear = layout->axles[i].axle == AXLE_REAR;
        enum axle_type type = rear ? vehicle->rear_axle : vehicle->front_axle;
        if (!beam(type)) {
            struct pen fine = {0.35, INK_LIGHT, DASH_SHORT};
            sketch_line(sketch, 12, y, layout->width - 12, y, fine);
            continue;
        }
        struct box tube = {12, y - AXLE_HALF, layout->width - 12, y + AXLE_HALF};
        sketch_box(sketch, tube, 0, faint, INK_WHITE);
        if (type == AXLE_LIVE)
            sketch_circle(sketch, (struct point){layout->width / 2, y}, 7.5, faint, INK_WHITE);
    }
}

static void draw_cycle(struct sketch *sketch, const struct layout *layout)
{
    double x = layout->width / 2;
    double front = layout->axles[0].line * GRID_STEP;
    double rear = layout->axles[1].line * GRID_STEP;
    double bar = (layout->bulkhead + 1.6) * GRID_STEP;
    struct pen faint = pen_of(0.35, INK_LIGHT);
    struct pen frame = pen_of(1.6, INK_LIGHT);
    sketch_line(sketch, x - 6.5, front, x - 6.5, bar, faint);
    sketch_line(sketch, x + 6.5, front, x + 6.5, bar, faint);
    struct point handlebar[] = {{x - 46, bar + 6}, {x - 26, bar}, {x + 26, bar}, {x + 46, bar + 6}};
    sketch_rounded_path(sketch, handlebar, 4, 8, frame);
    sketch_line(sketch, x - 7, bar + 24, x - 7, rear, faint);
    sketch_line(sketch, x + 7, bar + 24, x + 7, rear, faint);
}

static void draw_tyres(struct sketch *sketch, const struct layout *layout)
{
    struct box tyres[MOST_TYRES];
    int count = labels_tyres(layout, tyres);
    for (int i = 0; i < count; i++) {
        sketch_box(sketch, tyres[i], 2.4, pen_of(0.35, INK_GREY), INK_PALE);
        struct box b = tyres[i];
        for (double y = b.top + 3; y < b.bottom - 2; y += 3)
            sketch_line(sketch, b.left + 1.6, y, b.right - 1.6, y, pen_of(0.2, INK_LIGHT));
    }
}

static void draw_engine(struct sketch *sketch, const struct layout *layout)
{
    struct box engine = layout->engine;
    struct box gearbox = layout->gearbox;
    struct pen faint = pen_of(0.35, INK_LIGHT);
    if (gearbox.right > gearbox.left)
        sketch_box(sketch, gearbox, 2.5, faint, INK_WHITE);
    sketch_box(sketch, engine, 2.5, faint, INK_WHITE);
    for (int i = 0; i < layout->symbol_count; i++)
        if (boxes_meet(labels_engine(layout), layout->symbols[i].box))
            return;
    sketch_words(sketch, (engine.left + engine.right) / 2, (engine.top + engine.bottom) / 2 + 1,
                 "engine", (struct font){.size = 8, .slanted = true}, ALIGN_MIDDLE, INK_GREY);
}

static void draw_ground(struct sketch *sketch, const struct layout *layout)
{
    struct font font = {.size = 8, .bold = true};
    double x = layout->width / 2;
    if (layout->motorcycle) {
        draw_cycle(sketch, layout);
    } else {
        draw_car(sketch, layout);
        draw_axles(sketch, layout);
    }
    draw_tyres(sketch, layout);
    draw_engine(sketch, layout);
    if (!layout->motorcycle) {
        struct point nose[] = {{x, 0.2}, {x - 1.6, 3.0}, {x + 1.6, 3.0}};
        sketch_polygon(sketch, nose, 3, pen_of(0, INK_NONE), INK_GREY);
        sketch_words(sketch, x + 3, 2.8, "FRONT", font, ALIGN_LEFT, INK_GREY);
    }
    sketch_words(sketch, 2.5, layout->height / 2, "LEFT", font, ALIGN_LEFT, INK_GREY);
    sketch_words(sketch, layout->width - 2.5, layout->height / 2, "RIGHT", font, ALIGN_RIGHT,
                 INK_GREY);
}

static const char *name_of(const struct layout *layout, int part)
{
    return layout->system->parts[part].name;
}

/* "clutch master feed", "servo vacuum hose" */
static const char *feed_name(const struct layout *layout, const struct feed *feed)
{
    int owner = layout->symbols[feed->to < 0 ? feed->from : feed->to].part;
    const char *what = feed->to < 0 ? "vacuum hose" : feed->hose ? "supply hose" : "feed";
    return text_print(layout->arena, "%s %s", name_of(layout, owner), what);
}

static void draw_feeds(struct sketch *sketch, const struct layout *layout)
{
    for (int i = 0; i < layout->feed_count; i++) {
        const struct feed *feed = &layout->feeds[i];
        sketch->group = feed_name(layout, feed);
        struct point ends[] = {feed->a, feed->b};
        struct pen core = pen_of(0.35, INK_GREY);
        if (feed->hose)
            symbol_hose(sketch, ends, 2, feed->tag, core);
        else
            sketch_path(sketch, ends, 2, pen_of(0.6, INK_GREY));
        if (feed->to < 0)
            sketch_circle(sketch, feed->b, 1.2, pen_of(0.35, INK_BLACK), INK_WHITE);
    }
}

/* A gap in the line below, so that it is seen to pass under. */
static void draw_gaps(struct sketch *sketch, const struct layout *layout, int over)
{
    for (int i = 0; i < layout->crossing_count; i++) {
        const struct crossing *c = &layout->crossings[i];
        double x = c->upright ? 0 : 1.3;
        double y = c->upright ? 1.3 : 0;
        if (c->over == over)
            sketch_line(sketch, c->at.x - x, c->at.y - y, c->at.x + x, c->at.y + y,
                        pen_of(2.6, INK_WHITE));
    }
}

static void draw_chain(struct sketch *sketch, const struct layout *layout, int index)
{
    const struct chain *chain = &layout->chains[index];
    if (chain->way.count == 0)
        return;
    struct pen pen = diagram_circuit_pen(layout, chain->circuit);
    sketch->group = NULL;
    draw_gaps(sketch, layout, index);
    for (int i = 0; i < chain->edge_count; i++) {
        const struct piece *piece = &chain->pieces[i];
        if (piece->hose)
            continue;
        sketch->group = piece->part >= 0 ? name_of(layout, piece->part) : NULL;
        sketch_rounded_path(sketch, piece->points, piece->count, 2.0, pen);
    }
    for (int i = 0; i < chain->edge_count; i++) {
        const struct piece *piece = &chain->pieces[i];
        struct pen core = pen;
        core.width = 0.6;
        if (!piece->hose)
            continue;
        sketch->group = name_of(layout, piece->part);
        symbol_hose(sketch, piece->points, piece->count, tag_of_hose(layout, piece->part), core);
    }
    for (int i = 0; i + 1 < chain->edge_count; i++) {
        const struct inline_joint *mark = &chain->marks[i];
        enum joint_type type = layout->system->parts[mark->part].as.joint.type;
        sketch->group = name_of(layout, mark->part);
        symbol_inline_joint(sketch, mark->at, mark->upright, type == JOINT_BRACKET);
    }
}

/* The group of a label: what it names, and that it is its name. */
static const char *label_group(const struct layout *layout, const struct label *label)
{
    if (label->letter)
        return text_print(layout->arena, "joint %s", label->letter);
    return text_print(layout->arena, "name of %s",
                      label->name ? label->name : name_of(layout, label->part));
}

static void draw_label(struct sketch *sketch, const struct label *label, const struct ruler *ruler)
{
    struct box box = label->box;
    sketch_box(sketch, box, 0, pen_of(0, INK_NONE), INK_WHITE);
    if (label->leader)
        sketch_line(sketch, label->leader_from.x, label->leader_from.y, label->leader_to.x,
                    label->leader_to.y, pen_of(0.2, INK_GREY));
    if (label->letter) {
        symbol_letter(sketch, box, label->letter);
        return;
    }
    bool left_of = box.right <= label->target.left + 0.1;
    bool right_of = box.left >= label->target.right - 0.1;
    enum align align = left_of ? ALIGN_RIGHT : right_of ? ALIGN_LEFT : ALIGN_MIDDLE;
    double x = left_of ? box.right : right_of ? box.left : (box.left + box.right) / 2;
    double y = box.top + 2.7;
    for (int i = 0; i < label->lines.count; i++) {
        sketch_words(sketch, x, y, label->lines.items[i], label_font(true), align, INK_BLACK);
        y += LABEL_LINE;
    }
    for (int i = 0; i < label->data_lines.count; i++) {
        sketch_words(sketch, x, y, label->data_lines.items[i], label_font(false), align, INK_DARK);
        y += LABEL_LINE;
    }
    if (label->tag == TAG_NONE)
        return;
    double width = ruler_width(ruler, label->tag_words, label_tag_font()) + 1.8;
    double left = left_of    ? box.right - width
                  : right_of ? box.left
                             : (box.left + box.right - width) / 2;
    symbol_tag(sketch, left, y - 2.3, width, label);
}

static void draw_symbol(struct sketch *sketch, const struct layout *layout,
                        const struct symbol *symbol)
{
    sketch->group = name_of(layout, symbol->part);
    symbol_draw(sketch, layout, symbol);
}

static void draw_nipple(struct sketch *sketch, const struct layout *layout,
                        const struct nipple_mark *mark)
{
    const char *part = name_of(layout, mark->nipple.part);
    sketch->group = mark->number > 0
                        ? text_print(layout->arena, "nipple %d, %s", mark->number, part)
                        : text_print(layout->arena, "nipple shut, %s", part);
    symbol_nipple(sketch, mark->at, mark->number);
}

struct sketch diagram_sketch(const struct layout *layout, const struct ruler *ruler,
                             struct arena *arena)
{
    struct sketch sketch = sketch_start(arena, layout->width, layout->height);
    sketch.group = "car";
    draw_ground(&sketch, layout);
    draw_feeds(&sketch, layout);
    for (int i = 0; i < layout->chain_count; i++)
        draw_chain(&sketch, layout, i);
    for (int i = 0; i < layout->symbol_count; i++)
        draw_symbol(&sketch, layout, &layout->symbols[i]);
    for (int i = 0; i < layout->nipple_count; i++)
        draw_nipple(&sketch, layout, &layout->nipples[i]);
    for (int i = 0; i < layout->label_count; i++) {
        sketch.group = label_group(layout, &layout->labels[i]);
        draw_label(&sketch, &layout->labels[i], ruler);
    }
    sketch.group = NULL;
    return sketch;
}

/* Rows of the legend, laid out column by column, each as wide as its words. */
struct legend {
    struct sketch sketch;
    const struct ruler *ruler;
    int row, rows;
    double left, right; /* of this column */
    double spread;      /* more room between columns */
};

#define LEGEND_SAMPLE 16.5

static struct point legend_next(struct legend *legend, const char *words)
{
    struct font font = {.size = 8};
    if (legend->row % legend->rows == 0)
        legend->left = legend->right + (legend->row > 0 ? legend->spread : 0);
    double x = legend->left;
    double y = 3.2 + (legend->row % legend->rows) * 4.8;
    legend->row++;
    double end = x + LEGEND_SAMPLE + ruler_width(legend->ruler, words, font) + 5;
    legend->right = fmax(legend->right, end);
    sketch_words(&legend->sketch, x + LEGEND_SAMPLE, y + 0.9, words, font, ALIGN_LEFT, INK_BLACK);
    return (struct point){x, y};
}

static void legend_hose(struct legend *legend, enum tag tag, const char *words)
{
    struct point at = legend_next(legend, words);
    struct point line[] = {{at.x + 1, at.y}, {at.x + 14, at.y}};
    symbol_hose(&legend->sketch, line, 2, tag, pen_of(0.6, INK_BLACK));
}

static bool any_tag(const struct layout *layout, enum tag tag)
{
    for (int i = 0; i < layout->label_count; i++)
        if (layout->labels[i].tag == tag)
            return true;
    return false;
}

static bool any_nipple(const struct layout *layout, bool numbered)
{
    for (int i = 0; i < layout->nipple_count; i++)
        if ((layout->nipples[i].number > 0) == numbered)
            return true;
    return false;
}

static bool any_letter(const struct layout *layout)
{
    for (int i = 0; i < layout->label_count; i++)
        if (layout->labels[i].letter)
            return true;
    return false;
}

static bool any_brake(const struct layout *layout)
{
    for (int i = 0; i < layout->symbol_count; i++)
        if (kind_is_brake(layout->system->parts[layout->symbols[i].part].kind))
            return true;
    return false;
}

static bool any_branch(const struct layout *layout)
{
    for (int i = 0; i < layout->symbol_count; i++)
        if (layout->system->parts[layout->symbols[i].part].kind == KIND_JOINT)
            return true;
    return false;
}

/* A joint with two ends, bracket or not. */
static bool any_inline(const struct layout *layout, bool bracket)
{
    for (int i = 0; i < layout->chain_count; i++)
        for (int k = 0; k + 1 < layout->chains[i].edge_count; k++) {
            int part = layout->chains[i].marks[k].part;
            if ((layout->system->parts[part].as.joint.type == JOINT_BRACKET) == bracket)
                return true;
        }
    return false;
}

static bool any_plain_feed(const struct layout *layout)
{
    for (int i = 0; i < layout->feed_count; i++)
        if (!layout->feeds[i].hose)
            return true;
    return false;
}

static void legend_joint(struct legend *legend, const char *words, bool bracket)
{
    struct point at = legend_next(legend, words);
    sketch_line(&legend->sketch, at.x + 2, at.y, at.x + 14, at.y, pen_of(PIPE_WIDTH, INK_BLACK));
    symbol_inline_joint(&legend->sketch, (struct point){at.x + 8, at.y}, false, bracket);
}

static void legend_marks(struct legend *legend, const struct layout *layout)
{
    if (any_letter(layout)) {
        struct point at = legend_next(legend, "joint, as the plan calls it");
        struct box box = {at.x + 8 - LETTER_HEIGHT / 2, at.y - LETTER_HEIGHT / 2,
                          at.x + 8 + LETTER_HEIGHT / 2, at.y + LETTER_HEIGHT / 2};
        symbol_letter(&legend->sketch, box, "A");
    }
    if (any_nipple(layout, true)) {
        struct point at = legend_next(legend, "nipple, in bleeding order");
        symbol_nipple(&legend->sketch, (struct point){at.x + 8, at.y}, 1);
    }
    if (any_nipple(layout, false)) {
        struct point at = legend_next(legend, "nipple that stays shut");
        symbol_nipple(&legend->sketch, (struct point){at.x + 8, at.y}, 0);
    }
    if (any_branch(layout)) {
        struct point at = legend_next(legend, "branch");
        sketch_line(&legend->sketch, at.x + 2, at.y, at.x + 14, at.y,
                    pen_of(PIPE_WIDTH, INK_BLACK));
        sketch_circle(&legend->sketch, (struct point){at.x + 8, at.y}, 1.1, pen_of(0, INK_NONE),
                      INK_BLACK);
    }
    if (any_brake(layout)) {
        struct point at = legend_next(legend, "piston");
        sketch_circle(&legend->sketch, (struct point){at.x + 8, at.y}, PISTON_RADIUS,
                      pen_of(0, INK_NONE), INK_BLACK);
    }
    if (any_inline(layout, true))
        legend_joint(legend, "bracket", true);
    if (any_inline(layout, false))
        legend_joint(legend, "union", false);
}

/* Only what is on this car. */
static struct legend fill_legend(const struct layout *layout, const struct ruler *ruler,
                                 struct arena *arena, double width, double spread, int rows)
{
    int circuits = layout->network->circuit_count;
    struct legend legend = {
        sketch_start(arena, width, 2 + rows * 4.8), ruler, 0, rows, 0, 0, spread};
    legend.sketch.group = "legend";
    for (int rank = 0; rank < circuits; rank++)
        for (int c = 0; c < circuits; c++) {
            if (layout->rank[c] != rank)
                continue;
            const char *name = layout->network->circuits[c].name;
            struct point at = legend_next(&legend, name ? name : "circuit");
            sketch_line(&legend.sketch, at.x + 1, at.y, at.x + 14, at.y,
                        diagram_circuit_pen(layout, c));
        }
    if (any_tag(layout, TAG_NEW) || any_tag(layout, TAG_GOOD))
        legend_hose(&legend, TAG_NEW, "hose, good");
    if (any_tag(layout, TAG_OLD))
        legend_hose(&legend, TAG_OLD, "hose, old: renew");
    if (any_tag(layout, TAG_UNDATED))
        legend_hose(&legend, TAG_UNDATED, "hose, age not known");
    legend_marks(&legend, layout);
    if (any_plain_feed(layout)) {
        struct point at = legend_next(&legend, "feed from the reservoir");
        sketch_line(&legend.sketch, at.x + 1, at.y, at.x + 14, at.y, pen_of(0.6, INK_GREY));
    }
    return legend;
}

struct sketch diagram_legend(const struct layout *layout, const struct ruler *ruler,
                             struct arena *arena, double width)
{
    /* Filled once to count its rows, then to see how wide it is, then over the whole width. */
    int rows = (fill_legend(layout, ruler, arena, width, 0, 1).row + 2) / 3;
    struct legend narrow = fill_legend(layout, ruler, arena, width, 0, rows);
    double spread = fmin(fmax((width - narrow.right) / 2, 0), 24);
    return fill_legend(layout, ruler, arena, width, spread, rows).sketch;
}

struct sketch diagram_page(const struct layout *layout, const struct ruler *ruler,
                           struct arena *arena)
{
    const double edge = 6;
    struct sketch legend = diagram_legend(layout, ruler, arena, layout->width);
    struct sketch drawing = diagram_sketch(layout, ruler, arena);
    struct sketch page = sketch_start(arena, layout->width + 2 * edge,
                                      layout->height + legend.height + 2 * edge + 14);
    const char *title = system_vehicle(layout->system)->title;
    page.title = title ? title : "Car without a title";
    page.description = description_of(layout);
    struct font large = {.size = 13, .bold = true};
    const double right_words = 62; /* what stands on the right takes up */
    sketch_words(&page, edge, edge + 5,
                 sketch_shortened(arena, ruler, page.title, large, layout->width - right_words),
                 large, ALIGN_LEFT, INK_BLACK);
    sketch_words(&page, layout->width + edge, edge + 5, "wet side, plan view, not to scale",
                 (struct font){.size = 8}, ALIGN_RIGHT, INK_DARK);
    sketch_place(&page, &drawing, edge, edge + 9);
    sketch_place(&page, &legend, edge, edge + 12 + layout->height);
    return page;
}

static bool make_page(const struct ruler *ruler, const void *of, struct arena *arena,
                      struct sketch *page, const char **error)
{
    const struct layout *layout = layout_of(of, ruler, arena);
    *error = layout_refusal(layout);
    if (*error == NULL)
        *page = diagram_page(layout, ruler, arena);
    return *error == NULL;
}

bool diagram_picture(const struct result *result, enum picture_form form, double dots,
                     struct bytes *out, const char **error)
{
    const struct picture picture = {make_page,     result, system_vehicle(result->system)->title,
                                    result->today, form,   dots};
    return picture_bytes(&picture, out, error);
}
