#ifndef FIRMPEDAL_ADVICE_JOB_BEFORE_H
#define FIRMPEDAL_ADVICE_JOB_BEFORE_H

#include "advice/bleeding/touched.h"
#include "advice/checks/hoses.h"

/* What is done before anything is opened: what the work will destroy is read, what is due is
 * settled, nipples and pistons are tried while the old pressure is there, old fluid is drawn out.
 *
 *   opening   what opening_of gave: its open ends are counted
 *   bleed     its method, and what renewing the fluid would add to it
 *   today     from which fluid's age counts
 *   gives     steps of PHASE_BEFORE, in no order yet */
struct steps before_of(const struct system *system, const struct network *network,
                       const struct hose_list *hoses, const struct steps *opening,
                       const struct bleed_plan *bleed, struct date today, struct arena *arena);

#endif
