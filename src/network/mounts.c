#include "network/mounts.h"

#include "base/list.h"

/* Which mounts move against each other: a row and a column for each, in the order of enum mount;
 * 'x' they do, '.' they do not or cannot be told. A steered wheel turns against its beam axle; a
 * handlebar turns with the upper fork, in which the fork slides. Engine and gearbox rock on rubber
 * against the body. */
static const char *const moves[MOUNT_COUNT] = {
    [MOUNT_UNKNOWN] = "...........",
    [MOUNT_BODY] = "..xxxxxxxxx",
    [MOUNT_ENGINE] = ".x.xxxxxxxx",
    [MOUNT_FRONT_AXLE] = ".xx.xxxxxxx",
    [MOUNT_REAR_AXLE] = ".xxx.xxxxxx",
    [MOUNT_FRONT_LEFT_WHEEL] = ".xxxx.xxxxx",
    [MOUNT_FRONT_RIGHT_WHEEL] = ".xxxxx.xxxx",
    [MOUNT_REAR_LEFT_WHEEL] = ".xxxxxx.xxx",
    [MOUNT_REAR_RIGHT_WHEEL] = ".xxxxxxx.xx",
    [MOUNT_HANDLEBAR] = ".xxxxxxxx.x",
    [MOUNT_FORK] = ".xxxxxxxxx.",
};

bool mounts_move(enum mount a, enum mount b)
{
    return moves[a][b] == 'x';
}

/* A stretch of plumbing between two vertices at which mounts are asked for. */
struct stretch {
    int from; /* vertex nearer to the master */
    int to;
    int *edges; /* in order from it */
    int count;
    int hoses;
    const char *reason; /* why a hard pipe is accepted on it or at its far end; NULL */
};

struct gap_list {
    struct gap *items;
    size_t count;
    size_t capacity;
};

struct survey {
    const struct system *system;
    const struct network *network;
    struct arena *arena;
    enum mount *mounts; /* by vertex: what is known, or was judged on the way */
    bool *judged;       /* by edge: its stretch was looked at */
    int *spare;         /* room for the edges of a stretch that is only looked ahead at */
    struct gap_list gaps;
    int *idle;
    int idle_count;
};

static int far_end(const struct network *network, int edge, int vertex)
{
    const struct edge *e = &network->edges[edge];
    return e->a == vertex ? e->b : e->a;
}

static const struct part *part_at(const struct survey *survey, int vertex)
{
    return &survey->system->parts[survey->network->vertices[vertex].part];
}

/* Whether the plumbing goes through a vertex without asking what it is mounted on. */
static bool is_looked_through(const struct survey *survey, int vertex)
{
    const struct network *network = survey->network;
    const enum part_kind kind = part_at(survey, vertex)->kind;
    return survey->mounts[vertex] == MOUNT_UNKNOWN && (kind == KIND_JOINT || kind == KIND_VALVE) &&
           network->first_at[vertex + 1] - network->first_at[vertex] == 2;
}

static bool is_hose(const struct survey *survey, int edge)
{
    const struct edge *e = &survey->network->edges[edge];
    return e->kind == EDGE_CARRIER && survey->system->parts[e->part].kind == KIND_HOSE;
}

static void note_reason(struct stretch *stretch, const struct part *part)
{
    if (!stretch->reason)
        stretch->reason = part->fitted.rigid_accepted;
}

/* Follows the plumbing from a vertex along one of its edges to the next vertex that counts. The
 * bound is for plumbing that runs in a circle. */
static struct stretch follow(const struct survey *survey, int from, int edge, int *room)
{
    const struct network *network = survey->network;
    struct stretch stretch = {.from = from, .to = from, .edges = room};
    while (stretch.count < network->edge_count) {
        stretch.edges[stretch.count++] = edge;
        stretch.hoses += is_hose(survey, edge);
        if (network->edges[edge].kind == EDGE_CARRIER)
            note_reason(&stretch, &survey->system->parts[network->edges[edge].part]);
        stretch.to = far_end(network, edge, stretch.to);
        note_reason(&stretch, part_at(survey, stretch.to));
        if (stretch.to == from || !is_looked_through(survey, stretch.to))
            break;
        const int *both = &network->edges_at[network->first_at[stretch.to]];
        const int next = both[0] == edge ? both[1] : both[0];
        if (next == edge)
            break;
        edge = next;
    }
    return stretch;
}

/* Whether a stretch that moves has neither a hose nor a reason to have none. */
static bool is_bare(const struct stretch *stretch)
{
    return stretch->hoses == 0 && !stretch->reason;
}

/* What lies beyond a branching vertex, against the mount of what feeds it. */
struct beyond {
    int branches;
    int unknown;        /* whose far mount is not known */
    int moving;         /* that move against the feed */
    int moving_bare;    /* of these without a hose */
    bool one_mount;     /* all that move are on mounts that do not move against each other */
    enum mount mount;   /* of the first that moves */
    bool steered_wheel; /* one of them is a front wheel */
};

static struct beyond look_beyond(const struct survey *survey, const struct stretch *feed,
                                 enum mount near)
{
    const struct network *network = survey->network;
    struct beyond beyond = {.one_mount = true};
    for (int k = network->first_at[feed->to]; k < network->first_at[feed->to + 1]; k++) {
        const int edge = network->edges_at[k];
        if (edge == feed->edges[feed->count - 1])
            continue;
        const struct stretch branch = follow(survey, feed->to, edge, survey->spare);
        const enum mount far = survey->mounts[branch.to];
        beyond.branches++;
        beyond.unknown += far == MOUNT_UNKNOWN;
        if (!mounts_move(near, far))
            continue;
        if (beyond.moving == 0)
            beyond.mount = far;
        beyond.moving++;
        beyond.moving_bare += is_bare(&branch);
        beyond.one_mount &= !mounts_move(beyond.mount, far);
        beyond.steered_wheel |= far == MOUNT_FRONT_LEFT_WHEEL || far == MOUNT_FRONT_RIGHT_WHEEL;
    }
    return beyond;
}

static bool has_front_beam(const struct system *system)
{
    const enum axle_type front = system_vehicle(system)->front_axle;
    return front == AXLE_LIVE || front == AXLE_DEAD;
}

/* The mount of a joint or valve at the end of a stretch that says none; the rules stand in the
 * header. */
static enum mount judge(const struct survey *survey, const struct stretch *feed, enum mount near)
{
    const enum part_kind kind = part_at(survey, feed->to)->kind;
    if (near == MOUNT_UNKNOWN || (kind != KIND_JOINT && kind != KIND_VALVE))
        return MOUNT_UNKNOWN;
    const struct beyond beyond = look_beyond(survey, feed, near);
    if (!is_bare(feed))
        return beyond.branches > 0 && beyond.moving == 0 && beyond.unknown == 0 ? near
                                                                                : MOUNT_UNKNOWN;
    if (near == MOUNT_BODY && beyond.steered_wheel && has_front_beam(survey->system))
        return MOUNT_UNKNOWN;
    if (beyond.moving > 1 && beyond.moving_bare == beyond.moving && beyond.one_mount &&
        beyond.unknown == 0)
        return beyond.mount;
    return near;
}

static struct gap *add_gap(struct survey *survey, const struct stretch *stretch,
                           enum gap_state state)
{
    const struct vertex *from = &survey->network->vertices[stretch->from];
    const struct vertex *to = &survey->network->vertices[stretch->to];
    struct gap *gap = LIST_ADD(survey->arena, &survey->gaps);
    *gap = (struct gap){
        .state = state,
        .circuit = from->circuit,
        .near = from->part,
        .far = to->part,
        .from = survey->mounts[stretch->from],
        .to = survey->mounts[stretch->to],
        .hose = -1,
        .unknown = -1,
    };
    return gap;
}

static void judge_stretch(struct survey *survey, const struct stretch *stretch, bool judged_here)
{
    const enum mount from = survey->mounts[stretch->from];
    const enum mount to = survey->mounts[stretch->to];
    struct gap *gap = NULL;
    int needed = 0;
    if (mounts_move(from, to)) {
        needed = 1;
        gap = add_gap(survey, stretch,
                      stretch->hoses > 0 ? GAP_BRIDGED
                      : stretch->reason  ? GAP_ACCEPTED
                                         : GAP_BARE);
        if (gap->state == GAP_ACCEPTED)
            gap->reason = stretch->reason;
        if (gap->state == GAP_BARE && judged_here)
            gap->unknown = gap->far;
    }
    for (int k = 0; k < stretch->count; k++) {
        if (!is_hose(survey, stretch->edges[k]))
            continue;
        const int hose = survey->network->edges[stretch->edges[k]].part;
        if (needed-- > 0)
            gap->hose = hose;
        else
            survey->idle[survey->idle_count++] = hose;
    }
}

static void survey_stretch(struct survey *survey, int from, int edge, int *room)
{
    const struct stretch stretch = follow(survey, from, edge, room);
    const enum mount near = survey->mounts[from];
    for (int k = 0; k < stretch.count; k++)
        survey->judged[stretch.edges[k]] = true;
    bool judged_here = false;
    if (survey->mounts[stretch.to] == MOUNT_UNKNOWN) {
        survey->mounts[stretch.to] = judge(survey, &stretch, near);
        judged_here = true;
    }
    const bool known = survey->mounts[stretch.to] != MOUNT_UNKNOWN;
    if (near != MOUNT_UNKNOWN && known) {
        judge_stretch(survey, &stretch, judged_here);
    } else if (!known && (near != MOUNT_UNKNOWN || stretch.hoses > 0 ||
                          kind_is_brake(part_at(survey, stretch.to)->kind))) {
        /* an unknown part behind an unknown one on hard pipe needs no message of its own */
        struct gap *gap = add_gap(survey, &stretch, GAP_CANNOT_TELL);
        gap->unknown = gap->far;
    }
}

static void survey_circuit(struct survey *survey, const struct circuit *circuit, int *room)
{
    const struct network *network = survey->network;
    for (int k = 0; k < circuit->vertex_count; k++) {
        const int v = circuit->vertices[k];
        if (is_looked_through(survey, v))
            continue;
        for (int i = network->first_at[v]; i < network->first_at[v + 1]; i++) {
            const int edge = network->edges_at[i];
            if (!survey->judged[edge])
                survey_stretch(survey, v, edge, room);
        }
    }
}

struct gaps mounts_gaps(const struct system *system, const struct network *network,
                        struct arena *arena)
{
    const size_t edges = (size_t)network->edge_count;
    struct survey survey = {
        .system = system,
        .network = network,
        .arena = arena,
        .mounts = ARENA_ARRAY(arena, (size_t)network->vertex_count, enum mount),
        .judged = ARENA_ARRAY(arena, edges, bool),
        .spare = ARENA_ARRAY(arena, edges, int),
        .idle = ARENA_ARRAY(arena, edges, int),
    };
    for (int v = 0; v < network->vertex_count; v++)
        survey.mounts[v] = system_mount(system, network->vertices[v].part);
    int *room = ARENA_ARRAY(arena, edges, int);
    for (int c = 0; c < network->circuit_count; c++)
        survey_circuit(&survey, &network->circuits[c], room);
    return (struct gaps){
        .items = survey.gaps.items,
        .count = (int)survey.gaps.count,
        .idle_hoses = survey.idle,
        .idle_count = survey.idle_count,
    };
}
