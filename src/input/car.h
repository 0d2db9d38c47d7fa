#ifndef FIRMPEDAL_INPUT_CAR_H
#define FIRMPEDAL_INPUT_CAR_H

#include "input/bind.h"
#include "input/naming.h"
#include "network/system.h"

/* A car while it is being put together from its description. */

/* Many more parts than any road vehicle has. What takes longest, a trace, takes some two seconds
 * for as many; it grows with their square. */
enum { CAR_MOST_PARTS = 300 };

/* A part on the way. Drafts are told by index, which becomes the part's index in the car. */
struct draft {
    struct part part;
    const struct entry **entries; /* by row of key_table(kind): the line that said it, or NULL */
    struct written header;        /* of its section, or the words in a run that made it */
    bool has_section;             /* a section of its own, not only one of both sides */
    bool has_both;                /* a section of both sides */
    bool incomplete;              /* its section has had a message that explains missing keys */
    struct ends ends;             /* pipes and hoses: where its section says that it goes */
    const struct entry *from;
    const struct entry *to;
    bool placed; /* pipes and hoses: stands in a run or between ends */
    struct written placed_at;
    int uses; /* joints: pipes, hoses and parts that lead to it */
};

/* What one section said, before it is laid upon a part (or two). */
struct described {
    const struct section *section;
    struct part part;   /* with what it says, all else blank */
    struct bound bound; /* its keys */
    struct ends ends;
    struct bound where; /* the keys from, to and implied */
    bool incomplete;
};

/* A connection, and the words that made it. */
struct link {
    struct connection connection;
    struct written at;
};

struct car {
    struct input *input;
    struct draft *items;
    size_t count;
    size_t capacity;
    struct roll roll; /* the drafts' names */
    struct described *all_pipes;
    struct described *all_hoses;
    const struct section *runs;
    const struct section *bleed_order;
    struct {
        struct link *items;
        size_t count;
        size_t capacity;
    } links;
    bool full;           /* it has more than CAR_MOST_PARTS, which was said; the rest is not read */
    bool runs_are_whole; /* no line of a run was lost, so that uses can be counted */
};

/* Reads a section's lines by the table of a kind. */
struct described *describe(const struct section *section, enum part_kind kind, struct input *input);

/* Adds a blank part, with what all pipes or all hoses share; its index. use: for hoses;
 * low-pressure ones share dates and states with the others but not sizes. */
int car_add(struct car *car, enum part_kind kind, const char *name, struct written header,
            enum hose_use use);
/* Messages for a name that would not read back as a header or in a run: one with NAME_SIGNS, one
 * that begins like a special section, one that is too long. at: where its words come from. */
void car_check_name(struct car *car, const char *name, struct written at);
/* Lays what a section said upon a part. ORIGIN_GIVEN: it is the part's own section and wins over
 * what several share; ORIGIN_SHARED: one of both sides, which fills what the own one left. */
void car_lay(struct car *car, int part, const struct described *described, enum origin_kind origin);

/* The one part that a name means; -1 with a message when there is none or it means two. */
int car_one(struct car *car, struct written name);
/* Message for a name that means no part. */
void car_unknown(struct car *car, struct written name);

/* Joins two ports; nothing when one of them is no part (-1), which has had its message. */
void car_connect(struct car *car, struct port a, struct port b, struct written at);
/* A joint that springs up from its words; implied: one without a name of its own. Its index. */
int car_spring(struct car *car, const char *name, struct written words, bool implied);
/* A name that is not taken yet: words, or words with the first free number from 2. A joint that has
 * a section but leads nowhere yet is not taken. */
const char *car_free_joint(struct car *car, const char *words);

#endif
