#include "report/diagram/chains.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "base/list.h"
#include "report/diagram/labels.h"
#include "report/diagram/nipples.h"
#include "report/diagram/place.h"

/* How long a hose is drawn, mm; pipes share what is left of the way. */
#define HOSE_DRAWN   13.0
#define DIRECT_DRAWN 3.0
#define PIPE_LEAST   4.0

enum { IMPROVING_ROUNDS = 2, MOST_TRIES = 12, MOST_LAID = 300, NO_WAY = 100000 };

static const struct edge *edge_of(const struct layout *layout, int edge)
{
    return &layout->network->edges[edge];
}

static int other_end(const struct edge *edge, int vertex)
{
    return edge->a == vertex ? edge->b : edge->a;
}

static int symbol_at(const struct layout *layout, int vertex)
{
    return layout->symbol_of[layout->network->vertices[vertex].part];
}

/* The carrier at a vertex that is not the given one and not a passage, or -1. */
static int onward(const struct layout *layout, int vertex, int edge)
{
    const struct network *network = layout->network;
    for (int i = network->first_at[vertex]; i < network->first_at[vertex + 1]; i++) {
        int next = network->edges_at[i];
        if (next != edge && edge_of(layout, next)->kind != EDGE_PASSAGE)
            return next;
    }
    return -1;
}

static void turn_round(struct chain *chain)
{
    for (int i = 0; i < chain->edge_count / 2; i++) {
        int k = chain->edge_count - 1 - i;
        int edge = chain->edges[i];
        chain->edges[i] = chain->edges[k];
        chain->edges[k] = edge;
    }
    for (int i = 0; i < (chain->edge_count - 1) / 2; i++) {
        int k = chain->edge_count - 2 - i;
        int joint = chain->joints[i];
        chain->joints[i] = chain->joints[k];
        chain->joints[k] = joint;
    }
    int from = chain->from;
    int chamber = chain->from_chamber;
    chain->from = chain->to;
    chain->from_chamber = chain->to_chamber;
    chain->to = from;
    chain->to_chamber = chamber;
}

/* Follows a chain from a symbol's vertex along an edge; marks its edges as seen. */
static void follow(struct layout *layout, int vertex, int edge, bool *seen)
{
    const struct network *network = layout->network;
    struct chain chain = {.from = symbol_at(layout, vertex),
                          .from_chamber = network->vertices[vertex].chamber,
                          .circuit = edge_of(layout, edge)->circuit};
    chain.edges = ARENA_ARRAY(layout->arena, (size_t)network->edge_count, int);
    chain.joints = ARENA_ARRAY(layout->arena, (size_t)network->edge_count, int);
    int at = vertex;
    while (edge >= 0 && !seen[edge]) {
        seen[edge] = true;
        chain.edges[chain.edge_count++] = edge;
        at = other_end(edge_of(layout, edge), at);
        if (symbol_at(layout, at) >= 0)
            break;
        chain.joints[chain.edge_count - 1] = network->vertices[at].part;
        edge = onward(layout, at, edge);
    }
    chain.to = symbol_at(layout, at);
    chain.to_chamber = network->vertices[at].chamber;
    if (chain.to < 0)
        return;
    if (network->vertices[at].depth < network->vertices[vertex].depth)
        turn_round(&chain);
    layout->chains[layout->chain_count++] = chain;
}

void chains_find(struct layout *layout)
{
    const struct network *network = layout->network;
    bool *seen = ARENA_ARRAY(layout->arena, (size_t)network->edge_count + 1, bool);
    layout->chains = ARENA_ARRAY(layout->arena, (size_t)network->edge_count + 1, struct chain);
    for (int v = 0; v < network->vertex_count; v++) {
        if (symbol_at(layout, v) < 0)
            continue;
        for (int i = network->first_at[v]; i < network->first_at[v + 1]; i++) {
            int edge = network->edges_at[i];
            if (!seen[edge] && edge_of(layout, edge)->kind != EDGE_PASSAGE)
                follow(layout, v, edge, seen);
        }
    }
}

/* Order of laying, from where things stand only: short ones first. */
struct turn {
    int chain;
    int keys[7];
};

static int compare_turns(const void *a, const void *b)
{
    const struct turn *one = a;
    const struct turn *other = b;
    for (int i = 0; i < 7; i++)
        if (one->keys[i] != other->keys[i])
            return one->keys[i] - other->keys[i];
    return one->chain - other->chain;
}

static struct turn turn_of(const struct layout *layout, int index)
{
    const struct chain *chain = &layout->chains[index];
    struct spot a = layout->symbols[chain->from].centre;
    struct spot b = layout->symbols[chain->to].centre;
    return (struct turn){index,
                         {abs(a.x - b.x) + abs(a.y - b.y), a.y, b.y, a.x, b.x, chain->from_chamber,
                          chain->to_chamber}};
}

static struct spot spot_of(int x, int y)
{
    return (struct spot){x, y};
}

static void block_symbol(const struct layout *layout, struct grid *grid,
                         const struct symbol *symbol)
{
    int x = symbol->centre.x;
    int y = symbol->centre.y;
    int w = symbol->half_width;
    int h = symbol->half_height;
    grid_block(grid, spot_of(x - w, y - h), spot_of(x + w, y + h));
    struct box nipples;
    if (!nipples_box(layout, symbol, &nipples))
        return;
    nipples = box_wider(nipples, HOSE_HALF + 0.05);
    grid_block(
        grid, spot_of((int)ceil(nipples.left / GRID_STEP), (int)ceil(nipples.top / GRID_STEP)),
        spot_of((int)floor(nipples.right / GRID_STEP), (int)floor(nipples.bottom / GRID_STEP)));
}

static bool is_master(const struct layout *layout, int symbol)
{
    return layout->system->parts[layout->symbols[symbol].part].kind == KIND_MASTER;
}

/* Feeds lie on the grid like ways: pipes may cross them, but not run along them. */
static void take_feeds(const struct layout *layout, struct grid *grid)
{
    struct zone zone;
    struct spot *spots = ARENA_ARRAY(layout->arena, (size_t)layout->rows + 1, struct spot);
    for (int i = 0; i < layout->symbol_count; i++) {
        if (!is_master(layout, i) || !place_line(layout, &layout->symbols[i], 0, &zone))
            continue;
        struct way way = {spots, 0};
        for (int y = zone.top; y <= zone.bottom; y++)
            spots[way.count++] = spot_of(zone.left, y);
        if (way.count > 0)
            grid_take(grid, &way);
    }
}

/* The grid points in a box on paper. */
static void make_dear(struct grid *grid, struct box box, int cost)
{
    grid_make_dear(grid, spot_of((int)ceil(box.left / GRID_STEP), (int)ceil(box.top / GRID_STEP)),
                   spot_of((int)floor(box.right / GRID_STEP), (int)floor(box.bottom / GRID_STEP)),
                   cost);
}

static struct grid *grid_of(const struct layout *layout)
{
    struct grid *grid = grid_create(layout->arena, layout->columns, layout->rows);
    const struct box zones[] = {layout->engine, layout->gearbox};
    for (int i = 0; i < 2; i++)
        if (zones[i].right > zones[i].left)
            make_dear(grid, zones[i], 8);
    for (int i = 0; i < layout->symbol_count; i++) {
        const struct symbol *s = &layout->symbols[i];
        if (s->half_width > 0)
            grid_make_dear(
                grid, spot_of(s->centre.x - s->half_width - 1, s->centre.y - s->half_height - 1),
                spot_of(s->centre.x + s->half_width + 1, s->centre.y + s->half_height + 1), 5);
    }
    for (int i = 0; i < layout->reserved_count; i++)
        make_dear(grid, layout->reserved[i], i < layout->reserved_at_first ? 10 : 40);
    grid_block(grid, spot_of(0, 0), spot_of(layout->columns, 1));
    grid_block(grid, spot_of(0, layout->rows - 2), spot_of(layout->columns, layout->rows));
    grid_block(grid, spot_of(0, 0), spot_of(5, layout->rows));
    grid_block(grid, spot_of(layout->columns - 5, 0), spot_of(layout->columns, layout->rows));
    struct zone zone;
    for (int i = 0; place_tyre(layout, i, &zone); i++)
        grid_block(grid, spot_of(zone.left, zone.top), spot_of(zone.right, zone.bottom));
    for (int i = 0; i < layout->symbol_count; i++)
        block_symbol(layout, grid, &layout->symbols[i]);
    for (int i = 0; i < layout->symbol_count; i++)
        for (int k = 0; !is_master(layout, i) && place_line(layout, &layout->symbols[i], k, &zone);
             k++)
            grid_block(grid, spot_of(zone.left, zone.top), spot_of(zone.right, zone.bottom));
    return grid;
}

static int route_one(const struct layout *layout, struct grid *grid, struct chain *chain)
{
    struct dock from[MOST_DOCKS];
    struct dock to[MOST_DOCKS];
    int cost = NO_WAY;
    int from_count = place_docks(layout, &layout->symbols[chain->from], chain->from_chamber, from);
    int to_count = place_docks(layout, &layout->symbols[chain->to], chain->to_chamber, to);
    /* What lies before the bulkhead stays there. */
    const struct symbol *one = &layout->symbols[chain->from], *other = &layout->symbols[chain->to];
    bool bay = !layout->motorcycle && one->centre.y < layout->bulkhead &&
               other->centre.y < layout->bulkhead;
    grid->floor = bay ? layout->bulkhead - 1 : layout->rows;
    chain->way = route_find(grid, from, from_count, to, to_count, &cost);
    return cost;
}

/* The grid with all ways but those of two chains. */
static void take_others(const struct layout *layout, struct grid *grid, const struct chain *one,
                        const struct chain *other)
{
    grid_clear_ways(grid);
    take_feeds(layout, grid);
    for (int i = 0; i < layout->chain_count; i++)
        if (&layout->chains[i] != one && &layout->chains[i] != other)
            grid_take(grid, &layout->chains[i].way);
}

static int route_two(const struct layout *layout, struct grid *grid, struct chain *first,
                     struct chain *second)
{
    take_others(layout, grid, first, second);
    int cost = route_one(layout, grid, first);
    grid_take(grid, &first->way);
    return cost + route_one(layout, grid, second);
}

/* Two chains at one symbol may each hold the place that suits the other: both are taken up and
 * laid again, in the better order. */
static void settle_pair(const struct layout *layout, struct grid *grid, struct chain *a,
                        struct chain *b)
{
    int cost = route_two(layout, grid, a, b);
    struct way way_a = a->way;
    struct way way_b = b->way;
    if (route_two(layout, grid, b, a) < cost)
        return;
    a->way = way_a;
    b->way = way_b;
}

static bool share_symbol(const struct chain *a, const struct chain *b)
{
    return a->from == b->from || a->from == b->to || a->to == b->from || a->to == b->to;
}

/* Each is laid once, then taken up and laid again among the others. */
static void lay_all(struct layout *layout, struct grid *grid, const struct turn *turns)
{
    int count = layout->chain_count;
    for (int i = 0; i < count; i++)
        layout->chains[i].way = (struct way){0};
    for (int round = 0; round < IMPROVING_ROUNDS; round++) {
        for (int t = 0; t < count; t++) {
            struct chain *chain = &layout->chains[turns[t].chain];
            take_others(layout, grid, chain, chain);
            route_one(layout, grid, chain);
        }
        for (int t = 0; t < count; t++)
            for (int u = t + 1; u < count; u++) {
                struct chain *one = &layout->chains[turns[t].chain];
                struct chain *other = &layout->chains[turns[u].chain];
                if (share_symbol(one, other))
                    settle_pair(layout, grid, one, other);
            }
    }
}

/* Moves the ways that found no room to the front, so that they are laid before those that took it
 * from them; gives how many there are. */
static int put_first(const struct layout *layout, struct turn *turns)
{
    int missing = 0;
    for (int t = 0; t < layout->chain_count; t++) {
        struct turn turn = turns[t];
        if (layout->chains[turn.chain].way.count > 0)
            continue;
        memmove(&turns[missing + 1], &turns[missing], (size_t)(t - missing) * sizeof *turns);
        turns[missing++] = turn;
    }
    return missing;
}

void chains_route(struct layout *layout)
{
    size_t count = (size_t)layout->chain_count;
    struct grid *grid = grid_of(layout);
    struct turn *turns = ARENA_ARRAY(layout->arena, count + 1, struct turn);
    for (int i = 0; i < layout->chain_count; i++)
        turns[i] = turn_of(layout, i);
    qsort(turns, count, sizeof *turns, compare_turns);
    for (int tries = 0; tries < MOST_TRIES; tries++) {
        if (tries * layout->chain_count > MOST_LAID)
            return;
        lay_all(layout, grid, turns);
        layout->unrouted = put_first(layout, turns);
        if (layout->unrouted == 0)
            return;
    }
}

struct point chains_on_paper(struct spot spot)
{
    return (struct point){spot.x * GRID_STEP, spot.y * GRID_STEP};
}

/* Corners of a way; ways along a line have two. */
static void find_corners(const struct layout *layout, struct chain *chain)
{
    const struct way *way = &chain->way;
    chain->points = ARENA_ARRAY(layout->arena, (size_t)way->count + 1, struct point);
    chain->point_count = 0;
    for (int i = 0; i < way->count; i++) {
        bool inner = i > 0 && i < way->count - 1;
        if (inner && way->spots[i - 1].x + way->spots[i + 1].x == 2 * way->spots[i].x &&
            way->spots[i - 1].y + way->spots[i + 1].y == 2 * way->spots[i].y)
            continue;
        chain->points[chain->point_count++] = chains_on_paper(way->spots[i]);
    }
}

static double length_of(const struct point *points, int count)
{
    double length = 0;
    for (int i = 1; i < count; i++)
        length += hypot(points[i].x - points[i - 1].x, points[i].y - points[i - 1].y);
    return length;
}

/* The point at a distance along the corners; upright tells how the way runs there. */
static struct point point_along(const struct chain *chain, double distance, bool *upright)
{
    const struct point *p = chain->points;
    for (int i = 1; i < chain->point_count; i++) {
        double leg = length_of(p + i - 1, 2);
        *upright = p[i].x == p[i - 1].x;
        if (distance <= leg && leg > 0) {
            double part = distance / leg;
            return (struct point){p[i - 1].x + (p[i].x - p[i - 1].x) * part,
                                  p[i - 1].y + (p[i].y - p[i - 1].y) * part};
        }
        distance -= leg;
    }
    return p[chain->point_count - 1];
}

/* The corners between two distances along a chain, ends included. */
static void cut(const struct layout *layout, const struct chain *chain, double from, double to,
                struct piece *piece)
{
    bool upright;
    double at = 0;
    piece->points = ARENA_ARRAY(layout->arena, (size_t)chain->point_count + 2, struct point);
    piece->points[piece->count++] = point_along(chain, from, &upright);
    for (int i = 1; i < chain->point_count; i++) {
        at += length_of(chain->points + i - 1, 2);
        if (at > from + 1e-6 && at < to - 1e-6)
            piece->points[piece->count++] = chain->points[i];
    }
    piece->points[piece->count++] = point_along(chain, to, &upright);
}

static bool is_hose(const struct layout *layout, int edge)
{
    int part = edge_of(layout, edge)->part;
    return edge_of(layout, edge)->kind == EDGE_CARRIER &&
           layout->system->parts[part].kind == KIND_HOSE;
}

/* How long each piece of a chain is drawn. */
static void share_out(const struct layout *layout, const struct chain *chain, double *lengths)
{
    double whole = length_of(chain->points, chain->point_count);
    double fixed = 0;
    int pipes = 0;
    for (int i = 0; i < chain->edge_count; i++) {
        bool direct = edge_of(layout, chain->edges[i])->kind == EDGE_DIRECT;
        lengths[i] = is_hose(layout, chain->edges[i]) ? HOSE_DRAWN : direct ? DIRECT_DRAWN : 0;
        pipes += lengths[i] == 0;
        fixed += lengths[i];
    }
    bool tight = pipes == 0 || whole - fixed < pipes * PIPE_LEAST;
    for (int i = 0; i < chain->edge_count; i++)
        if (tight)
            lengths[i] = whole / chain->edge_count;
        else if (lengths[i] == 0)
            lengths[i] = (whole - fixed) / pipes;
}

struct crossing_list {
    struct crossing *items;
    size_t count;
    size_t capacity;
};

static void cross_legs(const struct layout *layout, struct crossing_list *list, int over,
                       const struct point *a, const struct point *b)
{
    bool upright = a[0].x == a[1].x;
    if (upright == (b[0].x == b[1].x))
        return;
    const struct point *up = upright ? a : b;
    const struct point *flat = upright ? b : a;
    double x = up[0].x;
    double y = flat[0].y;
    bool meet = x > fmin(flat[0].x, flat[1].x) && x < fmax(flat[0].x, flat[1].x) &&
                y > fmin(up[0].y, up[1].y) && y < fmax(up[0].y, up[1].y);
    if (meet)
        *LIST_ADD(layout->arena, list) = (struct crossing){{x, y}, over, upright};
}

static void find_crossings(struct layout *layout)
{
    struct crossing_list list = {0};
    for (int i = 0; i < layout->chain_count; i++)
        for (int k = 0; k < layout->feed_count; k++)
            for (int a = 1; a < layout->chains[i].point_count; a++)
                cross_legs(layout, &list, i, &layout->chains[i].points[a - 1],
                           (struct point[]){layout->feeds[k].a, layout->feeds[k].b});
    for (int i = 0; i < layout->chain_count; i++)
        for (int k = 0; k < i; k++)
            for (int a = 1; a < layout->chains[i].point_count; a++)
                for (int b = 1; b < layout->chains[k].point_count; b++)
                    cross_legs(layout, &list, i, &layout->chains[i].points[a - 1],
                               &layout->chains[k].points[b - 1]);
    layout->crossings = list.items;
    layout->crossing_count = (int)list.count;
}

/* How near a joint may be to a bend, to what crosses the way there, and to the next joint, mm. */
#define OFF_BEND     2.6
#define OFF_CROSSING 2.6
#define JOINTS_APART 2.4
#define OFF_FEED     4.1 /* and to a feed, which it would seem to join */

/* Whether a joint may stand at a distance along a chain. */
static bool suits_joint(const struct layout *layout, const struct chain *chain, double distance)
{
    bool upright;
    struct point at = point_along(chain, distance, &upright);
    for (int i = 1; i + 1 < chain->point_count; i++)
        if (hypot(chain->points[i].x - at.x, chain->points[i].y - at.y) < OFF_BEND)
            return false;
    for (int i = 0; i < layout->crossing_count; i++)
        if (hypot(layout->crossings[i].at.x - at.x, layout->crossings[i].at.y - at.y) <
            OFF_CROSSING)
            return false;
    for (int i = 0; i < layout->feed_count; i++) {
        struct point line[] = {layout->feeds[i].a, layout->feeds[i].b};
        struct box box = labels_box_of(line, 2, OFF_FEED);
        if (at.x > box.left && at.x < box.right && at.y > box.top && at.y < box.bottom)
            return false;
    }
    return true;
}

/* Moves the cut between two pieces to the nearest place that suits a joint. */
static double shift_cut(const struct layout *layout, const struct chain *chain, double before,
                        double cut, double after)
{
    const double step = 0.5;
    for (int i = 0; i * step < after - before; i++)
        for (int sign = -1; sign <= 1; sign += 2) {
            double place = cut + sign * i * step;
            if (place >= before + JOINTS_APART && place <= after - JOINTS_APART &&
                suits_joint(layout, chain, place))
                return place;
        }
    return cut;
}

static void cut_pieces(const struct layout *layout, struct chain *chain)
{
    size_t count = (size_t)chain->edge_count;
    chain->pieces = ARENA_ARRAY(layout->arena, count, struct piece);
    chain->marks = ARENA_ARRAY(layout->arena, count, struct inline_joint);
    double *lengths = ARENA_ARRAY(layout->arena, count, double);
    double *cuts = ARENA_ARRAY(layout->arena, count + 1, double);
    share_out(layout, chain, lengths);
    for (size_t i = 0; i < count; i++)
        cuts[i + 1] = cuts[i] + lengths[i];
    for (size_t i = 1; i < count; i++)
        cuts[i] = shift_cut(layout, chain, cuts[i - 1], cuts[i], cuts[i + 1]);
    for (int i = 0; i < chain->edge_count; i++) {
        const struct edge *edge = edge_of(layout, chain->edges[i]);
        chain->pieces[i].part = edge->kind == EDGE_CARRIER ? edge->part : -1;
        chain->pieces[i].hose = is_hose(layout, chain->edges[i]);
        cut(layout, chain, cuts[i], cuts[i + 1], &chain->pieces[i]);
        if (i < chain->edge_count - 1) {
            chain->marks[i].part = chain->joints[i];
            chain->marks[i].at = point_along(chain, cuts[i + 1], &chain->marks[i].upright);
        }
    }
}

void chains_finish(struct layout *layout)
{
    for (int i = 0; i < layout->chain_count; i++)
        if (layout->chains[i].way.count > 0)
            find_corners(layout, &layout->chains[i]);
    find_crossings(layout);
    for (int i = 0; i < layout->chain_count; i++)
        if (layout->chains[i].way.count > 0)
            cut_pieces(layout, &layout->chains[i]);
}
