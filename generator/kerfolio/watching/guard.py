"""Who may ask the watching server for anything: the browser of this machine, on its own pages.

It listens on the loopback address alone. A page of another site could still lead a browser there,
by a link, a form, a script, or a name of its own that it makes point here. So what a browser says
of the address it asks and of the page that asks must both be ours (Fetch, WHATWG: `Origin`; HTTP
semantics, RFC 9110: `Host`; Fetch Metadata, W3C: `Sec-Fetch-Site`).
"""

from __future__ import annotations

from collections.abc import Mapping
from email.message import Message

LOOPBACK = "127.0.0.1"
_NAMES = (LOOPBACK, "localhost")
_OURS = ("same-origin", "none")
"""Asked by one of our pages, or by a person who typed the address."""


def is_ours(headers: Mapping[str, str] | Message, port: int, *, writes: bool = False) -> bool:
    """Tell whether a request comes from our own pages; one that ``writes`` must say so itself.

    ``headers`` are those of the request.
    """
    hosts = [f"{name}:{port}" for name in _NAMES]
    if headers.get("Host") not in hosts:
        return False
    if headers.get("Sec-Fetch-Site", "none") not in _OURS:
        return False
    origin = headers.get("Origin")
    if origin is None:
        return not writes
    return origin in [f"http://{host}" for host in hosts]
