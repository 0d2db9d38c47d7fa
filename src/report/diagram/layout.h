#ifndef FIRMPEDAL_REPORT_DIAGRAM_LAYOUT_H
#define FIRMPEDAL_REPORT_DIAGRAM_LAYOUT_H

#include <stdbool.h>

#include "advice/result.h"
#include "report/diagram/route.h"
#include "report/paint/sketch.h"

/* The plan view of a car's wet side as a value: where symbols stand, how pipes and hoses run, where
 * labels are, in millimetres on paper. The front is at the top. It follows from the network alone:
 * names and the order of parts change nothing, and sides changed over mirror it.
 *
 * Symbols and ways are found with the driver on the right and mirrored at the end where the driver
 * sits on the left. */

/* The finest drawing whose hoses still pass each other. */
#define GRID_STEP 2.5 /* mm */
/* The paper of a diagram alone; the sheet asks for its own. */
#define LAYOUT_WIDTH     180.0
#define LAYOUT_LEAST     165.0 /* high; more where a car needs it */
#define LAYOUT_HIGHEST   245.0
#define LAYOUT_BODY_EDGE 13.0 /* mm from the paper's edge to the side of the body */

/* Circuits that can be told apart without colour: a dash for each. */
enum { MOST_CIRCUITS = 8 };
/* Names and letters that are looked for room for. */
enum { MOST_NAMES = 60, MOST_LETTERS = 120 };

struct symbol {
    int part;
    struct spot centre; /* driver on the right */
    int half_width, half_height;
    int ways;          /* pipes and hoses that end here */
    bool flow_forward; /* a valve whose outlet faces the front */
    int before;        /* a valve's: the symbol that its pipe comes from, -1 */
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

/* What a hose's tag says. */
enum tag {
    TAG_NONE,
    TAG_NEW,     /* renewed in this work */
    TAG_GOOD,    /* not old: its year */
    TAG_OLD,     /* with its year */
    TAG_UNDATED, /* nobody knows how old */
    TAG_MISSING,
    TAG_ACCEPTED /* a hard pipe where a hose belongs */
};

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
    struct lines lines; /* the name as it is broken */
    const char *data;   /* what stands below the name, or NULL */
    struct lines data_lines;
    enum tag tag;
    const char *tag_words;
    const char *letter; /* of a joint of the plan; then it says nothing else */
    struct box target;  /* what it names */
    struct box box;
    bool leader;  /* a thin line leads to what it names */
    bool crosses; /* and cannot but cross something; or there is no place at all */
    struct point leader_from, leader_to;
};

/* Where two ways cross: the one drawn later breaks the other. */
struct crossing {
    struct point at;
    int over;     /* chain */
    bool upright; /* it runs up and down */
};

/* An axle of the car: at which end, and where its grid line is. */
struct drawn_axle {
    enum axle axle;
    int line;
};

struct layout {
    struct arena *arena;
    const struct result *result;
    const struct system *system;
    const struct network *network;
    double width, height; /* mm of paper */
    int columns, rows;    /* of the grid on it */
    int room;             /* grid steps around parts, where there are as many */
    bool motorcycle;
    bool mirrored;
    struct drawn_axle axles[4]; /* from the front */
    int axle_count;
    int bulkhead;
    struct box engine;  /* on paper */
    struct box gearbox; /* empty when the engine stands apart */
    struct point wheel; /* middle of a car's steering wheel */
    struct symbol *symbols;
    int symbol_count;
    int *symbol_of; /* by part, -1 */
    struct chain *chains;
    int chain_count;
    int unrouted;         /* ways for which there was no room */
    int name_count;       /* parts, hoses and feeds to be named */
    int homeless;         /* a part for which there was none, -1 */
    const char *nameless; /* what a label would have said for which there was none; NULL */
    int crowded;          /* labels whose lines could not but cross something */
    struct feed *feeds;
    int feed_count;
    struct nipple_mark *nipples;
    int nipple_count;
    struct label *labels;
    int label_count;
    struct box *reserved; /* mm, driver on the right: kept free for names while ways are laid */
    int reserved_count;
    int reserved_at_first; /* the rest was found to be needed */
    struct crossing *crossings;
    int crossing_count;
    int *rank; /* by circuit: 0 first; decides its dash and ink */
};

/* The car laid out on paper of a size.
 *
 *   width, height   mm, at least 170 and 120; rounded down to whole grid steps */
struct layout *layout_on(const struct result *result, const struct ruler *ruler,
                         struct arena *arena, double width, double height);
/* As low as the car allows: from `least` mm high in steps up to `most`, the first that can be drawn
 * and where no label's line crosses anything; where there is none, the one with fewest such lines.
 */
struct layout *layout_within(const struct result *result, const struct ruler *ruler,
                             struct arena *arena, double width, double least, double most);
/* On the paper of a diagram alone. */
struct layout *layout_of(const struct result *result, const struct ruler *ruler,
                         struct arena *arena);

/* Why the car cannot be drawn, with the part or run that found no room; NULL when it can. What is
 * not whole is not drawn: a plan that leaves out a pipe misleads. */
const char *layout_refusal(const struct layout *layout);

/* What is drawn, as far as it can lie on something else: boxes, and lines. */
enum thing_kind {
    THING_SYMBOL,
    THING_ROD, /* the push rods between a pedal and what it works */
    THING_NIPPLE,
    THING_LABEL,
    THING_WAY,    /* a leg of a pipe or hose */
    THING_FEED,   /* from a reservoir, or a vacuum hose */
    THING_LEADER, /* the thin line of a label */
    THING_COUNT
};

/* Things that lie on each other and should not: any boxes; lines through boxes they do not belong
 * to; lines that meet otherwise than crossing at right angles; leaders over any line. */
struct overlap {
    const char *a, *b;
    enum thing_kind a_kind, b_kind;
    struct box first, second;
};
struct overlaps {
    struct overlap *items;
    size_t count;
    size_t capacity;
};
struct overlaps layout_overlaps(const struct layout *layout, struct arena *arena);

#endif
