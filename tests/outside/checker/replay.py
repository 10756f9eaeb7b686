"""Replays a plan on a machine: the strip, the work and the refit, step by step, and looks at what is left."""

import copy

from machine import Machine, State
from verbs import CLOSING, OPENING, REFIT, STRIP, Hands


def judge(model, plan):
    """What is wrong with a plan, by what it is about; a part of it that is right has None."""
    machine = Machine(find(model, plan))
    return Replay(machine, plan).verdict()


def find(model, plan):
    """The machine of a plan, in its variant."""
    options = {option["name"] for option in plan["variant"] if option["present"]}
    for machine in model["machines"]:
        if machine["name"] == plan["machine"] and set(machine["with"]) == options:
            return machine
    raise KeyError(f"the model has no {plan['machine']} with {sorted(options)}")


class Replay:
    def __init__(self, machine, plan):
        self.machine = machine
        self.plan = plan
        self.start = State(machine)
        self.state = copy.deepcopy(self.start)
        self.hands = Hands(machine, self.state)
        self.strip = [step for stage in plan["strip"] for step in stage["steps"]] + plan["work"]["steps"]
        self.refit = [step for stage in plan["refit"] for step in stage["steps"]]
        self.discards = sorted(plan["discards"], key=lambda discard: discard["after"])

    def verdict(self):
        strip = next(self.strip_faults(), None)
        refit = next(self.refit_faults(), None) if strip is None else None
        return {"strip": strip, "refit": refit, "asked": next(self.missed(), None), "form": next(self.form(), None)}

    def strip_faults(self):
        done = 0
        yield from self.discard(done)
        for step in self.strip:
            if step["verb"] in REFIT - STRIP and not self.machine.is_temporary(step["item"]):
                yield f"step {step['number']}: {step['verb']} is no verb of the strip"
            yield from self.perform(step, "strip")
            done += 1
            yield from self.discard(done)
        for energy, stands in self.state.energy.items():
            if stands == "unproved":
                yield f"{energy} is never proved to be off"

    def discard(self, done):
        while self.discards and self.discards[0]["after"] == done:
            item = self.discards.pop(0)["item"]
            yield from (f"discard {item}: {amiss}" for amiss in self.hands.off(item))
            self.hands.discard(item)

    def refit_faults(self):
        yield from self.used_again()
        for step in self.refit:
            if step["verb"] in STRIP - REFIT and not (step["verb"] == "isolate" and step["test"]) and not self.machine.is_temporary(step["item"]):
                yield f"step {step['number']}: {step['verb']} is no verb of the refit"
            yield from self.perform(step, "refit")
        yield from (f"at the end {difference}" for difference in self.state.differences(self.start, self.hands.gone))

    def perform(self, step, phase):
        for amiss in self.hands.amiss(step, phase):
            yield f"step {step['number']} ({step['verb']} {step['item']}): {amiss}"
        self.hands.do(step, phase)

    def used_again(self):
        """What serves once and goes back, and what was disturbed and is not renewed."""
        opened = {
            step["item"]
            for step in self.strip
            if step["verb"] == "remove" or (step["verb"] in OPENING and not self.machine.is_temporary(step["item"]))
        }
        for part in self.machine.parts.values():
            if part["singleUse"] and part["name"] in opened and not self.is_new(part["name"]):
                yield f"{part['name']} serves once and goes back"
        for step in self.strip:
            joint = self.machine.joints.get(step["item"])
            if step["verb"] == "loosen" and joint["singleUse"] \
                    and self.state.attached[joint["name"]] > 0 and joint["name"] not in self.hands.gone:
                yield f"{joint['name']} serves once and is tightened again"
        for items in (self.machine.parts, self.machine.joints):
            for item in items.values():
                disturbed = [other for other in item["renewWith"] if self.came_off(other, item["name"], opened)]
                serves_once = item["name"] in self.machine.parts and item["singleUse"] and item["name"] in opened
                if disturbed and not serves_once and not self.is_new(item["name"]):
                    yield f"{item['name']} must be renewed with {disturbed[0]}"

    def came_off(self, disturber, item, opened):
        """Whether it was taken off, or went off with what it lies in while the item stayed."""
        around = list(self.machine.around(disturber)) if disturber in self.machine.parts else [disturber]
        return any(outer in opened and (outer == disturber or not self.lies_in(item, outer)) for outer in around)

    def lies_in(self, item, part):
        if item in self.machine.parts:
            return self.machine.is_within(item, part)
        joint = self.machine.joints[item]
        return self.machine.is_within(joint["part"], part) and (joint["role"] == "cover" or self.machine.is_within(joint["to"], part))

    def is_new(self, item):
        if item in self.hands.gone or item in self.hands.replaced:
            return True
        if item in self.machine.joints:
            off = self.state.attached[item] == 0
            if self.machine.joints[item]["singleUse"]:
                return off
            inner = self.machine.joints[item]["part"]
        else:
            off = self.state.place[item] == "out"
            inner = self.machine.parts[item]["parent"]
        # A new part comes with what was left inside the old one.
        return not off and any(part in self.hands.replaced and self.lies_in(item, part) for part in self.machine.around(inner))

    def missed(self):
        """What the author asks for and the plan does not do: goals, and orders of the refit."""
        done = {(step["verb"], step["item"]) for step in self.strip}
        for goal in self.plan["goalActions"]:
            verb = "remove" if goal["verb"] == "strip" else goal["verb"]
            if (verb, goal["item"]) not in done:
                yield f"nothing does what it is for: {verb} {goal['item']}"
        for rule in self.plan["rules"]:
            earlier, later = self.places(rule["earlier"]), self.places(rule["later"])
            if not earlier or not later:
                yield f"a rule names what the refit has not: {rule}"
            elif max(earlier) > min(later):
                yield f"{rule['earlier']} comes after {rule['later']}"

    def places(self, action):
        """Where the refit does what a rule names; what is put in for another step's sake is not meant, and what goes in finger-tight is
        fastened once it has its torque too."""
        verbs = {action["verb"]}
        if action["verb"] == "fasten" and any((step["verb"], step["item"]) == ("snug", action["item"]) for step in self.refit):
            verbs |= {"snug", "tighten"}
        return [
            place
            for place, step in enumerate(self.refit)
            if step["verb"] in verbs
            and step["item"] == action["item"]
            and action["position"] in ("", step["position"])
            and (step["mirror"] or step["verb"] != "set")
        ]

    def form(self):
        """Whether the plan says of its items what the model says, counts its steps through, and does each test in one go."""
        numbers = [step["number"] for step in self.strip + self.refit]
        if numbers != list(range(1, len(numbers) + 1)):
            yield "the steps are not numbered through"
        tests = [step["test"] for step in self.refit]
        for test in set(tests) - {0}:
            first = tests.index(test)
            if tests[first:first + tests.count(test)].count(test) != tests.count(test):
                yield f"something comes in between the steps of test {test}"
        items = {item["name"]: item for item in self.plan["items"]}
        for step in self.strip + self.refit:
            if step["item"] and step["item"] not in items:
                yield f"step {step['number']} names {step['item']}, which is not among the items"
            if step["mirror"] and numbers.count(step["mirror"]) != 1:
                yield f"step {step['number']} has a mirror that is no step"
        for name, item in items.items():
            if item["sort"] in ("held", "wired", "piped", "cover"):
                joint = self.machine.joints[name]
                ends = [joint["part"]] if joint["role"] == "cover" else [joint["part"], joint["to"]]
                said = (item["sort"], item["ends"], item["count"], item["kind"], item["covers"], item["on"], item["carries"])
                if said != (joint["role"], ends, joint["count"], joint["kind"], joint["covers"], joint["on"], joint["carries"]):
                    yield f"plan and model do not agree on {name}"
            elif item["sort"] == "part" and item["parent"] != self.machine.parts[name]["parent"]:
                yield f"plan and model do not agree on {name}"
            elif item["sort"] == "control" and item["positions"] != self.machine.controls[name]["positions"]:
                yield f"plan and model do not agree on {name}"
