#include "support/ready_cars.h"

#include <dirent.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "input/read.h"
#include "network/work.h"
#include "support/near.h"
#include "support/run_cli.h"

enum { MOST_CARS = 64 };

static int compare_names(const void *a, const void *b)
{
    return strcmp(*(const char *const *)a, *(const char *const *)b);
}

const char **ready_cars(struct arena *arena)
{
    const char **names = ARENA_ARRAY(arena, MOST_CARS + 1, const char *);
    size_t count = 0;
    char *path = source_path("systems");
    DIR *folder = opendir(path);
    assert_non_null(folder);
    for (struct dirent *entry = readdir(folder); entry; entry = readdir(folder))
        if (text_ends(entry->d_name, ".ini") && count < MOST_CARS)
            names[count++] = text_print(arena, "systems/%s", entry->d_name);
    closedir(folder);
    free(path);
    assert_true(count >= 7);
    qsort(names, count, sizeof *names, compare_names);
    return names;
}

static struct source load(struct arena *arena, struct messages *messages, const char *below)
{
    struct source source;
    char *path = *below == '/' ? strdup(below) : source_path(below);
    assert_true(source_load(path, arena, messages, &source));
    free(path);
    return source;
}

struct result *ready_result(struct arena *arena, const char *car, const char *work)
{
    struct messages messages = messages_start(arena);
    struct source source = load(arena, &messages, car);
    struct system *system = read_car(&source, arena, &messages);
    assert_non_null(system);
    if (work) {
        struct work_file file = {0};
        struct source more = load(arena, &messages, work);
        assert_true(read_work(&more, system, arena, &messages, &file));
        system = work_apply(system, &file, 1, arena);
    }
    struct network *network = network_build(system, arena, &messages);
    return result_of(system, network, (struct force){NAN}, (struct date){2026, 11, 20}, arena);
}

double fixed_width(void *context, const char *words, double size)
{
    (void)context;
    return text_letters(words) * size * 0.6 * 25.4 / 72.0;
}
