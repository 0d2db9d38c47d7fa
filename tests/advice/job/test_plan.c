/* The whole job in one order: over all ready cars, each as it is, with the work that is ready for
 * it, with all renewed, and with one part alone opened or renewed, by every way of bleeding; and
 * over 1,000 cars made up by dice, each as it is and with all renewed. */
#include "advice/job/plan.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "cross/random_car.h"
#include "input/read.h"
#include "network/work.h"
#include "support/near.h"
#include "support/plain_plan.h"
#include "support/ready_cars.h"
#include "support/run_cli.h"
#include "support/sanitized.h"

/* A few as a quick test; as many as the first argument says. */
static int random_cars = SANITIZED ? 40 : 150;

struct job {
    const char *name;
    const struct system *system;
    const struct plan *plan;
    struct arena *arena;
};

static const struct step *steps_of(const struct job *job, size_t *count)
{
    *count = job->plan->steps.count;
    return job->plan->steps.items;
}

/* --- the jobs -------------------------------------------------------------------------------- */

static const struct system *read_words(const char *name, const char *words, size_t length,
                                       struct arena *arena)
{
    struct messages messages = messages_start(arena);
    struct source source = {name, words, length};
    const struct system *system = read_car(&source, arena, &messages);
    assert_non_null(system);
    return system;
}

static const struct system *read_file(const char *below, struct arena *arena)
{
    struct messages messages = messages_start(arena);
    struct source source;
    char *path = source_path(below);
    assert_true(source_load(path, arena, &messages, &source));
    free(path);
    return read_words(below, source.bytes, source.count, arena);
}

static void look_at(void (*look)(struct job *), const char *name, const struct system *system,
                    enum bleed_method method, struct arena *arena)
{
    const struct network *network = network_build(system, arena, NULL);
    struct job job = {name, system, plain_plan(system, network, method, arena), arena};
    look(&job);
}

static void look_at_one_by_one(void (*look)(struct job *), const char *car,
                               const struct system *system, struct arena *arena)
{
    for (int i = 0; i < system->part_count; i++) {
        for (int deed = DEED_OPENED; deed <= DEED_RENEWED && kind_is_wet(system->parts[i].kind);
             deed++) {
            look_at(look,
                    text_print(arena, "%s, %s %s", car, deed == DEED_OPENED ? "opened" : "renewed",
                               system->parts[i].name),
                    plain_work(system, (enum work_deed)deed, i, arena), METHOD_PEDAL, arena);
        }
    }
}

static void look_at_ready_cars(void (*look)(struct job *))
{
    struct arena *names = arena_create();
    const char **cars = ready_cars(names);
    for (size_t c = 0; cars[c] != NULL; c++) {
        struct arena *arena = arena_create();
        const struct system *car = read_file(cars[c], arena);
        const struct system *all = plain_work(car, DEED_RENEWED, -1, arena);
        for (int m = 0; m < METHOD_COUNT; m++) {
            look_at(look, cars[c], car, (enum bleed_method)m, arena);
            look_at(look, text_print(arena, "%s, all renewed", cars[c]), all, (enum bleed_method)m,
                    arena);
        }
        look_at_one_by_one(look, cars[c], car, arena);
        arena_destroy(arena);
    }
    arena_destroy(names);
}

static const struct system *random_system(int number, struct arena *arena)
{
    char *words = NULL;
    size_t length = 0;
    FILE *description = open_memstream(&words, &length), *numbers = fopen("/dev/null", "w");
    struct random_state state;
    assert_true(description != NULL && numbers != NULL);
    random_car(number, description, numbers, &state);
    fclose(description);
    fclose(numbers);
    const char *kept = text_copy_part(arena, words, length);
    free(words);
    return read_words("random.ini", kept, length, arena);
}

static void look_at_random_cars(void (*look)(struct job *))
{
    for (int i = 1; i <= random_cars; i++) {
        struct arena *arena = arena_create();
        const struct system *car = random_system(i, arena);
        look_at(look, text_print(arena, "random car %d", i), car, METHOD_PEDAL, arena);
        look_at(look, text_print(arena, "random car %d, all renewed", i),
                plain_work(car, DEED_RENEWED, -1, arena), METHOD_PEDAL, arena);
        arena_destroy(arena);
    }
}

/* --- what holds of each ---------------------------------------------------------------------- */

static long seen;

static void look_for_needs(struct job *job)
{
    size_t count;
    const struct step *steps = steps_of(job, &count);
    for (size_t i = 0; i < count; i++) {
        for (size_t k = i + 1; k < count; k++) {
            enum step_id id = step_id_of(steps[k].row);
            bool same = step_names(steps[i].row->needs_same, STEP_MOST_NEEDS, id) &&
                        step_shares_part(&steps[i], &steps[k]);
            if (same || step_names(steps[i].row->needs, STEP_MOST_NEEDS, id)) {
                fail_msg("%s: %s stands before %s, which it needs", job->name, steps[i].name,
                         steps[k].name);
            }
        }
        seen++;
    }
}

static void no_step_stands_before_what_it_needs(void **state)
{
    (void)state;
    seen = 0;
    look_at_ready_cars(look_for_needs);
    assert_true(seen > 20000);
}

static int last_before_motion(const struct job *job)
{
    size_t count;
    const struct step *steps = steps_of(job, &count);
    for (size_t i = 0; i < count; i++) {
        if (steps[i].row->phase >= PHASE_DRIVE) {
            return (int)i;
        }
    }
    return (int)count;
}

static bool is_about_the_same(const struct step *one, const struct step *two)
{
    if (one->part >= 0) {
        return step_shares_part(one, two);
    }
    return (one->text == NULL) == (two->text == NULL) &&
           (one->text == NULL || strcmp(one->text, two->text) == 0);
}

/* What is set, taken off or held for the work alone is undone once, after it and before the car
 * moves. */
static void look_for_undoing(struct job *job)
{
    size_t count;
    const struct step *steps = steps_of(job, &count);
    for (size_t i = 0; i < count; i++) {
        int times = 0;
        for (size_t k = 0; steps[i].row->undo[0] != STEP_NONE && k < count; k++) {
            bool undoes =
                step_names(steps[i].row->undo, STEP_MOST_UNDOING, step_id_of(steps[k].row));
            if (!undoes || !is_about_the_same(&steps[i], &steps[k])) {
                continue;
            }
            times++;
            if (k < i || (int)k >= last_before_motion(job)) {
                fail_msg("%s: %s is undone by %s at the wrong time", job->name, steps[i].name,
                         steps[k].name);
            }
        }
        if (steps[i].row->undo[0] != STEP_NONE && times != 1) {
            fail_msg("%s: %s is undone %d times", job->name, steps[i].name, times);
        }
        seen += times;
    }
}

static void what_is_set_or_taken_off_is_undone_once_before_the_car_moves(void **state)
{
    (void)state;
    seen = 0;
    look_at_ready_cars(look_for_undoing);
    assert_true(seen > 1500);
}

static void look_at_joints(struct job *job)
{
    size_t count;
    const struct step *steps = steps_of(job, &count);
    for (int i = 0; i < job->plan->joint_count; i++) {
        const struct plan_joint *joint = &job->plan->joints[i];
        int undone = 0, tightened = 0;
        for (size_t k = 0; k < count; k++) {
            bool mine = steps[k].joint == joint->joint;
            undone += mine && steps[k].row->phase == PHASE_APART;
            tightened += mine && steps[k].row->phase == PHASE_TOGETHER &&
                         steps[k].row != step_row_of(STEP_CLOSE_HOSE_CLIP);
        }
        if (undone != 1 || tightened != 1 || joint->undo > joint->tighten) {
            fail_msg("%s: joint %s, the %s at the %s, is undone %d times and tightened %d times",
                     job->name, joint->letter, job->system->parts[joint->part].name,
                     job->system->parts[joint->at].name, undone, tightened);
        }
        for (int k = 0; k < i; k++) {
            assert_true(strcmp(job->plan->joints[k].letter, joint->letter) != 0);
        }
        seen++;
    }
}

static void each_joint_that_is_undone_is_tightened_once(void **state)
{
    (void)state;
    seen = 0;
    look_at_ready_cars(look_at_joints);
    assert_true(seen > 800);
}

/* What was off or is new goes on; what was only opened stays. */
static void look_at_parts(struct job *job)
{
    for (int i = 0; i < job->plan->part_count; i++) {
        const struct plan_part *part = &job->plan->parts[i];
        if (part->off >= 0 && !(part->fit > part->off)) {
            fail_msg("%s: the %s comes off and does not go on", job->name,
                     job->system->parts[part->part].name);
        }
        assert_true(part->measure < 0 || part->fit < 0 || part->measure < part->fit);
        assert_true(part->fill < 0 || (part->fill > part->off && part->fill < part->fit));
        seen++;
    }
    for (int i = 0; i < job->system->part_count; i++) {
        const struct part *part = &job->system->parts[i];
        bool fitted = !part->done.renewed && !part->done.replaced;
        for (int k = 0; k < job->plan->part_count; k++) {
            fitted = fitted || (job->plan->parts[k].part == i && job->plan->parts[k].fit >= 0);
        }
        bool soft = part->kind == KIND_HOSE &&
                    (part->as.hose.use == HOSE_SUPPLY || part->as.hose.use == HOSE_VACUUM);
        bool implied = part->kind == KIND_JOINT && part->as.joint.implied == 1;
        if (!fitted && kind_is_wet(part->kind) && !soft && !implied) {
            fail_msg("%s: the new %s is not fitted", job->name, part->name);
        }
    }
}

static void what_came_off_goes_on(void **state)
{
    (void)state;
    seen = 0;
    look_at_ready_cars(look_at_parts);
    assert_true(seen > 400);
}

/* No union, drawing out or measuring once fresh fluid is in; no pedal between the first union and
 * the note's coming off; no wheel before the nuts and the second person. */
static void look_at_time(struct job *job)
{
    static const char *const early[] = {"open-",  "before-",      "apart-",
                                        "bench-", "set-draw-old", "set-servo-rod-gap"};
    static const char *const pressing[] = {
        "open-pistons-early", "open-free-pistons", "before-servo", "set-servo-empty",
        "set-bar-together",   "bleed-master",      "bleed-nipple", "bleed-slave",
        "undo-pistons",       "test-shoes",        "finish-pedal", "test-hold",
        "finish-clutch"};
    size_t count;
    const struct step *steps = steps_of(job, &count);
    bool filled = false, note = false, second = false, nuts = false, brakes = false;
    for (size_t i = 0; i < count; i++) {
        const char *id = steps[i].row->id;
        filled = filled || strcmp(id, "set-reservoir") == 0 || strcmp(id, "set-kit-reverse") == 0;
        note = (note || strcmp(id, "open-no-pedal") == 0) && strcmp(id, "close-note") != 0 &&
               strcmp(id, "undo-note") != 0;
        second = second || strcmp(id, "test-second-person") == 0;
        nuts = nuts || strcmp(id, "test-wheel-nuts") == 0 || strcmp(id, "test-caliper-bolts") == 0;
        brakes = brakes || strcmp(id, "test-first-drive") == 0;
        for (size_t k = 0; filled && k < sizeof early / sizeof *early; k++) {
            if (text_begins(id, early[k])) {
                fail_msg("%s: %s comes when all is closed and full", job->name, steps[i].name);
            }
        }
        for (size_t k = 0; note && k < sizeof pressing / sizeof *pressing; k++) {
            bool steady = strcmp(id, "bleed-master-steady") == 0;
            if (text_begins(id, pressing[k]) && !steady) {
                fail_msg("%s: %s under the note that nobody presses", job->name, steps[i].name);
            }
        }
        if (steps[i].row->phase == PHASE_DRIVE && (!second || (brakes && !nuts))) {
            fail_msg("%s: %s before second person and nuts", job->name, steps[i].name);
        }
        seen++;
    }
    assert_false(note);
}

static void nothing_is_opened_late_pressed_early_or_driven_unsigned(void **state)
{
    (void)state;
    seen = 0;
    look_at_ready_cars(look_at_time);
    assert_true(seen > 20000);
}

static void look_at_names(struct job *job)
{
    size_t count;
    const struct step *steps = steps_of(job, &count);
    for (size_t i = 0; i < count; i++) {
        assert_int_equal(steps[i].number, (int)i + 1);
        assert_int_equal(plan_step_named(job->plan, steps[i].name), (int)i);
        assert_null(strpbrk(steps[i].name, "=:;#\n"));
        assert_true(strlen(steps[i].name) < 150); /* lines of a file hold 200 */
        seen++;
    }
}

static void each_step_has_a_name_of_its_own(void **state)
{
    (void)state;
    look_at_ready_cars(look_at_names);
}

static void look_at_all(struct job *job)
{
    look_for_needs(job);
    look_for_undoing(job);
    look_at_joints(job);
    look_at_parts(job);
    look_at_time(job);
    look_at_names(job);
}

static void all_of_it_holds_of_cars_made_up_at_random(void **state)
{
    (void)state;
    seen = 0;
    look_at_random_cars(look_at_all);
    assert_true(seen > 400 * random_cars);
}

/* --- one foreman's order ---------------------------------------------------------------------- */

/* Common practice, no source: the order of the whole job on the van with its work, 46 rows, as one
 * foreman put it down, and why each stands where it does. Steps by their names; several in one
 * place are one step of ours, or have no order among them. One departure: the hand brake is tried
 * on a slope after the first stop on the level, since the car must drive to the slope. */
static const char *const foreman[][6] = {
    {"before-read"},
    {"before-list", "before-old-cups clutch master"},
    {"before-compare brake master"},
    {"set-level", "before-wheels"},
    {"open-try-nipple"},
    {"open-pistons-early", "before-servo servo"},
    {"set-paint", "before-plugs"},
    {"open-pistons-home"},
    {"open-empty-reservoir brake reservoir"},
    {"open-no-pedal"},
    {"open-band-shoes rear left drum"},
    {"open-pipe-nut rear left pipe at rear left drum"},
    {"open-take-off rear left drum"},
    {"open-hose-nut front right pipe at front right hose"},
    {"open-hose-end front right hose at front right disc"},
    {"open-hose-nut clutch line pipe at clutch line hose"},
    {"open-hose-end clutch line hose at clutch slave"},
    {"open-take-off clutch slave"},
    {"open-pipe-nut front feed pipe at brake master",
     "open-pipe-nut rear feed pipe at brake master"},
    {"open-off-servo brake master"},
    {"open-measure brake master"},
    {"apart-decide"},
    {"bench-cylinder", "bench-slave clutch slave"},
    {"bench-master brake master"},
    {"set-servo-rod-gap servo"},
    {"close-threads"},
    {"close-cylinder rear right drum"},
    {"close-pipe-nut rear right pipe at rear right drum"},
    {"close-drum rear right drum"},
    {"close-hose front left hose"},
    {"close-hose-in-caliper front left hose at front left disc"},
    {"close-hose-clip front left hose at front left hose"},
    {"close-pipe-nut front left pipe at front left hose"},
    {"close-hose-steered front left hose"},
    {"close-part clutch slave"},
    {"close-pipe-nut clutch line pipe at clutch line hose"},
    {"close-master brake master"},
    {"close-pipe-nut front feed pipe at brake master",
     "close-pipe-nut rear feed pipe at brake master"},
    {"set-rod-gap-clutch clutch master"},
    {"set-free-play brake pedal", "set-free-play clutch pedal"},
    {"set-load-valve load valve", "set-shoes-up", "set-pedal-block clutch pedal"},
    {"set-label"},
    {"set-reservoir brake reservoir"},
    {"set-look"},
    {"set-tandem-together brake master"},
    {"close-note"},
    {"bleed-master brake master"},
    {"bleed-nipple rear left drum"},
    {"bleed-nipple rear right drum"},
    {"bleed-nipple front left disc"},
    {"bleed-nipple front right disc"},
    {"bleed-slave clutch slave"},
    {"undo-pistons-home"},
    {"test-second-round"},
    {"finish-nipples", "finish-nipples 2"},
    {"test-shoes", "undo-load-valve load valve", "undo-pedal-block clutch pedal"},
    {"test-hand-brake hand brake"},
    {"undo-label"},
    {"test-engine-off servo"},
    {"test-hold-long brake pedal"},
    {"test-hold-minute brake pedal"},
    {"finish-pedal brake pedal"},
    {"test-hold brake pedal"},
    {"test-servo servo"},
    {"test-hold-assisted brake pedal"},
    {"test-reserve-assisted brake pedal"},
    {"test-circuits brake pedal"},
    {"test-clutch clutch slave"},
    {"test-clutch-gear clutch pedal"},
    {"test-free-wheels"},
    {"test-overnight"},
    {"test-second-person"},
    {"test-wheel-nuts"},
    {"test-first-drive"},
    {"drive-look", "test-slope hand brake", "test-bed-in"},
    {"later-next-day"},
    {"later-100-km"},
    {"later-fluid brake fluid", "later-hoses"},
};

static void the_van_goes_by_the_foremans_order(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    struct result *result =
        ready_result(arena, "systems/village-van.ini", "demo/village-van-work.ini");
    int before = -1;
    for (size_t i = 0; i < sizeof foreman / sizeof *foreman; i++) {
        int last = before;
        for (size_t k = 0; k < 6 && foreman[i][k] != NULL; k++) {
            int at = plan_step_named(result->plan, foreman[i][k]);
            if (at <= before) {
                fail_msg("%s stands at %d, after what it must come before", foreman[i][k], at);
            }
            last = at > last ? at : last;
        }
        before = last;
    }
    arena_destroy(arena);
}

/* A clutch alone: no row of a brake (the foreman's rows 4, 7, 9, 13, 19, 24, 26 to 29, 34, 35, 37,
 * 41 to 45). */
static void the_clutch_alone_has_no_row_of_the_brakes(void **state)
{
    (void)state;
    static const char *const brakes[] = {
        "before-wheels",  "set-hand-brake", "open-pistons", "before-servo", "open-band",
        "set-load-valve", "set-shoes",      "bleed-master", "test-shoes",   "test-hold",
        "test-circuits",  "test-servo",     "test-slope",   "test-bed-in",  "test-wheel-nuts",
        "open-film",      "set-tandem"};
    static const char *const clutch[] = {"set-level",
                                         "set-paint",
                                         "open-lower-reservoir",
                                         "open-no-pedal",
                                         "open-take-off",
                                         "bench-slave",
                                         "close-part",
                                         "set-rod-gap",
                                         "set-pedal-block",
                                         "set-reservoir",
                                         "set-look",
                                         "close-note",
                                         "bleed-",
                                         "test-second-round",
                                         "undo-pedal-block",
                                         "test-clutch",
                                         "test-overnight",
                                         "test-second-person",
                                         "test-first-drive-clutch"};
    struct arena *arena = arena_create();
    const struct system *car = read_file("systems/village-van.ini", arena);
    const struct system *work =
        plain_work(car, DEED_RENEWED, system_find(car, "clutch slave"), arena);
    struct plan *plan = plain_plan(work, network_build(work, arena, NULL), METHOD_PEDAL, arena);
    for (size_t i = 0; i < plan->steps.count; i++) {
        for (size_t k = 0; k < sizeof brakes / sizeof *brakes; k++) {
            if (text_begins(plan->steps.items[i].name, brakes[k])) {
                fail_msg("the clutch alone has %s", plan->steps.items[i].name);
            }
        }
    }
    for (size_t k = 0; k < sizeof clutch / sizeof *clutch; k++) {
        bool there = false;
        for (size_t i = 0; i < plan->steps.count; i++) {
            there = there || text_begins(plan->steps.items[i].name, clutch[k]);
        }
        if (!there) {
            fail_msg("the clutch alone misses %s", clutch[k]);
        }
    }
    arena_destroy(arena);
}

static void a_row_needs_rows_above_it(void **state)
{
    (void)state;
    size_t count;
    const struct step_row *rows = step_rows(&count);
    for (size_t i = 0; i < count; i++) {
        for (size_t k = i; k < count; k++) {
            enum step_id id = step_id_of(&rows[k]);
            if (step_names(rows[i].needs, STEP_MOST_NEEDS, id) ||
                step_names(rows[i].needs_same, STEP_MOST_NEEDS, id)) {
                fail_msg("%s needs %s, which stands below it", rows[i].id, rows[k].id);
            }
        }
        assert_true(i == 0 || rows[i - 1].phase <= rows[i].phase);
        assert_string_equal(rows[i].id, step_row_of(step_id_of(&rows[i]))->id);
    }
}

int main(int count, char **words)
{
    if (count > 1)
        random_cars = atoi(words[1]);
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_row_needs_rows_above_it),
        cmocka_unit_test(no_step_stands_before_what_it_needs),
        cmocka_unit_test(what_is_set_or_taken_off_is_undone_once_before_the_car_moves),
        cmocka_unit_test(each_joint_that_is_undone_is_tightened_once),
        cmocka_unit_test(what_came_off_goes_on),
        cmocka_unit_test(nothing_is_opened_late_pressed_early_or_driven_unsigned),
        cmocka_unit_test(each_step_has_a_name_of_its_own),
        cmocka_unit_test(the_van_goes_by_the_foremans_order),
        cmocka_unit_test(the_clutch_alone_has_no_row_of_the_brakes),
        cmocka_unit_test(all_of_it_holds_of_cars_made_up_at_random),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
