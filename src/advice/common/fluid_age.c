#include "advice/common/fluid_age.h"

#include <stddef.h>

#include "advice/common/limits.h"
#include "parts/fluid.h"

int fluid_years_most(const struct part *fluid)
{
    const struct fluid_row *row = fluid_row(fluid->as.fluid.grade);
    bool takes_water = row == NULL || row->family == FAMILY_GLYCOL;
    return takes_water ? (int)limit_value("fluid-age-most") : row->change_years;
}

bool fluid_is_due(const struct part *fluid, struct date today)
{
    struct date renewed = fluid->as.fluid.renewed;
    return !date_known(renewed) || date_years_between(renewed, today) >= fluid_years_most(fluid);
}
