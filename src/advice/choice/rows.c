#include "advice/choice/rows.h"

#include <math.h>
#include <string.h>

enum { CELLS = 32 };
#define NARROW 1e-8 /* N: nearer than that it is a knee, or a jump */
#define OFF    1e-3 /* Pa off the straight line that do not count */

int rows_column(struct rows *rows, const struct reduced_force *force)
{
    for (int c = 0; c < rows->column_count; c++)
        if (rows->columns[c].stretch == force->stretch &&
            rows->columns[c].threshold == force->threshold)
            return c;
    if (rows->column_count == ROWS_COLUMNS || force->stretch < 0) {
        rows->overflow = true;
        return -1;
    }
    rows->columns[rows->column_count] = (struct row_column){force->stretch, force->threshold};
    return rows->column_count++;
}

struct row {
    double effort, beyond[ROWS_COLUMNS];
};

struct finding {
    struct rows *rows;
    const struct reduced *reduced;
    double *pressures;
    struct row kept; /* the last one that is in the rows */
    struct row last; /* the last one found: no row yet, since the line may go on */
    bool any;
};

static struct row row_at(const struct finding *finding, double effort)
{
    struct row row = {.effort = effort};
    const struct rows *rows = finding->rows;
    for (int p = 0; p < finding->reduced->pedal_count; p++)
        reduced_pressures(finding->reduced, p, (struct force){effort}, finding->pressures);
    for (int c = 0; c < rows->column_count; c++)
        row.beyond[c] =
            fmax(finding->pressures[rows->columns[c].stretch] - rows->columns[c].threshold, 0);
    return row;
}

/* Whether a row lies on the line between two others. */
static bool is_between(const struct rows *rows, const struct row *a, const struct row *row,
                       const struct row *b)
{
    double share = (row->effort - a->effort) / (b->effort - a->effort);
    for (int c = 0; c < rows->column_count; c++) {
        double on_line = a->beyond[c] + share * (b->beyond[c] - a->beyond[c]);
        if (!(fabs(row->beyond[c] - on_line) <= OFF))
            return false;
    }
    return true;
}

static void keep(struct finding *finding, const struct row *row)
{
    struct rows *rows = finding->rows;
    if (rows->count == ROWS_MOST) {
        rows->overflow = true;
        return;
    }
    rows->effort[rows->count] = row->effort;
    memcpy(rows->beyond[rows->count++], row->beyond, sizeof row->beyond);
    finding->kept = *row;
}

/* The next row by effort; the one before it stays only where the line bends there. */
static void take(struct finding *finding, const struct row *row)
{
    if (finding->any && !is_between(finding->rows, &finding->kept, &finding->last, row))
        keep(finding, &finding->last);
    finding->last = *row;
    finding->any = true;
}

/* Whether the line from one row to another goes straight; also gives the row in the middle. */
static bool is_straight(const struct finding *finding, const struct row *a, const struct row *b,
                        struct row *middle)
{
    static const double shares[] = {0.5, 0.29289, 0.70711};
    for (int i = 0; i < 3; i++) {
        struct row tried = row_at(finding, a->effort + shares[i] * (b->effort - a->effort));
        if (i == 0)
            *middle = tried;
        if (!is_between(finding->rows, a, &tried, b))
            return false;
    }
    return true;
}

/* Where the lines from both ends meet, in the column that is farthest off in the middle; NaN where
 * they do not. */
static double meeting(const struct finding *finding, const struct row *a, const struct row *middle,
                      const struct row *b)
{
    double width = b->effort - a->effort, step = 1e-3 * width, most = 0;
    int column = 0;
    for (int c = 0; c < finding->rows->column_count; c++) {
        double off = fabs(middle->beyond[c] - (a->beyond[c] + b->beyond[c]) / 2);
        if (off > most) {
            most = off;
            column = c;
        }
    }
    struct row behind = row_at(finding, a->effort + step);
    struct row before = row_at(finding, b->effort - step);
    double rise_a = (behind.beyond[column] - a->beyond[column]) / step;
    double rise_b = (b->beyond[column] - before.beyond[column]) / step;
    double bend = rise_a - rise_b;
    if (bend == 0)
        return NAN; /* side by side they never meet */
    return a->effort + (b->beyond[column] - a->beyond[column] - rise_b * width) / bend;
}

static void split(struct finding *finding, const struct row *a, const struct row *b)
{
    struct row middle;
    if (b->effort - a->effort < NARROW || is_straight(finding, a, b, &middle)) {
        take(finding, b);
        return;
    }
    double guess = meeting(finding, a, &middle, b);
    if (guess > a->effort && guess < b->effort) {
        struct row knee = row_at(finding, guess), any;
        if (is_straight(finding, a, &knee, &any) && is_straight(finding, &knee, b, &any)) {
            take(finding, &knee);
            take(finding, b);
            return;
        }
    }
    split(finding, a, &middle);
    split(finding, &middle, b);
}

void rows_fill(struct rows *rows, const struct reduced *reduced, double *pressures)
{
    struct finding finding = {.rows = rows, .reduced = reduced, .pressures = pressures};
    rows->count = 0;
    struct row a = row_at(&finding, 0);
    keep(&finding, &a);
    for (int cell = 1; cell <= CELLS; cell++) {
        struct row b = row_at(&finding, MOST_EFFORT * cell / CELLS);
        split(&finding, &a, &b);
        a = b;
    }
    keep(&finding, &finding.last);
}
