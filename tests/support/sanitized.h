#ifndef FIRMPEDAL_TESTS_SUPPORT_SANITIZED_H
#define FIRMPEDAL_TESTS_SUPPORT_SANITIZED_H

/* Whether the tests run under the address sanitizer, which makes all of it some eight times slower.
 * What only repeats the same code with other numbers may then repeat it less often: what comes out
 * is seen without the sanitizers, and they see the same code. */
#if defined(__SANITIZE_ADDRESS__)
#define SANITIZED 1
#elif defined(__has_feature)
#if __has_feature(address_sanitizer)
#define SANITIZED 1
#endif
#endif
#ifndef SANITIZED
#define SANITIZED 0
#endif

#endif
