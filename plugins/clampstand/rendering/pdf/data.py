"""What a card says, as plain data: the same words and numbers as on the card for the browser."""

from collections.abc import Iterator

from clampstand.calculators.clock import Clocked, clock
from clampstand.model.days import days_in_words, written_day
from clampstand.model.emergency import Action, Emergency
from clampstand.model.practical import Phase, Practical
from clampstand.model.skill import Skill
from clampstand.rendering.cards.emergency import calls, emergency_card, panel
from clampstand.rendering.cards.kit import Place, kit_by_place, usual_room
from clampstand.rendering.cards.practical import (
    banner,
    dose_sentence,
    expected,
    practical_card,
    preparation,
    worked,
)
from clampstand.rendering.cards.skill import skill_card
from clampstand.rendering.cards.steps import points, usual_doer
from clampstand.rendering.cards.wall import wall_sheet
from clampstand.rendering.contents import Contents
from clampstand.rendering.key_numbers import key_numbers
from clampstand.rendering.pdf import words
from clampstand.rendering.pdf.words import Data
from clampstand.rendering.prose import Quotes, plain, quotes_of, unbroken
from clampstand.rendering.readiness import against
from clampstand.rendering.templating import duration
from clampstand.rendering.titles import titles_of
from clampstand.rendering.wall import wall_of


def practical_data(practical: Practical, contents: Contents) -> Data:
    """The card of a practical."""
    quotes, sheet = quotes_of(practical, contents.book), contents.sheets[practical.id]
    printed, titles = practical_card(practical, contents).printed, titles_of(practical)
    return words.common("practical", practical.title, printed, contents) | {
        "titles": {"say": titles.say, "kit": titles.kit, "after": titles.after, "work": titles.work},
        "aim": plain(practical.aim, quotes),
        "notices": list(_notices(practical, contents, quotes)),
        "facts": [{"name": name, "says": says} for name, says in _facts(practical, contents) if says],
        "numbers": _numbers(practical, contents),
        "banner": [words.drawn(signed.sign, signed.words) for signed in banner(practical, contents)],
        "preparation": preparation(practical),
        "set_up": _phase(practical, "set_up", sheet.clocks["set_up"], quotes),
        "wear": plain(practical.wear_note or "", quotes),
        "kit": _kit(kit_by_place(sheet.totals, contents)),
        "say": plain(practical.brief or "", quotes).strip(),
        "expected_note": f"worked out for {written_day(sheet.day)}",
        "expected": [
            {"what": one.what, "value": unbroken(one.value), "within": unbroken(one.within)}
            for one in expected(practical, contents, quotes)
        ],
        "dose": dose_sentence(worked(practical, contents)),
        "clear_up": _phase(practical, "clear_up", sheet.clocks["clear_up"], quotes),
        "run": _running(sheet.clocks["run"], quotes),
        "panel": words.panel(panel(practical.emergency, contents, quotes)),
        "foot": words.foot(practical.review, printed),
    }


def wall_data(practical: Practical, contents: Contents) -> Data | None:
    """The sheet of a practical for the wall; None where no step keeps anybody back."""
    wall, sheet = wall_of(practical), wall_sheet(practical, contents)
    if wall is None or sheet is None:
        return None
    return words.common("wall", practical.title, sheet.printed, contents) | {
        "far": wall.line.printed,
        "further": [{"words": says, "far": far} for says, far in wall.further],
        "stop_word": practical.stop_word or "",
        "foot": words.foot(practical.review, sheet.printed),
    }


def _notices(practical: Practical, contents: Contents, quotes: Quotes) -> Iterator[Data]:
    """What speaks against the practical today, and what it is excepted from."""
    for finding in against(practical, contents)[:1]:
        lead = f"Not today. On {written_day(contents.day)}:"
        yield {"lead": lead, "says": days_in_words(finding.message)}
    for exception in practical.exceptions:
        lead = f"Exception until {written_day(exception.expires)} ({exception.rule}):"
        yield {"lead": lead, "says": plain(exception.reason, quotes)}


def _facts(practical: Practical, contents: Contents) -> Iterator[tuple[str, str]]:
    needs, skills = practical.needs, contents.book.skills
    adults = f", {needs.adults} adults" if needs.adults > 1 else ""
    yield "Led by", f"{practical.led_by}{adults}"
    yield "Pupils", f"{practical.pupils}, age {practical.ages}"
    yield "Time", unbroken(str(practical.lesson))
    yield "Room", " or ".join(contents.rooms_of(practical, "run"))
    if needs.room.air_changes:
        by = f", {needs.room.ventilated_by}" if needs.room.ventilated_by else ""
        yield "Air changes", f"{unbroken(str(needs.room.air_changes))}{by}"
    yield "Source", "; ".join(" or ".join(slot.one_of) for slot in practical.sources)
    yield "Signed off for", "; ".join(skills[one].title if one in skills else one for one in needs.skills)


def _numbers(practical: Practical, contents: Contents) -> list[Data]:
    """The numbers to keep, each with whose it is."""
    shown = []
    for number in key_numbers(practical, contents):
        limit = number.limit
        unverified = " (unverified)" if limit and limit.verified == "no" else ""
        shown.append(
            {
                "name": number.name,
                "value": number.value,
                "layer": limit.layer if limit else "chosen here",
                "whose": f"{unbroken(limit.in_words)}{unverified}" if limit else "",
            }
        )
    return shown


def _phase(practical: Practical, phase: Phase, clocked: tuple[Clocked, ...], quotes: Quotes) -> Data:
    """Steps without a running clock, and a note of how long they take and who does them."""
    leader = usual_doer(practical.steps(phase))
    note = f"{duration(clocked[-1].ends)}; {leader}, unless said" if clocked else ""
    return {"note": note, "steps": words.steps(clocked, quotes, leader, running=False)}


def _running(clocked: tuple[Clocked, ...], quotes: Quotes) -> Data:
    """Steps with the minute each begins."""
    taken = tuple(one.step for one in clocked)
    leader = usual_doer(taken)
    return {
        "note": f"first the minute; {leader}, unless said",
        "steps": words.steps(clocked, quotes, leader, running=True),
        "points": points(taken),
    }


def _kit(places: list[Place]) -> Data:
    """Place by place; the room most of it is kept in is said once."""
    usual = usual_room(places)
    lines = []
    for place in places:
        elsewhere = place.room if place.room != usual else ""
        where = ", ".join(filter(None, (elsewhere, place.shelf))) or "no place on record"
        things = [{"how_many": thing.how_many, "what": thing.what} for thing in place.things]
        lines.append({"where": where, "things": things})
    return {"note": f"from the {usual}" if usual else "", "places": lines}


def emergency_data(emergency: Emergency, contents: Contents) -> Data:
    """The card of an emergency, one side."""
    quotes, printed = contents.quotes, emergency_card(emergency, contents).printed
    return words.common("emergency", emergency.title, printed, contents) | {
        "sign": words.drawn(emergency.sign, emergency.title),
        "when": plain(emergency.when, quotes),
        "say": plain(emergency.say or "", quotes),
        "do": [{"do": plain(action.do, quotes), "who": _who(action)} for action in emergency.do],
        "calls": words.calls(calls([emergency], contents.book)),
        "telephone": words.drawn("telephone", "Telephone"),
        "afterwards": plain(emergency.afterwards or "", quotes),
        "defer": plain(emergency.defer or "", quotes),
        "foot": [
            emergency.title,
            f"{contents.book.department.name}, {written_day(contents.day)}",
            f"Card {printed.card_id}",
        ],
    }


def _who(action: Action) -> str:
    """Who does an action and how long it lasts, where either is said."""
    lasts = unbroken(str(action.lasts)) if action.lasts else ""
    return ", ".join(filter(None, (*action.by, lasts)))


def skill_data(skill: Skill, contents: Contents) -> Data:
    """The card of a skill, two sides."""
    quotes, printed, kit = contents.quotes, skill_card(skill, contents).printed, contents.book.kit
    return words.common("skill", skill.title, printed, contents) | {
        "aim": plain(skill.aim, quotes),
        "good": [plain(good, quotes) for good in skill.good_looks_like],
        "kit": ", ".join(kit[item].name if item in kit else item for item in skill.kit),
        "faults": [
            {"seen": plain(f.seen, quotes), "cause": plain(f.cause, quotes), "fix": plain(f.fix, quotes)}
            for f in skill.usual_faults
        ],
        "sign_off": [plain(point, quotes) for point in skill.sign_off],
        "lasts": f"holds for {unbroken(str(skill.lasts))}",
        "note": plain(skill.note or "", quotes),
        "run": _running(clock(skill.steps), quotes),
        "panel": words.panel(panel(skill.emergency, contents, quotes)),
        "foot": words.foot(skill.review, printed),
    }
