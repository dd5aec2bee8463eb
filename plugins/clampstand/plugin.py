"""The only file that knows MkDocs: it hands finished pages over, and lets nothing unchecked out."""

import os
import shutil
from collections.abc import Iterable
from html import escape
from pathlib import Path
from typing import Any, Literal

from jinja2 import Environment
from mkdocs.config import config_options
from mkdocs.config.base import Config
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import PluginError
from mkdocs.plugins import BasePlugin, event_priority, get_plugin_logger
from mkdocs.structure.files import File, Files, InclusionLevel
from mkdocs.structure.nav import Navigation
from mkdocs.structure.pages import Page
from mkdocs.structure.toc import AnchorLink, TableOfContents
from mkdocs.utils.templates import TemplateContext

from clampstand import build, reports
from clampstand.rendering.assets import OVERRIDES, assets
from clampstand.rendering.contents import PAPERS, Paper
from clampstand.rendering.page import TOP, SearchWords, SitePage
from clampstand.rendering.pdf.printing import CannotPrint
from clampstand.rendering.policy import inline_scripts, page_policy, with_policy

log = get_plugin_logger(__name__)

_HELD_BACK = ("assets/javascripts/lunr",)
"""Folders of the theme that an English handbook never loads."""


class Settings(Config):  # type: ignore[no-untyped-call]  # MkDocs leaves its hook untyped
    """What ``mkdocs.yml`` may say under the plugin's name."""

    content = config_options.Type(str, default="content")
    """The content folder, from the folder of ``mkdocs.yml``."""

    pdf = config_options.Optional(config_options.Choice(tuple(PAPERS)))
    """The paper of the cards as PDF, ``a4`` or ``letter``; without it the site has none."""


class FinishedPage(Page):
    """A page that came finished from the definitions; Markdown never sees it."""

    def __init__(self, made: SitePage, file: File, config: MkDocsConfig) -> None:
        super().__init__(escape(made.title), file, config)
        self._made = made
        self.markdown = ""

    def read_source(self, config: MkDocsConfig) -> None:  # noqa: ARG002 - the signature is MkDocs'
        """Nothing is read: the page is in memory."""
        self.meta = {"title": self.title, "search": {"exclude": True}}

    def render(self, config: MkDocsConfig, files: Files) -> None:  # noqa: ARG002 - the signature is MkDocs'
        """Nothing is converted: the page is HTML."""
        self.content = self._made.html
        self.toc = _toc(self._made)
        self.present_anchor_ids = None


def _toc(made: SitePage) -> TableOfContents:
    """The page's headings as the theme lists them: those of level 3 under the level 2 before them.

    The theme leads past its navigation to the first of them, so that is the title, whatever else a page has.
    """
    top = AnchorLink(escape(made.title), TOP, 1)
    for heading in made.headings:
        link = AnchorLink(escape(heading.title), heading.anchor, heading.level)
        (top.children[-1].children if heading.level > 2 and top.children else top.children).append(link)
    return TableOfContents([top])


class ClampstandPlugin(BasePlugin[Settings]):  # type: ignore[no-untyped-call]  # as above
    """Checks the content, then gives its pages to MkDocs."""

    def on_startup(self, *, command: Literal["build", "gh-deploy", "serve"], dirty: bool) -> None:
        """Remember whether this is a build for others to read or a look at one's own work."""
        if dirty and command != "serve":
            raise PluginError("--dirty would leave pages of an older check in the site; build without it")
        self._publishing = command != "serve"
        self._site: Path | None = None
        self._built = False
        self._policies: dict[str, str] = {}
        self._policies_alike: dict[tuple[str, int], str] = {}

    def on_config(self, config: MkDocsConfig) -> MkDocsConfig:
        """Check everything before a byte is written; then set up the look and the folder to build into."""
        content = Path(config.config_file_path).parent / self.config.content
        if not content.is_dir():
            raise PluginError(f"there is no content folder {self.config.content} beside mkdocs.yml")
        self._handbook = build.handbook(content)
        self._tell(self._handbook)
        paper = self.config.pdf if self._publishing else None
        self._pages = build.site_pages(self._handbook, paper)
        self._pdfs = _pdfs(self._handbook, paper) if paper else {}
        config.watch.append(str(content))
        config.theme.dirs.insert(1 if config.theme.custom_dir else 0, str(OVERRIDES))
        config.extra_css.append(assets().stylesheet)
        config.extra_javascript.extend(assets().scripts)
        config.extra.setdefault("polyfills", []).append(assets().shim)
        if self._publishing:
            self._site = Path(config.site_dir)
            config.site_dir = str(self._site.with_name(f".{self._site.name}.building"))
        return config

    def _tell(self, handbook: build.Handbook) -> None:
        """Log every finding; a stop ends a build. Warnings are on the pages; the log only mentions them."""
        for finding in handbook.findings:
            told = reports.one_as_text(finding, handbook.reading.lines)
            (log.error if finding.stops else log.info)("%s", told)
        if handbook.stops and self._publishing:
            raise PluginError(f"nothing was published: {reports.tally(handbook.findings)}")

    @event_priority(50)
    def on_files(self, files: Files, *, config: MkDocsConfig) -> Files:
        """Add the pages and the assets; a page somebody wrote by hand at the same address is kept."""
        for address, content in assets().files.items():
            files.append(
                File.generated(config, address, content=content, inclusion=InclusionLevel.NOT_IN_NAV)
            )
        for path, pdf in self._pdfs.items():
            address, inclusion = f"cards/{path}", InclusionLevel.NOT_IN_NAV
            files.append(File.generated(config, address, content=pdf, inclusion=inclusion))
        for made in self._pages:
            address = made.uri if made.stands_alone else made.uri.removesuffix(".html") + ".md"
            if files.get_file_from_path(address) is None:
                files.append(self._file(made, address, config))
        return files

    def _file(self, made: SitePage, address: str, config: MkDocsConfig) -> File:
        inclusion = InclusionLevel.INCLUDED if made.in_navigation else InclusionLevel.NOT_IN_NAV
        content = made.html if made.stands_alone else ""
        file = File.generated(config, address, content=content, inclusion=inclusion)
        if not made.stands_alone:
            file.edit_uri = self._edit_uri(made, config)
            FinishedPage(made, file, config)
        return file

    def _edit_uri(self, made: SitePage, config: MkDocsConfig) -> str | None:
        """The way from the folder of hand-written pages to the file a page was written in."""
        if not made.written_in:
            return None
        content = Path(config.config_file_path).parent / self.config.content
        return Path(os.path.relpath(content / made.written_in, config.docs_dir)).as_posix()

    def on_pre_page(self, page: Page, *, config: MkDocsConfig, files: Files) -> Page:  # noqa: ARG002
        """The day of every page is the handbook's day, so that the same content gives the same site."""
        if self._handbook.reading.book:
            page.update_date = self._handbook.book.department.computed_for.isoformat()
        return page

    def on_env(self, env: Environment, *, config: MkDocsConfig, files: Files) -> Environment:  # noqa: ARG002
        """Keep the theme's templates, to ask them which scripts of their own they write into a page."""
        self._templates = env
        return env

    def on_page_context(
        self,
        context: TemplateContext,
        *,
        page: Page,
        config: MkDocsConfig,
        nav: Navigation,  # noqa: ARG002
    ) -> TemplateContext:
        """Make the policy of a page from the same page without a word that anybody typed.

        The theme's own scripts depend on its template and on how deep in the site a page lies, nothing else.
        """
        template = str(page.meta.get("template", "main.html"))
        alike = template, page.url.count("/")
        if alike not in self._policies_alike:
            file = File.generated(config, page.file.src_uri, content="")
            blank = FinishedPage(SitePage(page.file.src_uri, "", ""), file, config)
            blank.read_source(config)
            blank.render(config, Files([]))
            self._policies_alike[alike] = self._policy(template, context, blank)
        self._policies[page.url] = self._policies_alike[alike]
        return context

    def on_template_context(
        self,
        context: TemplateContext,
        *,
        template_name: str,
        config: MkDocsConfig,  # noqa: ARG002
    ) -> TemplateContext:
        """The same for pages of the theme's own, as the one for an address that leads nowhere."""
        if template_name.endswith(".html"):
            self._policies[template_name] = self._policy(template_name, context, None)
        return context

    def _policy(self, template: str, context: TemplateContext, blank: Page | None) -> str:
        empty = {**context, "nav": Navigation([], []), "pages": [], "page": blank}
        return page_policy(inline_scripts(self._templates.get_template(template).render(empty)))

    @event_priority(-100)
    def on_post_page(self, output: str, *, page: Page, config: MkDocsConfig) -> str:  # noqa: ARG002
        """Say the policy in the page. A page that is only served to its writer reloads by a script in it."""
        return with_policy(output, self._policies[page.url]) if self._publishing else output

    @event_priority(-100)
    def on_post_template(self, output_content: str, *, template_name: str, config: MkDocsConfig) -> str:  # noqa: ARG002
        """The same for pages of the theme's own."""
        known = self._policies.get(template_name) if self._publishing else None
        return with_policy(output_content, known) if known else output_content

    @event_priority(50)
    def on_post_build(self, *, config: MkDocsConfig) -> None:
        """Give search its entries, and leave out what no reader loads."""
        search: Any = config.plugins.get("material/search") or config.plugins.get("search")
        if search is not None and hasattr(search, "search_index"):
            search.search_index.entries.extend(_search_entries(self._pages))
        _leave_out_what_nobody_loads(Path(config.site_dir))
        self._built = True

    def on_build_error(self, *, error: Exception) -> None:  # noqa: ARG002 - the signature is MkDocs'
        """Remember that something failed, strict mode's last word included."""
        self._built = False

    def on_shutdown(self) -> None:
        """Put the new site in the old one's place, or throw it away: the old one is never half replaced."""
        if self._site is None:
            return
        made = self._site.with_name(f".{self._site.name}.building")
        if self._built:
            _swap(made, self._site)
        else:
            shutil.rmtree(made, ignore_errors=True)


def _pdfs(handbook: build.Handbook, paper: Paper) -> dict[str, bytes]:
    """The cards as PDF; one that does not fit its sides stops the build as any other finding does."""
    try:
        return dict(build.card_files(handbook, paper))
    except CannotPrint as reason:
        raise PluginError(f"nothing was published: {reason}") from reason
    except ModuleNotFoundError as missing:
        raise PluginError(
            f"mkdocs.yml asks for cards as PDF, and {missing.name} is not installed; "
            "pip install 'clampstand[pdf]', or take out the line that says pdf:"
        ) from missing


def _search_entries(pages: Iterable[SitePage]) -> list[dict[str, Any]]:
    """One entry a page; the theme writes them into the page as HTML, so they are escaped."""
    return [_search_entry(page, page.search) for page in pages if page.search is not None]


def _search_entry(page: SitePage, words: SearchWords) -> dict[str, Any]:
    return {
        "location": page.uri,
        "title": escape(page.title, quote=False),
        "text": f"<p>{escape(words.about, quote=False)} <s>{escape(words.text, quote=False)}</s></p>",
        "tags": [escape(tag, quote=False) for tag in words.tags],
        "boost": words.weight,
    }


def _leave_out_what_nobody_loads(site: Path) -> None:
    for source_map in site.rglob("*.map"):
        source_map.unlink()
    for folder in _HELD_BACK:
        shutil.rmtree(site / folder, ignore_errors=True)


def _swap(made: Path, site: Path) -> None:
    """Rename the old site away and the new one into its place."""
    old = site.with_name(f".{site.name}.old")
    shutil.rmtree(old, ignore_errors=True)
    if site.exists():
        site.rename(old)
    made.rename(site)
    shutil.rmtree(old, ignore_errors=True)
