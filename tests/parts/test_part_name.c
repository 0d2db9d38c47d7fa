#include "parts/part.h"

#include "parts/keys/key.h"
#include "support/cmocka_all.h"

static struct part named(enum part_kind kind, const char *name, struct arena *arena)
{
    struct part part;
    part_blank(&part, kind, arena);
    part.name = name;
    part_read_name(&part);
    return part;
}

static void a_name_says_axle_side_and_type(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct part drum = named(KIND_DRUM, "rear left drum", arena);
    assert_int_equal(drum.axle, AXLE_REAR);
    assert_int_equal(drum.side, SIDE_LEFT);
    assert_int_equal(part_origin(&drum, FIELD(side))->kind, ORIGIN_DERIVED);
    struct part disc = named(KIND_DISC, "front disc", arena);
    assert_int_equal(disc.axle, AXLE_FRONT);
    assert_int_equal(disc.side, SIDE_NONE);
    assert_int_equal(named(KIND_JOINT, "axle tee", arena).as.joint.type, JOINT_TEE);
    assert_int_equal(named(KIND_JOINT, "front block", arena).as.joint.type, JOINT_BLOCK);
    assert_int_equal(named(KIND_PEDAL, "brake lever", arena).as.pedal.type, PEDAL_HAND);
    assert_int_equal(named(KIND_PEDAL, "brake pedal", arena).as.pedal.type, PEDAL_FOOT);
    arena_destroy(arena);
}

static void what_is_said_stands_against_the_name(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct part part;
    part_blank(&part, KIND_DRUM, arena);
    part.name = "left drum";
    part.side = SIDE_RIGHT;
    part_read_name(&part);
    assert_int_equal(part.side, SIDE_RIGHT);
    arena_destroy(arena);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_name_says_axle_side_and_type),
        cmocka_unit_test(what_is_said_stands_against_the_name),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
