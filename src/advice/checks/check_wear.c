#include "advice/checks/checks.h"

/* A drum or disc is renewed with its fellow, where it has one. */
static const char *renewed(const struct checking *checking, int part)
{
    bool disc = checking->system->parts[part].kind == KIND_DISC;
    if (part_mirror(checking->system, part) < 0)
        return "it";
    return disc ? "both discs of the axle" : "both drums of the axle";
}

void check_drum_over(struct checking *checking, const struct check_row *row)
{
    for (int i = 0; i < checking->system->part_count; i++) {
        const struct part *part = &checking->system->parts[i];
        if (part->kind == KIND_DRUM && part->as.drum.diameter.m > part->as.drum.most_diameter.m) {
            struct finding *finding = finding_add(checking, row, i, FIELD(as.drum.diameter));
            finding_quantity(finding, "diameter", part->as.drum.diameter.m, DIMENSION_LENGTH);
            finding_quantity(finding, "most", part->as.drum.most_diameter.m, DIMENSION_LENGTH);
            finding_text(finding, "renew", renewed(checking, i));
        }
    }
}

void check_disc_under(struct checking *checking, const struct check_row *row)
{
    for (int i = 0; i < checking->system->part_count; i++) {
        const struct part *part = &checking->system->parts[i];
        if (part->kind == KIND_DISC &&
            part->as.disc.thickness.m < part->as.disc.least_thickness.m) {
            struct finding *finding = finding_add(checking, row, i, FIELD(as.disc.thickness));
            finding_quantity(finding, "thickness", part->as.disc.thickness.m, DIMENSION_LENGTH);
            finding_quantity(finding, "least", part->as.disc.least_thickness.m, DIMENSION_LENGTH);
            finding_text(finding, "renew", renewed(checking, i));
        }
    }
}

/* Friction material of a brake that is thinner than the row's limit. */
static void look_at_left(struct checking *checking, const struct check_row *row, int brake,
                         struct length left, size_t field)
{
    if (!(left.m < limit_value(row->limit)))
        return;
    struct finding *finding = finding_add(checking, row, brake, field);
    finding_quantity(finding, "left", left.m, DIMENSION_LENGTH);
    finding_limit(finding, "least");
}

static void look_at_linings(struct checking *checking, const struct check_row *row, bool riveted)
{
    for (int i = 0; i < checking->system->part_count; i++) {
        const struct part *part = &checking->system->parts[i];
        if (part->kind == KIND_DRUM && (part->as.drum.fixing == FIXING_RIVETS) == riveted)
            look_at_left(checking, row, i, part->as.drum.lining_left, FIELD(as.drum.lining_left));
    }
}

void check_lining_thin(struct checking *checking, const struct check_row *row)
{
    look_at_linings(checking, row, false);
}

void check_riveted_thin(struct checking *checking, const struct check_row *row)
{
    look_at_linings(checking, row, true);
}

void check_pad_thin(struct checking *checking, const struct check_row *row)
{
    for (int i = 0; i < checking->system->part_count; i++) {
        const struct part *part = &checking->system->parts[i];
        if (part->kind == KIND_DISC)
            look_at_left(checking, row, i, part->as.disc.pad_left, FIELD(as.disc.pad_left));
    }
}

void check_run_out(struct checking *checking, const struct check_row *row)
{
    for (int i = 0; i < checking->system->part_count; i++) {
        const struct part *part = &checking->system->parts[i];
        if (part->kind == KIND_DISC && part->as.disc.run_out.m > limit_value(row->limit)) {
            struct finding *finding = finding_add(checking, row, i, FIELD(as.disc.run_out));
            finding_quantity(finding, "out", part->as.disc.run_out.m, DIMENSION_LENGTH);
            finding_limit(finding, "most");
        }
    }
}
