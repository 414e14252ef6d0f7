"""Verifies a case bundle without Alburnum, as docs/json/bundle.md describes it.

    /usr/bin/python3 bundle.py FILE [FINGERPRINT]

Hashes with hashlib, the signature with openssl; the standard library alone. Prints what is wrong, a line each, and ends with 1; or says that it is verified.
"""

import base64
import hashlib
import json
import subprocess
import sys
import tempfile
import zipfile
from pathlib import Path

ZEROS = "0" * 64
TEXTS = ("by", "subject", "before", "after")


def sha256(data):
    return hashlib.sha256(data).hexdigest()


def signed(manifest, signature, key):
    with tempfile.TemporaryDirectory() as folder:
        paths = [Path(folder, name) for name in ("manifest", "signature", "key")]
        for path, data in zip(paths, (manifest, signature, key)):
            path.write_bytes(data)
        words = ["openssl", "dgst", "-sha256", "-verify", paths[2], "-signature", paths[1], paths[0]]
        return subprocess.run(words, capture_output=True).returncode == 0


def chain_faults(lines):
    previous, removed, gone = ZEROS, [], set()
    for number, line in enumerate(lines, 1):
        name = f"entry {line['number']}"
        entry, opened = json.loads(line["sealed"]), json.loads(line["opened"])
        if sha256(line["sealed"].encode()) != line["hash"]:
            yield f"{name}: another SHA-256"
        if (entry["number"], entry["case"], entry["number_in_case"]) != (line["number"], line["case"], number):
            yield f"{name}: out of its place"
        if entry["previous_in_case"] != previous:
            yield f"{name}: does not follow the entry before it"
        previous = line["hash"]
        for text in TEXTS:
            if entry[text] is None:
                continue
            if text not in opened:
                removed.append((line["number"], text))
            elif sha256(bytes.fromhex(opened[text]["salt"]) + opened[text]["text"].encode()) != entry[text]:
                yield f"{name}, {text}: another text than was sealed"
        if entry["act"] in ("redaction", "case deleted") and "after" in opened:
            for each in json.loads(opened["after"]["text"])["removed"]:
                gone.update((each["entry"], text) for text in each["texts"])
    for number, text in removed:
        if (number, text) not in gone:
            yield f"entry {number}, {text}: removed without a redaction"


def named_files(lines):
    files = {}
    for line in lines:
        act = json.loads(line["sealed"])["act"]
        if act in ("redaction", "case deleted"):
            files = {}
        after = json.loads(line["opened"]).get("after")
        if after is None:
            continue
        if act in ("case run", "run found", "redaction"):
            files.update(json.loads(after["text"])["files"])
        elif act == "photograph taken in":
            files["photographs/" + after["text"]] = after["text"]
    return files


def faults(bundle, fingerprint):
    manifest, key = bundle.read("manifest.json"), bundle.read("public-key.pem")
    if not signed(manifest, bundle.read("manifest.sig"), key):
        yield "manifest.json: not signed by this key"
        return
    manifest = json.loads(manifest)
    der = base64.b64decode("".join(line for line in key.decode().splitlines() if not line.startswith("-")))
    if sha256(der) != manifest["key"] or fingerprint not in (None, manifest["key"]):
        yield "public-key.pem: another key"
    there = set(bundle.namelist()) - {"manifest.json", "manifest.sig", "public-key.pem"}
    for name in sorted(there ^ set(manifest["files"])):
        yield f"{name}: missing, or not listed"
    for name in sorted(there & set(manifest["files"])):
        if sha256(bundle.read(name)) != manifest["files"][name]["sha256"]:
            yield f"{name}: another SHA-256"
            return
    lines = [json.loads(line) for line in bundle.read("ledger.jsonl").decode().splitlines()]
    yield from chain_faults(lines)
    if (len(lines), lines[-1]["hash"]) != (manifest["entries"], manifest["head"]):
        yield "ledger.jsonl: another end than the manifest says"
    files = named_files(lines)
    held = {name: each["sha256"] for name, each in manifest["files"].items() if name != "ledger.jsonl"}
    for name in sorted(files.keys() | held.keys()):
        if files.get(name) != held.get(name):
            yield f"{name}: not as the ledger says"
    if files == held:
        print_later.append(f"verified: {len(lines)} entries, {len(held)} files, key {manifest['key']}")


print_later = []

if __name__ == "__main__":
    with zipfile.ZipFile(sys.argv[1]) as opened_bundle:
        found = list(faults(opened_bundle, sys.argv[2] if len(sys.argv) > 2 else None))
    print("\n".join(found or print_later))
    sys.exit(1 if found else 0)
