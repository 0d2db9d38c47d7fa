#include "report/diagram/description.h"

#include "base/text.h"

static void add_circuit(struct text *text, const struct layout *layout, int circuit)
{
    const struct circuit *c = &layout->network->circuits[circuit];
    const char *between = ": ";
    int last = -1;
    text_add(text, " %s", c->name ? c->name : "circuit");
    for (int i = 0; i < c->vertex_count; i++) {
        int part = layout->network->vertices[c->vertices[i]].part;
        if (part == last || layout->symbol_of[part] < 0)
            continue;
        text_add(text, "%s%s", between, layout->system->parts[part].name);
        between = ", ";
        last = part;
    }
    text_add(text, ".");
}

/* The name that bears a number, or NULL. */
static const struct nipple_mark *numbered(const struct layout *layout, int number)
{
    for (int i = 0; i < layout->nipple_count; i++)
        if (layout->nipples[i].number == number)
            return &layout->nipples[i];
    return NULL;
}

static void add_nipples(struct text *text, const struct layout *layout)
{
    const struct bleed_plan *plan = layout->result->bleed;
    const char *before = " Nipples in bleeding order: ";
    for (size_t i = 0; plan && i < plan->steps.count; i++) {
        int number = plan->steps.items[i].number;
        const struct nipple_mark *mark = numbered(layout, number);
        if (!mark)
            continue;
        text_add(text, "%s%d %s", before, number, layout->system->parts[mark->nipple.part].name);
        before = ", ";
    }
    if (before[0] == ',')
        text_add(text, ".");
}

static void add_hoses(struct text *text, const struct layout *layout)
{
    for (int i = 0; i < layout->label_count; i++) {
        const struct label *label = &layout->labels[i];
        if (label->tag == TAG_NONE || label->letter)
            continue;
        const char *name = label->name ? label->name : layout->system->parts[label->part].name;
        text_add(text, " %s: %s.", name, label->tag_words);
    }
}

const char *description_of(const struct layout *layout)
{
    struct text text = text_start(layout->arena);
    text_add(&text, "The wet side in plan view, not to scale%s.",
             layout->motorcycle ? "" : ", front at the top");
    for (int i = 0; i < layout->network->circuit_count; i++)
        add_circuit(&text, layout, i);
    add_nipples(&text, layout);
    add_hoses(&text, layout);
    return text.items;
}
