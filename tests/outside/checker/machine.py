"""A machine as model.json tells it, and how it stands at one moment.

Written from grammar/LANGUAGE.md alone: the sections "Machines: parts and joints" and "Machines: conditions".
"""

FRAME = ""


class Machine:
    """What is there: nothing of this changes while somebody works."""

    def __init__(self, document):
        self.document = document
        self.parts = by_name(document["parts"])
        self.joints = by_name(document["joints"])
        self.energies = by_name(document["energies"])
        self.fluids = by_name(document["fluids"])
        self.controls = by_name(document["controls"])
        self.kinds = by_name(document["kinds"])
        self.covers = {name: [] for name in self.joints}
        for joint in self.joints.values():
            if joint["covers"]:
                self.covers[joint["covers"]].append(joint["name"])

    def item(self, name):
        for items in (self.parts, self.joints, self.energies, self.fluids, self.controls):
            if name in items:
                return items[name]
        raise KeyError(f"the machine has no {name}")

    def sort(self, joint):
        """The sort of a joint's kind; a cover is of clips, a lock of clips or bonds."""
        return self.kinds[self.joints[joint]["kind"]]["sort"]

    def around(self, part):
        """A part and all that it lies in, innermost first."""
        while part:
            yield part
            part = self.parts[part]["parent"]

    def is_within(self, part, outer):
        return outer in self.around(part)

    def ties(self, joint, part):
        """Whether a joint is between a part, with all inside it, and the rest."""
        found = self.joints[joint]
        return found["role"] != "cover" and self.is_within(found["part"], part) != self.is_within(found["to"], part)

    def serves(self, item, temporary):
        """Whether an item is a temporary part, lies in it or ties it."""
        if item in self.parts:
            return self.is_within(item, temporary)
        if item not in self.joints:
            return False
        joint = list(self.under(item))[-1]
        return self.is_within(self.joints[joint]["part"], temporary) or self.ties(joint, temporary)

    def is_temporary(self, item):
        return bool(item) and self.item(item).get("temporary", False)

    def ties_of(self, part):
        return [joint for joint in self.joints if self.ties(joint, part)]

    def under(self, joint):
        """A joint, and of a cover all that it covers, down to the joint that ties."""
        while joint:
            yield joint
            joint = self.joints[joint]["covers"]

    def inside(self, item):
        """What goes along with an item that is thrown away."""
        if item in self.joints:
            yield from self.covers[item]
        elif item in self.parts:
            yield from (part for part, found in self.parts.items() if found["parent"] == item)
            yield from (joint for joint, found in self.joints.items() if found["part"] == item)


class State:
    """How everything stands."""

    def __init__(self, machine):
        self.attached = {name: joint["start"] for name, joint in machine.joints.items()}
        self.slack = set()
        self.place = {name: part["start"] for name, part in machine.parts.items()}
        self.propped = set()
        # Of how many pieces of a joint the open ends are capped; of a part, whether its hole is.
        self.capped = {name: 0 for items in (machine.joints, machine.parts) for name in items}
        self.energy = {name: energy["start"] for name, energy in machine.energies.items()}
        self.fluid = {name: fluid["start"] for name, fluid in machine.fluids.items()}
        self.control = {name: control["start"] for name, control in machine.controls.items()}

    def differences(self, start, gone):
        """What is not as it was, but for what does not go back."""
        for one, other, word in (
            (self.attached, start.attached, "attached"),
            (self.place, start.place, "place"),
            (self.capped, start.capped, "caps"),
            (self.energy, start.energy, "energy"),
            (self.fluid, start.fluid, "fluid"),
            (self.control, start.control, "position"),
        ):
            for name in one:
                if one[name] != other[name] and name not in gone:
                    yield f"{word} of {name} is {one[name]} and was {other[name]}"
        yield from (f"{name} is slack" for name in sorted(self.slack - start.slack) if name not in gone)
        yield from (f"{name} is propped" for name in sorted(self.propped - start.propped) if name not in gone)


def by_name(items):
    return {item["name"]: item for item in items}
