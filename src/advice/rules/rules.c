#include "advice/rules/rules.h"

#include <math.h>
#include <stddef.h>
#include <string.h>

#include "advice/rules/rule_values.h"
#include "base/text.h"
#include "units/constants.h"

#define UK           "United Kingdom"
#define EU           "countries that apply the UN Regulation"
#define EEC          "countries of the European Communities"
#define EEC71        "Council Directive 71/320/EEC"
#define GERMANY      "Germany"
#define QUEBEC       "Quebec, Canada"
#define QUEBEC_CODE  "Quebec, Regulation respecting safety standards for road vehicles"
#define USA          "United States"
#define OHIO         "Ohio, United States"
#define CHINA        "China"
#define MOT          "UK MOT inspection manual: cars and passenger vehicles, section 1 Brakes"
#define R13H         "UN Regulation No. 13-H"
#define R13          "UN Regulation No. 13, Rev.4 (2000)"
#define FMVSS135     "49 CFR 571.135 (FMVSS 135)"
#define FMVSS105     "49 CFR 571.105 (FMVSS 105)"
#define FMVSS122     "49 CFR 571.122 (FMVSS 122)"
#define LETTER135    "NHTSA interpretation letter on 49 CFR 571.135"
#define LETTER105    "NHTSA letter nht70-2.5 (29 April 1970) on FMVSS 105"
#define STVZO        "Germany, StVZO 2012, text as of March 2022"
#define OHIO_CODE    "Ohio Administrative Code 4501:2-1-08"
#define CFR570       "49 CFR 570.55 (vehicles in use over 10000 lb)"
#define CFR570_LIGHT "49 CFR 570.5 (vehicles in use up to 10000 lb)"
#define GB7258       "China GB 7258-2017 as given in an inspection instruction"

#define SHARE     .dimension = DIMENSION_SHARE
#define SLOWS     .dimension = DIMENSION_ACCELERATION
#define LENGTH    .dimension = DIMENSION_LENGTH
#define FORCE     .dimension = DIMENSION_FORCE
#define FEET      0.3048
#define KM_H      (1 / 3.6)
#define LBF       4.4482216152605
#define NEW_TYPES .occasion = RULE_NEW_TYPES
#define MEMORY    .known = RULE_FROM_MEMORY
#define AT_500N   .argument = 500
/* A passenger car, or a light van judged like one: above that it is a lorry. */
#define CARS    .most_mass = 3500
#define ROLLERS "brake effort over the weight of the vehicle; no effort is stated, so 500 N here"
/* Until when or from when a rule for new types held is from memory unless the row says otherwise.
 */
#define FROM(year, month, day)  .from = {year, month, day}
#define UNTIL(year, month, day) .until = {year, month, day}

/* clang-format off */

static const struct rule_row rows[] = {
    /* at inspections */
    {.id = "mot-service-2010", CARS, .title = "Service brake, brake effort over weight", .value = 0.58,
     SHARE, FROM(2010, 9, 1), .where = UK, .source = MOT, .clause = "1.2.2",
     .scope = "M1, brakes on at least four wheels; " ROLLERS,
     .figure = "deceleration", .measure = rule_share_of_weight, AT_500N,
     .spares = rule_spares_many_means},
    {.id = "mot-service", CARS, .title = "Service brake, brake effort over weight", .value = 0.50,
     SHARE, UNTIL(2010, 9, 1), .where = UK, .source = MOT, .clause = "1.2.2",
     .scope = "M1, and N1 of any date, brakes on at least four wheels; " ROLLERS,
     .figure = "deceleration", .measure = rule_share_of_weight, AT_500N,
     .spares = rule_spares_many_means},
    {.id = "mot-first-means", .title = "First of two means of braking, effort over weight",
     .value = 0.30, SHARE, FROM(1915, 1, 1), UNTIL(1968, 1, 1), .where = UK, .source = MOT,
     .clause = "1.2.2", .scope = "no single control for at least four wheels, two means; " ROLLERS,
     .figure = "deceleration", .measure = rule_share_of_weight, AT_500N,
     .spares = rule_spares_single_control},
    {.id = "mot-second-means", .title = "Second of two means of braking, effort over weight",
     .value = 0.25, SHARE, FROM(1915, 1, 1), UNTIL(1968, 1, 1), .where = UK, .source = MOT,
     .clause = "1.2.2", .scope = "no single control for at least four wheels; the hand brake here",
     .figure = "hand-brake-slope", .measure = rule_parking_share,
     .spares = rule_spares_single_control},
    {.id = "mot-secondary", .title = "Secondary brake, brake effort over weight", .value = 0.25,
     SHARE, .where = UK, .source = MOT, .clause = "1.3.1 and 1.3.2",
     .scope = "single line systems; the hand brake here, at its own effort",
     .figure = "hand-brake-slope", .measure = rule_parking_share,
     .spares = rule_spares_two_circuits},
    {.id = "mot-parking", .title = "Parking brake, brake effort over weight", .value = 0.16,
     SHARE, FROM(1906, 1, 1), .where = UK, .source = MOT, .clause = "1.4.2 and 1.1.6",
     .scope = "general case; at the hand brake's own effort",
     .figure = "hand-brake-slope", .measure = rule_parking_share,
     .spares = rule_spares_no_parking},
    {.id = "mot-imbalance", .title = "Difference of the brakes of an axle", .value = 0.30,
     .at_most = true, SHARE, .where = UK, .source = MOT, .clause = "1.2.1",
     .scope = "of the stronger wheel, on rollers; here only what is described of each side",
     .lacks = "both sides are described alike: it needs both brake forces from a roller tester",
     .figure = "side-difference-front", .measure = rule_side_difference},
    {.id = "stvzo-service", .title = "Service brake, deceleration", .value = 5.0, SLOWS,
     NEW_TYPES, FROM(2021, 7, 3), .where = GERMANY, .source = STVZO, .clause = "41(4)",
     .scope = "mean fully developed; motor vehicles other than motorcycles, not those under 41(18), "
              "as cars are; an older one keeps the rule of its registration, 72(1); no effort "
              "is named, so 500 N here",
     .figure = "deceleration", .measure = rule_deceleration, AT_500N},
    {.id = "stvzo-residual", .title = "Service brake left after one part fails", .value = 0.44,
     SHARE, NEW_TYPES, FROM(2021, 7, 3), .where = GERMANY, .source = STVZO, .clause = "41(4a)",
     .scope = "share of the service brake's effect, without leaving the track; the worst circuit "
              "lost here, at 500 N; not for those under 41(18); an older one keeps its rule, 72(1)",
     .figure = "deceleration-circuit-lost", .measure = rule_left_of_service, AT_500N},
    {.id = "stvzo-parking", .title = "Parking brake, deceleration", .value = 1.5, SLOWS,
     NEW_TYPES, FROM(2021, 7, 3), .where = GERMANY, .source = STVZO, .clause = "41(5)",
     .scope = "held by mechanical means alone; at the hand brake's own effort; not for those under "
              "41(18); an older one keeps the rule of its registration, 72(1)",
     .figure = "hand-brake-slope", .measure = rule_parking_deceleration,
     .spares = rule_spares_no_parking},
    {.id = "ohio-reserve", .title = "Pedal travel left, no assistance", .value = 1.0 / 3.0,
     SHARE, .where = OHIO, .source = OHIO_CODE, .clause = "(B)(2)",
     .scope = "40 to 60 lbf; 60 lbf here", .figure = "pedal-left", .measure = rule_pedal_left,
     .argument = 60 * LBF, .spares = rule_spares_with_servo},
    {.id = "ohio-reserve-power", .title = "Pedal travel left, power assisted", .value = 0.20,
     SHARE, .where = OHIO, .source = OHIO_CODE, .clause = "(B)(2)",
     .scope = "engine running, 15 to 20 lbf; 20 lbf here", .figure = "pedal-left",
     .measure = rule_pedal_left, .argument = 20 * LBF, .spares = rule_spares_without_servo},
    {.id = "us570-reserve", .title = "Pedal travel used", .value = 0.80, .at_most = true,
     SHARE, .where = USA, .source = CFR570, .clause = "570.55(c)",
     .scope = "50 lbf, engine running if assisted", .figure = "pedal-travel",
     .measure = rule_pedal_used, .argument = 50 * LBF, .spares = rule_spares_light},
    {.id = "us570-reserve-light", .title = "Pedal travel used", .value = 0.80, .at_most = true,
     SHARE, MEMORY, .where = USA, .source = CFR570_LIGHT, .clause = "570.5(c)",
     .scope = "50 lbf, engine running if assisted", .figure = "pedal-travel",
     .measure = rule_pedal_used, .argument = 50 * LBF, .spares = rule_spares_over_10000_lb},
    {.id = "quebec-lining", .title = "Lining left over the shoe, bonded", .value = 1.6e-3,
     LENGTH, .where = QUEBEC, .source = QUEBEC_CODE, .clause = "135(9)(a)",
     .scope = "drums; riveted ones 1 mm over the rivets, or 3.2 mm in all, where they cannot be seen",
     .figure = NULL, .measure = rule_lining, .argument = FIXING_GLUE,
     .spares = rule_spares_no_bonded},
    {.id = "quebec-lining-riveted", .title = "Lining left over the rivets", .value = 1.0e-3,
     LENGTH, .where = QUEBEC, .source = QUEBEC_CODE, .clause = "135(9)(a)",
     .scope = "drums; 3.2 mm in all where the rivets cannot be seen",
     .figure = NULL, .measure = rule_lining, .argument = FIXING_RIVETS,
     .spares = rule_spares_no_riveted},
    {.id = "gb7258-total", CARS, .title = "All brakes, brake force over weight", .value = 0.60,
     SHARE, .where = CHINA, .source = GB7258, .clause = "table 1",
     .scope = "cars and up to 3500 kg, unladen (laden 50 %); on rollers; 500 N here",
     .figure = "deceleration", .measure = rule_share_of_weight, AT_500N},
    {.id = "gb7258-front", CARS, .title = "Front brakes, brake force over load of the axle",
     .value = 0.60, SHARE, .where = CHINA, .source = GB7258, .clause = "table 1",
     .scope = "cars and up to 3500 kg; on rollers, so over the standing load; 500 N here",
     .figure = "front-share", .measure = rule_front_over_load, AT_500N},
    {.id = "gb7258-rear", CARS, .title = "Rear brakes, brake force over load of the axle",
     .value = 0.20, SHARE, .where = CHINA, .source = GB7258, .clause = "table 1",
     .scope = "cars and up to 3500 kg; on rollers, so over the standing load; 500 N here",
     .figure = "front-share", .measure = rule_rear_over_load, AT_500N},

    /* asked of new types, for comparison */
    {.id = "r13h-service", CARS, .title = "Service brake, deceleration", .value = 6.43, SLOWS, NEW_TYPES,
     MEMORY, FROM(1998, 5, 11), .where = EU, .source = R13H, .clause = "Annex 3, 2.1.1",
     .scope = "mean fully developed, engine disconnected, from 100 km/h, 65 to 500 N",
     .figure = "deceleration", .measure = rule_deceleration, AT_500N},
    {.id = "r13h-service-distance", CARS, .title = "Stopping distance from 100 km/h", .value = 70,
     .at_most = true, LENGTH, NEW_TYPES, MEMORY, FROM(1998, 5, 11), .where = EU, .source = R13H,
     .clause = "Annex 3, 2.1.1", .scope = "0.1 v + 0.0060 v2, engine disconnected, 65 to 500 N",
     .figure = "deceleration", .measure = rule_distance, .argument = 100 * KM_H},
    {.id = "r13h-secondary", CARS, .title = "Secondary brake, or one circuit failed, deceleration",
     .value = 2.44, SLOWS, NEW_TYPES, MEMORY, FROM(1998, 5, 11), .where = EU, .source = R13H,
     .clause = "Annex 3, 2.2", .scope = "mean fully developed, from 100 km/h, up to 500 N",
     .figure = "deceleration-circuit-lost", .measure = rule_secondary, AT_500N},
    {.id = "r13h-parking", CARS, .title = "Slope that the parking brake holds", .value = 0.20, SHARE,
     NEW_TYPES, MEMORY, FROM(1998, 5, 11), .where = EU, .source = R13H,
     .clause = "Annex 3, 2.3.1 and 2.3.3",
     .scope = "laden, up to 400 N by hand; here at the hand brake's own effort",
     .figure = "hand-brake-slope", .measure = rule_parking_slope,
     .spares = rule_spares_no_parking},
    {.id = "r13h-lock-order", CARS, .title = "Grip the front asks for over what the rear does",
     .value = 0, SHARE, NEW_TYPES, MEMORY, FROM(1998, 5, 11), .where = EU, .source = R13H,
     .clause = "Annex 5, 3.1",
     .scope = "least from braking rate 0.15 to 0.8, all loads; here at the described load alone",
     .figure = "grip-used-rear", .measure = rule_lock_order, .argument = 0,
     .spares = rule_spares_one_axle},
    {.id = "r13h-grip-band", CARS, .title = "Braking rate over what the grip asks for",
     .value = 0, SHARE, NEW_TYPES, MEMORY, FROM(1998, 5, 11), .where = EU, .source = R13H,
     .clause = "Annex 5, 3.1",
     .scope = "least over 0.1 + 0.7 (k - 0.2), grip k from 0.2 to 0.8; at the described load alone",
     .figure = "grip-efficiency", .measure = rule_grip_band, .argument = 0.7,
     .spares = rule_spares_one_axle},
    {.id = "eec71-lock-order", CARS, .title = "Grip the front asks for over what the rear does",
     .value = 0, SHARE, NEW_TYPES, FROM(1972, 1, 1), UNTIL(1998, 5, 11), .where = EEC,
     .source = EEC71, .clause = "Annex II, appendix",
     .scope = "least from braking rate 0.15 to 0.8; from 0.3 to 0.45 the rear may ask for up to the "
              "rate + 0.05; here at the described load alone; dates from memory",
     .figure = "grip-used-rear", .measure = rule_lock_order, .argument = 1,
     .spares = rule_spares_one_axle},
    {.id = "r13h-reservoir", CARS, .title = "Reservoir over what all lining wear draws", .value = 1,
     SHARE, NEW_TYPES, MEMORY, FROM(1998, 5, 11), .where = EU, .source = R13H,
     .clause = "5.2.14.1",
     .scope = "from new lining to worn; here from the pads as they are, discs only",
     .figure = "reservoir-volume-needed", .measure = rule_reservoir,
     .spares = rule_spares_no_discs},
    {.id = "r13-service", CARS, .title = "Service brake, deceleration", .value = 5.8, SLOWS, NEW_TYPES,
     MEMORY, .where = EU, .source = R13, .clause = "Annex 4, 2.1.1",
     .scope = "category M1, mean fully developed, from 80 km/h, up to 500 N",
     .figure = "deceleration", .measure = rule_deceleration, AT_500N},
    {.id = "r13-secondary", CARS, .title = "Secondary brake, deceleration", .value = 2.9, SLOWS,
     NEW_TYPES, .where = EU, .source = R13, .clause = "Annex 4, 2.2.1",
     .scope = "category M1, engine disconnected, from 80 km/h, up to 500 N by foot, 400 N by hand",
     .figure = "deceleration-circuit-lost", .measure = rule_secondary, AT_500N},
    {.id = "fmvss135-cold", CARS, .title = "Stopping distance from 100 km/h, cold", .value = 70,
     .at_most = true, LENGTH, NEW_TYPES, FROM(2000, 9, 1), .where = USA, .source = LETTER135,
     .clause = "S7.5", .scope = "cold effectiveness, up to 500 N; built from 2000-09-01, by choice from 1995-03-06",
     .figure = "deceleration", .measure = rule_distance, .argument = 100 * KM_H},
    {.id = "fmvss135-circuit", CARS, .title = "Stopping distance from 100 km/h, one circuit failed",
     .value = 168, .at_most = true, LENGTH, NEW_TYPES, MEMORY, FROM(2000, 9, 1), .where = USA,
     .source = FMVSS135, .clause = "S7.10", .scope = "65 to 500 N",
     .figure = "deceleration-circuit-lost", .measure = rule_distance_secondary,
     .argument = 100 * KM_H},
    {.id = "fmvss135-assist", CARS, .title = "Stopping distance from 100 km/h, assist failed",
     .value = 168, .at_most = true, LENGTH, NEW_TYPES, MEMORY, FROM(2000, 9, 1), .where = USA,
     .source = FMVSS135, .clause = "S7.11", .scope = "65 to 500 N",
     .figure = "deceleration-unassisted", .measure = rule_distance_unassisted,
     .argument = 100 * KM_H, .spares = rule_spares_without_servo},
    {.id = "fmvss135-parking", CARS, .title = "Slope that the parking brake holds", .value = 0.20,
     SHARE, NEW_TYPES, MEMORY, FROM(2000, 9, 1), .where = USA, .source = FMVSS135,
     .clause = "S7.12", .scope = "up and down, 5 min, loaded, up to 400 N by hand, 500 N by foot",
     .figure = "hand-brake-slope", .measure = rule_parking_slope,
     .spares = rule_spares_no_parking},
    {.id = "fmvss135-compartment", CARS, .title = "Reservoir over full strokes of what it feeds",
     .value = 1, SHARE, NEW_TYPES, MEMORY, FROM(2000, 9, 1), .where = USA, .source = FMVSS135,
     .clause = "S5.4.2", .scope = "each compartment; here the whole reservoir over all pistons",
     .figure = NULL, .measure = rule_compartment},
    {.id = "fmvss105-1968", CARS, .title = "Deceleration in a stop from 60 mph", .value = 20 * FEET,
     SLOWS, NEW_TYPES, FROM(1968, 1, 1), UNTIL(1976, 1, 1), .where = USA, .source = LETTER105,
     .clause = "first edition",
     .scope = "passenger cars, 15 to 150 lbf; dates from memory",
     .figure = "deceleration", .measure = rule_deceleration, .argument = 150 * LBF},
    {.id = "fmvss105-60mph", CARS, .title = "Stopping distance from 60 mph", .value = 204 * FEET,
     .at_most = true, LENGTH, NEW_TYPES, MEMORY, FROM(1976, 1, 1), UNTIL(2000, 9, 1),
     .where = USA, .source = FMVSS105, .clause = "table II",
     .scope = "passenger cars, second effectiveness, 15 to 150 lbf",
     .figure = "deceleration", .measure = rule_distance_60mph},
    {.id = "fmvss105-parking", CARS, .title = "Slope that the parking brake holds", .value = 0.30,
     SHARE, NEW_TYPES, MEMORY, FROM(1976, 1, 1), UNTIL(2000, 9, 1), .where = USA,
     .source = FMVSS105, .clause = "S5.2.1",
     .scope = "passenger cars, up and down, 5 min, up to 90 lbf (400 N) by hand",
     .figure = "hand-brake-slope", .measure = rule_parking_slope,
     .spares = rule_spares_no_parking},
    {.id = "fmvss105-reservoir", CARS, .title = "Reservoir over what all lining wear draws", .value = 1,
     SHARE, NEW_TYPES, FROM(1976, 1, 1), UNTIL(2000, 9, 1), .where = USA,
     .source = "NHTSA interpretation letter on 49 CFR 571.105", .clause = "S5.4.2",
     .scope = "from new lining to worn, linings adjusted; here from the pads as they are, discs "
              "only; dates from memory",
     .figure = "reservoir-volume-needed", .measure = rule_reservoir,
     .spares = rule_spares_no_discs},
    {.id = "fmvss122-lever", .title = "Effort at the hand lever", .value = 55 * LBF,
     .at_most = true, FORCE, .of = RULE_MOTORCYCLES, NEW_TYPES, MEMORY, FROM(1974, 1, 1),
     UNTIL(2014, 9, 1), .where = USA, .source = FMVSS122, .clause = "S6.10, edition before 2012",
     .scope = "its own stops are harder; here for a stop of half g",
     .figure = "effort-for-half-g", .measure = rule_lever_effort,
     .spares = rule_spares_no_lever},
    {.id = "fmvss122-lever-least", .title = "Least effort at the hand lever", .value = 2.3 * LBF,
     FORCE, .of = RULE_MOTORCYCLES, NEW_TYPES, FROM(2001, 8, 14), UNTIL(2014, 9, 1), .where = USA,
     .source = "Federal Register, final rule of 14 August 2001 amending 49 CFR 571.122",
     .clause = "fade and water recovery tests",
     .scope = "its own stops are those when hot and wet; here for a stop of half g, cold and dry; "
              "dates from memory",
     .figure = "effort-for-half-g", .measure = rule_lever_effort,
     .spares = rule_spares_no_lever},
};

/* clang-format on */

const struct rule_row *rule_rows(size_t *count)
{
    *count = sizeof rows / sizeof *rows;
    return rows;
}

const struct rule_row *rule_row(const char *id)
{
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
        if (text_same(rows[i].id, id))
            return &rows[i];
    return NULL;
}

/* The last day that a date can mean: of a month the 31st, of a year its end. */
static struct date latest(struct date date)
{
    if (date.month < 1)
        return (struct date){date.year, 12, 31};
    return date.day < 1 ? (struct date){date.year, date.month, 31} : date;
}

static enum rule_concern concern_by_date(const struct rule_row *row, struct date used)
{
    bool from = date_known(row->from), until = date_known(row->until);
    if (!from && !until)
        return RULE_CONCERNS;
    if (!date_known(used))
        return RULE_NEEDS_DATE;
    struct date last = latest(used);
    if ((from && date_compare(last, row->from) < 0) ||
        (until && date_compare(used, row->until) >= 0))
        return RULE_OTHER_DATE;
    if ((from && date_compare(used, row->from) < 0) ||
        (until && date_compare(last, row->until) >= 0))
        return RULE_NEEDS_DATE; /* a bound lies within the year or month that is said */
    return RULE_CONCERNS;
}

static enum rule_concern concern_of(const struct rule_row *row, const struct rule_car *car,
                                    const char **why)
{
    const struct vehicle *vehicle = system_vehicle(car->system);
    bool motorcycle = vehicle->type == VEHICLE_MOTORCYCLE;
    if (motorcycle != (row->of == RULE_MOTORCYCLES))
        return RULE_OTHER_CLASS;
    *why = system_first(car->system, KIND_DISC) < 0 && system_first(car->system, KIND_DRUM) < 0
               ? "no brakes are described"
           : row->most_mass > 0 && vehicle->mass.kg > row->most_mass
               ? "asked of cars and of vehicles up to 3500 kg"
           : row->spares != NULL ? row->spares(car)
                                 : NULL;
    if (*why != NULL)
        return RULE_SPARES;
    enum rule_concern concern = concern_by_date(row, vehicle->first_used);
    bool compares = concern == RULE_CONCERNS && row->occasion == RULE_NEW_TYPES;
    return compares ? RULE_FOR_COMPARISON : concern;
}

bool rule_is_for(const char *id, const struct system *system)
{
    const struct rule_row *row = rule_row(id);
    const struct vehicle *vehicle = system_vehicle(system);
    bool motorcycle = vehicle->type == VEHICLE_MOTORCYCLE;
    return row != NULL && motorcycle == (row->of == RULE_MOTORCYCLES) &&
           concern_by_date(row, vehicle->first_used) == RULE_CONCERNS;
}

static enum rule_outcome outcome_of(const struct rule_row *row, double value)
{
    if (isnan(value))
        return RULE_NOT_COMPUTED;
    bool meets = row->at_most ? value <= row->value : value >= row->value;
    return meets ? RULE_MEETS : RULE_FALLS_SHORT;
}

struct rulings rules_measure(const struct system *system, const struct network *network,
                             const struct figures *figures, struct arena *arena)
{
    struct rulings rulings = {.count = (int)(sizeof rows / sizeof *rows)};
    struct rule_car car = {system, network, figures, solution_room(system, network, arena)};
    rulings.items = ARENA_ARRAY(arena, sizeof rows / sizeof *rows, struct ruling);
    for (int i = 0; i < rulings.count; i++) {
        struct ruling *ruling = &rulings.items[i];
        ruling->rule = &rows[i];
        ruling->concern = concern_of(&rows[i], &car, &ruling->why);
        double value = rows[i].measure(&car, rows[i].argument);
        ruling->value = isfinite(value) ? value : NAN;
        ruling->outcome = outcome_of(&rows[i], ruling->value);
        ruling->rests_on =
            rows[i].figure != NULL ? figures_find(figures, rows[i].figure, NULL) : NULL;
    }
    return rulings;
}

const char *rule_dates(const struct rule_row *row, struct arena *arena)
{
    char from[16], until[16];
    date_write(row->from, from);
    date_write(row->until, until);
    if (date_known(row->from) && date_known(row->until))
        return text_print(arena, "first used from %s and before %s", from, until);
    if (date_known(row->from))
        return text_print(arena, "first used from %s on", from);
    if (date_known(row->until))
        return text_print(arena, "first used before %s", until);
    return "first used at any date, as far as was read";
}
