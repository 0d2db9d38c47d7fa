#include "report/diagram/layout.h"

#include "base/text.h"
#include "report/diagram/chains.h"
#include "report/diagram/labels.h"
#include "report/diagram/nipples.h"
#include "report/diagram/place.h"

static void put_on_paper(struct layout *layout)
{
    for (int i = 0; i < layout->symbol_count; i++) {
        struct symbol *s = &layout->symbols[i];
        s->at = chains_on_paper(layout, s->centre);
        s->inward = s->at.x < LAYOUT_WIDTH / 2 ? 1 : -1;
        double w = s->half_width > 0 ? s->half_width * GRID_STEP : 1.1;
        double h = s->half_height > 0 ? s->half_height * GRID_STEP : 1.1;
        s->box = (struct box){s->at.x - w, s->at.y - h, s->at.x + w, s->at.y + h};
    }
}

static void add_feed(struct layout *layout, struct feed feed)
{
    layout->feeds[layout->feed_count++] = feed;
}

/* Lines from reservoirs to masters, and the vacuum hoses of servos. */
static void find_feeds(struct layout *layout)
{
    layout->feeds = ARENA_ARRAY(layout->arena, 2 * (size_t)layout->symbol_count + 1, struct feed);
    layout->feed_count = 0;
    double out = layout->mirrored ? -1 : 1;
    for (int i = 0; i < layout->symbol_count; i++) {
        const struct symbol *s = &layout->symbols[i];
        const struct part *part = &layout->system->parts[s->part];
        if (part->kind == KIND_SERVO && part->as.servo.vacuum_hose.m > 0) {
            double edge = out > 0 ? s->box.right : s->box.left;
            struct point a = {edge, s->at.y};
            struct point b = {edge + out * 3 * GRID_STEP, s->at.y};
            if (part_chambers(part) > 0) { /* remote: its pipes leave at the sides */
                double inner = out > 0 ? s->box.left : s->box.right;
                a = (struct point){inner, s->at.y + GRID_STEP};
                b = (struct point){inner - out * 2.4 * GRID_STEP, s->at.y + GRID_STEP};
            }
            add_feed(layout, (struct feed){i, -1, true, a, b, TAG_NONE});
        }
        int reservoir =
            part->kind == KIND_MASTER ? place_reservoir_of(layout->system, s->part) : -1;
        if (reservoir < 0)
            continue;
        int from = layout->symbol_of[reservoir];
        bool hose = part->as.master.supply_hose.m > 0;
        struct point a = {s->at.x, layout->symbols[from].box.bottom};
        add_feed(layout, (struct feed){from, i, hose, a, {s->at.x, s->box.top}, TAG_NONE});
    }
}

static const char *name_at(const struct layout *layout, int symbol)
{
    return layout->system->parts[layout->symbols[symbol].part].name;
}

/* The pipes and hoses of a chain, by name; they are called after their run. */
static const char *carriers_of(const struct layout *layout, const struct chain *chain)
{
    struct text words = text_start(layout->arena);
    for (int i = 0; i < chain->edge_count; i++) {
        const struct edge *edge = &layout->network->edges[chain->edges[i]];
        if (edge->kind == EDGE_CARRIER)
            text_add(&words, "%s%s", words.count > 0 ? ", " : " (",
                     layout->system->parts[edge->part].name);
    }
    if (words.count > 0)
        text_add(&words, ")");
    return words.items;
}

const char *layout_refusal(const struct layout *layout)
{
    static const char why[] = "; nothing is drawn, since a plan with something left out misleads";
    if (layout->homeless >= 0)
        return text_print(layout->arena, "the plan has no room left for %s%s",
                          layout->system->parts[layout->homeless].name, why);
    if (layout->network->circuit_count > MOST_CIRCUITS)
        return text_print(layout->arena, "more than %d circuits cannot be told apart%s",
                          MOST_CIRCUITS, why);
    if (layout->name_count > MOST_NAMES)
        return text_print(layout->arena, "%d names are more than one plan has room for (%d)%s",
                          layout->name_count, MOST_NAMES, why);
    if (layout->nameless)
        return text_print(layout->arena, "the plan has no room to name %s%s", layout->nameless,
                          why);
    for (int i = 0; i < layout->chain_count; i++) {
        const struct chain *chain = &layout->chains[i];
        if (chain->way.count > 0)
            continue;
        const char *more = layout->unrouted == 2 ? " and for one more"
                           : layout->unrouted > 2
                               ? text_print(layout->arena, " and for %d more", layout->unrouted - 1)
                               : "";
        return text_print(layout->arena, "the plan has no room for the run from %s to %s%s%s%s",
                          name_at(layout, chain->from), name_at(layout, chain->to),
                          carriers_of(layout, chain), more, why);
    }
    return NULL;
}

struct layout *layout_of(const struct result *result, const struct ruler *ruler,
                         struct arena *arena)
{
    struct layout *layout = ARENA_NEW(arena, struct layout);
    layout->arena = arena;
    layout->result = result;
    layout->system = result->system;
    layout->network = result->network;
    place_symbols(layout);
    chains_find(layout);
    if (layout->homeless < 0) {
        /* Ways are laid as if the driver sat on the right, whatever the names. */
        bool mirrored = layout->mirrored;
        layout->mirrored = false;
        put_on_paper(layout);
        nipples_place(layout);
        find_feeds(layout);
        labels_reserve(layout);
        layout->mirrored = mirrored;
        chains_route(layout);
    }
    put_on_paper(layout);
    nipples_place(layout);
    find_feeds(layout);
    chains_finish(layout);
    if (layout_refusal(layout) == NULL)
        labels_place(layout, ruler);
    return layout;
}
