#ifndef FIRMPEDAL_REPORT_SHEET_PARTS_OF_SHEET_H
#define FIRMPEDAL_REPORT_SHEET_PARTS_OF_SHEET_H

#include "advice/result.h"
#include "report/document/document.h"
#include "report/sheet/sheet.h"

/* The sheet as a document, in the order in which its sides are used. */

/* What is taken to the car: the worst cautions, what must not be forgotten, the diagram, then every
 * step up to the tests, with joints, parts and nipples as tables. */
void sheet_to_the_car(struct document *into, const struct result *result);
/* What can be read at the car, expected beside a line to write on; what to measure first; where the
 * pedal does not come firm, as far as there is room. */
void sheet_readings(struct document *into, const struct result *result);
/* What stays with the car: done, left undone, hoses, tests, signatures, drive, dates. */
void sheet_record(struct document *into, const struct result *result);
/* What is looked up at a desk. */
void sheet_annexes(struct document *into, const struct sheet_order *order);

/* A row of boxes for the steps of some phases that stand in no table; false: there are none. */
bool sheet_ticks(struct document *into, const struct result *result, enum step_phase first,
                 enum step_phase last, const char *head);
/* "20 November 2026" */
const char *sheet_date(struct arena *arena, struct date date);

#endif
