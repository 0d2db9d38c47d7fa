#ifndef FIRMPEDAL_NETWORK_GRAPH_H
#define FIRMPEDAL_NETWORK_GRAPH_H

#include <stdbool.h>

#include "base/arena.h"
#include "base/message.h"
#include "network/system.h"

/* The plumbing as a graph. Vertices are the fluid chambers of parts other than pipes and hoses;
 * edges are pipes and hoses, direct joints (a valve screwed into an outlet), and the passages
 * inside valves and remote servos. Derived from a system, constant afterwards. */

struct vertex {
    int part;
    int chamber;
    int circuit;    /* index of the circuit that reaches it, -1: nobody feeds it */
    int parent;     /* vertex towards the master, -1 for the source */
    int edge;       /* edge to the parent, -1 */
    int depth;      /* edges from the source */
    double run;     /* m of pipe and hose from the source; unknown lengths count as 0 */
    bool run_known; /* whether all lengths on the way are known */
};

enum edge_kind { EDGE_CARRIER, EDGE_DIRECT, EDGE_PASSAGE };
struct edge {
    int a, b; /* vertices; a passage leads from in (a) to out (b) */
    enum edge_kind kind;
    int part; /* the pipe or hose, or the valve or servo of a passage; -1 for direct */
    int circuit;
    bool in_tree;       /* false: it closes a loop */
    struct place place; /* of the carrier, or of the connection */
};

/* What one master chamber reaches with fluid at rest: through pipes, hoses, joints, open valves
 * and remote servos. */
struct circuit {
    int master;  /* part */
    int chamber; /* 0 single or primary, 1 secondary */
    int source;  /* vertex */
    bool clutch; /* ends at a clutch slave and at no brake */
    bool looped;
    const char *name; /* from what it reaches: "front circuit", "left front and right rear
                         circuit", "clutch circuit", "brake circuit" when it is the only one */
    int *vertices;    /* parents before children; of equal depth in the order of
                         system_compare of the first brake that lies beyond each */
    int vertex_count;
};

struct network {
    struct vertex *vertices;
    int vertex_count;
    struct edge *edges;
    int edge_count;
    struct circuit *circuits;
    int circuit_count;
    /* edges at each vertex: edges_at[first_at[v]] .. edges_at[first_at[v + 1] - 1] */
    int *edges_at;
    int *first_at;
    /* the vertex of a part's chamber: vertex_of[first_vertex[part] + chamber]; -1 first_vertex for
     * parts without one */
    int *first_vertex;
};

/* Builds the graph, from the given arena. Circuits come with brakes first, the front before the
 * rear, clutches last; every master chamber has one, though it may reach nothing. Plumbing mistakes
 * (table: network/plumbing.def) are left as messages (NULL: not wanted) with plain words and the
 * place of the connection or part: a pipe with a loose end, a part nobody feeds, a joint
 * used once, two masters on one circuit, a loop (a warning: static figures hold), a nipple that no
 * circuit reaches, a master that feeds nothing. Walks with loops and bounded queues only. The
 * order of names and sections does not change the answer: ties go by axle, then side towards the
 * passenger first, then name. */
struct network *network_build(const struct system *system, struct arena *arena,
                              struct messages *messages);

int network_vertex(const struct network *network, int part, int chamber); /* -1 when none */

/* Inside volume of a pipe or hose, m3; NaN when its length is not known. */
double network_edge_volume(const struct system *system, const struct edge *edge);
/* Volume of pipes, hoses and chambers on the way from the master's outlet to a vertex, the
 * chamber of the vertex included but not the master's own. *complete: whether every length and
 * chamber is known; unknown ones count as 0. NaN when nobody feeds the vertex. */
double network_path_volume(const struct system *system, const struct network *network, int vertex,
                           bool *complete);
/* The last vertex that two vertices of one circuit have in common on the way from the master; -1
 * when they are not of one circuit. */
int network_common(const struct network *network, int a, int b);
/* Whether a vertex lies beyond another as seen from the master (or is it). */
bool network_beyond(const struct network *network, int vertex, int from);

#endif
