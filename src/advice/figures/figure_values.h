#ifndef FIRMPEDAL_ADVICE_FIGURES_FIGURE_VALUES_H
#define FIRMPEDAL_ADVICE_FIGURES_FIGURE_VALUES_H

#include "advice/figures/figures.h"

/* What the rows of the table of figures call. subject is a part or circuit index as the row's
 * scope says, sub a cause; both are not looked at where the scope has none. Every value is SI. */

#define FIGURE_GETTER(name) double name(const struct situation *situation, int subject, int sub)
#define FIGURE_TEST(name)   bool name(const struct situation *situation, int subject, int sub)
#define FIGURE_REASON(name)                                                                        \
    const char *name(const struct situation *situation, int subject, int sub)
/* A getter of one expression. */
#define GETS(name, expression)                                                                     \
    double name(const struct situation *situation, int subject, int sub)                           \
    {                                                                                              \
        (void)subject, (void)sub;                                                                  \
        return (expression);                                                                       \
    }

/* The car */
FIGURE_GETTER(value_deceleration);
FIGURE_GETTER(value_deceleration_unassisted);
FIGURE_GETTER(value_front_share);
FIGURE_GETTER(value_front_locks_at);
FIGURE_GETTER(value_rear_locks_at);
FIGURE_GETTER(value_front_locks_effort);
FIGURE_GETTER(value_rear_locks_effort);
FIGURE_GETTER(value_front_locks_at_wet);
FIGURE_GETTER(value_rear_locks_at_wet);
FIGURE_GETTER(value_front_locks_effort_wet);
FIGURE_GETTER(value_rear_locks_effort_wet);
FIGURE_GETTER(value_rear_lock_margin);
FIGURE_GETTER(value_rear_lock_margin_wet);
FIGURE_GETTER(value_front_load_at_lock);
FIGURE_GETTER(value_rear_load_at_lock);
FIGURE_GETTER(value_rear_lifts_at);
FIGURE_GETTER(value_grip_used_front);
FIGURE_GETTER(value_grip_used_rear);
FIGURE_GETTER(value_grip_efficiency);
FIGURE_GETTER(value_stopping_distance);
FIGURE_GETTER(value_stopping_distance_wet);
FIGURE_GETTER(value_effort_half_g);
FIGURE_GETTER(value_effort_half_g_unassisted);
FIGURE_GETTER(value_side_difference_front);
FIGURE_GETTER(value_side_difference_rear);
FIGURE_GETTER(value_pull_friction_front);
FIGURE_GETTER(value_pull_friction_rear);
FIGURE_GETTER(value_pull_seized_front);
FIGURE_GETTER(value_pull_seized_rear);
FIGURE_GETTER(value_yaw_seized_front);
FIGURE_GETTER(value_yaw_seized_rear);
/* A pedal */
FIGURE_GETTER(value_deceleration_by_it);
FIGURE_GETTER(value_its_lock_at);
FIGURE_GETTER(value_its_lock_effort);
FIGURE_GETTER(value_its_lock_at_wet);
FIGURE_GETTER(value_its_lock_effort_wet);
FIGURE_GETTER(value_its_load_at_lock);
FIGURE_GETTER(value_pedal_effort);
FIGURE_GETTER(value_rod_force);
FIGURE_GETTER(value_rod_travel);
FIGURE_GETTER(value_pedal_travel);
FIGURE_GETTER(value_pedal_left);
FIGURE_GETTER(value_piston_stroke_left);
FIGURE_GETTER(value_stroke_left_circuit_lost);
FIGURE_TEST(of_split_pedal);
FIGURE_GETTER(value_pedal_travel_slack);
FIGURE_GETTER(value_pedal_left_slack);
FIGURE_GETTER(value_pedal_lost_rod_gap);
FIGURE_GETTER(value_stroke_left);
FIGURE_GETTER(value_bar_tilt);
/* A circuit */
FIGURE_GETTER(value_line_pressure);
FIGURE_GETTER(value_unassisted_pressure);
FIGURE_GETTER(value_volume_taken);
FIGURE_GETTER(value_piston_stroke);
FIGURE_GETTER(value_travel_circuit_lost);
FIGURE_GETTER(value_left_circuit_lost);
FIGURE_GETTER(value_deceleration_circuit_lost);
FIGURE_GETTER(value_fluid_in_circuit);
FIGURE_GETTER(value_port_blocked_pressure);
FIGURE_GETTER(value_pipe_run_longest);
FIGURE_GETTER(value_reservoir_volume_needed);
FIGURE_GETTER(value_air_cost);
FIGURE_GETTER(value_volume_by_cause);
/* A brake */
FIGURE_GETTER(value_wheel_pressure);
FIGURE_GETTER(value_clamp_force);
FIGURE_GETTER(value_brake_torque);
FIGURE_GETTER(value_brake_torque_reverse);
FIGURE_GETTER(value_brake_force);
/* A clutch slave, a hand brake */
FIGURE_GETTER(value_clutch_pressure);
FIGURE_GETTER(value_clutch_effort);
FIGURE_GETTER(value_clutch_pressure_end);
FIGURE_GETTER(value_clutch_effort_end);
FIGURE_GETTER(value_clutch_touch);
FIGURE_GETTER(value_clutch_lift);
FIGURE_GETTER(value_clutch_clearance);
FIGURE_GETTER(value_clutch_air_cost);
FIGURE_GETTER(value_clutch_torque);
FIGURE_GETTER(value_clutch_torque_new);
FIGURE_GETTER(value_clutch_volume_lost);
FIGURE_GETTER(value_slave_travel);
FIGURE_GETTER(value_slave_stroke_left);
FIGURE_GETTER(value_bearing_travel);
FIGURE_GETTER(value_bearing_travel_spare);
FIGURE_GETTER(value_bearing_travel_room);
FIGURE_GETTER(value_hand_brake_slope);
FIGURE_GETTER(value_hand_brake_slope_down);
FIGURE_GETTER(value_hand_brake_shoe_force);
FIGURE_GETTER(value_hand_brake_clicks);
FIGURE_GETTER(value_pedal_lost_tight_cable);

/* A brake: shoes, pads, friction band and heat, figure_values_brakes.c */
FIGURE_GETTER(value_shoe_torque_front);
FIGURE_GETTER(value_shoe_torque_rear);
FIGURE_GETTER(value_lining_pressure);
FIGURE_GETTER(value_pad_pressure);
FIGURE_GETTER(value_pad_pressure_most);
FIGURE_TEST(of_known_pad);
FIGURE_TEST(of_known_arc);
FIGURE_GETTER(value_brake_torque_low);
FIGURE_GETTER(value_brake_torque_high);
FIGURE_GETTER(value_friction_sensitivity);
FIGURE_GETTER(value_drum_growth);
FIGURE_GETTER(value_drum_growth_tip);
FIGURE_GETTER(value_heat_per_stop);
FIGURE_GETTER(value_rise_per_stop);
FIGURE_GETTER(value_surface_rise);
FIGURE_GETTER(value_temperature_after_ten);
FIGURE_GETTER(value_fluid_after_ten);
FIGURE_GETTER(value_boiling_margin_dry);
FIGURE_GETTER(value_boiling_margin_wet);
FIGURE_TEST(of_boiling_fluid);
FIGURE_REASON(refuses_near_lock);
FIGURE_REASON(refuses_near_lock_reverse);
FIGURE_REASON(refuses_near_lock_high);

FIGURE_TEST(of_servo);
FIGURE_TEST(of_front_sides);
FIGURE_TEST(of_rear_sides);
FIGURE_TEST(of_front_pair); /* the same of a car, not of the two discs of one wheel */
FIGURE_TEST(of_rear_pair);
FIGURE_TEST(of_brakes); /* it has brakes at all: a description may be of a clutch alone */
FIGURE_TEST(of_two_axles);
FIGURE_TEST(of_axles_together); /* both worked by the same pedals */
FIGURE_TEST(
    of_axles_apart); /* the pedal works all brakes of one axle, another those of the other */
FIGURE_TEST(of_motorcycle);
FIGURE_TEST(of_front_lock); /* the front wheels lock first on that road */
FIGURE_TEST(of_rear_lock);
FIGURE_TEST(of_front_lock_wet);
FIGURE_TEST(of_rear_lock_wet);
FIGURE_TEST(of_balance_bar);
FIGURE_TEST(of_pedal_with_drums);
FIGURE_TEST(of_circuit_with_discs);
FIGURE_TEST(of_drum);
FIGURE_TEST(of_clutch_with_clamp);
FIGURE_TEST(of_tight_cable);
FIGURE_TEST(of_cause); /* there is something in the circuit that could take volume so */

FIGURE_REASON(refuses_front_lock);
FIGURE_REASON(refuses_rear_lock);
FIGURE_REASON(refuses_its_lock);
FIGURE_REASON(refuses_its_lock_wet);
FIGURE_REASON(refuses_front_lock_wet);
FIGURE_REASON(refuses_rear_lock_wet);
FIGURE_REASON(refuses_grip_use);
FIGURE_REASON(refuses_half_g);
FIGURE_REASON(refuses_half_g_unassisted);

/* A pedal in other cases */
FIGURE_GETTER(value_pedal_travel_new);
FIGURE_GETTER(value_pedal_left_new);
FIGURE_TEST(of_pedal_new);
FIGURE_GETTER(value_pedal_travel_worn);
FIGURE_GETTER(value_pedal_left_worn);
FIGURE_TEST(of_pedal_worn);
FIGURE_GETTER(value_pedal_travel_hot);
FIGURE_GETTER(value_pedal_left_hot);
FIGURE_TEST(of_pedal_hot);
FIGURE_GETTER(value_pedal_travel_knocked_back);
FIGURE_GETTER(value_pedal_left_knocked_back);
FIGURE_TEST(of_pedal_knocked_back);
FIGURE_GETTER(value_pedal_travel_worn_hoses);
FIGURE_GETTER(value_pedal_left_worn_hoses);
FIGURE_TEST(of_pedal_worn_hoses);

/* Servo and valves */
FIGURE_GETTER(value_assisted_strokes);
FIGURE_GETTER(value_residual_pressure);
FIGURE_TEST(of_residual_valve);
FIGURE_GETTER(value_release_pressure);
FIGURE_TEST(of_reducing_valve);
FIGURE_GETTER(value_valve_knee);
FIGURE_TEST(of_knee);
FIGURE_GETTER(value_shuttle_difference);
FIGURE_GETTER(value_shuttle_difference_lost);
FIGURE_TEST(of_shuttle);

#endif
