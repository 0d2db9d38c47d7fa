#include "physics/press.h"

#include <math.h>

#include "physics/pressure.h"
#include "physics/travel.h"

enum { MOST_MASTERS = 2 };

static int circuit_of(const struct network *network, int master, int chamber)
{
    for (int i = 0; i < network->circuit_count; i++)
        if (network->circuits[i].master == master && network->circuits[i].chamber == chamber)
            return i;
    return -1;
}

static bool feeds_brake(const struct network *network, int master)
{
    for (int i = 0; i < network->circuit_count; i++)
        if (network->circuits[i].master == master && !network->circuits[i].clutch)
            return true;
    return false;
}

bool press_is_brake(const struct system *system, const struct network *network, int pedal)
{
    if (system->parts[pedal].kind != KIND_PEDAL)
        return false;
    for (size_t i = 0; i < system->parts[pedal].as.pedal.works.count; i++) {
        int master = pressure_worked_master(system, pedal, i);
        if (master >= 0 && feeds_brake(network, master))
            return true;
    }
    return false;
}

/* A master and its pistons in one state. */
struct pistons {
    const struct system *system;
    const struct network *network;
    const struct state *state;
    const struct master *data;
    int master, count;
    int circuits[2]; /* by chamber; -1: nothing is joined to it */
    bool lost[2];
};

static struct pistons pistons_of(const struct system *system, const struct network *network,
                                 const struct state *state, int master)
{
    struct pistons pistons = {system, network, state,    &system->parts[master].as.master,
                              master, 1,       {-1, -1}, {0}};
    pistons.count = pistons.data->type == MASTER_TANDEM ? 2 : 1;
    for (int chamber = 0; chamber < pistons.count; chamber++) {
        int circuit = circuit_of(network, master, chamber);
        pistons.circuits[chamber] = circuit;
        pistons.lost[chamber] = circuit >= 0 && circuit == state->lost_circuit;
    }
    return pistons;
}

static void spread(const struct pistons *pistons, const struct master_pressures *made,
                   struct solution *into)
{
    for (int chamber = 0; chamber < pistons->count; chamber++) {
        int circuit = pistons->circuits[chamber];
        if (circuit < 0)
            continue;
        into->circuits[circuit].pressure =
            pistons->lost[chamber] ? (struct pressure){0} : made->of[chamber];
        pressure_spread(pistons->system, pistons->network, circuit,
                        into->circuits[circuit].pressure, pistons->state->assisted,
                        into->pressures);
    }
}

static struct master_pressures make(const struct pistons *pistons, struct force rod)
{
    enum master_loss loss = MASTER_WHOLE;
    if (pistons->lost[0])
        loss = MASTER_FIRST_LOST;
    else if (pistons->lost[1])
        loss = MASTER_SECOND_LOST;
    return master_pressures(pistons->data, rod, loss);
}

struct force press_pressures(const struct system *system, const struct network *network,
                             const struct state *state, int pedal, struct force effort,
                             struct solution *into)
{
    struct force sum = {0};
    for (size_t i = 0; i < system->parts[pedal].as.pedal.works.count; i++) {
        int master = pressure_worked_master(system, pedal, i);
        if (master < 0)
            return (struct force){NAN};
        struct force rod = pressure_rod_force(system, master, effort, state->assisted);
        struct pistons pistons = pistons_of(system, network, state, master);
        struct master_pressures made = make(&pistons, rod);
        sum.n += rod.n;
        spread(&pistons, &made, into);
    }
    return sum;
}

/* The outlet of a remote servo in a circuit, -1 without. */
static int remote_outlet(const struct pistons *pistons, int circuit)
{
    const struct network *network = pistons->network;
    for (int i = 0; i < network->edge_count; i++) {
        const struct edge *edge = &network->edges[i];
        if (edge->circuit == circuit && edge->kind == EDGE_PASSAGE &&
            pistons->system->parts[edge->part].kind == KIND_SERVO)
            return edge->b;
    }
    return -1;
}

/* The master sends less than a remote servo's piston sweeps, since the diaphragm's rod follows it,
 * and something for the servo's own valve. What passed before the servo helped came whole. */
static void take_off_rod(const struct pistons *pistons, int circuit, struct solution *into)
{
    int out = remote_outlet(pistons, circuit);
    if (out < 0)
        return;
    const struct network *network = pistons->network;
    const struct vertex *outlet = &network->vertices[out];
    const struct servo *servo = &pistons->system->parts[outlet->part].as.servo;
    bool assisted = pistons->state->assisted, passes = servo->passes != NO;
    bool helps = servo_line_helps(servo, into->pressures[outlet->parent], assisted);
    if (passes && !helps)
        return;
    struct volume beyond[CAUSE_COUNT], passed[CAUSE_COUNT] = {{0}};
    travel_volumes_beyond(pistons->system, network, out, into->pressures, pistons->state, beyond);
    if (passes) {
        struct pressure now = into->pressures[out];
        pressure_spread_beyond(pistons->system, network, out, servo->line_cut_in, assisted,
                               into->pressures);
        travel_volumes_beyond(pistons->system, network, out, into->pressures, pistons->state,
                              passed);
        pressure_spread_beyond(pistons->system, network, out, now, assisted, into->pressures);
    }
    struct circuit_state *taken = &into->circuits[circuit];
    double rod = 1 - servo_area_before(servo);
    for (int cause = 0; cause < CAUSE_COUNT; cause++)
        taken->by_cause[cause].m3 -= rod * (beyond[cause].m3 - passed[cause].m3);
    if (helps)
        taken->by_cause[CAUSE_CLEARANCE].m3 += servo->valve_volume.m3;
}

static void take_volumes(const struct pistons *pistons, int circuit, struct solution *into)
{
    struct circuit_state *taken = &into->circuits[circuit];
    travel_volumes(pistons->system, pistons->network, circuit, into->pressures, pistons->state,
                   taken->by_cause);
    take_off_rod(pistons, circuit, into);
    taken->volume.m3 = 0;
    for (int cause = 0; cause < CAUSE_COUNT; cause++)
        taken->volume.m3 += taken->by_cause[cause].m3;
}

/* What of the volumes the large bore of a stepped master has delivered, by chamber and cause. */
struct taken_up {
    bool any;
    double by_cause[2][CAUSE_COUNT];
};

/* The large bore delivers until its pressure is reached: all volumes at that pressure. It gives
 * nothing that counts where the first circuit is lost. */
static struct taken_up take_up(const struct pistons *pistons, struct solution *into)
{
    struct taken_up up = {.any = master_is_stepped(pistons->data) && !pistons->lost[0]};
    int first = pistons->circuits[0];
    if (!up.any || first < 0)
        return up;
    struct pressure now[2] = {into->circuits[first].pressure, {NAN}};
    if (pistons->count == 2 && pistons->circuits[1] >= 0)
        now[1] = into->circuits[pistons->circuits[1]].pressure;
    bool still = now[0].pa <= pistons->data->take_up.pa;
    if (!still) {
        struct master_pressures made =
            make(pistons, master_rod_force(pistons->data, pistons->data->take_up));
        spread(pistons, &made, into);
    }
    for (int chamber = 0; chamber < pistons->count; chamber++) {
        int circuit = pistons->circuits[chamber];
        if (circuit < 0)
            continue;
        take_volumes(pistons, circuit, into);
        for (int cause = 0; cause < CAUSE_COUNT; cause++)
            up.by_cause[chamber][cause] = into->circuits[circuit].by_cause[cause].m3;
    }
    if (!still) {
        struct master_pressures back = {{now[0], now[1]}};
        spread(pistons, &back, into);
    }
    return up;
}

/* What one circuit takes of the rod's travel. Gives their sum. */
static double rod_for(const struct pistons *pistons, int chamber, const struct taken_up *up,
                      struct solution *into)
{
    const struct master *data = pistons->data;
    int circuit = pistons->circuits[chamber];
    if (circuit < 0)
        return master_own_cut_off(pistons->data, chamber)
            .m; /* nothing is joined to it: it only shuts its port */
    struct circuit_state *taken = &into->circuits[circuit];
    double area = master_area(data).m2, large = master_take_up_area(data).m2;
    take_volumes(pistons, circuit, into);
    bool lost = pistons->lost[chamber];
    double full = master_full_stroke(pistons->data, chamber).m;
    /* The second piston is driven to its end by fluid, which the large bore delivers. */
    double way = up->any ? data->cut_off.m + (full - data->cut_off.m) * area / large : full;
    taken->rod_cut_off.m = lost ? 0 : master_own_cut_off(pistons->data, chamber).m;
    taken->rod_lost.m = lost ? way : 0;
    double sum = taken->rod_cut_off.m + taken->rod_lost.m;
    for (int cause = 0; cause < CAUSE_COUNT; cause++) {
        double volume = taken->by_cause[cause].m3, rod = volume / area;
        if (up->any)
            rod = up->by_cause[chamber][cause] / large +
                  (volume - up->by_cause[chamber][cause]) / area;
        taken->rod_by_cause[cause].m = lost ? 0 : rod;
        sum += taken->rod_by_cause[cause].m;
    }
    return sum;
}

/* How far the pistons themselves go. */
static void set_strokes(const struct pistons *pistons, const struct taken_up *up, double rod,
                        struct solution *into)
{
    const struct master *data = pistons->data;
    double area = master_area(data).m2, second = 0;
    for (int chamber = pistons->count - 1; chamber >= 0; chamber--) {
        int circuit = pistons->circuits[chamber];
        double stroke = master_own_cut_off(pistons->data, chamber).m;
        if (circuit >= 0) {
            struct circuit_state *taken = &into->circuits[circuit];
            if (pistons->lost[chamber])
                stroke = master_full_stroke(pistons->data, chamber).m;
            else
                stroke = master_own_cut_off(pistons->data, chamber).m + taken->volume.m3 / area;
            if (up->any && chamber == 0) /* against the second, the rod being ahead of its fluid */
                stroke = rod - second;
            taken->stroke.m = stroke;
        }
        if (chamber == 1)
            second = stroke;
    }
}

/* Greater of two that may be unknown: an unknown end of a bore is no end. */
static double known_most(double a, double b)
{
    return fmax(a, b); /* fmax passes over a NaN */
}

/* By how much the pistons need more than their strokes. A lost one stands at its end, and that is
 * counted. */
static double past_bore(const struct pistons *pistons, const struct solution *into)
{
    double past = NAN, sum = 0;
    bool any_lost = false;
    for (int chamber = 0; chamber < pistons->count; chamber++) {
        int circuit = pistons->circuits[chamber];
        double stroke = circuit < 0 ? master_own_cut_off(pistons->data, chamber).m
                                    : into->circuits[circuit].stroke.m;
        double own = pistons->lost[chamber] ? -INFINITY
                                            : stroke - master_full_stroke(pistons->data, chamber).m;
        any_lost = any_lost || pistons->lost[chamber];
        past = known_most(past, own);
        sum += stroke;
    }
    return any_lost ? past : known_most(past, sum - pistons->data->stroke.m);
}

static bool is_assumed(const struct part *part, size_t field)
{
    return part_origin(part, field)->kind == ORIGIN_ASSUMED;
}

struct length press_rod_gap(const struct system *system, int master)
{
    int servo = pressure_servo_of(system, master);
    struct length of_master = system->parts[master].as.master.rod_gap;
    if (servo < 0 || isnan(system->parts[servo].as.servo.rod_gap.m))
        return of_master;
    bool only_master = !isnan(of_master.m) &&
                       !is_assumed(&system->parts[master], FIELD(as.master.rod_gap)) &&
                       is_assumed(&system->parts[servo], FIELD(as.servo.rod_gap));
    return only_master ? of_master : system->parts[servo].as.servo.rod_gap;
}

struct length press_free_play(const struct pedal *pedal)
{
    return (struct length){isnan(pedal->free_play.m) ? 0 : pedal->free_play.m};
}

struct length press_own_gap(const struct system *system, int master)
{
    int pedal = pressure_pedal_of(system, master);
    bool felt = pedal >= 0 && !isnan(system->parts[pedal].as.pedal.free_play.m) &&
                pressure_servo_of(system, master) < 0;
    return felt ? (struct length){0} : press_rod_gap(system, master);
}

struct length press_lost_motion(const struct system *system, int master, bool assisted)
{
    int at = pressure_servo_of(system, master);
    if (at < 0)
        return (struct length){0};
    const struct servo *servo = &system->parts[at].as.servo;
    return assisted ? servo->lost_motion : servo->lost_without;
}

/* Travel of the rod that pushes a master or its servo, its own gap included. */
static double master_travel(const struct system *system, const struct network *network,
                            const struct state *state, int master, struct solution *into,
                            double *past)
{
    struct pistons pistons = pistons_of(system, network, state, master);
    struct taken_up up = take_up(&pistons, into);
    double rod = 0;
    for (int chamber = 0; chamber < pistons.count; chamber++)
        rod += rod_for(&pistons, chamber, &up, into);
    set_strokes(&pistons, &up, rod, into);
    *past = past_bore(&pistons, into);
    return press_own_gap(system, master).m + press_lost_motion(system, master, state->assisted).m +
           rod;
}

/* Whether the pedal's only piston has lost its circuit. */
static bool is_dead(const struct system *system, const struct network *network,
                    const struct state *state, int pedal)
{
    if (state->lost_circuit < 0 || system->parts[pedal].as.pedal.works.count != 1)
        return false;
    int master = pressure_worked_master(system, pedal, 0);
    return network->circuits[state->lost_circuit].master == master &&
           system->parts[master].as.master.type == MASTER_SINGLE;
}

struct reach press_travel(const struct system *system, const struct network *network,
                          const struct state *state, int pedal, struct force effort,
                          struct solution *into)
{
    const struct pedal *data = &system->parts[pedal].as.pedal;
    struct reach reach = {{NAN}, {NAN}, {NAN}, {NAN}, {NAN}, {NAN}, false};
    size_t masters = data->works.count;
    if (masters < 1 || masters > MOST_MASTERS)
        return reach;
    reach.rod = press_pressures(system, network, state, pedal, effort, into);
    double travels[MOST_MASTERS] = {NAN, NAN};
    for (size_t i = 0; i < masters; i++) {
        int master = pressure_worked_master(system, pedal, i);
        double past = NAN;
        if (master >= 0)
            travels[i] = master_travel(system, network, state, master, into, &past);
        reach.past_bore.m = known_most(reach.past_bore.m, past);
    }
    reach.rod_travel.m = travels[0];
    if (masters == MOST_MASTERS) {
        double share = pedal_bar_share(data).of_1;
        reach.rod_travel.m = share * travels[0] + (1 - share) * travels[1];
        reach.tilt.rad = atan((travels[0] - travels[1]) / (data->bar_first.m + data->bar_second.m));
    }
    reach.travel.m = press_free_play(data).m + pedal_ratio(data).value * reach.rod_travel.m +
                     effort.n / data->stiffness.n_m;
    reach.past_floor.m = reach.travel.m - pedal_end(data).m;
    reach.dead = is_dead(system, network, state, pedal);
    return reach;
}
