#ifndef FIRMPEDAL_PARTS_JOINT_H
#define FIRMPEDAL_PARTS_JOINT_H

enum joint_type { JOINT_NOT_SAID, JOINT_TEE, JOINT_UNION, JOINT_BLOCK, JOINT_BRACKET };

struct joint {
    enum joint_type type; /* from the header's word */
    int blanked;          /* key "blanked": ports closed by a plug or a lamp switch; assumed 0 */
    int implied;          /* 1 when it sprang up where a pipe meets a hose in a run */
};

#endif
