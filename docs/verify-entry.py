#!/usr/bin/env python3
"""Computes the hash of logbook entries, one JSON object a line, independently of the program. See logbook.md. Entries may be whole, or given
field by field with some of them blacked out, as a sale file has them.

    python3 docs/verify-entry.py < export.jsonl
"""
import hashlib
import hmac
import json
import sys
from datetime import datetime, timezone


def netstring(text):
    data = text.encode("utf-8")
    return str(len(data)).encode() + b":" + data + b","


def fields(payload):
    """Name and text of each top-level field, both as written: the value's own JSON text, no number reformatted."""
    decoder, found = json.JSONDecoder(), []
    at = payload.index("{") + 1
    while True:
        while payload[at] in " \t\r\n,":
            at += 1
        if payload[at] == "}":
            return sorted(found, key=lambda field: field[0])
        start = at
        _, at = decoder.raw_decode(payload, at)
        name = payload[start + 1:at - 1]
        at = payload.index(":", at) + 1
        while payload[at] in " \t\r\n":
            at += 1
        start = at
        _, at = decoder.raw_decode(payload, at)
        found.append((name, payload[start:at]))


def commitment(salt, name, text):
    blinding = hmac.new(salt.encode(), name.encode("utf-8"), hashlib.sha256).digest()
    return hashlib.sha256(blinding + text.encode("utf-8")).hexdigest()


def commitments(entry):
    """Name and commitment of each field, whether the entry is whole or has fields blacked out."""
    if "payload" in entry:
        return [(name, commitment(entry["salt"], name, text)) for name, text in fields(entry["payload"])]
    return [(field["name"], opened(field) if "text" in field else field["commitment"]) for field in entry["fields"]]


def opened(field):
    return hashlib.sha256(bytes.fromhex(field["blinding"]) + field["text"].encode("utf-8")).hexdigest()


def milliseconds(at):
    moment = datetime.fromisoformat(at.replace("Z", "+00:00")) - datetime(1970, 1, 1, tzinfo=timezone.utc)
    return (moment.days * 86_400 + moment.seconds) * 1000 + moment.microseconds // 1000


def entry_hash(entry):
    payload = commitments(entry)
    items = ["refettle-entry-1", entry["id"], entry["car"], entry["device"], str(entry["sequence"])]
    items += [str(len(entry["after"])), *sorted(entry["after"]), entry["previous"], str(milliseconds(entry["at"]))]
    items += [entry["kind"], str(entry["version"]), str(len(payload))]
    for field in payload:
        items += field
    return hashlib.sha256(b"".join(map(netstring, items))).hexdigest()


if __name__ == "__main__":
    for line in sys.stdin:
        entry = json.loads(line)
        if "payload" in entry or "fields" in entry:
            print(entry["device"], entry["sequence"], entry["id"], entry_hash(entry))
