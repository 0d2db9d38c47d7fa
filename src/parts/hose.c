#include "parts/hose.h"

#include <math.h>
#include <stddef.h>

#include "parts/master.h"

#define PSI          (4.4482216152605 / (0.0254 * 0.0254))
#define CC_PER_FOOT  (1e-6 / 0.3048)
#define SHARE_NEW    0.22
#define SHARE_GOOD   0.45
#define SHARE_WORN   1.0
#define TABLE_POINTS 3

/* 49 CFR 571.106, S5.3.2, Table I, regular expansion hose, from memory: the most that a foot of
 * free length may swell, cm3. Hose over 3/16 in is not tested at the third pressure. A bore may be
 * 0.05 mm over the end of its band, since nominal sizes are rounded. */
static const double table_pressure[TABLE_POINTS] = {1000 * PSI, 1500 * PSI, 2900 * PSI};
static const struct band {
    double widest;
    int points;
    double cc_per_foot[TABLE_POINTS];
} bands[] = {
    {3.175e-3 + 0.05e-3, 3, {0.66, 0.79, 1.21}},
    {5.0e-3 + 0.05e-3, 3, {0.86, 1.02, 1.67}},
    {INFINITY, 2, {1.04, 1.30}},
};

struct swelling hose_ceiling(struct length inside, struct pressure p)
{
    if (!(inside.m > 0) || !(p.pa >= 0))
        return (struct swelling){NAN};
    const struct band *band = bands;
    while (inside.m > band->widest)
        band++;
    if (p.pa < table_pressure[0])
        return (struct swelling){CC_PER_FOOT * band->cc_per_foot[0] * p.pa / table_pressure[0]};
    /* The piece that holds p; the last one goes on beyond its points. */
    int low = 0;
    while (low + 2 < band->points && p.pa > table_pressure[low + 1])
        low++;
    double exponent = log(band->cc_per_foot[low + 1] / band->cc_per_foot[low]) /
                      log(table_pressure[low + 1] / table_pressure[low]);
    return (struct swelling){CC_PER_FOOT * band->cc_per_foot[low] *
                             pow(p.pa / table_pressure[low], exponent)};
}

struct volume hose_volume(const struct hose *hose)
{
    if (!(hose->length.m >= 0))
        return (struct volume){NAN};
    return (struct volume){circle_area(hose->inside).m2 * hose->length.m};
}

/* The share of the ceiling that a hose takes, as described. */
static double share_of(const struct hose *hose)
{
    if (isnan(hose->expansion.m3_m)) {
        switch (hose->state) {
        case HOSE_NEW:
            return SHARE_NEW;
        case HOSE_WORN:
            return SHARE_WORN;
        case HOSE_GOOD:
        case HOSE_STATE_NOT_SAID:
            return SHARE_GOOD;
        }
    }
    if (!(hose->expansion.m3_m >= 0))
        return NAN;
    struct pressure tested_at = {table_pressure[0]};
    return hose->expansion.m3_m / hose_ceiling(hose->inside, tested_at).m3_m;
}

struct volume hose_swelling_as(const struct hose *hose, enum hose_state as, struct pressure p)
{
    double share = share_of(hose);
    if (!(hose->length.m >= 0) || isnan(share))
        return (struct volume){NAN};
    if (as == HOSE_GOOD)
        share = fmin(share, SHARE_GOOD);
    else if (as == HOSE_WORN)
        share = fmax(share, SHARE_WORN);
    return (struct volume){share * hose_ceiling(hose->inside, p).m3_m * hose->length.m};
}

struct volume hose_swelling(const struct hose *hose, struct pressure p)
{
    return hose_swelling_as(hose, HOSE_STATE_NOT_SAID, p);
}
