#include "advice/checks/checks.h"

#include <string.h>

#include "base/text.h"
#include "network/mounts.h"

/* A finding about a line of the hose list. */
static struct finding *about_line(struct checking *checking, const struct check_row *row,
                                  const struct hose_line *line)
{
    struct finding *finding = finding_add(checking, row, -1, NO_FIELD);
    finding->part = line->hose >= 0 ? line->hose : line->far;
    finding->place = line->place;
    finding_text(finding, "part", line->name);
    finding_text(finding, "where", line->where != NULL ? line->where : "in this car");
    return finding;
}

static bool is_vacuum(const struct hose_line *line)
{
    return line->use != NULL && strcmp(line->use, "vacuum") == 0;
}

static void add_date(struct finding *finding, const struct hose_line *line, struct arena *arena)
{
    char *words = arena_new(arena, 16);
    date_write(line->renewed, words);
    finding_text(finding, "date", words);
}

void check_hose_missing(struct checking *checking, const struct check_row *row)
{
    for (int i = 0; i < checking->hoses.count; i++) {
        if (checking->hoses.items[i].standing == HOSE_IS_MISSING) {
            about_line(checking, row, &checking->hoses.items[i]);
        }
    }
}

static void find_old(struct checking *checking, const struct check_row *row, bool vacuum)
{
    for (int i = 0; i < checking->hoses.count; i++) {
        const struct hose_line *line = &checking->hoses.items[i];
        if (line->standing != HOSE_IS_OLD || is_vacuum(line) != vacuum) {
            continue;
        }
        struct finding *finding = about_line(checking, row, line);
        add_date(finding, line, checking->arena);
        finding_quantity(finding, "years", date_years_between(line->renewed, checking->today),
                         DIMENSION_NUMBER);
        finding_limit(finding, "most");
    }
}

void check_hose_old(struct checking *checking, const struct check_row *row)
{
    find_old(checking, row, false);
}

void check_vacuum_hose(struct checking *checking, const struct check_row *row)
{
    find_old(checking, row, true);
}

void check_hose_age(struct checking *checking, const struct check_row *row)
{
    for (int i = 0; i < checking->hoses.count; i++) {
        if (checking->hoses.items[i].standing == HOSE_AGE_NOT_KNOWN) {
            about_line(checking, row, &checking->hoses.items[i]);
        }
    }
}

void check_hose_idle(struct checking *checking, const struct check_row *row)
{
    for (int i = 0; i < checking->hoses.count; i++) {
        if (checking->hoses.items[i].standing == HOSE_IS_IDLE) {
            about_line(checking, row, &checking->hoses.items[i]);
        }
    }
}

/* The line that tells it for most parts at once: how an axle's wheels are carried, for its brakes.
 */
static const char *mount_hint(struct checking *checking, int index)
{
    const struct part *part = &checking->system->parts[index];
    const bool motorcycle = system_vehicle(checking->system)->type == VEHICLE_MOTORCYCLE;
    if (!kind_is_brake(part->kind) || part->axle == AXLE_NONE) {
        return text_print(checking->arena, "[%s] on = body, or rear axle, and so on", part->name);
    }
    const bool front = part->axle == AXLE_FRONT;
    return text_print(checking->arena,
                      "[vehicle] %s axle = %s, or what it is; that tells it for both sides",
                      front ? "front" : "rear",
                      motorcycle ? front ? "fork" : "swinging arm"
                      : front    ? "independent"
                                 : "live");
}

void check_mount_unknown(struct checking *checking, const struct check_row *row)
{
    struct gaps gaps = mounts_gaps(checking->system, checking->network, checking->arena);
    for (int i = 0; i < gaps.count; i++) {
        const struct gap *gap = &gaps.items[i];
        bool again = false;
        for (int j = 0; j < i; j++) {
            again = again || (gaps.items[j].state == GAP_CANNOT_TELL &&
                              gaps.items[j].unknown == gap->unknown);
        }
        if (gap->state == GAP_CANNOT_TELL && gap->unknown >= 0 && !again) {
            finding_text(finding_add(checking, row, gap->unknown, FIELD(fitted.on)), "hint",
                         mount_hint(checking, gap->unknown));
        }
    }
}

void check_rigid_accepted(struct checking *checking, const struct check_row *row)
{
    for (int i = 0; i < checking->hoses.count; i++) {
        const struct hose_line *line = &checking->hoses.items[i];
        if (line->standing == HOSE_IS_ACCEPTED) {
            struct finding *finding = about_line(checking, row, line);
            finding_text(finding, "reason", line->reason != NULL ? line->reason : "not said");
        }
    }
}

void check_pipe_copper(struct checking *checking, const struct check_row *row)
{
    for (int i = 0; i < checking->system->part_count; i++) {
        const struct part *part = &checking->system->parts[i];
        if (part->kind == KIND_PIPE && part->as.pipe.material == PIPE_COPPER) {
            finding_add(checking, row, i, FIELD(as.pipe.material));
        }
    }
}
