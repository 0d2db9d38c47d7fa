#include "parts/shoe.h"

#include <math.h>

#include "units/constants.h"

/* A shoe this near the friction at which it would lock by itself is refused. */
#define NEAREST_TO_LOCK 0.8
/* Up to this friction the closed form stands; above, the lifted part of the lining is removed. */
#define CLOSED_FORM_FRICTION 0.38

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

double shoe_contact_closed(double half_arc)
{
    if (!(half_arc > 0 && half_arc <= PI / 2))
        return NAN;
    return 4 * sin(half_arc) / (2 * half_arc + sin(2 * half_arc));
}

double shoe_contact_lifting(double friction, double half_arc)
{
    /* At tan(half_arc) only the very end of the lining would touch. */
    if (!(half_arc > 0 && half_arc <= PI / 2) || !(friction > 0 && friction < tan(half_arc)))
        return NAN;
    /* Along the abutment face pressure and friction must cancel: sine = mu cosine. The share
     * sine/cosine grows with psi, so halving finds it; 60 halvings exhaust a double. */
    double low = 0, high = half_arc + PI / 2;
    struct contact at = {0};
    for (int i = 0; i < 60; i++) {
        double psi = (low + high) / 2;
        at = contact(psi, fmax(-half_arc, psi - PI / 2), half_arc);
        if (at.sine < friction * at.cosine)
            low = psi;
        else
            high = psi;
    }
    return at.plain / at.cosine;
}

static double contact_number(double friction, double half_arc)
{
    return friction <= CLOSED_FORM_FRICTION ? shoe_contact_closed(half_arc)
                                            : shoe_contact_lifting(friction, half_arc);
}

/* What is left of the abutment's moment to hold the shoe; none left is self-lock. */
static double sliding_balance(double friction, double radius, double abutment, double half_arc,
                              bool leading)
{
    double helping = friction * contact_number(friction, half_arc) * radius;
    return abutment * (1 + friction * friction) + (leading ? -helping : helping);
}

double shoe_factor_sliding(double friction, double radius, double tip, double abutment,
                           double half_arc, bool leading)
{
    if (!(friction > 0) || !(radius > 0) || !(tip > 0 && tip < radius) ||
        !(abutment > 0 && abutment < radius))
        return NAN;
    if (leading &&
        !(sliding_balance(friction / NEAREST_TO_LOCK, radius, abutment, half_arc, true) > 0))
        return NAN;
    double balance = sliding_balance(friction, radius, abutment, half_arc, leading);
    if (!(balance > 0))
        return NAN;
    return friction * contact_number(friction, half_arc) * (tip + abutment) / balance;
}

double duo_servo_factor(double friction, double radius, double tip, double link, double anchor,
                        double primary_half_arc, double secondary_half_arc)
{
    double primary = shoe_factor_sliding(friction, radius, tip, link, primary_half_arc, true);
    /* Per newton on the primary tip: what the link pushes, and its moment and the cylinder's
     * about the anchor, as if one force did both. */
    double link_force = (tip + primary * radius) / link;
    double arm = link_force * (anchor + link) + (anchor - tip);
    double start = PI / 2 - secondary_half_arc, end = PI / 2 + secondary_half_arc;
    return primary + shoe_factor_pin(friction, radius, anchor, arm, start, end, true);
}
