#ifndef FIRMPEDAL_TESTS_SUPPORT_CMOCKA_ALL_H
#define FIRMPEDAL_TESTS_SUPPORT_CMOCKA_ALL_H

/* cmocka.h needs these first. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#endif
