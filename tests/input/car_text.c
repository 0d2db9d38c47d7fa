#include "car_text.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "support/cmocka_all.h"

const char small_car[] = "[vehicle]\n"
                         "title = Test car\n"
                         "[fluid]\n"
                         "grade = DOT 4\n"
                         "[reservoir]\n"
                         "capacity = 200 mL\n"
                         "[brake pedal]\n"
                         "works = brake master\n"
                         "ratio = 5\n"
                         "[brake master]\n"
                         "type = single\n"
                         "bore = 3/4 in\n"
                         "[front disc]\n"
                         "caliper = fixed\n"
                         "bore = 2 of 48 mm\n"
                         "[runs]\n"
                         "feed = brake master, 0.6 m pipe, front tee\n"
                         "brakes = front tee, 0.4 m hose, front disc\n";

static struct car_text read_source(struct arena *arena, const struct source *source)
{
    struct car_text car = {arena, messages_start(arena), NULL};
    car.system = read_car(source, arena, &car.messages);
    return car;
}

struct car_text car_read(const char *text)
{
    struct arena *arena = arena_create();
    struct source source = {"car.ini", text, strlen(text)};
    return read_source(arena, &source);
}

struct car_text car_read_more(const char *more)
{
    struct arena *arena = arena_create();
    char *text = text_print(arena, "%s%s", small_car, more);
    struct source source = {"car.ini", text, strlen(text)};
    return read_source(arena, &source);
}

struct source source_below(struct arena *arena, const char *below)
{
    const char *root = getenv("SOURCE_ROOT");
    struct messages messages = messages_start(arena);
    struct source source;
    if (!source_load(text_print(arena, "%s/%s", root ? root : ".", below), arena, &messages,
                     &source))
        fail_msg("%s cannot be read", below);
    return source;
}

struct car_text car_load(const char *below)
{
    struct arena *arena = arena_create();
    struct source source = source_below(arena, below);
    return read_source(arena, &source);
}

void car_finish(struct car_text *car)
{
    arena_destroy(car->arena);
    car->arena = NULL;
}

static void show_messages(const struct car_text *car)
{
    for (size_t i = 0; i < car->messages.count; i++)
        print_message("%d:%d %s: %s\n", car->messages.items[i].place.line,
                      car->messages.items[i].place.column, car->messages.items[i].id,
                      car->messages.items[i].words);
}

const struct part *car_part(const struct car_text *car, const char *name)
{
    if (!car->system) {
        show_messages(car);
        fail_msg("the car was not read");
    }
    int part = system_find(car->system, name);
    if (part < 0) {
        for (int i = 0; i < car->system->part_count; i++)
            print_message("%s\n", car->system->parts[i].name);
        fail_msg("no part %s", name);
    }
    return &car->system->parts[part];
}

static bool is_port(const struct system *system, struct port port, const char *words)
{
    const char *colon = strchr(words, ':');
    size_t length = colon ? (size_t)(colon - words) : strlen(words);
    const char *name = system->parts[port.part].name;
    return strlen(name) == length && strncmp(name, words, length) == 0 &&
           port.chamber == (colon ? atoi(colon + 1) : 0);
}

bool car_joined(const struct car_text *car, const char *a, const char *b)
{
    assert_non_null(car->system);
    for (int i = 0; i < car->system->connection_count; i++) {
        const struct connection *connection = &car->system->connections[i];
        if (is_port(car->system, connection->a, a) && is_port(car->system, connection->b, b))
            return true;
    }
    return false;
}

bool car_has(const struct car_text *car, const char *id)
{
    for (size_t i = 0; i < car->messages.count; i++)
        if (strcmp(car->messages.items[i].id, id) == 0)
            return true;
    return false;
}

/* A field as words that are equal when the fields are, doubles to the last bit. */
static const char *field_words(const struct system *system, const struct part *part,
                               const struct key *key, struct arena *arena)
{
    const char *field = (const char *)part + key->field;
    struct part_names names;
    struct bores bores;
    struct date date;
    const char *text;
    struct text list = text_start(arena);
    int index;
    switch (key->form) {
    case FORM_QUANTITY:
    case FORM_COUNT:
    case FORM_CHOICE:
        return text_print(arena, "%a", key_value(part, key));
    case FORM_BORES:
        memcpy(&bores, field, sizeof bores);
        return text_print(arena, "%d of %a", bores.count, bores.bore.m);
    case FORM_TEXT:
        memcpy(&text, field, sizeof text);
        return text ? text : "";
    case FORM_DATE:
        memcpy(&date, field, sizeof date);
        return text_print(arena, "%d-%d-%d", date.year, date.month, date.day);
    case FORM_PART:
        memcpy(&index, field, sizeof index);
        return index < 0 ? "" : system->parts[index].name;
    case FORM_PARTS:
        memcpy(&names, field, sizeof names);
        for (size_t i = 0; i < names.count; i++)
            text_add(&list, "%s,", system->parts[names.parts[i]].name);
        return list.items;
    case FORM_WORDS:
        memcpy(&names, field, sizeof names);
        for (size_t i = 0; i < names.count; i++)
            text_add(&list, "%s,", names.names[i]);
        return list.items;
    }
    return "";
}

static bool is_assumed(const struct part *part, size_t row)
{
    return part->origins[row].kind == ORIGIN_ASSUMED;
}

static const char *part_difference(const struct system *a, const struct part *x,
                                   const struct system *b, const struct part *y,
                                   struct arena *arena)
{
    if (x->kind != y->kind || x->side != y->side || x->axle != y->axle)
        return text_print(arena, "%s: kind, side or axle", x->name);
    if (x->kind == KIND_JOINT && x->as.joint.implied != y->as.joint.implied)
        return text_print(arena, "%s: implied", x->name);
    size_t count;
    const struct key *rows = key_table(x->kind, &count);
    for (size_t i = 0; i < count; i++) {
        const char *in_a = field_words(a, x, &rows[i], arena);
        const char *in_b = field_words(b, y, &rows[i], arena);
        if (strcmp(in_a, in_b) != 0)
            return text_print(arena, "%s: %s is %s and %s", x->name, rows[i].name, in_a, in_b);
        /* a joint's only key may have to be said, so that its section is not empty */
        if (x->kind != KIND_JOINT && is_assumed(x, i) != is_assumed(y, i))
            return text_print(arena, "%s: %s is assumed in one", x->name, rows[i].name);
    }
    return NULL;
}

static const char *port_words(const struct system *system, struct port port, struct arena *arena)
{
    return text_print(arena, "%s:%d:%s", system->parts[port.part].name, port.chamber,
                      port.outlet ? port.outlet : "");
}

static int compare(const void *a, const void *b)
{
    return strcmp(*(const char *const *)a, *(const char *const *)b);
}

static const char **connection_words(const struct system *system, struct arena *arena)
{
    size_t count = (size_t)system->connection_count;
    const char **words = ARENA_ARRAY(arena, count + 1, const char *);
    for (size_t i = 0; i < count; i++)
        words[i] = text_print(arena, "%s - %s", port_words(system, system->connections[i].a, arena),
                              port_words(system, system->connections[i].b, arena));
    qsort(words, count, sizeof *words, compare);
    return words;
}

const char *car_difference(const struct system *a, const struct system *b, struct arena *arena)
{
    if (a->part_count != b->part_count || a->connection_count != b->connection_count ||
        a->own_order.count != b->own_order.count)
        return "another number of parts, connections or nipples in the order";
    for (int i = 0; i < a->part_count; i++) {
        int other = system_find(b, a->parts[i].name);
        if (other < 0)
            return text_print(arena, "no %s", a->parts[i].name);
        const char *difference = part_difference(a, &a->parts[i], b, &b->parts[other], arena);
        if (difference)
            return difference;
    }
    const char **in_a = connection_words(a, arena);
    const char **in_b = connection_words(b, arena);
    for (int i = 0; i < a->connection_count; i++)
        if (strcmp(in_a[i], in_b[i]) != 0)
            return text_print(arena, "%s in one, %s in the other", in_a[i], in_b[i]);
    for (size_t i = 0; i < a->own_order.count; i++)
        if (strcmp(a->parts[a->own_order.items[i].part].name,
                   b->parts[b->own_order.items[i].part].name) != 0 ||
            a->own_order.items[i].index != b->own_order.items[i].index)
            return "another bleed order";
    return NULL;
}
