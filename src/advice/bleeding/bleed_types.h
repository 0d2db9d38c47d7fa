#ifndef FIRMPEDAL_ADVICE_BLEEDING_BLEED_TYPES_H
#define FIRMPEDAL_ADVICE_BLEEDING_BLEED_TYPES_H

#include "advice/common/steps.h"
#include "base/message.h"
#include "advice/checks/finding.h"
#include "network/graph.h"
#include "purge/purge.h"

/* What a bleed plan is made of. */

/* A way of bleeding and whether it suits this car. */
struct method_row {
    enum bleed_method method;
    const char *id;    /* "pedal" */
    const char *words; /* "pedal with a helper" */
    const char *kit;   /* what it needs */
    const char *source;
};
const struct method_row *method_rows(size_t *count);

/* Why a method does or does not suit, a row of a table. */
struct method_reason {
    const char *id;    /* "gas-lock" */
    const char *words; /* with {part}, {volume}, {drop}, {head}, {flow}, {travel} */
    bool against;      /* it rules the method out; otherwise only to be minded */
    bool unknown;      /* it may rule the method out, and what would tell is not known */
    const char *source;
};
const struct method_reason *method_reasons(size_t *count);

struct method_note {
    const struct method_reason *reason;
    int part;                            /* -1 */
    struct named_quantity quantities[4]; /* what stands in its words */
    int quantity_count;
};
struct method_verdict {
    const struct method_row *row;
    bool suits;   /* nothing rules it out */
    bool unknown; /* something may, that cannot be worked out: never said to suit */
    struct method_note *notes;
    int note_count;
};

/* What an order costs, by the simulation. */
struct order_cost {
    struct nipple *order; /* as it would be gone through */
    int count;
    struct volume fluid; /* drawn off until no more air comes, clear strokes not counted */
    double strokes;
    struct volume air_left; /* that could have left */
    /* the same by the other practice: nipples shut under pressure where the plan holds them open
     * until the flow stops, held open where it shuts them */
    struct volume other_fluid;
    double other_strokes;
    struct volume other_air_left;
};

/* What a person may want of the plan. Zeroed: the planner's own order, by the pedal, nipples held
 * open until the flow stops. */
struct bleed_wishes {
    enum bleed_method method;
    bool shut_under_pressure;
    const struct nipple *order; /* an order to follow, before the maker's; NULL: none */
    int order_count;
};

/* What is particular to one bleeding step, beside what every step has. */
struct bleed_detail {
    struct volume path;   /* pipes, hoses and chambers from the master to the nipple */
    struct volume branch; /* that part of it that no earlier step has drawn through */
    struct volume purge;  /* to draw until no more air comes, by the simulation. The step's own
                           * volume and strokes are what to draw before the clear strokes: this,
                           * at least the air's volume, and the renewal where the fluid is renewed */
    double purge_strokes; /* of this pedal */
    struct volume
        stroke_in_air;     /* what one gives while the other circuit of the tandem, which comes
                            * later, still holds its air; NaN: no less than beside a full one */
    bool gave_up;          /* by the simulation the air would not come */
    struct volume renewal; /* to draw so that the old fluid is out: three volumes of it, and
                            * the air where the work renews the fluid */
    double renewal_strokes;
    struct duration by_gravity;    /* to draw the step's volume at the fluid's temperature; NaN: it
                                    * does not run */
    struct duration by_pressure;   /* at the kit's pressure */
    double flow_by_gravity;        /* m3/s of fluid without air; 0: gravity does not move it; NaN */
    double flow_by_pressure;       /* m3/s */
    struct volume reservoir_after; /* in the reservoir after the step; NaN, and backwards */
    int top_up_every;              /* strokes after which to top up, so that it never runs dry; 0 */
    struct volume trapped;         /* air that stays above the nipple */
    struct length trapped_pedal;   /* what that costs at the pedal, had it so much travel */
    bool trapped_to_floor;         /* and it has not: the pedal goes to the floor */
    struct volume air_left;        /* in the circuit after the step, by the simulation */
    const char *way_up;            /* "at the top", "15 mm below the top: ..." */
    int with;                      /* another nipple open at the same time; -1 */
};

enum bleed_scope {
    BLEED_NOTHING, /* nothing was opened */
    BLEED_PART,    /* only what was opened */
    BLEED_ALL
};
/* What one stroke of the pedal gives a circuit. */
struct circuit_stroke {
    struct volume full;   /* the other circuit of a tandem firm; NaN */
    struct volume in_air; /* while that holds the air that the work let in, its nipples shut; NaN:
                           * it holds none, or there is none */
    bool springs_assumed; /* in_air rests on springs that are not described */
};
/* All fluid renewed with this work, where the work does not say so. */
struct renewal {
    bool open;           /* the work leaves old fluid: the other values are set */
    struct volume fluid; /* that the work would take then, in all; NaN when lengths are missing */
    double strokes;      /* at all nipples, before the clear ones; NaN */
    double strokes_now;  /* of this plan */
};
struct bleed_plan {
    enum bleed_scope scope;
    const char *scope_reason; /* in words: "the master is new", "no work file: the whole car" */
    bool refused;             /* a loop in the plumbing: no order can be given */
    const char *refusal;
    bool makers_order;       /* the description's own order was followed */
    struct nipple *left_out; /* nipples in scope, but the clutch's, that a given order leaves out */
    int left_out_count;
    struct steps settings;    /* before */
    struct steps steps;       /* PHASE_BLEED, in order */
    struct nipple *untouched; /* nipples that stay shut */
    int untouched_count;
    struct volume fluid;       /* that the work takes, in all; NaN when lengths are missing */
    struct volume fluid_ready; /* to have ready: that in whole bottles; NaN */
    bool fluid_assumed;
    struct renewal renewal;            /* what it would come to with all fluid renewed */
    const struct circuit_stroke *each; /* by circuit; NULL: nothing is bled */
    enum bleed_method method;          /* by which strokes and times are given */
    bool shut_under_pressure;          /* the nipple is shut while the pedal still presses */
    bool by_lever;                     /* a hand lever is among what is pressed */
    struct method_verdict verdicts[METHOD_COUNT];
    int verdict_count;
    struct order_cost planned; /* the order of steps */
    struct order_cost trade;   /* the trade's order by rule alone; count 0: not worked out */
    struct order_cost worst;   /* the worst order there is, circuit by circuit; count 0 */
    int tried;                 /* orders that were tried by the simulation to find the plan's */
    const struct reason_row *departure; /* why it is not the trade's order; NULL: it is */
    struct nipple *asked_left_out;      /* nipples in scope that the asked order leaves out */
    int asked_left_out_count;
    struct order_cost makers;  /* the maker's; count 0: none given */
    bool asked_order;          /* the order that the user asked for is followed */
    struct order_cost asked;   /* that order as asked, without what it leaves out; count 0: none */
    struct order_cost own;     /* the order followed if none were asked for; count 0 */
    struct purge_point *curve; /* air left against fluid, by the planned order */
    int point_count;
    struct steps bench; /* bench bleeding of new masters, flow test of cleaned pipes */
};

#endif
