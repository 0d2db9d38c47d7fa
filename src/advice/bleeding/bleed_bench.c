#include "advice/bleeding/bleed_bench.h"

#include <math.h>
#include <stddef.h>

#include "advice/checks/finding.h"
#include "advice/common/phrases.h"
#include "base/text.h"
#include "parts/flow.h"

struct bench {
    const struct system *system;
    const struct network *network;
    const struct bleed_set *set;
    struct steps *steps;
    struct arena *arena;
};

/* Froth leaves a stirred chamber by e to the power of the volumes drawn through it: three volumes,
 * in short strokes. */
static void bleed_new_master(struct bench *bench, int index)
{
    const struct part *part = &bench->system->parts[index];
    const struct master *master = &part->as.master;
    double volume = 0, stroke = master->stroke.m * limit_value("bench-stroke");
    for (int chamber = 0; chamber < part_chambers(part); chamber++) {
        bool usual = false;
        volume += part_chamber_volume(part, chamber, &usual).m3;
    }
    struct step *step = steps_add(bench->steps, STEP_BENCH_MASTER);
    step->part = index;
    step_say_limit(step, "angle", "bench-angle");
    step_say(step, "least", stroke > 0 ? stroke : NAN, DIMENSION_LENGTH);
    step->volume.m3 = limit_value("exchange-volumes") * volume;
    step->strokes = ceil(step->volume.m3 / (master_area(master).m2 * stroke) - 1e-6);
    if (!(stroke > 0)) {
        step->row = step_row_of(STEP_BENCH_MASTER_PLAIN);
    }
    if (master->supply_hose.m > 0) {
        steps_add(bench->steps, STEP_BENCH_MASTER_CUP)->part = index;
    }
}

/* One that stays on the car is bled there: that is the first bleeding step. */
static void bleed_masters(struct bench *bench)
{
    for (int i = 0; i < bench->system->part_count; i++) {
        if (bench->system->parts[i].kind == KIND_MASTER && bench->set->master_air[i] &&
            part_is_new(&bench->system->parts[i])) {
            bleed_new_master(bench, i);
        }
    }
}

/* New wheel cylinders and calipers are looked at before they go on. */
static void look_at_cylinders(struct bench *bench)
{
    struct name_list names = name_list_room(bench->arena, bench->system->part_count);
    for (int i = 0; i < bench->system->part_count; i++) {
        const struct part *part = &bench->system->parts[i];
        if (kind_is_brake(part->kind) && part_is_new(part)) {
            names.items[names.count++] = cylinder_words(bench->arena, part);
        }
    }
    if (names.count > 0) {
        steps_add(bench->steps, STEP_BENCH_CYLINDER)->text = name_list_words(bench->arena, &names);
    }
}

static void fill_slaves(struct bench *bench)
{
    for (int i = 0; i < bench->system->part_count; i++) {
        const struct part *part = &bench->system->parts[i];
        if (part->kind == KIND_SLAVE && part_is_new(part) &&
            part->as.slave.type != SLAVE_CONCENTRIC) {
            steps_add(bench->steps, STEP_BENCH_SLAVE)->part = i;
        }
    }
}

/* Pipes that stay and that the work emptied. */
static bool is_tried(const struct bench *bench, int vertex)
{
    int edge = bench->network->vertices[vertex].edge;
    if (edge < 0 || !bench->set->air[vertex] || bench->system->open_ends == OPEN_ENDS_PLUGGED ||
        bench->network->edges[edge].kind != EDGE_CARRIER) {
        return false;
    }
    const struct part *part = &bench->system->parts[bench->network->edges[edge].part];
    int parent = bench->network->vertices[vertex].parent;
    bool emptied = bench->set->air[parent] || part_was_opened(part);
    bool suspected = part->found.bore == BORE_STAINED || part->found.bore == BORE_PITTED;
    return emptied && suspected && part->kind == KIND_PIPE && !part_is_new(part) &&
           part->as.pipe.length.m > 0;
}

/* The fluid in a vertex, NULL when there is none. */
static const struct fluid *fluid_at(const struct bench *bench, int vertex)
{
    int circuit = bench->network->vertices[vertex].circuit;
    int fluid = system_fluid_of(bench->system, bench->network->circuits[circuit].master);
    return fluid >= 0 ? &bench->system->parts[fluid].as.fluid : NULL;
}

static double flow_of(const struct bench *bench, int vertex)
{
    const struct vertex *at = &bench->network->vertices[vertex];
    const struct part *pipe = &bench->system->parts[bench->network->edges[at->edge].part];
    const struct fluid *in = fluid_at(bench, vertex);
    const struct fluid_row *row = in != NULL ? fluid_row(in->grade) : NULL;
    if (row == NULL) {
        return NAN;
    }
    double density = row->density.kg_m3;
    struct resistance through = {flow_pipe(density,
                                           flow_viscosity_of(row->grade, in->temperature).m2_s,
                                           pipe->as.pipe.length.m, pipe_inside(&pipe->as.pipe).m),
                                 0};
    return flow_driven(through, flow_head(density, limit_value("flow-test-head")));
}

static void try_pipes(struct bench *bench)
{
    const struct network *network = bench->network;
    bool *told = ARENA_ARRAY(bench->arena, (size_t)network->vertex_count + 1, bool);
    for (int v = 0; v < network->vertex_count; v++) {
        double flow = is_tried(bench, v) && !told[v] ? flow_of(bench, v) : NAN;
        if (!(flow > 0)) {
            continue;
        }
        struct name_list names = name_list_room(bench->arena, network->vertex_count);
        for (int other = v; other < network->vertex_count; other++) {
            if (is_tried(bench, other) && !told[other] &&
                fabs(flow_of(bench, other) - flow) < 0.01 * flow) {
                told[other] = true;
                names.items[names.count++] =
                    bench->system->parts[network->edges[network->vertices[other].edge].part].name;
            }
        }
        struct step *step = steps_add(bench->steps, STEP_BENCH_FLOW);
        step->text = name_list_words(bench->arena, &names);
        if (names.count > 1) {
            step->text = text_print(bench->arena, "%s, each by itself", step->text);
        }
        step_say_limit(step, "least", "flow-test-head");
        step_say(step, "minute", flow * 60, DIMENSION_VOLUME); /* what runs into a jar in it */
        step_say(step, "temperature", fluid_at(bench, v)->temperature.celsius,
                 DIMENSION_TEMPERATURE);
    }
}

struct steps bleed_bench_of(const struct system *system, const struct network *network,
                            const struct bleed_set *set, struct arena *arena)
{
    struct steps steps = {.arena = arena};
    struct bench bench = {system, network, set, &steps, arena};
    bleed_masters(&bench);
    try_pipes(&bench);
    look_at_cylinders(&bench);
    fill_slaves(&bench);
    return steps;
}
