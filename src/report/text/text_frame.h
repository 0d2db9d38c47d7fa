#ifndef FIRMPEDAL_REPORT_TEXT_TEXT_FRAME_H
#define FIRMPEDAL_REPORT_TEXT_TEXT_FRAME_H

#include "advice/result.h"
#include "base/text.h"
#include "report/words/notes.h"

/* What all text reports share: width, title, headings, the closing sentence. */
enum { FRAME_WIDTH = 78 };

/* The title and the file. */
void frame_car(struct text *into, const struct result *result);
/* A line for each work file laid over it, then the notes on the car and on works. */
void frame_works(struct text *into, const struct result *result);
/* Both. */
void frame_title(struct text *into, const struct result *result);
/* A note with what it is of. */
void frame_note(struct text *into, const struct note *note);
/* A blank line, the heading, and a line under it. */
void frame_heading(struct text *into, const char *heading);
/* A numbered step of a list: words wrapped beside the number, then why (once for all steps of a
 * row), its boxes, and what to write down. */
void frame_step(struct text *into, const struct result *result, const struct steps *steps,
                size_t at);
/* The cautions of a time that apply to this car. */
void frame_unsettled(struct text *into, const struct result *result);
void frame_cautions(struct text *into, const struct result *result, enum caution_when when);
/* A line of a list under a step: a label, then words wrapped beside it. */
void frame_line(struct text *into, const char *label, const char *words);
/* The car's own manual, local rules and licensed inspection come first. */
void frame_deference(struct text *into);

#endif
