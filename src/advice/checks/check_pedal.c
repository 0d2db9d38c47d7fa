#include "advice/checks/checks.h"

#include <math.h>
#include <stddef.h>

#include "physics/pressure.h"

/* m: as near as the search of the end comes, and nearer than anybody measures. */
#define AT_ITS_END 0.05e-3

static bool is_pedal(const struct checking *checking, int part)
{
    return checking->system->parts[part].kind == KIND_PEDAL;
}

void check_line_pressure(struct checking *checking, const struct check_row *row)
{
    for (int c = 0; c < checking->network->circuit_count; c++) {
        const struct figure *figure = figure_about(checking, "line-pressure", c);
        if (figure == NULL || !(figure->value > limit_value(row->limit))) {
            continue;
        }
        int master = checking->network->circuits[c].master;
        struct finding *finding = finding_add(checking, row, master, FIELD(as.master.bore));
        finding_text(finding, "circuit", figure->of);
        finding_quantity(finding, "pressure", figure->value, DIMENSION_PRESSURE);
        finding_limit(finding, "most");
        finding_rests_on(finding, figure);
    }
}

/* Whether a pedal that is not on its floor has one piston of a tandem at its end and the other not:
 * first against second piston, or second against the end, the other circuit still gains. */
static bool other_piston_goes_on(const struct checking *checking, int pedal)
{
    const struct part *part = &checking->system->parts[pedal];
    int master = pressure_worked_master(checking->system, pedal, 0);
    if (part->as.pedal.works.count != 1 || master < 0 ||
        checking->system->parts[master].as.master.type != MASTER_TANDEM ||
        figure_value(checking, "pedal-travel", pedal) >= pedal_end(&part->as.pedal).m) {
        return false;
    }
    bool ended = false, goes_on = false;
    for (int c = 0; c < checking->network->circuit_count; c++) {
        if (checking->network->circuits[c].master == master) {
            double left = figure_value(checking, "piston-stroke-left", c);
            ended = ended || left <= AT_ITS_END;
            goes_on = goes_on || left > AT_ITS_END;
        }
    }
    return ended && goes_on;
}

void check_pedal_floor(struct checking *checking, const struct check_row *row)
{
    for (int i = 0; i < checking->system->part_count; i++) {
        const struct figure *left =
            is_pedal(checking, i) ? figure_about(checking, "pedal-left", i) : NULL;
        if (left != NULL && left->value < floor_margin(checking, i)) {
            struct finding *finding = finding_add(checking, row, i, FIELD(as.pedal.travel));
            finding_quantity(finding, "left", left->value, DIMENSION_LENGTH);
            finding_limit(finding, "least");
            finding_quantity(finding, "travel", figure_value(checking, "pedal-travel", i),
                             DIMENSION_LENGTH);
            finding_text(finding, "more",
                         other_piston_goes_on(checking, i)
                             ? "One piston of the tandem stands at its end: more foot works the "
                               "other circuit alone, how much is not computed"
                             : "There more foot gives no more brake");
            finding_rests_on(finding, left);
        }
    }
}

/* Pedals that keep some of their travel: from one share of it up to another. */
static void find_reserve(struct checking *checking, const struct check_row *row, double from,
                         double lever_from, double below)
{
    for (int i = 0; i < checking->system->part_count; i++) {
        const struct figure *left =
            is_pedal(checking, i) ? figure_about(checking, "pedal-left", i) : NULL;
        if (left == NULL) {
            continue;
        }
        const struct pedal *pedal = &checking->system->parts[i].as.pedal;
        double share = left->value / pedal_end(pedal).m;
        /* The rule about what is used speaks of pedals: a lever has the trade's reserve only. */
        bool lever = pedal->type == PEDAL_HAND;
        if (share > 0 && share >= (lever ? lever_from : from) && share < below) {
            struct finding *finding = finding_add(checking, row, i, FIELD(as.pedal.travel));
            finding_quantity(finding, "left", left->value, DIMENSION_LENGTH);
            finding_quantity(finding, "share", share, DIMENSION_SHARE);
            finding_quantity(finding, "effort", figure_value(checking, "pedal-effort", i),
                             DIMENSION_FORCE);
            finding_limit(finding, "limit");
            finding_rests_on(finding, left);
        }
    }
}

void check_pedal_reserve(struct checking *checking, const struct check_row *row)
{
    find_reserve(checking, row, 1 - limit_value("pedal-used-most"),
                 limit_value("floor-margin-least"), limit_value(row->limit));
}

void check_pedal_used(struct checking *checking, const struct check_row *row)
{
    find_reserve(checking, row, limit_value("floor-margin-least"), INFINITY,
                 1 - limit_value(row->limit));
}

void check_pedal_slack(struct checking *checking, const struct check_row *row)
{
    for (int i = 0; i < checking->system->part_count; i++) {
        const struct figure *slack =
            is_pedal(checking, i) ? figure_about(checking, "pedal-left-slack", i) : NULL;
        double travel = pedal_end(&checking->system->parts[i].as.pedal).m;
        double least = limit_value(row->limit);
        if (slack != NULL && slack->value / travel < least &&
            figure_value(checking, "pedal-left", i) / travel >= least) {
            struct finding *finding = finding_add(checking, row, i, FIELD(as.pedal.travel));
            finding_quantity(finding, "left", slack->value, DIMENSION_LENGTH);
            finding_quantity(finding, "set", figure_value(checking, "pedal-left", i),
                             DIMENSION_LENGTH);
            finding_limit(finding, "limit");
            finding_rests_on(finding, slack);
        }
    }
}

void check_stroke_used(struct checking *checking, const struct check_row *row)
{
    for (int i = 0; i < checking->system->part_count; i++) {
        const struct figure *left =
            is_pedal(checking, i) ? figure_about(checking, "stroke-left", i) : NULL;
        if (left != NULL && left->value < limit_value(row->limit)) {
            struct finding *finding = finding_add(checking, row, i, NO_FIELD);
            finding_quantity(finding, "left", fmax(left->value, 0), DIMENSION_LENGTH);
            finding_limit(finding, "least");
            finding_rests_on(finding, left);
        }
    }
}

static bool has_hand_lever(const struct system *system)
{
    for (int i = 0; i < system->part_count; i++) {
        if (system->parts[i].kind == KIND_PEDAL && system->parts[i].as.pedal.type == PEDAL_HAND) {
            return true;
        }
    }
    return false;
}

/* A foot and a hand have limits of their own, so each has its row. */
static void check_effort_by(struct checking *checking, const struct check_row *row, bool by_hand)
{
    const struct figure *effort = figure_about(checking, "effort-for-half-g", -1);
    if (has_hand_lever(checking->system) != by_hand || effort == NULL ||
        !(effort->value > limit_value(row->limit))) {
        return;
    }
    struct finding *finding = finding_add(checking, row, -1, NO_FIELD);
    finding_quantity(finding, "effort", effort->value, DIMENSION_FORCE);
    finding_quantity(finding, "stop", limit_value("asked-stop"), DIMENSION_ACCELERATION);
    finding_limit(finding, "most");
    finding_rests_on(finding, effort);
}

void check_effort(struct checking *checking, const struct check_row *row)
{
    check_effort_by(checking, row, false);
}

void check_lever_effort(struct checking *checking, const struct check_row *row)
{
    check_effort_by(checking, row, true);
}

/* What could not be worked out is not what the car cannot do. */
void check_stop_not_reached(struct checking *checking, const struct check_row *row)
{
    const struct figure *now = figures_find(checking->figures, "deceleration", NULL);
    if (now == NULL || now->state == FIGURE_NOT_COMPUTED)
        return;
    for (int i = 0; i < checking->figures->count; i++) {
        const struct figure *figure = &checking->figures->items[i];
        if (figure->row == figure_row("effort-for-half-g") &&
            figure->state == FIGURE_NOT_COMPUTED && figure->needs_count == 0 &&
            figure->reason != NULL) {
            struct finding *finding = finding_add(checking, row, -1, NO_FIELD);
            finding_quantity(finding, "stop", limit_value(row->limit), DIMENSION_ACCELERATION);
            finding_text(finding, "reason", figure->reason);
        }
    }
}

/* What a pedal works: the limits of its ratio follow from it. */
enum pedal_use { USE_NONE, USE_PLAIN, USE_ASSISTED, USE_CLUTCH };

static enum pedal_use pedal_use(const struct checking *checking, int pedal)
{
    for (int c = 0; c < checking->network->circuit_count; c++) {
        const struct circuit *circuit = &checking->network->circuits[c];
        if (pressure_pedal_of(checking->system, circuit->master) != pedal) {
            continue;
        }
        if (circuit->clutch) {
            return USE_CLUTCH;
        }
        if (pressure_servo_of(checking->system, circuit->master) >= 0) {
            return USE_ASSISTED;
        }
        /* a remote servo is put behind pedals of either kind */
        return system_first(checking->system, KIND_SERVO) >= 0 ? USE_NONE : USE_PLAIN;
    }
    return USE_NONE;
}

static void find_ratio(struct checking *checking, const struct check_row *row, enum pedal_use use,
                       const char *least, const char *most)
{
    if (system_vehicle(checking->system)->type == VEHICLE_MOTORCYCLE) {
        return;
    }
    for (int i = 0; i < checking->system->part_count; i++) {
        const struct pedal *pedal = &checking->system->parts[i].as.pedal;
        if (!is_pedal(checking, i) || pedal_use(checking, i) != use) {
            continue;
        }
        double ratio = pedal_ratio(pedal).value;
        if (ratio < limit_value(least) || ratio > limit_value(most)) {
            struct finding *finding = finding_add(checking, row, i, FIELD(as.pedal.ratio));
            finding_quantity(finding, "ratio", ratio, DIMENSION_NUMBER);
            finding_quantity(finding, "least", limit_value(least), DIMENSION_NUMBER);
            finding_quantity(finding, "most", limit_value(most), DIMENSION_NUMBER);
        }
    }
}

void check_ratio(struct checking *checking, const struct check_row *row)
{
    find_ratio(checking, row, USE_PLAIN, "ratio-least", "ratio-most");
}

void check_assisted_ratio(struct checking *checking, const struct check_row *row)
{
    find_ratio(checking, row, USE_ASSISTED, "assisted-ratio-least", "assisted-ratio-most");
}

void check_clutch_ratio(struct checking *checking, const struct check_row *row)
{
    find_ratio(checking, row, USE_CLUTCH, "clutch-ratio-least", "clutch-ratio-most");
}

void check_bar_tilt(struct checking *checking, const struct check_row *row)
{
    for (int i = 0; i < checking->system->part_count; i++) {
        const struct figure *tilt =
            is_pedal(checking, i) ? figure_about(checking, "bar-tilt", i) : NULL;
        if (tilt != NULL && fabs(tilt->value) > limit_value(row->limit)) {
            struct finding *finding = finding_add(checking, row, i, FIELD(as.pedal.bar_first));
            finding_quantity(finding, "tilt", fabs(tilt->value), DIMENSION_ANGLE);
            finding_limit(finding, "most");
            finding_rests_on(finding, tilt);
        }
    }
}
