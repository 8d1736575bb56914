#!/usr/bin/env python3
"""Fills the results sheet in a real window, by mouse and by keys, hands it in and answers the question after it.

    paper.py HALFDROP HALFDROP_DESK LEVEL [--size WxH] [--picture FILE]
"""

import argparse
import glob
import json
import os
import subprocess
import sys
import tempfile
import time

from window import Window

RUNS = ("trial", "1", "2", "3", "4", "5")
ROWS = {"initial": "0.{n}5", "final": "2{n}.00", "titre": "20.95"}
PAGES = ("sheet", "example", "question", "marks", "findings")  # without a run there is no waterfall
WORKING = ("20.95", "0.002095", "0.002095", "0.08380", "0.838")


def attempts(folder):
    return sorted(glob.glob(os.path.join(folder, "*.jsonl")))


def written(path):
    """Every writing of an attempt, in order."""
    with open(path, encoding="utf-8") as file:
        lines = [json.loads(line) for line in file if line.endswith("\n")]
    return [(line["write"]["cell"], line["write"]["text"]) for line in lines if "write" in line]


def by_mouse(w):
    """The first three columns, each cell by a click; one figure is corrected."""
    for n, run in enumerate(RUNS[:3]):
        for row, text in ROWS.items():
            w.click(f"{run}/{row}")
            w.type(text.format(n=n))
            w.key("Return")
    w.click("1/final")
    w.type("21.05")
    w.key("Return")
    for run in ("1", "2"):
        w.click(f"{run}/counts")


def by_keys(w):
    """The other columns and the working by keys alone, with the worked example looked at in between."""
    w.key("r")
    for n, run in enumerate(RUNS[3:]):
        for text in ROWS.values():
            w.type(text.format(n=n))
            w.key("Tab")
        w.key("Tab")  # past the box
    for text in WORKING[:-1]:
        w.type(text)
        w.key("Tab")
    w.key("F4")
    w.type(WORKING[-1])
    w.key("Return")
    w.key("F4")


def wait_for(condition, what, wait_s=30.0):
    end = time.monotonic() + wait_s
    while not condition():
        assert time.monotonic() < end, f"waited in vain for: {what}"
        time.sleep(0.1)


def ended(path):
    with open(path, encoding="utf-8") as file:
        return '"end":"handed in"' in file.read()


def after_the_run(w, folder, picture):
    w.key("h")
    w.key("y")
    wait_for(lambda: ended(attempts(folder)[0]), "the sheet handed in")
    time.sleep(4.0)  # until it is marked
    w.key("a")  # another attempt is not to be had before the question is answered
    time.sleep(1.5)
    assert len(attempts(folder)) == 1, "the marks were open before the question was answered"
    w.key("Down", times=2)
    w.type("+")
    time.sleep(0.5)
    w.key("Right")
    if picture:
        w.picture(picture)
    w.key("a")
    wait_for(lambda: len(attempts(folder)) == 2, "another attempt after the answer")


def check(path):
    cells = written(path)
    last = dict(cells)
    for n, run in enumerate(RUNS):
        for row, text in ROWS.items():
            expected = "21.05" if (run, row) == ("1", "final") else text.format(n=n % 3)
            assert last.get(f"{run}/{row}") == expected, f"{run}/{row}: {last.get(f'{run}/{row}')}, not {expected}"
    assert [text for cell, text in cells if cell == "1/final"] == ["21.00", "21.05"], "the correction is not kept"
    working = [text for cell, text in cells if cell.startswith("calculation/")]
    assert working == list(WORKING), working
    assert [last.get(f"{run}/counts") for run in ("1", "2", "3")] == ["yes", "yes", None]


def draw_every_page(halfdrop, attempt, folder):
    """Every page as a picture of its own: none fails, and no two are alike."""
    pictures = set()
    for page in PAGES:
        path = os.path.join(folder, f"{page}.png")
        subprocess.run([halfdrop, "--picture", path, attempt, "--page", page, "--size", "640x360"], check=True)
        with open(path, "rb") as file:
            pictures.add(file.read())
    assert len(pictures) == len(PAGES), "two pages look alike"


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("halfdrop")
    parser.add_argument("desk")
    parser.add_argument("level")
    parser.add_argument("--size", default="1280x720")
    parser.add_argument("--picture")
    arguments = parser.parse_args()
    with tempfile.TemporaryDirectory() as folder:
        size = tuple(int(n) for n in arguments.size.split("x"))
        window = Window(arguments.halfdrop, arguments.level, folder, seed=11, size=size)
        try:
            time.sleep(1.5)
            window.key("Return")  # the cautions are read: start
            window.until(lambda s: "t" in s, "the bench")
            by_mouse(window)
            by_keys(window)
            path = attempts(folder)[0]
            after_the_run(window, folder, arguments.picture)
        finally:
            window.close()
        check(path)
        draw_every_page(arguments.halfdrop, path, folder)
    print("1 passed, 0 failed")
    return 0


if __name__ == "__main__":
    sys.exit(main())
