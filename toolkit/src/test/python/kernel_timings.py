"""Times installed Jupyter kernels by Jupyter's own client: medians over fresh kernels.

    /usr/bin/python3 kernel_timings.py taketally python3

The kernels must be known to Jupyter (JUPYTER_PATH or --user). Prints a Markdown table. Run it on a
quiet machine; docs/kernel.md has the results.
"""

import statistics
import sys
import time

from jupyter_client.manager import KernelManager

FRESH = 5
LINES = 100_000
COLD = 20  # so many cells, or completions, before Java has compiled what they go through
CODE = {
    "taketally": {
        "many": "for (int i = 0; i < %d; i++) System.out.println(\"line \" + i);" % LINES,
        "endless": "while (true) { }",
        "complete": "\"x\".toUpp",
    },
    "python3": {
        "many": "for i in range(%d): print('line', i)" % LINES,
        "endless": "while True: pass",
        "complete": "'x'.upp",
    },
}


def run(client, code):
    """Runs a cell; gives the seconds until reply and idle, and the lines printed."""
    began = time.time()
    message = client.execute(code)
    lines = 0
    while True:
        output = client.get_iopub_msg(timeout=120)
        if output["parent_header"].get("msg_id") != message:
            continue
        if output["msg_type"] == "stream":
            lines += output["content"]["text"].count("\n")
        if output["msg_type"] == "status" and output["content"]["execution_state"] == "idle":
            break
    client.get_shell_msg(timeout=120)
    return time.time() - began, lines


def complete(client, code):
    began = time.time()
    client.complete(code, len(code), reply=True, timeout=20)
    return time.time() - began


def memory(pid):
    with open("/proc/%d/status" % pid) as status:
        return next(int(line.split()[1]) for line in status if line.startswith("VmRSS")) / 1024


def interrupt(manager, client, code):
    client.execute(code)
    time.sleep(0.5)
    began = time.time()
    manager.interrupt_kernel()
    client.get_shell_msg(timeout=60)
    seconds = time.time() - began
    run(client, "1+1")
    return seconds


def once(name):
    times = {}
    code = CODE[name]
    manager = KernelManager(kernel_name=name)
    began = time.time()
    manager.start_kernel()
    client = manager.client()
    client.start_channels()
    client.wait_for_ready(timeout=60)
    times["start to kernel_info_reply, s"] = time.time() - began
    run(client, "1+1")
    times["start to first 1+1, s"] = time.time() - began
    cells = [1000 * run(client, "1+1")[0] for _ in range(2 * COLD)]
    times["1+1, the first twenty, ms"] = statistics.median(cells[:COLD])
    times["1+1, the next twenty, ms"] = statistics.median(cells[COLD:])
    waits = [1000 * complete(client, code["complete"]) for _ in range(2 * COLD)]
    times["completion, the first twenty, ms"] = statistics.median(waits[:COLD])
    times["completion, the next twenty, ms"] = statistics.median(waits[COLD:])
    pid = manager.provisioner.pid if hasattr(manager, "provisioner") else manager.kernel.pid
    times["memory after 1+1, MB"] = memory(pid)
    seconds, lines = run(client, code["many"])
    times["100,000 lines, s"] = seconds
    times["of them arrived"] = lines
    times["memory after them, MB"] = memory(pid)
    times["endless loop interrupted, ms"] = 1000 * interrupt(manager, client, code["endless"])
    began = time.time()
    client.stop_channels()
    manager.shutdown_kernel()
    times["shutdown, s"] = time.time() - began
    return times


def main(names):
    results = {name: [once(name) for _ in range(FRESH)] for name in names}
    print("| |" + "|".join(names) + "|\n|---|" + "--:|" * len(names))
    for what in results[names[0]][0]:
        medians = [statistics.median(each[what] for each in results[name]) for name in names]
        print("|%s|%s|" % (what, "|".join("%.2f" % m if m < 10 else "%.0f" % m for m in medians)))


if __name__ == "__main__":
    main(sys.argv[1:] or ["taketally", "python3"])
