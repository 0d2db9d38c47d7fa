#include "report/drawn_car.h"

#include <stdarg.h>
#include <string.h>

#include "cross/random_numbers.h"

enum { MOST_RUNS = 16384 };

struct making {
    FILE *text;
    struct random random;
    bool driver_left;
    bool long_names;
    bool cycle;
    double valves, bends; /* how likely a valve, a joint in a run is */
    int made;             /* counts valves, joints and runs up */
    char runs[MOST_RUNS];
};

struct name {
    char words[64];
};

static bool chance(struct making *making, double how)
{
    return random_chance(&making->random, how);
}

static const char *one_of(struct making *making, const char *const *words, int count)
{
    return words[random_of(&making->random, count)];
}

static void add_run(struct making *making, const char *format, ...)
{
    size_t length = strlen(making->runs);
    va_list rest;
    va_start(rest, format);
    vsnprintf(making->runs + length, sizeof making->runs - length, format, rest);
    va_end(rest);
}

/* The side's word: what is the passenger's side of a right-hand car is left. */
static const char *side_of(const struct making *making, bool driver)
{
    return driver == making->driver_left ? "left" : "right";
}

static struct name named(struct making *making, const char *what, const char *kind)
{
    struct name name;
    const char *more = !making->long_names || strlen(what) > 16 ? ""
                       : chance(making, 0.5)                    ? "of the old pattern "
                                                                : "behind the cover ";
    snprintf(name.words, sizeof name.words, "%s %s%s", what, more, kind);
    return name;
}

static void make_vehicle(struct making *making, bool cycle)
{
    static const char *const fronts[] = {"independent", "live", "dead"};
    static const char *const rears[] = {"live", "dead", "independent"};
    const char *front = one_of(making, fronts, 3), *rear = one_of(making, rears, 3);
    bool engine_rear = chance(making, 0.2);
    fprintf(making->text, "[vehicle]\ntitle = A car made up\nfirst used = 1966\n");
    if (cycle)
        fprintf(making->text, "type = motorcycle\nfront axle = fork\nrear axle = swinging arm\n");
    else
        fprintf(making->text, "driver = %s\nengine = %s\nfront axle = %s\nrear axle = %s\n",
                making->driver_left ? "left" : "right", engine_rear ? "rear" : "front", front,
                rear);
    fprintf(making->text, "[fluid]\ngrade = DOT 4\n");
}

static void make_nipples(struct making *making, double often)
{
    if (!chance(making, often))
        return;
    int count = random_of(&making->random, 4);
    fprintf(making->text, "nipples = %d\n", count);
    if (count == 2 && chance(making, 0.5))
        fprintf(making->text, "nipple names = %s\n",
                chance(making, 0.5) ? "inner, outer" : "outer, inner");
}

static void add_hose(struct making *making)
{
    static const char *const words[] = {", 0.3 m hose", ", hose", ", about 0.35 m hose"};
    add_run(making, "%s", one_of(making, words, 3));
}

static void add_pipe(struct making *making)
{
    add_run(making, ", %.1f m pipe", random_between(&making->random, 0.3, 3.0));
}

/* A valve in the run that is being written. */
static void add_valve(struct making *making)
{
    static const char *const types[] = {"limiting", "proportioning", "load-sensing",
                                        "hold-off", "residual",      "shuttle"};
    int type = random_of(&making->random, 6);
    char what[32];
    snprintf(what, sizeof what, "%s %d", type == 5 ? "warning" : "pressure", ++making->made);
    struct name name = named(making, what, "valve");
    fprintf(making->text, "[%s]\ntype = %s\npassages = 1\n", name.words, types[type]);
    make_nipples(making, 0.15);
    add_run(making, ", %s", name.words);
    add_pipe(making);
}

/* What may lie between the ends of a run: pipe, valves, unions, now and then a hose. */
static void add_way(struct making *making, bool hose)
{
    add_pipe(making);
    for (int i = 0; i < (making->long_names ? 1 : 2) && chance(making, making->valves); i++)
        add_valve(making);
    if (chance(making, making->bends)) {
        char what[32];
        snprintf(what, sizeof what, "body %d", ++making->made);
        struct name name = named(making, what, chance(making, 0.5) ? "union" : "bracket");
        fprintf(making->text, "[%s]\nnote = made up\n", name.words);
        make_nipples(making, 0.1);
        add_run(making, ", %s", name.words);
        if (!hose)
            add_pipe(making);
    }
    if (hose)
        add_hose(making);
}

static void begin_run(struct making *making, const char *from)
{
    add_run(making, "run %c%c = %s", 'a' + making->made / 26 % 26, 'a' + making->made % 26, from);
    making->made++;
}

struct wheel {
    bool used;
    struct name brake;
    bool hose;
    int inlets;
};

static void make_brake(struct making *making, struct wheel *wheel, const char *axle, bool driver,
                       bool disc, int inlets)
{
    char what[40];
    snprintf(what, sizeof what, "%s %s", axle, side_of(making, driver));
    snprintf(wheel->brake.words, sizeof wheel->brake.words, "%s %s%s", what,
             making->long_names ? "wheel " : "", disc ? "disc" : "drum");
    wheel->used = true;
    wheel->inlets = disc ? inlets : 1;
    fprintf(making->text, "[%s]\naxle = %s\n", wheel->brake.words,
            strstr(axle, "front") ? "front" : "rear");
    static const char *const shoes[] = {"leading and trailing\ncylinder = two pistons",
                                        "two leading\ncylinder = one each",
                                        "leading and trailing\ncylinder = sliding"};
    bool fixed = chance(making, 0.5);
    int pistons = fixed ? 2 + 2 * random_of(&making->random, 2) : 1;
    if (disc)
        fprintf(making->text, "caliper = %s\nbore = %d of 48 mm\n", fixed ? "fixed" : "sliding",
                pistons);
    else
        fprintf(making->text, "shoes = %s\nbore = 3/4 in\ndrum diameter = 203 mm\n",
                one_of(making, shoes, 3));
    if (wheel->inlets == 2)
        fputs("inlets = 2\n", making->text);
    make_nipples(making, 0.4);
    wheel->hose = chance(making, 0.8);
}

/* Runs from a place to several wheels, over tees, a block or a chain of tees. */
static void branch_out(struct making *making, const char *what, const char *from,
                       struct wheel *const *wheels, const int *inlets, int count)
{
    if (count == 0)
        return;
    struct name tee = {""};
    begin_run(making, from);
    add_way(making, chance(making, 0.3));
    if (count == 1) {
        add_run(making, ", %s%s\n", wheels[0]->brake.words,
                wheels[0]->inlets == 1 ? ""
                : inlets[0] == 1       ? ".1"
                                       : ".2");
        return;
    }
    char words[40];
    snprintf(words, sizeof words, "%s %d", what, ++making->made);
    tee = named(making, words, count > 3 ? "block" : "tee");
    fprintf(making->text, "[%s]\nnote = made up\n", tee.words);
    if (chance(making, 0.3))
        fputs("on = body\n", making->text);
    make_nipples(making, 0.1);
    add_run(making, ", %s\n", tee.words);
    bool in_turn = count > 2 && chance(making, 0.5);
    int here = in_turn ? (count + 1) / 2 : count;
    for (int i = 0; i < here; i++) {
        begin_run(making, tee.words);
        add_way(making, wheels[i]->hose);
        add_run(making, ", %s%s\n", wheels[i]->brake.words,
                wheels[i]->inlets == 1 ? ""
                : inlets[i] == 1       ? ".1"
                                       : ".2");
    }
    if (in_turn)
        branch_out(making, what, tee.words, wheels + here, inlets + here, count - here);
}

static void make_clutch(struct making *making, bool own_reservoir)
{
    struct name slave = named(making, "clutch", "slave");
    fprintf(making->text, "[%s]\nworks = clutch master\nratio = 5\n",
            making->cycle ? "clutch hand lever" : "clutch pedal");
    fprintf(making->text, "[clutch master]\ntype = single\nbore = 5/8 in\n");
    fprintf(making->text, "reservoir = %s reservoir\n", own_reservoir ? "clutch" : "brake");
    if (chance(making, 0.3))
        fputs("supply hose = 0.35 m\n", making->text);
    if (own_reservoir)
        fputs("[clutch reservoir]\ncapacity = 200 mL\n", making->text);
    fprintf(making->text, "[%s]\ntype = %s\nbore = 7/8 in\n", slave.words,
            chance(making, 0.6) ? "outside" : "concentric");
    begin_run(making, "clutch master");
    add_way(making, chance(making, 0.7));
    add_run(making, ", %s\n", slave.words);
}

static void make_servo(struct making *making, const char *name, bool remote, const char *works)
{
    fprintf(making->text, "[%s]\ntype = %s\n", name, remote ? "remote" : "direct");
    if (!remote)
        fprintf(making->text, "works = %s\n", works);
    fprintf(making->text, "diameter = 7 in\nratio = 2.5\n");
    if (chance(making, 0.7))
        fprintf(making->text, "vacuum hose = 0.9 m\nvacuum hose renewed = %d\n",
                2005 + random_of(&making->random, 20));
}

static void make_hoses(struct making *making)
{
    fprintf(making->text, "[all pipes]\nsize = 3/16 in\n");
    if (chance(making, 0.8))
        fprintf(making->text, "[all hoses]\nrenewed = %d\n", 2005 + random_of(&making->random, 20));
}

enum split { SINGLE, FRONT_REAR, DIAGONAL, DOUBLED, BAR, TWO_TANDEMS, CLUTCH_ONLY, SPLITS };

struct outlets {
    struct name names[4];
};

static void make_single(struct making *making, const char *name, const char *reservoir)
{
    fprintf(making->text, "[%s]\ntype = single\nbore = 3/4 in\n", name);
    fprintf(making->text, "reservoir = %s\n", reservoir);
    if (chance(making, 0.2))
        fputs("supply hose = 0.35 m\n", making->text);
}

static void make_tandem(struct making *making, const char *name)
{
    fprintf(making->text,
            "[%s]\ntype = tandem\nbore = 3/4 in\nprimary outlets = near\n"
            "secondary outlets = far\nreservoir = brake reservoir\n",
            name);
    if (chance(making, 0.2))
        fputs("supply hose = 0.35 m\n", making->text);
}

/* The masters with their pedals and servos; gives where the circuits begin. */
static struct outlets make_masters(struct making *making, enum split split)
{
    struct outlets outlets = {0};
    bool two = split == BAR || split == TWO_TANDEMS;
    bool direct = !two && split != CLUTCH_ONLY && chance(making, 0.5);
    bool reservoirs = split == BAR && chance(making, 0.5);
    fprintf(making->text, "[brake pedal]\nworks = %s\nratio = 5\n",
            two      ? "front master, rear master"
            : direct ? "servo"
                     : "brake master");
    if (direct)
        make_servo(making, "servo", false, "brake master");
    if (!reservoirs)
        fputs("[brake reservoir]\ncapacity = 200 mL\n", making->text);
    else
        fputs("[front reservoir]\ncapacity = 200 mL\n[rear reservoir]\ncapacity = 200 mL\n",
              making->text);
    if (split == BAR) {
        make_single(making, "front master", reservoirs ? "front reservoir" : "brake reservoir");
        make_single(making, "rear master", reservoirs ? "rear reservoir" : "brake reservoir");
    } else if (split == TWO_TANDEMS) {
        make_tandem(making, "front master");
        make_tandem(making, "rear master");
    } else if (split == SINGLE) {
        make_single(making, "brake master", "brake reservoir");
    } else {
        make_tandem(making, "brake master");
    }
    const char *names[4] = {two ? "front master" : "brake master", "rear master", "", ""};
    if (split == TWO_TANDEMS)
        names[0] = "front master.near", names[1] = "front master.far",
        names[2] = "rear master.near", names[3] = "rear master.far";
    else if (!two && split != SINGLE)
        names[0] = "brake master.near", names[1] = "brake master.far";
    for (int i = 0; i < 4; i++)
        snprintf(outlets.names[i].words, sizeof outlets.names[i].words, "%s", names[i]);
    return outlets;
}

/* A remote servo behind an outlet, now and then; the outlet is then the servo. */
static void maybe_remote(struct making *making, struct name *outlet, const char *name, double how)
{
    if (!chance(making, how))
        return;
    make_servo(making, name, true, NULL);
    begin_run(making, outlet->words);
    add_way(making, false);
    add_run(making, ", %s\n", name);
    snprintf(outlet->words, sizeof outlet->words, "%s", name);
}

enum { MOST_AXLES = 3 };

static void make_car(struct making *making)
{
    static const char *const axle_names[] = {"front", "rear", "third rear"};
    enum split split = (enum split)random_of(&making->random, SPLITS);
    if (split == CLUTCH_ONLY && chance(making, 0.6))
        split = FRONT_REAR;
    make_vehicle(making, false);
    if (split == CLUTCH_ONLY) {
        fputs("[brake reservoir]\ncapacity = 200 mL\n", making->text);
        make_clutch(making, false);
        return;
    }
    bool clutch = chance(making, 0.6);
    int axles = chance(making, 0.2) ? 3 : 2;
    double one_side = chance(making, 0.1) ? 0.6 : 0;
    struct wheel wheels[MOST_AXLES][2] = {0};
    bool discs[] = {chance(making, 0.6), chance(making, 0.35), chance(making, 0.35)};
    for (int axle = 0; axle < axles; axle++)
        for (int side = 0; side < 2; side++) {
            if (side == 1 && chance(making, one_side))
                continue;
            int inlets = split == DOUBLED && axle == 0 ? 2 : 1;
            if (inlets == 2)
                discs[axle] = true;
            make_brake(making, &wheels[axle][side], axle_names[axle], side == 1, discs[axle],
                       inlets);
        }
    struct outlets outlets = make_masters(making, split);
    maybe_remote(making, &outlets.names[0], "remote servo", split == SINGLE ? 0.3 : 0.05);
    struct wheel *lists[4][2 * MOST_AXLES];
    int inlets[4][2 * MOST_AXLES];
    int counts[4] = {0};
#define PUT(circuit, wheel, inlet)                                                                 \
    (lists[circuit][counts[circuit]] = &(wheel), inlets[circuit][counts[circuit]++] = (inlet))
    for (int axle = 0; axle < axles; axle++)
        for (int side = 0; side < 2; side++) {
            struct wheel *wheel = &wheels[axle][side];
            if (!wheel->used)
                continue;
            switch (split) {
            case SINGLE:
                PUT(0, *wheel, 1);
                break;
            case FRONT_REAR:
            case BAR:
                PUT(axle == 0 ? 0 : 1, *wheel, 1);
                break;
            case DIAGONAL:
                PUT((axle + side) % 2, *wheel, 1);
                break;
            case DOUBLED:
                PUT(0, *wheel, 1);
                if (wheel->inlets == 2)
                    PUT(1, *wheel, 2);
                break;
            case TWO_TANDEMS:
                PUT((axle == 0 ? 0 : 2) + side, *wheel, 1);
                break;
            case CLUTCH_ONLY:
            case SPLITS:
                break;
            }
        }
    static const char *const words[] = {"front", "rear", "near", "far"};
    for (int c = 0; c < 4; c++)
        branch_out(making, words[c], outlets.names[c].words, lists[c], inlets[c], counts[c]);
    if (clutch)
        make_clutch(making, chance(making, 0.3) || split == BAR);
}

static void make_cycle(struct making *making)
{
    make_vehicle(making, true);
    making->cycle = true;
    bool two = chance(making, 0.6);
    struct wheel front[2] = {0}, rear = {0};
    for (int i = 0; i < 1 + two; i++)
        make_brake(making, &front[i], "front", i == 0, true, 1);
    make_brake(making, &rear, "rear", chance(making, 0.6), chance(making, 0.7), 1);
    struct wheel *fronts[] = {&front[0], &front[1]};
    struct wheel *rears[] = {&rear};
    const int inlets[] = {1, 1};
    fprintf(making->text,
            "[front reservoir]\ncapacity = 200 mL\n[rear reservoir]\ncapacity = 200 mL\n");
    fprintf(making->text, "[front hand lever]\nworks = front master\nratio = 5\n");
    make_single(making, "front master", "front reservoir");
    fprintf(making->text, "[rear brake pedal]\nworks = rear master\nratio = 4\n");
    make_single(making, "rear master", "rear reservoir");
    branch_out(making, "fork", "front master", fronts, inlets, 1 + two);
    branch_out(making, "rear", "rear master", rears, inlets, 1);
    if (chance(making, 0.4))
        make_clutch(making, true);
}

void drawn_car(int number, bool driver_left, FILE *description)
{
    struct making *making = &(struct making){.text = description,
                                             .random = {.state = (uint64_t)number * 7000003u},
                                             .driver_left = driver_left};
    making->long_names = chance(making, 0.25);
    making->valves = chance(making, 0.5) ? 0.12 : 0;
    making->bends = chance(making, 0.5) ? 0.15 : 0;
    if (chance(making, 0.1))
        make_cycle(making);
    else
        make_car(making);
    make_hoses(making);
    fprintf(description, "[runs]\n%s", making->runs);
}

bool car_with_one_valve(int run, const char *type, bool driver_left, FILE *description)
{
    static const char *const runs[][2] = {
        {"brake master.front", "front tee"}, {"front tee", "front left disc"},
        {"front tee", "front right disc"},   {"brake master.rear", "axle tee"},
        {"axle tee", "rear left drum"},      {"axle tee", "rear right drum"},
        {"clutch master", "clutch slave"}};
    enum { RUNS = sizeof runs / sizeof runs[0] };
    if (run < 0 || run >= RUNS)
        return false;
    fprintf(description,
            "[vehicle]\ntitle = One valve\ndriver = %s\nfront axle = independent\n"
            "rear axle = live\n[fluid]\ngrade = DOT 4\n[reservoir]\ncapacity = 200 mL\n"
            "[brake pedal]\nworks = servo\nratio = 4\n[servo]\ntype = direct\n"
            "works = brake master\ndiameter = 7 in\nratio = 2.5\nvacuum hose = 0.9 m\n"
            "[brake master]\ntype = tandem\nbore = 3/4 in\nprimary outlets = front\n"
            "secondary outlets = rear\n[front disc]\ncaliper = fixed\nbore = 2 of 48 mm\n"
            "[rear drum]\nshoes = leading and trailing\ncylinder = two pistons\n"
            "bore = 3/4 in\ndrum diameter = 203 mm\n[clutch pedal]\nworks = clutch master\n"
            "ratio = 5\n[clutch master]\ntype = single\nbore = 5/8 in\n[clutch slave]\n"
            "type = outside\nbore = 7/8 in\n[axle tee]\non = rear axle\n"
            "[the valve]\ntype = %s\npassages = 1\n[runs]\n",
            driver_left ? "left" : "right", type);
    for (int i = 0; i < RUNS; i++)
        fprintf(description, "run %c = %s, 0.5 m pipe, %s0.3 m hose, %s\n", 'a' + i, runs[i][0],
                i == run ? "the valve, 0.4 m pipe, " : "", runs[i][1]);
    return true;
}
