#include "advice/job/plan_tables.h"

#include <math.h>
#include <stddef.h>
#include <string.h>

#include "advice/figures/part_bore.h"

static int rank_of(const struct part *part)
{
    return part->kind == KIND_PIPE ? 0 : part->kind == KIND_HOSE ? 1 : 2;
}

bool plan_screws_in(const struct system *system, int one, int other)
{
    return rank_of(&system->parts[one]) < rank_of(&system->parts[other]);
}

static void give_letter(char letter[static 4], int number)
{
    static const char letters[] = "ABCDEFGHJKLMNPQRSTUVWXYZ";
    const int base = (int)sizeof letters - 1;
    size_t used = 0;
    if (number >= base) {
        letter[used++] = letters[(number / base - 1) % base];
    }
    letter[used++] = letters[number % base];
    letter[used] = '\0';
}

static struct plan_joint *joint_for(const struct system *system, struct plan *plan,
                                    const struct step *step)
{
    for (int i = 0; i < plan->joint_count; i++) {
        if (plan->joints[i].joint == step->joint) {
            return &plan->joints[i];
        }
    }
    struct plan_joint *joint = &plan->joints[plan->joint_count];
    bool turned = plan_screws_in(system, step->other, step->part);
    *joint = (struct plan_joint){.joint = step->joint,
                                 .part = turned ? step->other : step->part,
                                 .at = turned ? step->part : step->other,
                                 .undo = -1,
                                 .clip = -1,
                                 .tighten = -1,
                                 .least = {NAN},
                                 .most = {NAN}};
    give_letter(joint->letter, plan->joint_count++);
    return joint;
}

static void take_joint(const struct system *system, struct plan *plan, int at)
{
    const struct step *step = &plan->steps.items[at];
    struct plan_joint *joint = joint_for(system, plan, step);
    if (step->row->phase == PHASE_APART) {
        joint->undo = at;
        joint->plugged = step->plug != NULL;
    } else if (step->row == step_row_of(STEP_CLOSE_HOSE_CLIP)) {
        joint->clip = at;
    } else {
        joint->tighten = at;
        joint->least = step->torque;
        joint->most = step->torque_most;
    }
}

static struct plan_part *part_for(const struct system *system, struct plan *plan, int index)
{
    for (int i = 0; i < plan->part_count; i++) {
        if (plan->parts[i].part == index) {
            return &plan->parts[i];
        }
    }
    const struct part *part = &system->parts[index];
    const struct system *before = system->before != NULL ? system->before : system;
    bool bored = part_is_cylinder(part);
    struct plan_part *row = &plan->parts[plan->part_count++];
    *row = (struct plan_part){.part = index,
                              .old_bore = {bored ? part_bore(&before->parts[index]).m : NAN},
                              .new_bore = {bored ? part_bore(part).m : NAN},
                              .off = -1,
                              .measure = -1,
                              .fill = -1,
                              .fit = -1,
                              .nipple = -1};
    return row;
}

/* The box of a part's row that a step ticks; NULL: it is about no part's row. */
static int *box_of(struct plan_part *row, enum step_id id)
{
    switch (id) {
    case STEP_OPEN_OFF_SERVO:
    case STEP_OPEN_TAKE_OFF:
    case STEP_OPEN_TAKE_OFF_PLAIN:
        return &row->off;
    case STEP_OPEN_MEASURE:
        return &row->measure;
    case STEP_BENCH_MASTER:
    case STEP_BENCH_MASTER_PLAIN:
    case STEP_BENCH_SLAVE:
        return &row->fill;
    case STEP_CLOSE_PART:
    case STEP_CLOSE_CYLINDER:
    case STEP_CLOSE_MASTER:
    case STEP_CLOSE_PLAIN:
    case STEP_CLOSE_HOSE:
    case STEP_CLOSE_PIPE:
        return &row->fit;
    default:
        return NULL;
    }
}

static void take_part(const struct system *system, struct plan *plan, int at)
{
    const struct step *step = &plan->steps.items[at];
    struct plan_part none;
    if (step->part < 0 || box_of(&none, step_id_of(step->row)) == NULL) {
        return;
    }
    int *box = box_of(part_for(system, plan, step->part), step_id_of(step->row));
    *box = at;
}

/* Nipples are shut in one or two steps for all; a row of a part points at the one that names it. */
static void take_nipples(const struct system *system, struct plan *plan)
{
    for (size_t i = 0; i < plan->steps.count; i++) {
        const struct step *step = &plan->steps.items[i];
        for (int k = 0; step->row == step_row_of(STEP_FINISH_NIPPLES) && k < plan->part_count;
             k++) {
            struct plan_part *row = &plan->parts[k];
            if (strstr(step->text, system->parts[row->part].name) != NULL) {
                row->nipple = (int)i;
            }
        }
    }
}

void plan_fill_tables(const struct system *system, struct plan *plan)
{
    plan->joints =
        ARENA_ARRAY(plan->arena, (size_t)system->connection_count + 1, struct plan_joint);
    plan->parts = ARENA_ARRAY(plan->arena, (size_t)system->part_count + 1, struct plan_part);
    for (size_t i = 0; i < plan->steps.count; i++) {
        if (plan->steps.items[i].joint >= 0) {
            take_joint(system, plan, (int)i);
        } else {
            take_part(system, plan, (int)i);
        }
    }
    take_nipples(system, plan);
}
