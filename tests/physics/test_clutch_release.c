#include "physics/clutch_release.h"

#include <math.h>

#include "support/driven_car.h"
#include "support/near.h"

/* Master 15.87 mm (197.807 mm2), stroke 30 mm; slave 22.225 mm (387.948 mm2); fork 1.7; release
 * force 1150 N; pedal 5.5:1 with 145 mm. */
#define MASTER_AREA 197.807e-6
#define SLAVE_AREA  387.948e-6

static struct clutch_state release(const struct driven_car *driven, struct solution **room)
{
    *room = solution_room(driven->car.system, driven->network, driven->car.arena);
    return clutch_release(driven->car.system, driven->network, driven->usual.slave, *room);
}

/* 1150/(1.7 * 387.948e-6) = 1.74372 MPa; times 197.807e-6 over 0.95 = 363.07 N on the rod, over
 * 5.5 * 0.95 at the pad. */
static void pressure_and_effort_follow_from_the_release_force(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    struct solution *room;
    struct clutch_state clutch = release(&driven, &room);
    assert_int_equal(clutch.pedal, driven.clutch_pedal);
    assert_int_equal(clutch.master, driven.usual.clutch_master);
    near_rel(clutch.pressure.pa, 1.74372e6, 1e-5);
    near_rel(clutch.effort.n, 363.074 / (5.5 * 0.95), 1e-4);
    driven_finish(&driven);
}

/* Pad 145 mm less 3 mm of play, the rod's gap within it, and the flexing (69.49 N on 200 N/mm),
 * over 5.5, less 1.2 mm of cut-off. Without a word on free play the gap of 0.8 mm takes its place.
 */
static void delivered_volume_follows_from_the_pedals_travel(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    struct solution *room;
    struct clutch_state clutch = release(&driven, &room);
    double piston = (145e-3 - 3e-3 - 69.488 / 200e3) / 5.5 - 1.2e-3;
    near_rel(clutch.delivered.m3, MASTER_AREA * piston, 1e-5);
    near_rel(clutch.slave_travel.m, (clutch.delivered.m3 - clutch.lost.m3) / SLAVE_AREA, 1e-5);
    near_rel(clutch.bearing_travel.m, clutch.slave_travel.m / 1.7, 1e-9);
    assert_true(clutch.lost.m3 > 0 && clutch.lost.m3 < 0.05 * clutch.delivered.m3);
    driven_unsay(&driven, driven.clutch_pedal, "free play");
    piston = (145e-3 - 69.488 / 200e3) / 5.5 - 0.8e-3 - 1.2e-3;
    near_rel(release(&driven, &room).delivered.m3, MASTER_AREA * piston, 1e-5);
    driven_finish(&driven);
}

/* A tenth lost behind the slave: a ninth more pressure and effort. */
static void what_slave_and_fork_lose_is_pressed_on_top(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    struct solution *room;
    struct clutch_state free = release(&driven, &room);
    driven_say(&driven, driven.usual.slave, "efficiency", 0.9);
    near_rel(release(&driven, &room).pressure.pa, free.pressure.pa / 0.9, 1e-12);
    near_rel(release(&driven, &room).effort.n, free.effort.n / 0.9, 1e-12);
    driven_finish(&driven);
}

/* The spring's 20 N at the pad come on top; what it takes at the rod does not depend on it. */
static void a_return_spring_adds_its_force_to_the_effort(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    struct solution *room;
    double before = release(&driven, &room).effort.n;
    driven_say(&driven, driven.clutch_pedal, "return spring", 20);
    near(release(&driven, &room).effort.n, before + 20, 1e-9);
    driven_finish(&driven);
}

static void a_pedal_stop_ends_the_travel(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    driven_say(&driven, driven.clutch_pedal, "stop", 120e-3);
    struct solution *room;
    double piston = (120e-3 - 3e-3 - 69.488 / 200e3) / 5.5 - 1.2e-3;
    near_rel(release(&driven, &room).delivered.m3, MASTER_AREA * piston, 1e-5);
    driven_finish(&driven);
}

/* 0.7 of the peak at the end: 0.7 of pressure, and without a servo of effort; the hoses then swell
 * less at full travel. */
static void what_is_lost_at_full_travel_follows_the_force_at_the_end(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    struct solution *room;
    struct clutch_state alone = release(&driven, &room);
    near(alone.pressure_end.pa, alone.pressure.pa, 0);
    driven_say(&driven, driven.usual.slave, "release force end", 0.7 * 1150);
    struct clutch_state both = release(&driven, &room);
    near(both.effort.n, alone.effort.n, 0);
    near_rel(both.pressure_end.pa, 0.7 * 1.74372e6, 1e-5);
    near_rel(both.effort_end.n, 0.7 * alone.effort.n, 1e-12);
    assert_true(both.lost.m3 < 0.95 * alone.lost.m3);
    assert_true(both.bearing_travel.m > alone.bearing_travel.m);
    driven_finish(&driven);
}

/* 3 mm of play, and 5.5 times port 1.2 and 2 mm * 1.7 * 387.948/197.807. */
static void the_bearing_touches_after_all_play_is_taken_up(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    driven_say(&driven, driven.usual.slave, "bearing play", 2e-3);
    struct solution *room;
    double rod = 1.2e-3 + 2e-3 * 1.7 * 387.948 / 197.807;
    near_rel(release(&driven, &room).touch.m, 3e-3 + 5.5 * rod, 1e-5);
    driven_finish(&driven);
}

static void a_master_delivers_no_more_than_its_stroke(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    driven_say(&driven, driven.usual.clutch_master, "stroke", 20e-3);
    struct solution *room;
    near_rel(release(&driven, &room).delivered.m3, MASTER_AREA * (20e-3 - 1.2e-3), 1e-5);
    driven_finish(&driven);
}

/* At 1.74372 MPa 1 mL of air loses 1 - 101325/(101325 + 1743720) = 94.51 % of itself. */
static void a_millilitre_of_air_shortens_the_bearings_travel(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    struct solution *room;
    double before = release(&driven, &room).bearing_travel.m;
    driven_say(&driven, driven.fluid, "air", 1e-6);
    double lost = before - release(&driven, &room).bearing_travel.m;
    near_rel(lost, 0.94508e-6 / SLAVE_AREA / 1.7, 1e-4);
    driven_finish(&driven);
}

static void the_circuits_volumes_add_up_to_what_the_master_delivers(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    struct solution *room;
    struct clutch_state clutch = release(&driven, &room);
    int circuit =
        driven.network->vertices[network_vertex(driven.network, driven.usual.slave, 0)].circuit;
    double sum = 0;
    for (int cause = 0; cause < CAUSE_COUNT; cause++)
        sum += room->circuits[circuit].by_cause[cause].m3;
    near_rel(sum, clutch.delivered.m3, 1e-12);
    near_rel(room->circuits[circuit].volume.m3, clutch.delivered.m3, 1e-12);
    driven_finish(&driven);
}

static void a_slave_that_nothing_feeds_has_no_pedal(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    int lone = car_add(&driven.car, KIND_SLAVE, "lone slave");
    driven_settle(&driven);
    struct solution *room = solution_room(driven.car.system, driven.network, driven.car.arena);
    struct clutch_state clutch = clutch_release(driven.car.system, driven.network, lone, room);
    assert_int_equal(clutch.pedal, -1);
    near_unknown(clutch.bearing_travel.m);
    driven_finish(&driven);
}

/* A servo of ratio 3, cut-in 40 N and jump 150 N needs (363.074 - 150)/3 + 40 = 111.025 N of rod.
 */
static void a_servo_on_the_clutch_lightens_the_pedal(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    int servo = car_add(&driven.car, KIND_SERVO, "clutch servo");
    car_part(&driven.car, servo)->as.servo.works = driven.usual.clutch_master;
    driven_say(&driven, servo, "type", SERVO_DIRECT);
    driven_say(&driven, servo, "diameter", 0.15);
    driven_settle(&driven);
    struct solution *room;
    near_rel(release(&driven, &room).effort.n, 111.025 / (5.5 * 0.95), 1e-4);
    driven_finish(&driven);
}

/* No leg does more than 2000 N (from memory): what would take more is not known. */
static void no_effort_is_looked_for_above_2000_n(void **state)
{
    (void)state;
    struct driven_car driven = driven_start();
    int servo = car_add(&driven.car, KIND_SERVO, "clutch servo");
    car_part(&driven.car, servo)->as.servo.works = driven.usual.clutch_master;
    driven_say(&driven, servo, "type", SERVO_DIRECT);
    driven_say(&driven, servo, "diameter", 0.15);
    double known = 1150, not_known = 115000;
    while (not_known - known > 1) {
        double force = (known + not_known) / 2;
        driven_say(&driven, driven.usual.slave, "release force", force);
        driven_settle(&driven);
        struct solution *room;
        *(isnan(release(&driven, &room).effort.n) ? &not_known : &known) = force;
    }
    driven_say(&driven, driven.usual.slave, "release force", known);
    driven_settle(&driven);
    struct solution *room;
    near(release(&driven, &room).effort.n, 2000, 1);
    driven_finish(&driven);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(pressure_and_effort_follow_from_the_release_force),
        cmocka_unit_test(delivered_volume_follows_from_the_pedals_travel),
        cmocka_unit_test(a_return_spring_adds_its_force_to_the_effort),
        cmocka_unit_test(a_pedal_stop_ends_the_travel),
        cmocka_unit_test(what_slave_and_fork_lose_is_pressed_on_top),
        cmocka_unit_test(what_is_lost_at_full_travel_follows_the_force_at_the_end),
        cmocka_unit_test(the_bearing_touches_after_all_play_is_taken_up),
        cmocka_unit_test(a_master_delivers_no_more_than_its_stroke),
        cmocka_unit_test(a_millilitre_of_air_shortens_the_bearings_travel),
        cmocka_unit_test(the_circuits_volumes_add_up_to_what_the_master_delivers),
        cmocka_unit_test(a_slave_that_nothing_feeds_has_no_pedal),
        cmocka_unit_test(a_servo_on_the_clutch_lightens_the_pedal),
        cmocka_unit_test(no_effort_is_looked_for_above_2000_n),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
