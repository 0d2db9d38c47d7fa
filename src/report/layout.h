#ifndef FIRMPEDAL_REPORT_LAYOUT_H
#define FIRMPEDAL_REPORT_LAYOUT_H

#include <stdbool.h>

#include "advice/result.h"
#include "report/route.h"
#include "report/sketch.h"

/* The plan view of a car's wet side as a value: where symbols stand, how pipes and hoses run, where
 * labels are, in millimetres on paper. The front is at the top. It follows from the network alone:
 * names and the order of parts change nothing, and sides changed over mirror it.
 *
 * Symbols and ways are found with the driver on the right and mirrored at the end where the driver
 * sits on the left. */

enum { GRID_WIDTH = 60, GRID_HEIGHT = 55 };
#define GRID_STEP        3.0 /* mm */
#define LAYOUT_WIDTH     (GRID_WIDTH * GRID_STEP)
#define LAYOUT_HEIGHT    (GRID_HEIGHT * GRID_STEP)
#define LAYOUT_BODY_EDGE (5.2 * GRID_STEP) /* side of the body */

struct symbol {
    int part;
    struct spot centre; /* driver on the right */
    int half_width, half_height;
    int ways;          /* pipes and hoses that end here */
    bool flow_forward; /* a valve whose outlet faces the front */
    /* on paper */
    struct point at;
    struct box box;
    double inward; /* 1 when the car's middle is to the right of it, else -1 */
};

/* A part of a way: a pipe or a hose. */
struct piece {
    int part; /* -1: a direct joint */
    bool hose;
    struct point *points;
    int count;
};

/* A joint with two ends, drawn on the way. */
struct inline_joint {
    int part;
    struct point at;
    bool upright; /* the way runs up and down there */
};

/* A way from one symbol to the next, through joints with two ends. */
struct chain {
    int circuit;  /* -1: nobody feeds it */
    int from, to; /* symbols */
    int from_chamber, to_chamber;
    int *edges;  /* of the network, from the one symbol to the other */
    int *joints; /* parts between them */
    int edge_count;
    struct way way;
    struct point *points; /* corners, on paper */
    int point_count;
    struct piece *pieces;       /* as many as edges */
    struct inline_joint *marks; /* one fewer */
};

enum tag { TAG_NONE, TAG_NEW, TAG_OLD, TAG_UNDATED, TAG_MISSING, TAG_ACCEPTED };

/* Lines that feed a master from its reservoir, and a servo's vacuum hose. */
struct feed {
    int from, to; /* symbols; to -1: a vacuum hose to the engine */
    bool hose;
    struct point a, b;
    enum tag tag; /* of a hose */
};

struct nipple_mark {
    struct nipple nipple;
    int number; /* in bleeding order; 0: stays shut */
    struct point at;
    struct box box;
};

struct label {
    int part;
    const char *name;
    const char *data; /* second line, or NULL */
    enum tag tag;
    struct box target; /* what it names */
    struct box box;
    bool leader; /* a thin line leads to what it names */
    struct point leader_from, leader_to;
};

/* Where two ways cross: the one drawn later breaks the other. */
struct crossing {
    struct point at;
    int over;     /* chain */
    bool upright; /* it runs up and down */
};

struct layout {
    struct arena *arena;
    const struct result *result;
    const struct system *system;
    const struct network *network;
    bool motorcycle;
    bool mirrored;
    int front_axle, rear_axle; /* grid lines */
    int bulkhead;
    struct box engine;  /* on paper */
    struct box gearbox; /* empty when the engine stands apart */
    struct symbol *symbols;
    int symbol_count;
    int *symbol_of; /* by part, -1 */
    struct chain *chains;
    int chain_count;
    int unrouted; /* ways for which there was no room; 0 unless the car is absurd */
    struct feed *feeds;
    int feed_count;
    struct nipple_mark *nipples;
    int nipple_count;
    struct label *labels;
    int label_count;
    struct crossing *crossings;
    int crossing_count;
    int *rank; /* by circuit: 0 first; decides its dash and ink */
};

struct layout *layout_of(const struct result *result, const struct ruler *ruler,
                         struct arena *arena);

/* The word on a hose's tag. */
const char *tag_words(enum tag tag);

/* Boxes that lie on each other and should not: symbols, nipples, labels, and ways below labels or
 * through symbols they do not belong to. */
struct overlap {
    const char *a, *b;
    struct box first, second;
};
struct overlaps {
    struct overlap *items;
    size_t count;
    size_t capacity;
};
struct overlaps layout_overlaps(const struct layout *layout, struct arena *arena);

#endif
