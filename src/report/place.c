#include "report/place.h"

#include <stdlib.h>

#include "physics/pressure.h"

/* Grid lines of the zones, driver on the right. */
enum {
    MIDDLE = GRID_WIDTH / 2,
    BRAKE_PASSENGER = 8,
    BRAKE_DRIVER = GRID_WIDTH - 8,
    FIRST_COLUMN = 44, /* of the master in front of the driver's brake pedal */
    AXLE_FRONT_CAR = 11,
    AXLE_REAR_CAR = 46,
    BULKHEAD_CAR = 28,
    AXLE_FRONT_CYCLE = 10,
    AXLE_REAR_CYCLE = 46,
    BULKHEAD_HAND = 26,
    BULKHEAD_FOOT = 43,
    CYCLE_BRAKE_OFF_MIDDLE = 7,
    CYCLE_COLUMN = 46
};

/* What lies beyond a part as seen from the master: brakes by axle and side. */
struct beyond {
    int front, rear, passenger, driver;
    int depth;
};

enum side place_side(const struct layout *layout, int part)
{
    enum side side = layout->system->parts[part].side;
    if (!layout->mirrored || side == SIDE_NONE)
        return side;
    return side == SIDE_LEFT ? SIDE_RIGHT : SIDE_LEFT;
}

int place_reservoir_of(const struct system *system, int master)
{
    int own = system->parts[master].as.master.reservoir;
    if (own >= 0)
        return own;
    int only = -1;
    for (int i = 0; i < system->part_count; i++) {
        if (system->parts[i].kind != KIND_RESERVOIR)
            continue;
        if (only >= 0)
            return -1;
        only = i;
    }
    return only;
}

int place_nipples(const struct layout *layout, int part)
{
    const struct part *p = &layout->system->parts[part];
    int count = p->fitted.nipples > 0 ? p->fitted.nipples : 0;
    if (p->fitted.nipples < 0 && kind_is_brake(p->kind))
        count = 1;
    const struct bleed_plan *plan = layout->result->bleed;
    for (size_t i = 0; plan && i < plan->steps.count; i++)
        if (plan->steps.items[i].part == part && plan->steps.items[i].nipple >= count)
            count = plan->steps.items[i].nipple + 1;
    return count;
}

int place_ways_at(const struct network *network, const struct system *system, int part)
{
    int ways = 0;
    for (int c = 0; c < part_chambers(&system->parts[part]); c++) {
        int v = network_vertex(network, part, c);
        if (v < 0)
            continue;
        for (int e = network->first_at[v]; e < network->first_at[v + 1]; e++)
            if (network->edges[network->edges_at[e]].kind != EDGE_PASSAGE)
                ways++;
    }
    return ways;
}

static struct beyond beyond_part(const struct layout *layout, int part)
{
    const struct network *network = layout->network;
    struct beyond beyond = {.depth = 0};
    for (int v = 0; v < network->vertex_count; v++) {
        const struct part *brake = &layout->system->parts[network->vertices[v].part];
        if (network->vertices[v].part == part && network->vertices[v].depth > beyond.depth)
            beyond.depth = network->vertices[v].depth;
        if (!kind_is_brake(brake->kind))
            continue;
        bool passes = false;
        int steps = 0;
        for (int at = v; at >= 0 && steps < network->vertex_count;
             at = network->vertices[at].parent, steps++)
            passes = passes || network->vertices[at].part == part;
        if (!passes)
            continue;
        enum side side = place_side(layout, network->vertices[v].part);
        beyond.front += brake->axle == AXLE_FRONT;
        beyond.rear += brake->axle == AXLE_REAR;
        beyond.driver += side == SIDE_RIGHT;
        beyond.passenger += side == SIDE_LEFT;
    }
    return beyond;
}

static bool boxes_near(const struct symbol *a, const struct symbol *b, int room)
{
    return abs(a->centre.x - b->centre.x) < a->half_width + b->half_width + room &&
           abs(a->centre.y - b->centre.y) < a->half_height + b->half_height + room;
}

static struct symbol *add_symbol(struct layout *layout, int part, struct spot centre,
                                 int half_width, int half_height)
{
    layout->symbol_of[part] = layout->symbol_count;
    struct symbol *symbol = &layout->symbols[layout->symbol_count++];
    *symbol = (struct symbol){.part = part,
                              .centre = centre,
                              .half_width = half_width,
                              .half_height = half_height,
                              .ways = place_ways_at(layout->network, layout->system, part)};
    return symbol;
}

/* Whether a symbol would stand clear of all others and of the nipples above brakes. */
static bool stands_clear(const struct layout *layout, const struct symbol *symbol)
{
    if (symbol->centre.x - symbol->half_width < 2 ||
        symbol->centre.x + symbol->half_width > GRID_WIDTH - 2 ||
        symbol->centre.y - symbol->half_height < 2 ||
        symbol->centre.y + symbol->half_height > GRID_HEIGHT - 2)
        return false;
    for (int i = 0; i < layout->symbol_count; i++) {
        struct symbol other = layout->symbols[i];
        if (kind_is_brake(layout->system->parts[other.part].kind)) {
            other.centre.y -= 1;
            other.half_height += 1;
        }
        if (&layout->symbols[i] != symbol && boxes_near(symbol, &other, 3))
            return false;
    }
    return true;
}

/* Moves a symbol to the nearest free place to where it wants to be. */
static void find_room(const struct layout *layout, struct symbol *symbol)
{
    struct spot wanted = symbol->centre;
    int best = 1 << 20;
    struct spot place = wanted;
    for (int y = 2; y <= GRID_HEIGHT - 2; y++)
        for (int x = 2; x <= GRID_WIDTH - 2; x++) {
            int far = 3 * abs(x - wanted.x) + 2 * abs(y - wanted.y);
            symbol->centre = (struct spot){x, y};
            if (far < best && stands_clear(layout, symbol)) {
                best = far;
                place = symbol->centre;
            }
        }
    symbol->centre = place;
}

static int brake_x(const struct layout *layout, int part)
{
    enum side side = place_side(layout, part);
    if (layout->motorcycle)
        return MIDDLE + (side == SIDE_LEFT ? -CYCLE_BRAKE_OFF_MIDDLE : CYCLE_BRAKE_OFF_MIDDLE);
    if (side == SIDE_NONE)
        return MIDDLE;
    return side == SIDE_LEFT ? BRAKE_PASSENGER : BRAKE_DRIVER;
}

static void place_brakes(struct layout *layout)
{
    for (int i = 0; i < layout->system->part_count; i++) {
        const struct part *part = &layout->system->parts[i];
        if (!kind_is_brake(part->kind))
            continue;
        int y = part->axle == AXLE_REAR ? layout->rear_axle : layout->front_axle;
        struct symbol *symbol = add_symbol(layout, i, (struct spot){brake_x(layout, i), y}, 3, 3);
        if (!stands_clear(layout, symbol))
            find_room(layout, symbol);
    }
}

/* Order of masters from the driver's side inwards. */
struct column {
    int master;
    int order;
};

static int compare_columns(const void *a, const void *b)
{
    const struct column *one = a;
    const struct column *other = b;
    return one->order != other->order ? one->order - other->order : one->master - other->master;
}

static int master_order(const struct layout *layout, int master)
{
    struct beyond beyond = beyond_part(layout, master);
    if (beyond.front + beyond.rear == 0)
        return 1000;
    return beyond.front > 0 ? 0 : 100;
}

static bool worked_by_hand(const struct layout *layout, int master)
{
    int pedal = pressure_pedal_of(layout->system, master);
    return pedal >= 0 && layout->system->parts[pedal].as.pedal.type == PEDAL_HAND;
}

static void place_master(struct layout *layout, int master, int x, int bulkhead)
{
    const struct part *part = &layout->system->parts[master];
    int servo = pressure_servo_of(layout->system, master);
    int half = part->as.master.type == MASTER_TANDEM ? 3 : 2;
    int bottom = bulkhead - 1;
    if (servo >= 0 && layout->symbol_of[servo] < 0) {
        add_symbol(layout, servo, (struct spot){x, bulkhead - 3}, 2, 2);
        bottom = bulkhead - 6;
    }
    add_symbol(layout, master, (struct spot){x, bottom - half}, 1, half);
}

static void place_masters(struct layout *layout)
{
    const struct system *system = layout->system;
    struct column *columns =
        ARENA_ARRAY(layout->arena, (size_t)system->part_count + 1, struct column);
    int count = 0;
    for (int i = 0; i < system->part_count; i++)
        if (system->parts[i].kind == KIND_MASTER)
            columns[count++] = (struct column){i, master_order(layout, i)};
    qsort(columns, (size_t)count, sizeof *columns, compare_columns);
    int apart = count > 2 ? 5 : 6;
    int hands = 0;
    int feet = 0;
    for (int k = 0; k < count; k++) {
        int master = columns[k].master;
        if (!layout->motorcycle)
            place_master(layout, master, FIRST_COLUMN - k * apart, layout->bulkhead);
        else if (worked_by_hand(layout, master))
            place_master(layout, master, CYCLE_COLUMN - 6 * hands++, BULKHEAD_HAND);
        else
            place_master(layout, master, CYCLE_COLUMN - 6 * feet++, BULKHEAD_FOOT);
    }
}

static void place_pedals(struct layout *layout)
{
    for (int i = 0; i < layout->system->part_count; i++) {
        if (layout->system->parts[i].kind != KIND_PEDAL)
            continue;
        int sum = 0;
        int count = 0;
        int below = layout->bulkhead;
        for (int m = 0; m < layout->system->part_count; m++) {
            if (layout->system->parts[m].kind != KIND_MASTER ||
                pressure_pedal_of(layout->system, m) != i)
                continue;
            const struct symbol *master = &layout->symbols[layout->symbol_of[m]];
            sum += master->centre.x;
            count++;
            if (layout->motorcycle)
                below = master->centre.y + master->half_height + 1;
        }
        struct spot at = {count > 0 ? sum / count : FIRST_COLUMN, below + 3};
        struct symbol *symbol = add_symbol(layout, i, at, 1, 1);
        if (count == 0)
            find_room(layout, symbol);
    }
}

/* A reservoir stands before all the masters that it feeds. */
static void place_reservoirs(struct layout *layout)
{
    for (int i = 0; i < layout->system->part_count; i++) {
        if (layout->system->parts[i].kind != KIND_RESERVOIR)
            continue;
        int left = GRID_WIDTH;
        int right = 0;
        int top = GRID_HEIGHT;
        for (int m = 0; m < layout->system->part_count; m++) {
            if (layout->system->parts[m].kind != KIND_MASTER ||
                place_reservoir_of(layout->system, m) != i)
                continue;
            const struct symbol *master = &layout->symbols[layout->symbol_of[m]];
            left = master->centre.x < left ? master->centre.x : left;
            right = master->centre.x > right ? master->centre.x : right;
            if (master->centre.y - master->half_height < top)
                top = master->centre.y - master->half_height;
        }
        bool feeds = right > 0;
        struct spot at = {feeds ? (left + right) / 2 : FIRST_COLUMN,
                          feeds ? top - 5 : layout->bulkhead + 12};
        struct symbol *symbol =
            add_symbol(layout, i, at, feeds ? (right - left + 1) / 2 + 2 : 2, 1);
        bool clear = false;
        for (int tries = 0; !clear && tries < 6; tries++) {
            clear = true;
            for (int s = 0; s < layout->symbol_count - 1; s++)
                clear = clear && !boxes_near(symbol, &layout->symbols[s], 1);
            if (!clear)
                symbol->centre.y -= 3;
        }
        if (!clear || symbol->centre.y < 3)
            find_room(layout, symbol);
    }
}

static void place_slaves(struct layout *layout)
{
    bool rear = system_vehicle(layout->system)->engine == ENGINE_REAR;
    for (int i = 0; i < layout->system->part_count; i++) {
        if (layout->system->parts[i].kind != KIND_SLAVE)
            continue;
        bool inside = layout->system->parts[i].as.slave.type == SLAVE_CONCENTRIC;
        struct spot at = {rear ? MIDDLE : 28, rear ? layout->rear_axle - 2 : 24};
        struct symbol *symbol = add_symbol(layout, i, at, inside ? 2 : 3, inside ? 2 : 1);
        if (!stands_clear(layout, symbol))
            find_room(layout, symbol);
    }
}

/* Where a joint, valve or remote servo wants to be. */
static struct spot wish(const struct layout *layout, int part)
{
    enum part_kind kind = layout->system->parts[part].kind;
    struct beyond beyond = beyond_part(layout, part);
    enum mount mount = system_mount(layout->system, part);
    if (layout->motorcycle)
        return beyond.rear > 0 ? (struct spot){MIDDLE + 4, 38} : (struct spot){MIDDLE, 21};
    if (kind == KIND_SERVO)
        return (struct spot){16, 23};
    if (mount == MOUNT_REAR_AXLE)
        return (struct spot){MIDDLE, layout->rear_axle};
    if (mount == MOUNT_FRONT_AXLE)
        return (struct spot){MIDDLE, layout->front_axle};
    if (beyond.front + beyond.rear == 0)
        return (struct spot){36, 33};
    if (beyond.front > 0 && beyond.rear > 0)
        return (struct spot){20, 24};
    int x = MIDDLE;
    if (beyond.driver == 0 || beyond.passenger == 0)
        x = beyond.driver > 0 ? MIDDLE + 14 : MIDDLE - 14;
    if (beyond.front > 0)
        return (struct spot){x, 4};
    return (struct spot){x, kind == KIND_VALVE ? 37 : 40};
}

struct candidate {
    int part;
    struct spot wish;
    struct beyond beyond;
};

static int compare_candidates(const void *a, const void *b)
{
    const struct candidate *x = a;
    const struct candidate *y = b;
    int keys[][2] = {{x->beyond.depth, y->beyond.depth},
                     {y->beyond.front, x->beyond.front},
                     {y->beyond.rear, x->beyond.rear},
                     {y->beyond.driver, x->beyond.driver},
                     {x->wish.y, y->wish.y},
                     {x->wish.x, y->wish.x}};
    for (size_t i = 0; i < sizeof keys / sizeof keys[0]; i++)
        if (keys[i][0] != keys[i][1])
            return keys[i][0] - keys[i][1];
    return x->part - y->part;
}

static bool stands_free(const struct layout *layout, int part)
{
    const struct part *p = &layout->system->parts[part];
    if (layout->symbol_of[part] >= 0)
        return false;
    if (p->kind == KIND_VALVE || p->kind == KIND_SERVO)
        return true;
    return p->kind == KIND_JOINT && (place_ways_at(layout->network, layout->system, part) != 2 ||
                                     place_nipples(layout, part) > 0);
}

static void place_free(struct layout *layout, const struct candidate *candidate)
{
    int part = candidate->part;
    int ways = place_ways_at(layout->network, layout->system, part);
    int half_width = 2;
    int half_height = 2;
    if (layout->system->parts[part].kind == KIND_JOINT) {
        half_width = ways > 4 ? (ways - 2) / 4 + 1 : 0;
        half_height = ways > 4 ? 1 : 0;
    }
    struct symbol *symbol = add_symbol(layout, part, candidate->wish, half_width, half_height);
    symbol->flow_forward = candidate->beyond.front > 0 && candidate->beyond.rear == 0;
    find_room(layout, symbol);
}

static void place_joints(struct layout *layout)
{
    int room = layout->system->part_count;
    struct candidate *candidates = ARENA_ARRAY(layout->arena, (size_t)room + 1, struct candidate);
    int count = 0;
    for (int i = 0; i < room; i++)
        if (stands_free(layout, i))
            candidates[count++] = (struct candidate){i, wish(layout, i), beyond_part(layout, i)};
    qsort(candidates, (size_t)count, sizeof *candidates, compare_candidates);
    for (int i = 0; i < count; i++)
        place_free(layout, &candidates[i]);
}

/* Brake circuits first, those to the front before those to the rear only, the clutch last. */
static int circuit_order(const struct layout *layout, int circuit)
{
    int order = 1000;
    for (int i = 0; i < layout->network->circuits[circuit].vertex_count; i++) {
        int v = layout->network->circuits[circuit].vertices[i];
        int part = layout->network->vertices[v].part;
        const struct part *brake = &layout->system->parts[part];
        if (!kind_is_brake(brake->kind))
            continue;
        int own = (brake->axle == AXLE_REAR ? 100 : 0) +
                  (place_side(layout, part) == SIDE_RIGHT ? 0 : 10);
        order = own < order ? own : order;
    }
    return order;
}

static void rank_circuits(struct layout *layout)
{
    int count = layout->network->circuit_count;
    layout->rank = ARENA_ARRAY(layout->arena, (size_t)count + 1, int);
    for (int c = 0; c < count; c++)
        for (int other = 0; other < count; other++) {
            int mine = circuit_order(layout, c);
            int its = circuit_order(layout, other);
            layout->rank[c] += its < mine || (its == mine && other < c);
        }
}

static struct box engine_box(const struct layout *layout, bool gearbox)
{
    if (layout->motorcycle)
        return gearbox ? (struct box){0} : (struct box){25, 31, 35, 38};
    if (system_vehicle(layout->system)->engine == ENGINE_REAR)
        return gearbox ? (struct box){27, 41, 33, 48} : (struct box){24, 48, 36, 53};
    return gearbox ? (struct box){25, 20, 31, 32} : (struct box){23, 7, 33, 20};
}

void place_symbols(struct layout *layout)
{
    size_t count = (size_t)layout->system->part_count;
    const struct vehicle *vehicle = system_vehicle(layout->system);
    layout->motorcycle = vehicle->type == VEHICLE_MOTORCYCLE;
    layout->mirrored = !layout->motorcycle && vehicle->driver == DRIVER_LEFT;
    layout->front_axle = layout->motorcycle ? AXLE_FRONT_CYCLE : AXLE_FRONT_CAR;
    layout->rear_axle = layout->motorcycle ? AXLE_REAR_CYCLE : AXLE_REAR_CAR;
    layout->bulkhead = layout->motorcycle ? BULKHEAD_HAND : BULKHEAD_CAR;
    layout->symbols = ARENA_ARRAY(layout->arena, count + 1, struct symbol);
    layout->symbol_of = ARENA_ARRAY(layout->arena, count + 1, int);
    for (size_t i = 0; i < count; i++)
        layout->symbol_of[i] = -1;
    layout->engine = engine_box(layout, false);
    layout->gearbox = engine_box(layout, true);
    rank_circuits(layout);
    place_brakes(layout);
    place_masters(layout);
    place_pedals(layout);
    place_reservoirs(layout);
    place_slaves(layout);
    place_joints(layout);
}
