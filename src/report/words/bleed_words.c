#include "report/words/bleed_words.h"

#include <math.h>

#include "advice/bleeding/bottles.h"
#include "base/text.h"
#include "report/words/words.h"
#include "units/unit.h"

enum stage { STAGE_MASTER, STAGE_UPSTREAM, STAGE_WHEELS, STAGE_CLUTCH };

static enum stage stage_of(const struct result *result, const struct step *step)
{
    const struct part *part = step->part >= 0 ? &result->system->parts[step->part] : NULL;
    if (step->circuit >= 0 && result->network->circuits[step->circuit].clutch)
        return STAGE_CLUTCH;
    if (part == NULL || part->kind == KIND_MASTER)
        return STAGE_MASTER;
    return kind_is_brake(part->kind) || part->kind == KIND_SLAVE ? STAGE_WHEELS : STAGE_UPSTREAM;
}

const char *bleed_stage(struct arena *arena, const struct result *result, size_t at)
{
    const struct step *step = &result->bleed->steps.items[at];
    const struct step *before = at > 0 ? step - 1 : NULL;
    enum stage stage = stage_of(result, step);
    bool same_circuit = before != NULL && before->circuit == step->circuit;
    if (before != NULL && stage_of(result, before) == stage &&
        (same_circuit || stage == STAGE_MASTER || stage == STAGE_UPSTREAM))
        return NULL;
    switch (stage) {
    case STAGE_MASTER:
        return "The master first";
    case STAGE_UPSTREAM:
        return "Upstream of the wheels";
    case STAGE_WHEELS:
    case STAGE_CLUTCH:
        break;
    }
    const char *name = step->circuit >= 0 ? result->network->circuits[step->circuit].name : "";
    bool again = false;
    for (size_t i = 0; i < at; i++)
        again = again || (result->bleed->steps.items[i].circuit == step->circuit &&
                          stage_of(result, &result->bleed->steps.items[i]) == stage);
    return text_print(arena, "%s%s", name, again ? ", again" : "");
}

const char *bleed_step_name(struct arena *arena, const struct result *result,
                            const struct step *step)
{
    if (step->part < 0)
        return step->row->id;
    return nipple_words(result->system, (struct nipple){step->part, step->nipple}, arena);
}

const char *bleed_with_words(struct arena *arena, const struct result *result,
                             const struct step *step)
{
    if (step->bleed == NULL || step->bleed->with < 0)
        return NULL;
    struct nipple with = {step->part, step->bleed->with};
    return text_print(arena, "together with %s", nipple_words(result->system, with, arena));
}

#define US_OUNCE "1 US fl-oz"

const char *bleed_volume(struct arena *arena, const struct result *result, double m3)
{
    if (isnan(m3))
        return "-";
    const char *metric = unit_text(arena, m3, DIMENSION_VOLUME, UNITS_METRIC);
    if (result->units != UNITS_IMPERIAL)
        return metric;
    double ounce = unit_read(US_OUNCE, DIMENSION_VOLUME).value;
    return text_print(arena, "%s (%.3g US fl oz)", metric, m3 / ounce);
}

bool bleed_draws(const struct step *step)
{
    const struct bleed_detail *detail = step->bleed; /* a volume that is not known counts */
    return detail != NULL && (detail->gave_up || !(detail->purge.m3 <= 0));
}

const char bleed_gave_up[] = "by the simulation the air does not come out here this way: see which "
                             "way of bleeding suits, and the car's manual";

const char *bleed_strokes(struct arena *arena, double strokes)
{
    return isnan(strokes) ? "-" : text_print(arena, "%.0f", fmax(0, ceil(strokes - 1e-9)));
}

const char *bleed_time(struct arena *arena, double seconds, const char *none)
{
    if (!isfinite(seconds))
        return none;
    if (seconds < 99.5)
        return text_print(arena, "%.0f s", fmax(1, seconds));
    if (seconds < 99.5 * 60)
        return text_print(arena, "%.0f min", seconds / 60);
    return text_print(arena, "%.1f h", seconds / 3600);
}

int bleed_top_up_every(const struct step *step)
{
    enum { USUAL = 4 };
    return step->bleed == NULL || isnan(step->bleed->reservoir_after.m3)
               ? USUAL
               : step->bleed->top_up_every;
}

const char *bleed_top_up(struct arena *arena, const struct bleed_plan *plan,
                         const struct step *step)
{
    if (plan->method == METHOD_REVERSE)
        return "draw it low as it fills";
    if (plan->method != METHOD_PEDAL)
        return "before it is half empty";
    int every = bleed_top_up_every(step);
    if (every <= 0)
        return "not during it";
    return every == 1 ? "at every stroke" : text_print(arena, "every %d strokes", every);
}

const char *bleed_method_words(const struct bleed_plan *plan)
{
    for (int i = 0; i < plan->verdict_count; i++)
        if (plan->verdicts[i].row != NULL && plan->verdicts[i].row->method == plan->method)
            return plan->verdicts[i].row->words;
    return NULL;
}

const char *bleed_how(struct arena *arena, const struct bleed_plan *plan)
{
    const char *pressed = plan->by_lever ? "Pedal or lever" : "Pedal";
    const char *again = plan->by_lever ? "pedal or lever" : "pedal";
    switch (plan->method) {
    case METHOD_PEDAL:
        return text_print(arena,
                          plan->shut_under_pressure
                              ? "Tube on, its end under fluid; half a turn open. %s down slowly, "
                                "nipple shut while it still goes down, %s up, wait three seconds. "
                                "Then three to five clear strokes."
                              : "Tube on, its end under fluid; half a turn open. %s down slowly, "
                                "wait till the flow stops, nipple shut, %s up, wait three seconds. "
                                "Then three to five clear strokes.",
                          pressed, again);
    case METHOD_PRESSURE:
    case METHOD_VACUUM:
    case METHOD_GRAVITY:
        return "Tube on, its end under fluid; half a turn open, until no more air comes, then as "
               "much again as three to five strokes would draw; then shut.";
    case METHOD_REVERSE:
        return "Reservoir nearly empty first. Push fresh fluid in at the nipple slowly; watch the "
               "reservoir, and shut the nipple before the push ends.";
    case METHOD_COUNT:
        break;
    }
    return "";
}

const char *bleed_how_short(struct arena *arena, const struct bleed_plan *plan)
{
    if (plan->method != METHOD_PEDAL)
        return bleed_how(arena, plan);
    return text_print(arena,
                      plan->shut_under_pressure
                          ? "Half a turn open. %s down slowly, nipple shut while it goes, up, wait "
                            "3 s. Then 3 to 5 clear strokes."
                          : "Half a turn open. %s down slowly, flow stops, nipple shut, up, wait "
                            "3 s. Then 3 to 5 clear strokes.",
                      plan->by_lever ? "Pedal or lever" : "Pedal");
}

const char *bleed_amount_words(const struct bleed_plan *plan)
{
    return plan->method == METHOD_REVERSE
               ? "The volume of a step is what to push in: until the air is out, at least as much "
                 "as the air on its way, and three volumes of its old fluid where that is renewed."
               : "The volume of a step is what to draw off before the clear strokes: until no more "
                 "air comes, at least as much as the air on its way, and three volumes of its old "
                 "fluid where that is renewed.";
}

const char *bleed_note_words(struct arena *arena, const struct result *result,
                             const struct method_note *note)
{
    struct named_quantity all[8] = {{0}};
    int count = 0;
    for (; count < note->quantity_count && count < 4; count++)
        all[count] = note->quantities[count];
    if (note->part >= 0)
        all[count++] =
            (struct named_quantity){.name = "part", .text = result->system->parts[note->part].name};
    return fill_words(arena, note->reason->words, all, count, result->units);
}

const char *bleed_order_words(struct arena *arena, const struct result *result,
                              const struct nipple *order, int count)
{
    struct text words = text_start(arena);
    for (int i = 0; i < count; i++)
        text_add(&words, "%s%s", i > 0 ? ", then " : "",
                 nipple_words(result->system, order[i], arena));
    return words.items;
}

int bleed_cost_rows(const struct bleed_plan *plan, struct bleed_cost_row rows[BLEED_MOST_COSTS])
{
    const struct bleed_cost_row all[BLEED_MOST_COSTS] = {
        {"planned", "this plan", &plan->planned},
        {"trade", "the trade's order, by rule", &plan->trade},
        {"makers", "the maker's order", &plan->makers},
        {"asked", "the order asked for", &plan->asked},
        {"own", "the program's own order", &plan->own},
        {"worst", "the worst order there is", &plan->worst},
    };
    int count = 0;
    for (int i = 0; i < BLEED_MOST_COSTS; i++)
        if (all[i].cost->count > 0)
            rows[count++] = all[i];
    return count;
}

const char bleed_ideal[] = "0.00 mL of air left is an ideal sum: bubbles too small for it stay in "
                           "pipes and chambers. So the second round.";

const char *bleed_same_cost_words(struct arena *arena, const struct result *result)
{
    const struct bleed_plan *plan = result->bleed;
    struct bleed_cost_row rows[BLEED_MOST_COSTS];
    int count = bleed_cost_rows(plan, rows);
    for (int i = 0; i < count; i++) {
        const struct order_cost *cost = rows[i].cost;
        const double gaps[] = {cost->fluid.m3 - plan->planned.fluid.m3,
                               cost->air_left.m3 - plan->planned.air_left.m3,
                               cost->other_air_left.m3 - plan->planned.other_air_left.m3};
        for (size_t k = 0; k < sizeof gaps / sizeof *gaps; k++)
            if (!(fabs(gaps[k]) < 5e-9))
                return NULL;
        if (!(fabs(cost->strokes - plan->planned.strokes) < 0.5) ||
            !(fabs(cost->other_strokes - plan->planned.other_strokes) < 0.5))
            return NULL;
    }
    if (count < 2)
        return NULL;
    const struct order_cost *cost = &plan->planned;
    return text_print(
        arena,
        "By the simulation the order makes no difference here: %s and %s strokes until no more "
        "air comes (%s strokes with nipples %s).",
        bleed_volume(arena, result, cost->fluid.m3), bleed_strokes(arena, cost->strokes),
        bleed_strokes(arena, cost->other_strokes), bleed_other_words(plan));
}

const char *bleed_fluid_words(struct arena *arena, const struct result *result)
{
    const struct bleed_plan *plan = result->bleed;
    if (isnan(plan->fluid.m3))
        return NULL;
    const char *drawn = text_print(arena, "%s%s", bleed_volume(arena, result, plan->fluid.m3),
                                   plan->fluid_assumed ? " (assumed)" : "");
    struct bottles bottles = bottles_for(plan->fluid_ready);
    return text_print(arena, "%s, seals unbroken: the work takes %s, and %s stay over",
                      bottles_words(arena, &bottles), drawn,
                      bleed_volume(arena, result, plan->fluid_ready.m3 - plan->fluid.m3));
}

const char *bleed_other_words(const struct bleed_plan *plan)
{
    return plan->shut_under_pressure ? "held open" : "shut early";
}

static bool same_order(const struct order_cost *a, const struct order_cost *b)
{
    if (a->count != b->count)
        return false;
    for (int i = 0; i < a->count; i++)
        if (a->order[i].part != b->order[i].part || a->order[i].index != b->order[i].index)
            return false;
    return true;
}

const char *bleed_cost_words(struct arena *arena, const struct result *result,
                             const struct bleed_cost_row *row)
{
    const struct order_cost *planned = &result->bleed->planned;
    if (row->cost == planned)
        return bleed_order_words(arena, result, planned->order, planned->count);
    bool same = same_order(planned, row->cost);
    if (same && row->cost != &result->bleed->worst)
        return "the same order as this plan";
    if (row->cost == &result->bleed->worst && row->cost->fluid.m3 <= planned->fluid.m3 &&
        row->cost->strokes <= planned->strokes && row->cost->air_left.m3 <= planned->air_left.m3)
        return "no order costs more than this plan";
    return bleed_order_words(arena, result, row->cost->order, row->cost->count);
}

const char *bleed_guess_words(const struct bleed_plan *plan)
{
    for (size_t i = 0; i < plan->steps.count; i++)
        if (plan->steps.items[i].bleed != NULL && isnan(plan->steps.items[i].volume.m3))
            return "Lengths of pipes and hoses are missing: usual ones are taken here. Measure "
                   "them.";
    return NULL;
}

const char *bleed_amount_short(struct arena *arena, const struct result *result,
                               const struct step *step)
{
    if (step->nipple < 0)
        return "no bubbles";
    if (step->bleed != NULL && !bleed_draws(step))
        return "clear";
    const char *mark = step->volume_assumed && !isnan(step->volume.m3) ? " *" : "";
    if (isnan(step->volume.m3) || result->units != UNITS_IMPERIAL)
        return text_print(arena, "%s%s", bleed_volume(arena, result, step->volume.m3), mark);
    return text_print(arena, "%s (%.3g)%s",
                      unit_text(arena, step->volume.m3, DIMENSION_VOLUME, UNITS_METRIC),
                      step->volume.m3 / unit_read(US_OUNCE, DIMENSION_VOLUME).value, mark);
}

const char *bleed_amount_head(const struct result *result)
{
    return result->units == UNITS_IMPERIAL ? "draw off (US fl oz)" : "draw off";
}

const char *bleed_strokes_short(struct arena *arena, const struct result *result,
                                const struct step *step)
{
    if (result->bleed->method != METHOD_PEDAL || step->nipple < 0)
        return "-";
    return step->bleed != NULL && !bleed_draws(step) ? "3 to 5"
                                                     : bleed_strokes(arena, step->strokes);
}

const char *bleed_top_up_short(struct arena *arena, const struct result *result,
                               const struct step *step)
{
    int every =
        step->nipple >= 0 && result->bleed->method == METHOD_PEDAL ? bleed_top_up_every(step) : 0;
    return every > 0 ? text_print(arena, "every %d", every) : "-";
}

const char *bleed_untouched_words(struct arena *arena, const struct result *result)
{
    const struct bleed_plan *plan = result->bleed;
    struct text names = text_start(arena);
    for (int i = 0; i < plan->untouched_count; i++)
        text_add(&names, "%s%s", i > 0 ? ", " : "",
                 nipple_words(result->system, plan->untouched[i], arena));
    return names.items;
}
