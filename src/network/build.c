#include "network/graph.h"

#include "network/circuit.h"
#include "network/faults.h"
#include "network/wiring.h"

struct network *network_build(const struct system *system, struct arena *arena,
                              struct messages *messages)
{
    const struct wiring wiring = wiring_lay(system, arena, messages);
    circuits_walk(system, wiring.network, arena);
    faults_report(system, &wiring, arena, messages);
    return wiring.network;
}
