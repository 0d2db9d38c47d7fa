#ifndef FIRMPEDAL_PURGE_SLUGS_H
#define FIRMPEDAL_PURGE_SLUGS_H

#include <stdbool.h>

/* A queue of slugs: pieces of air and of fluid that stand one behind the other. Slugs of one kind
 * never stand next to each other, and a queue that has more than MOST_SLUGS merges the smallest
 * with its neighbours but one. Air is counted at one atmosphere. Volumes m3. */

enum { MOST_SLUGS = 24, SLUG_ROOM = 2 * MOST_SLUGS + 4 };

struct slug {
    double volume;
    bool air;
};
struct slugs {
    int count;
    struct slug at[SLUG_ROOM]; /* the far end first */
};

/* Puts a piece on the near end, or on the far end. */
void slugs_add_near(struct slugs *slugs, double volume, bool air);
void slugs_add_far(struct slugs *slugs, double volume, bool air);
/* Takes a volume off the far end, or the near end, and appends what comes to a list, first out
 * first. What is short, by rounding, is not taken. */
void slugs_take_far(struct slugs *slugs, double volume, struct slugs *list);
void slugs_take_near(struct slugs *slugs, double volume, struct slugs *list);
/* Each slug of air changes places with the fluid that stands on its far side: by share times the
 * volume behind it, at most share times moved, and by rise besides; below 0 the near side. */
void slugs_drift(struct slugs *slugs, double moved, double share, double rise);
/* The other end first. */
void slugs_turn(struct slugs *slugs);
/* Merges down to MOST_SLUGS. */
void slugs_limit(struct slugs *slugs);
double slugs_air(const struct slugs *slugs);
double slugs_volume(const struct slugs *slugs);

#endif
