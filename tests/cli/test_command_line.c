/* What goes in is used or refused, never lost: work files, options, standard input, outputs. */
#include <jansson.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "support/cmocka_all.h"
#include "support/own_folder.h"
#include "support/run_cli.h"

#define CAR  "systems/village-van.ini"
#define WORK "demo/village-van-work.ini"
#define DAY  "--date", "2026-11-25"

static char *in_folder(const char *name)
{
    static char paths[8][128];
    static int next;
    next = (next + 1) % 8;
    snprintf(paths[next], sizeof paths[next], "%s/%s", own_folder(), name);
    return paths[next];
}

static void write_file(const char *path, const char *bytes, size_t count)
{
    FILE *file = fopen(path, "wb");
    assert_non_null(file);
    assert_int_equal(fwrite(bytes, 1, count, file), count);
    assert_int_equal(fclose(file), 0);
}

static void expect(struct run run, int status, const char *in_out, const char *in_err)
{
    bool fine = run.status == status && (in_out == NULL || says(run.out, in_out)) &&
                (in_err == NULL || says(run.err, in_err));
    if (!fine)
        fprintf(stderr, "status %d\n--- out\n%.2000s\n--- err\n%.2000s\n", run.status, run.out,
                run.err);
    assert_true(fine);
    run_finish(&run);
}

/* Runs the program with something on standard input. */
static struct run run_with(const char *input, const char *const *arguments)
{
    const char *words[16] = {getenv("FIRMPEDAL")};
    for (size_t i = 0; arguments[i] != NULL; i++)
        words[i + 1] = arguments[i];
    return run_program(getenv("SOURCE_ROOT"), words, input, 60);
}
#define RUN_WITH(input, ...) run_with((input), (const char *const[]){__VA_ARGS__, NULL})

static char *contents(const char *below)
{
    char *path = source_path(below);
    size_t size;
    char *text = read_whole(path, &size);
    free(path);
    return text;
}

/* 150 visits, then the one that renews the last hose: it is the last file, and the day shows. */
static void a_hundred_and_fifty_work_files_all_count(void **state)
{
    (void)state;
    enum { VISITS = 150 };
    const char *words[VISITS + 8] = {"show", CAR};
    char paths[VISITS + 1][128];
    for (int i = 0; i <= VISITS; i++) {
        char text[200];
        snprintf(paths[i], sizeof paths[i], "%s/visit-%03d.ini", own_folder(), i);
        int length = snprintf(
            text, sizeof text, "[work]\ncar = Village van\ndate = 20%02d-%02d-01\nrenewed = %s\n",
            10 + i / 12, 1 + i % 12, i == VISITS ? "rear feed hose" : "front left hose");
        write_file(paths[i], text, (size_t)length);
        words[2 + i] = paths[i];
    }
    struct run run = run_cli_list(NULL, words);
    assert_int_equal(run.status, 0);
    assert_non_null(strstr(run.out, "visit-000.ini"));
    assert_non_null(strstr(run.out, "visit-127.ini"));
    assert_non_null(strstr(run.out, "visit-128.ini"));
    char *hose = strstr(run.out, "[rear feed hose]");
    assert_non_null(hose);
    assert_non_null(strstr(hose, "; renewed 2022-07-01\n"));
    run_finish(&run);
    /* The same by --work, and each of them is an input that nothing is written over. */
    const char *by_option[2 * VISITS + 16] = {"sheet", CAR, "--replace", "-o", paths[VISITS]};
    rename(paths[VISITS], in_folder("last.pdf"));
    snprintf(paths[VISITS], sizeof paths[VISITS], "%s", in_folder("last.pdf"));
    for (int i = 0; i <= VISITS; i++) {
        by_option[5 + 2 * i] = "--work";
        by_option[6 + 2 * i] = paths[i];
    }
    expect(run_cli_list(NULL, by_option), 4, NULL, "output-is-an-input");
}

static void an_option_given_twice_is_refused_and_named(void **state)
{
    (void)state;
    static const char *const twice[][5] = {
        {"--units", "metric", "-u", "imperial", "--units"},
        {"--date", "2026-11-25", "--date", "2026-11-26", "--date"},
        {"--effort", "200 N", "-e", "300 N", "--effort"},
        {"--json", "--json", NULL, NULL, "--json"},
        {"--fail-at", "note", "--fail-at", "danger", "--fail-at"},
    };
    for (size_t i = 0; i < sizeof twice / sizeof *twice; i++) {
        const char *words[8] = {"check", CAR};
        for (size_t w = 0; w < 4; w++)
            words[2 + w] = twice[i][w];
        struct run run = run_cli_list(NULL, words);
        assert_int_equal(run.status, 2);
        assert_non_null(strstr(run.err, twice[i][4]));
        assert_non_null(strstr(run.err, "twice"));
        assert_string_equal(run.out, "");
        run_finish(&run);
    }
    expect(run_cli("fit", CAR, "--cylinder", "brake master", "-b", "7/8 in", "--bore", "1 in"), 2,
           NULL, "--bore");
    expect(run_cli("sheet", CAR, "-o", in_folder("a.pdf"), "-o", in_folder("b.pdf")), 2, NULL,
           "--output");
    expect(run_cli("hoses", CAR, "--work", WORK, "-w", WORK, DAY), 1, "Hoses", NULL);
}

/* The names of the parts bled, in the order in which a text names them, as "2134". */
static void order_in(const char *text, const char *const *names, char order[8])
{
    size_t count = 0;
    for (const char *at = text; *at != '\0' && count < 7; at++)
        for (int i = 0; names[i] != NULL; i++)
            if (strncmp(at, names[i], strlen(names[i])) == 0)
                order[count++] = (char)('1' + i);
    order[count] = '\0';
}

static void the_order_asked_for_is_gone_through_in_text_step_json_and_sheet(void **state)
{
    (void)state;
    static const char asked[] = "front left, rear right, front right, rear left, clutch slave";
    struct run run = run_cli("bleed", CAR, DAY, "--all", "--order", asked);
    assert_int_equal(run.status, 0);
    char *steps = strstr(run.out, "Bleeding, in this order");
    assert_non_null(steps);
    char order[8];
    order_in(steps,
             (const char *const[]){"front left disc: draw", "rear right drum: draw",
                                   "front right disc: draw", "rear left drum: draw",
                                   "clutch slave: draw", NULL},
             order);
    assert_string_equal(order, "12345");
    assert_non_null(strstr(run.out, "you asked for this order"));
    /* What it costs stands beside the order that the program would take. */
    assert_non_null(strstr(run.out, "this plan"));
    assert_non_null(strstr(run.out, "the program's own order"));
    run_finish(&run);
    static const char *const turns[][2] = {{"bleed-nipple front left disc", "NIPPLE 1 OF"},
                                           {"bleed-nipple rear right drum", "NIPPLE 2 OF"},
                                           {"bleed-nipple front right disc", "NIPPLE 3 OF"},
                                           {"bleed-nipple rear left drum", "NIPPLE 4 OF"}};
    for (int i = 0; i < 4; i++)
        expect(run_cli("bleed", CAR, DAY, "--order", asked, "--step", turns[i][0]), 0, turns[i][1],
               NULL);
    run = run_cli("bleed", CAR, DAY, "--order", asked, "--json");
    json_t *answer = json_loads(run.out, 0, NULL), *plan = json_object_get(answer, "bleed"), *first;
    assert_non_null(plan);
    first = json_array_get(json_object_get(plan, "steps"), 0);
    assert_string_equal(json_string_value(json_object_get(first, "part")), "front left disc");
    assert_true(json_is_true(json_object_get(plan, "asked_order")));
    json_decref(answer);
    run_finish(&run);
    const char *pdf = in_folder("order.pdf");
    expect(run_cli("sheet", CAR, DAY, "--order", asked, "-o", pdf), 0, NULL, NULL);
    const char *const words[] = {"pdftotext", "-layout", pdf, "-", NULL};
    run = run_program(NULL, words, NULL, 20);
    assert_int_equal(run.status, 0);
    char *chapter = strstr(run.out, "You asked for this order");
    assert_non_null(chapter);
    order_in(chapter,
             (const char *const[]){"Front left disc", "Rear right drum", "Front right disc",
                                   "Rear left drum", "Clutch slave", NULL},
             order);
    assert_int_equal(strncmp(order, "12345", 5), 0);
    run_finish(&run);
}

static void what_the_asked_order_leaves_out_is_bled_last_all_the_same(void **state)
{
    (void)state;
    struct run run = run_cli("bleed", CAR, DAY, "--all", "--order", "front left, front right");
    assert_int_equal(run.status, 1);
    assert_non_null(strstr(run.out, "leaves out: rear left drum"));
    char order[8];
    order_in(strstr(run.out, "Bleeding, in this order"),
             (const char *const[]){"front left disc: draw", "front right disc: draw",
                                   "rear left drum: draw", "rear right drum: draw",
                                   "clutch slave: draw", NULL},
             order);
    assert_string_equal(order, "12345");
    run_finish(&run);
}

static void a_wrong_ending_is_wrong_use_and_nothing_is_computed(void **state)
{
    (void)state;
    expect(run_cli("sheet", CAR, "-o", in_folder("x.txt")), 2, NULL, ".pdf");
    expect(run_cli("sheet", CAR, "-o", in_folder("x")), 2, NULL, ".pdf");
    expect(run_cli("sheet", CAR, "-o", in_folder("x.svg")), 2, NULL, ".pdf");
    expect(run_cli("diagram", CAR, "-o", in_folder("x.gif")), 2, NULL, ".svg, .png or .pdf");
    expect(run_cli("diagram", CAR, "-o", in_folder("svg")), 2, NULL, ".svg, .png or .pdf");
    /* Said before the car is read. */
    expect(run_cli("sheet", "no-such-car.ini", "-o", in_folder("x.txt")), 2, NULL, ".pdf");
    assert_int_not_equal(access(in_folder("x.txt"), F_OK), 0);
    assert_int_not_equal(access(in_folder("x.gif"), F_OK), 0);
    expect(run_cli("sheet", CAR, "-o", in_folder("LOUD.PDF")), 0, "LOUD.PDF", NULL);
    expect(run_cli("diagram", CAR, "-o", in_folder("loud.Svg")), 0, "loud.Svg", NULL);
}

static void replace_takes_only_what_the_program_itself_writes(void **state)
{
    (void)state;
    static const struct {
        const char *bytes;
        size_t count;
        const char *is;
    } precious[] = {
        {"[vehicle]\ntitle = The only copy\n", 32, "text"},
        {"\x7F"
         "ELF\x02\x01\x01\0\0\0",
         10, "a program"},
        {"PK\x03\x04\x14\0\0\0\x08", 9, "an archive"},
        {"\xFF\xD8\xFF\xE0\0\x10JFIF", 10, "a JPEG picture"},
        {"<?xml version=\"1.0\"?>\n<accounts/>\n", 34, "text"},
        {"\x01\x02\x03\x04\x05\x06\0\x01\x02", 9, "a file of an unknown kind"},
    };
    for (size_t i = 0; i < sizeof precious / sizeof *precious; i++) {
        for (int diagram = 0; diagram < 2; diagram++) {
            const char *path = in_folder("precious.pdf");
            write_file(path, precious[i].bytes, precious[i].count);
            expect(run_cli(diagram ? "diagram" : "sheet", CAR, "-o", path, "--replace"), 4, NULL,
                   precious[i].is);
            size_t size;
            char *left = read_whole(path, &size);
            assert_int_equal(size, precious[i].count);
            assert_memory_equal(left, precious[i].bytes, size);
            free(left);
        }
    }
    static const char *const own[] = {"own.svg", "own.png", "own.pdf"};
    for (size_t i = 0; i < 3; i++) {
        expect(run_cli("diagram", CAR, "-o", in_folder(own[i])), 0, NULL, NULL);
        expect(run_cli("diagram", CAR, "-o", in_folder(own[i]), "--replace"), 0, NULL, NULL);
    }
    expect(run_cli("sheet", CAR, "-o", in_folder("own.pdf"), "--replace"), 0, NULL, NULL);
    /* A sheet is a PDF, and a picture by the wrong name is none. */
    rename(in_folder("own.png"), in_folder("sheet.pdf"));
    expect(run_cli("sheet", CAR, "-o", in_folder("sheet.pdf"), "--replace"), 4, NULL,
           "a PNG picture");
    /* Nothing can be lost with an empty file. */
    write_file(in_folder("empty.pdf"), "", 0);
    expect(run_cli("sheet", CAR, "-o", in_folder("empty.pdf"), "--replace"), 0, NULL, NULL);
}

static void a_dash_reads_standard_input(void **state)
{
    (void)state;
    char *car = contents(CAR), *work = contents(WORK);
    static const char *const commands[] = {"check", "bleed", "open",  "hoses",
                                           "curve", "show",  "trace", "fit"};
    for (size_t i = 0; i < sizeof commands / sizeof *commands; i++) {
        const char *more[5] = {NULL};
        if (strcmp(commands[i], "trace") == 0)
            more[0] = "--figure", more[1] = "pedal-travel";
        if (strcmp(commands[i], "fit") == 0)
            more[0] = "--cylinder", more[1] = "brake master", more[2] = "--bore",
            more[3] = "7/8 in";
        struct run by_dash = RUN_WITH(car, commands[i], "-", more[0], more[1], more[2], more[3]);
        assert_true(by_dash.status == 0 || by_dash.status == 1);
        assert_true(by_dash.out_size > 100);
        assert_non_null(strstr(by_dash.out, i == 3 || i == 5 ? "standard input" : ""));
        assert_null(strstr(by_dash.out, "systems/"));
        run_finish(&by_dash);
    }
    expect(RUN_WITH(work, "hoses", CAR, "-", DAY), 1, "rear feed hose", NULL);
    expect(RUN_WITH(work, "hoses", CAR, "--work", "-", DAY), 1, "rear feed hose", NULL);
    expect(RUN_WITH(car, "diagram", "-", "-o", in_folder("dash.svg")), 0, "dash.svg", NULL);
    expect(RUN_WITH("[vehicle]\nmass = heavy\n", "check", "-"), 3, NULL, "standard input:2:8:");
    free(car);
    free(work);
}

static void standard_input_that_gives_nothing_is_said_so(void **state)
{
    (void)state;
    expect(RUN_WITH("", "check", "-"), 3, NULL, "standard input");
    expect(RUN_WITH("[vehicle]\n", "check", "-", "-"), 2, NULL, "standard input can be read once");
    expect(RUN_WITH("[vehicle]\n", "check", CAR, "-", "-w", "-"), 2, NULL,
           "standard input can be read once");
    const char *const closed[] = {"sh", "-c", "\"$FIRMPEDAL\" check - <&-", NULL};
    expect(run_program(NULL, closed, NULL, 20), 3, NULL, "nothing-in-it");
    const char *const a_folder[] = {"sh", "-c", "\"$FIRMPEDAL\" check - < /tmp", NULL};
    expect(run_program(NULL, a_folder, NULL, 20), 3, NULL, "standard input");
    const char *const endless[] = {"sh", "-c", "\"$FIRMPEDAL\" check - < /dev/zero", NULL};
    expect(run_program(NULL, endless, NULL, 20), 3, NULL, "file-too-big");
}

static int lines_of(const char *text)
{
    int lines = 0;
    for (; *text != '\0'; text++)
        lines += *text == '\n';
    return lines;
}

static void what_is_no_text_is_told_in_one_sentence(void **state)
{
    (void)state;
    const char *pdf = in_folder("invoice.pdf");
    expect(run_cli("sheet", CAR, DAY, "-o", pdf), 0, NULL, NULL);
    struct run run = run_cli("check", pdf);
    assert_int_equal(run.status, 3);
    assert_true(says(run.err, "a PDF; a description or work file is plain text"));
    assert_true(lines_of(run.err) <= 2);
    run_finish(&run);
    run = run_cli("check", CAR, pdf);
    assert_int_equal(run.status, 3);
    assert_true(lines_of(run.err) <= 2);
    run_finish(&run);
    run = run_cli("check", getenv("FIRMPEDAL"));
    assert_int_equal(run.status, 3);
    assert_true(lines_of(run.err) <= 2);
    run_finish(&run);
}

static void messages_of_a_file_have_an_end(void **state)
{
    (void)state;
    char *text = calloc(1, 40000);
    strcpy(text, "[vehicle]\n");
    for (int i = 0; i < 1000; i++)
        sprintf(text + strlen(text), "line %d of a letter\n", i);
    struct run run = RUN_WITH(text, "check", "-");
    assert_int_equal(run.status, 3);
    assert_non_null(strstr(run.err, "and 96"));
    assert_true(lines_of(run.err) < 200);
    run_finish(&run);
    run = RUN_WITH(text, "check", "-", "--json");
    json_t *messages = json_loads(run.err, 0, NULL);
    assert_non_null(messages);
    json_decref(messages);
    assert_non_null(strstr(run.err, "\"more\""));
    run_finish(&run);
    free(text);
}

static void groups_work_wherever_names_do(void **state)
{
    (void)state;
    static const char work[] = "[work]\ncar = Village van\ndate = 2026-11-20\n"
                               "renewed = front hoses, rear cylinders\nopened = tees\n"
                               "[found rear drums]\nbore surface = stained\n"
                               "[replaced front calipers]\nbore = 2 of 54 mm\n";
    struct run run = RUN_WITH(work, "show", CAR, "-");
    assert_int_equal(run.status, 0);
    static const struct {
        const char *header, *line;
    } says[] = {{"[front right hose]", "; renewed 2026-11-20"},
                {"[front left hose]", "; renewed 2026-11-20"},
                {"[rear left drum]", "; found at work: bore surface stained"},
                {"[rear right drum]", "; renewed 2026-11-20"},
                {"[axle tee]", "; opened 2026-11-20"},
                {"[front tee]", "; opened 2026-11-20"},
                {"[front left disc]", "bore = 2 of 54 mm"}};
    for (size_t i = 0; i < sizeof says / sizeof *says; i++) {
        char *at = strstr(run.out, says[i].header), *line, *end;
        assert_non_null(at);
        line = strstr(at, says[i].line);
        end = strstr(at, "\n\n");
        assert_non_null(line);
        assert_true(end == NULL || line < end);
    }
    run_finish(&run);
    /* The same answer as by the name of both sides, whatever the verdict. */
    struct run by_name = run_cli("fit", CAR, "-c", "rear drum", "-b", "11/16 in");
    expect(run_cli("fit", CAR, "-c", "rear cylinders", "-b", "11/16 in"), by_name.status,
           by_name.out, NULL);
    expect(run_cli("fit", CAR, "-c", "rear wheel cylinders", "-b", "11/16 in"), by_name.status,
           by_name.out, NULL);
    run_finish(&by_name);
    expect(run_cli("fit", CAR, "-c", "cylinders", "-b", "11/16 in"), 2, NULL, "rear left drum");
    expect(run_cli("bleed", CAR, "--order", "rear drums, front discs"), 2, NULL,
           "\"rear drums\" may be any of: rear left drum, rear right drum");
    static const char mixed[] = "[work]\ncar = Village van\ndate = 2026-11-20\n"
                                "[replaced brakes]\nbore = 20 mm\n";
    expect(RUN_WITH(mixed, "show", CAR, "-"), 3, NULL, "several kinds");
}

static void notes_are_printed_in_text_json_and_on_the_sheet(void **state)
{
    (void)state;
    static const char work[] = "[work]\ncar = Village van\ndate = 2026-11-20\n"
                               "renewed = rear drums\nnote = seals from the blue tin\n";
    char *van = contents(CAR), *title = strstr(van, "title = Village van\n");
    char *drum = strstr(van, "[rear drum]\n");
    assert_non_null(title);
    assert_non_null(drum);
    char *car = calloc(1, strlen(van) + 200);
    assert_non_null(car);
    snprintf(car, strlen(van) + 200,
             "%.*snote = bracket welded in an earlier repair\n%.*snote = "
             "backplates are from a scrap car\n%s",
             (int)(title - van), van, (int)(drum + strlen("[rear drum]\n") - title), title,
             drum + strlen("[rear drum]\n"));
    write_file(in_folder("noted.ini"), work, sizeof work - 1);
    const char *noted = in_folder("noted.ini"), *pdf = in_folder("noted.pdf");
    struct run run = RUN_WITH(car, "check", "-", noted, DAY, "--all", "--fail-at", "danger");
    assert_non_null(strstr(run.out, "note on the car: bracket welded in an earlier repair\n"));
    assert_non_null(strstr(run.out, "note on the work of 2026-11-20: seals from the blue tin\n"));
    assert_non_null(strstr(run.out, "note on rear left drum, rear right drum: backplates"));
    run_finish(&run);
    expect(RUN_WITH(car, "bleed", "-", noted, DAY), 0, "note on the car: bracket", NULL);
    expect(RUN_WITH(car, "show", "-", noted), 0, ";   seals from the blue tin\n", NULL);
    run = RUN_WITH(car, "hoses", "-", noted, DAY, "--json");
    json_t *answer = json_loads(run.out, 0, NULL), *notes = json_object_get(answer, "notes");
    assert_int_equal(json_array_size(notes), 3);
    assert_string_equal(json_string_value(json_object_get(json_array_get(notes, 1), "note")),
                        "seals from the blue tin");
    json_decref(answer);
    run_finish(&run);
    expect(RUN_WITH(car, "sheet", "-", noted, DAY, "-o", pdf), 0, NULL, NULL);
    const char *const words[] = {"pdftotext", "-layout", pdf, "-", NULL};
    run = run_program(NULL, words, NULL, 20);
    assert_non_null(strstr(run.out, "note on the car: bracket welded in an earlier repair"));
    assert_non_null(strstr(run.out, "note on the work of 2026-11-20: seals from the blue tin"));
    assert_non_null(strstr(run.out, "backplates are from a scrap car"));
    run_finish(&run);
    free(car);
    free(van);
}

/* The van without some of its lines; the caller frees it. */
static char *van_without(const char *const *lines)
{
    char *van = contents(CAR);
    for (size_t i = 0; lines[i] != NULL; i++) {
        char *at = strstr(van, lines[i]);
        assert_non_null(at);
        memmove(at, at + strlen(lines[i]), strlen(at + strlen(lines[i])) + 1);
    }
    return van;
}

static void what_the_figures_lack_stands_beneath_them(void **state)
{
    (void)state;
    char *car = van_without((const char *const[]){"travel = 150 mm\n", "mass = 1320 kg\n", NULL});
    struct run run = RUN_WITH(car, "check", "-", DAY, "--fail-at", "danger");
    assert_true(says(run.out, "could be worked out: needs [brake pedal] travel, [vehicle] mass"));
    run_finish(&run);
    free(car);
}

static void the_cure_that_mends_all_is_the_one_that_is_told(void **state)
{
    (void)state;
    char *car = van_without((const char *const[]){"front axle = independent\n", NULL});
    struct run run = RUN_WITH(car, "check", "-", DAY, "--all", "--fail-at", "danger");
    char *finding = strstr(run.out, "mount-unknown");
    assert_non_null(finding);
    assert_true(says(finding, "Do: Say it in the description: [vehicle] front axle ="));
    /* Both discs under one heading, with one cure. */
    assert_null(strstr(finding + 1, "mount-unknown"));
    assert_null(strstr(run.out, "front left disc] on ="));
    run_finish(&run);
    free(car);
}

static void a_wrong_annex_names_those_there_are(void **state)
{
    (void)state;
    expect(run_cli("sheet", CAR, DAY, "--annex", "figurs", "-o", in_folder("annex.pdf")), 2, NULL,
           "there is no annex figurs; there are figures, findings");
    assert_int_not_equal(access(in_folder("annex.pdf"), F_OK), 0);
}

/* A locale that prints on Letter, one that does not, and what is asked for above both. */
static void the_paper_is_that_of_the_locale_unless_asked(void **state)
{
    (void)state;
    static const struct {
        const char *locale, *asked, *size;
    } rows[] = {{"en_US.UTF-8", NULL, "612 x 792"},
                {"de_AT.UTF-8", NULL, "595"},
                {"en_US.UTF-8", "a4", "595"},
                {"de_AT.UTF-8", "letter", "612 x 792"}};
    char before[64] = "";
    snprintf(before, sizeof before, "%s", getenv("LC_ALL") != NULL ? getenv("LC_ALL") : "");
    unsetenv("LC_ALL");
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        setenv("LC_PAPER", rows[i].locale, 1);
        const char *pdf = in_folder("locale.pdf");
        expect(run_cli("sheet", CAR, DAY, "--replace", "-o", pdf,
                       rows[i].asked != NULL ? "--paper" : NULL, rows[i].asked),
               0, NULL, NULL);
        const char *const words[] = {"pdfinfo", pdf, NULL};
        expect(run_program(NULL, words, NULL, 20), 0, rows[i].size, NULL);
    }
    unsetenv("LC_PAPER");
    if (*before != '\0')
        setenv("LC_ALL", before, 1);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_wrong_annex_names_those_there_are),
        cmocka_unit_test(the_paper_is_that_of_the_locale_unless_asked),
        cmocka_unit_test(a_hundred_and_fifty_work_files_all_count),
        cmocka_unit_test(an_option_given_twice_is_refused_and_named),
        cmocka_unit_test(the_order_asked_for_is_gone_through_in_text_step_json_and_sheet),
        cmocka_unit_test(what_the_asked_order_leaves_out_is_bled_last_all_the_same),
        cmocka_unit_test(a_wrong_ending_is_wrong_use_and_nothing_is_computed),
        cmocka_unit_test(replace_takes_only_what_the_program_itself_writes),
        cmocka_unit_test(a_dash_reads_standard_input),
        cmocka_unit_test(standard_input_that_gives_nothing_is_said_so),
        cmocka_unit_test(what_is_no_text_is_told_in_one_sentence),
        cmocka_unit_test(messages_of_a_file_have_an_end),
        cmocka_unit_test(groups_work_wherever_names_do),
        cmocka_unit_test(notes_are_printed_in_text_json_and_on_the_sheet),
        cmocka_unit_test(what_the_figures_lack_stands_beneath_them),
        cmocka_unit_test(the_cure_that_mends_all_is_the_one_that_is_told),
    };
    return cmocka_run_group_tests(tests, own_folder_make, own_folder_remove);
}
