#include "parts/fittings.h"

#include <math.h>

#define INCH 0.0254

#define UNIFIED                                                                                    \
    "diameter and pitch by definition of the name (ASME B1.1); pairing read in trade print"
#define METRIC "diameter and pitch by definition of the name (ISO 261); pairing read in trade print"
#define METRIC_MEMORY                                                                              \
    "diameter and pitch by definition of the name (ISO 261); pairing from memory of ISO 4038"

static const struct thread_row threads[] = {
    {"3/8-24 UNF",
     {0.375 * INCH},
     {INCH / 24},
     "3/16 in tube, inch cars",
     "M10 x 1: a 3/8-24 nut goes loosely into an M10 x 1 port and strips when tightened",
     UNIFIED},
    {"7/16-20 UNF",
     {0.4375 * INCH},
     {INCH / 20},
     "1/4 in tube, British cars; some 3/16 in ports",
     "7/16-24 UNS: same diameter, finer pitch; they do not fit each other",
     UNIFIED},
    {"7/16-24 UNS",
     {0.4375 * INCH},
     {INCH / 24},
     "1/4 in tube, North America to the mid 1970s",
     "7/16-20 UNF: same diameter, coarser pitch; they do not fit each other",
     UNIFIED},
    {"1/2-20 UNF",
     {0.5 * INCH},
     {INCH / 20},
     "5/16 in tube, inverted flare; some ports",
     "M12 x 1: 0.7 mm thinner with a finer pitch",
     "diameter and pitch by definition of the name (ASME B1.1); pairing from memory of SAE J512"},
    {"5/8-18 UNF", {0.625 * INCH}, {INCH / 18}, "large ports", NULL, UNIFIED},
    {"M10 x 1",
     {0.010},
     {0.001},
     "4.75 mm (3/16 in) tube, metric cars",
     "3/8-24 UNF: an M10 x 1 nut starts in a 3/8-24 port, binds after a turn and strips",
     METRIC},
    {"M12 x 1",
     {0.012},
     {0.001},
     "6 mm tube, metric cars",
     "7/16-20 UNF and 1/2-20 UNF: near in diameter, another pitch",
     METRIC_MEMORY},
    {"M14 x 1.5", {0.014}, {0.0015}, "large ports", NULL, METRIC},
};

const struct thread_row *thread_rows(size_t *count)
{
    *count = sizeof threads / sizeof threads[0];
    return threads;
}

static const struct tube_row tubes[] = {
    {"3/16 in", {0.1875 * INCH}, {0.028 * INCH}, "read in trade print; also sold as 4.75 mm"},
    {"1/4 in", {0.25 * INCH}, {0.028 * INCH}, "SAE J527, table 1, from memory"},
    {"5/16 in", {0.3125 * INCH}, {0.028 * INCH}, "SAE J527, table 1, from memory"},
    {"4.75 mm", {0.00475}, {0.0007}, "DIN 74234, read as cited in print"},
    {"6 mm", {0.006}, {0.001}, "ISO 4038, from memory; 0.7 mm is made as well"},
    {"8 mm", {0.008}, {0.001}, "ISO 4038, from memory"},
};

const struct tube_row *tube_rows(size_t *count)
{
    *count = sizeof tubes / sizeof tubes[0];
    return tubes;
}

struct length tube_usual_wall(struct length size)
{
    double nearest = 0.1e-3;
    struct length wall = {NAN};
    for (size_t i = 0; i < sizeof tubes / sizeof tubes[0]; i++) {
        double off = fabs(tubes[i].size.m - size.m);
        if (off < nearest) {
            nearest = off;
            wall = tubes[i].wall;
        }
    }
    return wall;
}
