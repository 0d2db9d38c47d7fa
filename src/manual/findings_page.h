#ifndef FIRMPEDAL_MANUAL_FINDINGS_PAGE_H
#define FIRMPEDAL_MANUAL_FINDINGS_PAGE_H

#include <stdbool.h>

#include "base/text.h"

/* docs/findings.md, printed from the tables of checks, limits, figures, reasons and cautions. */
void findings_page(struct text *into);

/* Explains a finding, figure, limit, reason or step by its id, from the same tables. false when
 * there is none of that id; nothing is added then. */
bool findings_explain(struct text *into, const char *id);

/* All ids that findings_explain knows, for the nearest name. Lives in the text's arena. */
const char *const *findings_ids(struct arena *arena, size_t *count);

#endif
