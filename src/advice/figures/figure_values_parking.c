#include "advice/figures/figure_values.h"

static const struct parking *parking_at(const struct situation *situation, int part)
{
    return &situation->system->parts[part].as.parking;
}

GETS(value_hand_brake_slope,
     balance_hand_brake_slope(situation->system, subject, FACING_UP, situation->scratch))
GETS(value_hand_brake_slope_down,
     balance_hand_brake_slope(situation->system, subject, FACING_DOWN, situation->scratch))
GETS(value_hand_brake_shoe_force, parking_shoe_force(parking_at(situation, subject)).n)
GETS(value_hand_brake_clicks, balance_hand_brake_clicks(situation->system, subject))
GETS(value_pedal_lost_tight_cable,
     balance_pedal_lost(situation->system, situation->network, subject).m)

FIGURE_TEST(of_tight_cable)
{
    (void)sub;
    return parking_at(situation, subject)->holds_off.m > 0;
}
