#ifndef FIRMPEDAL_PARTS_EDGE_CODE_H
#define FIRMPEDAL_PARTS_EDGE_CODE_H

/* The two letters on the edge of a pad or lining: friction when warm (93 to 204 degC), then hot. */
enum edge_code {
    EDGE_NOT_SAID,
    EDGE_C, /* up to 0.15 */
    EDGE_D, /* over 0.15 to 0.25 */
    EDGE_E, /* over 0.25 to 0.35 */
    EDGE_F, /* over 0.35 to 0.45 */
    EDGE_G, /* over 0.45 to 0.55 */
    EDGE_H  /* over 0.55 */
};

/* Friction that a first letter stands for: the middle of its range, of H 0.60; where none is said
 * 0.38 (most pads 0.35 to 0.42: an encyclopaedia, quoted; linings from memory). The code does not
 * predict what a brake does, so it serves only where nothing better is known. Source: SAE
 * J866:2019, table 1 (quoted). Checked by tests/parts/test_edge_code.c */
double edge_code_friction(enum edge_code code);

#endif
