#include "advice/bleeding/bleed_stroke.h"

#include <math.h>
#include <stddef.h>

#include "advice/common/limits.h"
#include "network/belonging.h"
#include "physics/press.h"
#include "physics/pressure.h"

static bool rests_on_assumed(const struct part *part, size_t field)
{
    const struct origin *origin = part_origin(part, field);
    return origin != NULL && origin->kind == ORIGIN_ASSUMED;
}

/* What the piston of a chamber can go by itself, m. */
static double own_stroke(const struct part *part, int chamber, bool *assumed)
{
    const struct master *master = &part->as.master;
    if (master->type != MASTER_TANDEM) {
        return master->stroke.m;
    }
    double own = chamber == 0 ? master->primary_stroke.m : master->secondary_stroke.m;
    size_t field =
        chamber == 0 ? FIELD(as.master.primary_stroke) : FIELD(as.master.secondary_stroke);
    *assumed = *assumed || !(own > 0) || rests_on_assumed(part, field);
    return own > 0 ? own : master->stroke.m / 2;
}

/* Pad travel for each metre that a master's rod goes while the other one on a balance bar stands.
 */
static double pad_for_rod(const struct system *system, int pedal, int master)
{
    const struct pedal *lever = &system->parts[pedal].as.pedal;
    double ratio = pedal_ratio(lever).value;
    if (lever->works.count != 2) {
        return ratio;
    }
    double first = pedal_bar_share(lever).of_1;
    return ratio * (pressure_worked_master(system, pedal, 0) == master ? first : 1 - first);
}

/* What the rod of a master pushes its piston while the pad goes so far, m; NaN when not known. */
static double piston_for_pad(const struct system *system, int pedal, int master, double pad)
{
    double rod = (pad - press_free_play(&system->parts[pedal].as.pedal).m) /
                 pad_for_rod(system, pedal, master);
    return rod - press_own_gap(system, master).m;
}

struct length bleed_pad_stop(const struct system *system, int pedal)
{
    const struct pedal *lever = &system->parts[pedal].as.pedal;
    double stop = NAN, end = pedal_end(lever).m;
    for (int i = 0; i < system->part_count; i++) {
        const struct part *part = &system->parts[i];
        if (part->kind != KIND_MASTER || part_is_new(part) ||
            pressure_pedal_of(system, i) != pedal) {
            continue;
        }
        for (int chamber = 0; chamber < part_chambers(part); chamber++) {
            bool assumed = false;
            /* fmin passes over a NaN */
            double whole =
                fmin(own_stroke(part, chamber, &assumed), piston_for_pad(system, pedal, i, end));
            double rod = press_own_gap(system, i).m + limit_value("old-master-stroke") * whole;
            stop = fmin(stop, press_free_play(lever).m + pad_for_rod(system, pedal, i) * rod);
        }
    }
    return (struct length){stop};
}

/* How far the rod of a master goes, its gap closed, with the pedal down to its block or its end, m;
 * else what its own piston can go, of an old one two thirds. */
static double rod_reach(const struct system *system, const struct part *part, int index, double own)
{
    int pedal = pressure_pedal_of(system, index);
    double by_pedal = NAN;
    if (pedal >= 0) {
        double pad =
            fmin(bleed_pad_stop(system, pedal).m, pedal_end(&system->parts[pedal].as.pedal).m);
        by_pedal = piston_for_pad(system, pedal, index, pad);
    }
    if (by_pedal > 0) {
        return by_pedal;
    }
    return pedal >= 0 || part_is_new(part) ? own : limit_value("old-master-stroke") * own;
}

/* Of the way of a shut piston, before its circuit stands against a pressure, m: up to its port,
 * then what its air gives way by Boyle's law. */
static double way_into_air(const struct master *master, double pressure, double air)
{
    double lost = air_compression((struct volume){air}, (struct pressure){pressure}).m3;
    return master->cut_off.m + lost / master_area(master).m2;
}

/* What the spring between the pistons leaves to push the second one on, N; below 0: what it lacks.
 */
static double spare_force(const struct master *master)
{
    return master->primary_spring.n - master->secondary_spring.n - master->seal_friction.n;
}

/* The first piston's own way past its port, the second's circuit shut. Nothing but the spring
 * pushes the second, until its air stands against that. */
static double first_delivers(const struct part *part, double reach, double air, bool *assumed)
{
    const struct master *master = &part->as.master;
    double spare = spare_force(master), second = 0;
    if (spare >= 0) {
        second = way_into_air(master, spare / master_area(master).m2, air);
        second = fmin(second, fmin(own_stroke(part, 1, assumed), reach));
    }
    double own = fmin(reach - second, own_stroke(part, 0, assumed));
    return own - fmax(master->cut_off.m - second, 0);
}

/* The second piston's, the first's circuit shut: where the spring between them does not carry it,
 * the first's air must. */
static double second_delivers(const struct part *part, double reach, double air, bool *assumed)
{
    const struct master *master = &part->as.master;
    double lacks = -spare_force(master), first = 0;
    if (lacks > 0) {
        first = way_into_air(master, lacks / master_area(master).m2, air);
        first = fmin(first, fmin(own_stroke(part, 0, assumed), reach));
    }
    return fmin(reach - first, own_stroke(part, 1, assumed)) - master->cut_off.m;
}

struct volume bleed_stroke_beside(const struct system *system, const struct circuit *circuit,
                                  struct volume air, bool *assumed)
{
    const struct part *part = &system->parts[circuit->master];
    const struct master *master = &part->as.master;
    double own = own_stroke(part, circuit->chamber, assumed);
    double reach = rod_reach(system, part, circuit->master, own), way;
    if (master->type != MASTER_TANDEM) {
        way = fmin(reach, own) - master->cut_off.m;
    } else if (circuit->chamber == 0) {
        way = first_delivers(part, reach, air.m3, assumed);
    } else {
        way = second_delivers(part, reach, air.m3, assumed);
    }
    return (struct volume){master_area(master).m2 * (way < 0 ? 0 : way)};
}

struct volume bleed_stroke(const struct system *system, const struct circuit *circuit,
                           bool *assumed)
{
    return bleed_stroke_beside(system, circuit, (struct volume){0}, assumed);
}

bool bleed_springs_assumed(const struct part *master)
{
    return rests_on_assumed(master, FIELD(as.master.primary_spring)) ||
           rests_on_assumed(master, FIELD(as.master.secondary_spring));
}
