"""half_tick.py USUAL HALF: what comes out of the burette may not hang on the length of a tick."""
import subprocess
import sys

WITHIN_CM3 = 0.005


def delivered(program):
    lines = subprocess.run([program], check=True, capture_output=True, text=True).stdout.splitlines()
    return {name: float(volume) for volume, name in (line.split(",", 1) for line in lines)}


usual, half = delivered(sys.argv[1]), delivered(sys.argv[2])
assert usual.keys() == half.keys() and len(usual) > 3
worst = 0.0
for name, volume in usual.items():
    by = half[name] - volume
    worst = max(worst, abs(by))
    print(f"{name}: {volume:.4f} cm3, with half the tick {by:+.5f}")
assert any(half[name] != volume for name, volume in usual.items()), "the tick is the same"
sys.exit(worst >= WITHIN_CM3)
