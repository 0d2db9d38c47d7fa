#ifndef FIRMPEDAL_ADVICE_CHECKS_CHECKS_H
#define FIRMPEDAL_ADVICE_CHECKS_CHECKS_H

#include "advice/figures/figures.h"
#include "advice/checks/finding.h"
#include "advice/checks/hoses.h"
#include "advice/checks/readings.h"
#include "advice/rules/rules.h"

/* What a check sees, and the few things that all checks do. Each check is a function in a
 * check_*.c and a row in checks.c. */
struct checking {
    const struct system *system;
    const struct network *network;
    const struct figures *figures;
    struct hose_list hoses;
    struct rulings rulings;
    struct comparisons readings;
    struct date today;
    struct findings *findings;
    struct arena *arena;
};

/* For findings about no key in particular. */
#define NO_FIELD ((size_t)-1)

/* Adds a finding about a part (-1: the car). Its place is that of the field's value, else of the
 * part; {part} becomes the part's name. The pointer holds until the next one. */
struct finding *finding_add(struct checking *checking, const struct check_row *row, int part,
                            size_t field);
void finding_quantity(struct finding *finding, const char *name, double value,
                      enum dimension dimension);
void finding_bore(struct finding *finding, const char *name, struct length bore);
void finding_text(struct finding *finding, const char *name, const char *text);
/* Adds {name} with the value of the check's own limit, and gives it. */
double finding_limit(struct finding *finding, const char *name);

/* Whether a published rule is for a vehicle of this class and date, in use or as a new type; where
 * it is not, or nobody can tell, it is shown for comparison and no finding is made of it. */
bool ruling_is_for(const struct checking *checking, const char *rule);

/* The figure of that id about a subject (part or circuit), or NULL; only when it was computed. For
 * what is said of a figure beyond its law: never for a verdict on its value. */
const struct figure *figure_even_beyond(const struct checking *checking, const char *id,
                                        int subject);
/* The same, only within the limits of its law. */
const struct figure *figure_about(const struct checking *checking, const char *id, int subject);
/* Its value, NaN when there is none. */
double figure_value(const struct checking *checking, const char *id, int subject);
/* Travel, m, that a pedal must keep to its floor in every case. */
double floor_margin(const struct checking *checking, int pedal);
/* Marks the finding as resting on assumed values when that figure does; and as a guess when most of
 * what the figure rests on is assumed. */
void finding_rests_on(struct finding *finding, const struct figure *figure);

/* Whether one of the parts fed through any chamber of this one is a brake on that axle. */
bool part_feeds_axle(const struct system *system, const struct network *network, int part,
                     enum axle axle);
/* The other side's part: same kind and axle, other side; -1. */
int part_mirror(const struct system *system, int part);

#define CHECK(name) void check_##name(struct checking *checking, const struct check_row *row)

/* check_pedal.c */
CHECK(line_pressure);
CHECK(pedal_floor);
CHECK(pedal_reserve);
CHECK(pedal_used);
CHECK(pedal_slack);
CHECK(stroke_used);
CHECK(effort);
CHECK(lever_effort);
CHECK(stop_not_reached);
CHECK(ratio);
CHECK(assisted_ratio);
CHECK(clutch_ratio);
CHECK(bar_tilt);
/* check_cases.c */
CHECK(floor_hot);
CHECK(floor_knocked);
CHECK(floor_hoses);
CHECK(few_strokes);
/* check_lost.c */
CHECK(lost_floor);
CHECK(lost_weak);
CHECK(one_circuit);
CHECK(one_side);
CHECK(unassisted);
/* check_balance.c */
CHECK(rear_first);
CHECK(side_difference);
CHECK(pull_friction);
CHECK(bores_differ);
CHECK(reverse_weak);
CHECK(hand_brake);
CHECK(hand_brake_clicks_many);
CHECK(hand_brake_clicks_few);
CHECK(tight_cable);
/* check_grip.c */
CHECK(grip_order);
CHECK(grip_band);
/* check_heat.c */
CHECK(fluid_boils);
CHECK(fluid_may_boil);
CHECK(free_water);
CHECK(drum_grows);
CHECK(iron_too_hot);
CHECK(shoe_grabs);
/* check_hoses.c */
CHECK(hose_missing);
CHECK(hose_old);
CHECK(hose_age);
CHECK(hose_idle);
CHECK(mount_unknown);
CHECK(rigid_accepted);
CHECK(pipe_copper);
CHECK(vacuum_hose);
/* check_found.c */
CHECK(nipple_below);
CHECK(nipple_none);
CHECK(nipple_sheared);
CHECK(nipple_seized);
CHECK(caliper_pitted);
CHECK(bore_pitted);
CHECK(bore_stained);
CHECK(pistons_stuck);
CHECK(pull_stuck);
CHECK(weeping);
/* check_valves.c */
CHECK(residual_on_discs);
CHECK(residual_none);
CHECK(residual_drags);
CHECK(valve_in_front);
CHECK(hold_off);
CHECK(lamp_lit);
CHECK(lamp_dark);
CHECK(dead_leg);
/* check_fluid.c */
CHECK(fluid_old);
CHECK(fluid_age);
CHECK(fluid_found_other);
CHECK(fluid_found_grade);
CHECK(fluid_families);
CHECK(reservoir_small);
CHECK(clutch_starves);
/* check_clutch.c */
CHECK(clutch_short);
CHECK(clutch_over);
CHECK(slave_over);
CHECK(clutch_clearance);
CHECK(clutch_effort);
/* check_wear.c */
CHECK(drum_over);
CHECK(disc_under);
CHECK(lining_thin);
CHECK(riveted_thin);
CHECK(pad_thin);
CHECK(run_out);
/* check_bores.c */
CHECK(bore_odd);
CHECK(bore_twin);
CHECK(bore_changed);
CHECK(one_side_renewed);
/* check_rods.c */
CHECK(rod_gap);
CHECK(rod_gap_wide);
CHECK(rod_gap_beyond_play);
CHECK(servo_rod_gap);
CHECK(servo_rod_gap_wide);
CHECK(free_play);
CHECK(free_play_wide);
/* check_rules.c */
CHECK(rule_missed);
CHECK(rule_needs_date);
/* check_readings.c */
CHECK(reading_off);
CHECK(reading_impossible);
CHECK(assumed_mostly);

#undef CHECK

#endif
