#include "advice/checks/checks.h"

#include <stddef.h>
#include <string.h>

#define CUSTOM "common practice, no source"
#define MOT    "UK MOT inspection manual: cars and passenger vehicles"
#define R13H   "UN Regulation No. 13-H"

/* id, severity, what, why, remedy, source, limit, test. By what they are about. */
static const struct check_row rows[] = {
    /* pressure, pedal, effort */
    {"line-pressure-high", SEVERITY_WARNING,
     "The {circuit} reaches {pressure}; usual cars stay below {most}.",
     "Either the description is wrong, or hoses and old pipes are loaded beyond what they see in "
     "other cars.",
     "Look over bores, pedal ratio, servo and effort in the description; then the master's bore.",
     CUSTOM, "line-pressure-most", check_line_pressure},
    {"pedal-on-floor", SEVERITY_DANGER,
     "The {part} leaves {left} to the floor or a piston's end, less than {least} of its travel: it "
     "stands at {travel}.",
     "{more}.",
     "Set the shoes, look for air and soft hoses; a larger master bore shortens the travel.",
     MOT ", 1.1.2", "floor-margin-least", check_pedal_floor},
    {"pedal-reserve-gone", SEVERITY_DANGER,
     "The {part} leaves {left} to the floor ({share} of its travel) at {effort}; at most {limit} "
     "may be used.",
     "Heat, old hoses and a drop of air use that up.",
     "Set the shoes, bleed again, renew hoses that swell; then compare bores.",
     "49 CFR 570.5(c) (from memory), as 570.55(c)", "pedal-used-most", check_pedal_used},
    {"pedal-reserve-low", SEVERITY_WARNING,
     "The {part} leaves {left} to the floor ({share} of its travel) at {effort}; the trade keeps "
     "{limit}.",
     "Heat, old hoses and a drop of air use the reserve up.",
     "Set the shoes, bleed again, renew hoses that swell; then compare bores.", CUSTOM,
     "pedal-left-least", check_pedal_reserve},
    {"pedal-long-when-slack", SEVERITY_ADVICE,
     "With shoes that are not set the {part} leaves only {left}; set, it leaves {set}.",
     "The reserve of this car hangs on its adjusters.",
     "Set the shoes before bleeding and at every service.", CUSTOM, "pedal-left-least",
     check_pedal_slack},
    {"floor-when-hot", SEVERITY_DANGER,
     "With brakes and fluid hot the {part} leaves {now} to the floor or a piston's end; cold, "
     "{left} "
     "is left.",
     "Drums grow and linings and fluid soften just when a long descent needs the brakes.",
     "Set the shoes, bleed again, renew hoses and fluid; compare the master's bore.", CUSTOM,
     "floor-margin-least", check_floor_hot},
    {"floor-when-knocked-back", SEVERITY_WARNING,
     "On the first stroke after pads were knocked back the {part} leaves {now} to the floor or a "
     "piston's end; else {left} is left.",
     "Run-out and bearing play push the pads away between two stops.",
     "Set the wheel bearings, true or renew the disc; pump once if the first stroke is long.",
     CUSTOM, "floor-margin-least", check_floor_knocked},
    {"floor-when-hoses-worn", SEVERITY_ADVICE,
     "With hoses that swell as much as the rule allows the {part} leaves {now} to the floor or a "
     "piston's end; as they are, {left} is left.",
     "A hose that is old may swell so: that rule is for new ones, and of old ones nothing was "
     "found "
     "printed.",
     "Renew hoses before they are old; compare the master's bore.",
     "49 CFR 571.106, S5.3.2 (from memory)", "floor-margin-least", check_floor_hoses},
    {"servo-few-strokes", SEVERITY_NOTE,
     "With the engine stopped the {part} helps for {strokes} full strokes; {least} are usual.",
     "An engine that stalls leaves the driver only those.",
     "Measure its vacuum and the volume of its shell; see that the check valve holds.", CUSTOM,
     "assisted-strokes-least", check_few_strokes},
    {"stroke-used-up", SEVERITY_DANGER,
     "At the {part} a master has {left} of its stroke left; at least {least} must be.",
     "A piston that meets its end makes no more pressure, wherever the pedal is.",
     "Set the shoes, look for air; compare the master's stroke and bore with the volume asked for.",
     CUSTOM, "stroke-left-least", check_stroke_used},
    {"effort-high", SEVERITY_WARNING,
     "A stop of {stop} takes {effort} at the pedal; pedals are made for at most {most} (from "
     "memory).",
     "Not every driver can press that hard, nor twice.",
     "Look for a servo without vacuum, a master bore too large, wheel cylinders too small.", CUSTOM,
     "effort-most", check_effort},
    {"lever-effort-high", SEVERITY_WARNING,
     "A stop of {stop} takes {effort} at the hand lever; at most {most} is asked of a hand (from "
     "memory).",
     "A hand tires, and a wet glove slips.",
     "Look for a master bore too large and for caliper pistons too small.",
     "49 CFR 571.122, S6.10, edition before 2012 (from memory)", "lever-effort-most",
     check_lever_effort},
    {"stop-not-reached", SEVERITY_DANGER, "The car cannot reach a stop of {stop}: {reason}.",
     "Half of its weight as brake force is what an inspection asks of a car.",
     "Look over the description; then bores, linings and pedal travel.", MOT ", 1.2.2",
     "asked-stop", check_stop_not_reached},
    {"pedal-ratio-unusual", SEVERITY_NOTE,
     "The {part} has a ratio of {ratio}; without servo {least} to {most} is usual.",
     "A wrong arm, or a pedal from a car with a servo, changes effort and travel alike.",
     "Measure pad to pivot and rod to pivot again.", CUSTOM, "ratio-most", check_ratio},
    {"assisted-ratio-unusual", SEVERITY_NOTE,
     "The {part} works through a servo with a ratio of {ratio}; {least} to {most} is usual.",
     "A pedal from a car without servo makes the brakes sharp and the travel long.",
     "Measure pad to pivot and rod to pivot again.", CUSTOM, "assisted-ratio-most",
     check_assisted_ratio},
    {"clutch-ratio-unusual", SEVERITY_NOTE,
     "The {part} has a ratio of {ratio}; {least} to {most} is usual for a clutch.",
     "It changes effort and release travel alike.", "Measure pad to pivot and rod to pivot again.",
     CUSTOM, "clutch-ratio-most", check_clutch_ratio},
    {"balance-bar-tilt", SEVERITY_WARNING,
     "The balance bar of the {part} tilts {tilt}; above {most} it may bind.",
     "A bar that binds gives one axle nothing when the other is lost.",
     "Compare the strokes of both masters; set the rods so that the bar stands square when hard "
     "on.",
     CUSTOM, "bar-tilt-most", check_bar_tilt},
    {"rod-gap-small", SEVERITY_WARNING,
     "The gap between push rod and piston of the {part} is {gap}; at least {limit} is wanted.",
     "A piston that does not come back covers its port: 30 K warmer its circuits stand at "
     "{pressure} with no foot on the pedal, drag, and warm further.",
     "Lengthen the gap before bleeding.", CUSTOM, "rod-gap-least", check_rod_gap},
    {"rod-gap-large", SEVERITY_ADVICE,
     "The gap between push rod and piston of the {part} is {gap}; at most {limit} is wanted.",
     "It is lost at the pad times the pedal's ratio: {lost}.",
     "Shorten the gap before bleeding, unless the maker asks for more: some old ones asked for "
     "twice "
     "as much.",
     CUSTOM, "rod-gap-most", check_rod_gap_wide},
    {"rod-gap-beyond-play", SEVERITY_ADVICE,
     "The {part} has {play} of free play at the pad, but the gap in front of the piston alone "
     "takes "
     "{lost} there.",
     "The free play, felt by hand until the pedal resists, holds the gap: one of the two is not "
     "so.",
     "Measure both again.", "geometry of the lever", NULL, check_rod_gap_beyond_play},
    {"servo-rod-gap-small", SEVERITY_WARNING,
     "The gap between the output rod of the {part} and the piston is {gap}; at least {limit} is "
     "wanted, for no gap cannot be told from a rod that presses.",
     "A piston that does not come back covers its port: 30 K warmer its circuits stand at "
     "{pressure} with no foot on the pedal, drag, and warm further.",
     "Measure the depth of the piston and how far the rod stands out, the servo without vacuum and "
     "with; set the rod before the master goes on.",
     CUSTOM, "servo-rod-gap-least", check_servo_rod_gap},
    {"servo-rod-gap-large", SEVERITY_ADVICE,
     "The gap between the output rod of the {part} and the piston is {gap}; at most {limit} is "
     "wanted.",
     "It is lost at the pad times the pedal's ratio: {lost}.",
     "Set the output rod before the master goes on.", CUSTOM, "servo-rod-gap-most",
     check_servo_rod_gap_wide},
    {"free-play-small", SEVERITY_WARNING,
     "The {part} has {play} of free play at the pad; at least {limit} is wanted.",
     "A pedal that rests on its rod keeps the piston from coming back, and the port shut.",
     "Look at the pedal's own stop and at the lamp switch, then set the rod.", CUSTOM,
     "free-play-least", check_free_play},
    {"free-play-large", SEVERITY_ADVICE,
     "The {part} has {play} of free play at the pad, {share} of its travel; at most {limit} is "
     "wanted.",
     "All of it is lost before anything is pushed.", "Set the rod; look for worn pins and bushes.",
     CUSTOM, "free-play-most", check_free_play_wide},

    /* one circuit lost, no vacuum */
    {"failed-circuit-floor", SEVERITY_WARNING,
     "With the {circuit} lost the pedal leaves {left} to the floor or the piston's end, less than "
     "{least} of its travel.",
     "The other circuit cannot be pressed as hard as it could work.",
     "Set the shoes and bleed; compare the strokes of the {part} with the volumes of its "
     "circuits.",
     CUSTOM, "floor-margin-least", check_lost_floor},
    {"failed-circuit-weak", SEVERITY_WARNING,
     "With the {circuit} lost {effort} at the pedal give {deceleration}; the rule asks for "
     "{least} (from memory).",
     "That is what is left when a hose bursts.",
     "Look over what the other circuit works, and its linings and bores.",
     R13H ", annex 3, 2.2 (from memory)", "lost-deceleration-least", check_lost_weak},
    {"one-circuit-only", SEVERITY_NOTE,
     "All brakes hang on one circuit of the {part}: one leak takes them all.",
     "Cars were made so; what remains then is the hand brake.",
     "Keep hoses, pipes and the hand brake beyond doubt.",
     "49 CFR 571.135, S4 (definition of a split system)", NULL, check_one_circuit},
    {"circuit-of-one-side", SEVERITY_DANGER, "All brakes of the {circuit} are on the {side} side.",
     "With the other circuit lost the car is braked on that side alone and is thrown round.",
     "Look over the outlets and the runs in the description, then the pipes: a circuit works an "
     "axle, "
     "a diagonal, or both wheels of an axle and more.",
     CUSTOM, NULL, check_one_side},
    {"unassisted-weak", SEVERITY_WARNING,
     "Without help of the {part} {effort} at the pedal give {deceleration}; the rule asks for "
     "{least} (from memory).",
     "An engine that stalls takes the help away.",
     "Compare pedal ratio and master bore with the maker's figures for a car with servo.",
     "49 CFR 571.135, S7.11 (from memory)", "unassisted-deceleration-least", check_unassisted},

    /* balance */
    {"rear-locks-first", SEVERITY_WARNING,
     "On a {road} road the rear wheels lock first, at {rear} and {effort}; the front ones still "
     "have "
     "{left} of their grip then.",
     "A car whose rear wheels lock turns round.",
     "Look over the bores, the valve in the rear line and its setting, and what the linings are.",
     R13H ", annex 5, 3.1 (from memory)", "rear-lock-margin-least", check_rear_first},
    {"grip-order", SEVERITY_ADVICE,
     "At braking rates from {from} to {to} of gravity the rear wheels ask for more grip than the "
     "front ones.",
     "On a road with no more grip than that the rear wheels lock first and the car turns round; "
     "{rule} does not allow it from 0.15 to 0.8.",
     "Look over bores, linings, and the valve in the rear line with its setting.",
     R13H ", annex 5, 3.1 (from memory); for cars before 1998 Directive 71/320/EEC",
     "grip-order-least", check_grip_order},
    {"grip-band", SEVERITY_ADVICE,
     "On a road of grip {grip} an axle locks at a braking rate of {rate}; {least} is asked (from "
     "memory).",
     "One axle does too little and the other runs out of grip.",
     "Look over bores, linings and valves of the axle that does little.",
     R13H ", annex 5, 3.1, grip from 0.2 to 0.8 (from memory)", "grip-band-slope", check_grip_band},
    {"side-difference", SEVERITY_WARNING,
     "Left and right {axle} brakes differ by {difference} of the stronger one; {most} is the "
     "most.",
     "The car pulls to a side.", "Compare bores, linings, drums and pistons of the two sides.",
     MOT ", 1.2.1", "side-difference-most", check_side_difference},
    {"pull-by-friction", SEVERITY_ADVICE,
     "Linings of the two {axle} sides, one {spread} better and one {spread} worse than said, would "
     "make the brakes differ by {difference}; {most} is the most.",
     "Brakes that help themselves make much of a small difference: damp, dust or a greasy thumb on "
     "one lining pulls the car to a side ({yaw} turn it).",
     "Renew linings of an axle together and of one kind, keep grease off, and try the brakes where "
     "there is room.",
     MOT ", 1.2.1, taken for the most difference", "side-difference-most", check_pull_friction},
    {"bores-differ-across-axle", SEVERITY_DANGER,
     "The {part} has a bore of {bore}, the {other} {other_bore}.",
     "The car pulls to a side at every stop.",
     "Never mix bores on an axle: measure both, and fit what the maker gives.", CUSTOM,
     "bores-differ-most", check_bores_differ},
    {"shoe-grabs", SEVERITY_WARNING,
     "At friction {friction} a shoe of the {part} comes near to locking by itself.",
     "It grabs: a little damp or rust more and that wheel stands. No figure is built on it.",
     "Measure pin and tip distance and the linings' arc again. If they are right, fit milder "
     "linings.",
     "the shoe's own balance: from 0.8 of the friction that locks it", NULL, check_shoe_grabs},
    {"weak-in-reverse", SEVERITY_NOTE,
     "Going backwards the {part} gives {share} of its torque going forward.",
     "Two leading shoes are trailing shoes in reverse: so it was made.",
     "Mind slopes; the hand brake and the other axle hold the car backwards.", CUSTOM,
     "reverse-share-least", check_reverse_weak},
    {"hand-brake-weak", SEVERITY_WARNING,
     "With {effort} at the lever the {part} holds the car facing {facing} a slope of {slope}; "
     "{least} is asked.",
     "It is also what remains when the pedal fails.",
     "Set the shoes first, then the cable; free cable and levers.", MOT ", 1.4.2",
     "hand-brake-slope-least", check_hand_brake},
    {"hand-brake-clicks-many", SEVERITY_ADVICE,
     "The lever of the {part} takes {clicks} clicks to hold; {most} is the most.",
     "Wear and stretch will bring it to the end of its way before it holds.",
     "Set the shoes first; only then take up the cable, if it has stretched.", CUSTOM,
     "hand-brake-clicks-most", check_hand_brake_clicks_many},
    {"hand-brake-clicks-few", SEVERITY_ADVICE,
     "The lever of the {part} takes {clicks} clicks to hold; {least} is the least.",
     "A cable as tight as that may hold the shoes off their stops: they drag, or the pedal grows "
     "long however well it is bled.",
     "Slack the cable right off, set the shoes, then set the cable.", CUSTOM,
     "hand-brake-clicks-least", check_hand_brake_clicks_few},
    {"cable-holds-shoes-off", SEVERITY_WARNING,
     "The cable of the {part} holds the shoe tips {off} off their stops; once it is let off the "
     "pedal goes {travel} further.",
     "Shoes set with the cable tight stand too far in; then the pedal is low after a good bleed, "
     "and self-adjusters may not work.",
     "Slack the cable off before anything else, set the shoes, then the cable with play.", CUSTOM,
     "cable-holds-off-most", check_tight_cable},

    /* hoses */
    {"hose-missing", SEVERITY_DANGER, "No flexible hose {where}, though the two move ({part}).",
     "A hard pipe across a moving gap breaks.",
     "Fit a hose, or say in the description why a hard pipe is right (hard pipe accepted).", CUSTOM,
     NULL, check_hose_missing},
    {"hose-old", SEVERITY_WARNING,
     "The {part} is of {date}, {years} years old; hoses are renewed after {most} years.",
     "Rubber ages from the inside: it swells shut, drags a brake, or bursts.",
     "Renew it, and its fellows of the same age.", CUSTOM, "hose-age-most", check_hose_old},
    {"vacuum-hose-old", SEVERITY_ADVICE,
     "The {part} is of {date}, {years} years old; rubber is renewed after {most} years.",
     "A split vacuum hose takes the servo's help away.", "Renew it, and try its check valve.",
     CUSTOM, "hose-age-most", check_vacuum_hose},
    {"hose-age-unknown", SEVERITY_ADVICE, "How old the {part} is, is not known.",
     "A hose can look sound and be shut inside.",
     "Read the date that is printed on it (month and year), or renew it.",
     "49 CFR 571.106, S5.2.2 (from memory)", NULL, check_hose_age},
    {"hose-idle", SEVERITY_NOTE, "The {part} is a hose where nothing moves.",
     "Every hose costs pedal travel.", "A pipe does there, if the maker had none.", CUSTOM, NULL,
     check_hose_idle},
    {"mount-unknown", SEVERITY_WARNING,
     "What the {part} is bolted to is not said, so whether a hose is missing there cannot be told.",
     "A forgotten hose would hide behind it.", "Say it in the description: {hint}.", CUSTOM, NULL,
     check_mount_unknown},
    {"hard-pipe-accepted", SEVERITY_NOTE,
     "No hose {where}; the description accepts a hard pipe there: {reason}.",
     "What moves tires metal.", "Look at its coil and its clips at every service.", CUSTOM, NULL,
     check_rigid_accepted},

    {"pipe-of-copper", SEVERITY_WARNING, "The {part} is of copper.",
     "Plain copper hardens where it shakes, and cracks; its flares thin as they are tightened.",
     "Renew it in steel or copper-nickel; look at its flares until then.", CUSTOM, NULL,
     check_pipe_copper},

    /* nipples, and what was found */
    {"nipple-not-at-top", SEVERITY_ADVICE,
     "The nipple of the {part} lies {below} below the top of its chamber.",
     "The air above it stays, however long it is bled.",
     "Unbolt the part and turn the nipple uppermost for bleeding; see that left and right are not "
     "swapped.",
     "trade article", NULL, check_nipple_below},
    {"nipple-none", SEVERITY_NOTE, "The {part} has no nipple.",
     "Air in it comes out only at a cracked union.",
     "Crack its union while the pedal goes down, and shut it before the pedal comes up.", CUSTOM,
     NULL, check_nipple_none},
    {"nipple-sheared", SEVERITY_WARNING, "The nipple of the {part} was found sheared off.",
     "This wheel cannot be bled.",
     "Renew the cylinder or caliper, or have the stump drilled out off the car.", CUSTOM, NULL,
     check_nipple_sheared},
    {"nipple-seized", SEVERITY_ADVICE, "The nipple of the {part} was found seized.",
     "Forced, it shears.",
     "Soak it for days, warm it, tap it. Have a new cylinder at hand before it is forced.", CUSTOM,
     NULL, check_nipple_seized},
    {"caliper-pitted", SEVERITY_DANGER, "The {cylinder} was found pitted.",
     "Its seals run on the pistons and sit in the bores: pits cut them and let fluid by.",
     "Renew the caliper, or its pistons and have the bores looked at; pits are not honed out.",
     CUSTOM, NULL, check_caliper_pitted},
    {"bore-pitted", SEVERITY_DANGER, "The bore of the {part} was found pitted.",
     "A cup does not seal over pits, and they cut it.",
     "Renew it or have it sleeved; pits are not honed out.", CUSTOM, NULL, check_bore_pitted},
    {"bore-stained", SEVERITY_ADVICE, "The bore of the {part} was found stained.",
     "Stain wears cups; under it there may be pits.",
     "Iron: hone lightly, to at most {over} over its size, and deburr the port. Anodised "
     "aluminium: never hone, renew.",
     CUSTOM, "bore-over-most", check_bore_stained},
    {"pistons-stuck", SEVERITY_DANGER, "Pistons of the {part} were found stuck.",
     "One side brakes less, or not at all, or drags.",
     "Free them, look at bores and pistons; pits or flaking on the sealing land are scrap.", CUSTOM,
     NULL, check_pistons_stuck},
    {"pull-stuck", SEVERITY_DANGER,
     "With a stuck piston in the {part} the {axle} brakes differ by {difference} of the stronger "
     "side; above {most} a steered axle is dangerous.",
     "Every stop pulls the steering over: {yaw} turn the car, at the effort of the check.",
     "Do not drive it so; free or renew the caliper or cylinder, and look at the other side too.",
     MOT ", 1.2.1", "side-difference-dangerous", check_pull_stuck},
    {"leak-weeping", SEVERITY_DANGER, "The {part} was found weeping.",
     "What weeps at rest runs out under the foot.", "Renew it or its seals, then bleed.",
     MOT ", 1.1.10, 1.1.11 and 1.1.16", NULL, check_weeping},

    /* valves and joints */
    {"residual-on-discs", SEVERITY_WARNING,
     "The {part} keeps {holds} in a line to discs; {most} is the most.",
     "The pads drag and boil the fluid.",
     "Take it out, or fit one for discs where the master lies below the calipers.", CUSTOM,
     "residual-on-discs-most", check_residual_on_discs},
    {"residual-drags", SEVERITY_WARNING,
     "The {circuit} keeps {holds} with the foot off; the shoe springs of the {part} give way at "
     "{springs}.",
     "The shoes stay on the drum: they drag, warm the fluid and wear.",
     "Take a residual valve out (two in a row hold their sum; a master may have one inside), or "
     "fit "
     "one for drums.",
     CUSTOM, NULL, check_residual_drags},
    {"residual-none", SEVERITY_NOTE, "Drums all round, and no residual valve is described.",
     "Plain cups let air past when the pedal comes back fast, unless expanders hold them.",
     "See whether the master holds one, or the cylinders have expanders.", CUSTOM, NULL,
     check_residual_none},
    {"valve-in-front-line", SEVERITY_WARNING, "The {part} takes pressure from front brakes.",
     "It belongs in the rear line: in front it makes the rear wheels lock first.",
     "Look over the runs in the description, then the pipes.", CUSTOM, NULL, check_valve_in_front},
    {"hold-off-without-drums", SEVERITY_NOTE,
     "The {part} waits for shoes to touch, but the car has no drums.",
     "It only keeps the first pressure from the discs.", "Leave it out, if the maker had none.",
     CUSTOM, NULL, check_hold_off},
    {"warning-lamp-lit", SEVERITY_WARNING,
     "The {part} trips at {trips}, but its circuits differ by {difference} with nothing lost.",
     "A lamp that is always lit warns of nothing.",
     "Look over the springs of the master and where the valve sits in the runs.", CUSTOM, NULL,
     check_lamp_lit},
    {"warning-lamp-dark", SEVERITY_WARNING,
     "The {part} trips at {trips}, but with a circuit lost it sees only {difference}.",
     "The driver is not told that half of the brakes are gone.",
     "Look over where it sits: it must lie before any valve, one circuit to each side.", CUSTOM,
     NULL, check_lamp_dark},
    {"dead-leg", SEVERITY_NOTE, "The {part} has {ports} blanked ports.",
     "Nothing flows through them: one that points up keeps its air for ever.",
     "Fill the port before the plug goes in, or crack the plug while bleeding.", CUSTOM, NULL,
     check_dead_leg},

    /* fluid */
    {"fluid-old", SEVERITY_ADVICE, "The {part} is {years} years old; it is changed every {most}.",
     "{aged}.", "Change it.", CUSTOM, "fluid-age-most", check_fluid_old},
    {"fluid-near-boiling", SEVERITY_WARNING,
     "Ten hard stops would take the fluid in the {part} to {reached}; at its age it boils at "
     "{boils}, and {margin} are wanted between.",
     "Fluid that boils is a pedal without brake.",
     "Change the fluid, or take a grade that boils later if the seals allow; look for brakes that "
     "drag.",
     CUSTOM, "boiling-margin-least", check_fluid_boils},
    {"fluid-may-boil", SEVERITY_WARNING,
     "Ten hard stops would take the fluid in the {part} to {reached}; how old it is, is not known: "
     "wet it boils at {wet}, long neglected at about {neglected}, and {margin} are wanted between.",
     "Fluid that boils is a pedal without brake.",
     "Change the fluid and write down when; look for brakes that drag.", CUSTOM,
     "boiling-margin-least", check_fluid_may_boil},
    {"free-water-boils", SEVERITY_ADVICE,
     "Ten hard stops would take the silicone fluid in the {part} to {reached}; water that lies "
     "free in it boils at {boils}.",
     "Silicone takes up no water: it gathers in the lowest place, and steam is a pedal without "
     "brake.",
     "Draw some fluid off at the lowest nipple once a year and look for water.",
     "owners' club and trade texts; water by definition", "free-water-boils", check_free_water},
    {"iron-too-hot", SEVERITY_WARNING,
     "{stops} would take the iron of the {part} beyond {most}, where what is known of it here "
     "ends.",
     "Such heat is more than linings and fluid last; how hot it and the fluid in it get cannot be "
     "said, so nothing here speaks for them.",
     "Look over mass and share of the brake force in the description; if they are so, this brake "
     "is "
     "too small for this car.",
     "from memory: the iron's specific heat as used here ends there", NULL, check_iron_too_hot},
    {"drum-grows-hot", SEVERITY_ADVICE,
     "At {hot} the drum of the {part} has grown so that each piston goes {farther} beyond its "
     "clearance of {clearance}.",
     "The pedal drops as the drums get hot.",
     "Set the shoes close, and again after bedding in; leave the rest of the pedal for it.", CUSTOM,
     "drum-growth-most", check_drum_grows},
    {"fluid-age-unknown", SEVERITY_ADVICE, "When the {part} was changed is not known.", "{aged}.",
     "Change it, and write the date down.", CUSTOM, NULL, check_fluid_age},
    {"fluid-wrong-found", SEVERITY_DANGER,
     "{found} was found where the {part} is described as {grade}.",
     "They do not mix: seals swell or shrink within hours or months.",
     "Strip all of it and take out everything of rubber to renew it; {cleaning}.", CUSTOM, NULL,
     check_fluid_found_other},
    {"fluid-other-grade-found", SEVERITY_NOTE,
     "{found} was found where the {part} is described as {grade}.",
     "The two mix; the mix counts as the lower grade.", "Change all of it.", CUSTOM, NULL,
     check_fluid_found_grade},
    {"fluid-two-families", SEVERITY_WARNING,
     "The {part} is {grade}, the {other} {other_grade}: fluids that do not mix.",
     "One tin taken for the other ruins every seal.",
     "Mark both caps, and keep tins, funnels and rubber apart.", CUSTOM, NULL,
     check_fluid_families},
    {"reservoir-small", SEVERITY_ADVICE,
     "The {part} holds {capacity}; one full stroke of all that it feeds takes {needed}.",
     "It runs dry while linings wear or while one bleeds.",
     "Measure it from the mark to empty; fit the maker's size.",
     "49 CFR 571.135, S5.4.2 (from memory)", NULL, check_reservoir_small},
    {"clutch-starves-first", SEVERITY_NOTE,
     "The {part} is fed from the {reservoir} together with the {other}; its port often lies "
     "higher.",
     "When the level sinks the clutch draws air first; it warns of lost brake fluid.",
     "Bleed the clutch last and keep the level high; a clutch that fails asks for a look at the "
     "brakes.",
     CUSTOM, NULL, check_clutch_starves},

    /* clutch */
    {"clutch-travel-short", SEVERITY_WARNING,
     "The {part} moves the bearing {travel}; the clutch wants {wanted} and {least} more.",
     "It drags, and gears grate.",
     "Bleed it, look at hose, play and fork; then compare the bores of master and slave.", CUSTOM,
     "bearing-margin-least", check_clutch_short},
    {"clutch-over-travel", SEVERITY_WARNING,
     "The {part} moves the bearing {travel}; {most} is the most that the clutch stands.",
     "Its springs are overstressed.",
     "Fit a stop to the pedal, or compare the bores of master and slave.", CUSTOM,
     "bearing-room-least", check_clutch_over},
    {"slave-over-travel", SEVERITY_DANGER,
     "The piston of the {part} moves {travel} of its {stroke}; {least} must be left.",
     "It leaves its bore, and the clutch and a shared reservoir run empty.",
     "Fit a stop to the pedal, set the rod; compare the bores of master and slave.", CUSTOM,
     "stroke-left-least", check_slave_over},
    {"clutch-clearance-small", SEVERITY_WARNING,
     "With the pedal of the {part} right down each face of the plate has {clearance} of air; "
     "{least} is the least.",
     "The plate drags: reverse crunches in after a wait, first is hard to find, the car creeps.",
     "Bleed it; look for a swollen hose, play, a bent fork, a bent or sticking plate; then compare "
     "the bores of master and slave.",
     CUSTOM, "clutch-clearance-least", check_clutch_clearance},
    {"clutch-effort-high", SEVERITY_ADVICE,
     "The pedal of the {part} asks for {effort} at its hardest; {most} is as heavy as old cars "
     "go.",
     "A heavy pedal tires the leg, wears fork and pivots, and flexes the bulkhead.",
     "Look over release force, fork ratio and bores in the description; then for a dry pivot, a "
     "worn cover or a wrong master.",
     CUSTOM, "clutch-effort-most", check_clutch_effort},

    /* wear */
    {"drum-over-limit", SEVERITY_DANGER,
     "The drum of the {part} measures {diameter}; {most} is the most that is cast in.",
     "It may burst or bend, and the pedal grows long.", "Renew {renew}.", CUSTOM, NULL,
     check_drum_over},
    {"disc-under-limit", SEVERITY_DANGER,
     "The disc of the {part} measures {thickness}; {least} is the least that is cast in.",
     "It overheats and cracks, and a piston may come too far out.", "Renew {renew}.", CUSTOM, NULL,
     check_disc_under},
    {"lining-thin", SEVERITY_WARNING,
     "The {part} has {left} of lining left; {least} is the least over the shoe.",
     "Iron on iron comes next.", "Renew the linings of the axle.", "49 CFR 570.59(c)",
     "lining-left-least", check_lining_thin},
    {"riveted-lining-thin", SEVERITY_WARNING,
     "The {part} has {left} of lining left over its rivets; {least} is the least.",
     "The rivets score the drum next.", "Renew the linings of the axle.",
     "Quebec, C-24.2, r. 32, 135(9)(a)", "riveted-left-least", check_riveted_thin},
    {"pad-thin", SEVERITY_DANGER, "The {part} has {left} of pad left; {least} is the least.",
     "Iron on iron comes next.", "Renew the pads of the axle.", MOT ", 1.1.13", "pad-left-least",
     check_pad_thin},
    {"run-out-high", SEVERITY_ADVICE,
     "The disc of the {part} runs out by {out}; {most} is the most.",
     "It knocks the pads back: the first stroke is long.",
     "Look at bearing and hub face; then true or renew the disc.", CUSTOM, "run-out-most",
     check_run_out},

    /* bores, and work */
    {"bore-not-standard", SEVERITY_ADVICE,
     "The {part} measures {bore}; the nearest standard bore, {nearest}, is further off than "
     "{within}.",
     "A worn bore reads over, never under; a wrong cup leaks or drags.",
     "Measure again at three depths in two directions; read the casting number.", CUSTOM,
     "standard-bore-within", check_bore_odd},
    {"bore-easily-mistaken", SEVERITY_NOTE,
     "The new {cylinder} is of {bore}; {twin} is only {apart} away.",
     "Cups of one in the other leak or drag.", "Measure the new part and its cups before fitting.",
     CUSTOM, "danger-pair-within", check_bore_twin},
    {"replaced-bore-changes", SEVERITY_WARNING,
     "The {cylinder} had a bore of {was}, now {now}: {change} {effect}.",
     "Effort, travel, reserve and balance are no longer those of the maker.",
     "Ask the command fit about it, without this work; the maker's bore where it does not suit.",
     CUSTOM, "bore-change-most", check_bore_changed},
    {"renewed-one-side-only", SEVERITY_ADVICE, "The {cylinder} is new, that of the {other} is not.",
     "Sides that differ pull, and what aged together fails together.", "Renew the other side too.",
     CUSTOM, NULL, check_one_side_renewed},

    /* published rules */
    {"rule-number-missed", SEVERITY_ADVICE,
     "{rule}: the rule asks for {compared} {asks}, this car has {value} on paper. {where}.",
     "Another day's inspection will measure it at the car.",
     "Look at the findings about the same part; then measure it at the car before the inspection.",
     "the rule's own: docs/findings.md, published rules", NULL, check_rule_missed},
    {"rule-needs-date", SEVERITY_NOTE,
     "When the car was first used is not said exactly enough; on it hang {rules}.",
     "Published rules ask different numbers of vehicles of different dates.",
     "Write into the description: [vehicle] first used = year, month and day.",
     "UK MOT inspection manual: cars and passenger vehicles, 1.2.2", NULL, check_rule_needs_date},

    /* readings, and how much is known */
    {"reading-off", SEVERITY_WARNING,
     "{figure}: read {reading}, computed {computed}, {off} apart. {hint}.",
     "A sound car comes nearer, if it is what the description says.",
     "Find which of the two is wrong before the road.", CUSTOM, "reading-off-most",
     check_reading_off},
    {"reading-impossible", SEVERITY_WARNING, "{figure}: read {reading}, but {end} is {most}.",
     "One of the two was measured or written wrongly, and what rests on it is wrong too.",
     "Measure both again and correct the one that is wrong.", CUSTOM, NULL,
     check_reading_impossible},
    {"assumed-mostly", SEVERITY_NOTE,
     "{assumed} of {computed} figures rest on values that were assumed; the first to measure is "
     "the "
     "{first}.",
     "Assumed values are those of usual cars, not of this one.",
     "Measure that first: the measuring sheet says how.", CUSTOM, "assumed-most",
     check_assumed_mostly},
};

const struct check_row *check_rows(size_t *count)
{
    *count = sizeof rows / sizeof *rows;
    return rows;
}

const struct check_row *check_row(const char *id)
{
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        if (strcmp(rows[i].id, id) == 0) {
            return &rows[i];
        }
    }
    return NULL;
}
