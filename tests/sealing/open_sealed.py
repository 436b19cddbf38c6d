"""Opens a sealed file by what docs/sealed-files.md says, with nothing of Kerfolio's.

python open_sealed.py FILE.sealed FILE    asks for the key
"""

import getpass
import hashlib
import re
import struct
import sys
import unicodedata
from pathlib import Path

from cryptography.hazmat.primitives.ciphers.aead import AESGCM
from cryptography.hazmat.primitives.keywrap import InvalidUnwrap, aes_key_unwrap


def opened(data, typed):
    magic, version, rounds, salt, chunk, size, prefix, locks = struct.unpack(
        ">16sHI16sIQ7sH", data[:59]
    )
    assert (magic, version) == (b"kerfolio sealed\n", 1), "no sealed file"
    head, body = data[: 59 + 40 * locks], data[59 + 40 * locks :]
    words = re.sub("[^a-z]+", " ", unicodedata.normalize("NFKC", typed).lower()).strip(" ")
    opener = hashlib.pbkdf2_hmac("sha256", words.encode(), salt, rounds)
    for at in range(59, len(head), 40):
        try:
            cipher = AESGCM(aes_key_unwrap(opener, head[at : at + 40]))
            break
        except InvalidUnwrap:
            continue
    else:
        raise SystemExit("the key does not open this file")
    chunks, found = max(1, -(-size // chunk)), b""
    assert len(body) == size + 16 * chunks, "cut short, or longer than it says"
    for number in range(chunks):
        nonce = prefix + struct.pack(">I?", number, number == chunks - 1)
        part = body[number * (chunk + 16) : (number + 1) * (chunk + 16)]
        found += cipher.decrypt(nonce, part, hashlib.sha256(head).digest())
    return found


if __name__ == "__main__":
    content = opened(Path(sys.argv[1]).read_bytes(), getpass.getpass("Key: "))
    Path(sys.argv[2]).write_bytes(content)
