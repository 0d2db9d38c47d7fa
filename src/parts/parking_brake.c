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
    if (!(parking->shoe_ratio.value >= 1))
        return (struct force){NAN};
    return (struct force){parking_cable_force(parking).n * parking->shoe_ratio.value};
}

/* Force of the lever's pivot on its own shoe over that of the strut on the other. */
static double pivot_share(const struct parking *parking)
{
    double ratio = parking->shoe_ratio.value;
    return ratio >= 1 ? (ratio - 1) / ratio : NAN;
}

double parking_drum_factor(const struct parking *parking, struct shoe_factors shoes,
                           enum shoe_layout layout, bool forward)
{
    bool duo_servo = layout == SHOES_DUO_SERVO;
    switch (parking->spreader) {
    case SPREADER_NOT_SAID:
        break;
    case SPREADER_CAM:
        if (!duo_servo)
            return 4 / (1 / shoes.front + 1 / shoes.rear);
        return shoes.front + shoes.rear;
    case SPREADER_CROSS:
        return shoes.front + shoes.rear;
    case SPREADER_FLOATING: {
        /* of a duo-servo pair the primary counts as front, which rolling back is the other shoe */
        bool strut_front = parking->lever_on == LEVER_ON_REAR;
        if (duo_servo)
            strut_front = forward;
        double share = pivot_share(parking);
        return strut_front ? shoes.front + share * shoes.rear : shoes.rear + share * shoes.front;
    }
    }
    return NAN;
}

/* Travel of a cable that its brake asks for, and what the cable itself stretches. */
static struct length stretched(const struct parking *parking, double travel)
{
    double pull = travel + parking_cable_force(parking).n / parking->cable_stiff.n_m;
    return (struct length){pull >= 0 && isfinite(pull) ? pull : NAN};
}

struct length parking_drum_pull(const struct parking *parking, const struct drum *drum)
{
    double at_reference = REFERENCE_PRESSURE * circle_area(drum->bore).m2;
    double ratio = parking->shoe_ratio.value, clearance = drum->clearance.m;
    double give = drum->give.m * parking_shoe_force(parking).n / at_reference;
    if (parking->spreader != SPREADER_FLOATING)
        return stretched(parking, ratio * 2 * (clearance + give));
    double at_pivot = clearance + give * pivot_share(parking);
    return stretched(parking, ratio * (clearance + give) + (ratio - 1) * at_pivot);
}

struct length parking_disc_pull(const struct parking *parking, const struct disc *disc)
{
    double at_reference = REFERENCE_PRESSURE * disc_side_area(disc, -1).m2;
    double share = parking_shoe_force(parking).n / at_reference;
    double give = (2 * disc->pad_squash.m + disc->body_opening.m) * share;
    return stretched(parking, parking->shoe_ratio.value * (2 * disc->roll_back.m + give));
}

double parking_clicks(const struct parking *parking, struct length mean_pull)
{
    if (!(mean_pull.m >= 0) || !(parking->cable_slack.m >= 0) ||
        !(parking->lever_ratio.value > 0) || !(parking->travel_of_click.m > 0))
        return NAN;
    return (parking->cable_slack.m + mean_pull.m) * parking->lever_ratio.value /
           parking->travel_of_click.m;
}
