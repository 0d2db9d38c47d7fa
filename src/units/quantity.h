#ifndef FIRMPEDAL_UNITS_QUANTITY_H
#define FIRMPEDAL_UNITS_QUANTITY_H

/* Quantities are structs of one double that is named by its SI unit, so that kinds cannot be
 * mixed and every use shows the unit. NaN means not known. Pressures are gauge. */
/* clang-format off */
struct length { double m; };
struct area { double m2; };
struct volume { double m3; };
struct pressure { double pa; };
struct force { double n; };
struct torque { double nm; };
struct mass { double kg; };
struct angle { double rad; };
struct temperature { double celsius; };
struct duration { double s; };
struct speed { double m_s; };
struct acceleration { double m_s2; };
struct stiffness { double n_m; };
struct density { double kg_m3; };
struct viscosity { double m2_s; };     /* kinematic */
struct swelling { double m3_m; };      /* volume per length of hose */
struct energy { double j; };
struct warming { double k; };          /* a difference of temperatures */
struct share { double of_1; };         /* a part of a whole: 0.35 is 35 % */
struct number { double value; };       /* a plain number: a ratio, a friction coefficient */
/* clang-format on */

/* The kinds of quantity that a person can write or read. */
enum dimension {
    DIMENSION_NUMBER,
    DIMENSION_SHARE,
    DIMENSION_LENGTH,
    DIMENSION_AREA,
    DIMENSION_VOLUME,
    DIMENSION_PRESSURE,
    DIMENSION_FORCE,
    DIMENSION_TORQUE,
    DIMENSION_MASS,
    DIMENSION_ANGLE,
    DIMENSION_TEMPERATURE,
    DIMENSION_DURATION,
    DIMENSION_SPEED,
    DIMENSION_ACCELERATION,
    DIMENSION_STIFFNESS,
    DIMENSION_DENSITY,
    DIMENSION_VISCOSITY,
    DIMENSION_SWELLING,
    DIMENSION_ENERGY,
    DIMENSION_WARMING, /* a difference of temperatures, K */
    DIMENSION_COUNT
};

#endif
