#include "parts/keys/rows.h"

/* clang-format off */

static const struct choice spreaders[] = {
    {"floating lever", "lever, floating, lever and strut", SPREADER_FLOATING,
     "a lever hung on one shoe, a strut to the other: the strut pushes harder"},
    {"cross lever", "bell crank, cross pull", SPREADER_CROSS,
     "pulled across, through the backplate: the same force on both shoes"},
    {"fixed cam", "cam", SPREADER_CAM, "a cam on a fixed pivot: the same travel of both shoes"},
    {0}};

static const struct choice lever_shoes[] = {
    {"rear shoe", "rear, trailing shoe", LEVER_ON_REAR, "the shoe that faces the rear of the car"},
    {"front shoe", "front, leading shoe", LEVER_ON_FRONT, "the shoe that faces the front of the car"},
    {0}};

static const struct key rows[] = {
    {.name = "works", .others = "acts on", PARTS(as.parking.works), REQUIRED,
     .example = "rear drum", .help = "the brakes it acts on"},
    {.name = "lever ratio", .others = "ratio", NUMBER(as.parking.lever_ratio),
     WITHIN(0.5, 60), USUALLY(3, 15), ASSUME_NOTHING,
     .example = "7", .help = "hand to pivot over cable to pivot", MEASURED, FIGURES_ONLY},
    {.name = "shoe lever ratio", NUMBER(as.parking.shoe_ratio),
     WITHIN(1, 60), USUALLY(2, 12), ASSUME_NOTHING,
     .example = "4.5", .help = "in the brake: cable to pivot over shoe to pivot", MEASURED,
     FIGURES_ONLY},
    {.name = "cable loss", SHARE(as.parking.cable_loss),
     WITHIN(0, 0.95), USUALLY(0.05, 0.5), ASSUME(0.25, MEMORY),
     .example = "25 %", .help = "share of the pull that cable and sheaves eat up", FIGURES_ONLY},
    {.name = "cable bends", .others = "bends, bend angle",
     QUANTITY(DIMENSION_ANGLE, as.parking.cable_bends),
     WITHIN(0, 31.5), USUALLY(0, 9.5), ASSUME_NOTHING,
     .example = "180 deg",
     .help = "all bends from lever to one brake added up; the cable loss then follows from them",
     MEASURED, FIGURES_ONLY},
    {.name = "cable friction", NUMBER(as.parking.cable_friction),
     WITHIN(0, 1), USUALLY(0.05, 0.3), ASSUME(0.15, "dry steel in its sheath; " MEMORY),
     .example = "0.15", .help = "of the cable in its sheath, where the bends are said",
     FIGURES_ONLY},
    {.name = "cable slack", LENGTH(as.parking.cable_slack),
     WITHIN(0, 0.2), USUALLY(0, 10e-3), ASSUME(2e-3, PRACTICE),
     .example = "2 mm", .help = "travel of the cable at the lever until the shoe levers move",
     FIGURES_ONLY},
    {.name = "cable stiffness", QUANTITY(DIMENSION_STIFFNESS, as.parking.cable_stiff),
     WITHIN(1e3, 1e9), USUALLY(100e3, 1e6), ASSUME(300e3, MEMORY),
     .example = "300 N/mm", .help = "of the cable to one brake, its sheath included", FIGURES_ONLY},
    {.name = "spreader", .others = "shoe actuator, cam", CHOICE_OF(as.parking.spreader), UNBOUNDED,
     .choices = spreaders, ASSUME(SPREADER_FLOATING, PRACTICE),
     .example = "floating lever", .help = "what spreads the shoes of a drum", FIGURES_ONLY},
    {.name = "lever on", CHOICE_OF(as.parking.lever_on), UNBOUNDED,
     .choices = lever_shoes, ASSUME(LEVER_ON_REAR, PRACTICE),
     .example = "rear shoe", .help = "the shoe on which a floating lever hangs", FIGURES_ONLY},
    {.name = "holding friction", .others = "static friction", NUMBER(as.parking.holding),
     WITHIN(0.1, 2), USUALLY(0.8, 1.1),
     ASSUME(1, "as moving; glazed linings hold with 0.8 to 0.9 of it; " PRACTICE),
     .example = "0.85", .help = "friction of linings at rest over that of moving ones",
     FIGURES_ONLY},
    {.name = "cable holds off", .others = "holds shoes off", LENGTH(as.parking.holds_off),
     WITHIN(0, 20e-3), USUALLY(0, 1e-3), ASSUME(0, "let right off; " PRACTICE),
     .example = "0.3 mm", .help = "how far the cable, lever down, holds the shoe tips off their stops",
     MEASURED, FIGURES_ONLY},
    {.name = "effort", .others = "hand force", FORCE(as.parking.effort),
     WITHIN(1, 2000), USUALLY(50, 600), ASSUME(400, MEMORY),
     .example = "400 N", .help = "pull of the hand at which it is checked", FIGURES_ONLY},
    {.name = "travel per click", .others = "click travel, travel per notch",
     LENGTH(as.parking.travel_of_click), WITHIN(1e-3, 0.2), USUALLY(8e-3, 35e-3),
     ASSUME(20e-3, MEMORY),
     .example = "20 mm", .help = "of the grip, from one click of the lever to the next", MEASURED,
     FIGURES_ONLY},
    {.name = "clicks", .others = "notches", COUNT(as.parking.clicks),
     WITHIN(1, 60), USUALLY(2, 12), ASSUME_NOTHING,
     .example = "6", .help = "of the lever when it holds", MEASURED},
    ROW_NOTE};

const struct key *keys_parking(size_t *count)
{
    return ROWS_OF(rows, count);
}
