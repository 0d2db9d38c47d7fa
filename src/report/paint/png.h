#ifndef FIRMPEDAL_REPORT_PAINT_PNG_H
#define FIRMPEDAL_REPORT_PAINT_PNG_H

#include "report/paint/paint.h"

/* Puts into a PNG how many dots an inch it has, so that it prints at its true size.
 *   dots   > 0; kept as whole dots a metre
 * Source: W3C, Portable Network Graphics, chunk pHYs. What is no PNG stays as it is. */
void png_state_resolution(struct bytes *png, double dots);

#endif
