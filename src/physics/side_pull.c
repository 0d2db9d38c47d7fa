#include "physics/side_pull.h"

#include <math.h>

#include "parts/master.h"
#include "physics/drum_memory.h"

static double left_of_caliper(const struct disc *disc)
{
    const struct bores sets[] = {disc->bores, disc->second_bores};
    double all = 0, largest = 0;
    for (int i = 0; i < 2; i++) {
        if (sets[i].count < 1)
            continue;
        double piston = circle_area(sets[i].bore).m2;
        all += sets[i].count * piston;
        largest = piston > largest ? piston : largest;
    }
    return all > 0 ? 1 - largest / all : NAN;
}

static double left_of_drum(const struct drum *drum, const struct shoe_factors *shoes)
{
    switch (drum->cylinder) {
    case CYLINDER_NOT_SAID:
        return NAN;
    case CYLINDER_SLIDING:
        return 0;
    case CYLINDER_TWO_PISTONS:
    case CYLINDER_ONE_EACH:
        break;
    }
    return fmax(fmin(shoes->front, shoes->rear), 0) / (shoes->front + shoes->rear);
}

double side_pull_left(const struct part *brake, const struct shoe_factors *shoes)
{
    if (brake->kind == KIND_DISC)
        return left_of_caliper(&brake->as.disc);
    return brake->kind == KIND_DRUM ? left_of_drum(&brake->as.drum, shoes) : NAN;
}

static bool is_at(const struct part *part, enum axle axle)
{
    return kind_is_brake(part->kind) && part->axle == axle && part->side != SIDE_NONE;
}

static struct side_pull pull_between(double one, double other, double track)
{
    double stronger = fmax(one, other), weaker = fmin(one, other);
    if (isnan(one) || isnan(other) || !(stronger > 0))
        return (struct side_pull){{NAN}, {NAN}};
    return (struct side_pull){{1 - weaker / stronger}, {(stronger - weaker) * track / 2}};
}

struct side_pull side_pull_seized(const struct system *system, const struct solution *solution,
                                  enum axle axle)
{
    double sides[2] = {0, 0}, track = system_vehicle(system)->track.m;
    bool present[2] = {false, false};
    for (int i = 0; i < system->part_count; i++) {
        const struct part *part = &system->parts[i];
        if (!is_at(part, axle))
            continue;
        sides[part->side == SIDE_RIGHT] += solution->brakes[i].force.n;
        present[part->side == SIDE_RIGHT] = true;
    }
    struct side_pull worst = {{NAN}, {NAN}};
    for (int i = 0; present[0] && present[1] && i < system->part_count; i++) {
        const struct part *part = &system->parts[i];
        if (!is_at(part, axle))
            continue;
        bool right = part->side == SIDE_RIGHT;
        const struct shoe_factors *shoes =
            part->kind == KIND_DRUM ? &drum_remembered(system, i, solution)->ahead : NULL;
        double lost = solution->brakes[i].force.n * (1 - side_pull_left(part, shoes));
        struct side_pull pull = pull_between(sides[right] - lost, sides[!right], track);
        if (isnan(pull.difference.of_1))
            return pull;
        if (!(pull.difference.of_1 <= worst.difference.of_1) ||
            (pull.difference.of_1 == worst.difference.of_1 && pull.yaw.nm > worst.yaw.nm))
            worst = pull; /* of two that leave nothing on their side, the stronger other one */
    }
    return worst;
}

/* Force of a brake with its friction at the most of its spread or at the least, at the pressures as
 * solved; NaN where it does not press. */
static double force_at(const struct system *system, const struct solution *solution, int brake,
                       bool most)
{
    const struct brake_state *now = &solution->brakes[brake];
    const struct part *part = &system->parts[brake];
    if (!(now->torque.nm > 0))
        return NAN;
    if (part->kind == KIND_DISC) {
        double spread = part->as.disc.friction_spread.of_1;
        return now->force.n * (most ? 1 + spread : 1 - spread);
    }
    const struct drum_memory *factors = drum_remembered(system, brake, solution);
    double factor = most ? factors->most : factors->least;
    double torque = drum_torque_by_factor(&part->as.drum, now->pressure[0], factor).nm;
    return torque * (now->force.n / now->torque.nm);
}

struct side_pull side_pull_friction(const struct system *system, const struct solution *solution,
                                    enum axle axle)
{
    double most[2] = {0, 0}, least[2] = {0, 0}, track = system_vehicle(system)->track.m;
    bool present[2] = {false, false};
    for (int i = 0; i < system->part_count; i++) {
        const struct part *part = &system->parts[i];
        if (!is_at(part, axle))
            continue;
        bool right = part->side == SIDE_RIGHT;
        most[right] += force_at(system, solution, i, true);
        least[right] += force_at(system, solution, i, false);
        present[right] = true;
    }
    if (!present[0] || !present[1])
        return (struct side_pull){{NAN}, {NAN}};
    struct side_pull one = pull_between(most[0], least[1], track);
    struct side_pull other = pull_between(least[0], most[1], track);
    return one.difference.of_1 >= other.difference.of_1 ? one : other;
}
