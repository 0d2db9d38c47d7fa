#ifndef FIRMPEDAL_REPORT_DIAGRAM_SYMBOLS_H
#define FIRMPEDAL_REPORT_DIAGRAM_SYMBOLS_H

#include "report/diagram/layout.h"
#include "report/paint/sketch.h"

/* Draws the symbol of a part where the layout put it. Reservoir and pressure valves follow
 * ISO 1219-1 (from memory); brakes, masters and servos have simple shapes of their own. */
void symbol_draw(struct sketch *sketch, const struct layout *layout, const struct symbol *symbol);

/* A nipple: a circle with its number in bleeding order, or a small empty one that stays shut. */
void symbol_nipple(struct sketch *sketch, struct point at, int number);

/* The letter that the plan calls a joint by, in its box. */
void symbol_letter(struct sketch *sketch, struct box box, const char *letter);

#define PISTON_RADIUS 0.8 /* mm, of the dot that a brake's piston is */

/* A joint with two ends on a pipe: a bracket, a union, or where a pipe meets a hose. */
void symbol_inline_joint(struct sketch *sketch, struct point at, bool upright, bool bracket);

/* A piece of hose: a sleeve around the circuit's line, filled by its age. */
void symbol_hose(struct sketch *sketch, const struct point *points, int count, enum tag tag,
                 struct pen core);

/* A tag with a word on it: filled for what must be seen to. Its left upper corner. */
void symbol_tag(struct sketch *sketch, double x, double y, double width, const struct label *label);
#define TAG_HEIGHT 3.4

#endif
