#include "advice/bleeding/bleed_way.h"

#include <math.h>
#include <stddef.h>

#include "advice/bleeding/bleed_scope.h"
#include "advice/bleeding/bleed_stroke.h"
#include "parts/flow.h"
#include "physics/pressure.h"

/* From memory: a stroke, m3; the reservoir's level over its master, m. */
#define USUAL_STROKE      5e-6
#define USUAL_OVER_MASTER 0.1
/* So many strokes at one nipple are beyond what any car takes. */
enum { MOST_STROKES = 400 };

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
