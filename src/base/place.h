#ifndef FIRMPEDAL_BASE_PLACE_H
#define FIRMPEDAL_BASE_PLACE_H

/* A place in a file that a person wrote. line and column count from 1; 0 means unknown. */
struct place {
    const char *file;
    int line;
    int column;
};

#endif
