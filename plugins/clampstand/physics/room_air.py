"""Carbon dioxide in a room: how far it rises, how soon it clears, and what a person breathes on average.

One well-mixed zone (the form of ASHRAE 62.1, appendix on CO2; from memory). Cold gas from dry ice is heavier
than air and gathers low, so near the floor, in a sink or under a bench the truth is worse than these
numbers. Concentrations are fractions by volume: 5000 ppm is 0.005. Any closed space is a room here: a lift,
a car, a store.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import NamedTuple, cast

from clampstand.units import OutOfRange, Quantity, Takes, bare, exp, formula, ln, number_in, quantity

OXYGEN_IN_AIR = quantity(0.2095, "")

_FRACTION = Takes("", at_least=0, at_most=1)
_DENSITY = Takes("kg/m**3", more_than=0)
_ROOM = Takes("m**3", more_than=0)
_AIR_CHANGES = Takes("1/s", at_least=0)
_TIME = Takes("s", at_least=0)
_RELEASE = Takes("m**3/s", at_least=0)


@formula("", "Δx = m/(ρ·V)", mass=Takes("kg", at_least=0), gas_density=_DENSITY, room_volume=_ROOM)
def rise_in_closed_room(mass: Quantity, gas_density: Quantity, room_volume: Quantity) -> Quantity:
    """Rise of the fraction of a gas when a mass of it spreads in a closed room, ``Δx = m/(ρ·V)``.

    m in kg, ρ the density of the gas at the room's temperature and pressure in kg/m³, V in m³. Simple
    dilution: no gas leaves, which errs on the safe side; below about 20 % it is within a tenth of the truth.

    >>> rise = rise_in_closed_room(quantity(3, "kg"), quantity(1.839, "kg/m**3"), quantity(30, "m**3"))
    >>> f"{rise.m_as('ppm'):.0f} ppm"
    '54377 ppm'
    """
    return mass / (gas_density * room_volume)


@formula(
    "",
    "x = xₒ + m/(ρ·V)",
    outdoor=_FRACTION,
    mass=Takes("kg", at_least=0),
    gas_density=_DENSITY,
    room_volume=_ROOM,
)
def fraction_in_closed_room(
    outdoor: Quantity, mass: Quantity, gas_density: Quantity, room_volume: Quantity
) -> Quantity:
    """Fraction of a gas once a mass of it has spread in a closed room, ``x = xₒ + m/(ρ·V)``.

    xₒ the fraction at the start, as outdoors; m in kg, ρ in kg/m³ at the room's temperature, V in m³. Range
    and source as :func:`rise_in_closed_room`.

    >>> x = fraction_in_closed_room(
    ...     quantity(420, "ppm"), quantity(3, "kg"), quantity(1.839, "kg/m**3"), quantity(30, "m**3")
    ... )
    >>> f"{x.m_as('ppm'):.0f} ppm"
    '54797 ppm'
    """
    return outdoor + rise_in_closed_room.body(mass, gas_density, room_volume)


@formula(
    "kg",
    "m = (x − x₀)·ρ·V",
    limit=_FRACTION,
    start=_FRACTION,
    gas_density=_DENSITY,
    room_volume=_ROOM,
)
def greatest_mass_for_limit(
    limit: Quantity, start: Quantity, gas_density: Quantity, room_volume: Quantity
) -> Quantity:
    """Greatest mass that can spread in a closed room before a limit is reached, ``m = (x − x₀)·ρ·V``.

    x the limit and x₀ the fraction at the start, ρ in kg/m³ at the room's temperature, V in m³; nothing when
    the room is at the limit already. Source: :func:`rise_in_closed_room`, solved for the mass.

    >>> m = greatest_mass_for_limit(
    ...     quantity(5000, "ppm"), quantity(420, "ppm"), quantity(1.839, "kg/m**3"), quantity(200, "m**3")
    ... )
    >>> f"{m:.3g~P}"
    '1.68 kg'
    """
    return (limit - start) * gas_density * room_volume if limit > start else 0 * gas_density * room_volume


@formula("m**3/s", "G = ṁ/ρ", mass_rate=Takes("kg/s", at_least=0), gas_density=_DENSITY)
def gas_release(mass_rate: Quantity, gas_density: Quantity) -> Quantity:
    """Volume of gas given off per time by a mass subliming, ``G = ṁ/ρ`` (ṁ in kg/s, ρ in kg/m³, G in m³/s).

    >>> f"{gas_release(quantity(1, 'kg/h'), quantity(1.839, 'kg/m**3')).to('L/h'):.3g~P}"
    '544 l/h'
    """
    return mass_rate / gas_density


@formula("m**3/s", "G = n·g", people=Takes("", at_least=0), each=_RELEASE)
def breath_release(people: Quantity, each: Quantity) -> Quantity:
    """Carbon dioxide breathed out by the people in a room, ``G = n·g`` (g and G in m³/s).

    >>> f"{breath_release(bare(32), quantity(0.018, 'm**3/h')).to('m**3/h'):.3g~P}"
    '0.576 m³/h'
    """
    return people * each


@formula("1/s", "λ = q/V", flow=Takes("m**3/s", at_least=0), room_volume=_ROOM)
def air_changes_of(flow: Quantity, room_volume: Quantity) -> Quantity:
    """Air changes of a room from the flow of fresh air, ``λ = q/V`` (q in m³/s, V in m³, λ in 1/s).

    Only air from outdoors counts: a unit that stirs or cools the room's own air changes nothing.

    >>> f"{air_changes_of(quantity(400, 'm**3/h'), quantity(200, 'm**3')).m_as('1/h'):.3g} per hour"
    '2 per hour'
    """
    return flow / room_volume


@formula(
    "",
    "x∞ = xₒ + G/(λ·V)",
    outdoor=_FRACTION,
    release=_RELEASE,
    room_volume=_ROOM,
    air_changes=Takes("1/s", more_than=0),
)
def steady_fraction(
    outdoor: Quantity, release: Quantity, room_volume: Quantity, air_changes: Quantity
) -> Quantity:
    """Fraction a ventilated room settles at while gas is released into it, ``x∞ = xₒ + G/(λ·V)``.

    xₒ the fraction outdoors, G the release in m³/s, λ the air changes in 1/s, V in m³. Needs some
    ventilation.

    >>> x = steady_fraction(
    ...     quantity(420, "ppm"), quantity(0.5437, "m**3/h"), quantity(200, "m**3"), quantity(2, "1/h")
    ... )
    >>> f"{x.m_as('ppm'):.0f} ppm"
    '1779 ppm'
    """
    return outdoor + release / (room_volume * air_changes)


@formula(
    "",
    "x = xₒ + (x₀ − xₒ)·e^(−λt) + G·(1 − e^(−λt))/(λ·V)",
    start=_FRACTION,
    outdoor=_FRACTION,
    release=_RELEASE,
    room_volume=_ROOM,
    air_changes=_AIR_CHANGES,
    time=_TIME,
)
def fraction_after(
    start: Quantity,
    outdoor: Quantity,
    release: Quantity,
    room_volume: Quantity,
    air_changes: Quantity,
    time: Quantity,
) -> Quantity:
    """Fraction of a gas in a room after a time of steady release and ventilation.

    ``x = xₒ + (x₀ − xₒ)·e^(−λt) + G·(1 − e^(−λt))/(λ·V)``: x₀ the fraction at the start, xₒ outdoors, G the
    release in m³/s, V in m³, λ the air changes in 1/s (none is allowed: the room is then closed and the rise
    is G·t/V), t in seconds.

    >>> x = fraction_after(
    ...     quantity(420, "ppm"), quantity(420, "ppm"), quantity(0.5437, "m**3/h"),
    ...     quantity(200, "m**3"), quantity(2, "1/h"), quantity(1, "h"),
    ... )
    >>> f"{x.m_as('ppm'):.0f} ppm"
    '1595 ppm'
    """
    return (
        outdoor
        + (start - outdoor) * exp(-air_changes * time)
        + (
            release * time / room_volume  # the limit of small λt, where the other form loses its figures
            if air_changes * time < 1e-7
            else release * (1 - exp(-air_changes * time)) / (air_changes * room_volume)
        )
    )


@formula(
    "",
    "x̄ = xₒ + (x₀ − xₒ)·f + G·t·(1 − f)/(λt·V),  f = (1 − e^(−λt))/(λt)",
    start=_FRACTION,
    outdoor=_FRACTION,
    release=_RELEASE,
    room_volume=_ROOM,
    air_changes=_AIR_CHANGES,
    time=_TIME,
)
def mean_fraction(
    start: Quantity,
    outdoor: Quantity,
    release: Quantity,
    room_volume: Quantity,
    air_changes: Quantity,
    time: Quantity,
) -> Quantity:
    """Time average of :func:`fraction_after` from the start to a time; arguments as there.

    Source: its integral over the time, divided by the time.

    >>> x = mean_fraction(
    ...     quantity(420, "ppm"), quantity(420, "ppm"), quantity(0.5437, "m**3/h"),
    ...     quantity(200, "m**3"), quantity(2, "1/h"), quantity(1, "h"),
    ... )
    >>> f"{x.m_as('ppm'):.0f} ppm"
    '1192 ppm'
    """
    return (
        outdoor
        + (start - outdoor) * (1 - air_changes * time / 2)
        + release * time / room_volume * (1 / 2 - air_changes * time / 6)
        if air_changes * time < 1e-4  # two terms of the series, where the other form loses its figures
        else outdoor
        + (start - outdoor) * (1 - exp(-air_changes * time)) / (air_changes * time)
        + release / (air_changes * room_volume) * (1 - (1 - exp(-air_changes * time)) / (air_changes * time))
    )


@formula(
    "s",
    "t = ln(Δx/Δx₁)/λ",
    rise=_FRACTION,
    safe_rise=Takes("", more_than=0, at_most=1),
    air_changes=Takes("1/s", more_than=0),
)
def time_to_clear(rise: Quantity, safe_rise: Quantity, air_changes: Quantity) -> Quantity:
    """Time for a room with nothing more released to clear, ``t = ln(Δx/Δx₁)/λ``.

    Δx is how far the fraction is above outdoors, Δx₁ how far it may be, λ the air changes in 1/s, t in
    seconds; nothing when it is low enough already. Source: :func:`fraction_after` without release, solved
    for the time.

    >>> time = time_to_clear(quantity(14580, "ppm"), quantity(4580, "ppm"), quantity(2, "1/h"))
    >>> f"{time.to('min'):.3g~P}"
    '34.7 min'
    """
    return ln(rise / safe_rise) / air_changes if rise > safe_rise else 0 / air_changes


@formula("", "x(O₂) = x₀·(1 − x)", displaced=_FRACTION, oxygen=_FRACTION)
def oxygen_left(displaced: Quantity, oxygen: Quantity = OXYGEN_IN_AIR) -> Quantity:
    """Oxygen left when another gas has pushed out a fraction of the air, ``x(O₂) = x₀·(1 − x)``.

    An oxygen alarm does not guard against CO2: at three times the 8-hour limit the oxygen has hardly moved.

    >>> f"{oxygen_left(quantity(15000, 'ppm')).m_as('percent'):.2f} %"
    '20.64 %'
    """
    return oxygen * (1 - displaced)


@dataclass(frozen=True, slots=True)
class Stretch:
    """A time through which a room's release and ventilation do not change.

    Args:
        lasts: how long.
        release: gas given off, a volume per time.
        air_changes: fresh air, room volumes per time.
    """

    lasts: Quantity
    release: Quantity
    air_changes: Quantity


@dataclass(frozen=True, slots=True)
class RoomHistory:
    """The fraction of a gas in one room through a row of stretches.

    After the last stretch a person is taken to be outdoors, which matters for an average over a working day.

    Args:
        room_volume: volume of the room.
        outdoor: fraction outdoors.
        start: fraction in the room at the start.
        stretches: what happens, in order.

    A lesson that lets 1 kg sublime in an hour, then an hour's airing:

    >>> lesson = Stretch(quantity(1, "h"), quantity(0.5437, "m**3/h"), quantity(2, "1/h"))
    >>> airing = Stretch(quantity(1, "h"), quantity(0, "m**3/h"), quantity(2, "1/h"))
    >>> air = RoomHistory(quantity(200, "m**3"), quantity(420, "ppm"), quantity(420, "ppm"), (lesson, airing))
    >>> [f"{x.m_as('ppm'):.0f}" for x in (air.peak(), air.greatest_mean(quantity(15, "min")))]
    ['1595', '1550']
    >>> f"{air.greatest_mean(quantity(8, 'h')).m_as('ppm'):.0f} ppm"
    '580 ppm'
    """

    room_volume: Quantity
    outdoor: Quantity
    start: Quantity
    stretches: tuple[Stretch, ...]

    def peak(self) -> Quantity:
        """The greatest fraction; a stretch only rises or only falls, so it is at one of the ends."""
        return bare(max(number_in(self.start, ""), *(part.level_at_end() for part in self._parts())))

    def mean(self, begin: Quantity, end: Quantity) -> Quantity:
        """The average between two times after the start. Raises OutOfRange unless 0 ≤ begin < end."""
        first, last = number_in(begin, "s"), number_in(end, "s")
        if not 0 <= first < last:
            raise OutOfRange(f"an average needs a begin before its end: {begin:~P} to {end:~P}")
        return bare(self._mean(self._parts(), first, last))

    def greatest_mean(self, window: Quantity) -> Quantity:
        """The greatest average over any window of so long, such as 15 minutes or 8 hours.

        Searched in steps of 1/200 of the history, then between the neighbours of the best; the average
        changes smoothly with the window's place, so the error is far below the rounding of a page.
        """
        parts, length = self._parts(), number_in(window, "s")
        if not length > 0:
            raise OutOfRange(f"an average needs some time, not {window:~P}")
        latest = max(0.0, sum(part.lasts for part in parts) - length)

        def mean_from(begin: float) -> float:
            return self._mean(parts, begin, begin + length)

        best = max((latest * n / 200 for n in range(201)), key=mean_from)
        near = (best + latest / 200 * n / 20 for n in range(-20, 21))
        return bare(max(mean_from(min(latest, max(0.0, begin))) for begin in near))

    def _parts(self) -> list["_Part"]:
        """The stretches as plain numbers in s and m³, each with the level it begins at."""
        parts: list[_Part] = []
        level, outdoor = number_in(self.start, ""), number_in(self.outdoor, "")
        for stretch in self.stretches:
            after = fraction_after(  # checks every argument's range
                bare(level),
                self.outdoor,
                stretch.release,
                self.room_volume,
                stretch.air_changes,
                stretch.lasts,
            )
            flow = stretch.release.m_as("m**3/s"), self.room_volume.m_as("m**3")
            parts.append(
                _Part(level, outdoor, *flow, stretch.air_changes.m_as("1/s"), stretch.lasts.m_as("s"))
            )
            level = number_in(after, "")
        return parts

    def _mean(self, parts: Sequence["_Part"], begin: float, end: float) -> float:
        return (self._total(parts, end) - self._total(parts, begin)) / (end - begin)

    def _total(self, parts: Sequence["_Part"], until: float) -> float:
        """Fraction times time from the start until a time, in seconds."""
        total, left = 0.0, until
        for part in parts:
            time = min(left, part.lasts)
            total += part.mean(time) * time
            left -= time
        return total + left * number_in(self.outdoor, "")


class _Part(NamedTuple):
    """A stretch in plain numbers, in the order of the arguments of :func:`fraction_after`."""

    level: float
    outdoor: float
    release: float
    room_volume: float
    air_changes: float
    lasts: float

    def level_at_end(self) -> float:
        return cast(float, fraction_after.body(*self))

    def mean(self, time: float) -> float:
        return cast(float, mean_fraction.body(*self[:5], time))
