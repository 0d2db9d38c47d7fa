#include "advice/checks/checks.h"

#include <math.h>
#include <stddef.h>

#include "advice/figures/part_bore.h"
#include "physics/side_pull.h"

/* Once, on the road where the rear wheels lock first: the dry one before the wet. */
void check_rear_first(struct checking *checking, const struct check_row *row)
{
    static const struct {
        const char *margin, *at, *effort, *road;
    } roads[] = {{"rear-lock-margin", "rear-locks-at", "rear-locks-effort", "dry"},
                 {"rear-lock-margin-wet", "rear-locks-at-wet", "rear-locks-effort-wet", "wet"}};
    for (size_t i = 0; i < sizeof roads / sizeof *roads; i++) {
        const struct figure *at = figure_about(checking, roads[i].at, -1);
        double margin = figure_value(checking, roads[i].margin, -1);
        if (at == NULL || !(margin < limit_value(row->limit)))
            continue;
        struct finding *finding = finding_add(checking, row, -1, NO_FIELD);
        finding_text(finding, "road", roads[i].road);
        finding_quantity(finding, "rear", at->value, DIMENSION_ACCELERATION);
        finding_quantity(finding, "effort", figure_value(checking, roads[i].effort, -1),
                         DIMENSION_FORCE);
        finding_quantity(finding, "left", -margin, DIMENSION_SHARE);
        finding_rests_on(finding, at);
        return;
    }
}

void check_side_difference(struct checking *checking, const struct check_row *row)
{
    static const struct {
        const char *id, *axle;
        bool steered;
    } sides[] = {{"side-difference-front", "front", true}, {"side-difference-rear", "rear", false}};
    for (size_t i = 0; i < sizeof sides / sizeof *sides; i++) {
        const struct figure *figure = figure_about(checking, sides[i].id, -1);
        if (figure == NULL || !(figure->value > limit_value(row->limit))) {
            continue;
        }
        struct finding *finding = finding_add(checking, row, -1, NO_FIELD);
        finding_text(finding, "axle", sides[i].axle);
        finding_quantity(finding, "difference", figure->value, DIMENSION_SHARE);
        finding_limit(finding, "most");
        finding_rests_on(finding, figure);
        if (sides[i].steered && figure->value > limit_value("side-difference-dangerous")) {
            finding->severity = SEVERITY_DANGER;
        }
    }
}

/* A brake of the axle, on the left where there is one. */
static int brake_of(const struct system *system, enum axle axle)
{
    for (int i = 0; i < system->part_count; i++)
        if (kind_is_brake(system->parts[i].kind) && system->parts[i].axle == axle)
            return i;
    return -1;
}

static double yaw_by_friction(const struct checking *checking, enum axle axle)
{
    struct solution *room = solution_room(checking->system, checking->network, checking->arena);
    struct state state = state_usual();
    solve(checking->system, checking->network, &state, room);
    return side_pull_friction(checking->system, room, axle).yaw.nm;
}

void check_pull_friction(struct checking *checking, const struct check_row *row)
{
    static const struct {
        const char *id, *words;
        enum axle axle;
    } axles[] = {{"pull-friction-front", "front", AXLE_FRONT},
                 {"pull-friction-rear", "rear", AXLE_REAR}};
    for (size_t i = 0; i < sizeof axles / sizeof *axles; i++) {
        const struct figure *figure = figure_about(checking, axles[i].id, -1);
        int brake = brake_of(checking->system, axles[i].axle);
        if (figure == NULL || brake < 0 || !(figure->value > limit_value(row->limit))) {
            continue;
        }
        const struct part *part = &checking->system->parts[brake];
        bool disc = part->kind == KIND_DISC;
        struct finding *finding =
            finding_add(checking, row, brake,
                        disc ? FIELD(as.disc.friction_spread) : FIELD(as.drum.friction_spread));
        finding_text(finding, "axle", axles[i].words);
        finding_quantity(finding, "spread",
                         disc ? part->as.disc.friction_spread.of_1
                              : part->as.drum.friction_spread.of_1,
                         DIMENSION_SHARE);
        finding_quantity(finding, "difference", figure->value, DIMENSION_SHARE);
        finding_quantity(finding, "yaw", yaw_by_friction(checking, axles[i].axle),
                         DIMENSION_TORQUE);
        finding_limit(finding, "most");
        finding_rests_on(finding, figure);
        if (axles[i].axle == AXLE_FRONT &&
            figure->value > limit_value("side-difference-dangerous")) {
            finding->severity = SEVERITY_DANGER;
        }
    }
}

void check_bores_differ(struct checking *checking, const struct check_row *row)
{
    for (int i = 0; i < checking->system->part_count; i++) {
        const struct part *part = &checking->system->parts[i];
        int other = kind_is_brake(part->kind) ? part_mirror(checking->system, i) : -1;
        if (other <= i) {
            continue;
        }
        const struct part *mirror = &checking->system->parts[other];
        struct length one = part_bore(part), two = part_bore(mirror);
        if (fabs(one.m - two.m) > limit_value(row->limit)) {
            struct finding *finding = finding_add(checking, row, i, part_bore_field(part->kind));
            finding_bore(finding, "bore", one);
            finding_text(finding, "other", mirror->name);
            finding_bore(finding, "other_bore", two);
        }
    }
}

static bool weak_in_reverse(const struct checking *checking, int part, double least)
{
    double forward = figure_value(checking, "brake-torque", part);
    return figure_value(checking, "brake-torque-reverse", part) / forward < least;
}

/* Once an axle. */
void check_reverse_weak(struct checking *checking, const struct check_row *row)
{
    double least = limit_value(row->limit);
    for (int i = 0; i < checking->system->part_count; i++) {
        int mirror = part_mirror(checking->system, i);
        if (!weak_in_reverse(checking, i, least) ||
            (mirror >= 0 && mirror < i && weak_in_reverse(checking, mirror, least))) {
            continue;
        }
        struct finding *finding = finding_add(checking, row, i, FIELD(as.drum.shoes));
        finding_quantity(finding, "share",
                         figure_value(checking, "brake-torque-reverse", i) /
                             figure_value(checking, "brake-torque", i),
                         DIMENSION_SHARE);
        finding_limit(finding, "least");
        finding_rests_on(finding, figure_about(checking, "brake-torque-reverse", i));
    }
}

static bool grabs(const struct checking *checking, int part)
{
    const struct part *brake = &checking->system->parts[part];
    return brake->kind == KIND_DRUM &&
           drum_near_lock(&brake->as.drum, brake->as.drum.friction, true);
}

/* Once an axle. */
void check_shoe_grabs(struct checking *checking, const struct check_row *row)
{
    for (int i = 0; i < checking->system->part_count; i++) {
        int mirror = part_mirror(checking->system, i);
        if (!grabs(checking, i) || (mirror >= 0 && mirror < i && grabs(checking, mirror)))
            continue;
        struct finding *finding = finding_add(checking, row, i, FIELD(as.drum.friction));
        finding_quantity(finding, "friction", checking->system->parts[i].as.drum.friction.value,
                         DIMENSION_NUMBER);
    }
}
