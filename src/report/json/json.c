#include "report/json/json.h"

#include <jansson.h>
#include <math.h>

#include "report/json/json_bleed.h"
#include "report/json/json_choose.h"
#include "report/json/json_curve.h"
#include "report/json/json_pieces.h"
#include "report/json/json_plan.h"
#include "report/json/json_rules.h"
#include "report/json/json_soft.h"
#include "report/json/json_trace.h"
#include "report/words/notes.h"
#include "report/words/words.h"
#include "report/words/fit_words.h"

/* Digits enough that a value is not moved by a double's last places, few enough to read. */
enum { DIGITS = 12 };

static json_t *quantities_object(const struct named_quantity *quantities, int count)
{
    json_t *object = json_object();
    for (int i = 0; i < count; i++)
        json_object_set_new(object, quantities[i].name,
                            quantities[i].text != NULL ? json_string(quantities[i].text)
                                                       : real_or_null(quantities[i].value));
    return object;
}

static json_t *finding_object(struct arena *arena, const struct result *result,
                              const struct finding *finding)
{
    const struct check_row *row = finding->check;
    json_t *object = json_object();
    json_object_set_new(object, "id", json_string(row->id));
    json_object_set_new(object, "severity", json_string(severity_word(finding->severity)));
    const char *const names[] = {"what", "why", "do"};
    const char *const words[] = {row->what, row->why, row->remedy};
    for (int i = 0; i < 3; i++)
        json_object_set_new(object, names[i],
                            words[i] == NULL
                                ? json_null()
                                : json_string(fill_words(arena, words[i], finding->quantities,
                                                         finding->quantity_count, result->units)));
    json_object_set_new(object, "source", string_or_null(row->source));
    json_object_set_new(object, "limit", string_or_null(row->limit));
    if (finding->part >= 0)
        json_object_set_new(object, "part", json_string(result->system->parts[finding->part].name));
    set_place(object, finding->place);
    json_object_set_new(object, "quantities",
                        quantities_object(finding->quantities, finding->quantity_count));
    json_object_set_new(object, "rests_on_assumed", json_boolean(finding->assumed));
    json_object_set_new(object, "mostly_assumed", json_boolean(finding->guess != NULL));
    json_object_set_new(object, "measure_first", string_or_null(finding->measure));
    return object;
}

static json_t *findings_array(struct arena *arena, const struct result *result,
                              const struct findings *findings)
{
    json_t *array = json_array();
    for (size_t i = 0; i < findings->count; i++)
        json_array_append_new(array, finding_object(arena, result, &findings->items[i]));
    return array;
}

static json_t *measure_array(const struct result *result)
{
    json_t *array = json_array();
    for (int i = 0; i < result->measure.count; i++) {
        const struct measuring *thing = &result->measure.items[i];
        json_t *item = json_object();
        json_t *parts = json_array();
        for (int p = 0; p < thing->part_count; p++)
            json_array_append_new(parts, json_string(result->system->parts[thing->parts[p]].name));
        json_object_set_new(item, "key", json_string(thing->key->name));
        json_object_set_new(item, "parts", parts);
        json_object_set_new(item, "words", json_string(thing->words));
        json_object_set_new(item, "missing", json_boolean(thing->missing));
        json_object_set_new(item, "figures", json_integer(thing->figures));
        json_object_set_new(item, "moves", json_string(thing->most->row->id));
        json_object_set_new(item, "of", json_string(thing->most->of));
        json_object_set_new(item, "share", real_or_null(thing->share));
        json_object_set_new(item, "how", string_or_null(thing->key->help));
        json_array_append_new(array, item);
    }
    return array;
}

static json_t *readings_array(struct arena *arena, const struct result *result)
{
    json_t *array = json_array();
    for (int i = 0; i < result->readings.count; i++) {
        const struct compared *compared = &result->readings.items[i];
        json_t *item = json_object();
        json_object_set_new(item, "figure", json_string(compared->figure->row->id));
        json_object_set_new(item, "of", json_string(compared->figure->of));
        json_object_set_new(item, "read", real_or_null(compared->reading->value));
        json_object_set_new(item, "at_effort", real_or_null(compared->reading->effort.n));
        json_object_set_new(item, "computed", real_or_null(compared->computed));
        json_object_set_new(item, "unit", json_string(si_unit(compared->figure->row->dimension)));
        json_object_set_new(item, "outcome", json_string(comparing_words(compared->outcome)));
        json_object_set_new(item, "words", json_string(reading_words(arena, result, compared)));
        set_place(item, compared->reading->place);
        json_array_append_new(array, item);
    }
    return array;
}

static json_t *hoses_object(struct arena *arena, const struct hose_list *hoses)
{
    static const char *const verdicts[] = {"complete", "old hoses left", "missing", "cannot tell"};
    json_t *object = json_object();
    json_object_set_new(object, "verdict", json_string(verdicts[hoses->verdict]));
    json_object_set_new(object, "words", json_string(hoses_verdict_words(arena, hoses)));
    json_object_set_new(object, "needed", json_integer(hoses->needed));
    json_object_set_new(object, "there", json_integer(hoses->has));
    json_object_set_new(object, "renewed", json_integer(hoses->renewed));
    json_object_set_new(object, "old", json_integer(hoses->old));
    json_object_set_new(object, "missing", json_integer(hoses->missing));
    json_object_set_new(object, "age_not_known", json_integer(hoses->unknown));
    json_t *array = json_array();
    for (int i = 0; i < hoses->count; i++) {
        const struct hose_line *line = &hoses->items[i];
        json_t *item = json_object();
        json_object_set_new(item, "name", string_or_null(line->name));
        json_object_set_new(item, "where", string_or_null(line->where));
        json_object_set_new(item, "use", string_or_null(line->use));
        json_object_set_new(item, "standing", json_string(hose_standing_words(line->standing)));
        set_date(item, "renewed", line->renewed);
        json_object_set_new(item, "renewed_in_work", json_boolean(line->renewed_in_work));
        if (line->reason != NULL)
            json_object_set_new(item, "reason", json_string(line->reason));
        set_place(item, line->place);
        json_array_append_new(array, item);
    }
    json_object_set_new(object, "hoses", array);
    return object;
}

static json_t *fit_questions(struct arena *arena, const struct result *result)
{
    const struct fit *fit = result->fit;
    json_t *array = json_array();
    for (int i = 0; i < fit->answer_count; i++) {
        const struct fit_answer *answer = &fit->answers[i];
        json_t *item = json_object();
        json_object_set_new(item, "question",
                            json_string(fit_question_words(fit, answer->question)));
        json_object_set_new(item, "answer", json_string(fit_standing_words(answer->standing)));
        json_object_set_new(
            item, "worse", json_boolean(answer->reason >= 0 && fit->reasons[answer->reason].worse));
        const char *words = fit_lack_words(arena, result, answer);
        if (words == NULL && answer->reason >= 0)
            words = fit_reason_words(arena, result, &fit->reasons[answer->reason]);
        json_object_set_new(item, "words", json_string(words != NULL ? words : "no change"));
        json_t *needs = json_array();
        for (int k = 0; k < answer->needs_count; k++)
            json_array_append_new(
                needs, json_string(cited_words(arena, result->system, &answer->needs[k])));
        json_object_set_new(item, "needs", needs);
        json_array_append_new(array, item);
    }
    return array;
}

static json_t *choice_or_null(const struct key *key, double value)
{
    return string_or_null(isnan(value) ? NULL : choice_of_value(key, (int)value)->word);
}

static json_t *fit_changes(const struct result *result)
{
    const struct fit *fit = result->fit;
    const struct part *parts = result->system->parts;
    json_t *array = json_array();
    for (int i = 0; i < fit->change_count; i++) {
        const struct fit_change *change = &fit->changes[i];
        json_t *item = json_object();
        json_object_set_new(item, "part", json_string(parts[change->part].name));
        json_object_set_new(item, "other",
                            string_or_null(change->other < 0 ? NULL : parts[change->other].name));
        json_object_set_new(item, "key", json_string(change->key->name));
        bool word = change->key->form == FORM_CHOICE;
        json_object_set_new(item, "before",
                            word ? choice_or_null(change->key, change->before)
                                 : real_or_null(change->before));
        json_object_set_new(item, "after",
                            word ? choice_or_null(change->key, change->after)
                                 : real_or_null(change->after));
        json_object_set_new(item, "unit", json_string(si_unit(change->key->dimension)));
        json_array_append_new(array, item);
    }
    return array;
}

static json_t *fit_object(struct arena *arena, const struct result *result)
{
    const struct fit *fit = result->fit;
    json_t *object = json_object();
    json_object_set_new(object, "changes", fit_changes(result));
    json_object_set_new(object, "stop", real_or_null(fit->stop.m_s2));
    json_object_set_new(object, "verdict", json_string(fit_verdict_words(fit->verdict)));
    json_object_set_new(object, "words", json_string(fit_headline(arena, result)));
    json_object_set_new(object, "questions", fit_questions(arena, result));
    json_t *lines = json_array();
    for (int i = 0; i < fit->line_count; i++) {
        const struct fit_line *line = &fit->lines[i];
        json_t *item = json_object();
        json_object_set_new(item, "id", json_string(line->id));
        json_object_set_new(item, "title", json_string(line->title));
        json_object_set_new(item, "of", json_string(line->of));
        json_object_set_new(item, "before", real_or_null(line->before));
        json_object_set_new(item, "after", real_or_null(line->after));
        json_object_set_new(item, "unit", json_string(si_unit(line->dimension)));
        json_object_set_new(item, "rests_on_assumed", json_boolean(line->state == FIGURE_ASSUMED));
        json_array_append_new(lines, item);
    }
    json_object_set_new(object, "figures", lines);
    json_t *reasons = json_array();
    for (int i = 0; i < fit->reason_count; i++) {
        const struct fit_reason *reason = &fit->reasons[i];
        json_t *item = json_object();
        json_object_set_new(item, "question",
                            json_string(fit_question_words(fit, reason->question)));
        json_object_set_new(item, "answer", json_string(fit_standing_words(reason->standing)));
        json_object_set_new(item, "limit", string_or_null(reason->limit));
        json_object_set_new(item, "words", json_string(fit_reason_words(arena, result, reason)));
        json_object_set_new(item, "rests_on_assumed", json_boolean(reason->assumed));
        json_array_append_new(reasons, item);
    }
    json_object_set_new(object, "reasons", reasons);
    return object;
}

static bool add_json(struct text *into, json_t *root)
{
    if (root == NULL)
        return false;
    char *words = json_dumps(root, JSON_INDENT(2) | JSON_REAL_PRECISION(DIGITS));
    json_decref(root);
    if (words == NULL)
        return false;
    text_add(into, "%s\n", words);
    free(words);
    return true;
}

static json_t *notes_array(struct arena *arena, const struct system *system)
{
    struct note *notes;
    size_t count = notes_of(system, arena, &notes);
    json_t *array = json_array();
    for (size_t i = 0; i < count; i++) {
        json_t *object = json_object();
        json_object_set_new(object, "of", json_string(notes[i].of));
        json_object_set_new(object, "note", json_string(notes[i].words));
        json_array_append_new(array, object);
    }
    return array;
}

/* The form of the answers: raised when a member goes or means something else, not when one comes.
 * docs/answers.schema.json is of this form. */
enum { JSON_FORM = 2 };

static json_t *answer_object(const char *name)
{
    json_t *root = json_object();
    json_object_set_new(root, "form", json_integer(JSON_FORM));
    json_object_set_new(root, "answer", json_string(name));
    return root;
}

static const char *part_name(enum json_part part)
{
    static const char *const names[] = {
        [JSON_CHECK] = "check",   [JSON_BLEED] = "bleed", [JSON_OPEN] = "open",
        [JSON_SOFT] = "soft",     [JSON_HOSES] = "hoses", [JSON_FIT] = "fit",
        [JSON_CHOOSE] = "choose", [JSON_TRACE] = "trace", [JSON_CURVE] = "curve"};
    return names[part];
}

bool json_result(struct text *into, const struct result *result, enum json_part part)
{
    struct arena *arena = into->arena;
    json_t *root = answer_object(part_name(part));
    json_object_set_new(root, "car", string_or_null(system_vehicle(result->system)->title));
    json_object_set_new(root, "file", string_or_null(result->system->file));
    set_date(root, "date", result->today);
    json_t *works = json_array();
    for (int i = 0; i < result->system->work_count; i++) {
        json_t *work = json_object();
        json_object_set_new(work, "file", string_or_null(result->system->works[i].file));
        set_date(work, "date", result->system->works[i].date);
        json_array_append_new(works, work);
    }
    json_object_set_new(root, "works", works);
    json_object_set_new(root, "notes", notes_array(arena, result->system));
    switch (part) {
    case JSON_CHECK: {
        json_t *figures = json_array();
        for (int i = 0; i < result->figures.count; i++)
            json_array_append_new(figures, figure_object(arena, result, &result->figures.items[i]));
        json_object_set_new(root, "figures", figures);
        json_object_set_new(root, "findings", findings_array(arena, result, &result->findings));
        json_object_set_new(root, "measure_first", measure_array(result));
        json_object_set_new(root, "readings", readings_array(arena, result));
        json_object_set_new(root, "rules", rules_array(arena, result));
        json_object_set_new(root, "summary", json_string(summary_words(arena, result)));
        break;
    }
    case JSON_BLEED:
        json_object_set_new(root, "unsettled", findings_array(arena, result, &result->unsettled));
        json_object_set_new(root, "bleed", bleed_object(arena, result));
        json_object_set_new(root, "plan", plan_object(arena, result));
        break;
    case JSON_OPEN:
        json_object_set_new(root, "unsettled", findings_array(arena, result, &result->unsettled));
        json_object_set_new(root, "plan", plan_object(arena, result));
        break;
    case JSON_SOFT:
        json_object_set_new(root, "soft", soft_array(&result->soft));
        break;
    case JSON_HOSES:
        json_object_set_new(root, "hoses", hoses_object(arena, &result->hoses));
        break;
    case JSON_CHOOSE:
        json_object_set_new(root, "choose", choose_object(arena, result));
        break;
    case JSON_FIT:
        json_object_set_new(root, "fit", fit_object(arena, result));
        break;
    case JSON_CURVE:
        json_object_set_new(root, "pedals", curves_array(arena, result));
        break;
    case JSON_TRACE:
        json_object_set_new(root, "trace", trace_object(arena, result));
        break;
    }
    json_object_set_new(root, "caution", json_string(caution_deference()));
    return add_json(into, root);
}

bool json_messages(struct text *into, const struct messages *messages)
{
    json_t *root = answer_object("messages");
    json_t *array = json_array();
    for (size_t i = 0; i < messages->count; i++) {
        const struct message *message = &messages->items[i];
        json_t *object = json_object();
        json_object_set_new(object, "id", json_string(message->id));
        json_object_set_new(object, "severity", json_string(severity_word(message->severity)));
        json_object_set_new(object, "file", string_or_null(message->place.file));
        json_object_set_new(object, "line", json_integer(message->place.line));
        json_object_set_new(object, "column", json_integer(message->place.column));
        json_object_set_new(object, "words", string_or_null(message->words));
        json_object_set_new(object, "write", string_or_null(message->write));
        json_object_set_new(object, "example", string_or_null(message->example));
        json_object_set_new(object, "do", string_or_null(message->mend));
        json_array_append_new(array, object);
    }
    json_object_set_new(root, "messages", array);
    return add_json(into, root);
}
