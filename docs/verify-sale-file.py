#!/usr/bin/env python3
"""Checks a sale file without the program: each entry against the signed list, and both signatures with openssl. See sale-file.md.

    python3 docs/verify-sale-file.py FILE
"""
import hashlib
import importlib.machinery
import json
import pathlib
import re
import subprocess
import sys
import tempfile

entries = importlib.machinery.SourceFileLoader("entries", str(pathlib.Path(__file__).parent / "verify-entry.py")).load_module()


def der(signature):
    """r and s, 32 bytes each, as the two ASN.1 integers that openssl wants."""
    def integer(number):
        data = number.to_bytes((number.bit_length() // 8) + 1, "big")
        return b"\x02" + bytes([len(data)]) + data
    raw = bytes.fromhex(signature)
    both = integer(int.from_bytes(raw[:32], "big")) + integer(int.from_bytes(raw[32:], "big"))
    return b"\x30" + bytes([len(both)]) + both


def is_signed(key, data, signature):
    with tempfile.TemporaryDirectory() as folder:
        place = pathlib.Path(folder)
        (place / "key").write_bytes(bytes.fromhex(key))
        (place / "data").write_bytes(data)
        (place / "signature").write_bytes(der(signature))
        return subprocess.run(["openssl", "dgst", "-sha256", "-keyform", "DER", "-verify", place / "key", "-signature", place / "signature", place / "data"],
                              capture_output=True).returncode == 0


def main(path):
    data = pathlib.Path(path).read_bytes()
    begin, last = data.index(b'{"saleFile":{"form":"'), data.rindex(b'{"signature":{"algorithm":"')
    lines = data[begin:last].decode().split("\n")[:-1]
    signature = json.loads(data[last:].split(b"\n")[0])["signature"]
    zeroed = data[:last] + re.sub(rb'"file":"[0-9a-f]{128}"', b'"file":"' + b"0" * 128 + b'"', data[last:], count=1)
    listed = {(run["device"], run["from"] + i): digest for run in json.loads(lines[-1])["manifest"] for i, digest in enumerate(run["hashes"])}
    given = {(entry["device"], entry["sequence"]): entries.entry_hash(entry) for entry in map(json.loads, lines[1:-1])}
    print("list signed:", is_signed(signature["key"], (lines[0] + "\n" + lines[-1]).encode(), signature["manifest"]))
    print("file signed:", is_signed(signature["key"], zeroed, signature["file"]))
    print("key:", hashlib.sha256(signature["key"].encode()).hexdigest()[:32])
    print("entries:", len(lines) - 2)
    for device, sequence in sorted(listed.keys() | given.keys()):
        if listed.get((device, sequence)) != given.get((device, sequence)):
            print("differs:", device, sequence)


if __name__ == "__main__":
    main(sys.argv[1])
