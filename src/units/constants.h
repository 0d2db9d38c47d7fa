#ifndef FIRMPEDAL_UNITS_CONSTANTS_H
#define FIRMPEDAL_UNITS_CONSTANTS_H

/* Constants of nature and of convention, each with its source. */

#define PI 3.14159265358979323846

/* Standard acceleration of free fall, m/s2. Source: 3rd CGPM (1901), exact by convention. */
#define STANDARD_GRAVITY 9.80665

/* Standard atmosphere, Pa. Source: 10th CGPM (1954), exact by convention. */
#define STANDARD_ATMOSPHERE 101325.0

#endif
