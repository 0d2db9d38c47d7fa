#ifndef FIRMPEDAL_PHYSICS_TRAVEL_H
#define FIRMPEDAL_PHYSICS_TRAVEL_H

#include "physics/solution.h"

/* Volume that a circuit takes from its master at the given pressures, by cause.
 *
 *   by_vertex  pressures, Pa gauge, >= 0, as pressure_spread leaves them
 *   state      how brakes and hoses stand; its effort and lost circuit are not looked at
 *   by_cause   filled; the cause that rests on something unknown becomes NaN, the others stay
 *
 * Beyond a remote servo the volume is that of its piston, so it counts once. The slave's own travel
 * is not counted. Fluid is all that is pressed, that before the master's piston too; air is spread
 * over it.
 * Source: conservation of volume; each law with its part.
 * Checked by tests/physics/test_travel.c and tests/reference/test_x1_travel_budget.c */
void travel_volumes(const struct system *system, const struct network *network, int circuit,
                    const struct pressure *by_vertex, const struct state *state,
                    struct volume by_cause[CAUSE_COUNT]);

/* How one circuit's fluid gives way; NaN without a fluid. */
struct squeeze {
    struct pressure modulus;
    double slope;
};
struct squeeze travel_squeeze(const struct system *system, int fluid, bool hot);
/* What a hose counts as in a state. */
enum hose_state travel_hose_as(enum hose_case hoses);
/* Fluid in a chamber at rest as its linings then stand, m3. */
struct volume travel_chamber(const struct part *part, int chamber, const struct brake_case *brakes);

/* Fluid in a circuit at rest, from the master's outlet on: pipes, hoses and chambers, m3. NaN when
 * one of them is not known.
 * Checked by tests/physics/test_travel.c */
struct volume travel_fluid(const struct system *system, const struct network *network, int circuit);

/* Volume that all beyond a vertex takes, itself included, at the given pressures, by cause; m3. NaN
 * where part of it is not known.
 *
 *   from   a vertex of the circuit: the outlet of a remote servo, whose piston sweeps that volume
 *
 * Checked by tests/physics/test_travel.c */
void travel_volumes_beyond(const struct system *system, const struct network *network, int from,
                           const struct pressure *by_vertex, const struct state *state,
                           struct volume by_cause[CAUSE_COUNT]);
/* Their sum. */
struct volume travel_volume_beyond(const struct system *system, const struct network *network,
                                   int from, const struct pressure *by_vertex,
                                   const struct state *state);

/* What of a circuit's free air is lost at a vertex and beyond, m3: nobody knows where it sits, so
 * it is spread evenly over the fluid of the whole circuit, and each piece shrinks at the pressure
 * where it is: before a remote servo that of the pedal's line, behind it the servo's, behind a
 * valve the valve's. NaN where a volume or a pressure is not known, unless there is no air.
 *
 *   from      a vertex of the circuit; its source: all of it
 *   free_air  at one atmosphere, m3, >= 0
 *
 * Source: Boyle's law; even spread: our own.
 * Checked by tests/physics/test_travel.c */
struct volume travel_air(const struct system *system, const struct network *network, int from,
                         const struct pressure *by_vertex, struct volume free_air);

#endif
