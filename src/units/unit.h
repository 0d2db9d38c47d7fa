#ifndef FIRMPEDAL_UNITS_UNIT_H
#define FIRMPEDAL_UNITS_UNIT_H

#include <stdbool.h>
#include <stddef.h>

#include "base/arena.h"
#include "units/quantity.h"

/* The systems that results can be written in. */
enum unit_system { UNITS_METRIC, UNITS_IMPERIAL };

/* A row of the unit table. value in SI = number * factor + offset. */
struct unit {
    const char *name;        /* as it is written: "mm", "lbf in" */
    const char *other_names; /* blank-separated single words that are understood too, or NULL */
    enum dimension dimension;
    double factor;
    double offset;          /* for temperatures only */
    const char *source;     /* where the factor comes from */
    const char *checked_as; /* the same unit in the words of GNU units, for the test */
};

const struct unit *unit_table(size_t *count);

/* "a length", "a pressure": for messages. */
const char *dimension_words(enum dimension dimension);
/* The units that fit, as "mm, cm, m, in, ft"; lives in the arena. */
const char *dimension_units(struct arena *arena, enum dimension dimension);

/* What reading a quantity came to. */
enum reading_outcome {
    READING_FINE,
    READING_EMPTY,
    READING_NO_NUMBER,   /* it does not begin with a number */
    READING_BARE_NUMBER, /* a number without the unit that its kind needs */
    READING_UNKNOWN_UNIT,
    READING_WRONG_KIND,    /* a known unit of another kind; other says which */
    READING_DECIMAL_COMMA, /* 0,32 m */
    READING_OUT_OF_RANGE,  /* a number too large for a double, or a division by zero */
    READING_REST           /* something follows that does not belong to it */
};

struct reading {
    enum reading_outcome outcome;
    double value;     /* SI; NaN unless outcome is READING_FINE */
    double tolerance; /* SI, half width of "± 0.05 mm" or "+- 0.05 mm"; NaN when none */
    const struct unit *unit;
    enum dimension other; /* of the unit found, for READING_WRONG_KIND */
    size_t start, length; /* the offending letters within the text */
    const char *nearest;  /* nearest unit name for READING_UNKNOWN_UNIT, or NULL */
};

/* Reads "19.05 mm", "5/8 in", "1-1/16 in", "1 1/16 in", "60 bar", "35 %", "0.38",
 * "19.05 mm ± 0.05 mm". The decimal sign is a point in every locale. A number (friction, ratio)
 * takes no unit; "4:1" is read as a ratio too. A share takes % or a plain number from 0 to 1. */
struct reading unit_read(const char *text, enum dimension wanted);

/* How many digits a person wants of a kind of quantity, and in which unit, by system. */
struct shown {
    const char *number; /* "22.2" */
    const char *unit;   /* "mm"; "" for numbers */
};
/* Writes a quantity for a person, never in exponent form; lives in the arena. NaN gives "?". A
 * length that is a size of an inch tape is shown to the hundredth of a millimetre: 19.05 mm. */
struct shown unit_show(struct arena *arena, double si, enum dimension dimension,
                       enum unit_system system);
/* The same as one text: "22.2 mm". Lengths of cylinder bores read better as fractions in the
 * imperial system; unit_show_bore gives "7/8 in" where the value is within 0.02 mm of a
 * sixteenth, otherwise what unit_show gives, always with mm beside: "22.23 mm (7/8 in)". */
const char *unit_text(struct arena *arena, double si, enum dimension dimension,
                      enum unit_system system);
const char *unit_show_bore(struct arena *arena, double metres, enum unit_system system);

#endif
