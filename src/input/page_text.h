#ifndef FIRMPEDAL_INPUT_PAGE_TEXT_H
#define FIRMPEDAL_INPUT_PAGE_TEXT_H

/* The parts of docs/input.md that no table holds: how a file is written, the runs, the special
 * sections. In Markdown. */
extern const char page_opening[]; /* before the sections of the kinds */
extern const char page_runs[];    /* behind them: shared sections, runs, bleed order */
extern const char page_work[];    /* work files */

#endif
