#include "report/diagram/letters.h"

#include <math.h>

#include "report/diagram/labels.h"

#define AT_END  2.5 /* mm of a pipe that a letter at its end may stand beside */
#define AT_MARK 1.5 /* around the mark of a joint on a way */

/* The part where a piece of a chain begins (end 0) or ends (end 1). */
static int part_at(const struct layout *layout, const struct chain *chain, int piece, int end)
{
    if (piece + end == 0)
        return layout->symbols[chain->from].part;
    if (piece + end == chain->edge_count)
        return layout->symbols[chain->to].part;
    return chain->joints[piece + end - 1];
}

static struct box end_box(const struct piece *piece, int end)
{
    struct point at = piece->points[end == 0 ? 0 : piece->count - 1];
    struct point next = piece->points[end == 0 ? 1 : piece->count - 2];
    double whole = hypot(next.x - at.x, next.y - at.y);
    double part = whole > AT_END ? AT_END / whole : 1;
    struct point inner = {at.x + (next.x - at.x) * part, at.y + (next.y - at.y) * part};
    return labels_box_of((struct point[]){at, inner}, 2, piece->hose ? HOSE_HALF : PIPE_HALF);
}

/* Whether a piece is, at that end, screwed to what the connection says. */
static bool is_here(const struct layout *layout, const struct chain *chain, int piece, int end,
                    const struct connection *connection)
{
    int own = chain->pieces[piece].part;
    int other = part_at(layout, chain, piece, end);
    if (own < 0)
        own = part_at(layout, chain, piece, 1 - end);
    return (connection->a.part == own && connection->b.part == other) ||
           (connection->b.part == own && connection->a.part == other);
}

static struct box target_of(const struct chain *chain, int piece, int end)
{
    int mark = piece + end - 1;
    if (mark >= 0 && mark + 1 < chain->edge_count)
        return labels_box_of(&chain->marks[mark].at, 1, AT_MARK);
    return end_box(&chain->pieces[piece], end);
}

bool letters_target(const struct layout *layout, int connection, struct box *target)
{
    const struct connection *c = &layout->system->connections[connection];
    for (int i = 0; i < layout->chain_count; i++) {
        const struct chain *chain = &layout->chains[i];
        for (int k = 0; chain->pieces && k < chain->edge_count; k++)
            for (int end = 0; end < 2; end++)
                if (is_here(layout, chain, k, end, c)) {
                    *target = target_of(chain, k, end);
                    return true;
                }
    }
    return false;
}
