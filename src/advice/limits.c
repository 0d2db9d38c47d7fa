#include "advice/finding.h"

#include <math.h>
#include <string.h>

#include "units/constants.h"

#define CUSTOM "common practice, no source"

static const struct limit_row rows[] = {
    {"line-pressure-most", 15e6, DIMENSION_PRESSURE,
     "most line pressure that a usual car reaches at its hardest stop; above it look over the sum",
     CUSTOM},
    {"pedal-left-least", 1.0 / 3.0, DIMENSION_SHARE,
     "least part of the pedal travel that is left to the floor, hard on", CUSTOM},
    {"pedal-floor-least", 0.0, DIMENSION_LENGTH,
     "least pedal travel left: at the floor more foot gives no more brake",
     "UK MOT inspection manual: cars and passenger vehicles, 1.1.2"},
    {"pedal-used-most", 0.80, DIMENSION_SHARE,
     "most part of the pedal travel that is used at 50 lbf (222 N)", "49 CFR 570.55(c)"},
    {"stroke-left-least", 2.5e-3, DIMENSION_LENGTH,
     "least stroke that is left in a cylinder before its end", CUSTOM},
    {"lost-deceleration-least", 2.44, DIMENSION_ACCELERATION,
     "least deceleration with one circuit lost, from 100 km/h at no more than 500 N",
     "UN Regulation No. 13-H, annex 3, 2.2 (from memory)"},
    {"unassisted-deceleration-least", 2.44, DIMENSION_ACCELERATION,
     "least deceleration without the servo's help, from 100 km/h at no more than 500 N",
     "49 CFR 571.135, S7.11 (from memory)"},
    {"lost-left-least", 0.0, DIMENSION_LENGTH,
     "least pedal travel that must be left with one circuit lost: above it the effort still works",
     CUSTOM},
    {"rear-lock-margin-least", 0.0, DIMENSION_SHARE,
     "least by which the rear wheels must lock later than the front ones",
     "UN Regulation No. 13-H, annex 5, 3.1 (from memory)"},
    {"bearing-spare-least", 0.0, DIMENSION_LENGTH,
     "least bearing travel beyond what frees the clutch", CUSTOM},
    {"bearing-room-least", 0.0, DIMENSION_LENGTH,
     "least bearing travel short of what overstresses the clutch's springs", CUSTOM},
    {"asked-stop", 0.50 * STANDARD_GRAVITY, DIMENSION_ACCELERATION,
     "the stop for which the effort is judged: half of the car's weight as brake force",
     "UK MOT inspection manual: cars and passenger vehicles, 1.2.2"},
    {"effort-most", 445.0, DIMENSION_FORCE,
     "most effort at a pedal for the asked stop (100 lbf), as pedals are designed", CUSTOM},
    {"lever-effort-most", 244.7, DIMENSION_FORCE,
     "most effort at a hand lever for the asked stop (55 lbf)",
     "49 CFR 571.122, S6.10, edition before 2012 (from memory)"},
    {"side-difference-most", 0.30, DIMENSION_SHARE,
     "most difference of the brake forces of an axle, of the stronger",
     "UK MOT inspection manual: cars and passenger vehicles, 1.2.1"},
    {"side-difference-dangerous", 0.50, DIMENSION_SHARE,
     "difference of the brake forces of a steered axle that is dangerous",
     "UK MOT inspection manual: cars and passenger vehicles, 1.2.1"},
    {"hand-brake-slope-least", 0.16, DIMENSION_SHARE,
     "least slope, or part of the weight, that the hand brake holds",
     "UK MOT inspection manual: cars and passenger vehicles, 1.4.2"},
    {"ratio-least", 5.0, DIMENSION_NUMBER, "least usual ratio of a pedal without servo", CUSTOM},
    {"ratio-most", 6.0, DIMENSION_NUMBER, "most usual ratio of a pedal without servo", CUSTOM},
    {"assisted-ratio-least", 3.0, DIMENSION_NUMBER, "least usual ratio of a pedal with a servo",
     CUSTOM},
    {"assisted-ratio-most", 4.0, DIMENSION_NUMBER, "most usual ratio of a pedal with a servo",
     CUSTOM},
    {"clutch-ratio-least", 4.5, DIMENSION_NUMBER, "least usual ratio of a clutch pedal", CUSTOM},
    {"clutch-ratio-most", 6.5, DIMENSION_NUMBER, "most usual ratio of a clutch pedal", CUSTOM},
    {"bar-tilt-most", 10.0 * PI / 180.0, DIMENSION_ANGLE,
     "most tilt of a balance bar before it may bind", CUSTOM},
    {"hose-age-most", 6.0, DIMENSION_NUMBER,
     "years after which a rubber hose is renewed whatever it looks like (customs: 6 to 10)",
     CUSTOM},
    {"fluid-age-most", 2.0, DIMENSION_NUMBER,
     "years after which fluid that takes up water is changed", CUSTOM},
    {"rod-gap-least", 0.5e-3, DIMENSION_LENGTH, "least gap between push rod and piston at rest",
     CUSTOM},
    {"rod-gap-most", 1.5e-3, DIMENSION_LENGTH, "most gap between push rod and piston at rest",
     CUSTOM},
    {"servo-rod-gap-most", 0.5e-3, DIMENSION_LENGTH,
     "most gap between a servo's output rod and the piston", CUSTOM},
    {"free-play-least", 3e-3, DIMENSION_LENGTH, "least free play at the pad", CUSTOM},
    {"free-play-most", 6e-3, DIMENSION_LENGTH, "most free play at the pad", CUSTOM},
    {"servo-free-play-least", 1e-3, DIMENSION_LENGTH, "least free play at a pedal with a servo",
     CUSTOM},
    {"servo-free-play-most", 3e-3, DIMENSION_LENGTH, "most free play at a pedal with a servo",
     CUSTOM},
    {"standard-bore-within", 0.15e-3, DIMENSION_LENGTH,
     "most that a measured bore may differ from a standard size", CUSTOM},
    {"danger-pair-within", 0.35e-3, DIMENSION_LENGTH,
     "two standard bores nearer than this are easily taken for each other", CUSTOM},
    {"bore-over-most", 0.13e-3, DIMENSION_LENGTH,
     "most that an iron bore may be over its size after honing (0.005 in)", CUSTOM},
    {"lining-left-least", 1.5875e-3, DIMENSION_LENGTH,
     "least bonded lining left over the shoe (1/16 in)", "49 CFR 570.59(c)"},
    {"pad-left-least", 1.5e-3, DIMENSION_LENGTH, "least pad left; below it is dangerous",
     "UK MOT inspection manual: cars and passenger vehicles, 1.1.13"},
    {"run-out-most", 0.10e-3, DIMENSION_LENGTH, "most run-out of a disc", CUSTOM},
    {"residual-on-discs-most", 2.0 * 6894.757293168361, DIMENSION_PRESSURE,
     "most pressure kept in a line to discs (2 psi, master below the calipers)", CUSTOM},
    {"reverse-share-least", 0.50, DIMENSION_SHARE,
     "least brake torque in reverse, of that going forward, before it is remarked upon", CUSTOM},
    {"reading-off-most", 0.25, DIMENSION_SHARE,
     "most that a reading may differ from the computed figure on a sound car", CUSTOM},
    {"bores-differ-most", 0.10e-3, DIMENSION_LENGTH,
     "most that the bores of an axle may differ before they count as two sizes", CUSTOM},
    {"bore-change-most", 0.02, DIMENSION_SHARE,
     "change of area by another bore from which it is reported", CUSTOM},
    {"fit-effort-change-most", 0.25, DIMENSION_SHARE,
     "most change of the effort for the same stop that feels like the same car", CUSTOM},
    {"fit-worse-most", 0.15, DIMENSION_SHARE,
     "what the old bore broke already may grow worse by so much before the new one is refused",
     CUSTOM},
    {"assumed-most", 0.50, DIMENSION_SHARE,
     "part of the figures that may rest on assumed values before measuring is advised", CUSTOM},
    {"old-master-stroke", 2.0 / 3.0, DIMENSION_SHARE,
     "part of its stroke that an old master is worked over when bleeding", CUSTOM},
    {"exchange-volumes", 3.0, DIMENSION_NUMBER,
     "volumes drawn through a chamber to change its fluid; three leave 1/e^3 = 5 % of the old",
     "O. Levenspiel, Chemical Reaction Engineering, mixed flow (from memory)"},
    {"clear-strokes", 4.0, DIMENSION_NUMBER,
     "clear strokes at each nipple before it counts as "
     "done (customs: 3 to 5)",
     CUSTOM},
    {"hold-force", 125.0 * 4.4482216152605, DIMENSION_FORCE,
     "effort of the leak test under held pedal (125 lbf)", "49 CFR 570.55(b)"},
    {"hold-time", 10.0, DIMENSION_DURATION, "time for which it is held", "49 CFR 570.55(b)"},
    {"hold-long-time", 300.0, DIMENSION_DURATION,
     "time for which the trade holds a firm pedal while joints are looked at", CUSTOM},
    {"reserve-force", 50.0 * 4.4482216152605, DIMENSION_FORCE,
     "effort of the reserve test, engine running where there is a servo (50 lbf)",
     "49 CFR 570.55(c)"},
};

const struct limit_row *limit_rows(size_t *count)
{
    *count = sizeof rows / sizeof *rows;
    return rows;
}

double limit_value(const char *id)
{
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        if (strcmp(rows[i].id, id) == 0) {
            return rows[i].value;
        }
    }
    return NAN;
}
