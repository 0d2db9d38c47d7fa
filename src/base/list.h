#ifndef FIRMPEDAL_BASE_LIST_H
#define FIRMPEDAL_BASE_LIST_H

#include <stddef.h>

#include "base/arena.h"

/* Makes room for one more item in an array that lives in an arena.
 *
 *   items      the array, or NULL when it is empty
 *   count      items in use
 *   capacity   items there is room for; raised here
 *   size       bytes of an item
 *   gives      the array, moved when it had to grow (the old one stays until the arena goes)
 */
void *list_room(struct arena *arena, void *items, size_t count, size_t *capacity, size_t size);

/* Adds a zeroed item to list->items and gives a pointer to it. The list is a struct with the
 * members items, count and capacity. */
#define LIST_ADD(arena, list)                                                                      \
    ((list)->items = list_room((arena), (list)->items, (list)->count, &(list)->capacity,           \
                               sizeof *(list)->items),                                             \
     &(list)->items[(list)->count++])

#endif
