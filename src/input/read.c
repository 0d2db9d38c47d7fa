#include "input/read.h"

#include "base/text.h"
#include "input/build.h"
#include "input/ends.h"
#include "input/order.h"
#include "input/refs.h"
#include "input/route.h"

static struct system *make_system(const struct car *car, struct own_order order)
{
    struct arena *arena = car->input->arena;
    struct system *system = ARENA_NEW(arena, struct system);
    system->arena = arena;
    system->file = car->input->file;
    system->parts = ARENA_ARRAY(arena, car->count, struct part);
    system->part_count = (int)car->count;
    for (size_t i = 0; i < car->count; i++)
        system->parts[i] = car->items[i].part;
    system->connections = ARENA_ARRAY(arena, car->links.count, struct connection);
    system->connection_count = (int)car->links.count;
    for (size_t i = 0; i < car->links.count; i++)
        system->connections[i] = car->links.items[i].connection;
    system->own_order = order;
    return system;
}

/* Joins the parts and makes a car of them. */
static struct system *finish_car(struct car *car)
{
    ends_connect(car);
    route_check(car);
    refs_resolve(car);
    build_finish(car);
    return make_system(car, order_read(car));
}

/* Whether messages from a number on hold a mistake; earlier ones are of other files. */
static bool has_mistake(const struct messages *messages, size_t from)
{
    for (size_t i = from; i < messages->count; i++)
        if (messages->items[i].severity == SEVERITY_DANGER)
            return true;
    return false;
}

struct system *read_car(const struct source *source, struct arena *arena, struct messages *messages)
{
    struct input input = {arena, messages, text_copy(arena, source->name)};
    size_t before = messages->count;
    struct read_lines document = lines_read(source, &input);
    struct system *system = NULL;
    if (document.count > 0) {
        struct car car = {.input = &input, .roll = roll_start(arena)};
        build_parts(&car, &document);
        route_runs(&car);
        if (!car.full)
            system = finish_car(&car);
    } else if (!has_mistake(messages, before)) {
        mistake_of_file(&input, MISTAKE_NOTHING_IN_IT,
                        "has no section; a description begins with one")
            ->write = "[vehicle]";
    }
    bool failed = has_mistake(messages, before);
    messages_sort(messages);
    return failed ? NULL : system;
}
