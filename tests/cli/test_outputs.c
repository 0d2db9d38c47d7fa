/* Files the program writes: whole or not at all, never over what a person wrote. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "support/cmocka_all.h"
#include "support/own_folder.h"
#include "support/run_cli.h"

#define CAR "systems/village-van.ini"

static const char *in_folder(char buffer[static 512], const char *name)
{
    snprintf(buffer, 512, "%s/%s", own_folder(), name);
    return buffer;
}

static void copy_car(const char *to)
{
    char *from = source_path(CAR);
    const char *const words[] = {"cp", from, to, NULL};
    struct run run = run_program(NULL, words, NULL, 10);
    assert_int_equal(run.status, 0);
    run_finish(&run);
    free(from);
}

static void a_sheet_is_a_pdf_and_the_same_bytes_twice(void **state)
{
    (void)state;
    char a[512], b[512];
    in_folder(a, "a.pdf");
    in_folder(b, "b.pdf");
    for (int i = 0; i < 2; i++) {
        struct run run = run_cli("sheet", CAR, "-o", i == 0 ? a : b, "--date", "2026-11-25");
        if (run.status != 0)
            fprintf(stderr, "%s\n", run.err);
        assert_int_equal(run.status, 0);
        run_finish(&run);
    }
    size_t first, second;
    char *x = read_whole(a, &first), *y = read_whole(b, &second);
    assert_int_equal(strncmp(x, "%PDF-", 5), 0);
    assert_int_equal(first, second);
    assert_memory_equal(x, y, first);
    free(x);
    free(y);
}

static void both_papers_have_their_size(void **state)
{
    (void)state;
    static const char *const papers[] = {"a4", "letter"}, *const sizes[] = {"595", "612"};
    for (int i = 0; i < 2; i++) {
        char path[512];
        in_folder(path, "paper.pdf");
        struct run run = run_cli("sheet", CAR, "-o", path, "-p", papers[i], "--replace");
        assert_int_equal(run.status, 0);
        run_finish(&run);
        const char *const words[] = {"pdfinfo", path, NULL};
        run = run_program(NULL, words, NULL, 20);
        char *size = strstr(run.out, "Page size:");
        assert_non_null(size);
        assert_non_null(strstr(size, sizes[i]));
        run_finish(&run);
    }
}

static void an_input_is_never_replaced(void **state)
{
    (void)state;
    char car[512], link_to_car[512];
    in_folder(car, "car.pdf");
    in_folder(link_to_car, "link.svg");
    copy_car(car);
    assert_int_equal(symlink(car, link_to_car), 0);
    size_t before, after;
    char *kept = read_whole(car, &before);
    const char *targets[] = {car, link_to_car};
    const char *commands[] = {"sheet", "diagram"};
    for (int i = 0; i < 2; i++) {
        struct run run = run_cli(commands[i], car, "-o", targets[i], "--replace");
        assert_int_equal(run.status, 4);
        assert_non_null(strstr(run.err, "output-is-an-input"));
        run_finish(&run);
    }
    char *now = read_whole(car, &after);
    assert_int_equal(before, after);
    assert_memory_equal(kept, now, before);
    free(kept);
    free(now);
}

static void a_file_that_is_there_is_left_unless_asked(void **state)
{
    (void)state;
    char path[512];
    in_folder(path, "letter.pdf");
    FILE *out = fopen(path, "w");
    assert_non_null(out);
    fputs("%PDF-1.4 a letter to the customer", out);
    fclose(out);
    struct run run = run_cli("sheet", CAR, "-o", path);
    assert_int_equal(run.status, 4);
    assert_non_null(strstr(run.err, "--replace"));
    run_finish(&run);
    size_t size;
    char *kept = read_whole(path, &size);
    assert_string_equal(kept, "%PDF-1.4 a letter to the customer");
    free(kept);
    run = run_cli("sheet", CAR, "-o", path, "--replace");
    assert_int_equal(run.status, 0);
    run_finish(&run);
}

static void a_folder_that_is_not_there_leaves_nothing_behind(void **state)
{
    (void)state;
    char path[512];
    in_folder(path, "nowhere/sheet.pdf");
    struct run run = run_cli("sheet", CAR, "-o", path);
    assert_int_equal(run.status, 4);
    assert_non_null(strstr(run.err, "output-failed"));
    run_finish(&run);
    assert_int_equal(access(path, F_OK), -1);
}

static void a_full_disk_leaves_no_half_file(void **state)
{
    (void)state;
    char command[1024];
    char *program = getenv("FIRMPEDAL");
    assert_non_null(program);
    char path[512];
    in_folder(path, "limited.pdf");
    /* The limit of 4 blocks of 1024 bytes stands for a full disk. */
    snprintf(command, sizeof command, "ulimit -f 4; exec '%s' sheet " CAR " -o '%s'", program,
             path);
    const char *const words[] = {"bash", "-c", command, NULL};
    char *root = source_path("");
    struct run run = run_program(root, words, NULL, 30);
    free(root);
    assert_int_equal(run.status, 4);
    run_finish(&run);
    assert_int_equal(access(path, F_OK), -1);
    snprintf(command, sizeof command, "ls -A '%s' | grep -c limited", own_folder());
    const char *const list[] = {"bash", "-c", command, NULL};
    run = run_program(NULL, list, NULL, 10);
    assert_int_equal(atoi(run.out), 0);
    run_finish(&run);
}

static void closed_streams_do_not_end_up_in_the_file(void **state)
{
    (void)state;
    char command[1024], path[512];
    in_folder(path, "closed.pdf");
    snprintf(command, sizeof command, "exec '%s' sheet " CAR " -o '%s' 2>&- 1>&- 0<&-",
             getenv("FIRMPEDAL"), path);
    const char *const words[] = {"bash", "-c", command, NULL};
    char *root = source_path("");
    struct run run = run_program(root, words, NULL, 30);
    free(root);
    run_finish(&run);
    size_t size;
    char *bytes = read_whole(path, &size);
    assert_true(size > 1000);
    assert_int_equal(strncmp(bytes, "%PDF-", 5), 0);
    free(bytes);
}

/* Every command with its answer going where it cannot go: to a device that is always full (Linux,
 * full(4): "writing fails with ENOSPC"), and nowhere at all. */
static const char *const answering[] = {
    "check " CAR,
    "check " CAR " --json",
    "bleed " CAR,
    "bleed " CAR " --json",
    "bleed " CAR " --step 1",
    "open " CAR " demo/village-van-work.ini",
    "done " CAR " demo/village-van-work.ini",
    "hoses " CAR,
    "soft " CAR,
    "fit " CAR " --cylinder 'brake master' --bore '7/8 in'",
    "choose " CAR " --among 'brake master' --at-hand '7/8 in'",
    "curve " CAR,
    "trace " CAR " --figure deceleration",
    "sheet " CAR " -o FOLDER/lost.pdf --replace",
    "diagram " CAR " -o FOLDER/lost.svg --replace",
    "show " CAR,
    "describe FOLDER/lost.ini drums",
    "start drums",
    "measure drums",
    "explain bore",
    "page input",
    "help ",
    "help bleed",
    "--help",
    "check --help",
    "--version",
};

static struct run run_in_shell(const char *arguments, const char *streams)
{
    char command[2048], words_of[1024];
    const char *mark = strstr(arguments, "FOLDER");
    snprintf(words_of, sizeof words_of, "%.*s%s%s",
             (int)(mark != NULL ? (size_t)(mark - arguments) : strlen(arguments)), arguments,
             mark != NULL ? own_folder() : "", mark != NULL ? mark + strlen("FOLDER") : "");
    snprintf(command, sizeof command, "exec '%s' %s %s", getenv("FIRMPEDAL"), words_of, streams);
    const char *const words[] = {"bash", "-c", command, NULL};
    char *root = source_path("");
    struct run run = run_program(root, words, NULL, 60);
    free(root);
    return run;
}

static void an_answer_that_does_not_fit_is_said_to_be_cut(void **state)
{
    (void)state;
    static const char *const nowhere[] = {">/dev/full", ">&-"};
    for (size_t i = 0; i < sizeof answering / sizeof *answering; i++)
        for (size_t n = 0; n < sizeof nowhere / sizeof *nowhere; n++) {
            struct run run = run_in_shell(answering[i], nowhere[n]);
            if (run.status != 4 || strstr(run.err, "could not be written to its end") == NULL)
                fail_msg("%s %s: status %d: %s", answering[i], nowhere[n], run.status, run.err);
            run_finish(&run);
        }
}

/* No command is left out of the list above. */
static void the_list_of_answers_knows_every_command(void **state)
{
    (void)state;
    struct run help = run_cli("--help");
    int commands = 0;
    const char *options = strstr(help.out, "\nEvery answer");
    assert_non_null(options);
    for (const char *line = strstr(help.out, "\nCommands"); line < options;
         line = strchr(line, '\n') + 1) {
        char name[16];
        if (strncmp(line, "  ", 2) != 0 || line[2] == ' ' || sscanf(line, "%15s", name) != 1)
            continue;
        bool known = false;
        for (size_t i = 0; i < sizeof answering / sizeof *answering; i++)
            known = known || (strncmp(answering[i], name, strlen(name)) == 0 &&
                              answering[i][strlen(name)] == ' ');
        if (!known)
            fail_msg("%s stands in no list of answers", name);
        commands++;
    }
    assert_true(commands >= 14);
    run_finish(&help);
}

static void the_diagram_comes_in_three_kinds(void **state)
{
    (void)state;
    static const char *const names[] = {"d.svg", "d.png", "d.pdf"};
    static const char *const begins[] = {"<?xml", "\x89PNG", "%PDF-"};
    for (int i = 0; i < 3; i++) {
        char path[512];
        in_folder(path, names[i]);
        struct run run = run_cli("diagram", CAR, "-o", path);
        if (run.status != 0)
            fprintf(stderr, "%s\n", run.err);
        assert_int_equal(run.status, 0);
        run_finish(&run);
        size_t size;
        char *bytes = read_whole(path, &size);
        assert_int_equal(memcmp(bytes, begins[i], strlen(begins[i])), 0);
        free(bytes);
    }
    char path[512];
    in_folder(path, "d.jpeg");
    struct run run = run_cli("diagram", CAR, "-o", path);
    assert_int_equal(run.status, 2);
    run_finish(&run);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_sheet_is_a_pdf_and_the_same_bytes_twice),
        cmocka_unit_test(both_papers_have_their_size),
        cmocka_unit_test(an_input_is_never_replaced),
        cmocka_unit_test(a_file_that_is_there_is_left_unless_asked),
        cmocka_unit_test(a_folder_that_is_not_there_leaves_nothing_behind),
        cmocka_unit_test(a_full_disk_leaves_no_half_file),
        cmocka_unit_test(closed_streams_do_not_end_up_in_the_file),
        cmocka_unit_test(an_answer_that_does_not_fit_is_said_to_be_cut),
        cmocka_unit_test(the_list_of_answers_knows_every_command),
        cmocka_unit_test(the_diagram_comes_in_three_kinds),
    };
    return cmocka_run_group_tests(tests, own_folder_make, own_folder_remove);
}
