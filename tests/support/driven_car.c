#include "support/driven_car.h"

#include <math.h>

#include "base/message.h"
#include "parts/keys/key.h"
#include "support/cmocka_all.h"

struct part_names car_names(struct car *car, int count, const int *parts)
{
    struct part_names names = {ARENA_ARRAY(car->arena, (size_t)count, const char *),
                               ARENA_ARRAY(car->arena, (size_t)count, int), (size_t)count};
    for (int i = 0; i < count; i++) {
        names.names[i] = car_part(car, parts[i])->name;
        names.parts[i] = parts[i];
    }
    return names;
}

static void set_origin(struct driven_car *driven, int part, const struct key *key,
                       enum origin_kind kind)
{
    struct part *set = car_part(&driven->car, part);
    set->origins[key_index(set->kind, key)].kind = kind;
}

static const struct key *known_key(const struct driven_car *driven, int part, const char *name)
{
    const struct key *key = key_find(car_part(&driven->car, part)->kind, name);
    assert_non_null(key);
    return key;
}

void driven_say(struct driven_car *driven, int part, const char *name, double value)
{
    const struct key *key = known_key(driven, part, name);
    key_set(car_part(&driven->car, part), key, value);
    set_origin(driven, part, key, ORIGIN_GIVEN);
}

void driven_unsay(struct driven_car *driven, int part, const char *name)
{
    const struct key *key = known_key(driven, part, name);
    key_set(car_part(&driven->car, part), key, NAN);
    set_origin(driven, part, key, ORIGIN_NONE);
}

void driven_settle(struct driven_car *driven)
{
    struct car *car = &driven->car;
    struct messages messages = messages_start(car->arena);
    for (int i = 0; i < car->system->part_count; i++)
        part_assume(car_part(car, i));
    driven->network = network_build(car->system, car->arena, &messages);
    assert_non_null(driven->network);
}

static int add_pedal(struct driven_car *driven, const char *name, int works)
{
    struct car *car = &driven->car;
    int pedal = car_add(car, KIND_PEDAL, name);
    car_part(car, pedal)->as.pedal.type = PEDAL_FOOT;
    car_part(car, pedal)->as.pedal.works = car_names(car, 1, &works);
    return pedal;
}

static void say_brakes(struct driven_car *driven)
{
    const struct usual_car *usual = &driven->usual;
    const int discs[] = {usual->front_left, usual->front_right};
    const int drums[] = {usual->rear_left, usual->rear_right};
    for (int i = 0; i < 2; i++) {
        car_part(&driven->car, discs[i])->as.disc.bores = (struct bores){2, {48e-3}};
        driven_say(driven, discs[i], "caliper", CALIPER_FIXED);
        driven_say(driven, discs[i], "disc diameter", 247e-3);
        driven_say(driven, discs[i], "pad height", 40e-3);
        driven_say(driven, drums[i], "shoes", SHOES_LEADING_TRAILING);
        driven_say(driven, drums[i], "cylinder", CYLINDER_TWO_PISTONS);
        driven_say(driven, drums[i], "bore", 19.05e-3);
        driven_say(driven, drums[i], "drum diameter", 203e-3);
    }
}

static void say_vehicle(struct driven_car *driven)
{
    int vehicle = driven->usual.vehicle;
    driven_say(driven, vehicle, "mass", 1320);
    driven_say(driven, vehicle, "weight on front", 0.54);
    driven_say(driven, vehicle, "wheelbase", 2.44);
    driven_say(driven, vehicle, "height of mass centre", 0.68);
    driven_say(driven, vehicle, "front tyre radius", 0.285);
    driven_say(driven, vehicle, "rear tyre radius", 0.285);
}

/* No springs, no lost motion, round figures: what a hand sum can follow. Tests that are about one
 * of these say it. */
static void say_plainly(struct driven_car *driven)
{
    const int masters[] = {driven->usual.master, driven->usual.clutch_master};
    for (int i = 0; i < 2; i++) {
        driven_say(driven, masters[i], "primary spring", 0);
        driven_say(driven, masters[i], "secondary spring", 0);
    }
    driven_say(driven, driven->servo, "efficiency", 0.95);
    driven_say(driven, driven->servo, "return spring", 0);
    driven_say(driven, driven->servo, "lost motion", 0);
    driven_say(driven, driven->servo, "lost motion without vacuum", 0);
    driven_say(driven, driven->usual.front_left, "pad squash", 0.15e-3);
    driven_say(driven, driven->usual.front_right, "pad squash", 0.15e-3);
    driven_say(driven, driven->usual.slave, "efficiency", 1);
    driven_say(driven, driven->usual.slave, "flex", 0);
    driven_say(driven, driven->brake_pedal, "free play", 3e-3);
    driven_say(driven, driven->clutch_pedal, "free play", 3e-3);
}

static void say_clutch(struct driven_car *driven)
{
    int slave = driven->usual.slave;
    driven_say(driven, driven->usual.clutch_master, "stroke", 30e-3);
    driven_say(driven, slave, "type", SLAVE_OUTSIDE);
    driven_say(driven, slave, "bore", 22.225e-3);
    driven_say(driven, slave, "stroke", 28e-3);
    driven_say(driven, slave, "fork ratio", 1.7);
    driven_say(driven, slave, "release force", 1150);
    driven_say(driven, slave, "bearing travel", 7.5e-3);
    driven_say(driven, slave, "clamp force", 4200);
    driven_say(driven, slave, "plate outer diameter", 0.20);
    driven_say(driven, slave, "plate inner diameter", 0.13);
    driven_say(driven, driven->clutch_pedal, "ratio", 5.5);
    driven_say(driven, driven->clutch_pedal, "travel", 145e-3);
}

struct driven_car driven_start(void)
{
    struct driven_car driven = {.car = car_start()};
    driven.usual = car_usual(&driven.car);
    driven.servo = car_add(&driven.car, KIND_SERVO, "servo");
    car_part(&driven.car, driven.servo)->as.servo.works = driven.usual.master;
    driven_say(&driven, driven.servo, "type", SERVO_DIRECT);
    driven_say(&driven, driven.servo, "diameter", 0.1778);
    driven_say(&driven, driven.servo, "ratio", 2.8);
    driven_say(&driven, driven.servo, "output rod gap", 0.8e-3);
    driven.brake_pedal = add_pedal(&driven, "brake pedal", driven.servo);
    driven_say(&driven, driven.brake_pedal, "ratio", 3.8);
    driven_say(&driven, driven.brake_pedal, "travel", 150e-3);
    driven_say(&driven, driven.brake_pedal, "effort", 220);
    driven.clutch_pedal = add_pedal(&driven, "clutch pedal", driven.usual.clutch_master);
    driven_say(&driven, driven.usual.master, "stroke", 34e-3);
    driven.fluid = car_add(&driven.car, KIND_FLUID, "fluid");
    driven_say(&driven, driven.fluid, "grade", GRADE_DOT4);
    int drums[] = {driven.usual.rear_left, driven.usual.rear_right};
    driven.parking = car_add(&driven.car, KIND_PARKING, "hand brake");
    car_part(&driven.car, driven.parking)->as.parking.works = car_names(&driven.car, 2, drums);
    driven_say(&driven, driven.parking, "lever ratio", 7);
    driven_say(&driven, driven.parking, "shoe lever ratio", 4.5);
    driven_say(&driven, driven.parking, "cable holds off", 0.1e-3);
    say_brakes(&driven);
    say_vehicle(&driven);
    say_clutch(&driven);
    say_plainly(&driven);
    driven_settle(&driven);
    return driven;
}

void driven_finish(struct driven_car *driven)
{
    car_finish(&driven->car);
}
