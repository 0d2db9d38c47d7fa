#ifndef FIRMPEDAL_CLI_DESCRIBE_H
#define FIRMPEDAL_CLI_DESCRIBE_H

#include "cli/options.h"

/* Asks on standard output and takes answers, a line each, from standard input, a terminal or a
 * file. When the answers end, or SIGINT, SIGTERM or SIGHUP comes, what there is is written. */
enum fp_outcome describe_car(struct fp_desk *desk, const struct request *request);

#endif
