#include "parts/edge_code.h"

#include "parts/keys/key.h"
#include "support/near.h"

/* SAE J866:2019, table 1, as quoted: the ends of each letter's range of friction when warm. */
static void a_letter_stands_for_the_middle_of_its_range(void **state)
{
    (void)state;
    static const struct {
        enum edge_code code;
        double over, to;
    } rows[] = {
        {EDGE_D, 0.15, 0.25}, {EDGE_E, 0.25, 0.35}, {EDGE_F, 0.35, 0.45}, {EDGE_G, 0.45, 0.55}};
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
        near(edge_code_friction(rows[i].code), (rows[i].over + rows[i].to) / 2, 1e-12);
    assert_true(edge_code_friction(EDGE_C) > 0 && edge_code_friction(EDGE_C) <= 0.15);
    assert_true(edge_code_friction(EDGE_H) > 0.55 && edge_code_friction(EDGE_H) < 1);
    double usual = edge_code_friction(EDGE_NOT_SAID); /* most pads 0.35 to 0.42, quoted */
    assert_true(usual >= 0.35 && usual <= 0.42);
}

/* What is said of friction itself stands; the letters serve where it is not. */
static void friction_follows_the_letters_where_it_is_not_said(void **state)
{
    (void)state;
    static const enum part_kind kinds[] = {KIND_DISC, KIND_DRUM};
    struct arena *arena = arena_create();
    for (int i = 0; i < 2; i++) {
        const struct key *code = key_find(kinds[i], "edge code");
        const struct key *friction = key_find(kinds[i], "friction");
        struct part none, coded;
        part_blank(&none, kinds[i], arena);
        part_blank(&coded, kinds[i], arena);
        assert_int_equal(choice_find(code, "GF")->value, EDGE_G);
        assert_null(choice_find(code, "FX"));
        key_set(&coded, code, EDGE_G);
        part_assume(&none);
        part_assume(&coded);
        near(key_value(&none, friction), 0.38, 1e-12);
        near(key_value(&coded, friction), 0.50, 1e-12);
    }
    arena_destroy(arena);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_letter_stands_for_the_middle_of_its_range),
        cmocka_unit_test(friction_follows_the_letters_where_it_is_not_said),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
