#ifndef FIRMPEDAL_NETWORK_SYSTEM_H
#define FIRMPEDAL_NETWORK_SYSTEM_H

#include <stdbool.h>
#include <stddef.h>

#include "base/arena.h"
#include "base/date.h"
#include "base/place.h"
#include "parts/keys/key.h"
#include "network/reading_rows.h"
#include "parts/part.h"

/* All that was described: parts, what is joined to what, a maker's own bleed order, and what work
 * files added. Constant once it is built; nothing here is computed. */

/* An end of a connection: a chamber of a part (end 0 or 1 of a pipe or hose), and the outlet's
 * name as the run gave it ("rear"), or NULL. */
struct port {
    int part;
    int chamber;
    const char *outlet;
};

/* Two ports that stand against each other. Pipes and hoses are parts of their own, so a run
 * "master.rear, 2.9 m pipe, tee" makes two connections: master to pipe end 0, pipe end 1 to tee. */
struct connection {
    struct port a;
    struct port b;
    struct place place;
};

/* A nipple: which part, and which of its nipples (0 first). */
struct nipple {
    int part;
    int index;
};

/* The maker's own bleed order as the description gives it. */
struct own_order {
    struct nipple *items;
    size_t count;
    struct place place; /* line 0 when there is none */
};

/* A reading taken at the car. */
struct taken_reading {
    const struct reading_row *row;
    const char *of;      /* "front circuit", or NULL where it names nothing */
    double value;        /* SI */
    double tolerance;    /* half width, NaN when none was written */
    struct force effort; /* at which it was read; NaN when not said */
    const char *line;    /* as it stands in the file, and where of begins there: for messages */
    int of_column;
    struct date date;
    struct place place;
};

/* One work file, as laid over the car. */
struct work {
    const char *file;
    const char *car;  /* the title that the work file names */
    const char *note; /* free words, or NULL */
    struct date date;
    struct place place;
    int notes_end; /* the line of its last note of what is done, or of their header; 0: none */
};

/* A step that a work file notes as done: the words that name it, as advice calls its steps. */
struct done_note {
    const char *name;
    struct date date;
    const char *words; /* what was read or noted with it, or NULL */
    int work;          /* index of the work that it belongs to */
    struct place place;
};

/* What was done with pipe ends while a union was open. */
enum open_ends {
    OPEN_ENDS_NOT_SAID, /* taken as drained */
    OPEN_ENDS_PLUGGED,  /* at once: only what was off or is new holds air */
    OPEN_ENDS_DRAINED,  /* all that lies behind an open end ran out */
    OPEN_ENDS_BLOWN     /* through: every pipe of an opened circuit is empty */
};

struct system {
    struct arena *arena;
    const char *file;
    struct part *parts;
    int part_count;
    struct connection *connections;
    int connection_count;
    struct own_order own_order;
    /* from work files */
    const struct system *before; /* the car before all work; NULL when there was none */
    struct work *works;
    int work_count;
    struct taken_reading *readings;
    int reading_count;
    struct done_note *notes;
    int note_count;
    bool *ran_dry;      /* by part index: this reservoir ran dry; NULL when none did */
    bool fluid_renewed; /* some work renewed the fluid */
    struct date fluid_renewed_date;
    enum open_ends open_ends; /* as the latest work says */
};

/* The only, or first, part of a kind; -1 when there is none. */
int system_first(const struct system *system, enum part_kind kind);
/* The part with that name (case and blanks do not matter), or -1. */
int system_find(const struct system *system, const char *name);
/* The order in which parts that are alike in all else are named: the front axle, the rear axle,
 * then parts of no axle; on an axle the side away from the driver first (the left one when the
 * driver's side is not said); then by name. Negative, zero, positive. Does not depend on the order
 * of sections. */
int system_compare(const struct system *system, int a, int b);
/* The vehicle's data; a vehicle with nothing said when there is no section. */
const struct vehicle *system_vehicle(const struct system *system);
/* The fluid that a master's reservoir holds: the reservoir's own, else the only one; -1. A master
 * that names no reservoir has that of the other master in its casting, else the only one. */
int system_fluid_of(const struct system *system, int master);
/* A copy that shares names, connections and origins but has parts of its own, so that values can be
 * moved. From the given arena. */
struct system *system_copy(const struct system *system, struct arena *arena);

/* The mount of a part: what it says, else what follows from the vehicle (a brake's from its axle's
 * kind; pedal, servo, master and reservoir from the body, or the handlebar of a motorcycle's hand
 * lever; a clutch slave from the engine). A front brake sits on its wheel even on a beam axle,
 * since it is steered; a rear brake on a live or dead axle or a swinging arm sits on that.
 * MOUNT_UNKNOWN when neither, as for joints, valves, pipes and hoses. Never from a hose. */
enum mount system_mount(const struct system *system, int part);

#endif
