"""What it takes to get a hand to something: conditions, covers, assemblies on the bench.

Written from grammar/LANGUAGE.md alone: the section "Machines: conditions" and "Open to hand" below the table of verbs.
"""

from machine import FRAME


class Reach:
    """Asks one state of a machine. Every question yields what is amiss, in words, and nothing where all is well."""

    def __init__(self, machine, state):
        self.machine = machine
        self.state = state

    def bench(self, part):
        """The part that is out and that this one is or lies in; the frame where it is in the machine."""
        return next((outer for outer in self.machine.around(part) if self.state.place[outer] == "out"), FRAME)

    def assembly(self, item):
        """Where an item belongs: the machine, or a part on the bench."""
        if item in self.machine.parts:
            return self.bench(self.machine.parts[item]["parent"])
        if item in self.machine.joints:
            return self.bench(self.machine.joints[item]["part"])
        return FRAME

    def is_so(self, wanted):
        state, name, word = self.state, wanted["item"], wanted["state"]
        match word:
            case "away":
                return state.place[name] != "fitted"
            case "fitted" if self.machine.parts[name]["temporary"]:
                # It has to bear a load.
                held = [joint for joint in self.machine.ties_of(name) if self.machine.joints[joint]["role"] == "held"]
                return state.place[name] == "fitted" and all(self.on(joint) for joint in held)
            case "out" | "fitted" | "aside":
                return state.place[name] == word
            case "supported":
                return name in state.propped
            case "off":
                return state.attached[name] == 0
            case "slack":
                return state.attached[name] == 0 or name in state.slack
            case "live":
                return state.energy[name] == "live"
            case "isolated":
                return state.energy[name] != "live"
            case "full" | "empty":
                return state.fluid[name] == word
            case "at":
                return state.control[name] == wanted["position"]
        raise ValueError(f"no such state: {word}")

    def unmet(self, conditions, phase, assembly=None):
        """The conditions that bind and do not hold. With an assembly, those about what is not together with it do not count."""
        for condition in conditions:
            if condition["phase"] not in ("both", phase):
                continue
            if assembly is not None and not all(self.counts(wanted, assembly) for wanted in condition["any"]):
                continue
            if not any(self.is_so(wanted) for wanted in condition["any"]):
                yield " or ".join(" ".join(filter(None, (wanted["item"], wanted["state"], wanted["position"]))) for wanted in condition["any"])

    def counts(self, wanted, assembly):
        if wanted["item"] in self.machine.parts or wanted["item"] in self.machine.joints:
            return self.assembly(wanted["item"]) == assembly
        return assembly == FRAME

    def clear(self, item, phase):
        """Somebody can get at an item."""
        machine = self.machine
        assembly = self.assembly(item)
        def binds(condition):
            """What asks for a temporary part does not bind that part itself."""
            return not any(machine.is_temporary(wanted["item"]) and machine.serves(item, wanted["item"]) for wanted in condition["any"])

        own = [condition for under in (machine.under(item) if item in machine.joints else [item]) for condition in machine.item(under)["needs"] if binds(condition)]
        yield from self.unmet(own, phase, assembly)
        inner = machine.joints[item]["part"] if item in machine.joints else machine.parts[item]["parent"] if item in machine.parts else FRAME
        for part in machine.around(inner):
            if part == assembly:
                break
            yield from self.unmet(filter(binds, machine.parts[part]["needs"]), phase, assembly)

    def open_to_hand(self, joint, phase, spared=()):
        yield from self.clear(joint, phase)
        yield from (f"cover {cover} is on" for cover in self.machine.covers[joint] if self.state.attached[cover] > 0)
        yield from self.harmless(joint, spared)

    def harmless(self, joint, spared=()):
        """Its energy is isolated and its fluid out, unless both its ends lie on a bench, or a step wants them so."""
        found = self.machine.joints[joint]
        if found["to"] and self.bench(found["part"]) != FRAME and self.bench(found["to"]) != FRAME:
            return
        energy, fluid = found["on"], found["carries"]
        if energy and (energy, "live") not in spared:
            if self.state.energy[energy] == "live":
                yield f"{energy} is live"
            elif self.state.energy[energy] == "unproved":
                yield f"{energy} is not proved to be off"
        if fluid and (fluid, "full") not in spared and self.state.fluid[fluid] == "full":
            yield f"{fluid} is in"

    def proof(self, energy):
        """Somebody can get to where an energy is proved to be off. That the energy itself is live is no hindrance there."""
        place = self.machine.energies[energy]["proof"]
        if place is None:
            return
        tried = Reach(self.machine, Trying(self.state, energy))
        if place["item"]:
            yield from tried.clear(place["item"], "strip")
            yield from (f"cover {cover} is on" for cover in self.machine.covers.get(place["item"], []) if self.state.attached[cover] > 0)
        yield from tried.unmet(place["needs"], "strip", FRAME)

    def whole(self, joint):
        """As it was at the start."""
        return self.state.attached[joint] == 0 if self.machine.joints[joint]["temporary"] else self.on(joint)

    def on(self, joint):
        """Complete and tight."""
        return self.state.attached[joint] == self.machine.joints[joint]["count"] and joint not in self.state.slack

    def meets(self, joint):
        """Both ends are in the machine, or on one bench."""
        found = self.machine.joints[joint]
        return found["role"] == "cover" or self.bench(found["part"]) == self.bench(found["to"])


class Trying:
    """A state in which one energy is both live and isolated: who tries whether it is off asks for neither."""

    def __init__(self, state, energy):
        self.state = state
        self.energy = Either(state.energy, energy)

    def __getattr__(self, name):
        return getattr(self.state, name)


class Either(dict):
    def __init__(self, energies, either):
        super().__init__(energies)
        self[either] = Both()


class Both:
    """Equal to and different from everything."""

    def __eq__(self, other):
        return True

    def __ne__(self, other):
        return True

    __hash__ = None
