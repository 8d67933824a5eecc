#!/usr/bin/env python3
"""Space frames of lifting tables, answered by an outside frame library.

    python3 -m venv .venv && .venv/bin/pip install PyNiteFEA==3.2.0 scipy==1.17.1
    .venv/bin/python make.py > frames.json

Builds every table of FRAMES as a whole frame, both sides, out of PyNite's own members, and prints inputs and answers as
JSON; tests/tests/space_frame.rs holds the solver to them. Nothing here is shared with the solver but the description of
the model: neither its half frame, nor its pins condensed with their springs, nor its elements.

PyNite's members have no shear deformation, so every input asks for none (`no_shear`). It has no springs against turning
between two nodes either. A pin in its holes is therefore a short member: of length e, E I = rock e gives the turning and
12 E I / e^3 = slip, hence e = sqrt(12 rock / slip), the sliding, both exactly and uncoupled about its middle, which is
put where the pin meets the arm; a hinge is a torsion release. It stands 1 um beside the pin, and no two nodes stand at one
place, because PyNite takes whatever lies on a member's line for part of it. What is rigid is a member of 1e11 N/m
and 1e9 N m/rad.

The critical load is the lowest positive eigenvalue of PyNite's stiffness matrix against its geometric matrices of the
arm members alone. Axes, keys and units are those of the solver: x along the table, y up, z lateral, SI.
"""

import json
import math
import sys

import numpy
import scipy.linalg
from Pynite import FEModel3D

BESIDE = 1e-6
RIGID, RIGID_TURN = 1e11, 1e9
STEEL = (2.1e11, 8.1e10)


def rectangle_torsion(a, b):
    """Torsion constant of a rectangle (Roark's formulas, table 10.1)."""
    long, short = max(a, b), min(a, b)
    return long * short**3 * (1 / 3 - 0.21 * short / long * (1 - short**4 / (12 * long**4)))


def geometry(table, theta):
    """Ends of all arms in the plane, and the axes of the top frame."""
    n, length = table["n"], table["L"]
    c = table["c"] if isinstance(table["c"], list) else [table["c"]] * n
    width = 2 * c[0] * length * math.cos(theta)
    alpha = math.asin(table.get("db", 0.0) / width)
    turn = numpy.array([[math.cos(alpha), -math.sin(alpha)], [math.sin(alpha), math.cos(alpha)]])
    left, arms = numpy.array([0.0, 0.0]), {}
    for stage in range(1, n + 1):
        rise = math.sqrt(length**2 - (width / (2 * c[stage - 1])) ** 2)
        along = numpy.array([width / (2 * c[stage - 1]), rise])
        right = left + [width, 0.0]
        arms[f"A{stage}"] = (turn @ left, turn @ (left + along))
        arms[f"B{stage}"] = (turn @ right, turn @ (right + along * [-1, 1]))
        left, width = right + along * [-1, 1], width * (1 - c[stage - 1]) / c[stage - 1]
    phi = alpha - math.asin(table.get("dt", 0.0) / width)
    return arms, c, phi


class Frame:
    """A table as a PyNite model."""

    def __init__(self, table, theta):
        self.table, self.space = table, table["model3d"]
        self.arms, self.c, self.phi = geometry(table, theta)
        self.rail = numpy.array([math.cos(self.phi), math.sin(self.phi), 0.0])
        self.normal = numpy.array([-math.sin(self.phi), math.cos(self.phi), 0.0])
        self.model, self.serial, self.arm_members = FEModel3D(), 0, []
        self.stations, self.fixed = {}, []
        top = self.arms[f"B{table['n']}"][1]
        self.top_pivot = numpy.array([*top, 0.0])
        reference = self.top_pivot + self.space["ref_x"] * self.rail + table["h_deck"] * self.normal
        self.deck_height = table["h_base"] + top[1] + table["h_deck"]
        self.reference = self.node(reference)
        corner = reference + self.space["corner_dx"] * self.rail
        self.corners = [self.on_deck(corner + [0, 0, side * self.space["corner_z"]]) for side in (1, -1)]
        self.wheels = {}
        for side in (1, -1):
            self.side(side)
        for name, body in (("base", None), ("top", self.reference)):
            self.axle(name, body)
        for brace in self.space["braces"]:
            self.brace(brace)
        for diagonal in self.space["diagonals"]:
            self.diagonal(diagonal)

    # Nodes, members, springs

    def name(self, kind):
        self.serial += 1
        return f"{kind}{self.serial}"

    def node(self, at):
        return self.model.add_node(self.name("N"), *map(float, at))

    def place(self, node):
        node = self.model.nodes[node]
        return numpy.array([node.X, node.Y, node.Z])

    def member(self, i, j, e, g, area, i_y, i_z, torsion, y_axis=None):
        """A member whose section stands with its y axis along `y_axis`."""
        name, material, section = self.name("M"), self.name("E"), self.name("S")
        self.model.add_material(material, e, g, 0.3, 0.0)
        self.model.add_section(section, area, i_y, i_z, torsion)
        self.model.add_member(name, i, j, material, section)
        if y_axis is not None:
            member = self.model.members[name]
            axes = member.T()[:3, :3]
            member.rotation = math.degrees(math.atan2(y_axis @ axes[2], y_axis @ axes[1]))
            assert abs(member.T()[1, :3] @ y_axis) > 1 - 1e-9, "the section stands askew"
        return name

    def link(self, i, j):
        """A rigid member: as stiff as the digits allow whatever its length."""
        length = numpy.linalg.norm(self.place(i) - self.place(j))
        self.member(i, j, 1.0, 1.0, RIGID * length, RIGID_TURN * length, RIGID_TURN * length, RIGID_TURN * length)

    def on_deck(self, at):
        node = self.node(at)
        self.link(self.reference, node)
        return node

    def spring(self, at, direction, stiffness, body):
        """A spring at node `at` along `direction`, to the ground or to the rigid deck."""
        if stiffness == 0.0:
            return
        far = self.place(at) + 0.05 * direction
        if body is None:
            end = self.node(far)
            self.fix(end)
        else:
            end = self.on_deck(far)
        self.model.add_spring(self.name("K"), at, end, stiffness)

    def fix(self, node):
        self.model.def_support(node, True, True, True, True, True, True)
        self.fixed.append(node)

    def joint(self, first, second):
        """The springs of a pin between two nodes at one place; a first node of None is the ground."""
        spring = self.space["joint"]
        e = math.sqrt(12 * spring["rock"] / spring["slip"])
        at = self.place(second)
        ends = [self.node(at + [BESIDE, 0.0, half]) for half in (0.5 * e, -0.5 * e)]
        inertia = spring["rock"] * e
        torsion = spring["rz"] * e
        name = self.member(*ends, 1.0, 1.0, spring["axial"] * e, inertia, inertia, torsion or inertia)
        if torsion == 0.0:
            self.model.def_releases(name, Rxi=True)
        if first is None:
            self.fix(ends[0])
        else:
            self.link(first, ends[0])
        self.link(ends[1], second)

    def round_bar(self, i, j, d):
        inertia = math.pi * d**4 / 64
        self.member(i, j, *STEEL, math.pi * d**2 / 4, inertia, inertia, 2 * inertia)

    # Parts

    def depth(self, letter):
        return 0.5 * self.space["b"] - (self.space["arm_offset"] if letter == "B" else 0.0)

    def side(self, side):
        n, arm = self.table["n"], self.table["arm"]
        e, g, w, t = arm["E"], arm["G"], arm["w"], arm["t"]
        for name, (low, high) in self.arms.items():
            fractions = {0.0, self.c[int(name[1:]) - 1], 1.0}
            fractions |= {brace["f"] for brace in self.space["braces"] if brace["arm"] == name}
            for diagonal in self.space["diagonals"]:
                if diagonal["arm"] == name:
                    fractions |= {diagonal["f1"], diagonal["f2"]}
            z = side * self.depth(name[0])
            nodes = {f: self.node([*(low + f * (high - low)), z]) for f in sorted(fractions)}
            self.stations[name, side] = nodes
            along = (high - low) / self.table["L"]
            across = numpy.array([-along[1], along[0], 0.0])
            ordered = [nodes[f] for f in sorted(nodes)]
            for i, j in zip(ordered, ordered[1:]):
                member = self.member(
                    i, j, e, g, w * t, w * t**3 / 12, t * w**3 / 12, rectangle_torsion(w, t), across
                )
                self.arm_members.append(member)
        pins = [((f"A{s}", self.c[s - 1]), (f"B{s}", self.c[s - 1])) for s in range(1, n + 1)]
        for s in range(1, n):
            pins += [((f"A{s + 1}", 0.0), (f"B{s}", 1.0)), ((f"A{s}", 1.0), (f"B{s + 1}", 0.0))]
        for (a, f_a), (b, f_b) in pins:
            first, second = self.stations[a, side][f_a], self.stations[b, side][f_b]
            end = self.node(self.place(second) + [0.0, BESIDE, 0.0])
            self.round_bar(first, end, self.space["d_pin"])
            self.joint(end, second)
        self.joint(None, self.stations["A1", side][0.0])
        head = self.stations[f"B{n}", side][1.0]
        self.joint(self.on_deck(self.place(head) + [0.0, BESIDE, 0.0]), head)

    def axle(self, name, body):
        arm, f = ("B1", 0.0) if body is None else (f"A{self.table['n']}", 1.0)
        rail, normal = ([1.0, 0, 0], [0, 1.0, 0]) if body is None else (self.rail, self.normal)
        place = self.place(self.stations[arm, 1][f]) * [1, 1, 0] + [0.0, BESIDE, 0.0]
        middle = self.node(place)
        for side in (1, -1):
            depths = sorted({self.depth(arm[0]), self.space["wheel_z"]})
            nodes = {z: self.node(place + [0, 0, side * z]) for z in depths}
            for i, j in zip([middle, *nodes.values()], nodes.values()):
                self.round_bar(i, j, self.space["d_axle"])
            self.joint(nodes[self.depth(arm[0])], self.stations[arm, side][f])
            wheel = nodes[self.space["wheel_z"]]
            self.wheels[name, side] = wheel
            self.spring(wheel, numpy.array(normal), self.space["k_wheel"], body)
            self.spring(wheel, numpy.array([0, 0, float(side)]), self.space[f"k_lateral_{name}"], body)
        # Keeps the axle from spinning. Hinges pass on no torque but that of forces times BESIDE, which it has to bear.
        self.model.def_support_spring(middle, "RZ", 1e-3 if self.space["joint"]["rz"] else 1.0)
        driven = "base" if self.table["drive"]["kind"] == "base_carriage" else "top"
        if name == driven:
            self.spring(middle, numpy.array(rail), self.table["drive"]["stiff"]["k_end"], body)

    def brace(self, brace):
        low, high = self.arms[brace["arm"]]
        along = numpy.array([*((high - low) / self.table["L"]), 0.0])
        ends = [self.stations[brace["arm"], side][brace["f"]] for side in (1, -1)]
        e, g, h, p = brace["E"], brace["G"], brace["h_along"], brace["h_perp"]
        inner = ends
        if "k_conn" in brace:
            # A board end that yields to turning only: a member so short that it does not shift.
            short = 2e-5
            inner = [self.node(self.place(end) - [0, 0, side * short]) for end, side in zip(ends, (1, -1))]
            for end, start in zip(ends, inner):
                i = brace["k_conn"] * short
                self.member(end, start, 1.0, 1.0, 1e9 * short, i, i, i)
        self.member(*inner, e, g, h * p, h * p**3 / 12, p * h**3 / 12, rectangle_torsion(h, p), along)

    def diagonal(self, diagonal):
        for side in (1, -1):
            i = self.stations[diagonal["arm"], side][diagonal["f1"]]
            j = self.stations[diagonal["arm"], -side][diagonal["f2"]]
            length = numpy.linalg.norm(self.place(i) - self.place(j))
            self.model.add_spring(self.name("K"), i, j, diagonal["EA"] / length)

    # Answers

    def answers(self):
        loads = {
            "sway": (self.reference, "FZ", 1.0),
            "twist": (self.reference, "MY", 1.0),
            "roll": (self.reference, "MX", 1.0),
            "push": (self.reference, "FX", 1.0),
            "vertical": (self.reference, "FY", -1.0),
            "corner": (self.corners[0], "FY", -1.0),
        }
        for name, (node, direction, value) in loads.items():
            self.model.add_node_load(node, direction, value, case=name)
            self.model.add_load_combo(name, {name: 1.0})
        self.model.analyze_linear(check_stability=False, sparse=True)
        deck = self.model.nodes[self.reference]
        corner, other = (self.model.nodes[node] for node in self.corners)
        base = self.model.nodes[self.wheels["base", 1]]
        return {
            "k_sway": 1 / deck.DZ["sway"],
            "k_twist": 1 / deck.RY["twist"],
            "k_roll": 1 / deck.RX["roll"],
            "k_push": 1 / deck.DX["push"],
            "k_vert": -1 / deck.DY["vertical"],
            "corner_flex": -corner.DY["corner"],
            "other_corner_flex": -other.DY["corner"],
            "roll_by_sway": deck.RX["sway"],
            "base_wheel_by_sway": -self.space["k_wheel"] * base.DY["sway"],
            **self.second_order(),
        }

    def second_order(self):
        """The critical load ratio, and the stiffnesses softened by the load."""
        combo, weight = "vertical", self.space["pdelta_W"]
        stiffness = self.model.Ke(combo, False, False, False)
        geometric = numpy.zeros_like(stiffness)
        for name in self.arm_members:
            for member in self.model.members[name].sub_members.values():
                ends = (member.i_node, member.j_node)
                axis = member.T()[0, :3]
                shift = [numpy.array([n.DX[combo], n.DY[combo], n.DZ[combo]]) for n in ends]
                tension = weight * member.material.E * member.section.A / member.L() * ((shift[1] - shift[0]) @ axis)
                part = member.T().T @ member.kg(tension) @ member.T()
                rows = [6 * n.ID + way for n in ends for way in range(6)]
                geometric[numpy.ix_(rows, rows)] += part
        deck = 6 * self.model.nodes[self.reference].ID
        for way in (3, 5):
            geometric[deck + way, deck + way] -= weight * self.space["h_cg"]
        held = {6 * self.model.nodes[node].ID + way for node in self.fixed for way in range(6)}
        free = [row for row in range(len(stiffness)) if row not in held]
        stiffness, geometric = (m[numpy.ix_(free, free)] for m in (stiffness, geometric))
        ratios = scipy.linalg.eigh(-geometric, 0.5 * (stiffness + stiffness.T), eigvals_only=True)
        critical = 1 / ratios[-1]
        answers = {"lambda_cr": critical}
        if critical > 2.0:
            unit = numpy.zeros((len(free), 2))
            for column, way in enumerate((2, 4)):
                unit[free.index(deck + way), column] = 1.0
            shift = numpy.linalg.solve(stiffness + geometric, unit)
            for column, (key, way) in enumerate((("k_sway_pdelta", 2), ("k_twist_pdelta", 4))):
                answers[key] = 1 / shift[free.index(deck + way), column]
        return answers


def table(n, drive="base_carriage", braces=(), diagonals=(), **changes):
    """A table's input, its parts of ordinary sizes unless `changes` says otherwise."""
    space = {
        "b": 0.46, "arm_offset": 0.022, "d_pin": 0.012, "d_axle": 0.018, "wheel_z": 0.25, "ref_x": 0.22,
        "corner_dx": 0.25, "corner_z": 0.24, "h_cg": 0.1,
        "joint": {"slip": 6e6, "axial": 4e6, "rock": 250.0, "rz": 0.0},
        "k_wheel": 4e6, "k_lateral_base": 8e5, "k_lateral_top": 6e5,
        "braces": list(braces), "diagonals": list(diagonals), "pdelta_W": 600.0, "no_shear": True,
    }
    own = {
        "n": n, "L": 0.6, "c": 0.5, "sides": 2, "h_base": 0.12, "h_deck": 0.05,
        "arm": {"w": 0.065, "t": 0.018, "E": 1e10, "G": 6.5e8, "mass": 0.5},
        "load": {"W": 600.0, "xw": 0.22},
        "drive": {"kind": drive, "anchor": "far_end", "x_anchor": 0.9, "stiff": {"k_end": 1.2e7}},
        "model3d": space,
    }
    for key, value in changes.items():
        for part in (space["joint"], space, own["arm"], own):
            if key in part or part is own:
                part[key] = value
                break
    return own


def boards(*arms, at=(0.25, 0.75), **connection):
    """Cross boards between the arms named."""
    size = {"h_along": 0.07, "h_perp": 0.018, "E": 1e10, "G": 6.5e8}
    return [{"arm": arm, "f": f, **size, **connection} for arm in arms for f in at]


def crossed(*arms, ends=((0.0, 0.5), (0.5, 1.0))):
    """Crossed bars between the arms named."""
    return [{"arm": arm, "f1": f1, "f2": f2, "EA": 2e6} for arm in arms for f1, f2 in ends]


# Name, angle of the lowest arms in degrees, table.
FRAMES = [
    ("one stage, bare", 32.0, table(1)),
    ("one stage, top drive, boards on A", 48.0, table(1, "top_carriage", boards("A1"))),
    ("one stage, yielding boards and a diagonal", 25.0, table(
        1, braces=boards("A1", "B1", k_conn=1500.0), diagonals=crossed("A1", ends=((0.25, 0.75),)))),
    ("two stages, bare, low", 12.0, table(2)),
    ("two stages, bare, high", 55.0, table(2)),
    ("two stages, boards on B, no side guides", 35.0, table(
        2, braces=boards("B1", "B2"), k_lateral_base=0.0, k_lateral_top=0.0)),
    ("two stages, top drive, boards on both", 40.0, table(
        2, "top_carriage", boards("A1", "B1", "A2", "B2"))),
    ("two stages, thick arms, yielding boards, high load", 30.0, table(
        2, braces=boards("A1", "B1", "A2", "B2", k_conn=900.0), t=0.036, arm_offset=0.042, h_cg=0.35)),
    ("two stages, boards and diagonals", 45.0, table(
        2, braces=boards("A1", "B1", "A2", "B2"), diagonals=crossed("A1", "B1", "A2", "B2"))),
    ("two stages, wheels outside, stiff pins", 38.0, table(
        2, wheel_z=0.31, rock=2500.0, rz=40.0, d_axle=0.025)),
    ("two stages, uneven centre pins", 33.0, table(2, c=[0.47, 0.54], braces=boards("A1", "A2"))),
    ("two stages, tilted deck, top drive", 36.0, table(
        2, "top_carriage", boards("A1", "A2"), db=0.03, dt=-0.02)),
    ("three stages, bare", 28.0, table(3, pdelta_W=150.0)),
    ("three stages, boards on both", 42.0, table(
        3, braces=boards("A1", "B1", "A2", "B2", "A3", "B3"))),
    ("three stages, top drive, boards and diagonals low down", 22.0, table(
        3, "top_carriage", boards("A1", "B1", "A2"), crossed("A1", "B1"))),
]


def main():
    frames = []
    for name, degrees, inputs in FRAMES:
        frame = Frame(inputs, math.radians(degrees))
        expected = {key: float(f"{value:.9g}") for key, value in frame.answers().items()}
        frames.append({"name": name, "height": frame.deck_height, "input": inputs, "expected": expected})
        print(f"{name}: {expected}", file=sys.stderr)
    json.dump({"source": "PyNiteFEA 3.2.0, by make.py", "frames": frames}, sys.stdout, indent=1)
    print()


if __name__ == "__main__":
    main()
