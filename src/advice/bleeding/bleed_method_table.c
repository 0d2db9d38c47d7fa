#include "advice/bleeding/bleed_types.h"

#define CUSTOM "common practice, no source"
#define BRETHERTON                                                                                 \
    "F. P. Bretherton, J. Fluid Mech. 10 (1961) 166; F. Viana and others, J. Fluid Mech. 494 "     \
    "(2003) 379"
#define STATICS "weight of the fluid column; air weighs nothing"
#define BOYLE   "Boyle's law"

static const struct method_row methods[] = {
    {METHOD_PEDAL, "pedal", "pedal with a helper", "a second person, a tube and a jar", CUSTOM},
    {METHOD_PRESSURE, "pressure", "pressure on the reservoir",
     "a kit with a cap that fits the reservoir, at 0.7 to 1.4 bar; never the workshop's air line",
     CUSTOM},
    {METHOD_VACUUM, "vacuum", "vacuum at the nipple",
     "a hand pump with a trap, and grease for the nipple's thread", CUSTOM},
    {METHOD_GRAVITY, "gravity", "gravity alone", "tubes and jars, and time", CUSTOM},
    {METHOD_REVERSE, "reverse", "backwards, from the nipple up to the reservoir",
     "a clean oil can or syringe with a tube, and the reservoir drawn low first", CUSTOM},
};

static const struct method_reason reasons[] = {
    {"gas-lock",
     "on the way to the {part} the pipe falls by {drop}, full of air, and the reservoir stands "
     "only {head} above the nipple: the air takes the head away, and nothing flows",
     true, false, STATICS},
    {"gas-lock-may",
     "on the way to the {part} pipes fall by {drop} in all, more than the {head} by which the "
     "reservoir stands above the nipple: air that comes to stand in all of them would stop the "
     "flow, so once begun go on to the end",
     false, false, STATICS},
    {"gas-lock-unknown",
     "heights are not given on every way: a falling pipe full of air may stop the flow; measure "
     "how high reservoir, joints and brakes are",
     false, true, STATICS},
    {"no-head", "the reservoir does not stand above the {part}: {head}", true, false, STATICS},
    {"trickles", "it gives {flow} a minute at the {part}; cold fluid half of that", false, false,
     "Hagen and Poiseuille: laminar flow in a pipe"},
    {"residual-in-way",
     "the {part} is in the way: it opens at 0.01 to 0.1 bar and the head gives {pressure}, so that "
     "it may trickle or stop",
     true, false, "opening pressure from memory"},
    {"hold-off-in-way",
     "the {part} opens at {pressure} only: its stem must be held open the whole time", false, false,
     CUSTOM},
    {"servo-shut",
     "the {part} does not let fluid pass at rest: its piston pushes what lies beyond to and fro, "
     "and "
     "no fresh fluid follows; go by the car's manual",
     true, false, "as described"},
    {"bubble-outruns",
     "in the {part} a bubble climbs against the flow: it takes {flow_least} a minute to carry it "
     "down, and there are {flow} a minute",
     true, false, BRETHERTON},
    {"bubble-may-outrun",
     "in the {part} a bubble climbs by itself: where it falls it takes {flow_least} a minute to "
     "carry it down, and there are {flow} a minute; its heights are not given",
     false, true, BRETHERTON},
    {"high-point",
     "the pipes rise to the {part} and fall again, and it has no nipple: the flow must carry its "
     "air over, so do not stop half way",
     false, false, CUSTOM},
    {"high-point-in-pipe",
     "the {part} climbs and falls again on its way: the flow must carry its air over, so do not "
     "stop half way",
     false, false, CUSTOM},
    {"nipple-below-top",
     "{volume} of air stay above the nipple of the {part} and cost {travel} of pedal, until it is "
     "unbolted and turned nipple up, its pistons held in",
     false, false, "geometry of a round chamber; " BOYLE},
    {"calipers-swapped",
     "the nipple of the {part} lies near the bottom of its chamber: left and right are swapped, or "
     "it must be unbolted and turned; {volume} of air stay and cost {travel} of pedal",
     true, false, "trade article; geometry of a round chamber"},
    {"dead-leg",
     "the {part} has a port that leads nowhere: its {volume} may stay full of air and cost "
     "{travel} "
     "of pedal; fill it before its plug or switch goes in",
     false, false, BOYLE},
    {"no-nipple", "the {part} has no nipple: crack its union while fluid is pushed", false, false,
     CUSTOM},
    {"no-nipple-to-push", "the {part} has no nipple: there is nothing to push in at", true, false,
     CUSTOM},
    {"stroke-limited",
     "the {part} is old: its cups must not run over bore that has corroded; two thirds of the "
     "stroke only",
     false, false, CUSTOM},
    {"pedal-alone", "it takes two people who understand each other", false, false, CUSTOM},
    {"old-reservoir",
     "an old reservoir, or its cap, may give way under pressure: look at the {part} first, and "
     "keep to {pressure}",
     false, false, CUSTOM},
    {"kit-each", "there are several reservoirs: the kit's cap goes on each in turn", false, false,
     CUSTOM},
    {"cups-draw-air",
     "cups of wheel cylinders and slaves seal one way: under suction they may let air in past "
     "them, where no spring spreads them",
     false, false, CUSTOM},
    {"thread-draws-air",
     "air is drawn past the nipples' threads: bubbles that never end come from there; grease them "
     "on the outside",
     false, false, CUSTOM},
    {"silicone-outgasses",
     "silicone fluid gives up three times the air that glycol fluid does under suction: the "
     "bubbles "
     "do not end, and nobody can tell when it is done",
     true, false, "air dissolved: SAE J1705 appendix A, second hand"},
    {"residual-against",
     "the {part} lets nothing back below {pressure}, more than a syringe pushes", true, false,
     CUSTOM},
    {"dirt-back",
     "what lies in pipes and cylinders is pushed into the ports of the master; only "
     "after all has been cleaned",
     false, false, CUSTOM},
    {"overflows", "{volume} go up to the {part}: draw it low first and empty it on the way", false,
     false, CUSTOM},
    {"with-buoyancy", "from the {part} upwards air and fluid go the same way", false, false,
     CUSTOM},
    {"flow-unknown",
     "what it moves through the {part} is not known: lengths or the master's stroke are missing",
     false, true, CUSTOM},
};

const struct method_row *method_rows(size_t *count)
{
    *count = sizeof methods / sizeof *methods;
    return methods;
}

const struct method_reason *method_reasons(size_t *count)
{
    *count = sizeof reasons / sizeof *reasons;
    return reasons;
}
