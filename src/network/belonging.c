#include "network/belonging.h"

#include <stddef.h>

#include "base/text.h"

int reservoir_of(const struct system *system, int master)
{
    const struct master *data = &system->parts[master].as.master;
    if (data->reservoir >= 0) {
        return data->reservoir;
    }
    if (data->casting >= 0 && system->parts[data->casting].kind == KIND_MASTER &&
        system->parts[data->casting].as.master.reservoir >= 0) {
        return system->parts[data->casting].as.master.reservoir;
    }
    int found = -1;
    for (int i = 0; i < system->part_count; i++) {
        if (system->parts[i].kind == KIND_RESERVOIR) {
            if (found >= 0) {
                return -1;
            }
            found = i;
        }
    }
    return found;
}

int soft_hose_owner(const struct system *system, int hose)
{
    const struct part *part = &system->parts[hose];
    enum hose_use use = part->kind == KIND_HOSE ? part->as.hose.use : HOSE_PRESSURE;
    if (use != HOSE_SUPPLY && use != HOSE_VACUUM) {
        return -1;
    }
    for (int i = 0; i < system->part_count; i++) {
        enum part_kind kind = system->parts[i].kind;
        if (kind == (use == HOSE_SUPPLY ? KIND_MASTER : KIND_SERVO) &&
            text_begins(part->name, system->parts[i].name)) {
            return i;
        }
    }
    return -1;
}

int nipples_of(const struct part *part)
{
    if (part->fitted.nipples >= 0) {
        return part->fitted.nipples;
    }
    return kind_is_brake(part->kind) || part->kind == KIND_SLAVE ? 1 : 0;
}

bool part_is_new(const struct part *part)
{
    return part->done.renewed || part->done.replaced;
}

bool part_was_opened(const struct part *part)
{
    return part->done.opened || part_is_new(part);
}

bool work_is_at_hand(const struct system *system, struct date done)
{
    for (int i = 0; i < system->work_count; i++) {
        if (date_known(done) && date_compare(done, system->works[i].date) < 0) {
            return false;
        }
    }
    return true;
}

bool fluid_is_changed(const struct system *system, int fluid)
{
    const struct done *done = &system->parts[fluid].done;
    return (done->renewed || done->replaced) && work_is_at_hand(system, done->date);
}

/* Nipples of parts with an inlet and an outlet sit behind the outlet. */
static int nipple_chamber(const struct part *part, int index)
{
    int chambers = part_chambers(part);
    if (part->kind == KIND_SERVO) {
        return chambers - 1;
    }
    if (part->kind == KIND_VALVE) {
        return index * 2 + 1 < chambers ? index * 2 + 1 : chambers - 1;
    }
    return chambers > 1 ? index % chambers : 0;
}

int nipple_vertex(const struct system *system, const struct network *network, struct nipple nipple)
{
    const struct part *part = &system->parts[nipple.part];
    int vertex = network_vertex(network, nipple.part, nipple_chamber(part, nipple.index));
    if (vertex >= 0 && network->vertices[vertex].circuit >= 0) {
        return vertex;
    }
    for (int chamber = 0; chamber < part_chambers(part); chamber++) {
        vertex = network_vertex(network, nipple.part, chamber);
        if (vertex >= 0 && network->vertices[vertex].circuit >= 0) {
            return vertex;
        }
    }
    return -1;
}

bool master_ran_dry(const struct system *system, int master)
{
    int reservoir = reservoir_of(system, master);
    return system->ran_dry != NULL &&
           (system->ran_dry[master] || (reservoir >= 0 && system->ran_dry[reservoir]));
}

bool fluid_is_renewed(const struct system *system)
{
    for (int i = 0; i < system->part_count; i++) {
        if (system->parts[i].kind == KIND_FLUID && fluid_is_changed(system, i)) {
            return true;
        }
    }
    return system->fluid_renewed && work_is_at_hand(system, system->fluid_renewed_date);
}
