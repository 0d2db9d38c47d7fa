/* `firmpedal describe` as a person has it: in a terminal of 40 columns. */
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "base/text.h"
#include "parts/keys/key.h"
#include "parts/words.h"
#include "support/cmocka_all.h"
#include "support/own_folder.h"
#include "support/run_cli.h"
#include "support/terminal.h"

enum { COLUMNS_ASKED = 40 };

static struct terminal describing(const char *file, const char *car)
{
    const char *const words[] = {"describe", file, *car != '\0' ? car : NULL, NULL};
    return terminal_start(own_folder(), words, COLUMNS_ASKED);
}

static char *path_of(const char *file)
{
    static char path[128];
    snprintf(path, sizeof path, "%s/%s", own_folder(), file);
    return path;
}

static void reads(const char *file)
{
    struct run run = run_cli_in(own_folder(), "show", file);
    if (run.status != 0)
        fail_msg("%s: %s", file, run.err);
    run_finish(&run);
}

static void fits_the_screen(const char *shown)
{
    while (*shown != '\0') {
        size_t length = strcspn(shown, "\n");
        char *line = strndup(shown, length);
        /* What is typed is the person's own. */
        if (strncmp(line, "> ", 2) != 0 && text_letters(line) > COLUMNS_ASKED)
            fail_msg("wider than the screen: %s", line);
        free(line);
        shown += length + (shown[length] == '\n');
    }
}

/* The last question shown: "[rear drum] bore (12 to go)", its lines joined; "" when it is none. */
static void question_of(const char *shown, char heading[200])
{
    const char *at = NULL;
    for (const char *line = shown; (line = strstr(line, "\n[")) != NULL; line++)
        at = line + 1;
    snprintf(heading, 200, "%.199s", at != NULL ? at : "");
    for (char *end; (end = strstr(heading, "\n  ")) != NULL && end[3] != ' ';)
        memmove(end + 1, end + 3, strlen(end + 3) + 1), *end = ' ';
    char *end = strstr(heading, "to go)");
    heading[end != NULL ? end - heading + (long)strlen("to go)") : 0] = '\0';
}

/* The kind and the row that a heading asks for; NULL for a length in a run. */
static const struct key *key_of_heading(const char *heading, enum part_kind *kind)
{
    char header[100], name[100];
    if (sscanf(heading, "[%99[^]]] %99[^(]", header, name) != 2 || strcmp(header, "runs") == 0)
        return NULL;
    size_t length = strlen(name);
    while (length > 0 && name[length - 1] == ' ')
        name[--length] = '\0';
    if (!strcmp(header, "all hoses") || !strcmp(header, "all pipes"))
        *kind = strcmp(header, "all hoses") == 0 ? KIND_HOSE : KIND_PIPE;
    else
        assert_true(kind_of_words(header, kind));
    const struct key *key = key_find(*kind, name);
    if (key == NULL)
        fail_msg("no row is called %s", heading);
    return key;
}

/* What is refused by the reader, whatever is asked; NULL for free words. */
static const char *wrong_answer(const struct key *key)
{
    switch (key->form) {
    case FORM_TEXT:
        return NULL;
    case FORM_WORDS:
        return "a ; b";
    case FORM_DATE:
        return "the year before last";
    case FORM_QUANTITY:
    case FORM_COUNT:
    case FORM_CHOICE:
    case FORM_PART:
    case FORM_PARTS:
    case FORM_BORES:
        return "wrong-word";
    }
    return NULL;
}

/* A right answer: the example of the row, or the number of another word than that; a name that
 * there is, where it names a part. */
static const char *right_answer(const struct key *key, bool another, const char *shown,
                                char names[200])
{
    if (key->form == FORM_CHOICE && another) {
        int last = 0;
        while (key->choices[last + 1].word != NULL)
            last++;
        bool first = choice_find(key, key->example) != &key->choices[0];
        snprintf(names, 200, "%d", first ? 1 : last + 1);
        return names;
    }
    if (key->form != FORM_PART && key->form != FORM_PARTS)
        return key->example;
    const char *there = strstr(shown, "there are: ");
    if (there == NULL)
        return "";
    there += strlen("there are: ");
    snprintf(names, 200, "%.*s", (int)strcspn(there, ",\n"), there);
    return names;
}

/* The rows that were asked. */
struct asked {
    bool rows[KIND_COUNT][100];
    int questions, refused, taken, lengths;
    bool another; /* of a list of words not the one of the example */
};

static bool is_mistake(const char *shown)
{
    return strstr(shown, "your answer: mistake:") != NULL ||
           strstr(shown, "A ; begins a comment") != NULL;
}

/* One question: a wrong answer, what it means, a right one. Gives what is shown then. */
static const char *answer_one(struct terminal *terminal, const struct key *key, const char *heading,
                              struct asked *asked)
{
    char names[200], again[200];
    const char *shown = terminal->shown;
    const char *wrong = wrong_answer(key);
    if (wrong != NULL) {
        terminal_type(terminal, wrong);
        shown = terminal_asks(terminal);
        fits_the_screen(shown);
        if (!is_mistake(shown))
            fail_msg("%s: %s was taken:\n%s", heading, wrong, shown);
        question_of(shown, again);
        assert_string_equal(again, heading);
        asked->refused++;
    }
    terminal_type(terminal, "explain");
    shown = terminal_asks(terminal);
    fits_the_screen(shown);
    assert_non_null(strstr(shown, "firmpedal explain"));
    const char *right = right_answer(key, asked->another, shown, names);
    terminal_type(terminal, right);
    shown = terminal_asks(terminal);
    fits_the_screen(shown);
    question_of(shown, again);
    if (strcmp(again, heading) != 0) {
        asked->taken++;
        return shown;
    }
    /* It does not go with what was answered before: it is left. */
    terminal_type(terminal, "");
    return terminal_asks(terminal);
}

/* Answers all there is, to the end. */
static void answer_all(const char *file, const char *car, struct asked *asked)
{
    struct terminal terminal = describing(file, car);
    const char *shown = terminal_asks(&terminal);
    for (int rounds = 0; *shown != '\0'; rounds++) {
        char heading[200];
        enum part_kind kind;
        fits_the_screen(shown);
        assert_true(rounds < 1000);
        if (strstr(shown, "All is asked.") != NULL) {
            terminal_type(&terminal, "leave");
            break;
        }
        question_of(shown, heading);
        const struct key *key = key_of_heading(heading, &kind);
        if (key != NULL) {
            asked->rows[kind][key_index(kind, key)] = true;
            asked->questions++;
            shown = answer_one(&terminal, key, heading, asked);
            continue;
        }
        asked->lengths += strncmp(heading, "[runs]", 6) == 0;
        terminal_type(&terminal, *heading != '\0' ? "about 0.5 m" : "");
        shown = terminal_asks(&terminal);
    }
    char *last = strdup(terminal.shown);
    if (terminal_finish(&terminal) != 0)
        fail_msg("%s: %s", file, last);
    free(last);
    reads(file);
}

/* Rows whose values the description holds already. */
static void note_what_is_said(const char *file, struct asked *asked)
{
    size_t size;
    char *text = read_whole(path_of(file), &size);
    enum part_kind kind = KIND_COUNT;
    for (char *line = strtok(text, "\n"); line != NULL; line = strtok(NULL, "\n")) {
        char word[100];
        if (sscanf(line, "[%99[^]]]", word) == 1) {
            if (!kind_of_words(word, &kind))
                kind = KIND_COUNT;
        } else if (kind < KIND_COUNT && sscanf(line, "%99[^=;]", word) == 1) {
            for (size_t end = strlen(word); end > 0 && word[end - 1] == ' ';)
                word[--end] = '\0';
            const struct key *key = key_find(kind, word);
            if (key != NULL)
                asked->rows[kind][key_index(kind, key)] = true;
        }
    }
    free(text);
}

/* What no words for a kind of car bring: three valves, a pedal by hand. */
static const char valves[] =
    "[vehicle]\ntitle = ?\n[brake fluid]\ngrade = DOT 4\n"
    "[brake reservoir]\ncapacity = ?\n[brake pedal]\nworks = brake master\n"
    "[brake master]\ntype = tandem\nbore = ?\nprimary outlets = front\n"
    "secondary outlets = rear\n"
    "[metering valve]\ntype = hold-off\n[rest valve]\ntype = residual\n"
    "[lamp valve]\ntype = shuttle\npassages = 2\n"
    "[front disc]\ncaliper = fixed\nbore = ?\n"
    "[rear drum]\nshoes = two leading\nbore = ?\n"
    "[runs]\n"
    "front feed = brake master.front, pipe, lamp valve.1, pipe, "
    "metering valve, pipe, front tee\n"
    "front left = front tee, pipe, hose, front left disc\n"
    "front right = front tee, pipe, hose, front right disc\n"
    "rear feed = brake master.rear, pipe, lamp valve.2, pipe, rest valve, "
    "pipe, rear tee\n"
    "rear left = rear tee, pipe, hose, rear left drum\n"
    "rear right = rear tee, pipe, hose, rear right drum\n";

static void every_key_of_every_kind_is_asked_and_its_answers_are_checked(void **state)
{
    (void)state;
    static const char *const cars[] = {
        "front discs, rear drums, remote servo, two circuits, hydraulic clutch with its own "
        "reservoir, outside slave, independent front, live rear axle, engine in front, right, "
        "load-sensing valve, DOT 4, hand brake",
        "front drums, rear discs, two masters, no servo, hydraulic clutch, concentric slave, dead "
        "front axle, independent rear, engine behind, left, limiting valve, DOT 3, no hand brake",
        "diagonal, rear drums, proportioning valve, direct servo, no hydraulic clutch, independent "
        "front, engine in front, middle, mineral, hand brake",
        "motorcycle, front discs, rear discs, DOT 5.1"};
    struct asked asked = {0};
    char file[32];
    for (size_t i = 0; i < sizeof cars / sizeof *cars; i++) {
        snprintf(file, sizeof file, "car%zu.ini", i);
        asked.another = i % 2 == 1;
        answer_all(file, cars[i], &asked);
        note_what_is_said(file, &asked);
    }
    FILE *into = fopen(path_of("valves.ini"), "w");
    assert_non_null(into);
    fputs(valves, into);
    fclose(into);
    answer_all("valves.ini", "", &asked);
    note_what_is_said("valves.ini", &asked);
    for (int kind = 0; kind < KIND_COUNT; kind++) {
        size_t count;
        const struct key *keys = key_table((enum part_kind)kind, &count);
        for (size_t i = 0; i < count; i++) {
            /* A pipe and a hose has its length from its run; axle, side, what works a pedal and
             * the type of a joint are said by names. */
            bool is_length =
                (kind == KIND_PIPE || kind == KIND_HOSE) && strcmp(keys[i].name, "length") == 0;
            bool is_named = keys[i].field == FIELD(axle) || keys[i].field == FIELD(side) ||
                            (kind == KIND_PEDAL && keys[i].field == FIELD(as.pedal.type)) ||
                            (kind == KIND_JOINT && keys[i].field == FIELD(as.joint.type));
            if (!asked.rows[kind][i] && !is_length && !is_named)
                fail_msg("%s of a %s was never asked", keys[i].name,
                         kind_word((enum part_kind)kind));
        }
    }
    print_message("%d questions, %d wrong answers refused, %d right ones taken, %d lengths\n",
                  asked.questions, asked.refused, asked.taken, asked.lengths);
    assert_true(asked.questions > 700 && asked.lengths > 40);
    assert_true(asked.taken > asked.questions * 98 / 100);
}

static const char drums[] =
    "drums, no hydraulic clutch, independent front, engine in front, right, "
    "no valve, DOT 4, hand brake";

/* To the first question of a dimension, and some answers to it. */
static struct terminal begun(const char *file)
{
    struct terminal terminal = describing(file, drums);
    assert_non_null(strstr(terminal_asks(&terminal), "[vehicle] title"));
    terminal_type(&terminal, "Blue van");
    terminal_asks(&terminal);
    return terminal;
}

static void holds(const char *file, const char *words)
{
    size_t size;
    char *text = read_whole(path_of(file), &size);
    if (strstr(text, words) == NULL)
        fail_msg("%s does not hold %s:\n%s", file, words, text);
    free(text);
}

static void what_was_answered_is_written_at_ctrl_c_and_ctrl_d(void **state)
{
    (void)state;
    static const char *const ends[][2] = {{"c.ini", "\3"}, {"d.ini", "\4"}};
    for (int i = 0; i < 2; i++) {
        struct terminal terminal = begun(ends[i][0]);
        terminal_press(&terminal, ends[i][1]);
        assert_true(says(terminal_asks(&terminal), "is written"));
        assert_int_equal(terminal_finish(&terminal), 0);
        holds(ends[i][0], "\ntitle = Blue van\n");
        reads(ends[i][0]);
    }
}

static void what_was_answered_is_written_when_the_line_is_lost_or_it_is_ended(void **state)
{
    (void)state;
    struct terminal terminal = begun("lost.ini");
    terminal_hang_up(&terminal);
    terminal_finish(&terminal);
    holds("lost.ini", "\ntitle = Blue van\n");
    terminal = begun("ended.ini");
    kill(terminal.program, SIGTERM);
    terminal_asks(&terminal);
    assert_int_equal(terminal_finish(&terminal), 0);
    holds("ended.ini", "\ntitle = Blue van\n");
}

/* Nothing lies about, neither the file nor a part of it. */
static void nothing_is_written_at_drop_or_before_the_kind_is_said(void **state)
{
    (void)state;
    struct terminal terminal = begun("dropped.ini");
    terminal_type(&terminal, "drop");
    assert_true(says(terminal_asks(&terminal), "Nothing is written."));
    assert_int_equal(terminal_finish(&terminal), 0);
    assert_int_not_equal(access(path_of("dropped.ini"), F_OK), 0);
    terminal = describing("early.ini", "");
    terminal_asks(&terminal);
    terminal_type(&terminal, "1");
    terminal_asks(&terminal);
    terminal_type(&terminal, "front drums");
    terminal_asks(&terminal);
    terminal_press(&terminal, "\3");
    assert_true(says(terminal_asks(&terminal), "firmpedal describe early.ini car, front drums"));
    assert_int_equal(terminal_finish(&terminal), 0);
    assert_int_not_equal(access(path_of("early.ini"), F_OK), 0);
}

static void a_file_that_came_meanwhile_is_left_as_it_is(void **state)
{
    (void)state;
    struct terminal terminal = begun("mine.ini");
    FILE *other = fopen(path_of("mine.ini"), "w");
    fputs("[vehicle]\ntitle = Another\n", other);
    fclose(other);
    terminal_type(&terminal, "leave");
    assert_true(says(terminal_asks(&terminal), "Nothing is written: mine.ini is there already"));
    terminal_type(&terminal, "leave mine2.ini");
    terminal_asks(&terminal);
    assert_int_equal(terminal_finish(&terminal), 0);
    holds("mine.ini", "title = Another\n");
    holds("mine2.ini", "\ntitle = Blue van\n");
}

static void what_was_left_is_taken_up_where_it_was(void **state)
{
    (void)state;
    struct terminal terminal = begun("up.ini");
    terminal_type(&terminal, "leave");
    terminal_asks(&terminal);
    assert_int_equal(terminal_finish(&terminal), 0);
    holds("up.ini", "\n; centre of the pad to the pivot");
    terminal = describing("up.ini", "");
    assert_non_null(strstr(terminal_asks(&terminal), "[brake pedal] pad to pivot"));
    terminal_type(&terminal, "290 mm");
    assert_non_null(strstr(terminal_asks(&terminal), "[brake pedal] rod to pivot"));
    terminal_type(&terminal, "back");
    assert_non_null(strstr(terminal_asks(&terminal), "[brake pedal] pad to pivot"));
    terminal_type(&terminal, "291 mm");
    terminal_asks(&terminal);
    terminal_press(&terminal, "\4");
    terminal_asks(&terminal);
    assert_int_equal(terminal_finish(&terminal), 0);
    holds("up.ini", "\nworks = brake master\npad to pivot = 291 mm\n; clevis pin");
    reads("up.ini");
}

/* A car typed by hand: other names of keys, other units, other order of lines, comments. */
static const char by_hand[] =
    "; the white saloon\n[vehicle]\ntitle = White saloon\nfirst used = 1972-04\n"
    "steering wheel = rhd\nfront axle = wishbones\nrear axle = live\nweight = 1.04 t\n"
    "weight on front = 0.56\nwheelbase = 2.5 m\nrear tyre radius = 0.29 m\n"
    "front tyre radius = 290 mm\ngrip = 0.75\n"
    "[brake fluid]\ngrade = DOT 4\nrenewed = 2025-03\n"
    "[brake reservoir]\ncapacity = 0.25 L\n"
    "[brake pedal]\nworks = brake master\nrod to pivot = 3 in   ; with a tape\n"
    "pad to pivot = 290 mm\ntravel = 150 mm\nfree play = 5 mm\n"
    "[brake servo]\ntype = remote\nbore = 3/4 in\ndiameter = 6 in\nratio = 2.1\n"
    "vacuum hose = 0.7 m\nvacuum hose renewed = 2021\non = body\nnipples = 1\n"
    "[brake master]\ntype = tandem\nbore = 13/16 in\nstroke = 36 mm\n"
    "primary outlets = front\nsecondary outlets = rear\nreservoir = brake reservoir\n"
    "[front disc]\ncaliper = fixed\nbore = 2 of 54 mm\ndisc diameter = 9.5 in\n"
    "pad height = 42 mm\nnipples = 1\n"
    "[rear drum]\nshoes = leading and trailing\nbore = 0.75 in\ncylinder = sliding\n"
    "drum diameter = 8 in\nadjuster = wedge\nlining width = 38 mm\n"
    "[front tee]\non = body\n[axle tee]\non = rear axle\n"
    "[hand brake]\nworks = rear drum\nclicks = 6\n"
    "[clutch reservoir]\ncapacity = 90 mL\n"
    "[clutch pedal]\nworks = clutch master\npad to pivot = 280 mm\nrod to pivot = 55 mm\n"
    "travel = 140 mm\n"
    "[clutch master]\ntype = single\nbore = 0.75 in\nstroke = 32 mm\n"
    "reservoir = clutch reservoir\n"
    "[clutch slave]\ntype = outside\nbore = 7/8 in\nfork ratio = 1.8\n"
    "bearing travel = 7.5 mm\n"
    "[all hoses]\nrenewed = 2014\n[all pipes]\nsize = 3/16 in\n"
    "[runs]\n"
    "front feed = brake master.front, 0.9 m pipe, brake servo, 0.6 m pipe, front tee\n"
    "front left = front tee, 1.2 m pipe, bracket, 0.38 m hose, front left disc\n"
    "front right = front tee, 40 cm pipe, bracket, 0.38 m hose, front right disc\n"
    "rear feed = brake master.rear, 2.7 m pipe, 0.32 m hose, axle tee\n"
    "rear left = axle tee, 0.7 m pipe, rear left drum\n"
    "rear right = axle tee, about 0.5 m pipe, rear right drum\n"
    "clutch line = clutch master, 0.6 m pipe, 0.3 m hose, clutch slave\n";
static const char by_hand_kind[] =
    "front discs, rear drums, remote servo, two circuits, hydraulic clutch with its own reservoir, "
    "outside slave, independent front, live rear axle, engine in front, right, no valve, DOT 4, "
    "hand "
    "brake";

/* From where the section's lines begin, or NULL. */
static const char *section_by_hand(const char *header)
{
    char words[110];
    snprintf(words, sizeof words, "[%s]\n", header);
    const char *at = strstr(by_hand, words);
    return at != NULL ? at + strlen(words) : NULL;
}

/* What is written by hand for a key; "" where it is not. */
static void value_by_hand(const char *header, enum part_kind kind, const struct key *key,
                          char value[200])
{
    const char *line = section_by_hand(header);
    for (; line != NULL && *line != '\0' && *line != '['; line = strchr(line, '\n') + 1) {
        char name[100];
        if (sscanf(line, "%99[^=]= %199[^;\n]", name, value) != 2)
            continue;
        for (size_t end = strlen(name); end > 0 && name[end - 1] == ' ';)
            name[--end] = '\0';
        for (size_t end = strlen(value); end > 0 && value[end - 1] == ' ';)
            value[--end] = '\0';
        if (key_find(kind, name) == key)
            return;
    }
    value[0] = '\0';
}

/* What an item of a run is called in a question: "pipe" for "0.7 m pipe". */
static const char *called(const char *item)
{
    return text_ends(item, " pipe") ? "pipe" : text_ends(item, " hose") ? "hose" : item;
}

/* The length of "[runs] front feed: length of the pipe from brake servo to front tee (3 to go)". */
static void length_by_hand(const char *heading, char value[200])
{
    char run[100], kind[8], from[100], to[100], words[110], items[12][100];
    assert_int_equal(
        sscanf(heading, "[runs] %99[^:]: length of the %7s from %99[^(]", run, kind, from), 3);
    char *between = strstr(from, " to ");
    assert_non_null(between);
    strcpy(to, between + strlen(" to "));
    to[strlen(to) - 1] = '\0';
    *between = '\0';
    snprintf(words, sizeof words, "\n%s = ", run);
    const char *at = strstr(by_hand, words);
    assert_non_null(at);
    at += strlen(words);
    int count = 0;
    for (size_t length; count < 12; at += length + 2) {
        length = strcspn(at, ",\n");
        snprintf(items[count++], 100, "%.*s", (int)length, at);
        if (at[length] != ',')
            break;
    }
    for (int i = 1; i + 1 < count; i++)
        if (strcmp(called(items[i]), kind) == 0 && strcmp(called(items[i - 1]), from) == 0 &&
            strcmp(called(items[i + 1]), to) == 0) {
            strcpy(value, items[i]);
            *strrchr(value, ' ') = '\0';
            return;
        }
    fail_msg("by hand there is no %s", heading);
}

static void describe_by_hand(const char *file)
{
    struct terminal terminal = describing(file, by_hand_kind);
    int shows = 0;
    for (const char *shown = terminal_asks(&terminal); *shown != '\0';
         shown = terminal_asks(&terminal)) {
        char heading[200], header[100], value[200] = "";
        enum part_kind kind;
        shows += strstr(shown, "What the car shows so far:") != NULL;
        question_of(shown, heading);
        const struct key *key = key_of_heading(heading, &kind);
        if (key != NULL && sscanf(heading, "[%99[^]]]", header) == 1)
            value_by_hand(header, kind, key, value);
        else if (strncmp(heading, "[runs]", 6) == 0)
            length_by_hand(heading, value);
        terminal_type(&terminal, value);
    }
    assert_int_equal(terminal_finish(&terminal), 0);
    assert_int_equal(shows, 2);
}

/* The lines of the file on which values stand are not what is compared. */
static void drop_line_numbers(char *json)
{
    for (char *at = json; (at = strstr(at, "\"line\": ")) != NULL; at += strlen("\"line\": "))
        memset(at + strlen("\"line\": "), '#', strspn(at + strlen("\"line\": "), "0123456789"));
    /* 101 and 84 have not as many digits. */
    char *to = json;
    for (const char *from = json; *from != '\0'; from++)
        if (*from != '#' || from[1] != '#')
            *to++ = *from;
    *to = '\0';
}

static struct run answered_of(const char *below, const char *question)
{
    bool takes_all = strcmp(question, "hoses") != 0 && strcmp(question, "soft") != 0;
    struct run run = run_cli_in(below, question, "saloon.ini", "--json", "--date", "2026-12-01",
                                takes_all ? "--all" : NULL);
    assert_true(strlen(run.out) > 1000);
    drop_line_numbers(run.out);
    return run;
}

static void what_it_writes_and_the_same_typed_by_hand_give_equal_json(void **state)
{
    (void)state;
    static const char *const questions[] = {"check", "bleed", "hoses", "soft", "curve"};
    describe_by_hand("saloon.ini");
    assert_int_equal(mkdir(path_of("by-hand"), 0777), 0);
    FILE *into = fopen(path_of("by-hand/saloon.ini"), "w");
    assert_non_null(into);
    fputs(by_hand, into);
    fclose(into);
    char below[128];
    strcpy(below, path_of("by-hand"));
    for (size_t i = 0; i < sizeof questions / sizeof *questions; i++) {
        struct run asked = answered_of(own_folder(), questions[i]);
        struct run typed = answered_of(below, questions[i]);
        assert_string_equal(asked.out, typed.out);
        assert_int_equal(asked.status, typed.status);
        run_finish(&asked);
        run_finish(&typed);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_key_of_every_kind_is_asked_and_its_answers_are_checked),
        cmocka_unit_test(what_was_answered_is_written_at_ctrl_c_and_ctrl_d),
        cmocka_unit_test(what_was_answered_is_written_when_the_line_is_lost_or_it_is_ended),
        cmocka_unit_test(nothing_is_written_at_drop_or_before_the_kind_is_said),
        cmocka_unit_test(a_file_that_came_meanwhile_is_left_as_it_is),
        cmocka_unit_test(what_was_left_is_taken_up_where_it_was),
        cmocka_unit_test(what_it_writes_and_the_same_typed_by_hand_give_equal_json),
    };
    return cmocka_run_group_tests(tests, own_folder_make, own_folder_remove);
}
