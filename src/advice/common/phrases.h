#ifndef FIRMPEDAL_ADVICE_COMMON_PHRASES_H
#define FIRMPEDAL_ADVICE_COMMON_PHRASES_H

#include "network/system.h"

/* Names of things in running words. */

struct name_list {
    const char **items;
    int count;
};
/* Room for so many names. */
struct name_list name_list_room(struct arena *arena, int most);
/* "a", "a and b", "a, b and c". */
const char *name_list_words(struct arena *arena, const struct name_list *names);

/* The word for a fluid's grade, "DOT 4"; "the right fluid" when it is not said. */
const char *fluid_words(const struct system *system, int master);
/* What sets the shoes of a drum: "snail cams". */
const char *adjuster_words(enum adjuster adjuster);
/* "adjuster wheels of the rear left drum and rear right drum". */
struct adjuster_phrase {
    enum adjuster adjuster;
    const char *words;
};
/* A phrase for each kind of adjuster of the drums for which take is true by part index, in order of
 * parts; count of them. */
struct adjuster_phrase *adjuster_phrases(const struct system *system, const bool *take,
                                         struct arena *arena, int *count);

/* How to rid bare pipes of what was found, by its family. Mineral oil does not dissolve in alcohol
 * (E. Gildemeister and F. Hoffmann, The Volatile Oils, vol. 1, mineral oil and petroleum), silicone
 * poorly; spirit first and then alcohol follows from that, no text read prescribes it for brakes.
 */
const char *fluid_cleaning_words(enum fluid_family found);
/* What age does to a fluid of that family. */
const char *fluid_aging_words(enum fluid_family family);
/* What swells the rubber that fluid of that family is used with. */
const char *fluid_swelling_words(enum fluid_family family);
/* What comes off when a part is renewed: "wheel cylinder of the rear left drum", "caliper of the
 * front left disc"; other parts by their name. */
const char *cylinder_words(struct arena *arena, const struct part *part);
/* What a note for whoever might press a pedal hangs on. */
const char *note_place_words(const struct system *system);

#endif
