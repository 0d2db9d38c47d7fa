#include "report/diagram/spots.h"

#include <limits.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "base/list.h"
#include "report/diagram/labels.h"
#include "report/diagram/overlaps.h"

/* Cells of the paper, 1 mm wide. */
enum { ROUNDS = 2, TRIES = 6, MOST_PLACED = 150, MOST_LED = 150 };
/* What a label without a place weighs against those whose lines cross something. */
enum { MISSING = 1000 };
#define CLEAR     0.5  /* mm between a label and anything else, and up to a cell more */
#define BESIDE    1.2  /* between two names side by side, which must not read as one */
#define NEAR_BY   2.6  /* further away a thin line leads to it */
#define AT_JOINT  1.6  /* and to a letter's joint */
#define LEADER    6.0  /* how much a leader is disliked */
#define RUNS_OVER 500. /* and one that runs over something */
#define ON_FAINT  3.0  /* a label over a faint line */
#define NO_PLACE  1e9

/* A place that a label may take: the left upper corner, cells; in what form, beside what. */
struct candidate {
    int x, y, form, target;
    double score; /* how much it is disliked */
};
struct candidate_list {
    struct candidate *items;
    size_t count;
    size_t capacity;
};
struct best {
    struct label label;
    double score;
};

struct search {
    struct arena *arena;
    const struct box_list *taken, *faint;
    struct label_wish *wishes;
    int count;
    bool *placed;              /* by wish */
    int wide, high;            /* cells */
    int *sum;                  /* taken cells above and to the left of a corner, row by row */
    struct candidate_list led; /* places with a leader */
    struct box_list hard;      /* what leaders may not cross: all taken, and placed labels */
    struct box_list about;     /* those about the leader in hand */
    const struct label *own;   /* the label in hand */
};

static int within(int value, int most)
{
    return value < 0 ? 0 : value > most ? most : value;
}

static int *sum_at(const struct search *search, int x, int y)
{
    return &search->sum[y * (search->wide + 1) + x];
}

static void take_cells(struct search *search, struct box box)
{
    int left = within((int)floor(box.left), search->wide);
    int right = within((int)ceil(box.right), search->wide);
    int top = within((int)floor(box.top), search->high);
    int bottom = within((int)ceil(box.bottom), search->high);
    for (int y = top; y < bottom; y++)
        for (int x = left; x < right; x++)
            *sum_at(search, x + 1, y + 1) = 1;
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
static void sum_up(struct search *search, int leave_out)
{
    size_t cells = (size_t)(search->wide + 1) * (size_t)(search->high + 1);
    memset(search->sum, 0, sizeof *search->sum * cells);
    for (size_t i = 0; i < search->taken->count; i++)
        take_cells(search, box_wider(search->taken->items[i], CLEAR));
    search->hard.count = 0;
    for (size_t i = 0; i < search->taken->count; i++)
        *LIST_ADD(search->arena, &search->hard) = search->taken->items[i];
    for (int i = 0; i < search->count; i++) {
        if (i == leave_out || !search->placed[i])
            continue;
        struct box box = search->wishes[i].label->box;
        *LIST_ADD(search->arena, &search->hard) = box;
        box.left -= BESIDE;
        box.right += BESIDE;
        take_cells(search, box_wider(box, CLEAR));
        take_leader(search, search->wishes[i].label);
    }
    for (int y = 1; y <= search->high; y++)
        for (int x = 1; x <= search->wide; x++)
            *sum_at(search, x, y) += *sum_at(search, x, y - 1) + *sum_at(search, x - 1, y) -
                                     *sum_at(search, x - 1, y - 1);
}

static bool is_free(const struct search *search, int x, int y, int width, int height)
{
    if (x < 0 || y < 0 || x + width > search->wide || y + height > search->high)
        return false;
    return *sum_at(search, x + width, y + height) - *sum_at(search, x + width, y) -
               *sum_at(search, x, y + height) + *sum_at(search, x, y) ==
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

/* What a leader between a label and its target could run over: the label's own words and all that
 * lies about, but for what it points at, which lies within its target. */
static void look_about(struct search *search, const struct label *label)
{
    struct box target = box_wider(label->target, 0.05);
    struct point corners[] = {{label->box.left, label->box.top},
                              {label->box.right, label->box.bottom},
                              {target.left, target.top},
                              {target.right, target.bottom}};
    struct box about = labels_box_of(corners, 4, 1);
    search->about.count = 0;
    *LIST_ADD(search->arena, &search->about) = label->box;
    for (size_t i = 0; i < search->hard.count; i++) {
        struct box box = search->hard.items[i];
        bool inside = box.left >= target.left && box.right <= target.right &&
                      box.top >= target.top && box.bottom <= target.bottom;
        if (!inside && boxes_meet(box, about))
            *LIST_ADD(search->arena, &search->about) = box_wider(box, 0.15);
    }
}

/* How many of the things about a leader runs over, counted up to `most`. */
static int runs_over(const struct search *search, const struct label *label, int most)
{
    struct point a = label->leader_from, b = label->leader_to;
    int over = 0;
    struct box line = labels_box_of((struct point[]){a, b}, 2, 0);
    for (size_t i = 0; i < search->about.count && over < most; i++) {
        struct box box = search->about.items[i];
        over += box.left <= line.right && box.right >= line.left && box.top <= line.bottom &&
                box.bottom >= line.top && overlaps_line_meets_box(a, b, box);
    }
    for (int i = 0; i < search->count && over < most; i++) {
        const struct label *other = search->wishes[i].label;
        if (search->placed[i] && other != search->own && other->leader)
            over += lines_cross(a, b, other->leader_from, other->leader_to);
    }
    return over;
}

/* The best of a few leaders from the label's sides to its target. */
static int lead(struct search *search, struct label *label, int most)
{
    look_about(search, label);
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

/* Beside and below read better than above; straight beside better than at a corner. What a leader
 * adds is not in it. */
static double dislike(const struct search *search, const struct label *label, double best)
{
    struct box box = label->box;
    struct box target = label->target;
    double off_x = fabs(box.left + box.right - target.left - target.right) / 2;
    double off_y = fabs(box.top + box.bottom - target.top - target.bottom) / 2;
    double score = 4 * between(box, target) + 0.25 * fmin(off_x, off_y) + 0.05 * (off_x + off_y);
    for (size_t i = 0; score < best && i < search->faint->count; i++)
        score += boxes_meet(box, search->faint->items[i]) ? ON_FAINT : 0;
    return score;
}

static struct label label_at(const struct label_wish *wish, const struct candidate *candidate)
{
    const struct label_form *form = &wish->forms[candidate->form];
    struct label label = *wish->label;
    double left = candidate->x + (ceil(form->width) - form->width) / 2;
    label.lines = form->name;
    label.data_lines = form->data;
    label.target = wish->targets[candidate->target];
    label.box = (struct box){left, candidate->y, left + form->width, candidate->y + form->height};
    label.leader = between(label.box, label.target) > (label.letter ? AT_JOINT : NEAR_BY);
    return label;
}

/* Looks at every place of one form beside one target, up to a reach: keeps the one that is disliked
 * least among those without a leader, and lists those with one that may be better. */
static void look_round(struct search *search, const struct label_wish *wish,
                       struct candidate candidate, double reach, int step, struct best *best)
{
    const struct label_form *form = &wish->forms[candidate.form];
    struct box target = wish->targets[candidate.target];
    int width = (int)ceil(form->width), height = (int)ceil(form->height);
    int left = (int)(target.left - width - reach);
    for (int y = (int)(target.top - height - reach); y <= target.bottom + reach; y += step)
        for (int x = left; x <= target.right + reach; x += step) {
            if (!is_free(search, x, y, width, height))
                continue;
            candidate.x = x;
            candidate.y = y;
            struct label label = label_at(wish, &candidate);
            candidate.score = form->dislike + (label.leader ? LEADER : 0);
            candidate.score += dislike(search, &label, best->score - candidate.score);
            if (candidate.score >= best->score)
                continue;
            if (label.leader)
                *LIST_ADD(search->arena, &search->led) = candidate;
            else
                *best = (struct best){label, candidate.score};
        }
}

static int compare_candidates(const void *a, const void *b)
{
    const struct candidate *one = a, *other = b;
    if (one->score != other->score)
        return one->score < other->score ? -1 : 1;
    const int keys[] = {one->y - other->y, one->x - other->x, one->form - other->form,
                        one->target - other->target};
    for (int i = 0; i < 4; i++)
        if (keys[i] != 0)
            return keys[i];
    return 0;
}

/* The first of the listed places, from the least disliked on, whose leader crosses nothing; or the
 * one that crosses least of as many as are tried. */
static void try_leaders(struct search *search, const struct label_wish *wish, struct best *best)
{
    size_t count = search->led.count;
    if (count > 0)
        qsort(search->led.items, count, sizeof *search->led.items, compare_candidates);
    for (size_t i = 0; i < count && i < MOST_LED; i++) {
        const struct candidate *candidate = &search->led.items[i];
        if (candidate->score >= best->score)
            return;
        struct label label = label_at(wish, candidate);
        int most = best->score < NO_PLACE ? (int)((best->score - candidate->score) / RUNS_OVER) + 1
                                          : INT_MAX;
        double score = candidate->score + RUNS_OVER * lead(search, &label, most);
        if (score < best->score)
            *best = (struct best){label, score};
    }
}

static bool place(struct search *search, const struct label_wish *wish)
{
    const double reaches[] = {6, 25, search->wide};
    struct best best = {*wish->label, NO_PLACE};
    search->own = wish->label;
    /* A place within reach that is disliked less than any beyond it could be is the best there
     * is; most labels find one close by. */
    for (int r = 0; r < 3 && best.score > 4 * (r > 0 ? reaches[r - 1] : 0); r++) {
        search->led.count = 0;
        for (int f = 0; f < wish->form_count; f++)
            for (int t = 0; t < wish->target_count; t++)
                look_round(search, wish, (struct candidate){.form = f, .target = t}, reaches[r],
                           1 + r, &best);
        try_leaders(search, wish, &best);
    }
    *wish->label = best.label;
    return best.score < NO_PLACE;
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
    int keys[5];
};

static int compare_turns(const void *a, const void *b)
{
    const struct turn *one = a, *other = b;
    for (int i = 0; i < 5; i++)
        if (one->keys[i] != other->keys[i])
            return one->keys[i] < other->keys[i] ? -1 : 1;
    return one->wish - other->wish;
}

/* Places all labels in turn, each first among those before it, then among all. */
static void place_all(struct search *search, const struct turn *turns)
{
    for (int i = 0; i < search->count; i++)
        search->placed[i] = false;
    for (int round = 0; round < ROUNDS; round++)
        for (int t = 0; t < search->count; t++) {
            int i = turns[t].wish;
            sum_up(search, i);
            search->placed[i] = place(search, &search->wishes[i]);
        }
}

/* Whether a label found no place, or none but one with a leader over other things. */
static bool is_bad(struct search *search, int wish)
{
    const struct label *label = search->wishes[wish].label;
    if (!search->placed[wish])
        return true;
    if (!label->leader)
        return false;
    sum_up(search, wish);
    search->own = label;
    look_about(search, label);
    return runs_over(search, label, 1) > 0;
}

/* Moves labels that stand badly to the front; gives how many, those without a place many times. */
static int put_first(struct search *search, struct turn *turns)
{
    int bad = 0, weight = 0;
    for (int t = 0; t < search->count; t++) {
        struct turn turn = turns[t];
        if (!is_bad(search, turn.wish))
            continue;
        weight += search->placed[turn.wish] ? 1 : MISSING;
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

struct spots_missed spots_find(const struct layout *layout, struct label_wish *wishes, int count,
                               const struct box_list *taken, const struct box_list *faint)
{
    struct arena *arena = layout->arena;
    size_t room = (size_t)count + 1;
    struct search search = {.arena = arena,
                            .taken = taken,
                            .faint = faint,
                            .wishes = wishes,
                            .count = count,
                            .placed = ARENA_ARRAY(arena, room, bool),
                            .wide = (int)layout->width,
                            .high = (int)layout->height};
    search.sum = ARENA_ARRAY(arena, (size_t)(search.wide + 1) * (size_t)(search.high + 1), int);
    struct turn *turns = ARENA_ARRAY(arena, room, struct turn);
    struct label *kept = ARENA_ARRAY(arena, room, struct label);
    bool *placed = ARENA_ARRAY(arena, room, bool);
    sum_up(&search, -1);
    for (int i = 0; i < count; i++) {
        struct point at = middle_of(wishes[i].targets[0]);
        turns[i] = (struct turn){i,
                                 {wishes[i].label->letter == NULL, free_places(&search, &wishes[i]),
                                  (int)(at.y * 10), (int)(at.x * 10),
                                  (int)(-10 * wishes[i].forms[0].width)}};
    }
    qsort(turns, (size_t)count, sizeof *turns, compare_turns);
    int least = INT_MAX;
    for (int tries = 0; tries < TRIES && least > 0 && tries * count < MOST_PLACED; tries++) {
        place_all(&search, turns);
        int bad = put_first(&search, turns);
        if (bad < least)
            keep(&search, kept, placed);
        least = bad < least ? bad : least;
    }
    struct spots_missed missed = {-1, 0};
    for (int i = 0; i < count; i++) {
        *wishes[i].label = kept[i];
        search.placed[i] = placed[i];
    }
    for (int i = 0; i < count; i++) {
        wishes[i].label->crosses = least > 0 && is_bad(&search, i);
        missed.crossing += wishes[i].label->crosses;
        if (!placed[i])
            missed.without = i;
    }
    return missed;
}
