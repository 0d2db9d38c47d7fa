#ifndef FIRMPEDAL_PARTS_NAMES_H
#define FIRMPEDAL_PARTS_NAMES_H

#include <stddef.h>

/* Several names as they stood in a comma-separated value; part gets the index of the part that a
 * name means once all sections are read (-1: none). Lives in the car's arena. */
struct part_names {
    const char **names;
    int *parts;
    size_t count;
};

#endif
