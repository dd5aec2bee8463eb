"""What a page may load and run, said in the page itself, so that nothing smuggled into it can act."""

import base64
import hashlib
import re
from collections.abc import Iterable
from html import escape

_SCRIPT = re.compile(r"<script\b([^>]*)>(.*?)</script>", re.DOTALL | re.IGNORECASE)
_DATA = re.compile(r"\bsrc\s*=|\btype\s*=\s*[\"']?application/json", re.IGNORECASE)
_CHARSET = re.compile(r"<meta charset=[^>]*>", re.IGNORECASE)


def fingerprint(text: str) -> str:
    """The source expression that lets exactly this inline text through (CSP Level 3, section 2.3.1)."""
    return f"'sha256-{base64.b64encode(hashlib.sha256(text.encode()).digest()).decode()}'"


def inline_scripts(page: str) -> tuple[str, ...]:
    """The texts of a page's scripts that run and stand in the page itself, in its order, each once.

    Hand it a page that holds nothing anybody typed: what it returns is going to be allowed.
    """
    return tuple(dict.fromkeys(text for marks, text in _SCRIPT.findall(page) if not _DATA.search(marks)))


def page_policy(scripts: Iterable[str]) -> str:
    """The policy of a page in the theme: the site's own files, and the theme's own inline scripts."""
    allowed = " ".join(["'self'", *map(fingerprint, scripts)])
    return "; ".join(
        (
            "default-src 'none'",
            f"script-src {allowed}",
            "style-src 'self'",
            "img-src 'self' data:",
            *(f"{kind}-src 'self'" for kind in ("font", "connect", "worker", "manifest")),
            "base-uri 'none'",
            "form-action 'none'",
        )
    )


def card_policy(style: str) -> str:
    """The policy of a card: its own style and the fonts; no script at all."""
    return (
        f"default-src 'none'; style-src {fingerprint(style)}; font-src 'self'; "
        "base-uri 'none'; form-action 'none'"
    )


def with_policy(page: str, policy: str) -> str:
    """The page with its policy said before anything could be loaded.

    It comes after the declaration of the character set, which must stand in the first 1024 bytes.

    Raises:
        ValueError: the page declares no character set, so that there is no safe place for the policy.
    """
    found = _CHARSET.search(page)
    if found is None:
        raise ValueError("the page declares no character set")
    said = f'<meta http-equiv="Content-Security-Policy" content="{escape(policy, quote=False)}">'
    return f"{page[: found.end()]}\n{said}{page[found.end() :]}"
