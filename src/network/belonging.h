#ifndef FIRMPEDAL_NETWORK_BELONGING_H
#define FIRMPEDAL_NETWORK_BELONGING_H

#include "network/graph.h"
#include "network/system.h"

/* What belongs to what on this car, and what the work did to it. */

/* The reservoir that feeds a master: its own, else that of the master in the same casting, else
 * the only one; -1 when there is none or it cannot be told. */
int reservoir_of(const struct system *system, int master);
/* The master or servo that a supply or vacuum hose belongs to, by its name as the reader gives it;
 * -1: a pressure hose, or it cannot be told. */
int soft_hose_owner(const struct system *system, int hose);
/* Nipples of a part, counting what is not said as usual: one at brakes and slaves, none else. */
int nipples_of(const struct part *part);
/* The vertex that a nipple opens; -1 when no circuit reaches it. */
int nipple_vertex(const struct system *system, const struct network *network, struct nipple nipple);
/* What an earlier work opened was bled after it: only the latest work is at hand. */
bool work_is_at_hand(const struct system *system, struct date done);
/* Whether the work at hand changes this fluid: all of it, or for another. */
bool fluid_is_changed(const struct system *system, int fluid);
/* Whether the work fitted a new part. */
bool part_is_new(const struct part *part);
/* Whether a master, or the reservoir that feeds it, ran dry. */
bool master_ran_dry(const struct system *system, int master);
/* Whether the work at hand, the latest, renewed the fluid. */
bool fluid_is_renewed(const struct system *system);
/* Whether the work opened, renewed or replaced a part. */
bool part_was_opened(const struct part *part);

#endif
