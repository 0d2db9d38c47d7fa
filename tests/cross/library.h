#ifndef FIRMPEDAL_TESTS_CROSS_LIBRARY_H
#define FIRMPEDAL_TESTS_CROSS_LIBRARY_H

/* The general library's integration and root finding, as short calls. Each fails the test when the
 * library does not reach its tolerance. */

typedef double (*library_function)(double at, void *with);

/* Integral from one end to the other, to 1e-12 of itself (1e-13 where it is nearly 0). */
double library_integral(library_function of, void *with, double from, double to);
/* The root between two ends of unlike sign, to 1e-14 of itself. */
double library_root(library_function of, void *with, double below, double above);

#endif
