#ifndef FIRMPEDAL_REPORT_SIDES_SIDE_H
#define FIRMPEDAL_REPORT_SIDES_SIDE_H

#include "report/sides/sides.h"

/* The side that is being filled, from the top down; for the files of this folder. */

struct side_list {
    struct sketch *items; /* their titles are what each side is: "record" */
    size_t count;
    size_t capacity;
};

struct side {
    struct arena *arena;
    const struct ruler *ruler;
    const struct side_frame *frame;
    const struct side_pictures *pictures;
    struct side_list sides;
    const char *kind;     /* of this side */
    double width, height; /* of the paper */
    double y;             /* where the next thing comes */
    double x;             /* where the next box to tick comes on this line; the left: none begun */
    double size;          /* of plain words, points */
    bool measuring;       /* nothing is drawn, no side ends */
};

#define SIDE_MARGIN  10.0
#define SIDE_BOX     5.0 /* to tick; 4 mm where the words are small */
#define SIDE_WRITTEN 4.2 /* from the top of a row to its line to write on */
#define SIDE_LEAST   8.0 /* points: nothing is smaller */

double side_left(void);
double side_right(const struct side *side);
double side_width(const struct side *side);
/* What is left on this side below y. */
double side_over(const struct side *side);
double side_box(const struct side *side);

struct font side_font(const struct side *side, enum tone tone);
struct font side_small(void);
/* Lines of a font apart, mm. */
double side_line(struct font font);

void side_turn(struct side *side);
/* Goes on to a new side unless so much is left on this one; what is higher than a side goes where
 * it stands. */
void side_need(struct side *side, double height);

/* Words in lines from x, no wider than width, from y down. Gives what is below them. Draws nothing
 * while measuring. */
double side_words(struct side *side, double x, double y, double width, const char *words,
                  struct font font);
/* The same in the middle of it, right of it. */
double side_words_aligned(struct side *side, double x, double y, double width, const char *words,
                          struct font font, enum align align);
/* How high such words are. */
double side_words_height(const struct side *side, double width, const char *words,
                         struct font font);
void side_one_line(struct side *side, double x, double y, const char *words, struct font font,
                   enum align align);
void side_rule(struct side *side, double left, double right, double y, double thick);
/* A box to tick; ticked where it is done. */
void side_tick_box(struct side *side, double x, double y, bool done);
/* "gap ______": small words, then a line to write on up to right. */
void side_blank(struct side *side, double x, double right, double y, const char *words);
/* A tag with a signal word, filled where it is grave; gives its width. */
double side_tag(struct side *side, double x, double y, const char *word, bool filled);

/* A block, below all that is there. */
void side_put_block(struct side *side, const struct block *block);
/* How high a block will be. */
double side_block_height(const struct side *side, const struct block *block);
/* Ends a line of boxes that was begun. */
void side_end_line(struct side *side);

void side_put_table(struct side *side, const struct table *table, double indent);

#endif
