#include "physics/balance.h"

#include <math.h>

#include "physics/root.h"
#include "units/constants.h"

#define MOST_EFFORT      2000.0
#define EFFORT_TOLERANCE 1e-6

struct locking {
    const struct system *system;
    const struct network *network;
    struct state state;
    double grip;
    struct solution *room;
    bool rear;
};

static double lock_excess(double effort, void *context)
{
    struct locking *locking = context;
    locking->state.effort.n = effort;
    solve_forces(locking->system, locking->network, &locking->state, locking->room);
    double z = locking->room->deceleration.m_s2 / STANDARD_GRAVITY;
    struct axle_loads loads = vehicle_axle_loads(system_vehicle(locking->system), z);
    return locking->rear ? locking->room->rear.n - locking->grip * loads.rear.n
                         : locking->room->front.n - locking->grip * loads.front.n;
}

/* Deceleration and effort at which the axle locks; infinite when it never does, NaN when nobody
 * knows. */
struct locks {
    double deceleration, effort;
};

static struct locks locks_at(struct locking *locking)
{
    double at_most = lock_excess(MOST_EFFORT, locking);
    if (isnan(at_most))
        return (struct locks){NAN, NAN};
    if (!(at_most > 0))
        return (struct locks){INFINITY, NAN};
    struct root root = root_between(lock_excess, locking, 0, MOST_EFFORT, EFFORT_TOLERANCE);
    if (!root.bracketed)
        return (struct locks){NAN, NAN};
    (void)lock_excess(root.fails, locking);
    return (struct locks){locking->room->deceleration.m_s2, root.fails};
}

struct lock_order balance_lock_order(const struct system *system, const struct network *network,
                                     const struct state *state, struct number grip,
                                     struct solution *room)
{
    struct locking locking = {system, network, *state, grip.value, room, false};
    struct locks in_front = locks_at(&locking);
    locking.rear = true;
    struct locks behind = locks_at(&locking);
    double front = in_front.deceleration, rear = behind.deceleration;
    struct lock_order order = {.front_at = {isinf(front) ? NAN : front},
                               .rear_at = {isinf(rear) ? NAN : rear},
                               .front_effort = {in_front.effort},
                               .rear_effort = {behind.effort}};
    order.known = !isnan(front) && !isnan(rear) && (isfinite(front) || isfinite(rear));
    order.rear_first = order.known && rear < front;
    return order;
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

/* Torque with which one brake holds against rolling back. */
static double holding_torque(const struct system *system, int brake, struct force at_shoes,
                             struct solution *room)
{
    const struct part *part = &system->parts[brake];
    if (part->kind == KIND_DRUM) {
        return at_shoes.n * solution_drum_factor(system, brake, false, room) *
               part->as.drum.diameter.m / 2;
    }
    if (part->kind == KIND_DISC) {
        const struct disc *disc = &part->as.disc;
        return 2 * disc->friction.value * at_shoes.n * disc_radius(disc).m;
    }
    return NAN;
}

/* Slope on which the braked wheels begin to slide. */
static double grip_slope(const struct vehicle *vehicle, bool front, bool rear)
{
    double mu = vehicle->tyre_grip.value, rear_share = 1 - vehicle->front_share.of_1;
    double chi = vehicle->centre_height.m / vehicle->wheelbase.m;
    if (front && rear)
        return mu;
    if (front)
        return mu * (1 - rear_share) / (1 + mu * chi);
    double rest = 1 - mu * chi;
    return rest > 0 ? mu * rear_share / rest : isnan(rest) ? NAN : INFINITY;
}

double balance_hand_brake_slope(const struct system *system, int parking, struct solution *room)
{
    const struct parking *data = &system->parts[parking].as.parking;
    const struct vehicle *vehicle = system_vehicle(system);
    struct force at_shoes = parking_shoe_force(data);
    double pull = 0;
    bool front = false, rear = false;
    for (size_t i = 0; i < data->works.count; i++) {
        if (data->works.parts[i] < 0)
            return NAN;
        int brake = data->works.parts[i];
        enum axle axle = system->parts[brake].axle;
        pull +=
            holding_torque(system, brake, at_shoes, room) / solution_tyre_radius(vehicle, axle).m;
        front = front || axle == AXLE_FRONT;
        rear = rear || axle == AXLE_REAR;
    }
    double sine = pull / (vehicle->mass.kg * STANDARD_GRAVITY);
    double by_grip = grip_slope(vehicle, front, rear);
    if (!(sine >= 0) || isnan(by_grip))
        return NAN;
    double by_brakes = sine < 1 ? tan(asin(sine)) : INFINITY;
    double slope = fmin(by_brakes, by_grip);
    return isfinite(slope) ? slope : NAN;
}
