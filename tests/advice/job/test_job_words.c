/* What all steps of a job say together, over all ready cars, each as it stands, wholly renewed, and
 * with one part alone renewed or opened: nothing is about what the car has not or the work left
 * alone, and what is set for the work alone is undone before the car moves. What belongs to a job
 * is worked out here from the graph, apart from the program. */
#define _GNU_SOURCE /* strcasestr */
#include "advice/result.h"

#include <ctype.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "input/read.h"
#include "network/work.h"
#include "physics/pressure.h"
#include "support/near.h"
#include "support/plain_plan.h"
#include "support/ready_cars.h"
#include "support/run_cli.h"

struct job {
    const char *name;
    struct arena *arena;
    const struct system *system;
    const struct network *network;
    struct result result;      /* for the words */
    const struct steps *steps; /* the plan's */
    bool *mine;                /* by part: it belongs to the job */
};

static bool handled(const struct part *part)
{
    return part->done.opened || part->done.renewed || part->done.replaced;
}

/* Whether a name begins with that of a master or servo of a circuit. */
static bool feeds(const struct job *job, int circuit, const char *name)
{
    const struct circuit *of = &job->network->circuits[circuit];
    const struct part *parts = job->system->parts;
    int servo = pressure_servo_of(job->system, of->master);
    bool yes = text_begins(name, parts[of->master].name) ||
               (servo >= 0 && text_begins(name, parts[servo].name));
    for (int i = 0; i < of->vertex_count; i++) {
        const struct part *part = &parts[job->network->vertices[of->vertices[i]].part];
        yes = yes || (part->kind == KIND_SERVO && text_begins(name, part->name));
    }
    return yes;
}

/* Whether the work went to something of a circuit, or to what feeds it. */
static bool went_to(const struct job *job, int circuit)
{
    const struct circuit *of = &job->network->circuits[circuit];
    const struct part *parts = job->system->parts;
    bool yes = job->system->work_count == 0 || handled(&parts[of->master]);
    int feeding[] = {reservoir_of(job->system, of->master),
                     pressure_servo_of(job->system, of->master)};
    for (int i = 0; i < 2; i++) {
        yes = yes || (feeding[i] >= 0 && handled(&parts[feeding[i]]));
    }
    for (int i = 0; i < job->network->edge_count; i++) {
        const struct edge *edge = &job->network->edges[i];
        yes = yes || (edge->circuit == circuit && edge->part >= 0 && handled(&parts[edge->part]));
    }
    for (int i = 0; i < of->vertex_count; i++) {
        yes = yes || handled(&parts[job->network->vertices[of->vertices[i]].part]);
    }
    for (int i = 0; i < job->system->part_count; i++) { /* "servo vacuum hose" */
        bool soft = parts[i].kind == KIND_HOSE &&
                    (parts[i].as.hose.use == HOSE_SUPPLY || parts[i].as.hose.use == HOSE_VACUUM);
        yes = yes || (soft && handled(&parts[i]) && feeds(job, circuit, parts[i].name));
    }
    return yes;
}

static void own(struct job *job, int part)
{
    if (part >= 0) {
        job->mine[part] = true;
    }
}

/* A valve that serves two circuits of one master opens both. */
static bool shares_a_valve(const struct job *job, int circuit)
{
    for (int i = 0; i < job->system->part_count; i++) {
        const struct part *part = &job->system->parts[i];
        if (part->kind != KIND_VALVE || !handled(part)) {
            continue;
        }
        for (int c = 0; c < job->network->circuit_count; c++) {
            if (job->network->circuits[c].master == job->network->circuits[circuit].master &&
                went_to(job, c)) {
                return true;
            }
        }
    }
    return false;
}

static void own_circuit(struct job *job, int circuit)
{
    const struct circuit *of = &job->network->circuits[circuit];
    own(job, of->master);
    own(job, reservoir_of(job->system, of->master));
    own(job, pressure_servo_of(job->system, of->master));
    own(job, pressure_pedal_of(job->system, of->master));
    for (int i = 0; i < of->vertex_count; i++) {
        own(job, job->network->vertices[of->vertices[i]].part);
    }
    for (int i = 0; i < job->network->edge_count; i++) {
        if (job->network->edges[i].circuit == circuit) {
            own(job, job->network->edges[i].part);
        }
    }
}

static void own_all(struct job *job)
{
    const struct system *system = job->system;
    for (int c = 0; c < job->network->circuit_count; c++) {
        if (went_to(job, c) || shares_a_valve(job, c)) {
            own_circuit(job, c);
        }
    }
    for (int i = 0; i < system->part_count; i++) {
        const struct part *part = &system->parts[i];
        job->mine[i] = job->mine[i] || part->kind == KIND_FLUID || handled(part);
        for (size_t k = 0; part->kind == KIND_PARKING && k < part->as.parking.works.count; k++) {
            int works = part->as.parking.works.parts[k];
            job->mine[i] = job->mine[i] || (works >= 0 && job->mine[works]);
        }
    }
}

static struct job job_of(const char *name, const struct system *system, enum bleed_method method,
                         struct arena *arena)
{
    struct job job = {.name = name, .arena = arena, .system = system};
    job.network = network_build(system, arena, NULL);
    job.steps = &plain_plan(system, job.network, method, arena)->steps;
    job.result = (struct result){.system = system, .network = job.network, .units = UNITS_METRIC};
    job.mine = ARENA_ARRAY(arena, (size_t)system->part_count + 1, bool);
    own_all(&job);
    return job;
}

static const struct system *ready(const char *below, struct arena *arena)
{
    struct messages messages = messages_start(arena);
    struct source source;
    char *path = source_path(below);
    assert_true(source_load(path, arena, &messages, &source));
    free(path);
    const struct system *system = read_car(&source, arena, &messages);
    assert_non_null(system);
    return system;
}

/* Does something with every job there is. */
static void for_jobs(void (*look)(struct job *))
{
    struct arena *names = arena_create();
    const char **cars = ready_cars(names);
    for (size_t c = 0; cars[c] != NULL; c++) {
        struct arena *arena = arena_create();
        const struct system *car = ready(cars[c], arena);
        for (int m = 0; m < METHOD_COUNT; m++) {
            struct job as_it_is = job_of(cars[c], car, (enum bleed_method)m, arena);
            look(&as_it_is);
            const struct system *all = plain_work(car, DEED_RENEWED, -1, arena);
            struct job whole = job_of(text_print(arena, "%s, all renewed", cars[c]), all,
                                      (enum bleed_method)m, arena);
            look(&whole);
        }
        for (int i = 0; i < car->part_count; i++) {
            for (int deed = DEED_OPENED; deed <= DEED_RENEWED && kind_is_wet(car->parts[i].kind);
                 deed++) {
                const char *name =
                    text_print(arena, "%s, %s %s", cars[c],
                               deed == DEED_OPENED ? "opened" : "renewed", car->parts[i].name);
                struct job one = job_of(name, plain_work(car, (enum work_deed)deed, i, arena),
                                        METHOD_PEDAL, arena);
                look(&one);
            }
        }
        arena_destroy(arena);
    }
    arena_destroy(names);
}

static bool same_text(const char *a, const char *b)
{
    return a == b || (a != NULL && b != NULL && strcmp(a, b) == 0);
}

/* When a row stands that is about the same as a step: same part, or the same words; -1. */
static int when_row(const struct job *job, const char *id, const struct step *about)
{
    for (size_t i = 0; i < job->steps->count; i++) {
        const struct step *step = &job->steps->items[i];
        if (strcmp(step->row->id, id) == 0 && step->part == about->part &&
            (about->part >= 0 || same_text(step->text, about->text))) {
            return (int)i;
        }
    }
    return -1;
}

static int first_on_the_road(const struct job *job)
{
    for (size_t i = 0; i < job->steps->count; i++) {
        if (job->steps->items[i].row->phase >= PHASE_DRIVE) {
            return (int)i;
        }
    }
    return 1 << 20;
}

static int pairs_seen;

/* When the first of several rows that may undo a step stands; -1. */
static int when_undone(const struct job *job, const struct step *step)
{
    for (int i = 0; i < STEP_MOST_UNDOING && step->row->undo[i] != STEP_NONE; i++) {
        int when = when_row(job, step_row_of(step->row->undo[i])->id, step);
        if (when >= 0) {
            return when;
        }
    }
    return -1;
}

static void look_for_undoing(struct job *job)
{
    int road = first_on_the_road(job);
    for (size_t i = 0; i < job->steps->count; i++) {
        const struct step *step = &job->steps->items[i];
        if (step->row->undo[0] == STEP_NONE) {
            continue;
        }
        int undone = when_undone(job, step);
        if (undone <= (int)i || undone >= road) {
            fail_msg("%s: %s is not undone by %s before the road", job->name, step->name,
                     step_row_of(step->row->undo[0])->id);
        }
        pairs_seen++;
    }
}

static void each_temporary_setting_is_undone_before_the_car_moves(void **state)
{
    (void)state;
    pairs_seen = 0;
    for_jobs(look_for_undoing);
    assert_true(pairs_seen > 1000);
}

/* Rows called undo-... stand for nothing else. */
static void look_for_setting(struct job *job)
{
    for (size_t i = 0; i < job->steps->count; i++) {
        const struct step *step = &job->steps->items[i];
        bool set = strncmp(step->row->id, "undo-", 5) != 0;
        for (size_t k = 0; k < i; k++) {
            set = set || step_names(job->steps->items[k].row->undo, STEP_MOST_UNDOING,
                                    step_id_of(step->row));
        }
        if (!set) {
            fail_msg("%s: %s undoes what nobody set", job->name, step->name);
        }
    }
}

static void nothing_is_undone_that_was_not_set(void **state)
{
    (void)state;
    for_jobs(look_for_setting);
}

/* Takes whole words out, in any case of letters. */
static void strike(char *words, const char *what)
{
    size_t length = strlen(what);
    for (char *at = words; (at = strcasestr(at, what)) != NULL; at += length) {
        bool whole =
            (at == words || !isalnum((unsigned char)at[-1])) && !isalnum((unsigned char)at[length]);
        if (whole) {
            memset(at, '_', length);
        }
    }
}

static bool holds_word(const char *words, const char *what)
{
    size_t length = strlen(what);
    for (const char *at = words; (at = strcasestr(at, what)) != NULL; at++) {
        if ((at == words || !isalnum((unsigned char)at[-1])) &&
            !isalnum((unsigned char)at[length])) {
            return true;
        }
    }
    return false;
}

static int compare_length(const void *a, const void *b)
{
    size_t one = strlen(*(const char *const *)a), two = strlen(*(const char *const *)b);
    return one < two ? 1 : one > two ? -1 : 0;
}

static bool has_mine(const struct job *job, bool (*is)(const struct part *))
{
    for (int i = 0; i < job->system->part_count; i++) {
        if (job->mine[i] && is(&job->system->parts[i])) {
            return true;
        }
    }
    return false;
}

static bool is_servo(const struct part *part)
{
    return part->kind == KIND_SERVO;
}
static bool is_shuttle(const struct part *part)
{
    return part->kind == KIND_VALVE && part->as.valve.type == VALVE_SHUTTLE;
}
static bool is_drum(const struct part *part)
{
    return part->kind == KIND_DRUM;
}
static bool is_disc(const struct part *part)
{
    return part->kind == KIND_DISC;
}
static bool is_slave(const struct part *part)
{
    return part->kind == KIND_SLAVE;
}
static bool is_parking(const struct part *part)
{
    return part->kind == KIND_PARKING;
}
static bool is_foot_pedal(const struct part *part)
{
    return part->kind == KIND_PEDAL && part->as.pedal.type != PEDAL_HAND;
}
static bool is_lever(const struct part *part)
{
    return part->kind == KIND_PEDAL && part->as.pedal.type == PEDAL_HAND;
}
static bool is_front(const struct part *part)
{
    return kind_is_brake(part->kind) && part->axle == AXLE_FRONT;
}
static bool is_rear(const struct part *part)
{
    return kind_is_brake(part->kind) && part->axle == AXLE_REAR;
}
static bool is_car(const struct part *part)
{
    return part->kind == KIND_VEHICLE && part->as.vehicle.type != VEHICLE_MOTORCYCLE;
}

/* A word that only a job with such a part may use; except: a row that says it of what stays alone.
 */
static const struct {
    const char *word;
    bool (*needs)(const struct part *);
    const char *except;
} device_words[] = {
    {"servo", is_servo, NULL},
    {"vacuum hose", is_servo, NULL},
    {"lamp", is_shuttle, NULL},
    {"shoes", is_drum, NULL},
    {"adjusters", is_drum, NULL},
    {"drum", is_drum, NULL},
    {"pads", is_disc, "test-bed-in"},
    {"caliper", is_disc, NULL},
    {"disc", is_disc, NULL},
    {"clutch", is_slave, NULL},
    {"bell housing", is_slave, NULL},
    {"hand brake", is_parking, NULL},
    {"pedal", is_foot_pedal, NULL},
    {"lever", is_lever, "before-read set-load-valve undo-load-valve"},
    {"front", is_front, NULL},
    {"rear", is_rear, NULL},
    {"wheel nuts", is_car, NULL},
    {"steering wheel", is_car, NULL},
};

static void look_at_words(const struct job *job, const struct step *step, const char *words)
{
    const struct system *system = job->system;
    const char **names = ARENA_ARRAY(job->arena, (size_t)system->part_count + 1, const char *);
    char *left = text_copy(job->arena, words);
    size_t count = 0;
    for (int i = 0; i < system->part_count; i++) {
        if (job->mine[i] && system->parts[i].name != NULL) {
            names[count++] = system->parts[i].name;
        }
    }
    qsort(names, count, sizeof *names, compare_length);
    for (size_t i = 0; i < count; i++) {
        strike(left, names[i]);
    }
    for (int i = 0; i < system->part_count; i++) {
        const struct part *part = &system->parts[i];
        bool carries = part->kind != KIND_VEHICLE && part->kind != KIND_RESERVOIR;
        if (!job->mine[i] && carries && part->name != NULL && holds_word(left, part->name)) {
            fail_msg("%s: %s names the %s: %s", job->name, step->row->id, part->name, words);
        }
    }
    for (size_t i = 0; i < sizeof device_words / sizeof *device_words; i++) {
        const char *except = device_words[i].except;
        bool allowed = has_mine(job, device_words[i].needs) ||
                       (except != NULL && strstr(except, step->row->id) != NULL);
        if (!allowed && holds_word(left, device_words[i].word)) {
            fail_msg("%s: %s says %s: %s", job->name, step->row->id, device_words[i].word, words);
        }
    }
}

static int words_seen;

static void look_for_what_is_not_there(struct job *job)
{
    for (int i = 0; i < job->system->part_count; i++) {
        job->mine[i] = job->mine[i] || job->system->parts[i].kind == KIND_VEHICLE;
    }
    for (size_t i = 0; i < job->steps->count; i++) {
        const struct step *step = &job->steps->items[i];
        if (step->row->phase == PHASE_LATER || strcmp(step->row->id, "test-first-drive") == 0) {
            continue; /* hoses and fluid of the whole car come due; any hand brake is at hand */
        }
        look_at_words(job, step, step_words(job->arena, &job->result, step, step->row->words));
        if (step->row->why != NULL) {
            look_at_words(job, step, step_words(job->arena, &job->result, step, step->row->why));
        }
        if (step->row->expect != NULL) {
            look_at_words(job, step, step_words(job->arena, &job->result, step, step->row->expect));
        }
        words_seen++;
    }
}

static void no_step_names_what_the_car_has_not_or_the_work_left_alone(void **state)
{
    (void)state;
    words_seen = 0;
    for_jobs(look_for_what_is_not_there);
    assert_true(words_seen > 5000);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(each_temporary_setting_is_undone_before_the_car_moves),
        cmocka_unit_test(nothing_is_undone_that_was_not_set),
        cmocka_unit_test(no_step_names_what_the_car_has_not_or_the_work_left_alone),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
