"""A console that cannot show our signs still shows every finding."""

import os
import subprocess
import sys
from pathlib import Path

from checks.edits import bench, edited, judged, plain


def test_findings_reach_a_console_of_ascii(tmp_path: Path) -> None:
    wrong = '{source bench: {numbers: {"watchers\' distance": {value: 1 m}}}}'
    judged(edited(bench(), plain(wrong)), tmp_path)
    run = subprocess.run(
        [sys.executable, "-m", "clampstand.cli", "check", "--content", str(tmp_path)],
        env={**os.environ, "PYTHONIOENCODING": "ascii"},
        capture_output=True,
        check=False,
    )
    assert run.returncode == 1, run.stderr
    assert b"[watchers-distance]" in run.stdout
