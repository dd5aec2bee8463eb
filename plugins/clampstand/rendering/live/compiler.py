"""Formulae compiled to JavaScript: the same arithmetic, in the same order, on the same doubles.

The JavaScript is written from the syntax tree of the Python body, so there is no second copy of a formula.
What the small grammar here does not know is refused, not guessed at.
"""

import ast
import builtins
import inspect
import math
import textwrap
from collections.abc import Callable, Iterable, Mapping
from functools import cache
from typing import Any, cast

from clampstand.units import Formula, Takes, exp, ln, sqrt

_SIGNS: Mapping[type[ast.operator], str] = {ast.Add: "+", ast.Sub: "-", ast.Mult: "*", ast.Div: "/"}
_COMPARISONS: Mapping[type[ast.cmpop], str] = {ast.Lt: "<", ast.Gt: ">", ast.LtE: "<=", ast.GtE: ">="}
_FUNCTIONS: Mapping[str, tuple[object, str]] = {
    "exp": (exp, "Math.exp"),
    "ln": (ln, "Math.log"),
    "sqrt": (sqrt, "Math.sqrt"),
    "min": (builtins.min, "Math.min"),
    "max": (builtins.max, "Math.max"),
}
"""What a body may call, by name: the one function that is meant by it, and what JavaScript calls it."""
_GREATEST_WHOLE = 10**6
"""Whole numbers beyond this have no place in a formula, and could differ between exact and floating sums."""


class NotLive(ValueError):
    """A formula cannot be compiled for the browser; the text says which and why."""


def name_of(formula: Formula[Any]) -> str:
    """How pages name a formula: its subject and its own name, ``decay.activity_after``."""
    return f"{formula.body.__module__.rpartition('.')[2]}.{formula.body.__name__}"


def script_of(formulae: Iterable[Formula[Any]]) -> str:
    """JavaScript functions in a table ``formulae``, in order of name, with everything they call before them.

    Raises:
        NotLive: a formula goes beyond the grammar, or its arithmetic does not prove its units.
    """
    chosen = sorted({name_of(formula): formula for formula in formulae}.items())
    written: dict[str, str] = {}
    for name, formula in chosen:
        _write(formula, written, ())
        written[name] += f'formulae["{name}"] = {_identifier(name)};\n'
    return "var formulae = Object.create(null);\n" + "".join(written.values())


def _write(formula: Formula[Any], written: dict[str, str], callers: tuple[str, ...]) -> None:
    name = name_of(formula)
    if name in callers:
        raise NotLive(f"{name}: it calls itself")
    if name in written:
        return
    text, called = compiled(formula)
    for other in called:
        _write(other, written, (*callers, name))
    _prove(formula)
    written[name] = text


@cache
def compiled(formula: Formula[Any]) -> tuple[str, tuple[Formula[Any], ...]]:
    """One formula as a JavaScript function, and the formulae it calls.

    Raises:
        NotLive: it goes beyond the grammar.
    """
    body = _Body(formula)
    lines = "".join(f"  {line}\n" for line in body.lines())
    arguments = ", ".join(_local(name) for name in formula.signature.parameters)
    text = f"function {_identifier(name_of(formula))}({arguments}) {{\n{lines}}}\n"
    return text, tuple(body.called.values())


def _prove(formula: Formula[Any]) -> None:
    """Run the body on quantities, so that a formula with a missing factor never reaches a page."""
    values = {
        name: _default(parameter, formula.takes[name])
        for name, parameter in formula.signature.parameters.items()
    }
    try:
        formula.proves_its_units(**values)
    except (ValueError, TypeError, ArithmeticError) as reason:
        raise NotLive(f"{name_of(formula)}: its arithmetic does not prove its units: {reason}") from None


def _default(parameter: inspect.Parameter, takes: Takes) -> float:
    """A number to prove units with: the default, or one inside the range."""
    if parameter.default is not parameter.empty:
        return float(parameter.default.m_as(takes.unit))
    low = takes.at_least if takes.at_least is not None else takes.more_than
    high = takes.at_most
    if low is None:
        return 1.0 if high is None else high - 1.0
    return low + (1.0 if high is None else (high - low) / 2)


class _Body:
    """The body of one formula on its way to JavaScript."""

    def __init__(self, formula: Formula[Any]) -> None:
        self.name = name_of(formula)
        self.known = set(formula.signature.parameters)
        self.globals = formula.body.__globals__
        self.called: dict[str, Formula[Any]] = {}
        self.definition = _definition(formula)

    def lines(self) -> list[str]:
        """The statements: names given once to parts of the sum, then what is returned."""
        statements = self.definition.body
        if isinstance(statements[0], ast.Expr) and isinstance(statements[0].value, ast.Constant):
            statements = statements[1:]
        if not statements:
            raise self._refusal(self.definition, "it has no body")
        return [self._statement(each, last=each is statements[-1]) for each in statements]

    def _statement(self, node: ast.stmt, last: bool) -> str:
        match node:
            case ast.Return(value=ast.expr() as value) if last:
                return f"return {self._expression(value)};"
            case ast.Assign(targets=[ast.Name(id=name)], value=value) if not last and name not in self.known:
                written = self._expression(value)
                self.known.add(name)
                return f"var {_local(name)} = {written};"
        raise self._refusal(
            node, "only names given once and one return at the end may stand in a live formula"
        )

    def _expression(self, node: ast.expr) -> str:
        match node:
            case ast.Constant(value=value):
                return self._number(node, value)
            case ast.Name(id=name):
                return self._named(node, name)
            case ast.Call(func=func, args=args, keywords=[]):
                return f"{self._function(func, len(args))}({', '.join(map(self._expression, args))})"
        return self._operation(node)

    def _operation(self, node: ast.expr) -> str:
        match node:
            case ast.UnaryOp(op=ast.USub(), operand=operand):
                return f"(-{self._expression(operand)})"
            case ast.BinOp(left=left, op=ast.Pow(), right=right):
                return f"Math.pow({self._expression(left)}, {self._exponent(right)})"
            case ast.BinOp(left=left, op=op, right=right) if type(op) in _SIGNS:
                return f"({self._expression(left)} {_SIGNS[type(op)]} {self._expression(right)})"
            case ast.IfExp(
                test=ast.Compare(left=left, ops=[op], comparators=[right]), body=then, orelse=other
            ) if type(op) in _COMPARISONS:
                test = f"{self._expression(left)} {_COMPARISONS[type(op)]} {self._expression(right)}"
                return f"({test} ? {self._expression(then)} : {self._expression(other)})"
        raise self._refusal(node, f"{ast.unparse(node)[:60]} is not in the grammar of live formulae")

    def _exponent(self, node: ast.expr) -> str:
        negative = isinstance(node, ast.UnaryOp) and isinstance(node.op, ast.USub)
        inside = cast(ast.UnaryOp, node).operand if negative else node
        if not isinstance(inside, ast.Constant):
            raise self._refusal(node, "an exponent is a number written out")
        return ("-" if negative else "") + self._number(inside, inside.value)

    def _number(self, node: ast.expr, value: object) -> str:
        """A literal as the shortest decimal that gives the same double back."""
        if isinstance(value, bool) or not isinstance(value, int | float):
            raise self._refusal(node, f"{str(value)[:40]!r} is not a plain number")
        if not math.isfinite(value) or (isinstance(value, int) and value > _GREATEST_WHOLE):
            raise self._refusal(node, "a number is too large")
        return repr(float(value))

    def _named(self, node: ast.expr, name: str) -> str:
        """An argument, a name given above, or a plain number of the formula's module."""
        if name in self.known:
            return _local(name)
        constant = self.globals.get(name)
        if isinstance(constant, float):
            return self._number(node, constant)
        raise self._refusal(node, f"{name} is no argument and no number")

    def _function(self, node: ast.expr, count: int) -> str:
        match node:
            case ast.Name(id=name) if name in _FUNCTIONS and name not in self.known:
                meant, written = _FUNCTIONS[name]
                found = self.globals.get(name, getattr(builtins, name, None))
                if found is meant and (count > 1 if meant in (min, max) else count == 1):
                    return written
            case ast.Attribute(value=ast.Name(id=name), attr="body") if name not in self.known:
                other = self.globals.get(name)
                if isinstance(other, Formula) and count == len(other.takes):
                    self.called[name_of(other)] = other
                    return _identifier(name_of(other))
        raise self._refusal(node, f"{ast.unparse(node)[:60]} cannot be called from a live formula")

    def _refusal(self, node: ast.AST, why: str) -> NotLive:
        line = getattr(node, "lineno", 1)
        return NotLive(f"{self.name}, line {line} of its definition: {why}")


def _definition(formula: Formula[Any]) -> ast.FunctionDef:
    """The syntax tree of the function under the decorator."""
    body = cast(Callable[..., object], formula.body)
    try:
        tree = ast.parse(textwrap.dedent(inspect.getsource(body)))
    except (OSError, SyntaxError, TypeError):
        raise NotLive(f"{name_of(formula)}: its source cannot be read") from None
    if len(tree.body) != 1 or not isinstance(tree.body[0], ast.FunctionDef):
        raise NotLive(f"{name_of(formula)}: it is not one plain function")
    return tree.body[0]


def _identifier(name: str) -> str:
    """A formula's name as a JavaScript function's: no word of either language can stand in its way."""
    if not name.isascii():
        raise NotLive(f"{name}: only plain letters can name a live formula")
    return "of_" + name.replace(".", "_")


def _local(name: str) -> str:
    """An argument's name in JavaScript, where ``true`` and ``new`` would mean something else."""
    if not name.isascii():
        raise NotLive(f"{name}: only plain letters can name an argument of a live formula")
    return "x_" + name
