#ifndef FIRMPEDAL_ADVICE_RULES_RULE_VALUES_H
#define FIRMPEDAL_ADVICE_RULES_RULE_VALUES_H

#include "advice/rules/rules.h"

/* What the rows of the table of rules measure. argument as the row has it; every value is SI. */

#define RULE_VALUE(name)  double name(const struct rule_car *car, double argument)
#define RULE_REASON(name) const char *name(const struct rule_car *car)

/* argument: effort, N */
RULE_VALUE(rule_share_of_weight); /* brake forces on rollers over weight */
RULE_VALUE(rule_deceleration);    /* m/s2 */
RULE_VALUE(rule_secondary);       /* worst circuit lost, or the parking brake if it does more */
RULE_VALUE(rule_unassisted);      /* without the servo's help */
RULE_VALUE(rule_left_of_service); /* worst circuit lost, of the whole */
RULE_VALUE(rule_front_over_load); /* brake force of the front axle over its standing load */
RULE_VALUE(rule_rear_over_load);
RULE_VALUE(rule_pedal_used); /* share of the pedal's travel, servo working */
RULE_VALUE(rule_pedal_left); /* share of the pedal's travel that is left, servo working */
/* argument: speed, m/s; at 500 N, counted from the first touch */
RULE_VALUE(rule_distance);
RULE_VALUE(rule_distance_secondary);
RULE_VALUE(rule_distance_unassisted);
/* argument not looked at */
RULE_VALUE(rule_distance_60mph); /* at 667 N */
RULE_VALUE(rule_parking_share);  /* parking brake's force over weight */
RULE_VALUE(rule_parking_slope);  /* slope that it holds */
RULE_VALUE(rule_parking_deceleration);
RULE_VALUE(rule_side_difference); /* the greater of both axles */
/* argument: the order of grip_order; slope of the band. Least spare over the rates */
RULE_VALUE(rule_lock_order);
RULE_VALUE(rule_grip_band);
/* argument not looked at */
RULE_VALUE(rule_lever_effort); /* for a stop of half g */
RULE_VALUE(rule_compartment);  /* capacity over full strokes of what it feeds, least */
RULE_VALUE(rule_lining);       /* the thinnest lining of a drum, m */
RULE_VALUE(rule_reservoir);    /* capacity over what pad wear draws, least */

RULE_REASON(rule_spares_two_circuits); /* more than one circuit */
RULE_REASON(rule_spares_without_servo);
RULE_REASON(rule_spares_with_servo);
RULE_REASON(rule_spares_one_circuit);
RULE_REASON(rule_spares_no_parking);
RULE_REASON(rule_spares_single_control); /* one pedal works four wheels */
RULE_REASON(rule_spares_many_means);     /* no pedal does */
RULE_REASON(rule_spares_light);          /* at most 10,000 lb */
RULE_REASON(rule_spares_over_10000_lb);
RULE_REASON(rule_spares_one_axle); /* brakes on one axle alone */
RULE_REASON(rule_spares_no_lever);
RULE_REASON(rule_spares_no_discs);
RULE_REASON(rule_spares_no_bonded);
RULE_REASON(rule_spares_no_riveted);

#endif
