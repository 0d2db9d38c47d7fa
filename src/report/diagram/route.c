#include "report/diagram/route.h"

#include <limits.h>
#include <string.h>

/* Costs that weigh one way against another; chosen by eye. */
enum { COST_STEP = 4, COST_BEND = 14, COST_CROSSING = 30, COST_NEIGHBOUR = 3, COST_BEYOND = 8 };

/* A place in the search: a point reached with a heading. */
struct queue {
    int *states;
    int *costs;
    int count;
};

struct search {
    const struct grid *grid;
    struct queue queue;
    int *best;             /* by state */
    int *from;             /* by state: the state before, -1 for a start */
    unsigned char *goals;  /* by state */
    struct spot low, high; /* corners of what holds all goals */
};

struct spot spot_next(struct spot spot, enum heading heading)
{
    static const struct spot steps[HEADING_COUNT] = {{1, 0}, {0, 1}, {-1, 0}, {0, -1}};
    return (struct spot){spot.x + steps[heading].x, spot.y + steps[heading].y};
}

enum heading heading_back(enum heading heading)
{
    return (enum heading)((heading + 2) % HEADING_COUNT);
}

static int points_of(const struct grid *grid)
{
    return (grid->width + 1) * (grid->height + 1);
}

static bool inside(const struct grid *grid, struct spot spot)
{
    return spot.x >= 0 && spot.y >= 0 && spot.x <= grid->width && spot.y <= grid->height;
}

static int index_of(const struct grid *grid, struct spot spot)
{
    return spot.y * (grid->width + 1) + spot.x;
}

static struct search *search_room(const struct grid *grid)
{
    size_t states = (size_t)points_of(grid) * HEADING_COUNT;
    struct search *search = ARENA_NEW(grid->arena, struct search);
    search->grid = grid;
    search->best = ARENA_ARRAY(grid->arena, states, int);
    search->from = ARENA_ARRAY(grid->arena, states, int);
    search->goals = ARENA_ARRAY(grid->arena, states, unsigned char);
    /* A state is offered at most once from each neighbour and heading. */
    search->queue.states = ARENA_ARRAY(grid->arena, states * HEADING_COUNT + 64, int);
    search->queue.costs = ARENA_ARRAY(grid->arena, states * HEADING_COUNT + 64, int);
    return search;
}

struct grid *grid_create(struct arena *arena, int width, int height)
{
    struct grid *grid = ARENA_NEW(arena, struct grid);
    grid->arena = arena;
    grid->width = width;
    grid->height = height;
    grid->floor = height;
    size_t count = (size_t)points_of(grid);
    grid->blocked = ARENA_ARRAY(arena, count, unsigned char);
    grid->dear = ARENA_ARRAY(arena, count, unsigned char);
    grid->across = ARENA_ARRAY(arena, count, unsigned char);
    grid->along = ARENA_ARRAY(arena, count, unsigned char);
    grid->corner = ARENA_ARRAY(arena, count, unsigned char);
    grid->taken[0] = ARENA_ARRAY(arena, count, unsigned char);
    grid->taken[1] = ARENA_ARRAY(arena, count, unsigned char);
    grid->search = search_room(grid);
    return grid;
}

void grid_block(struct grid *grid, struct spot from, struct spot to)
{
    for (int y = from.y; y <= to.y; y++)
        for (int x = from.x; x <= to.x; x++)
            if (inside(grid, (struct spot){x, y}))
                grid->blocked[index_of(grid, (struct spot){x, y})] = 1;
}

void grid_make_dear(struct grid *grid, struct spot from, struct spot to, int cost)
{
    for (int y = from.y; y <= to.y; y++)
        for (int x = from.x; x <= to.x; x++)
            if (inside(grid, (struct spot){x, y}))
                grid->dear[index_of(grid, (struct spot){x, y})] = (unsigned char)cost;
}

void grid_clear_ways(struct grid *grid)
{
    size_t count = (size_t)points_of(grid);
    memset(grid->across, 0, count);
    memset(grid->along, 0, count);
    memset(grid->corner, 0, count);
    memset(grid->taken[0], 0, count);
    memset(grid->taken[1], 0, count);
}

/* The mark of the line between two neighbouring points. */
static unsigned char *line_between(const struct grid *grid, struct spot a, struct spot b)
{
    struct spot first = {a.x < b.x ? a.x : b.x, a.y < b.y ? a.y : b.y};
    return &grid->taken[a.x == b.x][index_of(grid, first)];
}

void grid_take(struct grid *grid, const struct way *way)
{
    for (int i = 0; i < way->count; i++) {
        struct spot here = way->spots[i];
        int at = index_of(grid, here);
        if (i > 0)
            *line_between(grid, way->spots[i - 1], here) = 1;
        if (i == 0 || i == way->count - 1) {
            grid->corner[at] = 1;
            continue;
        }
        struct spot before = way->spots[i - 1];
        struct spot after = way->spots[i + 1];
        if (before.y == after.y)
            grid->across[at] = 1;
        else if (before.x == after.x)
            grid->along[at] = 1;
        else
            grid->corner[at] = 1;
    }
}

static void swap(struct queue *queue, int a, int b)
{
    int state = queue->states[a];
    int cost = queue->costs[a];
    queue->states[a] = queue->states[b];
    queue->costs[a] = queue->costs[b];
    queue->states[b] = state;
    queue->costs[b] = cost;
}

/* Equal costs go by state, so that the answer does not hang on the order of asking. */
static bool before(const struct queue *queue, int a, int b)
{
    if (queue->costs[a] != queue->costs[b])
        return queue->costs[a] < queue->costs[b];
    return queue->states[a] < queue->states[b];
}

static void queue_add(struct queue *queue, int state, int cost)
{
    int at = queue->count++;
    queue->states[at] = state;
    queue->costs[at] = cost;
    while (at > 0 && before(queue, at, (at - 1) / 2)) {
        swap(queue, at, (at - 1) / 2);
        at = (at - 1) / 2;
    }
}

static int queue_take(struct queue *queue, int *cost)
{
    int state = queue->states[0];
    *cost = queue->costs[0];
    queue->count--;
    swap(queue, 0, queue->count);
    int at = 0;
    for (;;) {
        int least = at;
        for (int child = 2 * at + 1; child <= 2 * at + 2; child++)
            if (child < queue->count && before(queue, child, least))
                least = child;
        if (least == at)
            return state;
        swap(queue, at, least);
        at = least;
    }
}

/* What a way costs from a state on, at least: no goal is nearer. */
static int at_least(const struct search *search, int state)
{
    int columns = search->grid->width + 1, at = state / HEADING_COUNT;
    int x = at % columns, y = at / columns;
    int across = x < search->low.x    ? search->low.x - x
                 : x > search->high.x ? x - search->high.x
                                      : 0;
    int down = y < search->low.y ? search->low.y - y : y > search->high.y ? y - search->high.y : 0;
    return COST_STEP * (across + down);
}

static void offer(struct search *search, int state, int cost, int from)
{
    if (cost >= search->best[state])
        return;
    search->best[state] = cost;
    search->from[state] = from;
    queue_add(&search->queue, state, cost + at_least(search, state));
}

static int neighbours(const struct grid *grid, struct spot spot, enum heading heading)
{
    bool sideways = heading == HEADING_RIGHT || heading == HEADING_LEFT;
    const unsigned char *same = sideways ? grid->across : grid->along;
    struct spot one = spot_next(spot, (enum heading)((heading + 1) % HEADING_COUNT));
    struct spot other = spot_next(spot, (enum heading)((heading + 3) % HEADING_COUNT));
    int count = 0;
    if (inside(grid, one) && (same[index_of(grid, one)] || grid->corner[index_of(grid, one)]))
        count++;
    if (inside(grid, other) && (same[index_of(grid, other)] || grid->corner[index_of(grid, other)]))
        count++;
    return count;
}

/* One step on from a state. */
static void step(struct search *search, int state, struct spot here, enum heading heading,
                 enum heading turn, int cost)
{
    const struct grid *grid = search->grid;
    struct spot next = spot_next(here, turn);
    if (!inside(grid, next) || *line_between(grid, here, next))
        return;
    int at = index_of(grid, next);
    int reached = at * HEADING_COUNT + (int)turn;
    cost += COST_STEP + (turn != heading ? COST_BEND : 0);
    if (search->goals[reached]) {
        offer(search, reached, cost, state);
        return;
    }
    if (grid->blocked[at] || grid->corner[at])
        return;
    bool sideways = turn == HEADING_RIGHT || turn == HEADING_LEFT;
    if (sideways ? grid->across[at] : grid->along[at])
        return;
    if (sideways ? grid->along[at] : grid->across[at])
        cost += COST_CROSSING;
    if (next.y > grid->floor)
        cost += COST_BEYOND;
    cost += grid->dear[at] + COST_NEIGHBOUR * neighbours(grid, next, turn);
    offer(search, reached, cost, state);
}

static struct way way_back(struct search *search, int state)
{
    struct way way = {0};
    for (int s = state; s >= 0; s = search->from[s])
        way.count++;
    way.spots = ARENA_ARRAY(search->grid->arena, (size_t)way.count, struct spot);
    int columns = search->grid->width + 1;
    for (int i = way.count - 1, s = state; s >= 0; s = search->from[s], i--) {
        int at = s / HEADING_COUNT;
        way.spots[i] = (struct spot){at % columns, at / columns};
    }
    return way;
}

/* Forgets the last search. */
static void search_clear(struct search *search)
{
    size_t states = (size_t)points_of(search->grid) * HEADING_COUNT;
    memset(search->goals, 0, states);
    search->queue.count = 0;
    search->low = (struct spot){search->grid->width, search->grid->height};
    search->high = (struct spot){0, 0};
    for (size_t i = 0; i < states; i++)
        search->best[i] = INT_MAX;
}

static int run(struct search *search, int *cost)
{
    const struct grid *grid = search->grid;
    int columns = grid->width + 1;
    while (search->queue.count > 0) {
        int state = queue_take(&search->queue, cost);
        *cost -= at_least(search, state);
        if (*cost > search->best[state])
            continue;
        if (search->goals[state])
            return state;
        int at = state / HEADING_COUNT;
        enum heading heading = (enum heading)(state % HEADING_COUNT);
        struct spot here = {at % columns, at / columns};
        bool straight = search->from[state] < 0 || grid->across[at] || grid->along[at];
        for (int turn = 0; turn < HEADING_COUNT; turn++) {
            if (turn == (int)heading_back(heading) || (straight && turn != (int)heading))
                continue;
            step(search, state, here, heading, (enum heading)turn, *cost);
        }
    }
    return -1;
}

static void add_goal(struct search *search, struct dock dock)
{
    int at = index_of(search->grid, dock.spot);
    search->goals[at * HEADING_COUNT + (int)heading_back(dock.heading)] = 1;
    search->low.x = dock.spot.x < search->low.x ? dock.spot.x : search->low.x;
    search->low.y = dock.spot.y < search->low.y ? dock.spot.y : search->low.y;
    search->high.x = dock.spot.x > search->high.x ? dock.spot.x : search->high.x;
    search->high.y = dock.spot.y > search->high.y ? dock.spot.y : search->high.y;
}

struct way route_find(struct grid *grid, const struct dock *from, int from_count,
                      const struct dock *to, int to_count, int *cost)
{
    struct search *search = grid->search;
    search_clear(search);
    for (int i = 0; i < to_count; i++)
        add_goal(search, to[i]);
    for (int i = 0; i < from_count; i++)
        offer(search, index_of(grid, from[i].spot) * HEADING_COUNT + (int)from[i].heading, 0, -1);
    int reached;
    int found = run(search, &reached);
    if (found < 0)
        return (struct way){0};
    *cost = reached;
    return way_back(search, found);
}
