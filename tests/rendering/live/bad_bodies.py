"""Formulae that must not reach a browser, each with a word of why it is refused.

The units are right and Python runs most of them: it is the grammar that says no.
"""
# ruff: noqa: C416, PLC2401, PLC3002, RET504 - the bodies are bad on purpose

import math
import os

from clampstand.units import Formula, Quantity, Takes, exp, formula, ln, sqrt  # noqa: F401 - bodies may name them

_X = Takes("", at_least=0, at_most=10)
_LIMITS = {"low": 1.0}
whole = 3
endless = math.inf


def helper(x):
    return x


def pure(body):
    return formula("", "x", **dict.fromkeys(body.__code__.co_varnames[: body.__code__.co_argcount], _X))(body)


@pure
def attribute(x):
    return x.real


@pure
def module_attribute(x):
    return x * math.pi


@pure
def climbing(x):
    return x.__class__.__mro__


@pure
def a_lambda(x):
    return (lambda y: y)(x)


@pure
def comprehension(x):
    return sum([y for y in (x, x)])


@pure
def generator(x):
    return max(y for y in (x, x))


@pure
def importing(x):
    import math as m  # noqa: PLC0415

    return m.exp(x)


@pure
def unknown_name(x):
    return constructor  # noqa: F821


@pure
def unknown_call(x):
    return eval(x)


@pure
def module_call(x):
    return os.getpid() + x


@pure
def own_helper(x):
    return helper(x)


@pure
def subscript(x):
    return x * _LIMITS["low"]


@pure
def chained(x):
    return x if 0 < x < 1 else 0.5


@pure
def equality(x):
    return x if x == 1 else 0.5


@pure
def bare_comparison(x):
    return x < 1


@pure
def two_conditions(x):
    return x if x < 1 and x > 0 else 0.5


@pure
def remainder(x):
    return x % 2


@pure
def floor_division(x):
    return x // 2


@pure
def matrix_product(x):
    return x @ x


@pure
def bits(x):
    return x | 1


@pure
def truth(x):
    return x + True


@pure
def text(x):
    return "alert(1)"


@pure
def imaginary(x):
    return x + 1j


@pure
def huge_literal(x):
    return x + 1e999


@pure
def huge_whole(x):
    return x + 10000000000000000000000


@pure
def whole_constant(x):
    return x + whole


@pure
def endless_constant(x):
    return x * endless


@pure
def power_of_an_argument(x):
    return 2**x


@pure
def keyword_call(x):
    return max(x, 1, key=abs)


@pure
def starred(x):
    return max(*[x, 1])


@pure
def one_of_two(x):
    return max(x)


@pure
def given_twice(x):
    y = x * 2
    y = y * 2
    return y


@pure
def argument_changed(x):
    x = x * 2
    return x


@pure
def two_returns(x):
    if x > 1:
        return x
    return 1


@pure
def a_loop(x):
    while x < 1:
        x = x + 1
    return x


@pure
def walrus(x):
    return (y := x) + y


@pure
def nothing_returned(x):
    """Only words."""


@pure
def formula_as_a_value(x):
    return doubled if x > 1 else x


@pure
def doubled(x):
    return 2 * x


@pure
def called_as_quantity(x):
    return doubled(x)


@pure
def too_many_for_it(x):
    return doubled.body(x, x)


@pure
def itself(x):
    return itself.body(x)


@pure
def shadowing(exp):
    return exp(exp)


@pure
def größe(x):
    return x


@formula("m", "x", x=Takes("s"))
def wrong_units(x: Quantity) -> Quantity:
    return x


@formula("", "x", x=Takes("s", at_least=1))
def exp_of_a_time(x: Quantity) -> Quantity:
    return exp(x)


BAD: dict[str, str] = {
    "attribute": "not in the grammar",
    "module_attribute": "not in the grammar",
    "climbing": "not in the grammar",
    "a_lambda": "cannot be called",
    "comprehension": "cannot be called",
    "generator": "cannot be called",
    "importing": "one return at the end",
    "unknown_name": "constructor is no argument",
    "unknown_call": "eval cannot be called",
    "module_call": "cannot be called",
    "own_helper": "helper cannot be called",
    "subscript": "not in the grammar",
    "chained": "not in the grammar",
    "equality": "not in the grammar",
    "bare_comparison": "not in the grammar",
    "two_conditions": "not in the grammar",
    "remainder": "not in the grammar",
    "floor_division": "not in the grammar",
    "matrix_product": "not in the grammar",
    "bits": "not in the grammar",
    "truth": "not a plain number",
    "text": "not a plain number",
    "imaginary": "not a plain number",
    "huge_literal": "too large",
    "huge_whole": "too large",
    "whole_constant": "no argument and no number",
    "endless_constant": "too large",
    "power_of_an_argument": "an exponent is a number written out",
    "keyword_call": "not in the grammar",
    "starred": "cannot be called",
    "one_of_two": "cannot be called",
    "given_twice": "names given once",
    "argument_changed": "names given once",
    "two_returns": "names given once",
    "a_loop": "names given once",
    "walrus": "not in the grammar",
    "nothing_returned": "no body",
    "formula_as_a_value": "no argument and no number",
    "called_as_quantity": "cannot be called",
    "too_many_for_it": "cannot be called",
    "itself": "calls itself",
    "shadowing": "cannot be called",
    "größe": "plain letters",
    "wrong_units": "does not prove its units",
    "exp_of_a_time": "does not prove its units",
}
"""Each of the formulae above, and words its refusal must say."""

FORMULAE = {
    name: value for name, value in globals().items() if isinstance(value, Formula) and name != "doubled"
}
