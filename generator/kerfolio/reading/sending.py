"""The form of where a site goes live."""

from __future__ import annotations

import re

from kerfolio.basis.complaint import Complaint, quoted
from kerfolio.model.sending import Sending
from kerfolio.reading.forms import ScalarForm
from kerfolio.reading.nodes import Scalar
from kerfolio.reading.record import Key, Record
from kerfolio.reading.values import TEXT


def _port(node: Scalar) -> int | Complaint:
    text = node.text.strip()
    if re.fullmatch("[0-9]{1,5}", text) and 0 < int(text) < 65536:
        return int(text)
    return Complaint(f"{quoted(text)} is no port")


SENDING: Record[Sending] = Record(
    name="send",
    noun="where the site goes live",
    keys=(
        Key(
            name="to",
            form=TEXT,
            says="A folder, or a host's: ada@bench.example:www.",
            required=True,
        ),
        Key(
            name="port",
            form=ScalarForm(
                noun="a port",
                advice="Write the port of the host's SSH: `22`.",
                convert=_port,
                json={"type": "integer", "minimum": 1, "maximum": 65535},
            ),
            says="The port of the host's SSH.",
        ),
    ),
    make=Sending,
    placed=False,
    advice="Write `send: {to: ada@bench.example:www}`.",
)
