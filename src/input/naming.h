#ifndef FIRMPEDAL_INPUT_NAMING_H
#define FIRMPEDAL_INPUT_NAMING_H

#include <stdbool.h>

#include "base/arena.h"
#include "parts/part.h"

/* Names of parts as people write them: sets of words, in any order and case, one of them (or two)
 * the word of a kind; a number may follow ("rear feed pipe 2"). */

/* Signs that cannot stand in a name, since a header, a list or a line would end or begin there. */
#define NAME_SIGNS "[]=,;#\""
/* The name without them. */
char *name_without_signs(struct arena *arena, const char *name);

/* The words of a name with single blanks between them. */
char *name_tidy(struct arena *arena, const char *name);

/* The name in the one form in which names are compared: words sorted, the kind's word replaced by
 * the first of its kind. The words of joints stay, since a front tee is no front union. */
char *name_key(struct arena *arena, const char *name);

/* The kind that the name ends (or begins) with. */
bool name_kind(struct arena *arena, const char *name, enum part_kind *kind);

/* The name without the kind's word and the number: "rear feed" of "rear feed pipe 2". */
char *name_stem(struct arena *arena, const char *name);

/* Whether left or right, front or rear is among its words. */
enum side name_side(struct arena *arena, const char *name);
enum axle name_axle(struct arena *arena, const char *name);

/* The name with a side before the word of its kind: "rear left drum". */
char *name_with_side(struct arena *arena, const char *name, enum side side);

/* The names of many parts, to look them up. */
struct roll {
    struct arena *arena;
    struct roll_name {
        const char *name;
        const char *key;
    } * items;
    size_t count;
    size_t capacity;
};
struct roll roll_start(struct arena *arena);
/* Adds the next part's name; its index is the number of names before it. */
void roll_add(struct roll *roll, const char *name);
/* Index of the part that a name means, -1 when there is none. */
int roll_find(const struct roll *roll, const char *name);
/* The parts that a name means: one; or left and right of a brake when it gives no side ("front
 * disc", "front discs"). Gives how many, 0 to 2. */
int roll_find_sides(const struct roll *roll, const char *name, int found[static 2]);
/* The same for a list, where the plural of a kind's word means a group: "front hoses" are all hoses
 * whose name has the word front, "rear brakes" and "rear cylinders" discs and drums. found is set
 * to them, from the arena; gives how many. */
int roll_find_group(const struct roll *roll, const char *name, int **found);
/* The name nearest to one that is not there, or NULL; both sides' names count as known. */
const char *roll_nearest(const struct roll *roll, const char *name);

#endif
