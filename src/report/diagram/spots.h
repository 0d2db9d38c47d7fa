#ifndef FIRMPEDAL_REPORT_DIAGRAM_SPOTS_H
#define FIRMPEDAL_REPORT_DIAGRAM_SPOTS_H

#include "report/diagram/layout.h"

/* Where labels stand: close to what they name, on nothing else, and where they cannot be close,
 * with a thin line to it that crosses nothing. The labels with the fewest free places come first;
 * then each is taken up and looked at again among the others. */

/* What a label may look like: its size, and how much it is disliked for that. */
struct label_form {
    struct lines name, data;
    double width, height; /* mm */
    double dislike;
};
enum { MOST_FORMS = 4, MOST_TARGETS = 12 };

/* A label to be placed. */
struct label_wish {
    struct label *label;
    struct label_form forms[MOST_FORMS];
    int form_count;
    struct box targets[MOST_TARGETS]; /* what it may stand beside: any leg of a hose */
    int target_count;
};

/* Boxes that lie in the way, and boxes that a label rather does not cover. */
struct box_list {
    struct box *items;
    size_t count;
    size_t capacity;
};

/* What could not be had: the last label without a place, -1 when all have one; how many have a line
 * that crosses something. */
struct spots_missed {
    int without, crossing;
};

/* Fills box, leader, name lines and target of every label. */
struct spots_missed spots_find(const struct layout *layout, struct label_wish *wishes, int count,
                               const struct box_list *taken, const struct box_list *faint);

#endif
