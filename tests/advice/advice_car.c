#include "advice_car.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "input/read.h"
#include "network/work.h"

static const struct date today = {2026, 11, 25};

enum { WHOLE = RESULT_FIGURES | RESULT_JUDGED | RESULT_PLAN };

static void stop_at_mistakes(const struct messages *messages)
{
    for (size_t i = 0; i < messages->count; i++) {
        const struct message *message = &messages->items[i];
        if (message->severity == SEVERITY_DANGER) {
            fail_msg("%s:%d: %s [%s]", message->place.file, message->place.line, message->words,
                     message->id);
        }
    }
}

static struct advice_car advise(struct arena *arena, const struct source *described,
                                const struct source *worked, unsigned parts)
{
    struct advice_car car = {.arena = arena};
    struct messages messages = messages_start(arena);
    struct system *system = read_car(described, arena, &messages);
    stop_at_mistakes(&messages);
    assert_non_null(system);
    car.system = system;
    if (worked != NULL) {
        struct work_file file = {0};
        bool read = read_work(worked, system, arena, &messages, &file);
        stop_at_mistakes(&messages);
        assert_true(read);
        car.system = work_apply(system, &file, 1, arena);
    }
    car.network = network_build(car.system, arena, &messages);
    stop_at_mistakes(&messages);
    struct force own = {NAN};
    struct bleed_wishes none = {0};
    car.result = result_asked(car.system, car.network, own, today, parts, &none, arena);
    return car;
}

struct advice_car advice_car_read(const char *car, const char *work)
{
    struct source described = {"car.ini", car, strlen(car)};
    struct source worked = {"work.ini", work, work == NULL ? 0 : strlen(work)};
    return advise(arena_create(), &described, work == NULL ? NULL : &worked, WHOLE);
}

static struct source load(struct arena *arena, const char *below)
{
    const char *root = getenv("SOURCE_ROOT");
    struct messages messages = messages_start(arena);
    struct source source = {0};
    if (!source_load(text_print(arena, "%s/%s", root == NULL ? "." : root, below), arena, &messages,
                     &source)) {
        fail_msg("%s cannot be read", below);
    }
    return source;
}

static struct advice_car load_both(const char *car, const char *work, unsigned parts)
{
    struct arena *arena = arena_create();
    struct source described = load(arena, car), worked = {0};
    if (work != NULL) {
        worked = load(arena, work);
    }
    return advise(arena, &described, work == NULL ? NULL : &worked, parts);
}

struct advice_car advice_car_load(const char *car, const char *work)
{
    return load_both(car, work, WHOLE);
}

static struct advice_car load_then(const char *car, const char *work, unsigned parts)
{
    struct arena *arena = arena_create();
    struct source described = load(arena, car);
    struct source worked = {"work.ini", work, strlen(work)};
    return advise(arena, &described, &worked, parts);
}

struct advice_car advice_car_after(const char *car, const char *work)
{
    return load_then(car, work, WHOLE);
}

struct advice_car advice_job_after(const char *car, const char *work)
{
    return load_then(car, work, RESULT_PLAN);
}

struct advice_car advice_car_judged(const char *car, const char *work)
{
    struct advice_car judged = load_both(car, work, 0);
    struct situation *situation =
        situation_room(judged.system, judged.network, (struct force){NAN}, judged.arena);
    situation_solve(situation);
    struct figures figures = figures_listed(situation, judged.arena);
    for (int i = 0; i < figures.count; i++) {
        struct figure *figure = &figures.items[i];
        figure->value = figure->row->get(situation, figure->subject, figure->sub);
        figure->state = isfinite(figure->value) ? FIGURE_COMPUTED : FIGURE_NOT_COMPUTED;
    }
    judged.result->figures = figures;
    judged.result->findings =
        findings_of(judged.system, judged.network, &judged.result->figures, today, judged.arena);
    return judged;
}

void advice_car_finish(struct advice_car *car)
{
    arena_destroy(car->arena);
    car->arena = NULL;
}

int advice_part(const struct advice_car *car, const char *name)
{
    int part = system_find(car->system, name);
    if (part < 0) {
        fail_msg("no part %s", name);
    }
    return part;
}

bool advice_finds(const struct advice_car *car, const char *id, const char *part)
{
    for (size_t i = 0; i < car->result->findings.count; i++) {
        const struct finding *finding = &car->result->findings.items[i];
        if (strcmp(finding->check->id, id) == 0 &&
            (part == NULL || finding->part == advice_part(car, part))) {
            return true;
        }
    }
    return false;
}

const char *advice_order(const struct advice_car *car)
{
    const struct steps *steps = &car->result->bleed->steps;
    struct text order = text_start(car->arena);
    for (size_t i = 0; i < steps->count; i++) {
        struct nipple nipple = {steps->items[i].part, steps->items[i].nipple};
        text_add(&order, "%s%s", i > 0 ? "; " : "", nipple_words(car->system, nipple, car->arena));
    }
    return order.items;
}

const char *advice_reasons(const struct advice_car *car)
{
    const struct steps *steps = &car->result->bleed->steps;
    struct text reasons = text_start(car->arena);
    for (size_t i = 0; i < steps->count; i++) {
        text_add(&reasons, "%s%s", i > 0 ? "; " : "", steps->items[i].reason->id);
    }
    return reasons.items;
}

const struct step *advice_step(const struct advice_car *car, const struct steps *steps,
                               const char *id, const char *part)
{
    for (size_t i = 0; i < steps->count; i++) {
        if (strcmp(steps->items[i].row->id, id) == 0 &&
            (part == NULL || steps->items[i].part == advice_part(car, part))) {
            return &steps->items[i];
        }
    }
    return NULL;
}
