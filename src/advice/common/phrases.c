#include "advice/common/phrases.h"

#include "base/text.h"

struct name_list name_list_room(struct arena *arena, int most)
{
    struct name_list list = {ARENA_ARRAY(arena, (size_t)most + 1, const char *), 0};
    return list;
}

const char *name_list_words(struct arena *arena, const struct name_list *names)
{
    struct text words = text_start(arena);
    for (int i = 0; i < names->count; i++) {
        if (i > 0) {
            text_add(&words, "%s", i + 1 == names->count ? " and " : ", ");
        }
        text_add(&words, "%s", names->items[i]);
    }
    return words.items;
}

const char *fluid_words(const struct system *system, int master)
{
    int fluid = system_fluid_of(system, master);
    const struct fluid_row *row = fluid < 0 ? NULL : fluid_row(system->parts[fluid].as.fluid.grade);
    return row == NULL ? "fluid of the right grade" : row->name;
}

const char *adjuster_words(enum adjuster adjuster)
{
    switch (adjuster) {
    case ADJUSTER_CAM:
        return "snail cams";
    case ADJUSTER_WHEEL:
        return "adjuster wheels";
    case ADJUSTER_WEDGE:
        return "wedge adjusters";
    case ADJUSTER_SELF:
        return "self-adjusters";
    case ADJUSTER_NOT_SAID:
        break;
    }
    return "adjusters (not if they set themselves)";
}

struct adjuster_phrase *adjuster_phrases(const struct system *system, const bool *take,
                                         struct arena *arena, int *count)
{
    struct adjuster_phrase *phrases = ARENA_ARRAY(arena, ADJUSTER_SELF + 1, struct adjuster_phrase);
    *count = 0;
    for (int kind = ADJUSTER_NOT_SAID; kind <= ADJUSTER_SELF; kind++) {
        struct name_list names = name_list_room(arena, system->part_count);
        for (int i = 0; i < system->part_count; i++) {
            const struct part *part = &system->parts[i];
            if (part->kind == KIND_DRUM && take[i] && (int)part->as.drum.adjuster == kind) {
                names.items[names.count++] = part->name;
            }
        }
        if (names.count > 0) {
            phrases[(*count)++] = (struct adjuster_phrase){
                (enum adjuster)kind,
                text_print(arena, "%s of the %s", adjuster_words((enum adjuster)kind),
                           name_list_words(arena, &names))};
        }
    }
    return phrases;
}

const char *fluid_cleaning_words(enum fluid_family found)
{
    switch (found) {
    case FAMILY_MINERAL:
    case FAMILY_SILICONE:
        return "run white spirit through the bare pipes until it comes clean (alcohol does not "
               "dissolve this fluid, and the spirit ruins rubber: never with a hose or seal in "
               "place), then alcohol to take the spirit out, and dry them";
    case FAMILY_GLYCOL:
    case FAMILY_CASTOR:
    case FAMILY_UNKNOWN:
        break;
    }
    return "flush the bare pipes with denatured or isopropyl alcohol, and dry them";
}

const char *fluid_aging_words(enum fluid_family family)
{
    switch (family) {
    case FAMILY_MINERAL:
        return "It takes up no water, but dirt and wear of the rubber gather in it";
    case FAMILY_SILICONE:
        return "It takes up no water: what gets in lies free in the lowest places, rusts them and "
               "boils as water does";
    case FAMILY_GLYCOL:
    case FAMILY_CASTOR:
    case FAMILY_UNKNOWN:
        break;
    }
    return "It takes up water: it boils early and rusts from inside";
}

const char *fluid_swelling_words(enum fluid_family family)
{
    return family == FAMILY_MINERAL ? "Brake fluid of the glycol kind" : "Mineral oil or spirit";
}

const char *cylinder_words(struct arena *arena, const struct part *part)
{
    switch (part->kind) {
    case KIND_DRUM:
        return text_print(arena, "wheel cylinder of the %s", part->name);
    case KIND_DISC:
        return text_print(arena, "caliper of the %s", part->name);
    case KIND_VEHICLE:
    case KIND_FLUID:
    case KIND_PEDAL:
    case KIND_RESERVOIR:
    case KIND_SERVO:
    case KIND_MASTER:
    case KIND_PIPE:
    case KIND_HOSE:
    case KIND_JOINT:
    case KIND_VALVE:
    case KIND_SLAVE:
    case KIND_PARKING:
    case KIND_COUNT:
        break;
    }
    return part->name;
}

const char *note_place_words(const struct system *system)
{
    return system_vehicle(system)->type == VEHICLE_MOTORCYCLE ? "handlebar" : "steering wheel";
}
