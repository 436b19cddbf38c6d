"""What the server answers, and to whom."""

from __future__ import annotations

import sys
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from http.client import HTTPConnection, HTTPResponse
from pathlib import Path
from threading import Thread
from time import monotonic, sleep
from urllib.parse import quote, urlencode

import pytest

from kerfolio.watching.places import listed
from kerfolio.watching.prover import Proven
from kerfolio.watching.server import Served, WatchServer
from kerfolio.watching.watch import Stage, Watch
from tests.plans import lay_down

TELLS = "import sys; open(sys.argv[1], 'w').write('|'.join(sys.argv[2:]))"


class Asked:
    """A server of a small workshop, asked as a browser would."""

    def __init__(self, server: WatchServer, folder: Path) -> None:
        self.server, self.folder = server, folder
        self.host = f"127.0.0.1:{server.server_port}"

    @property
    def stage(self) -> Stage:
        return self.server.served.stage

    def ask(self, path: str, body: str = "", **headers: str) -> tuple[int, str, HTTPResponse]:
        line = HTTPConnection("127.0.0.1", self.server.server_port, timeout=20)
        try:
            method = "POST" if body else "GET"
            kept = {"Host": self.host} | {k.replace("_", "-"): v for k, v in headers.items()}
            line.putrequest(method, path, skip_host=True, skip_accept_encoding=True)
            for name, value in kept.items():
                line.putheader(name, value)
            if body:
                line.putheader("Content-Length", str(len(body)))
            line.endheaders(body.encode() or None)
            answer = line.getresponse()
            return answer.status, answer.read().decode("utf-8", "replace"), answer
        finally:
            line.close()

    def status(self, path: str, body: str = "", **headers: str) -> int:
        return self.ask(path, body, **headers)[0]


class Unproved:
    """Proves nothing."""

    def begin(self, names: Sequence[str]) -> None:
        """Begin nothing."""

    def told(self, is_over: Callable[[], bool]) -> Iterator[Proven]:
        """Find nothing."""
        return iter(())


def unproved(folder: Path, stage: Stage) -> Watch:
    return Watch(folder=folder, stage=stage, prove=Unproved())


@contextmanager
def served(folder: Path) -> Iterator[Asked]:
    shop, site = lay_down(folder / "shop"), folder / "site"
    site.mkdir()
    (site / "index.html").write_text("<p>For readers</p>")
    (folder / "secret.txt").write_text("secret")
    (site / "out.txt").symlink_to(folder / "secret.txt")
    stage = Stage()
    unproved(shop, stage).look()
    editor = (sys.executable, "-c", TELLS, str(folder / "told"), "{file}", "{line}")
    with WatchServer(Served(stage=stage, folder=shop, site=site, editor=editor)) as server:
        Thread(target=server.serve_forever, args=(0.02,), daemon=True).start()
        try:
            yield Asked(server, folder)
        finally:
            stage.close()
            server.shutdown()


@pytest.fixture(scope="module")
def asked(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Asked]:
    with served(tmp_path_factory.mktemp("served")) as found:
        yield found


def test_it_listens_on_the_loopback_address_alone(asked: Asked) -> None:
    assert asked.server.server_address[0] == "127.0.0.1"


def test_pages_allow_nothing_but_their_own(asked: Asked) -> None:
    for path in ("/", "/readers", "/watch.css", "/watch.js"):
        status, text, answer = asked.ask(path)
        assert status == 200, path
        assert text
        policy = answer.headers["Content-Security-Policy"]
        assert policy.startswith("default-src 'none'")
        assert "frame-ancestors 'none'" in policy
        assert "unsafe" not in policy
        assert answer.headers["Cache-Control"] == "no-store"
    assert "<script>" not in asked.ask("/")[1]
    assert " style=" not in asked.ask("/")[1]


@pytest.mark.parametrize("path", ["/", "/lines?at=x", "/events", "/site/index.html", "/nowhere"])
@pytest.mark.parametrize(
    "headers",
    [
        {"Host": "plans.example"},
        {"Origin": "http://plans.example"},
        {"Sec_Fetch_Site": "cross-site"},
    ],
)
def test_strangers_are_refused_everywhere(asked: Asked, path: str, headers: dict[str, str]) -> None:
    status, text, _ = asked.ask(path, **headers)
    assert (status, text) == (403, "Forbidden.\n")


@pytest.mark.parametrize(
    "path",
    [
        *("/site/../secret.txt", "/site/%2e%2e/secret.txt", "/site/..%2fsecret.txt"),
        *("/site//etc/passwd", "/site/out.txt", "/site/%00", "/site/no/", "/../secret.txt"),
        *("/plans/rack/plan.yaml", "/site", "/watch.css/../../secret.txt"),
    ],
)
def test_paths_outside_are_not_there(asked: Asked, path: str) -> None:
    status, text, _ = asked.ask(path)
    assert status == 404
    assert "secret" not in text


def test_readers_pages_stand_unchanged(asked: Asked) -> None:
    for path in ("/site/", "/site/index.html"):
        status, text, answer = asked.ask(path)
        assert (status, text) == (200, "<p>For readers</p>")
        assert answer.headers["Content-Type"] == "text/html; charset=utf-8"


def test_lines_are_shown_of_listed_places_alone(asked: Asked) -> None:
    page = asked.ask("/")[1]
    for key in listed(asked.stage.seen):
        assert f"/lines?at={quote(key, safe='')}" in page
    key = "plans/rack/plan.yaml:1:1"
    status, text, _ = asked.ask(f"/lines?at={quote(key)}")
    assert status == 200
    assert "plan: Probe rack" in text
    for other in (
        "plans/rack/plan.yaml:2:1",
        "workshop.yaml:1:1",
        "/etc/passwd:1:1",
        "",
        "../x:1:1",
    ):
        assert asked.status(f"/lines?at={quote(other)}") == 404


def test_the_editor_opens_listed_places_for_our_own_page_alone(asked: Asked) -> None:
    told, ours = asked.folder / "told", f"http://{asked.host}"
    key = next(each for each in listed(asked.stage.seen) if each.startswith("plans/rack"))
    good = urlencode({"at": key})
    assert asked.status("/open", good) == 403, "no Origin at all"
    assert asked.status("/open", good, Origin="http://plans.example") == 403
    assert asked.status("/open", good, Origin=ours, Host="plans.example") == 403
    for wrong in ("plans/rack/plan.yaml:2:1", "/etc/passwd:1:1", "../../secret.txt:1:1", "x"):
        assert asked.status("/open", urlencode({"at": wrong}), Origin=ours) == 404
    assert asked.status("/open", "at=" + "x" * 5000, Origin=ours) == 404
    assert asked.status("/elsewhere", good, Origin=ours) == 404
    assert not told.exists()
    assert asked.status("/open", good, Origin=ours) == 204
    end = monotonic() + 20
    while not (told.exists() and told.read_text()):
        assert monotonic() < end
        sleep(0.02)
    file = asked.folder / "shop" / "plans" / "rack" / "plan.yaml"
    assert told.read_text() == f"{file.resolve()}|{key.split(':')[1]}"


def test_a_browser_that_listens_hears_of_each_version(asked: Asked) -> None:
    line = HTTPConnection("127.0.0.1", asked.server.server_port, timeout=20)
    line.request("GET", "/events", headers={"Host": asked.host})
    answer = line.getresponse()
    assert answer.headers["Content-Type"] == "text/event-stream"
    shown = asked.stage.seen.version
    assert answer.readline() == f"data: {shown}\n".encode()
    asked.stage.show(asked.stage.seen)
    assert answer.readline() == b"\n"
    assert answer.readline() == f"data: {shown + 1}\n".encode()
    line.close()


def test_other_ways_of_asking_are_unknown(asked: Asked) -> None:
    line = HTTPConnection("127.0.0.1", asked.server.server_port, timeout=20)
    line.request("DELETE", "/", headers={"Host": asked.host})
    assert line.getresponse().status == 501
    line.close()
