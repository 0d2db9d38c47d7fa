#include "advice/bleeding/bleed_details.h"

#include <math.h>
#include <stddef.h>

#include "advice/bleeding/bleed_stroke.h"
#include "advice/bleeding/bleed_way.h"
#include "base/text.h"
#include "parts/flow.h"
#include "physics/pressure.h"
#include "units/unit.h"

#define HARD 50e5 /* Pa at the master: a hard foot, by which air has lost 98 % of its volume */

struct filling {
    const struct bleed_nets *nets;
    const struct bleed_set *set;
    struct bleed_plan *plan;
    struct arena *arena;
    bool **drawn;     /* by circuit and leg: some step drew through it */
    bool **drawn_pot; /* by circuit and pot */
    double *level;    /* by part: what is in a reservoir */
    int *turn;        /* by circuit: steps of it so far */
    double *air;      /* by circuit: left in it so far, m3 */
};

/* What the master sends for a volume taken at a vertex: less where a remote servo's piston sweeps
 * it. */
static double sent_for(const struct system *system, const struct network *network, int vertex,
                       const struct pressure *at)
{
    double share = 1;
    for (int v = vertex; network->vertices[v].parent >= 0; v = network->vertices[v].parent) {
        const struct edge *edge = &network->edges[network->vertices[v].edge];
        const struct servo *servo = &system->parts[edge->part].as.servo;
        if (edge->kind == EDGE_PASSAGE && system->parts[edge->part].kind == KIND_SERVO &&
            (servo->passes == NO ||
             servo_line_helps(servo, at[network->vertices[v].parent], true))) {
            share *= servo_area_before(servo);
        }
    }
    return share;
}

struct length bleed_air_at_pedal(const struct bleed_nets *nets, int vertex, struct volume air)
{
    const struct system *system = nets->system;
    const struct network *network = nets->network;
    int index = network->vertices[vertex].circuit;
    const struct circuit *circuit = &network->circuits[index];
    struct pressure *at = ARENA_ARRAY(nets->arena, (size_t)network->vertex_count, struct pressure),
                    hard = {HARD};
    pressure_spread(system, network, index, hard, true, at);
    bool known = !isnan(at[vertex].pa); /* a valve without its figures: as at the master */
    double lost = air_compression(air, known ? at[vertex] : hard).m3;
    double sent = known ? sent_for(system, network, vertex, at) : 1;
    int pedal = pressure_pedal_of(system, circuit->master);
    double ratio = pedal >= 0 ? pedal_ratio(&system->parts[pedal].as.pedal).value : NAN;
    double area = master_area(&system->parts[circuit->master].as.master).m2;
    return (struct length){ratio * lost * sent / area};
}

/* How far the pedal of a circuit goes; NaN where nobody says. */
static double pedal_end_of(const struct system *system, const struct circuit *circuit)
{
    int pedal = pressure_pedal_of(system, circuit->master);
    return pedal >= 0 ? pedal_end(&system->parts[pedal].as.pedal).m : NAN;
}

/* Whether some volume on the way from the master was taken as usual or from an assumed size. */
static bool volumes_assumed(const struct filling *filling, struct nipple nipple)
{
    const struct system *system = filling->nets->system;
    const struct network *network = filling->nets->network;
    bool assumed = false;
    for (int v = nipple_vertex(system, network, nipple); v >= 0; v = network->vertices[v].parent) {
        const struct vertex *vertex = &network->vertices[v];
        bool usual = false;
        part_chamber_volume(&system->parts[vertex->part], vertex->chamber, &usual);
        assumed = assumed || usual;
        if (vertex->edge < 0 || network->edges[vertex->edge].kind != EDGE_CARRIER) {
            continue;
        }
        const struct part *carrier = &system->parts[network->edges[vertex->edge].part];
        const struct origin *origin = part_origin(
            carrier, carrier->kind == KIND_PIPE ? FIELD(as.pipe.size) : FIELD(as.hose.inside));
        assumed = assumed || (origin != NULL && origin->kind == ORIGIN_ASSUMED);
    }
    return assumed;
}

/* What of the way no step has drawn through; it counts as drawn through from now on. */
struct branch {
    double volume; /* m3, from the master's outlet on */
    double whole;  /* with the master's own chamber */
    double air;    /* that the work let into it */
    double
        change; /* to draw so that air and old fluid are out: neither stands where the other is */
};

static struct branch branch_of(struct filling *filling, int circuit, int nipple)
{
    const struct purge_net *net = filling->nets->items[circuit].net;
    const double times = limit_value("exchange-volumes");
    struct branch branch = {0};
    for (int at = net->nipples[nipple].leg; at >= 0; at = net->legs[at].above) {
        const struct purge_leg *leg = &net->legs[at];
        if (!filling->drawn[circuit][at]) {
            branch.volume += leg->in_master ? 0 : leg->volume;
            branch.whole += leg->volume;
            branch.air += leg->air;
            branch.change += leg->air + times * fmax(leg->volume - leg->air, 0);
        }
        filling->drawn[circuit][at] = true;
    }
    /* what passes another pot on its way does not sweep it */
    for (int pot = net->nipples[nipple].pot; pot >= 0; pot = purge_clears_too(net, pot)) {
        if (filling->drawn_pot[circuit][pot]) {
            continue;
        }
        const struct purge_pot *own = &net->pots[pot];
        /* a brake that was not off itself may have kept its old fluid, whatever ran out */
        bool emptied = own->air > 0 && part_was_opened(&filling->nets->system->parts[own->part]);
        branch.volume += own->volume;
        branch.whole += own->volume;
        branch.air += fmax(own->air - own->trapped, 0);
        branch.change += emptied ? own->air : times * own->volume;
        filling->drawn_pot[circuit][pot] = true;
    }
    return branch;
}

static void fill_flows(const struct filling *filling, const struct step *step, int nipple,
                       double volume, struct bleed_detail *detail)
{
    const struct purge_net *net = filling->nets->items[step->circuit].net;
    int master = filling->nets->network->circuits[step->circuit].master;
    bool assumed = false;
    double head = bleed_head(filling->nets->system, master, step->part, &assumed).m;
    detail->flow_by_gravity =
        bleed_full_flow(net, nipple, head > 0 ? flow_head(net->density, head) : 0) /
        limit_value("gravity-slower");
    detail->flow_by_pressure = bleed_full_flow(net, nipple, limit_value("kit-pressure"));
    detail->by_gravity.s = detail->flow_by_gravity > 0 ? volume / detail->flow_by_gravity : NAN;
    detail->by_pressure.s = detail->flow_by_pressure > 0 ? volume / detail->flow_by_pressure : NAN;
}

/* The reservoir goes down with what is drawn off and is topped up before it is too low. */
static void fill_reservoir(struct filling *filling, const struct step *step, double drawn,
                           struct bleed_detail *detail)
{
    const struct bleed_nets *nets = filling->nets;
    int master = nets->network->circuits[step->circuit].master;
    int reservoir = reservoir_of(nets->system, master);
    double usable = bleed_usable(nets->system, nets->network, step->circuit).m3;
    double stroke = nets->items[step->circuit].way.stroke;
    detail->reservoir_after.m3 = NAN;
    if (reservoir < 0 || !(usable > 0) || filling->plan->method == METHOD_REVERSE) {
        return; /* backwards it rises, and is drawn low by hand */
    }
    double full = nets->system->parts[reservoir].as.reservoir.capacity.m3;
    double *level = &filling->level[reservoir];
    if (!(*level > 0)) {
        *level = full;
    }
    bool whole = drawn <= *level - (full - usable);
    detail->top_up_every = whole ? 0 : (int)fmax(floor(usable / stroke), 1);
    double portion = detail->top_up_every * stroke;
    while (drawn > *level - (full - usable) && portion > 0 && portion <= usable) {
        drawn -= fmax(*level - (full - usable), 0);
        *level = full;
    }
    *level = fmax(*level - drawn, 0);
    detail->reservoir_after.m3 = *level;
}

static const char *way_up(const struct filling *filling, const struct part *part)
{
    double below = part->fitted.nipple_below.m;
    if (!kind_is_brake(part->kind) && part->kind != KIND_SLAVE) {
        return "on the pipe's way: it needs no turning";
    }
    if (!(below > 0)) {
        return "at the top of its chamber";
    }
    return text_print(filling->arena,
                      "%s below the top: turn the part until the nipple is uppermost",
                      unit_text(filling->arena, below, DIMENSION_LENGTH, UNITS_METRIC));
}

/* The other nipple of a caliper that two circuits work. */
static int with_nipple(const struct filling *filling, const struct step *step)
{
    for (int i = 0; i < filling->set->count; i++) {
        const struct scoped_nipple *item = &filling->set->items[i];
        if (item->nipple.part == step->part && item->nipple.index != step->nipple &&
            item->circuit != step->circuit) {
            return item->nipple.index;
        }
    }
    return -1;
}

static double strokes_for(double volume, double each)
{
    return each > 0 ? fmax(ceil(volume / each - 1e-6), 0) : NAN;
}

/* Less than a drop, m3: no volume to ask for. */
#define NOTHING_TO_DRAW 5e-8

/* A stroke while the tandem's other circuit still holds air, where that makes it less than each;
 * NaN.
 */
static double stroke_in_air(const struct filling *filling, int circuit, double each)
{
    const struct bleed_nets *nets = filling->nets;
    int fellow = bleed_nets_fellow(nets, circuit);
    bool assumed = false;
    if (fellow < 0 || !(filling->air[fellow] > ORDER_AIR_EQUAL)) {
        return NAN;
    }
    struct volume air = {filling->air[fellow]};
    double beside =
        bleed_stroke_beside(nets->system, &nets->network->circuits[circuit], air, &assumed).m3;
    return beside < each * 0.999 ? beside : (double)NAN;
}

static void fill_step(struct filling *filling, struct step *step, const struct purge_done *done,
                      bool renewing)
{
    const struct bleed_nets *nets = filling->nets;
    const struct bleed_net *item = &nets->items[step->circuit];
    const struct circuit *circuit = &nets->network->circuits[step->circuit];
    struct bleed_detail *detail = ARENA_NEW(filling->arena, struct bleed_detail);
    int nipple = bleed_net_nipple(item, (struct nipple){step->part, step->nipple});
    bool known = isfinite(step->run.m), assumed = false;
    double each = bleed_stroke(nets->system, circuit, &assumed).m3;
    detail->stroke_in_air.m3 = stroke_in_air(filling, step->circuit, each);
    detail->path.m3 = known ? purge_path_volume(item->net, nipple) : NAN;
    struct branch branch = branch_of(filling, step->circuit, nipple);
    detail->branch.m3 = branch.volume;
    detail->purge.m3 = done->fluid;
    detail->purge_strokes = each > 0 ? ceil(done->strokes - 1e-6) : NAN;
    detail->renewal.m3 = renewing ? branch.change : limit_value("exchange-volumes") * branch.whole;
    detail->renewal_strokes = strokes_for(detail->renewal.m3, each);
    detail->air_left.m3 = filling->air[step->circuit] = done->air_left;
    detail->gave_up = done->gave_up;
    detail->trapped.m3 = purge_trapped_air_at(item->net, nipple);
    detail->trapped_pedal = bleed_air_at_pedal(
        nets, nipple_vertex(nets->system, nets->network, (struct nipple){step->part, step->nipple}),
        detail->trapped);
    detail->trapped_to_floor = detail->trapped_pedal.m > pedal_end_of(nets->system, circuit);
    detail->way_up = way_up(filling, &nets->system->parts[step->part]);
    detail->with = with_nipple(filling, step);
    /* whole strokes take a little more than the air's volume; where film lets air run ahead, the
     * way is clear before that volume has come, but it is safer to draw all of it */
    double most = fmax(branch.air, done->fluid);
    most = renewing ? fmax(most, detail->renewal.m3) : most;
    fill_flows(filling, step, nipple, most, detail);
    if (!known) {
        detail->branch.m3 = detail->purge.m3 = detail->renewal.m3 = NAN;
        detail->purge_strokes = detail->renewal_strokes = NAN;
        detail->by_gravity.s = detail->by_pressure.s = NAN;
    }
    fill_reservoir(filling, step, most + item->way.clear_strokes * item->way.stroke, detail);
    step->volume.m3 = known ? most : NAN;
    if (step->volume.m3 < NOTHING_TO_DRAW && step->row != step_row_of(STEP_BLEED_AGAIN))
        step->row = step_row_of(STEP_BLEED_CLEAR);
    step->volume_assumed = volumes_assumed(filling, (struct nipple){step->part, step->nipple});
    /* what flows back after a stroke takes strokes, and does not come out */
    step->strokes = known ? fmax(strokes_for(step->volume.m3, each), detail->purge_strokes) : NAN;
    step->bleed = detail;
}

/* The curve of all circuits in turn: as the steps go, each circuit's points of that step. */
static void fill_curve(struct filling *filling, const struct purge_result *const *results,
                       const int *turn_of)
{
    struct bleed_plan *plan = filling->plan;
    int count = 0;
    double air = 0, fluid = 0, strokes = 0;
    for (int c = 0; c < filling->nets->count; c++) {
        count += results[c] != NULL ? results[c]->point_count : 0;
        air += results[c] != NULL && results[c]->point_count > 0 ? results[c]->curve[0].air : 0;
    }
    plan->curve = ARENA_ARRAY(filling->arena, (size_t)count + 1, struct purge_point);
    plan->curve[plan->point_count++] = (struct purge_point){0, 0, air, 0};
    for (size_t s = 0; s < plan->steps.count; s++) {
        const struct step *step = &plan->steps.items[s];
        const struct purge_result *result =
            step->nipple >= 0 && step->circuit >= 0 ? results[step->circuit] : NULL;
        for (int p = 1; result != NULL && p < result->point_count; p++) {
            const struct purge_point *point = &result->curve[p], *before = point - 1;
            if (point->turn != turn_of[s]) {
                continue;
            }
            strokes += point->strokes - before->strokes;
            fluid += point->fluid - before->fluid;
            air += point->air - before->air;
            plan->curve[plan->point_count++] = (struct purge_point){strokes, fluid, air, (int)s};
        }
    }
}

void bleed_details_fill(const struct bleed_nets *nets, const struct bleed_set *set,
                        struct bleed_plan *plan, struct arena *arena)
{
    size_t circuits = (size_t)nets->count + 1;
    struct filling filling = {
        .nets = nets,
        .set = set,
        .plan = plan,
        .arena = arena,
        .drawn = ARENA_ARRAY(arena, circuits, bool *),
        .drawn_pot = ARENA_ARRAY(arena, circuits, bool *),
        .level = ARENA_ARRAY(arena, (size_t)nets->system->part_count + 1, double),
        .turn = ARENA_ARRAY(arena, circuits, int),
        .air = ARENA_ARRAY(arena, circuits, double),
    };
    const struct purge_result **results = ARENA_ARRAY(arena, circuits, const struct purge_result *);
    struct nipple *order = ARENA_ARRAY(arena, plan->steps.count + 1, struct nipple);
    int *turn_of = ARENA_ARRAY(arena, plan->steps.count + 1, int), count = 0;
    for (size_t s = 0; s < plan->steps.count; s++) {
        if (plan->steps.items[s].nipple >= 0) {
            order[count++] =
                (struct nipple){plan->steps.items[s].part, plan->steps.items[s].nipple};
        }
    }
    for (int c = 0; c < nets->count; c++) {
        const struct purge_net *net = nets->items[c].net;
        filling.air[c] = bleed_net_air(&nets->items[c]);
        if (net != NULL) {
            filling.drawn[c] = ARENA_ARRAY(arena, (size_t)net->leg_count + 1, bool);
            filling.drawn_pot[c] = ARENA_ARRAY(arena, (size_t)net->pot_count + 1, bool);
            results[c] = bleed_nets_run(nets, c, order, count);
        }
    }
    bool renewing = fluid_is_renewed(nets->system);
    for (size_t s = 0; s < plan->steps.count; s++) {
        struct step *step = &plan->steps.items[s];
        if (step->nipple < 0) {
            continue;
        }
        turn_of[s] = filling.turn[step->circuit]++;
        fill_step(&filling, step, &results[step->circuit]->turns[turn_of[s]], renewing);
    }
    fill_curve(&filling, results, turn_of);
}
