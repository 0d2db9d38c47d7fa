#ifndef FIRMPEDAL_INPUT_READ_H
#define FIRMPEDAL_INPUT_READ_H

#include <stdbool.h>
#include <stddef.h>

#include "base/arena.h"
#include "base/message.h"
#include "input/source.h"
#include "network/system.h"
#include "network/work.h"

/* Reading what a person wrote. Every line is used or reported; all the mistakes of a file come out
 * in one run. */

/* Reads a description into a car. NULL when it holds a mistake (a message of SEVERITY_DANGER);
 * remarks alone do not stop it. The car comes with both sides expanded, runs turned into pipes,
 * hoses and joints, references resolved and typical values assumed. */
struct system *read_car(const struct source *source, struct arena *arena,
                        struct messages *messages);

/* Reads a work file for that car. false when it holds a mistake. */
bool read_work(const struct source *source, const struct system *system, struct arena *arena,
               struct messages *messages, struct work_file *into);
/* Reads what is only tried: as a work file, but without the need of a [work] section. */
bool read_tried(const struct source *source, const struct system *system, struct arena *arena,
                struct messages *messages, struct work_file *into);

#endif
