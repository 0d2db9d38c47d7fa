#include "advice/rules/rule_values.h"

#include <math.h>
#include <string.h>

#include "network/belonging.h"
#include "advice/figures/grip_rates.h"
#include "advice/figures/holds.h"
#include "advice/rules/rule_stop.h"
#include "physics/press.h"
#include "physics/pressure.h"
#include "units/constants.h"

#define MOST_LBF_150 (150 * 4.4482216152605)
/* Common practice, no source: the time in which a foot presses. */
#define BUILD_UP 0.3

static void press(const struct rule_car *car, double effort, bool assisted, int lost)
{
    struct state state = state_usual();
    state.effort.n = effort;
    state.assisted = assisted;
    state.lost_circuit = lost;
    solve(car->system, car->network, &state, car->room);
}

static double slows(const struct rule_car *car, double effort, bool assisted, int lost)
{
    return rule_stop_at(car->system, car->network, effort, assisted, lost, car->room).m_s2;
}

/* The least of all circuits lost one by one. */
static double slows_with_one_lost(const struct rule_car *car, double effort)
{
    double least = NAN;
    for (int c = 0; c < car->network->circuit_count; c++) {
        if (car->network->circuits[c].clutch)
            continue;
        double left = slows(car, effort, true, c);
        if (isnan(left))
            return NAN;
        least = isnan(least) ? left : fmin(least, left);
    }
    return least;
}

static double distance(double speed, double deceleration)
{
    return vehicle_stopping_distance((struct speed){speed}, (struct acceleration){deceleration},
                                     (struct duration){0}, (struct duration){BUILD_UP})
        .m;
}

/* Brake force of an axle on rollers: a wheel that locks brakes no more than grip times what stands
 * on it. */
static double on_rollers(const struct rule_car *car, int axle)
{
    const struct vehicle *vehicle = system_vehicle(car->system);
    struct wheel_forces wheels = wheel_forces_of(car->system, car->room);
    struct axle_loads loads = vehicle_axle_loads(vehicle, 0);
    double wheel = (axle == GRIP_FRONT ? loads.front.n : loads.rear.n) / 2, sum = 0;
    double most = vehicle->tyre_grip.value * wheel;
    for (int side = 0; side < 2; side++)
        sum += isnan(most) || isnan(wheels.at[axle][side].n) ? NAN
                                                             : fmin(wheels.at[axle][side].n, most);
    return sum;
}

RULE_VALUE(rule_share_of_weight)
{
    press(car, argument, true, -1);
    double weight = system_vehicle(car->system)->mass.kg * STANDARD_GRAVITY;
    return (on_rollers(car, GRIP_FRONT) + on_rollers(car, GRIP_REAR)) / weight;
}

RULE_VALUE(rule_deceleration)
{
    return slows(car, argument, true, -1);
}

RULE_VALUE(rule_secondary)
{
    double left = slows_with_one_lost(car, argument);
    double parking = rule_parking_deceleration(car, 0);
    return isnan(parking) ? left : isnan(left) ? NAN : fmax(left, parking);
}

RULE_VALUE(rule_unassisted)
{
    return slows(car, argument, false, -1);
}

RULE_VALUE(rule_left_of_service)
{
    double left = slows_with_one_lost(car, argument), whole = slows(car, argument, true, -1);
    return whole > 0 ? left / whole : NAN;
}

static double over_load(const struct rule_car *car, double effort, int axle)
{
    press(car, effort, true, -1);
    struct axle_loads loads = vehicle_axle_loads(system_vehicle(car->system), 0);
    return on_rollers(car, axle) / (axle == GRIP_FRONT ? loads.front.n : loads.rear.n);
}

RULE_VALUE(rule_front_over_load)
{
    return over_load(car, argument, GRIP_FRONT);
}

RULE_VALUE(rule_rear_over_load)
{
    return over_load(car, argument, GRIP_REAR);
}

/* The greatest share of its travel that a foot pedal uses. */
RULE_VALUE(rule_pedal_used)
{
    double most = NAN;
    press(car, argument, true, -1);
    for (int i = 0; i < car->system->part_count; i++) {
        if (!press_is_brake(car->system, car->network, i) ||
            car->system->parts[i].as.pedal.type == PEDAL_HAND)
            continue;
        double used = car->room->pedals[i].travel.m / car->system->parts[i].as.pedal.travel.m;
        if (isnan(used))
            return NAN;
        most = fmax(most, used);
    }
    return most;
}

RULE_VALUE(rule_pedal_left)
{
    return 1 - rule_pedal_used(car, argument);
}

RULE_VALUE(rule_distance)
{
    return distance(argument, slows(car, RULE_EFFORT, true, -1));
}

RULE_VALUE(rule_distance_secondary)
{
    return distance(argument, slows_with_one_lost(car, RULE_EFFORT));
}

RULE_VALUE(rule_distance_unassisted)
{
    return distance(argument, slows(car, RULE_EFFORT, false, -1));
}

RULE_VALUE(rule_distance_60mph)
{
    (void)argument;
    return distance(60 * 0.44704, slows(car, MOST_LBF_150, true, -1));
}

/* The lesser of facing up and down, of the parking brake that holds more. */
RULE_VALUE(rule_parking_slope)
{
    (void)argument;
    double most = NAN;
    for (int i = 0; i < car->system->part_count; i++) {
        if (car->system->parts[i].kind != KIND_PARKING)
            continue;
        const char *name = car->system->parts[i].name;
        const struct figure *up = figures_find(car->figures, "hand-brake-slope", name);
        const struct figure *down = figures_find(car->figures, "hand-brake-slope-down", name);
        if (up == NULL || down == NULL || isnan(up->value) || isnan(down->value))
            return NAN;
        most = fmax(most, fmin(up->value, down->value));
    }
    return most;
}

RULE_VALUE(rule_parking_share)
{
    double slope = rule_parking_slope(car, argument);
    return slope / sqrt(1 + slope * slope);
}

RULE_VALUE(rule_parking_deceleration)
{
    return rule_parking_share(car, argument) * STANDARD_GRAVITY;
}

static double figure_now(const struct rule_car *car, const char *id)
{
    const struct figure *figure = figures_find(car->figures, id, NULL);
    return figure == NULL || holds_spoiled(figure) ? NAN : figure->value;
}

RULE_VALUE(rule_side_difference)
{
    (void)argument;
    double worst =
        fmax(figure_now(car, "side-difference-front"), figure_now(car, "side-difference-rear"));
    return worst > 0 ? worst : NAN; /* sides that are described alike say nothing of the car */
}

/* The least of what the rates spare; NaN where none tells. */
static double least_of(const struct rule_car *car, double (*spare)(const struct grip_use *, double),
                       double argument)
{
    struct grip_use uses[GRIP_RATES];
    double least = NAN;
    grip_rates(car->system, car->network, car->room, uses);
    for (int i = 0; i < GRIP_RATES; i++)
        least = fmin(least, spare(&uses[i], argument));
    return least;
}

static double order_spare(const struct grip_use *use, double order)
{
    return grip_order_spare(use, order > 0 ? GRIP_ORDER_71_320 : GRIP_ORDER_13H);
}

RULE_VALUE(rule_lock_order)
{
    return least_of(car, order_spare, argument);
}

RULE_VALUE(rule_grip_band)
{
    return least_of(car, grip_band_spare, argument);
}

RULE_VALUE(rule_lever_effort)
{
    (void)argument;
    return figure_now(car, "effort-for-half-g");
}

/* The least, over the reservoirs, of capacity over what a volume of each circuit sums up to. */
static double capacity_over(const struct rule_car *car,
                            double (*volume)(const struct rule_car *car, int circuit))
{
    double least = NAN;
    for (int r = 0; r < car->system->part_count; r++) {
        if (car->system->parts[r].kind != KIND_RESERVOIR)
            continue;
        double sum = 0;
        for (int c = 0; c < car->network->circuit_count; c++)
            if (!car->network->circuits[c].clutch &&
                reservoir_of(car->system, car->network->circuits[c].master) == r)
                sum += volume(car, c);
        if (!(sum > 0) && !isnan(sum))
            continue;
        double share = car->system->parts[r].as.reservoir.capacity.m3 / sum;
        if (isnan(share))
            return NAN;
        least = isnan(least) ? share : fmin(least, share);
    }
    return least;
}

/* Linings of which nothing is said count as glued, the stricter way to measure them. */
static bool is_fixed_by(const struct part *part, enum lining_fixing fixing)
{
    return part->kind == KIND_DRUM &&
           (part->as.drum.fixing == FIXING_RIVETS) == (fixing == FIXING_RIVETS);
}

/* The thinnest lining of all drums of that fixing. */
RULE_VALUE(rule_lining)
{
    double least = NAN;
    for (int i = 0; i < car->system->part_count; i++) {
        const struct part *part = &car->system->parts[i];
        if (!is_fixed_by(part, (enum lining_fixing)argument))
            continue;
        if (isnan(part->as.drum.lining_left.m))
            return NAN;
        least = fmin(least, part->as.drum.lining_left.m);
    }
    return least;
}

static double full_stroke(const struct rule_car *car, int circuit)
{
    const struct master *master =
        &car->system->parts[car->network->circuits[circuit].master].as.master;
    double stroke = master->type != MASTER_TANDEM                  ? master->stroke.m
                    : car->network->circuits[circuit].chamber == 0 ? master->primary_stroke.m
                                                                   : master->secondary_stroke.m;
    return master_area(master).m2 * stroke;
}

RULE_VALUE(rule_compartment)
{
    (void)argument;
    return capacity_over(car, full_stroke);
}

static double pad_wear(const struct rule_car *car, int circuit)
{
    for (int i = 0; i < car->figures->count; i++) {
        const struct figure *figure = &car->figures->items[i];
        if (strcmp(figure->row->id, "reservoir-volume-needed") == 0 && figure->subject == circuit)
            return figure->value;
    }
    return 0;
}

RULE_VALUE(rule_reservoir)
{
    (void)argument;
    return capacity_over(car, pad_wear);
}

/* --- whom a rule spares --------------------------------------------------------------------- */

static int brake_circuits(const struct rule_car *car)
{
    int count = 0;
    for (int c = 0; c < car->network->circuit_count; c++)
        count += !car->network->circuits[c].clutch;
    return count;
}

static bool has_kind(const struct rule_car *car, enum part_kind kind)
{
    return system_first(car->system, kind) >= 0;
}

/* Whether one pedal works brakes on four wheels. */
static bool has_single_control(const struct rule_car *car)
{
    for (int p = 0; p < car->system->part_count; p++) {
        int wheels = 0;
        for (int i = 0; i < car->system->part_count; i++) {
            int vertex =
                kind_is_brake(car->system->parts[i].kind) ? network_vertex(car->network, i, 0) : -1;
            int circuit = vertex < 0 ? -1 : car->network->vertices[vertex].circuit;
            wheels += circuit >= 0 &&
                      pressure_pedal_of(car->system, car->network->circuits[circuit].master) == p;
        }
        if (wheels >= 4)
            return true;
    }
    return false;
}

RULE_REASON(rule_spares_two_circuits)
{
    return brake_circuits(car) > 1 ? "asked of single line systems only" : NULL;
}

RULE_REASON(rule_spares_one_circuit)
{
    return brake_circuits(car) > 1 ? NULL : "all brakes hang on one circuit";
}

RULE_REASON(rule_spares_without_servo)
{
    return has_kind(car, KIND_SERVO) ? NULL : "it has no servo";
}

RULE_REASON(rule_spares_with_servo)
{
    return has_kind(car, KIND_SERVO) ? "it has a servo" : NULL;
}

RULE_REASON(rule_spares_no_parking)
{
    return has_kind(car, KIND_PARKING) ? NULL : "no hand brake is described";
}

RULE_REASON(rule_spares_single_control)
{
    return has_single_control(car) ? "one pedal works the brakes of four wheels" : NULL;
}

RULE_REASON(rule_spares_many_means)
{
    return has_single_control(car) ? NULL : "no single pedal works the brakes of four wheels";
}

RULE_REASON(rule_spares_light)
{
    double mass = system_vehicle(car->system)->mass.kg;
    return mass <= 10000 * 0.45359237 ? "asked of vehicles above 10,000 lb (4536 kg)" : NULL;
}

RULE_REASON(rule_spares_over_10000_lb)
{
    double mass = system_vehicle(car->system)->mass.kg;
    return mass > 10000 * 0.45359237 ? "asked of vehicles up to 10,000 lb (4536 kg)" : NULL;
}

RULE_REASON(rule_spares_one_axle)
{
    bool axles[GRIP_AXLES] = {false, false};
    for (int i = 0; i < car->system->part_count; i++)
        if (kind_is_brake(car->system->parts[i].kind))
            axles[car->system->parts[i].axle == AXLE_FRONT ? GRIP_FRONT : GRIP_REAR] = true;
    return axles[GRIP_FRONT] && axles[GRIP_REAR] ? NULL : "it has brakes on one axle";
}

RULE_REASON(rule_spares_no_lever)
{
    for (int i = 0; i < car->system->part_count; i++)
        if (press_is_brake(car->system, car->network, i) &&
            car->system->parts[i].as.pedal.type == PEDAL_HAND)
            return NULL;
    return "no hand lever works a brake";
}

static bool has_lining(const struct rule_car *car, enum lining_fixing fixing)
{
    for (int i = 0; i < car->system->part_count; i++)
        if (is_fixed_by(&car->system->parts[i], fixing))
            return true;
    return false;
}

RULE_REASON(rule_spares_no_bonded)
{
    if (has_lining(car, FIXING_GLUE))
        return NULL;
    return has_kind(car, KIND_DRUM) ? "its linings are riveted" : "it has no drums";
}

RULE_REASON(rule_spares_no_riveted)
{
    return has_lining(car, FIXING_RIVETS) ? NULL : "no lining of it is said to be riveted";
}

RULE_REASON(rule_spares_no_discs)
{
    return has_kind(car, KIND_DISC) ? NULL : "shoes are set by their adjusters, so only discs draw";
}
