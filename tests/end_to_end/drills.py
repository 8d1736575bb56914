#!/usr/bin/env python3
"""Plays a drill in a real window and checks what the attempts it saved are worth.

    drills.py HALFDROP HALFDROP_DESK DRILL [--goes N] [--careless] [--size WxH] [--picture FILE]
"""

import argparse
import json
import os
import subprocess
import sys
import tempfile
import time

from window import Window, attempt_in, marked


class Drill:
    """What a person does at a drill, by what they perceive."""

    def __init__(self, window, drill, careless):
        self.window = window
        self.drill = drill
        self.careless = careless

    def level_eye(self):
        """Nearer and nearer, as the rings show it; ten millimetres at a time while it is far."""
        for _ in range(40):
            off = self.window.senses.number("level")
            if abs(off) < 0.6:
                return
            key = "Down" if off > 0 else "Up"
            tens, ones = divmod(round(abs(off)), 10)
            self.window.key(f"shift+{key}", tens)
            self.window.key(key, ones)
            self.window.bench_seconds(0.4)

    def reading(self):
        return self.window.senses.number("reading")

    def written(self):
        """To 0.05, as it is asked for."""
        return f"{round(self.reading() * 20) / 20:.2f}"

    def hand_in(self):
        self.window.key("h")
        time.sleep(0.2)
        self.window.key("y")

    def read_the_meniscus(self):
        for number in range(1, self.drill["pictures"] + 1):
            if not self.careless or number % 3:
                self.level_eye()
                self.window.key("k")
            self.window.bench_seconds(0.3)
            self.window.type(self.written())
            time.sleep(0.15)
            self.window.key("Return")
            self.window.bench_seconds(0.6)  # the next picture is seen
        self.window.key("y")

    def dress(self):
        self.window.key("c")
        self.window.key("g")

    def run_to(self, target):
        """Wide open, then less, then drops; the eye follows the meniscus."""
        stages = [(2.5, 0.64), (0.3, 0.53), (0.03, 0.5)]
        for left, tap in stages if target - self.reading() > 5 else stages[1:]:
            if target - self.reading() > left:
                self.tap_to(tap)
            end = time.monotonic() + 100
            while target - self.reading() > left:
                assert time.monotonic() < end, f"no flow at {tap}: {self.window.senses}"
                self.level_eye()
                time.sleep(0.02)
        self.window.key("s")
        self.window.bench_seconds(1.0)

    def tap_to(self, tap):
        for _ in range(60):
            off = tap - self.window.senses.number("tap")
            if abs(off) < 0.0026:
                return
            key = "Right" if off > 0 else "Left"
            if abs(off) >= 0.05:
                self.window.key(f"ctrl+{key}", int(abs(off) / 0.05))
            else:
                self.window.key(key, max(1, round(abs(off) / 0.005)))
            self.window.bench_seconds(0.1)

    def deliver_exactly(self):
        self.dress()
        self.level_eye()
        for what in self.drill["deliver"]:
            self.level_eye()
            if isinstance(what, (int, float)):
                self.run_to(self.reading() + what)
            else:
                self.one_drop(1.0 if what == "one drop" else 0.45)
            self.window.key("o")
            self.window.bench_seconds(0.5)
            self.window.key("Return")
            self.window.bench_seconds(0.5)
        self.window.key("y")

    def one_drop(self, share):
        """Lets it swell, and shuts the tap when it has fallen or is large enough."""
        seen = 0.0
        self.tap_to(0.495)
        end = time.monotonic() + 60
        while time.monotonic() < end:
            now = self.window.senses.number("hanging")
            if (share < 1 and now >= share) or (share >= 1 and now < seen - 0.3):
                break
            seen = max(seen, now)
            time.sleep(0.01)
        self.window.key("s")
        self.window.bench_seconds(0.5)

    def fill_without_air(self):
        """Careless: the tap is never opened, so that the jet stays full of air, and the funnel stays in."""
        self.dress()
        self.window.key("s")  # the tap stood open
        self.window.key("n")
        self.window.key("b")
        enough = 0.8 if self.careless else -0.6
        for gently, mark in ((False, 8.0), (True, enough)):
            if gently:
                self.window.do("keydown", "shift")
            self.window.do("keydown", "p")
            self.window.until(lambda s: s.get("reading", "none") != "none" and s.number("reading") < mark,
                              f"water up to {mark}")
            self.window.do("keyup", "p")
        self.window.do("keyup", "shift")
        if not self.careless:
            self.window.key("n")
            self.tap_to(1.0)
            self.window.until(lambda s: s.get("jet") == "full", "a jet without air")
            self.level_eye()
            self.window.until(lambda s: s.number("reading") > 0.05, "the meniscus on the scale")
            self.window.key("s")
            self.window.bench_seconds(1.0)
            self.window.key("o")
        self.window.bench_seconds(1.0)
        self.level_eye()
        self.window.key("k")
        self.window.bench_seconds(0.5)
        self.window.type(self.written())
        self.window.key("Return")
        time.sleep(0.2)
        self.hand_in()


def check(drill, careless, figures):
    """What the marks must say of what was done."""
    kind = drill["kind"]
    if kind == "read the meniscus":
        assert figures["readings"] == drill["pictures"] and figures["slips"] == 0
        assert figures["off_level"] == (drill["pictures"] // 3 if careless else 0), "an eye off level went unseen"
        assert careless or figures["sd_cm3"] < 0.025 and abs(figures["bias_cm3"]) < 0.01
    elif kind == "deliver exactly":
        assert figures["delivered"] == len(drill["deliver"])
        assert all(v["hanging_cm3"] < 0.005 for v in figures["volumes"])
    else:
        assert figures["funnel_in"] is careless
        assert (figures["jet_air_cm3"] > 0.1) is careless, "air in the jet went unseen"
        assert abs(figures["reading_error_cm3"]) < 0.05


def play(arguments, level, folder, seed):
    width, height = (int(n) for n in arguments.size.split("x"))
    window = Window(arguments.halfdrop, arguments.drill, folder, seed=seed, size=(width, height),
                    time_scale=arguments.time_scale, more=("--projector",) if arguments.projector else ())
    try:
        time.sleep(1.5)
        window.key("Return")  # the cautions are read: start
        window.until(lambda s: "t" in s, "the bench")
        drill = Drill(window, level["drill"], arguments.careless)
        getattr(drill, level["drill"]["kind"].replace(" ", "_"))()
        time.sleep(2.5)
        if arguments.picture:
            window.picture(arguments.picture)
        for page in range(arguments.pages):
            window.key("Next")
            time.sleep(0.5)
            window.picture(arguments.picture.replace(".png", f"-{page + 2}.png"))
    finally:
        window.close()


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("halfdrop")
    parser.add_argument("desk")
    parser.add_argument("drill")
    parser.add_argument("--careless", action="store_true")
    parser.add_argument("--projector", action="store_true")
    parser.add_argument("--goes", type=int, default=1)
    parser.add_argument("--pages", type=int, default=0)
    parser.add_argument("--size", default="1280x720")
    parser.add_argument("--time-scale", type=float, default=4)
    parser.add_argument("--folder")
    parser.add_argument("--picture")
    arguments = parser.parse_args()
    with open(arguments.drill, encoding="utf-8") as file:
        level = json.load(file)
    with tempfile.TemporaryDirectory() as temporary:
        folder = arguments.folder or temporary
        for go in range(arguments.goes):
            play(arguments, level, folder, 21 + go)
            result, status = marked(arguments.desk, attempt_in(folder))
            print(json.dumps(result["drill"])[:1500])
            print("marks", result["marks"])
            assert status == 0 and result["reproduced"], "the attempt does not replay"
            check(level["drill"], arguments.careless, result["drill"])
            if go > 0:
                assert len(os.listdir(folder)) >= go + 1
    print("1 passed, 0 failed")
    return 0


if __name__ == "__main__":
    sys.exit(main())
