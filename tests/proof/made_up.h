#ifndef FIRMPEDAL_TESTS_PROOF_MADE_UP_H
#define FIRMPEDAL_TESTS_PROOF_MADE_UP_H

#include "dice.h"
#include "purge/purge.h"

/* Networks made up for the proof: plausible plumbing of one circuit, how air came in, and how one
 * bleeds. */

enum how_air_came_in {
    AIR_DRY,    /* all of it is full of air, as after a rebuild */
    AIR_WHEEL,  /* one wheel's hose and cylinder were renewed */
    AIR_MASTER, /* the master was off: air in the pipe behind it */
    AIR_JOINTS, /* unions here and there were undone */
    AIR_FROTH,  /* a little everywhere */
    AIR_COUNT
};
const char *air_words(enum how_air_came_in air);

struct made_up {
    struct purge_net *net;
    struct purge_way way;
    enum how_air_came_in air;
};

/* The network of that number. The same seed and number give the same network.
 *
 * A pipe of 3/16 in (bore 3.34 mm; some of 1/4 in, 4.93 mm, or 5/16 in, 6.51 mm) leads from the
 * master to one to three tees; from each go one to three wheels by pipe and hose, up to six nipples
 * in all. Wheels end in wheel cylinders of 1 to 4 mL or calipers of 20 to 60 mL, some with two
 * halves and a nipple each; some nipples lie below the top. Legs climb and fall. Now and then the
 * pipe itself has a nipple. */
struct made_up made_up_of(uint64_t seed, uint64_t number, struct arena *arena);

/* The tree that shows what shutting the nipple under pressure does: a shared pipe of 20 mL, a near
 * branch of 12 mL and a far one of 22 mL, all full of air, strokes of 8 mL. Nipple 0 is the near
 * one. tee_pressure, Pa: at which closed branches breathe; 0: what the flow makes of it. */
struct made_up made_up_toy(bool shut_under_pressure, double tee_pressure, struct arena *arena);

#endif
