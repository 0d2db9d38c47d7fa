#ifndef FIRMPEDAL_TESTS_FUZZ_FUZZ_RUN_H
#define FIRMPEDAL_TESTS_FUZZ_FUZZ_RUN_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

/* One run of the public face over some text: read it, ask something, write the answer. A text is a
 * description, and from a line "[work]" on a work file. What is asked, and in which form, hangs on
 * the text alone, so that a run can be repeated. */

struct fuzz_outcome {
    bool accepted; /* read without a mistake */
    bool drawn;    /* and a sheet or diagram was written */
};
struct fuzz_outcome fuzz_run(const uint8_t *text, size_t size);
/* Whether a text can be read without a mistake; nothing is asked. */
bool fuzz_reads(const uint8_t *text, size_t size);

/* Changes a text in place by lines and words: numbers, units, words of a choice, lines and sections
 * dropped, doubled, changed over, keys put in from the key tables.
 *
 *   size   of the text in bytes, most: room for it
 *   seed   decides what is changed
 *   gives  the new size */
size_t fuzz_change(uint8_t *text, size_t size, size_t most, unsigned seed);

#endif
