"""Cards: what each carries, in which order, and how it is told from an older one."""

import math
import re
from collections.abc import Iterable
from dataclasses import replace
from functools import cache

import pytest
import segno
from bs4 import BeautifulSoup, Tag

from clampstand.calculators.kit_totals import KitTotal
from clampstand.model.practical import PHASES, KitLine, Practical
from clampstand.rendering.assets import ASSETS
from clampstand.rendering.cards import cards
from clampstand.rendering.cards.emergency import MOST_ROWS
from clampstand.rendering.cards.finishing import QUIET_ZONE, code_for
from clampstand.rendering.cards.kit import kit_by_place
from clampstand.rendering.cards.practical import parted, practical_card
from clampstand.rendering.cards.steps import pauses, points, usual_doer
from clampstand.rendering.contents import Contents
from clampstand.rendering.diagrams.signs import SIGNS
from clampstand.rendering.page import SitePage
from clampstand.rendering.pages.practical import practical_page
from clampstand.rendering.prose import plain, quotes_of
from demo import demo_contents as demo
from tiny import step as made_step

MOST_WORDS = 25  # words in a sentence: GOV.UK's and the Australian style manual's figure
LEAST_MODULE = 0.5  # mm; a code's square as a telephone reads it from a hand's width
CODE_SIDE = 28  # mm, as card.css sets it


@cache
def all_cards() -> dict[str, SitePage]:
    return {card.page.uri: card.page for card in cards(demo())}


def soup(card: SitePage) -> BeautifulSoup:
    return BeautifulSoup(card.html, "html.parser")


def practical_cards() -> Iterable[tuple[Practical, BeautifulSoup]]:
    for its_id, practical in demo().book.practicals.items():
        yield practical, soup(all_cards()[f"cards/{its_id}.html"])


def text_of(tag: Tag) -> str:
    return " ".join(tag.get_text().split())


def seen(text: str) -> str:
    return " ".join(text.split())


def sentences(text: str) -> list[str]:
    return [s for s in re.split(r"(?<=[.!?])\s+", text) if s]


def ends_of(practical: Practical) -> set[str]:
    return {end for phase in PHASES for step in practical.steps(phase) for end in step.stand}


def test_everything_has_its_card() -> None:
    book = demo().book
    wanted = {f"cards/{i}.html" for i in book.practicals}
    wanted |= {f"cards/emergency/{i}.html" for i in book.emergencies}
    wanted |= {f"cards/skill/{i}.html" for i in book.skills}
    kept_back = [p.id for p in book.practicals.values() if {"watchers", "people"} & ends_of(p)]
    assert kept_back
    wanted |= {f"cards/wall/{i}.html" for i in kept_back}
    assert all_cards().keys() == wanted
    assert all(card.stands_alone for card in all_cards().values())


def test_a_page_leads_to_its_sheet_for_the_wall_where_there_is_one() -> None:
    contents = demo()
    leads = {
        its_id
        for its_id, practical in contents.book.practicals.items()
        if f"../cards/wall/{its_id}.html" in practical_page(practical, contents).html
    }
    walls = {uri.removeprefix("cards/wall/") for uri in all_cards() if uri.startswith("cards/wall/")}
    assert {f"{its_id}.html" for its_id in leads} == walls


def test_no_script_and_no_address_but_relative_ones() -> None:
    for uri, card in all_cards().items():
        page = soup(card)
        assert page.find(["script", "link", "iframe", "object", "embed", "form"]) is None, uri
        named = [tag[key] for tag in page.find_all(True) for key in ("href", "src") if key in tag.attrs]
        named += re.findall(r"url\(\"?([^\")]+)", card.html)
        assert named, uri
        assert [
            a for a in named if not re.fullmatch(r"(\.\./)+[a-z0-9/._-]+(#print)?", str(a), re.IGNORECASE)
        ] == [], uri
        assert "@import" not in card.html


def test_sides_carry_version_review_and_id() -> None:
    for practical, page in practical_cards():
        sides = page.select(".side")
        card_id = text_of(page.select_one(".card-id"))
        assert re.fullmatch(r"[0-9a-f]{4}-[0-9a-f]{8}", card_id)
        assert len(sides) == 2
        for side in sides:
            foot = text_of(side.select_one(".foot"))
            assert practical.review.version in foot
            assert str(practical.review.due.year) in foot
            assert card_id in foot


def test_the_id_is_of_the_content() -> None:
    contents = demo()
    practical = next(iter(contents.book.practicals.values()))
    same = practical_card(practical, contents).page
    assert same == all_cards()[same.uri]
    other = practical.model_copy(update={"aim": "Another aim."})
    both = (same, practical_card(other, contents).page)
    ids = {text_of(soup(card).select_one(".card-id")) for card in both}
    assert len(ids) == 2
    assert len({text_of(soup(card).select_one(".card-id")) for card in all_cards().values()}) == len(
        all_cards()
    )


def test_side_one_says_who_where_and_when() -> None:
    for practical, page in practical_cards():
        side = page.select(".side")[0]
        assert text_of(side.h1) == practical.title
        facts = text_of(side.select_one(".facts"))
        assert practical.led_by in facts
        assert seen(str(practical.lesson)) in facts.replace("\u00a0", " ")
        assert str(practical.ages) in facts
        for slot in practical.sources:
            assert all(source in facts for source in slot.one_of)


def test_every_hazard_has_its_sign_and_its_words() -> None:
    for practical, page in practical_cards():
        banner = page.select_one(".banner")
        if not practical.hazards:
            continue
        for here in practical.hazards:
            hazard = demo().book.hazards[here.hazard]
            assert hazard.name.casefold() in text_of(banner).casefold(), practical.id
            assert banner.select(f".sign-{SIGNS[hazard.sign]}"), practical.id
        assert all(text_of(item.find_all("span")[-1]) for item in banner.select("li"))


def test_the_signs_of_all_hazards_and_emergencies_are_drawn() -> None:
    book = demo().book
    asked = {hazard.sign for hazard in book.hazards.values()} | {e.sign for e in book.emergencies.values()}
    assert asked <= SIGNS.keys()


def test_numbers_carry_their_unit_and_whose_they_are() -> None:
    for practical, page in practical_cards():
        shown = page.select(".numbers li")
        assert len(shown) == min(3, len(practical.numbers))
        for item in shown:
            name, value = (
                text_of(item.select_one(".numbers__name")),
                text_of(item.select_one(".numbers__value")),
            )
            number = practical.numbers.get(name)
            if number is None:  # a supply, by its name
                item_of = {
                    f"{kit.name}, shorted": kit.output for kit in demo().book.kit.values() if kit.output
                }
                assert value == seen(str(item_of[name].short_circuit_current))
                continue
            assert value == seen(str(number.value))
            limit = demo().limit_of(number)
            assert text_of(item.select_one(".mark")) == (limit.layer if limit else "chosen here")


def test_a_supply_that_can_hurt_is_among_the_numbers_of_its_card() -> None:
    """The current through whatever shorts it, below the 5 mA that the local rules for high voltage name."""
    said = {p.id: [text_of(li) for li in page.select(".numbers li")] for p, page in practical_cards()}
    sparks = " ".join(said["spark-counter"])
    assert "2 mA EHT supply, shorted" in sparks
    assert "less than 5 mA" in sparks
    assert "shorted" not in " ".join(said["resistance-of-a-wire"])  # a cell hurts nobody


def test_steps_stand_in_order_with_box_number_clock_and_doer() -> None:
    for practical, page in practical_cards():
        quotes = quotes_of(practical, demo().book)
        steps = page.select(".side")[1].select(".step")
        assert len(steps) == len(practical.run)
        minutes = 0.0
        for number, (step, shown) in enumerate(zip(practical.run, steps, strict=True), start=1):
            assert text_of(shown.select_one(".tick__number")) == str(number)
            assert shown.select_one("input[type=checkbox][aria-label]")
            minute, _, second = text_of(shown.select_one(".step__clock")).partition(":")
            assert int(minute) + int(second or 0) / 60 == pytest.approx(minutes, abs=0.01)
            minutes += float(step.takes.high.m_as("min"))
            do = text_of(shown.select_one(".step__do")).removesuffix(" All ticked?")
            assert do.endswith(seen(plain(step.do, quotes)))
            assert all(name in do for name in step.by)
        assert minutes == pytest.approx(float(practical.lesson.high.m_as("min")), abs=0.01)


def test_there_are_fewer_than_ten_steps_between_pauses() -> None:
    paused = 0
    for uri, card in all_cards().items():
        for steps in soup(card).select(".steps"):
            between = 0
            for step in steps.select(".step"):
                between += 1
                assert between < 10, uri
                if step.select_one(".pause"):
                    paused, between = paused + 1, 0
            assert between, uri  # after the last step comes the next heading, and no pause
    assert paused


def test_a_pause_comes_where_something_ends_and_not_with_a_source_in_hand() -> None:
    nine = [made_step() for _ in range(9)]
    assert pauses(nine) == set()
    assert pauses([*nine, made_step()]) == {9}
    waits = [*nine[:4], made_step(unattended="yes"), *nine]
    assert pauses(waits) == {5}
    eht = [
        made_step(switches_on={"eht": "low"}),
        made_step(switches_off="eht"),
        made_step(discharges="eht"),
    ]
    assert pauses([*nine[:6], *eht, *nine]) == {9}
    assert pauses([*nine[:7], *eht, *nine]) == {7, 10}
    other = [*nine[:6], made_step(by=["technician"]), *nine]
    assert pauses(other) == {7}
    held = [*nine[:5], made_step(takes_out="source"), *nine[:2], made_step(puts_back="source"), *nine]
    assert pauses(held) == {9}
    assert pauses([*nine[:6], made_step(takes_out="source"), *nine]) == {6, 15}


def test_few_steps_are_set_for_arms_length_and_many_as_small_as_clear_print_allows() -> None:
    """At 0.8 m 16 pt of our type is 16 minutes of arc (ISO 9241-3, as quoted); 12 pt is UKAAF's least."""
    sizes = [points([made_step("Lift the source out of its box with the forceps.")] * n) for n in (9, 27, 60)]
    assert sizes == [16, 14, 12]
    for practical, page in practical_cards():
        assert f"side--{points(practical.run)}pt" in page.select(".side")[1]["class"]


def test_a_doer_is_left_unsaid_only_where_the_heading_says_who() -> None:
    for practical, page in practical_cards():
        usual = usual_doer(practical.run)
        assert f"{usual}, unless said" in text_of(page.select_one(".side__title"))
        for step, shown in zip(practical.run, page.select(".side")[1].select(".step"), strict=True):
            hidden = "unseen" in shown.select_one(".step__do > b")["class"]
            assert hidden == (list(step.by) == [usual])


def test_a_warning_stands_directly_before_its_step_and_says_all_three() -> None:
    warned = 0
    for practical, page in practical_cards():
        quotes = quotes_of(practical, demo().book)
        for step, shown in zip(practical.run, page.select(".side")[1].select(".step"), strict=True):
            first = shown.find(True, recursive=False)
            assert ("warn" in first["class"]) == (step.warn is not None)
            if step.warn:
                warned += 1
                assert text_of(first.select_one(".warn__word")) == step.warn.signal
                words = text_of(first)
                assert seen(plain(step.warn.hazard, quotes)) in words
                assert words.endswith(seen(plain(step.warn.avoid, quotes)))
    assert warned


def test_the_emergency_panel_ends_the_last_side_with_the_telephone_last() -> None:
    for practical, page in practical_cards():
        panel = page.select_one(".emergency")
        assert page.select(".side")[-1].find_all(True, recursive=False)[-2] is panel
        rows = panel.select(".emergency__rows > div")
        assert 1 <= len(rows) <= MOST_ROWS
        for its_id, row in zip(practical.emergency, rows, strict=False):
            emergency = demo().book.emergencies[its_id]
            trigger, action = row.find_all(["dt", "dd"])
            assert text_of(trigger) == emergency.title
            assert (emergency.say or "") in text_of(action)
        last = panel.find_all(True, recursive=False)[-1]
        assert "telephone" in last["class"]
        for its_id in practical.emergency[:MOST_ROWS]:
            for contact in demo().book.emergencies[its_id].ring:
                assert seen(demo().book.contacts[contact].call) in text_of(last)
        others = [demo().book.emergencies[i].title for i in practical.emergency[MOST_ROWS:]]
        assert all(title in text_of(panel) for title in others)


def test_the_brief_and_todays_numbers_are_on_it() -> None:
    for practical, page in practical_cards():
        if practical.brief:
            brief = seen(plain(practical.brief, quotes_of(practical, demo().book)))
            assert text_of(page.select_one(".say")) == brief
        expected = text_of(page.select_one(".expected"))
        assert str(demo().day.year) in expected
        for _, result in demo().sheets[practical.id].numbers:
            for number in result if isinstance(result, tuple) else ():
                assert number.page_only or seen(number.shown) in expected, (practical.id, number.id)


def test_kit_that_comes_into_the_lesson_is_on_it_with_totals() -> None:
    for practical, page in practical_cards():
        kit = text_of(page.select_one(".kit"))
        for total in demo().sheets[practical.id].totals:
            item = demo().book.kit[total.line.item]
            if total.line.phase != "prepare" and not (total.line.made_here and total.line.phase):
                assert item.name in kit or item.many in kit


def test_what_is_made_only_in_the_run_is_not_fetched() -> None:
    line = KitLine(item="nitrile-gloves", per="class", made_here="yes", phase="run")
    cut_before = KitLine(item="nitrile-gloves", per="class", made_here="yes")
    assert kit_by_place([KitTotal(line, 1, 1, None, None)], demo()) == []
    assert len(kit_by_place([KitTotal(cut_before, 1, 1, None, None)], demo())) == 1


def test_lines_of_one_item_are_added_up() -> None:
    book = demo().book
    item = next(i for i in book.kit.values() if i.kept)
    lines = [KitLine(item=item.id, per="class", count=n) for n in (30, 2)]
    (place,) = kit_by_place([KitTotal(line, 1, line.count, None, None) for line in lines], demo())
    assert [(thing.how_many, thing.what) for thing in place.things] == [("32", item.many)]


def test_one_pair_is_counted_as_one() -> None:
    gloves = demo().book.kit["nitrile-gloves"]
    assert [gloves.called(count) for count in (1, 2)] == ["pair of nitrile gloves", "pairs of nitrile gloves"]
    line = KitLine(item="nitrile-gloves", per="class")
    (place,) = kit_by_place([KitTotal(line, 1, 1, None, None)], demo())
    assert [(thing.how_many, thing.what) for thing in place.things] == [("1", "pair of nitrile gloves")]


def test_what_only_the_preparation_needs_stays_off() -> None:
    line = KitLine(item=next(iter(demo().book.kit)), per="class", phase="prepare")
    assert kit_by_place([KitTotal(line, 1, 1, None, None)], demo()) == []


def test_what_only_clearing_up_needs_says_so() -> None:
    item = next(i for i in demo().book.kit.values() if i.kept)
    lines = [KitLine(item=item.id, per="class", phase=phase) for phase in ("clear_up", None)]
    (place,) = kit_by_place([KitTotal(line, 1, 1, None, None) for line in lines], demo())
    name = item.called(1)
    assert [thing.what for thing in place.things] == [f"{name} (only to clear up)", name]


def test_sentences_are_short() -> None:
    long: list[tuple[str, str]] = []
    for practical, page in practical_cards():
        spoken = [text_of(tag) for tag in page.select(".say, .warn")]
        spoken += [seen(plain(s.do, quotes_of(practical, demo().book))) for s in practical.run]
        found = (s for text in spoken for s in sentences(text) if len(s.split()) > MOST_WORDS)
        long += [(practical.id, sentence) for sentence in found]
    assert long == []


def test_no_word_shouts_but_the_signal_word() -> None:
    """Abbreviations of up to four letters are words of the trade; the signal word is raised by the style."""
    for uri, card in all_cards().items():
        page = soup(card)
        for code in page.select("style, .lookup, .foot, svg"):
            code.decompose()
        assert re.findall(r"\b[A-Z]{5,}\b", page.get_text()) == [], uri
    assert re.findall(r"([^{}]+)\{[^}]*text-transform: uppercase", style()) == ["\n.warn__word "]


def style() -> str:
    return (ASSETS / "card.css").read_text(encoding="utf-8")


def sizes_of(css: str) -> dict[str, float]:
    """The size in points of everything that is given one on paper."""
    return {
        selector.strip().rsplit("\n", 1)[-1]: float(size)
        for selector, body in re.findall(r"([^{}]+)\{([^{}]*)\}", css.split("@media screen", maxsplit=1)[0])
        for size in re.findall(r"font(?:-size)?: ([0-9.]+)pt", body)
    }


def test_type_sizes() -> None:
    sizes = sizes_of(style())
    assert min(sizes.values()) >= 9
    assert sizes["body"] >= 12
    assert not {".step", ".step__do", ".warn"} & sizes.keys()  # they take the size of the body
    assert all(sizes[name] >= 11 for name in (".kit", ".facts", ".emergency", ".expected li", ".step__clock"))
    assert not re.search(
        r"font-style: *italic|text-align: *justify|@page[^}]*size|transform: scale|zoom:", style()
    )


def test_the_sheet_for_the_wall_is_read_from_where_the_watchers_stand() -> None:
    """ISO 9241-3 as quoted by others: capitals best at 20 minutes of arc; those of the type are 0.66 em."""
    sizes = sizes_of(style())
    seen_at = 0
    for practical in demo().book.practicals.values():
        sheet = all_cards().get(f"cards/wall/{practical.id}.html")
        if sheet is None:
            continue
        far = text_of(soup(sheet).select_one(".wall__far")).replace("\u00a0", " ")
        stands = [step.stand for step in practical.run]
        named = {stand.get("watchers", stand.get("people", "")) for stand in stands} - {""}
        assert far in {str(practical.numbers[name].value) for name in named}, practical.id
        metres = float(far.removesuffix(" m"))
        needed = metres * 1000 * math.tan(math.radians(20 / 60))
        for name in (".wall__words", ".wall__further", ".wall__far"):
            assert 0.660 * sizes[name] * 25.4 / 72 >= needed, (practical.id, name)
        assert ("means: stop" in text_of(soup(sheet))) == bool(practical.stop_word)
        seen_at += 1
    assert seen_at


def test_the_code_can_be_read() -> None:
    for uri, card in all_cards().items():
        printed = text_of(soup(card).select_one(".lookup p"))
        address, card_id = re.fullmatch(r"In force\? (\S+?) ?Card (\S+)", printed).groups()
        assert address.endswith("/cards.html"), uri
        whole = f"https://{address}#{card_id}"
        code = segno.make(whole, error="m", micro=False)
        modules = code.symbol_size(border=QUIET_ZONE)[0]
        assert CODE_SIDE / modules >= LEAST_MODULE, uri
        assert str(code_for(whole)) in card.html.replace("&#34;", '"')
    assert f"width: {CODE_SIDE}mm; height: {CODE_SIDE}mm" in style()
    assert QUIET_ZONE >= 4


def test_no_address_no_code() -> None:
    book = demo().book
    without = replace(book, department=book.department.model_copy(update={"address": None}))
    card = practical_card(next(iter(book.practicals.values())), Contents(without, demo().sheets)).page
    assert soup(card).select_one(".code") is None
    assert soup(card).select_one(".card-id")


def test_an_authors_words_stay_words() -> None:
    practical = next(iter(demo().book.practicals.values()))
    hostile = practical.model_copy(
        update={"title": "</title><script>x</script>", "brief": "<img src=x onerror=y>"}
    )
    page = soup(practical_card(hostile, demo()).page)
    assert page.find("script") is None
    assert page.find("img") is None
    assert text_of(page.select_one(".say")) == "<img src=x onerror=y>"


@pytest.mark.parametrize(
    ("titles", "expected"),
    [
        (["dose to a watcher today"], (["dose", "to", "a", "watcher", "today"], [""], [])),
        (["dose to hands", "dose to the teacher"], (["dose", "to"], ["hands", "the teacher"], [])),
        (["a b", "c d"], ([], ["a b", "c d"], [])),
        (["a a", "a a a"], (["a", "a"], ["", "a"], [])),
    ],
)
def test_titles_are_parted(titles: list[str], expected: object) -> None:
    assert parted([title.split() for title in titles]) == expected


def test_the_usual_doer_is_the_one_who_does_most_alone() -> None:
    done_by = (["teacher"], ["pupils"], ["teacher"], ["teacher", "technician"])
    assert usual_doer([made_step(by=by) for by in done_by]) == "teacher"
    assert usual_doer([made_step(by=["teacher", "pupils"])]) == ""
