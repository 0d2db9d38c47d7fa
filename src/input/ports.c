#include "input/ports.h"

#include <string.h>

#include "base/text.h"
#include "parts/words.h"

static const struct port no_port = {-1, -1, NULL};

struct port_name port_name_find(const struct car *car, struct written words)
{
    struct arena *arena = car->input->arena;
    struct port_name name = {.name = words};
    name.count = roll_find_sides(&car->roll, words.text, name.parts);
    /* A name may have points of its own: the outlet stands behind the first that leaves a part. */
    for (const char *point = words.text; name.count == 0 && (point = strchr(point, '.')); point++) {
        size_t at = (size_t)(point - words.text);
        struct written part = written_part(arena, words, 0, at);
        name.count = roll_find_sides(&car->roll, part.text, name.parts);
        if (name.count == 0 && name.outlet.text)
            continue;
        name.name = part;
        name.outlet = written_part(arena, words, at + 1, strlen(words.text) - at - 1);
    }
    return name;
}

/* The item of a list of names that words mean, or NULL. */
static const char *among(const struct part_names *names, const char *words, struct arena *arena)
{
    const char *key = name_key(arena, words);
    for (size_t i = 0; i < names->count; i++)
        if (strcmp(name_key(arena, names->names[i]), key) == 0)
            return names->names[i];
    return NULL;
}

static void add_names(struct text *list, const struct part_names *names, const char *instead)
{
    if (names->count == 0)
        text_add(list, "%s%s", list->count > 0 ? ", " : "", instead);
    for (size_t i = 0; i < names->count; i++)
        text_add(list, "%s%s", list->count > 0 ? ", " : "", names->names[i]);
}

static void tell_unknown_outlet(struct car *car, const struct port_name *name, const char *known,
                                const char *first)
{
    struct arena *arena = car->input->arena;
    struct message *message =
        mistake_add(car->input, MISTAKE_NO_SUCH_OUTLET, name->outlet,
                    *known ? "%s has no outlet %s; it has %s"
                           : "%s has one way only, so nothing stands behind a point",
                    name->name.text, name->outlet.text, known);
    message->example = *known ? first : NULL;
    message->write = *known ? NULL : first;
    size_t length;
    for (const char *item; (item = words_next(&known, &length)) != NULL;) {
        const char *outlet = text_copy_part(arena, item, length);
        if (!text_mistyped(name->outlet.text, outlet))
            continue;
        message->example = NULL;
        message->write = text_print(arena, "%s.%s", name->name.text, outlet);
    }
}

/* Message for an outlet that is missing or unknown: known is a comma-separated list of them. */
static void refuse_outlet(struct car *car, const struct port_name *name, const char *known)
{
    struct arena *arena = car->input->arena;
    size_t length;
    const char *rest = known;
    const char *first = words_next(&rest, &length);
    const char *line =
        first ? text_print(arena, "%s.%.*s", name->name.text, (int)length, first) : name->name.text;
    if (!name->outlet.text)
        mistake_add(car->input, MISTAKE_WHICH_OUTLET, name->name,
                    "%s has several ways out; say which behind a point: %s", name->name.text, known)
            ->example = line;
    else
        tell_unknown_outlet(car, name, known, line);
}

static struct port master_port(struct car *car, const struct port_name *name, int part)
{
    const struct master *master = &car->items[part].part.as.master;
    struct arena *arena = car->input->arena;
    const char *outlet = name->outlet.text;
    if (master->type != MASTER_TANDEM && !outlet)
        return (struct port){part, 0, NULL};
    if (outlet) {
        const char *primary = among(&master->primary_outlets, outlet, arena);
        const char *secondary = among(&master->secondary_outlets, outlet, arena);
        if (primary || (!secondary && words_same(outlet, "primary")))
            return (struct port){part, 0, primary};
        if (secondary || words_same(outlet, "secondary"))
            return (struct port){part, 1, secondary};
    }
    if (master->type != MASTER_TANDEM) {
        refuse_outlet(car, name, "");
        return no_port;
    }
    struct text known = text_start(arena);
    add_names(&known, &master->primary_outlets, "primary");
    add_names(&known, &master->secondary_outlets, "secondary");
    refuse_outlet(car, name, known.items);
    return no_port;
}

/* Reads "1", "2" or "inlet 2" behind a point; 0 when nothing stands there, -1 when it is none. */
static int read_passage(const struct port_name *name)
{
    const char *outlet = name->outlet.text;
    if (!outlet)
        return 0;
    if (words_among(outlet, "1, inlet 1, first, passage 1"))
        return 1;
    if (words_among(outlet, "2, inlet 2, second, passage 2"))
        return 2;
    return -1;
}

/* The passage or inlet that is meant, from 1; 0 with a message when that cannot be told. */
static int which_passage(struct car *car, const struct port_name *name, int count)
{
    int passage = read_passage(name);
    if (count == 1 && passage >= 0 && passage <= 1)
        return 1;
    if (count == 2 && passage >= 1)
        return passage;
    refuse_outlet(car, name, count == 2 ? "1, 2" : "");
    return 0;
}

static struct port plain_port(struct car *car, const struct port_name *name, int part)
{
    if (!name->outlet.text)
        return (struct port){part, 0, NULL};
    refuse_outlet(car, name, "");
    return no_port;
}

static struct port not_in_runs(struct car *car, const struct port_name *name, int part)
{
    mistake_add(car->input, MISTAKE_NOT_IN_RUNS, name->name,
                "%s is a %s, and no pipe under pressure leads to it", name->name.text,
                kind_word(car->items[part].part.kind));
    return no_port;
}

struct port port_find(struct car *car, const struct port_name *name, int which, enum way way)
{
    int part = name->parts[which];
    const struct part *found = &car->items[part].part;
    int leaving = way == WAY_FROM ? 1 : 0;
    int passage;
    switch (found->kind) {
    case KIND_MASTER:
        return master_port(car, name, part);
    case KIND_VALVE:
        passage = which_passage(car, name, part_chambers(found) / 2);
        return passage ? (struct port){part, 2 * (passage - 1) + leaving, NULL} : no_port;
    case KIND_DISC:
        passage = which_passage(car, name, part_chambers(found));
        return passage ? (struct port){part, passage - 1, NULL} : no_port;
    case KIND_SERVO:
        if (found->as.servo.type == SERVO_DIRECT)
            return not_in_runs(car, name, part);
        return name->outlet.text ? plain_port(car, name, part) : (struct port){part, leaving, NULL};
    case KIND_PIPE:
    case KIND_HOSE:
        return name->outlet.text ? plain_port(car, name, part) : (struct port){part, leaving, NULL};
    case KIND_DRUM:
    case KIND_SLAVE:
    case KIND_JOINT:
        return plain_port(car, name, part);
    case KIND_VEHICLE:
    case KIND_FLUID:
    case KIND_PEDAL:
    case KIND_RESERVOIR:
    case KIND_PARKING:
    case KIND_COUNT:
        break;
    }
    return not_in_runs(car, name, part);
}
