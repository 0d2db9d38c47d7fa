/* A. Esposito, Fluid Power with Applications. Read in the FOSSEE transcription. */
#include "parts/fluid.h"
#include "parts/master.h"
#include "parts/pedal.h"

#include "support/near.h"

#define INCH  0.0254
#define LBF   4.4482216152605
#define PSI   (LBF / (INCH * INCH))
#define INCH3 (INCH * INCH * INCH)

/* Example 2-11, page 57: 10 in3 of oil of 250 000 psi, from 100 to 2000 psi. Printed: 0.076 in3. */
static void ten_cubic_inches_of_oil_give_way_by_0_076(void **state)
{
    (void)state;
    double given = fluid_compression((struct volume){10 * INCH3}, (struct pressure){250e3 * PSI}, 0,
                                     (struct pressure){1900 * PSI})
                       .m3;
    near(given / INCH3, 0.076, 0.0005);
    near(given / INCH3, 0.07600, 1e-9);
}

/* Example 13-1, page 471: 20 in3 of air at 20 psig, a 2 in piston pushed in by 4 in with the port
 * shut. Printed: 78.7 psig. An engine that forgets the atmosphere says 53.8. */
static void shut_in_air_rises_from_20_to_78_7_psi_gauge(void **state)
{
    (void)state;
    double pushed = circle_area((struct length){2 * INCH}).m2 * 4 * INCH;
    double after = air_pressure_after((struct pressure){20 * PSI}, (struct volume){20 * INCH3},
                                      (struct volume){20 * INCH3 - pushed})
                       .pa;
    near(after / PSI, 78.7, 0.05);
    /* 78.6595 with an atmosphere of 14.7 psi; ours is 14.69595 */
    near(after / PSI, 78.6595, 0.01);
    double gone = air_compression((struct volume){1e-6}, (struct pressure){after}).m3;
    near(after,
         air_pressure_after((struct pressure){0}, (struct volume){1e-6},
                            (struct volume){1e-6 - gone})
             .pa,
         1);
}

/* Example 3-5, page 88: 25 lbf on a 4:1 lever, pump piston 1 in, ram 3.25 in. Printed: 127 psi and,
 * from the rounded pressure, 1053 lbf. */
static void a_hand_pump_makes_127_psi(void **state)
{
    (void)state;
    struct pedal lever = {.ratio = {4}, .efficiency = {1}};
    struct master pump = {.bore = {1 * INCH}, .efficiency = {1}};
    double pressure = master_pressure(&pump, pedal_rod_force(&lever, (struct force){25 * LBF})).pa;
    near(pressure / PSI, 127, 0.5);
    near(pressure / PSI, 127.324, 5e-4);
    double ram = pressure * circle_area((struct length){3.25 * INCH}).m2;
    near(ram / LBF, 1056.25, 1e-6);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(ten_cubic_inches_of_oil_give_way_by_0_076),
        cmocka_unit_test(shut_in_air_rises_from_20_to_78_7_psi_gauge),
        cmocka_unit_test(a_hand_pump_makes_127_psi),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
