"""Answers the same questions with general-purpose libraries, and says how long each took: JSON on stdin and stdout, times in seconds."""

import json
import sys
import time

import chemicals
import numpy as np
import psychrolib
from scipy.integrate import solve_ivp
from scipy.optimize import Bounds, LinearConstraint, milp
from scipy.sparse import coo_array


def shortest(runs, work):
    """The shortest of some runs: whatever else the machine does only makes a run longer."""
    best = float("inf")
    for _ in range(runs):
        begun = time.perf_counter()
        answer = work()
        best = min(best, time.perf_counter() - begun)
    return best, answer


def calls(function, pairs):
    """A function of two numbers, called for one pair after the other."""
    seconds, answers = shortest(20, lambda: [function(a, b) for a, b in pairs])
    return {"seconds": seconds / len(pairs), "answers": answers}


def ladder(question):
    """The most that 1, 2, 3 ... purchases serve, as one integer program each, written from the definition:
    x is 1 for a fluid bought; z up to 1 where each step of a task is served; r up to z where a step is right."""
    fluids, will_do = question["fluids"], question["will_do"]
    count, worth, rows = len(fluids), [0.0] * len(fluids), []

    def variable(value):
        worth.append(value)
        return len(worth) - 1

    for task in question["tasks"]:
        z = variable(task["weight"] * will_do)
        for step in task["steps"]:
            r = variable(task["weight"] * (1.0 - will_do) * step["share"])
            rows.append({z: 1.0} | dict.fromkeys(step["right"] + step["will_do"], -1.0))
            rows.append({r: 1.0} | dict.fromkeys(step["right"], -1.0))
            rows.append({r: 1.0, z: -1.0})
    rows.append({f: 1.0 for f in range(count) if not fluids[f]["owned"]})
    places = [(row, column, value) for row, terms in enumerate(rows) for column, value in terms.items()]
    i, j, values = zip(*places)
    matrix = coo_array((values, (i, j)), shape=(len(rows), len(worth))).tocsc()
    least = [float(f["owned"] and f["allowed"]) for f in fluids] + [0.0] * (len(worth) - count)
    most = [float(f["allowed"]) for f in fluids] + [1.0] * (len(worth) - count)
    whole = [1] * count + [0] * (len(worth) - count)

    def best(limit):
        limits = LinearConstraint(matrix, -np.inf, np.append(np.zeros(len(rows) - 1), limit))
        found = milp(-np.array(worth), integrality=whole, bounds=Bounds(least, most), constraints=limits, options={"mip_rel_gap": 0.0})
        return -found.fun

    # Writing the program down is not counted.
    each = [shortest(3, lambda limit=limit: best(limit)) for limit in range(1, question["rungs"] + 1)]
    return {"seconds": sum(seconds for seconds, _ in each), "answers": [value for _, value in each]}


# Constants as crates/formulas/src/sweating.rs and humid_air.rs name them.
CONDENSATION, VAPOUR_GAS, AIR_DENSITY, AIR_HEAT, LEWIS, FILM_MOST, MASS_RATIO = 2.47e6, 461.5, 1.2, 1006.0, 0.89, 0.075, 0.621945


def saturation(celsius):
    return 611.2 * np.exp(17.62 * celsius / (243.12 + celsius))


class Room:
    """A room with bare machines in it: the air, its water, and each machine's metal with the water on it."""

    def __init__(self, question):
        self.hours = len(question["hours"])
        self.parts = question["parts"]
        celsius, humidity, pascals = np.array(question["hours"]).T
        # The air outside in the middle of each step, between one hour and the next.
        at = np.minimum((np.arange(self.hours * self.parts) + 0.5) / self.parts, self.hours - 1)
        hour = np.arange(self.hours)
        self.celsius, self.pascals = np.interp(at, hour, celsius), np.interp(at, hour, pascals)
        self.vapour = np.interp(at, hour, humidity * saturation(celsius))
        self.water = MASS_RATIO * self.vapour / (self.pascals - self.vapour)
        self.dry_air = AIR_DENSITY * question["volume"]
        self.changes, self.holds = question["changes"] / 3600.0, question["holds"]
        self.lost = question["envelope"] + self.changes * self.dry_air * AIR_HEAT
        self.area, self.metal_holds, convection, radiation = np.array(question["bodies"]).T
        self.conducts = self.area * (convection + radiation)
        self.transfer = convection / (AIR_DENSITY * AIR_HEAT * LEWIS)
        bodies = len(self.area)
        first = humidity[0] * saturation(celsius[0])
        self.start = [celsius[0], MASS_RATIO * first / (pascals[0] - first), np.full(bodies, celsius[0]), np.zeros(bodies)]

    def slopes(self, step, air, water, metal, film, longest):
        """How fast each changes; a film dries off within `longest` seconds at the quickest."""
        vapour = self.pascals[step] * water / (MASS_RATIO + water)
        flux = self.transfer / (VAPOUR_GAS * (0.5 * (metal + air) + 273.15)) * (vapour - saturation(metal))
        flux = np.maximum(flux, -np.maximum(film, 0.0) / longest)
        heat = self.conducts * (air - metal)
        return (
            (self.lost * (self.celsius[step] - air) - heat.sum()) / self.holds,
            self.changes * (self.water[step] - water) - (self.area * flux).sum() / self.dry_air,
            (heat + CONDENSATION * self.area * flux) / self.metal_holds,
            flux,
        )

    def wet(self, step, water, metal):
        vapour = self.pascals[step] * water / (MASS_RATIO + water)
        return (vapour > 0.8 * saturation(metal)) & (metal > 0.0)

    def by_equal_steps(self):
        """The explicit midpoint rule, all machines at once."""
        dt = 3600.0 / self.parts
        air, water, metal, film = self.start
        wet, celsius = np.zeros(len(metal)), []
        for step in range(self.hours * self.parts):
            a, w, m, f = self.slopes(step, air, water, metal, film, dt)
            half = 0.5 * dt
            a, w, m, f = self.slopes(step, air + half * a, water + half * w, metal + half * m, film + half * f, dt)
            air, water, metal = air + dt * a, water + dt * w, metal + dt * m
            film = np.clip(film + dt * f, 0.0, FILM_MOST)
            wet += self.wet(step, water, metal)
            if (step + 1) % self.parts == 0:
                celsius.append(metal.tolist())
        return {"wet": (wet / self.parts).tolist(), "celsius": celsius}

    def by_solver(self):
        """SciPy's Runge-Kutta of order 5(4) with its own choice of steps, day by day so that what ran off is gone."""
        bodies, end, dt = len(self.area), self.hours * self.parts, 3600.0 / self.parts

        def slopes(t, y):
            step = min(int(t / dt), end - 1)
            a, w, m, f = self.slopes(step, y[0], y[1], y[2 : 2 + bodies], y[2 + bodies :], dt)
            return np.concatenate(([a, w], m, f))

        y = np.concatenate(([self.start[0], self.start[1]], self.start[2], self.start[3]))
        scale = np.concatenate(([1e-3, 1e-7], np.full(bodies, 1e-3), np.full(bodies, 1e-7)))
        wet, celsius, day = np.zeros(bodies), [], 24 * self.parts
        for begin in range(0, end, day):
            steps = np.arange(begin, min(begin + day, end))
            times = (steps + 1) * dt
            solved = solve_ivp(slopes, (begin * dt, times[-1]), y, t_eval=times, rtol=1e-5, atol=scale, max_step=1800.0)
            for step, water, metal in zip(steps, solved.y[1], solved.y[2 : 2 + bodies].T):
                wet += self.wet(step, water, metal)
                if (step + 1) % self.parts == 0:
                    celsius.append(metal.tolist())
            y = solved.y[:, -1]
            y[2 + bodies :] = np.clip(y[2 + bodies :], 0.0, FILM_MOST)
        return {"wet": (wet / self.parts).tolist(), "celsius": celsius}


def year(question):
    room = Room(question)
    answers = {}
    for name, work in [("steps", room.by_equal_steps), ("solver", room.by_solver)]:
        seconds, answer = shortest(2, work)
        answers[name] = {"seconds": seconds, **answer}
    return answers


def main():
    psychrolib.SetUnitSystem(psychrolib.SI)
    asked = json.load(sys.stdin)
    answers = {
        "index": calls(chemicals.viscosity_index, [(nu40 * 1e-6, nu100 * 1e-6) for nu40, nu100 in asked["index"]]),
        "dew": calls(psychrolib.GetTDewPointFromRelHum, asked["dew"]),
        "ladders": [ladder(question) for question in asked["ladders"]],
        "year": year(asked["year"]),
    }
    json.dump(answers, sys.stdout)


main()
