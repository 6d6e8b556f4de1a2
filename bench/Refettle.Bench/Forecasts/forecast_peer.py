"""The same simulation as Refettle's forecast, written for NumPy: all futures at once, one activity after another.

Reads a project as JSON, plays futures in chunks, prints JSON: seconds, mean, deviation, chance of the date, quantiles.
Policy: serial generation in list order; each activity starts as early as lags, windows and resources let it, in a gap if it fits.
"""
import json
import sys
import time

import numpy as np

NEVER = 1 << 29


class Calendar:
    """Windows with a sentinel behind them. Missed windows keep their place with an end before their start."""

    def __init__(self, windows, spells):
        self.starts = np.array([w[0] for w in windows] + [NEVER], dtype=np.int64)
        self.ends = np.array([w[1] for w in windows] + [1 << 31], dtype=np.int64)
        self.spells = spells
        self.longest = max((w[1] - w[0] for w in windows), default=0)

    def miss(self, missed, futures):
        """Worked time before each window, with the missed ones worth nothing: one row for each future."""
        lengths = np.broadcast_to(self.ends - self.starts, (futures, len(self.ends))).copy()
        for window, spells in enumerate(self.spells):
            for spell in spells:
                if spell in missed:
                    lengths[missed[spell], window] = 0
        self.lengths = lengths
        self.before = np.zeros((futures, len(self.ends) + 1), dtype=np.int64)
        np.cumsum(lengths, axis=1, out=self.before[:, 1:])
        # One sorted row of all futures, so that a single search serves them all.
        self.step = np.int64(1) << 40
        self.flat = (self.before + np.arange(futures)[:, None] * self.step).ravel()
        self.width = self.before.shape[1]

    def worked(self, rows, times):
        """Time worked up to a time."""
        window = np.searchsorted(self.ends, times, side="right")
        inside = np.clip(times - self.starts[window], 0, None)
        return self.before[rows, window] + np.minimum(inside, self.lengths[rows, window])

    def pausing(self, rows, ready, duration):
        done = self.worked(rows, ready)
        shift = rows * self.step
        # The first moment at which more has been worked than at ready, and the first at which all is.
        first = np.searchsorted(self.flat, done + shift, side="right") - 1 - rows * self.width
        last = np.searchsorted(self.flat, done + duration + shift, side="left") - 1 - rows * self.width
        start = self.starts[first] + done - self.before[rows, first]
        return start, self.starts[last] + done + duration - self.before[rows, last]

    def unbroken(self, rows, ready, duration):
        window = np.searchsorted(self.ends, ready, side="right")
        needed = np.minimum(duration, self.longest)
        start = np.maximum(ready, self.starts[window])
        left = np.flatnonzero((self.lengths[rows, window] == 0) | (self.ends[window] - start < needed))
        while left.size:
            window[left] += 1
            start[left] = self.starts[window[left]]
            left = left[(self.lengths[rows[left], window[left]] == 0) | (self.lengths[rows[left], window[left]] < needed[left])]
        return start, start + duration

    def opening(self, rows, times):
        """The next moment that is open."""
        done = self.worked(rows, times)
        first = np.searchsorted(self.flat, done + rows * self.step, side="right") - 1 - rows * self.width
        return np.maximum(times, self.starts[first] + done - self.before[rows, first])


class Occupancy:
    """How much of a resource is taken: a row of stretches for each future, the last without end and free."""

    def __init__(self, capacity, futures):
        self.capacity = capacity
        self.begin = np.full((futures, 16), 1 << 31, dtype=np.int64)
        self.used = np.zeros((futures, 16), dtype=np.int16)
        self.begin[:, 0] = 0
        self.count = np.ones(futures, dtype=np.int64)

    def grow(self):
        futures, width = self.begin.shape
        self.begin = np.concatenate([self.begin, np.full((futures, width), 1 << 31, dtype=np.int64)], axis=1)
        self.used = np.concatenate([self.used, np.zeros((futures, width), dtype=np.int16)], axis=1)

    def conflict(self, rows, start, finish, units):
        """For each row the end of the first stretch in the way, or -1."""
        free = self.begin[rows, self.count[rows] - 1]
        answer = np.full(rows.size, -1, dtype=np.int64)
        check = np.flatnonzero(start < free)
        if check.size:
            width = self.count[rows[check]].max()
            begin = self.begin[rows[check], :width]
            end = np.concatenate([begin[:, 1:], np.full((check.size, 1), 1 << 31, dtype=np.int64)], axis=1)
            bad = (end > start[check, None]) & (begin < finish[check, None]) & (self.used[rows[check], :width] + units > self.capacity)
            first = bad.argmax(axis=1)
            hit = bad[np.arange(check.size), first]
            answer[check[hit]] = end[hit, first[hit]]
        return answer

    def take(self, rows, start, finish, units):
        """Appends where it comes last; elsewhere the stretches are cut and put together anew."""
        last = self.count[rows] - 1
        append = start >= self.begin[rows, last]
        self.append(rows[append], start[append], finish[append], units, last[append])
        inside = ~append
        if inside.any():
            self.insert(rows[inside], start[inside], finish[inside], units)

    def append(self, rows, start, finish, units, last):
        joins = (start == self.begin[rows, last]) & (last > 0)
        joins &= self.used[rows, np.maximum(last - 1, 0)] == units
        at_end = start == self.begin[rows, last]
        self.begin[rows[joins], last[joins]] = finish[joins]
        same = at_end & ~joins
        self.write(rows[same], last[same], start[same], units)
        self.write(rows[same], last[same] + 1, finish[same], 0)
        self.count[rows[same]] += 1
        new = ~at_end
        self.write(rows[new], last[new] + 1, start[new], units)
        self.write(rows[new], last[new] + 2, finish[new], 0)
        self.count[rows[new]] += 2

    def write(self, rows, places, begin, used):
        if rows.size == 0:
            return
        while places.max() + 1 >= self.begin.shape[1]:
            self.grow()
        self.begin[rows, places] = begin
        self.used[rows, places] = used

    def insert(self, rows, start, finish, units):
        width = int(self.count[rows].max())
        begin, used = self.begin[rows, :width], self.used[rows, :width]
        everything = np.concatenate([begin, start[:, None], finish[:, None]], axis=1)
        everything.sort(axis=1)
        order = (begin[:, None, :] <= everything[:, :, None]).sum(axis=2) - 1 if width <= 8 else self.places(begin, everything)
        level = np.take_along_axis(used, order, axis=1)
        level += (units * ((everything >= start[:, None]) & (everything < finish[:, None]))).astype(np.int16)
        keep = everything < (1 << 31)
        keep[:, 1:] &= level[:, 1:] != level[:, :-1]
        counts = keep.sum(axis=1)
        while counts.max() + 1 >= self.begin.shape[1]:
            self.grow()
        self.begin[rows] = 1 << 31
        self.used[rows] = 0
        row, _ = np.nonzero(keep)
        place = (np.cumsum(keep, axis=1) - 1)[keep]
        self.begin[rows[row], place] = everything[keep]
        self.used[rows[row], place] = level[keep]
        self.count[rows] = counts

    @staticmethod
    def places(begin, times):
        shift = (np.int64(1) << 33) * np.arange(begin.shape[0], dtype=np.int64)[:, None]
        found = np.searchsorted((begin + shift).ravel(), (times + shift).ravel(), side="right") - 1
        return np.minimum(found.reshape(times.shape) - np.arange(begin.shape[0])[:, None] * begin.shape[1], begin.shape[1] - 1)


def draw(rng, one, futures, shared):
    kind = one["kind"]
    if kind == "certain":
        return np.full(futures, float(one["duration"]))
    if kind == "pert":
        a, m, b = one["points"]
        return a + (b - a) * rng.beta(1 + 4 * (m - a) / (b - a), 1 + 4 * (b - m) / (b - a), futures)
    if kind == "promise":
        return one["median"] * np.exp(one["sigma"] * rng.standard_normal(futures))
    if kind == "own":
        log = shared["middle"] + shared["spread"] * rng.standard_normal(futures)
        return one["planned"] * np.exp(np.clip(log, -np.log(10), np.log(10)))
    if kind == "level":
        levels, u, out = shared["levels"][one["level"]], rng.random(futures), np.empty(futures)
        for level, outcomes in enumerate(one["outcomes"]):
            rows = levels == level
            ends = np.cumsum([chance for _, chance in outcomes])
            out[rows] = np.array([value for value, _ in outcomes])[np.minimum(np.searchsorted(ends, u[rows]), len(outcomes) - 1)]
        return out
    if kind == "perhaps":
        return np.where(rng.random(futures) < one["chance"], draw(rng, one["when"], futures, shared), 0.0)
    raise ValueError(kind)


def draw_shared(rng, project, futures):
    belief = project["overrun"]
    spread = np.sqrt(belief["scale"] / rng.gamma(belief["shape"], 1.0, futures))
    middle = belief["mean"] + spread / np.sqrt(belief["weight"]) * rng.standard_normal(futures)
    levels = {}
    for level in project["levels"]:
        ends = np.cumsum(np.array(level["chances"]), axis=1)
        row = np.zeros(futures, dtype=np.int64) if level["parent"] is None else levels[level["parent"]]
        levels[level["id"]] = (rng.random(futures)[:, None] > ends[row][:, :-1]).sum(axis=1)
    return {"spread": spread, "middle": middle, "levels": levels}


def play(rng, project, calendars, futures):
    shared = draw_shared(rng, project, futures)
    missed = {spell: np.flatnonzero(rng.random(futures) < chance) for spell, chance in project["missable"]}
    for calendar in calendars:
        calendar.miss(missed, futures)
    resources = [Occupancy(capacity, futures) for capacity in project["capacity"]]
    starts, finishes, everyone = {}, {}, np.arange(futures)
    for i, activity in enumerate(project["activities"]):
        duration = np.clip(draw(rng, activity["draw"], futures, shared) + 0.5, 0, 1_000_000).astype(np.int64)
        ready = np.full(futures, activity["earliest"], dtype=np.int64)
        for before, least, from_start in activity["arcs"]:
            time_before = (starts if from_start else finishes)[before]
            np.maximum(ready, np.where(time_before >= NEVER, NEVER, time_before + least), out=ready)
        starts[i], finishes[i] = place(activity, calendars, resources, everyone, ready, duration)
    return np.max(list(finishes.values()), axis=0)


def place(activity, calendars, resources, everyone, ready, duration):
    calendar = calendars[activity["calendar"]] if activity["calendar"] >= 0 else None

    def span(rows, from_, length):
        if calendar is None:
            return from_, from_ + length
        return (calendar.pausing if activity["pace"] == "Pausing" else calendar.unbroken)(rows, from_, length)

    start, finish = ready.copy(), ready + duration
    never = ready >= NEVER
    work = everyone[(duration > 0) & ~never]
    start[work], finish[work] = span(work, ready[work], duration[work])
    demands = activity["demands"]
    left = work
    while left.size and demands:
        wait = np.full(left.size, -1, dtype=np.int64)
        for resource, units in demands:
            open_ = wait < 0
            wait[open_] = resources[resource].conflict(left[open_], start[left[open_]], finish[left[open_]], units)
        blocked = wait >= 0
        left, wait = left[blocked], wait[blocked]
        start[left], finish[left] = span(left, wait, duration[left])
        gone = finish[left] >= NEVER
        left = left[~gone]
    never |= finish >= NEVER
    start[never] = finish[never] = NEVER
    taken = everyone[(duration > 0) & ~never]
    for resource, units in demands if taken.size else []:
        until = finish[taken]
        if activity["keeps"] == resource:
            until = calendar.opening(taken, until)
        resources[resource].take(taken, start[taken], until, units)
    return start, finish


def main():
    with open(sys.argv[1]) as file:
        project = json.load(file)
    futures, chunk = int(sys.argv[2]), int(sys.argv[3])
    calendars = [Calendar(one["windows"], one["spells"]) for one in project["calendars"]]
    rng = np.random.default_rng(12345)
    play(rng, project, calendars, 100)
    clock, cpu = time.perf_counter(), time.process_time()
    ends = np.concatenate([play(rng, project, calendars, min(chunk, futures - done)) for done in range(0, futures, chunk)])
    seconds, used = time.perf_counter() - clock, time.process_time() - cpu
    finished = ends[ends < NEVER]
    print(json.dumps({
        "seconds": seconds, "cpu": used, "futures": futures, "unfinished": int((ends >= NEVER).sum()),
        "by_date": int((ends <= project["date"]).sum()), "mean": float(np.minimum(ends, project["cap"]).mean()),
        "deviation": float(np.minimum(ends, project["cap"]).std()), "half": float(np.quantile(ends, 0.5)),
    }))


main()
