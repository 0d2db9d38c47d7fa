#include "report/diagram/overlaps.h"

#include <math.h>

#include "base/list.h"
#include "report/diagram/labels.h"

/* A box, or a straight line with some width; belongs to up to two symbols that it may touch. */
struct thing {
    enum thing_kind kind;
    const char *name;
    struct box box;       /* of a line: around its middle */
    struct point ends[2]; /* of a line */
    int symbols[2];       /* that it is or may touch; -1 */
    int owner;            /* chain of a way, label of a label or its leader, nipple's symbol; -1 */
};
struct things {
    struct thing *items;
    size_t count;
    size_t capacity;
};

static bool is_line(const struct thing *thing)
{
    return thing->kind == THING_WAY || thing->kind == THING_FEED || thing->kind == THING_LEADER;
}

static struct thing *add_box(struct things *things, struct arena *arena, enum thing_kind kind,
                             const char *name, struct box box)
{
    struct thing *thing = LIST_ADD(arena, things);
    *thing =
        (struct thing){.kind = kind, .name = name, .box = box, .symbols = {-1, -1}, .owner = -1};
    return thing;
}

static struct thing *add_line(struct things *things, struct arena *arena, enum thing_kind kind,
                              const char *name, struct point a, struct point b, double half)
{
    struct thing *thing =
        add_box(things, arena, kind, name, labels_box_of((struct point[]){a, b}, 2, half));
    thing->ends[0] = a;
    thing->ends[1] = b;
    return thing;
}

static void add_ways(const struct layout *layout, struct arena *arena, struct things *things)
{
    for (int i = 0; i < layout->chain_count; i++) {
        const struct chain *chain = &layout->chains[i];
        for (int k = 0; chain->way.count > 0 && k < chain->edge_count; k++) {
            const struct piece *piece = &chain->pieces[k];
            for (int p = 1; p < piece->count; p++) {
                struct thing *way =
                    add_line(things, arena, THING_WAY, "a pipe or hose", piece->points[p - 1],
                             piece->points[p], piece->hose ? HOSE_HALF : PIPE_HALF);
                way->symbols[0] = chain->from;
                way->symbols[1] = chain->to;
                way->owner = i;
            }
        }
    }
}

static void add_labels(const struct layout *layout, struct arena *arena, struct things *things)
{
    for (int i = 0; i < layout->label_count; i++) {
        const struct label *label = &layout->labels[i];
        const char *name = label->name ? label->name : "a tag";
        add_box(things, arena, THING_LABEL, name, label->box)->owner = i;
        if (!label->leader)
            continue;
        struct thing *leader =
            add_line(things, arena, THING_LEADER, name, label->leader_from, label->leader_to, 0.1);
        leader->owner = i;
        if (label->part >= 0)
            leader->symbols[0] = layout->symbol_of[label->part];
    }
}

static struct things things_of(const struct layout *layout, struct arena *arena)
{
    struct things things = {0};
    for (int i = 0; i < layout->symbol_count; i++) {
        const struct symbol *symbol = &layout->symbols[i];
        const char *name = layout->system->parts[symbol->part].name;
        add_box(&things, arena, THING_SYMBOL, name, box_wider(symbol->box, -0.2))->symbols[0] = i;
        struct box rods;
        if (labels_rods(layout, symbol, &rods))
            add_box(&things, arena, THING_ROD, "a push rod", rods)->symbols[0] = i;
    }
    for (int i = 0; i < layout->nipple_count; i++)
        add_box(&things, arena, THING_NIPPLE, "a nipple", layout->nipples[i].box);
    for (int i = 0; i < layout->feed_count; i++) {
        const struct feed *feed = &layout->feeds[i];
        struct thing *line = add_line(&things, arena, THING_FEED, "a feed", feed->a, feed->b,
                                      feed->hose ? HOSE_HALF : PIPE_HALF);
        line->symbols[0] = feed->from;
        line->symbols[1] = feed->to;
    }
    add_ways(layout, arena, &things);
    add_labels(layout, arena, &things);
    return things;
}

/* Whether a line from a to b comes into a box: what is left of it between the box's sides. */
bool overlaps_line_meets_box(struct point a, struct point b, struct box box)
{
    double from = 0, to = 1;
    const double starts[] = {a.x, a.y}, ways[] = {b.x - a.x, b.y - a.y};
    const double lows[] = {box.left, box.top}, highs[] = {box.right, box.bottom};
    for (int i = 0; i < 2; i++) {
        if (fabs(ways[i]) < 1e-9) {
            if (starts[i] <= lows[i] || starts[i] >= highs[i])
                return false;
            continue;
        }
        double one = (lows[i] - starts[i]) / ways[i], other = (highs[i] - starts[i]) / ways[i];
        from = fmax(from, fmin(one, other));
        to = fmin(to, fmax(one, other));
    }
    return to - from > 1e-9;
}

static bool slanted(const struct thing *line)
{
    return line->kind == THING_LEADER;
}

static bool same_home(const struct thing *a, const struct thing *b)
{
    for (int i = 0; i < 2; i++)
        for (int k = 0; k < 2; k++)
            if (a->symbols[i] >= 0 && a->symbols[i] == b->symbols[k])
                return true;
    return false;
}

/* Two upright or level lines: at right angles, each straight on, they may cross. */
static bool cross_well(const struct thing *a, const struct thing *b)
{
    bool upright = a->ends[0].x == a->ends[1].x;
    if (upright == (b->ends[0].x == b->ends[1].x))
        return false;
    const struct thing *up = upright ? a : b;
    const struct thing *flat = upright ? b : a;
    double x = up->ends[0].x, y = flat->ends[0].y, room = 1.0;
    return x > fmin(flat->ends[0].x, flat->ends[1].x) + room &&
           x < fmax(flat->ends[0].x, flat->ends[1].x) - room &&
           y > fmin(up->ends[0].y, up->ends[1].y) + room &&
           y < fmax(up->ends[0].y, up->ends[1].y) - room;
}

static bool lines_clash(const struct thing *a, const struct thing *b)
{
    if (slanted(a))
        return overlaps_line_meets_box(a->ends[0], a->ends[1],
                                       slanted(b) ? (struct box){0} : b->box);
    return boxes_meet(a->box, b->box) && !cross_well(a, b);
}

/* The side of a line through two points that a third lies on. */
static double side_of(struct point a, struct point b, struct point c)
{
    return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

static bool leaders_cross(const struct thing *a, const struct thing *b)
{
    const struct point *p = a->ends, *q = b->ends;
    return side_of(p[0], p[1], q[0]) * side_of(p[0], p[1], q[1]) < 0 &&
           side_of(q[0], q[1], p[0]) * side_of(q[0], q[1], p[1]) < 0;
}

/* What a leader points at may be touched by it: a symbol, or the box around a piece of hose. */
static bool points_at(const struct layout *layout, const struct thing *leader,
                      const struct thing *other)
{
    struct box target = box_wider(layout->labels[leader->owner].target, 0.05);
    struct box box = other->box;
    return box.left >= target.left && box.right <= target.right && box.top >= target.top &&
           box.bottom <= target.bottom;
}

static bool clash(const struct layout *layout, const struct thing *a, const struct thing *b)
{
    if (b->kind == THING_LEADER) {
        const struct thing *turned = a;
        a = b;
        b = turned;
    }
    bool lines = is_line(a) && is_line(b);
    if (a->kind == THING_LEADER) {
        if (b->owner == a->owner && (b->kind == THING_LABEL || b->kind == THING_LEADER))
            return false;
        if (b->kind == THING_LEADER)
            return leaders_cross(a, b);
        return !points_at(layout, a, b) && !(b->kind == THING_SYMBOL && same_home(a, b)) &&
               overlaps_line_meets_box(a->ends[0], a->ends[1], b->box);
    }
    if (lines) {
        if (a->kind == THING_WAY && b->kind == THING_WAY && a->owner == b->owner)
            return false;
        /* Lines of one part come together there. */
        if (same_home(a, b) && a->kind == b->kind) {
            struct box meet = {fmax(a->box.left, b->box.left), fmax(a->box.top, b->box.top),
                               fmin(a->box.right, b->box.right),
                               fmin(a->box.bottom, b->box.bottom)};
            for (int i = 0; i < 2; i++)
                for (int k = 0; k < 2; k++)
                    if (a->symbols[i] >= 0 && a->symbols[i] == b->symbols[k] &&
                        boxes_meet(meet, box_wider(layout->symbols[a->symbols[i]].box, 0.5)))
                        return false;
        }
        return lines_clash(a, b);
    }
    if (!boxes_meet(a->box, b->box))
        return false;
    if ((a->kind == THING_ROD || b->kind == THING_ROD) &&
        (a->kind == THING_SYMBOL || b->kind == THING_SYMBOL))
        return !labels_rod_of(layout, a->kind == THING_ROD ? a->symbols[0] : b->symbols[0],
                              a->kind == THING_ROD ? b->symbols[0] : a->symbols[0]);
    return !((is_line(a) || is_line(b)) && same_home(a, b));
}

struct overlaps layout_overlaps(const struct layout *layout, struct arena *arena)
{
    struct things things = things_of(layout, arena);
    struct overlaps overlaps = {0};
    for (size_t a = 0; a < things.count; a++)
        for (size_t b = a + 1; b < things.count; b++) {
            const struct thing *one = &things.items[a];
            const struct thing *other = &things.items[b];
            if (clash(layout, one, other))
                *LIST_ADD(arena, &overlaps) = (struct overlap){
                    one->name, other->name, one->kind, other->kind, one->box, other->box};
        }
    return overlaps;
}
