#include "parts/parking_brake.h"

#include <math.h>

#include "parts/master.h"

/* Give, squash and opening of brakes are stated at this line pressure. */
#define REFERENCE_PRESSURE 10e6

struct share parking_cable_loss(const struct parking *parking)
{
    double loss = parking->cable_loss.of_1, bends = parking->cable_bends.rad;
    if (!isnan(bends)) {
        double friction = parking->cable_friction.value;
        loss = bends >= 0 && friction >= 0 ? 1 - exp(-friction * bends) : NAN;
    }
    return (struct share){loss >= 0 && loss < 1 ? loss : NAN};
}

struct force parking_cable_force(const struct parking *parking)
{
    double loss = parking_cable_loss(parking).of_1;
    if (!(parking->effort.n >= 0) || !(parking->lever_ratio.value > 0) || isnan(loss) ||
        parking->works.count == 0)
        return (struct force){NAN};
    double pull = parking->effort.n * parking->lever_ratio.value * (1 - loss);
    return (struct force){pull / (double)parking->works.count};
}

struct force parking_shoe_force(const struct parking *parking)
{
    if (!(parking->shoe_ratio.value > 0))
        return (struct force){NAN};
    return (struct force){parking_cable_force(parking).n * parking->shoe_ratio.value};
}

/* One shoe, by a drum whose both shoes are like it. */
static double shoe_factor(const struct drum *drum, struct number friction, bool leading)
{
    struct drum both = *drum;
    both.shoes = SHOES_TWO_LEADING;
    return drum_factor_with(&both, friction, leading) / 2;
}

double parking_drum_factor(const struct parking *parking, const struct drum *drum, bool forward)
{
    if (!(parking->holding.value > 0))
        return NAN;
    struct number friction = {drum->friction.value * parking->holding.value};
    if (parking->spreader == SPREADER_CAM && drum->shoes == SHOES_LEADING_TRAILING) {
        double leading = shoe_factor(drum, friction, true);
        double trailing = shoe_factor(drum, friction, false);
        return 4 / (1 / leading + 1 / trailing);
    }
    return drum_factor_with(drum, friction, forward);
}

static struct length pull_for(const struct parking *parking, double at_shoes)
{
    double stretch = parking_cable_force(parking).n / parking->cable_stiff.n_m;
    double travel = parking->shoe_ratio.value * at_shoes + stretch;
    return (struct length){travel >= 0 && isfinite(travel) ? travel : NAN};
}

struct length parking_drum_pull(const struct parking *parking, const struct drum *drum)
{
    double at_reference = REFERENCE_PRESSURE * circle_area(drum->bore).m2;
    double give = drum->give.m * parking_shoe_force(parking).n / at_reference;
    return pull_for(parking, 2 * (drum->clearance.m + give));
}

struct length parking_disc_pull(const struct parking *parking, const struct disc *disc)
{
    double at_reference = REFERENCE_PRESSURE * disc_side_area(disc, -1).m2;
    double share = parking_shoe_force(parking).n / at_reference;
    double give = (2 * disc->pad_squash.m + disc->body_opening.m) * share;
    return pull_for(parking, 2 * disc->roll_back.m + give);
}

double parking_clicks(const struct parking *parking, struct length mean_pull)
{
    if (!(mean_pull.m >= 0) || !(parking->cable_slack.m >= 0) ||
        !(parking->lever_ratio.value > 0) || !(parking->travel_of_click.m > 0))
        return NAN;
    return (parking->cable_slack.m + mean_pull.m) * parking->lever_ratio.value /
           parking->travel_of_click.m;
}
