"""What each verb needs and does.

Written from grammar/LANGUAGE.md alone: the table of verbs in "Procedures: the strip", "Procedures: work" and "The refit".
"""

from reach import Reach

OPENING = {"undo": "fastener", "release": "clip", "unplug": "connector", "disconnect": "line", "cut": "bond"}
CLOSING = {"fasten": "fastener", "snug": "fastener", "engage": "clip", "plug": "connector", "connect": "line", "renew": "bond"}
WORK = {"repair", "clean", "inspect", "adjust"}
TEXTS = {"measure", "task", "check", "record", "pause"}
STRIP = {*OPENING, "loosen", "aside", "remove", "set", "isolate", "verify", "empty", "support", "cap"}
REFIT = {*CLOSING, "tighten", "retorque", "return", "fit", "restore", "fill", "unsupport", "set", "support", "uncap"}


class Hands:
    """Does one action after the other. An action that cannot be done yields what is amiss and is done all the same."""

    def __init__(self, machine, state):
        self.machine = machine
        self.state = state
        self.reach = Reach(machine, state)
        self.gone = set()
        self.replaced = set()
        self.renewed = {}
        # Both by the numbers of the steps that took parts off.
        self.was_propped = set()
        self.place_before = {}
        self.caps_each = {}
        self.opened_last = 0

    def amiss(self, step, phase):
        """What keeps a step from being done."""
        verb, item = step["verb"], step["item"]
        yield from self.reach.unmet(step["needs"], phase)
        if verb in TEXTS:
            return
        if verb in OPENING or verb == "loosen":
            yield from self.opens(step, phase)
        elif verb in CLOSING or verb == "tighten":
            yield from self.closes(step, phase)
        elif verb == "replace" and self.is_partial(step):
            if self.machine.joints[item]["count"] - self.state.attached[item] < step["count"] + self.renewed.get(item, 0):
                yield f"not so many of {item} are off and old"
        elif verb in ("replace", "discard"):
            yield from self.off(item)
        elif verb in WORK:
            yield from self.works(step)
        else:
            yield from getattr(self, "can_" + verb)(step, phase)

    def do(self, step, phase):
        """What a step changes."""
        verb, item, state = step["verb"], step["item"], self.state
        if verb in OPENING:
            state.attached[item] -= step["count"]
            self.opened_last = step["count"]
        elif verb in CLOSING:
            state.attached[item] += step["count"]
            if verb == "snug":
                state.slack.add(item)
        elif verb == "loosen":
            state.slack.add(item)
        elif verb == "tighten":
            state.slack.discard(item)
        elif verb == "aside":
            state.place[item] = "aside"
        elif verb == "return":
            state.place[item] = "fitted"
        elif verb == "remove":
            self.place_before[step["number"]] = state.place[item]
            state.place[item] = "out"
            if item in state.propped:
                state.propped.discard(item)
                self.was_propped.add(step["number"])
        elif verb == "fit":
            # A part that was aside when it came out goes back to where it was.
            state.place[item] = self.place_before.get(step["mirror"], "fitted") if phase == "refit" else "fitted"
        elif verb == "set":
            state.control[item] = step["position"]
        elif verb == "isolate":
            state.energy[item] = "unproved" if any(self.reach.proof(item)) else "dead"
        elif verb == "verify":
            state.energy[item] = "dead"
        elif verb == "restore":
            state.energy[item] = "live"
        elif verb in ("empty", "fill"):
            state.fluid[item] = "empty" if verb == "empty" else "full"
        elif verb == "support":
            state.propped.add(item)
        elif verb == "unsupport":
            state.propped.discard(item)
        elif verb == "cap":
            state.capped[item] += self.pieces(step)
        elif verb == "uncap":
            state.capped[item] -= self.pieces(step)
        elif verb == "replace" and self.is_partial(step):
            self.renewed[item] = self.renewed.get(item, 0) + step["count"]
            if self.renewed[item] == self.machine.joints[item]["count"]:
                self.replaced.add(item)
        elif verb == "replace":
            self.replaced.add(item)

    def pieces(self, step):
        """For how many pieces a step caps or uncaps: a cap follows the opening, which tells how many caps a piece takes."""
        item = step["item"]
        if item in self.machine.parts:
            return 1
        if step["verb"] == "cap" and item not in self.caps_each:
            self.caps_each[item] = max(1, step["count"] // max(1, self.opened_last))
        return step["count"] // self.caps_each.get(item, 1)

    def can_cap(self, step, phase):
        item = step["item"]
        if item in self.machine.parts:
            if self.state.place[item] != "out" or self.state.capped[item]:
                yield f"there is no hole of {item} to cap"
        elif self.state.capped[item] + self.pieces(step) > self.machine.joints[item]["count"] - self.state.attached[item]:
            yield f"{item} is not open enough for these caps"

    def can_uncap(self, step, phase):
        if self.state.capped[step["item"]] < self.pieces(step):
            yield f"{step['item']} is not capped"

    def is_partial(self, step):
        """A replacement of some pieces of a joint."""
        return step["item"] in self.machine.joints and step["count"] < self.machine.joints[step["item"]]["count"]

    def discard(self, item):
        """Something does not go back, nor does what goes along with it."""
        if item not in self.gone:
            self.gone.add(item)
            for inner in self.machine.inside(item):
                self.discard(inner)

    def is_gone(self, joint):
        """A joint that does not go back, for itself or for an end of it."""
        return joint in self.gone or any(self.machine.ties(joint, part) for part in self.gone if part in self.machine.parts)

    def opens(self, step, phase):
        verb, joint = step["verb"], step["item"]
        yield from self.fits(joint, "fastener" if verb == "loosen" else OPENING[verb])
        yield from self.reach.open_to_hand(joint, phase)
        if self.state.attached[joint] < max(1, step["count"] if verb != "loosen" else 1):
            yield f"{joint} has only {self.state.attached[joint]} attached"
        if verb == "loosen" and joint in self.state.slack:
            yield f"{joint} is slack already"

    def closes(self, step, phase):
        verb, joint = step["verb"], step["item"]
        yield from self.fits(joint, "fastener" if verb == "tighten" else CLOSING[verb])
        yield from self.reach.open_to_hand(joint, phase)
        if not self.reach.meets(joint):
            yield f"the ends of {joint} are not together"
        if verb == "tighten":
            if joint not in self.state.slack:
                yield f"{joint} is not slack"
            if self.state.attached[joint] < max(1, step["count"]):
                yield f"{joint} has only {self.state.attached[joint]} attached"
            return
        if self.state.attached[joint] + max(1, step["count"]) > self.machine.joints[joint]["count"]:
            yield f"{joint} has no place for {step['count']}"
        if self.machine.joints[joint]["caps"] \
                and self.state.capped[joint] > max(0, self.machine.joints[joint]["count"] - self.state.attached[joint] - max(1, step["count"])):
            yield f"{joint} is closed over a cap"
        covered = self.machine.joints[joint]["covers"]
        if covered and covered not in self.gone and not self.reach.on(covered):
            yield f"{covered} is not complete and tight under {joint}"

    def can_retorque(self, step, phase):
        joint = step["item"]
        yield from self.fits(joint, "fastener")
        yield from self.reach.clear(joint, phase)
        yield from (f"cover {cover} is on" for cover in self.machine.covers[joint] if self.state.attached[cover] > 0)
        yield from self.reach.harmless(joint, self.spared(step))
        yield from self.open_joint(joint)

    def fits(self, joint, sort):
        if joint not in self.machine.joints or self.machine.sort(joint) != sort:
            yield f"{joint} is no {sort}"

    def works(self, step):
        item = step["item"]
        if item in self.machine.parts and self.state.place[item] == "out":
            return
        yield from self.reach.clear(item, "strip")
        if item in self.machine.joints:
            yield from self.reach.harmless(item, self.spared(step))

    @staticmethod
    def spared(step):
        """What a step itself asks to be live or in."""
        return {(wanted["item"], wanted["state"]) for condition in step["needs"] if len(condition["any"]) == 1 for wanted in condition["any"]}

    def off(self, item):
        if item in self.machine.parts:
            if self.state.place[item] != "out":
                yield f"{item} is not out"
            for part, found in self.machine.parts.items():
                if found["temporary"] and part != item and self.machine.is_within(part, item) and self.state.place[part] != "out":
                    yield f"{part} would go away with {item}"
        elif self.state.attached[item] > 0:
            yield f"{item} is not off"

    def can_aside(self, step, phase):
        part = step["item"]
        if self.machine.parts[part]["aside"] is None:
            yield f"{part} has no way aside"
            return
        yield from self.reach.clear(part, phase)
        yield from self.way_out(part, phase)
        if self.state.place[part] != "fitted":
            yield f"{part} is {self.state.place[part]}"
        yield from self.way_aside(part, phase)

    def can_return(self, step, phase):
        part = step["item"]
        yield from self.reach.clear(part, phase)
        yield from self.way_out(part, phase)
        if self.state.place[part] != "aside":
            yield f"{part} is {self.state.place[part]}"
        yield from self.way_aside(part, phase)

    def way_out(self, part, phase):
        """What binds the part's own way out and back alone."""
        yield from self.reach.unmet(self.machine.parts[part]["wayOut"], phase, self.reach.assembly(part))

    def way_aside(self, part, phase):
        way = self.machine.parts[part]["aside"]
        for joint in way["joints"]:
            if self.state.attached[joint] > 0 and joint not in self.state.slack:
                yield f"{joint} is tight"
        yield from self.reach.unmet(way["needs"], phase, self.reach.assembly(part))

    def can_remove(self, step, phase):
        part = step["item"]
        yield from self.reach.clear(part, phase)
        yield from self.way_out(part, phase)
        if self.state.place[part] == "out":
            yield f"{part} is out already"
        for joint in self.machine.ties_of(part):
            if self.state.attached[joint] > 0:
                yield f"{joint} still holds {part}"

    def can_fit(self, step, phase):
        part = step["item"]
        yield from self.reach.clear(part, phase)
        yield from self.way_out(part, phase)
        if self.state.place[part] != "out":
            yield f"{part} is in already"
        if self.state.capped[part]:
            yield f"the hole of {part} is capped"
        if phase == "refit" and step["mirror"] in self.was_propped and part not in self.state.propped:
            yield f"{part} was propped when it came out"

    def can_set(self, step, phase):
        control = step["item"]
        if step["position"] not in self.machine.controls[control]["positions"]:
            yield f"{control} has no position {step['position']}"
        yield from self.reach.clear(control, phase)
        if self.state.control[control] == step["position"]:
            yield f"{control} stands there already"

    def can_isolate(self, step, phase):
        energy = step["item"]
        # To isolate is to take out of service, whenever it is done.
        yield from self.reach.clear(energy, "strip")
        if self.state.energy[energy] != "live":
            yield f"{energy} is isolated already"
        if step["test"]:
            yield from self.reach.proof(energy)

    def can_verify(self, step, phase):
        energy = step["item"]
        yield from self.reach.proof(energy)
        if self.state.energy[energy] == "live":
            yield f"{energy} is live"

    def can_empty(self, step, phase):
        yield from self.reach.clear(step["item"], phase)
        if self.state.fluid[step["item"]] != "full":
            yield f"{step['item']} is out already"

    def can_fill(self, step, phase):
        fluid = step["item"]
        yield from self.reach.clear(fluid, phase)
        if self.state.fluid[fluid] != "empty":
            yield f"{fluid} is in already"
        for joint, found in self.machine.joints.items():
            if found["carries"] == fluid and not self.reach.whole(joint) and (found["temporary"] or not self.is_gone(joint)):
                yield f"{joint} carries {fluid} and is open"

    def can_support(self, step, phase):
        part = step["item"]
        if part in self.state.propped:
            yield f"{part} is propped already"
        if phase == "strip" and self.state.place[part] == "out":
            yield f"{part} is not in the machine"

    def can_unsupport(self, step, phase):
        part = step["item"]
        if part not in self.state.propped:
            yield f"{part} is not propped"
        yield from self.loosely_held(part)

    def can_restore(self, step, phase):
        from power import amiss
        yield from amiss(self, step)

    def loosely_held(self, part, opened=()):
        for joint in self.machine.ties_of(part):
            found = self.machine.joints[joint]
            if found["role"] == "held" and not found["temporary"] and joint not in opened:
                yield from self.open_joint(joint)

    def open_joint(self, joint):
        if not self.reach.whole(joint) and (self.machine.joints[joint]["temporary"] or not self.is_gone(joint)):
            yield f"{joint} is not as it was at the start"
