/* What a person gets without asking for more, over all ready cars, each as it is, with the work
 * that is ready for it, and with all renewed: how long, how wide, every DANGER and WARNING in it.
 * The limits are promises; where they are written for a person they stand in README.md. */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "advice/figures/weighing.h"
#include "base/text.h"
#include "input/read.h"
#include "network/work.h"
#include "report/document/document.h"
#include "report/text/set_document.h"
#include "report/answers/answers.h"
#include "support/near.h"
#include "support/plain_plan.h"
#include "support/ready_cars.h"
#include "support/run_cli.h"

/* Lines of 80 columns beside those of DANGER and WARNING. */
enum {
    CHECK_LINES = 40,
    BLEED_LINES = 45,
    OPEN_LINES = 60,
    OPEN_ALL_LINES = 80, /* where all is renewed */
    FIT_LINES = 20,
    CURVE_LINES = 40,
    TRACE_LINES = 25,
    HOSES_LINES = 25,
    VERDICT_LINE = 3 /* of fit */
};

static const int widths[] = {40, 80, 100};

static int failures;

/* A car as it is asked about. */
struct asked {
    const char *name;
    struct result *result;
    bool all_renewed;
};

static void complain(const struct asked *asked, const char *answer, const char *what, int number)
{
    fprintf(stderr, "%s, %s: %s %d\n", asked->name, answer, what, number);
    failures++;
}

static const char *set(const struct document *document, int width)
{
    struct text text = text_start(document->arena);
    set_document(&text, document, &(struct setting){width, false});
    return text.items;
}

static int lines_in(const char *text)
{
    int lines = 0;
    for (; *text != '\0'; text++)
        lines += *text == '\n';
    return lines;
}

static int longest_in(const char *text)
{
    int longest = 0, here = 0;
    for (; *text != '\0'; text++) {
        here = *text == '\n' ? 0 : here + (((unsigned char)*text & 0xC0) != 0x80);
        longest = here > longest ? here : longest;
    }
    return longest;
}

/* The answer without its lines of DANGER and WARNING. */
static struct document without_grave(const struct document *document)
{
    struct document rest = document_start(document->arena);
    for (size_t i = 0; i < document->count; i++) {
        const struct block *block = &document->items[i];
        if (block->kind != BLOCK_CAUTION ||
            (block->tone != TONE_DANGER && block->tone != TONE_WARNING))
            *document_words(&rest, "") = *block;
    }
    return rest;
}

static void hold(const struct asked *asked, const char *answer, const struct document *document,
                 int most)
{
    struct document rest = without_grave(document);
    int lines = lines_in(set(&rest, 80));
    if (lines > most)
        complain(asked, answer, "lines", lines);
    for (size_t i = 0; i < sizeof widths / sizeof *widths; i++) {
        int longest = longest_in(set(document, widths[i]));
        if (longest > widths[i])
            complain(asked, answer, "columns", longest);
    }
}

/* --- every answer of a car ------------------------------------------------------------------- */

static void hold_full(const struct asked *asked, struct arena *arena, const char *answer,
                      void (*text)(struct document *, const struct result *, bool))
{
    struct document document = document_start(arena);
    text(&document, asked->result, true);
    hold(asked, answer, &document, 100000);
}

static const char *first_words(struct arena *arena, const char *words)
{
    const char *end = strstr(words, ". ");
    return end == NULL ? words : text_copy_part(arena, words, (size_t)(end - words));
}

/* A grave finding is there with its first sentence, or is named as the same as another. */
static void grave_findings_are_said(const struct asked *asked, struct arena *arena,
                                    const struct document *document)
{
    const struct findings *findings = &asked->result->findings;
    const char *text = set(document, 100);
    for (size_t i = 0; i < findings->count; i++) {
        const struct finding *finding = &findings->items[i];
        if (finding->severity < SEVERITY_WARNING)
            continue;
        const char *what =
            first_words(arena, fill_words(arena, finding->check->what, finding->quantities,
                                          finding->quantity_count, asked->result->units));
        bool said = says(text, what);
        for (int q = 0; !said && q < finding->quantity_count; q++)
            said = finding->quantities[q].text != NULL && says(text, "The same: ") &&
                   says(strstr(text, "The same: "), finding->quantities[q].text);
        if (!said)
            complain(asked, "check", what, (int)i);
    }
}

static void look_at_check(const struct asked *asked, struct arena *arena)
{
    struct document document = document_start(arena);
    answer_check(&document, asked->result, false);
    hold(asked, "check", &document, CHECK_LINES);
    grave_findings_are_said(asked, arena, &document);
}

static void look_at_plan(const struct asked *asked, struct arena *arena)
{
    struct document bleed = document_start(arena), open = document_start(arena),
                    hoses = document_start(arena);
    answer_bleed(&bleed, asked->result, false);
    hold(asked, "bleed", &bleed, BLEED_LINES);
    answer_open(&open, asked->result, false);
    hold(asked, "open", &open, asked->all_renewed ? OPEN_ALL_LINES : OPEN_LINES);
    answer_hoses(&hoses, asked->result);
    hold(asked, "hoses", &hoses, HOSES_LINES);
}

/* A caution of DANGER or WARNING for this job stands in bleed or open, a line each. */
static void grave_cautions_are_said(const struct asked *asked, struct arena *arena)
{
    struct document both = document_start(arena);
    size_t count;
    const struct caution_row *rows = caution_rows(&count);
    answer_bleed(&both, asked->result, false);
    answer_open(&both, asked->result, false);
    const char *text = set(&both, 100);
    for (size_t i = 0; i < count; i++) {
        bool road = rows[i].when == CAUTION_ROAD || rows[i].when == CAUTION_ROAD_MOTORCYCLE;
        bool grave = strcmp(rows[i].signal, "CAUTION") != 0;
        bool opened = asked->result->opening.count > 0;
        if (grave && !road && opened &&
            caution_applies(&rows[i], asked->result->system, &asked->result->touched) &&
            !says(text, rows[i].brief))
            complain(asked, "cautions", rows[i].id, 0);
    }
}

static int first_master(const struct system *system)
{
    for (int i = 0; i < system->part_count; i++)
        if (system->parts[i].kind == KIND_MASTER)
            return i;
    return -1;
}

static void look_at_fit(const struct asked *asked, struct arena *arena)
{
    struct result result = *asked->result;
    int part = first_master(result.system);
    double bores[] = {0.0206375, 0.022225, 0.0254};
    for (size_t i = 0; i < sizeof bores / sizeof *bores; i++) {
        struct work_file bore = fit_bore(result.system, &part, 1, (struct length){bores[i]}, arena);
        result.fit = fit_of(result.system, result.network, &bore, (struct force){NAN}, arena);
        for (size_t w = 0; w < sizeof widths / sizeof *widths; w++) {
            struct document document = document_start(arena);
            answer_fit(&document, &result, false);
            hold(asked, "fit", &document, FIT_LINES);
            const char *line = set(&document, widths[w]);
            for (int n = 1; n < VERDICT_LINE; n++)
                line = strchr(line, '\n') + 1;
            const char *verdict = fit_verdict_words(result.fit->verdict);
            if (strncmp(line, verdict, strcspn(verdict, " ")) != 0)
                complain(asked, "fit", "verdict not in its line at", widths[w]);
        }
        struct document full = document_start(arena);
        answer_fit(&full, &result, true);
        hold(asked, "fit --all", &full, 100000);
    }
}

static void look_at_curve(const struct asked *asked, struct arena *arena)
{
    struct result result = *asked->result;
    struct curves curves = curves_of(result.system, result.network, (struct force){NAN}, arena);
    result.curves = &curves;
    struct document document = document_start(arena), full = document_start(arena);
    answer_curve(&document, &result, false);
    hold(asked, "curve", &document, CURVE_LINES);
    answer_curve(&full, &result, true);
    hold(asked, "curve --all", &full, 100000);
}

/* Of every id the first figure. */
static void look_at_trace(const struct asked *asked, struct arena *arena)
{
    struct result result = *asked->result;
    struct weighing weighing =
        weighing_of(result.system, result.network, (struct force){NAN}, &result.figures, arena);
    for (int i = 0; i < result.figures.count; i++) {
        if (i > 0 && result.figures.items[i].row == result.figures.items[i - 1].row)
            continue;
        struct document document = document_start(arena);
        result.trace = trace_of(result.system, result.network, (struct force){NAN}, &result.figures,
                                &weighing, i, arena);
        answer_trace(&document, &result, false);
        hold(asked, result.figures.items[i].row->id, &document, TRACE_LINES);
    }
}

static void look_at_car(const struct asked *asked, struct arena *arena, bool dear)
{
    look_at_check(asked, arena);
    look_at_plan(asked, arena);
    grave_cautions_are_said(asked, arena);
    look_at_fit(asked, arena);
    hold_full(asked, arena, "check --all", answer_check);
    hold_full(asked, arena, "bleed --all", answer_bleed);
    hold_full(asked, arena, "open --all", answer_open);
    look_at_curve(asked, arena);
    if (dear)
        look_at_trace(asked, arena);
}

/* --- the cars -------------------------------------------------------------------------------- */

static struct result *all_renewed(struct arena *arena, const char *car)
{
    struct result *as_it_is = ready_result(arena, car, NULL);
    const struct system *all = plain_work(as_it_is->system, DEED_RENEWED, -1, arena);
    struct network *network = network_build(all, arena, NULL);
    return result_of(all, network, (struct force){NAN}, (struct date){2026, 11, 20}, arena);
}

static const char *work_of(struct arena *arena, const char *car)
{
    const char *name = strrchr(car, '/') + 1;
    const char *work = text_print(arena, "demo/%.*s-work.ini", (int)strlen(name) - 4, name);
    char *path = source_path(work);
    bool there = access(path, R_OK) == 0;
    free(path);
    return there ? work : NULL;
}

static void every_answer_of_every_ready_car_is_short(void **state)
{
    (void)state;
    failures = 0;
    struct arena *list = arena_create();
    const char **cars = ready_cars(list);
    for (int c = 0; cars[c] != NULL; c++) {
        struct arena *arena = arena_create();
        const char *work = work_of(list, cars[c]);
        look_at_car(&(struct asked){cars[c], ready_result(arena, cars[c], NULL), false}, arena,
                    true);
        look_at_car(&(struct asked){text_print(list, "%s, all renewed", cars[c]),
                                    all_renewed(arena, cars[c]), true},
                    arena, false);
        if (work != NULL)
            look_at_car(&(struct asked){work, ready_result(arena, cars[c], work), false}, arena,
                        false);
        arena_destroy(arena);
    }
    arena_destroy(list);
    assert_int_equal(failures, 0);
}

/* Fluid in mL, and in what tins and jars are marked with: NIST Handbook 44, appendix C: a US fluid
 * ounce is 29.5735 mL. */
static void fluid_is_said_in_fluid_ounces_too(void **state)
{
    (void)state;
    struct run run =
        run_cli("bleed", "systems/village-van.ini", "--units", "imperial", "--date", "2026-11-25");
    assert_int_equal(run.status, 0);
    assert_null(strstr(run.out, "in3"));
    assert_non_null(strstr(run.out, "US fl oz"));
    const char *row = strstr(run.out, "1  rear left drum");
    assert_non_null(row);
    double millilitres = 0, ounces = 0;
    assert_int_equal(sscanf(row, "1  rear left drum %lf mL (%lf", &millilitres, &ounces), 2);
    assert_true(fabs(millilitres / ounces - 29.5735) < 0.2);
    run_finish(&run);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(fluid_is_said_in_fluid_ounces_too),
        cmocka_unit_test(every_answer_of_every_ready_car_is_short),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
