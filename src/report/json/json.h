#ifndef FIRMPEDAL_REPORT_JSON_JSON_H
#define FIRMPEDAL_REPORT_JSON_JSON_H

#include "advice/result.h"
#include "base/message.h"
#include "base/text.h"

/* Which part of a result goes into JSON. */
enum json_part {
    JSON_CHECK,
    JSON_BLEED,
    JSON_OPEN,
    JSON_SOFT,
    JSON_HOSES,
    JSON_FIT,
    JSON_CHOOSE,
    JSON_TRACE,
    JSON_CURVE
};

/* Adds a result as JSON (RFC 8259, UTF-8, keys in fixed order). Values are SI, beside each stands
 * "shown", the same in the reader's units. What is not computed has value null and says what it
 * needs. false when jansson had no memory or met text that is not UTF-8. */
bool json_result(struct text *into, const struct result *result, enum json_part part);

/* Adds messages about files as JSON. */
bool json_messages(struct text *into, const struct messages *messages);

#endif
