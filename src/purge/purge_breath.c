#include "purge/purge_breath.h"

#include <math.h>

#include "units/constants.h"

enum { MOST_TRIES = 80 };

/* Of the inflow, at which a search ends. */
#define CLOSE 1e-8

/* Length of a stage in steps, of the two-stage method that damps fully: 1 - sqrt(1/2). */
#define STAGE 0.29289321881345254

/* What the air of a node has taken up at the end of a stage, at a pressure there, and how that
 * changes with it: the root x of p = a x/(V - x) + S (x - base)/seconds. Below 0 a straight line,
 * which no stroke needs but a search may touch. */
static double taken_up_at(const struct breath_node *node, double p, double seconds, double *slope)
{
    const double a = STANDARD_ATMOSPHERE, air = node->air, per_volume = node->side / seconds;
    const double push = p + per_volume * node->base;
    if (!(air > 0)) {
        *slope = 0;
        return 0;
    }
    if (!(push > 0)) {
        *slope = 1 / (a / air + per_volume);
        return push * *slope;
    }
    const double sum = push + per_volume * air + a;
    const double x = 2 * push * air / (sum + sqrt(sum * sum - 4 * per_volume * push * air));
    *slope = 1 / (a * air / ((air - x) * (air - x)) + per_volume);
    return x;
}

/* The end of a stage for a supposed outflow, worked from the nipple upwards. */
struct shot {
    double in, slope; /* inflow that goes with it, and its change with the outflow */
    double pressure;  /* at the first node */
};

static struct shot shoot(struct breath_node *nodes, int count, struct resistance out,
                         double outflow, double seconds)
{
    struct shot shot = {.in = outflow, .slope = 1};
    double p = outflow * (out.linear + out.square * fabs(outflow));
    double dp = out.linear + 2 * out.square * fabs(outflow);
    for (int k = count - 1; k >= 0; k--) {
        struct breath_node *node = &nodes[k];
        double slope;
        node->taken_up = taken_up_at(node, p, seconds, &slope);
        shot.in += (node->taken_up - node->base) / seconds;
        shot.slope += slope * dp / seconds;
        shot.pressure = p;
        p += node->resistance * shot.in;
        dp += node->resistance * shot.slope;
    }
    return shot;
}

/* Newton's steps kept inside a bracket; the inflow rises with the outflow. */
static bool settle(struct breath_node *nodes, int count, struct resistance out, double inflow,
                   double seconds, double *outflow, double *pressure)
{
    double low = -inflow, high = 2 * inflow;
    double q = *outflow;
    for (int tries = 0; tries < MOST_TRIES; tries++) {
        const struct shot shot = shoot(nodes, count, out, q, seconds);
        const double over = shot.in - inflow;
        *outflow = q;
        *pressure = shot.pressure;
        if (fabs(over) <= CLOSE * inflow)
            return true;
        if (over > 0)
            high = q;
        else
            low = q;
        q -= over / shot.slope;
        if (!(q > low && q < high))
            q = low + (high - low) / 2;
        if (!(q > low && q < high))
            return true; /* the last digit */
    }
    return false;
}

struct breath purge_breathe(struct breath_node *nodes, int count, struct resistance out,
                            double stroke, double time, int steps)
{
    struct breath breath = {.converged = true};
    const double inflow = stroke / time, seconds = STAGE * time / steps;
    double outflow = inflow;
    for (int k = 0; k < count; k++)
        nodes[k].taken_up = 0;
    for (int step = 0; step < steps; step++) {
        for (int k = 0; k < count; k++)
            nodes[k].from = nodes[k].base = nodes[k].taken_up;
        breath.converged &= settle(nodes, count, out, inflow, seconds, &outflow, &breath.pressure);
        for (int k = 0; k < count; k++)
            nodes[k].base += (1 - STAGE) / STAGE * (nodes[k].taken_up - nodes[k].from);
        breath.converged &= settle(nodes, count, out, inflow, seconds, &outflow, &breath.pressure);
    }
    for (int k = 0; k < count; k++)
        breath.taken_up += nodes[k].taken_up;
    breath.out = stroke - breath.taken_up;
    return breath;
}
