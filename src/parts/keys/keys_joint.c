#include "parts/keys/rows.h"

/* clang-format off */

static const struct choice joint_types[] = {
    {"tee", "T, three way", JOINT_TEE, "three ports"},
    {"union", "coupling, joiner", JOINT_UNION, "two pipe ends"},
    {"block", "junction, distribution block, manifold", JOINT_BLOCK, "several ports in one piece"},
    {"bracket", NULL, JOINT_BRACKET, "where a pipe meets a hose"},
    {0}};

static const struct key rows[] = {
    {.name = "type", CHOICE_OF(as.joint.type), .choices = joint_types, PLAIN,
     .example = "tee", .help = "tee, union, block or bracket; said by its name already"},
    {.name = "blanked", .others = "blanked ports, plugged", COUNT(as.joint.blanked),
     WITHIN(0, 8), USUALLY(0, 3), ASSUME(0, PRACTICE),
     .example = "1", .help = "ports closed by a plug or a lamp switch: they can hold air", MEASURED},
    ROW_ON, ROW_HEIGHT, ROWS_CHAMBER(NIPPLES_NONE, "0.2 mL"), ROW_RIGID, ROW_NOTE};

const struct key *keys_joint(size_t *count)
{
    return ROWS_OF(rows, count);
}
