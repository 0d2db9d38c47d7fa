#include "input/reading_line.h"

#include <math.h>
#include <string.h>

#include "base/text.h"
#include "input/naming.h"
#include "input/quantity.h"
#include "units/unit.h"

/* Reads a value of whatever kind its unit is of. */
static struct reading read_any(const char *text, enum dimension *dimension)
{
    *dimension = DIMENSION_LENGTH;
    struct reading reading = unit_read(text, *dimension);
    if (reading.outcome == READING_WRONG_KIND)
        *dimension = reading.other;
    else if (reading.outcome == READING_BARE_NUMBER)
        *dimension = DIMENSION_NUMBER;
    else
        return reading;
    return unit_read(text, *dimension);
}

static void refuse(const struct entry *entry, const struct reading *reading, struct written value,
                   enum dimension dimension, struct input *input)
{
    const char *write = text_print(input->arena, "%s = 66 mm", entry->key.text);
    struct written at = written_part(input->arena, value, reading->start, reading->length);
    if (reading->outcome == READING_NO_NUMBER || reading->outcome == READING_EMPTY)
        mistake_add(input, MISTAKE_NOT_A_NUMBER, value, "a reading is a number with its unit")
            ->write = write;
    else if (reading->outcome == READING_UNKNOWN_UNIT)
        mistake_add(input, MISTAKE_UNKNOWN_UNIT, at, "%s is no unit that is known", at.text)
            ->write = write;
    else
        quantity_refuse(reading, entry->key.text, dimension, value, write, input);
}

static bool read_effort(struct written words, struct force *effort, struct input *input)
{
    struct reading reading = unit_read(words.text, DIMENSION_FORCE);
    if (reading.outcome == READING_FINE) {
        effort->n = reading.value;
        return true;
    }
    quantity_refuse(&reading, "the effort behind \"at\"", DIMENSION_FORCE, words, "at 300 N",
                    input);
    return false;
}

/* The words with hyphens in place of blanks, in small letters, as figures are called. */
static char *figure_id(struct arena *arena, const char *words)
{
    char *id = name_tidy(arena, words);
    for (char *letter = id; *letter; letter++) {
        if (*letter == ' ')
            *letter = '-';
        else if (*letter >= 'A' && *letter <= 'Z')
            *letter = (char)(*letter - 'A' + 'a');
    }
    return id;
}

bool reading_line_read(const struct entry *entry, struct taken_reading *into, struct input *input)
{
    struct arena *arena = input->arena;
    struct written value = entry->value;
    if (!value.text || strcmp(value.text, "?") == 0)
        return false;
    *into = (struct taken_reading){.effort = {NAN}, .place = entry->key.place};
    const char *at = strstr(value.text, " at ");
    if (at) {
        size_t length = (size_t)(at - value.text);
        struct written effort =
            written_part(arena, value, length + 4, strlen(value.text) - length - 4);
        if (!read_effort(effort, &into->effort, input))
            return false;
        value = written_part(arena, value, 0, length);
    }
    struct reading reading = read_any(value.text, &into->dimension);
    if (reading.outcome != READING_FINE) {
        refuse(entry, &reading, value, into->dimension, input);
        return false;
    }
    into->value = reading.value;
    const char *name = name_tidy(arena, entry->key.text);
    const char *of = strstr(name, " of ");
    into->figure = figure_id(arena, of ? text_copy_part(arena, name, (size_t)(of - name)) : name);
    into->of = of ? of + 4 : NULL;
    return true;
}
