#ifndef FIRMPEDAL_INPUT_PORTS_H
#define FIRMPEDAL_INPUT_PORTS_H

#include "input/car.h"

/* Which chamber of a part a run means: "brake master.front", "warning valve.2", "load valve". */

/* A name with what may stand behind its point. */
struct port_name {
    struct written name;
    struct written outlet; /* text NULL when there is none */
    int parts[2];          /* the parts of that name: one, or left and right */
    int count;             /* 0 when there is none */
};
struct port_name port_name_find(const struct car *car, struct written words);

/* Whether a run leads to the part or away from it: valves and remote servos have one of each. */
enum way { WAY_TO, WAY_FROM };

/* The port of one of the parts that a name means. part -1 with a message when it has none or the
 * name leaves open which. */
struct port port_find(struct car *car, const struct port_name *name, int which, enum way way);

#endif
