#ifndef FIRMPEDAL_INPUT_RUNS_H
#define FIRMPEDAL_INPUT_RUNS_H

#include "input/lines.h"
#include "parts/part.h"

/* The words of a run taken apart; what they name is not looked up here. */

enum item_kind {
    ITEM_PART, /* a part or joint by name, an outlet behind a point perhaps */
    ITEM_PIPE, /* so much pipe */
    ITEM_HOSE  /* so much hose */
};

struct run_item {
    enum item_kind kind;
    struct written words;
    struct written
        length;   /* of pipes and hoses: "2.9 m", "about 2.9 m", "?"; text NULL: not said */
    bool refused; /* it has had its message */
};

struct run {
    struct written name;
    struct run_item *items;
    size_t count;
    size_t capacity;
};

/* Splits a run at its commas. A decimal comma, an empty item or a length of nothing is a message.
 */
struct run run_read(const struct entry *entry, struct input *input);

#endif
