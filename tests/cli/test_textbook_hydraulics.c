/* More published examples written as cars, from description to JSON figure: pistons, levers, air
 * and drums, and the constructed two-circuit car. Titles, pages and standing of each source, and
 * why other examples are no cars: tests/reference/SOURCES.md. */
#include <stdio.h>
#include <string.h>

#include "support/cmocka_all.h"
#include "support/near.h"
#include "support/outside.h"
#include "variant.h"

#define LBF        4.4482216152605
#define INCH       0.0254
#define PSI        (LBF / (INCH * INCH))
#define ATMOSPHERE 101325.0

/* A pedal and a single master without losses, and a disc at each front wheel. %s: lever ratio,
 * effort, bore of the master, air, keys of the disc. */
static json_t *two_discs(const char *ratio, const char *effort, const char *bore, const char *air,
                         const char *disc)
{
    char text[2048];
    snprintf(text, sizeof text,
             "[vehicle]\ntitle = Example\n[fluid]\ngrade = DOT 4\nair = %s\n[pedal]\n"
             "works = master\nratio = %s\nefficiency = 1\nfree play = 0 mm\neffort = %s\n"
             "[master]\ntype = single\nbore = %s\nefficiency = 1\n[front disc]\n"
             "caliper = sliding\nefficiency = 1\nthreshold = 0 bar\n%s\n[runs]\n"
             "feed = master, 1 m pipe, block\nfront = block, 1 m pipe, front disc\n",
             air, ratio, effort, bore, disc);
    json_t *answer = ask_text(text, FP_CHECK);
    assert_non_null(answer);
    return answer;
}

static const struct outside serway_faughn = {
    "P3", "R. A. Serway and J. S. Faughn, College Physics, problem of a drum brake, as a car",
    "inputs read"};
static const struct outside pump = {
    "P5", "A. Esposito, Fluid Power with Applications, example 3-5, p. 88, as a car",
    "transcription"};
static const struct outside intensifier = {
    "P6", "A. Esposito, Fluid Power with Applications, example 3-6, p. 91, as a car",
    "transcription"};
static const struct outside air_over_oil = {
    "P6", "T. H. Wentzell, Machine Design, example 10-2, p. 198, as a car", "transcription"};

/* 44 N on 1.8 cm2 (15.1388 mm), 6.4 cm2 (28.5460 mm) at the brake, one face of friction 0.50 (two
 * of 0.25) at 34 cm; and with the pistons changed over. */
static void pedal_to_torque(void **state)
{
    (void)state;
    json_t *answer = two_discs("1", "44 N", "15.138795 mm", "0 mL",
                               "bore = 28.545986 mm\neffective radius = 340 mm\nfriction = 0.25");
    outside_again(&serway_faughn, "line pressure", "Pa", 244.444e3,
                  asked_figure(answer, "line-pressure", NULL), 1);
    outside_again(&serway_faughn, "clamp force", "N", 156.444,
                  asked_figure(answer, "clamp-force", "front left disc"), 1e-3);
    outside_again(&serway_faughn, "torque", "N m", 26.5956,
                  asked_figure(answer, "brake-torque", "front left disc"), 1e-4);
    json_decref(answer);
    answer = two_discs("1", "44 N", "28.545986 mm", "0 mL",
                       "bore = 15.138795 mm\neffective radius = 340 mm\nfriction = 0.25");
    outside_again(&serway_faughn, "torque, pistons changed over", "N m", 2.10375,
                  asked_figure(answer, "brake-torque", "front left disc"), 1e-5);
    json_decref(answer);
}

/* 25 lbf on a lever of 4, pump of 1 in, ram of 3.25 in. */
static void hand_pump(void **state)
{
    (void)state;
    json_t *answer =
        two_discs("4", "25 lbf", "1 in", "0 mL", "bore = 3.25 in\neffective radius = 110 mm");
    outside_printed(&pump, "line pressure", "psi", 127,
                    asked_figure(answer, "line-pressure", NULL) / PSI, 0.5);
    outside_again(&pump, "line pressure", "psi", 127.324,
                  asked_figure(answer, "line-pressure", NULL) / PSI, 5e-4);
    outside_again(&pump, "clamp force", "lbf", 1056.25,
                  asked_figure(answer, "clamp-force", "front left disc") / LBF, 1e-6);
    json_decref(answer);
}

/* 2000 lbf (100 psi on 20 in2; here a lever of 5) on 1 in2, feeding 25 in2; and 1256.637 lbf (100
 * psi on 4 in) on 1 in, feeding 3 in. */
static void intensifiers(void **state)
{
    (void)state;
    json_t *answer = two_discs("5", "400 lbf", "1.1283792 in", "0 mL",
                               "bore = 5.6418958 in\neffective radius = 110 mm");
    outside_printed(&intensifier, "line pressure", "psi", 2000,
                    asked_figure(answer, "line-pressure", NULL) / PSI, 1e-3);
    outside_printed(&intensifier, "clamp force", "lbf", 50000,
                    asked_figure(answer, "clamp-force", "front left disc") / LBF, 0.02);
    json_decref(answer);
    answer =
        two_discs("5", "251.3274123 lbf", "1 in", "0 mL", "bore = 3 in\neffective radius = 110 mm");
    outside_printed(&air_over_oil, "line pressure", "psi", 1600,
                    asked_figure(answer, "line-pressure", NULL) / PSI, 1e-5);
    outside_printed(&air_over_oil, "clamp force", "lbf", 11309.73,
                    asked_figure(answer, "clamp-force", "front left disc") / LBF, 0.005);
    json_decref(answer);
}

static const struct outside esposito = {
    "G1", "A. Esposito, Fluid Power with Applications, example 13-1, p. 471, as a car",
    "transcription"};
static const struct outside joel = {
    "G2", "R. Joel, Basic Engineering Thermodynamics, example 5.1, as a car", "transcription"};
static const struct outside granet = {
    "G3", "I. Granet and M. Bluestein, Thermodynamics and Heat Power, example 6.2, as a car",
    "transcription"};

/* Air at an absolute pressure is so much more of it at one atmosphere, which is what a description
 * says; what is left of it at the pressure in the circuit, in the unit of volume of at_first. */
static double air_left(double at_first, double absolute, double litre_unit, double line)
{
    char air[64], effort[64];
    double free_air = at_first * absolute / ATMOSPHERE;
    snprintf(air, sizeof air, "%.12g mL", free_air * litre_unit);
    snprintf(effort, sizeof effort, "%.15g N", line * 3.14159265358979323846 / 4 * INCH * INCH / 5);
    json_t *answer = two_discs("5", effort, "1 in", air, "bore = 40 mm\neffective radius = 110 mm");
    near_rel(asked_figure(answer, "line-pressure", NULL), line, 1e-9);
    double lost = asked_figure(answer, "volume-by-cause", "brake circuit, air");
    json_decref(answer);
    return free_air - lost * 1e6 / litre_unit;
}

/* 20 in3 of air at 20 psi gauge end at 78.66 psi (7.43363 in3); a tenth of it here. 20 000 mm3 at
 * 765 mmHg, 17 000 at 900. 2 m3 at 1 MPa, 0.25 at 8 MPa; a millionth of it here. */
static void air_in_a_circuit(void **state)
{
    (void)state;
    outside_printed(&esposito, "air left at 78.66 psi, a tenth", "in3", 0.743363,
                    air_left(2.0, 20 * PSI + ATMOSPHERE, 16.387064, 78.6595 * PSI), 1e-4);
    outside_printed(&joel, "air left at 900 mmHg", "mL", 17,
                    air_left(20, ATMOSPHERE * 765 / 760, 1, ATMOSPHERE * 140 / 760), 1e-8);
    outside_printed(&granet, "air left at 8 MPa, a millionth", "mL", 0.25,
                    air_left(2, 1e6, 1, 8e6 - ATMOSPHERE), 1e-8);
}

static const struct outside jindal = {
    "D4", "U. C. Jindal, Machine Design, example 23-4, p. 620, as a car (its sign slip put right)",
    "transcription"};
static const struct outside sensitivity = {
    "D6", "Shigley's, 8th edition, section 16-6, as two cars", "read"};

static double drum_torque(const char *effort, const char *drum)
{
    char text[2048];
    snprintf(text, sizeof text,
             "[vehicle]\ntitle = Example\n[pedal]\nworks = master\nratio = 5\nefficiency = 1\n"
             "free play = 0 mm\neffort = %s\n[master]\ntype = single\nbore = 1 in\n"
             "efficiency = 1\n[front drum]\nshoes = leading and trailing\n"
             "cylinder = two pistons\nbore = 1 in\nanchor = pin\nefficiency = 1\n"
             "threshold = 0 bar\n%s\n[runs]\nfeed = master, 1 m pipe, block\n"
             "front = block, 1 m pipe, front drum\n",
             effort, drum);
    json_t *answer = ask_text(text, FP_CHECK);
    assert_non_null(answer);
    double torque = asked_figure(answer, "brake-torque", "front left drum");
    json_decref(answer);
    return torque;
}

/* Drum 320 mm, friction 0.3, pin at (115, 66.4) mm, 0 to 120 degrees, arm 230 mm, 3852.18 N on each
 * shoe: 576.000 + 283.682 N m. The printed 2812.9 N would give 627.8 N m. */
static void jindal_drum(void **state)
{
    (void)state;
    double torque = drum_torque("770.436 N", "drum diameter = 320 mm\npin distance = 132.793 mm\n"
                                             "tip distance = 97.207 mm\nlining start = 0 deg\n"
                                             "lining arc = 120 deg\nfriction = 0.3");
    outside_again(&jindal, "torque of both shoes", "N m", 859.682, torque, 0.01);
}

/* The drum of Shigley's example 16-2 with friction 0.32, and with 30 % less of it: the pedal must
 * be pressed about 50 % harder for the same torque. */
static void friction_lost(void **state)
{
    (void)state;
    static const char shigley[] = "drum diameter = 300 mm\npin distance = 122.654 mm\n"
                                  "tip distance = 89.346 mm\nlining start = 0 deg\n"
                                  "lining arc = 126 deg\nfriction = ";
    char before[256], after[256];
    snprintf(before, sizeof before, "%s0.32", shigley);
    snprintf(after, sizeof after, "%s0.224", shigley);
    double more = drum_torque("100 N", before) / drum_torque("100 N", after) - 1;
    outside_printed(&sensitivity, "pedal for 30 % less friction, more by", "-", 0.50, more, 0.10);
    outside_again(&sensitivity, "pedal for 30 % less friction, more by", "-", 0.556, more, 5e-4);
}

static const struct outside budget = {
    "X1", "Travel budget of a two-circuit car at 7 MPa, from its description", "constructed"};
static const struct outside servo = {
    "X4", "Vacuum servo of 8 in, 0.7 bar, 95 %, from its description", "constructed"};

/* By hand, as constructed_whole_car.c has it, whose hand sum has 0.1 mL of air in the front circuit
 * alone: here there is none, and its 0.0986 mL are added. Hoses swell by 0.98 mL/m at 7 MPa, that
 * is 0.973439 mL/m at 1000 psi; chambers make up 122.894 and 45.427 mL of fluid. */
static const char budget_car[] =
    "[vehicle]\ntitle = Example\n[fluid]\ngrade = DOT 4\nair = 0 mL\n"
    "[pedal]\nworks = master\nratio = 4\nefficiency = 0.8\nfree play = 2 mm\n"
    "stiffness = 1000000 N/mm\neffort = 848.6375 N\n"
    "[master]\ntype = tandem\nbore = 22.225 mm\nefficiency = 1\ncut off = 1.2 mm\nrod gap = 0 mm\n"
    "primary outlets = front\nsecondary outlets = rear\n"
    "[front disc]\ncaliper = sliding\nbore = 54 mm\neffective radius = 110 mm\nthreshold = 0 bar\n"
    "roll back = 0.15 mm\npad squash = 0.0857142857142857 mm\n"
    "body opening = 0.142857142857143 mm\nchamber = 44.98691 mL\n"
    "[rear drum]\nshoes = leading and trailing\ncylinder = two pistons\nbore = 19.05 mm\n"
    "drum diameter = 203 mm\nthreshold = 0 bar\nclearance = 0.4 mm\n"
    "give = 0.357142857142857 mm\nchamber = 1.51322 mL\n"
    "[front tee]\nchamber = 0.1 mL\n[left bracket]\nchamber = 0.1 mL\n"
    "[right bracket]\nchamber = 0.1 mL\n[rear bracket]\nchamber = 0.1 mL\n"
    "[axle tee]\nchamber = 0.1 mL\n"
    "[all hoses]\nexpansion = 0.973439 mL/m\n"
    "[runs]\nfront feed = master.front, 1 m pipe, front tee\n"
    "front left = front tee, 1 m pipe, left bracket, 0.4 m hose, front left disc\n"
    "front right = front tee, 1 m pipe, right bracket, 0.4 m hose, front right disc\n"
    "rear feed = master.rear, 2.5 m pipe, rear bracket, 0.35 m hose, axle tee\n"
    "rear left = axle tee, 1 m pipe, rear left drum\n"
    "rear right = axle tee, 1 m pipe, rear right drum\n";

static void travel_budget(void **state)
{
    (void)state;
    const double air = 0.0986, area = 387.948;
    json_t *answer = ask_text(budget_car, FP_CHECK);
    assert_non_null(answer);
    const struct {
        const char *of;
        double ml, within;
    } rows[] = {
        {"front circuit, clearances", 0.68706, 1e-5}, {"front circuit, hoses", 0.784, 1e-4},
        {"front circuit, fluid", 0.4327, 1e-4},       {"front circuit, pipes", 0.0056, 1e-4},
        {"rear circuit, hoses", 0.343, 1e-4},         {"rear circuit, fluid", 0.1599, 1e-4},
        {"rear circuit, pipes", 0.0084, 1e-4}};
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++)
        outside_again(&budget, rows[i].of, "mL", rows[i].ml,
                      asked_figure(answer, "volume-by-cause", rows[i].of) * 1e6, rows[i].within);
    outside_again(&budget, "rod travel", "mm", 13.4014,
                  asked_figure(answer, "rod-travel", NULL) * 1e3 + air / area * 1e3, 3e-4);
    outside_again(&budget, "pedal travel", "mm", 55.606,
                  asked_figure(answer, "pedal-travel", NULL) * 1e3 + 4 * air / area * 1e3, 2e-3);
    json_decref(answer);
}

static double rod_force(const char *effort)
{
    char text[1024];
    snprintf(text, sizeof text,
             "[vehicle]\ntitle = Example\n[pedal]\nworks = servo\nratio = 4\nefficiency = 1\n"
             "effort = %s\n[servo]\ntype = direct\nworks = master\ndiameter = 8 in\nratio = 3.5\n"
             "cut in = 0 N\njump = 0 N\nvacuum = 0.7 bar\nefficiency = 0.95\nreturn spring = 0 N\n"
             "[master]\ntype = single\nbore = 22.225 mm\nefficiency = 1\n[front disc]\n"
             "caliper = sliding\nbore = 54 mm\n[runs]\nfeed = master, 1 m pipe, block\n"
             "front = block, 1 m pipe, front disc\n",
             effort);
    json_t *answer = ask_text(text, FP_CHECK);
    assert_non_null(answer);
    double force = asked_figure(answer, "rod-force", NULL);
    json_decref(answer);
    return force;
}

/* 862.62 N in and 3019.17 out at the knee; below it the ratio is 3.5, above it 1. */
static void servo_knee_from_the_pedal(void **state)
{
    (void)state;
    outside_again(&servo, "rod force at the knee", "N", 3019.17, rod_force("215.655 N"), 0.02);
    outside_again(&servo, "100 N below the knee", "N", 3019.17 - 350, rod_force("190.655 N"), 0.02);
    outside_again(&servo, "100 N above the knee", "N", 3019.17 + 100, rod_force("240.655 N"), 0.02);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(pedal_to_torque), cmocka_unit_test(hand_pump),
        cmocka_unit_test(intensifiers),    cmocka_unit_test(air_in_a_circuit),
        cmocka_unit_test(jindal_drum),     cmocka_unit_test(friction_lost),
        cmocka_unit_test(travel_budget),   cmocka_unit_test(servo_knee_from_the_pedal),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
