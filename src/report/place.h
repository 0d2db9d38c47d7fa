#ifndef FIRMPEDAL_REPORT_PLACE_H
#define FIRMPEDAL_REPORT_PLACE_H

#include "report/layout.h"

/* Which symbols there are and where each stands. Fills symbols, symbol_of, axles, engine and rank
 * of the layout. */
void place_symbols(struct layout *layout);

/* The side of a part when the driver sits on the right. */
enum side place_side(const struct layout *layout, int part);

/* Where pipes may reach a chamber of a symbol.
 *   gives  how many; docks has room for 16 */
enum { MOST_DOCKS = 24 };
int place_docks(const struct layout *layout, const struct symbol *symbol, int chamber,
                struct dock docks[static MOST_DOCKS]);

/* The reservoir that feeds a master: its own, else the only one, else -1. */
int place_reservoir_of(const struct system *system, int master);

/* How many nipples of a part are known or bled. */
int place_nipples(const struct layout *layout, int part);

/* Pipes, hoses and direct joints at all chambers of a part. */
int place_ways_at(const struct network *network, const struct system *system, int part);

#endif
