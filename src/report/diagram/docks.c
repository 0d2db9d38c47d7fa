#include "report/diagram/place.h"

static void add_dock(struct dock *docks, int *count, int x, int y, enum heading heading)
{
    if (*count < MOST_DOCKS)
        docks[(*count)++] = (struct dock){{x, y}, heading};
}

static int joint_docks(const struct symbol *symbol, struct dock docks[static MOST_DOCKS])
{
    int count = 0;
    int x = symbol->centre.x;
    int y = symbol->centre.y;
    add_dock(docks, &count, x - symbol->half_width, y, HEADING_LEFT);
    add_dock(docks, &count, x + symbol->half_width, y, HEADING_RIGHT);
    for (int dx = -symbol->half_width; dx <= symbol->half_width; dx++) {
        add_dock(docks, &count, x + dx, y - symbol->half_height, HEADING_UP);
        add_dock(docks, &count, x + dx, y + symbol->half_height, HEADING_DOWN);
    }
    return count;
}

static int brake_docks(const struct layout *layout, const struct symbol *symbol, int chamber,
                       struct dock docks[static MOST_DOCKS])
{
    const struct part *part = &layout->system->parts[symbol->part];
    int count = 0;
    int x = symbol->centre.x;
    int y = symbol->centre.y;
    bool two = part->kind == KIND_DISC && part->as.disc.inlets == 2;
    int off = !two ? 0 : chamber == 0 ? -2 : 2;
    if (layout->motorcycle) {
        bool rear = part->axle == AXLE_REAR;
        add_dock(docks, &count, x + off, y + (rear ? -3 : 3), rear ? HEADING_UP : HEADING_DOWN);
        return count;
    }
    bool left = x < layout->columns / 2;
    add_dock(docks, &count, x + (left ? 3 : -3), y + off, left ? HEADING_RIGHT : HEADING_LEFT);
    return count;
}

static int valve_docks(const struct layout *layout, const struct symbol *symbol, int chamber,
                       struct dock docks[static MOST_DOCKS])
{
    const struct part *part = &layout->system->parts[symbol->part];
    int count = 0;
    bool out = chamber % 2 == 1;
    int off = part_chambers(part) <= 2 ? 0 : chamber < 2 ? -1 : 1;
    bool top = out == symbol->flow_forward;
    add_dock(docks, &count, symbol->centre.x + off, symbol->centre.y + (top ? -2 : 2),
             top ? HEADING_UP : HEADING_DOWN);
    return count;
}

static int master_docks(const struct layout *layout, const struct symbol *symbol, int chamber,
                        struct dock docks[static MOST_DOCKS])
{
    const struct part *part = &layout->system->parts[symbol->part];
    bool tandem = part->as.master.type == MASTER_TANDEM;
    int count = 0;
    int first = !tandem ? -1 : chamber == 1 ? -2 : 1;
    for (int dy = first; dy <= first + 1; dy++) {
        add_dock(docks, &count, symbol->centre.x - 1, symbol->centre.y + dy, HEADING_LEFT);
        add_dock(docks, &count, symbol->centre.x + 1, symbol->centre.y + dy, HEADING_RIGHT);
    }
    return count;
}

int place_docks(const struct layout *layout, const struct symbol *symbol, int chamber,
                struct dock docks[static MOST_DOCKS])
{
    const struct part *part = &layout->system->parts[symbol->part];
    int count = 0;
    int x = symbol->centre.x;
    int y = symbol->centre.y;
    switch (part->kind) {
    case KIND_MASTER:
        return master_docks(layout, symbol, chamber, docks);
    case KIND_DISC:
    case KIND_DRUM:
        return brake_docks(layout, symbol, chamber, docks);
    case KIND_VALVE:
        return valve_docks(layout, symbol, chamber, docks);
    case KIND_JOINT:
        return joint_docks(symbol, docks);
    case KIND_SLAVE:
        add_dock(docks, &count, x + symbol->half_width, y, HEADING_RIGHT);
        if (part->as.slave.type == SLAVE_CONCENTRIC) {
            add_dock(docks, &count, x, y - symbol->half_height, HEADING_UP);
            add_dock(docks, &count, x - symbol->half_width, y, HEADING_LEFT);
        }
        return count;
    case KIND_SERVO:
        if (chamber == 0) {
            add_dock(docks, &count, x + 2, y, HEADING_RIGHT);
            add_dock(docks, &count, x, y + 2, HEADING_DOWN);
        } else {
            add_dock(docks, &count, x - 2, y, HEADING_LEFT);
            add_dock(docks, &count, x, y - 2, HEADING_UP);
        }
        return count;
    case KIND_VEHICLE:
    case KIND_FLUID:
    case KIND_PEDAL:
    case KIND_RESERVOIR:
    case KIND_PIPE:
    case KIND_HOSE:
    case KIND_PARKING:
    case KIND_COUNT:
        break;
    }
    return count;
}
