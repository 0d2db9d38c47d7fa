/* Every answer as JSON keeps to docs/answers.schema.json: all commands on all ready cars, each as
 * it is and wholly renewed, and on every car of tests/cases; messages of every file that is
 * refused. */
#include <dirent.h>
#include <jansson.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "advice/figures/weighing.h"
#include "base/text.h"
#include "input/read.h"
#include "report/json/json.h"
#include "support/near.h"
#include "support/plain_plan.h"
#include "support/ready_cars.h"
#include "support/run_cli.h"

static json_t *schema;
static int failures;

/* --- as much of JSON Schema (2020-12) as the schema uses ---------------------------------------
 */

static const char *type_name(const json_t *value)
{
    switch (json_typeof(value)) {
    case JSON_OBJECT:
        return "object";
    case JSON_ARRAY:
        return "array";
    case JSON_STRING:
        return "string";
    case JSON_INTEGER:
        return "integer";
    case JSON_REAL:
        return "number";
    case JSON_TRUE:
    case JSON_FALSE:
        return "boolean";
    case JSON_NULL:
        return "null";
    }
    return "";
}

static bool is_type(const json_t *value, const json_t *type)
{
    const char *name = json_string_value(type);
    return strcmp(name, type_name(value)) == 0 ||
           (strcmp(name, "number") == 0 && json_is_integer(value));
}

static bool of_type(const json_t *value, const json_t *types)
{
    if (json_is_string(types))
        return is_type(value, types);
    for (size_t i = 0; i < json_array_size(types); i++)
        if (is_type(value, json_array_get(types, i)))
            return true;
    return false;
}

static bool wrong(const char *path, const char *what)
{
    fprintf(stderr, "%s: %s\n", path, what);
    return false;
}

static bool keeps(json_t *value, json_t *rule, const char *path, int depth);

static bool object_keeps(json_t *value, json_t *rule, const char *path, int depth)
{
    json_t *properties = json_object_get(rule, "properties"), *member, *name;
    json_t *others = json_object_get(rule, "additionalProperties");
    const char *key;
    size_t i;
    char below[512];
    json_array_foreach(json_object_get(rule, "required"), i, name)
    {
        snprintf(below, sizeof below, "lacks %s", json_string_value(name));
        if (json_object_get(value, json_string_value(name)) == NULL)
            return wrong(path, below);
    }
    json_object_foreach(value, key, member)
    {
        snprintf(below, sizeof below, "%s/%s", path, key);
        json_t *of_it = json_object_get(properties, key);
        if (of_it == NULL && json_is_false(others))
            return wrong(below, "is not in the schema");
        of_it = of_it != NULL ? of_it : others;
        if (json_is_object(of_it) && !keeps(member, of_it, below, depth + 1))
            return false;
    }
    return true;
}

static bool array_keeps(json_t *value, json_t *rule, const char *path, int depth)
{
    json_t *items = json_object_get(rule, "items"), *item;
    size_t i;
    char below[512];
    json_array_foreach(value, i, item)
    {
        snprintf(below, sizeof below, "%s/%zu", path, i);
        if (items != NULL && !keeps(item, items, below, depth + 1))
            return false;
    }
    return true;
}

static bool among(json_t *value, json_t *values)
{
    for (size_t i = 0; i < json_array_size(values); i++)
        if (json_equal(value, json_array_get(values, i)))
            return true;
    return false;
}

static json_t *referred(json_t *rule)
{
    const char *to = json_string_value(json_object_get(rule, "$ref"));
    const char *lead = "#/$defs/";
    assert_int_equal(strncmp(to, lead, strlen(lead)), 0);
    json_t *found = json_object_get(json_object_get(schema, "$defs"), to + strlen(lead));
    assert_non_null(found);
    return found;
}

static bool keeps(json_t *value, json_t *rule, const char *path, int depth)
{
    assert_true(depth < 30);
    if (json_object_get(rule, "$ref") != NULL)
        return keeps(value, referred(rule), path, depth + 1);
    json_t *types = json_object_get(rule, "type"), *one = json_object_get(rule, "const");
    json_t *values = json_object_get(rule, "enum");
    if (types != NULL && !of_type(value, types))
        return wrong(path, "is of another type");
    if (one != NULL && !json_equal(value, one))
        return wrong(path, "is another value");
    if (values != NULL && !among(value, values))
        return wrong(path, "is none of those listed");
    if (json_is_object(value))
        return object_keeps(value, rule, path, depth);
    return !json_is_array(value) || array_keeps(value, rule, path, depth);
}

/* The root is one of several answers, which its member "answer" names. */
static void hold(const char *name, const char *words)
{
    char path[512], answer[64];
    json_error_t error;
    json_t *value = json_loads(words, 0, &error);
    if (value == NULL) {
        fprintf(stderr, "%s: no JSON: %s\n", name, error.text);
        failures++;
        return;
    }
    snprintf(answer, sizeof answer, "answer-%s",
             json_string_value(json_object_get(value, "answer")));
    snprintf(path, sizeof path, "%s %s", name, answer);
    json_t *rule = json_object_get(json_object_get(schema, "$defs"), answer);
    if (rule == NULL || !keeps(value, rule, path, 0))
        failures++;
    json_decref(value);
}

/* --- the answers -------------------------------------------------------------------------------
 */

static void hold_part(const char *name, const struct result *result, enum json_part part,
                      struct arena *arena)
{
    struct text words = text_start(arena);
    assert_true(json_result(&words, result, part));
    hold(name, words.items);
}

static void hold_simple(const char *name, struct result *result, struct arena *arena)
{
    static const enum json_part parts[] = {JSON_CHECK, JSON_BLEED, JSON_OPEN, JSON_SOFT,
                                           JSON_HOSES};
    for (size_t i = 0; i < sizeof parts / sizeof *parts; i++)
        hold_part(name, result, parts[i], arena);
    struct curves curves = curves_of(result->system, result->network, (struct force){NAN}, arena);
    result->curves = &curves;
    hold_part(name, result, JSON_CURVE, arena);
    result->curves = NULL;
}

static void hold_fit(const char *name, struct result *result, struct arena *arena)
{
    for (int i = 0; i < result->system->part_count; i++) {
        if (result->system->parts[i].kind != KIND_MASTER)
            continue;
        struct work_file bore = fit_bore(result->system, &i, 1, (struct length){0.022225}, arena);
        result->fit = fit_of(result->system, result->network, &bore, (struct force){NAN}, arena);
        hold_part(name, result, JSON_FIT, arena);
    }
    static const struct length bores[] = {{0.01905}, {0.0206375}, {0.0254}};
    int master = system_first(result->system, KIND_MASTER);
    struct choice_asked asked = {
        .axes = {{.parts = &master, .part_count = 1, .bores = bores, .count = 3}},
        .axis_count = master >= 0,
        .limits = {NAN, NAN, NAN, NAN, NAN, NAN},
        .stop = {NAN},
        .effort = {NAN}};
    result->chosen = choose(result->system, result->network, &asked, arena);
    hold_part(name, result, JSON_CHOOSE, arena);
}

static void hold_traces(const char *name, struct result *result, struct arena *arena)
{
    enum { EVERY = 7 };
    struct weighing weighing =
        weighing_of(result->system, result->network, (struct force){NAN}, &result->figures, arena);
    for (int i = 0; i < result->figures.count; i += EVERY) {
        result->trace = trace_of(result->system, result->network, (struct force){NAN},
                                 &result->figures, &weighing, i, arena);
        hold_part(name, result, JSON_TRACE, arena);
    }
}

static void the_answers_of_ready_cars_keep_to_the_schema(void **state)
{
    (void)state;
    failures = 0;
    struct arena *list = arena_create();
    const char **cars = ready_cars(list);
    for (int c = 0; cars[c] != NULL; c++) {
        struct arena *arena = arena_create();
        struct result *result = ready_result(arena, cars[c], NULL);
        hold_simple(cars[c], result, arena);
        hold_fit(cars[c], result, arena);
        hold_traces(cars[c], result, arena);
        const struct system *all = plain_work(result->system, DEED_RENEWED, -1, arena);
        result = result_of(all, network_build(all, arena, NULL), (struct force){NAN},
                           (struct date){2026, 11, 20}, arena);
        hold_simple(cars[c], result, arena);
        arena_destroy(arena);
    }
    arena_destroy(list);
    assert_int_equal(failures, 0);
}

static void for_each_case(const char *below, void (*look)(const char *path))
{
    char *folder = source_path(below), path[512];
    DIR *open = opendir(folder);
    assert_non_null(open);
    for (struct dirent *entry = readdir(open); entry != NULL; entry = readdir(open))
        if (text_ends(entry->d_name, ".ini")) {
            snprintf(path, sizeof path, "%s/%.200s", below, entry->d_name);
            look(path);
        }
    closedir(open);
    free(folder);
}

static void look_at_case(const char *path)
{
    struct arena *arena = arena_create();
    if (text_ends(path, ".work.ini")) {
        arena_destroy(arena);
        return;
    }
    const char *work =
        text_print(arena, "%.*s.work.ini", (int)(strlen(path) - strlen(".ini")), path);
    char *whole = source_path(work);
    bool there = access(whole, R_OK) == 0;
    free(whole);
    hold_simple(path, ready_result(arena, path, there ? work : NULL), arena);
    arena_destroy(arena);
}

static void the_answers_of_every_case_keep_to_the_schema(void **state)
{
    (void)state;
    failures = 0;
    for_each_case("tests/cases/findings", look_at_case);
    assert_int_equal(failures, 0);
}

static void look_at_bad(const char *path)
{
    struct arena *arena = arena_create();
    struct messages messages = messages_start(arena);
    struct source source;
    char *whole = source_path(path);
    if (source_load(whole, arena, &messages, &source))
        read_car(&source, arena, &messages);
    struct text words = text_start(arena);
    json_messages(&words, &messages);
    hold(path, words.items);
    free(whole);
    arena_destroy(arena);
}

static void messages_keep_to_the_schema(void **state)
{
    (void)state;
    failures = 0;
    for_each_case("tests/cases/bad", look_at_bad);
    assert_int_equal(failures, 0);
}

/* The checker itself sees what is missing, of another type, or not in the schema. */
static void what_does_not_keep_to_it_is_seen(void **state)
{
    (void)state;
    static const char *const bad[] = {
        "{\"form\": 2, \"answer\": \"messages\"}",
        "{\"form\": 3, \"answer\": \"messages\", \"messages\": []}",
        "{\"form\": 2, \"answer\": \"messages\", \"messages\": 3}",
        "{\"form\": 2, \"answer\": \"messages\", \"messages\": [], \"more\": 1}",
        "{\"form\": 2, \"answer\": \"weather\"}"};
    for (size_t i = 0; i < sizeof bad / sizeof *bad; i++) {
        failures = 0;
        hold("made up", bad[i]);
        assert_int_equal(failures, 1);
    }
    failures = 0;
    hold("made up", "{\"form\": 2, \"answer\": \"messages\", \"messages\": []}");
    assert_int_equal(failures, 0);
}

static int read_schema(void **state)
{
    (void)state;
    char *path = source_path("docs/answers.schema.json");
    schema = json_load_file(path, 0, NULL);
    free(path);
    return schema != NULL ? 0 : -1;
}

static int drop_schema(void **state)
{
    (void)state;
    json_decref(schema);
    return 0;
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(what_does_not_keep_to_it_is_seen),
        cmocka_unit_test(the_answers_of_ready_cars_keep_to_the_schema),
        cmocka_unit_test(the_answers_of_every_case_keep_to_the_schema),
        cmocka_unit_test(messages_keep_to_the_schema),
    };
    return cmocka_run_group_tests(tests, read_schema, drop_schema);
}
