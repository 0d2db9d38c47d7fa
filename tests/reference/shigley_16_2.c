/* R. G. Budynas and J. K. Nisbett, Shigley's Mechanical Engineering Design, 8th to 10th edition,
 * chapter 16, example 16-2: drum with two pivoted shoes on one cylinder. From memory.
 *
 * Drum 300 mm, face 32 mm, friction 0.32, 1000 kPa on the shoe that reaches it, lining 0 to 126
 * deg, pin 112 mm below and 50 mm beside the centre, force 100 mm above it.
 * Printed: F 2.28 kN, torques 366 and 162, together 528 N m. */
#include "parts/drum_brake.h"

#include <math.h>

#include "parts/master.h"
#include "support/near.h"
#include "support/outside.h"

#define DEGREES (3.14159265358979323846 / 180)
#define RADIUS  0.150
#define ARM     0.212
#define END     (126 * DEGREES)

static const struct outside book = {
    "D1", "Budynas and Nisbett, Shigley's Mechanical Engineering Design, example 16-2",
    "from memory"};
static const struct outside section = {"D6", "Shigley's, 8th edition, section 16-6", "read"};

static double factor(double friction, bool leading)
{
    return shoe_factor_pin(friction, RADIUS, hypot(0.112, 0.050), ARM, 0, END, leading);
}

/* The peak of the pressure is at 90 deg; the leading shoe's torque by the book's own formula. */
static void both_shoes_pull_with_the_printed_torques(void **state)
{
    (void)state;
    double leading_torque = 0.32 * 1e6 * 0.032 * RADIUS * RADIUS * (1 - cos(END));
    outside_printed(&book, "torque of the leading shoe", "N m", 366, leading_torque, 0.5);
    double force = leading_torque / (factor(0.32, true) * RADIUS);
    outside_printed(&book, "force on each shoe", "kN", 2.28, force / 1000, 0.005);
    outside_again(&book, "force on each shoe", "N", 2279.06, force, 0.005);
    double trailing_torque = factor(0.32, false) * force * RADIUS;
    outside_printed(&book, "torque of the trailing shoe", "N m", 162, trailing_torque, 0.5);
    outside_again(&book, "torque of the trailing shoe", "N m", 161.935, trailing_torque, 5e-4);
    outside_printed(&book, "torque of both", "N m", 528, leading_torque + trailing_torque, 0.5);
    outside_again(&book, "torque of both", "N m", 527.761, leading_torque + trailing_torque, 1e-3);
}

/* Pressed with 2.28 kN, the shoe that reaches it bears 1000 kPa, the other 443 kPa. */
static void the_lining_bears_the_printed_pressures(void **state)
{
    (void)state;
    double torques[] = {365.826, 161.935};
    const double printed[] = {1000, 443};
    for (int i = 0; i < 2; i++)
        outside_printed(&book, i == 0 ? "peak pressure, leading" : "peak pressure, trailing", "kPa",
                        printed[i], torques[i] * shoe_peak_pin(0.32, RADIUS, 0.032, 0, END) / 1000,
                        0.5);
    /* as a whole brake: pushed with 2279.06 N on 20 mm */
    struct drum drum = {.shoes = SHOES_LEADING_TRAILING,
                        .cylinder = CYLINDER_TWO_PISTONS,
                        .bore = {0.020},
                        .diameter = {2 * RADIUS},
                        .anchor = ANCHOR_PIN,
                        .pin_distance = {hypot(0.112, 0.050)},
                        .tip_distance = {ARM - hypot(0.112, 0.050)},
                        .lining_start = {0},
                        .lining_arc = {END},
                        .lining_width = {0.032},
                        .friction = {0.32},
                        .efficiency = {1},
                        .threshold = {0}};
    struct pressure line = {2279.06 / circle_area(drum.bore).m2};
    struct shoe_torques shoes = drum_shoe_torques(&drum, line);
    outside_printed(&book, "torque of the leading shoe, as a brake", "N m", 366, shoes.front.nm,
                    0.5);
    outside_printed(&book, "torque of the trailing shoe, as a brake", "N m", 162, shoes.rear.nm,
                    0.5);
    outside_printed(&book, "peak pressure, as a brake", "kPa", 1000,
                    drum_lining_pressure(&drum, shoes).pa / 1000, 0.5);
}

static void the_factors_are_those_of_numerical_integration(void **state)
{
    (void)state;
    outside_again(&book, "factor of the leading shoe", "-", 1.07011, factor(0.32, true), 5e-6);
    outside_again(&book, "factor of the trailing shoe", "-", 0.47369, factor(0.32, false), 5e-6);
    outside_again(&book, "friction at which it locks", "-", 0.82830,
                  shoe_locks_at(RADIUS, hypot(0.112, 0.050), 0, END), 5e-6);
    const double rows[][3] = {{0.20, 0.5411, 0.3306}, {0.25, 0.7348, 0.3941},
                              {0.30, 0.9652, 0.4520}, {0.35, 1.2438, 0.5049},
                              {0.40, 1.5875, 0.5535}, {0.45, 2.0220, 0.5984},
                              {0.50, 2.5888, 0.6398}};
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        outside_again(&book, "factor, leading, other frictions", "-", rows[i][1],
                      factor(rows[i][0], true), 5e-5);
        outside_again(&book, "factor, trailing, other frictions", "-", rows[i][2],
                      factor(rows[i][0], false), 5e-5);
    }
}

/* Section 16-6 of the 8th edition, read: 30 % less friction may cost about 50 % more pedal. */
static void a_third_less_friction_costs_half_as_much_pedal_again(void **state)
{
    (void)state;
    double before = factor(0.32, true) + factor(0.32, false);
    double after = factor(0.224, true) + factor(0.224, false);
    outside_printed(&section, "pedal for 30 % less friction, more by", "-", 0.50,
                    before / after - 1, 0.10);
    outside_again(&section, "pedal for 30 % less friction, more by", "-", 0.556, before / after - 1,
                  5e-4);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(both_shoes_pull_with_the_printed_torques),
        cmocka_unit_test(the_lining_bears_the_printed_pressures),
        cmocka_unit_test(the_factors_are_those_of_numerical_integration),
        cmocka_unit_test(a_third_less_friction_costs_half_as_much_pedal_again),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
