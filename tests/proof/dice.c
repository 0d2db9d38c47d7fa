#include "dice.h"

static uint64_t next(struct dice *dice)
{
    dice->state ^= dice->state >> 12;
    dice->state ^= dice->state << 25;
    dice->state ^= dice->state >> 27;
    return dice->state * UINT64_C(0x2545F4914F6CDD1D);
}

struct dice dice_start(uint64_t seed, uint64_t number)
{
    struct dice dice = {seed * UINT64_C(0x9E3779B97F4A7C15) + number + 1};
    dice.state ^= dice.state >> 31;
    dice.state *= UINT64_C(0xBF58476D1CE4E5B9);
    if (dice.state == 0)
        dice.state = 1;
    for (int i = 0; i < 16; i++)
        next(&dice);
    return dice;
}

double dice_share(struct dice *dice)
{
    return (double)(next(dice) >> 11) / 9007199254740992.0; /* 2 to the 53 */
}

double dice_between(struct dice *dice, double least, double most)
{
    return least + (most - least) * dice_share(dice);
}

int dice_pick(struct dice *dice, int count)
{
    return (int)(dice_share(dice) * count);
}

bool dice_happens(struct dice *dice, double share)
{
    return dice_share(dice) < share;
}
