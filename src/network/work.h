#ifndef FIRMPEDAL_NETWORK_WORK_H
#define FIRMPEDAL_NETWORK_WORK_H

#include "network/system.h"

/* What a work file said, before it is laid over a car. Parts by index in the system it is for. */
enum work_deed { DEED_OPENED, DEED_RENEWED, DEED_REPLACED, DEED_FOUND, DEED_RAN_DRY };
struct work_value {
    const struct key *key;
    double number; /* quantities, choices, counts */
    struct bores bores;
    const char *text;
    struct date date;
    struct origin origin; /* kind ORIGIN_WORK */
};
struct work_item {
    enum work_deed deed;
    int part;
    struct place place;
    struct work_value *values; /* for DEED_REPLACED: new data by key; for DEED_FOUND at a fluid:
                                  its key "found" */
    size_t value_count;
    struct found found; /* for DEED_FOUND */
};
struct work_file {
    struct work head;
    struct work_item *items;
    size_t count;
    size_t capacity;
    bool fluid_renewed;
    enum open_ends open_ends;
    struct taken_reading *readings;
    size_t reading_count;
    struct done_note *notes;
    size_t note_count;
};

/* Lays work files, oldest first whatever their order here (files of one day in the order given),
 * over a car and gives the car as it then stands; the system given is not touched. Renewing or
 * replacing counts as opening. A renewed pipe, hose or fluid takes the work's date as its date
 * renewed; all these origins point into the work file.
 *
 * What was found when a part was renewed stays beside the renewal of the same file; a renewal in a
 * later file clears it, and something found later than a renewal takes the mark of that renewal
 * away (its dates stay). Opened stays, so that a bleed plan over several files leaves out nothing.
 */
struct system *work_apply(const struct system *system, const struct work_file *files, size_t count,
                          struct arena *arena);

#endif
