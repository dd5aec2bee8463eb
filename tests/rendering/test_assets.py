"""What a telephone fetches holds what works and nothing that was written for us."""

from clampstand.rendering.assets import ASSETS, assets


def test_remarks_are_left_out_and_nothing_else():
    files = assets().files
    sent = {name: text.decode() for name, text in files.items() if name.endswith((".css", ".js"))}
    assert {name.rpartition(".")[2] for name in sent} == {"css", "js"}
    for name, text in sent.items():
        assert "/*" not in text, name
        assert not any(line.lstrip().startswith("//") for line in text.splitlines()), name
    written = "".join(line for line in (ASSETS / "narrow.js").read_text().split("\n") if "//" not in line)
    narrow = next(text for name, text in sent.items() if "/narrow." in name)
    assert "".join(narrow.split()) == "".join(written.split())
