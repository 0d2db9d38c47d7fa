#include "advice/job/soft.h"

#include <stddef.h>

#include "advice/common/phrases.h"
#include "base/text.h"

/* What of a car a row or a remedy is for. */
enum soft_when {
    WHEN_ANY,
    WHEN_BRAKES,
    WHEN_DRUMS,
    WHEN_DISCS,
    WHEN_TWO_CIRCUITS,
    WHEN_SERVO,
    WHEN_HAND_BRAKE,
    WHEN_HOSES,
    WHEN_OLD_HOSES,
    WHEN_DEAD_LEG,
    WHEN_CLUTCH,
    WHEN_COUNT
};

enum { SOFT_MOST = 5 };
struct remedy {
    enum soft_when when;
    const char *words; /* NULL: the last one was before it */
};
struct remedies {
    struct soft_row row;
    enum soft_when when;
    struct remedy first[SOFT_MOST], then[SOFT_MOST];
};

static const struct remedies rows[] = {
    {{"long-then-hard", "Long at the first press, high and hard at the third"},
     WHEN_BRAKES,
     {{WHEN_DRUMS, "set the shoes"},
      {WHEN_DISCS, "see what holds the pads off their discs: play of a bearing, run-out, a caliper "
                   "that does not slide"}},
     {{WHEN_ANY, "gap of the push rod, free play"}}},
    {{"long-then-springy", "Long, high at the third press, and still springy"},
     WHEN_BRAKES,
     {{WHEN_DISCS, "air: calipers left for right, a nipple that is not the highest place"},
      {WHEN_DRUMS, "air: wheel cylinders once more, tapped while they run"},
      {WHEN_DEAD_LEG, "the port that leads nowhere: crack its plug or switch"},
      {WHEN_ANY, "the outlets of the master"}},
     {{WHEN_ANY, "tie it down overnight and bleed again in the morning"}}},
    {{"springy", "Springy, the same at each press"},
     WHEN_BRAKES,
     {{WHEN_HOSES, "pinch one new hose after the other with smooth jaws, for a minute and never an "
                   "old one: the one that brings it up leads to what is soft"},
      {WHEN_ANY, "the bracket of the master: does it bend?"}},
     {{WHEN_OLD_HOSES, "renew the old hoses"},
      {WHEN_DRUMS, "a bent shoe or backplate"},
      {WHEN_ANY, "linings that are not bedded in yet"}}},
    {{"one-circuit", "Long with one circuit alone, while the wheels of the other hold"},
     WHEN_TWO_CIRCUITS,
     {{WHEN_ANY, "bleed that circuit again, from its outlet at the master on"}},
     {{WHEN_ANY, "the cups of its piston"}}},
    {{"to-the-end", "To the end of its travel, and nothing comes at any nipple"},
     WHEN_ANY,
     {{WHEN_ANY, "a port that stays covered: gap of the push rod; a master that was not filled "
                 "first; a cup turned over"}},
     {{WHEN_ANY, "the master off and to the bench once more"}}},
    {{"sinks", "Sinks slowly, and all is dry outside"},
     WHEN_ANY,
     {{WHEN_ANY, "a steady light press for a minute, then a hard one: where only the light one "
                 "sinks, a cup of the master lets by"},
      {WHEN_TWO_CIRCUITS, "the level of one chamber rises"}},
     {{WHEN_SERVO, "look into the servo: is it oily?"}}},
    {{"drags", "Hard at once, but wheels drag"},
     WHEN_BRAKES,
     {{WHEN_ANY, "open the nipple there: where that frees the wheel, pressure stayed in. All "
                 "wheels: a port that stays covered, gap of the push rod"},
      {WHEN_HOSES, "one wheel: its hose is swollen shut"}},
     {{WHEN_HAND_BRAKE, "else its cable is too tight"},
      {WHEN_DISCS, "pistons or slides stick"},
      {WHEN_DRUMS, "shoes are set too close"}}},
    {{"long-when-hot", "Good when cold, long after a drive"},
     WHEN_BRAKES,
     {{WHEN_ANY, "change the fluid: old fluid holds water and boils"}},
     {{WHEN_DRUMS, "drums turned too thin"}, {WHEN_DISCS, "play of a bearing"}}},
    {{"bubbles-go-on", "Bubbles never end"},
     WHEN_ANY,
     {{WHEN_ANY,
       "under suction they come past the nipple's thread: grease it, or bleed by pressing "
       "or by pressure"},
      {WHEN_ANY, "a union at the top of the run that is not tight"}},
     {{WHEN_ANY, "a cup that draws air in: its lip"}}},
    {{"bubbles-end",
      "Bubbles have ended, twice the volume of the plan is drawn, and nothing changes"},
     WHEN_ANY,
     {{WHEN_ANY, "stop; rest half an hour; tilt the part so that its nipple is highest, or fill it "
                 "backwards from the nipple"}},
     {{WHEN_ANY, "look for a leak"}}},
    {{"clutch-low", "The clutch frees late, and sooner when it is pumped"},
     WHEN_CLUTCH,
     {{WHEN_CLUTCH, "the slave's nipple as its highest point, piston pushed home, once more"},
      {WHEN_CLUTCH, "gap of the push rod, free play"}},
     {{WHEN_CLUTCH, "cups of an old clutch master"}}},
};
enum { ROWS = sizeof rows / sizeof *rows };

static bool has_kind(const struct system *system, enum part_kind kind)
{
    return system_first(system, kind) >= 0;
}

static bool brakes_on(const struct network *network, bool clutch)
{
    for (int c = 0; c < network->circuit_count; c++) {
        if (network->circuits[c].clutch == clutch) {
            return true;
        }
    }
    return false;
}

static bool has_two_circuits(const struct network *network)
{
    for (int c = 0; c < network->circuit_count; c++) {
        for (int k = 0; k < c; k++) {
            if (!network->circuits[c].clutch &&
                network->circuits[c].master == network->circuits[k].master) {
                return true;
            }
        }
    }
    return false;
}

static bool has_dead_leg(const struct system *system)
{
    for (int i = 0; i < system->part_count; i++) {
        if (system->parts[i].kind == KIND_JOINT && system->parts[i].as.joint.blanked > 0) {
            return true;
        }
    }
    return false;
}

static bool has_pressure_hose(const struct system *system, const struct hose_list *hoses, bool old)
{
    for (int i = 0; i < hoses->count; i++) {
        const struct hose_line *line = &hoses->items[i];
        bool pressed = line->hose >= 0 && system->parts[line->hose].as.hose.use != HOSE_SUPPLY &&
                       system->parts[line->hose].as.hose.use != HOSE_VACUUM;
        bool due = line->standing == HOSE_IS_OLD || line->standing == HOSE_AGE_NOT_KNOWN;
        if (pressed && (!old || due)) {
            return true;
        }
    }
    return false;
}

static void look_at_car(bool holds[WHEN_COUNT], const struct system *system,
                        const struct network *network, const struct hose_list *hoses)
{
    holds[WHEN_ANY] = true;
    holds[WHEN_BRAKES] = brakes_on(network, false);
    holds[WHEN_DRUMS] = has_kind(system, KIND_DRUM);
    holds[WHEN_DISCS] = has_kind(system, KIND_DISC);
    holds[WHEN_TWO_CIRCUITS] = has_two_circuits(network);
    holds[WHEN_SERVO] = has_kind(system, KIND_SERVO);
    holds[WHEN_HAND_BRAKE] = has_kind(system, KIND_PARKING);
    holds[WHEN_HOSES] = has_pressure_hose(system, hoses, false);
    holds[WHEN_OLD_HOSES] = has_pressure_hose(system, hoses, true);
    holds[WHEN_DEAD_LEG] = has_dead_leg(system);
    holds[WHEN_CLUTCH] = brakes_on(network, true);
}

/* The remedies that this car can need, in one line; NULL: none. */
static const char *line_of(const struct remedy *remedies, const bool *holds, struct arena *arena)
{
    struct text line = text_start(arena);
    for (int i = 0; i < SOFT_MOST && remedies[i].words != NULL; i++) {
        if (holds[remedies[i].when]) {
            text_add(&line, "%s%s", line.count > 0 ? "; " : "", remedies[i].words);
        }
    }
    return line.count > 0 ? line.items : NULL;
}

struct soft_list soft_of(const struct system *system, const struct network *network,
                         const struct hose_list *hoses, struct arena *arena)
{
    bool holds[WHEN_COUNT] = {false};
    struct soft_list list = {ARENA_ARRAY(arena, ROWS, struct soft_line), 0};
    look_at_car(holds, system, network, hoses);
    for (int i = 0; i < ROWS; i++) {
        const char *first = line_of(rows[i].first, holds, arena);
        if (holds[rows[i].when] && first != NULL) {
            list.items[list.count++] =
                (struct soft_line){&rows[i].row, first, line_of(rows[i].then, holds, arena)};
        }
    }
    return list;
}
