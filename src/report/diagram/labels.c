#include "report/diagram/labels.h"

#include <math.h>
#include <string.h>

#include "base/list.h"
#include "base/text.h"
#include "physics/pressure.h"
#include "report/diagram/letters.h"
#include "report/diagram/place.h"
#include "units/unit.h"

#define TAG_EDGE   0.9
#define TAG_ROOM   1.2 /* lines that a tag takes up */
#define USUAL_NAME 27.0
#define LONG_NAME  16.0 /* mm; longer names may be broken */
#define NARROWEST  12.0

struct font label_font(bool name)
{
    return (struct font){.size = 8, .bold = name};
}

struct font label_tag_font(void)
{
    return (struct font){.size = 8, .bold = true};
}

/* What stands on a tag. A hose that this work did not renew bears its year. */
static const char *words_of_tag(const struct layout *layout, enum tag tag,
                                const struct hose_line *line)
{
    static const char *const words[] = {
        [TAG_NONE] = "",
        [TAG_NEW] = "NEW",
        [TAG_GOOD] = "GOOD",
        [TAG_OLD] = "OLD",
        [TAG_UNDATED] = "NO DATE",
        [TAG_MISSING] = "HOSE MISSING",
        [TAG_ACCEPTED] = "HARD PIPE",
    };
    if ((tag == TAG_GOOD || tag == TAG_OLD) && date_known(line->renewed))
        return text_print(layout->arena, tag == TAG_OLD ? "OLD %d" : "%d", line->renewed.year);
    return words[tag];
}

struct box labels_box_of(const struct point *points, int count, double wider)
{
    struct box box = {INFINITY, INFINITY, -INFINITY, -INFINITY};
    for (int i = 0; i < count; i++) {
        box.left = fmin(box.left, points[i].x);
        box.right = fmax(box.right, points[i].x);
        box.top = fmin(box.top, points[i].y);
        box.bottom = fmax(box.bottom, points[i].y);
    }
    return box_wider(box, wider);
}

void labels_way_boxes(const struct layout *layout, int chain, struct arena *arena,
                      struct box_list *into)
{
    const struct chain *c = &layout->chains[chain];
    for (int i = 0; c->way.count > 0 && i < c->edge_count; i++) {
        const struct piece *piece = &c->pieces[i];
        for (int k = 1; k < piece->count; k++)
            *LIST_ADD(arena, into) =
                labels_box_of(&piece->points[k - 1], 2, piece->hose ? HOSE_HALF : PIPE_HALF);
    }
}

int labels_tyres(const struct layout *layout, struct box tyres[static MOST_TYRES])
{
    int count = 0;
    for (int i = 0; i < layout->axle_count; i++) {
        double y = layout->axles[i].line * GRID_STEP;
        double x = layout->width / 2;
        if (layout->motorcycle) {
            tyres[count++] = (struct box){x - 4.2, y - 18.5, x + 4.2, y + 18.5};
            continue;
        }
        tyres[count++] = (struct box){2, y - 10, 9.5, y + 10};
        tyres[count++] = (struct box){layout->width - 9.5, y - 10, layout->width - 2, y + 10};
    }
    return count;
}

static const char *bores_words(const struct layout *layout, const struct bores *bores)
{
    const char *bore = unit_show_bore(layout->arena, bores->bore.m, layout->result->units);
    return bores->count > 0 ? text_print(layout->arena, "%d of %s", bores->count, bore) : bore;
}

/* What stands below a part's name, or NULL. */
static const char *data_of(const struct layout *layout, int part)
{
    const struct part *p = &layout->system->parts[part];
    double bore = NAN;
    if (p->kind == KIND_MASTER)
        bore = p->as.master.bore.m;
    else if (p->kind == KIND_DRUM)
        bore = p->as.drum.bore.m;
    else if (p->kind == KIND_SLAVE)
        bore = p->as.slave.bore.m;
    else if (p->kind == KIND_DISC && p->as.disc.bores.bore.m > 0)
        return bores_words(layout, &p->as.disc.bores);
    if (!(bore > 0))
        return NULL;
    return unit_show_bore(layout->arena, bore, layout->result->units);
}

static enum tag tag_of(const struct hose_line *line)
{
    switch (line->standing) {
    case HOSE_IS_NEW:
        return line->renewed_in_work ? TAG_NEW : TAG_GOOD;
    case HOSE_IS_OLD:
        return TAG_OLD;
    case HOSE_AGE_NOT_KNOWN:
        return TAG_UNDATED;
    case HOSE_IS_MISSING:
        return TAG_MISSING;
    case HOSE_IS_ACCEPTED:
        return TAG_ACCEPTED;
    case HOSE_CANNOT_TELL:
    case HOSE_IS_IDLE:
        break;
    }
    return TAG_NONE;
}

struct label_list {
    struct label *items;
    size_t count;
    size_t capacity;
};

static void name_symbols(const struct layout *layout, struct label_list *list)
{
    for (int i = 0; i < layout->symbol_count; i++) {
        int part = layout->symbols[i].part;
        const struct part *p = &layout->system->parts[part];
        if (p->kind == KIND_JOINT && p->as.joint.implied)
            continue;
        *LIST_ADD(layout->arena, list) = (struct label){.part = part,
                                                        .name = p->name,
                                                        .data = data_of(layout, part),
                                                        .target = layout->symbols[i].box};
    }
}

/* Where a part is on paper: its symbol, its piece of a way or its mark on one. */
static bool box_of_part(const struct layout *layout, int part, struct box *box)
{
    if (part < 0)
        return false;
    if (layout->symbol_of[part] >= 0) {
        *box = layout->symbols[layout->symbol_of[part]].box;
        return true;
    }
    for (int i = 0; i < layout->chain_count; i++) {
        const struct chain *chain = &layout->chains[i];
        for (int k = 0; chain->way.count > 0 && k < chain->edge_count; k++) {
            const struct piece *piece = &chain->pieces[k];
            if (piece->part == part) {
                /* The longest leg stands for the piece. */
                double best = -1;
                for (int leg = 1; leg < piece->count; leg++) {
                    struct box b = labels_box_of(&piece->points[leg - 1], 2, HOSE_HALF);
                    double size = b.right - b.left + b.bottom - b.top;
                    if (size > best) {
                        best = size;
                        *box = b;
                    }
                }
                return true;
            }
            if (k < chain->edge_count - 1 && chain->marks[k].part == part) {
                *box = labels_box_of(&chain->marks[k].at, 1, 1.5);
                return true;
            }
        }
    }
    return false;
}

static void name_hoses(const struct layout *layout, struct label_list *list)
{
    const struct hose_list *hoses = &layout->result->hoses;
    for (int i = 0; i < hoses->count; i++) {
        const struct hose_line *line = &hoses->items[i];
        struct label label = {.part = line->hose, .name = line->name, .tag = tag_of(line)};
        label.tag_words = words_of_tag(layout, label.tag, line);
        if (line->hose < 0)
            label.part = line->far;
        if (label.tag == TAG_ACCEPTED || label.tag == TAG_MISSING)
            label.name = NULL;
        if (box_of_part(layout, line->hose >= 0 ? line->hose : line->far, &label.target) &&
            (line->hose >= 0 || label.tag == TAG_ACCEPTED || label.tag == TAG_MISSING))
            *LIST_ADD(layout->arena, list) = label;
    }
}

/* The line of the hose list that is about the supply or vacuum hose of a part: by its ends, by its
 * name, or because it is the only one of that use. */
static const struct hose_line *low_pressure_line(const struct layout *layout, int owner,
                                                 const char *use)
{
    const struct hose_list *hoses = &layout->result->hoses;
    const struct hose_line *only = NULL;
    int count = 0;
    for (int i = 0; i < hoses->count; i++) {
        const struct hose_line *line = &hoses->items[i];
        if (!line->use || !text_same(line->use, use))
            continue;
        if (line->near == owner || line->far == owner ||
            text_begins(line->name, layout->system->parts[owner].name))
            return line;
        only = line;
        count++;
    }
    return count == 1 ? only : NULL;
}

/* Joints with two ends stand on their way; those that have a name bear it. */
static void name_inline_joints(const struct layout *layout, struct label_list *list)
{
    for (int i = 0; i < layout->chain_count; i++)
        for (int k = 0; layout->chains[i].marks && k + 1 < layout->chains[i].edge_count; k++) {
            const struct inline_joint *mark = &layout->chains[i].marks[k];
            const struct part *part = &layout->system->parts[mark->part];
            if (!part->as.joint.implied)
                *LIST_ADD(layout->arena, list) =
                    (struct label){.part = mark->part,
                                   .name = part->name,
                                   .target = labels_box_of(&mark->at, 1, 1.5)};
        }
}

/* Low-pressure rubber lies in no circuit. */
static void name_feeds(struct layout *layout, struct label_list *list)
{
    for (int i = 0; i < layout->feed_count; i++) {
        struct feed *feed = &layout->feeds[i];
        if (!feed->hose)
            continue;
        bool vacuum = feed->to < 0;
        int owner = layout->symbols[vacuum ? feed->from : feed->to].part;
        const struct hose_line *line =
            low_pressure_line(layout, owner, vacuum ? "vacuum" : "supply");
        feed->tag = line ? tag_of(line) : TAG_NONE;
        *LIST_ADD(layout->arena, list) = (struct label){
            .part = owner,
            .name = vacuum ? "vacuum hose" : "supply hose",
            .tag = feed->tag,
            .tag_words = words_of_tag(layout, feed->tag, line),
            .target = labels_box_of((struct point[]){feed->a, feed->b}, 2, HOSE_HALF)};
    }
}

/* Joints that the work undoes or does up. A letter that stands for none that is drawn is not
 * given away: the text has it all the same. */
static void letter_joints(const struct layout *layout, struct label_list *list)
{
    const struct plan *plan = layout->result->plan;
    for (int i = 0; plan && i < plan->joint_count && i < MOST_LETTERS; i++) {
        struct label label = {.part = -1, .letter = plan->joints[i].letter};
        if (letters_target(layout, plan->joints[i].joint, &label.target))
            *LIST_ADD(layout->arena, list) = label;
    }
}

/* A bore in mm and in inches may stand in two lines; no number is parted from its unit. */
static struct lines data_lines(const char *data, double at, const struct ruler *ruler,
                               struct arena *arena)
{
    struct lines lines = {ARENA_ARRAY(arena, 2, const char *), 0};
    if (!data)
        return lines;
    const char *bracket = strstr(data, " (");
    if (!bracket || ruler_width(ruler, data, label_font(false)) <= at) {
        lines.items[lines.count++] = data;
        return lines;
    }
    lines.items[lines.count++] = text_copy_part(arena, data, (size_t)(bracket - data));
    lines.items[lines.count++] = bracket + 1;
    return lines;
}

/* The label with its name and data broken at a width. */
static struct label_form form_of(const struct label *label, double at, double dislike,
                                 const struct ruler *ruler, struct arena *arena)
{
    struct lines name = sketch_wrap(arena, ruler, label->name, label_font(true), at);
    struct lines data = data_lines(label->data, at, ruler, arena);
    double width = 0;
    for (int i = 0; i < name.count; i++)
        width = fmax(width, ruler_width(ruler, name.items[i], label_font(true)));
    for (int i = 0; i < data.count; i++)
        width = fmax(width, ruler_width(ruler, data.items[i], label_font(false)));
    if (label->tag != TAG_NONE)
        width = fmax(width, ruler_width(ruler, label->tag_words, label_tag_font()) + 2 * TAG_EDGE);
    double lines = name.count + data.count + (label->tag != TAG_NONE) * TAG_ROOM;
    return (struct label_form){name, data, width, LABEL_LINE * lines + 0.3, dislike};
}

/* A long label may be broken into more lines. */
static void find_forms(struct label_wish *wish, const struct ruler *ruler, struct arena *arena)
{
    const struct label *label = wish->label;
    if (label->letter) {
        double width = ruler_width(ruler, label->letter, label_font(true)) + 2 * TAG_EDGE;
        wish->forms[wish->form_count++] =
            (struct label_form){.width = fmax(width, LETTER_HEIGHT), .height = LETTER_HEIGHT};
        return;
    }
    wish->forms[wish->form_count++] = form_of(label, 1000, 0, ruler, arena);
    double whole = wish->forms[0].width;
    const double widths[] = {whole * 0.75, whole * 0.55, fmax(whole * 0.4, NARROWEST)};
    for (int i = 0; i < 3 && whole > LONG_NAME; i++) {
        struct label_form form = form_of(label, widths[i], 1.5 * (i + 1), ruler, arena);
        if (form.width < wish->forms[wish->form_count - 1].width)
            wish->forms[wish->form_count++] = form;
    }
}

/* Every leg of a hose will do to stand beside. */
static void find_targets(const struct layout *layout, struct label_wish *wish)
{
    wish->targets[wish->target_count++] = wish->label->target;
    for (int i = 0; i < layout->chain_count; i++)
        for (int k = 0; layout->chains[i].pieces && k < layout->chains[i].edge_count; k++) {
            const struct piece *piece = &layout->chains[i].pieces[k];
            if (piece->part < 0 || piece->part != wish->label->part || wish->label->letter)
                continue;
            for (int leg = 1; leg < piece->count && wish->target_count < MOST_TARGETS; leg++)
                wish->targets[wish->target_count++] =
                    labels_box_of(&piece->points[leg - 1], 2, HOSE_HALF);
        }
}

bool labels_rods(const struct layout *layout, const struct symbol *pedal, struct box *box)
{
    if (layout->system->parts[pedal->part].kind != KIND_PEDAL)
        return false;
    *box = (struct box){pedal->box.left, pedal->box.top - 2.2 * GRID_STEP, pedal->box.right,
                        pedal->box.top};
    for (int i = 0; i < layout->symbol_count; i++) {
        const struct symbol *s = &layout->symbols[i];
        if (layout->system->parts[s->part].kind != KIND_MASTER ||
            pressure_pedal_of(layout->system, s->part) != pedal->part)
            continue;
        box->left = fmin(box->left, s->at.x - 1);
        box->right = fmax(box->right, s->at.x + 1);
        box->top = fmin(box->top, s->box.bottom);
    }
    return true;
}

bool labels_rod_of(const struct layout *layout, int pedal, int symbol)
{
    int part = layout->symbols[symbol].part;
    int wanted = layout->symbols[pedal].part;
    const struct part *p = &layout->system->parts[part];
    if (p->kind == KIND_SERVO)
        part = p->as.servo.works;
    return pedal == symbol || (part >= 0 && layout->system->parts[part].kind == KIND_MASTER &&
                               pressure_pedal_of(layout->system, part) == wanted);
}

/* What lies in the way of names; ways and what stands on them only where asked for. */
static struct box_list all_taken(const struct layout *layout, bool ways)
{
    struct arena *arena = layout->arena;
    struct box_list taken = {0};
    struct box tyres[MOST_TYRES], rods;
    int tyre_count = labels_tyres(layout, tyres);
    for (int i = 0; i < tyre_count; i++)
        *LIST_ADD(arena, &taken) = tyres[i];
    for (int i = 0; i < layout->symbol_count; i++)
        *LIST_ADD(arena, &taken) = layout->symbols[i].box;
    for (int i = 0; i < layout->nipple_count; i++)
        *LIST_ADD(arena, &taken) = layout->nipples[i].box;
    for (int i = 0; ways && i < layout->chain_count; i++)
        labels_way_boxes(layout, i, arena, &taken);
    for (int i = 0; i < layout->feed_count; i++)
        *LIST_ADD(arena, &taken) =
            labels_box_of((struct point[]){layout->feeds[i].a, layout->feeds[i].b}, 2,
                          layout->feeds[i].hose ? HOSE_HALF : PIPE_HALF);
    for (int i = 0; i < layout->symbol_count; i++)
        if (labels_rods(layout, &layout->symbols[i], &rods))
            *LIST_ADD(arena, &taken) = rods;
    for (int i = 0; ways && i < layout->chain_count; i++)
        for (int k = 0; layout->chains[i].marks && k + 1 < layout->chains[i].edge_count; k++)
            *LIST_ADD(arena, &taken) = labels_box_of(&layout->chains[i].marks[k].at, 1, 1.6);
    for (int i = 0; i < 3; i++)
        *LIST_ADD(arena, &taken) = labels_sides(layout, i);
    *LIST_ADD(arena, &taken) = labels_engine(layout);
    return taken;
}

struct box labels_engine(const struct layout *layout)
{
    double x = (layout->engine.left + layout->engine.right) / 2;
    double y = (layout->engine.top + layout->engine.bottom) / 2;
    return (struct box){x - 6.5, y - 1.8, x + 6.5, y + 1.8};
}

/* Where "FRONT", "LEFT" and "RIGHT" stand. */
struct box labels_sides(const struct layout *layout, int index)
{
    double x = layout->width / 2, y = layout->height / 2;
    double front = layout->motorcycle ? 0 : 15;
    const struct box boxes[] = {{x - front, 0, x + front, 3.4},
                                {2, y - 3, 13.5, y + 0.5},
                                {layout->width - 13.5, y - 3, layout->width - 2, y + 0.5}};
    return boxes[index];
}

static void add_outline(const struct layout *layout, struct box_list *list, struct box box)
{
    struct arena *arena = layout->arena;
    *LIST_ADD(arena, list) = (struct box){box.left, box.top, box.left, box.bottom};
    *LIST_ADD(arena, list) = (struct box){box.right, box.top, box.right, box.bottom};
    *LIST_ADD(arena, list) = (struct box){box.left, box.top, box.right, box.top};
    *LIST_ADD(arena, list) = (struct box){box.left, box.bottom, box.right, box.bottom};
}

/* Faint lines of the car: a label may stand on them, but rather does not. */
static struct box_list faint_lines(const struct layout *layout)
{
    struct box_list list = {0};
    add_outline(layout, &list, layout->engine);
    if (layout->gearbox.right > layout->gearbox.left)
        add_outline(layout, &list, layout->gearbox);
    double y = layout->bulkhead * GRID_STEP;
    double edge = LAYOUT_BODY_EDGE;
    if (!layout->motorcycle) {
        add_outline(layout, &list, (struct box){edge, 4, layout->width - edge, layout->height - 4});
        *LIST_ADD(layout->arena, &list) = (struct box){edge, y, layout->width - edge, y + 0.9};
        *LIST_ADD(layout->arena, &list) = labels_box_of(&layout->wheel, 1, WHEEL_RADIUS + 0.5);
    }
    return list;
}

/* Docks and the first step from them stay free. */
static void take_docks(const struct layout *layout, struct box_list *taken)
{
    struct dock docks[MOST_DOCKS];
    for (int i = 0; i < layout->symbol_count; i++) {
        const struct symbol *symbol = &layout->symbols[i];
        if (symbol->ways == 0)
            continue;
        int chambers = part_chambers(&layout->system->parts[symbol->part]);
        for (int c = 0; c < chambers; c++)
            for (int d = place_docks(layout, symbol, c, docks); d-- > 0;) {
                struct spot next = spot_next(docks[d].spot, docks[d].heading);
                struct point ends[] = {{docks[d].spot.x * GRID_STEP, docks[d].spot.y * GRID_STEP},
                                       {next.x * GRID_STEP, next.y * GRID_STEP}};
                *LIST_ADD(layout->arena, taken) = labels_box_of(ends, 2, 1);
            }
    }
}

/* What is to be kept free for: names before ways are laid, those that stand badly afterwards. */
static struct label_list reserved_for(struct layout *layout)
{
    struct label_list list = {0};
    if (layout->labels == NULL) {
        name_symbols(layout, &list);
        name_feeds(layout, &list);
    }
    for (int i = 0; i < layout->label_count; i++)
        if (layout->labels[i].crosses)
            *LIST_ADD(layout->arena, &list) = layout->labels[i];
    return list;
}

/* What it took up where it stands badly, or what is usual. */
static struct label_form usual_form(const struct label *label)
{
    double lines = 1 + (label->data != NULL) + (label->tag != TAG_NONE) * TAG_ROOM;
    struct box box = label->box;
    if (box.right > box.left)
        return (struct label_form){.width = box.right - box.left, .height = box.bottom - box.top};
    return (struct label_form){.width = USUAL_NAME, .height = LABEL_LINE * lines + 0.3};
}

void labels_reserve(struct layout *layout)
{
    struct label_list list = reserved_for(layout);
    struct box_list taken = all_taken(layout, false), faint = {0};
    take_docks(layout, &taken);
    for (int i = 0; i < layout->reserved_count; i++)
        *LIST_ADD(layout->arena, &taken) = layout->reserved[i];
    struct label_wish *wishes = ARENA_ARRAY(layout->arena, list.count + 1, struct label_wish);
    for (size_t i = 0; i < list.count; i++) {
        wishes[i].label = &list.items[i];
        wishes[i].forms[wishes[i].form_count++] = usual_form(&list.items[i]);
        wishes[i].targets[wishes[i].target_count++] = list.items[i].target;
    }
    if (list.count > MOST_NAMES) /* labels_place refuses them */
        return;
    spots_find(layout, wishes, (int)list.count, &taken, &faint);
    struct box_list reserved = {layout->reserved, (size_t)layout->reserved_count,
                                (size_t)layout->reserved_count};
    for (size_t i = 0; i < list.count; i++)
        if (list.items[i].box.right > 0)
            *LIST_ADD(layout->arena, &reserved) = list.items[i].box;
    layout->reserved = reserved.items;
    layout->reserved_count = (int)reserved.count;
    if (layout->labels == NULL)
        layout->reserved_at_first = layout->reserved_count;
}

/* Words with their sides changed over, whole words only; the same words where they name none. */
static const char *other_side(struct arena *arena, const char *words)
{
    struct text text = text_start(arena);
    for (const char *at = words; *at;) {
        size_t length = strcspn(at, " ");
        bool left = length == 4 && strncmp(at, "left", 4) == 0;
        bool right = length == 5 && strncmp(at, "right", 5) == 0;
        text_add_bytes(&text, left ? "right" : right ? "left" : at, left ? 5 : right ? 4 : length);
        at += length;
        length = strspn(at, " ");
        text_add_bytes(&text, at, length);
        at += length;
    }
    return text.items;
}

/* Measures names as wide as they are on whichever side, so that a car and its mirror image are laid
 * out alike. */
struct even_ruler {
    const struct ruler *ruler;
    struct arena *arena;
};

static double even_width(void *context, const char *words, struct font font)
{
    const struct even_ruler *even = context;
    double width = ruler_width(even->ruler, words, font);
    if (!strstr(words, "left") && !strstr(words, "right"))
        return width;
    return fmax(width, ruler_width(even->ruler, other_side(even->arena, words), font));
}

static const char *words_of(const struct label *label)
{
    return label->letter ? label->letter : label->name ? label->name : label->tag_words;
}

void labels_place(struct layout *layout, const struct ruler *ruler)
{
    struct label_list list = {0};
    name_symbols(layout, &list);
    name_inline_joints(layout, &list);
    name_hoses(layout, &list);
    name_feeds(layout, &list);
    layout->name_count = (int)list.count;
    if (list.count > MOST_NAMES)
        return;
    letter_joints(layout, &list);
    struct box_list taken = all_taken(layout, true);
    struct box_list faint = faint_lines(layout);
    struct label_wish *wishes = ARENA_ARRAY(layout->arena, list.count + 1, struct label_wish);
    struct even_ruler sides = {ruler, layout->arena};
    const struct ruler even = {even_width, &sides};
    for (size_t i = 0; i < list.count; i++) {
        wishes[i].label = &list.items[i];
        find_forms(&wishes[i], &even, layout->arena);
        find_targets(layout, &wishes[i]);
    }
    struct spots_missed missed = spots_find(layout, wishes, (int)list.count, &taken, &faint);
    layout->crowded = missed.crossing;
    if (missed.without >= 0)
        layout->nameless = words_of(&list.items[missed.without]);
    layout->labels = list.items;
    layout->label_count = (int)list.count;
}
