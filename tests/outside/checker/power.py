"""What has to be so before an energy comes back.

Written from grammar/LANGUAGE.md alone: "Power comes back to a whole machine" and "Tests" in "The refit".
"""

HIDING = ("away", "out", "aside")


def amiss(hands, step):
    """What keeps an energy from coming back."""
    machine, energy, opened = hands.machine, step["item"], set(step["open"])
    yield from hands.reach.clear(energy, "refit")
    if hands.state.energy[energy] == "live":
        yield f"{energy} is live already"
    reached = exposed(machine, energy)
    for fluid in driven(machine, energy):
        if hands.state.fluid[fluid] != "full":
            yield f"{fluid} is out"
    for item in sorted(reached - opened):
        yield from in_place(hands, item, opened)
    if step["test"]:
        # Guards may be off: that is what a test is for.
        return
    # What has to be off for somebody to get at the energy's own switch is no guard.
    spared = opened | hiding(machine, [energy], opened)
    hidden = {inner for item in reached for inner in holds(machine, item)} - spared
    for item in sorted(hiding(machine, hidden, spared)):
        yield from in_place(hands, item, opened)


def exposed(machine, energy):
    """The joints on an energy, and whatever wants it isolated when it is put back."""
    on = {name for name, joint in machine.joints.items() if joint["on"] == energy}
    asking = {
        name
        for items in (machine.parts, machine.joints)
        for name, item in items.items()
        for condition in (*item["needs"], *item.get("wayOut", []))
        # One way of several is no demand.
        if condition["phase"] != "strip" and condition["any"] == [{"item": energy, "state": "isolated", "position": ""}]
    }
    return on | asking


def driven(machine, energy):
    """The fluids that joints on the energy carry, but for those that can be filled only while it is live."""
    for fluid in sorted({joint["carries"] for joint in machine.joints.values() if joint["on"] == energy and joint["carries"]}):
        asked = machine.fluids[fluid]["needs"]
        controls = [wanted["item"] for condition in asked for wanted in condition["any"] if wanted["item"] in machine.controls]
        if not any(wants_live(needs, energy) for needs in (asked, *(machine.controls[control]["needs"] for control in controls))):
            yield fluid


def wants_live(needs, energy):
    return any(
        wanted["item"] == energy and wanted["state"] == "live"
        for condition in needs
        if condition["phase"] != "strip"
        for wanted in condition["any"]
    )


def holds(machine, item):
    """An item; a part with all parts and joints that it holds."""
    yield item
    if item in machine.parts:
        yield from (part for part in machine.parts if machine.is_within(part, item))
        yield from (joint for joint, found in machine.joints.items() if machine.is_within(found["part"], item))


def hiding(machine, items, known):
    """What hides any of these, and what hides that, and so on."""
    found, waiting = set(), list(items)
    while waiting:
        for hider in hiders(machine, waiting.pop()):
            if hider not in found and hider not in known:
                found.add(hider)
                waiting.append(hider)
    return found


def hiders(machine, item):
    """What keeps a hand from an item: the parts that it is behind, each with what that lies in, and its covers."""
    if item in machine.joints:
        own, inner = list(machine.under(item)), machine.joints[item]["part"]
        yield from machine.covers[item]
    else:
        own, inner = [item], machine.parts[item]["parent"] if item in machine.parts else ""
    for one in (*own, *machine.around(inner)):
        for condition in machine.item(one)["needs"]:
            for wanted in condition["any"]:
                if wanted["state"] in HIDING:
                    yield from machine.around(wanted["item"])


def in_place(hands, item, opened):
    if item in hands.gone:
        return
    if item in hands.machine.joints:
        yield from hands.open_joint(item)
        return
    if hands.machine.parts[item]["temporary"]:
        if hands.state.place[item] != "out":
            yield f"{item} is still on"
        return
    if hands.state.place[item] != "fitted":
        yield f"{item} is {hands.state.place[item]}"
    yield from hands.loosely_held(item, opened)
