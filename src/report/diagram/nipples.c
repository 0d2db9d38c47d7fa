#include "report/diagram/nipples.h"

#include <string.h>

#include "base/list.h"
#include "report/diagram/labels.h"

#define RADIUS       2.3
#define APART        (2 * RADIUS + 0.8)
#define OFF          0.7  /* from the symbol */
#define OFF_JOINT    1.5  /* and from the pipes at a joint */
#define UNDER_CORNER 0.9  /* a circle at a corner, less than leaves the pipe below it free */
#define TYRE_EDGE    10.8 /* mm from the paper's edge that circles keep off */

/* How many nipples of a part are known or bled. */
static int count_of(const struct layout *layout, int part)
{
    const struct part *p = &layout->system->parts[part];
    int count = p->fitted.nipples > 0 ? p->fitted.nipples : 0;
    if (p->fitted.nipples < 0 && kind_is_brake(p->kind))
        count = 1;
    const struct bleed_plan *plan = layout->result->bleed;
    for (size_t i = 0; plan && i < plan->steps.count; i++)
        if (plan->steps.items[i].part == part && plan->steps.items[i].nipple >= count)
            count = plan->steps.items[i].nipple + 1;
    return count;
}

/* How often a nipple comes up; at least 1. With number not NULL, the step of visit `visit`, or 0.
 */
static int visits_of(const struct layout *layout, struct nipple nipple, int visit, int *number)
{
    const struct bleed_plan *plan = layout->result->bleed;
    int count = 0;
    for (size_t i = 0; plan && i < plan->steps.count; i++) {
        const struct step *step = &plan->steps.items[i];
        if (step->part != nipple.part || step->nipple != nipple.index)
            continue;
        if (number && count == visit)
            *number = step->number;
        count++;
    }
    return count > 0 ? count : 1;
}

int nipples_marks(const struct layout *layout, int part)
{
    int marks = 0;
    for (int i = 0; i < count_of(layout, part); i++)
        marks += visits_of(layout, (struct nipple){part, i}, 0, NULL);
    return marks;
}

/* Whether the name of a nipple, of those with commas between, holds a word. */
static bool is_called(const char *names, int index, const char *word)
{
    for (; names && index > 0; index--) {
        names = strchr(names, ',');
        names = names ? names + 1 : NULL;
    }
    if (!names)
        return false;
    const char *end = strchr(names, ',');
    const char *found = strstr(names, word);
    return found && (!end || found < end);
}

/* The place of a nipple from the outside in: as its name says, else in order. */
static int place_from_outside(const struct part *part, int index, int count)
{
    const char *names = part->fitted.nipple_names;
    if (count == 2 && (is_called(names, 0, "inner") || is_called(names, 1, "outer")))
        return 1 - index;
    return index;
}

/* The middle of a circle, mm, driver on the right. */
static struct point middle_of(const struct layout *layout, const struct symbol *symbol, int index,
                              int visit, int count)
{
    const struct part *part = &layout->system->parts[symbol->part];
    struct point at = {symbol->centre.x * GRID_STEP, symbol->centre.y * GRID_STEP};
    double half_width = symbol->half_width > 0 ? symbol->half_width * GRID_STEP : 1.1;
    double half_height = symbol->half_height > 0 ? symbol->half_height * GRID_STEP : 1.1;
    bool left = at.x < layout->width / 2;
    double out = left ? -1 : 1;
    int place = place_from_outside(part, index, count);
    if (!kind_is_brake(part->kind)) {
        double up = symbol->half_width > 0 ? -UNDER_CORNER : OFF_JOINT;
        return (struct point){at.x + half_width + OFF + RADIUS + place * APART,
                              at.y - half_height - up - RADIUS - visit * APART};
    }
    double across = (place - (count - 1) / 2.0) * APART;
    if (layout->motorcycle)
        return (struct point){at.x + out * (half_width + OFF + RADIUS + visit * APART),
                              at.y + across};
    /* Many of them keep off the tyre. */
    double edge = left ? at.x - TYRE_EDGE : layout->width - TYRE_EDGE - at.x;
    double over = (count - 1) / 2.0 * APART + RADIUS - edge;
    return (struct point){at.x - out * (across + (over > 0 ? over : 0)),
                          at.y - half_height - OFF - RADIUS - visit * APART};
}

bool nipples_box(const struct layout *layout, const struct symbol *symbol, struct box *box)
{
    int count = count_of(layout, symbol->part);
    bool any = false;
    for (int i = 0; i < count; i++)
        for (int v = visits_of(layout, (struct nipple){symbol->part, i}, 0, NULL); v-- > 0;) {
            struct point at = middle_of(layout, symbol, i, v, count);
            struct point corners[] = {{at.x - RADIUS, at.y - RADIUS},
                                      {at.x + RADIUS, at.y + RADIUS},
                                      {box->left, box->top},
                                      {box->right, box->bottom}};
            *box = labels_box_of(corners, any ? 4 : 2, 0);
            any = true;
        }
    return any;
}

struct mark_list {
    struct nipple_mark *items;
    size_t count;
    size_t capacity;
};

void nipples_place(struct layout *layout)
{
    struct mark_list list = {0};
    for (int s = 0; s < layout->symbol_count; s++) {
        const struct symbol *symbol = &layout->symbols[s];
        int count = count_of(layout, symbol->part);
        for (int i = 0; i < count; i++) {
            struct nipple nipple = {symbol->part, i};
            int visits = visits_of(layout, nipple, 0, NULL);
            for (int v = 0; v < visits; v++) {
                struct nipple_mark *mark = LIST_ADD(layout->arena, &list);
                *mark = (struct nipple_mark){.nipple = nipple};
                visits_of(layout, nipple, v, &mark->number);
                mark->at = middle_of(layout, symbol, i, v, count);
                mark->box = labels_box_of(&mark->at, 1, RADIUS);
            }
        }
    }
    layout->nipples = list.items;
    layout->nipple_count = (int)list.count;
}
