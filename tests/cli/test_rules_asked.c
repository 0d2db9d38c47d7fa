/* Published rules beside the car's numbers, only when asked, of the country that the car says or
 * that is named. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "support/near.h"
#include "support/run_cli.h"

#define CAR "systems/village-van.ini"

static void said(struct run run, int status, const char *words, bool there)
{
    assert_int_equal(run.status, status);
    assert_true(says(status == 2 ? run.err : run.out, words) == there);
    run_finish(&run);
}

static void rules_stand_there_only_when_asked(void **state)
{
    (void)state;
    said(run_cli("check", CAR, "-f", "danger"), 0, "Published rules", false);
    said(run_cli("check", CAR, "-f", "danger", "--country", "united kingdom"), 0, "[mot-service]",
         true);
    said(run_cli("check", CAR, "-f", "danger", "--country", "united kingdom"), 0, "[ohio-", false);
    said(run_cli("check", CAR, "-f", "danger", "--country", "Ohio, United States"), 0,
         "[us570-reserve-light]", true);
    said(run_cli("check", CAR, "-f", "danger", "--country", "United States"), 0, "[ohio-", false);
}

static void a_country_that_is_not_known_is_refused_with_those_that_are(void **state)
{
    (void)state;
    said(run_cli("check", CAR, "--rules"), 2, "[vehicle] country", true);
    said(run_cli("check", CAR, "--country", "Atlantis"), 2, "\"United Kingdom\"", true);
    said(run_cli("bleed", CAR, "--rules"), 2, "no option --rules", true);
}

static void the_car_may_say_its_country(void **state)
{
    (void)state;
    char path[] = "/tmp/firmpedal-country-XXXXXX", command[200];
    int file = mkstemp(path);
    assert_true(file >= 0);
    close(file);
    snprintf(command, sizeof command,
             "sed 's/^title = .*/&\\ncountry = United Kingdom/' " CAR " >%s", path);
    struct run run = run_program(getenv("SOURCE_ROOT"),
                                 (const char *const[]){"sh", "-c", command, NULL}, NULL, 20);
    assert_int_equal(run.status, 0);
    run_finish(&run);
    said(run_cli("check", path, "--rules", "-f", "danger"), 0, "[mot-service]", true);
    unlink(path);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(rules_stand_there_only_when_asked),
        cmocka_unit_test(a_country_that_is_not_known_is_refused_with_those_that_are),
        cmocka_unit_test(the_car_may_say_its_country),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
