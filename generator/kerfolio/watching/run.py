"""``kerfolio watch``: the server, and rounds of looking until the maker ends it."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from pathlib import Path
from tempfile import TemporaryDirectory
from threading import Thread
from time import monotonic, sleep

from kerfolio.basis.finding import Finding
from kerfolio.publishing.say import Say
from kerfolio.reading.plan_folders import unknown_plan
from kerfolio.reading.workshop import read_shared
from kerfolio.watching.prover import Prover
from kerfolio.watching.publisher import Publisher
from kerfolio.watching.server import Served, WatchServer
from kerfolio.watching.watch import Stage, Watch

_PAUSE = 0.1
"""How often files are looked at, s, where that takes less than a tenth of it."""

_SETTLES = 0.05
"""How long a save may take, s; an editor that writes a file in pieces is done by then."""


@dataclass(frozen=True, slots=True, kw_only=True)
class WatchRequest:
    """What to watch: a workshop, or one ``plan`` of it; at which port, with which editor.

    ``readers`` tells whether the readers' pages are made, too.
    """

    folder: Path
    plan: str = ""
    port: int = 0
    editor: Sequence[str] = ()
    readers: bool = True


def watch(
    request: WatchRequest, say: Say, is_over: Callable[[], bool] = lambda: False
) -> tuple[Finding, ...]:
    """Serve a workshop and follow its files until ``is_over`` or an interruption. Raises OSError.

    Returns why there is nothing to watch. What is made for it lies in a temporary folder that goes
    with it.
    """
    refused = _refusal(request)
    if refused:
        return refused
    with TemporaryDirectory(prefix="kerfolio-watch-") as beside:
        publisher = Publisher(request.folder, Path(beside)) if request.readers else None
        stage = Stage()
        served = Served(
            stage=stage,
            folder=request.folder,
            site=publisher.site if publisher else None,
            editor=request.editor,
            say=say,
        )
        with Prover(request.folder) as prove, WatchServer(served, request.port) as server:
            follower = Watch(
                folder=request.folder,
                stage=stage,
                prove=prove,
                only=request.plan,
                publisher=publisher,
            )
            Thread(target=server.serve_forever, daemon=True).start()
            try:
                say(f"Watching {request.folder.resolve().name} at {server.address}")
                _follow(follower, is_over)
            finally:
                stage.close()
                server.shutdown()
    return ()


def _refusal(request: WatchRequest) -> tuple[Finding, ...]:
    shared, refused = read_shared(request.folder, pictures=False)
    if shared is not None and request.plan and request.plan not in shared.plans:
        return (unknown_plan(request.plan, shared.plans),)
    return refused


def _follow(follower: Watch, is_over: Callable[[], bool]) -> None:
    while not is_over():
        follower.look()
        follower.finish(lambda: is_over() or follower.is_touched())
        while not is_over():
            began = monotonic()
            if follower.is_touched():
                sleep(_SETTLES)
                break
            sleep(max(_PAUSE, 9 * (monotonic() - began)))
