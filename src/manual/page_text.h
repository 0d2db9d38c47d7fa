#ifndef FIRMPEDAL_MANUAL_PAGE_TEXT_H
#define FIRMPEDAL_MANUAL_PAGE_TEXT_H

/* The parts of docs/input.md that no table holds: how a file is written, the runs, the special
 * sections. In Markdown. */
extern const char page_opening[]; /* before the sections of the kinds */
extern const char page_runs[];    /* behind them, before the special sections of a description */
extern const char page_work[];    /* before those of work files */

#endif
