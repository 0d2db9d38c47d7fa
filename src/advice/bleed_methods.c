#include "advice/bleed_plan.h"

#define CUSTOM "common practice, no source"

static const struct method_row methods[] = {
    {METHOD_PEDAL, "pedal", "pedal with a helper", "a second person, a tube and a jar", CUSTOM},
    {METHOD_PRESSURE, "pressure", "pressure on the reservoir",
     "a kit with a cap that fits the reservoir, at 0.7 to 1.4 bar; never the workshop's air line",
     CUSTOM},
    {METHOD_VACUUM, "vacuum", "vacuum at the nipple",
     "a hand pump with a trap, and grease for the nipple's thread", CUSTOM},
    {METHOD_GRAVITY, "gravity", "gravity alone", "tubes and jars, and time", CUSTOM},
    {METHOD_REVERSE, "reverse", "backwards, from the nipple up to the reservoir",
     "a clean oil can or syringe with a tube, and the reservoir drawn low first", CUSTOM},
};

const struct method_row *method_rows(size_t *count)
{
    *count = sizeof methods / sizeof *methods;
    return methods;
}
