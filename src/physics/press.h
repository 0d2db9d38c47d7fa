#ifndef FIRMPEDAL_PHYSICS_PRESS_H
#define FIRMPEDAL_PHYSICS_PRESS_H

#include "physics/solution.h"

/* One brake pedal or hand lever pressed with one effort, floor or no floor. */

/* What a pedal meets on its way down. */
struct reach {
    struct force rod;         /* on the masters' pistons, summed */
    struct length rod_travel; /* at the pedal's own rod or the balance bar's bearing */
    struct length travel;     /* at the pad, that the effort would need */
    struct length
        past_floor; /* needed beyond the floor, below 0 while it fits; NaN: no floor known */
    struct length past_bore; /* needed beyond the end of a master's bore, likewise */
    struct angle tilt;       /* of the balance bar, first rod ahead: above 0; NaN without */
    bool dead;               /* its one piston has no pressure to stand against */
};

/* Whether a pedal works a master that feeds a brake. */
bool press_is_brake(const struct system *system, const struct network *network, int pedal);

/* The gap in front of a master's piston: of the servo's output rod, but of the push rod where there
 * is none, or where only that one was measured. */
struct length press_rod_gap(const struct system *system, int master);
/* What of that gap counts by itself: all of it behind a direct servo and where no free play is said
 * of the pedal; else none, since who feels for the free play closes the gap. */
struct length press_own_gap(const struct system *system, int master);
/* What the rod into a direct servo goes before the servo's own rod moves, 0 without one. */
struct length press_lost_motion(const struct system *system, int master, bool assisted);
/* What the pad goes before the rod moves: its free play, 0 where that is not said. */
struct length press_free_play(const struct pedal *pedal);

/* Fills pressures of the circuits that the pedal makes, and of all their vertices.
 *
 *   effort  at the pad, N, >= 0
 *   gives   force on the masters' pistons, summed */
struct force press_pressures(const struct system *system, const struct network *network,
                             const struct state *state, int pedal, struct force effort,
                             struct solution *into);

/* The same, and the volumes and strokes of these circuits, and how far that takes the pedal.
 *
 *   stroke of a piston = cut-off + volume / area; full stroke where its circuit is lost; the first
 *                piston of a tandem without the cut-off where its spring carries the second along
 *   rod travel = own gap + lost motion of the servo + the stroke, or both strokes of a tandem; on a
 * balance bar the mean of both rods, weighted like the forces stepped master: what the circuits
 * take up to the take-up pressure is delivered by the large bore, the rest by the small one travel
 * = free play + ratio * rod travel + effort / stiffness
 *
 * Source: conservation of volume and the geometry of the lever.
 * Checked by tests/physics/test_press.c and tests/reference/test_x1_travel_budget.c */
struct reach press_travel(const struct system *system, const struct network *network,
                          const struct state *state, int pedal, struct force effort,
                          struct solution *into);

#endif
