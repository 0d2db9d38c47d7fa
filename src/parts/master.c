#include "parts/master.h"

#include <math.h>

#include "units/constants.h"

struct area circle_area(struct length diameter)
{
    if (!(diameter.m > 0))
        return (struct area){NAN};
    return (struct area){PI / 4 * diameter.m * diameter.m};
}

struct area master_area(const struct master *master)
{
    return circle_area(master->bore);
}

bool master_carries_second(const struct master *master)
{
    return master->type == MASTER_TANDEM &&
           master->primary_spring.n >= master->secondary_spring.n + master->seal_friction.n;
}

struct length master_full_stroke(const struct master *master, int chamber)
{
    if (master->type != MASTER_TANDEM)
        return master->stroke;
    return chamber == 0 ? master->primary_stroke : master->secondary_stroke;
}

struct length master_own_cut_off(const struct master *master, int chamber)
{
    bool together = chamber == 0 && master_carries_second(master);
    return together ? (struct length){0} : master->cut_off;
}

bool master_is_stepped(const struct master *master)
{
    return master->large_bore.m > 0;
}

struct area master_take_up_area(const struct master *master)
{
    struct area area = master_area(master);
    if (!master_is_stepped(master))
        return area;
    double large = circle_area(master->large_bore).m2;
    return (struct area){large > area.m2 ? large : NAN};
}

/* What the first or only piston makes of a force, its spring and friction taken off. */
static double first_pressure(const struct master *master, double pushed)
{
    double area = master_area(master).m2;
    if (pushed < 0)
        return 0;
    if (!master_is_stepped(master))
        return pushed / area;
    double large = master_take_up_area(master).m2, take_up = master->take_up.pa;
    if (!(take_up >= 0))
        return NAN;
    return pushed <= large * take_up ? pushed / large : (pushed - (large - area) * take_up) / area;
}

struct master_pressures master_pressures(const struct master *master, struct force rod,
                                         enum master_loss loss)
{
    struct master_pressures made = {{{NAN}, {NAN}}};
    double efficiency = master->efficiency.value, area = master_area(master).m2;
    double first = master->primary_spring.n, second = master->secondary_spring.n;
    double friction = master->seal_friction.n;
    if (!(rod.n >= 0) || !(efficiency > 0 && efficiency <= 1) || !(first >= 0) || !(friction >= 0))
        return made;
    double pushed = efficiency * rod.n;
    made.of[0].pa = first_pressure(master, pushed - first - friction);
    if (master->type == MASTER_SINGLE || !(second >= 0)) {
        if (loss == MASTER_FIRST_LOST)
            made.of[0].pa = 0;
        return made;
    }
    /* What the first piston gets it passes on: by its pressure and spring, by its spring alone, or
     * by contact. In a plain bore that comes to the same, whatever the spring. */
    if (loss == MASTER_FIRST_LOST || made.of[0].pa == 0 || !master_is_stepped(master))
        made.of[1].pa = fmax((pushed - second - 2 * friction) / area, 0);
    else
        made.of[1].pa = fmax(made.of[0].pa + (first - second - friction) / area, 0);
    if (loss == MASTER_FIRST_LOST)
        made.of[0].pa = 0;
    if (loss == MASTER_SECOND_LOST)
        made.of[1].pa = 0;
    if (isnan(area))
        made.of[1].pa = NAN; /* fmax would pass over it */
    return made;
}

struct pressure master_pressure(const struct master *master, struct force rod)
{
    return master_pressures(master, rod, MASTER_WHOLE).of[0];
}

struct force master_rod_force(const struct master *master, struct pressure p)
{
    double efficiency = master->efficiency.value, area = master_area(master).m2;
    if (!(p.pa >= 0) || !(efficiency > 0 && efficiency <= 1) || !(master->primary_spring.n >= 0) ||
        !(master->seal_friction.n >= 0))
        return (struct force){NAN};
    double pushed = area * p.pa;
    if (master_is_stepped(master)) {
        double take_up = master->take_up.pa;
        if (!(take_up >= 0))
            return (struct force){NAN};
        pushed += (master_take_up_area(master).m2 - area) * (p.pa < take_up ? p.pa : take_up);
    }
    return (struct force){(pushed + master->primary_spring.n + master->seal_friction.n) /
                          efficiency};
}
