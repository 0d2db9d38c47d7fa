#include <math.h>

#include "physics/reduced.h"
#include "physics/root.h"
#include "units/constants.h"

#define END_TOLERANCE 1e-12 /* as a part of the effort */

/* --- pressures ------------------------------------------------------------------------------- */

static double through(const struct reduced *reduced, const struct reduced_stretch *stretch,
                      double in)
{
    if (stretch->backwards)
        return NAN;
    if (stretch->passage->kind == KIND_VALVE)
        return valve_output(&stretch->passage->as.valve, (struct pressure){in}).pa;
    if (stretch->passage->kind == KIND_SERVO)
        return servo_line_output(&stretch->passage->as.servo, (struct pressure){in},
                                 reduced->state.assisted)
            .pa;
    return in;
}

/* From a stretch on whose pressure stands there. */
static void spread_beyond(const struct reduced *reduced, int from, double *pressures)
{
    int circuit = reduced->stretches[from].circuit;
    for (int s = from + 1; s < reduced->stretch_count; s++) {
        const struct reduced_stretch *stretch = &reduced->stretches[s];
        if (stretch->circuit != circuit)
            break;
        if (stretch->before >= from)
            pressures[s] = through(reduced, stretch, pressures[stretch->before]);
    }
}

static void spread(const struct reduced *reduced, const struct reduced_master *master, int chamber,
                   double made, double *pressures)
{
    int source = master->sources[chamber];
    if (source < 0)
        return;
    pressures[source] = master->lost[chamber] ? 0 : made;
    spread_beyond(reduced, source, pressures);
}

static struct master_pressures made_by(const struct reduced_master *master, struct force rod)
{
    enum master_loss loss = MASTER_WHOLE;
    if (master->lost[0])
        loss = MASTER_FIRST_LOST;
    else if (master->lost[1])
        loss = MASTER_SECOND_LOST;
    return master_pressures(master->data, rod, loss);
}

static double rod_of(const struct reduced *reduced, const struct reduced_pedal *pedal, int place,
                     double effort)
{
    const struct pedal *data = pedal->data;
    double rod = pedal_rod_force(data, (struct force){effort}).n;
    if (pedal->master_count > REDUCED_MASTERS)
        return NAN;
    if (pedal->master_count == REDUCED_MASTERS) {
        if (isnan(data->bar_first.m) || isnan(data->bar_second.m))
            return NAN;
        double first = pedal_bar_share(data).of_1;
        rod *= place == 0 ? first : 1 - first;
    }
    const struct servo *servo = pedal->masters[place].servo;
    return servo == NULL ? rod
                         : servo_output(servo, (struct force){rod}, reduced->state.assisted).n;
}

struct force reduced_pressures(const struct reduced *reduced, int pedal, struct force effort,
                               double *pressures)
{
    const struct reduced_pedal *pressed = &reduced->pedals[pedal];
    struct force sum = {0};
    for (int i = 0; i < pressed->master_count && i < REDUCED_MASTERS; i++) {
        const struct reduced_master *master = &pressed->masters[i];
        if (master->part < 0)
            return (struct force){NAN};
        struct force rod = {rod_of(reduced, pressed, i, effort.n)};
        struct master_pressures made = made_by(master, rod);
        sum.n += rod.n;
        for (int chamber = 0; chamber < master->count; chamber++)
            spread(reduced, master, chamber, made.of[chamber].pa, pressures);
    }
    return pressed->master_count > REDUCED_MASTERS ? (struct force){NAN} : sum;
}

/* --- volumes --------------------------------------------------------------------------------- */

static double volume_of(const struct reduced_terms *terms, struct squeeze squeeze, double p)
{
    double sum = terms->overflow ? NAN : terms->linear * p;
    for (int i = 0; i < terms->step_count; i++) {
        double threshold = terms->steps[i].threshold;
        sum += terms->steps[i].volume * (p < threshold ? p / threshold : p > 0);
    }
    for (int i = 0; i < terms->hose_count; i++)
        sum += terms->hoses[i].amount *
               hose_ceiling((struct length){terms->hoses[i].inside}, (struct pressure){p}).m3_m;
    if (terms->fluid != 0)
        sum += terms->fluid * fluid_compression((struct volume){1}, squeeze.modulus, squeeze.slope,
                                                (struct pressure){p})
                                  .m3;
    return sum;
}

static bool is_beyond(const struct reduced *reduced, int stretch, int from)
{
    while (stretch > from)
        stretch = reduced->stretches[stretch].before;
    return stretch == from;
}

static double volumes_from(const struct reduced *reduced, int from, const double *pressures,
                           const struct reduced_terms *terms, struct squeeze squeeze)
{
    double sum = 0;
    for (int s = from; s < reduced->stretch_count; s++) {
        if (reduced->stretches[s].circuit != reduced->stretches[from].circuit)
            break;
        if (is_beyond(reduced, s, from))
            sum += volume_of(&terms[s], squeeze, pressures[s]);
    }
    return sum;
}

/* What is lost of a circuit's air from a stretch on: see travel_air(). */
static double air_from(const struct reduced *reduced, double free_air, int from,
                       const double *pressures, const struct reduced_terms *terms)
{
    double all = 0, counts = 0, more = 0;
    double first = air_compression((struct volume){1}, (struct pressure){pressures[from]}).m3;
    if (free_air == 0)
        return 0;
    for (int s = 0; s < reduced->stretch_count; s++) {
        if (reduced->stretches[s].circuit != reduced->stretches[from].circuit)
            continue;
        all += terms[s].room;
        if (!is_beyond(reduced, s, from))
            continue;
        struct pressure p = {pressures[s]};
        counts += terms[s].room;
        more += terms[s].room * (air_compression((struct volume){1}, p).m3 - first);
    }
    return free_air * (first * (counts / all) + more / all);
}

/* As a remote servo has it: see take_off_rod() of press.c. */
static double remote_share(const struct reduced *reduced, const struct reduced_master *master,
                           int chamber, const double *pressures, const struct reduced_terms *terms,
                           bool own, double *scratch)
{
    int out = master->remotes[chamber];
    if (out < 0)
        return 0;
    const struct reduced_stretch *behind = &reduced->stretches[out];
    const struct servo *servo = &behind->passage->as.servo;
    struct pressure in = {pressures[behind->before]};
    bool passes = servo->passes != NO;
    bool helps = servo_line_helps(servo, in, reduced->state.assisted);
    if (passes && !helps)
        return 0;
    double passed = 0;
    if (passes) {
        scratch[out] = servo->line_cut_in.pa;
        spread_beyond(reduced, out, scratch);
        passed = volumes_from(reduced, out, scratch, terms, master->squeeze[chamber]);
    }
    double beyond = volumes_from(reduced, out, pressures, terms, master->squeeze[chamber]);
    if (own) {
        beyond += air_from(reduced, master->air[chamber], out, pressures, terms);
        passed += passes ? air_from(reduced, master->air[chamber], out, scratch, terms) : 0;
    }
    return (own && helps ? servo->valve_volume.m3 : 0) -
           (1 - servo_area_before(servo)) * (beyond - passed);
}

static double chamber_volume(const struct reduced *reduced, const struct reduced_master *master,
                             int chamber, const double *pressures,
                             const struct reduced_terms *terms, bool own, double *scratch)
{
    int source = master->sources[chamber];
    if (source < 0)
        return 0;
    double sum = volumes_from(reduced, source, pressures, terms, master->squeeze[chamber]) +
                 remote_share(reduced, master, chamber, pressures, terms, own, scratch);
    return own ? sum + air_from(reduced, master->air[chamber], source, pressures, terms) : sum;
}

/* Whether the large bore of a stepped master delivers anything that counts. */
static bool takes_up(const struct reduced_master *master)
{
    return master_is_stepped(master->data) && !master->lost[0] && master->sources[0] >= 0;
}

struct reduced_volumes reduced_volumes_of(const struct reduced *reduced, int pedal,
                                          const double *pressures,
                                          const struct reduced_terms *terms, bool own,
                                          double *scratch)
{
    const struct reduced_pedal *pressed = &reduced->pedals[pedal];
    double *then = scratch + reduced->stretch_count;
    struct reduced_volumes volumes = {{{0}}, {{0}}};
    for (int i = 0; i < pressed->master_count && i < REDUCED_MASTERS; i++) {
        const struct reduced_master *master = &pressed->masters[i];
        for (int c = 0; c < master->count; c++)
            volumes.now[i][c] = chamber_volume(reduced, master, c, pressures, terms, own, scratch);
        if (master->part < 0 || !takes_up(master))
            continue;
        bool still = pressures[master->sources[0]] <= master->data->take_up.pa;
        struct master_pressures made =
            made_by(master, master_rod_force(master->data, master->data->take_up));
        for (int c = 0; c < master->count && !still; c++)
            spread(reduced, master, c, made.of[c].pa, then);
        for (int c = 0; c < master->count; c++)
            volumes.up[i][c] = still
                                   ? volumes.now[i][c]
                                   : chamber_volume(reduced, master, c, then, terms, own, scratch);
    }
    return volumes;
}

/* --- travel ---------------------------------------------------------------------------------- */

static double rod_for(const struct reduced_master *master, int chamber, double now, double up)
{
    const struct master *data = master->data;
    double area = master_area(data).m2, large = master_take_up_area(data).m2;
    bool stepped = master_is_stepped(data) && !master->lost[0];
    double full = master_full_stroke(master->data, chamber).m;
    if (master->circuits[chamber] < 0)
        return master_own_cut_off(master->data, chamber).m;
    if (master->lost[chamber])
        return stepped ? data->cut_off.m + (full - data->cut_off.m) * area / large : full;
    return master_own_cut_off(master->data, chamber).m +
           (stepped ? up / large + (now - up) / area : now / area);
}

/* By how much the pistons need more than their strokes, the rod being known: each by itself, then
 * both together. */
static int past_bores(const struct reduced_master *master, const double *now, double rod,
                      double *past)
{
    const struct master *data = master->data;
    double area = master_area(data).m2, sum = 0, strokes[REDUCED_CHAMBERS] = {0};
    bool stepped = master_is_stepped(data) && !master->lost[0], any_lost = false;
    for (int c = master->count - 1; c >= 0; c--) {
        bool joined = master->circuits[c] >= 0;
        strokes[c] = master_own_cut_off(master->data, c).m + (joined ? now[c] / area : 0);
        if (joined && master->lost[c])
            strokes[c] = master_full_stroke(master->data, c).m;
        if (joined && stepped && c == 0)
            strokes[c] = rod - (master->count > 1 ? strokes[1] : 0);
    }
    for (int c = 0; c < master->count; c++) {
        past[c] = master->lost[c] ? -INFINITY : strokes[c] - master_full_stroke(master->data, c).m;
        any_lost = any_lost || master->lost[c];
        sum += strokes[c];
    }
    past[master->count] = any_lost ? -INFINITY : sum - data->stroke.m;
    return master->count + 1;
}

static double rod_travel(const struct reduced_master *master, int place,
                         const struct reduced_volumes *volumes)
{
    double sum = 0;
    for (int c = 0; c < master->count; c++)
        sum += rod_for(master, c, volumes->now[place][c], volumes->up[place][c]);
    return sum;
}

struct reach reduced_reach(const struct reduced *reduced, int pedal, struct force effort,
                           struct force rod, const struct reduced_volumes *volumes)
{
    const struct reduced_pedal *pressed = &reduced->pedals[pedal];
    const struct pedal *data = pressed->data;
    struct reach reach = {{NAN}, {NAN}, {NAN}, {NAN}, {NAN}, {NAN}, pressed->dead};
    double travels[REDUCED_MASTERS] = {NAN, NAN};
    if (pressed->master_count < 1 || pressed->master_count > REDUCED_MASTERS)
        return reach;
    reach.rod = rod;
    for (int i = 0; i < pressed->master_count; i++) {
        const struct reduced_master *master = &pressed->masters[i];
        if (master->part < 0)
            continue;
        double rod_alone = rod_travel(master, i, volumes), past[REDUCED_CHAMBERS + 1];
        int count = past_bores(master, volumes->now[i], rod_alone, past);
        travels[i] = master->gap + rod_alone;
        for (int k = 0; k < count; k++)
            reach.past_bore.m = fmax(reach.past_bore.m, past[k]);
    }
    reach.rod_travel.m = travels[0];
    if (pressed->master_count == REDUCED_MASTERS) {
        double share = pedal_bar_share(data).of_1;
        reach.rod_travel.m = share * travels[0] + (1 - share) * travels[1];
        reach.tilt.rad = atan((travels[0] - travels[1]) / (data->bar_first.m + data->bar_second.m));
    }
    reach.travel.m = press_free_play(data).m + pedal_ratio(data).value * reach.rod_travel.m +
                     effort.n / data->stiffness.n_m;
    reach.past_floor.m = reach.travel.m - pedal_end(data).m;
    return reach;
}

int reduced_excesses(const struct reduced *reduced, int pedal, struct force effort,
                     const struct reduced_volumes *volumes, double *into)
{
    const struct reduced_pedal *pressed = &reduced->pedals[pedal];
    int count = 0;
    into[count++] =
        reduced_reach(reduced, pedal, effort, (struct force){NAN}, volumes).past_floor.m;
    for (int i = 0; i < pressed->master_count && i < REDUCED_MASTERS; i++) {
        const struct reduced_master *master = &pressed->masters[i];
        if (master->part >= 0)
            count +=
                past_bores(master, volumes->now[i], rod_travel(master, i, volumes), into + count);
    }
    return count;
}

double reduced_left(const struct reduced *reduced, int pedal, const struct reach *reach)
{
    if (reach->past_floor.m > 0 || reach->past_bore.m > 0)
        return 0;
    if (reach->dead)
        return isnan(pedal_end(reduced->pedals[pedal].data).m) ? NAN : 0;
    return -reach->past_floor.m;
}

/* --- a pedal, the car ------------------------------------------------------------------------ */

struct pressing {
    const struct reduced *reduced;
    int pedal;
    double *pressures, *scratch;
    struct reach last_that_failed;
};

static struct reach reach_at(struct pressing *pressing, double effort)
{
    const struct reduced *reduced = pressing->reduced;
    struct force pressed = {effort};
    struct force rod = reduced_pressures(reduced, pressing->pedal, pressed, pressing->pressures);
    struct reduced_volumes volumes = reduced_volumes_of(
        reduced, pressing->pedal, pressing->pressures, reduced->terms, true, pressing->scratch);
    return reduced_reach(reduced, pressing->pedal, pressed, rod, &volumes);
}

static double reach_excess(double effort, void *context)
{
    struct pressing *pressing = context;
    struct reach reach = reach_at(pressing, effort);
    double excess = fmax(reach.past_floor.m, reach.past_bore.m);
    if (excess > 0)
        pressing->last_that_failed = reach;
    return isnan(excess) ? -1 : excess;
}

static struct pedal_state pedal_at_its_end(struct pressing *pressing, double effort)
{
    const struct pedal *data = pressing->reduced->pedals[pressing->pedal].data;
    struct root root = root_between(reach_excess, pressing, 0, effort, END_TOLERANCE * effort);
    double fits = root.bracketed ? root.fits : 0;
    struct reach failed = pressing->last_that_failed, reach = reach_at(pressing, fits);
    struct pedal_state state = {{fits}, reach.rod, reach.rod_travel,       reach.travel,
                                {0},    false,     failed.past_bore.m > 0, reach.tilt};
    double past_bore = fmax(failed.past_bore.m, 0) * pedal_ratio(data).value;
    state.on_floor =
        reach.past_floor.m > 0 || (failed.past_floor.m > 0 && !(past_bore > failed.past_floor.m));
    if (state.on_floor) {
        state.travel = pedal_end(data);
        state.rod_travel.m =
            (state.travel.m - press_free_play(data).m - fits / data->stiffness.n_m) /
            pedal_ratio(data).value;
    }
    return state;
}

struct pedal_state reduced_pressed(const struct reduced *reduced, int pedal, struct force effort,
                                   double *pressures, double *scratch)
{
    struct pressing pressing = {
        .reduced = reduced, .pedal = pedal, .pressures = pressures, .scratch = scratch};
    struct reach reach = reach_at(&pressing, effort.n);
    bool too_far = reach.past_floor.m > 0 || reach.past_bore.m > 0;
    if (too_far && !reduced->state.no_floor && effort.n > 0) {
        pressing.last_that_failed = reach;
        return pedal_at_its_end(&pressing, effort.n);
    }
    struct pedal_state state = {
        effort, reach.rod, reach.rod_travel, reach.travel, {-reach.past_floor.m},
        false,  false,     reach.tilt};
    if (reach.dead && !reduced->state.no_floor) {
        state.bottomed = true;
        state.left.m = isnan(pedal_end(reduced->pedals[pedal].data).m) ? NAN : 0;
    }
    return state;
}

double reduced_force_at(const struct reduced_force *force, const double *pressures)
{
    double p = force->stretch < 0 ? NAN : pressures[force->stretch];
    return p >= 0 ? force->per_pa * fmax(p - force->threshold, 0) : NAN;
}

struct acceleration reduced_deceleration(const struct reduced *reduced, const double *pressures)
{
    const struct vehicle *vehicle = system_vehicle(reduced->system);
    double sum = 0, rolling = vehicle->rolling.value * STANDARD_GRAVITY;
    for (int f = 0; f < reduced->force_count; f++)
        sum += reduced_force_at(&reduced->forces[f], pressures);
    return (struct acceleration){vehicle->mass.kg > 0 ? (sum / vehicle->mass.kg + rolling) /
                                                            (1 + vehicle->rotating.of_1)
                                                      : NAN};
}
