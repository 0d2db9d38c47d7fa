/* A car of a product of bores is the same as the car solved as a whole. */
#include "advice/choice/columns.h"

#include <math.h>

#include "advice/common/bores.h"
#include "advice_car.h"
#include "plain_car.h"
#include "support/sanitized.h"

static const struct {
    const char *file;
    const char *cylinders[COLUMN_AXES][2];
} cars[] = {
    {"systems/village-van.ini",
     {{"brake master"},
      {"rear left drum", "rear right drum"},
      {"front left disc", "front right disc"}}},
    {"systems/diagonal-hatch.ini", {{"front left disc", "front right disc"}, {"brake master"}}},
    {"systems/family-saloon.ini", {{"brake master"}, {"rear left drum", "rear right drum"}}},
    {"systems/hill-coupe.ini",
     {{"front master"}, {"rear master"}, {"front left disc", "front right disc"}}},
    {"systems/rear-engined-saloon.ini",
     {{"brake master"}, {"front left drum", "front right drum"}}},
    {"systems/servo-estate.ini", {{"brake master"}, {"rear left drum", "rear right drum"}}},
    {"systems/little-two-seater.ini", {{"brake master"}, {"rear left drum", "rear right drum"}}},
};

struct looked {
    const struct advice_car *car;
    struct columns_asked asked;
    int parts[COLUMN_AXES][2];
    struct system *tried;
    struct solution *room;
    long count, compared;
};

static void same(double a, double b, double scale)
{
    if (isinf(a) && isinf(b))
        return;
    near(a, b, 1e-7 * fmax(fabs(b), scale));
}

/* Few of many: each of them with one chance in so many. */
enum { ONE_IN = SANITIZED ? 211 : 13 };

static void compare(const int *at, const struct column_car *car, void *context)
{
    struct looked *looked = context;
    if (looked->count++ % ONE_IN != 5)
        return;
    for (int a = 0; a < looked->asked.axis_count; a++)
        for (int p = 0; p < looked->asked.axes[a].part_count; p++)
            bore_set(&looked->tried->parts[looked->parts[a][p]],
                     looked->asked.axes[a].bores[at[a]]);
    struct column_car plain = plain_car(looked->tried, looked->car->network, looked->asked.effort,
                                        looked->asked.stop, looked->room);
    same(car->foot, plain.foot, 1);
    same(car->left, plain.left, 1e-2);
    same(car->lost, plain.lost, 1e-2);
    same(car->balance, plain.balance, 1); /* a first lock is searched to 1e-6 N */
    looked->compared++;
}

/* Every third bore of the table and one that is none. */
static int bores_tried(struct length *bores)
{
    size_t count;
    const struct bore_row *rows = bore_rows(&count);
    int tried = 0;
    for (size_t i = 0; i < count; i += 3)
        bores[tried++] = rows[i].bore;
    bores[tried++].m = 0.0213;
    return tried;
}

static long look_at(size_t of)
{
    struct advice_car car = advice_car_judged(cars[of].file, NULL);
    struct looked looked = {.car = &car};
    struct length bores[64];
    int count = bores_tried(bores);
    looked.tried = system_copy(car.system, car.arena);
    looked.room = solution_room(looked.tried, car.network, car.arena);
    looked.asked = (struct columns_asked){.system = car.system,
                                          .network = car.network,
                                          .effort = {NAN},
                                          .stop = {4.2},
                                          .most_foot = {NAN}};
    for (int a = 0; a < COLUMN_AXES && cars[of].cylinders[a][0] != NULL; a++) {
        struct bore_axis *axis = &looked.asked.axes[looked.asked.axis_count++];
        for (int p = 0; p < 2 && cars[of].cylinders[a][p] != NULL; p++)
            looked.parts[a][axis->part_count++] = advice_part(&car, cars[of].cylinders[a][p]);
        axis->parts = looked.parts[a];
        axis->bores = bores;
        axis->count = count;
    }
    assert_true(columns_run(&looked.asked, compare, &looked, NULL, NULL, car.arena));
    long product = 1;
    for (int a = 0; a < looked.asked.axis_count; a++)
        product *= count;
    assert_int_equal(looked.count, product);
    advice_car_finish(&car);
    return looked.compared;
}

static void every_car_is_as_if_solved_as_a_whole(void **state)
{
    (void)state;
    long compared = 0;
    for (size_t i = 0; i < sizeof cars / sizeof *cars; i++)
        compared += look_at(i);
    assert_true(SANITIZED || compared > 1000);
    print_message("%ld cars compared\n", compared);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_car_is_as_if_solved_as_a_whole),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
