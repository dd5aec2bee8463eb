"""The pages made from the tiny handbook: what a page must say, and that it says nothing of its own."""

import html
import re
from collections.abc import Callable
from dataclasses import replace
from html.parser import HTMLParser
from pathlib import Path

import pytest

import tiny
from clampstand.build import handbook, sheets
from clampstand.checks import RULES
from clampstand.findings import Finding, Place, Severity
from clampstand.rendering.contents import Contents
from clampstand.rendering.key_numbers import key_numbers
from clampstand.rendering.markdown import as_markdown
from clampstand.rendering.page import SitePage
from clampstand.rendering.readiness import against
from clampstand.rendering.site import pages
from clampstand.rendering.templating import duration
from clampstand.units import read_amount

Write = Callable[..., Path]

SECOND_SOURCE = """\
S-2:
  nuclide: Am-241
  activity: 37 kBq
  reference_date: 2015-01-01
  form: sealed cup
  emits: alpha
  serial: A2
  certificate: C2
  received: 2015-02-01
  position: store
  leak_test: {last: 2025-06-01, result: pass, every: 24 months}
  last_seen: 2026-01-01
  basis: exempt
  status: in use
"""


def contents_of(content: Path) -> Contents:
    read = handbook(content)
    return Contents(read.book, sheets(read.lessons), read.findings, RULES)


@pytest.fixture
def contents(tiny_content: Write) -> Contents:
    return contents_of(tiny_content())


def made(contents: Contents) -> dict[str, SitePage]:
    return {page.uri: page for page in pages(contents)}


def words_of(page: SitePage) -> str:
    return " ".join(html.unescape(re.sub(r"<[^>]+>", " ", page.html)).split())


def finding(subject: str, message: str, mend: str = "") -> Finding:
    return Finding(Place("x.yml", 1, 1), "some-rule", Severity.WARNING, message, mend=mend, subject=subject)


def test_every_definition_has_its_page(contents: Contents):
    uris = made(contents).keys()
    book = contents.book
    for folder, shelf in (
        ("practicals", book.practicals),
        ("prep", book.practicals),
        ("emergencies", book.emergencies),
        ("skills", book.skills),
    ):
        assert {f"{folder}/{its_id}.html" for its_id in shelf} <= uris
    assert {f"rules/{rule.id}.html" for rule in RULES} <= uris


class _Links(HTMLParser):
    def __init__(self) -> None:
        super().__init__()
        self.hrefs: list[str] = []
        self.anchors: set[str] = set()
        self.open_tags: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        values = dict(attrs)
        self.anchors |= {values["id"] or ""} if "id" in values else set()
        if tag == "a":
            self.hrefs.append(values.get("href") or "")
        if tag not in ("br", "input", "meta", "link", "hr", "img"):
            self.open_tags.append(tag)

    def handle_endtag(self, tag: str) -> None:
        assert self.open_tags.pop() == tag


def parsed(page: SitePage) -> _Links:
    links = _Links()
    links.feed(page.html)
    assert not links.open_tags, page.uri
    return links


def test_every_link_between_pages_leads_somewhere_and_every_tag_is_closed(contents: Contents):
    site = made(contents)
    known = {uri: parsed(page) for uri, page in site.items() if not page.stands_alone}
    by_hand = {"first-lesson.html", "preparing.html", "maintaining.html"}
    for uri, links in known.items():
        for href in links.hrefs:
            if href.startswith("https://"):
                continue
            path, _, anchor = href.partition("#")
            target = (
                (Path("/") / uri).parent.joinpath(path).resolve().relative_to("/").as_posix() if path else uri
            )
            assert target in site or target in by_hand or target.startswith("cards/"), (uri, href)
            if anchor and target in known:
                assert anchor in known[target].anchors, (uri, href)


def test_headings_of_a_page_have_anchors_of_their_own(contents: Contents):
    for page in made(contents).values():
        anchors = re.findall(r'\bid="([^"]+)"', page.html)
        assert len(anchors) == len(set(anchors)), page.uri


def test_the_first_screen_names_who_when_where_and_the_limited_numbers_first(contents: Contents):
    words = words_of(made(contents)["practicals/sparks.html"])
    for said in (
        "See sparks in air.",
        "led by the teacher, signed off in Working with forceps",
        "ages 14 to 18; pupils watch",
        "10\u00a0min in the lesson",
        "Laboratory",
        "100\u00a0mm hand distance local rule at least 100\u00a0mm",
        "4.5\u00a0kV working voltage chosen here",
    ):
        assert html.unescape(said).replace("\u00a0", " ") in words.replace("\u00a0", " ")
    sparks = contents.book.practicals["sparks"]
    assert [number.name for number in key_numbers(sparks, contents)] == ["hand distance", "working voltage"]


def test_a_narrow_window_finds_the_parts_of_a_page_that_are_there(contents: Contents):
    html_of = made(contents)["practicals/sparks.html"].html
    jumps = re.findall(r'<a href="#([^"]+)"', html_of[html_of.index('class="jumps"') :].split("</nav>")[0])
    assert {"steps", "allowed", "hazards"} <= set(jumps)
    assert all(f'<h2 id="{name}"' in html_of for name in jumps)


def test_steps_carry_the_running_clock_and_their_actor(contents: Contents):
    words = words_of(made(contents)["practicals/sparks.html"])
    assert "0–5 min teacher Set high-tension supply to 4.5 kV ." in words
    assert "5–10 min teacher Bring S-1 near in forceps" in words


def test_a_warning_stands_directly_before_its_step(tiny_content: Write):
    content = tiny_content()
    file = content / "practicals/sparks.yml"
    warned = file.read_text().replace(
        "    switches_on:",
        "    warn: {signal: danger, hazard: The plates bite., avoid: Touch nothing.}\n    switches_on:",
    )
    file.write_text(warned)
    words = words_of(made(contents_of(content))["practicals/sparks.html"])
    assert re.search(
        r"danger The plates bite\. Touch nothing\. 0–5 min teacher Set high-tension supply", words
    )


def test_what_speaks_against_a_practical_is_the_first_thing_its_page_says(contents: Contents):
    warned = replace(
        contents, findings=(finding("practicals/sparks", "the leak test is overdue", "test it"),)
    )
    words = words_of(made(warned)["practicals/sparks.html"])
    assert "No, because the leak test is overdue. To mend it: test it." in words
    assert "Nothing on record against it" not in words
    assert "no" in words_of(made(warned)["practicals/index.html"])


def test_a_fault_of_one_source_says_no_only_where_no_other_will_do(tiny_content: Write):
    only = contents_of(tiny_content())
    faulty = finding("sources/S-1", "S-1 is leaking")
    sparks = only.book.practicals["sparks"]
    assert against(sparks, replace(only, findings=(faulty,))) == (faulty,)

    content = tiny_content()
    register = content / "department/sources.yml"
    register.write_text(register.read_text() + SECOND_SOURCE)
    file = content / "practicals/sparks.yml"
    file.write_text(file.read_text().replace("one_of: S-1", "one_of: [S-1, S-2]"))
    two = contents_of(content)
    sparks = two.book.practicals["sparks"]
    assert against(sparks, replace(two, findings=(faulty,))) == ()
    other = finding("sources/S-2", "S-2 is lost")
    assert against(sparks, replace(two, findings=(faulty, other))) == (faulty, other)


def test_a_fault_of_the_register_reaches_the_pages_of_the_practicals(tiny_content: Write):
    content = tiny_content()
    register = content / "department/sources.yml"
    register.write_text(register.read_text().replace("last: 2025-06-01", "last: 2020-06-01"))
    contents = contents_of(content)
    told = [one.rule for one in against(contents.book.practicals["sparks"], contents)]
    assert "leak-test-due" in told
    assert "leak test" in words_of(made(contents)["sources/index.html"])


def test_an_unverified_limit_says_so_wherever_it_is_used(tiny_content: Write):
    content = tiny_content()
    pack = content / "limits/house.yml"
    pack.write_text(pack.read_text() + "    verified: no\n")
    site = made(contents_of(content))
    assert "at least 100 mm unverified" in words_of(site["practicals/sparks.html"]).replace("\u00a0", " ")
    assert "at least 100 mm unverified" in words_of(site["limits/index.html"]).replace("\u00a0", " ")


def test_what_was_read_twice_says_so_and_what_was_read_once_too(tiny_content: Write):
    content = tiny_content()
    (content / "records").mkdir(exist_ok=True)
    (content / "department/people.yml").write_text("TEC1: {role: technician}\n")
    department = content / "department/department.yml"
    department.write_text(department.read_text() + "reads_twice: [limits, certificates]\n")
    (content / "records/certificates-read-twice.csv").write_text(
        "date,source,activity,from,by\n2025-11-03,S-1,1 µCi,certificate C1,TEC1\n"
    )
    (content / "records/limits-read-twice.csv").write_text(
        "date,pack,key,says,from,by\n2025-11-04,house,radiation.hand-to-source,at least 10 cm,the door,TEC1\n"
    )
    site = made(contents_of(content))
    sources, limits = (words_of(site[f"{name}/index.html"]) for name in ("sources", "limits"))
    assert "(read twice, again on 3 November 2025 from certificate C1)" in sources.replace("\u00a0", " ")
    assert "; read twice, again on 4 November 2025 from the door" in limits.replace("\u00a0", " ")
    assert "; read once" in limits
    pack = content / "limits/house.yml"
    pack.write_text(pack.read_text() + "    verified: no\n")
    limits = words_of(made(contents_of(content))["limits/index.html"]).replace("\u00a0", " ")
    assert "read twice" not in limits
    assert "; compared on 4 November 2025 with the door" in limits


def test_an_exception_is_printed_with_its_reason_and_its_end(tiny_content: Write):
    content = tiny_content()
    file = content / "practicals/sparks.yml"
    file.write_text(
        file.read_text()
        + "exceptions: [{rule: source-returned, reason: The store is being painted., approved_by: lead,"
        " on: 2026-01-10, expires: 2026-03-01}]\n"
    )
    words = words_of(made(contents_of(content))["practicals/sparks.html"]).replace("\u00a0", " ")
    assert "may break the rule source-returned until 1 March 2026" in words
    assert "The store is being painted." in words
    assert "Approved by the Head of physics on 10 January 2026." in words


def test_what_an_exception_allows_is_no_reason_against(tiny_content: Write):
    content = tiny_content()
    file = content / "practicals/sparks.yml"
    exception = (
        "exceptions: [{rule: some-rule, reason: Paint, approved_by: lead, on: 2026-01-10, expires: E}]\n"
    )
    found = finding("practicals/sparks", "the source is out too long")
    for expires, told in (("2026-01-15", ()), ("2026-01-14", (found,))):
        file.write_text(
            tiny.TINY["practicals/sparks.yml"] + exception.replace("expires: E", f"expires: {expires}")
        )
        contents = replace(contents_of(content), findings=(found,))
        assert against(contents.book.practicals["sparks"], contents) == told


def test_totals_on_the_preparation_sheet_are_those_of_the_class(tiny_content: Write):
    content = tiny_content()
    file = content / "practicals/sparks.yml"
    file.write_text(
        file.read_text().replace(
            "{item: plates, per: class}", "{item: plates, per: group, count: 2, spare: 1}"
        )
    )
    words = words_of(made(contents_of(content))["prep/sparks.html"])
    assert "plates 17 2 for each group, 1 spare" in words  # 24 pupils in threes: 8 groups, 2 each, 1 spare


def test_what_comes_back_is_counted_once_for_each_thing(tiny_content: Write):
    content = tiny_content()
    file = content / "practicals/sparks.yml"
    file.write_text(
        file.read_text().replace(
            "{item: plates, per: class}", "{item: plates, per: class}\n  - {item: plates, per: group}"
        )
    )
    comes_back = words_of(made(contents_of(content))["prep/sparks.html"]).partition("What comes back")[2]
    assert "9 × plates" in comes_back  # one for the class, one for each of 8 groups
    assert comes_back.count("plates") == 1


def test_waste_is_told_in_sentences(tiny_content: Write):
    content = tiny_content()
    file = content / "practicals/sparks.yml"
    file.write_text(
        file.read_text()
        + "waste:\n  - what: plates\n    route: reuse\n    how: wiped with a cloth\n    by: technician\n"
        + "    never: [sink, bin]\n"
    )
    words = words_of(made(contents_of(content))["prep/sparks.html"])
    assert "Reuse (technician). Wiped with a cloth. Never: sink, bin." in words


@pytest.mark.parametrize(
    ("seconds", "said"),
    [
        (0, "0 min"),
        (20, "20 s"),
        (60, "1 min"),
        (90, "1.5 min"),
        (100, "100 s"),
        (390, "6.5 min"),
        (820, "14 min"),
        (7200, "2 h"),
        (180_000, "2.1 days"),
    ],
)
def test_a_length_of_time_is_said_as_people_plan_by_it(seconds: int, said: str):
    assert duration(read_amount(f"{seconds} s").value).replace("\u00a0", " ") == said


def test_what_is_due_is_in_the_order_of_its_days(contents: Contents):
    words = words_of(made(contents)["due/index.html"]).replace("\u00a0", " ")
    days = ["1 June 2026", "1 September 2026", "1 June 2027"]
    places = [words.index(day) for day in days]
    assert places == sorted(places)
    assert "overdue" not in words


def test_search_knows_the_words_people_type(tiny_content: Write):
    content = tiny_content()
    file = content / "practicals/sparks.yml"
    file.write_text(file.read_text() + "search: [clicky thing, dusty]\n")
    search = made(contents_of(content))["practicals/sparks.html"].search
    assert search is not None
    assert search.about == "See sparks in air."
    for known in ("clicky thing", "dusty", "high-tension supply", "electric shock"):
        assert known in search.text


def test_the_same_content_gives_the_same_pages(tiny_content: Write):
    content = tiny_content()
    assert made(contents_of(content)) == made(contents_of(content))


def test_markdown_says_what_the_page_says(contents: Contents):
    text = as_markdown(made(contents)["practicals/sparks.html"])
    assert text.startswith("[Handbook](../index.md) / [Practicals](../practicals/index.md)\n\n# Sparks\n")
    assert "## Steps" in text
    assert "](../skills/forceps-work.md)" in text
    assert "<" not in re.sub(r"\\<", "", text)


def test_hostile_words_stay_words_in_markdown(tiny_content: Write):
    content = tiny_content()
    file = content / "practicals/sparks.yml"
    file.write_text(
        file.read_text().replace(
            "aim: See sparks in air.", "aim: '<script>x</script> [a](javascript:b) *c* _d_'"
        )
    )
    text = as_markdown(made(contents_of(content))["practicals/sparks.html"])
    assert r"\<script\>x\</script\> \[a\](javascript:b) \*c\* \_d\_" in text


def test_the_register_shows_the_share_of_what_may_be_kept_without_a_permit():
    demo = Path(__file__).parents[2] / "content"
    page = words_of(made(contents_of(demo))["sources/index.html"])
    assert "Not in force here" in page
    assert "Σ A/L over the sources" in page


def test_what_is_made_on_the_way_is_not_ordered(tiny_content: Write):
    kit = tiny.TINY["kit/all.yml"].replace("name: plates}", "name: plate, plural: plates, lead: 2 days}")
    sparks = tiny.TINY["practicals/sparks.yml"]
    for line, ordered in (
        ("{item: plates, per: class, count: 3}", True),
        ("{item: plates, per: class, count: 3, made_here: yes}", False),
    ):
        changed = sparks.replace("{item: plates, per: class}", line)
        content = tiny_content({"kit/all.yml": kit, "practicals/sparks.yml": changed})
        said = words_of(made(contents_of(content))["prep/sparks.html"]).replace("\u00a0", " ")
        assert ("Order 3 plates , 2 days before" in said) == ordered
        assert ("made here" in said) != ordered


def test_waste_is_said_in_whole_sentences(tiny_content: Write):
    waste = "waste: [{what: plates, route: bin, how: in a bag, by: teacher, never: [sink, drain]}]\n"
    sparks = f"{tiny.TINY['practicals/sparks.yml']}{waste}"
    said = words_of(made(contents_of(tiny_content({"practicals/sparks.yml": sparks})))["prep/sparks.html"])
    assert "Bin (teacher). In a bag. Never: sink, drain." in said


def test_what_staff_do_alone_speaks_of_no_class(tiny_content: Write):
    said = {}
    for pupils in ("watch", "not there"):
        sparks = tiny.TINY["practicals/sparks.yml"].replace("pupils: watch", f"pupils: {pupils}")
        sparks += "brief: Stand still.\nask: [{question: Why?, answer: So.}]\n"
        there = made(contents_of(tiny_content({"practicals/sparks.yml": sparks})))
        said[pupils] = " ".join(words_of(there[f"{folder}/sparks.html"]) for folder in ("practicals", "prep"))
    told = ("Say to the class", "Ask the class", "In the lesson", "For the class", "24 pupils")
    assert all(words in said["watch"] for words in told)
    assert not any(words in said["not there"] for words in (*told, "the lesson", "the class"))
    assert "Class none; ages 14 to 18" in said["not there"]


def test_pairs_are_counted_as_pairs(tiny_content: Write):
    kit = tiny.TINY["kit/all.yml"].replace("{name: plates}", "{name: gloves, plural: pairs of gloves}")
    sparks = tiny.TINY["practicals/sparks.yml"]
    for count, table, back in ((1, "gloves 1 pair 1 for the class", "1 × pair of gloves"),
                               (2, "gloves 2 pairs 2 for the class", "2 × pairs of gloves")):  # fmt: skip
        changed = sparks.replace(
            "{item: plates, per: class}", f"{{item: plates, per: class, count: {count}}}"
        )
        content = tiny_content({"kit/all.yml": kit, "practicals/sparks.yml": changed})
        said = words_of(made(contents_of(content))["prep/sparks.html"])
        assert table in said
        assert back in said


def test_over_the_drawings_stands_what_they_show(tiny_content: Write):
    sparks = tiny.TINY["practicals/sparks.yml"]
    wired = "circuits: [{supply: supply, feeds: plates, voltage: working voltage}]\n"
    stood = "    stand: {hands: hand distance, watchers: 2 m}\n"
    for left_out, title in (
        ((), "Where to stand, and how it is wired"),
        ((wired,), "Where to stand"),
        ((stood,), "How it is wired"),
    ):
        changed = sparks
        for words in left_out:
            changed = changed.replace(words, "")
        page = made(contents_of(tiny_content({"practicals/sparks.yml": changed})))["practicals/sparks.html"]
        assert f'<h2 id="where">{title}</h2>' in page.html
