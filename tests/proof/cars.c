#include "cars.h"

#include <dirent.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "advice/bleeding/bleed_plan.h"
#include "advice/bleeding/bleed_way.h"
#include "base/text.h"
#include "input/read.h"

enum { MOST_CARS = 64 };

static int compare_names(const void *a, const void *b)
{
    return strcmp(*(const char *const *)a, *(const char *const *)b);
}

static bool read_one(const char *path, struct arena *arena, struct ready_car *car)
{
    struct messages messages = messages_start(arena);
    struct source source;
    struct system *system = NULL;
    if (source_load(path, arena, &messages, &source))
        system = read_car(&source, arena, &messages);
    if (system == NULL) {
        fprintf(stderr, "%s cannot be read\n", path);
        return false;
    }
    car->system = system;
    car->network = network_build(system, arena, &messages);
    car->title = system_vehicle(system)->title;
    return true;
}

struct ready_car *cars_read(const char *root, struct arena *arena, int *count)
{
    const char *folder_path = text_print(arena, "%s/systems", root);
    const char *paths[MOST_CARS];
    int found = 0;
    DIR *folder = opendir(folder_path);
    if (folder == NULL) {
        fprintf(stderr, "there is no folder %s; run it in the root of the sources\n", folder_path);
        return NULL;
    }
    for (struct dirent *entry = readdir(folder); entry != NULL; entry = readdir(folder))
        if (text_ends(entry->d_name, ".ini") && found < MOST_CARS)
            paths[found++] = text_print(arena, "%s/%s", folder_path, entry->d_name);
    closedir(folder);
    qsort(paths, (size_t)found, sizeof *paths, compare_names);
    struct ready_car *cars = ARENA_ARRAY(arena, (size_t)found + 1, struct ready_car);
    for (int i = 0; i < found; i++)
        if (!read_one(paths[i], arena, &cars[i]))
            return NULL;
    *count = found;
    return cars;
}

struct purge_net *cars_net(const struct ready_car *car, int circuit, int which, const char **words,
                           struct arena *arena)
{
    struct purge_net *net = purge_net_of(car->system, car->network, circuit, arena);
    if (net == NULL || which >= CAR_WHEEL + net->nipple_count)
        return NULL;
    if (which == CAR_DRY) {
        *words = "all dry";
        purge_net_dry(net, car->network, car->system, car->network->circuits[circuit].source);
    } else if (which == CAR_MASTER) {
        *words = "master off";
        for (int i = 0; i < net->leg_count; i++)
            if (net->legs[i].above < 0)
                net->legs[i].air = net->legs[i].volume;
    } else {
        const struct purge_nipple *nipple = &net->nipples[which - CAR_WHEEL];
        int chamber = nipple->pot >= 0 ? net->pots[nipple->pot].chamber : 0;
        *words = text_print(arena, "%s new", car->system->parts[nipple->nipple.part].name);
        purge_net_dry(net, car->network, car->system,
                      network_vertex(car->network, nipple->nipple.part, chamber));
    }
    return net;
}

struct given_plan cars_plan(const struct ready_car *car, const struct purge_net *net, int circuit,
                            int which, bool shut_under_pressure, struct arena *arena)
{
    struct given_plan given = {NULL, 0};
    struct system *system = system_copy(car->system, arena);
    if (which == CAR_MASTER)
        return given;
    if (which >= CAR_WHEEL)
        system->parts[net->nipples[which - CAR_WHEEL].nipple.part].done.renewed = true;
    const struct bleed_wishes wishes = {.shut_under_pressure = shut_under_pressure};
    const struct bleed_plan *plan = bleed_plan_of(system, car->network, &wishes, arena);
    struct purge_turn *turns = ARENA_ARRAY(arena, plan->steps.count + 1, struct purge_turn);
    for (size_t i = 0; i < plan->steps.count; i++) {
        const struct step *step = &plan->steps.items[i];
        for (int n = 0; n < net->nipple_count && step->circuit == circuit; n++)
            if (net->nipples[n].nipple.part == step->part &&
                net->nipples[n].nipple.index == step->nipple)
                turns[given.count++] = (struct purge_turn){n, -1};
    }
    given.turns = turns;
    return given;
}

struct purge_way cars_way(const struct ready_car *car, int circuit, bool shut_under_pressure)
{
    const struct bleed_wishes wishes = {.shut_under_pressure = shut_under_pressure};
    return bleed_way_of(car->system, car->network, circuit, &wishes);
}
