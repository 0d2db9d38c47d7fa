#ifndef FIRMPEDAL_REPORT_DIAGRAM_ROUTE_H
#define FIRMPEDAL_REPORT_DIAGRAM_ROUTE_H

#include <stdbool.h>

#include "base/arena.h"

/* Finds ways for pipes on a grid, at right angles, so that no two lie on top of each other. Two
 * ways may cross, each straight on. */

struct spot {
    int x, y; /* grid lines */
};
enum heading { HEADING_RIGHT, HEADING_DOWN, HEADING_LEFT, HEADING_UP, HEADING_COUNT };
struct spot spot_next(struct spot spot, enum heading heading);
enum heading heading_back(enum heading heading);

/* Where a way may leave or reach a symbol, and the heading away from it. */
struct dock {
    struct spot spot;
    enum heading heading;
};

struct way {
    struct spot *spots; /* every grid point on the way, ends included */
    int count;          /* 0: none was found */
};

struct grid {
    struct arena *arena;
    int width, height;       /* points are 0..width, 0..height */
    int floor;               /* beyond this line from above every step costs more */
    unsigned char *blocked;  /* by point: a symbol */
    unsigned char *dear;     /* by point: extra cost of going there */
    unsigned char *across;   /* by point: a way passes here from side to side */
    unsigned char *along;    /* by point: a way passes here up and down */
    unsigned char *corner;   /* by point: a way turns or ends here */
    unsigned char *taken[2]; /* by point: the line to the right of it, the line below it */
    struct search *search;   /* room that every search uses again */
};

struct grid *grid_create(struct arena *arena, int width, int height);
/* Marks all points of a rectangle, its rim included. */
void grid_block(struct grid *grid, struct spot from, struct spot to);
void grid_make_dear(struct grid *grid, struct spot from, struct spot to, int cost);
/* Forgets all ways, keeps the blocks. */
void grid_clear_ways(struct grid *grid);
void grid_take(struct grid *grid, const struct way *way);

/* The cheapest way from any dock of one end to any of the other: short, few bends, few crossings,
 * not close to others. Bounded by the size of the grid. *cost is left alone when there is none. */
struct way route_find(struct grid *grid, const struct dock *from, int from_count,
                      const struct dock *to, int to_count, int *cost);

#endif
