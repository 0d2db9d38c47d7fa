#include "parts/shoe.h"

#include <math.h>

#include "support/near.h"

#define DEGREES (3.14159265358979323846 / 180)
#define PIECES  20000

/* A shoe cut into small pieces of lining, drum radius 1, tip force 1. The pressure is u cos x +
 * v sin x at angle x from the shoe's middle. Equilibrium along the cylinder's line (x), square to
 * it (y) and in turning about the drum centre gives u, v and the abutment's force, of which nx and
 * ny go along those lines. */
struct cut_shoe {
    double torque, abutment;
};

/* Solves three rows of three and a right side for three unknowns, by Cramer's rule. */
static void three_by_three(double m[3][4], double unknown[3])
{
    double whole = NAN;
    for (int k = -1; k < 3; k++) {
        double a[3][3];
        for (int i = 0; i < 3; i++)
            for (int j = 0; j < 3; j++)
                a[i][j] = m[i][j == k ? 3 : j];
        double determinant = a[0][0] * (a[1][1] * a[2][2] - a[1][2] * a[2][1]) -
                             a[0][1] * (a[1][0] * a[2][2] - a[1][2] * a[2][0]) +
                             a[0][2] * (a[1][0] * a[2][1] - a[1][1] * a[2][0]);
        if (k < 0)
            whole = determinant;
        else
            unknown[k] = determinant / whole;
    }
}

static struct cut_shoe leaning_cut_shoe(double mu, double tip, double abutment, double half_arc,
                                        double nx, double ny, bool leading, bool remove_lifted)
{
    double s = leading ? 1 : -1, piece = 2 * half_arc / PIECES, found[3] = {1, 0, 1};
    double torque = NAN, last = 0;
    for (int round = 0; round < 200 && !(fabs(torque - last) < 1e-9); round++) {
        double cc = 0, cs = 0, ss = 0, c = 0, si = 0;
        for (int i = 0; i < PIECES; i++) {
            double x = -half_arc + (i + 0.5) * piece;
            if (remove_lifted && found[0] * cos(x) + found[1] * sin(x) < 0)
                continue;
            cc += cos(x) * cos(x) * piece;
            cs += cos(x) * sin(x) * piece;
            ss += sin(x) * sin(x) * piece;
            c += cos(x) * piece;
            si += sin(x) * piece;
        }
        double rows[3][4] = {{-cc + s * mu * cs, -cs + s * mu * ss, nx, -1},
                             {-cs - s * mu * cc, -ss - s * mu * cs, ny, 0},
                             {-s * mu * c, -s * mu * si, abutment * nx, tip}};
        three_by_three(rows, found);
        last = torque;
        torque = mu * (c * found[0] + si * found[1]);
    }
    return (struct cut_shoe){torque, found[2]};
}

static struct cut_shoe cut_shoe(double mu, double tip, double abutment, double half_arc,
                                bool leading, bool remove_lifted)
{
    return leaning_cut_shoe(mu, tip, abutment, half_arc, 1, 0, leading, remove_lifted);
}

static const struct shoe_abutment square = {0, 0};

static double pinned_pieces(double mu, double pin, double arm, double start, double end,
                            bool leading)
{
    double turning = 0, torque = 0, piece = (end - start) / PIECES;
    for (int i = 0; i < PIECES; i++) {
        double x = start + (i + 0.5) * piece, p = sin(x) * piece;
        double pressing = p * pin * sin(x), rubbing = mu * p * (1 - pin * cos(x));
        turning += leading ? pressing - rubbing : pressing + rubbing;
        torque += mu * p;
    }
    return torque * arm / turning;
}

/* Touching all along: mu k (h_a + h_c)/[h_c (1 + mu^2) -+ mu k r], k = 4 sin a/(2a + sin 2a). */
static double touching_all_along(double mu, double tip, double abutment, double half_arc,
                                 bool leading)
{
    double k = 4 * sin(half_arc) / (2 * half_arc + sin(2 * half_arc));
    return mu * k * (tip + abutment) / (abutment * (1 + mu * mu) + (leading ? -mu * k : mu * k));
}

/* Our own sums for tip and abutment 0.8 of the radius and half arc 55 deg, in closed form. At this
 * arc the toe lifts from friction 0.22 on. */
static void where_nothing_lifts_there_is_a_closed_form(void **state)
{
    (void)state;
    const double rows[][3] = {{0.25, 0.8133, 0.4033},
                              {0.30, 1.0412, 0.4524},
                              {0.35, 1.2912, 0.4940},
                              {0.38, 1.4511, 0.5157}};
    double arc = 55 * DEGREES;
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++)
        for (int leading = 0; leading < 2; leading++) {
            double closed = touching_all_along(rows[i][0], 0.8, 0.8, arc, leading);
            near(closed, rows[i][leading ? 1 : 2], 5e-5);
            near(cut_shoe(rows[i][0], 0.8, 0.8, arc, leading, false).torque, closed, 1e-6);
        }
    for (double mu = 0.01; mu < 0.15; mu += 0.01)
        for (int leading = 0; leading < 2; leading++)
            near_rel(shoe_factor_sliding(mu, 1, 0.8, 0.8, arc, square, leading),
                     touching_all_along(mu, 0.8, 0.8, arc, leading), 1e-12);
}

/* Our own sums, tip and abutment 0.8 of the radius: by how much the closed form is low, leading. */
static void the_lifted_toe_makes_a_leading_shoe_pull_more(void **state)
{
    (void)state;
    const double rows[][3] = {{55, 0.30, 0.003}, {55, 0.38, 0.018}, {55, 0.45, 0.047},
                              {45, 0.30, 0.006}, {45, 0.38, 0.026}, {45, 0.45, 0.060},
                              {40, 0.30, 0.008}, {40, 0.38, 0.033}, {40, 0.45, 0.072}};
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        double arc = rows[i][0] * DEGREES, mu = rows[i][1];
        double lifted = shoe_factor_sliding(mu, 1, 0.8, 0.8, arc, square, true);
        near(lifted / touching_all_along(mu, 0.8, 0.8, arc, true) - 1, rows[i][2], 6e-4);
    }
    near(shoe_factor_sliding(0.38, 1, 0.8, 0.8, 55 * DEGREES, square, true), 1.478, 5e-4);
    near(shoe_factor_sliding(0.38, 1, 0.8, 0.8, 55 * DEGREES, square, false), 0.519, 5e-4);
}

static void a_sliding_shoe_is_the_sum_of_its_pieces_that_touch(void **state)
{
    (void)state;
    const double mus[] = {0.2, 0.38, 0.50}, arcs[] = {40, 55, 65};
    for (int i = 0; i < 3; i++)
        for (int j = 0; j < 3; j++)
            for (int leading = 0; leading < 2; leading++) {
                double arc = arcs[j] * DEGREES;
                near_rel(shoe_factor_sliding(mus[i], 1, 0.75, 0.8, arc, square, leading),
                         cut_shoe(mus[i], 0.75, 0.8, arc, leading, true).torque, 1e-3);
            }
}

/* Our own sums at friction 0.38, half arc 55 deg, tip and abutment 0.8 of the radius. */
static void a_face_that_pushes_the_heel_up_makes_the_leading_shoe_fiercer(void **state)
{
    (void)state;
    const double rows[][3] = {
        {0, 1.478, 0.519}, {10, 1.597, 0.516}, {20, 1.774, 0.513}, {30, 2.010, 0.512}};
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++)
        for (int leading = 0; leading < 2; leading++) {
            double angle = rows[i][0] * DEGREES, arc = 55 * DEGREES;
            struct shoe_abutment face = {angle, 0};
            double factor = shoe_factor_sliding(0.38, 1, 0.8, 0.8, arc, face, leading);
            near(factor, rows[i][leading ? 1 : 2], 5e-4);
            near_rel(
                factor,
                leaning_cut_shoe(0.38, 0.8, 0.8, arc, cos(angle), sin(angle), leading, true).torque,
                1e-3);
        }
    near(shoe_factor_sliding(0.38, 1, 0.8, 0.8, 55 * DEGREES, (struct shoe_abutment){0, 0.2}, true),
         1.618, 5e-4);
    near(
        shoe_factor_sliding(0.38, 1, 0.8, 0.8, 55 * DEGREES, (struct shoe_abutment){0, 0.2}, false),
        0.524, 5e-4);
}

/* The normal plus friction times the tangent, against the way the drum drags the shoe. */
static void a_leaning_face_with_friction_is_the_sum_of_its_pieces(void **state)
{
    (void)state;
    const double angles[] = {-10, 5, 25}, frictions[] = {0.05, 0.25};
    for (int i = 0; i < 3; i++)
        for (int j = 0; j < 2; j++)
            for (int leading = 0; leading < 2; leading++) {
                double a = angles[i] * DEGREES, s = leading ? 1 : -1, m = frictions[j];
                double nx = cos(a) - s * m * sin(a), ny = sin(a) + s * m * cos(a);
                struct shoe_abutment face = {a, m};
                near_rel(
                    shoe_factor_sliding(0.35, 1, 0.75, 0.8, 50 * DEGREES, face, leading),
                    leaning_cut_shoe(0.35, 0.75, 0.8, 50 * DEGREES, nx, ny, leading, true).torque,
                    1e-3);
            }
}

static void a_steeper_face_never_weakens_a_leading_shoe(void **state)
{
    (void)state;
    double before = 0;
    for (double degrees = 0; degrees <= 40; degrees += 0.5) {
        double now = shoe_factor_sliding(0.35, 1, 0.8, 0.8, 55 * DEGREES,
                                         (struct shoe_abutment){degrees * DEGREES, 0}, true);
        assert_true(now > before + 1e-4);
        before = now;
    }
}

static void a_sliding_shoe_pulls_more_with_more_friction(void **state)
{
    (void)state;
    double leading = 0, trailing = 0;
    for (double mu = 0.05; mu < 0.55; mu += 0.001) {
        double l = shoe_factor_sliding(mu, 0.1, 0.08, 0.08, 55 * DEGREES, square, true);
        double t = shoe_factor_sliding(mu, 0.1, 0.08, 0.08, 55 * DEGREES, square, false);
        assert_true(l > leading && t > trailing && l > t);
        leading = l;
        trailing = t;
    }
}

/* k mu r reaches h_c (1 + mu^2) at mu = 0.5 for h_c = 0.4 k r; lifted lining only brings that
 * nearer, so from 0.8 of it there is no answer, and well below there is. */
static void a_sliding_shoe_near_self_lock_is_refused(void **state)
{
    (void)state;
    double arc = 55 * DEGREES, k = 4 * sin(arc) / (2 * arc + sin(2 * arc)), abutment = 0.4 * k;
    near_unknown(shoe_factor_sliding(0.4, 1, 0.8, abutment, arc, square, true));
    near_unknown(shoe_factor_sliding(0.6, 1, 0.8, abutment, arc, square, true));
    assert_true(shoe_factor_sliding(0.3, 1, 0.8, abutment, arc, square, true) > 0);
    assert_true(shoe_factor_sliding(0.4, 1, 0.8, abutment, arc, square, false) > 0);
}

static void a_pinned_shoe_is_the_sum_of_its_pieces(void **state)
{
    (void)state;
    const double mus[] = {0.2, 0.38, 0.5};
    for (int i = 0; i < 3; i++)
        for (int leading = 0; leading < 2; leading++)
            near_rel(shoe_factor_pin(mus[i], 0.1, 0.08, 0.16, 0.6, 2.5, leading),
                     pinned_pieces(mus[i], 0.8, 1.6, 0.6, 2.5, leading), 1e-6);
    /* our own sum: lining 35 to 145 deg */
    near(shoe_factor_pin(0.38, 1, 0.8, 1.6, 35 * DEGREES, 145 * DEGREES, true), 1.911, 5e-4);
    near(shoe_factor_pin(0.38, 1, 0.8, 1.6, 35 * DEGREES, 145 * DEGREES, false), 0.564, 5e-4);
    near(shoe_locks_at(1, 0.8, 35 * DEGREES, 145 * DEGREES), 0.698, 5e-4);
}

static void a_pinned_leading_shoe_is_refused_from_0_8_of_its_lock(void **state)
{
    (void)state;
    double lock = shoe_locks_at(1, 0.8, 0.6, 2.5);
    assert_true(shoe_factor_pin(0.799 * lock, 1, 0.8, 1.6, 0.6, 2.5, true) > 0);
    near_unknown(shoe_factor_pin(0.801 * lock, 1, 0.8, 1.6, 0.6, 2.5, true));
    assert_true(shoe_factor_pin(0.801 * lock, 1, 0.8, 1.6, 0.6, 2.5, false) > 0);
}

/* Link and cylinder 0.8, anchor 0.95 of the radius, half arcs 50 and 60 deg; the primary shoe
 * summed over two million pieces in Octave. */
static void duo_servo_factors_are_the_stated_ones(void **state)
{
    (void)state;
    const double rows[][2] = {
        {0.25, 2.4015}, {0.30, 3.4189}, {0.35, 4.7880}, {0.38, 5.8388}, {0.45, 9.2843}};
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        double mu = rows[i][0];
        struct shoe_factors shoes =
            duo_servo_factors(mu, 1, 0.8, 0.8, 0.95, 50 * DEGREES, 60 * DEGREES);
        double factor = shoes.front + shoes.rear;
        near(factor, rows[i][1], 1e-4);
        struct cut_shoe first = cut_shoe(mu, 0.8, 0.8, 50 * DEGREES, true, true);
        double arm = first.abutment * (0.95 + 0.8) + (0.95 - 0.8);
        double second = pinned_pieces(mu, 0.95, arm, 30 * DEGREES, 150 * DEGREES, true);
        near_rel(factor, first.torque + second, 1e-3);
        near_rel(shoes.own, first.torque, 1e-3);
        /* its own end of the cylinder alone turns the secondary shoe by 0.95 - 0.8 */
        near_rel(shoes.rear, pinned_pieces(mu, 0.95, 0.15, 30 * DEGREES, 150 * DEGREES, true),
                 1e-3);
    }
}

static void a_shoe_is_unknown_outside_its_ranges(void **state)
{
    (void)state;
    near_unknown(shoe_factor_sliding(0, 1, 0.8, 0.8, 0.9, square, true));
    near_unknown(shoe_factor_sliding(0.3, 0, 0.8, 0.8, 0.9, square, true));
    near_unknown(shoe_factor_sliding(0.3, 1, NAN, 0.8, 0.9, square, true));
    near_unknown(shoe_factor_sliding(0.3, 1, 0.8, NAN, 0.9, square, false));
    near_unknown(shoe_factor_sliding(0.3, 1, 1, 0.8, 0.9, square, true));
    near_unknown(shoe_factor_sliding(0.3, 1, 0.8, 0.8, 1.58, square, true));
    near_unknown(shoe_factor_sliding(0.3, 1, 0.8, 0.8, 0, square, true));
    near_unknown(shoe_factor_sliding(NAN, 1, 0.8, 0.8, 0.9, square, true));
    near_unknown(shoe_factor_sliding(0.3, 1, 0.8, 0.8, 0.9, (struct shoe_abutment){NAN, 0}, true));
    near_unknown(shoe_factor_sliding(0.3, 1, 0.8, 0.8, 0.9, (struct shoe_abutment){0, NAN}, true));
    near_unknown(shoe_factor_sliding(0.3, 1, 0.8, 0.8, 0.9, (struct shoe_abutment){1.1, 0}, true));
    near_unknown(shoe_factor_sliding(2, 1, 0.8, 0.8, 1, square, false)); /* tan 1 = 1.557 */
    near_unknown(shoe_factor_pin(0.3, 1, 1.1, 1.6, 0.6, 2.5, true));
    near_unknown(shoe_factor_pin(0.3, 1, 0.8, 0, 0.6, 2.5, true));
    near_unknown(shoe_factor_pin(0.3, 1, 0.8, 1.6, 2.5, 0.6, true));
    near_unknown(shoe_factor_pin(0.3, 1, 0.8, 1.6, 0.6, 3.2, true));
    near_unknown(shoe_factor_pin(0.3, 1, 0.8, 1.6, -0.1, 2.5, true));
    near_unknown(shoe_factor_pin(NAN, 1, 0.8, 1.6, 0.6, 2.5, false));
    near_unknown(shoe_factor_pin(0.3, 1, NAN, 1.6, 0.6, 2.5, false));
    near_unknown(duo_servo_factors(0.3, 1, 0.8, 0.8, NAN, 0.9, 0.9).front);
    near_unknown(shoe_locks_at(NAN, 0.8, 0.6, 2.5));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(where_nothing_lifts_there_is_a_closed_form),
        cmocka_unit_test(the_lifted_toe_makes_a_leading_shoe_pull_more),
        cmocka_unit_test(a_sliding_shoe_is_the_sum_of_its_pieces_that_touch),
        cmocka_unit_test(a_face_that_pushes_the_heel_up_makes_the_leading_shoe_fiercer),
        cmocka_unit_test(a_leaning_face_with_friction_is_the_sum_of_its_pieces),
        cmocka_unit_test(a_steeper_face_never_weakens_a_leading_shoe),
        cmocka_unit_test(a_sliding_shoe_pulls_more_with_more_friction),
        cmocka_unit_test(a_sliding_shoe_near_self_lock_is_refused),
        cmocka_unit_test(a_pinned_shoe_is_the_sum_of_its_pieces),
        cmocka_unit_test(a_pinned_leading_shoe_is_refused_from_0_8_of_its_lock),
        cmocka_unit_test(duo_servo_factors_are_the_stated_ones),
        cmocka_unit_test(a_shoe_is_unknown_outside_its_ranges),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
