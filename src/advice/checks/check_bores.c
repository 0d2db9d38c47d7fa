#include "advice/checks/checks.h"

#include <math.h>
#include <stddef.h>

#include "network/belonging.h"
#include "advice/common/bores.h"
#include "advice/figures/part_bore.h"
#include "advice/common/phrases.h"

/* A concentric slave's bore is that of its sleeve, which no series covers. */
static bool has_series(const struct part *part)
{
    return part->kind != KIND_SLAVE || part->as.slave.type != SLAVE_CONCENTRIC;
}

void check_bore_odd(struct checking *checking, const struct check_row *row)
{
    for (int i = 0; i < checking->system->part_count; i++) {
        const struct part *part = &checking->system->parts[i];
        struct length bore = part_bore(part);
        const struct bore_row *nearest = has_series(part) ? bore_nearest(bore) : NULL;
        if (nearest != NULL && fabs(nearest->bore.m - bore.m) > limit_value(row->limit)) {
            struct finding *finding = finding_add(checking, row, i, part_bore_field(part->kind));
            finding_bore(finding, "bore", bore);
            finding_text(finding, "nearest", nearest->name);
            finding_limit(finding, "within");
        }
    }
}

/* Of interest where a new part goes on: what lies on the shelf may be its twin. */
void check_bore_twin(struct checking *checking, const struct check_row *row)
{
    for (int i = 0; i < checking->system->part_count; i++) {
        const struct part *part = &checking->system->parts[i];
        const struct bore_row *nearest =
            part_is_new(part) && has_series(part) ? bore_nearest(part_bore(part)) : NULL;
        const struct bore_row *twin = nearest == NULL ? NULL : bore_twin(nearest);
        if (twin != NULL) {
            struct finding *finding = finding_add(checking, row, i, part_bore_field(part->kind));
            finding_text(finding, "cylinder", cylinder_words(checking->arena, part));
            finding_text(finding, "bore", nearest->name);
            finding_text(finding, "twin", twin->name);
            finding_quantity(finding, "apart", fabs(twin->bore.m - nearest->bore.m),
                             DIMENSION_LENGTH);
        }
    }
}

static const char *change_words(enum part_kind kind, bool larger)
{
    if (kind == KIND_MASTER) {
        return larger ? "less pressure and less pedal travel for the same foot"
                      : "more pressure and more pedal travel for the same foot";
    }
    return larger ? "more force and more pedal travel for the same pressure"
                  : "less force and less pedal travel for the same pressure";
}

void check_bore_changed(struct checking *checking, const struct check_row *row)
{
    const struct system *before = checking->system->before;
    for (int i = 0; before != NULL && i < checking->system->part_count; i++) {
        const struct part *part = &checking->system->parts[i];
        struct length now = part_bore(part), was = part_bore(&before->parts[i]);
        double area = now.m * now.m / (was.m * was.m);
        double share = part->kind == KIND_MASTER ? 1 - 1 / area : area - 1;
        if (!(fabs(share) >= limit_value(row->limit))) {
            continue;
        }
        struct finding *finding = finding_add(checking, row, i, part_bore_field(part->kind));
        finding_bore(finding, "was", was);
        finding_bore(finding, "now", now);
        finding_quantity(finding, "change", fabs(share), DIMENSION_SHARE);
        finding_text(finding, "effect", change_words(part->kind, area > 1));
        finding_text(finding, "cylinder", cylinder_words(checking->arena, part));
    }
}

void check_one_side_renewed(struct checking *checking, const struct check_row *row)
{
    for (int i = 0; i < checking->system->part_count; i++) {
        const struct part *part = &checking->system->parts[i];
        int other = kind_is_brake(part->kind) ? part_mirror(checking->system, i) : -1;
        if (other >= 0 && part_is_new(part) && !part_is_new(&checking->system->parts[other])) {
            struct finding *finding = finding_add(checking, row, i, NO_FIELD);
            finding->place = part->done.place;
            finding_text(finding, "cylinder", cylinder_words(checking->arena, part));
            finding_text(finding, "other", checking->system->parts[other].name);
        }
    }
}
