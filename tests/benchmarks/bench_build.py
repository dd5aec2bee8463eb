"""How long the site takes to build, against the same pages as Markdown in the theme as it comes.

Run by hand, on a quiet machine: ``python tests/benchmarks/bench_build.py [practicals …]``. Both sides are
built in one run, in turns, each in a process of its own; what counts is the CPU time of the whole process.
The practicals are copies of a real one under new ids; each gives a teacher's page, a preparation sheet and
a card. The theme as it comes is given every page that ours builds, the index pages and the rules too, with
the drawings in them. Ours reads, judges and works out besides.
"""

import math
import os
import re
import resource
import shutil
import subprocess
import sys
import tempfile
from dataclasses import replace
from pathlib import Path

from clampstand.build import handbook, site_pages
from clampstand.rendering.markdown import as_markdown
from clampstand.rendering.page import SitePage

ROOT = Path(__file__).parents[2]
PATTERN = "spark-counter"
DRAWING = re.compile(r"<svg\b.*?</svg>", re.DOTALL)
SIZES = (100, 300)
MOST_OF_THE_THEME = 0.35
STEEPEST = 1.1

STOCK = """\
site_name: Stock
site_dir: site
theme: {name: material, font: false, features: [navigation.prune]}
plugins: [search]
"""
OURS = """\
site_name: Ours
docs_dir: content/pages
site_dir: site
use_directory_urls: false
theme: {name: material, font: false}
plugins: [clampstand, search]
nav: [index.md, practicals/index.md, emergencies/index.md, kit/index.md, limits/index.md]
"""


def main(sizes: tuple[int, ...]) -> int:
    """Measure every size, print the table, and fail where a goal is missed."""
    rows: list[tuple[int, float, float]] = []
    with tempfile.TemporaryDirectory() as folder:
        for number, size in enumerate(sizes):
            ours, stock = prepared(Path(folder) / str(size), size)
            if number == 0:  # the modules of both sides then lie there compiled, as where they are installed
                built(ours), built(stock)
            rows.append((size, built(ours), built(stock)))
    print(f"{'practicals':>10} {'ours, s':>8} {'stock, s':>8} {'ratio':>6}")
    for size, mine, theirs in rows:
        print(f"{size:>10} {mine:>8.2f} {theirs:>8.2f} {mine / theirs:>6.2f}")
    (first, first_time, _), (last, last_time, theirs) = rows[0], rows[-1]
    growth = math.log(last_time / first_time) / math.log(last / first) if last > first else 0.0
    print(f"growth exponent from {first} to {last}: {growth:.2f}")
    return 0 if last_time / theirs <= MOST_OF_THE_THEME and growth <= STEEPEST else 1


def prepared(folder: Path, size: int) -> tuple[Path, Path]:
    """The same handbook twice: as definitions, and as Markdown for the theme as it comes."""
    ours, stock = folder / "ours", folder / "stock"
    content = ours / "content"
    shutil.copytree(ROOT / "content", content)
    definition = (content / f"practicals/{PATTERN}.yml").read_text(encoding="utf-8")
    (content / "pages").mkdir(exist_ok=True)
    for number in range(size):
        copy = re.sub(r"^title: .*$", f"title: Practical {number}", definition, flags=re.MULTILINE)
        (content / f"practicals/copy-{number}.yml").write_text(copy, encoding="utf-8")
    (ours / "mkdocs.yml").write_text(OURS, encoding="utf-8")
    for page in site_pages(handbook(content)):
        target = stock / "docs" / f"{page.uri.removesuffix('.html')}.md"
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_text(with_drawings(page), encoding="utf-8")
    (stock / "mkdocs.yml").write_text(STOCK, encoding="utf-8")
    return ours, stock


def with_drawings(page: SitePage) -> str:
    """A page as Markdown, its drawings as they are."""
    drawings = DRAWING.findall(page.html)
    numbers = iter(range(len(drawings)))
    marked = replace(page, html=DRAWING.sub(lambda _: f"drawing{next(numbers):04}", page.html))
    return re.sub(r"drawing([0-9]{4})", lambda mark: drawings[int(mark[1])], as_markdown(marked))


def built(folder: Path) -> float:
    """The CPU seconds of one build. Compiled modules are kept beside the two sites."""
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    command = [
        sys.executable,
        "-m",
        "mkdocs",
        "build",
        "--quiet",
        "--config-file",
        str(folder / "mkdocs.yml"),
    ]
    kept = {"PYTHONDONTWRITEBYTECODE": "", "PYTHONPYCACHEPREFIX": str(folder.parents[1] / "compiled")}
    environment = os.environ | kept | {"NO_MKDOCS_2_WARNING": "1"}
    done = subprocess.run(command, check=False, env=environment, capture_output=True, text=True)
    if done.returncode:
        sys.exit(f"the build failed, so there is nothing to measure:\n{done.stderr}")
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    return after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime


if __name__ == "__main__":
    sys.exit(main(tuple(int(size) for size in sys.argv[1:]) or SIZES))
