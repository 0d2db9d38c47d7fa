#ifndef FIRMPEDAL_REPORT_DIAGRAM_PLACE_H
#define FIRMPEDAL_REPORT_DIAGRAM_PLACE_H

#include "report/diagram/layout.h"

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

/* Grid lines that something takes up. */
struct zone {
    int left, top, right, bottom;
};
/* A motorcycle's tyre, which stands among the parts; false for no such tyre. */
bool place_tyre(const struct layout *layout, int index, struct zone *zone);
/* Line `index` that is no pipe and that starts at a symbol: a master's feed, the push rods of a
 * pedal, a servo's vacuum hose. No part stands there; pipes cross feeds only.
 *   gives  false when the symbol has none of that index */
bool place_line(const struct layout *layout, const struct symbol *symbol, int index,
                struct zone *zone);

/* Pipes, hoses and direct joints at all chambers of a part. */
int place_ways_at(const struct network *network, const struct system *system, int part);

#endif
