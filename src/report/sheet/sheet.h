#ifndef FIRMPEDAL_REPORT_SHEET_SHEET_H
#define FIRMPEDAL_REPORT_SHEET_SHEET_H

#include <stdbool.h>
#include <stddef.h>

#include "advice/result.h"
#include "report/paint/paint.h"
#include "report/paint/sketch.h"

enum paper { PAPER_A4, PAPER_LETTER };

/* The pages of the service sheet as values; *count of them. */
const struct sketch *sheet_pages(const struct result *result, enum paper paper,
                                 const struct ruler *ruler, struct arena *arena, size_t *count);

/* The service sheet as the bytes of a PDF in out (out->arena must be set). The same result gives
 * the same bytes. false with words in *error. */
bool sheet_pdf(const struct result *result, enum paper paper, struct bytes *out,
               const char **error);

#endif
