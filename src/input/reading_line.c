#include "input/reading_line.h"

#include <math.h>
#include <string.h>

#include "base/text.h"
#include "input/naming.h"
#include "input/quantity.h"
#include "input/schema.h"
#include "input/value.h"
#include "parts/words.h"

static const struct key effort_key = {
    .name = "the effort behind \"at\"",
    .form = FORM_QUANTITY,
    .dimension = DIMENSION_FORCE,
    .least = 1,
    .most = 2000,
    .usual_least = NAN,
    .usual_most = NAN,
    .assumed = NAN,
    .example = "300 N",
};

static const struct reading_row *find_row(const char *name)
{
    size_t count;
    const struct reading_row *rows = reading_rows(&count);
    for (size_t i = 0; i < count; i++)
        if (row_find(&rows[i].key, 1, name) != NULL)
            return &rows[i];
    return NULL;
}

static void refuse_name(const struct entry *entry, const char *name, const char *of,
                        struct input *input)
{
    size_t count;
    const struct reading_row *rows = reading_rows(&count);
    const char **known = ARENA_ARRAY(input->arena, count, const char *);
    struct text words = text_start(input->arena);
    for (size_t i = 0; i < count; i++) {
        known[i] = rows[i].key.name;
        text_add(&words, "%s%s", i > 0 ? ", " : "", known[i]);
    }
    const char *nearest = text_nearest(name, known, count);
    struct message *message =
        mistake_add(input, MISTAKE_UNKNOWN_KEY, entry->key,
                    "%s is nothing that is read at a car; what can be read: %s", name, words.items);
    if (nearest != NULL && entry->value.text != NULL)
        message->write = text_print(input->arena, "%s%s%s = %s", nearest, of != NULL ? " of " : "",
                                    of != NULL ? of : "", entry->value.text);
}

/* "60 bar at 300 N": takes the effort off the end. */
static bool read_effort(struct written *value, struct taken_reading *into, struct input *input)
{
    const char *at = strstr(value->text, " at ");
    if (at == NULL)
        return true;
    size_t length = (size_t)(at - value->text);
    struct written effort =
        written_part(input->arena, *value, length + 4, strlen(value->text) - length - 4);
    double tolerance;
    if (!into->row->at_effort) {
        mistake_add(input, MISTAKE_MORE_THAN_A_VALUE, effort,
                    "%s hangs on no effort of a brake pedal; leave \"at %s\" away",
                    into->row->key.name, effort.text);
        return false;
    }
    *value = written_part(input->arena, *value, 0, length);
    size_t before = input->messages->count;
    if (quantity_read(&effort_key, effort, &into->effort.n, &tolerance, input))
        return true;
    if (input->messages->count > before)
        input->messages->items[input->messages->count - 1].example = text_print(
            input->arena, "%s = %s at %s", into->row->key.name, value->text, effort_key.example);
    return false;
}

bool reading_line_read(const struct entry *entry, struct taken_reading *into, struct input *input)
{
    struct written value = entry->value;
    if (value.text == NULL || value_is_asked(entry))
        return false;
    *into = (struct taken_reading){
        .effort = {NAN}, .tolerance = NAN, .place = entry->key.place, .line = entry->key.line};
    const char *of = strstr(entry->key.text, " of ");
    const char *name = entry->key.text;
    if (of != NULL) {
        size_t start = (size_t)(of - entry->key.text);
        struct written thing = written_part(input->arena, entry->key, start + 4, strlen(of + 4));
        name = text_copy_part(input->arena, entry->key.text, start);
        into->of = name_tidy(input->arena, thing.text);
        into->of_column = thing.place.column;
    }
    into->row = find_row(name);
    if (into->row == NULL) {
        refuse_name(entry, name, into->of, input);
        return false;
    }
    return read_effort(&value, into, input) &&
           quantity_read(&into->row->key, value, &into->value, &into->tolerance, input);
}

static bool same_effort(struct force a, struct force b)
{
    return (isnan(a.n) && isnan(b.n)) || a.n == b.n;
}

bool reading_line_again(const struct taken_reading *before, const struct taken_reading *reading,
                        const struct entry *entry, struct input *input)
{
    if (before->row != reading->row || !same_effort(before->effort, reading->effort) ||
        !words_same(before->of != NULL ? before->of : "", reading->of != NULL ? reading->of : ""))
        return false;
    mistake_add(input, MISTAKE_DUPLICATE_KEY, entry->key,
                "%s is read twice at the same effort; leave one out", reading->row->key.name)
        ->earlier = before->place;
    return true;
}

/* --- where it was taken ---------------------------------------------------------------------- */

static const char *list_of(const struct reading_places *places, struct arena *arena)
{
    struct text words = text_start(arena);
    for (int i = 0; i < places->count; i++)
        text_add(&words, "%s%s", i > 0 ? ", " : "", places->names[i]);
    return words.items;
}

static struct written where(const struct taken_reading *reading)
{
    struct written at = {reading->of, reading->line, reading->place};
    if (reading->of == NULL)
        at.text = reading->row->key.name;
    else
        at.place.column = reading->of_column;
    return at;
}

static void advise(const struct taken_reading *reading, const char *place, struct message *message,
                   struct input *input)
{
    const char *value = reading->line != NULL ? strchr(reading->line, '=') : NULL;
    if (place != NULL)
        message->write = text_print(input->arena, "%s of %s %s", reading->row->key.name, place,
                                    value != NULL ? value : "=");
}

/* "front" for the front circuit, "pedal" for the brake pedal; words in any order. */
static bool is_called(const char *place, const char *said, struct arena *arena)
{
    return words_same(place, said) || strcmp(name_key(arena, place), name_key(arena, said)) == 0 ||
           words_same(place, text_print(arena, "%s circuit", said));
}

static bool place_unnamed(struct taken_reading *reading, const struct reading_places *places,
                          struct input *input)
{
    if (places->count == 1) {
        reading->of = places->names[0];
        return true;
    }
    advise(reading, places->names[0],
           mistake_add(input, MISTAKE_WHICH_ONE, where(reading), "say of which it was read: %s",
                       list_of(places, input->arena)),
           input);
    return false;
}

bool reading_line_place(struct taken_reading *reading, const struct reading_places *places,
                        struct input *input)
{
    const struct reading_row *row = reading->row;
    if (places->count == 0) {
        mistake_add(input, MISTAKE_UNKNOWN_PART, where(reading),
                    "this car has nothing that a %s can be read of (%s)", row->key.name,
                    reading_of_words(row->of));
        return false;
    }
    if (row->of == READING_OF_CAR) {
        if (reading->of == NULL)
            return true;
        mistake_add(input, MISTAKE_MORE_THAN_A_VALUE, where(reading),
                    "%s is of the whole car; leave \"of %s\" away", row->key.name, reading->of);
        return false;
    }
    if (reading->of == NULL)
        return place_unnamed(reading, places, input);
    for (int i = 0; i < places->count; i++)
        if (is_called(places->names[i], reading->of, input->arena)) {
            reading->of = places->names[i];
            return true;
        }
    const char *nearest = text_nearest(reading->of, places->names, (size_t)places->count);
    advise(reading, nearest != NULL || places->count > 1 ? nearest : places->names[0],
           mistake_add(input, MISTAKE_UNKNOWN_PART, where(reading), "%s is read of %s: %s",
                       row->key.name, reading_of_words(row->of), list_of(places, input->arena)),
           input);
    return false;
}
