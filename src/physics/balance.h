#ifndef FIRMPEDAL_PHYSICS_BALANCE_H
#define FIRMPEDAL_PHYSICS_BALANCE_H

#include "physics/grip_use.h"

/* What works the brakes of each axle. */
struct axle_pedals {
    int front,
        rear;   /* part index of the one pedal or lever of all brakes there; -1: none, several */
    bool apart; /* each axle has its own, as on a motorcycle: there is no order of locking */
};
struct axle_pedals balance_axle_pedals(const struct system *system, const struct network *network);

/* The wheels that lock first at the grip of the road. */
struct first_lock {
    bool known;              /* loads and forces of both axles are known */
    enum axle axle;          /* AXLE_NONE: nothing locks up to 2000 N, or the rear wheels leave the
                                road before */
    bool lifts;              /* that they do */
    struct acceleration at;  /* deceleration; NaN where nothing locks */
    struct force effort;     /* on the pedals that the state presses; likewise */
    struct axle_loads loads; /* then */
    double front, rear;      /* grip that the axles ask for then, over the grip */
};

/* Presses harder and harder until a wheel asks the road for its grip, valves and servo included;
 * with a pedal without floor.
 *
 *   state   what is assisted, lost, pressed; its effort does not matter
 *   grip    of the tyres on the road, -, > 0
 *   room    for the solving; holds the state at the lock
 *
 * With a fixed share phi of the rear, no rolling and no turning parts: front at
 * g mu (1-psi)/(1-phi-mu chi), rear at g mu psi/(phi+mu chi), the lesser of the two. Level road,
 * both wheels of an axle loaded alike; the one that is braked harder counts.
 * Source: moment balance about the tyre contacts; J. Y. Wong, Theory of Ground Vehicles, section on
 * braking (from memory).
 * Checked by tests/physics/test_balance.c, tests/cross/car_roots.c */
struct first_lock balance_first_lock(const struct system *system, const struct network *network,
                                     const struct state *state, struct number grip,
                                     struct solution *room);

/* Side difference of an axle: 1 - weaker / stronger brake force. NaN when not known, or when the
 * axle has no brakes on two sides or none of them presses. */
struct share balance_side_difference(const struct system *system, const struct solution *solution,
                                     enum axle axle);

/* Facing up a slope the wheels would turn backwards, facing down forwards. */
enum facing { FACING_UP, FACING_DOWN };

/* Slope (tangent) that the hand brake holds.
 *
 *   parking   part index of a hand brake
 *   room      for its memory of shoe factors
 *   gives     the lesser of what the brakes hold, sin = sum of torque/radius over weight, and what
 *             the grip of the braked wheels holds; NaN when not known
 *
 *   torque of a drum = force at the shoes * parking_drum_factor * radius
 *   torque of a disc = 2 mu * holding friction * force at the pads * effective radius
 *   rear wheels alone braked: tan = mu psi/(1 - mu chi) facing up, mu psi/(1 + mu chi) down;
 *   front alone: mu (1-psi)/(1 + mu chi) up, mu (1-psi)/(1 - mu chi) down
 *
 * Source: moment balance.
 * Checked by tests/physics/test_balance.c */
double balance_hand_brake_slope(const struct system *system, int parking, enum facing facing,
                                struct solution *room);

/* Clicks of its lever until the hand brake holds, pulled with PARKING_CLICKS_EFFORT: parking_clicks
 * with the mean of what its brakes ask for; NaN when not known.
 * Checked by tests/physics/test_balance.c */
double balance_hand_brake_clicks(const struct system *system, int parking);

/* Pedal travel that is lost when a cable that held shoe tips off their stops is let off: the shoes
 * were set with it tight, so each tip's clearance grows by what it held off.
 *
 *   gives   sum over the drums it works of ratio * 2 * bore area * held off / master area (on a
 *           balance bar times the share of that rod), m at the pad; NaN when not known
 *
 * Source: conservation of volume. Checked by tests/physics/test_balance.c */
struct length balance_pedal_lost(const struct system *system, const struct network *network,
                                 int parking);

#endif
