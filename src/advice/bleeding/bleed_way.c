#include "advice/bleeding/bleed_way.h"

#include <math.h>
#include <stddef.h>

#include "advice/bleeding/bleed_scope.h"
#include "parts/flow.h"
#include "physics/press.h"
#include "physics/pressure.h"

/* From memory: a stroke, m3; the reservoir's level over its master, m. */
#define USUAL_STROKE      5e-6
#define USUAL_OVER_MASTER 0.1
/* So many strokes at one nipple are beyond what any car takes. */
enum { MOST_STROKES = 400 };

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

struct volume bleed_stroke(const struct system *system, const struct circuit *circuit,
                           bool *assumed)
{
    const struct part *part = &system->parts[circuit->master];
    double stroke = own_stroke(part, circuit->chamber, assumed);
    int pedal = pressure_pedal_of(system, circuit->master);
    if (pedal >= 0) {
        double pad =
            fmin(bleed_pad_stop(system, pedal).m, pedal_end(&system->parts[pedal].as.pedal).m);
        double by_pedal = piston_for_pad(system, pedal, circuit->master, pad);
        stroke = by_pedal > 0 ? fmin(stroke, by_pedal) : stroke;
    } else if (!part_is_new(part)) {
        stroke *= limit_value("old-master-stroke");
    }
    return (struct volume){master_area(&part->as.master).m2 * (stroke - part->as.master.cut_off.m)};
}

struct length bleed_head(const struct system *system, int master, int part, bool *assumed)
{
    int reservoir = reservoir_of(system, master);
    double top = reservoir >= 0 ? system->parts[reservoir].fitted.height.m : NAN;
    bool over_master = isnan(top);
    if (over_master) {
        top = system->parts[master].fitted.height.m + USUAL_OVER_MASTER;
    }
    double height = top - (part >= 0 ? system->parts[part].fitted.height.m : NAN);
    *assumed = *assumed || over_master || isnan(height);
    return (struct length){isnan(height) ? limit_value("bleed-head") : height};
}

struct volume bleed_usable(const struct system *system, const struct network *network, int circuit)
{
    int reservoir = reservoir_of(system, network->circuits[circuit].master), users = 0;
    if (reservoir < 0) {
        return (struct volume){NAN};
    }
    for (int c = 0; c < network->circuit_count; c++) {
        users += reservoir_of(system, network->circuits[c].master) == reservoir;
    }
    const struct reservoir *data = &system->parts[reservoir].as.reservoir;
    double usable = data->usable.m3 > 0 ? data->usable.m3 : data->capacity.m3 / 3;
    return (struct volume){users > 1 ? usable / 2 : usable};
}

double bleed_full_flow(const struct purge_net *net, int nipple, double push)
{
    struct passage passage = passage_usual();
    struct resistance way = flow_passage(net->density, net->viscosity, &passage);
    bool open = true;
    for (int leg = net->nipples[nipple].leg; leg >= 0; leg = net->legs[leg].above) {
        way.linear +=
            flow_pipe(net->density, net->viscosity, net->legs[leg].length, net->legs[leg].bore);
        open = open && !net->legs[leg].shut;
    }
    return open && push > 0 ? flow_driven(way, push) : 0;
}

static double push_of(const struct system *system, int master, enum bleed_method method,
                      double density)
{
    bool assumed = false;
    switch (method) {
    case METHOD_PRESSURE:
        return limit_value("kit-pressure");
    case METHOD_VACUUM:
    case METHOD_REVERSE:
        return limit_value("kit-vacuum");
    case METHOD_GRAVITY:
        return flow_head(density, bleed_head(system, master, -1, &assumed).m);
    case METHOD_PEDAL:
    case METHOD_COUNT:
        break;
    }
    return 0;
}

struct purge_way bleed_way_of(const struct system *system, const struct network *network,
                              int circuit, const struct bleed_wishes *wishes)
{
    const struct circuit *of = &network->circuits[circuit];
    int fluid = system_fluid_of(system, of->master);
    const struct fluid_row *row =
        fluid_row(fluid >= 0 ? system->parts[fluid].as.fluid.grade : GRADE_NOT_SAID);
    row = row == NULL ? fluid_row(GRADE_DOT4) : row;
    bool assumed = false;
    double stroke = bleed_stroke(system, of, &assumed).m3;
    struct purge_way way = {
        .method = wishes->method,
        .shut_under_pressure = wishes->method == METHOD_PEDAL && wishes->shut_under_pressure,
        .stroke = stroke > 0 ? stroke : USUAL_STROKE,
        .stroke_time = limit_value("bleed-stroke-time"),
        .pause_time = limit_value("bleed-pause-time"),
        .push = push_of(system, of->master, wishes->method, row->density.kg_m3),
        .reservoir = NAN,
        .clear_strokes = (int)limit_value("clear-strokes"),
        .most_strokes = MOST_STROKES,
    };
    int reservoir = reservoir_of(system, of->master);
    double usable = bleed_usable(system, network, circuit).m3;
    if (reservoir >= 0 && usable > 0) {
        way.reservoir = system->parts[reservoir].as.reservoir.capacity.m3;
        way.reserve = way.reservoir - usable;
    }
    return way;
}
