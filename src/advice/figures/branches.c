#include "advice/figures/branches.h"

#include <math.h>

#include "physics/press.h"
#include "physics/pressure.h"

/* Cases of a law side by side: the words of each, and the inputs at which the next one begins. */
struct cases {
    const char *words[3];
    double ends[2];
    int count;
};

static bool pick(const struct cases *cases, double now, enum dimension dimension,
                 struct branch *branch)
{
    if (isnan(now))
        return false;
    for (int i = 0; i + 1 < cases->count; i++)
        if (isnan(cases->ends[i]))
            return false;
    int at = 0;
    while (at + 1 < cases->count && now > cases->ends[at])
        at++;
    branch->index = at;
    branch->words = cases->words[at];
    branch->now = now;
    branch->from = at > 0 ? cases->ends[at - 1] : 0;
    branch->to = at + 1 < cases->count ? cases->ends[at] : INFINITY;
    branch->dimension = dimension;
    return true;
}

static double pressure_into(const struct network *network, const struct solution *solution,
                            int part)
{
    int vertex = network_vertex(network, part, 0);
    return vertex < 0 ? NAN : solution->pressures[vertex].pa;
}

/* Force of the pedal on the input rod of a direct servo. */
static double force_into(const struct system *system, const struct solution *solution, int servo)
{
    int master = system->parts[servo].as.servo.works;
    int pedal = master < 0 ? -1 : pressure_pedal_of(system, master);
    if (pedal < 0)
        return NAN;
    const struct pedal *data = &system->parts[pedal].as.pedal;
    double force = pedal_rod_force(data, solution->pedals[pedal].effort).n;
    if (data->works.count == 2) {
        double first = pedal_bar_share(data).of_1;
        force *= pressure_worked_master(system, pedal, 0) == master ? first : 1 - first;
    }
    return force;
}

static bool servo_branch(const struct system *system, const struct network *network,
                         const struct solution *solution, int part, struct branch *branch)
{
    const struct servo *servo = &system->parts[part].as.servo;
    struct cases cases = {
        {"below its cut in: no help yet", "helping: the output rises by its ratio",
         "past its knee: all its help is used up, more comes from the foot alone"},
        {NAN, NAN},
        3};
    if (servo->type != SERVO_REMOTE) {
        cases.ends[0] = servo->cut_in.n;
        cases.ends[1] = servo_knee(servo).n;
        return pick(&cases, force_into(system, solution, part), DIMENSION_FORCE, branch);
    }
    cases.ends[0] = servo->line_cut_in.pa;
    cases.ends[1] = servo_line_knee(servo).pa;
    return pick(&cases, pressure_into(network, solution, part), DIMENSION_PRESSURE, branch);
}

static bool valve_branch(const struct system *system, const struct network *network,
                         const struct solution *solution, int part, struct branch *branch)
{
    const struct valve *valve = &system->parts[part].as.valve;
    double now = pressure_into(network, solution, part);
    switch (valve->type) {
    case VALVE_LIMITING:
        return pick(&(struct cases){{"below its limit: it passes all",
                                     "at its limit: it is shut, nothing more gets through"},
                                    {valve->limit.pa},
                                    2},
                    now, DIMENSION_PRESSURE, branch);
    case VALVE_PROPORTIONING:
    case VALVE_LOAD_SENSING:
        return pick(&(struct cases){{"below its knee: it passes all",
                                     "above its knee: of what comes on top it passes its slope"},
                                    {valve->knee.pa},
                                    2},
                    now, DIMENSION_PRESSURE, branch);
    case VALVE_HOLD_OFF:
        return pick(&(struct cases){{"shut until it opens", "opening: catching up",
                                     "caught up: it passes all"},
                                    {valve->opens.pa, valve->equal_above.pa},
                                    3},
                    now, DIMENSION_PRESSURE, branch);
    case VALVE_NOT_SAID:
    case VALVE_RESIDUAL:
    case VALVE_SHUTTLE:
        break;
    }
    return false;
}

static bool master_branch(const struct system *system, const struct network *network,
                          const struct solution *solution, int part, struct branch *branch)
{
    const struct master *master = &system->parts[part].as.master;
    return master_is_stepped(master) &&
           pick(&(struct cases){{"below its take-up pressure: the large bore delivers",
                                 "above its take-up pressure: the small bore delivers alone"},
                                {master->take_up.pa},
                                2},
                pressure_into(network, solution, part), DIMENSION_PRESSURE, branch);
}

static bool brake_branch(const struct network *network, const struct solution *solution, int part,
                         struct pressure threshold, struct branch *branch)
{
    return pick(&(struct cases){{"below the pressure at which it begins to brake", "braking"},
                                {threshold.pa},
                                2},
                pressure_into(network, solution, part), DIMENSION_PRESSURE, branch);
}

static bool pedal_branch(const struct system *system, const struct network *network,
                         const struct solution *solution, int part, struct branch *branch)
{
    if (!press_is_brake(system, network, part) || isnan(solution->pedals[part].travel.m))
        return false;
    const struct pedal_state *pedal = &solution->pedals[part];
    branch->index = pedal->on_floor ? 1 : pedal->bottomed ? 2 : 0;
    branch->words = pedal->on_floor ? "on the floor before the effort is reached"
                    : pedal->bottomed
                        ? "a piston at the end of its bore before the effort is reached"
                        : "the effort is reached above the floor";
    branch->now = branch->from = branch->to = NAN;
    return true;
}

bool branch_of(const struct system *system, const struct network *network,
               const struct solution *solution, int part, struct branch *branch)
{
    *branch = (struct branch){.part = part};
    const struct part *of = &system->parts[part];
    switch (of->kind) {
    case KIND_SERVO:
        return servo_branch(system, network, solution, part, branch);
    case KIND_VALVE:
        return valve_branch(system, network, solution, part, branch);
    case KIND_MASTER:
        return master_branch(system, network, solution, part, branch);
    case KIND_DISC:
        return brake_branch(network, solution, part, of->as.disc.threshold, branch);
    case KIND_DRUM:
        return brake_branch(network, solution, part, of->as.drum.threshold, branch);
    case KIND_PEDAL:
        return pedal_branch(system, network, solution, part, branch);
    case KIND_VEHICLE:
    case KIND_FLUID:
    case KIND_RESERVOIR:
    case KIND_PIPE:
    case KIND_HOSE:
    case KIND_JOINT:
    case KIND_SLAVE:
    case KIND_PARKING:
    case KIND_COUNT:
        break;
    }
    return false;
}
