"""Writers to one store, killed without warning. Run as a module: DB, folder for receipts, how many are killed; and
``early`` for writers that acknowledge too early, which must be found out.

Prints the digests that were acknowledged, one a line. It runs in a process of its own so that nothing is forked that
has threads.
"""

import os
import random
import signal
import sys
import time
from pathlib import Path

from tests.validator.wellposed.exchange.incoming import LABORATORY, NOW, digest_of, order, take

from wellposed.exchange.receipts import receipt_name, written
from wellposed.exchange.store import Store

WRITERS = 4
DOCUMENTS = 20_000
LONGEST = 0.15  # seconds until the next one is killed: some commits


def writer(path, folder, early, seed):
    """Take in orders, many of them sent by others as well, and acknowledge each once its receipt is on the disk."""
    draw = random.Random(seed)
    with Store(path, None, NOW) as store:
        while True:
            data = order(id=f"HR-{draw.randrange(DOCUMENTS)}")
            if early:
                acknowledge(digest_of(data))
            given = take(store, data).answer
            written(folder, receipt_name(given.sha256, given.number), given.receipt)
            if not early:
                acknowledge(given.sha256)


def acknowledge(digest):
    os.write(1, f"{digest}\n".encode())  # shorter than PIPE_BUF: whole, or not at all


def started(path, folder, early, seed):
    child = os.fork()
    if child == 0:
        try:
            writer(path, folder, early, seed)
        finally:
            os._exit(1)
    return child


def killed(child):
    """Kill a writer; it must have been at work until then."""
    os.kill(child, signal.SIGKILL)
    _, status = os.waitpid(child, 0)
    return os.WIFSIGNALED(status)


def main(path, folder, kills, early):
    Store(path, LABORATORY, NOW).close()
    digest_of(order())  # what is made at the first use is made before the writers part, or they die over it
    draw = random.Random(kills)
    writers = [started(path, folder, early, seed) for seed in range(WRITERS)]
    alive = True
    for seed in range(WRITERS, WRITERS + kills):
        time.sleep(draw.uniform(0, LONGEST))
        alive &= killed(writers.pop(draw.randrange(WRITERS)))
        writers.append(started(path, folder, early, seed))
    last = [killed(one) for one in writers]  # every one of them, whatever the first was doing
    return 0 if alive and all(last) else 3


if __name__ == "__main__":
    sys.exit(main(sys.argv[1], Path(sys.argv[2]), int(sys.argv[3]), "early" in sys.argv[4:]))
