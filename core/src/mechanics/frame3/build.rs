//! From a mechanism and its pose to nodes and elements.
//!
//! Plain `f64` in SI. Arms A stand at z = b/2, arms B inside of them by the offset. The deck and the base are rigid.

use super::bar::{Bar, Ends, Section};
use super::coupling::{Coupling, along};
use super::mesh::{End, Mesh, Seat, mirrored};
use crate::mechanics::drive::{Action, ScrewLine};
use crate::mechanics::fault::Fault;
use crate::mechanics::linkage::{Frame, Pose};
use crate::mechanics::mechanism::Mechanism;
use crate::mechanics::names::{ArmId, JointId, Side};
use crate::mechanics::space::{Brace, Diagonal, Space};
use glam::{DMat3, DVec2, DVec3};

/// What counts as rigid, and the most any spring is taken for, N/m or N m/rad.
const RIGID: f64 = 1e11;
/// What keeps an axle from spinning, as a share of its own stiffness in torsion; no torque reaches it.
const SPIN: f64 = 1e-9;
/// Shear coefficient of a board.
const BOARD_KAPPA: f64 = 5.0 / 6.0;
/// Nodes nearer to each other than this share of the arm, or of the frame's width, are one.
const NEAR: f64 = 1e-3;

/// A wheel of one axle on its rail.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wheel {
    /// The node of the axle where it sits.
    pub node: usize,
    /// The rail's normal, up.
    pub normal: DVec3,
    /// Its stiffness along that, N/m.
    pub stiffness: f64,
}

/// One half of the frame, numbered, and where its parts are to be found.
#[derive(Clone, Debug)]
pub struct Plan {
    /// Nodes and elements.
    pub mesh: Mesh,
    /// The node of the deck, at the reference point.
    pub deck: usize,
    /// The nodes of every arm from its lower to its upper end, in the order A1, B1, A2, ...
    pub arms: Vec<Vec<usize>>,
    /// The nodes of the base and the top axle from the middle to the outside.
    pub axles: [Vec<usize>; 2],
    /// The base and the top wheel.
    pub wheels: [Wheel; 2],
}

impl Plan {
    /// The frame of a mechanism that has passed its check.
    ///
    /// # Errors
    /// Where something it needs is not given, or the screw is neither along the base nor along the top frame.
    pub fn new(mechanism: &Mechanism, pose: &Pose) -> Result<Self, Fault> {
        let builder = Builder::new(mechanism, pose)?;
        let mut mesh = Mesh::default();
        let reference = pose.top.point(DVec2::new(builder.space.ref_x, mechanism.h_deck)).extend(0.0);
        let deck = mesh.node(reference, Seat::Middle, builder.top_level() + 1.0);
        let arms = builder.arms(&mut mesh);
        builder.pins(&mut mesh, &arms);
        builder.fixed_pivots(&mut mesh, &arms, deck);
        let base = builder.axle(&mut mesh, &arms, &Rail::base(), End::Ground);
        let top = builder.axle(&mut mesh, &arms, &Rail::top(pose), End::Node(deck));
        builder.drive(&mut mesh, [&base, &top], deck);
        for brace in &builder.space.braces {
            builder.brace(&mut mesh, &arms, brace);
        }
        for diagonal in &builder.space.diagonals {
            builder.diagonal(&mut mesh, &arms, diagonal);
        }
        mesh.number();
        Ok(Self {
            mesh,
            deck,
            arms: arms.into_iter().map(|arm| arm.into_iter().map(|(_, node)| node).collect()).collect(),
            wheels: [base.wheel, top.wheel],
            axles: [base.nodes, top.nodes],
        })
    }
}

/// The fractions at which an arm has nodes, and the nodes.
type Stations = Vec<(f64, usize)>;

/// A rail, with the end of the frame it belongs to.
struct Rail {
    joint: JointId,
    frame: Frame,
    is_top: bool,
}

impl Rail {
    fn base() -> Self {
        Self { joint: JointId::Br, frame: Frame::GROUND, is_top: false }
    }

    fn top(pose: &Pose) -> Self {
        Self { joint: JointId::Tr, frame: pose.top, is_top: true }
    }
}

/// An axle, its nodes from the middle to the outside.
struct Axle {
    nodes: Vec<usize>,
    wheel: Wheel,
    along: DVec3,
}

/// What building needs at hand.
struct Builder<'a> {
    mechanism: &'a Mechanism,
    space: &'a Space,
    pose: &'a Pose,
    arm: Section,
    screw: ScrewLine,
}

impl<'a> Builder<'a> {
    fn new(mechanism: &'a Mechanism, pose: &'a Pose) -> Result<Self, Fault> {
        let missing = |place: &str, what: &str| Fault::new(place, format!("the space frame needs {what}"));
        let space =
            mechanism.model3d.as_ref().ok_or_else(|| missing("model3d", "its depth, joints and wheels"))?;
        if pose.n != mechanism.n {
            return Err(Fault::new("n", "the pose has another number of stages than the mechanism"));
        }
        if (mechanism.sides - 2.0).abs() > f64::EPSILON {
            return Err(missing("sides", "two sides, one the mirror image of the other"));
        }
        let e = mechanism.arm.e.ok_or_else(|| missing("arm.E", "the arms' modulus of elasticity"))?;
        if mechanism.arm.g <= 0.0 {
            return Err(missing("arm.G", "the arms' shear modulus: they are twisted"));
        }
        if space.arm_offset >= 0.5 * space.b {
            return Err(missing("model3d.arm_offset", "arms B of both sides apart: less than b/2"));
        }
        let action = mechanism.drive.action(mechanism.length);
        if matches!(action, Action::Pins(_)) {
            let text = "the side-to-side figures are computed for a screw along the base or along the top frame only";
            return Err(Fault::new("drive.kind", text));
        }
        let arm =
            Section::rectangle(e, mechanism.arm.g, mechanism.arm.kappa, mechanism.arm.w, mechanism.arm.t);
        let screw = ScrewLine::new(&mechanism.drive, action, pose)?;
        let mut builder = Self { mechanism, space, pose, arm, screw };
        builder.arm = builder.shear(arm);
        Ok(builder)
    }

    /// The section as it is computed: with shear unless that is left out.
    fn shear(&self, section: Section) -> Section {
        if self.space.no_shear { section.without_shear() } else { section }
    }

    /// Level of the top joints, in stages.
    fn top_level(&self) -> f64 {
        level(ArmId::b(self.mechanism.n), 1.0)
    }

    /// z of an arm.
    fn depth(&self, side: Side) -> f64 {
        match side {
            Side::A => 0.5 * self.space.b,
            Side::B => 0.5 * self.space.b - self.space.arm_offset,
        }
    }

    /// Places all arms: nodes at the ends, the centre pin and whatever is fastened to them.
    fn arms(&self, mesh: &mut Mesh) -> Vec<Stations> {
        ArmId::all(self.mechanism.n)
            .map(|arm| {
                let frame = self.pose.arm(arm);
                let length = self.pose.arm_length;
                let stations: Stations = self
                    .fractions(arm)
                    .into_iter()
                    .map(|f| {
                        let at = frame.point(DVec2::new(f * length, 0.0)).extend(self.depth(arm.side));
                        (f, mesh.node(at, Seat::Aside, level(arm, f)))
                    })
                    .collect();
                for pair in stations.windows(2) {
                    let [(from, first), (to, second)] = *pair else { continue };
                    let bar = Bar {
                        end: mesh.nodes()[second].at,
                        axes: DMat3::from_cols(frame.along.extend(0.0), frame.across().extend(0.0), DVec3::Z),
                        length: (to - from) * length,
                        section: self.arm,
                        ends: Ends::default(),
                    };
                    mesh.arm_piece([first, second], &bar);
                }
                stations
            })
            .collect()
    }

    /// Where an arm has nodes, from its lower to its upper end.
    fn fractions(&self, arm: ArmId) -> Vec<f64> {
        let braces = self.space.braces.iter().filter(|brace| brace.arm == arm).map(|brace| brace.f);
        let diagonals = self.space.diagonals.iter().filter(|diagonal| diagonal.arm == arm);
        let ends = diagonals.flat_map(|diagonal| [diagonal.f1, diagonal.f2]);
        let mut fractions = vec![0.0, self.pose.centre_of(arm.stage), 1.0];
        for f in braces.chain(ends) {
            if fractions.iter().all(|other| (f - other).abs() > NEAR) {
                fractions.push(f);
            }
        }
        fractions.sort_by(f64::total_cmp);
        fractions
    }

    /// The springs of a pin in its holes, for shifts and for turns.
    fn springs(&self) -> (DVec3, DVec3) {
        let joint = &self.space.joint;
        let slip = joint.slip.min(RIGID);
        let rock = joint.rock.min(RIGID);
        (DVec3::new(slip, slip, joint.axial.min(RIGID)), DVec3::new(rock, rock, joint.rz.min(RIGID)))
    }

    /// A pin without a length at a place.
    fn joint(&self, at: DVec3) -> Coupling {
        let (shift, turn) = self.springs();
        Coupling::springs(at, DMat3::from_diagonal(shift), DMat3::from_diagonal(turn))
    }

    /// The pins between arms A and B: rigid in A, in their springs in B.
    fn pins(&self, mesh: &mut Mesh, arms: &[Stations]) {
        let (shift, turn) = self.springs();
        let section = self.shear(Section::round(self.space.d_pin));
        let n = self.mechanism.n;
        let centres = (1..=n).map(|stage| {
            let c = self.pose.centre_of(stage);
            [(ArmId::a(stage), c), (ArmId::b(stage), c)]
        });
        let sides = (1..n).flat_map(|stage| {
            [
                [(ArmId::a(stage + 1), 0.0), (ArmId::b(stage), 1.0)],
                [(ArmId::a(stage), 1.0), (ArmId::b(stage + 1), 0.0)],
            ]
        });
        for [(a, f_a), (b, f_b)] in centres.chain(sides) {
            let nodes = [station(arms, a, f_a), station(arms, b, f_b)];
            let bar = Bar {
                end: mesh.nodes()[nodes[1]].at,
                axes: DMat3::from_cols(DVec3::NEG_Z, DVec3::X, DVec3::NEG_Y),
                length: self.space.arm_offset,
                section,
                ends: Ends {
                    first_turn: DVec3::ZERO,
                    second_shift: DVec3::new(shift.z, shift.x, shift.y).recip(),
                    second_turn: DVec3::new(turn.z, turn.x, turn.y).recip(),
                },
            };
            mesh.connect(nodes.map(End::Node), &bar.coupling(), 1.0);
        }
    }

    /// The fixed pivots: arm A1 on the base, arm B of the last stage under the deck.
    fn fixed_pivots(&self, mesh: &mut Mesh, arms: &[Stations], deck: usize) {
        let foot = station(arms, ArmId::a(1), 0.0);
        let head = station(arms, ArmId::b(self.mechanism.n), 1.0);
        for ends in [[End::Ground, End::Node(foot)], [End::Node(head), End::Node(deck)]] {
            let node = if ends[0] == End::Ground { foot } else { head };
            let joint = self.joint(mesh.nodes()[node].at);
            mesh.connect(ends, &joint, 1.0);
        }
    }

    /// An axle with its wheel on a rail of `body`, joined to the end of the arm that stands on it.
    fn axle(&self, mesh: &mut Mesh, arms: &[Stations], rail: &Rail, body: End) -> Axle {
        let (arm, f, guide) = if rail.is_top {
            (ArmId::a(self.mechanism.n), 1.0, self.space.k_lateral_top)
        } else {
            (ArmId::b(1), 0.0, self.space.k_lateral_base)
        };
        let (along_rail, normal) = (rail.frame.along.extend(0.0), rail.frame.across().extend(0.0));
        let (seat_z, wheel_z) = (self.depth(arm.side), self.space.wheel_z);
        let mut depths = vec![0.0, seat_z];
        if (wheel_z - seat_z).abs() > NEAR * self.space.b {
            depths.push(wheel_z);
        }
        depths.sort_by(f64::total_cmp);
        let place = self.pose.joint(rail.joint);
        let nodes: Vec<usize> = depths
            .iter()
            .map(|&z| {
                let seat = if z > 0.0 { Seat::Aside } else { Seat::Middle };
                mesh.node(place.extend(z), seat, level(arm, f))
            })
            .collect();
        let section = self.shear(Section::round(self.space.d_axle));
        for pair in nodes.windows(2) {
            let [first, second] = *pair else { continue };
            let end = mesh.nodes()[second].at;
            let bar = Bar {
                end,
                axes: DMat3::from_cols(DVec3::Z, DVec3::X, DVec3::Y),
                length: end.z - mesh.nodes()[first].at.z,
                section,
                ends: Ends::default(),
            };
            mesh.connect([End::Node(first), End::Node(second)], &bar.coupling(), 1.0);
        }
        let seat = nearest(&nodes, |node| mesh.nodes()[node].at.z - seat_z);
        let node = nearest(&nodes, |node| mesh.nodes()[node].at.z - wheel_z);
        let wheel = Wheel { node, normal, stiffness: self.space.k_wheel.min(RIGID) };
        let joint = self.joint(place.extend(seat_z));
        mesh.connect([End::Node(station(arms, arm, f)), End::Node(seat)], &joint, 1.0);
        let tread = along(normal, wheel.stiffness) + along(DVec3::Z, guide.min(RIGID));
        let contact = Coupling::springs(mesh.nodes()[node].at, tread, DMat3::ZERO);
        mesh.connect([body, End::Node(node)], &contact, 1.0);
        let spin =
            Coupling::springs(place.extend(0.0), DMat3::ZERO, along(DVec3::Z, SPIN * section.gj / seat_z));
        mesh.connect([End::Ground, End::Node(nodes[0])], &spin, 0.5);
        Axle { nodes, wheel, along: along_rail }
    }

    /// The screw at the middle of the driven axle, with what keeps the carriage square.
    fn drive(&self, mesh: &mut Mesh, [base, top]: [&Axle; 2], deck: usize) {
        let (axle, body) = match self.screw.action {
            Action::TopAxle => (top, End::Node(deck)),
            Action::BaseAxle | Action::Pins(_) => (base, End::Ground),
        };
        let flexibility = self.mechanism.drive.stiff.flexibility(self.screw.length);
        let stiffness = flexibility.recip().min(RIGID);
        let middle = axle.nodes[0];
        let yaw = along(axle.wheel.normal, self.space.k_yaw_carriage.min(RIGID));
        let line = Coupling::springs(mesh.nodes()[middle].at, along(axle.along, stiffness), yaw);
        mesh.connect([body, End::Node(middle)], &line, 0.5);
    }

    /// A board across to the same arm of the other side.
    fn brace(&self, mesh: &mut Mesh, arms: &[Stations], brace: &Brace) {
        let node = station(arms, brace.arm, brace.f);
        let frame = self.pose.arm(brace.arm);
        let near = mesh.nodes()[node].at;
        let yielding = DVec3::splat(brace.k_conn.map_or(0.0, |k| k.min(RIGID).recip()));
        let section = Section::rectangle(brace.e, brace.g, BOARD_KAPPA, brace.h_along, brace.h_perp);
        let bar = Bar {
            end: mirrored(near),
            axes: DMat3::from_cols(DVec3::NEG_Z, frame.along.extend(0.0), -frame.across().extend(0.0)),
            length: 2.0 * near.z,
            section: self.shear(section),
            ends: Ends { first_turn: yielding, second_shift: DVec3::ZERO, second_turn: yielding },
        };
        mesh.connect([End::Node(node), End::Mirror(node)], &bar.coupling(), 0.5);
    }

    /// A bar to another place of the same arm of the other side; the bar that crosses it is its mirror image.
    fn diagonal(&self, mesh: &mut Mesh, arms: &[Stations], diagonal: &Diagonal) {
        let from = station(arms, diagonal.arm, diagonal.f1);
        let to = station(arms, diagonal.arm, diagonal.f2);
        let end = mirrored(mesh.nodes()[to].at);
        let span = end - mesh.nodes()[from].at;
        let length = span.length();
        let bar = along(span / length, diagonal.ea / length);
        let coupling = Coupling::springs(end, bar, DMat3::ZERO);
        mesh.connect([End::Node(from), End::Mirror(to)], &coupling, 1.0);
    }
}

/// How far up the linkage a place of an arm is, in stages.
fn level(arm: ArmId, f: f64) -> f64 {
    arm.stage.saturating_sub(1) as f64 + f
}

/// The node of an arm nearest to a fraction.
fn station(arms: &[Stations], arm: ArmId, f: f64) -> usize {
    let nodes = arms.get(arm.index()).map_or(&[][..], Vec::as_slice);
    let nearest = nodes.iter().min_by(|a, b| (a.0 - f).abs().total_cmp(&(b.0 - f).abs()));
    nearest.map_or(0, |(_, node)| *node)
}

/// The node whose distance is least.
fn nearest(nodes: &[usize], distance: impl Fn(usize) -> f64) -> usize {
    let least = nodes.iter().min_by(|a, b| distance(**a).abs().total_cmp(&distance(**b).abs()));
    least.copied().unwrap_or(0)
}
