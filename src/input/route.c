#include "input/route.h"

#include <math.h>

#include "base/text.h"
#include "input/ports.h"
#include "input/runs.h"
#include "parts/words.h"

static const struct port no_port = {-1, -1, NULL};

/* An item with what it means. */
struct stop {
    const struct run_item *item;
    bool is_piece;         /* a pipe or hose, from the run or by name */
    bool implied;          /* a bracket or union without a name */
    struct port_name name; /* of parts */
};

/* A run being laid. */
struct route {
    struct car *car;
    struct run run;
    struct stop *stops;
    enum side side; /* of the branch that is being laid, when the run ends on both sides */
};

/* Where the run has come to. */
struct trail {
    struct port at;
    bool on_piece;
};

/* Name of what the run makes: its own name, the side, and a word. */
static const char *made_name(const struct route *route, const char *word)
{
    const char *side = side_word(route->side);
    return text_print(route->car->input->arena, "%s%s%s %s", route->run.name.text, *side ? " " : "",
                      side, word);
}

static bool is_unnamed_joint(const char *words)
{
    return words_same(words, "bracket") || words_same(words, "union");
}

static void find_stop(struct route *route, size_t i)
{
    struct car *car = route->car;
    struct stop *stop = &route->stops[i];
    stop->item = &route->run.items[i];
    stop->is_piece = stop->item->kind != ITEM_PART;
    if (stop->is_piece || stop->item->refused)
        return;
    struct written words = stop->item->words;
    stop->name = port_name_find(car, words);
    enum part_kind kind;
    if (stop->name.count == 0 && name_kind(car->input->arena, words.text, &kind) &&
        kind == KIND_JOINT && !stop->name.outlet.text) {
        stop->implied = is_unnamed_joint(words.text);
        if (stop->implied)
            return;
        stop->name.parts[0] = car_spring(car, words.text, words, false);
        stop->name.count = 1;
    }
    if (stop->name.count == 0)
        car_unknown(car, stop->name.name);
    if (stop->name.count == 1) {
        enum part_kind found = car->items[stop->name.parts[0]].part.kind;
        stop->is_piece = found == KIND_PIPE || found == KIND_HOSE;
    }
}

/* Reads the length of a piece from its words in the run; that of its own section counts more. */
static void take_length(struct route *route, int part, const struct run_item *item)
{
    struct input *input = route->car->input;
    struct draft *draft = &route->car->items[part];
    bool is_pipe = draft->part.kind == KIND_PIPE;
    const struct key *key =
        key_of(draft->part.kind, is_pipe ? FIELD(as.pipe.length) : FIELD(as.hose.length));
    size_t row = key_index(draft->part.kind, key);
    if (!item->length.text)
        return;
    struct entry *entry = ARENA_NEW(input->arena, struct entry);
    *entry = (struct entry){item->words, item->length};
    struct origin origin = {.tolerance = NAN};
    struct part into = draft->part;
    size_t before = input->messages->count;
    value_read(key, entry, &into, &origin, input);
    if (input->messages->count > before) {
        /* In a run the words stand without the key and with the kind behind them. */
        struct message *message = &input->messages->items[before];
        const char *kind = kind_word(draft->part.kind);
        if (message->write != NULL)
            message->write = text_print(input->arena, "%s %s", message->write, kind);
        else
            message->example = text_print(input->arena, "%s %s", key->example, kind);
    }
    bool by_section = draft->entries[row] && draft->part.origins[row].kind != ORIGIN_SHARED;
    if (by_section)
        return;
    field_copy(key, &draft->part, &into);
    draft->part.origins[row] = origin;
    draft->entries[row] = entry;
}

/* The draft for so much pipe or hose: one whose section waits for it, or a new one. */
static int make_piece(struct route *route, const struct run_item *item)
{
    struct car *car = route->car;
    enum part_kind kind = item->kind == ITEM_PIPE ? KIND_PIPE : KIND_HOSE;
    const char *words = made_name(route, kind_word(kind));
    const char *name = words;
    for (int number = 2;; number++) {
        int part = roll_find(&car->roll, name);
        if (part < 0) {
            car_check_name(car, name, route->run.name);
            part = car_add(car, kind, name, item->words, HOSE_PRESSURE);
            car->items[part].part.from_run = true;
            return part;
        }
        if (!car->items[part].placed)
            return part;
        name = text_print(car->input->arena, "%s %d", words, number);
    }
}

static void place_piece(struct car *car, int part, struct written at)
{
    struct draft *draft = &car->items[part];
    struct written earlier = draft->from ? draft->from->value
                             : draft->to ? draft->to->value
                                         : draft->placed_at;
    if (draft->placed || draft->from || draft->to)
        mistake_add(car->input, MISTAKE_PLACED_TWICE, at,
                    "%s stands in two places; a run and the keys from and to say the same twice",
                    draft->part.name)
            ->earlier = earlier.place;
    draft->placed = true;
    draft->placed_at = at;
}

static struct trail pass_piece(struct route *route, const struct stop *stop, struct trail trail)
{
    struct car *car = route->car;
    struct written words = stop->item->words;
    int part = stop->item->kind == ITEM_PART ? stop->name.parts[0] : make_piece(route, stop->item);
    place_piece(car, part, words);
    if (stop->item->kind != ITEM_PART)
        take_length(route, part, stop->item);
    if (trail.on_piece) {
        const char *name = car_free_joint(car, made_name(route, "union"));
        car_check_name(car, name, route->run.name);
        struct port joint = {car_spring(car, name, words, true), 0, NULL};
        car_connect(car, trail.at, joint, words);
        trail.at = joint;
    }
    car_connect(car, trail.at, (struct port){part, 0, NULL}, words);
    return (struct trail){{part, 1, NULL}, true};
}

static struct trail pass_implied(struct route *route, const struct stop *stop, struct trail trail)
{
    struct car *car = route->car;
    struct written words = stop->item->words;
    const char *name = car_free_joint(car, made_name(route, words.text));
    struct port joint = {car_spring(car, name, words, true), 0, NULL};
    car_connect(car, trail.at, joint, words);
    return (struct trail){joint, false};
}

/* Whether a part may stand between others in a run. */
static bool may_be_passed(struct route *route, const struct stop *stop)
{
    const struct part *part = &route->car->items[stop->name.parts[0]].part;
    if (part->kind != KIND_MASTER && part->kind != KIND_SLAVE)
        return true;
    mistake_add(route->car->input, MISTAKE_MASTER_IN_MIDDLE, stop->item->words,
                "a run begins or ends at a %s; it cannot lead through one", kind_word(part->kind));
    return false;
}

static bool is_one_part(struct route *route, const struct stop *stop)
{
    struct car *car = route->car;
    if (stop->name.count == 2)
        mistake_add(car->input, MISTAKE_WHICH_SIDE, stop->item->words,
                    "%s means both sides; only at its end can a run part to both",
                    stop->name.name.text)
            ->example = car->items[stop->name.parts[0]].part.name;
    return stop->name.count == 1;
}

/* Lays the stops from first to last (not the first stop of the run); branch: 0 left, 1 right. */
static struct trail lay(struct route *route, size_t first, size_t last, struct trail trail,
                        int branch)
{
    struct car *car = route->car;
    for (size_t i = first; i <= last; i++) {
        const struct stop *stop = &route->stops[i];
        bool at_end = i + 1 == route->run.count;
        if (stop->is_piece) {
            trail = pass_piece(route, stop, trail);
        } else if (stop->implied) {
            trail = pass_implied(route, stop, trail);
        } else if (stop->item->refused || stop->name.count == 0) {
            car_connect(car, trail.at, no_port, stop->item->words);
            trail = (struct trail){no_port, false};
        } else if (at_end) {
            struct port to = port_find(car, &stop->name, branch, WAY_TO);
            car_connect(car, trail.at, to, stop->item->words);
        } else {
            bool passes = is_one_part(route, stop) && may_be_passed(route, stop);
            struct port to = passes ? port_find(car, &stop->name, 0, WAY_TO) : no_port;
            car_connect(car, trail.at, to, stop->item->words);
            trail.at = to.part >= 0 ? port_find(car, &stop->name, 0, WAY_FROM) : no_port;
            trail.on_piece = false;
        }
    }
    return trail;
}

/* The first stop of the run. */
static struct trail set_out(struct route *route)
{
    const struct stop *stop = &route->stops[0];
    if (stop->is_piece || stop->implied) {
        mistake_add(route->car->input, MISTAKE_RUN_END, stop->item->words,
                    "a run begins at a part or a named joint, not at a %s",
                    stop->is_piece ? "pipe or hose" : "joint without a name");
        return (struct trail){no_port, false};
    }
    if (stop->name.count == 0 || !is_one_part(route, stop))
        return (struct trail){no_port, false};
    return (struct trail){port_find(route->car, &stop->name, 0, WAY_FROM), false};
}

static void check_end(struct route *route)
{
    const struct stop *stop = &route->stops[route->run.count - 1];
    if (stop->is_piece || stop->implied)
        mistake_add(route->car->input, MISTAKE_RUN_END, stop->item->words,
                    "a run ends at a part or a named joint, not at a %s",
                    stop->is_piece ? "pipe or hose" : "joint without a name");
}

/* The last named stop before the end, from which a run parts to both sides. */
static size_t parting_stop(const struct route *route)
{
    size_t at = route->run.count - 2;
    while (at > 0 && (route->stops[at].is_piece || route->stops[at].implied))
        at--;
    return at;
}

static void lay_both(struct route *route)
{
    size_t last = route->run.count - 1;
    size_t parting = parting_stop(route);
    struct trail trail = lay(route, 1, parting, set_out(route), 0);
    for (int branch = 0; branch < 2; branch++) {
        route->side = branch == 0 ? SIDE_LEFT : SIDE_RIGHT;
        lay(route, parting + 1, last, trail, branch);
    }
}

static void route_run(struct car *car, const struct entry *entry)
{
    struct route route = {.car = car, .run = run_read(entry, car->input)};
    if (route.run.count < 2) {
        if (route.run.count == 0 || !route.run.items[0].refused)
            mistake_add(car->input, MISTAKE_SHORT_RUN, entry->value,
                        "a run names in order all that lies on it, with commas between")
                ->example = text_print(car->input->arena,
                                       "%s = brake master, 0.6 m pipe, front tee", entry->key.text);
        car->runs_are_whole = false;
        return;
    }
    route.stops = ARENA_ARRAY(car->input->arena, route.run.count, struct stop);
    for (size_t i = 0; i < route.run.count; i++)
        find_stop(&route, i);
    check_end(&route);
    size_t last = route.run.count - 1;
    if (route.stops[last].name.count == 2)
        lay_both(&route);
    else
        lay(&route, 1, last, set_out(&route), 0);
}

/* The line that gave a run of that name before, or NULL. */
static const struct entry *same_run(const struct section *runs, size_t before, const char *name)
{
    for (size_t i = 0; i < before; i++)
        if (words_same(runs->items[i].key.text, name))
            return &runs->items[i];
    return NULL;
}

void route_runs(struct car *car)
{
    const struct section *runs = car->runs;
    car->runs_are_whole = !runs || !runs->missed;
    for (size_t i = 0; runs && i < runs->count && !car->full; i++) {
        const struct entry *entry = &runs->items[i];
        const struct entry *before = same_run(runs, i, entry->key.text);
        if (before) {
            mistake_add(car->input, MISTAKE_DUPLICATE_KEY, entry->key,
                        "a run of that name was given before; find another name")
                ->earlier = before->key.place;
            car->runs_are_whole = false;
        } else if (entry->value.text) {
            route_run(car, entry);
        } else {
            car->runs_are_whole = false;
        }
    }
}

/* The joint nearest in name, apart from the joint itself. */
static const char *nearest_joint(const struct car *car, size_t joint)
{
    const char **known = ARENA_ARRAY(car->input->arena, car->count, const char *);
    size_t count = 0;
    for (size_t i = 0; i < car->count; i++)
        if (i != joint && car->items[i].part.kind == KIND_JOINT &&
            !car->items[i].part.as.joint.implied)
            known[count++] = car->items[i].part.name;
    return text_nearest(car->items[joint].part.name, known, count);
}

/* Tells of joints used once: those that sprang up before those with a section, which may have been
 * meant by a mistyped name and then need no message of their own. */
static void check_joints(struct car *car)
{
    const char **meant = ARENA_ARRAY(car->input->arena, car->count + 1, const char *);
    size_t meant_count = 0;
    for (int with_section = 0; with_section < 2; with_section++) {
        for (size_t i = 0; i < car->count; i++) {
            const struct draft *joint = &car->items[i];
            bool is_meant = false;
            for (size_t j = 0; j < meant_count; j++)
                is_meant = is_meant || meant[j] == joint->part.name;
            if (joint->part.kind != KIND_JOINT || joint->uses != 1 || is_meant ||
                joint->part.as.joint.implied || joint->has_section != (with_section == 1))
                continue;
            const char *nearest = nearest_joint(car, i);
            mistake_suggest(mistake_add(car->input, MISTAKE_JOINT_USED_ONCE, joint->header,
                                        "only one pipe, hose or part leads to %s",
                                        joint->part.name),
                            joint->part.name, nearest, nearest);
            if (nearest)
                meant[meant_count++] = nearest;
        }
    }
}

/* Inlets of valves and remote servos take one pipe; outlets may have two threads. */
static bool is_sole_inlet(const struct part *part, int chamber)
{
    return (part->kind == KIND_VALVE || part->kind == KIND_SERVO) && chamber % 2 == 0;
}

static void check_port(struct car *car, size_t link, struct port port)
{
    const struct part *part = &car->items[port.part].part;
    if (!is_sole_inlet(part, port.chamber))
        return;
    for (size_t i = 0; i < link; i++) {
        const struct connection *before = &car->links.items[i].connection;
        bool a = before->a.part == port.part && before->a.chamber == port.chamber;
        bool b = before->b.part == port.part && before->b.chamber == port.chamber;
        if (!a && !b)
            continue;
        mistake_add(car->input, MISTAKE_PORT_TAKEN, car->links.items[link].at,
                    "two runs lead to %s of %s; a tee belongs before it",
                    part_chamber_word(part, port.chamber), part->name)
            ->earlier = before->place;
        return;
    }
}

void route_check(struct car *car)
{
    if (car->runs_are_whole)
        check_joints(car);
    for (size_t i = 0; i < car->links.count; i++) {
        check_port(car, i, car->links.items[i].connection.a);
        check_port(car, i, car->links.items[i].connection.b);
    }
}
