#include "advice/checks/checks.h"

#include <math.h>

#include "advice/figures/holds.h"
#include "physics/heat.h"

/* Years from a to b with their part of a year, never below 0; to within some days. A month or day
 * that is not known counts as the first. */
static double years_between(struct date a, struct date b)
{
    double months = fmax(b.month, 1) - fmax(a.month, 1), days = fmax(b.day, 1) - fmax(a.day, 1);
    return fmax(b.year - a.year + months / 12 + days / 365, 0);
}

/* Years since the fluid of a brake was changed, NaN when that is not known; sets which fluid. */
static double age_of_fluid(const struct checking *checking, int brake, const struct part **fluid)
{
    const struct network *network = checking->network;
    int vertex = network_vertex(network, brake, 0);
    int circuit = vertex < 0 ? -1 : network->vertices[vertex].circuit;
    int part =
        circuit < 0 ? -1 : system_fluid_of(checking->system, network->circuits[circuit].master);
    *fluid = part < 0 ? NULL : &checking->system->parts[part];
    if (part < 0 || !date_known((*fluid)->as.fluid.renewed))
        return NAN;
    return years_between((*fluid)->as.fluid.renewed, checking->today);
}

/* What the fluid in a brake comes to, where the law of it holds; NULL where not, or without fluid.
 * *years: its age, NaN where that is not known. */
static const struct figure *fluid_reaches(const struct checking *checking, int brake,
                                          const struct part **fluid, double *years)
{
    const struct figure *reached = figure_about(checking, "fluid-after-ten-stops", brake);
    if (reached == NULL || reached->holds_broken != 0)
        return NULL;
    *years = age_of_fluid(checking, brake, fluid);
    return *fluid == NULL ? NULL : reached;
}

void check_fluid_boils(struct checking *checking, const struct check_row *row)
{
    const struct part *fluid;
    double years;
    for (int i = 0; i < checking->system->part_count; i++) {
        const struct figure *reached = fluid_reaches(checking, i, &fluid, &years);
        if (reached == NULL)
            continue;
        double boils = fluid_boiling(fluid->as.fluid.grade, years).celsius;
        if (boils - reached->value < limit_value(row->limit)) {
            struct finding *finding = finding_add(checking, row, i, NO_FIELD);
            finding_quantity(finding, "reached", reached->value, DIMENSION_TEMPERATURE);
            finding_quantity(finding, "boils", boils, DIMENSION_TEMPERATURE);
            finding_limit(finding, "margin");
            finding_rests_on(finding, reached);
        }
    }
}

/* Of unknown age: it boils anywhere between wet and neglected. */
void check_fluid_may_boil(struct checking *checking, const struct check_row *row)
{
    const struct part *fluid;
    double years;
    for (int i = 0; i < checking->system->part_count; i++) {
        const struct figure *reached = fluid_reaches(checking, i, &fluid, &years);
        if (reached == NULL || !isnan(fluid_boiling(fluid->as.fluid.grade, years).celsius))
            continue;
        double wet = fluid_row(fluid->as.fluid.grade)->wet_boiling.celsius;
        double neglected = fluid_boiling_neglected(fluid->as.fluid.grade).celsius;
        if (!(neglected - reached->value < limit_value(row->limit)))
            continue;
        struct finding *finding = finding_add(checking, row, i, NO_FIELD);
        finding_quantity(finding, "reached", reached->value, DIMENSION_TEMPERATURE);
        finding_quantity(finding, "wet", wet, DIMENSION_TEMPERATURE);
        finding_quantity(finding, "neglected", neglected, DIMENSION_TEMPERATURE);
        finding_limit(finding, "margin");
        finding_rests_on(finding, reached);
    }
}

void check_free_water(struct checking *checking, const struct check_row *row)
{
    const struct part *fluid;
    double years;
    for (int i = 0; i < checking->system->part_count; i++) {
        const struct figure *reached = fluid_reaches(checking, i, &fluid, &years);
        if (reached == NULL || fluid->as.fluid.grade != GRADE_DOT5 ||
            !(reached->value >= limit_value(row->limit)))
            continue;
        struct finding *finding = finding_add(checking, row, i, NO_FIELD);
        finding_quantity(finding, "reached", reached->value, DIMENSION_TEMPERATURE);
        finding_limit(finding, "boils");
        finding_rests_on(finding, reached);
    }
}

static bool is_beyond_law(const struct figure *figure)
{
    return figure != NULL && holds_broken_law(figure) != NULL;
}

void check_iron_too_hot(struct checking *checking, const struct check_row *row)
{
    for (int i = 0; i < checking->system->part_count; i++) {
        const struct figure *one = figure_even_beyond(checking, "rise-per-stop", i);
        const struct figure *ten = figure_even_beyond(checking, "temperature-after-ten-stops", i);
        bool at_once = is_beyond_law(one);
        if (!at_once && !is_beyond_law(ten))
            continue;
        struct finding *finding = finding_add(checking, row, i, NO_FIELD);
        finding_text(finding, "stops", at_once ? "One hard stop" : "Ten hard stops");
        finding_quantity(finding, "most", HEAT_IRON_MOST, DIMENSION_TEMPERATURE);
        finding_rests_on(finding, at_once ? one : ten);
    }
}

void check_drum_grows(struct checking *checking, const struct check_row *row)
{
    for (int i = 0; i < checking->system->part_count; i++) {
        const struct part *part = &checking->system->parts[i];
        const struct figure *farther = figure_about(checking, "tip-travel-hot", i);
        if (part->kind != KIND_DRUM || farther == NULL)
            continue;
        if (farther->value > limit_value(row->limit) * part->as.drum.clearance.m) {
            struct finding *finding = finding_add(checking, row, i, FIELD(as.drum.hot));
            finding_quantity(finding, "farther", farther->value, DIMENSION_LENGTH);
            finding_quantity(finding, "clearance", part->as.drum.clearance.m, DIMENSION_LENGTH);
            finding_quantity(finding, "hot", part->as.drum.hot.celsius, DIMENSION_TEMPERATURE);
            finding_rests_on(finding, farther);
        }
    }
}
