#ifndef FIRMPEDAL_NETWORK_PLUMBING_H
#define FIRMPEDAL_NETWORK_PLUMBING_H

#include <stddef.h>

#include "base/message.h"

/* The mistakes that a network can show, as a table. */
enum plumbing_mistake {
#define PLUMBING(symbol, id, severity, what) PLUMBING_##symbol,
#include "network/plumbing.def"
#undef PLUMBING
    PLUMBING_COUNT
};

struct plumbing_row {
    const char *id; /* as messages carry it */
    enum severity severity;
    const char *what; /* what it means, in words */
};

/* The rows, in the order of enum plumbing_mistake. */
const struct plumbing_row *plumbing_rows(size_t *count);

/* Leaves a message about a mistake. mend: what to do, in words, or NULL. Does nothing when
 * messages is NULL. words are printf's and go into the messages' arena. */
void plumbing_say(struct messages *messages, enum plumbing_mistake mistake, struct place place,
                  const char *mend, const char *words, ...) __attribute__((format(printf, 5, 6)));

#endif
