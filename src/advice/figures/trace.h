#ifndef FIRMPEDAL_ADVICE_FIGURES_TRACE_H
#define FIRMPEDAL_ADVICE_FIGURES_TRACE_H

#include "advice/figures/branches.h"
#include "advice/figures/holds.h"
#include "advice/figures/weighing.h"

/* The way from one figure down to the lines of the file. */

/* A value that the figure moves with. */
struct trace_input {
    struct cited_key cited;
    double value; /* as it is now; the usual volume where a chamber's is taken */
    struct origin origin;
    const struct weight *weight;
    bool unusual; /* outside its row's usual range */
};

/* A step of the way: a figure, the inputs that come in here and in nothing below it, and how deep
 * it stands. The steps below a figure follow it. */
struct trace_step {
    const struct figure *figure;
    int depth;
    bool again;        /* it stood further up, with all below it */
    int *inputs;       /* by index of trace->inputs */
    bool *only_beyond; /* by place in inputs: here it matters only beyond a knee */
    int input_count;
};

/* A knee along the effort. */
struct trace_knee {
    struct branch branch;
    double effort; /* as a part of the effort of the check */
};

struct trace {
    const struct figure *figure;
    struct force effort;        /* asked for; NaN: each pedal's own */
    struct trace_input *inputs; /* most telling first */
    int input_count;
    struct trace_step *steps; /* the figure itself first */
    int step_count;
    struct branch *branches; /* the cases that hold now of the parts that the figure rests on */
    int branch_count;
    struct trace_knee *knees; /* of these parts, by effort */
    int knee_count;
};

/* Traces one of the figures of a car.
 *
 *   figures    as figures_of gave them for that effort
 *   weighing   of these figures; the trace points into it
 *   index      which of them
 *
 * Checked by: tests/advice/figures/test_trace.c */
struct trace *trace_of(const struct system *system, const struct network *network,
                       struct force effort, const struct figures *figures,
                       const struct weighing *weighing, int index, struct arena *arena);

#endif
