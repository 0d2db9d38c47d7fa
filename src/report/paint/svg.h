#ifndef FIRMPEDAL_REPORT_PAINT_SVG_H
#define FIRMPEDAL_REPORT_PAINT_SVG_H

#include "report/paint/paint.h"

/* Writes a sketch as SVG 1.1 into memory: words stay words, each as wide as the ruler says; shapes
 * of one name are a group with that name as id and title; the sketch's own title and description
 * come first. The same sketch gives the same bytes. Source: W3C, Scalable Vector Graphics 1.1.
 *   gives  false with words in *error when a sketch is absurdly large */
bool paint_svg(const struct sketch *sketch, const struct ruler *ruler, struct bytes *out,
               const char **error);

#endif
