"""The replay of the steps: what is out, on, charged, worn, lit and present before, during and after each."""

from clampstand.model.step import Step
from clampstand.timeline import Power, replay_steps
from clampstand.units import q


def moments(*steps: dict[str, object]):
    """The replay of steps given as what they change."""
    return replay_steps(
        tuple(Step.model_validate({"do": "Do it.", "by": "teacher", "takes": "1 min"} | s) for s in steps)
    )


def test_a_source_is_out_from_its_box_until_it_is_back():
    signed, taken, back, counted = moments(
        {"signs_out": "source"},
        {"takes_out": "source", "holds_with": "forceps"},
        {"puts_back": "source"},
        {"counts_back": "source"},
    )
    assert not signed.after.out
    assert taken.during.out["source"].since.number == 2
    assert taken.after.out["source"].held_with == "forceps"
    assert "source" in back.during.out
    assert not back.after.out
    assert "source" in back.after.signed_out
    assert not counted.after.signed_out


def test_a_source_set_down_is_held_by_nothing_until_picked_up():
    _, down, up = moments(
        {"takes_out": "source", "holds_with": "forceps"},
        {"sets_down": "source"},
        {"picks_up": "source", "holds_with": "tongs"},
    )
    assert down.after.out["source"].held_with is None
    assert down.after.out["source"].standing
    assert up.during.out["source"].held_with == "tongs"
    assert up.during.out["source"].since.number == 1


def test_a_supply_stays_charged_until_it_is_discharged():
    on, off, waited, shorted = moments(
        {"switches_on": {"supply": "2 kV"}},
        {"switches_off": "supply"},
        {"waits": "10 s"},
        {"discharges": "supply"},
    )
    assert on.handled.supply("supply").power is Power.OFF
    assert on.during.supply("supply").power is Power.ON
    assert off.after.supply("supply").power is Power.CHARGED
    assert waited.after.supply("supply").waited == q("10 s")
    assert shorted.after.supply("supply").power is Power.DISCHARGED


def test_one_step_may_switch_off_wait_discharge_and_then_touch():
    _, safe = moments(
        {"switches_on": {"supply": "2 kV"}},
        {"switches_off": "supply", "waits": "10 s", "discharges": "supply", "touches": "plates"},
    )
    assert safe.before.supply("supply").power is Power.ON
    assert safe.handled.supply("supply").power is Power.DISCHARGED


def test_discharging_a_supply_that_is_on_does_not_make_it_safe():
    _, shorted = moments({"switches_on": {"supply": "2 kV"}}, {"discharges": "supply"})
    assert shorted.after.supply("supply").power is Power.ON


def test_what_a_group_puts_on_each_of_them_wears():
    dressed, undressed = moments(
        {"puts_on": {"adults": "gloves", "everyone": "goggles"}},
        {"takes_off": {"teacher": "gloves"}},
    )
    assert dressed.during.wears("second adult") == {"gloves", "goggles"}
    assert dressed.during.wears("pupils") == {"goggles"}
    assert undressed.during.wears("teacher") == {"gloves", "goggles"}
    assert undressed.after.wears("teacher") == {"goggles"}
    assert undressed.after.wears("technician") == {"gloves", "goggles"}


def test_a_flame_put_out_in_a_step_burns_during_it():
    _, out = moments({"lights": "burner"}, {"puts_out": "burner"})
    assert "burner" in out.during.lit
    assert "burner" not in out.after.lit


def test_what_is_taken_away_is_gone_with_its_vapour():
    opened, gone = moments({"brings_in": "spirit", "opens": "spirit"}, {"takes_away": "spirit"})
    assert "spirit" in opened.after.vapours
    assert not gone.after.vapours
    assert not gone.after.present


def test_the_class_can_leave_and_come():
    here, left, back = moments({"class": "arrives"}, {"class": "leaves"}, {"class": "arrives"})
    assert here.during.class_here
    assert left.during.class_here
    assert not left.after.class_here
    assert back.during.class_here
