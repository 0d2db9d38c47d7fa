#include "advice/figures/trial.h"

#include <math.h>
#include <string.h>

#include "support/near.h"
#include "support/ready_cars.h"

enum { MOST_ROWS = 64 };

/* Two trials of one car: one solves after each move what the key's row says, the other all. */
struct twins {
    struct trial sparing, full;
    size_t size; /* of all figures */
    const char *car;
    bool (*moved)[MOST_ROWS]; /* by kind and row */
};

static void same_figures(struct twins *twins, const struct moved_key *key)
{
    twins->full.moved_since = SOLVES_ALL;
    trial_look(&twins->full);
    trial_look(&twins->sparing);
    if (memcmp(twins->full.now, twins->sparing.now, twins->size) != 0)
        fail_msg("%s: more rests on %s of %s than its row says", twins->car, key->key->name,
                 twins->full.as_said->parts[key->part].name);
}

static void move_about(struct twins *twins, const struct moved_key *key)
{
    const struct part *part = &twins->full.as_said->parts[key->part];
    struct moves moves = trial_moves_of(part, key);
    double to[TRIAL_MOST_MOVES + 2];
    int count = moves.count;
    memcpy(to, moves.to, sizeof moves.to);
    to[count++] = key->base;
    to[count++] = NAN;
    for (int m = 0; m < count; m++) {
        trial_put(&twins->sparing, key, to[m]);
        trial_put(&twins->full, key, to[m]);
        same_figures(twins, key);
        if (m % 2 == 1) { /* back in between, or straight on to the next */
            trial_restore(&twins->sparing, key->part);
            trial_restore(&twins->full, key->part);
        }
    }
    trial_restore(&twins->sparing, key->part);
    trial_restore(&twins->full, key->part);
    same_figures(twins, key);
    size_t row = key_index(part->kind, key->key);
    assert_true(row < MOST_ROWS);
    twins->moved[part->kind][row] = true;
}

static void move_all(struct arena *arena, const char *car, bool (*moved)[MOST_ROWS])
{
    struct force own = {NAN};
    struct result *result = ready_result(arena, car, NULL);
    const struct system *system = result->system;
    struct twins twins = {
        .sparing = trial_start(system, result->network, own, &result->figures, arena),
        .full = trial_start(system, result->network, own, &result->figures, arena),
        .size = (size_t)result->figures.count * sizeof(double),
        .car = car,
        .moved = moved,
    };
    const struct moved_keys keys[] = {trial_given_keys(system, arena),
                                      trial_assumed_keys(system, result->network, arena),
                                      trial_missing_keys(system, TRIAL_FILL_EXAMPLE, arena)};
    for (size_t s = 0; s < sizeof keys / sizeof *keys; s++)
        for (size_t k = 0; k < keys[s].count; k++)
            if (keys[s].items[k].key->solves != SOLVES_ALL)
                move_about(&twins, &keys[s].items[k]);
}

/* Whether that row was moved, or its like of another kind: all kinds have a height and a chamber.
 */
static bool was_moved(bool (*moved)[MOST_ROWS], const struct key *row)
{
    for (int kind = 0; kind < KIND_COUNT; kind++) {
        size_t count;
        const struct key *rows = key_table((enum part_kind)kind, &count);
        for (size_t i = 0; i < count; i++)
            if (rows[i].field == row->field && strcmp(rows[i].name, row->name) == 0 &&
                moved[kind][i])
                return true;
    }
    return false;
}

/* Every row that claims to need less than a whole solve is moved about in every ready car. */
static void a_row_says_what_must_be_solved_again(void **state)
{
    (void)state;
    bool moved[KIND_COUNT][MOST_ROWS] = {{false}};
    struct arena *arena = arena_create();
    const char **cars = ready_cars(arena);
    for (size_t i = 0; cars[i] != NULL; i++) {
        struct arena_mark mark = arena_mark(arena);
        move_all(arena, cars[i], moved);
        arena_release(arena, mark);
    }
    arena_destroy(arena);
    for (int kind = 0; kind < KIND_COUNT; kind++) {
        size_t count;
        const struct key *rows = key_table((enum part_kind)kind, &count);
        for (size_t i = 0; i < count; i++)
            if (rows[i].solves != SOLVES_ALL && trial_moves(&rows[i]) &&
                !was_moved(moved, &rows[i]))
                fail_msg("%s of a %s was never moved", rows[i].name,
                         kind_word((enum part_kind)kind));
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(a_row_says_what_must_be_solved_again)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
