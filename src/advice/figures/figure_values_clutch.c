#include <math.h>

#include "advice/figures/figure_values.h"

static const struct slave *slave_at(const struct situation *situation, int part)
{
    return &situation->system->parts[part].as.slave;
}

static const struct clutch_state *clutch_at(const struct situation *situation, int part)
{
    return &situation->usual->clutches[part];
}

GETS(value_clutch_pressure, clutch_at(situation, subject)->pressure.pa)
GETS(value_clutch_effort, clutch_at(situation, subject)->effort.n)
GETS(value_clutch_pressure_end, clutch_at(situation, subject)->pressure_end.pa)
GETS(value_clutch_effort_end, clutch_at(situation, subject)->effort_end.n)
GETS(value_clutch_touch, clutch_at(situation, subject)->touch.m)
GETS(value_clutch_volume_lost, clutch_at(situation, subject)->lost.m3)
GETS(value_slave_travel, clutch_at(situation, subject)->slave_travel.m)
GETS(value_slave_stroke_left,
     slave_at(situation, subject)->stroke.m - clutch_at(situation, subject)->slave_travel.m)
GETS(value_bearing_travel, clutch_at(situation, subject)->bearing_travel.m)
GETS(value_bearing_travel_spare, clutch_at(situation, subject)->bearing_travel.m -
                                     slave_at(situation, subject)->bearing_travel.m)
GETS(value_bearing_travel_room,
     slave_at(situation, subject)->bearing_most.m - clutch_at(situation, subject)->bearing_travel.m)
GETS(value_clutch_lift,
     clutch_lift(slave_at(situation, subject), clutch_at(situation, subject)->bearing_travel).m)
GETS(value_clutch_clearance,
     clutch_face_clearance(slave_at(situation, subject),
                           (struct length){value_clutch_lift(situation, subject, sub)})
         .m)
GETS(value_clutch_torque, clutch_torque(slave_at(situation, subject), true).nm)
GETS(value_clutch_torque_new, clutch_torque(slave_at(situation, subject), false).nm)

/* Lift that one millilitre of free air costs at full travel. */
FIGURE_GETTER(value_clutch_air_cost)
{
    (void)sub;
    const struct slave *slave = slave_at(situation, subject);
    struct volume lost =
        air_compression((struct volume){1e-6}, clutch_at(situation, subject)->pressure_end);
    struct length bearing = {lost.m3 / slave_area(slave).m2 / slave_ratio(slave)};
    return clutch_lift(slave, bearing).m;
}

FIGURE_TEST(of_clutch_with_clamp)
{
    (void)sub;
    return !isnan(slave_at(situation, subject)->clamp.n);
}
