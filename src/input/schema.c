#include "input/schema.h"

#include <math.h>
#include <string.h>

#include "network/system.h"
#include "parts/words.h"

#define UNBOUNDED        .least = NAN, .most = NAN, .usual_least = NAN, .usual_most = NAN, .assumed = NAN
#define IN(type, member) .field = offsetof(struct type, member)
#define ROWS_IN(rows)    (rows), sizeof(rows) / sizeof *(rows)

/* clang-format off */

static const struct choice yes_or_no[] = {
    {"yes", "y, true", YES, "it is so"},
    {"no", "n, false", NO, "it is not so"},
    {0}};

static const struct choice pistons[] = {
    {"free", "moving, move freely", PISTONS_FREE, "every piston moves by hand or by a little air"},
    {"stuck", "seized, frozen, tight", PISTONS_STUCK, "a piston had to be forced out or did not come"},
    {0}};

static const struct choice bores[] = {
    {"clean", "good, smooth, bright", BORE_CLEAN, "nothing to see or feel where the seal runs"},
    {"stained", "marked, discoloured, discolored", BORE_STAINED, "marks that a fingernail does not feel"},
    {"pitted", "rusty, scored, corroded", BORE_PITTED, "marks that a fingernail catches on"},
    {0}};

static const struct choice nipples[] = {
    {"sound", "good, free", NIPPLE_SOUND, "it opens and closes"},
    {"seized", "stuck, tight, frozen", NIPPLE_SEIZED, "it does not turn"},
    {"sheared", "broken, snapped", NIPPLE_SHEARED, "it broke off"},
    {0}};

static const struct choice leaks[] = {
    {"dry", "none, no", LEAK_DRY, "dry behind boots and at unions"},
    {"weeping", "wet, leaking, yes", LEAK_WEEPING, "wet behind a boot or at a union"},
    {0}};

static const struct choice open_ends[] = {
    {"plugged", "plugged at once, capped, closed", OPEN_ENDS_PLUGGED,
     "plugged at once: only what was off or is new holds air"},
    {"drained", "left open, ran out", OPEN_ENDS_DRAINED, "what lies behind an open end ran out"},
    {"blown through", "blown, blown out, blown dry", OPEN_ENDS_BLOWN,
     "every pipe of an opened circuit is empty"},
    {0}};

static const struct key work_keys[] = {
    {.name = "car", .others = "vehicle, title", .form = FORM_TEXT, IN(work_lines, car), UNBOUNDED,
     .required = true,
     .example = "Blue van", .help = "title of the car, as its description gives it"},
    {.name = "date", .others = "day", .form = FORM_DATE, IN(work_lines, date), UNBOUNDED,
     .required = true,
     .example = "2026-11-20", .help = "day of the work; several work files stack by it"},
    {.name = "opened", .others = "undone", .form = FORM_WORDS, IN(work_lines, opened), UNBOUNDED,
     .example = "axle tee", .help = "parts at which a union was undone; a long list goes on "
     "under opened 2, opened 3 ..."},
    {.name = "renewed", .others = "new, rebuilt", .form = FORM_WORDS, IN(work_lines, renewed), UNBOUNDED,
     .example = "rear left drum, rear right drum, front left hose",
     .help = "parts renewed by the same data, or rebuilt; goes on under renewed 2 ..."},
    {.name = "ran dry", .others = "run dry, emptied", .form = FORM_WORDS, IN(work_lines, ran_dry), UNBOUNDED,
     .example = "brake reservoir", .help = "reservoirs that ran dry: all that they feed holds air"},
    {.name = "fluid renewed", .others = "fluid changed", .form = FORM_CHOICE, .choices = yes_or_no,
     IN(work_lines, fluid_renewed), UNBOUNDED,
     .example = "yes", .help = "whether new fluid went through the whole car"},
    {.name = "open ends", .others = "pipe ends, ends", .form = FORM_CHOICE, .choices = open_ends,
     IN(work_lines, open_ends), UNBOUNDED,
     .example = "plugged", .help = "what was done with the ends of pipes while unions were open; "
     "taken as drained when not said"},
    {.name = "note", .others = "notes, remark, comment", .form = FORM_TEXT, IN(work_lines, note), UNBOUNDED,
     .example = "road test done in the rain", .help = "free words, printed on the sheet"}};

static const struct key order_keys[] = {
    {.name = "order", .form = FORM_WORDS, IN(order_lines, order), UNBOUNDED, .required = true,
     .example = "rear left drum, rear right drum, front right disc outer nipple",
     .help = "nipples as the maker orders them; a long list goes on under order 2, order 3 ..."}};

static const struct key found_keys[] = {
    {.name = "pistons", .others = "piston", .form = FORM_CHOICE, .choices = pistons,
     .field = FIELD(found.pistons), UNBOUNDED, .example = "stuck", .help = "whether its pistons move"},
    {.name = "bore surface", .others = "bore, surface", .form = FORM_CHOICE, .choices = bores,
     .field = FIELD(found.bore), UNBOUNDED, .example = "pitted", .help = "the bore where the seal runs; of a pipe what its open end shows"},
    {.name = "nipple", .others = "nipples, bleeder, bleed nipple", .form = FORM_CHOICE, .choices = nipples,
     .field = FIELD(found.nipple), UNBOUNDED, .example = "sheared", .help = "its bleed nipple, the worst of several"},
    {.name = "leak", .others = "leaks", .form = FORM_CHOICE, .choices = leaks,
     .field = FIELD(found.leak), UNBOUNDED, .example = "weeping", .help = "dry or wet"}};

static const struct key pipe_ends[] = {
    {.name = "from", .form = FORM_TEXT, IN(ends, from), UNBOUNDED,
     .example = "brake master.rear", .help = "the part (and its outlet) that it comes from, where no run says it"},
    {.name = "to", .form = FORM_TEXT, IN(ends, to), UNBOUNDED,
     .example = "load valve", .help = "the part that it leads to, where no run says it"}};

static const struct key joint_ends[] = {
    {.name = "implied", .form = FORM_CHOICE, .choices = yes_or_no, IN(ends, implied), UNBOUNDED,
     .example = "yes", .help = "yes: it sprang up by itself where a pipe meets a hose"}};

static const struct special rows[SPECIAL_COUNT] = {
    [SPECIAL_ALL_PIPES] = {"all pipes", false, false,
        "what all pipes share; a pipe's own section overrides it. Keys: those of a pipe",
        NULL, 0, NULL, NULL, "size = 3/16 in"},
    [SPECIAL_ALL_HOSES] = {"all hoses", false, false,
        "what all hoses share; a hose's own section overrides it. Keys: those of a hose",
        NULL, 0, NULL, NULL, "renewed = 2008"},
    [SPECIAL_RUNS] = {"runs", false, false,
        "a line a run: all that lies on it in order from the master on, with commas between. "
        "Pipes and hoses made from it are named after it: rear feed pipe, rear feed pipe 2, "
        "rear feed hose",
        NULL, 0, "a name for the run",
        "parts by name (the outlet behind a point), pipes and hoses by length, joints by a word",
        "rear feed = brake master.rear, 2.6 m pipe, load valve, 0.3 m hose, axle tee"},
    [SPECIAL_BLEED_ORDER] = {"bleed order", false, false,
        "the maker's own order, which then wins over ours", ROWS_IN(order_keys), NULL, NULL, NULL},
    [SPECIAL_WORK] = {"work", true, false, "what was done, on which car and when",
        ROWS_IN(work_keys), NULL, NULL, NULL},
    [SPECIAL_REPLACED] = {"replaced", true, true,
        "a part replaced by one with other data: the keys that changed. Keys: those of its kind",
        NULL, 0, NULL, NULL, "bore = 7/8 in"},
    [SPECIAL_FOUND] = {"found", true, true,
        "what was found at a part; at a fluid: found = mineral, when it was another than it should "
        "be", ROWS_IN(found_keys), NULL, NULL, NULL},
    [SPECIAL_READINGS] = {"readings", true, false,
        "what was measured at the car after the work",
        NULL, 0, "a figure of the report, and of what",
        "its value; at and an effort may follow",
        "line pressure of front circuit = 60 bar at 300 N"},
    [SPECIAL_DONE] = {"done", true, false,
        "steps of the plan that are done, as `firmpedal done` notes them; the plan goes on from "
        "there",
        NULL, 0, "a step by its name", "its day; what was read or noted may follow a comma",
        "set-free-play brake pedal = 2026-11-21, 2 mm"},
};

/* clang-format on */

const struct special *special_rows(size_t *count)
{
    *count = SPECIAL_COUNT;
    return rows;
}

const struct special *special_find(const char *header, const char **part)
{
    *part = NULL;
    for (size_t i = 0; i < SPECIAL_COUNT; i++) {
        size_t letters;
        if (!rows[i].names_part && words_same(header, rows[i].name))
            return &rows[i];
        if (rows[i].names_part && words_begin_with(header, rows[i].name, &letters)) {
            *part = header + letters + strspn(header + letters, " \t");
            return &rows[i];
        }
    }
    return NULL;
}

enum special_kind special_kind_of(const struct special *special)
{
    return (enum special_kind)(special - rows);
}

const struct key *ends_keys(enum part_kind kind, size_t *count)
{
    *count = 0;
    if (kind == KIND_PIPE || kind == KIND_HOSE) {
        *count = sizeof pipe_ends / sizeof *pipe_ends;
        return pipe_ends;
    }
    if (kind == KIND_JOINT) {
        *count = sizeof joint_ends / sizeof *joint_ends;
        return joint_ends;
    }
    return NULL;
}

const struct key *row_find(const struct key *keys, size_t count, const char *name)
{
    for (size_t i = 0; i < count; i++)
        if (words_same(keys[i].name, name))
            return &keys[i];
    for (size_t i = 0; i < count; i++)
        if (words_among(name, keys[i].others))
            return &keys[i];
    return NULL;
}

const char *key_elsewhere(const struct key *table, const char *name)
{
    static const struct {
        enum part_kind kind;
        const char *names, *words;
    } elsewhere[] = {
        {KIND_VEHICLE, "drive, driven wheels, driven axle, traction",
         "which wheels are driven is said by front axle and rear axle (live: a driven beam)"},
        {KIND_MASTER, "secondary bore, second bore, bores",
         "both pistons of a tandem run in one bore: say bore once"},
        {KIND_DRUM, "pistons, wheel cylinders",
         "how many pistons push the shoes is said by cylinder, their diameter by bore"},
        {KIND_MASTER, "ratio, pedal ratio", "the ratio is one of the pedal, in its own section"},
        {KIND_PEDAL, "bore", "the bore is one of the master, in its own section"},
    };
    for (size_t i = 0; i < sizeof elsewhere / sizeof *elsewhere; i++)
        if (key_table(elsewhere[i].kind, &(size_t){0}) == table &&
            words_among(name, elsewhere[i].names))
            return elsewhere[i].words;
    return NULL;
}

bool is_of_free_words(const char *name)
{
    for (int kind = 0; kind < KIND_COUNT; kind++) {
        const struct key *key = key_find((enum part_kind)kind, name);
        if (key && key->form == FORM_TEXT)
            return true;
    }
    for (size_t i = 0; i < SPECIAL_COUNT; i++) {
        const struct key *key = row_find(rows[i].keys, rows[i].key_count, name);
        if (key && key->form == FORM_TEXT)
            return true;
    }
    return false;
}

unsigned key_names_kinds(enum part_kind kind, const struct key *key)
{
    switch (kind) {
    case KIND_PEDAL:
        return 1u << KIND_MASTER | 1u << KIND_SERVO;
    case KIND_SERVO:
        return 1u << KIND_MASTER;
    case KIND_PARKING:
        return 1u << KIND_DISC | 1u << KIND_DRUM;
    case KIND_RESERVOIR:
        return 1u << KIND_FLUID;
    case KIND_MASTER:
        return key->field == FIELD(as.master.reservoir) ? 1u << KIND_RESERVOIR : 1u << KIND_MASTER;
    case KIND_VEHICLE:
    case KIND_FLUID:
    case KIND_PIPE:
    case KIND_HOSE:
    case KIND_JOINT:
    case KIND_VALVE:
    case KIND_DISC:
    case KIND_DRUM:
    case KIND_SLAVE:
    case KIND_COUNT:
        break;
    }
    return 0;
}
