#include "advice/common/steps.h"

#include <assert.h>
#include <math.h>
#include <string.h>

#include "base/list.h"

#define CUSTOM "common practice, no source"
#define MAKER  "makers' workshop texts"
#define WHY_HOME                                                                                   \
    "The oldest fluid leaves there, not back through the master, and a chamber whose piston is "   \
    "home has the least room for air."
#define WHY_UNION                                                                                  \
    "Dirt in a port cuts the first cup; a circuit that runs empty has to be bled whole."

static const struct step_row rows[] = {
    /* before */
    {"set-level", PHASE_PREPARING,
     "Stand the car level on firm ground, on stands, wheels chocked; rock it before going under.",
     "Nose up or down changes which end of a chamber is high.", CUSTOM, NULL, NULL},
    {"set-level-motorcycle", PHASE_PREPARING,
     "Strap the motorcycle upright and turn the handlebar until the master lies level.",
     "Air gathers at the highest place, which must be a nipple or the reservoir.", CUSTOM, NULL,
     NULL},
    {"set-second-person", PHASE_PREPARING,
     "Ask a second person to work the {text}, and agree on the words for down, hold and up.", NULL,
     CUSTOM, NULL, NULL},
    {"set-kit-pressure", PHASE_SETTINGS,
     "Fit the kit's cap to the {part} with its gasket, without pressure first, then at {pressure}; "
     "look at the cap and the reservoir before going on. Never more than {pressure_most}, and "
     "never the workshop's air line.",
     "An old reservoir or its cap gives way and sprays fluid.", CUSTOM, "tight, or not",
     "undo-kit"},
    {"set-kit-vacuum", PHASE_SETTINGS,
     "Smear rubber grease round the thread of every nipple, on the outside only, and put a trap "
     "before the pump.",
     "Suction draws air past the thread, and its bubbles never end.", CUSTOM, NULL, NULL},
    {"set-kit-gravity", PHASE_SETTINGS,
     "Loosen the cap of the {part}, put a tube and a jar to the nipple, its end below the "
     "reservoir "
     "and under fluid; let nobody touch the pedal.",
     "A pressed pedal covers the ports, and nothing flows.", CUSTOM, NULL, NULL},
    {"set-kit-reverse", PHASE_SETTINGS,
     "Draw the {part} low, fill the syringe with fresh fluid and drive the air out of its tube; "
     "watch the reservoir the whole time.",
     "It overflows onto paint, and dirt goes back into the ports.", CUSTOM, NULL, NULL},
    {"set-wrong-fluid", PHASE_PREPARING,
     "Stop: {text}. Do not bleed on top of it: strip all of it, take out every hose and seal to "
     "renew them, {of_fluid}; then put it together with rubber for the new fluid.",
     "The two do not mix, and seals swell or shrink within hours or months.", CUSTOM, NULL, NULL},
    {"set-other-grade", PHASE_PREPARING, "Change all of the fluid: {text}.",
     "The two mix, and the mix counts as the lower grade.", CUSTOM, NULL, NULL},
    {"set-draw-old", PHASE_SETTINGS,
     "Draw the old fluid out of the {part} down to just above its ports and wipe it out.",
     "Otherwise all of the old fluid goes through the pipes once more; with the ports bare, air "
     "does.",
     CUSTOM, NULL, NULL},
    {"set-dead-leg", PHASE_SETTINGS,
     "The {part} has a port that leads nowhere ({text}): fill it before its plug or switch goes "
     "in, "
     "or crack it while the pedal goes down.",
     "Nothing flows through it: what air it holds stays.", CUSTOM, NULL, NULL},
    {"set-paint", PHASE_PREPARING,
     "Cover the paint near the reservoir and the nipples, and have water at hand.",
     "This fluid lifts paint.", MAKER, NULL, NULL},
    {"set-rod-gap", PHASE_SETTINGS,
     "Gap between push rod and piston of the {part} at rest: {least} to {most}, or what the maker "
     "asks.",
     "Without a gap the port stays covered: no fluid comes in, and the brakes drag and tighten. "
     "Too much is lost travel.",
     CUSTOM, "gap", NULL},
    {"set-rod-gap-clutch", PHASE_SETTINGS,
     "Gap between push rod and piston of the {part} at rest: {least} to {most}.",
     "Without a gap the port stays covered: no fluid comes in, and the clutch slips. Too much is "
     "lost travel.",
     CUSTOM, "gap", NULL},
    {"set-free-play", PHASE_SETTINGS, "Free play at the pad of the {part}: {least} to {most}.",
     "It shows that the piston comes back to its stop.", CUSTOM, "free play", NULL},
    {"set-shoes-up", PHASE_SETTINGS,
     "Turn the {text} up until the shoes hold, and count the notches.",
     "Shoes that travel swallow the stroke and hide air.", CUSTOM, NULL, "test-shoes"},
    {"set-shoes-self", PHASE_SETTINGS,
     "Leave the {text} as they are: many cannot be wound back once they are up.",
     "The shoes take part of each stroke: judge the pedal only when they have set themselves.",
     CUSTOM, NULL, "test-shoes-self"},
    {"set-hand-brake-slack", PHASE_SETTINGS, "Let the {part} off and slacken its cable.",
     "A tight cable holds the brake off its stops.", CUSTOM, NULL, "test-hand-brake"},
    {"set-load-valve", PHASE_SETTINGS,
     "Mark how the lever of the {part} stands, then tie it fully open, as with a loaded car.",
     "Otherwise it lets too little through to the rear.", MAKER, NULL, "undo-load-valve"},
    {"set-hold-off", PHASE_SETTINGS, "Hold the stem of the {part} open, by a clip that is seen.",
     "It stops the gentle flow of bleeding.", CUSTOM, NULL, "undo-hold-off"},
    {"set-shuttle", PHASE_SETTINGS,
     "Expect the piston of the {part} to go over and its lamp to light while one side is open; a "
     "firm stroke with all nipples shut brings it back.",
     "An open nipple takes the pressure off one side.", CUSTOM, NULL, "test-shuttle"},
    {"set-residual", PHASE_SETTINGS,
     "Bleed through the {part} with the pedal or with pressure, not by gravity.",
     "It may hold back what gravity alone can give.", CUSTOM, NULL, NULL},
    {"set-servo-empty", PHASE_SETTINGS,
     "Engine off: press the pedal until the help of the {part} is used up.",
     "The pedal is felt better, and pistons move slowly.", CUSTOM, NULL, NULL},
    {"set-caliper-up", PHASE_SETTINGS,
     "The nipple of the {part} lies {least} below the top of its chamber: unbolt it, hang it "
     "nipple uppermost, a block of wood between the pads.",
     "Air above the nipple does not come out.", CUSTOM, NULL, "undo-caliper-up"},
    {"set-slave", PHASE_SETTINGS,
     "See that the nipple of the {part} is its highest point. If it is not, unbolt the slave, "
     "strap its piston in and hold the nipple up.",
     "A loose slave loses its piston at the first stroke.", CUSTOM, NULL, "undo-slave"},
    {"set-slave-inside", PHASE_SETTINGS,
     "The {part} sits inside the bell housing: bleed it where it is, by the nipple outside.",
     "It cannot be turned, and the gearbox hides a leak of it: look under the housing.", CUSTOM,
     NULL, NULL},
    {"set-pedal-block", PHASE_SETTINGS,
     "Old {text}: put a block of wood under the pedal so that the pad goes down no more than "
     "{most}.",
     "Beyond that a piston runs over bore that has corroded while its circuit is open.", CUSTOM,
     NULL, "undo-pedal-block"},
    {"set-lever-block", PHASE_SETTINGS,
     "Old {text}: put a block of wood between the lever and its bar so that the lever moves no "
     "more than {most} at its end.",
     "Beyond that its cups run over bore that has corroded.", CUSTOM, NULL, "undo-lever-block"},
    {"set-lever-block-plain", PHASE_SETTINGS,
     "Old {text}: pull the lever over the first two thirds of its travel only; put a block of wood "
     "between the lever and its bar.",
     "Beyond that its cups run over bore that has corroded.", CUSTOM, NULL, "undo-lever-block"},
    {"set-pedal-block-plain", PHASE_SETTINGS,
     "Old {text}: let the pedal down over the first third of its travel only; put a block of wood "
     "under it.",
     "Beyond that a piston runs over bore that has corroded while its circuit is open.", CUSTOM,
     NULL, "undo-pedal-block"},
    {"set-reservoir", PHASE_SETTINGS,
     "Fill the {part} to the mark with fresh {text}; top it up in the rhythm that each step says.",
     "Once it runs dry the whole work begins again.", CUSTOM, NULL, NULL},
    {"set-nipple-tried", PHASE_PREPARING,
     "Brush every nipple in the order below, and try that it turns before the reservoir is "
     "opened.",
     "One that shears costs a cylinder.", CUSTOM, NULL, NULL},

    {"set-tandem-together", PHASE_SETTINGS,
     "Both circuits of the {part} hold air: let fluid run into both by gravity first, nipples open "
     "until it drips, then shut. Where it does not run, keep one nipple of each circuit open while "
     "the pedal goes down, until fluid comes from both.",
     "A piston goes farther against air than against fluid, and the other falls short: the strokes "
     "below are those with the other circuit full.",
     CUSTOM, "drips, or which not", NULL},
    {"set-bar-together", PHASE_SETTINGS,
     "The {part} works two masters by a balance bar: bleed both together, a nipple of each "
     "open at every stroke.",
     "The bar tilts to the side that gives way, and jams before the other gets its stroke.", CUSTOM,
     NULL, NULL},
    {"set-pistons-home", PHASE_PREPARING,
     "Push the pistons of the {text} home slowly, each out through its own open nipple into a jar; "
     "shut the nipple before letting go.",
     WHY_HOME, CUSTOM, NULL, "undo-pistons-home"},

    /* taking apart */
    {"open-try-nipple", PHASE_OPENING,
     "Before ordering parts try the nipples of the {text}: soak them, warm them, turn them; do not "
     "force them.",
     "One that shears makes another cylinder due.", CUSTOM, "turn, or which not", NULL},
    {"open-nipple-known", PHASE_OPENING,
     "The nipple of the {part} was found {text}, and nothing is renewed there: a new cylinder or "
     "caliper settles it; otherwise drill it only off the car.",
     NULL, CUSTOM, NULL, NULL},
    {"open-free-pistons", PHASE_OPENING,
     "The pistons of the {part} were found stuck. While the old plumbing is still closed use its "
     "pressure: short gentle strokes, a block of wood before the piston, hands away.",
     "Once a union is open that help is gone.", CUSTOM, "moves, or not", NULL},
    {"open-pistons-early", PHASE_OPENING,
     "While the old plumbing is still closed see with a gentle stroke whether the pistons of the "
     "{text} move.",
     "Stuck pistons are freed best by the old pressure.", CUSTOM, "move, or which not", NULL},
    {"open-pistons-home", PHASE_OPENING,
     "Before anything is undone push the pistons of the {text} home slowly, each out through its "
     "own open nipple into a jar; shut the nipple before letting go.",
     WHY_HOME, CUSTOM, NULL, "undo-pistons-home"},
    {"open-empty-reservoir", PHASE_OPENING,
     "Draw the old fluid out of the {part} and close it again.", "Less runs out of every union.",
     CUSTOM, NULL, NULL},
    {"open-lower-reservoir", PHASE_OPENING,
     "Draw the {part} down to just below the port of the {text}, no lower, and close it again.",
     "The ports of the brakes stay covered, so that no air gets into them.", CUSTOM, NULL, NULL},
    {"open-no-pedal", PHASE_OPENING,
     "From here on nobody touches the {text}: hang a note on the {place}.",
     "One touch drives fluid out of every open end, and a piston out of its bore.", CUSTOM, NULL,
     "close-note"},
    {"open-supply", PHASE_OPENING,
     "Take the supply hose off the {part}; have a plug and a rag ready.", NULL, CUSTOM, NULL,
     "close-supply"},
    {"open-vacuum-hose", PHASE_OPENING, "Pull the vacuum hose off the {part}.", NULL, CUSTOM, NULL,
     "close-vacuum-hose"},
    {"open-soft-hose", PHASE_OPENING,
     "Pull the {part} off at both ends, one clip after the other.{plug}", NULL, CUSTOM, NULL,
     "close-soft-hose"},
    {"open-master-aside", PHASE_OPENING,
     "Unbolt the {part} from the {text} and tie it aside, its pipes on and not bent; mind the "
     "output rod and its seal.",
     NULL, CUSTOM, NULL, "close-master-back"},
    {"open-pipe-nut", PHASE_OPENING,
     "Brush and wipe the nut of the {text} at the {part}, then undo it with a pipe spanner.{plug}",
     WHY_UNION, CUSTOM, NULL, NULL},
    {"open-hose-nut", PHASE_OPENING,
     "At the {text}: brush the nut, hold the hexagon of the {part} with a second spanner, undo the "
     "nut there first and take off the clip.{plug}",
     "A hose that is turned with its pipe twists the pipe off.", CUSTOM, NULL, "close-hose-clip"},
    {"open-hose-end", PHASE_OPENING,
     "Brush the end of the {part} at the {text} and unscrew it there.{plug}",
     "It turns freely only when its other end is loose.", CUSTOM, NULL, NULL},
    {"open-direct", PHASE_OPENING,
     "Brush the joint, then unscrew the {part} from the {text}.{plug}", WHY_UNION, CUSTOM, NULL,
     NULL},
    {"open-strap-slave", PHASE_OPENING, "Strap the piston of the {part} in before it is moved.",
     "It comes out by itself, or at a touch of the pedal.", CUSTOM, NULL, "close-slave"},
    {"open-bell-housing", PHASE_OPENING,
     "The {part} sits inside the bell housing: the gearbox comes off first, by the car's manual.",
     NULL, CUSTOM, NULL, "close-bell-housing"},
    {"open-band-shoes", PHASE_OPENING,
     "{text}Slacken the adjusters of the {part}, draw the drum off without pulling at its edge, "
     "take a picture, and put a band or a clamp over the pistons.",
     "Pistons that are left free walk out.", CUSTOM, NULL, "close-drum"},
    {"open-block-pads", PHASE_OPENING,
     "Take the pads out of the {part}, put a block of wood in their place and hang it on a wire, "
     "never on its hose.",
     "Pistons walk out, and a hose that is pulled breaks inside.", CUSTOM, NULL, "close-pads"},
    {"open-pedal-rod", PHASE_OPENING, "Take the push rod of the {part} off the {text}.", NULL,
     CUSTOM, NULL, "close-rod"},
    {"open-off-servo", PHASE_OPENING,
     "Unbolt the {part} from the {text}; mind the output rod and its seal, and look whether fluid "
     "stands in the servo.",
     NULL, CUSTOM, "dry, or not", "close-part"},
    {"open-take-off", PHASE_OPENING, "Unbolt the {cylinder} and lay it out with its ports up.",
     NULL, CUSTOM, NULL, "close-part"},
    {"open-take-off-plain", PHASE_OPENING, "Unbolt the {part}.", NULL, CUSTOM, NULL, "close-plain"},
    {"open-measure", PHASE_OPENING,
     "Measure the bore of the old {cylinder} at three depths in two directions, and of the new one "
     "before it goes on.",
     "Sizes that differ by a third of a millimetre look alike.", CUSTOM, "bore", NULL},

    /* putting together */
    {"close-missing-hose", PHASE_CLOSING,
     "A hose is missing {text}: fit one, with the threads and seats of its neighbours.",
     "What moves breaks a hard pipe.", CUSTOM, NULL, NULL},
    {"close-threads", PHASE_CLOSING,
     "Start every nut by hand, three turns at least; use a pitch gauge where old meets new.",
     "A 3/8 in x 24 nut drops into an M10 x 1 hole, seems to tighten, and blows out.", CUSTOM, NULL,
     NULL},
    {"close-washers", PHASE_CLOSING,
     "New copper washers at every banjo, one on each side; none where a seat seals.", NULL, MAKER,
     NULL, NULL},
    {"close-bench", PHASE_CLOSING,
     "Bleed the new {part} at the bench before it goes on, as the bleeding plan says, and plug its "
     "outlets.",
     "Air at its closed end finds no way out once it is fitted.", CUSTOM, NULL, NULL},
    {"set-servo-rod-gap", PHASE_CLOSING,
     "Before the {text} goes on: gap between the output rod of the {part} and its piston {least} "
     "to {most}, by gauge.",
     "Without a gap the port stays covered.", CUSTOM, "gap", NULL},
    {"close-part", PHASE_CLOSING, "Fit the {cylinder}; seals wetted with fresh {text} only.",
     "{of_fluid} swells these seals.", CUSTOM, NULL, NULL},
    {"close-plain", PHASE_CLOSING, "Fit the {part}.", NULL, CUSTOM, NULL, NULL},
    {"close-slides", PHASE_CLOSING,
     "One piston works both shoes: grease the slot and try by hand that the {cylinder} slides in "
     "its backplate.",
     "One that sticks works one shoe only.", CUSTOM, "slides, or not", NULL},
    {"close-handed", PHASE_CLOSING,
     "Two leading shoes: see that the cylinders of the {part} face so that both tips lead going "
     "forward.",
     "Fitted to the wrong side both shoes trail.", CUSTOM, NULL, NULL},
    {"close-caliper-side", PHASE_CLOSING,
     "See that the nipple of the {part} is at the top: left and right are easily swapped.",
     "A nipple at the bottom leaves the chamber full of air.", "trade article", NULL, NULL},
    {"close-hose", PHASE_CLOSING,
     "Fit the {part} with what it hangs on at mid travel, its stripe straight.",
     "A twisted hose breaks inside.", CUSTOM, NULL, NULL},
    {"close-hose-in-caliper", PHASE_CLOSING,
     "Tighten the {part} in the {text} where it screws in: the maker's figure. A banjo bolt as the "
     "row below says.",
     "No thread, no figure: what one maker asks strips another's.", CUSTOM, NULL, NULL},
    {"close-hose-end", PHASE_CLOSING,
     "Screw the {part} into the {text} and tighten it there before its other end.",
     "No source gives a torque here.", CUSTOM, NULL, NULL},
    {"close-hose-clip", PHASE_CLOSING,
     "Put the {part} through its bracket and its clip back on, before the nut is tight.",
     "Without its clip the hose hangs on the pipe.", CUSTOM, NULL, NULL},
    {"close-banjo", PHASE_CLOSING,
     "A banjo bolt of the {part}: the maker's figure; without one {torque}.", NULL, MAKER, NULL,
     NULL},
    {"close-pipe-nut", PHASE_CLOSING,
     "Tighten the nut of the {text} at the {part}: the maker's figure; without one {torque}.", NULL,
     MAKER, NULL, NULL},
    {"close-pipe-nut-plain", PHASE_CLOSING,
     "Tighten the nut of the {text} at the {part}: the maker's figure; none is known here for its "
     "size or thread.",
     NULL, CUSTOM, NULL, NULL},
    {"close-hose-steered", PHASE_CLOSING,
     "All tight: turn the steering from lock to lock, springs in and out: the {part} must touch "
     "nothing and never be pulled tight.",
     NULL, CUSTOM, "free, or where not", NULL},
    {"close-hose-sprung", PHASE_CLOSING,
     "All tight: lift and drop {text} through all its travel: the {part} must touch nothing and "
     "never be pulled tight.",
     NULL, CUSTOM, "free, or where not", NULL},
    {"close-hose-rocked", PHASE_CLOSING,
     "All tight: rock the engine on its mounts: the {part} must touch nothing and never be pulled "
     "tight.",
     NULL, CUSTOM, "free, or where not", NULL},
    {"close-drum", PHASE_CLOSING,
     "Shoes, springs and adjuster of the {part} as on the picture, no grease on the linings; the "
     "drum on, and it turns.",
     NULL, CUSTOM, NULL, NULL},
    {"close-pads", PHASE_CLOSING,
     "Wood out, pads into the {part}; its bolts to the maker's torque.", NULL, CUSTOM, NULL, NULL},
    {"close-slave", PHASE_CLOSING,
     "The {part} bolted on, its rod in the fork: now the strap comes off.", NULL, CUSTOM, NULL,
     NULL},
    {"close-bell-housing", PHASE_CLOSING,
     "Before the gearbox goes on again see that the {part} and its pipe stay dry by gravity, its "
     "piston "
     "held in by a strap; no pedal.",
     "Nobody sees a leak behind the gearbox; without the clutch before it the piston flies out.",
     CUSTOM, "dry, or not", NULL},
    {"close-supply", PHASE_CLOSING, "The supply hose back on the {part}, with a new clip.", NULL,
     CUSTOM, NULL, NULL},
    {"close-vacuum-hose", PHASE_CLOSING, "The vacuum hose back on the {part}, tight on its stub.",
     NULL, CUSTOM, NULL, NULL},
    {"close-soft-hose", PHASE_CLOSING,
     "Push the {part} on at both ends, with new clips; it must not touch what is hot or moves.",
     NULL, CUSTOM, NULL, NULL},
    {"close-master-back", PHASE_CLOSING,
     "The {part} back on the {text}; its nuts to the maker's torque.", NULL, CUSTOM, NULL, NULL},
    {"close-rod", PHASE_CLOSING, "Couple the push rod of the {part} to the {text} again.", NULL,
     CUSTOM, NULL, NULL},
    {"close-note", PHASE_CLOSING,
     "The note stays on the {place} until the reservoir is filled: so long nobody touches the "
     "{text}.",
     NULL, CUSTOM, NULL, NULL},

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
     "strokes, no bubbles", NULL},
    {"bench-master-plain", PHASE_BENCH,
     "New {part}: clamp it by its flange, its outlet end up by about {angle}. Loop pipes from the "
     "outlets back under the fluid, or plug the outlets. Fill it and stroke it slowly, a third of "
     "its stroke at a time, 8 to 15 strokes, until no bubbles come.",
     "A new cylinder is full of air, and air at its closed end finds no way out once it is fitted.",
     CUSTOM, "strokes, no bubbles", NULL},
    {"bench-master-cup", PHASE_BENCH,
     "The {part} has no reservoir of its own: hold a funnel or a short tube full of fluid to its "
     "inlet for that.",
     "Otherwise it sucks air at every stroke back.", CUSTOM, NULL, NULL},
    {"bench-flow", PHASE_BENCH,
     "Flow test of the {text}: hold it level, let fresh fluid of {temperature} run through it from "
     "a funnel {least} above its end: {flow} to expect. Less than half of that: renew the pipe.",
     "A pipe that is furred up or crushed passes less; the flow goes with the fourth power of the "
     "bore.",
     "Hagen and Poiseuille: laminar flow in a pipe; half of it: common practice, no source",
     "flow a minute", NULL},

    /* bleeding */
    {"bleed-master", PHASE_BLEED,
     "{nipple}: loosen each outlet union in turn while the {text} goes down slowly, and shut it "
     "before it comes up: two strokes each, or until no bubbles come.",
     NULL, CUSTOM, "strokes it took", NULL},
    {"bleed-master-steady", PHASE_BLEED,
     "{nipple}: loosen each outlet union in turn until fluid comes without bubbles, and shut it. "
     "Nobody touches the {text}.",
     NULL, CUSTOM, "clear, or not", NULL},
    {"bleed-nipple", PHASE_BLEED,
     "{nipple}: draw off {volume}, {strokes}, then go on to three to five clear "
     "ones.",
     "Tube on, its end under fluid, half a turn open; down slowly, shut before the pedal comes "
     "up, wait three seconds.",
     CUSTOM, "drawn off", NULL},
    {"bleed-steady", PHASE_BLEED,
     "{nipple}: open it half a turn and let {volume} run out, then as much as four strokes would "
     "draw; shut it when no more air has come for so long.",
     "Tube on, its end under fluid. Tap the part with a soft hammer while it runs.", CUSTOM,
     "drawn off", NULL},
    {"bleed-backwards", PHASE_BLEED,
     "{nipple}: tube on and full, open it half a turn, push {volume} in slowly until no more air "
     "comes up in the reservoir, and shut it while fluid still goes in.",
     "Watch the reservoir: it rises.", CUSTOM, "pushed in", NULL},
    {"bleed-again", PHASE_BLEED, "{nipple} once more, until it comes clear.", NULL, CUSTOM,
     "clear, or not", NULL},
    {"bleed-clear", PHASE_BLEED,
     "{nipple}: no air that can leave comes out here: only until it comes clear.", NULL, CUSTOM,
     "clear, or not", NULL},
    {"bleed-slave", PHASE_BLEED,
     "{nipple}: draw off {volume}, {strokes}, then go on to three to five clear "
     "ones; shut the nipple before the pedal comes back.",
     "A clutch master without a check valve sucks the air back.", "trade article", "drawn off",
     NULL},

    /* after */
    {"test-second-round", PHASE_TEST,
     "Wait half an hour and touch nothing. Then bleed once more round the same nipples in the same "
     "order, as much as three to five strokes at each, until no bubble comes.",
     "Bubbles too small to be carried gather and rise meanwhile, in 3/16 in pipe as well.", CUSTOM,
     "bubbles, and where", NULL},
    {"undo-kit", PHASE_TEST, "Let the pressure off the kit, then take its cap off the {part}.",
     "Fluid sprays from a cap that is opened under pressure.", CUSTOM, NULL, NULL},
    {"undo-caliper-up", PHASE_TEST,
     "Take the wood out, bolt the {part} back to the maker's torque, its hose not twisted.", NULL,
     CUSTOM, NULL, NULL},
    {"undo-slave", PHASE_TEST,
     "If the {part} was unbolted: bolt it back, rod in its fork, then take the strap off.", NULL,
     CUSTOM, NULL, NULL},
    {"undo-pedal-block", PHASE_TEST, "Take the block out from under the {part}.",
     "With the block the pedal has no reserve.", CUSTOM, NULL, NULL},
    {"undo-lever-block", PHASE_TEST, "Take the block out from behind the {part}.",
     "With the block the lever has no reserve.", CUSTOM, NULL, NULL},
    {"undo-load-valve", PHASE_TEST,
     "Untie the lever of the {part}; it must stand at its mark again.",
     "Tied open, the rear wheels lock first.", CUSTOM, NULL, NULL},
    {"undo-hold-off", PHASE_TEST,
     "Take the clip off the stem of the {part}; the stem must come back by itself.", NULL, CUSTOM,
     NULL, NULL},
    {"finish-nipples", PHASE_TEST,
     "Nipples of the {text}, those that were opened: the maker's figure, without one {torque}; "
     "then their "
     "dust caps.",
     NULL, MAKER, NULL, NULL},
    {"undo-pistons-home", PHASE_TEST,
     "Press gently, again and again, until the pads of the {text} stand against their discs.",
     "Pistons that were pushed home take the first strokes.", CUSTOM, NULL, NULL},
    {"test-shoes", PHASE_TEST,
     "Back the {text} off until the wheels just turn free; press the brake pedal three times "
     "gently to centre the shoes, and set them again, both sides alike.",
     "Tight shoes burn, and make the pedal look better than it is.", CUSTOM, "notches back", NULL},
    {"test-shoes-self", PHASE_TEST,
     "Work the {text} as the car's manual says until the pedal stands at the same height each "
     "time; the wheels must turn free.",
     NULL, CUSTOM, "strokes it took", NULL},
    {"test-hand-brake", PHASE_TEST,
     "Now set the cable of the {part}: 4 to 9 clicks; let off, the wheels must turn free.",
     "The brake first, then the cable.", "clicks: common practice, no source", "clicks", NULL},
    {"finish-levels", PHASE_TEST,
     "Fill the {part} to its mark, never above it where the pads are worn; wipe the cap and shut "
     "it.",
     "New pads push that fluid back.", CUSTOM, "level", NULL},
    {"finish-levels-plain", PHASE_TEST, "Fill the {part} to its mark; wipe the cap and shut it.",
     NULL, CUSTOM, "level", NULL},
    {"finish-pedal", PHASE_TEST,
     "Press the {part} three times, a pause between: it must stand as high and as hard the first "
     "time as the third.",
     "Higher at the third and hard: clearance. Higher and still springy: air is left.", CUSTOM,
     "pad travel, first and third", NULL},
    {"finish-lever", PHASE_TEST,
     "Pull the {part} three times, a pause between: it must stand as far from the bar and as hard "
     "the first time as the third.",
     "Farther at the third and hard: clearance. Farther and still springy: air is left.", CUSTOM,
     "travel, first and third", NULL},
    {"finish-clutch", PHASE_TEST,
     "Press the {part} ten times slowly: it must feel the same each time and come all the way "
     "back.",
     "A feel that changes tells of air or of a cup.", CUSTOM, "the same, or not", NULL},
    {"test-engine-off", PHASE_TEST,
     "Engine off: press the pedal until the help of the {part} is used up. The next tests are "
     "without it.",
     "A servo's push hides a cup that lets fluid by.", CUSTOM, NULL, NULL},
    {"test-hold-long", PHASE_TEST,
     "First a light foot: {force} to {force_most} on the {part} for {time}, while the second "
     "person looks at every joint that was opened.{lines}",
     "The least pressure comes first: a bad joint weeps and does not spray.", CUSTOM,
     "dry, or where not", NULL},
    {"test-hold-minute", PHASE_TEST,
     "Then {force} to {force_most} on the {part} for {time}: the pad must keep its height.{lines}",
     "A pedal that sinks here and not under a hard foot has a cup that lets fluid by.",
     "Ohio Administrative Code 4501:2-1-08 (B)(1)", "sinks, or not", NULL},
    {"test-hold", PHASE_TEST,
     "Then {force} on the {part} for {time}: it must not sink, and no joint may weep.{lines}",
     "Some leaks show under full pressure only.", "49 CFR 570.55(b)", "sinks, or not", NULL},
    {"test-hold-lever", PHASE_TEST,
     "Pull the {part} lightly and look at every joint; then hard, and hold it for {time}: it must "
     "not creep to the bar.",
     NULL, CUSTOM, "dry, or where not", NULL},
    {"test-servo", PHASE_TEST,
     "{part}: engine still off, keep the foot on and start the engine. The pedal must sink a "
     "little.",
     "It shows that the servo works.", CUSTOM, "sinks, or not", NULL},
    {"test-hold-assisted", PHASE_TEST,
     "Engine running: {force} on the {part} for {time} once more: it must not sink on, and no "
     "joint may weep.{lines}",
     "The servo makes more pressure of the same foot.", "49 CFR 570.55(b)", "sinks, or not", NULL},
    {"test-reserve", PHASE_TEST,
     "Press the {part} with {force}: at least a fifth of its travel must be left. Computed, hard "
     "on: {text}.",
     NULL, "49 CFR 570.55(c)", "pedal left", NULL},
    {"test-reserve-assisted", PHASE_TEST,
     "Engine running: press the {part} with {force}: at least a fifth of its travel must be left. "
     "Computed, hard on: {text}.",
     NULL, "49 CFR 570.55(c)", "pedal left", NULL},
    {"test-servo-holds", PHASE_TEST,
     "{part}: stop the engine, wait two minutes. Two assisted strokes must be left, of a small "
     "shell one (figure assisted-strokes-left).",
     "It shows that the check valve and the vacuum hose hold.", CUSTOM, "strokes", NULL},
    {"test-shuttle", PHASE_TEST, "The lamp of the {part} must be out with the pedal hard on.",
     "A shuttle that went over shuts a circuit off the lamp's watch.", CUSTOM, "out, or not", NULL},
    {"test-circuits", PHASE_TEST,
     "On stands, each circuit by itself: a nipple of the other open, its tube in a jar, the {part} "
     "held down; a helper must not be able to turn a wheel of the circuit that is left. Shut that "
     "nipple, bleed it again, and look once more under a light foot.",
     "A circuit that never worked alone is no reserve.", CUSTOM, "holds, or not", NULL},
    {"test-free-wheels", PHASE_TEST,
     "Press and let go: every wheel whose brake was worked on must turn free at once.",
     "Wheels that drag tell of a missing rod gap, a shut port or a swollen hose.", CUSTOM,
     "free, or which not", NULL},
    {"test-clutch", PHASE_TEST,
     "Press the clutch pedal to its end and measure the travel of the {part}: computed {most}, "
     "which is {least} at the bearing{text}.",
     "Less tells of air, play or a soft hose.", CUSTOM, "slave travel", NULL},
    {"test-clutch-plain", PHASE_TEST,
     "Press the clutch pedal to its end and measure the travel of the {part}.",
     "Less tells of air, play or a soft hose.", CUSTOM, "slave travel", NULL},
    {"test-clutch-gear", PHASE_TEST,
     "Wheels chocked, engine running, {part} down: a gear must go in without a crunch, and again "
     "after it was held down for a minute.",
     "A clutch that creeps back has a cup that lets fluid by.", CUSTOM, "goes in, or not", NULL},
    {"test-overnight", PHASE_TEST,
     "Overnight: mark the level in the {text}, lay dry paper under every joint and cylinder that "
     "was worked on, and touch nothing. In the morning level and paper must be as they were; look "
     "under the boots too.",
     "Cups seal by pressure: some leak only when there is next to none.", CUSTOM,
     "level, and dry or where not", NULL},
    {"test-second-person", PHASE_TEST,
     "A second person looks over every joint that was opened, sees that nothing set for bleeding "
     "is still set, and signs.",
     NULL, CUSTOM, NULL, NULL},
    {"test-wheel-nuts", PHASE_TEST,
     "Wheels on: tighten the wheel nuts to the maker's torque, and press the brake once more "
     "before the car moves.",
     "Pistons that were pushed back take the first stroke.", CUSTOM, NULL, NULL},
    {"test-caliper-bolts", PHASE_TEST,
     "Tighten the caliper's bolts, and the axle if it was loose, to the maker's torque; work the "
     "brake once more before it moves.",
     "Pads that stand off the disc take the first stroke.", CUSTOM, NULL, NULL},
    {"test-first-drive", PHASE_ROAD,
     "First drive: walking pace, level ground, nobody about{text}; stop once, look at the joints "
     "again; then slow stops, then firm ones. Feel each brake for heat.",
     NULL, CUSTOM, "pulls to a side, or not", NULL},
    {"test-first-drive-clutch", PHASE_ROAD,
     "First drive: level ground, nobody about; try the brakes first, then pull away and change up "
     "and down.",
     NULL, CUSTOM, "slips or drags, or not", NULL},
    {"test-slope", PHASE_ROAD, "Only now a slope: the {part} must hold the car on {slope}.", NULL,
     "UK MOT inspection manual, 1.4.2", "holds, or not", NULL},
    {"test-bed-in", PHASE_ROAD,
     "Where new linings or pads went on: 20 to 30 gentle stops, cooling in between.", NULL, CUSTOM,
     NULL, NULL},

    /* later */
    {"later-next-day", PHASE_LATER, "Next day, {date}: fluid level, and the ground underneath.",
     NULL, CUSTOM, "level", NULL},
    {"later-100-km", PHASE_LATER,
     "After 100 km: set the shoes again, look at every joint, bleed again if the pedal grew "
     "longer.",
     NULL, CUSTOM, "pedal travel", NULL},
    {"later-100-km-discs", PHASE_LATER,
     "After 100 km: look at every joint that was opened; bleed again if the travel has grown.",
     NULL, CUSTOM, "travel", NULL},
    {"later-fluid", PHASE_LATER, "{part}: change the fluid by {date}.", "{of_fluid}.", CUSTOM, NULL,
     NULL},
    {"later-hoses", PHASE_LATER, "{text}: renew by {date}, whatever it looks like then.", NULL,
     CUSTOM, NULL, NULL},
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
    step->temperature.celsius = NAN;
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
