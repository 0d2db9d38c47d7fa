#include "network/reading_rows.h"

#include <math.h>
#include <string.h>

#define QUANTITY(kind, from, to)                                                                   \
    .form = FORM_QUANTITY, .dimension = kind, .least = (from), .most = (to), .usual_least = NAN,   \
    .usual_most = NAN, .assumed = NAN
#define BAR 1e5

/* clang-format off */

static const struct reading_row rows[] = {
    {.figure = "deceleration", READING_OF_CAR, true, 0.3,
     {.name = "deceleration", QUANTITY(DIMENSION_ACCELERATION, 0, 15), .example = "5.5 m/s2 at 220 N",
      .help = "Decelerometer on a dry, level, empty road, at the effort of the check."},
     .elsewhere = true},
    {.figure = "side-difference-front", READING_OF_CAR, true, 0.10,
     {.name = "side difference front", QUANTITY(DIMENSION_SHARE, 0, 1), .example = "12 %",
      .help = "From both brake forces on the roller tester."}, .elsewhere = true},
    {.figure = "side-difference-rear", READING_OF_CAR, true, 0.10,
     {.name = "side difference rear", QUANTITY(DIMENSION_SHARE, 0, 1), .example = "12 %",
      .help = "From both brake forces on the roller tester."}, .elsewhere = true},
    {.figure = "pedal-travel", READING_OF_PEDAL, true, 3e-3,
     {.name = "pedal travel", QUANTITY(DIMENSION_LENGTH, 0, 0.4), .example = "66 mm at 220 N",
      .help = "Ruler beside the pad, from rest to the effort of the check, servo working."}},
    {.figure = "pedal-left", READING_OF_PEDAL, true, 3e-3,
     {.name = "pedal left", QUANTITY(DIMENSION_LENGTH, 0, 0.4), .example = "84 mm at 220 N",
      .help = "Block or ruler between pad and floor at the effort of the check."}},
    {.figure = "line-pressure", READING_OF_CIRCUIT, true, 2 * BAR,
     {.name = "line pressure", QUANTITY(DIMENSION_PRESSURE, 0, 400 * BAR), .example = "60 bar at 300 N",
      .help = "Gauge at a nipple before valve and remote servo, or in a tee; bled after."}},
    {.figure = "unassisted-pressure", READING_OF_CIRCUIT, true, 2 * BAR,
     {.name = "unassisted pressure", QUANTITY(DIMENSION_PRESSURE, 0, 400 * BAR), .example = "20 bar at 300 N",
      .help = "The same, engine off, servo pumped out."}},
    {.figure = "residual-pressure", READING_OF_CIRCUIT, true, 0.2 * BAR,
     {.name = "residual pressure", QUANTITY(DIMENSION_PRESSURE, 0, 10 * BAR), .example = "0.7 bar",
      .help = "Gauge in place of a nipple beyond the valve: press, let the pedal up, read."}},
    {.figure = "wheel-pressure", READING_OF_BRAKE, true, 2 * BAR,
     {.name = "wheel pressure", QUANTITY(DIMENSION_PRESSURE, 0, 400 * BAR), .example = "45 bar at 300 N",
      .help = "Gauge in place of its nipple; bled afterwards."}},
    {.figure = "brake-force", READING_OF_BRAKE, true, 100,
     {.name = "brake force", QUANTITY(DIMENSION_FORCE, 0, 50e3), .example = "2400 N at 300 N",
      .help = "Roller tester, at the effort of the check, each wheel by itself."}, .elsewhere = true},
    {.figure = "assisted-strokes-left", READING_OF_SERVO, false, 1,
     {.name = "assisted strokes left", QUANTITY(DIMENSION_NUMBER, 0, 20), .example = "3",
      .help = "Engine off: full strokes that go down easily."}},
    {.figure = "clutch-effort", READING_OF_CLUTCH, false, 10,
     {.name = "clutch effort", QUANTITY(DIMENSION_FORCE, 0, 1000), .example = "110 N",
      .help = "Spring balance on the pad, slowly: the greatest."}},
    {.figure = "clutch-touch", READING_OF_CLUTCH, false, 3e-3,
     {.name = "clutch touch", QUANTITY(DIMENSION_LENGTH, 0, 0.4), .example = "22 mm",
      .help = "Ruler at the pad, by hand, until it turns heavy."}},
    {.figure = "slave-travel", READING_OF_CLUTCH, false, 0.5e-3,
     {.name = "slave travel", QUANTITY(DIMENSION_LENGTH, 0, 0.1), .example = "14 mm",
      .help = "Ruler beside its rod, the pedal pressed to its stop."}},
    {.figure = "bearing-travel", READING_OF_CLUTCH, false, 0.3e-3,
     {.name = "bearing travel", QUANTITY(DIMENSION_LENGTH, 0, 0.05), .example = "8 mm",
      .help = "Travel of the fork at the slave, over the fork ratio."}, .elsewhere = true},
    {.figure = "hand-brake-clicks", READING_OF_HAND_BRAKE, false, 1,
     {.name = "hand brake clicks", .others = "clicks", QUANTITY(DIMENSION_NUMBER, 0, 40), .example = "6",
      .help = "Spring balance at the lever, 200 N: count them."}},
};

/* clang-format on */

const struct reading_row *reading_rows(size_t *count)
{
    *count = sizeof rows / sizeof *rows;
    return rows;
}

const struct reading_row *reading_row(const char *figure)
{
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
        if (strcmp(rows[i].figure, figure) == 0)
            return &rows[i];
    return NULL;
}

const char *reading_of_words(enum reading_of of)
{
    switch (of) {
    case READING_OF_CAR:
        return "the whole car";
    case READING_OF_PEDAL:
        return "each brake pedal or hand lever";
    case READING_OF_CIRCUIT:
        return "each brake circuit";
    case READING_OF_BRAKE:
        return "each brake";
    case READING_OF_CLUTCH:
        return "each clutch slave";
    case READING_OF_HAND_BRAKE:
        return "each hand brake";
    case READING_OF_SERVO:
        return "each servo";
    }
    return "";
}
