#include "input/ends.h"

#include "base/text.h"
#include "input/ports.h"

static bool is_piece(const struct car *car, int part)
{
    enum part_kind kind = car->items[part].part.kind;
    return kind == KIND_PIPE || kind == KIND_HOSE;
}

/* What stands at the two ends of each part: another piece's index, -1 nothing yet, ELSE. */
enum { NOTHING = -1, ELSE = -2 };
struct neighbours {
    int at[2];
};

/* Joins two pieces that stand against each other; each of the two may say it. */
static void join_pieces(struct car *car, struct neighbours *ends, int first, int second,
                        struct written at)
{
    int *first_end = &ends[first].at[1];
    int *second_end = &ends[second].at[0];
    if (*first_end == second && *second_end == first)
        return;
    if (*first_end != NOTHING || *second_end != NOTHING || first == second) {
        mistake_add(car->input, MISTAKE_PLACED_TWICE, at,
                    "something else stands at that end of %s already",
                    car->items[*first_end != NOTHING ? first : second].part.name);
        return;
    }
    *first_end = second;
    *second_end = first;
    const char *stem = name_stem(car->input->arena, car->items[first].part.name);
    const char *name = car_free_joint(car, text_print(car->input->arena, "%s union", stem));
    struct port joint = {car_spring(car, name, at, true), 0, NULL};
    car_connect(car, (struct port){first, 1, NULL}, joint, at);
    car_connect(car, joint, (struct port){second, 0, NULL}, at);
}

/* Finds the one part that an end leads to; a joint's words make one spring up. */
static bool find_neighbour(struct car *car, struct written words, struct port_name *name)
{
    *name = port_name_find(car, words);
    enum part_kind kind;
    if (name->count == 0 && !name->outlet.text && name_kind(car->input->arena, words.text, &kind) &&
        kind == KIND_JOINT) {
        name->parts[0] = car_spring(car, words.text, words, false);
        name->count = 1;
    }
    if (name->count != 1)
        car_one(car, name->name);
    return name->count == 1;
}

static void connect_end(struct car *car, struct neighbours *ends, int piece, int end,
                        struct written words)
{
    struct port_name name;
    if (!find_neighbour(car, words, &name)) {
        ends[piece].at[end] = ELSE;
        return;
    }
    if (is_piece(car, name.parts[0])) {
        int other = name.parts[0];
        join_pieces(car, ends, end == 0 ? other : piece, end == 0 ? piece : other, words);
        if (ends[piece].at[end] == NOTHING)
            ends[piece].at[end] = ELSE;
        return;
    }
    if (ends[piece].at[end] != NOTHING) {
        mistake_add(car->input, MISTAKE_PLACED_TWICE, words, "%s stands at that end of %s already",
                    ends[piece].at[end] >= 0 ? car->items[ends[piece].at[end]].part.name
                                             : "something else",
                    car->items[piece].part.name);
        return;
    }
    ends[piece].at[end] = ELSE;
    struct port at = port_find(car, &name, 0, end == 0 ? WAY_FROM : WAY_TO);
    struct port own = {piece, end, NULL};
    car_connect(car, end == 0 ? at : own, end == 0 ? own : at, words);
}

static void tell_open(struct car *car, int piece, const struct neighbours *ends)
{
    const struct draft *draft = &car->items[piece];
    bool both = ends->at[0] == NOTHING && ends->at[1] == NOTHING;
    const char *missing = ends->at[0] == NOTHING ? "from" : "to";
    struct message *message =
        mistake_add(car->input, MISTAKE_OPEN_END, draft->header,
                    both ? "no run makes %s, and it has no keys from and to; a run's pipes and "
                           "hoses are named after it"
                         : "%s has no key %s, so that end leads nowhere",
                    draft->part.name, missing);
    if (!both) {
        message->example = text_print(car->input->arena, "%s = axle tee", missing);
        return;
    }
    const char **known = ARENA_ARRAY(car->input->arena, car->count, const char *);
    size_t count = 0;
    for (size_t i = 0; i < car->count; i++)
        if (car->items[i].part.from_run && is_piece(car, (int)i))
            known[count++] = car->items[i].part.name;
    const char *nearest = text_nearest(draft->part.name, known, count);
    mistake_suggest(message, draft->part.name, nearest,
                    text_print(car->input->arena, "[%s]", nearest ? nearest : ""));
}

void ends_connect(struct car *car)
{
    size_t count = car->count;
    struct neighbours *ends = ARENA_ARRAY(car->input->arena, count + 1, struct neighbours);
    for (size_t i = 0; i < count; i++) {
        int before = car->items[i].placed ? ELSE : NOTHING;
        ends[i] = (struct neighbours){{before, before}};
    }
    for (size_t i = 0; i < count; i++) {
        /* A copy, since joints that spring up move the drafts. */
        const struct entry *from = car->items[i].from;
        const struct entry *to = car->items[i].to;
        if (car->items[i].placed && (from || to))
            continue; /* its run has told */
        if (from && from->value.text)
            connect_end(car, ends, (int)i, 0, from->value);
        if (to && to->value.text)
            connect_end(car, ends, (int)i, 1, to->value);
        for (int end = 0; end < 2; end++)
            if ((end == 0 ? from : to) && ends[i].at[end] == NOTHING)
                ends[i].at[end] = ELSE; /* the line has had its message */
    }
    for (size_t i = 0; i < count; i++) {
        enum hose_use use =
            car->items[i].part.kind == KIND_HOSE ? car->items[i].part.as.hose.use : HOSE_PRESSURE;
        bool low_pressure = use == HOSE_SUPPLY || use == HOSE_VACUUM;
        bool open = ends[i].at[0] == NOTHING || ends[i].at[1] == NOTHING;
        if (is_piece(car, (int)i) && open && !low_pressure && !car->items[i].incomplete)
            tell_open(car, (int)i, &ends[i]);
    }
}
