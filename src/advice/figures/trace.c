#include "advice/figures/trace.h"

#include <math.h>
#include <string.h>

#include "advice/figures/chain.h"
#include "base/list.h"

struct tracer {
    const struct system *system;
    const struct network *network;
    const struct figures *figures;
    const struct weighing *weighing;
    struct arena *arena;
    struct trace *trace;
    int *input_of; /* by key: its index among the inputs, -1 */
    bool *shown;   /* by figure */
    struct {
        struct trace_step *items;
        size_t count, capacity;
    } steps;
};

/* --- inputs --------------------------------------------------------------------------------- */

static struct trace_input input_of(const struct tracer *tracer, size_t k,
                                   const struct weight *weight)
{
    const struct moved_key *key = &tracer->weighing->keys.items[k];
    const struct part *part = &tracer->system->parts[key->part];
    struct trace_input input = {{key->part, key->key, 0}, key->base, {0}, weight, false};
    input.origin = part->origins[key_index(part->kind, key->key)];
    if (k >= tracer->weighing->given)
        input.origin.kind = ORIGIN_ASSUMED; /* a chamber's usual volume has no origin of its own */
    if (input.origin.place.file == NULL)
        input.origin.place = part->place; /* what follows from a name stands where the name does */
    input.unusual = key->base < key->key->usual_least || key->base > key->key->usual_most;
    return input;
}

static void gather_inputs(struct tracer *tracer, int figure)
{
    size_t keys = tracer->weighing->keys.count;
    struct trace *trace = tracer->trace;
    size_t *order = ARENA_ARRAY(tracer->arena, keys + 1, size_t);
    trace->inputs = ARENA_ARRAY(tracer->arena, keys + 1, struct trace_input);
    tracer->input_of = ARENA_ARRAY(tracer->arena, keys + 1, int);
    for (size_t k = 0; k < keys; k++) {
        const struct weight *weight = weighing_weight(tracer->weighing, k, figure);
        tracer->input_of[k] = -1;
        if (!weight->moves)
            continue;
        int at = trace->input_count++;
        for (; at > 0 && trace->inputs[at - 1].weight->telling < weight->telling; at--) {
            trace->inputs[at] = trace->inputs[at - 1];
            order[at] = order[at - 1];
        }
        trace->inputs[at] = input_of(tracer, k, weight);
        order[at] = k;
    }
    for (int i = 0; i < trace->input_count; i++)
        tracer->input_of[order[i]] = i;
}

/* --- the way -------------------------------------------------------------------------------- */

/* How a key matters to a figure. */
enum reach { REACH_NOT, REACH_BEYOND_A_KNEE, REACH_HERE };

static enum reach reach_of(const struct tracer *tracer, size_t key, int figure)
{
    const struct weight *weight = weighing_weight(tracer->weighing, key, figure);
    if (!weight->moves)
        return REACH_NOT;
    return weight->beyond ? REACH_BEYOND_A_KNEE : REACH_HERE;
}

static enum reach farthest(const struct tracer *tracer, size_t key, const int *figures, int count)
{
    enum reach most = REACH_NOT;
    for (int i = 0; i < count; i++) {
        enum reach reach = reach_of(tracer, key, figures[i]);
        most = reach > most ? reach : most;
    }
    return most;
}

static void add_step(struct tracer *tracer, int figure, int depth, const int *from, int from_count)
{
    size_t keys = tracer->weighing->keys.count;
    struct trace_step *step = LIST_ADD(tracer->arena, &tracer->steps);
    step->figure = &tracer->figures->items[figure];
    step->depth = depth;
    step->again = tracer->shown[figure];
    step->inputs = ARENA_ARRAY(tracer->arena, keys + 1, int);
    step->only_beyond = ARENA_ARRAY(tracer->arena, keys + 1, bool);
    for (size_t k = 0; k < keys && !step->again; k++) {
        enum reach reach = reach_of(tracer, k, figure);
        if (tracer->input_of[k] < 0 || reach <= farthest(tracer, k, from, from_count))
            continue;
        step->only_beyond[step->input_count] = reach == REACH_BEYOND_A_KNEE;
        step->inputs[step->input_count++] = tracer->input_of[k];
    }
    tracer->shown[figure] = true;
}

/* The way has no loops (a test says so) and the table is short; still the depth is bounded. */
static void walk(struct tracer *tracer, int figure)
{
    enum { DEEPEST = 12 };
    struct {
        int *from, count, next;
    } way[DEEPEST];
    int depth = 0, enter = figure;
    for (;;) {
        bool again = tracer->shown[enter];
        int *from = ARENA_ARRAY(tracer->arena, (size_t)tracer->figures->count + 1, int);
        int count = chain_from(tracer->system, tracer->network, tracer->figures, enter, from);
        add_step(tracer, enter, depth, from, count);
        way[depth].from = from;
        way[depth].count = again || depth + 1 == DEEPEST ? 0 : count;
        way[depth].next = 0;
        while (depth >= 0 && way[depth].next == way[depth].count)
            depth--;
        if (depth < 0)
            return;
        enter = way[depth].from[way[depth].next++];
        depth++;
    }
}

/* --- cases and knees ------------------------------------------------------------------------ */

static bool rests_on_part(const struct trace *trace, int part)
{
    for (int i = 0; i < trace->input_count; i++)
        if (trace->inputs[i].cited.part == part)
            return true;
    return false;
}

static void gather_branches(struct tracer *tracer, struct force effort)
{
    struct trace *trace = tracer->trace;
    const struct system *system = tracer->system;
    struct solution *solution = solution_room(system, tracer->network, tracer->arena);
    struct state state = state_usual();
    state.effort = effort;
    solve(system, tracer->network, &state, solution);
    trace->branches = ARENA_ARRAY(tracer->arena, (size_t)system->part_count + 1, struct branch);
    for (int i = 0; i < system->part_count; i++)
        if (rests_on_part(trace, i) &&
            branch_of(system, tracer->network, solution, i, &trace->branches[trace->branch_count]))
            trace->branch_count++;
}

static void gather_knees(struct tracer *tracer)
{
    const struct weighing *weighing = tracer->weighing;
    struct trace *trace = tracer->trace;
    trace->knees = ARENA_ARRAY(tracer->arena, (size_t)weighing->knee_count + 1, struct trace_knee);
    for (int i = 0; i < weighing->knee_count; i++)
        if (rests_on_part(trace, weighing->knees[i].part))
            trace->knees[trace->knee_count++] =
                (struct trace_knee){weighing->knees[i], weighing->efforts[i]};
}

struct trace *trace_of(const struct system *system, const struct network *network,
                       struct force effort, const struct figures *figures,
                       const struct weighing *weighing, int index, struct arena *arena)
{
    struct tracer tracer = {.system = system,
                            .network = network,
                            .figures = figures,
                            .weighing = weighing,
                            .arena = arena,
                            .trace = ARENA_NEW(arena, struct trace),
                            .shown = ARENA_ARRAY(arena, (size_t)figures->count + 1, bool)};
    tracer.trace->figure = &figures->items[index];
    tracer.trace->effort = effort;
    gather_inputs(&tracer, index);
    walk(&tracer, index);
    tracer.trace->steps = tracer.steps.items;
    tracer.trace->step_count = (int)tracer.steps.count;
    gather_branches(&tracer, effort);
    gather_knees(&tracer);
    return tracer.trace;
}
