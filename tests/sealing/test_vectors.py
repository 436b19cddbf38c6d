"""What sealing rests on, against the vectors of the standards that state it.

All vectors are from memory of the documents named; they were checked against nothing but what is
run here, so that a slip in one of them would show as a failure.
"""

from __future__ import annotations

import hashlib

import pytest
from cryptography.hazmat.primitives.ciphers.aead import AESGCM

from kerfolio.sealing.form import ROUNDS
from kerfolio.sealing.locks import lock, stretched

STRETCHED = [
    # RFC 7914, section 11: PBKDF2-HMAC-SHA-256, of which the first 32 of 64 bytes.
    ("passwd", b"salt", 1, "55ac046e56e3089fec1691c22544b605f94185216dde0465e68b9d57c20dacbc"),
    (
        *("Password", b"NaCl", 80_000),
        "4ddcd8f60b98be21830cee5ef22701f9641a4418d04c0414aeff08876b34ab56",
    ),
    # The cases of RFC 6070 (which states SHA-1) reckoned for SHA-256, as published widely.
    ("password", b"salt", 1, "120fb6cffcf8b32c43e7225256c4f837a86548c92ccc35480805987cb70be17b"),
    ("password", b"salt", 2, "ae4d0c95af6b46d32d0adff928f06dd02a303f8ef3c251dfd6e2d85a95474c43"),
    ("password", b"salt", 4096, "c5e478d59288c841aa530db6845c4c8d962893a001ce4e11a4963873aa98134a"),
]


@pytest.mark.parametrize(("words", "salt", "rounds", "expected"), STRETCHED)
def test_a_key_is_stretched_as_published(
    words: str, salt: bytes, rounds: int, expected: str
) -> None:
    assert stretched(words, salt, rounds).hex() == expected
    assert hashlib.pbkdf2_hmac("sha256", words.encode(), salt, rounds).hex() == expected


def test_a_key_is_stretched_as_often_as_owasp_states() -> None:
    """Password Storage Cheat Sheet (OWASP): PBKDF2-HMAC-SHA256, 600,000 iterations."""
    assert ROUNDS == 600_000


def test_a_content_key_is_wrapped_as_published() -> None:
    """RFC 3394, section 4.6: 256 bits of key data with a 256-bit KEK."""
    data = bytes.fromhex("00112233445566778899aabbccddeeff000102030405060708090a0b0c0d0e0f")
    expected = "28c9f404c4b810f4cbccb35cfb87f8263f5786e2d80ed326cbc7f0e71a99f43bfb988b9b7a02dd21"
    assert lock(bytes(range(32)), data).hex() == expected


GCM = [
    # Test cases 13, 14 and 16 of the proposal to NIST (McGrew and Viega, "The Galois/Counter Mode
    # of Operation", appendix B), which SP 800-38D names: AES-256, nonces of 96 bits.
    ("00" * 32, "00" * 12, "", "", "530f8afbc74536b9a963b4f1c4cb738b"),
    (
        *("00" * 32, "00" * 12, "00" * 16, ""),
        "cea7403d4d606b6e074ec5d3baf39d18d0d1c8a799996bf0265b98b5d48ab919",
    ),
    (
        "feffe9928665731c6d6a8f9467308308" * 2,
        "cafebabefacedbaddecaf888",
        "d9313225f88406e5a55909c5aff5269a86a7a9531534f7da2e4c303d8a318a72"
        "1c3c0c95956809532fcf0e2449a6b525b16aedf5aa0de657ba637b39",
        "feedfacedeadbeeffeedfacedeadbeefabaddad2",
        "522dc1f099567d07f47f37a32a84427d643a8cdcbfe5c0c97598a2bd2555d1aa"
        "8cb08e48590dbb3da7b08b1056828838c5f61e6393ba7a0abcc9f662"
        "76fc6ece0f4e1768cddf8853bb2d551b",
    ),
]


@pytest.mark.parametrize(("key", "nonce", "content", "bound", "expected"), GCM)
def test_chunks_are_sealed_as_published(
    key: str, nonce: str, content: str, bound: str, expected: str
) -> None:
    told = [bytes.fromhex(each) for each in (nonce, content, bound)]
    assert AESGCM(bytes.fromhex(key)).encrypt(*told).hex() == expected
