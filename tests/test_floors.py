"""The floors of the house: imports only point down, and the core needs no MkDocs."""

import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).parents[1]


def test_imports_keep_to_the_contracts():
    command = [
        sys.executable,
        "-c",
        "from importlinter.cli import lint_imports_command as c; c()",
        "--no-cache",
    ]
    result = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, check=False)
    assert result.returncode == 0, result.stdout + result.stderr


def test_the_core_loads_no_mkdocs():
    rooms = ["build", "calculators", "checks", "cli", "findings", "limits", "model"]
    rooms += ["physics", "reading", "rendering", "reports", "timeline", "units"]
    code = "import sys\n" + "\n".join(f"import clampstand.{room}" for room in rooms)
    code += "\nloaded = {name.split('.')[0] for name in sys.modules} & {'mkdocs', 'material', 'properdocs'}"
    code += "\nassert not loaded, loaded"
    result = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=False)
    assert result.returncode == 0, result.stderr


def test_checking_loads_no_templates():
    code = "import sys, clampstand.cli\nassert 'jinja2' not in sys.modules and 'mkdocs' not in sys.modules"
    result = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=False)
    assert result.returncode == 0, result.stderr
