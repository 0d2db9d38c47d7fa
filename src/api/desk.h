#ifndef FIRMPEDAL_API_DESK_H
#define FIRMPEDAL_API_DESK_H

#include <setjmp.h>

#include "advice/result.h"
#include "asking/asking.h"
#include "base/arena.h"
#include "base/message.h"
#include "firmpedal.h"
#include "report/text/wrap.h"

/* What is on a desk, for the files of the public face alone. */

struct fp_desk {
    struct arena *arena;
    struct messages messages;
    const struct system *car;
    const struct network *network;
    struct setting screen; /* how wide answers are, and whether bold and colour show */
    struct inputs {
        const char **items;
        size_t count;
        size_t capacity;
    } inputs; /* paths of all files that were read */
    struct describing {
        struct asking *asking;
        const char *path;
        struct fp_wishes wishes;
        const char *was; /* what the file held; NULL: there is none yet */
        bool is_ordered; /* by what tells most */
    } describing;
};

/* The jump back from an arena without memory: each public call sets its own point first. */
#define ON_NO_MEMORY(desk, outcome)                                                                \
    jmp_buf escape;                                                                                \
    arena_escape_to((desk)->arena, &escape);                                                       \
    if (setjmp(escape) != 0)                                                                       \
    return (outcome)

/* Works out what the wishes ask of the car that was read; NULL where a wish cannot be used, with a
 * message. parts: of enum result_part, which are wanted. */
struct result *desk_result(struct fp_desk *desk, const struct fp_wishes *wishes, unsigned parts,
                           const char **answer);
/* A finished text with no line longer than the screen is wide. */
const char *desk_held(struct fp_desk *desk, const char *text);
/* A wish that could not be used leaves its reason as the answer. */
bool desk_effort(struct fp_desk *desk, const char *words, struct force *effort,
                 const char **answer);
/* The parts that a name means: one, or both sides of an axle; gives how many. */
int desk_parts_named(struct fp_desk *desk, const char *name, int parts[2]);
/* That a name is no cylinder, and what there is. */
const char *desk_no_cylinder(struct fp_desk *desk, const char *option, const char *name);
/* A diameter as an option says it. */
bool desk_bore(struct fp_desk *desk, const char *option, const char *said, struct length *bore,
               const char **answer);
/* Adds which bores would suit to a result; map: with what a picture takes. */
bool desk_add_choice(struct fp_desk *desk, const struct fp_wishes *wishes, bool map,
                     struct result *result, const char **answer);
/* Adds what is tried on the car to a result. */
bool desk_add_fit(struct fp_desk *desk, const struct fp_wishes *wishes, struct result *result,
                  const char **answer);
/* The answer to a check of the car on the desk, in short. */
const char *desk_check(struct fp_desk *desk, const struct result *result);
/* Adds the pedal curves to a result. */
void desk_add_curves(struct fp_desk *desk, const struct fp_wishes *wishes, struct result *result);

#endif
