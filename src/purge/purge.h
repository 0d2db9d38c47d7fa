#ifndef FIRMPEDAL_PURGE_PURGE_H
#define FIRMPEDAL_PURGE_PURGE_H

#include "purge/purge_net.h"
#include "purge/purge_run.h"

/* Getting the air out, stroke by stroke: air and fluid as slugs that move through the legs and pots
 * of one circuit. Planner and judge both ask this simulation. docs/bleeding.md has the formulas.
 *
 * The model. A leg (pipe or hose, with the small chamber at its far end; a passage; the master's
 * own chamber) is a queue of slugs, air and fluid, each with its volume; what is pushed in at one
 * end drives the same volume out at the other. Air runs ahead of the fluid by the film it leaves on
 * the wall and, in wide legs that climb or fall, by its own rise, in strokes and pauses
 * (parts/bubble.h). A pot (a brake, a slave) keeps its air at the top: with the nipple open the air
 * leaves first, down to what lies above the nipple. On the way to a pot behind, a pot with a nipple
 * of its own lets fluid through first, so that its own air stays; one without opens at its top.
 *
 * Pedal: the stroke's volume goes in at a steady rate. Closed branches breathe: at the pressure
 * that the flow makes at their tee their air shrinks by Boyle and takes up fluid; air on the way as
 * well. Held open until the flow stops, that fluid goes on to the nipple: the whole stroke counts.
 * Shut at the end of the stroke, while the pedal still presses, it flows back up the pipe: only the
 * rest counts (purge/purge_breath.h). Pressure, vacuum, gravity: one steady push; air in a
 * falling leg takes its height off the head; where that locks the flow one waits, if the air can
 * rise. Reverse: in at the nipple, out through the master.
 *
 * Left out: froth and dissolved air, the stretch of hoses, vacuum's widening of the air (it changes
 * the time, not the volume), cups that draw air in. Air is counted as its volume at one atmosphere
 * throughout. Everything is deterministic, bounded, and keeps volume to rounding. */

/* Room for runs over one net: queues, results. curve: whether points are kept (bounded, at most
 * 4096). A run allocates nothing. */
struct purge_room;
struct purge_room *purge_room(const struct purge_net *net, int most_turns, bool curve,
                              struct arena *arena);

/* Bleeds by the given turns, each until no air is left on the way to its nipple that could leave
 * through it (less than a thousandth of a mm3) and fluid has come, then clear strokes; a turn that
 * gave up has none. At most most_turns of the room are gone through. The result belongs to the room
 * and holds until the next run.
 * Checked by tests/purge/test_purge.c */
const struct purge_result *purge_run(const struct purge_net *net, const struct purge_way *way,
                                     const struct purge_turn *turns, int turn_count,
                                     struct purge_room *room);

#endif
