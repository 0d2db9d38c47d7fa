#include "firmpedal.h"

#include <math.h>
#include <setjmp.h>
#include <string.h>

#include "advice/bleeding/bleed_asked.h"
#include "advice/figures/figure_asked.h"
#include "base/list.h"
#include "base/save.h"
#include "base/text.h"
#include "api/desk.h"
#include "input/expand.h"
#include "input/part_rules.h"
#include "input/read.h"
#include "input/reading_line.h"
#include "network/work.h"
#include "report/json/json.h"
#include "report/text/set_document.h"
#include "report/answers/answers.h"
#include "report/text/text_report.h"
#include "report/words/rule_words.h"
#include "units/unit.h"

struct fp_desk *fp_desk_create(void)
{
    struct arena *arena = arena_create();
    if (arena == NULL)
        return NULL;
    jmp_buf escape;
    arena_escape_to(arena, &escape);
    if (setjmp(escape) != 0) {
        arena_destroy(arena);
        return NULL;
    }
    struct fp_desk *desk = ARENA_NEW(arena, struct fp_desk);
    desk->arena = arena;
    desk->messages = messages_start(arena);
    fp_set_screen(desk, SETTING_USUAL, false);
    return desk;
}

void fp_set_screen(struct fp_desk *desk, int columns, bool lively)
{
    desk->screen.width = columns < SETTING_LEAST  ? SETTING_LEAST
                         : columns > SETTING_MOST ? SETTING_MOST
                                                  : columns;
    desk->screen.lively = lively;
}

const char *desk_held(struct fp_desk *desk, const char *text)
{
    struct text held = text_start(desk->arena);
    wrap_text(&held, text, desk->screen.width);
    return held.items;
}

void fp_desk_destroy(struct fp_desk *desk)
{
    if (desk != NULL)
        arena_destroy(desk->arena);
}

static void remember_input(struct fp_desk *desk, const char *path)
{
    *LIST_ADD(desk->arena, &desk->inputs) = text_copy(desk->arena, source_on_disk(path));
}

static bool read_works(struct fp_desk *desk, struct system *car, const char *const *works,
                       size_t count)
{
    struct work_file *files = ARENA_ARRAY(desk->arena, count + 1, struct work_file);
    bool fine = true;
    for (size_t i = 0; i < count; i++) {
        struct source source;
        remember_input(desk, works[i]);
        fine = source_load(works[i], desk->arena, &desk->messages, &source) &&
               read_work(&source, car, desk->arena, &desk->messages, &files[i]) && fine;
    }
    if (fine)
        desk->car = count > 0 ? work_apply(car, files, count, desk->arena) : car;
    return fine;
}

/* Of what each reading was taken: input knows the words, advice the places of this car. */
static void place_readings(struct fp_desk *desk)
{
    struct arena *arena = desk->arena;
    const struct system *car = desk->car;
    struct input input = {arena, &desk->messages, car->file};
    if (car->reading_count == 0)
        return;
    struct situation *situation = situation_room(car, desk->network, (struct force){NAN}, arena);
    struct figures listed = figures_listed(situation, arena);
    struct reading_places places = {.names =
                                        ARENA_ARRAY(arena, (size_t)listed.count + 1, const char *)};
    for (int i = 0; i < car->reading_count; i++) {
        places.count = readings_places(&listed, car->readings[i].row, places.names);
        reading_line_place(&car->readings[i], &places, &input);
    }
}

enum fp_outcome fp_read(struct fp_desk *desk, const char *car, const char *const *works,
                        size_t work_count, const char *today)
{
    ON_NO_MEMORY(desk, FP_OUTPUT);
    struct source source;
    desk->car = NULL;
    desk->network = NULL;
    remember_input(desk, car);
    if (!source_load(car, desk->arena, &desk->messages, &source))
        return FP_INPUT;
    struct system *described = read_car(&source, desk->arena, &desk->messages);
    if (described == NULL)
        return FP_INPUT;
    bool fine = read_works(desk, described, works, work_count);
    desk->network = network_build(fine ? desk->car : described, desk->arena, &desk->messages);
    if (fine)
        place_readings(desk);
    struct input input = {desk->arena, &desk->messages, ""};
    struct date day = {0, 0, 0};
    if (today != NULL && !date_read(today, &day))
        day.year = 0;
    if (fine)
        dates_check(desk->car, day, &input);
    if (!fine || messages_reach(&desk->messages, SEVERITY_DANGER)) {
        desk->car = NULL;
        return FP_INPUT;
    }
    return FP_FINE;
}

const char *fp_messages(struct fp_desk *desk, bool json)
{
    ON_NO_MEMORY(desk, "firmpedal: no memory\n");
    if (desk->messages.count == 0)
        return "";
    struct text words = text_start(desk->arena);
    struct messages shown = messages_shown(&desk->messages);
    if (json) {
        json_messages(&words, &shown);
        return words.items;
    }
    text_messages(&words, &shown, desk->screen.width);
    return desk_held(desk, words.items);
}

/* A wish that could not be used leaves its reason as the answer. */
bool desk_effort(struct fp_desk *desk, const char *words, struct force *effort, const char **answer)
{
    effort->n = NAN;
    if (words == NULL)
        return true;
    struct reading reading = unit_read(words, DIMENSION_FORCE);
    if (reading.outcome == READING_FINE && reading.value > 0 && reading.value <= 2000) {
        effort->n = reading.value;
        return true;
    }
    *answer = text_print(desk->arena,
                         "firmpedal: --effort is a force above 0 and up to 2000 N, as \"300 N\" or "
                         "\"70 lbf\", not %s\n",
                         words);
    return false;
}

static bool read_date(struct fp_desk *desk, const char *words, struct date *date,
                      const char **answer)
{
    if (words != NULL && date_read(words, date))
        return true;
    *answer = text_print(desk->arena, "firmpedal: --date is a day such as 2026-11-25, not %s\n",
                         words != NULL ? words : "nothing");
    return false;
}

static enum bleed_method method_of(enum fp_method method)
{
    switch (method) {
    case FP_BY_PEDAL:
        return METHOD_PEDAL;
    case FP_BY_PRESSURE:
        return METHOD_PRESSURE;
    case FP_BY_VACUUM:
        return METHOD_VACUUM;
    case FP_BY_GRAVITY:
        return METHOD_GRAVITY;
    case FP_BACKWARDS:
        return METHOD_REVERSE;
    }
    return METHOD_PEDAL;
}

static bool read_order(struct fp_desk *desk, const struct fp_wishes *wishes,
                       struct bleed_wishes *bleed, const char **answer)
{
    struct nipple *order = NULL;
    const char *trouble = NULL;
    if (wishes->order == NULL)
        return true;
    bleed->order_count = bleed_asked_order(desk->car, wishes->order, desk->arena, &order, &trouble);
    bleed->order = order;
    if (bleed->order_count == 0)
        *answer = text_print(desk->arena, "firmpedal: --order: %s\n", trouble);
    return bleed->order_count > 0;
}

struct result *desk_result(struct fp_desk *desk, const struct fp_wishes *wishes, unsigned parts,
                           const char **answer)
{
    struct force effort;
    struct date today;
    struct bleed_wishes bleed = {.method = method_of(wishes->method),
                                 .shut_under_pressure = wishes->shut_early};
    if (!desk_effort(desk, wishes->effort, &effort, answer) ||
        !read_date(desk, wishes->date, &today, answer) || !read_order(desk, wishes, &bleed, answer))
        return NULL;
    struct result *result =
        result_asked(desk->car, desk->network, effort, today, parts, &bleed, desk->arena);
    result->units = wishes->imperial ? UNITS_IMPERIAL : UNITS_METRIC;
    return result;
}

static bool ask_trace(struct fp_desk *desk, const struct fp_wishes *wishes, struct result *result,
                      const char **answer)
{
    const char *trouble = NULL;
    int index = figure_asked(&result->figures, wishes->figure, wishes->of, desk->arena, &trouble);
    if (index < 0) {
        *answer = text_print(desk->arena, "firmpedal: %s\n", trouble);
        return false;
    }
    struct force effort = {NAN};
    desk_effort(desk, wishes->effort, &effort, answer);
    struct weighing *weighing = ARENA_NEW(desk->arena, struct weighing);
    *weighing = weighing_of(desk->car, desk->network, effort, &result->figures, desk->arena);
    result->trace =
        trace_of(desk->car, desk->network, effort, &result->figures, weighing, index, desk->arena);
    return true;
}

void desk_add_curves(struct fp_desk *desk, const struct fp_wishes *wishes, struct result *result)
{
    struct force effort = {NAN};
    const char *none = NULL;
    desk_effort(desk, wishes->effort, &effort, &none);
    struct curves *curves = ARENA_NEW(desk->arena, struct curves);
    *curves = curves_of(desk->car, desk->network, effort, desk->arena);
    result->curves = curves;
}

/* The country whose rules are asked; NULL where neither the wishes nor the car say one. */
static const char *country_of(const struct result *result, const struct fp_wishes *wishes)
{
    return wishes->country != NULL ? wishes->country : system_vehicle(result->system)->country;
}

static bool ask_rules(struct fp_desk *desk, const struct fp_wishes *wishes,
                      const struct result *result, const char **answer)
{
    const char *country = country_of(result, wishes);
    size_t count;
    const struct rule_row *rows = rule_rows(&count);
    for (size_t i = 0; wishes->rules && country != NULL && i < count; i++)
        if (rule_is_of(&rows[i], country))
            return true;
    if (!wishes->rules)
        return true;
    *answer =
        text_print(desk->arena, "firmpedal: %s; known are %s\n",
                   country == NULL ? "--rules needs [vehicle] country, or --country"
                                   : text_print(desk->arena, "no rules are known of %s", country),
                   rule_countries(desk->arena));
    return false;
}

/* What a question asks beyond what every answer has. */
static bool ask_more(struct fp_desk *desk, enum fp_question question,
                     const struct fp_wishes *wishes, struct result *result, const char **answer)
{
    switch (question) {
    case FP_FIT:
        return desk_add_fit(desk, wishes, result, answer);
    case FP_CHOOSE:
        return desk_add_choice(desk, wishes, false, result, answer);
    case FP_TRACE:
        return ask_trace(desk, wishes, result, answer);
    case FP_CURVE:
        desk_add_curves(desk, wishes, result);
        break;
    case FP_CHECK:
        return ask_rules(desk, wishes, result, answer);
    case FP_BLEED:
    case FP_OPEN:
    case FP_HOSES:
    case FP_SOFT:
        break;
    }
    return true;
}

static bool findings_reach(const struct result *result, enum fp_severity severity)
{
    for (size_t i = 0; i < result->findings.count; i++)
        if ((int)result->findings.items[i].severity >= (int)severity)
            return true;
    return false;
}

const char *desk_check(struct fp_desk *desk, const struct result *result)
{
    struct text words = text_start(desk->arena);
    struct document document = document_start(desk->arena);
    answer_check(&document, result, false);
    set_document(&words, &document, &desk->screen);
    return words.items;
}

static void answer_in_text(struct text *words, const struct result *result,
                           enum fp_question question, const struct fp_wishes *wishes,
                           const struct setting *screen)
{
    struct document document = document_start(words->arena);
    switch (question) {
    case FP_CHECK:
        answer_check(&document, result, wishes->all);
        if (wishes->rules)
            answer_rules(&document, result, country_of(result, wishes));
        break;
    case FP_BLEED:
        if (wishes->step != NULL)
            text_step(words, result, wishes->step);
        else
            answer_bleed(&document, result, wishes->all);
        break;
    case FP_OPEN:
        answer_open(&document, result, wishes->all);
        break;
    case FP_HOSES:
        answer_hoses(&document, result);
        break;
    case FP_SOFT:
        answer_soft(&document, result);
        break;
    case FP_FIT:
        answer_fit(&document, result, wishes->all);
        break;
    case FP_CHOOSE:
        answer_choose(&document, result, wishes->all);
        break;
    case FP_TRACE:
        answer_trace(&document, result, wishes->all);
        break;
    case FP_CURVE:
        answer_curve(&document, result, wishes->all);
        break;
    }
    set_document(words, &document, screen);
}

static bool has_step(const struct result *result, const char *which)
{
    return result->bleed->refused || text_same(which, "next") ||
           plan_step_named(result->plan, which) >= 0;
}

static enum fp_outcome outcome_of(const struct result *result, enum fp_question question,
                                  const struct fp_wishes *wishes)
{
    bool fine = true;
    switch (question) {
    case FP_CHECK:
        fine = !findings_reach(result, wishes->fail_at);
        break;
    case FP_BLEED:
        if (!wishes->json && wishes->step != NULL && !has_step(result, wishes->step))
            return FP_WRONG_USE;
        fine = !result->bleed->refused && result->bleed->left_out_count == 0 &&
               result->unsettled.count == 0;
        break;
    case FP_OPEN:
        fine = result->unsettled.count == 0;
        break;
    case FP_SOFT:
    case FP_TRACE:
    case FP_CURVE:
        break;
    case FP_HOSES:
        fine = result->hoses.verdict == HOSES_COMPLETE;
        break;
    case FP_FIT:
        fine = result->fit->verdict < FIT_CANNOT_SAY;
        break;
    case FP_CHOOSE:
        for (int g = 0; g < result->chosen->group_count; g++)
            fine = fine && result->chosen->groups[g].suits > 0;
        break;
    }
    return fine ? FP_FINE : FP_FINDINGS;
}

enum fp_outcome fp_ask(struct fp_desk *desk, enum fp_question question,
                       const struct fp_wishes *wishes, const char **answer)
{
    static const struct {
        enum json_part json;
        unsigned parts;
    } rows[] = {
        [FP_CHECK] = {JSON_CHECK, RESULT_FIGURES | RESULT_JUDGED},
        [FP_BLEED] = {JSON_BLEED, RESULT_PLAN},
        [FP_OPEN] = {JSON_OPEN, RESULT_PLAN},
        [FP_HOSES] = {JSON_HOSES, 0},
        [FP_SOFT] = {JSON_SOFT, 0},
        [FP_FIT] = {JSON_FIT, 0},
        [FP_CHOOSE] = {JSON_CHOOSE, 0},
        [FP_TRACE] = {JSON_TRACE, RESULT_FIGURES},
        [FP_CURVE] = {JSON_CURVE, RESULT_FIGURES},
    };
    ON_NO_MEMORY(desk, FP_OUTPUT);
    if (desk->car == NULL)
        return FP_INPUT;
    struct result *result = desk_result(desk, wishes, rows[question].parts, answer);
    if (result == NULL || !ask_more(desk, question, wishes, result, answer))
        return FP_WRONG_USE;
    struct text words = text_start(desk->arena);
    if (!wishes->json)
        answer_in_text(&words, result, question, wishes, &desk->screen);
    else if (!json_result(&words, result, rows[question].json))
        return FP_OUTPUT;
    *answer = words.items;
    return outcome_of(result, question, wishes);
}

enum fp_outcome fp_show(struct fp_desk *desk, const char **answer)
{
    ON_NO_MEMORY(desk, FP_OUTPUT);
    if (desk->car == NULL)
        return FP_INPUT;
    struct text words = text_start(desk->arena);
    expand_car(&words, desk->car);
    *answer = words.items;
    return FP_FINE;
}

const char *fp_version(void)
{
    return "0.1.0";
}

void fp_secure_streams(void)
{
    save_secure_streams();
}
