"""A real Halfdrop window under a (virtual) display, driven by real mouse and key events through xdotool.

What stands where comes from `halfdrop --places`; what the person at the bench perceives from `halfdrop --say`.
"""

import collections
import json
import os
import re
import subprocess
import threading
import time

WAIT_S = 120.0  # wall seconds before a wait is given up


class Senses(dict):
    def number(self, key, default=float("nan")):
        found = re.match(r"[-+]?[0-9.]+", self.get(key, ""))
        return float(found.group()) if found else default


class Window:
    def __init__(self, program, level, folder, seed, size=(1280, 720), time_scale=6, more=()):
        self.size = size
        self.folder = folder
        self.places = self._places(program, level)
        self.senses = Senses()
        self.said = collections.deque(maxlen=20)
        self.guided_to = []  # steps of a guide, each as it came
        self.log = open(os.path.join(folder, "say.log"), "w", encoding="utf-8")
        self.process = subprocess.Popen(
            [program, level, "--folder", folder, "--seed", str(seed), "--say", "--alias", "end to end",
             "--time-scale", str(time_scale), "--size", f"{size[0]}x{size[1]}", *more],
            stdout=subprocess.PIPE, text=True)
        threading.Thread(target=self._listen, daemon=True).start()

    def _places(self, program, level):
        out = subprocess.run([program, level, "--places"], check=True, capture_output=True, text=True).stdout
        places = {}
        for line in out.splitlines():
            name, *numbers = line.rsplit(" ", 4)
            places[name] = tuple(float(n) for n in numbers)
        return places

    def _listen(self):
        for line in self.process.stdout:
            self.log.write(line)
            self.senses = Senses(word.split("=", 1) for word in line.split() if "=" in word)
            self.said.append(line.strip())
            step = self.senses.get("guide")
            if step and self.guided_to[-1:] != [step]:
                self.guided_to.append(step)

    # -- hands ---------------------------------------------------------------------------------------------------

    def do(self, *words):
        subprocess.run(["xdotool", *[str(w) for w in words]], check=True)

    def centre(self, place):
        x, y, w, h = self.places[place]
        return x + w / 2, y + h / 2

    def point_at(self, x, y):
        scale = min(self.size[0] / 1280.0, self.size[1] / 720.0)
        left = (self.size[0] - 1280.0 * scale) / 2
        top = (self.size[1] - 720.0 * scale) / 2
        self.do("mousemove", round(left + x * scale), round(top + y * scale))
        time.sleep(0.03)

    def click(self, place, button=1):
        self.point_at(*self.centre(place))
        self.do("click", button)
        time.sleep(0.05)

    def press(self, place):
        self.point_at(*self.centre(place))
        self.do("mousedown", 1)

    def release(self):
        self.do("mouseup", 1)

    def drag(self, start, end):
        self.point_at(*start)
        self.do("mousedown", 1)
        for i in range(1, 7):
            self.point_at(start[0] + (end[0] - start[0]) * i / 6, start[1] + (end[1] - start[1]) * i / 6)
        self.do("mouseup", 1)

    def key(self, name, times=1):
        for _ in range(times):
            self.do("key", name)

    def type(self, text):
        self.do("type", "--delay", 15, text)

    # -- patience ------------------------------------------------------------------------------------------------

    def until(self, condition, what, wait_s=WAIT_S, every_s=0.01):
        end = time.monotonic() + wait_s
        while not condition(self.senses):
            if self.process.poll() is not None:
                raise AssertionError(f"the window closed while waiting for: {what}")
            if time.monotonic() > end:
                raise AssertionError(f"waited in vain for: {what}; last perceived: {list(self.said)[-3:]}")
            time.sleep(every_s)

    def bench_seconds(self, seconds):
        start = self.senses.number("t")
        self.until(lambda s: s.number("t") >= start + seconds, f"{seconds} bench seconds")

    def picture(self, path):
        subprocess.run(["import", "-window", "root", path], check=False)

    def close(self):
        self.process.terminate()
        self.process.wait(timeout=10)
        self.log.close()


def attempt_in(folder):
    """Path of the newest attempt in a folder."""
    found = [os.path.join(at, name) for at, _, names in os.walk(folder) for name in names
             if name.endswith(".jsonl")]
    assert found, f"no attempt in {folder}"
    return max(found, key=os.path.getmtime)


def marked(desk, attempt):
    """The attempt as `halfdrop-desk mark --json` sees it, and its exit status."""
    result = subprocess.run([desk, "mark", attempt, "--json"], capture_output=True, text=True)
    assert result.stdout, result.stderr
    return json.loads(result.stdout.splitlines()[0]), result.returncode
