#ifndef FIRMPEDAL_INPUT_READING_LINE_H
#define FIRMPEDAL_INPUT_READING_LINE_H

#include "input/lines.h"
#include "network/system.h"

/* Reads a line of [readings]: "line pressure of front circuit = 60 bar at 300 N": its name, its
 * unit and limits, and the effort, by the table of network/reading_rows.h. Of what it is, is left
 * as it was written. false with a message when it cannot be read. */
bool reading_line_read(const struct entry *entry, struct taken_reading *into, struct input *input);

/* The places at which a reading can be taken on this car, by name. */
struct reading_places {
    const char **names;
    int count;
};
/* Finds the place that a reading names among those and puts its full name into the reading; false
 * with a message when it names none of them, or none where there are several. */
bool reading_line_place(struct taken_reading *reading, const struct reading_places *places,
                        struct input *input);

/* The same reading of the same thing at the same effort, twice in one file, with a message. */
bool reading_line_again(const struct taken_reading *before, const struct taken_reading *reading,
                        const struct entry *entry, struct input *input);

#endif
