#ifndef FIRMPEDAL_REPORT_SHEET_SHEET_H
#define FIRMPEDAL_REPORT_SHEET_SHEET_H

#include "advice/result.h"
#include "report/document/document.h"
#include "report/paint/paint.h"
#include "report/paint/sketch.h"

/* The service sheet: what is taken to the car and what stays with it, from nothing but the result
 * (with figures, findings, plan; with curves for the drawn ones). */

enum paper { PAPER_A4, PAPER_LETTER };

/* What the sheet holds only where it is asked for. */
enum annex {
    ANNEX_FIGURES, /* all of them, with ids and what they rest on */
    ANNEX_FINDINGS,
    ANNEX_CURVES,
    ANNEX_RULES, /* of one country */
    ANNEX_WAYS,  /* of bleeding, and what orders cost */
    ANNEX_CAUTIONS,
    ANNEX_STEPS, /* every step in full, with why */
    ANNEX_COUNT
};
/* "figures" */
const char *annex_word(enum annex annex);

struct sheet_order {
    const struct result *result;
    enum paper paper;
    unsigned annexes;    /* bits of 1u << enum annex */
    const char *country; /* of the annex of rules; NULL: none is said */
    const char *version;
};

/* The sheet as a document; lives in the arena. */
struct document sheet_document(const struct sheet_order *order, struct arena *arena);

/* The sides as values, from the arena; *count of them. */
struct sketch *sheet_sides(const struct sheet_order *order, const struct ruler *ruler,
                           struct arena *arena, size_t *count);

/* The bytes of the PDF in out (out->arena must be set). false with words in *error. */
bool sheet_pdf(const struct sheet_order *order, struct bytes *out, const char **error);

#endif
