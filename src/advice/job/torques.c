#include "advice/job/opening.h"

#include <string.h>

#define MAKERS "makers' workshop texts"
#define CUSTOM "common practice, no source"

/* For a thread and a material alone: figures of several makers whose threads are not named make no
 * range. The car's own maker goes first. */
static const struct torque_row rows[] = {
    {"pipe-nut",
     "an M10 or 3/8 in nut on 4.75 mm steel or copper-nickel pipe",
     {12.0},
     {18.0},
     CUSTOM},
    {"pipe-nut-copper",
     "an M10 or 3/8 in nut on 4.75 mm copper pipe, which more would split",
     {6.0},
     {8.0},
     MAKERS},
    {"banjo", "an M10 or 3/8 in bolt", {20.0}, {35.0}, CUSTOM},
    {"nipple-caliper", "a small nipple", {9.0}, {9.8}, MAKERS},
    {"nipple-cylinder", "a small nipple", {7.0}, {7.0}, MAKERS},
};

const struct torque_row *torque_rows(size_t *count)
{
    *count = sizeof rows / sizeof *rows;
    return rows;
}

const struct torque_row *torque_row(const char *id)
{
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        if (strcmp(rows[i].id, id) == 0) {
            return &rows[i];
        }
    }
    return NULL;
}

void step_torque(struct step *step, const char *row_id)
{
    const struct torque_row *row = torque_row(row_id);
    step->torque = row->least;
    step->torque_most = row->most;
    step->torque_source = row->source;
    step->torque_for = row->words;
}
