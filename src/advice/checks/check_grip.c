#include "advice/checks/checks.h"

#include <math.h>

#include "advice/figures/grip_rates.h"

/* The use of grip over the braking rates; false where it is not known, or one does not lock before
 * the other: a rider works the wheels one by one. */
static bool curves(const struct checking *checking, struct grip_use uses[GRIP_RATES])
{
    if (figure_about(checking, "grip-used-front", -1) == NULL ||
        figure_about(checking, "grip-used-rear", -1) == NULL)
        return false;
    grip_rates(checking->system, checking->network,
               solution_room(checking->system, checking->network, checking->arena), uses);
    return true;
}

static void rests_on_use(const struct checking *checking, struct finding *finding)
{
    finding_rests_on(finding, figure_about(checking, "grip-used-front", -1));
    finding_rests_on(finding, figure_about(checking, "grip-used-rear", -1));
}

void check_grip_order(struct checking *checking, const struct check_row *row)
{
    struct grip_use uses[GRIP_RATES];
    bool strict = ruling_is_for(checking, "r13h-lock-order");
    if (!strict && !ruling_is_for(checking, "eec71-lock-order"))
        return;
    if (!curves(checking, uses))
        return;
    double from = NAN, to = NAN;
    for (int i = 0; i < GRIP_RATES; i++) {
        double spare = grip_order_spare(&uses[i], strict ? GRIP_ORDER_13H : GRIP_ORDER_71_320);
        if (!(spare < limit_value(row->limit)))
            continue;
        from = isnan(from) ? uses[i].z : from;
        to = uses[i].z;
    }
    if (isnan(from))
        return;
    struct finding *finding = finding_add(checking, row, -1, NO_FIELD);
    finding_quantity(finding, "from", from, DIMENSION_NUMBER);
    finding_quantity(finding, "to", to, DIMENSION_NUMBER);
    finding_text(finding, "rule",
                 strict ? "UN Regulation No. 13-H, annex 5" : "Directive 71/320/EEC");
    rests_on_use(checking, finding);
}

void check_grip_band(struct checking *checking, const struct check_row *row)
{
    struct grip_use uses[GRIP_RATES];
    if (!ruling_is_for(checking, "r13h-grip-band") || !curves(checking, uses))
        return;
    double slope = limit_value(row->limit), worst = INFINITY;
    const struct grip_use *at = NULL;
    for (int i = 0; i < GRIP_RATES; i++) {
        double spare = grip_band_spare(&uses[i], slope);
        if (spare < 0 && spare < worst) {
            worst = spare;
            at = &uses[i];
        }
    }
    if (at == NULL)
        return;
    double grip = fmax(at->front, at->rear);
    struct finding *finding = finding_add(checking, row, -1, NO_FIELD);
    finding_quantity(finding, "grip", grip, DIMENSION_NUMBER);
    finding_quantity(finding, "rate", at->z, DIMENSION_NUMBER);
    finding_quantity(finding, "least", grip_band_least(grip, slope), DIMENSION_NUMBER);
    rests_on_use(checking, finding);
}
