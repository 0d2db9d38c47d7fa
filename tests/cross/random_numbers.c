#include "cross/random_numbers.h"

static uint64_t next(struct random *random)
{
    uint64_t z = random->state += 0x9e3779b97f4a7c15u;
    z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9u;
    z = (z ^ (z >> 27)) * 0x94d049bb133111ebu;
    return z ^ (z >> 31);
}

double random_between(struct random *random, double from, double to)
{
    return from + (to - from) * ((double)(next(random) >> 11) / 9007199254740992.0);
}

int random_of(struct random *random, int count)
{
    return (int)(next(random) >> 33) % count;
}

bool random_chance(struct random *random, double chance)
{
    return random_between(random, 0, 1) < chance;
}
