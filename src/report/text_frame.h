#ifndef FIRMPEDAL_REPORT_TEXT_FRAME_H
#define FIRMPEDAL_REPORT_TEXT_FRAME_H

#include "advice/result.h"
#include "base/text.h"

/* What all text reports share: width, title, headings, the closing sentence. */
enum { FRAME_WIDTH = 78 };

/* Car, files, works and date. */
void frame_title(struct text *into, const struct result *result);
/* A blank line, the heading, and a line under it. */
void frame_heading(struct text *into, const char *heading);
/* A numbered step: words wrapped beside the number, then why and what to expect. */
void frame_step(struct text *into, const struct result *result, const struct step *step);
/* The car's own manual, local rules and licensed inspection come first. */
void frame_deference(struct text *into);

#endif
