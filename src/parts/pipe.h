#ifndef FIRMPEDAL_PARTS_PIPE_H
#define FIRMPEDAL_PARTS_PIPE_H

#include "base/date.h"
#include "parts/fittings.h"
#include "units/quantity.h"

enum pipe_material { PIPE_MATERIAL_NOT_SAID, PIPE_STEEL, PIPE_COPPER_NICKEL, PIPE_COPPER };

struct pipe {
    struct length length;        /* key "length"; from the run */
    struct length size;          /* "size": outside diameter, assumed 3/16 in */
    struct length wall;          /* "wall", assumed 0.028 in (0.7 mm for metric sizes is near) */
    struct length highest;       /* "highest": a point on its way above both of its ends, over the
                                    ground; not known: it has none */
    struct length lowest;        /* "lowest": likewise below both */
    enum pipe_material material; /* "material", assumed steel */
    struct date renewed;         /* "renewed" */
    const char *thread;          /* "thread" of its nuts: M10 x 1, 3/8-24 UNF ... */
    const char *flare;           /* "flare": double, bubble */
};

/* Inside diameter, m: size less twice the wall; NaN unless both are > 0 and leave a hole.
 * Checked by: tests/reference/tube_and_thread.c */
struct length pipe_inside(const struct pipe *pipe);
/* Volume inside a length of pipe, m3; NaN unless the length is >= 0 and the inside known.
 * Checked by: tests/reference/lame.c */
struct volume pipe_volume(const struct pipe *pipe);
/* Strains at the inner wall of a thick elastic pipe with closed ends, round it and along it.
 *
 *   inner, outer   radii, m, 0 < inner < outer
 *   modulus        Young's modulus, Pa, > 0
 *   poisson        0 to 0.5
 *   p              inner pressure, Pa gauge, >= 0
 *   gives          strain, -; NaN outside
 *
 * Source: Lame's stresses and Hooke's law; Boresi and Schmidt, Advanced Mechanics of Materials,
 * chapter 11.
 * Checked by: tests/reference/boresi_schmidt.c, tests/reference/lame.c
 */
double pipe_hoop_strain(struct length inner, struct length outer, struct pressure modulus,
                        double poisson, struct pressure p);
double pipe_axial_strain(struct length inner, struct length outer, struct pressure modulus,
                         double poisson, struct pressure p);

/* Volume by which a pipe grows inside under pressure: V (2 hoop + axial strain).
 *
 *   pipe    length m >= 0, size and wall m > 0; its material, steel when not said: steel 207 GPa
 *           and 0.29, copper-nickel 135 GPa and 0.34 (from memory)
 *   p       Pa gauge, >= 0
 *   gives   m3; NaN outside
 *
 * Checked by: tests/reference/lame.c
 */
struct volume pipe_swelling(const struct pipe *pipe, struct pressure p);

#endif
