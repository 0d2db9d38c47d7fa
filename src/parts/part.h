#ifndef FIRMPEDAL_PARTS_PART_H
#define FIRMPEDAL_PARTS_PART_H

#include <stdbool.h>
#include <stddef.h>

#include "base/arena.h"
#include "base/date.h"
#include "base/place.h"
#include "parts/disc_brake.h"
#include "parts/drum_brake.h"
#include "parts/clutch.h"
#include "parts/fluid.h"
#include "parts/hose.h"
#include "parts/joint.h"
#include "parts/master.h"
#include "parts/parking_brake.h"
#include "parts/pedal.h"
#include "parts/pipe.h"
#include "parts/reservoir.h"
#include "parts/servo.h"
#include "parts/valve.h"
#include "parts/vehicle.h"
#include "units/quantity.h"

enum part_kind {
#define KIND(symbol, word, member, help) KIND_##symbol,
#include "parts/kinds.def"
#undef KIND
    KIND_COUNT
};

enum side { SIDE_NONE, SIDE_LEFT, SIDE_RIGHT };
enum axle { AXLE_NONE, AXLE_FRONT, AXLE_REAR };

/* What a part is bolted to. Which of them move against each other is a table in network/mounts. */
enum mount {
    MOUNT_UNKNOWN,
    MOUNT_BODY,             /* body, chassis, frame, bulkhead */
    MOUNT_ENGINE,           /* engine and gearbox, which move as one */
    MOUNT_FRONT_AXLE,       /* a beam front axle */
    MOUNT_REAR_AXLE,        /* a live or dead rear axle, a swinging arm */
    MOUNT_FRONT_LEFT_WHEEL, /* what turns and springs with that wheel */
    MOUNT_FRONT_RIGHT_WHEEL,
    MOUNT_REAR_LEFT_WHEEL,
    MOUNT_REAR_RIGHT_WHEEL,
    MOUNT_HANDLEBAR, /* motorcycle: handlebar and upper fork, turning against the frame */
    MOUNT_FORK,      /* motorcycle: the sliding part of the front fork */
    MOUNT_COUNT
};

/* What every part with fluid in it may say. */
struct fitted {
    enum mount on;              /* key "on" */
    struct length height;       /* key "height": of the part above the ground, optional */
    struct volume chamber;      /* key "chamber": volume of fluid in it; else computed */
    int nipples;                /* key "nipples": how many bleed nipples; -1 unknown */
    struct length nipple_below; /* key "nipple below top": of its chamber, 0 = at the top */
    const char *nipple_names;   /* key "nipple names": "outer, inner", in any order */
    const char *rigid_accepted; /* key "hard pipe accepted": reason why no hose leads to it */
    const char *note;           /* key "note": free words, printed on the sheet */
};

/* Conditions found at the bench, from work files. */
enum found_pistons { PISTONS_NOT_SAID, PISTONS_FREE, PISTONS_STUCK };
enum found_bore { BORE_NOT_SAID, BORE_CLEAN, BORE_STAINED, BORE_PITTED };
enum found_nipple { NIPPLE_NOT_SAID, NIPPLE_SOUND, NIPPLE_SEIZED, NIPPLE_SHEARED };
enum found_leak { LEAK_NOT_SAID, LEAK_DRY, LEAK_WEEPING };
struct found {
    enum found_pistons pistons;
    enum found_bore bore;
    enum found_nipple nipple;
    enum found_leak leak;
};

/* What the work did to a part. */
struct done {
    bool opened;        /* a union of it was undone */
    bool renewed;       /* a new one of the same data, or rebuilt */
    bool replaced;      /* by one with other data */
    struct date date;   /* of the latest of these */
    struct place place; /* the line of the work file */
};

/* Where a value comes from. */
enum origin_kind {
    ORIGIN_NONE,    /* not said and nothing assumed */
    ORIGIN_GIVEN,   /* written in the description */
    ORIGIN_SHARED,  /* written once for all pipes, all hoses or both sides */
    ORIGIN_WORK,    /* written in a work file */
    ORIGIN_ASSUMED, /* the typical value of the key's row */
    ORIGIN_DERIVED, /* follows from other things described (a mount from the axle's kind) */
    ORIGIN_ASKED    /* written as ?, so it goes on the measuring list; counts as not said */
};
struct origin {
    enum origin_kind kind;
    struct place place; /* of the value */
    const char *text;   /* as written, or NULL */
    double tolerance;   /* SI, NaN when none was written */
};

union part_data {
#define KIND(symbol, word, member, help) struct member member;
#include "parts/kinds.def"
#undef KIND
};

/* One part of the car. A plain value: a copy of it is another part with the same data. */
struct part {
    enum part_kind kind;
    const char *name; /* "rear left drum": unique in the car, as runs and reports use it */
    enum side side;
    enum axle axle;
    struct place place; /* of the section, or of the words in a run, that made it */
    bool from_run;      /* sprang from words in a run */
    struct fitted fitted;
    struct found found;
    struct done done;
    union part_data as;
    struct origin *origins; /* one for each row of key_table(kind); owned by the car's arena */
};

/* The word for a kind, and its one line of help. */
const char *kind_word(enum part_kind kind);
const char *kind_help(enum part_kind kind);
/* The kind that a section header's words name by their last or first word or two ("rear left
 * drum", "hand brake", "clutch booster" is a servo...). The end counts before the beginning, and
 * of several the longest wording. false when none does. */
bool kind_of_words(const char *words, enum part_kind *kind);
/* Takes from a part's name what its words say and nothing else did, as ORIGIN_DERIVED: axle and
 * side of a brake, foot or hand of a pedal, type of a joint. */
void part_read_name(struct part *part);
/* All words that name kinds, for "did you mean"; count of them. */
const char *const *kind_all_words(size_t *count);

const char *side_word(enum side side);     /* "left", "right", "" */
const char *axle_word(enum axle axle);     /* "front", "rear", "" */
const char *mount_words(enum mount mount); /* "the body", "the rear axle", ... */

/* Whether parts of this kind hold fluid under pedal pressure or carry it. */
bool kind_is_wet(enum part_kind kind);
/* Whether it is a brake at a wheel (disc, drum). */
bool kind_is_brake(enum part_kind kind);

/* How many separate fluid chambers a part has: master 1 or 2, servo 2 when remote (in, out),
 * valve 2 or 4 (in, out, second in, second out), disc 1 or 2, others 1; 0 for dry kinds. Pipes
 * and hoses have 2 ends. */
int part_chambers(const struct part *part);
/* The words for a chamber: "in", "out", "primary", "secondary", "inlet 2"... */
const char *part_chamber_word(const struct part *part, int chamber);

/* Volume of fluid at rest in a part's chamber: given by key "chamber", else computed from bore and
 * depth where the kind allows, else a usual figure of the kind. Of a pipe or hose it is the whole
 * inside, whichever end is asked for.
 * Sets *assumed when a usual depth or figure is used. m3; NaN when unknown. */
struct volume part_chamber_volume(const struct part *part, int chamber, bool *assumed);

#endif
