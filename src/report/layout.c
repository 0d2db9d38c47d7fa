#include "report/layout.h"

#include "base/list.h"
#include "report/chains.h"
#include "report/labels.h"
#include "report/place.h"

#define NIPPLE_RADIUS 2.3

static void put_on_paper(struct layout *layout)
{
    for (int i = 0; i < layout->symbol_count; i++) {
        struct symbol *s = &layout->symbols[i];
        s->at = chains_on_paper(layout, s->centre);
        s->inward = s->at.x < LAYOUT_WIDTH / 2 ? 1 : -1;
        double w = s->half_width > 0 ? s->half_width * GRID_STEP : 1.1;
        double h = s->half_height > 0 ? s->half_height * GRID_STEP : 1.1;
        s->box = (struct box){s->at.x - w, s->at.y - h, s->at.x + w, s->at.y + h};
    }
}

static int bleeding_number(const struct result *result, int part, int nipple)
{
    const struct bleed_plan *plan = result->bleed;
    for (size_t i = 0; plan && i < plan->steps.count; i++)
        if (plan->steps.items[i].part == part && plan->steps.items[i].nipple == nipple)
            return plan->steps.items[i].number;
    return 0;
}

/* Where a part's nipple is drawn: above a brake, at the upper corner of anything else. */
static struct point nipple_at(const struct layout *layout, const struct symbol *symbol, int index,
                              int count)
{
    const struct part *part = &layout->system->parts[symbol->part];
    if (kind_is_brake(part->kind) && layout->motorcycle) {
        double off = (index - (count - 1) / 2.0) * (2 * NIPPLE_RADIUS + 0.8);
        double edge = symbol->inward > 0 ? symbol->box.left : symbol->box.right;
        return (struct point){edge - symbol->inward * (NIPPLE_RADIUS + 0.7), symbol->at.y + off};
    }
    if (kind_is_brake(part->kind)) {
        double off = (index - (count - 1) / 2.0) * (2 * NIPPLE_RADIUS + 0.8);
        return (struct point){symbol->at.x + off, symbol->box.top - NIPPLE_RADIUS - 0.7};
    }
    double out = layout->mirrored ? -1 : 1;
    double edge = layout->mirrored ? symbol->box.left : symbol->box.right;
    double up = symbol->half_width > 0 ? 1.0 : NIPPLE_RADIUS;
    return (struct point){edge + out * (NIPPLE_RADIUS + 0.5) +
                              out * index * (2 * NIPPLE_RADIUS + 0.8),
                          symbol->box.top - up};
}

struct nipple_list {
    struct nipple_mark *items;
    size_t count;
    size_t capacity;
};

static void mark_nipples(struct layout *layout)
{
    struct nipple_list list = {0};
    for (int i = 0; i < layout->symbol_count; i++) {
        const struct symbol *symbol = &layout->symbols[i];
        int count = place_nipples(layout, symbol->part);
        for (int k = 0; k < count; k++) {
            struct nipple_mark *mark = LIST_ADD(layout->arena, &list);
            mark->nipple = (struct nipple){symbol->part, k};
            mark->number = bleeding_number(layout->result, symbol->part, k);
            mark->at = nipple_at(layout, symbol, k, count);
            mark->box = labels_box_of(&mark->at, 1, NIPPLE_RADIUS);
        }
    }
    layout->nipples = list.items;
    layout->nipple_count = (int)list.count;
}

static void add_feed(struct layout *layout, struct feed feed)
{
    layout->feeds[layout->feed_count++] = feed;
}

/* Lines from reservoirs to masters, and the vacuum hoses of servos. */
static void find_feeds(struct layout *layout)
{
    layout->feeds = ARENA_ARRAY(layout->arena, 2 * (size_t)layout->symbol_count + 1, struct feed);
    double out = layout->mirrored ? -1 : 1;
    for (int i = 0; i < layout->symbol_count; i++) {
        const struct symbol *s = &layout->symbols[i];
        const struct part *part = &layout->system->parts[s->part];
        if (part->kind == KIND_SERVO && part->as.servo.vacuum_hose.m > 0) {
            double edge = out > 0 ? s->box.right : s->box.left;
            struct point a = {edge, s->at.y};
            struct point b = {edge + out * 3 * GRID_STEP, s->at.y};
            if (part_chambers(part) > 0) { /* remote: its pipes leave at the sides */
                double inner = out > 0 ? s->box.left : s->box.right;
                a = (struct point){inner, s->at.y + GRID_STEP};
                b = (struct point){inner - out * 2.4 * GRID_STEP, s->at.y + GRID_STEP};
            }
            add_feed(layout, (struct feed){i, -1, true, a, b, TAG_NONE});
        }
        int reservoir =
            part->kind == KIND_MASTER ? place_reservoir_of(layout->system, s->part) : -1;
        if (reservoir < 0)
            continue;
        int from = layout->symbol_of[reservoir];
        bool hose = part->as.master.supply_hose.m > 0;
        struct point a = {s->at.x, layout->symbols[from].box.bottom};
        add_feed(layout, (struct feed){from, i, hose, a, {s->at.x, s->box.top}, TAG_NONE});
    }
}

struct layout *layout_of(const struct result *result, const struct ruler *ruler,
                         struct arena *arena)
{
    struct layout *layout = ARENA_NEW(arena, struct layout);
    layout->arena = arena;
    layout->result = result;
    layout->system = result->system;
    layout->network = result->network;
    place_symbols(layout);
    chains_find(layout);
    chains_route(layout);
    put_on_paper(layout);
    chains_finish(layout);
    mark_nipples(layout);
    find_feeds(layout);
    labels_place(layout, ruler);
    return layout;
}

struct named_box {
    struct box box;
    const char *name;
    int symbols[2]; /* that it may touch */
    bool way;
};
struct named_boxes {
    struct named_box *items;
    size_t count;
    size_t capacity;
};

static void collect(const struct layout *layout, struct arena *arena, struct named_boxes *list)
{
    for (int i = 0; i < layout->symbol_count; i++)
        *LIST_ADD(arena, list) =
            (struct named_box){box_wider(layout->symbols[i].box, -0.2),
                               layout->system->parts[layout->symbols[i].part].name,
                               {i, -1},
                               false};
    for (int i = 0; i < layout->nipple_count; i++)
        *LIST_ADD(arena, list) =
            (struct named_box){layout->nipples[i].box, "a nipple", {-1, -1}, false};
    for (int i = 0; i < layout->label_count; i++)
        *LIST_ADD(arena, list) =
            (struct named_box){layout->labels[i].box,
                               layout->labels[i].name ? layout->labels[i].name : "a tag",
                               {-1, -1},
                               false};
    for (int i = 0; i < layout->chain_count; i++) {
        struct box_list boxes = {0};
        labels_way_boxes(layout, i, arena, &boxes);
        for (size_t k = 0; k < boxes.count; k++)
            *LIST_ADD(arena, list) =
                (struct named_box){boxes.items[k],
                                   "a pipe or hose",
                                   {layout->chains[i].from, layout->chains[i].to},
                                   true};
    }
}

struct overlaps layout_overlaps(const struct layout *layout, struct arena *arena)
{
    struct named_boxes list = {0};
    struct overlaps overlaps = {0};
    collect(layout, arena, &list);
    for (size_t a = 0; a < list.count; a++)
        for (size_t b = a + 1; b < list.count; b++) {
            const struct named_box *one = &list.items[a];
            const struct named_box *other = &list.items[b];
            if (one->way && other->way)
                continue; /* ways keep apart on the grid; a test looks at their lines */
            bool at_home =
                other->way && one->symbols[0] >= 0 &&
                (one->symbols[0] == other->symbols[0] || one->symbols[0] == other->symbols[1]);
            if (at_home || !boxes_meet(one->box, other->box))
                continue;
            *LIST_ADD(arena, &overlaps) =
                (struct overlap){one->name, other->name, one->box, other->box};
        }
    return overlaps;
}
