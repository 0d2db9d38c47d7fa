#ifndef FIRMPEDAL_REPORT_WORDS_NOTES_H
#define FIRMPEDAL_REPORT_WORDS_NOTES_H

#include "network/system.h"

/* A note: free words of the car, of a work file or of a part. */
struct note {
    const char *of; /* "the car", "the work of 2026-11-20", "rear left drum, rear right drum" */
    const char *words;
    bool of_part;
};

/* All notes: the car's, those of the work files, those of the parts, where one that several parts
 * share is given once. From the arena; gives how many. */
size_t notes_of(const struct system *system, struct arena *arena, struct note **notes);

#endif
