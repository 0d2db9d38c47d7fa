#include "report/sheet/parts_of_sheet.h"

#include <math.h>

#include "base/text.h"
#include "network/belonging.h"
#include "report/answers/answer.h"
#include "report/words/pair_words.h"
#include "report/words/plan_words.h"
#include "report/words/step_words.h"
#include "report/words/words.h"

const char *sheet_date(struct arena *arena, struct date date)
{
    static const char *const months[] = {"January",   "February", "March",    "April",
                                         "May",       "June",     "July",     "August",
                                         "September", "October",  "November", "December"};
    if (!date_known(date))
        return "no date";
    if (date.month < 1 || date.month > 12)
        return text_print(arena, "%d", date.year);
    if (date.day < 1)
        return text_print(arena, "%s %d", months[date.month - 1], date.year);
    return text_print(arena, "%d %s %d", date.day, months[date.month - 1], date.year);
}

/* --- what was done --------------------------------------------------------------------------- */

/* The bore that a part had before the work where the work changed it; NaN. */
static struct length bore_before(const struct result *result, int part)
{
    for (int i = 0; i < result->plan->part_count; i++) {
        const struct plan_part *row = &result->plan->parts[i];
        if (row->part == part && !isnan(row->old_bore.m) && row->old_bore.m != row->new_bore.m)
            return row->old_bore;
    }
    return (struct length){NAN};
}

static const char *renewed_words(struct arena *arena, const struct result *result)
{
    const struct system *system = result->system;
    struct text words = text_start(arena);
    for (int i = 0; i < system->part_count; i++) {
        struct length before = bore_before(result, i);
        if (!part_is_new(&system->parts[i]) && isnan(before.m))
            continue;
        text_add(&words, "%s%s", words.count > 0 ? ", " : "", system->parts[i].name);
        if (!isnan(before.m))
            text_add(&words, " (bore was %s)", plan_bore_words(arena, before, result->units));
    }
    return words_paired(arena, system, words.items);
}

static void put_done(struct document *into, const struct result *result)
{
    const struct system *system = result->system;
    struct arena *arena = into->arena;
    document_head(into, 2, "What was done");
    if (system->work_count == 0) {
        struct block *block =
            document_tick(into, "On the car as it stands; what was renewed:", "renewed");
        block->share = 0.5;
        return;
    }
    const char *renewed = renewed_words(arena, result);
    struct text words = text_start(arena);
    text_add(&words, "%s:", sheet_date(arena, system->works[system->work_count - 1].date));
    if (*renewed != '\0')
        text_add(&words, " new %s.", renewed);
    if (fluid_is_renewed(system))
        text_add(&words, " Fluid renewed.");
    document_words(into, words.items);
}

/* Two findings of parts that stay, and lines for what else is left. */
static void put_undone(struct document *into, const struct result *result)
{
    static const struct table_column columns[] = {{"", CELL_LINE, CELL_LEFT, 0, 0.46, false},
                                                  {"", CELL_LINE, CELL_LEFT, 0, 0.52, false}};
    struct arena *arena = into->arena;
    for (size_t i = 0; i < result->unsettled.count; i++) {
        const struct finding *finding = &result->unsettled.items[i];
        const char *what = fill_words(arena, finding->check->what, finding->quantities,
                                      finding->quantity_count, result->units);
        document_words(into, text_print(arena, "Not settled: %s", first_sentence(arena, what)))
            ->tone = TONE_STRONG;
    }
    struct table *table = document_table(into, columns, 2);
    table_row(table);
    table_ask(table, "left undone");
    table_ask(table, "because");
}

/* --- hoses ----------------------------------------------------------------------------------- */

static const char *tag_of(enum hose_standing standing)
{
    static const char *const words[] = {[HOSE_IS_NEW] = "NEW",
                                        [HOSE_IS_OLD] = "OLD",
                                        [HOSE_AGE_NOT_KNOWN] = "AGE ?",
                                        [HOSE_IS_MISSING] = "MISSING",
                                        [HOSE_IS_ACCEPTED] = "HARD PIPE",
                                        [HOSE_CANNOT_TELL] = "CANNOT TELL",
                                        [HOSE_IS_IDLE] = "NOT NEEDED"};
    return words[standing];
}

static bool to_be_renewed(enum hose_standing standing)
{
    return standing == HOSE_IS_OLD || standing == HOSE_AGE_NOT_KNOWN || standing == HOSE_IS_MISSING;
}

static const char *dated(struct arena *arena, const struct hose_line *line)
{
    return line->standing == HOSE_IS_MISSING ? "" : sheet_date(arena, line->renewed);
}

/* The hose of the other side that stands alike is in the same row. */
static const char *hose_name(struct arena *arena, const struct hose_list *hoses, int at, bool *done)
{
    const struct hose_line *line = &hoses->items[at];
    for (int i = at + 1; i < hoses->count; i++) {
        const struct hose_line *other = &hoses->items[i];
        const char *pair = done[i] ? NULL : pair_words(arena, line->name, other->name);
        if (pair == NULL || other->standing != line->standing ||
            date_compare(other->renewed, line->renewed) != 0)
            continue;
        done[i] = true;
        return pair;
    }
    return line->name;
}

static void put_hoses(struct document *into, const struct result *result)
{
    static const struct table_column columns[] = {{"", CELL_WORDS, CELL_LEFT, 0, 0, false},
                                                  {"", CELL_FIGURE, CELL_LEFT, 0, 0, false},
                                                  {"", CELL_FIGURE, CELL_LEFT, 0, 0, false},
                                                  {"", CELL_LINE, CELL_LEFT, 0, 0.3, false}};
    const struct hose_list *hoses = &result->hoses;
    struct arena *arena = into->arena;
    bool *done = ARENA_ARRAY(arena, (size_t)hoses->count + 1, bool);
    document_head(into, 2, "Hoses")->aside =
        text_print(arena, "%d needed, %d there, %d old or of unknown age, %d missing",
                   hoses->needed, hoses->has, hoses->old + hoses->unknown, hoses->missing);
    struct table *table = document_table(into, columns, 4);
    for (int i = 0; i < hoses->count; i++) {
        if (done[i])
            continue;
        const struct hose_line *line = &hoses->items[i];
        table_row(table);
        table_cell(table, answer_capital(arena, hose_name(arena, hoses, i, done)));
        table_cell(table, tag_of(line->standing))->tone = TONE_STRONG;
        table_cell(table, dated(arena, line));
        if (to_be_renewed(line->standing))
            table_ask(table, "renewed");
        else
            table_skip(table);
    }
}

/* --- tests, signatures, drive ---------------------------------------------------------------- */

static void put_tests(struct document *into, const struct result *result)
{
    static const struct table_column columns[] = {{"", CELL_WORDS, CELL_LEFT, 0, 0, false},
                                                  {"good", CELL_BOX, CELL_CENTRE, 0, 0, false},
                                                  {"not", CELL_BOX, CELL_CENTRE, 0, 0, false},
                                                  {"read", CELL_LINE, CELL_LEFT, 0, 0.12, false}};
    struct steps tests = plan_phases(result->plan, PHASE_RESTING, PHASE_RESTING);
    struct arena *arena = into->arena;
    if (tests.count == 0)
        return;
    document_head(into, 2, phase_words(PHASE_RESTING));
    struct table *table = document_table(into, columns, 4);
    for (size_t i = 0; i < tests.count; i++) {
        const struct step *step = &tests.items[i];
        table_row(table);
        table_cell(table, answer_capital(arena, step_brief(arena, result, step)));
        table_ask(table, NULL)->done = step->done;
        table_ask(table, NULL);
        table_ask(table, NULL);
    }
}

static void put_signatures(struct document *into)
{
    static const struct table_column columns[] = {{"", CELL_WORDS, CELL_LEFT, 0, 0, false},
                                                  {"", CELL_LINE, CELL_LEFT, 0, 0.24, false},
                                                  {"", CELL_LINE, CELL_LEFT, 0, 0.24, false},
                                                  {"", CELL_LINE, CELL_LEFT, 0, 0.15, false}};
    static const char *const who[] = {"Done by: ticked, readings mine",
                                      "Looked over: every opened joint"};
    struct table *table = document_table(into, columns, 4);
    for (int i = 0; i < 2; i++) {
        table_row(table);
        table_cell(table, who[i]);
        table_ask(table, "name");
        table_ask(table, "signed");
        table_ask(table, "date");
    }
}

static void put_road(struct document *into, const struct result *result)
{
    size_t count;
    const struct caution_row *rows = caution_rows(&count);
    document_head(into, 2, "Before the road");
    for (size_t i = 0; i < count; i++)
        if ((rows[i].when == CAUTION_ROAD || rows[i].when == CAUTION_ROAD_MOTORCYCLE) &&
            caution_applies(&rows[i], result->system, &result->touched))
            document_caution(into, rows[i].signal, rows[i].brief);
    document_words(into, caution_deference_brief())->tone = TONE_STRONG;
    sheet_ticks(into, result, PHASE_SECOND, PHASE_SECOND, NULL);
    put_signatures(into);
}

/* The drive and what is looked at later, each with what is written down. */
static void put_later(struct document *into, const struct result *result)
{
    struct steps steps = plan_phases(result->plan, PHASE_DRIVE, PHASE_LATER);
    struct arena *arena = into->arena;
    if (steps.count == 0)
        return;
    document_head(into, 2, "First drive, and later");
    for (size_t i = 0; i < steps.count; i++) {
        const struct step *step = &steps.items[i];
        struct block *tick = document_tick(
            into, answer_capital(arena, step_brief(arena, result, step)), step->row->mark);
        tick->share = 0.2;
        tick->done = step->done;
    }
}

void sheet_record(struct document *into, const struct result *result)
{
    document_turn(into, "record");
    put_done(into, result);
    put_undone(into, result);
    put_hoses(into, result);
    put_tests(into, result);
    put_road(into, result);
    put_later(into, result);
}
