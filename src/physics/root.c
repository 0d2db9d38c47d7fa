#include "physics/root.h"

#include <math.h>

enum { MOST_STEPS = 200, CHORDS_BEFORE_HALVING = 3 };

struct root root_between(excess_at excess, void *context, double low, double high, double tolerance)
{
    struct root root = {NAN, NAN, false, false, 2};
    double below = excess(low, context), above = excess(high, context);
    if (!(below <= 0) || !(above > 0))
        return root;
    root.bracketed = true;
    int held = 0; /* -1: the low end stayed last time, 1: the high one */
    while (high - low > tolerance && root.steps < MOST_STEPS) {
        double x = low + (high - low) / 2;
        if (root.steps % (CHORDS_BEFORE_HALVING + 1) != 0) {
            /* A little to the side of the chord's zero that is farther from the nearer end, so that
             * the end that is already close moves as well. */
            double chord = low - below * (high - low) / (above - below);
            double aside = tolerance / 2;
            chord += chord - low < high - chord ? aside : -aside;
            if (chord > low && chord < high)
                x = chord;
        }
        if (!(x > low && x < high))
            break;
        double at = excess(x, context);
        root.steps++;
        if (at <= 0) {
            low = x;
            below = at;
            if (held == 1)
                above /= 2;
            held = 1;
        } else {
            high = x;
            above = at;
            if (held == -1)
                below /= 2;
            held = -1;
        }
    }
    root.fits = low;
    root.fails = high;
    root.converged = high - low <= tolerance;
    return root;
}
