#ifndef FIRMPEDAL_BASE_FIRST_BYTES_H
#define FIRMPEDAL_BASE_FIRST_BYTES_H

#include <stddef.h>

/* What kind of file one is, by its first bytes; its name is no proof. */
enum file_kind {
    FILE_EMPTY,
    FILE_PDF,
    FILE_PNG,
    FILE_SVG,
    FILE_TEXT,    /* nothing in it but letters, blanks and line ends */
    FILE_FOREIGN, /* of a kind that is known but that this program does not write */
    FILE_UNKNOWN
};

/* Bytes from the beginning of a file that are enough to tell. */
enum { FIRST_BYTES = 4096 };

/* The kind of a file that begins with these bytes. *words: what it is, "a PDF", "text". */
enum file_kind first_bytes_kind(const char *bytes, size_t count, const char **words);

#endif
