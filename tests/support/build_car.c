#include "support/build_car.h"

#include "base/list.h"
#include "base/text.h"
#include "support/cmocka_all.h"

struct car car_start(void)
{
    struct arena *arena = arena_create();
    assert_non_null(arena);
    struct car car = {.arena = arena, .system = ARENA_NEW(arena, struct system)};
    car.system->arena = arena;
    car.system->file = "car.ini";
    return car;
}

void car_finish(struct car *car)
{
    arena_destroy(car->arena);
    car->arena = NULL;
}

static struct place next_line(struct car *car)
{
    return (struct place){car->system->file, ++car->lines, 1};
}

int car_add(struct car *car, enum part_kind kind, const char *name)
{
    struct system *system = car->system;
    system->parts = list_room(car->arena, system->parts, (size_t)system->part_count,
                              &car->part_room, sizeof *system->parts);
    struct part *part = &system->parts[system->part_count];
    *part = (struct part){0};
    part_blank(part, kind, car->arena);
    part->name = text_copy(car->arena, name);
    part->place = next_line(car);
    return system->part_count++;
}

struct part *car_part(const struct car *car, int part)
{
    return &car->system->parts[part];
}

int car_vehicle(struct car *car, enum axle_type front, enum axle_type rear)
{
    const int vehicle = car_add(car, KIND_VEHICLE, "vehicle");
    car_part(car, vehicle)->as.vehicle.front_axle = front;
    car_part(car, vehicle)->as.vehicle.rear_axle = rear;
    return vehicle;
}

int car_brake(struct car *car, enum part_kind kind, enum axle axle, enum side side)
{
    const int brake = car_add(car, kind,
                              text_print(car->arena, "%s %s%s%s", axle_word(axle), side_word(side),
                                         side == SIDE_NONE ? "" : " ", kind_word(kind)));
    car_part(car, brake)->axle = axle;
    car_part(car, brake)->side = side;
    return brake;
}

void car_join(struct car *car, int a, int a_chamber, int b, int b_chamber)
{
    struct system *system = car->system;
    system->connections =
        list_room(car->arena, system->connections, (size_t)system->connection_count,
                  &car->connection_room, sizeof *system->connections);
    system->connections[system->connection_count++] = (struct connection){
        .a = {a, a_chamber, NULL}, .b = {b, b_chamber, NULL}, .place = next_line(car)};
}

static int carry(struct car *car, enum part_kind kind, int a, int a_chamber, double length, int b,
                 int b_chamber)
{
    const int carrier = car_add(
        car, kind, text_print(car->arena, "%s %d", kind_word(kind), car->system->part_count));
    struct part *part = car_part(car, carrier);
    if (kind == KIND_HOSE)
        part->as.hose.length.m = length;
    else
        part->as.pipe.length.m = length;
    car_join(car, a, a_chamber, carrier, 0);
    car_join(car, carrier, 1, b, b_chamber);
    return carrier;
}

int car_pipe(struct car *car, int a, int a_chamber, double length, int b, int b_chamber)
{
    return carry(car, KIND_PIPE, a, a_chamber, length, b, b_chamber);
}

int car_hose(struct car *car, int a, int a_chamber, double length, int b, int b_chamber)
{
    return carry(car, KIND_HOSE, a, a_chamber, length, b, b_chamber);
}

int car_implied_joint(struct car *car)
{
    const int joint =
        car_add(car, KIND_JOINT, text_print(car->arena, "joint %d", car->system->part_count));
    car_part(car, joint)->as.joint.implied = 1;
    return joint;
}

int car_line(struct car *car, int a, int a_chamber, double pipe, double hose, int b, int b_chamber)
{
    const int joint = car_implied_joint(car);
    car_pipe(car, a, a_chamber, pipe, joint, 0);
    return car_hose(car, joint, 0, hose, b, b_chamber);
}

static int add_master(struct car *car, const char *name, enum master_type type, double bore)
{
    const int master = car_add(car, KIND_MASTER, name);
    car_part(car, master)->as.master.type = type;
    car_part(car, master)->as.master.bore.m = bore;
    return master;
}

struct usual_car car_usual(struct car *car)
{
    struct usual_car usual;
    usual.vehicle = car_vehicle(car, AXLE_INDEPENDENT, AXLE_LIVE);
    usual.master = add_master(car, "brake master", MASTER_TANDEM, 20.64e-3);
    usual.front_tee = car_add(car, KIND_JOINT, "front tee");
    usual.axle_tee = car_add(car, KIND_JOINT, "axle tee");
    car_part(car, usual.axle_tee)->fitted.on = MOUNT_REAR_AXLE;
    usual.front_left = car_brake(car, KIND_DISC, AXLE_FRONT, SIDE_LEFT);
    usual.front_right = car_brake(car, KIND_DISC, AXLE_FRONT, SIDE_RIGHT);
    usual.rear_left = car_brake(car, KIND_DRUM, AXLE_REAR, SIDE_LEFT);
    usual.rear_right = car_brake(car, KIND_DRUM, AXLE_REAR, SIDE_RIGHT);
    car_pipe(car, usual.master, 0, 0.7, usual.front_tee, 0);
    usual.front_right_hose = car_line(car, usual.front_tee, 0, 0.5, 0.36, usual.front_right, 0);
    usual.front_left_hose = car_line(car, usual.front_tee, 0, 1.4, 0.36, usual.front_left, 0);
    usual.axle_hose = car_line(car, usual.master, 1, 2.6, 0.31, usual.axle_tee, 0);
    car_pipe(car, usual.axle_tee, 0, 0.7, usual.rear_left, 0);
    car_pipe(car, usual.axle_tee, 0, 0.5, usual.rear_right, 0);
    usual.clutch_master = add_master(car, "clutch master", MASTER_SINGLE, 15.87e-3);
    usual.slave = car_add(car, KIND_SLAVE, "clutch slave");
    usual.clutch_hose = car_line(car, usual.clutch_master, 0, 0.9, 0.28, usual.slave, 0);
    return usual;
}
