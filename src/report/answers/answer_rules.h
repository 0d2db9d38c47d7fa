#ifndef FIRMPEDAL_REPORT_TEXT_ANSWER_RULES_H
#define FIRMPEDAL_REPORT_TEXT_ANSWER_RULES_H

#include "report/answers/answer.h"

/* Every published rule of the car's class, what it asks for and what the car has. */
void answer_all_rules(struct document *into, const struct result *result);

#endif
