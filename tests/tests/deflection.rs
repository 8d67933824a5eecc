//! The deflections of random tables against a plane frame of the same table, put together node by node.
//!
//! The solver finds them by the unit-load method on a determinate linkage; the frame by stiffnesses alone. They share
//! the pose and nothing else.
#![allow(clippy::unwrap_used, clippy::expect_used, reason = "a test stops at the first surprise")]

mod frame;
mod tables;

use frame::{Displacements, Frame, Point, Section};
use glam::DVec2;
use proptest::prelude::*;
use proptest::test_runner::Config;
use risewright::mechanics::drive::{Action, End};
use risewright::mechanics::{ArmId, Body, JointId, Mechanism, Pose, UnitCase};
use tables::{Table, any_table, close, config};

/// What rounding in the frame's ill-conditioned matrix leaves.
const CLOSE: f64 = 1e-6;

/// Shorter pieces of a bar, m, are so stiff that they drown the rest of the frame's matrix in rounding.
const SHORTEST: f64 = 0.01;

/// Nodes in a row along a straight bar.
struct Bar {
    nodes: Vec<(f64, usize)>,
}

impl Bar {
    fn new(frame: &mut Frame, origin: DVec2, along: DVec2, mut places: Vec<f64>, section: Section) -> Self {
        places.sort_by(f64::total_cmp);
        places.dedup_by(|a, b| (*a - *b).abs() < 1e-9);
        let nodes: Vec<_> = places.into_iter().map(|s| (s, frame.node(origin + s * along))).collect();
        for pair in nodes.windows(2) {
            frame.beam(pair[0].1, pair[1].1, section);
        }
        Self { nodes }
    }

    fn all(&self) -> Vec<usize> {
        self.nodes.iter().map(|(_, node)| *node).collect()
    }

    fn at(&self, s: f64) -> Point {
        let (_, node) = self.nodes.iter().find(|(at, _)| (at - s).abs() < 1e-8).unwrap();
        Point { node: *node, offset: DVec2::ZERO }
    }
}

/// The table as a frame.
struct Model {
    frame: Frame,
    arms: Vec<Bar>,
    top: Bar,
    base: Bar,
    base_axle: Point,
    top_axle: Point,
}

impl Model {
    fn new(table: &Table, pose: &Pose) -> Self {
        let m = &table.mechanism;
        let solver = table.solver();
        let screw = *solver.equilibrium(pose).unwrap().screw();
        let ends: Vec<End> = if let Action::Pins(ends) = screw.action { ends.to_vec() } else { vec![] };
        let on = |body: Body| ends.iter().filter(move |end| end.body == body).map(|end| end.local.x);
        let mut frame = Frame::default();

        let area = m.sides * m.arm.w * m.arm.t;
        let e = m.arm.e.unwrap();
        let section = Section {
            ea: e * area,
            ei: e * area * m.arm.w.powi(2) / 12.0,
            kga: m.arm.kappa * m.arm.g * area,
        };
        let arms: Vec<Bar> = ArmId::all(m.n)
            .map(|arm| {
                let mut places = vec![0.0, pose.centre_of(arm.stage) * m.length, m.length];
                places.extend(on(Body::Arm(arm)));
                Bar::new(&mut frame, pose.arm(arm).origin, pose.arm(arm).along, places, section)
            })
            .collect();
        let rail =
            |ei: Option<f64>, kga: Option<f64>| Section { ea: 0.0, ei: ei.unwrap(), kga: kga.unwrap_or(0.0) };
        let mut places = vec![0.0, pose.top_axle.x, m.load.xw];
        places.extend(on(Body::Top));
        let top = Bar::new(&mut frame, pose.top.origin, pose.top.along, places, rail(m.top.ei, m.top.kga));
        let casters = m.base.casters.unwrap();
        let mut places = vec![0.0, pose.carriage_x, casters[0], casters[1]];
        places.extend(on(Body::Base));
        let base = Bar::new(&mut frame, DVec2::ZERO, DVec2::X, places, rail(m.base.ei, m.base.kga));
        for caster in casters {
            frame.spring(None, base.at(caster), DVec2::Y, m.base.k_caster.unwrap());
        }
        frame.inextensible(base.all(), DVec2::X, true);
        frame.inextensible(top.all(), pose.top.along, false);
        let mut axle = |place: JointId| {
            let node = frame.node(pose.joint(place));
            frame.hold_turn(node);
            Point { node, offset: DVec2::ZERO }
        };
        let (base_axle, top_axle) = (axle(JointId::Br), axle(JointId::Tr));
        let mut model = Self { frame, arms, top, base, base_axle, top_axle };
        model.join(m, pose);

        let k = 1.0 / m.drive.stiff.flexibility(screw.length);
        match screw.action {
            Action::BaseAxle => model.frame.spring(None, base_axle, DVec2::X, k),
            Action::TopAxle => {
                let rail = model.wheel_on_top(pose);
                model.frame.spring(Some(rail), top_axle, pose.top.along, k);
            }
            Action::Pins(ends) => {
                let [p, q] = ends.map(|end| model.end(pose, end));
                model.frame.spring(Some(p), q, screw.along, k);
            }
        }
        model
    }

    /// Pivots and wheels.
    fn join(&mut self, m: &Mechanism, pose: &Pose) {
        for joint in JointId::all(m.n) {
            let [first, second] = self.joint(pose, joint);
            let k = m.sides * m.joint_k.pins.own(joint.kind()).unwrap();
            for direction in [DVec2::X, DVec2::Y] {
                self.frame.spring(Some(first), second, direction, k);
            }
        }
        let rail = self.base.at(pose.carriage_x);
        let k = m.sides * m.joint_k.wheel_base.unwrap();
        self.frame.spring(Some(rail), self.base_axle, DVec2::Y, k);
        let rail = self.wheel_on_top(pose);
        let k = m.sides * m.joint_k.wheel_top.unwrap();
        self.frame.spring(Some(rail), self.top_axle, pose.top.across(), k);
    }

    /// Length of the shortest piece of any bar, m.
    fn shortest(&self) -> f64 {
        let bars = self.arms.iter().chain([&self.top, &self.base]);
        let pieces = bars.flat_map(|bar| bar.nodes.windows(2).map(|pair| pair[1].0 - pair[0].0));
        pieces.fold(f64::INFINITY, f64::min)
    }

    fn wheel_on_top(&self, pose: &Pose) -> Point {
        self.on_top(pose, pose.top_axle)
    }

    /// A point of the top frame given in its own axes.
    fn on_top(&self, pose: &Pose, local: DVec2) -> Point {
        Point { offset: local.y * pose.top.across(), ..self.top.at(local.x) }
    }

    fn end(&self, pose: &Pose, end: End) -> Point {
        let offset = end.local.y * pose.frame(end.body).across();
        let bar = match end.body {
            Body::Base => &self.base,
            Body::Arm(arm) => &self.arms[arm.index()],
            Body::Top => &self.top,
        };
        Point { offset, ..bar.at(end.local.x) }
    }

    /// The points of the two bodies at a joint.
    fn joint(&self, pose: &Pose, joint: JointId) -> [Point; 2] {
        joint.bodies(pose.n).map(|body| match (body, joint) {
            (Body::Base, JointId::Br) => self.base_axle,
            (Body::Top, JointId::Tr) => self.top_axle,
            (Body::Base, _) => self.base.at(0.0),
            (Body::Top, _) => self.top.at(0.0),
            (Body::Arm(arm), _) => {
                let frame = pose.arm(arm);
                self.arms[arm.index()].at((pose.joint(joint) - frame.origin).dot(frame.along))
            }
        })
    }

    fn solve(&mut self, m: &Mechanism, pose: &Pose) -> Displacements {
        let at = |y: Option<f64>| DVec2::new(m.load.xw, y.unwrap_or(m.h_deck));
        self.frame.load(self.on_top(pose, at(m.load.yw)), DVec2::new(0.0, -m.load.weight));
        self.frame.load(self.on_top(pose, at(m.load.yp)), DVec2::new(m.load.push, 0.0));
        self.frame.solve()
    }
}

proptest! {
    #![proptest_config(Config { max_global_rejects: 1_000_000, ..config() })]

    #[test]
    fn a_plane_frame_gives_way_alike(table in any_table()) {
        let (m, pose, state) = (&table.mechanism, table.pose(), table.state());
        let mut model = Model::new(&table, &pose);
        prop_assume!(model.shortest() > SHORTEST);
        let moved = model.solve(m, &pose);
        let deflection = state.deflection.unwrap();
        let load = model.on_top(&pose, DVec2::new(m.load.xw, m.load.yw.unwrap()));
        let (pivot, wheel) = (model.top.at(0.0), model.wheel_on_top(&pose));
        let tilt = (moved.at(wheel) - moved.at(pivot)).dot(pose.top.across()) / pose.top_axle.x;
        // The widest movement anywhere: drift and tilt may pass through zero.
        let bent = state.shape.unwrap();
        let wide = JointId::all(m.n).fold(moved.at(load).length(), |most, joint| most.max(bent.joint(joint).length()));
        let (drop, in_frame) = (deflection.drop.total(), -moved.at(load).y);
        prop_assert!(close(drop, in_frame, CLOSE, wide), "drop {drop}, in the frame {in_frame}, of {wide}");
        prop_assert!(close(deflection.drift.total(), moved.at(pivot).x, CLOSE, wide), "drift");
        prop_assert!(close(deflection.tilt.total(), tilt, CLOSE, wide / pose.top_axle.x), "tilt");
        for joint in JointId::all(m.n) {
            let [first, second] = model.joint(&pose, joint).map(|point| moved.at(point));
            let off = bent.joint(joint) - 0.5 * (first + second);
            prop_assert!(off.length() <= CLOSE * wide, "{joint}: {off}");
        }
    }

    /// The bent shape and the unit-load method are two roads to one displacement.
    #[test]
    fn bent_shape_ends_at_the_deflections(table in any_table()) {
        let state = table.state();
        let (deflection, bent) = (state.deflection.unwrap(), state.shape.unwrap());
        let load = bent.deck(DVec2::new(table.mechanism.load.xw, table.mechanism.load.yw.unwrap()));
        let pivot = bent.deck(DVec2::ZERO);
        let wide = load.length() + pivot.length() + bent.tilt().abs();
        for case in UnitCase::ALL {
            let (by_work, by_shape) = match case {
                UnitCase::Drop => (deflection.drop.total(), -load.y),
                UnitCase::Tilt => (deflection.tilt.total(), bent.tilt()),
                UnitCase::Drift => (deflection.drift.total(), pivot.x),
            };
            prop_assert!(close(by_shape, by_work, 1e-9, wide), "{case:?}: {by_shape} {by_work}");
        }
    }
}
