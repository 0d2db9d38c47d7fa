#ifndef FIRMPEDAL_BASE_TEXT_H
#define FIRMPEDAL_BASE_TEXT_H

#include <stdarg.h>
#include <stdbool.h>
#include <stddef.h>

#include "base/arena.h"

/* Copies into the arena: a string, and the first length bytes of one. */
char *text_copy(struct arena *arena, const char *from);
char *text_copy_part(struct arena *arena, const char *from, size_t length);

/* printf into the arena. */
char *text_print(struct arena *arena, const char *format, ...)
    __attribute__((format(printf, 2, 3)));

/* Whether two strings are equal when A to Z count as a to z. */
bool text_same(const char *a, const char *b);
/* Whether text begins, or ends, with the given word (same letters rule). */
bool text_begins(const char *text, const char *beginning);
bool text_ends(const char *text, const char *end);

/* A text that grows; its bytes live in the arena and always end with NUL. */
struct text {
    struct arena *arena;
    char *items;
    size_t count; /* without the NUL */
    size_t capacity;
};
struct text text_start(struct arena *arena);
void text_add(struct text *text, const char *format, ...) __attribute__((format(printf, 2, 3)));
void text_add_bytes(struct text *text, const char *bytes, size_t count);
/* Adds words wrapped at width columns, each line after the first led by indent blanks. first is
 * the column at which the words begin. Ends with a line end. Counts UTF-8 letters, not bytes. */
void text_add_wrapped(struct text *text, const char *words, int first, int indent, int width);

/* Letters (not bytes) in a UTF-8 string. */
int text_letters(const char *utf8);
/* Whether a string is valid UTF-8 (no overlong forms, no surrogates). */
bool text_is_utf8(const char *bytes, size_t count);

/* The known word that is nearest to a mistyped one, or NULL when none is near (more than a third
 * of its letters wrong). Swapped neighbours count as one mistake; case counts not at all. */
const char *text_nearest(const char *word, const char *const *known, size_t count);
/* Whether words are so near to known ones that these were meant: as many words, and in each few
 * letters wrong for its length, or cut short ("dia"); numbers alike. "front lefd" is, "front hose"
 * for "front disk" is not. */
bool text_mistyped(const char *words, const char *known);

#endif
