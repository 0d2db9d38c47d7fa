#include "advice/checks/checks.h"

#include <math.h>
#include <stddef.h>

#include "network/belonging.h"
#include "advice/common/fluid_age.h"
#include "advice/common/phrases.h"

static enum fluid_family family_of(enum fluid_grade grade)
{
    const struct fluid_row *row = fluid_row(grade);
    return row == NULL ? FAMILY_UNKNOWN : row->family;
}

void check_fluid_old(struct checking *checking, const struct check_row *row)
{
    for (int i = 0; i < checking->system->part_count; i++) {
        const struct part *part = &checking->system->parts[i];
        if (part->kind == KIND_FLUID && date_known(part->as.fluid.renewed) &&
            fluid_is_due(part, checking->today)) {
            double years = date_years_between(part->as.fluid.renewed, checking->today);
            struct finding *finding = finding_add(checking, row, i, FIELD(as.fluid.renewed));
            finding_quantity(finding, "years", years, DIMENSION_NUMBER);
            finding_quantity(finding, "most", fluid_years_most(part), DIMENSION_NUMBER);
            finding_text(finding, "aged", fluid_aging_words(family_of(part->as.fluid.grade)));
        }
    }
}

void check_fluid_age(struct checking *checking, const struct check_row *row)
{
    for (int i = 0; i < checking->system->part_count; i++) {
        const struct part *part = &checking->system->parts[i];
        if (part->kind == KIND_FLUID && !date_known(part->as.fluid.renewed)) {
            struct finding *finding = finding_add(checking, row, i, FIELD(as.fluid.renewed));
            finding_text(finding, "aged", fluid_aging_words(family_of(part->as.fluid.grade)));
        }
    }
}

static void find_other(struct checking *checking, const struct check_row *row, bool same_family)
{
    for (int i = 0; i < checking->system->part_count; i++) {
        const struct part *part = &checking->system->parts[i];
        const struct fluid *fluid = &part->as.fluid;
        if (part->kind != KIND_FLUID || fluid->found == GRADE_NOT_SAID ||
            fluid->grade == GRADE_NOT_SAID || fluid->found == fluid->grade) {
            continue;
        }
        bool settled = same_family && part_is_new(part); /* all of it was changed */
        if (!settled && (family_of(fluid->found) == family_of(fluid->grade)) == same_family) {
            struct finding *finding = finding_add(checking, row, i, FIELD(as.fluid.found));
            finding_text(finding, "found", fluid_row(fluid->found)->name);
            finding_text(finding, "grade", fluid_row(fluid->grade)->name);
            finding_text(finding, "cleaning", fluid_cleaning_words(family_of(fluid->found)));
        }
    }
}

void check_fluid_found_other(struct checking *checking, const struct check_row *row)
{
    find_other(checking, row, false);
}

void check_fluid_found_grade(struct checking *checking, const struct check_row *row)
{
    find_other(checking, row, true);
}

void check_fluid_families(struct checking *checking, const struct check_row *row)
{
    int first = system_first(checking->system, KIND_FLUID);
    for (int i = first + 1; first >= 0 && i < checking->system->part_count; i++) {
        const struct part *part = &checking->system->parts[i];
        const struct part *other = &checking->system->parts[first];
        if (part->kind == KIND_FLUID && part->as.fluid.grade != GRADE_NOT_SAID &&
            other->as.fluid.grade != GRADE_NOT_SAID &&
            family_of(part->as.fluid.grade) != family_of(other->as.fluid.grade)) {
            struct finding *finding = finding_add(checking, row, i, FIELD(as.fluid.grade));
            finding_text(finding, "grade", fluid_row(part->as.fluid.grade)->name);
            finding_text(finding, "other", other->name);
            finding_text(finding, "other_grade", fluid_row(other->as.fluid.grade)->name);
        }
    }
}

/* One full stroke of every brake master that it feeds. */
static double full_strokes(const struct checking *checking, int reservoir)
{
    double volume = 0;
    for (int i = 0; i < checking->system->part_count; i++) {
        const struct part *part = &checking->system->parts[i];
        if (part->kind == KIND_MASTER && reservoir_of(checking->system, i) == reservoir) {
            volume += master_area(&part->as.master).m2 * part->as.master.stroke.m;
        }
    }
    return volume;
}

void check_reservoir_small(struct checking *checking, const struct check_row *row)
{
    for (int i = 0; i < checking->system->part_count; i++) {
        const struct part *part = &checking->system->parts[i];
        double needed = part->kind == KIND_RESERVOIR ? full_strokes(checking, i) : NAN;
        if (part->kind == KIND_RESERVOIR && part->as.reservoir.capacity.m3 < needed) {
            struct finding *finding = finding_add(checking, row, i, FIELD(as.reservoir.capacity));
            finding_quantity(finding, "capacity", part->as.reservoir.capacity.m3, DIMENSION_VOLUME);
            finding_quantity(finding, "needed", needed, DIMENSION_VOLUME);
        }
    }
}

static bool master_works(const struct checking *checking, int master, bool clutch)
{
    for (int c = 0; c < checking->network->circuit_count; c++) {
        if (checking->network->circuits[c].master == master &&
            checking->network->circuits[c].clutch == clutch) {
            return true;
        }
    }
    return false;
}

void check_clutch_starves(struct checking *checking, const struct check_row *row)
{
    for (int i = 0; i < checking->system->part_count; i++) {
        int reservoir = -1;
        if (checking->system->parts[i].kind == KIND_MASTER && master_works(checking, i, true)) {
            reservoir = reservoir_of(checking->system, i);
        }
        for (int j = 0; reservoir >= 0 && j < checking->system->part_count; j++) {
            if (checking->system->parts[j].kind == KIND_MASTER &&
                master_works(checking, j, false) &&
                reservoir_of(checking->system, j) == reservoir) {
                struct finding *finding = finding_add(checking, row, i, NO_FIELD);
                finding_text(finding, "reservoir", checking->system->parts[reservoir].name);
                finding_text(finding, "other", checking->system->parts[j].name);
                break;
            }
        }
    }
}
