/* For clang's fuzzer: see tests/fuzz/run. Says at its end how many texts were read without a
 * mistake. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "fuzz_run.h"

int LLVMFuzzerInitialize(int *count, char ***words);
int LLVMFuzzerTestOneInput(const uint8_t *text, size_t size);
size_t LLVMFuzzerCustomMutator(uint8_t *text, size_t size, size_t most, unsigned seed);

static struct {
    unsigned long runs, accepted, drawn;
} counted;

static void say(void)
{
    fprintf(stderr, "%lu runs, %lu accepted cars (%.1f %%), %lu drawn\n", counted.runs,
            counted.accepted, 100.0 * (double)counted.accepted / (double)counted.runs,
            counted.drawn);
}

int LLVMFuzzerInitialize(int *count, char ***words)
{
    (void)count;
    (void)words;
    return atexit(say);
}

int LLVMFuzzerTestOneInput(const uint8_t *text, size_t size)
{
    struct fuzz_outcome outcome = fuzz_run(text, size);
    counted.runs++;
    counted.accepted += outcome.accepted;
    counted.drawn += outcome.drawn;
    return 0;
}

/* Three of four texts are tried until one can be read, else the fuzzer tries messages alone: a
 * text with a mistake only grows more of them. */
size_t LLVMFuzzerCustomMutator(uint8_t *text, size_t size, size_t most, unsigned seed)
{
    enum { TRIES = 4 };
    uint8_t *before = malloc(size + 1);
    if (before == NULL)
        return size;
    memcpy(before, text, size);
    size_t changed = fuzz_change(text, size, most, seed);
    for (unsigned i = 1; i < TRIES && seed % 4 != 0 && !fuzz_reads(text, changed); i++) {
        memcpy(text, before, size);
        changed = fuzz_change(text, size, most, seed + i * 7919);
    }
    free(before);
    return changed;
}
