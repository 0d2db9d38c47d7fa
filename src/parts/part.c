#include "parts/part.h"

#include <math.h>

#include "parts/keys/rows.h"
#include "parts/words.h"

/* Every word that names a kind: those of kinds.def first, in the order of the kinds. */
static const struct kind_name {
    const char *word;
    enum part_kind kind;
} names[] = {
#define KIND(symbol, word, member, help) {word, KIND_##symbol},
#include "parts/kinds.def"
#undef KIND
#define OTHER(word, symbol) {word, KIND_##symbol},
#include "parts/kind_words.def"
#undef OTHER
};

#define NAME_COUNT (sizeof names / sizeof *names)

static const char *const all_words[] = {
#define KIND(symbol, word, member, help) word,
#include "parts/kinds.def"
#undef KIND
#define OTHER(word, symbol) word,
#include "parts/kind_words.def"
#undef OTHER
};

static const char *const kind_helps[KIND_COUNT] = {
#define KIND(symbol, word, member, help) help,
#include "parts/kinds.def"
#undef KIND
};

const struct choice side_choices[] = {{"left", "left-hand", SIDE_LEFT, "seen facing forward"},
                                      {"right", "right-hand", SIDE_RIGHT, "seen facing forward"},
                                      {0}};

const struct choice axle_choices[] = {{"front", NULL, AXLE_FRONT, "the front axle"},
                                      {"rear", "back", AXLE_REAR, "the rear axle"},
                                      {0}};

const struct choice edge_code_choices[] = {
    {"C", "CC, CD, CE, CF, CG, CH, CZ", EDGE_C, "up to 0.15 warm"},
    {"D", "DC, DD, DE, DF, DG, DH, DZ", EDGE_D, "over 0.15 to 0.25 warm"},
    {"E", "EC, ED, EE, EF, EG, EH, EZ", EDGE_E, "over 0.25 to 0.35 warm"},
    {"F", "FC, FD, FE, FF, FG, FH, FZ", EDGE_F, "over 0.35 to 0.45 warm"},
    {"G", "GC, GD, GE, GF, GG, GH, GZ", EDGE_G, "over 0.45 to 0.55 warm"},
    {"H", "HC, HD, HE, HF, HG, HH, HZ", EDGE_H, "over 0.55 warm"},
    {0}};
const struct choice mount_choices[] = {
    {"body", "chassis, frame, bulkhead, firewall, inner wing, subframe", MOUNT_BODY,
     "body, chassis, frame or bulkhead"},
    {"engine", "gearbox, transmission, clutch housing, bell housing", MOUNT_ENGINE,
     "engine and gearbox"},
    {"front axle", "front beam", MOUNT_FRONT_AXLE, "a beam front axle"},
    {"rear axle", "axle, axle casing, axle tube, swinging arm, swing arm", MOUNT_REAR_AXLE,
     "a live or dead rear axle, a swinging arm"},
    {"front left wheel", "left front wheel, front left hub, front left upright",
     MOUNT_FRONT_LEFT_WHEEL, "what springs and steers with that wheel"},
    {"front right wheel", "right front wheel, front right hub, front right upright",
     MOUNT_FRONT_RIGHT_WHEEL, "what springs and steers with that wheel"},
    {"rear left wheel", "left rear wheel, rear left hub, rear left upright", MOUNT_REAR_LEFT_WHEEL,
     "what springs with that wheel"},
    {"rear right wheel", "right rear wheel, rear right hub, rear right upright",
     MOUNT_REAR_RIGHT_WHEEL, "what springs with that wheel"},
    {"handlebar", "handlebars, bar", MOUNT_HANDLEBAR, "handlebar and upper fork of a motorcycle"},
    {"fork", "fork leg, fork slider", MOUNT_FORK, "the sliding part of a motorcycle's front fork"},
    {0}};

static const char *const mount_names[MOUNT_COUNT] = {
    [MOUNT_UNKNOWN] = "an unknown place",
    [MOUNT_BODY] = "the body",
    [MOUNT_ENGINE] = "the engine",
    [MOUNT_FRONT_AXLE] = "the front axle",
    [MOUNT_REAR_AXLE] = "the rear axle",
    [MOUNT_FRONT_LEFT_WHEEL] = "the front left wheel",
    [MOUNT_FRONT_RIGHT_WHEEL] = "the front right wheel",
    [MOUNT_REAR_LEFT_WHEEL] = "the rear left wheel",
    [MOUNT_REAR_RIGHT_WHEEL] = "the rear right wheel",
    [MOUNT_HANDLEBAR] = "the handlebar",
    [MOUNT_FORK] = "the fork",
};

const char *kind_word(enum part_kind kind)
{
    return names[kind].word;
}

const char *kind_help(enum part_kind kind)
{
    return kind_helps[kind];
}

bool kind_of_words(const char *words, enum part_kind *kind)
{
    size_t longest = 0, letters;
    for (size_t i = 0; i < NAME_COUNT; i++) {
        if (words_end_with(words, names[i].word, &letters) && letters > longest) {
            longest = letters;
            *kind = names[i].kind;
        }
    }
    bool at_end = longest > 0;
    for (size_t i = 0; i < NAME_COUNT && !at_end; i++) {
        if (words_begin_with(words, names[i].word, &letters) && letters > longest) {
            longest = letters;
            *kind = names[i].kind;
        }
    }
    return longest > 0;
}

const char *const *kind_all_words(size_t *count)
{
    *count = NAME_COUNT;
    return all_words;
}

const char *side_word(enum side side)
{
    static const char *const words[] = {"", "left", "right"};
    return words[side];
}

const char *axle_word(enum axle axle)
{
    static const char *const words[] = {"", "front", "rear"};
    return words[axle];
}

const char *mount_words(enum mount mount)
{
    return mount_names[mount];
}

bool kind_is_wet(enum part_kind kind)
{
    switch (kind) {
    case KIND_SERVO:
    case KIND_MASTER:
    case KIND_PIPE:
    case KIND_HOSE:
    case KIND_JOINT:
    case KIND_VALVE:
    case KIND_DISC:
    case KIND_DRUM:
    case KIND_SLAVE:
        return true;
    case KIND_VEHICLE:
    case KIND_FLUID:
    case KIND_PEDAL:
    case KIND_RESERVOIR:
    case KIND_PARKING:
    case KIND_COUNT:
        break;
    }
    return false;
}

bool kind_is_brake(enum part_kind kind)
{
    return kind == KIND_DISC || kind == KIND_DRUM;
}

bool has_fluid(const struct part *part)
{
    return part->kind != KIND_SERVO || part->as.servo.type != SERVO_DIRECT;
}

bool has_nipples(const struct part *part)
{
    return has_fluid(part) && part->fitted.nipples != 0;
}
