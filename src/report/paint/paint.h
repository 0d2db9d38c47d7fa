#ifndef FIRMPEDAL_REPORT_PAINT_PAINT_H
#define FIRMPEDAL_REPORT_PAINT_PAINT_H

#include <stdbool.h>
#include <stddef.h>

#include "base/arena.h"
#include "base/date.h"
#include "report/paint/sketch.h"

/* The bytes of a file, in memory; they live in the arena. Set arena before the first call. */
struct bytes {
    struct arena *arena;
    unsigned char *items;
    size_t count;
    size_t capacity;
};

/* Opens a ruler on the fonts of this machine. false with words in *error when there is no font
 * that has plain letters. Close it in any case. */
bool paint_ruler_open(struct ruler *ruler, const char **error);
void paint_ruler_close(struct ruler *ruler);

/* Paints sketches into memory. The same sketches give the same bytes every time: the date in a PDF
 * is the one given, never that of the clock.
 *   gives  false with words in *error when letters are missing in all fonts, a sketch is absurdly
 *          large or there is no memory
 */
bool paint_pdf(const struct sketch *pages, int count, const char *title, struct date date,
               struct bytes *out, const char **error);
/* dots: dots an inch, 20 to 1200, which the file states. */
bool paint_png(const struct sketch *sketch, double dots, struct bytes *out, const char **error);

#endif
