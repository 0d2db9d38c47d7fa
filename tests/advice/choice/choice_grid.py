"""The van's product of bores on whole grids, for the comparison of choice_bench.c.

Reads what that writes, a line a list; prints seconds and the sum of all that was worked out."""
import sys
import time

import numpy as np


def left_of(lists, state, count):
    """Left to the floor over front bores, left and right drums."""
    def spread(name, width, place):
        disc = lists["discs" + name].reshape(count, 3, width)[:, state, place]
        drum = lists["drums" + name].reshape(count, 3, width)[:, state, place]
        return disc[:, None, None] + drum[None, :, None] + drum[None, None, :]

    floor = lists["floor"][state] + spread("", 1, 0)
    past = floor
    for k in range(3):
        past = np.maximum(past, lists["bore"].reshape(3, 3)[state, k] + spread("_bore", 3, k))
    return np.where(past > 0, 0, -floor)


def foot_of(lists, wanted, disc, drums):
    sums = 2 * disc * lists["front"] + drums * lists["rear"]
    at = np.argmax(sums >= wanted, axis=-1)[..., None]
    before = np.maximum(at - 1, 0)
    below = np.take_along_axis(sums, before, -1)[..., 0]
    above = np.take_along_axis(sums, at, -1)[..., 0]
    low, high = lists["effort"][before[..., 0]], lists["effort"][at[..., 0]]
    with np.errstate(all="ignore"):
        foot = low + (wanted - below) / (above - below) * (high - low)
    foot = np.where(at[..., 0] == 0, 0, foot)
    return np.where(sums[..., -1] >= wanted, foot, 0)


def balance_of(lists, car, disc, drums, most):
    _, weight, rolling, rotating, share, chi, grip = car
    front, rear, slack = lists["front"], lists["rear"], rolling - grip
    z = ((2 * disc * front + drums * rear) / weight + rolling) / (1 + rotating)
    load, turning = share + chi * z, rotating * z / 2
    over = (2 * disc * front / weight + slack * load - turning,
            2 * most * rear / weight + slack * (1 - load) - turning)
    locks = (over[0] > 0) | (over[1] > 0)
    at = np.argmax(locks, axis=-1)[..., None]
    before = np.maximum(at - 1, 0)

    def ends(values):
        return (np.take_along_axis(values, before, -1)[..., 0],
                np.take_along_axis(values, at, -1)[..., 0])

    a, b, rate = ends(over[0]), ends(over[1]), ends(z)
    with np.errstate(all="ignore"):
        first = np.minimum(np.where(a[1] > 0, a[0] / (a[0] - a[1]), 1),
                           np.where(b[1] > 0, b[0] / (b[0] - b[1]), 1))
    load = share + chi * (rate[0] + first * (rate[1] - rate[0]))
    margin = ((a[0] + first * (a[1] - a[0])) / load -
              (b[0] + first * (b[1] - b[0])) / (1 - load)) / grip
    return np.where(locks[..., -1], margin, 0)


def main():
    lines = [line.split() for line in open(sys.argv[1], encoding="ascii")]
    read = [(words[0], np.array([float(word) for word in words[1:]])) for words in lines]
    car, disc, drum = (values for _, values in read[:3])
    masters = [dict(read[at:at + 9]) for at in range(3, len(read), 9)]
    count, total = len(disc), 0.0
    since = time.process_time()
    discs = disc[:, None, None, None]
    drums = drum[None, :, None, None] + drum[None, None, :, None]
    most = np.maximum(drum[None, :, None, None], drum[None, None, :, None])
    for lists in masters:
        lost = np.minimum(left_of(lists, 1, count), left_of(lists, 2, count))
        total += (np.sum(foot_of(lists, car[0], discs, drums)) + np.sum(left_of(lists, 0, count)) +
                  np.sum(lost) + np.sum(balance_of(lists, car, discs, drums, most)))
    print(time.process_time() - since, repr(float(total)))


main()
