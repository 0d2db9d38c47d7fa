#ifndef FIRMPEDAL_ADVICE_FIT_H
#define FIRMPEDAL_ADVICE_FIT_H

#include "advice/finding.h"
#include "advice/figures.h"

enum fit_verdict { FIT_SUITS, FIT_SUITS_WITH_CARE, FIT_DOES_NOT_SUIT, FIT_CANNOT_TELL };

/* A figure before and after. */
struct fit_line {
    const char *id, *title, *of;
    enum dimension dimension;
    double before, after;
    enum figure_state state; /* the worse of the two */
};
/* A limit met or not met by the new bore, as a reason of the verdict. */
struct fit_reason {
    const char *limit; /* id of the limit row */
    bool against;      /* speaks against the new bore */
    bool grave;        /* enough to refuse it */
    const char *words; /* with {before}, {after}, {limit} */
    struct named_quantity quantities[FINDING_QUANTITIES];
    int quantity_count;
};
struct fit {
    int part;
    struct length before, after; /* bores */
    struct acceleration stop;    /* the stop that efforts are compared for; NaN when unknown */
    struct fit_line *lines;
    int line_count;
    struct fit_reason *reasons;
    int reason_count;
    enum fit_verdict verdict;
    const char *nearest; /* name of the nearest standard bore, and how far off; or NULL */
};
/* Another bore for a cylinder: master, wheel cylinder (both sides when the name is of both),
 * caliper piston or clutch slave. Effort for the same stop, travel, reserve, failed circuit and
 * clutch travel before and after. */
struct fit *fit_of(const struct system *system, const struct network *network, const int *parts,
                   int part_count, struct length bore, struct force effort, struct date today,
                   struct arena *arena);
const char *fit_verdict_words(enum fit_verdict verdict);

/* Standard bores of the trade (common practice, no source). */
struct bore_row {
    const char *name; /* "7/8 in", "22 mm" */
    struct length bore;
};
const struct bore_row *bore_rows(size_t *count);
/* Nearest standard bore; NULL unless the bore is above 0. */
const struct bore_row *bore_nearest(struct length bore);
/* The standard bore that is easily taken for this one (within the limit danger-pair-within), the
 * nearest if there are several; or NULL. */
const struct bore_row *bore_twin(const struct bore_row *row);

#endif
