#!/usr/bin/env python3
"""Asks the real program as many readers at once, and prints requests a second, latencies, and the program's processor time and peak memory.

    dotnet build src/Alburnum.Cli -c Release
    bench/serving.py [--readers 200] [--seconds 20]

A store is made of an example case in a folder of its own. Standard library only; Linux, for the memory."""

import argparse
import asyncio
import os
import pathlib
import re
import shutil
import subprocess
import tempfile
import time

ROOT = pathlib.Path(__file__).resolve().parent.parent
PROGRAM = ["dotnet", "exec", str(ROOT / "artifacts/bin/Alburnum.Cli/release/alburnum-cli.dll")]


async def ask(reader, writer, address, host):
    """One request on an open connection; its status and the length of its answer."""
    writer.write(f"GET {address} HTTP/1.1\r\nHost: {host}\r\n\r\n".encode())
    head = (await reader.readuntil(b"\r\n\r\n")).decode("latin-1")
    status = int(head.split(" ", 2)[1])
    if known := re.search(r"\r\ncontent-length: (\d+)", head, re.IGNORECASE):
        body = await reader.readexactly(int(known[1]))
        return status, len(body)
    # In chunks. That which ends them is in no page: its lines end otherwise.
    return status, len(await reader.readuntil(b"\r\n0\r\n\r\n"))


async def read(port, address, until, took, statuses):
    reader, writer = await asyncio.open_connection("127.0.0.1", port, limit=1 << 20)
    while time.monotonic() < until:
        began = time.monotonic()
        status, _ = await ask(reader, writer, address, f"127.0.0.1:{port}")
        took.append(time.monotonic() - began)
        statuses[status] = statuses.get(status, 0) + 1
    writer.close()


def processor_seconds(pid):
    fields = pathlib.Path(f"/proc/{pid}/stat").read_text().rsplit(") ", 1)[1].split()
    return (int(fields[11]) + int(fields[12])) / os.sysconf("SC_CLK_TCK")


async def measure(pid, port, address, readers, seconds):
    took, statuses = [], {}
    began, worked = time.monotonic(), processor_seconds(pid)
    await asyncio.gather(*(read(port, address, began + seconds, took, statuses) for _ in range(readers)))
    took.sort()
    at = lambda share: 1000 * took[min(len(took) - 1, int(share * len(took)))]
    rate = len(took) / (time.monotonic() - began)
    print(f"{address}: {rate:.0f} a second, median {at(0.5):.0f} ms, p99 {at(0.99):.0f} ms, answers {statuses}", flush=True)
    each = 1000 * (processor_seconds(pid) - worked) / len(took)
    print(f"    processor time of the program: {each:.2f} ms an answer", flush=True)


def peak_mb(pid):
    status = pathlib.Path(f"/proc/{pid}/status").read_text()
    return int(re.search(r"VmHWM:\s+(\d+)", status)[1]) / 1024


def main():
    options = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    options.add_argument("--readers", type=int, default=200)
    options.add_argument("--seconds", type=float, default=20)
    options.add_argument("--case", default=str(ROOT / "examples/barn-purlins"))
    given = options.parse_args()
    print(f"{os.cpu_count()} cores; load average before: {os.getloadavg()[0]:.1f}", flush=True)
    with tempfile.TemporaryDirectory() as folder:
        store = f"{folder}/cases.db"
        # Its reports go beside it.
        case = shutil.copytree(given.case, f"{folder}/case")
        subprocess.run([*PROGRAM, "case", case, "--store", store], check=True, stdout=subprocess.DEVNULL)
        server = subprocess.Popen(
            [*PROGRAM, "serve", "--store", store, "--port", "0"], stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True
        )
        try:
            port = 0
            while not port:
                line = server.stdout.readline()
                if found := re.search(r"127\.0\.0\.1:(\d+)", line):
                    port = int(found[1])
                elif not line:
                    raise SystemExit("The program did not start.")

            async def run():
                reader, writer = await asyncio.open_connection("127.0.0.1", port, limit=1 << 24)
                writer.write(f"GET /cases/1 HTTP/1.1\r\nHost: 127.0.0.1:{port}\r\nConnection: close\r\n\r\n".encode())
                page = (await reader.read(1 << 24)).decode("utf-8", "replace")
                while more := (await reader.read(1 << 24)).decode("utf-8", "replace"):
                    page += more
                writer.close()
                photograph = re.search(r"/photographs/[0-9a-f]{64}", page)
                addresses = ["/", "/cases/1", "/cases/1/report.pdf", "/cases/1/report.json"]
                if photograph:
                    addresses += [photograph[0], f"{photograph[0]}/upright"]
                for address in addresses:
                    await measure(server.pid, port, address, given.readers, given.seconds)
                    print(f"    peak memory so far: {peak_mb(server.pid):.0f} MB; load average {os.getloadavg()[0]:.1f}", flush=True)

            asyncio.run(run())
        finally:
            server.terminate()
            server.wait(10)


if __name__ == "__main__":
    main()
