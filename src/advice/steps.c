#include "advice/steps.h"

#include <assert.h>
#include <math.h>
#include <string.h>

#include "base/list.h"

#define CUSTOM "common practice, no source"
#define MAKER  "maker's workshop text, make withheld"
#define WHY_UNION                                                                                  \
    "Dirt in a port cuts the first cup; a circuit that runs empty has to be bled whole."

static const struct step_row rows[] = {
    /* before */
    {"set-level", PHASE_SETTINGS,
     "Stand the car level on firm ground, on stands, wheels chocked; rock it before going under.",
     "Nose up or down changes which end of a chamber is high.", CUSTOM, NULL},
    {"set-level-motorcycle", PHASE_SETTINGS,
     "Strap the motorcycle upright and turn the handlebar until the master lies level.",
     "Air gathers at the highest place, which must be a nipple or the reservoir.", CUSTOM, NULL},
    {"set-second-person", PHASE_SETTINGS,
     "Ask a second person to work the pedal, and agree on the words for down, hold and up.", NULL,
     CUSTOM, NULL},
    {"set-kit-pressure", PHASE_SETTINGS,
     "Fit the kit's cap to the {part} with its gasket, without pressure first, then at {pressure}; "
     "look at the cap and the reservoir before going on. Never more than {pressure_most}, and "
     "never "
     "the workshop's air line.",
     "An old reservoir or its cap gives way and sprays fluid.", CUSTOM, "tight, or not"},
    {"set-kit-vacuum", PHASE_SETTINGS,
     "Smear rubber grease round the thread of every nipple, on the outside only, and put a trap "
     "before the pump.",
     "Suction draws air past the thread, and its bubbles never end.", CUSTOM, NULL},
    {"set-kit-gravity", PHASE_SETTINGS,
     "Loosen the cap of the {part}, put a tube and a jar to the nipple, its end below the "
     "reservoir "
     "and under fluid; let nobody touch the pedal.",
     "A pressed pedal covers the ports, and nothing flows.", CUSTOM, NULL},
    {"set-kit-reverse", PHASE_SETTINGS,
     "Draw the {part} low, fill the syringe with fresh fluid and drive the air out of its tube; "
     "watch the reservoir the whole time.",
     "It overflows onto paint, and dirt goes back into the ports.", CUSTOM, NULL},
    {"set-wrong-fluid", PHASE_SETTINGS,
     "Stop: {text}. Do not bleed on top of it: strip all of it, renew everything of rubber, flush "
     "the pipes with alcohol and dry them first.",
     "The two do not mix, and seals swell or shrink within hours or months.", CUSTOM, NULL},
    {"set-other-grade", PHASE_SETTINGS, "Change all of the fluid: {text}.",
     "The two mix, and the mix counts as the lower grade.", CUSTOM, NULL},
    {"set-dead-leg", PHASE_SETTINGS,
     "The {part} has a port that leads nowhere ({text}): fill it before its plug or switch goes "
     "in, "
     "or crack it while the pedal goes down.",
     "Nothing flows through it: what air it holds stays.", CUSTOM, NULL},
    {"set-paint", PHASE_SETTINGS,
     "Cover the paint near the reservoir and the nipples, and have water at hand.",
     "This fluid lifts paint.", MAKER, NULL},
    {"set-rod-gap", PHASE_SETTINGS,
     "Gap between push rod and piston of the {part} at rest: {least} to {most}.",
     "Without a gap the port stays covered: no fluid comes in, the brakes drag and tighten. Too "
     "much is lost pedal.",
     CUSTOM, "gap"},
    {"set-servo-rod-gap", PHASE_SETTINGS,
     "Gap between the output rod of the {part} and the piston: {least} to {most}, by gauge.",
     "Without a gap the port stays covered.", CUSTOM, "gap"},
    {"set-free-play", PHASE_SETTINGS, "Free play at the pad of the {part}: {least} to {most}.",
     "It shows that the piston comes back to its stop.", CUSTOM, "free play"},
    {"set-shoes-up", PHASE_SETTINGS, "Turn the {text} up until the shoes hold.",
     "Shoes that travel swallow the stroke and hide air.", CUSTOM, NULL},
    {"set-hand-brake-slack", PHASE_SETTINGS,
     "Let the {part} off and slacken its cable before the shoes or pads are set.",
     "A tight cable holds the shoes off their stops.", CUSTOM, NULL},
    {"set-load-valve", PHASE_SETTINGS,
     "Hold the lever of the {part} fully open, as with a loaded car, or leave the car on its "
     "wheels.",
     "Otherwise it lets too little through to the rear.", MAKER, NULL},
    {"set-hold-off", PHASE_SETTINGS, "Hold the stem of the {part} open.",
     "It stops the gentle flow of bleeding.", CUSTOM, NULL},
    {"set-shuttle", PHASE_SETTINGS,
     "Keep the piston of the {part} in its middle, or expect the lamp and a stroke that brings "
     "it back.",
     "An open nipple takes the pressure off one side.", CUSTOM, NULL},
    {"set-residual", PHASE_SETTINGS,
     "Bleed through the {part} with the pedal or with pressure, not by gravity.",
     "It may hold back what gravity alone can give.", CUSTOM, NULL},
    {"set-servo-empty", PHASE_SETTINGS,
     "Engine off: press the pedal until the help of the {part} is used up.",
     "The pedal is felt better, and pistons move slowly.", CUSTOM, NULL},
    {"set-caliper-up", PHASE_SETTINGS,
     "The nipple of the {part} lies {least} below the top of its chamber: unbolt it, turn the "
     "nipple uppermost with a block of wood between the pads, bleed, bolt it back.",
     "Air above the nipple does not come out.", CUSTOM, NULL},
    {"set-slave", PHASE_SETTINGS,
     "See that the nipple of the {part} is its highest point. If it is not, unbolt the slave, "
     "strap its piston in and hold the nipple up.",
     "A loose slave loses its piston at the first stroke.", CUSTOM, NULL},
    {"set-pedal-block", PHASE_SETTINGS,
     "Old {part}: put a block of wood under the pedal so that the pad goes down no more than "
     "{most}.",
     "Beyond that its cups run over bore that has corroded.", CUSTOM, NULL},
    {"set-lever-block", PHASE_SETTINGS,
     "Old {part}: put a block of wood between the lever and its bar so that the lever moves no "
     "more "
     "than {most} at its end.",
     "Beyond that its cups run over bore that has corroded.", CUSTOM, NULL},
    {"set-lever-block-plain", PHASE_SETTINGS,
     "Old {part}: pull the lever over the first two thirds of its travel only; put a block of wood "
     "between the lever and its bar.",
     "Beyond that its cups run over bore that has corroded.", CUSTOM, NULL},
    {"set-pedal-block-plain", PHASE_SETTINGS,
     "Old {part}: let the pedal down over the first two thirds of its travel only; put a block of "
     "wood under it.",
     "Beyond that its cups run over bore that has corroded.", CUSTOM, NULL},
    {"set-reservoir", PHASE_SETTINGS,
     "Fill the {part} to the mark with fresh {text}; top it up every four or five strokes.",
     "Once it runs dry the whole work begins again.", CUSTOM, NULL},
    {"set-nipple-tried", PHASE_SETTINGS,
     "Brush every nipple in the order below, and try that it turns before the reservoir is "
     "opened.",
     "One that shears costs a cylinder.", CUSTOM, NULL},

    /* taking apart */
    {"open-try-nipple", PHASE_OPENING,
     "Before ordering parts try the nipple of the {part}: soak it, warm it, turn it; do not "
     "force it.",
     "One that shears makes another cylinder due.", CUSTOM, "turns, or not"},
    {"open-nipple-known", PHASE_OPENING,
     "The nipple of the {part} was found {text}: a new cylinder or caliper settles it; otherwise "
     "drill it only off the car.",
     NULL, CUSTOM, NULL},
    {"open-free-pistons", PHASE_OPENING,
     "The pistons of the {part} were found stuck. While the old plumbing is still closed use its "
     "pressure: short gentle strokes, a block of wood before the piston, hands away.",
     "Once a union is open that help is gone.", CUSTOM, "moves, or not"},
    {"open-pistons-early", PHASE_OPENING,
     "While the old plumbing is still closed see with a gentle stroke whether the pistons of the "
     "{part} move.",
     "Stuck pistons are freed best by the old pressure.", CUSTOM, "move, or not"},
    {"open-empty-reservoir", PHASE_OPENING,
     "Draw the old fluid out of the {part} and close it again.", "Less runs out of every union.",
     CUSTOM, NULL},
    {"open-supply", PHASE_OPENING,
     "Take the supply hose off the {part}; have a plug and a rag ready.", NULL, CUSTOM, NULL},
    {"open-vacuum-hose", PHASE_OPENING, "Pull the vacuum hose off the {part}.", NULL, CUSTOM, NULL},
    {"open-pipe-nut", PHASE_OPENING,
     "Brush and wipe the nut of the {text} at the {part}, then undo it with a pipe spanner.{plug}",
     WHY_UNION, CUSTOM, NULL},
    {"open-hose-nut", PHASE_OPENING,
     "At the {text}: brush the nut, hold the hexagon of the {part} with a second spanner, undo the "
     "nut there first and take off the clip.{plug}",
     "A hose that is turned with its pipe twists the pipe off.", CUSTOM, NULL},
    {"open-hose-end", PHASE_OPENING,
     "Then brush the other end of the {part} and unscrew it from the {text}.{plug}",
     "It turns freely only when its other end is loose.", CUSTOM, NULL},
    {"open-direct", PHASE_OPENING,
     "Brush the joint, then unscrew the {part} from the {text}.{plug}", WHY_UNION, CUSTOM, NULL},
    {"open-strap-slave", PHASE_OPENING, "Strap the piston of the {part} in before it is moved.",
     "It comes out by itself, or at a touch of the pedal.", CUSTOM, NULL},
    {"open-band-shoes", PHASE_OPENING,
     "Slacken the adjusters of the {part}, draw the drum off without pulling at its edge, and put "
     "a band or a clamp over the pistons.",
     "Pistons that are left free walk out.", CUSTOM, NULL},
    {"open-block-pads", PHASE_OPENING,
     "Put a block of wood between the pads of the {part} and hang it on a wire, never on its "
     "hose.",
     "Pistons walk out, and a hose that is pulled breaks inside.", CUSTOM, NULL},
    {"open-pedal-rod", PHASE_OPENING, "Take the push rod of the {part} off the pedal.", NULL,
     CUSTOM, NULL},
    {"open-off-servo", PHASE_OPENING,
     "Unbolt the {part} from the {text}; mind the output rod and its seal.", NULL, CUSTOM, NULL},
    {"open-take-off", PHASE_OPENING, "Unbolt the {cylinder} and lay it out with its ports up.",
     NULL, CUSTOM, NULL},
    {"open-measure", PHASE_OPENING,
     "Measure the bore of the old {cylinder} at three depths in two directions, and of the new one "
     "before it goes on.",
     "Sizes that differ by a third of a millimetre look alike.", CUSTOM, "bore"},

    /* putting together */
    {"close-missing-hose", PHASE_CLOSING,
     "A hose is missing {text}: fit one, with the threads and seats of its neighbours.",
     "What moves breaks a hard pipe.", CUSTOM, NULL},
    {"close-threads", PHASE_CLOSING,
     "Start every nut by hand, three turns at least; use a pitch gauge where old meets new.",
     "A 3/8 in x 24 nut drops into an M10 x 1 hole, seems to tighten, and blows out.", CUSTOM,
     NULL},
    {"close-washers", PHASE_CLOSING,
     "New copper washers at every banjo, one on each side; none where a seat seals.", NULL, MAKER,
     NULL},
    {"close-part", PHASE_CLOSING, "Fit the {cylinder}; seals wetted with fresh {text} only.",
     "Mineral spirit or oil swells these seals.", CUSTOM, NULL},
    {"close-handed", PHASE_CLOSING,
     "Two leading shoes: see that the cylinders of the {part} face so that both tips lead going "
     "forward.",
     "Fitted to the wrong side both shoes trail.", CUSTOM, NULL},
    {"close-caliper-side", PHASE_CLOSING,
     "See that the nipple of the {part} is at the top: left and right are easily swapped.",
     "A nipple at the bottom leaves the chamber full of air.", "trade article (publisher withheld)",
     NULL},
    {"close-hose", PHASE_CLOSING,
     "Fit the {part} with the wheels at mid travel, its stripe straight; then turn the steering "
     "from lock to lock and lift and drop the axle.",
     "It must touch nothing and never be pulled tight.", CUSTOM, NULL},
    {"close-hose-in-caliper", PHASE_CLOSING,
     "Tighten the {part} in the {text}: {torque} where it screws in; a banjo bolt as the row "
     "below says.",
     NULL, MAKER, NULL},
    {"close-hose-end", PHASE_CLOSING,
     "Screw the {part} into the {text} and tighten it there before its other end.",
     "No source gives a torque here.", CUSTOM, NULL},
    {"close-banjo", PHASE_CLOSING, "A banjo bolt of the {part}: {torque}.", NULL, MAKER, NULL},
    {"close-pipe-nut", PHASE_CLOSING, "Tighten the nut of the {text} at the {part}: {torque}.",
     NULL, MAKER, NULL},
    {"close-nipple", PHASE_CLOSING, "Nipple of the {part} when all is done: {torque}.", NULL, MAKER,
     NULL},
    {"close-rod", PHASE_CLOSING, "Couple the push rod of the {part} to the pedal again.", NULL,
     CUSTOM, NULL},

    /* at the bench */
    {"bench-master", PHASE_BENCH,
     "New {part}: clamp it by its flange, its outlet end up by about {angle}. Loop pipes from the "
     "outlets back under the fluid, or plug the outlets. Fill it and stroke it slowly, {least} at "
     "a "
     "time, letting it come back by itself: {strokes}, {volume} through it, until no "
     "bubbles come.",
     "A new cylinder is full of air, and air at its closed end finds no way out once it is fitted.",
     "strokes: three volumes leave a twentieth of the froth; common practice, no source, says 8 to "
     "15",
     "strokes, no bubbles"},
    {"bench-master-plain", PHASE_BENCH,
     "New {part}: clamp it by its flange, its outlet end up by about {angle}. Loop pipes from the "
     "outlets back under the fluid, or plug the outlets. Fill it and stroke it slowly, a third of "
     "its stroke at a time, 8 to 15 strokes, until no bubbles come.",
     "A new cylinder is full of air, and air at its closed end finds no way out once it is fitted.",
     CUSTOM, "strokes, no bubbles"},
    {"bench-master-cup", PHASE_BENCH,
     "The {part} has no reservoir of its own: hold a funnel or a short tube full of fluid to its "
     "inlet for that.",
     "Otherwise it sucks air at every stroke back.", CUSTOM, NULL},
    {"bench-master-not", PHASE_BENCH,
     "The {part} was not off: it is not taken to the bench. Loosen each outlet union while the "
     "pedal goes down, and shut it before the pedal comes up.",
     NULL, CUSTOM, "no bubbles"},
    {"bench-flow", PHASE_BENCH,
     "Flow test of the {text}: hold it level, let fresh fluid run through it from "
     "a funnel {least} "
     "above its end: {flow} to expect. Less than half of that: renew the pipe.",
     "A pipe that is furred up or crushed passes less; the flow goes with the fourth power of the "
     "bore.",
     "Hagen and Poiseuille: laminar flow in a pipe; half of it: common practice, no source",
     "flow a minute"},

    /* bleeding */
    {"bleed-master", PHASE_BLEED,
     "{nipple}: plug the outlets, or loop pipes from them back under the fluid, and stroke it "
     "slowly until no bubbles come, 8 to 15 strokes. Or on the car: loosen each outlet union "
     "while the pedal goes down.",
     NULL, CUSTOM, "strokes it took"},
    {"bleed-nipple", PHASE_BLEED,
     "{nipple}: draw off {volume}, {strokes}, then go on to three to five clear "
     "ones.",
     "Tube on, its end under fluid, half a turn open; down slowly, shut before the pedal comes "
     "up, wait three seconds.",
     CUSTOM, "drawn off"},
    {"bleed-steady", PHASE_BLEED,
     "{nipple}: open it half a turn and let {volume} run out, then as much as four strokes would "
     "draw; shut it when no more air has come for so long.",
     "Tube on, its end under fluid. Tap the part with a soft hammer while it runs.", CUSTOM,
     "drawn off"},
    {"bleed-backwards", PHASE_BLEED,
     "{nipple}: tube on and full, open it half a turn, push {volume} in slowly until no more air "
     "comes up in the reservoir, and shut it while fluid still goes in.",
     "Watch the reservoir: it rises.", CUSTOM, "pushed in"},
    {"bleed-again", PHASE_BLEED,
     "{nipple} once more: three to five strokes, until they come clear.", NULL, CUSTOM,
     "clear, or not"},
    {"bleed-slave", PHASE_BLEED,
     "{nipple}: draw off {volume}, {strokes}, then go on to three to five clear "
     "ones; shut the nipple before the pedal comes back.",
     "A clutch master without a check valve sucks the air back.",
     "trade article (publisher withheld)", "drawn off"},

    /* after */
    {"finish-pedal", PHASE_TEST,
     "Press the {part} three times, a pause between: it must stand as high and as hard the first "
     "time as the third.",
     "Higher at the third and hard: clearance. Higher and still springy: air is left.", CUSTOM,
     "pad travel, first and third"},
    {"finish-levels", PHASE_TEST,
     "Fill the {part} to its mark, never above it where the pads are worn; wipe the cap and shut "
     "it.",
     "New pads push that fluid back.", CUSTOM, "level"},
    {"test-shoes", PHASE_TEST,
     "Back the {text} off until the wheels just turn free; press the pedal once and set them "
     "again.",
     NULL, CUSTOM, NULL},
    {"test-hand-brake", PHASE_TEST,
     "Now set the cable of the {part}: 4 to 9 clicks. It must hold the car on a slope of {slope}.",
     "Shoes first, then the cable.",
     "clicks: common practice, no source; slope: UK MOT inspection manual, 1.4.2", "clicks"},
    {"test-hold", PHASE_TEST,
     "Press the {part} with {force} and hold it for {time}: it must not sink, no joint may weep, "
     "no lamp may light.",
     "A leak shows under pressure only.", "49 CFR 570.55(b)", "sinks, or not"},
    {"test-hold-minute", PHASE_TEST,
     "Or, as another rule has it: press the {part} with {force} to {force_most} and hold it for "
     "{time}: the pad must keep its height.",
     NULL, "Ohio Administrative Code 4501:2-1-08 (B)(1)", "sinks, or not"},
    {"test-overnight", PHASE_TEST,
     "Overnight: mark the level in every reservoir, lay dry paper under every joint and cylinder, "
     "and leave the pedals alone. In the morning the levels and the paper must be as they were; "
     "peel back a boot of each cylinder and look.",
     "Cups seal by pressure: some leak only when there is next to none.", CUSTOM,
     "level, and dry or where not"},
    {"test-hold-long", PHASE_TEST,
     "Hold a firm {part} for {time} while the second person looks at every joint; then press hard "
     "for half a minute and look again, and once more at rest.",
     NULL, CUSTOM, "dry, or where not"},
    {"test-hold-lever", PHASE_TEST,
     "Pull the {part} hard and hold it for {time}; look at every joint.", NULL, CUSTOM,
     "dry, or where not"},
    {"test-reserve", PHASE_TEST,
     "Press the {part} with {force}, engine running if there is a servo: at least a fifth of its "
     "travel must be left. Computed, hard on: {text}.",
     NULL, "49 CFR 570.55(c)", "pedal left"},
    {"test-servo", PHASE_TEST,
     "{part}: engine off, use its help up, keep the foot on and start the engine. The pedal must "
     "sink a little.",
     "It shows that the servo works.", CUSTOM, "sinks, or not"},
    {"test-servo-holds", PHASE_TEST,
     "{part}: stop the engine, wait two minutes. Two assisted strokes must be left.",
     "It shows that the check valve and the vacuum hose hold.", CUSTOM, "strokes"},
    {"test-shuttle", PHASE_TEST, "The lamp of the {part} must be out with the pedal hard on.",
     "A shuttle that went over shuts a circuit off the lamp's watch.", CUSTOM, "out, or not"},
    {"test-circuits", PHASE_TEST,
     "Try each circuit by itself at walking pace on level ground, hand brake ready: a nipple of "
     "the other cracked open, tube in a jar. Then shut and bleed that nipple again.",
     "A circuit that never worked alone is no reserve.", CUSTOM, "holds, or not"},
    {"test-free-wheels", PHASE_TEST, "Press and let go: every wheel must turn free at once.",
     "Wheels that drag tell of a missing rod gap, a shut port or a swollen hose.", CUSTOM,
     "free, or which not"},
    {"test-clutch", PHASE_TEST,
     "Press the clutch pedal to the floor and measure the travel of the {part}: computed {most}, "
     "which is {least} at the bearing.",
     "Less tells of air, play or a soft hose.", CUSTOM, "slave travel"},
    {"test-clutch-plain", PHASE_TEST,
     "Press the clutch pedal to the floor and measure the travel of the {part}.",
     "Less tells of air, play or a soft hose.", CUSTOM, "slave travel"},
    {"test-wheel-nuts", PHASE_TEST, "Tighten the wheel nuts to the maker's torque.", NULL, CUSTOM,
     NULL},
    {"test-second-person", PHASE_TEST,
     "A second person looks over every joint that was opened, and signs.", NULL, CUSTOM, NULL},
    {"test-first-drive", PHASE_TEST,
     "First drive: walking pace, level ground, nobody about, hand brake ready; then slow stops, "
     "then firm ones.",
     NULL, CUSTOM, "pulls to a side, or not"},
    {"test-bed-in", PHASE_TEST, "Bed new linings in: 20 to 30 gentle stops, cooling in between.",
     NULL, CUSTOM, NULL},

    /* later */
    {"later-next-day", PHASE_LATER, "Next day, {date}: fluid level, and the ground under the car.",
     NULL, CUSTOM, "level"},
    {"later-100-km", PHASE_LATER,
     "After 100 km: set the shoes again, look at every joint, bleed again if the pedal grew "
     "longer.",
     NULL, CUSTOM, "pedal travel"},
    {"later-100-km-discs", PHASE_LATER,
     "After 100 km: look at every joint, bleed again if the pedal or lever goes further.", NULL,
     CUSTOM, "travel"},
    {"later-fluid", PHASE_LATER, "{part}: change the fluid by {date}.",
     "It takes up water from the air, and water boils.", CUSTOM, NULL},
    {"later-hoses", PHASE_LATER, "{text}: renew by {date}, whatever it looks like then.", NULL,
     CUSTOM, NULL},
};

const struct step_row *step_rows(size_t *count)
{
    *count = sizeof rows / sizeof *rows;
    return rows;
}

const struct step_row *step_row(const char *id)
{
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        if (strcmp(rows[i].id, id) == 0) {
            return &rows[i];
        }
    }
    return NULL;
}

struct step *steps_add(struct steps *steps, const char *row_id)
{
    struct step *step = LIST_ADD(steps->arena, steps);
    step->row = step_row(row_id);
    assert(step->row != NULL);
    step->number = (int)steps->count;
    step->part = step->nipple = step->circuit = -1;
    step->run.m = NAN;
    step->volume.m3 = NAN;
    step->strokes = NAN;
    step->torque.nm = step->torque_most.nm = NAN;
    step->least.m = step->most.m = NAN;
    step->force.n = NAN;
    step->time.s = NAN;
    step->force_most.n = NAN;
    step->pressure.pa = step->pressure_most.pa = NAN;
    step->angle.rad = NAN;
    step->flow = NAN;
    step->slope.of_1 = NAN;
    return step;
}

int step_boxes(const struct step *step, const char *names[STEP_MOST_BOXES])
{
    static const char *const unions[] = {"open-pipe-nut", "open-hose-nut", "open-hose-end",
                                         "open-direct"};
    for (size_t i = 0; i < sizeof unions / sizeof *unions; i++) {
        if (strcmp(step->row->id, unions[i]) == 0) {
            names[0] = "brushed";
            names[1] = "undone";
            names[2] = "plugged";
            return step->plug == NULL ? 2 : 3;
        }
    }
    return 0;
}

bool steps_first_of_row(const struct steps *steps, size_t at)
{
    for (size_t i = 0; i < at; i++) {
        if (steps->items[i].row == steps->items[at].row) {
            return false;
        }
    }
    return true;
}
