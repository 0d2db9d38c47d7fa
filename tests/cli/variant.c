#include "variant.h"

#include <dirent.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "support/cmocka_all.h"
#include "support/run_cli.h"

static int by_name(const void *a, const void *b)
{
    return strcmp(*(char *const *)a, *(char *const *)b);
}

size_t variant_cars(char *paths[MOST_CARS])
{
    char *root = source_path("systems");
    DIR *folder = opendir(root);
    assert_non_null(folder);
    size_t count = 0;
    for (struct dirent *entry; (entry = readdir(folder)) != NULL && count < MOST_CARS;) {
        size_t length = strlen(entry->d_name);
        if (length < 5 || strcmp(entry->d_name + length - 4, ".ini") != 0)
            continue;
        char path[2048];
        snprintf(path, sizeof path, "%s/%s", root, entry->d_name);
        paths[count++] = strdup(path);
    }
    closedir(folder);
    free(root);
    qsort(paths, count, sizeof *paths, by_name);
    assert_true(count >= 7);
    return count;
}

struct lines variant_lines(const char *path)
{
    struct lines lines = {0};
    size_t size;
    char *whole = read_whole(path, &size);
    for (char *line = whole; *line != '\0' && lines.count < MOST_LINES;) {
        char *end = strchr(line, '\n');
        if (end != NULL)
            *end = '\0';
        lines.items[lines.count++] = strdup(line);
        if (end == NULL)
            break;
        line = end + 1;
    }
    free(whole);
    return lines;
}

void variant_finish(struct lines *lines)
{
    for (size_t i = 0; i < lines->count; i++)
        free(lines->items[i]);
    lines->count = 0;
}

static json_t *ask_file(const char *path, enum fp_question question)
{
    struct fp_wishes wishes = {.json = true, .date = "2026-11-25", .fail_at = FP_WARNING};
    struct fp_desk *desk = fp_desk_create();
    assert_non_null(desk);
    const char *answer = NULL;
    json_t *root = NULL;
    if (fp_read(desk, path, NULL, 0, NULL) == FP_FINE) {
        enum fp_outcome outcome = fp_ask(desk, question, &wishes, &answer);
        assert_true(outcome == FP_FINE || outcome == FP_FINDINGS);
        json_error_t error;
        root = json_loads(answer, 0, &error);
        assert_non_null(root);
    } else {
        /* What cannot be used says why. */
        assert_true(strlen(fp_messages(desk, false)) > 0);
    }
    fp_desk_destroy(desk);
    return root;
}

json_t *ask_text(const char *text, enum fp_question question)
{
    char path[] = "/tmp/firmpedal-variant-XXXXXX";
    int file = mkstemp(path);
    assert_true(file >= 0);
    size_t size = strlen(text);
    assert_int_equal(write(file, text, size), (ssize_t)size);
    close(file);
    json_t *answer = ask_file(path, question);
    unlink(path);
    return answer;
}

json_t *ask_lines(const struct lines *lines, long left_out, enum fp_question question)
{
    size_t size = 1;
    for (size_t i = 0; i < lines->count; i++)
        size += strlen(lines->items[i]) + 1;
    char *text = calloc(1, size);
    assert_non_null(text);
    char *end = text;
    for (size_t i = 0; i < lines->count; i++)
        end += sprintf(end, "%s\n", (long)i == left_out ? "" : lines->items[i]);
    json_t *answer = ask_text(text, question);
    free(text);
    return answer;
}

const char *text_of(json_t *object, const char *key)
{
    const char *words = json_string_value(json_object_get(object, key));
    return words != NULL ? words : "";
}

json_t *same_figure(json_t *answer, json_t *figure)
{
    size_t index;
    json_t *other;
    json_array_foreach(json_object_get(answer, "figures"), index, other)
    {
        if (strcmp(text_of(other, "id"), text_of(figure, "id")) == 0 &&
            strcmp(text_of(other, "of"), text_of(figure, "of")) == 0 &&
            strcmp(text_of(other, "cause"), text_of(figure, "cause")) == 0)
            return other;
    }
    return NULL;
}

double asked_figure(json_t *answer, const char *id, const char *of)
{
    size_t index;
    json_t *figure;
    json_array_foreach(json_object_get(answer, "figures"), index, figure)
    {
        if (strcmp(text_of(figure, "id"), id) == 0 &&
            (of == NULL || strcmp(text_of(figure, "of"), of) == 0))
            return json_number_value(json_object_get(figure, "value"));
    }
    fprintf(stderr, "there is no figure %s of %s\n", id, of != NULL ? of : "anything");
    fail();
    return 0;
}
