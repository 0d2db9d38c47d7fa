#include "physics/balance.h"

#include <math.h>

#include "physics/drum_memory.h"
#include "physics/pressure.h"
#include "physics/root.h"
#include "units/constants.h"

#define EFFORT_TOLERANCE 1e-6

/* The pedal of a brake's first circuit, -1 without one. */
static int pedal_of_brake(const struct system *system, const struct network *network, int brake,
                          int inlet)
{
    int vertex = network_vertex(network, brake, inlet);
    int circuit = vertex < 0 ? -1 : network->vertices[vertex].circuit;
    return circuit < 0 ? -1 : pressure_pedal_of(system, network->circuits[circuit].master);
}

struct axle_pedals balance_axle_pedals(const struct system *system, const struct network *network)
{
    enum { NOT_SEEN = -2 };
    int pedals[GRIP_AXLES] = {NOT_SEEN, NOT_SEEN};
    for (int i = 0; i < system->part_count; i++) {
        const struct part *part = &system->parts[i];
        if (!kind_is_brake(part->kind))
            continue;
        int *seen = &pedals[part->axle == AXLE_FRONT ? GRIP_FRONT : GRIP_REAR];
        for (int inlet = 0; inlet < part_chambers(part); inlet++) {
            int pedal = pedal_of_brake(system, network, i, inlet);
            *seen = *seen == NOT_SEEN || *seen == pedal ? pedal : -1;
        }
    }
    int front = pedals[GRIP_FRONT], rear = pedals[GRIP_REAR];
    return (struct axle_pedals){front < 0 ? -1 : front, rear < 0 ? -1 : rear,
                                front >= 0 && rear >= 0 && front != rear};
}

struct locking {
    const struct system *system;
    const struct network *network;
    struct state state;
    double grip, lifts; /* the latter as a braking rate */
    struct solution *room;
    struct grip_use use;
    struct axle_loads loads;
};

/* What an axle asks for beyond the grip, over the weight: without an end where it leaves the road,
 * unlike what it asks over its load. */
static double beyond_grip(double use, double load, double brakes, double grip)
{
    return load > 0 || isnan(load) ? (use - grip) * load : brakes;
}

static double lock_excess(double effort, void *context)
{
    struct locking *locking = context;
    struct solution *room = locking->room;
    locking->state.effort.n = effort;
    solve_forces(locking->system, locking->network, &locking->state, room);
    const struct vehicle *vehicle = system_vehicle(locking->system);
    struct wheel_forces wheels = wheel_forces_of(locking->system, room);
    locking->use = grip_use_of_wheels(vehicle, &wheels);
    locking->loads = vehicle_axle_loads(vehicle, locking->use.z);
    double weight = vehicle->mass.kg * STANDARD_GRAVITY;
    double front =
        beyond_grip(locking->use.front, locking->loads.front.n, room->front.n, locking->grip);
    double rear =
        beyond_grip(locking->use.rear, locking->loads.rear.n, room->rear.n, locking->grip);
    if (isnan(front) || isnan(rear))
        return NAN;
    return fmax(fmax(front, rear) / weight, locking->use.z - locking->lifts);
}

/* Nearer than that both axles lock together. */
#define TOGETHER 1e-9

struct first_lock balance_first_lock(const struct system *system, const struct network *network,
                                     const struct state *state, struct number grip,
                                     struct solution *room)
{
    struct first_lock lock = {.axle = AXLE_NONE,
                              .at = {NAN},
                              .effort = {NAN},
                              .loads = {{NAN}, {NAN}},
                              .front = NAN,
                              .rear = NAN};
    struct locking locking = {.system = system, .network = network, .state = *state, .room = room};
    locking.grip = grip.value;
    locking.lifts = vehicle_lifts_at(system_vehicle(system)).m_s2 / STANDARD_GRAVITY;
    double at_most = lock_excess(MOST_EFFORT, &locking);
    lock.known = !isnan(at_most);
    if (!(at_most > 0))
        return lock;
    struct root root = root_between(lock_excess, &locking, 0, MOST_EFFORT, EFFORT_TOLERANCE);
    if (!root.bracketed) /* it rolls harder than the road holds */
        return lock;
    (void)lock_excess(root.fails, &locking);
    lock.front = locking.use.front / grip.value;
    lock.rear = locking.use.rear / grip.value;
    lock.lifts = !(fmax(lock.front, lock.rear) > 1 - TOGETHER);
    if (lock.lifts)
        return lock;
    lock.axle = lock.rear > lock.front * (1 + TOGETHER) ? AXLE_REAR : AXLE_FRONT;
    lock.at = room->deceleration;
    lock.effort.n = root.fails;
    lock.loads = locking.loads;
    return lock;
}

struct share balance_side_difference(const struct system *system, const struct solution *solution,
                                     enum axle axle)
{
    double sides[2] = {0, 0};
    bool present[2] = {false, false};
    for (int i = 0; i < system->part_count; i++) {
        const struct part *part = &system->parts[i];
        if (!kind_is_brake(part->kind) || part->axle != axle || part->side == SIDE_NONE)
            continue;
        int at = part->side == SIDE_LEFT ? 0 : 1;
        sides[at] += solution->brakes[i].force.n;
        present[at] = true;
    }
    if (!present[0] || !present[1] || isnan(sides[0]) || isnan(sides[1]))
        return (struct share){NAN};
    double stronger = fmax(sides[0], sides[1]), weaker = fmin(sides[0], sides[1]);
    return (struct share){stronger > 0 ? 1 - weaker / stronger : NAN};
}

/* Shoes of a drum at rest; the room remembers them where friction at rest is that of moving. */
static struct shoe_factors holding_shoes(const struct system *system, const struct parking *parking,
                                         int brake, bool forward, struct solution *room)
{
    const struct drum *drum = &system->parts[brake].as.drum;
    if (parking->holding.value == 1) {
        const struct drum_memory *kept = drum_remembered(system, brake, room);
        return forward ? kept->ahead : kept->back;
    }
    if (!(parking->holding.value > 0))
        return (struct shoe_factors){NAN, NAN, NAN};
    return drum_shoe_factors(drum, (struct number){drum->friction.value * parking->holding.value},
                             forward);
}

/* Torque with which one brake holds against rolling forward or back. */
static double holding_torque(const struct system *system, const struct parking *parking, int brake,
                             bool forward, struct solution *room)
{
    const struct part *part = &system->parts[brake];
    double at_shoes = parking_shoe_force(parking).n;
    if (part->kind == KIND_DRUM) {
        struct shoe_factors shoes = holding_shoes(system, parking, brake, forward, room);
        double factor = parking_drum_factor(parking, shoes, part->as.drum.shoes, forward);
        return at_shoes * factor * part->as.drum.diameter.m / 2;
    }
    if (part->kind == KIND_DISC) {
        const struct disc *disc = &part->as.disc;
        double friction = disc->friction.value * parking->holding.value;
        return 2 * friction * at_shoes * disc_radius(disc).m;
    }
    return NAN;
}

/* Slope on which the braked wheels begin to slide. Facing up the load goes to the rear wheels. */
static double grip_slope(const struct vehicle *vehicle, bool front, bool rear, enum facing facing)
{
    double mu = vehicle->tyre_grip.value, front_share = vehicle->front_share.of_1;
    double chi = vehicle->centre_height.m / vehicle->wheelbase.m;
    if (front && rear)
        return mu;
    bool loaded = (facing == FACING_UP) == rear;
    double rest = loaded ? 1 - mu * chi : 1 + mu * chi;
    return rest > 0      ? mu * (rear ? 1 - front_share : front_share) / rest
           : isnan(rest) ? NAN
                         : INFINITY;
}

double balance_hand_brake_slope(const struct system *system, int parking, enum facing facing,
                                struct solution *room)
{
    const struct parking *data = &system->parts[parking].as.parking;
    const struct vehicle *vehicle = system_vehicle(system);
    double pull = 0;
    bool front = false, rear = false;
    for (size_t i = 0; i < data->works.count; i++) {
        int brake = data->works.parts[i];
        if (brake < 0)
            return NAN;
        enum axle axle = system->parts[brake].axle;
        pull += holding_torque(system, data, brake, facing == FACING_DOWN, room) /
                solution_tyre_radius(vehicle, axle).m;
        front = front || axle == AXLE_FRONT;
        rear = rear || axle == AXLE_REAR;
    }
    double sine = pull / (vehicle->mass.kg * STANDARD_GRAVITY);
    double by_grip = grip_slope(vehicle, front, rear, facing);
    if (!(sine >= 0) || isnan(by_grip))
        return NAN;
    double by_brakes = sine < 1 ? tan(asin(sine)) : INFINITY;
    double slope = fmin(by_brakes, by_grip);
    return isfinite(slope) ? slope : NAN;
}

double balance_hand_brake_clicks(const struct system *system, int parking)
{
    struct parking pulled = system->parts[parking].as.parking;
    pulled.effort.n = PARKING_CLICKS_EFFORT;
    const struct parking *data = &pulled;
    double sum = 0;
    if (data->works.count == 0)
        return NAN;
    for (size_t i = 0; i < data->works.count; i++) {
        if (data->works.parts[i] < 0)
            return NAN;
        const struct part *part = &system->parts[data->works.parts[i]];
        if (part->kind == KIND_DRUM)
            sum += parking_drum_pull(data, &part->as.drum).m;
        else if (part->kind == KIND_DISC)
            sum += parking_disc_pull(data, &part->as.disc).m;
        else
            return NAN;
    }
    return parking_clicks(data, (struct length){sum / (double)data->works.count});
}

/* Pedal travel for each volume that leaves the master of a circuit, 1/m2. */
static double pedal_per_volume(const struct system *system, const struct network *network,
                               int circuit)
{
    int master = circuit < 0 ? -1 : network->circuits[circuit].master;
    int pedal = master < 0 ? -1 : pressure_pedal_of(system, master);
    if (pedal < 0)
        return NAN;
    const struct pedal *data = &system->parts[pedal].as.pedal;
    double share = 1;
    if (data->works.count == 2) {
        double first = pedal_bar_share(data).of_1;
        share = pressure_worked_master(system, pedal, 0) == master ? first : 1 - first;
    }
    return pedal_ratio(data).value * share / master_area(&system->parts[master].as.master).m2;
}

struct length balance_pedal_lost(const struct system *system, const struct network *network,
                                 int parking)
{
    const struct parking *data = &system->parts[parking].as.parking;
    double sum = 0;
    for (size_t i = 0; i < data->works.count; i++) {
        int brake = data->works.parts[i];
        if (brake < 0)
            return (struct length){NAN};
        if (system->parts[brake].kind != KIND_DRUM)
            continue;
        int vertex = network_vertex(network, brake, 0);
        int circuit = vertex < 0 ? -1 : network->vertices[vertex].circuit;
        double tips = 2 * circle_area(system->parts[brake].as.drum.bore).m2 * data->holds_off.m;
        sum += tips * pedal_per_volume(system, network, circuit);
    }
    return (struct length){sum};
}
