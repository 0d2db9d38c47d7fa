#ifndef FIRMPEDAL_TESTS_ADVICE_ADVICE_CAR_H
#define FIRMPEDAL_TESTS_ADVICE_ADVICE_CAR_H

#include "advice/result.h"
#include "support/near.h"

/* A car read from words, with work laid over it, and all advice about it. */
struct advice_car {
    struct arena *arena;
    const struct system *system;
    const struct network *network;
    struct result *result;
};

/* Fails the test when a mistake stands in car or work; work may be NULL. The day is 2026-11-25. */
struct advice_car advice_car_read(const char *car, const char *work);
/* The same from files below the root of the sources; work may be NULL. */
struct advice_car advice_car_load(const char *car, const char *work);
/* A car from a file below the root of the sources, work as words. */
struct advice_car advice_car_after(const char *car, const char *work);
/* The same with nothing but the job worked out: no figures, no findings. It takes a tenth of the
 * time. */
struct advice_car advice_job_after(const char *car, const char *work);
/* A car and a work file (or NULL) with figures and findings alone: what the figures rest on is not
 * looked for, so that none of them is assumed and none has a reason. It takes a tenth of the time.
 */
struct advice_car advice_car_judged(const char *car, const char *work);
void advice_car_finish(struct advice_car *car);

int advice_part(const struct advice_car *car, const char *name);
/* Whether it has a finding with that id, and about that part (NULL: any). */
bool advice_finds(const struct advice_car *car, const char *id, const char *part);
/* The names of the bleed steps' nipples, "a; b; c", without master steps' prefix "outlets of". */
const char *advice_order(const struct advice_car *car);
/* The reason ids of the bleed steps, in the same form. */
const char *advice_reasons(const struct advice_car *car);
/* Whether a list of steps holds one of that row, about that part (NULL: any). */
const struct step *advice_step(const struct advice_car *car, const struct steps *steps,
                               const char *id, const char *part);

#endif
