#include "input/source.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "base/text.h"
#include "support/cmocka_all.h"

struct place_for_files {
    struct arena *arena;
    struct messages messages;
    char folder[64];
};

static struct place_for_files set_up(void)
{
    struct place_for_files place = {.arena = arena_create(), .folder = "/tmp/firmpedal-XXXXXX"};
    place.messages = messages_start(place.arena);
    assert_non_null(mkdtemp(place.folder));
    return place;
}

static void tear_down(struct place_for_files *place, const char *path)
{
    if (path)
        unlink(path);
    rmdir(place->folder);
    arena_destroy(place->arena);
}

static char *write_file(struct place_for_files *place, const char *bytes, size_t count)
{
    char *path = text_print(place->arena, "%s/car.ini", place->folder);
    FILE *file = fopen(path, "wb");
    assert_non_null(file);
    for (size_t i = 0; i < count; i++)
        fputc(bytes ? bytes[i] : ';', file);
    fclose(file);
    return path;
}

static void a_file_is_read_whole(void **state)
{
    (void)state;
    struct place_for_files place = set_up();
    char *path = write_file(&place, "a\0b\n", 4);
    struct source source;
    assert_true(source_load(path, place.arena, &place.messages, &source));
    assert_int_equal(source.count, 4);
    assert_memory_equal(source.bytes, "a\0b\n", 4);
    assert_string_equal(source.name, path);
    tear_down(&place, path);
}

static void expect_refused(struct place_for_files *place, const char *path, const char *id)
{
    struct source source;
    assert_false(source_load(path, place->arena, &place->messages, &source));
    assert_int_equal(place->messages.count, 1);
    assert_string_equal(place->messages.items[0].id, id);
    assert_string_equal(place->messages.items[0].place.file, path);
    assert_int_equal(place->messages.items[0].severity, SEVERITY_DANGER);
}

static void a_file_that_is_not_there_cannot_be_read(void **state)
{
    (void)state;
    struct place_for_files place = set_up();
    expect_refused(&place, "/nowhere/car.ini", "cannot-read");
    tear_down(&place, NULL);
}

static void a_folder_is_no_file(void **state)
{
    (void)state;
    struct place_for_files place = set_up();
    expect_refused(&place, place.folder, "not-a-file");
    tear_down(&place, NULL);
}

static void a_device_is_no_file(void **state)
{
    (void)state;
    struct place_for_files place = set_up();
    expect_refused(&place, "/dev/zero", "not-a-file");
    tear_down(&place, NULL);
}

static void a_pipe_that_nobody_writes_to_is_not_waited_for(void **state)
{
    (void)state;
    struct place_for_files place = set_up();
    char *path = text_print(place.arena, "%s/pipe", place.folder);
    assert_int_equal(mkfifo(path, 0600), 0);
    expect_refused(&place, path, "not-a-file");
    tear_down(&place, path);
}

static void a_file_above_1_mib_is_too_big(void **state)
{
    (void)state;
    struct place_for_files place = set_up();
    char *path = write_file(&place, NULL, 1048576);
    struct source source;
    assert_true(source_load(path, place.arena, &place.messages, &source));
    path = write_file(&place, NULL, 1048577);
    expect_refused(&place, path, "file-too-big");
    tear_down(&place, path);
}

/* The user that owns nothing. */
#define SOMEBODY 65534

static void a_file_of_another_user_cannot_be_read(void **state)
{
    (void)state;
    struct place_for_files place = set_up();
    char *path = write_file(&place, "x", 1);
    assert_int_equal(chmod(path, 0), 0);
    assert_int_equal(chmod(place.folder, 0755), 0);
    /* Root reads all files, so root is somebody else for a moment. */
    uid_t own = geteuid();
    if (own == 0 && seteuid(SOMEBODY) != 0) {
        tear_down(&place, path);
        skip();
    }
    expect_refused(&place, path, "cannot-read");
    assert_int_equal(seteuid(own), 0);
    tear_down(&place, path);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_file_is_read_whole),
        cmocka_unit_test(a_file_that_is_not_there_cannot_be_read),
        cmocka_unit_test(a_folder_is_no_file),
        cmocka_unit_test(a_device_is_no_file),
        cmocka_unit_test(a_pipe_that_nobody_writes_to_is_not_waited_for),
        cmocka_unit_test(a_file_above_1_mib_is_too_big),
        cmocka_unit_test(a_file_of_another_user_cannot_be_read),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
