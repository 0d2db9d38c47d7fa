#include "network/graph.h"

#include <math.h>

int network_vertex(const struct network *network, int part, int chamber)
{
    if (part < 0 || chamber < 0 || network->first_vertex[part] < 0)
        return -1;
    const int vertex = network->first_vertex[part] + chamber;
    if (vertex >= network->vertex_count || network->vertices[vertex].part != part)
        return -1;
    return vertex;
}

double network_edge_volume(const struct system *system, const struct edge *edge)
{
    if (edge->kind != EDGE_CARRIER)
        return 0;
    const struct part *part = &system->parts[edge->part];
    return part->kind == KIND_HOSE ? hose_volume(&part->as.hose).m3
                                   : pipe_volume(&part->as.pipe).m3;
}

static void add_known(double *sum, double volume, bool *complete)
{
    if (isnan(volume))
        *complete = false;
    else
        *sum += volume;
}

double network_path_volume(const struct system *system, const struct network *network, int vertex,
                           bool *complete)
{
    *complete = false;
    if (vertex < 0 || network->vertices[vertex].circuit < 0)
        return NAN;
    *complete = true;
    double sum = 0;
    for (int v = vertex; network->vertices[v].parent >= 0; v = network->vertices[v].parent) {
        const struct vertex *at = &network->vertices[v];
        bool assumed = false;
        const struct part *part = &system->parts[at->part];
        add_known(&sum, part_chamber_volume(part, at->chamber, &assumed).m3, complete);
        add_known(&sum, network_edge_volume(system, &network->edges[at->edge]), complete);
    }
    return sum;
}

int network_common(const struct network *network, int a, int b)
{
    const struct vertex *vertices = network->vertices;
    if (vertices[a].circuit < 0 || vertices[a].circuit != vertices[b].circuit)
        return -1;
    while (a != b) {
        if (vertices[a].depth >= vertices[b].depth)
            a = vertices[a].parent;
        else
            b = vertices[b].parent;
    }
    return a;
}

bool network_beyond(const struct network *network, int vertex, int from)
{
    return network_common(network, vertex, from) == from;
}
