"""Cards as PDF: two sides on both papers, the same words as in the browser, seen on the paper and heard."""

import csv
import json
import os
import re
import shutil
import subprocess
import sys
from collections import Counter
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import cache
from io import BytesIO
from itertools import combinations
from pathlib import Path
from typing import Any, get_args

import outloud
import pdfua
import pytest
from bs4 import BeautifulSoup, Tag
from pypdf import PdfReader

from clampstand.cli import main
from clampstand.reading import read
from clampstand.rendering.cards import cards
from clampstand.rendering.contents import Paper
from clampstand.rendering.pdf import printing
from clampstand.rendering.pdf.printing import CannotPrint, all_cards, as_pdf
from demo import CONTENT, demo_contents

SIZES = {"a4": (210, 297), "letter": (215.9, 279.4)}  # mm: ISO 216; ANSI/ASME Y14.1
POINTS = 72 / 25.4  # a millimetre
MARGIN = 12 * POINTS
PAPERS: tuple[Paper, ...] = get_args(Paper)
POPPLER = shutil.which("pdftoppm") or os.environ.get("CI")
seen_on_paper = pytest.mark.skipif(not POPPLER, reason="poppler-utils are not installed")


@cache
def all_data() -> dict[str, dict[str, Any]]:
    return dict(all_cards(demo_contents()))


@cache
def printed(paper: Paper) -> bytes:
    """All cards in one file."""
    return as_pdf(list(all_data().values()), demo_contents().day, paper)


@cache
def sides() -> dict[str, tuple[str, ...]]:
    """The text of the sides of every card, as a program reads it: of all cards on the shorter paper."""
    pages = iter(PdfReader(BytesIO(printed("letter"))).pages)
    return {path: tuple(next(pages).extract_text() for _ in range(sides_of(path))) for path in all_data()}


def sides_of(path: str) -> int:
    return 1 if path.startswith(("emergency/", "wall/")) else 2


def in_the_browser() -> Iterator[tuple[str, BeautifulSoup]]:
    """Every card for the browser with the path of the same card as PDF, without what only a reader hears."""
    for card in cards(demo_contents()):
        path = card.page.uri.removeprefix("cards/").removesuffix(".html")
        page = BeautifulSoup(card.page.html, "html.parser")
        for unseen in page.select(".unseen, svg, nav, style, title"):
            unseen.decompose()
        yield path if "/" in path else f"practical/{path}", page


def run_together(text: str) -> str:
    """Text without its spaces: where lines break is no matter, where words stand is."""
    return re.sub(r"[\s\u200b]+", "", text).casefold()


def quantities(text: str) -> set[str]:
    """Every number with the unit after it."""
    unit = r"[kMGcmµnp]?(?:m|g|L|s|V|A|Ω|Bq|Sv|Gy|W|J|eV|C|F|Pa|T|K|Hz|N|mol)|%|°C|min|h|days?|months?|ppm"
    return {" ".join(found) for found in re.findall(rf"([-−]?\d+(?:\.\d+)?)\s?({unit})(?![A-Za-z])", text)}


def words_of(tag: Tag) -> str:
    return run_together(tag.get_text())


WHOLE = {"practicals/sparks.yml": None}
"""Changes that leave the smallest content with nothing to refuse: an emergency and a skill."""


def card_of(kind: str) -> dict[str, Any]:
    return next(card for path, card in all_data().items() if path.startswith(kind))


@pytest.mark.parametrize("paper", PAPERS)
def test_two_sides_and_one_for_an_emergency(paper: Paper) -> None:
    reader = PdfReader(BytesIO(printed(paper)))
    assert len(reader.pages) == sum(map(sides_of, all_data()))
    for page in reader.pages:
        size = [float(page.mediabox.width) / POINTS, float(page.mediabox.height) / POINTS]
        assert size == pytest.approx(SIZES[paper], abs=0.1)


def test_every_side_says_which_it_is_and_of_which_card() -> None:
    for path, card in all_data().items():
        for number, side in enumerate(sides()[path], start=1):
            assert f"Side {number} of {sides_of(path)}" in side
            assert card["id"] in side
            assert run_together(card["title"]) in run_together(side)


def test_the_browser_and_the_paper_say_the_same_numbers() -> None:
    compared = 0
    for path, page in in_the_browser():
        for code in page.select(".lookup, .tick__number"):
            code.decompose()
        wanted = quantities(page.get_text(" ").replace(all_data()[path]["id"], ""))
        found = quantities(" ".join(sides()[path]).replace(all_data()[path]["id"], ""))
        assert wanted == found, path
        compared += len(wanted)
    assert compared > 200


def test_the_browser_and_the_paper_say_the_same_words() -> None:
    """Every step, warning, limit, emergency, line of kit, fact and thing to see, whole and in one piece."""
    pieces = (
        ".step__do, .warn, .numbers__value, .numbers__name, .numbers__whose, .emergency dt, .emergency dd, "
        ".telephone li, .facts dt, .facts dd, .banner li, .kit dt, .kit dd, .expected li, .dose, .wear, "
        ".foot span, .aim, .refused, .actions__do, .shout, .ring li, .trigger, .defer, .plain li, "
        ".faults div, h1, h2, .card-id"
    )
    compared: Counter[str] = Counter()
    for path, page in in_the_browser():
        text = run_together("\n".join(sides()[path]))
        for piece in page.select(pieces):
            assert words_of(piece) in text, (path, piece.get_text())
            compared[path.split("/")[0]] += 1
        said = page.select_one(".say")
        for sentence in re.split(r"(?<=[.!?])\s+", said.get_text().strip()) if said else ():
            assert run_together(sentence) in text, (path, sentence)
    assert all(compared[kind] > 20 for kind in ("practical", "emergency", "skill"))


def test_a_warning_stands_directly_before_its_step() -> None:
    warned = 0
    for path, card in all_data().items():
        if sides_of(path) == 1:
            continue
        text = run_together(sides()[path][1])
        for it in card["run"]["steps"]:
            if it["warn"] is not None:
                warned += 1
                who = f"{it['by']}:" if it["by"] else ""
                step = f"{it['number']}{it['clock']}{who}{it['do']}"
                warning = "".join(it["warn"][key] for key in ("signal", "hazard", "avoid"))
                assert run_together(warning + step) in text, path
    assert warned


def test_the_same_bytes_in_another_place_and_time() -> None:
    """Another process, with another order of hashes, another zone and another language of the machine."""
    script = (
        f"import sys; sys.path[:0] = {[str(Path(__file__).parent), *sys.path]!r}\n"
        "from test_pdf import all_data, as_pdf, demo_contents\n"
        "from hashlib import sha256\n"
        "print(sha256(as_pdf(list(all_data().values())[:3], demo_contents().day, 'a4')).hexdigest())\n"
    )
    digests = set()
    for zone, seed in (("Pacific/Auckland", "1"), ("America/Lima", "2")):
        surroundings = {**os.environ, "TZ": zone, "PYTHONHASHSEED": seed, "LC_ALL": "C"}
        done = subprocess.run(
            [sys.executable, "-c", script], env=surroundings, capture_output=True, text=True, check=True
        )
        digests.add(done.stdout.strip())
    assert len(digests) == 1
    assert re.fullmatch(r"[0-9a-f]{64}", digests.pop())


def test_it_is_dated_by_the_department_and_set_in_our_type_alone() -> None:
    reader = PdfReader(BytesIO(printed("a4")))
    assert reader.metadata is not None
    assert reader.metadata.creation_date is not None
    assert reader.metadata.creation_date.date() == demo_contents().day
    fonts = {
        str(font.get_object()["/BaseFont"]).split("+")[-1]
        for page in reader.pages
        for font in page["/Resources"]["/Font"].values()
    }
    assert fonts == {"ClampstandSans-Regular", "ClampstandSans-Bold"}


def test_an_overflow_is_told_in_millimetres() -> None:
    """The same lines are too many by more on Letter than on A4: by what Letter is shorter, 17.6 mm."""
    card = card_of("emergency/") | {"do": [{"do": "Walk.", "who": ""}] * 60}
    over = []
    for paper in PAPERS:
        with pytest.raises(CannotPrint, match="side 1, is too full by") as refused:
            as_pdf([card], demo_contents().day, paper)
        assert card["title"] in str(refused.value)
        over.append(float(re.findall(r"by ([0-9.]+) mm", str(refused.value))[0]))
    assert over[1] - over[0] == pytest.approx(297 - 279.4, abs=0.11)


def test_every_card_that_is_too_full_is_named() -> None:
    first, second = (
        card | {"run": card["run"] | {"steps": card["run"]["steps"] * 9}}
        for card in (card_of("practical/"), card_of("skill/"))
    )
    with pytest.raises(CannotPrint) as refused:
        as_pdf([first, second], demo_contents().day, "a4")
    assert re.findall(r"side (\d)", str(refused.value)) == ["2", "2"]
    assert first["title"] in str(refused.value)
    assert second["title"] in str(refused.value)


def test_what_is_measured_is_as_tall_as_what_is_printed(tmp_path: Path) -> None:
    """Columns have the height of pieces without their names: with them no side may be taller."""
    told = printing.inputs(list(all_data().values()), demo_contents().day, "letter", "Cards")
    over = []
    for kind in ("measured", "printed"):
        template = tmp_path / kind
        shutil.copytree(printing.TEMPLATE, template)
        parts = template / "parts.typ"
        words = parts.read_text(encoding="utf-8")
        assert words.count("measure(it(measured)") == 1
        parts.write_text(words.replace("measure(it(measured)", f"measure(it({kind})"), encoding="utf-8")
        compiler = printing.compiler(template)
        compiler.compile(sys_inputs=told)
        over.append([side["value"]["over"] for side in json.loads(compiler.query("<side>"))])
    assert over[0] == pytest.approx(over[1], abs=0.001)
    assert len(over[0]) == sum(map(sides_of, all_data()))


def test_a_character_without_a_glyph_is_refused() -> None:
    with pytest.raises(CannotPrint, match="☃"):
        as_pdf([card_of("emergency/") | {"when": "Beware of ☃."}], demo_contents().day, "a4")


@pytest.mark.parametrize(
    "words", ['#panic("x")', "*b* _i_ $x^2$", '#read("card.typ")', "= h \\ @label <label>", '"];#sys', "`x`"]
)
def test_an_authors_words_stay_words(words: str) -> None:
    made = as_pdf([card_of("emergency/") | {"when": words, "title": words}], demo_contents().day, "a4")
    text = PdfReader(BytesIO(made)).pages[0].extract_text()
    assert run_together(text).count(run_together(words)) >= 2


def test_a_days_cards_are_in_one_file_in_the_order_of_its_lessons() -> None:
    """Read from the tables themselves: each practical of a day once, its sheet for the wall behind it."""
    lessons: dict[str, dict[str, None]] = {}
    for table in sorted((CONTENT / "timetable").glob("*.csv")):
        for lesson in csv.DictReader(table.open(encoding="utf-8")):
            lessons.setdefault(lesson["date"], {})[lesson["practical"]] = None
    made = dict(printing.files(demo_contents(), "a4"))
    assert {path for path in made if path.startswith("day/")} == {f"day/{date}.pdf" for date in lessons}
    for date, practicals in lessons.items():
        reader = PdfReader(BytesIO(made[f"day/{date}.pdf"]))
        wanted = [
            all_data()[path]["id"]
            for practical in practicals
            for path in (f"practical/{practical}", f"practical/{practical}", f"wall/{practical}")
            if path in all_data()
        ]
        assert reader.metadata is not None
        assert str(reader.metadata.title).endswith(f"cards for {int(date[-2:])}\xa0January\xa02026")
        for page, card_id in zip(reader.pages, wanted, strict=True):
            assert card_id in page.extract_text()


@pytest.mark.parametrize("kind", ["practical/", "emergency/", "skill/"])
def test_two_checkers_find_nothing_against_pdf_ua(kind: str, tmp_path: Path) -> None:
    """ISO 14289-1 as far as two programs check it; neither takes the place of a person who listens."""
    target = tmp_path / "card.pdf"
    target.write_bytes(as_pdf([card_of(kind)], demo_contents().day, "a4"))
    heard = outloud.check(str(target))
    assert heard.error is None
    assert [finding for finding in heard.findings if finding.severity != "info"] == []
    assert heard.runs
    report = pdfua.validate(str(target))
    assert list(report.findings) == []
    assert report.outcomes


def test_every_picture_has_its_words() -> None:
    """Signs and codes carry an alternative text each, so that a screen reader says which they are."""
    card = card_of("practical/")
    root = PdfReader(BytesIO(as_pdf([card], demo_contents().day, "a4"))).trailer["/Root"]
    alternatives = Counter(_alternatives(root["/StructTreeRoot"]))
    for signed in card["banner"]:
        assert alternatives[f"Sign: {signed['words']}"] == 1
    assert alternatives[f"Code for {card['address']}"] == 1
    assert alternatives["Sign: Telephone"] == 1


def _alternatives(element: Any) -> Iterator[str]:
    element = element.get_object()
    if isinstance(element, list):
        for one in element:
            yield from _alternatives(one)
    elif isinstance(element, dict):
        if "/Alt" in element:
            yield str(element["/Alt"])
        yield from _alternatives(element.get("/K", []))


@dataclass(frozen=True)
class Word:
    """A word and its box on the page, in points from the top left."""

    text: str
    left: float
    top: float
    right: float
    bottom: float

    def middle(self) -> tuple[float, float]:
        """The band in which small letters have their ink."""
        tall = self.bottom - self.top
        return self.top + 0.35 * tall, self.bottom - 0.3 * tall


def words_on(pdf: Path, page: int) -> list[Word]:
    told = subprocess.run(
        ["pdftotext", "-bbox", "-f", str(page), "-l", str(page), str(pdf), "-"],
        capture_output=True,
        check=True,
    )
    read_back = BeautifulSoup(told.stdout.decode(), "html.parser")
    return [
        Word(word.get_text(), *(float(str(word[key])) for key in ("xmin", "ymin", "xmax", "ymax")))
        for word in read_back.find_all("word")
    ]


def grey(pdf: Path, page: int) -> tuple[int, bytes]:
    """A page at two pixels a point, as bytes from black to white, and the width of a row."""
    told = subprocess.run(
        ["pdftoppm", "-gray", "-r", "144", "-f", str(page), "-l", str(page), str(pdf)],
        capture_output=True,
        check=True,
    ).stdout
    header = re.match(rb"P5\s(\d+)\s(\d+)\s255\s", told)
    assert header
    return int(header[1]), told[header.end() :]


@seen_on_paper
@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize(
    ("path", "page"),
    [("practical/spark-counter", 1), ("practical/spark-counter", 2), ("practical/cloud-chamber", 1),
     ("emergency/dropped-source", 1), ("skill/eht-supply", 1)],
)  # fmt: skip
def test_every_word_is_seen_and_none_lies_on_another(
    path: str, page: int, paper: Paper, tmp_path: Path
) -> None:
    """A number can be in the text of a file and not on its paper: so the paper is looked at."""
    target = tmp_path / "card.pdf"
    target.write_bytes(as_pdf([all_data()[path]], demo_contents().day, paper))
    words, (width, pixels) = words_on(target, page), grey(target, page)
    assert len(words) > 50
    for word in words:
        assert word.left >= MARGIN - 1, word
        assert word.right <= SIZES[paper][0] * POINTS - MARGIN + 1, word
        left, right, (top, bottom) = int(2 * word.left), int(2 * word.right) + 1, word.middle()
        rows = (
            pixels[row * width + left : row * width + right]
            for row in range(int(2 * top), int(2 * bottom) + 1)
        )
        seen = b"".join(rows)
        assert max(seen) - min(seen) > 140, word
    for one, other in combinations(words, 2):
        across = min(one.right, other.right) - max(one.left, other.left)
        down = min(one.middle()[1], other.middle()[1]) - max(one.middle()[0], other.middle()[0])
        assert across <= 0.5 or down <= 0.5, (one, other)


def test_the_command_writes_each_card_and_all_in_one(
    tiny_content: Callable[..., Path], tmp_path: Path
) -> None:
    content, folder = tiny_content(WHOLE), tmp_path / "printed"
    assert main(["cards", str(folder), "--content", str(content), "--paper", "letter"]) == 0
    written = {path.relative_to(folder).as_posix() for path in folder.rglob("*.pdf")}
    book = read(content).book
    assert book is not None
    wanted = {f"{shelf}/{one}.pdf" for shelf, ids in (
        ("practical", book.practicals), ("emergency", book.emergencies), ("skill", book.skills)
    ) for one in ids}  # fmt: skip
    assert written == wanted | {"all.pdf"}
    for path in folder.rglob("*.pdf"):
        assert float(PdfReader(path).pages[0].mediabox.height) == pytest.approx(279.4 * POINTS, abs=0.2)


def test_the_command_refuses_what_may_not_be_printed(
    tiny_content: Callable[..., Path], tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    folder = tmp_path / "printed"
    assert main(["cards", str(folder), "--content", str(tmp_path / "nowhere")]) == 2
    assert main(["cards", str(folder), "--content", str(tiny_content({"kit/all.yml": "a: {nme: b}\n"}))]) == 1
    assert "kit/all.yml" in capsys.readouterr().err
    assert not folder.exists()


def test_the_command_says_what_does_not_fit_and_what_is_missing(
    tiny_content: Callable[..., Path],
    tmp_path: Path,
    capsys: pytest.CaptureFixture[str],
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    content, folder = tiny_content(WHOLE), tmp_path / "printed"
    department = content / "department" / "department.yml"
    as_it_was = department.read_text(encoding="utf-8")
    department.write_text(as_it_was.replace("name: Department", "name: Department ☃"), encoding="utf-8")
    assert main(["cards", str(folder), "--content", str(content)]) == 1
    assert "nothing was written" in capsys.readouterr().err
    department.write_text(as_it_was, encoding="utf-8")
    monkeypatch.setitem(sys.modules, "typst", None)
    assert main(["cards", str(folder), "--content", str(content)]) == 2
    assert "clampstand[pdf]" in capsys.readouterr().err
    assert not folder.exists()
