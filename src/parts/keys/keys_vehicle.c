#include "parts/keys/rows.h"

static bool has_sides(const struct part *part)
{
    return part->as.vehicle.type != VEHICLE_MOTORCYCLE;
}

/* clang-format off */

static const struct choice vehicle_types[] = {
    {"car", "van, truck, lorry, pickup", VEHICLE_CAR, "two axles, wheels on both sides"},
    {"motorcycle", "motorbike, motor cycle, bike", VEHICLE_MOTORCYCLE, "two wheels in line"},
    {0}};

static const struct choice driver_sides[] = {
    {"left", "left-hand drive, left hand, lhd", DRIVER_LEFT, "the steering wheel is on the left"},
    {"right", "right-hand drive, right hand, rhd", DRIVER_RIGHT, "the steering wheel is on the right"},
    {"middle", "centre, center, central", DRIVER_MIDDLE, "the driver sits in the middle"},
    {0}};

static const struct choice engine_places[] = {
    {"front", NULL, ENGINE_FRONT, "in front of the driver"},
    {"rear", "back, middle, mid", ENGINE_REAR, "behind the driver"},
    {0}};

static const struct choice front_axles[] = {
    {"independent", "wishbones, wishbone, double wishbone, struts, strut, sliding pillar",
     AXLE_INDEPENDENT, "each wheel springs by itself"},
    {"live", "driven beam, live axle", AXLE_LIVE, "one driven, steered beam"},
    {"dead", "beam, rigid, solid, beam axle, dead axle, solid axle", AXLE_DEAD, "one steered beam without drive"},
    {"fork", "telescopic fork", AXLE_FORK, "the fork of a motorcycle"},
    {0}};

static const struct choice rear_axles[] = {
    {"live", "rigid, solid, driven beam, live axle, solid axle, rigid axle", AXLE_LIVE, "one driven beam"},
    {"dead", "beam, dead beam, beam axle, dead axle", AXLE_DEAD, "one beam without drive"},
    {"independent", "swing axle, trailing arms", AXLE_INDEPENDENT, "each wheel springs by itself"},
    {"swinging arm", "swing arm, arm", AXLE_ARM, "the swinging arm of a motorcycle"},
    {0}};

static const struct key rows[] = {
    {.name = "title", .others = "name, car", TEXT(as.vehicle.title),
     .example = "Old van", .help = "what the sheet calls the car"},
    {.name = "registration", .others = "registration number, plate, number plate, licence plate",
     TEXT(as.vehicle.registration),
     .example = "ABC 123", .help = "stands on each side of the sheet"},
    {.name = "chassis number", .others = "chassis, frame number, vehicle identification number, vin",
     TEXT(as.vehicle.chassis),
     .example = "0012345", .help = "stands on each side of the sheet"},
    {.name = "distance", .others = "odometer, mileage, kilometres, miles", TEXT(as.vehicle.distance),
     .example = "81200 km", .help = "as the counter shows it; stands on each side of the sheet"},
    {.name = "workshop", .others = "garage, done by", TEXT(as.vehicle.workshop),
     .example = "Shed by the church", .help = "who works on it; stands on each side of the sheet"},
    {.name = "type", CHOICE_OF(as.vehicle.type), .choices = vehicle_types, UNBOUNDED,
     ASSUME(VEHICLE_CAR, PRACTICE),
     .example = "car", .help = "car or motorcycle"},
    {.name = "first used", .others = "first registered, built, year", DATE(as.vehicle.first_used),
     .example = "1978-05", .help = "when it was first used: decides which rules apply"},
    {.name = "country", .others = "land, state, registered in", TEXT(as.vehicle.country),
     .example = "United Kingdom", .help = "whose published rules check --rules sets beside the car"},
    {.name = "driver", .others = "steering wheel, steering, driver's side",
     CHOICE_OF(as.vehicle.driver), PLAIN, .choices = driver_sides,
     .example = "right", .help = "the side the driver sits on, seen facing forward", MEASURED},
    {.name = "engine", .others = "engine at", CHOICE_OF(as.vehicle.engine),
     .choices = engine_places, UNBOUNDED, ASSUME(ENGINE_FRONT, PRACTICE),
     .example = "front", .help = "where the engine and gearbox are"},
    {.name = "front axle", .others = "front suspension", CHOICE_OF(as.vehicle.front_axle), PLAIN,
     .choices = front_axles,
     .example = "independent", .help = "how the front wheels are carried; decides which hoses it needs",
     MEASURED},
    {.name = "rear axle", .others = "rear suspension", CHOICE_OF(as.vehicle.rear_axle), PLAIN,
     .choices = rear_axles,
     .example = "live", .help = "how the rear wheels are carried; decides which hoses it needs",
     MEASURED},
    {.name = "mass", .others = "weight", QUANTITY(DIMENSION_MASS, as.vehicle.mass),
     WITHIN(20, 20e3), USUALLY(100, 3500), ASSUME_NOTHING,
     .example = "1320 kg", .help = "as it is driven, with the driver", MEASURED},
    {.name = "weight on front", .others = "front share, front weight, weight front, weight at front", SHARE(as.vehicle.front_share),
     WITHIN(0.05, 0.95), USUALLY(0.33, 0.67), ASSUME_NOTHING,
     .example = "54 %", .help = "share of the weight that stands on the front wheels", MEASURED},
    {.name = "wheelbase", LENGTH(as.vehicle.wheelbase),
     WITHIN(0.5, 8), USUALLY(1.1, 4), ASSUME_NOTHING,
     .example = "2.44 m", .help = "front to rear wheel centre", MEASURED},
    {.name = "height of mass centre", .others = "height of centre of gravity, "
     "height of center of gravity, centre of gravity, center of gravity, height of mass center",
     LENGTH(as.vehicle.centre_height), WITHIN(0.1, 3), USUALLY(0.35, 1.0), ASSUME_NOTHING,
     .example = "0.68 m", .help = "of the centre of mass above the ground"},
    {.name = "front tyre radius", .others = "front tire radius, front wheel radius",
     LENGTH(as.vehicle.front_tyre), WITHIN(0.08, 1.2), USUALLY(0.2, 0.45), ASSUME_NOTHING,
     .example = "0.285 m", .help = "wheel centre to the ground, the car on its wheels", MEASURED},
    {.name = "rear tyre radius", .others = "rear tire radius, rear wheel radius",
     LENGTH(as.vehicle.rear_tyre), WITHIN(0.08, 1.2), USUALLY(0.2, 0.45), ASSUME_NOTHING,
     .example = "0.285 m", .help = "wheel centre to the ground, the car on its wheels", MEASURED},
    {.name = "grip", .others = "tyre grip, tire grip, road grip", NUMBER(as.vehicle.tyre_grip),
     WITHIN(0.05, 2), USUALLY(0.3, 1.1), ASSUME(0.8, "dry road; " PRACTICE),
     .example = "0.8", .help = "of the tyres on the road"},
    {.name = "grip wet", .others = "wet grip, grip in the wet", NUMBER(as.vehicle.wet_grip),
     WITHIN(0.05, 2), USUALLY(0.2, 0.7), ASSUME(0.4, "wet, worn road; " PRACTICE),
     .example = "0.4", .help = "of the tyres on a wet road"},
    {.name = "rolling resistance", .others = "rolling coefficient", NUMBER(as.vehicle.rolling),
     WITHIN(0, 0.3), USUALLY(0, 0.03), ASSUME(0, "left out; " PRACTICE),
     .example = "0.015", .help = "force that rolling takes, over the weight"},
    {.name = "track", .others = "track width, gauge", LENGTH(as.vehicle.track), ONLY(has_sides),
     WITHIN(0.3, 3), USUALLY(1.0, 1.6), ASSUME(1.3, PRACTICE),
     .example = "1.24 m", .help = "middle of the left tyre to the middle of the right one", MEASURED,
     FIGURES_ONLY},
    {.name = "stop from", .others = "stopping speed", QUANTITY(DIMENSION_SPEED, as.vehicle.stop_from),
     WITHIN(0.1, 100), USUALLY(5, 40), ASSUME(50 / 3.6, PRACTICE),
     .example = "50 km/h", .help = "speed from which the stopping distance is told", FIGURES_ONLY},
    {.name = "hot stop from", .others = "hot stop speed, fade speed",
     QUANTITY(DIMENSION_SPEED, as.vehicle.hot_stop_from),
     WITHIN(0.1, 100), USUALLY(10, 40), ASSUME(100 / 3.6, PRACTICE),
     .example = "100 km/h", .help = "speed from which the heat of a stop is worked out",
     FIGURES_ONLY},
    {.name = "hot stops apart", .others = "time between stops, stop interval",
     QUANTITY(DIMENSION_DURATION, as.vehicle.hot_stop_gap),
     WITHIN(1, 7200), USUALLY(20, 300), ASSUME(60, PRACTICE),
     .example = "60 s", .help = "from one hard stop to the next, while the brakes warm up",
     FIGURES_ONLY},
    {.name = "rotating share", .others = "rotating parts", SHARE(as.vehicle.rotating),
     WITHIN(0, 0.5), USUALLY(0.02, 0.1), ASSUME(0.05, MEMORY),
     .example = "5 %", .help = "what turning wheels (and the engine, clutch up) add to the mass that is "
     "slowed"},
    {.name = "reaction time", QUANTITY(DIMENSION_DURATION, as.vehicle.reaction),
     WITHIN(0, 10), USUALLY(0.7, 1.5), ASSUME(1, PRACTICE),
     .example = "1 s", .help = "of the driver, from seeing to pressing", FIGURES_ONLY},
    {.name = "build-up time", .others = "buildup time, rise time",
     QUANTITY(DIMENSION_DURATION, as.vehicle.build_up),
     WITHIN(0, 5), USUALLY(0.1, 0.6), ASSUME(0.3, PRACTICE),
     .example = "0.3 s", .help = "in which the brakes come on fully", FIGURES_ONLY},
    ROW_NOTE};

const struct key *keys_vehicle(size_t *count)
{
    return ROWS_OF(rows, count);
}
