#include "report/words/step_words.h"

#include <ctype.h>
#include <string.h>

#include "base/text.h"
#include "report/words/pair_words.h"

const char *first_sentence(struct arena *arena, const char *words)
{
    for (const char *at = words; (at = strstr(at, ". ")) != NULL; at++)
        if (isupper((unsigned char)at[2]))
            return text_copy_part(arena, words, (size_t)(at - words + 1));
    return words;
}

/* What a step says to one who knows the trade and only needs reminding; the rest is clear from how
 * its row begins. Every slot is one of the row's own. */
static const struct {
    enum step_id id;
    const char *words;
} briefs[] = {
    {STEP_SET_WRONG_FLUID, "Stop: {text}; strip all of it first"},
    {STEP_BEFORE_READ, "Read and photograph what the work will destroy"},
    {STEP_BEFORE_LIST, "Settle what else is renewed: {text}"},
    {STEP_DECIDE_RENEWAL, "{part} {text}: renew it too?"},
    {STEP_BEFORE_OLD_CUPS, "The {part} stays: renew its cups too, or watch it for weeping"},
    {STEP_BEFORE_COMPARE, "New {part} beside the old: bore, outlets, threads, length, recess"},
    {STEP_SET_LEVEL, "Car level, on stands, wheels chocked"},
    {STEP_BEFORE_WHEELS, "Wheels off"},
    {STEP_SET_HAND_BRAKE_SLACK, "{part} off, its cable slack"},
    {STEP_OPEN_STRAP_SLAVE, "Piston of the {part} strapped in"},
    {STEP_OPEN_TRY_NIPPLE, "Soak and try the nipples of the {text}, and every union"},
    {STEP_OPEN_NIPPLE_KNOWN, "The nipple of the {part} is {text}: renew what it sits in"},
    {STEP_OPEN_FREE_PISTONS, "Stuck pistons of the {part}: short gentle strokes, wood before them"},
    {STEP_OPEN_PISTONS_EARLY, "A gentle stroke: do the pistons of the {text} move?"},
    {STEP_BEFORE_SERVO, "Try the {part}: pump, foot on, start: the pedal sinks a little"},
    {STEP_SET_SECOND_PERSON, "A helper who knows down, hold and up"},
    {STEP_SET_PAINT, "Cover the paint, water at hand"},
    {STEP_BEFORE_PLUGS, "{text}, jars, trays, rags"},
    {STEP_OPEN_PISTONS_HOME, "Pistons of the {text} home, each through its own open nipple"},
    {STEP_OPEN_EMPTY_RESERVOIR, "Draw the {part} empty, wipe it, close it"},
    {STEP_OPEN_NO_PEDAL, "No pedal from here on: a note on the {place}"},
    {STEP_OPEN_BAND_SHOES, "{part}: wet the dust, drum off, a picture, a band over the pistons"},
    {STEP_OPEN_BLOCK_PADS, "{part}: pads out, wood in their place, hung on a wire"},
    {STEP_OPEN_OFF_SERVO, "{part} off the {text}: is fluid in the servo?"},
    {STEP_OPEN_MASTER_ASIDE, "{part} off the {text}, tied aside, its pipes not bent"},
    {STEP_APART_DECIDE, "All in the hand: what is pitted, wet or rusty is renewed now"},
    {STEP_BENCH_FLOW, "Flow test of the {text}: {flow} to expect"},
    {STEP_BENCH_CYLINDER, "New {text}: open, look, wet the cups, plug"},
    {STEP_BENCH_SLAVE, "New {part}: piston home, fill, shut, plug"},
    {STEP_BENCH_MASTER, "New {part}: fill, stroke it in the vice, {strokes}"},
    {STEP_BENCH_MASTER_PLAIN, "New {part}: fill, stroke it in the vice until no bubbles come"},
    {STEP_SET_SERVO_ROD_GAP, "Rod gap of the {part} to the {text}: {least} to {most}"},
    {STEP_CLOSE_THREADS, "Every nut by hand, three turns at least"},
    {STEP_CLOSE_WASHERS, "New copper washers at every banjo"},
    {STEP_CLOSE_HOSE_STEERED, "Lock to lock, springs in and out: {part} free"},
    {STEP_CLOSE_HOSE_SPRUNG, "Up and down through all the travel: {part} free"},
    {STEP_CLOSE_HOSE_ROCKED, "Rock the engine: {part} free"},
    {STEP_CLOSE_DRUM, "Shoes of the {part} as on the picture, drum on, it turns"},
    {STEP_CLOSE_SLAVE, "{part} on, its rod in the fork, strap off"},
    {STEP_OPEN_SUPPLY, "Supply hose off the {part}"},
    {STEP_OPEN_VACUUM_HOSE, "Vacuum hose off the {part}"},
    {STEP_OPEN_SOFT_HOSE, "{part} off at both ends"},
    {STEP_OPEN_PEDAL_ROD, "Push rod of the {part} off the {text}"},
    {STEP_BENCH_MASTER_CUP, "{part}: a funnel of fluid at its inlet for that"},
    {STEP_CLOSE_CALIPER_SIDE, "Nipple of the {part} at the top"},
    {STEP_CLOSE_SUPPLY, "Supply hose on the {part}, a new clip"},
    {STEP_CLOSE_VACUUM_HOSE, "Vacuum hose on the {part}, tight"},
    {STEP_CLOSE_ROD, "Push rod of the {part} coupled to the {text}"},
    {STEP_CLOSE_SOFT_HOSE, "{part} on with new clips"},
    {STEP_SET_ROD_GAP, "Rod gap of the {part}: {least} to {most}"},
    {STEP_SET_ROD_GAP_CLUTCH, "Rod gap of the {part}: {least} to {most}"},
    {STEP_SET_FREE_PLAY, "Free play of the {part}: {least} to {most}"},
    {STEP_SET_LOAD_VALVE, "Lever of the {part} marked and tied fully open"},
    {STEP_SET_HOLD_OFF, "Stem of the {part} held open by a clip"},
    {STEP_SET_SHUTTLE, "The lamp of the {part} may light; a firm stroke brings it back"},
    {STEP_SET_SHOES_UP, "{text} up until the shoes hold"},
    {STEP_SET_SHOES_SELF, "{text} left as they are"},
    {STEP_SET_SLAVE, "Nipple of the {part} its highest point"},
    {STEP_SET_PEDAL_BLOCK, "Old {text}: wood under the pedal, no lower than {most}"},
    {STEP_SET_PEDAL_BLOCK_PLAIN,
     "Old {text}: wood under the pedal, the first third of its travel only"},
    {STEP_SET_LEVER_BLOCK, "Old {text}: wood behind the lever, no farther than {most}"},
    {STEP_SET_LEVER_BLOCK_PLAIN,
     "Old {text}: wood behind the lever, two thirds of its travel only"},
    {STEP_SET_LABEL, "A label on the {place}: what is set"},
    {STEP_SET_RESERVOIR, "{part} full of fresh {text}"},
    {STEP_SET_LOOK, "Ten minutes: look at every joint, nobody presses"},
    {STEP_SET_DEAD_LEG, "Dead end of the {part} ({text}): fill it first, or crack it"},
    {STEP_SET_TANDEM_TOGETHER, "Both circuits of the {part} by gravity until it drips"},
    {STEP_SET_TANDEM_PLAIN, "Both circuits of the {part} by gravity until it drips"},
    {STEP_CLOSE_NOTE, "Note off the {place}"},
    {STEP_SET_BAR_TOGETHER, "Balance bar: a nipple of each master open at every stroke"},
    {STEP_SET_SERVO_EMPTY, "Engine off, {part} pumped out"},
    {STEP_UNDO_SLAVE, "{part} bolted back, rod in its fork, strap off"},
    {STEP_UNDO_PEDAL_BLOCK, "Block out from under the {part}"},
    {STEP_UNDO_LEVER_BLOCK, "Block out from behind the {part}"},
    {STEP_UNDO_LOAD_VALVE, "Lever of the {part} untied, at its mark again"},
    {STEP_UNDO_HOLD_OFF, "Clip off the {part}"},
    {STEP_TEST_SHOES, "{text} back until the wheels just turn free"},
    {STEP_TEST_SHOES_SELF, "{text} worked until the pedal stands alike each time"},
    {STEP_TEST_HAND_BRAKE, "Cable of the {part}: 4 to 9 clicks, wheels free"},
    {STEP_UNDO_LABEL, "all undone that the label says"},
    {STEP_FINISH_LEVELS, "{part} to its mark, cap shut"},
    {STEP_FINISH_LEVELS_PLAIN, "{part} to its mark, cap shut"},
};

static const char *brief_of(const struct step *step)
{
    enum step_id id = step_id_of(step->row);
    for (size_t i = 0; i < sizeof briefs / sizeof *briefs; i++)
        if (briefs[i].id == id)
            return briefs[i].words;
    return NULL;
}

/* Small at its beginning, but for "DOT". */
static const char *small(struct arena *arena, const char *words)
{
    char *copy = text_copy(arena, words);
    if (isupper((unsigned char)copy[0]) && !isupper((unsigned char)copy[1]))
        copy[0] = (char)tolower((unsigned char)copy[0]);
    return copy;
}

/* Up to the first full stop, colon or semicolon that a blank or the end follows. */
static const char *beginning(struct arena *arena, const char *words)
{
    for (const char *at = words; *at != '\0'; at++)
        if (strchr(".:;", *at) != NULL && (at[1] == ' ' || at[1] == '\0'))
            return text_copy_part(arena, words, (size_t)(at - words));
    return words;
}

const char *step_brief(struct arena *arena, const struct result *result, const struct step *step)
{
    const char *brief = brief_of(step);
    const char *words = step_words(arena, result, step, brief != NULL ? brief : step->row->words);
    if (brief == NULL)
        words = beginning(arena, words);
    return small(arena, words_paired(arena, result->system, words));
}

const char *phase_briefs(struct arena *arena, const struct result *result, enum step_phase phase,
                         int *count)
{
    struct text words = text_start(arena);
    *count = 0;
    for (size_t i = 0; i < result->plan->steps.count; i++) {
        const struct step *step = &result->plan->steps.items[i];
        if (step->row->phase != phase)
            continue;
        text_add(&words, "%s%s", *count > 0 ? "; " : "", step_brief(arena, result, step));
        ++*count;
    }
    return words.items;
}
