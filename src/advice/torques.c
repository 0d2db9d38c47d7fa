#include "advice/opening.h"

#include <string.h>

#define MAKER "maker's workshop text, make withheld"

/* The least and most over the makers that were read; a maker's own figure goes first. */
static const struct torque_row rows[] = {
    {"pipe-nut", "brake pipe nut, 10 mm or 3/8 in thread", {13.0}, {15.0}, MAKER},
    {"pipe-nut-12", "brake pipe nut, 12 mm thread", {22.0}, {22.0}, MAKER},
    {"hose-in-caliper", "hose screwed into a caliper", {18.0}, {18.0}, MAKER},
    {"banjo", "banjo bolt of a hose at a caliper", {34.0}, {54.0}, MAKER},
    {"nipple-caliper", "bleed nipple of a caliper", {9.0}, {9.8}, MAKER},
    {"nipple-cylinder", "bleed nipple of a wheel cylinder or clutch slave", {7.0}, {7.0}, MAKER},
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
}
