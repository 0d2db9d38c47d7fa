#include "advice/job/opening_joints.h"

#include <math.h>
#include <stddef.h>
#include <string.h>
#include <strings.h>

static const struct part *part_at(const struct opening *opening, int part)
{
    return &opening->system->parts[part];
}

static struct step *add_for(struct opening *opening, enum step_id id, int part, int other)
{
    struct step *step = steps_add(opening->steps, id);
    step->part = part;
    step->other = other;
    step->joint = opening->joint;
    step->text = part_at(opening, other)->name;
    return step;
}

/* The part at the other end of a connection, -1 when it does not touch this part. */
static int other_end(const struct connection *connection, int part)
{
    return connection->a.part == part   ? connection->b.part
           : connection->b.part == part ? connection->a.part
                                        : -1;
}

/* A union: the two parts that are screwed together there. A bracket, or a plain meeting of pipe and
 * hose, only lies between (-1: nothing does), and its second connection is the same union (-1). */
struct meeting {
    int one, other;
    int between;
    int second;
};

static bool is_see_through(const struct part *part)
{
    return part->kind == KIND_JOINT &&
           (part->as.joint.type == JOINT_BRACKET || part->as.joint.implied == 1);
}

/* The other connection of a part, and what it leads to; -1: there is none. */
static int beyond(const struct opening *opening, int part, int connection, int *leads_to)
{
    int found = -1;
    for (int c = 0; c < opening->system->connection_count; c++) {
        int to = c == connection ? -1 : other_end(&opening->system->connections[c], part);
        if (to >= 0) {
            *leads_to = to;
            found = c;
        }
    }
    return found;
}

static struct meeting meeting_at(const struct opening *opening, int connection, int part)
{
    int other = other_end(&opening->system->connections[connection], part);
    struct meeting meeting = {part, other, -1, -1};
    if (is_see_through(part_at(opening, part))) {
        meeting.between = part;
        meeting.second = beyond(opening, part, connection, &meeting.one);
    } else if (is_see_through(part_at(opening, other))) {
        meeting.between = other;
        meeting.second = beyond(opening, other, connection, &meeting.other);
    }
    return meeting;
}

/* The step of one union; part is the one in hand. */
static void undo_union(struct opening *opening, int part, int other)
{
    const struct part *one = part_at(opening, part), *two = part_at(opening, other);
    bool hose = one->kind == KIND_HOSE || two->kind == KIND_HOSE;
    bool is_hose = one->kind == KIND_HOSE;
    struct step *step;
    if (hose && (one->kind == KIND_PIPE || two->kind == KIND_PIPE)) {
        step = add_for(opening, STEP_OPEN_HOSE_NUT, is_hose ? part : other, is_hose ? other : part);
    } else if (hose) {
        step = add_for(opening, STEP_OPEN_HOSE_END, is_hose ? part : other, is_hose ? other : part);
    } else if (one->kind == KIND_PIPE) {
        step = add_for(opening, STEP_OPEN_PIPE_NUT, other, part);
    } else if (two->kind == KIND_PIPE) {
        step = add_for(opening, STEP_OPEN_PIPE_NUT, part, other);
    } else {
        step = add_for(opening, STEP_OPEN_DIRECT, part, other);
    }
    step->plug = opening->in_hand[other] ? NULL : two->name;
}

/* The torque of a pipe's nuts; NULL where no source has one for its size or thread. */
static const char *pipe_nut(const struct pipe *pipe)
{
    const char *thread = pipe->thread == NULL ? "M10" : pipe->thread;
    bool small = strncasecmp(thread, "M10", 3) == 0 || strncmp(thread, "3/8", 3) == 0;
    if (!small || !(fabs(pipe->size.m - 4.75e-3) < 0.1e-3)) {
        return NULL;
    }
    return pipe->material == PIPE_COPPER ? "pipe-nut-copper" : "pipe-nut";
}

static void close_union(struct opening *opening, int part, int other)
{
    const struct part *one = part_at(opening, part), *two = part_at(opening, other);
    bool pipe = one->kind == KIND_PIPE || two->kind == KIND_PIPE;
    bool one_hose = one->kind == KIND_HOSE, hose = one_hose || two->kind == KIND_HOSE;
    if (hose && !pipe) {
        int hose_part = one_hose ? part : other, end = one_hose ? other : part;
        if (part_at(opening, end)->kind == KIND_DISC) {
            step_torque(add_for(opening, STEP_CLOSE_HOSE_IN_CALIPER, hose_part, end), "banjo");
        } else {
            add_for(opening, STEP_CLOSE_HOSE_END, hose_part, end);
        }
    } else if (pipe) {
        bool one_pipe = one->kind == KIND_PIPE;
        if (hose) {
            int hose_part = one_hose ? part : other;
            add_for(opening, STEP_CLOSE_HOSE_CLIP, hose_part, hose_part);
        }
        int at = one_pipe ? other : part, of = one_pipe ? part : other;
        const char *torque = pipe_nut(&part_at(opening, of)->as.pipe);
        if (torque == NULL) {
            add_for(opening, STEP_CLOSE_PIPE_NUT_PLAIN, at, of);
        } else {
            step_torque(add_for(opening, STEP_CLOSE_PIPE_NUT, at, of), torque);
        }
    } else {
        add_for(opening, STEP_CLOSE_DIRECT, part, other);
    }
}

/* A union is done up when all of its parts are on. */
static bool waits_for(const struct opening *opening, int part)
{
    return part >= 0 && opening->in_hand[part] && !opening->fitted[part];
}

static bool waits(const struct opening *opening, const struct meeting *meeting)
{
    return waits_for(opening, meeting->one) || waits_for(opening, meeting->other) ||
           waits_for(opening, meeting->between);
}

static bool is_pipe_nut(const struct opening *opening, const struct meeting *meeting, int part)
{
    int other = meeting->one == part ? meeting->other : meeting->one;
    return part_at(opening, other)->kind == KIND_PIPE;
}

/* Acts on each union of a part that is not done yet. A hose that is not in hand but meets the part
 * is taken at both its ends, for it cannot be turned while its pipe holds it. */
static void for_unions(struct opening *opening, int part, bool *done, bool pipes,
                       void (*act)(struct opening *, int, int))
{
    for (int c = 0; c < opening->system->connection_count; c++) {
        if (done[c] || other_end(&opening->system->connections[c], part) < 0) {
            continue;
        }
        struct meeting meeting = meeting_at(opening, c, part);
        if (is_pipe_nut(opening, &meeting, part) != pipes ||
            (done == opening->closed && waits(opening, &meeting))) {
            continue;
        }
        done[c] = true;
        opening->joint = c;
        if (meeting.second >= 0) {
            done[meeting.second] = true;
            opening->joint = c < meeting.second ? c : meeting.second;
        }
        act(opening, meeting.one, meeting.other);
    }
}

void opening_undo_carrier(struct opening *opening, int part)
{
    for_unions(opening, part, opening->undone, true, undo_union);
    for_unions(opening, part, opening->undone, false, undo_union);
}

static bool is_steered(enum mount mount)
{
    return mount == MOUNT_FRONT_LEFT_WHEEL || mount == MOUNT_FRONT_RIGHT_WHEEL ||
           mount == MOUNT_HANDLEBAR || mount == MOUNT_FORK;
}

/* Steering for hoses of steered wheels, springs for those of axles, the engine for the clutch's. */
static void move_hose(struct opening *opening, int hose)
{
    enum mount from = MOUNT_UNKNOWN, to = MOUNT_UNKNOWN;
    for (int i = 0; i < opening->gaps->count; i++) {
        if (opening->gaps->items[i].hose == hose) {
            from = opening->gaps->items[i].from;
            to = opening->gaps->items[i].to;
        }
    }
    enum step_id id = is_steered(from) || is_steered(to)           ? STEP_CLOSE_HOSE_STEERED
                      : from == MOUNT_ENGINE || to == MOUNT_ENGINE ? STEP_CLOSE_HOSE_ROCKED
                                                                   : STEP_CLOSE_HOSE_SPRUNG;
    struct step *step = steps_add(opening->steps, id);
    step->part = hose;
    step->text = to == MOUNT_UNKNOWN ? "what it hangs on" : mount_words(to);
}

/* A hose goes into its cylinder or caliper first, the pipe's nut comes last: it must not twist. It
 * is moved when all is tight. */
void opening_close_carrier(struct opening *opening, int part)
{
    bool hose = part_at(opening, part)->kind == KIND_HOSE;
    size_t before = opening->steps->count;
    for_unions(opening, part, opening->closed, false, close_union);
    for_unions(opening, part, opening->closed, true, close_union);
    if (hose && opening->steps->count > before) {
        move_hose(opening, part);
    }
}

static void for_hoses_at(struct opening *opening, int part, const bool *done,
                         void (*act)(struct opening *, int))
{
    for (int c = 0; c < opening->system->connection_count; c++) {
        int other = other_end(&opening->system->connections[c], part);
        if (other >= 0 && !done[c] && part_at(opening, other)->kind == KIND_HOSE &&
            (done == opening->undone || !opening->in_hand[other])) {
            act(opening, other);
        }
    }
}

void opening_undo_joints(struct opening *opening, int part)
{
    for_hoses_at(opening, part, opening->undone, opening_undo_carrier);
    for_unions(opening, part, opening->undone, true, undo_union);
    for_unions(opening, part, opening->undone, false, undo_union);
}

void opening_close_joints(struct opening *opening, int part)
{
    for_hoses_at(opening, part, opening->closed, opening_close_carrier);
    for_unions(opening, part, opening->closed, true, close_union);
    for_unions(opening, part, opening->closed, false, close_union);
}
