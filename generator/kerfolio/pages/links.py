"""Addresses that may be followed from a page."""

from __future__ import annotations

import re
from urllib.parse import quote, urlsplit

_SCHEMES = frozenset({"http", "https", "mailto"})
_BLANKS = re.compile(r"[\x00-\x20\x7f]")
_MAIL = re.compile(r"[^\s@<>\"]+@[^\s@<>\"]+\.[^\s@<>\"]+")
_UNQUOTED = "!#$&'()*+,/:;=?@[]~%-._"


def safe_href(address: str, *, absolute: bool = False) -> str:
    """Return an address fit for a link, or empty when it is not to be followed.

    Allowed are http, https and mailto, and addresses within the site; with ``absolute`` only
    those that name a scheme, since a relative one means nothing in a file on a reader's disk.
    Browsers ignore blanks and control characters inside an address, so they are taken out before
    the scheme is judged (WHATWG URL standard, basic URL parser). Brackets may stand only about
    the host.
    """
    bare = _BLANKS.sub("", address).replace("\\", "/")
    try:
        parts = urlsplit(bare)
    except ValueError:
        return ""
    if parts.scheme:
        known = parts.scheme.lower() in _SCHEMES and (parts.netloc or parts.scheme == "mailto")
        return _quoted(bare, parts.netloc) if known else ""
    outside = bare.startswith("//") or ":" in bare.split("/")[0].split("?")[0].split("#")[0]
    return "" if absolute or outside else _quoted(bare, "")


def _quoted(address: str, host: str) -> str:
    head, found, tail = address.partition(host) if host else ("", "", address)
    kept = "".join(c for c in _UNQUOTED if c not in "[]")
    return (
        quote(head, safe=kept)
        + _host(found)
        + re.sub(r"%(?![0-9A-Fa-f]{2})", "%25", quote(tail, safe=kept))
    )


def _host(name: str) -> str:
    """Write a host of other letters as registries do (IDNA); as found where that cannot be."""
    try:
        return name if name.isascii() else name.encode("idna").decode("ascii")
    except UnicodeError:
        return quote(name, safe=":@")


def web_href(address: str) -> str:
    """Return an http or https address, or empty."""
    found = safe_href(address, absolute=True)
    return found if found.lower().startswith("http") else ""


def mail_address(contact: str) -> str:
    """Return the contact's mail address, or empty when it is none."""
    bare = contact.strip().removeprefix("mailto:")
    return bare if _MAIL.fullmatch(bare) else ""


def contact_href(contact: str) -> str:
    """Return a link to the contact: a mail address or a page; empty when it is neither."""
    mail = mail_address(contact)
    return f"mailto:{quote(mail, safe='@')}" if mail else web_href(contact)


def report_href(contact: str, subject: str, body: str) -> str:
    """Return a link that opens a letter with its subject and first lines (RFC 6068).

    A contact that is a web page is linked as it is; empty without a contact.
    """
    mail = mail_address(contact)
    if not mail:
        return web_href(contact)
    lines = quote(body.replace("\n", "\r\n"), safe="")
    return f"mailto:{quote(mail, safe='@')}?subject={quote(subject, safe='')}&body={lines}"
