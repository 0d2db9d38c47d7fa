#include "physics/servo_stroke.h"

#include <math.h>

#include "physics/press.h"
#include "physics/travel.h"

static struct length remote_stroke(const struct system *system, const struct network *network,
                                   const struct solution *solved, int servo)
{
    int out = network_vertex(network, servo, 1);
    struct state usual = state_usual();
    if (out < 0)
        return (struct length){NAN};
    double volume = travel_volume_beyond(system, network, out, solved->pressures, &usual).m3;
    return (struct length){volume / circle_area(system->parts[servo].as.servo.bore).m2};
}

struct length servo_stroke_in(const struct system *system, const struct network *network,
                              const struct solution *solved, int servo)
{
    const struct servo *data = &system->parts[servo].as.servo;
    if (data->type == SERVO_REMOTE)
        return remote_stroke(system, network, solved, servo);
    if (data->works < 0)
        return (struct length){NAN};
    double sum = 0;
    for (int c = 0; c < network->circuit_count; c++)
        if (network->circuits[c].master == data->works)
            sum += solved->circuits[c].stroke.m;
    return (struct length){sum + press_rod_gap(system, data->works).m};
}
