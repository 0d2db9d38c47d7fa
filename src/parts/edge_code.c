#include "parts/edge_code.h"

double edge_code_friction(enum edge_code code)
{
    switch (code) {
    case EDGE_C:
        return 0.10;
    case EDGE_D:
        return 0.20;
    case EDGE_E:
        return 0.30;
    case EDGE_F:
        return 0.40;
    case EDGE_G:
        return 0.50;
    case EDGE_H:
        return 0.60;
    case EDGE_NOT_SAID:
        break;
    }
    return 0.38;
}
