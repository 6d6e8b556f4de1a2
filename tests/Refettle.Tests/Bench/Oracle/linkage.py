"""Solves double wishbones by scipy.optimize: reads cases as JSON lines, writes postures as JSON lines.

A case has the points li, lo, ui, uo, wc (outward, up; mm), the camber, and changes upper, lower, upper_pivot, lower_pivot, up,
and held ("arm" or "height"). It knows nothing of circles: it solves the distance equations with fsolve from the old posture.
"""
import json
import sys

import numpy as np
from scipy.optimize import fsolve


def solve(case):
    li, lo, ui, uo, wc = (np.array(case[key], float) for key in ("li", "lo", "ui", "uo", "wc"))
    lower, upper, upright = np.linalg.norm(lo - li), np.linalg.norm(uo - ui), np.linalg.norm(uo - lo)
    new_li, new_ui = li + [case["lower_pivot"], 0], ui + [case["upper_pivot"], 0]
    new_lower, new_upper = lower + case["lower"], upper + case["upper"]
    old = np.arctan2(uo[0] - lo[0], uo[1] - lo[1])
    local = np.array([[np.sin(old), np.cos(old)], [np.cos(old), -np.sin(old)]]) @ (wc - lo)

    def centre(a, b):
        lean = np.arctan2(b[0] - a[0], b[1] - a[1])
        return a + local[0] * np.array([np.sin(lean), np.cos(lean)]) + local[1] * np.array([np.cos(lean), -np.sin(lean)])

    if case["held"] == "arm":
        direction = (lo - li) / lower
        a = new_li + direction * new_lower
        unknown = fsolve(lambda b: [np.linalg.norm(b - new_ui) - new_upper, np.linalg.norm(b - a) - upright], uo, xtol=1e-13)
        b = unknown
    else:
        def equations(x):
            a, b = x[:2], x[2:]
            return [np.linalg.norm(a - new_li) - new_lower, np.linalg.norm(b - new_ui) - new_upper,
                    np.linalg.norm(b - a) - upright, centre(a, b)[1] - wc[1] - case["up"]]
        unknown = fsolve(equations, np.concatenate([lo, uo]), xtol=1e-13)
        a, b = unknown[:2], unknown[2:]
    lean = np.arctan2(b[0] - a[0], b[1] - a[1])
    return {"lo": list(a), "uo": list(b), "wc": list(centre(a, b)), "camber": case["camber"] + float(np.degrees(lean - old))}


for line in sys.stdin:
    print(json.dumps(solve(json.loads(line))))
