"""Other machines and the app: what they reach with and without letting devices in.

The machines are network namespaces of this one: the desk and a phone, with a cable between them. Needs
the right to make namespaces; where that is not given (no root), the tests are skipped and say so.
KEENFALL_PROGRAM: the program.
"""

import json
import os
import re
import shutil
import signal
import subprocess
import tempfile
import unittest

DESK, PHONE = "kf-desk", "kf-phone"
DESK_ADDRESS = "10.77.0.1"
PROGRAM = os.environ.get("KEENFALL_PROGRAM", "keenfall")


def run(*words: str) -> str:
    return subprocess.run(words, check=True, capture_output=True, text=True).stdout


def at(machine: str, *words: str) -> list[str]:
    return ["ip", "netns", "exec", machine, *words]


def may_make_machines() -> bool:
    if shutil.which("ip") is None:
        return False
    tried = subprocess.run(["ip", "netns", "add", "kf-try"], capture_output=True, check=False)
    if tried.returncode == 0:
        run("ip", "netns", "delete", "kf-try")
    return tried.returncode == 0


ASKING = """
import http.client, json, sys
method, address, path, body, headers = json.loads(sys.argv[1])
connection = http.client.HTTPConnection(address, timeout=5)
connection.request(method, path, None if body is None else json.dumps(body), headers)
answer = connection.getresponse()
print(json.dumps([answer.status, answer.read().decode()]))
"""


def ask(machine: str, method: str, url: str, body: object = None, headers: dict | None = None):
    """Status and answer, asked from that machine."""
    address, _, path = url.removeprefix("http://").partition("/")
    asked = json.dumps([method, address, "/" + path, body, headers or {}])
    return tuple(json.loads(run(*at(machine, "python3", "-c", ASKING, asked))))


@unittest.skipUnless(may_make_machines(), "network namespaces cannot be made here")
class OtherMachines(unittest.TestCase):
    def setUp(self):
        self.folder = tempfile.TemporaryDirectory()
        for machine in (DESK, PHONE):
            subprocess.run(["ip", "netns", "delete", machine], capture_output=True, check=False)
            run("ip", "netns", "add", machine)
            run("ip", "-netns", machine, "link", "set", "lo", "up")
        run("ip", "link", "add", "kf-a", "netns", DESK, "type", "veth", "peer", "name", "kf-b", "netns", PHONE)
        for machine, cable, address in ((DESK, "kf-a", DESK_ADDRESS), (PHONE, "kf-b", "10.77.0.2")):
            run("ip", "-netns", machine, "address", "add", f"{address}/24", "dev", cable)
            run("ip", "-netns", machine, "link", "set", cable, "up")
        self.program = None

    def tearDown(self):
        if self.program:
            self.program.send_signal(signal.SIGTERM)
            self.program.communicate(timeout=20)
        for machine in (DESK, PHONE):
            run("ip", "netns", "delete", machine)
        self.folder.cleanup()

    def open(self, *words: str) -> str:
        """What it says until it serves."""
        self.program = subprocess.Popen(
            at(DESK, PROGRAM, "open", "--no-open", *words),
            cwd=self.folder.name,
            env={**os.environ, "XDG_STATE_HOME": self.folder.name},
            stdout=subprocess.PIPE,
            text=True,
        )
        said = ""
        last = "is back." if "--bench" in words else "Ctrl-C."
        while last not in said:
            line = self.program.stdout.readline()
            self.assertTrue(line, said)
            said += line
        return said

    def ports_that_answer_the_phone(self) -> set[int]:
        listening = run(*at(DESK, "ss", "--no-header", "--listening", "--tcp", "--numeric"))
        ports = {int(line.split()[3].rsplit(":", 1)[1]) for line in listening.splitlines()}
        self.assertTrue(ports)
        reach = (
            "import socket, sys\n"
            "for port in map(int, sys.argv[2:]):\n"
            "    try: socket.create_connection((sys.argv[1], port), 2).close(); print(port)\n"
            "    except OSError: pass\n"
        )
        reached = run(*at(PHONE, "python3", "-c", reach, DESK_ADDRESS, *map(str, ports)))
        return set(map(int, reached.split()))

    def test_see_nothing_where_no_device_is_let_in(self):
        self.open()
        self.assertEqual(self.ports_that_answer_the_phone(), set())

    def test_see_the_bench_alone_where_devices_are_let_in(self):
        said = self.open("--bench")
        bench = re.search(r"http://10\.77\.0\.1:(\d+)/bench", said)
        self.assertIsNotNone(bench, said)
        self.assertEqual(self.ports_that_answer_the_phone(), {int(bench[1])})

        door = f"http://{DESK_ADDRESS}:{bench[1]}"
        desk_key = re.search(r"#key=(\S+)", said)[1]
        self.assertEqual(ask(PHONE, "GET", f"{door}/bench")[0], 200)
        for headers in ({}, {"X-Keenfall-Key": desk_key}):
            self.assertEqual(ask(PHONE, "GET", f"{door}/api/v1/bench", headers=headers)[0], 401)
        self.assertEqual(ask(PHONE, "GET", f"{door}/bench", headers={"Host": "keenfall.example"})[0], 403)

        code = re.search(r"with the code (\S+),", said)[1]
        wrong = {"code": "AAAA-AAAA", "name": "phone"}
        self.assertEqual(ask(PHONE, "POST", f"{door}/api/v1/let-in", wrong)[0], 403)
        status, answer = ask(PHONE, "POST", f"{door}/api/v1/let-in", {"code": code, "name": "phone"})
        self.assertEqual(status, 200, answer)
        key = {"X-Keenfall-Key": json.loads(answer)["key"]}
        self.assertEqual(ask(PHONE, "GET", f"{door}/api/v1/bench", headers=key)[0], 200)
        for path in ("app", "home", "journal", "kit", "devices", "notebooks"):
            self.assertEqual(ask(PHONE, "GET", f"{door}/api/v1/{path}", headers=key)[0], 404, path)

        desk = re.search(r"http://127\.0\.0\.1:\d+", said)[0]
        own = {"X-Keenfall-Key": desk_key}
        told = json.loads(ask(DESK, "GET", f"{desk}/api/v1/devices", headers=own)[1])
        device = told["devices"][0]["id"]
        self.assertEqual(ask(DESK, "DELETE", f"{desk}/api/v1/devices/{device}", headers=own)[0], 200)
        self.assertEqual(ask(PHONE, "GET", f"{door}/api/v1/bench", headers=key)[0], 401)


if __name__ == "__main__":
    unittest.main()
