#include "advice/bleeding/bottles.h"

#include "support/near.h"

/* By hand, in bottles of 1 L, 500 and 250 mL: what is needed, rounded up to quarters of a litre. */
static void whole_bottles_hold_it_with_the_least_left_over(void **state)
{
    (void)state;
    static const struct {
        double needed;
        int litres, halves, quarters;
        const char *words;
    } rows[] = {
        {1e-6, 0, 0, 1, "1 bottle of 250 mL"},
        {250e-6, 0, 0, 1, "1 bottle of 250 mL"},
        {251e-6, 0, 1, 0, "1 bottle of 500 mL"},
        {600e-6, 0, 1, 1, "1 bottle of 500 mL and 1 of 250 mL"},
        {784e-6, 1, 0, 0, "1 bottle of 1 L"},
        {1000e-6, 1, 0, 0, "1 bottle of 1 L"},
        {2700e-6, 2, 1, 1, "2 bottles of 1 L and 1 of 500 mL and 1 of 250 mL"},
    };
    struct arena *arena = arena_create();
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        struct bottles bottles = bottles_for((struct volume){rows[i].needed});
        assert_int_equal(bottles.count[0], rows[i].litres);
        assert_int_equal(bottles.count[1], rows[i].halves);
        assert_int_equal(bottles.count[2], rows[i].quarters);
        assert_string_equal(bottles_words(arena, &bottles), rows[i].words);
        near(bottles.held.m3,
             rows[i].litres * 1e-3 + rows[i].halves * 5e-4 + rows[i].quarters * 2.5e-4, 1e-15);
    }
    arena_destroy(arena);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(whole_bottles_hold_it_with_the_least_left_over),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
