#include "advice/bleeding/touched.h"

#include <stddef.h>

#include "physics/pressure.h"

static void touch(struct touched *touched, int part)
{
    if (part >= 0) {
        touched->part[part] = true;
    }
}

static void touch_feed(struct touched *touched, const struct system *system, int master)
{
    touch(touched, master);
    touch(touched, pressure_pedal_of(system, master));
    touch(touched, pressure_servo_of(system, master));
    touch(touched, reservoir_of(system, master));
}

static void touch_circuit(struct touched *touched, const struct system *system,
                          const struct network *network, const struct circuit *circuit)
{
    touch_feed(touched, system, circuit->master);
    touched->brakes = touched->brakes || !circuit->clutch;
    touched->clutch = touched->clutch || circuit->clutch;
    for (int i = 0; i < circuit->vertex_count; i++) {
        const struct vertex *vertex = &network->vertices[circuit->vertices[i]];
        touch(touched, vertex->part);
        if (vertex->edge >= 0 && network->edges[vertex->edge].kind == EDGE_CARRIER) {
            touch(touched, network->edges[vertex->edge].part);
        }
    }
}

static void touch_servo(struct touched *touched, const struct system *system,
                        const struct network *network, int servo)
{
    touch(touched, servo);
    touched->brakes = true;
    for (int i = 0; i < system->part_count; i++) {
        if (system->parts[i].kind == KIND_MASTER && pressure_servo_of(system, i) == servo) {
            touch(touched, i);
            touch(touched, pressure_pedal_of(system, i));
        }
    }
    for (int v = 0; v < network->vertex_count; v++) {
        if (network->vertices[v].part == servo && network->vertices[v].circuit >= 0) {
            int master = network->circuits[network->vertices[v].circuit].master;
            touch(touched, master);
            touch(touched, pressure_pedal_of(system, master));
        }
    }
}

struct touched touched_by(const struct system *system, const struct network *network,
                          const struct bleed_set *set, struct arena *arena)
{
    size_t parts = (size_t)system->part_count + 1;
    struct touched touched = {ARENA_ARRAY(arena, parts, bool), ARENA_ARRAY(arena, parts, bool),
                              false, false};
    for (int c = 0; c < network->circuit_count; c++) {
        if (set->circuit_open[c]) {
            touch_circuit(&touched, system, network, &network->circuits[c]);
        }
    }
    for (int i = 0; i < set->count; i++) {
        touched.bled[set->items[i].nipple.part] = set->items[i].wheel;
    }
    for (int v = 0; v < network->vertex_count; v++) {
        int part = network->vertices[v].part;
        bool end =
            kind_is_brake(system->parts[part].kind) || system->parts[part].kind == KIND_SLAVE;
        touched.bled[part] = touched.bled[part] || (end && set->air[v]);
    }
    for (int i = 0; i < system->part_count; i++) { /* what is dry on a servo, and yet was off */
        const struct part *part = &system->parts[i];
        int owner = part->kind == KIND_SERVO ? i : soft_hose_owner(system, i);
        if (part_was_opened(part) && owner >= 0 && system->parts[owner].kind == KIND_SERVO) {
            touch_servo(&touched, system, network, owner);
        }
    }
    return touched;
}

const char *pedal_names(const struct system *system, const struct touched *touched,
                        struct arena *arena)
{
    struct name_list names = name_list_room(arena, system->part_count);
    for (int i = 0; i < system->part_count; i++) {
        if (system->parts[i].kind == KIND_PEDAL && touched->part[i]) {
            names.items[names.count++] = system->parts[i].name;
        }
    }
    return names.count > 0 ? name_list_words(arena, &names) : "pedal";
}

int servo_of_pedal(const struct system *system, int pedal)
{
    for (int i = 0; i < system->part_count; i++) {
        if (system->parts[i].kind == KIND_MASTER && pressure_pedal_of(system, i) == pedal &&
            pressure_servo_of(system, i) >= 0) {
            return pressure_servo_of(system, i);
        }
    }
    return -1;
}

bool parking_works_any(const struct system *system, int parking, const bool *take)
{
    const struct part_names *works = &system->parts[parking].as.parking.works;
    for (size_t i = 0; i < works->count; i++) {
        if (works->parts[i] >= 0 && take[works->parts[i]]) {
            return true;
        }
    }
    return false;
}

bool pistons_go_home(const struct part *part, bool bled)
{
    bool opens = nipples_of(part) > 0 && part->found.nipple != NIPPLE_SEIZED &&
                 part->found.nipple != NIPPLE_SHEARED;
    return part->kind == KIND_DISC && bled && !part_is_new(part) && opens &&
           part->found.pistons != PISTONS_STUCK;
}

struct name_list pistons_to_go_home(const struct system *system, const bool *bled,
                                    struct arena *arena)
{
    struct name_list names = name_list_room(arena, system->part_count);
    for (int i = 0; i < system->part_count; i++) {
        if (pistons_go_home(&system->parts[i], bled[i])) {
            names.items[names.count++] = system->parts[i].name;
        }
    }
    return names;
}
