"""Checks plans against the model of their machines, with a state machine of its own.

    python3 tests/outside/checker MODEL PLAN...     prints what is wrong; 1 where anything is
    python3 tests/outside/checker --stream          reads models and plans, one a line, and writes a verdict for each plan

It knows nothing of the compiler but the two files that it writes, model.json and plan.json, and of the language only what its reference says.
"""

import json
import sys

from replay import judge


def stream():
    model = None
    for line in sys.stdin:
        document = json.loads(line)
        if "machines" in document:
            model = document
        else:
            print(json.dumps(judge(model, document)), flush=True)


def main(arguments):
    if arguments == ["--stream"]:
        stream()
        return 0
    if len(arguments) < 2:
        print(__doc__, file=sys.stderr)
        return 2
    with open(arguments[0], encoding="utf-8") as file:
        model = json.load(file)
    wrong = 0
    for path in arguments[1:]:
        with open(path, encoding="utf-8") as file:
            verdict = judge(model, json.load(file))
        faults = [f"{about}: {fault}" for about, fault in verdict.items() if fault]
        wrong += bool(faults)
        for fault in faults:
            print(f"{path}: {fault}")
    print(f"{len(arguments) - 1} plans, {wrong} refused")
    return 1 if wrong else 0


sys.exit(main(sys.argv[1:]))
