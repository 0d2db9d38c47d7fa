#include "advice/job/expected.h"

#include <math.h>
#include <stddef.h>

#include "physics/pressure.h"
#include "physics/servo_stroke.h"

bool is_brake_circuit_of(const struct system *system, const struct network *network, int circuit,
                         int pedal)
{
    const struct circuit *of = &network->circuits[circuit];
    return !of->clutch && pressure_pedal_of(system, of->master) == pedal;
}

struct expecting expecting_start(const struct system *system, const struct network *network,
                                 struct arena *arena)
{
    return (struct expecting){system, network, system_copy(system, arena),
                              solution_room(system, network, arena)};
}

/* What is to be read, of a pedal or a slave. */
struct question {
    double (*read)(const struct expecting *, const struct question *);
    int subject;
    double force; /* NaN: the pedal's own */
    bool assisted;
};

static double most_in_lines(const struct expecting *expecting, const struct question *asked)
{
    double most = NAN;
    for (int v = 0; v < expecting->network->vertex_count; v++) {
        int circuit = expecting->network->vertices[v].circuit;
        if (circuit >= 0 &&
            is_brake_circuit_of(expecting->system, expecting->network, circuit, asked->subject)) {
            most = fmax(most, expecting->room->pressures[v].pa); /* fmax passes over a NaN */
        }
    }
    return most;
}

static double left_of_pedal(const struct expecting *expecting, const struct question *asked)
{
    return expecting->room->pedals[asked->subject].left.m /
           pedal_end(&expecting->system->parts[asked->subject].as.pedal).m;
}

static double slave_travel(const struct expecting *expecting, const struct question *asked)
{
    return expecting->room->clutches[asked->subject].slave_travel.m;
}

static double bearing_travel(const struct expecting *expecting, const struct question *asked)
{
    return expecting->room->clutches[asked->subject].bearing_travel.m;
}

static double strokes_of_servo(const struct expecting *expecting, const struct question *asked)
{
    struct length stroke =
        servo_stroke_in(expecting->system, expecting->network, expecting->room, asked->subject);
    return servo_strokes_left(&expecting->system->parts[asked->subject].as.servo, stroke);
}

static double read_in(const struct expecting *expecting, const struct system *system,
                      const struct question *asked)
{
    struct state state = state_usual();
    state.effort.n = asked->force;
    state.assisted = asked->assisted;
    solve(system, expecting->network, &state, expecting->room);
    return asked->read(expecting, asked);
}

/* One assumed value after the other is moved by a hundredth until one tells. */
static bool rests_on_assumed(const struct expecting *expecting, const struct question *asked,
                             double value)
{
    for (int i = 0; i < expecting->moved->part_count; i++) {
        struct part *part = &expecting->moved->parts[i];
        size_t count;
        const struct key *keys = key_table(part->kind, &count);
        for (size_t k = 0; k < count; k++) {
            double before = keys[k].form == FORM_QUANTITY ? key_value(part, &keys[k]) : NAN;
            if (part_origin(part, keys[k].field)->kind != ORIGIN_ASSUMED || isnan(before)) {
                continue;
            }
            key_set(part, &keys[k], before * 1.01);
            double moved = read_in(expecting, expecting->moved, asked);
            key_set(part, &keys[k], before);
            if (!(moved == value)) {
                return true;
            }
        }
    }
    return false;
}

static struct expected expect(const struct expecting *expecting, const struct question *asked)
{
    struct expected expected = {.value = read_in(expecting, expecting->system, asked)};
    const struct pedal_state *pedal = &expecting->room->pedals[asked->subject];
    expected.at_end = pedal->on_floor || pedal->bottomed;
    expected.assumed = !isnan(expected.value) && rests_on_assumed(expecting, asked, expected.value);
    return expected;
}

struct expected expected_lines(const struct expecting *expecting, int pedal, double force,
                               bool assisted)
{
    return expect(expecting, &(struct question){most_in_lines, pedal, force, assisted});
}

struct expected expected_left(const struct expecting *expecting, int pedal)
{
    return expect(expecting, &(struct question){left_of_pedal, pedal, NAN, true});
}

struct expected expected_strokes(const struct expecting *expecting, int servo)
{
    return expect(expecting, &(struct question){strokes_of_servo, servo, NAN, true});
}

struct expected expected_slave(const struct expecting *expecting, int slave)
{
    return expect(expecting, &(struct question){slave_travel, slave, NAN, true});
}

struct expected expected_bearing(const struct expecting *expecting, int slave)
{
    return expect(expecting, &(struct question){bearing_travel, slave, NAN, true});
}
