#include "advice/common/bores.h"

#include <math.h>
#include <string.h>

#include "support/near.h"

static const char *nearest(double millimetres)
{
    const struct bore_row *row = bore_nearest((struct length){millimetres * 1e-3});
    return row == NULL ? NULL : row->name;
}

static void the_nearest_standard_bore_is_found(void **state)
{
    (void)state;
    assert_string_equal(nearest(22.225), "7/8 in");
    assert_string_equal(nearest(22.30), "7/8 in");
    assert_string_equal(nearest(20.70), "13/16 in");
    assert_string_equal(nearest(17.80), "0.700 in");
    assert_string_equal(nearest(48.1), "48 mm");
    assert_null(nearest(0));
    assert_null(nearest(-1));
    assert_null(nearest(NAN));
}

/* The pairs that the trade warns of (common practice, no source). */
static void pairs_that_are_easily_mistaken_are_known(void **state)
{
    (void)state;
    static const struct {
        double bore;
        const char *twin;
    } pairs[] = {{17.46, "0.700 in"}, {19.05, "19 mm"}, {20.64, NULL},
                 {22.225, "22 mm"},   {23.81, "24 mm"}, {25.4, NULL}};
    for (size_t i = 0; i < sizeof pairs / sizeof *pairs; i++) {
        const struct bore_row *row = bore_nearest((struct length){pairs[i].bore * 1e-3});
        const struct bore_row *twin = bore_twin(row);
        if (pairs[i].twin == NULL) {
            continue;
        }
        assert_non_null(twin);
        assert_string_equal(twin->name, pairs[i].twin);
    }
    /* 1-1/4 in (31.75) and 32 mm are a quarter of a millimetre apart; 1-3/16 in has nothing near */
    assert_string_equal(bore_twin(bore_nearest((struct length){31.75e-3}))->name, "32 mm");
    assert_null(bore_twin(bore_nearest((struct length){28.0e-3})));
}

static void bores_are_listed_by_size(void **state)
{
    (void)state;
    size_t count;
    const struct bore_row *rows = bore_rows(&count);
    assert_true(count > 30);
    for (size_t i = 1; i < count; i++) {
        assert_true(rows[i].bore.m > rows[i - 1].bore.m);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_nearest_standard_bore_is_found),
        cmocka_unit_test(pairs_that_are_easily_mistaken_are_known),
        cmocka_unit_test(bores_are_listed_by_size),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
