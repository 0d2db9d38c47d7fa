#include "report/diagram/place.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "physics/pressure.h"
#include "report/diagram/nipples.h"

/* Places of the zones, driver on the right, on a plan of REF_COLUMNS by REF_ROWS that is spread
 * over the paper; what comes after ROOM is in grid steps. */
enum {
    REF_COLUMNS = 60,
    REF_ROWS = 55,
    FIRST_COLUMN = 44, /* of the master in front of the driver's brake pedal */
    AXLE_FRONT_CAR = 11,
    AXLE_FRONT_SECOND = 23,
    AXLE_REAR_CAR = 46,
    AXLE_REAR_FIRST = 36, /* of two */
    AXLE_REAR_SECOND = 49,
    BULKHEAD_CAR = 28,
    AXLE_FRONT_CYCLE = 10,
    AXLE_REAR_CYCLE = 46,
    BULKHEAD_HAND = 26,
    BULKHEAD_FOOT = 46,
    CYCLE_COLUMN = 46,
    CYCLE_LEFT = 14, /* of the clutch's lever, and of a second one */
    STEERING_WHEEL = 43,
    FEED_LENGTH = 5 /* from a reservoir's middle to the top of the highest master */
};
enum {
    BRAKE_OFF_EDGE = 8,
    CYCLE_BRAKE_OFF_MIDDLE = 7,
    MASTERS_APART = 9,
    WHEEL_BEHIND_BULKHEAD = 10,
    LEAST_ROOM = 3
};

static int column(const struct layout *layout, int x)
{
    return (x * layout->columns + REF_COLUMNS / 2) / REF_COLUMNS;
}

static int row(const struct layout *layout, int y)
{
    return (y * layout->rows + REF_ROWS / 2) / REF_ROWS;
}

static int middle(const struct layout *layout)
{
    return layout->columns / 2;
}

static struct spot place_at(const struct layout *layout, int x, int y)
{
    return (struct spot){column(layout, x), row(layout, y)};
}

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

/* Where a symbol stands, with its nipples. */
static struct zone zone_of(const struct layout *layout, const struct symbol *symbol)
{
    struct zone zone = {
        symbol->centre.x - symbol->half_width, symbol->centre.y - symbol->half_height,
        symbol->centre.x + symbol->half_width, symbol->centre.y + symbol->half_height};
    struct box nipples;
    if (!nipples_box(layout, symbol, &nipples))
        return zone;
    int left = (int)floor(nipples.left / GRID_STEP), right = (int)ceil(nipples.right / GRID_STEP);
    int top = (int)floor(nipples.top / GRID_STEP), bottom = (int)ceil(nipples.bottom / GRID_STEP);
    return (struct zone){left < zone.left ? left : zone.left, top < zone.top ? top : zone.top,
                         right > zone.right ? right : zone.right,
                         bottom > zone.bottom ? bottom : zone.bottom};
}

static bool zones_near(struct zone a, struct zone b, int room)
{
    return a.left - b.right < room && b.left - a.right < room && a.top - b.bottom < room &&
           b.top - a.bottom < room;
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
                              .before = -1,
                              .ways = place_ways_at(layout->network, layout->system, part)};
    return symbol;
}

static struct zone rods_zone(const struct layout *layout, const struct symbol *pedal)
{
    struct spot at = pedal->centre;
    struct zone zone = {at.x - 1, at.y - 3, at.x + 1, at.y};
    for (int i = 0; i < layout->symbol_count; i++) {
        int part = layout->symbols[i].part;
        if (layout->system->parts[part].kind != KIND_MASTER ||
            pressure_pedal_of(layout->system, part) != pedal->part)
            continue;
        int x = layout->symbols[i].centre.x;
        zone.left = x < zone.left ? x : zone.left;
        zone.right = x > zone.right ? x : zone.right;
    }
    return zone;
}

bool place_line(const struct layout *layout, const struct symbol *symbol, int index,
                struct zone *zone)
{
    const struct part *part = &layout->system->parts[symbol->part];
    struct spot at = symbol->centre;
    if (index > 0)
        return false;
    if (part->kind == KIND_PEDAL) {
        *zone = rods_zone(layout, symbol);
        return true;
    }
    if (part->kind == KIND_SERVO && part->as.servo.vacuum_hose.m > 0) {
        *zone = (struct zone){at.x, at.y, at.x + 5, at.y};
        if (part_chambers(part) > 0) /* remote: its pipes leave at the sides */
            *zone = (struct zone){at.x - 5, at.y + 1, at.x, at.y + 1};
        return true;
    }
    int reservoir =
        part->kind == KIND_MASTER ? place_reservoir_of(layout->system, symbol->part) : -1;
    if (reservoir < 0 || layout->symbol_of[reservoir] < 0)
        return false;
    const struct symbol *from = &layout->symbols[layout->symbol_of[reservoir]];
    *zone =
        (struct zone){at.x, from->centre.y + from->half_height, at.x, at.y - symbol->half_height};
    return true;
}

bool place_tyre(const struct layout *layout, int index, struct zone *zone)
{
    if (!layout->motorcycle || index >= layout->axle_count)
        return false;
    int line = layout->axles[index].line;
    *zone = (struct zone){middle(layout) - 2, line - 8, middle(layout) + 2, line + 8};
    return true;
}

/* Where no part may stand though no part does: tyres, feeds, push rods, vacuum hoses. */
static bool clear_of_lines(const struct layout *layout, const struct symbol *symbol,
                           struct zone zone)
{
    struct zone line;
    for (int i = 0; place_tyre(layout, i, &line); i++)
        if (zones_near(zone, line, 2))
            return false;
    for (int i = 0; i < layout->symbol_count; i++)
        for (int k = 0;
             &layout->symbols[i] != symbol && place_line(layout, &layout->symbols[i], k, &line);
             k++)
            if (zones_near(zone, line, 2))
                return false;
    return true;
}

/* Whether a symbol would stand clear of all others by so many grid lines. */
static bool stands_clear(const struct layout *layout, const struct symbol *symbol, int room)
{
    struct zone zone = zone_of(layout, symbol);
    bool valve = layout->system->parts[symbol->part].kind == KIND_VALVE;
    int above = valve ? 2 : 0; /* a valve's ends are above and below it */
    if (zone.left < 6 || zone.right > layout->columns - 6 || zone.top - above < 2 ||
        zone.bottom + above > layout->rows - 3)
        return false;
    struct zone wide = {zone.left, zone.top - above / 2, zone.right, zone.bottom + above / 2};
    for (int i = 0; i < layout->symbol_count; i++)
        if (&layout->symbols[i] != symbol &&
            zones_near(wide, zone_of(layout, &layout->symbols[i]), room))
            return false;
    return clear_of_lines(layout, symbol, zone);
}

/* How much a valve dislikes a row that its pipe would have to come back to. */
static int against_flow(const struct layout *layout, const struct symbol *symbol, int y)
{
    if (symbol->before < 0)
        return 0;
    int off = y - layout->symbols[symbol->before].centre.y;
    int short_of = 4 - (symbol->flow_forward ? -off : off);
    return short_of > 0 ? 8 * short_of : 0;
}

/* Moves a symbol to the nearest place that is free by so many grid lines; false: there is none. */
static bool find_place(const struct layout *layout, struct symbol *symbol, int room)
{
    struct spot wanted = symbol->centre;
    int best = 1 << 20;
    struct spot place = wanted;
    for (int y = 2; y <= layout->rows - 2; y++)
        for (int x = 2; x <= layout->columns - 2; x++) {
            int far =
                3 * abs(x - wanted.x) + 2 * abs(y - wanted.y) + against_flow(layout, symbol, y);
            symbol->centre = (struct spot){x, y};
            if (far < best && stands_clear(layout, symbol, room)) {
                best = far;
                place = symbol->centre;
            }
        }
    symbol->centre = place;
    return best < 1 << 20;
}

/* Moves a symbol to where it is free: with room for names and several pipes around it, or as much
 * as there is, at least for one pipe to pass. Where there is none the car cannot be drawn. */
static void find_room(struct layout *layout, struct symbol *symbol)
{
    for (int room = layout->room; room >= LEAST_ROOM; room -= 2)
        if (find_place(layout, symbol, room))
            return;
    if (layout->homeless < 0)
        layout->homeless = symbol->part;
}

static int brake_x(const struct layout *layout, int part)
{
    enum side side = place_side(layout, part);
    if (layout->motorcycle)
        return middle(layout) +
               (side == SIDE_LEFT ? -CYCLE_BRAKE_OFF_MIDDLE : CYCLE_BRAKE_OFF_MIDDLE);
    if (side == SIDE_NONE)
        return middle(layout);
    return side == SIDE_LEFT ? BRAKE_OFF_EDGE : layout->columns - BRAKE_OFF_EDGE;
}

/* Which axle of those at its end of the car a brake is on: how many alike come before it. */
static int axle_index(const struct layout *layout, int part)
{
    const struct part *parts = layout->system->parts;
    int index = 0;
    for (int i = 0; i < layout->system->part_count; i++)
        index += i != part && kind_is_brake(parts[i].kind) && parts[i].axle == parts[part].axle &&
                 parts[i].side == parts[part].side && system_compare(layout->system, i, part) < 0;
    return index;
}

static void add_axle(struct layout *layout, enum axle axle, int line)
{
    layout->axles[layout->axle_count++] = (struct drawn_axle){axle, row(layout, line)};
}

/* Two axles stand where one would when some side has two brakes there. */
static void find_axles(struct layout *layout)
{
    bool two[] = {false, false};
    for (int i = 0; i < layout->system->part_count; i++) {
        const struct part *part = &layout->system->parts[i];
        if (kind_is_brake(part->kind) && axle_index(layout, i) > 0)
            two[part->axle == AXLE_REAR] = true;
    }
    if (layout->motorcycle) {
        add_axle(layout, AXLE_FRONT, AXLE_FRONT_CYCLE);
        add_axle(layout, AXLE_REAR, AXLE_REAR_CYCLE);
        return;
    }
    add_axle(layout, AXLE_FRONT, AXLE_FRONT_CAR);
    if (two[0])
        add_axle(layout, AXLE_FRONT, AXLE_FRONT_SECOND);
    add_axle(layout, AXLE_REAR, two[1] ? AXLE_REAR_FIRST : AXLE_REAR_CAR);
    if (two[1])
        add_axle(layout, AXLE_REAR, AXLE_REAR_SECOND);
}

/* The grid line of an axle, the last where there are fewer. */
static int axle_line(const struct layout *layout, enum axle axle, int index)
{
    int line = layout->axles[0].line;
    for (int i = 0; i < layout->axle_count; i++)
        if ((layout->axles[i].axle == AXLE_REAR) == (axle == AXLE_REAR) && index-- >= 0)
            line = layout->axles[i].line;
    return line;
}

static void place_brakes(struct layout *layout)
{
    for (int i = 0; i < layout->system->part_count; i++) {
        const struct part *part = &layout->system->parts[i];
        if (!kind_is_brake(part->kind))
            continue;
        int y = axle_line(layout, part->axle, axle_index(layout, i));
        struct symbol *symbol = add_symbol(layout, i, (struct spot){brake_x(layout, i), y}, 3, 3);
        for (int other = 0; other < layout->symbol_count - 1; other++)
            if (zones_near(zone_of(layout, symbol), zone_of(layout, &layout->symbols[other]), 1)) {
                find_room(layout, symbol);
                break;
            }
    }
}

/* Order of masters from the driver's side inwards; NO_BRAKE: of the clutch. */
struct column {
    int master;
    int order;
};
enum { NO_BRAKE = 1000 };

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
        return NO_BRAKE;
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
    int first = column(layout, FIRST_COLUMN) + (count > 2);
    int right = column(layout, CYCLE_COLUMN), left = column(layout, CYCLE_LEFT);
    bool hand = false;
    int feet = 0;
    for (int k = 0; k < count; k++) {
        int master = columns[k].master;
        if (!layout->motorcycle) {
            place_master(layout, master, first - MASTERS_APART * k, layout->bulkhead);
        } else if (worked_by_hand(layout, master)) {
            bool brake = columns[k].order < NO_BRAKE;
            place_master(layout, master, hand || !brake ? left : right, row(layout, BULKHEAD_HAND));
            hand = true;
        } else {
            place_master(layout, master, right - MASTERS_APART * feet++,
                         row(layout, BULKHEAD_FOOT));
        }
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
        struct spot at = {count > 0 ? sum / count : column(layout, FIRST_COLUMN), below + 3};
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
        int left = layout->columns;
        int right = 0;
        int top = layout->rows;
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
        int length =
            row(layout, FEED_LENGTH) > FEED_LENGTH ? row(layout, FEED_LENGTH) : FEED_LENGTH;
        struct spot at = {feeds ? (left + right) / 2 : column(layout, FIRST_COLUMN),
                          feeds ? top - length : layout->bulkhead + 12};
        struct symbol *symbol =
            add_symbol(layout, i, at, feeds ? (right - left + 1) / 2 + 2 : 2, 1);
        bool clear = false;
        for (int tries = 0; !clear && tries < 6; tries++) {
            clear = true;
            for (int s = 0; s < layout->symbol_count - 1; s++)
                clear = clear && !zones_near(zone_of(layout, symbol),
                                             zone_of(layout, &layout->symbols[s]), 2);
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
        struct spot at = place_at(layout, 27, 24);
        if (rear)
            at = (struct spot){middle(layout), axle_line(layout, AXLE_REAR, 1) - 2};
        if (layout->motorcycle)
            at = (struct spot){middle(layout), row(layout, BULKHEAD_HAND + 8)};
        struct symbol *symbol = add_symbol(layout, i, at, inside ? 2 : 3, inside ? 2 : 1);
        if (!stands_clear(layout, symbol, LEAST_ROOM))
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
        return beyond.rear > 0 ? place_at(layout, 34, 38) : place_at(layout, 30, 21);
    int front = axle_line(layout, AXLE_FRONT, 0), rear = axle_line(layout, AXLE_REAR, 0);
    if (kind == KIND_SERVO)
        return place_at(layout, 16, 23);
    if (mount == MOUNT_REAR_AXLE)
        return (struct spot){middle(layout), rear};
    if (mount == MOUNT_FRONT_AXLE)
        return (struct spot){middle(layout), front};
    if (beyond.front + beyond.rear == 0)
        return place_at(layout, 36, 33);
    if (beyond.front > 0 && beyond.rear > 0)
        return place_at(layout, 20, 24);
    int x = middle(layout);
    if (beyond.driver == 0 || beyond.passenger == 0)
        x += beyond.driver > 0 ? column(layout, 14) : -column(layout, 14);
    /* A valve towards the front has its outlet above it. */
    if (beyond.front > 0)
        return (struct spot){x, kind == KIND_VALVE ? 7 : 4};
    return (struct spot){x, kind == KIND_VALVE ? rear - 11 : rear - 6};
}

struct candidate {
    int part;
    const char *name; /* decides between equals, whatever the order of sections */
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
    return strcmp(x->name, y->name);
}

static bool stands_free(const struct layout *layout, int part)
{
    const struct part *p = &layout->system->parts[part];
    if (layout->symbol_of[part] >= 0)
        return false;
    if (p->kind == KIND_VALVE || p->kind == KIND_SERVO)
        return true;
    return p->kind == KIND_JOINT && (place_ways_at(layout->network, layout->system, part) != 2 ||
                                     nipples_marks(layout, part) > 0);
}

/* The symbol that fluid comes from on its way to a part; -1: none that stands yet. */
static int symbol_before(const struct layout *layout, int part)
{
    const struct network *network = layout->network;
    int at = network_vertex(network, part, 0);
    for (int steps = 0; at >= 0 && steps < network->vertex_count; steps++) {
        int other = network->vertices[at].part;
        if (other != part && layout->symbol_of[other] >= 0)
            return layout->symbol_of[other];
        at = network->vertices[at].parent;
    }
    return -1;
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
    if (layout->system->parts[part].kind == KIND_VALVE)
        symbol->before = symbol_before(layout, part);
    find_room(layout, symbol);
}

static void place_joints(struct layout *layout)
{
    int room = layout->system->part_count;
    struct candidate *candidates = ARENA_ARRAY(layout->arena, (size_t)room + 1, struct candidate);
    int count = 0;
    for (int i = 0; i < room; i++)
        if (stands_free(layout, i))
            candidates[count++] = (struct candidate){i, layout->system->parts[i].name,
                                                     wish(layout, i), beyond_part(layout, i)};
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

/* On paper; empty where there is none. */
static struct box engine_box(const struct layout *layout, bool gearbox)
{
    struct box box = gearbox ? (struct box){25, 20, 31, 32} : (struct box){23, 7, 33, 20};
    if (layout->motorcycle)
        box = gearbox ? (struct box){0} : (struct box){25, 31, 35, 38};
    else if (system_vehicle(layout->system)->engine == ENGINE_REAR)
        box = gearbox ? (struct box){27, 41, 33, 48} : (struct box){24, 48, 36, 53};
    double across = layout->width / REF_COLUMNS, down = layout->height / REF_ROWS;
    return (struct box){box.left * across, box.top * down, box.right * across, box.bottom * down};
}

void place_symbols(struct layout *layout)
{
    size_t count = (size_t)layout->system->part_count;
    const struct vehicle *vehicle = system_vehicle(layout->system);
    layout->motorcycle = vehicle->type == VEHICLE_MOTORCYCLE;
    layout->mirrored = !layout->motorcycle && vehicle->driver == DRIVER_LEFT;
    layout->homeless = -1;
    find_axles(layout);
    layout->bulkhead = row(layout, layout->motorcycle ? BULKHEAD_HAND : BULKHEAD_CAR);
    layout->wheel = (struct point){column(layout, STEERING_WHEEL) * GRID_STEP,
                                   (layout->bulkhead + WHEEL_BEHIND_BULKHEAD) * GRID_STEP};
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
