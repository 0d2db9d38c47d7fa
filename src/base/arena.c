#include "base/arena.h"

#include <assert.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

/* Under the address sanitizer the free part of a block is poisoned and a gap is left behind every
 * piece, so that writing past a piece is seen although malloc knows only the block. */
#if defined(__has_feature)
#if __has_feature(address_sanitizer)
#define ARENA_WATCHED 1
#endif
#endif
#if defined(__SANITIZE_ADDRESS__)
#define ARENA_WATCHED 1
#endif

#ifdef ARENA_WATCHED
#include <sanitizer/asan_interface.h>
#define ARENA_GAP 16
#else
#define ARENA_GAP                         0
#define ASAN_POISON_MEMORY_REGION(a, n)   ((void)(a), (void)(n))
#define ASAN_UNPOISON_MEMORY_REGION(a, n) ((void)(a), (void)(n))
#endif

#define BLOCK_SIZE ((size_t)16 * 1024)

struct block {
    struct block *below; /* the block that was filled before this one */
    size_t size;         /* bytes after the header */
    size_t used;
    max_align_t bytes[];
};

struct arena {
    struct arena_source source;
    struct block *top;
    jmp_buf *escape;
};

static void *give_from_malloc(size_t size, void *context)
{
    (void)context;
    return malloc(size);
}

static void take_back_to_free(void *block, void *context)
{
    (void)context;
    free(block);
}

struct arena *arena_create(void)
{
    return arena_create_on((struct arena_source){give_from_malloc, take_back_to_free, NULL});
}

struct arena *arena_create_on(struct arena_source source)
{
    struct arena *arena = source.give(sizeof *arena, source.context);
    if (arena)
        *arena = (struct arena){.source = source};
    return arena;
}

static void drop_top(struct arena *arena)
{
    struct block *block = arena->top;
    arena->top = block->below;
    ASAN_UNPOISON_MEMORY_REGION(block->bytes, block->size);
    arena->source.take_back(block, arena->source.context);
}

void arena_destroy(struct arena *arena)
{
    if (!arena)
        return;
    while (arena->top)
        drop_top(arena);
    struct arena_source source = arena->source;
    source.take_back(arena, source.context);
}

jmp_buf *arena_escape_to(struct arena *arena, jmp_buf *point)
{
    jmp_buf *before = arena->escape;
    arena->escape = point;
    return before;
}

static _Noreturn void no_memory(struct arena *arena)
{
    if (arena->escape)
        longjmp(*arena->escape, 1);
    abort();
}

static void add_block(struct arena *arena, size_t size)
{
    size_t room = size > BLOCK_SIZE ? size : BLOCK_SIZE;
    struct block *block = arena->source.give(sizeof *block + room, arena->source.context);
    if (!block)
        no_memory(arena);
    block->below = arena->top;
    block->size = room;
    block->used = 0;
    arena->top = block;
    ASAN_POISON_MEMORY_REGION(block->bytes, block->size);
}

void *arena_new(struct arena *arena, size_t size)
{
    const size_t step = _Alignof(max_align_t);
    if (size > SIZE_MAX / 2)
        no_memory(arena);
    size_t taken = (size + ARENA_GAP + step - 1) / step * step;
    /* A piece of no bytes still gets an address of its own. */
    if (taken == 0)
        taken = step;
    if (!arena->top || arena->top->size - arena->top->used < taken)
        add_block(arena, taken);
    struct block *block = arena->top;
    void *piece = (char *)block->bytes + block->used;
    block->used += taken;
    ASAN_UNPOISON_MEMORY_REGION(piece, size);
    return memset(piece, 0, size);
}

void *arena_new_array(struct arena *arena, size_t count, size_t size)
{
    size_t product;
    if (__builtin_mul_overflow(count, size, &product))
        no_memory(arena);
    return arena_new(arena, product);
}

struct arena_mark arena_mark(const struct arena *arena)
{
    return (struct arena_mark){arena->top, arena->top ? arena->top->used : 0};
}

void arena_release(struct arena *arena, struct arena_mark mark)
{
    while (arena->top && arena->top != mark.block)
        drop_top(arena);
    assert(arena->top == mark.block);
    if (!arena->top)
        return;
    arena->top->used = mark.used;
    ASAN_POISON_MEMORY_REGION((char *)arena->top->bytes + mark.used, arena->top->size - mark.used);
}
