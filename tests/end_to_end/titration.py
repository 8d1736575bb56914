"""A whole level one by mouse and keys, as a careful person would do it; or with the jet left empty."""

import math
from decimal import ROUND_HALF_UP, Decimal

ALIQUOT_CM3 = Decimal("25.0")
ALKALI_MOL_DM3 = Decimal("0.1000")
PINK = ("faint-pink", "pale-pink", "pink", "deep-pink", "red", "deep-red")


def to_005(reading):
    return (Decimal(str(reading)) / Decimal("0.05")).quantize(Decimal(1), ROUND_HALF_UP) * Decimal("0.05")


class Titration:
    def __init__(self, window, fill_jet=True):
        self.w = window
        self.fill_jet = fill_jet
        self.titres = {}
        tap = window.places["tap"]
        self.axis = (tap[0] + 22, tap[1] + 92)  # the handle turns about this point

    # -- small habits --------------------------------------------------------------------------------------------

    def handle(self, position):
        """Where the handle's end is for a tap position."""
        angle = position * math.pi / 2
        return self.axis[0] + 70 * math.cos(angle), self.axis[1] - 70 * math.sin(angle)

    def turn_tap(self, position):
        now = self.w.senses.number("tap", 1.0)
        self.w.drag(self.handle(now), self.handle(position))

    def shut(self):
        self.w.key("s")

    def level_eye(self):
        w = self.w
        for _ in range(200):
            off = w.senses.number("level")
            if abs(off) <= 0.6:
                return
            if abs(off) >= 60:
                w.key("Next" if off > 0 else "Prior", int(abs(off) // 50))
            elif abs(off) >= 11:
                w.key("shift+Down" if off > 0 else "shift+Up", int(abs(off) // 10))
            else:
                w.key("Down" if off > 0 else "Up", max(1, round(abs(off))))
            w.bench_seconds(0.8)
        raise AssertionError("the eye does not come level")

    def write(self, cell, text):
        w = self.w
        w.click(cell)
        w.type(text)
        w.key("Return")

    def read(self, cell):
        self.level_eye()
        self.w.bench_seconds(1.0)
        reading = to_005(self.w.senses.number("reading"))
        self.write(cell, f"{reading:.2f}")
        return reading

    # -- the procedure -------------------------------------------------------------------------------------------

    def dress(self):
        self.w.click("coat")
        self.w.click("goggles")

    def nothing_spilt(self, doing):
        said = list(self.w.said)[-6:]
        assert self.w.senses.get("bench") == "dry", f"spilt while {doing}: {said}"

    def lower(self):
        """Out over the bench's edge and down, so that its top is below eye level."""
        self.w.key("Home")
        self.w.key("ctrl+Next", 6)
        self.w.bench_seconds(0.5)

    def raise_again(self):
        self.w.key("ctrl+Prior", 6)
        self.w.key("Home")
        self.w.bench_seconds(0.5)

    def rinse(self):
        """Twice with a little titrant, turned about: once by mouse, once by keys; then the pipette."""
        w = self.w
        w.click("beaker")
        w.until(lambda s: s.get("under") == "beaker", "the beaker under the jet")
        for by_mouse in (True, False):
            self.shut()
            w.bench_seconds(0.5)  # nothing may fall while it is swung
            self.lower()
            w.click("funnel")
            w.until(lambda s: s.get("funnel") == "yes", "the funnel in the burette")
            w.press("titrant") if by_mouse else w.do("keydown", "p")
            w.until(lambda s: s.get("reading", "none") != "none" and s.number("reading") < 47, "a little titrant")
            w.release() if by_mouse else w.do("keyup", "p")
            w.key("n")
            w.until(lambda s: s.get("funnel") == "no", "the funnel out")
            self.raise_again()
            w.press("burette") if by_mouse else w.do("keydown", "e")
            w.until(lambda s: s.get("aslant") == "yes", "the burette in the hand")
            w.bench_seconds(6.0)
            w.release() if by_mouse else w.do("keyup", "e")
            w.until(lambda s: s.get("aslant") == "no", "the burette in its clamps")
            self.nothing_spilt("pouring in to rinse")
            self.turn_tap(1.0)
            w.until(lambda s: s.get("reading", "none") == "none", "an empty burette")
            w.bench_seconds(8.0)
        self.shut()
        w.bench_seconds(1.5)  # what still falls belongs in the beaker
        if w.senses.number("hanging") > 0:
            w.key("o")
        w.bench_seconds(0.5)
        w.key("b")
        w.until(lambda s: s.get("under") == "nothing", "the beaker away")
        self.nothing_spilt("letting out what rinsed")
        w.key("y")

    def fill(self, to_cm3=-0.05):
        w = self.w
        self.lower()
        w.click("funnel")
        w.until(lambda s: s.get("funnel") == "yes", "the funnel in the burette")
        w.press("titrant")
        w.until(lambda s: s.get("reading", "none") != "none" and s.number("reading") < 20, "a burette more than half full")
        w.release()
        self.level_eye()
        w.do("keydown", "shift", "keydown", "p")  # the last of it in a thin stream
        w.until(lambda s: s.number("reading") < to_cm3 + 2.0, f"a burette filled nearly to {to_cm3} cm3")
        w.do("keyup", "p", "keyup", "shift")
        for sip in range(60):  # and the very last in sips: what pours while nobody looks runs over the rim
            w.bench_seconds(0.3)
            if w.senses.number("reading") < to_cm3:
                break
            w.do("keydown", "shift", "keydown", "p")
            if sip >= 20:  # a busy machine takes a key's down and up in one tick: nothing pours
                w.bench_seconds(0.05)
            w.do("keyup", "p", "keyup", "shift")
        assert w.senses.number("reading") < to_cm3, f"no burette filled to {to_cm3} cm3"
        w.key("n")
        w.until(lambda s: s.get("funnel") == "no", "the funnel out")
        self.raise_again()
        self.nothing_spilt("filling")

    def fill_the_jet(self):
        w = self.w
        w.click("beaker")
        w.until(lambda s: s.get("under") == "beaker", "the beaker under the jet")
        self.level_eye()
        self.turn_tap(0.75)
        w.until(lambda s: s.get("jet") == "full" and s.number("reading") > 0.2, "a full jet and a column on the scale")
        self.shut()
        w.bench_seconds(1.0)
        if w.senses.number("hanging") > 0:
            w.key("o")
        w.key("b")
        w.until(lambda s: s.get("under") == "nothing", "the beaker away")

    def prepare_flask(self, first):
        w = self.w
        if not first:
            w.key("v")
        if "tip" in w.senses:
            self.pipette_by_hand()
        else:
            w.click("sample")
            w.until(lambda s: s.get("pipette") == "full", "a full pipette")
            w.click("sample")
            w.until(lambda s: s.get("pipette") == "empty", "the aliquot in the flask")
        for _ in range(3):
            w.click("indicator")
        if first:
            w.click("tile")
            x, y = w.centre("flask")
            w.drag((x, y), (self.axis[0], y))
        else:
            w.key("f")
        w.until(lambda s: s.get("under") == "flask", "the flask under the jet")

    def eye_to_line(self):
        w = self.w
        for _ in range(60):
            off = w.senses.number("lineeye")
            if abs(off) <= 1.5:
                return
            if abs(off) >= 60:
                w.key("Next" if off > 0 else "Prior", int(abs(off) // 50))
            elif abs(off) >= 11:
                w.key("shift+Down" if off > 0 else "shift+Up", int(abs(off) // 10))
            else:
                w.key("Down" if off > 0 else "Up", max(1, round(abs(off))))
            w.bench_seconds(0.8)
        raise AssertionError("the eye does not come level with the pipette's line")

    def let_down(self):
        """To the line: quickly, gently, and the last in short presses."""
        w = self.w
        w.do("keydown", "z")
        w.until(lambda s: s.number("line") < 15, "the level near the line")
        w.do("keyup", "z", "keydown", "shift", "keydown", "z")
        w.until(lambda s: s.number("line") < 3, "the level just above the line")
        w.do("keyup", "z", "keyup", "shift")
        for _ in range(60):
            w.bench_seconds(0.3)
            if w.senses.number("line") <= 0.3:
                break
            w.do("keydown", "shift", "keydown", "z", "keyup", "z", "keyup", "shift")
        assert -0.5 <= w.senses.number("line") <= 0.3, f"not on the line: {list(w.said)[-1:]}"

    def pipette_by_hand(self):
        w = self.w
        w.click("sample")
        w.until(lambda s: s.get("tip") == "dipped", "the pipette in the sample")
        w.do("keydown", "z")
        w.until(lambda s: s.number("line") > 20, "the sample above the line")
        w.do("keyup", "z")
        w.key("a")
        w.until(lambda s: s.get("tip") == "aside", "the pipette lifted out")
        w.key("m")
        w.until(lambda s: s.get("outside") == "dry", "the pipette wiped")
        self.eye_to_line()
        self.let_down()
        w.key("a")
        w.until(lambda s: s.get("tip") == "wall", "its tip on the flask's wall")
        w.key("z")
        w.until(lambda s: s.get("holds") == "no", "the pipette run out and drained")
        w.key("a")
        w.until(lambda s: s.get("tip") == "aside", "the pipette away")

    def settle(self):
        """Waits until the flask is one colour all over."""
        self.w.bench_seconds(0.4)  # until a drop has shown what it does
        self.w.until(lambda s: s.get("streak") == s.get("flask"), "a flask of one colour")

    def coloured(self):
        return self.w.senses.get("flask") in PINK

    def trial_run(self):
        w = self.w
        w.do("keydown", "space")
        self.turn_tap(0.6)
        while True:
            w.until(lambda s: s.get("flask") in PINK, "pink in the trial")
            self.shut()
            self.settle()
            if self.coloured():
                break
            self.turn_tap(0.6)
        w.do("keyup", "space")

    def find_drops(self, slowest, fastest):
        """Opens the tap in fine steps until single drops come."""
        w = self.w
        for _ in range(120):
            rate = w.senses.number("drops")
            if self.coloured() or slowest <= rate <= fastest:
                return
            w.key("Right" if rate < slowest else "Left")
            w.bench_seconds(0.3)
        raise AssertionError("no single drops to be had from this tap")

    def accurate_run(self, initial, expected):
        w = self.w
        w.do("keydown", "space")
        self.turn_tap(0.6)
        w.until(lambda s: s.get("flask") in PINK or s.number("reading") >= float(initial + expected) - 1.6,
                "the end of the fast part")
        self.shut()
        self.level_eye()  # from where it stood, far above, the burette reads low
        w.bench_seconds(1.0)
        self.turn_tap(0.16)
        self.find_drops(0.6, 1.4)
        w.until(lambda s: s.get("flask") in PINK or s.number("reading") >= float(initial + expected) - 0.75,
                "the last three quarters of a cubic centimetre")
        if not self.coloured():
            self.find_drops(0.15, 0.45)
        w.until(lambda s: s.get("flask") in PINK or s.number("reading") >= float(initial + expected) - 0.35,
                "the last third of a cubic centimetre")
        self.shut()
        self.settle()
        self.half_drops()
        w.do("keyup", "space")

    def half_drops(self):
        """Part-drops grown at the tip, touched off on the neck and washed in, until the pink stays."""
        w = self.w
        for _ in range(80):
            if self.coloured():
                return
            w.key("d")  # back to where it dripped
            w.until(lambda s: s.number("hanging") > 0.35, "half a drop")
            self.shut()
            w.bench_seconds(0.3)
            w.key("o")
            w.do("keydown", "w")
            w.until(lambda s: s.get("wall") == "dry", "the half drop washed in")
            w.do("keyup", "w")
            self.settle()
        raise AssertionError("no endpoint after eighty half drops")

    def run(self, name, first):
        w = self.w
        self.prepare_flask(first)
        initial = self.read(f"{name}/initial")
        if first:
            self.trial_run()
        else:
            self.accurate_run(initial, min(self.titres.values()))
        w.bench_seconds(1.0)
        if w.senses.number("hanging") > 0:  # touched off on the neck and washed in
            w.key("o")
        w.do("keydown", "space", "keydown", "w")
        w.until(lambda s: s.get("wall") == "dry", "a clean wall")
        w.bench_seconds(1.0)
        w.do("keyup", "w")
        w.bench_seconds(3.0)
        w.do("keyup", "space")
        final = self.read(f"{name}/final")
        self.titres[name] = final - initial
        self.write(f"{name}/titre", f"{self.titres[name]:.2f}")
        w.key("f")
        w.until(lambda s: s.get("under") != "flask", "the flask aside")
        return final

    def concordant(self):
        runs = [n for n in self.titres if n != "trial"]
        for i, a in enumerate(runs):
            for b in runs[i + 1:]:
                if abs(self.titres[a] - self.titres[b]) <= Decimal("0.10"):
                    return [a, b]
        return []

    def calculate(self, used):
        w = self.w
        mean = sum(self.titres[n] for n in used) / len(used)
        mean_text = f"{mean:.2f}" if (mean * 100) % 1 == 0 else f"{mean:.3f}"
        alkali = ALKALI_MOL_DM3 * Decimal(mean_text) / 1000
        alkali_text = f"{alkali:.7f}"
        diluted_text = f"{Decimal(alkali_text) * 1000 / ALIQUOT_CM3:.5f}"
        vinegar_text = f"{Decimal(diluted_text) * 10:.4f}"
        w.click("working")
        for text in (mean_text, alkali_text, alkali_text, diluted_text):
            w.type(text)
            w.key("Tab")
        w.type(vinegar_text)
        w.key("Return")

    def hand_in(self):
        w = self.w
        w.click("hand in")
        w.bench_seconds(0.5)
        w.key("y")

    def play(self):
        w = self.w
        self.dress()
        self.rinse()
        if self.fill_jet:
            self.fill()
            self.fill_the_jet()
        else:  # the slip: filled to just below the zero and read at once
            self.fill(to_cm3=3.5)
            assert w.senses.number("reading") > 0, "poured past the zero, which only an open tap mends"
        final = self.run("trial", first=True)
        for name in ("1", "2", "3", "4", "5"):
            if float(final) + float(self.titres["trial"]) + 1.0 > 50.0:
                self.fill()
                self.fill_the_jet()
            final = self.run(name, first=False)
            if self.concordant():
                break
        used = self.concordant()
        assert used, f"no two concordant titres: {self.titres}"
        for name in used:
            w.click(f"{name}/counts")
        self.calculate(used)
        self.hand_in()
