/* docs/physics.md keeps its promises: every section with a formula says its limits, its source and
 * the tests that check it; those tests exist; every figure points to a section; a limit is a
 * condition that is looked up, or there is a reason why it cannot be. */
#define _GNU_SOURCE

#include <ctype.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "advice/figures/figures.h"
#include "advice/checks/finding.h"
#include "advice/figures/holds.h"
#include "support/cmocka_all.h"
#include "support/run_cli.h"

static char *page;
static int wrong;

static void complain(const char *section, const char *what)
{
    fprintf(stderr, "docs/physics.md, %s: %s\n", section, what);
    wrong++;
}

/* Names of test files in a "Checked by" passage: those with a folder as they are, others in the
 * folder of the one before. */
static int check_tests(const char *section, const char *passage)
{
    char folder[256] = "";
    int named = 0;
    for (const char *at = passage; *at != '\0';) {
        size_t length = strcspn(at, " ,;\n");
        char word[256];
        snprintf(word, sizeof word, "%.*s", (int)length, at);
        at += length + strspn(at + length, " ,;\n");
        size_t size = strlen(word);
        if (size > 0 && word[size - 1] == '.')
            word[--size] = '\0';
        if (size < 3 || strcmp(word + size - 2, ".c") != 0)
            continue;
        char below[512];
        char *slash = strrchr(word, '/');
        if (slash != NULL)
            snprintf(folder, sizeof folder, "%.*s", (int)(slash - word + 1), word);
        snprintf(below, sizeof below, "%s%s", slash != NULL ? "" : folder, word);
        char *path = source_path(below);
        if (access(path, R_OK) != 0)
            complain(section, below);
        free(path);
        named++;
    }
    return named;
}

static void check_section(const char *title, char *body)
{
    static const char *const needed[] = {"\nLimits: ", "\nSource: ", "\nChecked by: "};
    bool formula = strstr(body, "\n    ") != NULL;
    for (int i = 0; i < 3; i++)
        if (formula && strstr(body, needed[i]) == NULL)
            complain(title, needed[i] + 1);
    const char *tests = strstr(body, needed[2]);
    if (tests != NULL && check_tests(title, tests + strlen(needed[2])) == 0)
        complain(title, "names no test");
}

static void every_formula_has_limits_source_and_tests(void **state)
{
    (void)state;
    wrong = 0;
    int sections = 0;
    char *text = strdup(page);
    for (char *at = strstr(text, "\n## "); at != NULL;) {
        char *next = strstr(at + 1, "\n## ");
        if (next != NULL)
            *next = '\0';
        char title[128];
        snprintf(title, sizeof title, "%.*s", (int)strcspn(at + 4, "\n"), at + 4);
        check_section(title, at + 4);
        sections++;
        at = next;
        if (at != NULL)
            *at = '\n';
    }
    free(text);
    assert_true(sections > 20);
    assert_int_equal(wrong, 0);
}

/* As a page's links are made of its headings. */
static bool has_heading(const char *anchor)
{
    for (const char *at = strstr(page, "\n#"); at != NULL; at = strstr(at + 1, "\n#")) {
        const char *title = at + 1 + strspn(at + 1, "# ");
        size_t length = strcspn(title, "\n"), i = 0;
        if (length != strlen(anchor))
            continue;
        while (i < length &&
               (title[i] == ' ' ? '-' : tolower((unsigned char)title[i])) == anchor[i])
            i++;
        if (i == length)
            return true;
    }
    return false;
}

static void every_figure_points_to_a_section(void **state)
{
    (void)state;
    size_t count;
    const struct figure_row *rows = figure_rows(&count);
    assert_true(count > 30);
    wrong = 0;
    for (size_t i = 0; i < count; i++)
        if (!has_heading(rows[i].anchor))
            complain(rows[i].id, "its anchor has no heading");
    assert_int_equal(wrong, 0);
}

static void every_link_in_the_page_leads_somewhere(void **state)
{
    (void)state;
    wrong = 0;
    int links = 0;
    for (const char *at = strstr(page, "](#"); at != NULL; at = strstr(at + 1, "](#")) {
        char anchor[128];
        snprintf(anchor, sizeof anchor, "%.*s", (int)strcspn(at + 3, ")"), at + 3);
        if (!has_heading(anchor))
            complain(anchor, "is linked and has no heading");
        links++;
    }
    assert_true(links > 20);
    assert_int_equal(wrong, 0);
}

/* --- limits ---------------------------------------------------------------------------------- */

/* Why a limit is words and no condition. */
#define UNSEEN "a description has no word for it: whoever looks at the car must see it"
#define CASE   "it is the case that is worked out; a figure of another case is another figure"
#define SIZE   "it tells how far the law is off, and is no end of it"
#define DONE   "the program does as it says; the tests of the section hold it"

/* What stands behind "Limits:" and names no condition, sentence by sentence (semicolons part them
 * too). A new limit is looked up in src/advice/figures/holds.c, or has its reason here. */
static const struct {
    const char *section, *words, *why;
} only_words[] = {
    {"Pedal", "rigid lever, small swing, arms measured square to their forces", UNSEEN},
    {"Pedal", "the bar nearly square to its rods", UNSEEN},
    {"Pedal", "the spring even along the travel", UNSEEN},
    {"Pedal", "A bar that is not measured gives no force", DONE},
    {"Pedal", "equal arms are not guessed", DONE},
    {"Servo", "at rest", CASE},
    {"Servo", "engine running: vacuum steady", CASE},
    {"Servo", "Engine stopped: check valve and hose tight, one temperature, every stroke alike",
     UNSEEN},
    {"Servo", "a half-pressed pedal uses less", SIZE},
    {"Pressure", "pistons at rest, ports shut", CASE},
    {"Pressure", "a spring counts with one force, though it pushes harder at the end of the stroke",
     SIZE},
    {"Pressure", "A large bore must be larger than the bore", DONE},
    {"Pressure", "it gives nothing where the first circuit is lost", DONE},
    {"Valves",
     "the knee of a load-sensing valve is that of the load at rest, and of a lever that moves",
     UNSEEN},
    {"Valves",
     "The rear rises as the car brakes and the knee falls with it: 5 bar of knee are 3 bar behind "
     "it at a slope of 0.4, so the rear brakes are told 7 to 15 % too strong at 6 m/s2, on the "
     "safe side for locking",
     SIZE},
    {"Valves",
     "Beyond a valve that lacks its figures, or one that is fed through its outlet, nothing is "
     "known",
     DONE},
    {"Disc", "pistons free, pads bedded in unless said to be new", UNSEEN},
    {"Disc", "Seal friction, 1 to 3 % (from memory), left out", SIZE},
    {"Drum", "rigid shoes, bedded in, round drum", UNSEEN},
    {"Drum", "measured factors run 5 to 20 % off (from memory)", SIZE},
    {"Drum", "The toe lifts from friction 0.22 on at alpha 55 deg", SIZE},
    {"Drum",
     "the closed form would let it pull: at friction 0.38 its leading factor is 1.8 % low, 3.3 % "
     "for 40 deg",
     SIZE},
    {"Drum", "The heel is taken to lean straight below the drum's centre", DONE},
    {"Drum", "friction of the face acts against the way the drum drags the shoe", DONE},
    {"Brake torque", "going forward, cold, bedded in", CASE},
    {"Volumes", "fluid at rest and without dissolved air coming out", CASE},
    {"Volumes", "linear pads and linings", UNSEEN},
    {"Volumes", "The ceiling of a hose is the most that a rule lets it swell, not a measured curve",
     SIZE},
    {"Volumes",
     "The volume of a joint, valve or wheel cylinder is the usual one of its kind unless `chamber` "
     "says it",
     DONE},
    {"Air", "isothermal, as a foot presses", CASE},
    {"Air", "none of it dissolves", CASE},
    {"Air", "The travel for each mL leaves a out", SIZE},
    {"Pedal travel", "pressed slowly, all pistons at rest", CASE},
    {"Pedal travel", "both ports equally far from their cups", UNSEEN},
    {"Pedal travel", "free play felt until the piston of the rod resists", UNSEEN},
    {"Pedal travel", "A chamber that nothing is joined to only shuts its port", DONE},
    {"Pedal travel",
     "What a stepped master's valve lets back to the reservoir is not counted as taken", DONE},
    {"Pedal cases", "one case at a time", CASE},
    {"Pedal cases", "brakes and fluid hot throughout", CASE},
    {"Pedal curve", "as for [pedal travel](#pedal-travel)", CASE},
    {"Pedal curve", "it ends at the floor, at a stop or at a bore's end", DONE},
    {"Pedal curve",
     "A pedal that rests on its floor before it pushes anything has its causes cut short in that "
     "order",
     DONE},
    {"Floor", "an end that is not known is no end", DONE},
    {"Floor", "The search is bounded and stops within a millionth of a millionth of the effort",
     SIZE},
    {"Lost circuit", "as for pedal travel and floor", CASE},
    {"Lost circuit", "A balance bar is taken to tilt freely", UNSEEN},
    {"Lost circuit", "Most touch their tube or clevis at 10 to 15 degrees (from memory)", SIZE},
    {"Lost circuit",
     "the live rod then gets the whole force and the dead piston never reaches its end, so force "
     "and deceleration are the least there can be, the travel the most",
     SIZE},
    {"Deceleration", "level road, no drag of the air, engine apart", CASE},
    {"Effort",
     "it has no value when 2000 N do not suffice, or when a pedal meets its floor or a master its "
     "end before",
     DONE},
    {"Axle locking",
     "straight on, level road, no pitching, both wheels of an axle loaded alike (the one braked "
     "harder counts)",
     CASE},
    {"Axle locking", "up to 2000 N, no floor", DONE},
    {"Axle locking", "All four wheels turn with equal parts, engine apart", SIZE},
    {"Grip in use", "as for [axle locking](#axle-locking)", CASE},
    {"Grip in use", "An axle that hangs in the air asks for endless grip", DONE},
    {"Grip in use", "A sliding tyre holds as well as a rolling one", SIZE},
    {"Stopping", "level road, cold brakes", CASE},
    {"Stopping", "loads of the axles known", DONE},
    {"Stopping", "Assumed: 50 km/h, 1 s, 0.3 s (common practice, no source)", CASE},
    {"Side difference", "knows only what the description says of each side", DONE},
    {"Side difference",
     "Two sides that are described alike show 0 whatever state they are in: the roller tester "
     "knows better",
     SIZE},
    {"Side pull", "at the pressures of the check", CASE},
    {"Side pull", "the seized piston does not drag", CASE},
    {"Side pull",
     "The pad before a seized piston of a fixed caliper rubs only as far as the disc bends to it",
     DONE},
    {"Side pull", "A stiff disc leaves one half", SIZE},
    {"Side pull",
     "one that bends by half a millimetre leaves 60 to 85 % (from memory): the figure is the least "
     "left, the pull the most",
     SIZE},
    {"Side pull", "A motorcycle's two discs brake one wheel and do not pull", DONE},
    {"Hand brake", "cable free, evenly shared by an equaliser, levers rigid, linings dry", UNSEEN},
    {"Hand brake",
     "Linings are taken to hold at rest as well as moving unless `holding friction` says less: "
     "glazed ones hold with 0.8 to 0.9 of it (common practice, no source)",
     SIZE},
    {"Tight cable", "both tips held off alike, clearances as described with the cable tight",
     UNSEEN},
    {"Clutch", "the plate free on its splines and midway", UNSEEN},
    {"Clutch", "A servo on the way is followed by its law", DONE},
    {"Pipe run", "along the pipes, through joints and valves of no length", CASE},
    {"Fluid volume", "at rest", CASE},
    {"Fluid volume", "pads worn to their plates, counted by the thinnest", CASE},
    {"Friction band", "forward, one friction for all linings of the brake", CASE},
    {"Drum growth", "drum and shoes evenly warm, shoes rigid, adjusters as set cold", UNSEEN},
    {"Heat", "no engine braking, no wheel locked", CASE},
    {"Heat", "Cooling times differ by a factor of two with speed and wheel", SIZE},
    {"Boiling", "mineral oil has no such minimum", DONE},
    {"Boiling", "The floor of 115 degC and the slope are of DOT 3", SIZE},
    {"Boiling", "for DOT 4 and 5.1 they are an assumption", SIZE},
    {"Boiling", "The share (\"heat to fluid\") is from memory", SIZE},
    {"Blocked port", "no foot on the pedal", CASE},
    {"Blocked port",
     "all of the circuit from the master's outlet on equally warm, the master's own chamber "
     "pressed but not warmed",
     CASE},
    {"Blocked port", "the fluid's modulus as at its described temperature", CASE},
    {"Blocked port",
     "pipes, cylinders and castings grow too, which takes up about a twentieth (left out)", SIZE},
    {"What each law assumes", "sizes are of the ready cars as they stand", CASE},
    {"What each law assumes", "another car has others", CASE},
};
enum { ONLY_WORDS = sizeof only_words / sizeof *only_words };

/* The limits of a section on one line, blanks made single; NULL where it has none. */
static char *limits_of(const char *title)
{
    char *heading = NULL, *line = NULL;
    assert_true(asprintf(&heading, "\n## %s\n", title) > 0);
    const char *body = strstr(page, heading);
    free(heading);
    const char *next = body == NULL ? NULL : strstr(body + 1, "\n## ");
    const char *from = body == NULL ? NULL : strstr(body, "\nLimits: ");
    const char *to = from == NULL ? NULL : strstr(from, "\nSource: ");
    if (to == NULL || (next != NULL && next < to))
        return NULL;
    from += strlen("\nLimits: ");
    line = strndup(from, (size_t)(to - from));
    assert_non_null(line);
    for (char *at = line; *at != '\0'; at++)
        if (*at == '\n')
            *at = ' ';
    return line;
}

static bool names_condition(const char *sentence)
{
    size_t holds;
    const struct hold_row *rows = hold_rows(&holds);
    for (const char *at = strchr(sentence, '`'); at != NULL;) {
        const char *end = strchr(at + 1, '`');
        if (end == NULL)
            return false;
        char id[64];
        snprintf(id, sizeof id, "%.*s", (int)(end - at - 1), at + 1);
        for (size_t i = 0; i < holds; i++)
            if (strcmp(rows[i].id, id) == 0)
                return true;
        if (limit_find(id) != NULL)
            return true;
        at = strchr(end + 1, '`');
    }
    return false;
}

/* Marks the row of a sentence that is words alone. */
static void look_at_limit(const char *title, const char *sentence, bool *met)
{
    if (names_condition(sentence))
        return;
    for (int i = 0; i < ONLY_WORDS; i++) {
        if (strcmp(only_words[i].section, title) != 0 || strcmp(only_words[i].words, sentence) != 0)
            continue;
        met[i] = true;
        return;
    }
    fprintf(stderr, "only words: %s\n", sentence);
    complain(title, "a limit that names no condition and has no reason why");
}

/* Takes a section's limits apart: at semicolons and at full stops before a blank or the end. */
static int look_at_limits(const char *title, bool *met)
{
    char *line = limits_of(title);
    int sentences = 0;
    for (char *at = line; at != NULL && *at != '\0'; sentences++) {
        size_t length = 0;
        while (at[length] != '\0' && at[length] != ';' &&
               !(at[length] == '.' && (at[length + 1] == ' ' || at[length + 1] == '\0')))
            length++;
        char *next = at + length + (at[length] != '\0');
        next += strspn(next, " ");
        at[length] = '\0';
        look_at_limit(title, at, met);
        at = next;
    }
    free(line);
    return sentences;
}

static void a_limit_is_looked_up_or_says_why_not(void **state)
{
    (void)state;
    wrong = 0;
    bool met[ONLY_WORDS] = {false};
    int sentences = 0;
    for (const char *at = strstr(page, "\n## "); at != NULL; at = strstr(at + 1, "\n## ")) {
        char title[128];
        snprintf(title, sizeof title, "%.*s", (int)strcspn(at + 4, "\n"), at + 4);
        sentences += look_at_limits(title, met);
    }
    assert_true(sentences > 80);
    for (int i = 0; i < ONLY_WORDS; i++)
        if (!met[i])
            complain(only_words[i].section, only_words[i].words);
    assert_int_equal(wrong, 0);
}

/* The heading that an anchor leads to. */
static void heading_of(const char *anchor, char *title, size_t size)
{
    title[0] = '\0';
    for (const char *at = strstr(page, "\n## "); at != NULL; at = strstr(at + 1, "\n## ")) {
        size_t length = strcspn(at + 4, "\n"), i = 0;
        while (i < length && (at[4 + i] == ' ' ? '-' : tolower((unsigned char)at[4 + i])) ==
                                 (unsigned char)anchor[i])
            i++;
        if (i == length && anchor[i] == '\0')
            snprintf(title, size, "%.*s", (int)length, at + 4);
    }
}

static void a_section_names_the_conditions_of_its_figures(void **state)
{
    (void)state;
    wrong = 0;
    size_t count, conditions;
    const struct figure_row *figures = figure_rows(&count);
    const struct hold_row *holds = hold_rows(&conditions);
    for (size_t i = 0; i < count; i++) {
        char title[128], name[80];
        heading_of(figures[i].anchor, title, sizeof title);
        char *line = limits_of(title);
        for (size_t j = 0; j < conditions; j++) {
            snprintf(name, sizeof name, "`%s`", holds[j].id);
            if ((holds_asked(figures[i].id) & holds[j].bit) != 0 &&
                (line == NULL || strstr(line, name) == NULL))
                complain(title, name);
        }
        free(line);
    }
    assert_int_equal(wrong, 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_formula_has_limits_source_and_tests),
        cmocka_unit_test(every_figure_points_to_a_section),
        cmocka_unit_test(every_link_in_the_page_leads_somewhere),
        cmocka_unit_test(a_limit_is_looked_up_or_says_why_not),
        cmocka_unit_test(a_section_names_the_conditions_of_its_figures),
    };
    char *path = source_path("docs/physics.md");
    size_t size = 0;
    page = read_whole(path, &size);
    free(path);
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    free(page);
    return failed;
}
