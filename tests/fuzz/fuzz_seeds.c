/* The texts that the fuzzer starts from, as an ordinary test: each is read, asked about and
 * written, as it is and changed. With a folder as its argument it writes them there. */
#define _GNU_SOURCE

#include <dirent.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "fuzz_run.h"
#include "support/cmocka_all.h"
#include "support/run_cli.h"

enum { MOST = 1 << 15 };

typedef void each_seed(const char *name, const uint8_t *text, size_t size, void *with);

/* A description with its work file behind it, where it has one. */
static size_t seed_of(const char *folder, const char *name, uint8_t *into)
{
    char below[512];
    size_t size = 0;
    const char *const endings[] = {"ini", "work.ini"};
    for (int i = 0; i < 2; i++) {
        snprintf(below, sizeof below, "%s/%.*s.%s", folder, (int)strlen(name) - 4, name,
                 endings[i]);
        char *path = source_path(below);
        size_t length = 0;
        char *text = access(path, R_OK) == 0 ? read_whole(path, &length) : NULL;
        if (text != NULL && size + length + 1 < MOST) {
            if (size > 0)
                into[size++] = '\n';
            memcpy(into + size, text, length);
            size += length;
        }
        free(text);
        free(path);
    }
    return size;
}

static int is_description(const struct dirent *entry)
{
    size_t length = strlen(entry->d_name);
    return length > 4 && strcmp(entry->d_name + length - 4, ".ini") == 0 &&
           strstr(entry->d_name, ".work.ini") == NULL;
}

static int for_each_seed(each_seed *each, void *with)
{
    static const char *const folders[] = {"systems", "tests/cases/findings", "tests/cases/bad"};
    int count = 0;
    uint8_t *text = malloc(MOST);
    for (size_t f = 0; f < sizeof folders / sizeof *folders; f++) {
        char *path = source_path(folders[f]);
        struct dirent **entries;
        int found = scandir(path, &entries, is_description, alphasort);
        assert_true(found > 0);
        for (int i = 0; i < found; i++) {
            each(entries[i]->d_name, text, seed_of(folders[f], entries[i]->d_name, text), with);
            count++;
            free(entries[i]);
        }
        free(entries);
        free(path);
    }
    free(text);
    return count;
}

struct tally {
    int runs, accepted;
};

static void run_one(const char *name, const uint8_t *text, size_t size, void *with)
{
    (void)name;
    struct tally *tally = with;
    tally->accepted += fuzz_run(text, size).accepted;
    tally->runs++;
}

static void every_seed_is_answered(void **state)
{
    (void)state;
    struct tally tally = {0};
    int seeds = for_each_seed(run_one, &tally);
    assert_int_equal(tally.runs, seeds);
    assert_true(tally.accepted > 150); /* the cars of the findings */
}

static void run_changed(const char *name, const uint8_t *text, size_t size, void *with)
{
    struct tally *tally = with;
    if (tally->runs % 2 == 0) {
        uint8_t *changed = malloc(MOST);
        memcpy(changed, text, size);
        size = fuzz_change(changed, size, MOST, (unsigned)tally->runs);
        assert_true(size <= MOST);
        tally->accepted += fuzz_run(changed, size).accepted;
        free(changed);
    }
    tally->runs++;
    (void)name;
}

/* Else the fuzzer would try the reader's messages alone. */
static void a_tenth_of_changed_seeds_is_still_a_car(void **state)
{
    (void)state;
    struct tally tally = {0};
    for_each_seed(run_changed, &tally);
    assert_true(10 * tally.accepted > tally.runs / 2);
}

static void write_one(const char *name, const uint8_t *text, size_t size, void *with)
{
    char path[1024];
    snprintf(path, sizeof path, "%s/%s", (const char *)with, name);
    FILE *file = fopen(path, "w");
    assert_non_null(file);
    fwrite(text, 1, size, file);
    assert_int_equal(fclose(file), 0);
}

int main(int count, char **words)
{
    if (count == 2) {
        printf("%d texts\n", for_each_seed(write_one, words[1]));
        return 0;
    }
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_seed_is_answered),
        cmocka_unit_test(a_tenth_of_changed_seeds_is_still_a_car),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
