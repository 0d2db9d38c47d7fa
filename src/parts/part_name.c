#include "parts/keys/key.h"

#include <string.h>

#include "parts/words.h"

/* The next word of a name from *from on, copied; false at the end. Longer words are cut. */
static bool next_word(const char **from, char word[static 32])
{
    *from += strspn(*from, " \t-_");
    size_t letters = strcspn(*from, " \t-_");
    size_t kept = letters < 31 ? letters : 31;
    memcpy(word, *from, kept);
    word[kept] = '\0';
    *from += letters;
    return letters > 0;
}

/* Sets a choice from the first word of the name that is one of its words, unless it is said. */
static void choose(struct part *part, size_t field)
{
    const struct key *key = key_of(part->kind, field);
    if (key_said(part, key))
        return;
    char word[32];
    for (const char *from = part->name; next_word(&from, word);) {
        const struct choice *choice = choice_find(key, word);
        if (choice != NULL) {
            key_set(part, key, choice->value);
            part->origins[key_index(part->kind, key)].kind = ORIGIN_DERIVED;
            return;
        }
    }
}

void part_read_name(struct part *part)
{
    if (part->name == NULL)
        return;
    if (kind_is_brake(part->kind)) {
        choose(part, FIELD(axle));
        choose(part, FIELD(side));
    } else if (part->kind == KIND_JOINT) {
        choose(part, FIELD(as.joint.type));
    } else if (part->kind == KIND_PEDAL) {
        choose(part, FIELD(as.pedal.type));
    }
}
