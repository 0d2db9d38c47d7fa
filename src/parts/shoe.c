#include "parts/shoe.h"

#include <math.h>

#include "units/constants.h"

/* A shoe this near the friction at which it would lock by itself is refused. */
#define NEAREST_TO_LOCK 0.8
/* An abutment steeper than this holds nothing, rad. */
#define STEEPEST_FACE 1.0
/* How little of a lining must touch for a pressure to be looked for, rad. */
#define LEAST_TOUCH 1e-6
enum { HALVINGS = 60 }; /* exhausts a double */

/* Moments of a pinned shoe's pressure (G) and friction (H) about its pin, over mu p r. */
struct pin_moments {
    double pressure, friction;
};

static struct pin_moments pin_moments(double radius, double pin, double start, double end)
{
    if (!(radius > 0) || !(pin > 0 && pin < radius) || !(start >= 0) || !(end > start) ||
        !(end <= PI))
        return (struct pin_moments){NAN, NAN};
    double sine_start = sin(start), sine_end = sin(end);
    return (struct pin_moments){
        pin * ((end - start) / 2 - (sin(2 * end) - sin(2 * start)) / 4),
        radius * (cos(start) - cos(end)) -
            pin / 2 * (sine_end * sine_end - sine_start * sine_start),
    };
}

double shoe_locks_at(double radius, double pin, double start, double end)
{
    struct pin_moments moments = pin_moments(radius, pin, start, end);
    return moments.pressure / moments.friction;
}

double shoe_factor_pin(double friction, double radius, double pin, double arm, double start,
                       double end, bool leading)
{
    struct pin_moments moments = pin_moments(radius, pin, start, end);
    if (!(friction > 0) || !(arm > 0) || isnan(moments.pressure))
        return NAN;
    if (leading && !(friction < NEAREST_TO_LOCK * shoe_locks_at(radius, pin, start, end)))
        return NAN;
    double helping = friction * moments.friction * (leading ? 1 : -1);
    if (!(moments.pressure > helping))
        return NAN;
    return friction * arm * (cos(start) - cos(end)) / (moments.pressure - helping);
}

/* Integrals over the lining from a to b of cos(x - psi) times 1, cos x and sin x. */
struct contact {
    double plain, cosine, sine;
};

static struct contact contact(double psi, double a, double b)
{
    return (struct contact){
        sin(b - psi) - sin(a - psi),
        ((b - a) * cos(psi) + (sin(2 * b - psi) - sin(2 * a - psi)) / 2) / 2,
        ((b - a) * sin(psi) - (cos(2 * b - psi) - cos(2 * a - psi)) / 2) / 2,
    };
}

/* A sliding shoe with what it meets at its heel put in numbers. */
struct sliding {
    double friction; /* below 0 for a trailing shoe: the drum pulls the other way */
    double radius, tip, abutment, half_arc;
    double lean; /* tangent of the angle between the abutment's push and the cylinder's line */
};

/* Where pressure stands over the lining (its peak at psi from the middle), only where it presses.
 */
static struct contact contact_at(const struct sliding *shoe, double psi)
{
    return contact(psi, fmax(-shoe->half_arc, psi - PI / 2), fmin(shoe->half_arc, psi + PI / 2));
}

/* What the forces along the abutment's face leave over when the peak is at psi; 0 at rest. Over
 * the force scale of the pressure, and with the abutment's push taken from the turning about the
 * drum's centre. Rises with psi. */
static double left_over(const struct sliding *shoe, double psi)
{
    struct contact at = contact_at(shoe, psi);
    double turning = shoe->friction * shoe->radius * at.plain +
                     shoe->tip * (at.cosine - shoe->friction * at.sine);
    return (at.sine + shoe->friction * at.cosine) * (shoe->tip + shoe->abutment) -
           shoe->lean * turning;
}

/* Where the pressure peaks, NaN where the shoe cannot rest so. */
static double peak_of(const struct sliding *shoe)
{
    /* At the ends only the very end of the lining would touch. */
    double low = -shoe->half_arc - PI / 2 + LEAST_TOUCH;
    double high = shoe->half_arc + PI / 2 - LEAST_TOUCH;
    if (!(left_over(shoe, low) < 0) || !(left_over(shoe, high) > 0))
        return NAN;
    for (int i = 0; i < HALVINGS; i++) {
        double psi = (low + high) / 2;
        if (left_over(shoe, psi) < 0)
            low = psi;
        else
            high = psi;
    }
    return (low + high) / 2;
}

/* The factor, below 0 for a trailing shoe; NaN where nothing is left of the abutment's moment to
 * hold the shoe, which is self-lock, or where the abutment would have to pull. */
static double sliding_factor(const struct sliding *shoe)
{
    double arms = shoe->tip + shoe->abutment, mu = shoe->friction;
    struct contact at = contact_at(shoe, peak_of(shoe));
    double across = at.cosine - mu * at.sine;
    double rubbing = mu * shoe->radius * at.plain;
    double balance = shoe->abutment * across - rubbing;
    if (!(balance > 0) || !(rubbing + shoe->tip * across > 0))
        return NAN;
    return mu * at.plain * arms / balance;
}

/* What is in range, in numbers; friction 0 where it is not. */
static struct sliding sliding_of(double friction, double radius, double tip, double abutment,
                                 double half_arc, struct shoe_abutment face, bool leading)
{
    if (!(friction > 0) || !(radius > 0) || !(tip > 0 && tip < radius) ||
        !(abutment > 0 && abutment < radius) || !(half_arc > 0 && half_arc <= PI / 2) ||
        !(fabs(face.angle) < STEEPEST_FACE) || !(face.friction >= 0))
        return (struct sliding){0};
    /* The drum drags a leading shoe towards its abutment, whose friction holds against that. */
    double sign = leading ? 1 : -1;
    return (struct sliding){.friction = sign * friction,
                            .radius = radius,
                            .tip = tip,
                            .abutment = abutment,
                            .half_arc = half_arc,
                            .lean = tan(face.angle + sign * atan(face.friction))};
}

double shoe_factor_sliding(double friction, double radius, double tip, double abutment,
                           double half_arc, struct shoe_abutment face, bool leading)
{
    struct sliding shoe = sliding_of(friction, radius, tip, abutment, half_arc, face, leading);
    if (shoe.friction == 0)
        return NAN;
    if (leading) {
        struct sliding nearer = shoe;
        nearer.friction /= NEAREST_TO_LOCK;
        if (isnan(sliding_factor(&nearer)))
            return NAN;
    }
    return (leading ? 1 : -1) * sliding_factor(&shoe);
}

double shoe_peak_pin(double friction, double radius, double width, double start, double end)
{
    if (!(friction > 0) || !(radius > 0) || !(width > 0) || !(start >= 0) || !(end > start) ||
        !(end <= PI))
        return NAN;
    double peak = start < PI / 2 && end > PI / 2 ? 1 : fmax(sin(start), sin(end));
    return peak / (friction * width * radius * radius * (cos(start) - cos(end)));
}

double shoe_peak_sliding(double friction, double radius, double width, double tip, double abutment,
                         double half_arc, struct shoe_abutment face, bool leading)
{
    struct sliding shoe = sliding_of(friction, radius, tip, abutment, half_arc, face, leading);
    if (shoe.friction == 0 || !(width > 0))
        return NAN;
    double psi = peak_of(&shoe), beyond = fmax(fabs(psi) - half_arc, 0);
    return cos(beyond) / (friction * width * radius * radius * contact_at(&shoe, psi).plain);
}

struct shoe_factors duo_servo_factors(double friction, double radius, double tip, double link,
                                      double anchor, double primary_half_arc,
                                      double secondary_half_arc)
{
    const struct shoe_abutment link_face = {0, 0};
    double primary =
        shoe_factor_sliding(friction, radius, tip, link, primary_half_arc, link_face, true);
    double start = PI / 2 - secondary_half_arc, end = PI / 2 + secondary_half_arc;
    /* of the secondary shoe, for each metre of arm about the anchor */
    double secondary = shoe_factor_pin(friction, radius, anchor, 1, start, end, true);
    double link_force = (tip + primary * radius) / link; /* per newton on the primary's tip */
    return (struct shoe_factors){.front = primary + secondary * link_force * (anchor + link),
                                 .rear = secondary * (anchor - tip),
                                 .own = primary};
}
