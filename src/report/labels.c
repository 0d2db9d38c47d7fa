#include "report/labels.h"

#include <math.h>

#include "base/list.h"
#include "base/text.h"
#include "physics/pressure.h"
#include "report/place.h"
#include "units/unit.h"

enum { REACH = 60 /* mm that a label may stand away from what it names */ };
#define STEP     1.0
#define CLEAR    0.9 /* mm between a label and anything else */
#define NEAR_BY  2.6 /* further away a thin line leads to it */
#define TAG_EDGE 0.9

struct font label_font(bool name)
{
    return (struct font){.size = 6.6, .bold = name};
}

struct font label_tag_font(void)
{
    return (struct font){.size = 5.6, .bold = true};
}

const char *tag_words(enum tag tag)
{
    static const char *const words[] = {
        [TAG_NONE] = "",
        [TAG_NEW] = "NEW",
        [TAG_OLD] = "OLD",
        [TAG_UNDATED] = "AGE NOT KNOWN",
        [TAG_MISSING] = "HOSE MISSING",
        [TAG_ACCEPTED] = "HARD PIPE ACCEPTED",
    };
    return words[tag];
}

struct box labels_box_of(const struct point *points, int count, double wider)
{
    struct box box = {INFINITY, INFINITY, -INFINITY, -INFINITY};
    for (int i = 0; i < count; i++) {
        box.left = fmin(box.left, points[i].x);
        box.right = fmax(box.right, points[i].x);
        box.top = fmin(box.top, points[i].y);
        box.bottom = fmax(box.bottom, points[i].y);
    }
    return box_wider(box, wider);
}

void labels_way_boxes(const struct layout *layout, int chain, struct arena *arena,
                      struct box_list *into)
{
    const struct chain *c = &layout->chains[chain];
    for (int i = 0; c->way.count > 0 && i < c->edge_count; i++) {
        const struct piece *piece = &c->pieces[i];
        for (int k = 1; k < piece->count; k++)
            *LIST_ADD(arena, into) =
                labels_box_of(&piece->points[k - 1], 2, piece->hose ? 1.3 : 0.4);
    }
}

int labels_tyres(const struct layout *layout, struct box tyres[static MOST_TYRES])
{
    double axles[] = {layout->front_axle * GRID_STEP, layout->rear_axle * GRID_STEP};
    int count = 0;
    for (int i = 0; i < 2; i++) {
        if (layout->motorcycle) {
            double x = LAYOUT_WIDTH / 2;
            tyres[count++] = (struct box){x - 5, axles[i] - 22, x + 5, axles[i] + 22};
            continue;
        }
        tyres[count++] = (struct box){2.5, axles[i] - 12, 11.5, axles[i] + 12};
        tyres[count++] =
            (struct box){LAYOUT_WIDTH - 11.5, axles[i] - 12, LAYOUT_WIDTH - 2.5, axles[i] + 12};
    }
    return count;
}

static const char *bores_words(const struct layout *layout, const struct bores *bores)
{
    const char *bore = unit_show_bore(layout->arena, bores->bore.m, layout->result->units);
    return bores->count > 0 ? text_print(layout->arena, "%d of %s", bores->count, bore) : bore;
}

/* What stands below a part's name, or NULL. */
static const char *data_of(const struct layout *layout, int part)
{
    const struct part *p = &layout->system->parts[part];
    double bore = NAN;
    if (p->kind == KIND_MASTER)
        bore = p->as.master.bore.m;
    else if (p->kind == KIND_DRUM)
        bore = p->as.drum.bore.m;
    else if (p->kind == KIND_SLAVE)
        bore = p->as.slave.bore.m;
    else if (p->kind == KIND_DISC && p->as.disc.bores.bore.m > 0)
        return bores_words(layout, &p->as.disc.bores);
    if (!(bore > 0))
        return NULL;
    return unit_show_bore(layout->arena, bore, layout->result->units);
}

static enum tag tag_of(enum hose_standing standing)
{
    switch (standing) {
    case HOSE_IS_NEW:
        return TAG_NEW;
    case HOSE_IS_OLD:
        return TAG_OLD;
    case HOSE_AGE_NOT_KNOWN:
        return TAG_UNDATED;
    case HOSE_IS_MISSING:
        return TAG_MISSING;
    case HOSE_IS_ACCEPTED:
        return TAG_ACCEPTED;
    case HOSE_CANNOT_TELL:
    case HOSE_IS_IDLE:
        break;
    }
    return TAG_NONE;
}

struct label_list {
    struct label *items;
    size_t count;
    size_t capacity;
};

static void name_symbols(const struct layout *layout, struct label_list *list)
{
    for (int i = 0; i < layout->symbol_count; i++) {
        int part = layout->symbols[i].part;
        const struct part *p = &layout->system->parts[part];
        if (p->kind == KIND_JOINT && p->as.joint.implied)
            continue;
        *LIST_ADD(layout->arena, list) = (struct label){.part = part,
                                                        .name = p->name,
                                                        .data = data_of(layout, part),
                                                        .target = layout->symbols[i].box};
    }
}

/* Where a part is on paper: its symbol, its piece of a way or its mark on one. */
static bool box_of_part(const struct layout *layout, int part, struct box *box)
{
    if (part < 0)
        return false;
    if (layout->symbol_of[part] >= 0) {
        *box = layout->symbols[layout->symbol_of[part]].box;
        return true;
    }
    for (int i = 0; i < layout->chain_count; i++) {
        const struct chain *chain = &layout->chains[i];
        for (int k = 0; chain->way.count > 0 && k < chain->edge_count; k++) {
            const struct piece *piece = &chain->pieces[k];
            if (piece->part == part) {
                /* The longest leg stands for the piece. */
                double best = -1;
                for (int leg = 1; leg < piece->count; leg++) {
                    struct box b = labels_box_of(&piece->points[leg - 1], 2, 1.3);
                    double size = b.right - b.left + b.bottom - b.top;
                    if (size > best) {
                        best = size;
                        *box = b;
                    }
                }
                return true;
            }
            if (k < chain->edge_count - 1 && chain->marks[k].part == part) {
                *box = labels_box_of(&chain->marks[k].at, 1, 1.5);
                return true;
            }
        }
    }
    return false;
}

static void name_hoses(const struct layout *layout, struct label_list *list)
{
    const struct hose_list *hoses = &layout->result->hoses;
    for (int i = 0; i < hoses->count; i++) {
        const struct hose_line *line = &hoses->items[i];
        struct label label = {
            .part = line->hose, .name = line->name, .tag = tag_of(line->standing)};
        if (line->hose < 0)
            label.part = line->far;
        if (label.tag == TAG_ACCEPTED || label.tag == TAG_MISSING)
            label.name = NULL;
        if (box_of_part(layout, line->hose >= 0 ? line->hose : line->far, &label.target) &&
            (line->hose >= 0 || label.tag == TAG_ACCEPTED || label.tag == TAG_MISSING))
            *LIST_ADD(layout->arena, list) = label;
    }
}

/* The line of the hose list that is about the supply or vacuum hose of a part: by its ends, by its
 * name, or because it is the only one of that use. */
static const struct hose_line *low_pressure_line(const struct layout *layout, int owner,
                                                 const char *use)
{
    const struct hose_list *hoses = &layout->result->hoses;
    const struct hose_line *only = NULL;
    int count = 0;
    for (int i = 0; i < hoses->count; i++) {
        const struct hose_line *line = &hoses->items[i];
        if (!line->use || !text_same(line->use, use))
            continue;
        if (line->near == owner || line->far == owner ||
            text_begins(line->name, layout->system->parts[owner].name))
            return line;
        only = line;
        count++;
    }
    return count == 1 ? only : NULL;
}

/* Low-pressure rubber lies in no circuit. */
static void name_feeds(struct layout *layout, struct label_list *list)
{
    for (int i = 0; i < layout->feed_count; i++) {
        struct feed *feed = &layout->feeds[i];
        if (!feed->hose)
            continue;
        bool vacuum = feed->to < 0;
        int owner = layout->symbols[vacuum ? feed->from : feed->to].part;
        const struct hose_line *line =
            low_pressure_line(layout, owner, vacuum ? "vacuum" : "supply");
        feed->tag = line ? tag_of(line->standing) : TAG_NONE;
        *LIST_ADD(layout->arena, list) =
            (struct label){.part = owner,
                           .name = vacuum ? "vacuum hose" : "supply hose",
                           .tag = feed->tag,
                           .target = labels_box_of((struct point[]){feed->a, feed->b}, 2, 1.0)};
    }
}

static void size_of(const struct label *label, const struct ruler *ruler, double *width,
                    double *height)
{
    double name = label->name ? ruler_width(ruler, label->name, label_font(true)) : 0;
    double data = label->data ? ruler_width(ruler, label->data, label_font(false)) : 0;
    double tag = label->tag ? ruler_width(ruler, tag_words(label->tag), label_tag_font()) : 0;
    tag += label->tag ? 2 * TAG_EDGE : 0;
    *width = fmax(name, fmax(data, tag));
    *height = LABEL_LINE * ((label->name != NULL) + (label->data != NULL) +
                            (label->tag != TAG_NONE) * 1.15) +
              0.3;
}

static double between(struct box a, struct box b)
{
    double x = fmax(0, fmax(a.left - b.right, b.left - a.right));
    double y = fmax(0, fmax(a.top - b.bottom, b.top - a.bottom));
    return hypot(x, y);
}

static bool free_at(struct box box, const struct box_list *taken)
{
    struct box wide = box_wider(box, CLEAR);
    for (size_t i = 0; i < taken->count; i++)
        if (boxes_meet(wide, taken->items[i]))
            return false;
    return true;
}

static struct point nearest_in(struct box box, struct point to)
{
    return (struct point){fmin(fmax(to.x, box.left), box.right),
                          fmin(fmax(to.y, box.top), box.bottom)};
}

/* How much a leading line would run over other things. */
static double runs_over(struct point a, struct point b, const struct box_list *taken)
{
    double over = 0;
    for (int i = 1; i < 20; i++) {
        struct point p = {a.x + (b.x - a.x) * i / 20.0, a.y + (b.y - a.y) * i / 20.0};
        struct box spot = {p.x - 0.2, p.y - 0.2, p.x + 0.2, p.y + 0.2};
        for (size_t k = 0; k < taken->count; k++)
            over += boxes_meet(spot, taken->items[k]);
    }
    return over;
}

static void lead(struct label *label)
{
    struct point middle = {(label->target.left + label->target.right) / 2,
                           (label->target.top + label->target.bottom) / 2};
    label->leader_from = nearest_in(box_wider(label->box, 0.3), middle);
    label->leader_to = nearest_in(label->target, label->leader_from);
    label->leader = between(label->box, label->target) > NEAR_BY;
}

/* Beside and below read better than above; straight beside better than at a corner. */
static double dislike(const struct label *label, const struct box_list *taken,
                      const struct box_list *faint)
{
    struct box box = label->box;
    struct box target = label->target;
    double apart = between(box, target);
    double off_x = fabs(box.left + box.right - target.left - target.right) / 2;
    double off_y = fabs(box.top + box.bottom - target.top - target.bottom) / 2;
    double score = 4 * apart + 0.25 * fmin(off_x, off_y) + 0.05 * (off_x + off_y);
    for (size_t i = 0; i < faint->count; i++)
        score += boxes_meet(box, faint->items[i]) ? 3.0 : 0;
    struct label led = *label;
    lead(&led);
    if (led.leader)
        score += 4 + 3 * runs_over(led.leader_from, led.leader_to, taken);
    return score;
}

/* Tries every place up to a reach from the target; keeps the one disliked least in label->box. */
static double try_places(struct label *label, struct box size, double reach,
                         const struct box_list *taken, const struct box_list *faint)
{
    struct box target = label->target;
    double width = size.right;
    double height = size.bottom;
    double best = INFINITY;
    struct box place = size;
    for (double y = target.top - height - reach; y <= target.bottom + reach; y += STEP)
        for (double x = target.left - width - reach; x <= target.right + reach; x += STEP) {
            label->box = (struct box){x, y, x + width, y + height};
            if (x < 0 || y < 0 || x + width > LAYOUT_WIDTH || y + height > LAYOUT_HEIGHT ||
                4 * between(label->box, target) >= best || !free_at(label->box, taken))
                continue;
            double score = dislike(label, taken, faint);
            if (score < best) {
                best = score;
                place = label->box;
            }
        }
    label->box = place;
    return best;
}

static void find_place(struct label *label, double width, double height,
                       const struct box_list *taken, const struct box_list *faint)
{
    /* A place within reach that is disliked less than any beyond it could be is the best there is;
     * most labels find one close by. */
    static const double reaches[] = {6, 20, REACH};
    for (int i = 0; i < 3; i++)
        if (try_places(label, (struct box){0, 0, width, height}, reaches[i], taken, faint) <=
            4 * reaches[i])
            break;
    lead(label);
}

static struct box scaled(struct box box)
{
    return (struct box){box.left * GRID_STEP, box.top * GRID_STEP, box.right * GRID_STEP,
                        box.bottom * GRID_STEP};
}

/* Around the rods between a pedal and what it works. */
static struct box rods_box(const struct layout *layout, const struct symbol *pedal)
{
    struct box box = {pedal->box.left, pedal->box.top - 2.2 * GRID_STEP, pedal->box.right,
                      pedal->box.top};
    for (int i = 0; i < layout->symbol_count; i++) {
        const struct symbol *s = &layout->symbols[i];
        if (layout->system->parts[s->part].kind != KIND_MASTER ||
            pressure_pedal_of(layout->system, s->part) != pedal->part)
            continue;
        box.left = fmin(box.left, s->at.x - 1);
        box.right = fmax(box.right, s->at.x + 1);
        box.top = fmin(box.top, s->box.bottom);
    }
    return box;
}

static struct box_list all_taken(const struct layout *layout)
{
    struct arena *arena = layout->arena;
    struct box_list taken = {0};
    struct box tyres[MOST_TYRES];
    int tyre_count = labels_tyres(layout, tyres);
    for (int i = 0; i < tyre_count; i++)
        *LIST_ADD(arena, &taken) = tyres[i];
    for (int i = 0; i < layout->symbol_count; i++)
        *LIST_ADD(arena, &taken) = layout->symbols[i].box;
    for (int i = 0; i < layout->nipple_count; i++)
        *LIST_ADD(arena, &taken) = layout->nipples[i].box;
    for (int i = 0; i < layout->chain_count; i++)
        labels_way_boxes(layout, i, arena, &taken);
    for (int i = 0; i < layout->feed_count; i++)
        *LIST_ADD(arena, &taken) =
            labels_box_of((struct point[]){layout->feeds[i].a, layout->feeds[i].b}, 2, 1.0);
    for (int i = 0; i < layout->symbol_count; i++)
        if (layout->system->parts[layout->symbols[i].part].kind == KIND_PEDAL)
            *LIST_ADD(arena, &taken) = rods_box(layout, &layout->symbols[i]);
    return taken;
}

static void add_outline(const struct layout *layout, struct box_list *list, struct box box)
{
    struct arena *arena = layout->arena;
    if (layout->mirrored)
        box = (struct box){LAYOUT_WIDTH - box.right, box.top, LAYOUT_WIDTH - box.left, box.bottom};
    *LIST_ADD(arena, list) = (struct box){box.left, box.top, box.left, box.bottom};
    *LIST_ADD(arena, list) = (struct box){box.right, box.top, box.right, box.bottom};
    *LIST_ADD(arena, list) = (struct box){box.left, box.top, box.right, box.top};
    *LIST_ADD(arena, list) = (struct box){box.left, box.bottom, box.right, box.bottom};
}

/* Faint lines of the car: a label may stand on them, but rather does not. */
static struct box_list faint_lines(const struct layout *layout)
{
    struct box_list list = {0};
    add_outline(layout, &list, layout->engine);
    if (layout->gearbox.right > layout->gearbox.left)
        add_outline(layout, &list, layout->gearbox);
    double y = layout->bulkhead * GRID_STEP;
    double edge = LAYOUT_BODY_EDGE;
    if (!layout->motorcycle) {
        add_outline(layout, &list, (struct box){edge, 4, LAYOUT_WIDTH - edge, LAYOUT_HEIGHT - 4});
        *LIST_ADD(layout->arena, &list) = (struct box){edge, y, LAYOUT_WIDTH - edge, y + 0.9};
    }
    return list;
}

void labels_place(struct layout *layout, const struct ruler *ruler)
{
    struct label_list list = {0};
    name_symbols(layout, &list);
    name_hoses(layout, &list);
    name_feeds(layout, &list);
    struct box_list taken = all_taken(layout);
    layout->engine = scaled(layout->engine);
    layout->gearbox = scaled(layout->gearbox);
    struct box_list faint = faint_lines(layout);
    for (size_t i = 0; i < list.count; i++) {
        double width;
        double height;
        size_of(&list.items[i], ruler, &width, &height);
        find_place(&list.items[i], width, height, &taken, &faint);
        /* Two names side by side must not read as one. */
        struct box box = list.items[i].box;
        box.left -= 1.2;
        box.right += 1.2;
        *LIST_ADD(layout->arena, &taken) = box;
    }
    layout->labels = list.items;
    layout->label_count = (int)list.count;
}
