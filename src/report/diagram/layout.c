#include "report/diagram/layout.h"

#include <math.h>

#include "base/text.h"
#include "report/diagram/chains.h"
#include "report/diagram/labels.h"
#include "report/diagram/nipples.h"
#include "report/diagram/place.h"

static void put_on_paper(struct layout *layout)
{
    for (int i = 0; i < layout->symbol_count; i++) {
        struct symbol *s = &layout->symbols[i];
        s->at = chains_on_paper(s->centre);
        s->inward = s->at.x < layout->width / 2 ? 1 : -1;
        double w = s->half_width > 0 ? s->half_width * GRID_STEP : 1.1;
        double h = s->half_height > 0 ? s->half_height * GRID_STEP : 1.1;
        s->box = (struct box){s->at.x - w, s->at.y - h, s->at.x + w, s->at.y + h};
    }
}

static void add_feed(struct layout *layout, struct feed feed)
{
    layout->feeds[layout->feed_count++] = feed;
}

/* Lines from reservoirs to masters, and the vacuum hoses of servos. */
static void find_feeds(struct layout *layout)
{
    layout->feeds = ARENA_ARRAY(layout->arena, 2 * (size_t)layout->symbol_count + 1, struct feed);
    layout->feed_count = 0;
    for (int i = 0; i < layout->symbol_count; i++) {
        const struct symbol *s = &layout->symbols[i];
        const struct part *part = &layout->system->parts[s->part];
        if (part->kind == KIND_SERVO && part->as.servo.vacuum_hose.m > 0) {
            struct point a = {s->box.right, s->at.y};
            struct point b = {a.x + 3 * GRID_STEP, s->at.y};
            if (part_chambers(part) > 0) { /* remote: its pipes leave at the sides */
                a = (struct point){s->box.left, s->at.y + GRID_STEP};
                b = (struct point){a.x - 2.4 * GRID_STEP, a.y};
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

static const char *name_at(const struct layout *layout, int symbol)
{
    return layout->system->parts[layout->symbols[symbol].part].name;
}

/* The pipes and hoses of a chain, by name; they are called after their run. */
static const char *carriers_of(const struct layout *layout, const struct chain *chain)
{
    struct text words = text_start(layout->arena);
    for (int i = 0; i < chain->edge_count; i++) {
        const struct edge *edge = &layout->network->edges[chain->edges[i]];
        if (edge->kind == EDGE_CARRIER)
            text_add(&words, "%s%s", words.count > 0 ? ", " : " (",
                     layout->system->parts[edge->part].name);
    }
    if (words.count > 0)
        text_add(&words, ")");
    return words.items;
}

const char *layout_refusal(const struct layout *layout)
{
    static const char why[] = "; nothing is drawn, since a plan with something left out misleads";
    if (layout->homeless >= 0)
        return text_print(layout->arena, "the plan has no room left for %s%s",
                          layout->system->parts[layout->homeless].name, why);
    if (layout->network->circuit_count > MOST_CIRCUITS)
        return text_print(layout->arena, "more than %d circuits cannot be told apart%s",
                          MOST_CIRCUITS, why);
    if (layout->name_count > MOST_NAMES)
        return text_print(layout->arena, "%d names are more than one plan has room for (%d)%s",
                          layout->name_count, MOST_NAMES, why);
    if (layout->nameless)
        return text_print(layout->arena, "the plan has no room to name %s%s", layout->nameless,
                          why);
    for (int i = 0; i < layout->chain_count; i++) {
        const struct chain *chain = &layout->chains[i];
        if (chain->way.count > 0)
            continue;
        const char *more = layout->unrouted == 2 ? " and for one more"
                           : layout->unrouted > 2
                               ? text_print(layout->arena, " and for %d more", layout->unrouted - 1)
                               : "";
        return text_print(layout->arena, "the plan has no room for the run from %s to %s%s%s%s",
                          name_at(layout, chain->from), name_at(layout, chain->to),
                          carriers_of(layout, chain), more, why);
    }
    return NULL;
}

static void turn_point(double width, struct point *point)
{
    point->x = width - point->x;
}

static void turn_box(double width, struct box *box)
{
    *box = (struct box){width - box->right, box->top, width - box->left, box->bottom};
}

static void turn_chain(double width, struct chain *chain)
{
    for (int i = 0; i < chain->point_count; i++)
        turn_point(width, &chain->points[i]);
    for (int i = 0; chain->pieces && i < chain->edge_count; i++) {
        for (int p = 0; p < chain->pieces[i].count; p++)
            turn_point(width, &chain->pieces[i].points[p]);
        if (i + 1 < chain->edge_count)
            turn_point(width, &chain->marks[i].at);
    }
}

static void turn_labels(struct layout *layout)
{
    double width = layout->width;
    for (int i = 0; i < layout->label_count; i++) {
        turn_box(width, &layout->labels[i].box);
        turn_box(width, &layout->labels[i].target);
        turn_point(width, &layout->labels[i].leader_from);
        turn_point(width, &layout->labels[i].leader_to);
    }
}

/* Left to right, all that was laid out with the driver on the right. */
static void turn_over(struct layout *layout)
{
    double width = layout->width;
    turn_box(width, &layout->engine);
    turn_box(width, &layout->gearbox);
    turn_point(width, &layout->wheel);
    for (int i = 0; i < layout->symbol_count; i++) {
        turn_point(width, &layout->symbols[i].at);
        turn_box(width, &layout->symbols[i].box);
        layout->symbols[i].inward *= -1;
    }
    for (int i = 0; i < layout->chain_count; i++)
        turn_chain(width, &layout->chains[i]);
    for (int i = 0; i < layout->crossing_count; i++)
        turn_point(width, &layout->crossings[i].at);
    for (int i = 0; i < layout->feed_count; i++) {
        turn_point(width, &layout->feeds[i].a);
        turn_point(width, &layout->feeds[i].b);
    }
    for (int i = 0; i < layout->nipple_count; i++) {
        turn_point(width, &layout->nipples[i].at);
        turn_box(width, &layout->nipples[i].box);
    }
    turn_labels(layout);
}

/* Where names find no good place among the ways, room is kept for them and all is laid again. */
static void lay_and_name(struct layout *layout, const struct ruler *ruler)
{
    enum { ROUNDS = 5 };
    for (int round = 0; round < ROUNDS; round++) {
        labels_reserve(layout);
        chains_route(layout);
        chains_finish(layout);
        layout->nameless = NULL;
        if (layout_refusal(layout) != NULL)
            return;
        labels_place(layout, ruler);
        if (layout->crowded == 0)
            return;
    }
}

enum { USUAL_ROOM = 7 };

static struct layout *lay_out(const struct result *result, const struct ruler *ruler,
                              struct arena *arena, double width, double height, int room)
{
    struct layout *layout = ARENA_NEW(arena, struct layout);
    layout->arena = arena;
    layout->result = result;
    layout->system = result->system;
    layout->network = result->network;
    layout->columns = (int)floor(width / GRID_STEP);
    layout->rows = (int)floor(height / GRID_STEP);
    layout->room = room;
    layout->width = layout->columns * GRID_STEP;
    layout->height = layout->rows * GRID_STEP;
    place_symbols(layout);
    chains_find(layout);
    put_on_paper(layout);
    nipples_place(layout);
    find_feeds(layout);
    if (layout->homeless < 0)
        lay_and_name(layout, ruler);
    if (layout->mirrored)
        turn_over(layout);
    return layout;
}

struct layout *layout_on(const struct result *result, const struct ruler *ruler,
                         struct arena *arena, double width, double height)
{
    return lay_out(result, ruler, arena, width, height, USUAL_ROOM);
}

static bool is_whole(const struct layout *layout)
{
    return layout_refusal(layout) == NULL;
}

/* The better of two: one that can be drawn, with fewer lines of labels that cross something. */
static struct layout *better(struct layout *one, struct layout *other)
{
    if (one == NULL || (is_whole(other) && (!is_whole(one) || other->crowded < one->crowded)))
        return other;
    return one;
}

struct layout *layout_within(const struct result *result, const struct ruler *ruler,
                             struct arena *arena, double width, double least, double most)
{
    const double taller = 20;
    /* On the highest paper parts may still stand closer, or farther apart. */
    static const int rooms[] = {USUAL_ROOM, 9, 5, 11};
    struct layout *best = NULL;
    double height = least;
    for (size_t room = 0; room < sizeof rooms / sizeof *rooms;) {
        best = better(best, lay_out(result, ruler, arena, width, height, rooms[room]));
        if (is_whole(best) && best->crowded == 0)
            break;
        if (height >= most)
            room++;
        height = fmin(height + taller, most);
    }
    return best;
}

struct layout *layout_of(const struct result *result, const struct ruler *ruler,
                         struct arena *arena)
{
    return layout_within(result, ruler, arena, LAYOUT_WIDTH, LAYOUT_LEAST, LAYOUT_HIGHEST);
}
