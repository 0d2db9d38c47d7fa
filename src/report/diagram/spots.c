#include "report/diagram/spots.h"

#include <limits.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "base/list.h"
#include "report/diagram/overlaps.h"

/* Cells of the paper, 1 mm wide. */
enum { WIDE = 3 * GRID_WIDTH, HIGH = 3 * GRID_HEIGHT, ROUNDS = 2, TRIES = 6, MOST_PLACED = 150 };
#define CLEAR     0.5  /* mm between a label and anything else, and up to a cell more */
#define BESIDE    1.2  /* between two names side by side, which must not read as one */
#define NEAR_BY   2.6  /* further away a thin line leads to it */
#define LEADER    6.0  /* how much a leader is disliked */
#define RUNS_OVER 500. /* and one that runs over something */
#define ON_FAINT  3.0  /* a label over a faint line */
#define NO_PLACE  1e9

struct search {
    const struct box_list *taken, *faint;
    struct label_wish *wishes;
    int count;
    bool *placed;         /* by wish */
    int (*sum)[WIDE + 1]; /* taken cells above and to the left of a corner */
    struct box_list hard; /* what leaders may not cross: all taken, and placed labels */
};

static int within(int value, int most)
{
    return value < 0 ? 0 : value > most ? most : value;
}

static void take_cells(struct search *search, struct box box)
{
    int left = within((int)floor(box.left), WIDE), right = within((int)ceil(box.right), WIDE);
    int top = within((int)floor(box.top), HIGH), bottom = within((int)ceil(box.bottom), HIGH);
    for (int y = top; y < bottom; y++)
        for (int x = left; x < right; x++)
            search->sum[y + 1][x + 1] = 1;
}

static void take_leader(struct search *search, const struct label *label)
{
    struct point a = label->leader_from, b = label->leader_to;
    int steps = (int)ceil(2 * hypot(b.x - a.x, b.y - a.y)) + 1;
    for (int i = 0; label->leader && i <= steps; i++) {
        double x = a.x + (b.x - a.x) * i / steps, y = a.y + (b.y - a.y) * i / steps;
        take_cells(search, (struct box){x - 0.3, y - 0.3, x + 0.3, y + 0.3});
    }
}

/* Sums the taken cells, so that a box is asked for in four looks. Leaves out one label. */
static void sum_up(struct search *search, struct arena *arena, int leave_out)
{
    memset(search->sum, 0, sizeof *search->sum * (HIGH + 1));
    for (size_t i = 0; i < search->taken->count; i++)
        take_cells(search, box_wider(search->taken->items[i], CLEAR));
    search->hard.count = 0;
    for (size_t i = 0; i < search->taken->count; i++)
        *LIST_ADD(arena, &search->hard) = search->taken->items[i];
    for (int i = 0; i < search->count; i++) {
        if (i == leave_out || !search->placed[i])
            continue;
        struct box box = search->wishes[i].label->box;
        *LIST_ADD(arena, &search->hard) = box;
        box.left -= BESIDE;
        box.right += BESIDE;
        take_cells(search, box_wider(box, CLEAR));
        take_leader(search, search->wishes[i].label);
    }
    for (int y = 1; y <= HIGH; y++)
        for (int x = 1; x <= WIDE; x++)
            search->sum[y][x] +=
                search->sum[y - 1][x] + search->sum[y][x - 1] - search->sum[y - 1][x - 1];
}

static bool is_free(const struct search *search, int x, int y, int width, int height)
{
    if (x < 0 || y < 0 || x + width > WIDE || y + height > HIGH)
        return false;
    return search->sum[y + height][x + width] - search->sum[y][x + width] -
               search->sum[y + height][x] + search->sum[y][x] ==
           0;
}

static double between(struct box a, struct box b)
{
    double x = fmax(0, fmax(a.left - b.right, b.left - a.right));
    double y = fmax(0, fmax(a.top - b.bottom, b.top - a.bottom));
    return hypot(x, y);
}

static struct point nearest_in(struct box box, struct point to)
{
    return (struct point){fmin(fmax(to.x, box.left), box.right),
                          fmin(fmax(to.y, box.top), box.bottom)};
}

static struct point middle_of(struct box box)
{
    return (struct point){(box.left + box.right) / 2, (box.top + box.bottom) / 2};
}

static int sign_of(double value)
{
    return (value > 0) - (value < 0);
}

static bool lines_cross(struct point a, struct point b, struct point c, struct point d)
{
#define SIDE(p, q, r) sign_of(((q).x - (p).x) * ((r).y - (p).y) - ((q).y - (p).y) * ((r).x - (p).x))
    return SIDE(a, b, c) * SIDE(a, b, d) <= 0 && SIDE(c, d, a) * SIDE(c, d, b) <= 0;
}

/* How many things a leader would run over, counted up to `most`. What it points at lies within its
 * target. */
static int runs_over(const struct search *search, const struct label *label, int most)
{
    struct box target = box_wider(label->target, 0.05);
    struct point a = label->leader_from, b = label->leader_to;
    int over = overlaps_line_meets_box(a, b, label->box); /* not over its own words either */
    for (size_t i = 0; i < search->hard.count && over < most; i++) {
        struct box box = search->hard.items[i];
        if (box.left > fmax(a.x, b.x) + 1 || box.right < fmin(a.x, b.x) - 1 ||
            box.top > fmax(a.y, b.y) + 1 || box.bottom < fmin(a.y, b.y) - 1)
            continue;
        bool inside = box.left >= target.left && box.right <= target.right &&
                      box.top >= target.top && box.bottom <= target.bottom;
        over += !inside && overlaps_line_meets_box(a, b, box_wider(box, 0.15));
    }
    for (int i = 0; i < search->count && over < most; i++) {
        const struct label *other = search->wishes[i].label;
        if (search->placed[i] && other != label && other->leader)
            over += lines_cross(a, b, other->leader_from, other->leader_to);
    }
    return over;
}

/* The best of a few leaders from the label's sides to its target. */
static int lead(const struct search *search, struct label *label, int most)
{
    struct box box = box_wider(label->box, 0.3);
    struct point middle = middle_of(label->target), own = middle_of(label->box);
    const struct point starts[] = {nearest_in(box, middle),
                                   {own.x, box.top},
                                   {own.x, box.bottom},
                                   {box.left, own.y},
                                   {box.right, own.y}};
    int best = most;
    struct label kept = *label;
    struct box target = label->target;
    for (int i = 0; i < 5 && best > 0; i++) {
        const struct point ends[] = {nearest_in(target, starts[i]), {target.left, target.top},
                                     {target.right, target.top},    {target.left, target.bottom},
                                     {target.right, target.bottom}, {target.left, middle.y},
                                     {target.right, middle.y},      {middle.x, target.top},
                                     {middle.x, target.bottom}};
        for (int k = 0; k < 9 && best > 0; k++) {
            label->leader_from = starts[i];
            label->leader_to = ends[k];
            int over = runs_over(search, label, best);
            if (over < best || (i == 0 && k == 0)) {
                best = over;
                kept = *label;
            }
        }
    }
    *label = kept;
    return best;
}

/* Beside and below read better than above; straight beside better than at a corner. */
static double dislike(const struct search *search, struct label *label, double best)
{
    struct box box = label->box;
    struct box target = label->target;
    double apart = between(box, target);
    double off_x = fabs(box.left + box.right - target.left - target.right) / 2;
    double off_y = fabs(box.top + box.bottom - target.top - target.bottom) / 2;
    double score = 4 * apart + 0.25 * fmin(off_x, off_y) + 0.05 * (off_x + off_y);
    if (score >= best)
        return score;
    for (size_t i = 0; i < search->faint->count; i++)
        score += boxes_meet(box, search->faint->items[i]) ? ON_FAINT : 0;
    label->leader = apart > NEAR_BY;
    if (label->leader && score + LEADER < best)
        score += LEADER +
                 RUNS_OVER * lead(search, label,
                                  best < NO_PLACE ? (int)((best - score) / RUNS_OVER) + 1 : 1000);
    else if (label->leader)
        score += LEADER;
    return score;
}

/* Tries every place of one form beside one target, up to a reach; keeps what is disliked least. */
static void try_places(const struct search *search, const struct label_wish *wish,
                       const struct label_form *form, struct box target, double reach, int step,
                       double *best, struct label *kept)
{
    struct label label = *wish->label;
    int width = (int)ceil(form->width), height = (int)ceil(form->height);
    label.lines = form->name;
    label.data_lines = form->data;
    label.target = target;
    for (int y = (int)(target.top - height - reach); y <= target.bottom + reach; y += step)
        for (int x = (int)(target.left - width - reach); x <= target.right + reach; x += step) {
            if (!is_free(search, x, y, width, height))
                continue;
            double left = x + (width - form->width) / 2;
            label.box = (struct box){left, y, left + form->width, y + form->height};
            double score = form->dislike + dislike(search, &label, *best - form->dislike);
            if (score < *best) {
                *best = score;
                *kept = label;
            }
        }
}

static bool place(const struct search *search, const struct label_wish *wish)
{
    static const double reaches[] = {6, 25, WIDE};
    double best = NO_PLACE;
    struct label kept = *wish->label;
    /* A place within reach that is disliked less than any beyond it could be is the best there
     * is; most labels find one close by. */
    for (int r = 0; r < 3 && best > 4 * (r > 0 ? reaches[r - 1] : 0); r++)
        for (int f = 0; f < wish->form_count; f++)
            for (int t = 0; t < wish->target_count; t++)
                try_places(search, wish, &wish->forms[f], wish->targets[t], reaches[r], 1 + r,
                           &best, &kept);
    *wish->label = kept;
    return best < NO_PLACE;
}

/* How many free places a label has close by; what has few is placed first. */
static int free_places(const struct search *search, const struct label_wish *wish)
{
    int count = 0;
    const struct label_form *form = &wish->forms[wish->form_count - 1];
    int width = (int)ceil(form->width), height = (int)ceil(form->height);
    for (int t = 0; t < wish->target_count; t++) {
        struct box target = wish->targets[t];
        for (int y = (int)target.top - height - 3; y <= target.bottom + 3; y++)
            for (int x = (int)target.left - width - 3; x <= target.right + 3; x++)
                count += is_free(search, x, y, width, height);
    }
    return count;
}

struct turn {
    int wish;
    int keys[4];
};

static int compare_turns(const void *a, const void *b)
{
    const struct turn *one = a, *other = b;
    for (int i = 0; i < 4; i++)
        if (one->keys[i] != other->keys[i])
            return one->keys[i] < other->keys[i] ? -1 : 1;
    return one->wish - other->wish;
}

/* Places all labels in turn, each first among those before it, then among all. */
static void place_all(struct search *search, struct arena *arena, const struct turn *turns)
{
    for (int i = 0; i < search->count; i++)
        search->placed[i] = false;
    for (int round = 0; round < ROUNDS; round++)
        for (int t = 0; t < search->count; t++) {
            int i = turns[t].wish;
            sum_up(search, arena, i);
            search->placed[i] = place(search, &search->wishes[i]);
        }
}

/* Whether a label found no place, or none but one with a leader over other things. */
static bool is_bad(struct search *search, struct arena *arena, int wish)
{
    const struct label *label = search->wishes[wish].label;
    if (!search->placed[wish])
        return true;
    if (!label->leader)
        return false;
    sum_up(search, arena, wish);
    return runs_over(search, label, 1) > 0;
}

/* Moves labels that stand badly to the front; gives how many, those without a place many times. */
static int put_first(struct search *search, struct arena *arena, struct turn *turns)
{
    int bad = 0, weight = 0;
    for (int t = 0; t < search->count; t++) {
        struct turn turn = turns[t];
        if (!is_bad(search, arena, turn.wish))
            continue;
        weight += search->placed[turn.wish] ? 1 : 1000;
        memmove(&turns[bad + 1], &turns[bad], (size_t)(t - bad) * sizeof *turns);
        turns[bad++] = turn;
    }
    return weight;
}

static void keep(const struct search *search, struct label *kept, bool *placed)
{
    for (int i = 0; i < search->count; i++) {
        kept[i] = *search->wishes[i].label;
        placed[i] = search->placed[i];
    }
}

bool spots_find(const struct layout *layout, struct label_wish *wishes, int count,
                const struct box_list *taken, const struct box_list *faint, int *without)
{
    struct arena *arena = layout->arena;
    size_t room = (size_t)count + 1;
    struct search search = {taken,
                            faint,
                            wishes,
                            count,
                            ARENA_ARRAY(arena, room, bool),
                            arena_new_array(arena, HIGH + 1, sizeof *search.sum),
                            {0}};
    struct turn *turns = ARENA_ARRAY(arena, room, struct turn);
    struct label *kept = ARENA_ARRAY(arena, room, struct label);
    bool *placed = ARENA_ARRAY(arena, room, bool);
    sum_up(&search, arena, -1);
    for (int i = 0; i < count; i++) {
        struct point at = middle_of(wishes[i].targets[0]);
        turns[i] = (struct turn){i,
                                 {free_places(&search, &wishes[i]), (int)(at.y * 10),
                                  (int)(at.x * 10), (int)(-10 * wishes[i].forms[0].width)}};
    }
    qsort(turns, (size_t)count, sizeof *turns, compare_turns);
    int least = INT_MAX;
    for (int tries = 0; tries < TRIES && least > 0 && tries * count < MOST_PLACED; tries++) {
        place_all(&search, arena, turns);
        int bad = put_first(&search, arena, turns);
        if (bad < least)
            keep(&search, kept, placed);
        least = bad < least ? bad : least;
    }
    bool all = true;
    for (int i = 0; i < count; i++) {
        *wishes[i].label = kept[i];
        if (!placed[i])
            *without = i;
        all = all && placed[i];
    }
    return all;
}
