#ifndef FIRMPEDAL_BASE_ARENA_H
#define FIRMPEDAL_BASE_ARENA_H

#include <setjmp.h>
#include <stddef.h>

/* All memory of one car comes from one arena and is freed at once by its owner.
 *
 * malloc is called in arena.c only. When it fails, the arena jumps to the point that its owner
 * set with arena_escape_to, so arena_new never returns NULL and callers need no check. The owner
 * must set that point before the first allocation; without one the program ends with abort().
 */
struct arena;

/* Where an arena gets its blocks: give returns NULL when there is no more. Tests pass one that
 * fails on the nth call. */
struct arena_source {
    void *(*give)(size_t size, void *context);
    void (*take_back)(void *block, void *context);
    void *context;
};

/* Creates an empty arena on malloc and free. The caller owns it; NULL when there is no memory. */
struct arena *arena_create(void);

/* The same on another source of blocks. */
struct arena *arena_create_on(struct arena_source source);

/* Frees the arena and all that was taken from it. Accepts NULL. */
void arena_destroy(struct arena *arena);

/* Sets where to jump (longjmp with value 1) when memory runs out. NULL removes the point.
 * Gives the point that was set before, so that a caller can put it back. */
jmp_buf *arena_escape_to(struct arena *arena, jmp_buf *point);

/* Takes size bytes, zeroed and aligned for any type. Never returns NULL. */
void *arena_new(struct arena *arena, size_t size);

/* Takes count times size bytes; a product that overflows counts as no memory. */
void *arena_new_array(struct arena *arena, size_t count, size_t size);

#define ARENA_NEW(arena, type)          ((type *)arena_new((arena), sizeof(type)))
#define ARENA_ARRAY(arena, count, type) ((type *)arena_new_array((arena), (count), sizeof(type)))

/* Where the arena stands now; arena_release frees all that was taken since. */
struct arena_mark {
    void *block;
    size_t used;
};
struct arena_mark arena_mark(const struct arena *arena);
void arena_release(struct arena *arena, struct arena_mark mark);

#endif
