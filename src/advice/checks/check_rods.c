#include "advice/checks/checks.h"

#include <math.h>
#include <stddef.h>

#include "base/text.h"
#include "physics/press.h"
#include "physics/pressure.h"

/* Push rods and free play: too little keeps a master's port shut, too much is lost at the pad. */

/* The greatest pressure that a master's circuits come to when its port stays shut and they warm;
 * NaN where it is not known. *figure: the one it is. */
static double blocked_pressure(const struct checking *checking, int master,
                               const struct figure **figure)
{
    double most = NAN;
    for (int c = 0; c < checking->network->circuit_count; c++) {
        const struct figure *of = checking->network->circuits[c].master == master
                                      ? figure_about(checking, "port-blocked-pressure", c)
                                      : NULL;
        if (of != NULL && !(of->value <= most)) {
            most = of->value;
            *figure = of;
        }
    }
    return most;
}

static void say_blocked(struct checking *checking, struct finding *finding, int master)
{
    const struct figure *figure = NULL;
    double pressure = blocked_pressure(checking, master, &figure);
    if (isnan(pressure)) {
        finding_text(finding, "pressure", "more than before");
        return;
    }
    finding_quantity(finding, "pressure", pressure, DIMENSION_PRESSURE);
    finding_rests_on(finding, figure);
}

/* What a gap takes at the pad; NaN where the ratio is not known. */
static double lost_at_pad(const struct checking *checking, int master, double gap)
{
    int pedal = pressure_pedal_of(checking->system, master);
    if (pedal < 0)
        return NAN;
    const struct pedal *data = &checking->system->parts[pedal].as.pedal;
    double share = 1;
    if (data->works.count == 2) {
        double first = pedal_bar_share(data).of_1;
        share = pressure_worked_master(checking->system, pedal, 0) == master ? first : 1 - first;
    }
    return pedal_ratio(data).value * share * gap;
}

static void say_lost(const struct checking *checking, struct finding *finding, int master,
                     double gap)
{
    double lost = lost_at_pad(checking, master, gap);
    if (isnan(lost))
        finding_text(finding, "lost", "as many times as the pedal's ratio of it");
    else
        finding_quantity(finding, "lost", lost, DIMENSION_LENGTH);
}

/* The gap in front of a master without servo. */
static bool gap_of_rod(const struct checking *checking, int part, double *gap)
{
    const struct part *master = &checking->system->parts[part];
    if (master->kind != KIND_MASTER || pressure_servo_of(checking->system, part) >= 0)
        return false;
    *gap = master->as.master.rod_gap.m;
    return true;
}

/* A gap of nothing cannot be told from a rod that presses. */
static void say_small(struct checking *checking, struct finding *finding, int master, double gap)
{
    finding_quantity(finding, "gap", gap, DIMENSION_LENGTH);
    finding_limit(finding, "limit");
    say_blocked(checking, finding, master);
    if (!(gap > 0))
        finding->severity = SEVERITY_DANGER;
}

void check_rod_gap(struct checking *checking, const struct check_row *row)
{
    double gap;
    for (int i = 0; i < checking->system->part_count; i++)
        if (gap_of_rod(checking, i, &gap) && gap < limit_value(row->limit))
            say_small(checking, finding_add(checking, row, i, FIELD(as.master.rod_gap)), i, gap);
}

void check_rod_gap_wide(struct checking *checking, const struct check_row *row)
{
    double gap;
    for (int i = 0; i < checking->system->part_count; i++) {
        if (!gap_of_rod(checking, i, &gap) || !(gap > limit_value(row->limit)))
            continue;
        struct finding *finding = finding_add(checking, row, i, FIELD(as.master.rod_gap));
        finding_quantity(finding, "gap", gap, DIMENSION_LENGTH);
        finding_limit(finding, "limit");
        say_lost(checking, finding, i, gap);
    }
}

/* What the gaps that somebody measured before a pedal's masters take at its pad; 0 without. */
static double gaps_at_pad(const struct checking *checking, int pedal)
{
    const struct part_names *works = &checking->system->parts[pedal].as.pedal.works;
    double sum = 0, gap;
    for (size_t i = 0; i < works->count; i++) {
        int master = works->parts[i];
        if (master >= 0 && gap_of_rod(checking, master, &gap) &&
            part_origin(&checking->system->parts[master], FIELD(as.master.rod_gap))->kind !=
                ORIGIN_ASSUMED)
            sum += lost_at_pad(checking, master, gap);
    }
    return sum;
}

void check_rod_gap_beyond_play(struct checking *checking, const struct check_row *row)
{
    for (int i = 0; i < checking->system->part_count; i++) {
        const struct part *part = &checking->system->parts[i];
        if (part->kind != KIND_PEDAL)
            continue;
        double lost = gaps_at_pad(checking, i);
        if (!(lost > part->as.pedal.free_play.m))
            continue;
        struct finding *finding = finding_add(checking, row, i, FIELD(as.pedal.free_play));
        finding_quantity(finding, "play", part->as.pedal.free_play.m, DIMENSION_LENGTH);
        finding_quantity(finding, "lost", lost, DIMENSION_LENGTH);
    }
}

/* The output rod of a direct servo, where its gap is given. */
static bool gap_of_output(const struct checking *checking, int part, double *gap)
{
    const struct part *servo = &checking->system->parts[part];
    if (servo->kind != KIND_SERVO || servo->as.servo.type == SERVO_REMOTE ||
        servo->as.servo.works < 0)
        return false;
    *gap = servo->as.servo.rod_gap.m;
    return true;
}

void check_servo_rod_gap(struct checking *checking, const struct check_row *row)
{
    double gap;
    for (int i = 0; i < checking->system->part_count; i++)
        if (gap_of_output(checking, i, &gap) && gap < limit_value(row->limit))
            say_small(checking, finding_add(checking, row, i, FIELD(as.servo.rod_gap)),
                      checking->system->parts[i].as.servo.works, gap);
}

void check_servo_rod_gap_wide(struct checking *checking, const struct check_row *row)
{
    double gap;
    for (int i = 0; i < checking->system->part_count; i++) {
        if (!gap_of_output(checking, i, &gap) || !(gap > limit_value(row->limit)))
            continue;
        struct finding *finding = finding_add(checking, row, i, FIELD(as.servo.rod_gap));
        finding_quantity(finding, "gap", gap, DIMENSION_LENGTH);
        finding_limit(finding, "limit");
        say_lost(checking, finding, checking->system->parts[i].as.servo.works, gap);
    }
}

static bool works_servo(const struct checking *checking, int pedal)
{
    const struct part_names *works = &checking->system->parts[pedal].as.pedal.works;
    for (size_t i = 0; i < works->count; i++)
        if (works->parts[i] >= 0 && checking->system->parts[works->parts[i]].kind == KIND_SERVO)
            return true;
    return false;
}

static bool has_measured_play(const struct checking *checking, int part)
{
    const struct part *pedal = &checking->system->parts[part];
    return press_is_brake(checking->system, checking->network, part) &&
           pedal->as.pedal.type != PEDAL_HAND && !isnan(pedal->as.pedal.free_play.m);
}

static void find_play(struct checking *checking, const struct check_row *row, bool small)
{
    for (int i = 0; i < checking->system->part_count; i++) {
        if (!has_measured_play(checking, i))
            continue;
        double play = checking->system->parts[i].as.pedal.free_play.m;
        const char *limit = small ? "free-play-least" : "free-play-most";
        if (works_servo(checking, i))
            limit = small ? "servo-free-play-least" : "servo-free-play-most";
        if (!(small ? play < limit_value(limit) : play > limit_value(limit)))
            continue;
        struct finding *finding = finding_add(checking, row, i, FIELD(as.pedal.free_play));
        finding_quantity(finding, "play", play, DIMENSION_LENGTH);
        finding_quantity(finding, "limit", limit_value(limit), DIMENSION_LENGTH);
        double share = play / checking->system->parts[i].as.pedal.travel.m;
        if (!small && isnan(share))
            finding_text(finding, "share", "a part");
        else if (!small)
            finding_quantity(finding, "share", share, DIMENSION_SHARE);
    }
}

void check_free_play(struct checking *checking, const struct check_row *row)
{
    find_play(checking, row, true);
}

void check_free_play_wide(struct checking *checking, const struct check_row *row)
{
    find_play(checking, row, false);
}
