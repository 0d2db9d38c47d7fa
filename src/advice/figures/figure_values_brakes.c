#include "advice/figures/figure_values.h"

#include <math.h>

#include "physics/drum_memory.h"
#include "physics/heat.h"

static const struct part *part_at(const struct situation *situation, int part)
{
    return &situation->system->parts[part];
}

static double spread_of(const struct part *brake)
{
    return brake->kind == KIND_DISC ? brake->as.disc.friction_spread.of_1
                                    : brake->as.drum.friction_spread.of_1;
}

/* Torque with the friction at the most of its spread, or at the least, at the pressures of the
 * check. */
static double torque_at(const struct situation *situation, int brake, bool most)
{
    const struct part *part = part_at(situation, brake);
    const struct brake_state *now = &situation->usual->brakes[brake];
    if (part->kind == KIND_DISC) {
        double spread = spread_of(part);
        return now->torque.nm * (most ? 1 + spread : 1 - spread); /* in proportion */
    }
    const struct drum_memory *factors = drum_remembered(situation->system, brake, situation->usual);
    double factor = most ? factors->most : factors->least;
    return drum_torque_by_factor(&part->as.drum, now->pressure[0], factor).nm;
}

FIGURE_GETTER(value_brake_torque_low)
{
    (void)sub;
    return torque_at(situation, subject, false);
}

FIGURE_GETTER(value_brake_torque_high)
{
    (void)sub;
    return torque_at(situation, subject, true);
}

FIGURE_GETTER(value_friction_sensitivity)
{
    (void)sub;
    const struct part *part = part_at(situation, subject);
    if (part->kind == KIND_DISC)
        return 1;
    return drum_remembered(situation->system, subject, situation->usual)->sensitivity;
}

static const struct drum *drum_at(const struct situation *situation, int part)
{
    return &part_at(situation, part)->as.drum;
}

static const struct disc *disc_at(const struct situation *situation, int part)
{
    return &part_at(situation, part)->as.disc;
}

static const struct pressure *pressure_at(const struct situation *situation, int brake)
{
    return situation->usual->brakes[brake].pressure;
}

/* Of the front shoe and the rear one, by the factors that are remembered. */
static struct shoe_torques shoe_torques(const struct situation *situation, int brake)
{
    return drum_torques_by_factors(
        drum_at(situation, brake), *pressure_at(situation, brake),
        &drum_remembered(situation->system, brake, situation->usual)->ahead);
}

GETS(value_shoe_torque_front, shoe_torques(situation, subject).front.nm)
GETS(value_shoe_torque_rear, shoe_torques(situation, subject).rear.nm)
GETS(value_lining_pressure,
     drum_lining_pressure(drum_at(situation, subject), shoe_torques(situation, subject)).pa)
GETS(value_pad_pressure,
     disc_pad_pressure(disc_at(situation, subject), pressure_at(situation, subject)).mean.pa)
GETS(value_pad_pressure_most,
     disc_pad_pressure(disc_at(situation, subject), pressure_at(situation, subject)).greatest.pa)

FIGURE_TEST(of_known_arc)
{
    (void)sub;
    const struct part *part = part_at(situation, subject);
    return part->kind == KIND_DISC && part->as.disc.contact != PADS_ROUND &&
           !isnan(part->as.disc.pad_arc.rad);
}

FIGURE_TEST(of_known_pad)
{
    const struct part *part = part_at(situation, subject);
    return of_known_arc(situation, subject, sub) ||
           (part->kind == KIND_DISC && part->as.disc.contact == PADS_ROUND);
}

FIGURE_GETTER(value_drum_growth)
{
    (void)sub;
    const struct drum *drum = &part_at(situation, subject)->as.drum;
    return drum_growth(drum, drum->hot).m;
}

FIGURE_GETTER(value_drum_growth_tip)
{
    (void)sub;
    return drum_hot_tip_travel(drum_at(situation, subject)).m;
}

static struct heat_state heat_at(const struct situation *situation, int brake)
{
    return heat_of_brake(situation->system, situation->usual, brake);
}

FIGURE_GETTER(value_heat_per_stop)
{
    (void)sub;
    return heat_at(situation, subject).heat.j;
}

FIGURE_GETTER(value_rise_per_stop)
{
    (void)sub;
    return heat_at(situation, subject).rise.k;
}

FIGURE_GETTER(value_surface_rise)
{
    (void)sub;
    return heat_at(situation, subject).surface.k;
}

FIGURE_GETTER(value_temperature_after_ten)
{
    (void)sub;
    return heat_at(situation, subject).after_ten.celsius;
}

FIGURE_GETTER(value_fluid_after_ten)
{
    (void)sub;
    return heat_at(situation, subject).fluid.celsius;
}

/* Grade of the fluid in a brake. */
static enum fluid_grade grade_in(const struct situation *situation, int brake)
{
    const struct network *network = situation->network;
    int vertex = network_vertex(network, brake, 0);
    int circuit = vertex < 0 ? -1 : network->vertices[vertex].circuit;
    if (circuit < 0)
        return GRADE_NOT_SAID;
    int fluid = system_fluid_of(situation->system, network->circuits[circuit].master);
    return fluid < 0 ? GRADE_NOT_SAID : part_at(situation, fluid)->as.fluid.grade;
}

FIGURE_GETTER(value_boiling_margin_dry)
{
    (void)sub;
    const struct fluid_row *row = fluid_row(grade_in(situation, subject));
    return row == NULL ? NAN : row->dry_boiling.celsius - heat_at(situation, subject).fluid.celsius;
}

FIGURE_GETTER(value_boiling_margin_wet)
{
    (void)sub;
    const struct fluid_row *row = fluid_row(grade_in(situation, subject));
    return row == NULL ? NAN : row->wet_boiling.celsius - heat_at(situation, subject).fluid.celsius;
}

FIGURE_TEST(of_boiling_fluid)
{
    (void)sub;
    return grade_in(situation, subject) != GRADE_MINERAL;
}

static const char *refuses_lock(const struct situation *situation, int brake, double times,
                                bool forward)
{
    const struct part *part = part_at(situation, brake);
    struct number friction = {part->kind == KIND_DRUM ? part->as.drum.friction.value * times : NAN};
    return part->kind == KIND_DRUM && drum_near_lock(&part->as.drum, friction, forward)
               ? "a shoe comes too near to locking by itself at that friction"
               : NULL;
}

FIGURE_REASON(refuses_near_lock)
{
    (void)sub;
    return refuses_lock(situation, subject, 1, true);
}

FIGURE_REASON(refuses_near_lock_reverse)
{
    (void)sub;
    return refuses_lock(situation, subject, 1, false);
}

FIGURE_REASON(refuses_near_lock_high)
{
    (void)sub;
    return refuses_lock(situation, subject, 1 + spread_of(part_at(situation, subject)), true);
}
