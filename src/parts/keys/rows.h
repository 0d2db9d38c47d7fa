#ifndef FIRMPEDAL_PARTS_KEYS_ROWS_H
#define FIRMPEDAL_PARTS_KEYS_ROWS_H

#include <math.h>

#include "parts/keys/key.h"

/* Words with which the tables of keys_*.c are written. Limits, usual ranges and assumed values
 * stand in SI. Where no source stands beside them they are from memory. */

#define QUANTITY(kind, path) .form = FORM_QUANTITY, .dimension = (kind), .field = FIELD(path)
#define NUMBER(path)         QUANTITY(DIMENSION_NUMBER, path)
#define SHARE(path)          QUANTITY(DIMENSION_SHARE, path)
#define LENGTH(path)         QUANTITY(DIMENSION_LENGTH, path)
#define VOLUME(path)         QUANTITY(DIMENSION_VOLUME, path)
#define PRESSURE(path)       QUANTITY(DIMENSION_PRESSURE, path)
#define FORCE(path)          QUANTITY(DIMENSION_FORCE, path)
#define BORES(path)          .form = FORM_BORES, .dimension = DIMENSION_LENGTH, .field = FIELD(path)
#define COUNT(path)          .form = FORM_COUNT, .field = FIELD(path)

#define WITHIN(low, high)  .least = (low), .most = (high)
#define USUALLY(low, high) .usual_least = (low), .usual_most = (high)
#define UNBOUNDED          WITHIN(NAN, NAN), USUALLY(NAN, NAN)
#define ASSUME(value, why) .assumed = (value), .assumed_source = (why)
/* The value is found from other things said; why gives the rule and its source. */
#define ASSUME_BY(find, why) .assumed = NAN, .assume_by = (find), .assumed_source = (why)
#define ONLY(condition)      .applies = (condition)
#define ASSUME_NOTHING       .assumed = NAN
#define PLAIN                UNBOUNDED, ASSUME_NOTHING
#define CHOICE_OF(path)      .form = FORM_CHOICE, .field = FIELD(path)
#define TEXT(path)           .form = FORM_TEXT, .field = FIELD(path), PLAIN
#define DATE(path)           .form = FORM_DATE, .field = FIELD(path), PLAIN
#define ONE_PART(path)       .form = FORM_PART, .field = FIELD(path), PLAIN
#define PARTS(path)          .form = FORM_PARTS, .field = FIELD(path), PLAIN
#define WORDS(path)          .form = FORM_WORDS, .field = FIELD(path), PLAIN

#define MEASURED .measured = true
/* No pressure and no brake force rests on it; nor any travel. A test moves all of them. */
#define TRAVELS_ONLY .solves = SOLVES_TRAVELS
#define FIGURES_ONLY .solves = SOLVES_NOTHING
#define REQUIRED     .required = true

#define PRACTICE "common practice, no source"
#define MEMORY   "from memory"

/* Diameters of cylinders, m. */
#define CYLINDER_SIZES WITHIN(2e-3, 0.4), USUALLY(12e-3, 60e-3)

extern const struct choice mount_choices[];
extern const struct choice side_choices[];
extern const struct choice axle_choices[];

/* Whether fluid under pressure is in the part, and whether it has a nipple, as far as is said. */
bool has_fluid(const struct part *part);
bool has_nipples(const struct part *part);

/* The letters on the edge of pads and linings, and the friction that follows from them. */
extern const struct choice edge_code_choices[];
#define EDGE_SOURCE                                                                                \
    "the middle of the range of its edge code where that is said (SAE J866:2019, quoted; it does " \
    "not predict a brake), else 0.38: most pads have 0.35 to 0.42 (an encyclopaedia, quoted), "    \
    "linings from memory"
#define ROW_EDGE_CODE(path)                                                                        \
    {                                                                                              \
        .name = "edge code", .others = "friction code, edge letters", CHOICE_OF(path), PLAIN,      \
        .choices = edge_code_choices, .example = "FF",                                             \
        .help = "two letters on its edge: friction warm, friction hot; the first serves here",     \
        MEASURED                                                                                   \
    }

/* The rows of struct fitted. */
#define ROW_NOTE                                                                                   \
    {                                                                                              \
        .name = "note", .others = "notes, remark, comment", TEXT(fitted.note),                     \
        .example = "bracket welded in an earlier repair",                                          \
        .help = "free words, printed on the sheet"                                                 \
    }
#define ROW_ON                                                                                     \
    {                                                                                              \
        .name = "on", FIGURES_ONLY, .others = "mounted on, bolted to", CHOICE_OF(fitted.on),       \
        PLAIN, .choices = mount_choices, .example = "rear axle",                                   \
        .help = "what it is bolted to; decides where hoses are needed"                             \
    }
#define ROW_HEIGHT                                                                                 \
    {                                                                                              \
        .name = "height", FIGURES_ONLY, LENGTH(fitted.height), WITHIN(0, 4), USUALLY(0.05, 1.8),   \
        ASSUME_NOTHING, .example = "0.62 m",                                                       \
        .help = "of the part above the ground, the car standing level"                             \
    }
#define ROWS_CHAMBER(how_many, volume)                                                             \
    {.name = "chamber",                                                                            \
     TRAVELS_ONLY,                                                                                 \
     .others = "chamber volume",                                                                   \
     VOLUME(fitted.chamber),                                                                       \
     WITHIN(1e-8, 1e-3),                                                                           \
     USUALLY(1e-7, 1.5e-4),                                                                        \
     ASSUME_NOTHING,                                                                               \
     .example = volume,                                                                            \
     .help = "volume of fluid in its chamber at rest (in each, where it has several)",             \
     ONLY(has_fluid)},                                                                             \
        {.name = "nipples",                                                                        \
         .others = "bleed nipples, bleeders, bleeder screws, bleed screws",                        \
         COUNT(fitted.nipples),                                                                    \
         WITHIN(0, 6),                                                                             \
         USUALLY(0, 3),                                                                            \
         how_many,                                                                                 \
         .example = "1",                                                                           \
         .help = "how many bleed nipples it has",                                                  \
         ONLY(has_fluid),                                                                          \
         MEASURED},                                                                                \
        {.name = "nipple below top",                                                               \
         FIGURES_ONLY,                                                                             \
         .others = "bleeder below top",                                                            \
         LENGTH(fitted.nipple_below),                                                              \
         WITHIN(0, 0.3),                                                                           \
         USUALLY(0, 15e-3),                                                                        \
         ASSUME(0, "at the top of its chamber; " PRACTICE),                                        \
         ONLY(has_nipples),                                                                        \
         .example = "3 mm",                                                                        \
         .help = "how far the nipple lies below the top of its chamber",                           \
         MEASURED},                                                                                \
    {                                                                                              \
        .name = "nipple names", .others = "bleeder names", TEXT(fitted.nipple_names),              \
        ONLY(has_nipples), .example = "outer, inner",                                              \
        .help = "what its nipples are called, where there are several"                             \
    }
#define ROW_RIGID                                                                                  \
    {                                                                                              \
        .name = "hard pipe accepted", .others = "hard line accepted, rigid pipe accepted",         \
        TEXT(fitted.rigid_accepted), ONLY(has_fluid),                                              \
        .example = "coiled pipe, as the maker built it",                                           \
        .help = "the reason why a hard pipe may lead to it where a hose would belong"              \
    }

#define NIPPLES_NONE ASSUME(0, PRACTICE)
#define NIPPLES_ONE  ASSUME(1, PRACTICE)

#define ROWS_OF(rows, count) (*(count) = sizeof(rows) / sizeof(*(rows)), (rows))

/* Each kind's table, one in each keys_KIND.c. */
#define KIND(symbol, word, member, help) const struct key *keys_##member(size_t *count);
#include "parts/kinds.def"
#undef KIND

#endif
