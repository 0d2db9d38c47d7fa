#include "starters/picks.h"

#include <string.h>

#include "parts/words.h"

#define WIDTH 80

static const struct pick_row rows[PICK_COUNT] = {
#define GROUP(symbol, asked)
#define PICK(group, symbol, word, others, help) {GROUP_##group, word, others, help},
#include "starters/picks.def"
#undef GROUP
#undef PICK
};

static const char *const asked_of[GROUP_COUNT] = {
#define GROUP(symbol, asked) asked,
#define PICK(group, symbol, word, others, help)
#include "starters/picks.def"
#undef GROUP
#undef PICK
};

/* clang-format off */

#define DISCS    (P(FRONT_FIXED) | P(FRONT_SLIDING) | P(FRONT_SINGLE))
#define REMOTE   (P(SERVO_LINE) | P(SERVO_BOTH))
#define CLUTCHES (P(CLUTCH_SHARED) | P(CLUTCH_OWN))
#define OF_A_CAR                                                                                   \
    (P(TWO_CIRCUITS) | P(ONE_CIRCUIT) | P(DIAGONAL) | P(BAR) | P(SERVO_NONE) | P(SERVO_PEDAL) |    \
     REMOTE | P(CLUTCH_DRY) | CLUTCHES | P(SLAVE_OUT) | P(SLAVE_IN) | P(FRONT_FREE) |              \
     P(FRONT_LIVE) | P(FRONT_DEAD) | P(REAR_LIVE) | P(REAR_DEAD) | P(REAR_FREE) |                  \
     P(ENGINE_AHEAD) | P(ENGINE_BEHIND) | P(LEFT) | P(RIGHT) | P(MIDDLE) | P(VALVE_NONE) |         \
     P(VALVE_LIMITS) | P(VALVE_SHARES) | P(VALVE_LOADED) | P(HAND_REAR) | P(HAND_NONE))

/* The names for usual sets. */
static const struct usual_set sets[] = {
    {"front discs", "discs in front, drums behind, tandem master, direct servo",
     P(FRONT_FIXED), P(REAR_DRUMS) | P(TWO_CIRCUITS) | P(SERVO_PEDAL) | P(REAR_LIVE)},
    {"drums", "drums all round, single master, one circuit",
     P(FRONT_DRUMS) | P(REAR_DRUMS), P(ONE_CIRCUIT) | P(SERVO_NONE) | P(REAR_LIVE)},
    {"diagonal", "each circuit a front disc and the rear drum across, servo",
     P(DIAGONAL), P(FRONT_SLIDING) | P(REAR_DRUMS) | P(SERVO_PEDAL) | P(REAR_FREE)},
    {"twin masters", "two masters on a balance bar, four discs",
     P(BAR), P(FRONT_FIXED) | P(REAR_FIXED) | P(SERVO_NONE) | P(REAR_FREE) | P(HAND_NONE)},
    {"motorcycle", "hand lever with two front discs, pedal with a rear disc",
     P(MOTORCYCLE), P(FRONT_FIXED) | P(REAR_FIXED)},
    {"rear engine", "engine behind, two circuits, clutch with a long pipe",
     P(ENGINE_BEHIND), P(FRONT_FIXED) | P(REAR_DRUMS) | P(TWO_CIRCUITS) | P(SERVO_NONE) |
     P(CLUTCH_SHARED) | P(REAR_FREE) | P(HAND_NONE)},
};

/* Groups that have no meaning with a word. */
static const struct {
    enum pick_group group;
    picks without;
} unasked[] = {
    {GROUP_SPLIT, P(MOTORCYCLE)}, {GROUP_SERVO, P(MOTORCYCLE)}, {GROUP_CLUTCH, P(MOTORCYCLE)},
    {GROUP_SLAVE, P(MOTORCYCLE) | P(CLUTCH_DRY)}, {GROUP_FRONT_AXLE, P(MOTORCYCLE)},
    {GROUP_REAR_AXLE, P(MOTORCYCLE)}, {GROUP_ENGINE, P(MOTORCYCLE)},
    {GROUP_DRIVER, P(MOTORCYCLE)}, {GROUP_VALVE, P(MOTORCYCLE)}, {GROUP_HAND, P(MOTORCYCLE)},
};

/* What is usual with a word that is known; where no row holds, the first word of the group. */
static const struct {
    enum pick usual;
    picks with;
} usuals[] = {
    {PICK_REAR_FIXED, P(MOTORCYCLE)},
    {PICK_ONE_CIRCUIT, P(FRONT_DRUMS)},
    {PICK_SERVO_NONE, P(FRONT_DRUMS) | P(BAR)},
    {PICK_SERVO_PEDAL, DISCS},
    {PICK_REAR_FREE, P(ENGINE_BEHIND) | P(DIAGONAL) | P(BAR)},
};

/* What does not go together, and why. */
static const struct clash {
    picks one, other;
    const char *why;
} clashes[] = {
    {P(MOTORCYCLE), P(FRONT_DRUMS) | P(REAR_DRUMS),
     "no starter has hydraulic drums on a motorcycle: begin with discs and change the sections"},
    {P(MOTORCYCLE) | P(FRONT_SINGLE) | P(REAR_DRY), OF_A_CAR,
     "that is said of a car; here a motorcycle has a hand lever and a pedal, each with its master"},
    {P(CAR), P(FRONT_SINGLE) | P(REAR_DRY), "that is said of a motorcycle"},
    {P(FRONT_SINGLE) | P(REAR_DRY), P(FRONT_DRUMS) | P(REAR_DRUMS),
     "that is said of a motorcycle, and no starter has hydraulic drums on one"},
    {P(ONE_CIRCUIT), P(SERVO_BOTH), "one circuit has one servo: write remote servo"},
    {P(DIAGONAL), REMOTE,
     "no starter parts the pipes behind a remote servo diagonally: begin with a direct servo and "
     "change the runs"},
    {P(BAR), P(SERVO_PEDAL), "a direct servo pushes one master, a balance bar two"},
    {P(CLUTCH_DRY), P(SLAVE_OUT) | P(SLAVE_IN), "only a hydraulic clutch has a slave"},
};

/* clang-format on */

enum {
    SETS = sizeof sets / sizeof *sets,
    UNASKED = sizeof unasked / sizeof *unasked,
    USUALS = sizeof usuals / sizeof *usuals,
    CLASHES = sizeof clashes / sizeof *clashes
};

static picks bit(size_t pick)
{
    return (picks)1 << pick;
}

const struct pick_row *pick_rows(void)
{
    return rows;
}

const char *group_asked(enum pick_group group)
{
    return asked_of[group];
}

const struct usual_set *usual_sets(size_t *count)
{
    *count = SETS;
    return sets;
}

picks group_picks(enum pick_group group)
{
    picks set = 0;
    for (size_t i = 0; i < PICK_COUNT; i++)
        if (rows[i].group == group)
            set |= bit(i);
    return set;
}

bool group_applies(enum pick_group group, picks known)
{
    for (size_t i = 0; i < UNASKED; i++)
        if (unasked[i].group == group && (unasked[i].without & known) != 0)
            return false;
    return true;
}

/* The first clash of a set, or NULL. */
static const struct clash *clash_of(picks set)
{
    for (size_t i = 0; i < CLASHES; i++)
        if ((clashes[i].one & set) != 0 && (clashes[i].other & set) != 0)
            return &clashes[i];
    return NULL;
}

picks group_fitting(enum pick_group group, picks known)
{
    picks fitting = 0;
    for (size_t i = 0; i < PICK_COUNT; i++)
        if (rows[i].group == group && clash_of((known & ~group_picks(group)) | bit(i)) == NULL)
            fitting |= bit(i);
    return fitting;
}

enum pick group_usual(enum pick_group group, picks known)
{
    picks fitting = group_fitting(group, known);
    for (size_t i = 0; i < USUALS; i++)
        if (rows[usuals[i].usual].group == group && (usuals[i].with & known) != 0 &&
            (bit(usuals[i].usual) & fitting) != 0)
            return usuals[i].usual;
    size_t first = 0;
    while (first + 1 < PICK_COUNT && (bit(first) & fitting) == 0)
        first++;
    return (enum pick)first;
}

picks picks_with_usual(picks said)
{
    picks known = said;
    for (int group = 0; group < GROUP_COUNT; group++)
        if (group_applies((enum pick_group)group, known) &&
            (known & group_picks((enum pick_group)group)) == 0)
            known |= bit(group_usual((enum pick_group)group, known));
    return known;
}

const char *picks_words(struct arena *arena, picks set)
{
    struct text words = text_start(arena);
    for (size_t i = 0; i < PICK_COUNT; i++)
        if ((set & bit(i)) != 0)
            text_add(&words, "%s%s", words.count > 0 ? ", " : "", rows[i].word);
    return words.items;
}

/* What stands at the beginning of the words: a word or the name of a set. */
struct met {
    size_t letters; /* 0: neither */
    picks said;     /* by the word, or by the name itself */
    picks usual;    /* with that name */
};

static void meet(struct met *met, const char *words, const char *name, picks said, picks usual)
{
    size_t letters;
    if (words_begin_with(words, name, &letters) && letters > met->letters)
        *met = (struct met){letters, said, usual};
}

static struct met meet_longest(struct arena *arena, const char *words)
{
    struct met met = {0};
    size_t length;
    for (size_t i = 0; i < PICK_COUNT; i++) {
        meet(&met, words, rows[i].word, bit(i), 0);
        const char *others = rows[i].others;
        for (const char *other; (other = words_next(&others, &length)) != NULL;)
            meet(&met, words, text_copy_part(arena, other, length), bit(i), 0);
    }
    for (size_t i = 0; i < SETS; i++)
        meet(&met, words, sets[i].word, sets[i].named, sets[i].usual);
    return met;
}

static void refuse_word(struct text *trouble, const char *words)
{
    const char *known[(size_t)PICK_COUNT + (size_t)SETS];
    for (size_t i = 0; i < PICK_COUNT; i++)
        known[i] = rows[i].word;
    for (size_t i = 0; i < SETS; i++)
        known[PICK_COUNT + i] = sets[i].word;
    const char *word = text_copy_part(trouble->arena, words, strcspn(words, ","));
    const char *nearest = text_nearest(word, known, sizeof known / sizeof *known);
    text_add(trouble, "No car is said with these words: %s.", word);
    if (nearest != NULL)
        text_add(trouble, " Nearest: %s.", nearest);
    text_add(trouble, "\n");
}

/* Two words of a group, or two that do not go together. */
static bool goes_together(struct text *trouble, picks set)
{
    for (int group = 0; group < GROUP_COUNT; group++) {
        picks of_group = set & group_picks((enum pick_group)group);
        if ((of_group & (of_group - 1)) != 0) {
            text_add(trouble, "These do not go together: %s. %s Only one of them holds.\n",
                     picks_words(trouble->arena, of_group), asked_of[group]);
            return false;
        }
    }
    const struct clash *clash = clash_of(set);
    if (clash == NULL)
        return true;
    text_add(trouble, "These do not go together: %s, and %s: %s.\n",
             picks_words(trouble->arena, clash->one & set),
             picks_words(trouble->arena, clash->other & set), clash->why);
    return false;
}

/* Over commas, blanks, and the words that only join. */
static const char *skip_joints(const char *words)
{
    size_t letters;
    words += strspn(words, " \t,");
    if (words_begin_with(words, "and", &letters) || words_begin_with(words, "with", &letters))
        return skip_joints(words + letters);
    return words;
}

/* What is usual with a name gives what no word says. */
static picks fill(picks said, picks usual)
{
    for (int group = 0; group < GROUP_COUNT; group++)
        if ((said & group_picks((enum pick_group)group)) == 0)
            said |= usual & group_picks((enum pick_group)group);
    return said;
}

bool picks_read(struct text *trouble, const char *words, picks *said)
{
    picks all = *said, usual = 0;
    for (words = skip_joints(words); *words != '\0'; words = skip_joints(words)) {
        /* Up to the next comma alone: no word goes over one. */
        const char *item = text_copy_part(trouble->arena, words, strcspn(words, ","));
        struct met met = meet_longest(trouble->arena, item);
        if (met.letters == 0) {
            refuse_word(trouble, item);
            return false;
        }
        all |= met.said;
        usual |= met.usual;
        words += met.letters;
    }
    if (!goes_together(trouble, all) || !goes_together(trouble, usual))
        return false;
    *said = fill(all, usual);
    return goes_together(trouble, *said);
}

void picks_list(struct text *into)
{
    text_add(into, "Names of usual cars:\n");
    for (size_t i = 0; i < SETS; i++)
        text_add(into, "  %-14s %s\n", sets[i].word, sets[i].help);
    text_add(into, "\nOr words in any order, behind such a name too; of each line one, and where "
                   "none is\nsaid the usual one is taken:\n");
    for (int group = 0; group < GROUP_COUNT; group++) {
        text_add(into, "  ");
        text_add_wrapped(into, picks_words(into->arena, group_picks((enum pick_group)group)), 2, 4,
                         WIDTH);
    }
}
