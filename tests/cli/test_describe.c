/* `firmpedal describe` with answers from a file. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "support/cmocka_all.h"
#include "support/own_folder.h"
#include "support/run_cli.h"

static struct run described(const char *file, const char *car, const char *answers)
{
    const char *const words[] = {getenv("FIRMPEDAL"), "describe", file, *car != '\0' ? car : NULL,
                                 NULL};
    return run_program(own_folder(), words, answers, 30);
}

static void expect(struct run run, int status, const char *out, const char *err)
{
    if (run.status != status || (out != NULL && !says(run.out, out)) ||
        (err != NULL && !says(run.err, err)))
        fail_msg("status %d\n%s\n%s", run.status, run.out, run.err);
    run_finish(&run);
}

static const char *path_of(const char *file)
{
    static char path[128];
    snprintf(path, sizeof path, "%s/%s", own_folder(), file);
    return path;
}

static void put(const char *file, const char *text)
{
    FILE *into = fopen(path_of(file), "w");
    assert_non_null(into);
    fputs(text, into);
    fclose(into);
}

static void holds(const char *file, const char *words)
{
    size_t size;
    char *text = read_whole(path_of(file), &size);
    if (strstr(text, words) == NULL)
        fail_msg("%s does not hold %s:\n%s", file, words, text);
    free(text);
}

static const char drums[] =
    "drums, no hydraulic clutch, independent front, engine in front, right, "
    "no valve, DOT 4, hand brake";

/* Title, shoes and cylinders of both axles, then what tells most. */
static void answers_come_from_a_file_and_what_is_not_answered_is_left(void **state)
{
    (void)state;
    expect(described("a.ini", drums, "Blue van\n\n\n2\nsliding\n290\n290 mm\n76 mm\n?\n9 in\n"), 0,
           "is a length and needs a unit", NULL);
    holds("a.ini", "\ntitle = Blue van\n");
    holds("a.ini", "\nshoes = two leading\ncylinder = sliding\n");
    holds("a.ini", "\npad to pivot = 290 mm\nrod to pivot = 76 mm\n");
    holds("a.ini", "\ndrum diameter = ?               ; inside, past any lip");
    holds("a.ini", "\ndrum diameter = 9 in\n");
    expect(run_cli_in(own_folder(), "check", "a.ini", "--fail-at", "danger"), 0, "Blue van", NULL);
}

static void the_kind_of_car_is_asked_in_words_or_numbers(void **state)
{
    (void)state;
    expect(described("b.ini", "",
                     "1\n3\n\ntwo circuits and remote servo\n3\n2\n\n1\n\nright\nload valve\n"
                     "\n2\nleave\n"),
           0, "b.ini is written", NULL);
    holds("b.ini",
          "; car, front drums, rear drums, two circuits, remote servo, hydraulic clutch\n"
          "; with its own reservoir, concentric slave, independent front, live rear axle,\n"
          "; engine in front, right, load-sensing valve, DOT 4, no hand brake\n");
    holds("b.ini", "\n[clutch reservoir]\n");
    expect(run_cli_in(own_folder(), "show", "b.ini"), 0, NULL, NULL);
    /* What was said on the command line is not asked. */
    expect(described("c.ini", "motorcycle, DOT 5.1, single front disc, rear brake without fluid",
                     "leave\n"),
           0, "[vehicle] title", NULL);
    expect(described("d.ini", "twin masters, direct servo", ""), 2, NULL, "do not go together");
    assert_int_not_equal(access(path_of("d.ini"), F_OK), 0);
}

static void no_other_file_is_ever_written_over(void **state)
{
    (void)state;
    put("notes.txt", "call the owner on Monday\n");
    expect(described("notes.txt", drums, "Blue van\n"), 2, NULL, "is there already");
    expect(described("notes.txt", "", "Blue van\n"), 3, NULL, "notes.txt:1");
    holds("notes.txt", "call the owner on Monday\n");
    put("wrong.ini", "[vehicle]\ntitle = A\nmass = 3 mm\n");
    expect(described("wrong.ini", "", "Blue van\n"), 3, NULL, "wrong.ini:3:10: mistake");
    holds("wrong.ini", "mass = 3 mm\n");
    expect(described("-", drums, "Blue van\n"), 2, NULL, "describe writes a file");
    expect(described("nowhere/e.ini", drums, "Blue van\n"), 4, "title = Blue van", NULL);
    put("f.ini", "[vehicle]\ntitle = A\n");
    expect(described("g.ini", drums, "Blue van\nleave f.ini\n\nleave g.ini\n"), 0,
           "Nothing is written: f.ini is there already", NULL);
    holds("f.ini", "[vehicle]\ntitle = A\n");
    holds("g.ini", "Blue van");
}

/* Comments, order and blank lines of one's own stay; only what is answered changes. */
static void a_description_of_one_s_own_is_taken_up_by_its_question_marks(void **state)
{
    (void)state;
    char *van = source_path("systems/village-van.ini");
    size_t size;
    char *text = read_whole(van, &size);
    char *bore = strstr(text, "drum diameter = 203 mm");
    assert_non_null(bore);
    const char *rest = bore + strlen("drum diameter = 203 mm");
    char *asked = malloc(size + 100);
    sprintf(asked, "%.*sdrum diameter = ? ; Monday%s", (int)(bore - text), text, rest);
    put("van.ini", asked);
    expect(described("van.ini", "", "8 in\nleave\n"), 0, "[rear drum] drum diameter (1 to go)",
           NULL);
    sprintf(asked, "%.*sdrum diameter = 8 in ; Monday%s", (int)(bore - text), text, rest);
    char *written = read_whole(path_of("van.ini"), &size);
    assert_string_equal(written, asked);
    free(written);
    free(asked);
    free(text);
    free(van);
}

/* What start prints is taken up too: the help beside a ? goes with it. */
static void a_starter_is_taken_up(void **state)
{
    (void)state;
    struct run start = run_cli("start", "drums, right");
    put("s.ini", start.out);
    run_finish(&start);
    expect(described("s.ini", "", "290 mm\n76 mm\n8 in\n"), 0, "s.ini is written", NULL);
    holds("s.ini", "; Said: front drums");
    holds("s.ini", "\ntitle = Name this car           ; what the sheet calls the car\n");
    holds("s.ini", "\npad to pivot = 290 mm\nrod to pivot = 76 mm\n");
    holds("s.ini", "\ndrum diameter = 8 in\n");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(answers_come_from_a_file_and_what_is_not_answered_is_left),
        cmocka_unit_test(the_kind_of_car_is_asked_in_words_or_numbers),
        cmocka_unit_test(no_other_file_is_ever_written_over),
        cmocka_unit_test(a_description_of_one_s_own_is_taken_up_by_its_question_marks),
        cmocka_unit_test(a_starter_is_taken_up),
    };
    return cmocka_run_group_tests(tests, own_folder_make, own_folder_remove);
}
