#include "advice/figures/holds.h"

#include <math.h>
#include <string.h>

#include "advice/figures/chain.h"
#include "physics/heat.h"
#include "physics/press.h"

enum {
    HOLD_REACHED = 1 << 0,
    HOLD_GRIP = 1 << 1,
    HOLD_TOUCHED = 1 << 2,
    HOLD_LEG = 1 << 3,
    HOLD_SHOES = 1 << 4,
    HOLD_SLAVE = 1 << 5,
    HOLD_ROLLS = 1 << 6,
    HOLD_LIFTS = 1 << 7,
    HOLD_IRON = 1 << 8,
    HOLD_SOLID = 1 << 9,
    HOLD_ALONE = 1 << 10,
};

/* Whether a pedal has to do with a figure. */
static bool is_pressed_by(const struct situation *situation, const struct figure *figure, int pedal)
{
    static const struct figure_row pedal_row = {.scope = SCOPE_PEDAL};
    struct figure of_pedal = {.row = &pedal_row, .subject = pedal};
    return press_is_brake(situation->system, situation->network, pedal) &&
           chain_related(situation->system, situation->network, figure, &of_pedal);
}

static bool is_braked_by(const struct situation *situation, const struct figure *figure, int brake)
{
    static const struct figure_row brake_row = {.scope = SCOPE_BRAKE};
    struct figure of_brake = {.row = &brake_row, .subject = brake};
    return kind_is_brake(situation->system->parts[brake].kind) &&
           chain_related(situation->system, situation->network, figure, &of_brake);
}

static int met_reached(const struct situation *situation, const struct figure *figure)
{
    for (int i = 0; i < situation->system->part_count; i++) {
        if (!is_pressed_by(situation, figure, i))
            continue;
        const struct pedal_state *pedal = &situation->usual->pedals[i];
        if (isnan(pedal->travel.m))
            return -1;
        if (pedal->on_floor || pedal->bottomed)
            return 0;
    }
    return 1;
}

/* The solution that a figure is read from. */
static const struct solution *solution_of(const struct situation *situation,
                                          const struct figure *figure)
{
    const char *id = figure->row->id;
    if (strcmp(id, "deceleration-unassisted") == 0)
        return situation->unassisted;
    if (strcmp(id, "deceleration-circuit-lost") == 0)
        return situation->lost[figure->subject];
    if (strcmp(id, "deceleration-by-it") == 0)
        return situation
            ->alone[figure->subject == situation->pedals.front ? GRIP_FRONT : GRIP_REAR];
    return situation->usual;
}

/* Whether no wheel asks the road for more than the grip in it. */
static int met_grip(const struct situation *situation, const struct figure *figure)
{
    const struct vehicle *vehicle = system_vehicle(situation->system);
    struct wheel_forces wheels = wheel_forces_of(situation->system, solution_of(situation, figure));
    struct grip_use use = grip_use_of_wheels(vehicle, &wheels);
    if (isnan(use.front) || isnan(use.rear) || isnan(vehicle->tyre_grip.value))
        return -1;
    return !(use.front > vehicle->tyre_grip.value) && !(use.rear > vehicle->tyre_grip.value);
}

/* Whether the rear wheels stay on the road in it. */
static int met_lifts(const struct situation *situation, const struct figure *figure)
{
    double lifts = vehicle_lifts_at(system_vehicle(situation->system)).m_s2;
    double now = solution_of(situation, figure)->deceleration.m_s2;
    return isnan(lifts) || isnan(now) ? -1 : !(now > lifts);
}

static double threshold_of(const struct part *part)
{
    return part->kind == KIND_DISC ? part->as.disc.threshold.pa : part->as.drum.threshold.pa;
}

static int met_touched(const struct situation *situation, const struct figure *figure)
{
    for (int i = 0; i < situation->system->part_count; i++) {
        if (!is_braked_by(situation, figure, i))
            continue;
        const struct pressure *pressure = situation->usual->brakes[i].pressure;
        double most = isnan(pressure[1].pa) ? pressure[0].pa : fmax(pressure[0].pa, pressure[1].pa);
        double threshold = threshold_of(&situation->system->parts[i]);
        if (isnan(most) || isnan(threshold))
            return -1;
        if (!(most > threshold))
            return 0;
    }
    return 1;
}

static int met_leg(const struct situation *situation, const struct figure *figure)
{
    for (int i = 0; i < situation->system->part_count; i++)
        if (is_pressed_by(situation, figure, i) &&
            !(situation->usual->pedals[i].effort.n <= MOST_EFFORT))
            return isnan(situation->usual->pedals[i].effort.n) ? -1 : 0;
    return 1;
}

static int met_shoes(const struct situation *situation, const struct figure *figure)
{
    for (int i = 0; i < situation->system->part_count; i++)
        if (is_braked_by(situation, figure, i) && situation->system->parts[i].kind == KIND_DRUM &&
            isnan(situation->usual->brakes[i].torque.nm))
            return -1;
    return 1;
}

static int met_slave(const struct situation *situation, const struct figure *figure)
{
    double travel = situation->usual->clutches[figure->subject].slave_travel.m;
    double stroke = situation->system->parts[figure->subject].as.slave.stroke.m;
    return isnan(travel) || isnan(stroke) ? -1 : travel <= stroke;
}

static int circuit_of(const struct situation *situation, int part)
{
    int vertex = network_vertex(situation->network, part, 0);
    return vertex < 0 ? -1 : situation->network->vertices[vertex].circuit;
}

/* Whether no other slave takes a part of the circuit's fluid. */
static int met_alone(const struct situation *situation, const struct figure *figure)
{
    int circuit = circuit_of(situation, figure->subject);
    for (int i = 0; i < situation->system->part_count; i++)
        if (i != figure->subject && situation->system->parts[i].kind == KIND_SLAVE &&
            circuit >= 0 && circuit_of(situation, i) == circuit)
            return 0;
    return 1;
}

/* The hottest that a brake gets in what the figure tells of. */
static int met_iron(const struct situation *situation, const struct figure *figure)
{
    struct heat_state heat = heat_of_brake(situation->system, situation->usual, figure->subject);
    bool ten = strstr(figure->row->id, "per-stop") == NULL;
    double most = ten ? heat.after_ten.celsius
                  : strcmp(figure->row->id, "surface-rise-per-stop") == 0
                      ? HEAT_AIR + heat.surface.k
                      : HEAT_AIR + heat.rise.k;
    return isnan(most) ? -1 : most <= HEAT_IRON_MOST;
}

static int met_solid(const struct situation *situation, const struct figure *figure)
{
    const struct part *part = &situation->system->parts[figure->subject];
    if (part->kind != KIND_DISC)
        return 1;
    return isnan(part->as.disc.thickness.m) ? -1 : part->as.disc.thickness.m <= DISC_SOLID_MOST;
}

static const struct hold_row rows[] = {
    {HOLD_REACHED, "effort-reached", "the effort is reached before the floor and the bore's end",
     "the pedal meets its floor, or a piston its end, before the effort is reached", met_reached},
    {HOLD_GRIP, "grip-enough", "the tyres grip enough for these brake forces",
     "an axle would lock before this: the road does not take these brake forces", met_grip},
    {HOLD_ROLLS, "wheels-roll", "no wheel locks with it lost",
     "a wheel locks before this effort: it is what the road takes with that wheel sliding",
     met_grip},
    {HOLD_LIFTS, "wheels-on-the-road", "the rear wheels stay on the road",
     "the rear wheels leave the road before this", met_lifts},
    {HOLD_TOUCHED, "brakes-touch",
     "every brake of it gets more than the pressure at which it begins",
     "a brake of it gets less pressure than it takes to begin", met_touched},
    {HOLD_LEG, "within-a-leg", "the effort is at most 2000 N", "the effort is above 2000 N",
     met_leg},
    {HOLD_SHOES, "shoes-below-locking",
     "every drum of it stays below 0.8 of the friction at which it locks by itself",
     "a drum of it is too near to locking by itself", met_shoes},
    {HOLD_SLAVE, "slave-in-its-bore", "the slave's piston stays in its bore",
     "the slave's piston would leave its bore before that", met_slave},
    {HOLD_ALONE, "slave-alone", "the circuit works no other slave",
     "another slave takes a part of the circuit's fluid", met_alone},
    {HOLD_IRON, "iron-below-600", "the iron stays below 600 degC",
     "the iron would come above 600 degC, beyond what is known of it here", met_iron},
    {HOLD_SOLID, "disc-solid", "the disc is at most 14 mm thick, so it is solid",
     "the disc is thicker than 14 mm: with vents its cheeks are thinner and get hotter", met_solid},
};

const struct hold_row *hold_rows(size_t *count)
{
    *count = sizeof rows / sizeof *rows;
    return rows;
}

/* Which conditions a figure stands under. */
static const struct {
    const char *figure;
    unsigned holds;
} under[] = {
    {"deceleration", HOLD_REACHED | HOLD_GRIP | HOLD_LIFTS | HOLD_TOUCHED | HOLD_SHOES},
    {"deceleration-unassisted", HOLD_GRIP | HOLD_LIFTS},
    {"deceleration-by-it", HOLD_GRIP | HOLD_LIFTS},
    {"deceleration-circuit-lost", HOLD_ROLLS},
    {"front-share", HOLD_REACHED | HOLD_GRIP | HOLD_TOUCHED | HOLD_SHOES},
    {"stopping-distance", HOLD_REACHED | HOLD_TOUCHED | HOLD_SHOES},
    {"front-locks-at", HOLD_SHOES},
    {"rear-locks-at", HOLD_SHOES},
    {"rear-lock-margin", HOLD_SHOES},
    {"rear-lock-margin-wet", HOLD_SHOES},
    {"front-load-at-lock", HOLD_SHOES},
    {"rear-load-at-lock", HOLD_SHOES},
    {"its-wheels-lock-at", HOLD_SHOES},
    {"effort-that-locks", HOLD_SHOES},
    {"its-wheels-lock-at-wet", HOLD_SHOES},
    {"effort-that-locks-wet", HOLD_SHOES},
    {"load-at-lock", HOLD_SHOES},
    {"front-locks-effort", HOLD_SHOES},
    {"rear-locks-effort", HOLD_SHOES},
    {"front-locks-at-wet", HOLD_SHOES},
    {"rear-locks-at-wet", HOLD_SHOES},
    {"front-locks-effort-wet", HOLD_SHOES},
    {"rear-locks-effort-wet", HOLD_SHOES},
    {"grip-used-front", HOLD_SHOES},
    {"grip-used-rear", HOLD_SHOES},
    {"grip-efficiency", HOLD_SHOES},
    {"stopping-distance-wet", HOLD_REACHED | HOLD_TOUCHED | HOLD_SHOES},
    {"pull-friction-front", HOLD_TOUCHED},
    {"pull-friction-rear", HOLD_TOUCHED | HOLD_SHOES},
    {"pull-seized-front", HOLD_TOUCHED},
    {"pull-seized-rear", HOLD_TOUCHED | HOLD_SHOES},
    {"yaw-seized-front", HOLD_REACHED | HOLD_GRIP | HOLD_TOUCHED},
    {"yaw-seized-rear", HOLD_REACHED | HOLD_GRIP | HOLD_TOUCHED | HOLD_SHOES},
    {"rise-per-stop", HOLD_IRON},
    {"surface-rise-per-stop", HOLD_IRON | HOLD_SOLID},
    {"temperature-after-ten-stops", HOLD_IRON},
    {"fluid-after-ten-stops", HOLD_IRON},
    {"boiling-margin-dry", HOLD_IRON},
    {"boiling-margin-wet", HOLD_IRON},
    {"slave-travel", HOLD_SLAVE | HOLD_ALONE},
    {"bearing-travel", HOLD_SLAVE | HOLD_ALONE},
    {"bearing-travel-spare", HOLD_SLAVE | HOLD_ALONE},
    {"clutch-volume-lost", HOLD_ALONE},
    {"slave-stroke-left", HOLD_ALONE},
    {"bearing-travel-room", HOLD_SLAVE | HOLD_ALONE},
    {"clutch-lift", HOLD_SLAVE | HOLD_ALONE},
    {"clutch-clearance-per-face", HOLD_SLAVE | HOLD_ALONE},
    {"side-difference-front", HOLD_TOUCHED},
    {"side-difference-rear", HOLD_TOUCHED | HOLD_SHOES},
    {"pedal-effort", HOLD_REACHED | HOLD_LEG},
    {"rod-force", HOLD_REACHED},
    {"rod-travel", HOLD_REACHED},
    {"pedal-travel", HOLD_REACHED},
    {"stroke-left", HOLD_REACHED},
    {"line-pressure", HOLD_REACHED},
    {"volume-taken", HOLD_REACHED},
    {"volume-by-cause", HOLD_REACHED},
    {"piston-stroke", HOLD_REACHED},
    {"wheel-pressure", HOLD_REACHED},
    {"clamp-force", HOLD_REACHED | HOLD_TOUCHED},
    {"brake-torque", HOLD_REACHED | HOLD_TOUCHED | HOLD_SHOES},
    {"brake-torque-reverse", HOLD_REACHED | HOLD_TOUCHED | HOLD_SHOES},
    {"brake-force", HOLD_REACHED | HOLD_TOUCHED | HOLD_SHOES},
    {"shoe-torque-front", HOLD_REACHED | HOLD_TOUCHED | HOLD_SHOES},
    {"shoe-torque-rear", HOLD_REACHED | HOLD_TOUCHED | HOLD_SHOES},
    {"lining-pressure-most", HOLD_REACHED | HOLD_TOUCHED | HOLD_SHOES},
    {"pad-pressure", HOLD_REACHED | HOLD_TOUCHED},
    {"pad-pressure-most", HOLD_REACHED | HOLD_TOUCHED},
};

unsigned holds_asked(const char *figure)
{
    for (size_t i = 0; i < sizeof under / sizeof *under; i++)
        if (strcmp(under[i].figure, figure) == 0)
            return under[i].holds;
    return 0;
}

bool holds_spoiled(const struct figure *figure)
{
    return (figure->holds_broken & ~(unsigned)HOLD_REACHED) != 0;
}

const struct hold_row *holds_broken_law(const struct figure *figure)
{
    const unsigned road = HOLD_REACHED | HOLD_GRIP | HOLD_ROLLS | HOLD_LIFTS;
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
        if ((figure->holds_broken & ~road & rows[i].bit) != 0)
            return &rows[i];
    return NULL;
}

void holds_look(const struct situation *situation, struct figure *figure)
{
    figure->holds = figure->holds_broken = 0;
    if (isnan(figure->value))
        return;
    unsigned asked = holds_asked(figure->row->id);
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        if ((asked & rows[i].bit) == 0)
            continue;
        int met = rows[i].met(situation, figure);
        if (met >= 0)
            figure->holds |= rows[i].bit;
        if (met == 0)
            figure->holds_broken |= rows[i].bit;
    }
}
