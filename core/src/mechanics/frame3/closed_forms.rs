//! Bars, halves and critical loads against the closed forms of textbooks.
//!
//! Sources, from memory: beams and portals by slope and deflection (A. Kleinlogel, Rigid Frame Formulas); columns
//! (S. P. Timoshenko, J. M. Gere, Theory of Elastic Stability, 2.1 to 2.4).

use super::bar::{Bar, Ends, Section, geometric};
use super::coupling::{Coupling, along};
use super::critical;
use super::half::Parity;
use super::mesh::{End, Mesh, Seat, mirrored};
use super::skyline::Skyline;
use glam::{DMat3, DVec3};
use std::f64::consts::PI;

const EI: f64 = 300.0;

/// A section that bends and twists, but neither stretches nor shears.
fn bending(second: f64, third: f64) -> Section {
    Section { ea: 1e13, gj: EI, ei: [second, third], kga: f64::INFINITY }
}

/// A chain of equal bars from the ground at `foot`, and its top node.
fn column(mesh: &mut Mesh, foot: DVec3, axes: DMat3, length: f64, section: Section, pieces: usize) -> usize {
    let step = length / pieces as f64;
    let mut below = mesh.node(foot, Seat::Aside, 0.0);
    let rigid = DMat3::from_diagonal(DVec3::splat(1e13));
    mesh.connect([End::Ground, End::Node(below)], &Coupling::springs(foot, rigid, rigid), 1.0);
    for piece in 1..=pieces {
        let end = foot + piece as f64 * step * axes.x_axis;
        let node = mesh.node(end, Seat::Aside, piece as f64);
        mesh.arm_piece([below, node], &Bar { end, axes, length: step, section, ends: Ends::default() });
        below = node;
    }
    below
}

/// Upright in y, its second axis along x, its third along z.
fn upright() -> DMat3 {
    DMat3::from_cols(DVec3::Y, DVec3::NEG_X, DVec3::Z)
}

/// The motion of `node` under a force and a couple on it, its mirror image loaded as `parity` has it.
fn answer(mesh: &Mesh, parity: Parity, node: usize, force: DVec3, couple: DVec3) -> (DVec3, DVec3) {
    let matrix = parity.stiffness(mesh);
    let mut state = vec![0.0; matrix.size()];
    let row = mesh.row(node);
    state[row..row + 3].copy_from_slice(&force.to_array());
    state[row + 3..row + 6].copy_from_slice(&couple.to_array());
    matrix.factor().expect("a stable frame").solve(&mut state);
    let motion = parity.motion(mesh, node, &state);
    (motion.shift, motion.turn)
}

fn close(have: f64, want: f64, tolerance: f64) {
    assert!((have - want).abs() <= tolerance * want.abs(), "{have} instead of {want}");
}

#[test]
fn a_cantilever_bends_shears_stretches_and_twists() {
    // Askew in space: the axes of the bar are not those of the frame.
    let axes = DMat3::from_cols(
        DVec3::new(1.0, 2.0, 2.0) / 3.0,
        DVec3::new(2.0, 1.0, -2.0) / 3.0,
        DVec3::new(-2.0, 2.0, -1.0) / 3.0,
    );
    let (e, g, kappa, w, t, l) = (1e10, 6.5e8, 5.0 / 6.0, 0.065, 0.018, 0.62);
    let section = Section::rectangle(e, g, kappa, w, t);
    for pieces in [1, 3] {
        let mut mesh = Mesh::default();
        let tip = column(&mut mesh, DVec3::new(0.1, 0.2, 0.3), axes, l, section, pieces);
        mesh.number();
        let under = |force, couple| answer(&mesh, Parity::Symmetric, tip, force, couple);
        for (axis, depth, width) in [(1, w, t), (2, t, w)] {
            let ei = e * width * depth * depth * depth / 12.0;
            let (shift, turn) = under(axes.col(axis), DVec3::ZERO);
            let shear = l / (kappa * g * w * t);
            close(shift.dot(axes.col(axis)), l * l * l / (3.0 * ei) + shear, 1e-7);
            close(turn.length(), l * l / (2.0 * ei), 1e-7);
            let other = axes.col(3 - axis);
            let (shift, turn) = under(DVec3::ZERO, other);
            close(turn.dot(other), l / ei, 1e-7);
            close(shift.length(), l * l / (2.0 * ei), 1e-7);
        }
        let (shift, _) = under(axes.x_axis, DVec3::ZERO);
        close(shift.dot(axes.x_axis), l / (e * w * t), 1e-5);
        // Torsion of a rectangle of this shape: 0.2749 h s^3 (Roark's series; the formula is within 0.3 %).
        let (_, turn) = under(DVec3::ZERO, axes.x_axis);
        close(turn.dot(axes.x_axis), l / (g * 0.2752 * w * t * t * t), 3e-3);
    }
}

/// A portal across the middle plane: fixed columns of height h, a beam of length `span` on top.
fn portal(height: f64, span: f64, beam: f64, pieces: usize) -> (Mesh, usize) {
    let mut mesh = Mesh::default();
    let foot = DVec3::new(0.0, 0.0, 0.5 * span);
    let top = column(&mut mesh, foot, upright(), height, bending(EI, EI), pieces);
    let bar = Bar {
        end: mirrored(mesh.nodes()[top].at),
        axes: DMat3::from_cols(DVec3::NEG_Z, DVec3::NEG_X, DVec3::Y),
        length: span,
        section: bending(beam, beam),
        ends: Ends::default(),
    };
    mesh.connect([End::Node(top), End::Mirror(top)], &bar.coupling(), 0.5);
    mesh.number();
    (mesh, top)
}

#[test]
fn a_portal_sways_and_bends() {
    let (height, span) = (0.8, 0.5);
    for beam in [30.0, 300.0, 9000.0] {
        let (mesh, top) = portal(height, span, beam, 2);
        let ratio = (beam / span) / (EI / height);
        // Sway: one half of a unit force on each corner. k = 24 EI/h^3 (6 ratio + 1)/(6 ratio + 4).
        let (shift, _) = answer(&mesh, Parity::Antisymmetric, top, 0.5 * DVec3::Z, DVec3::ZERO);
        let sway = 24.0 * EI / (height * height * height) * (6.0 * ratio + 1.0) / (6.0 * ratio + 4.0);
        close(shift.z, sway.recip(), 1e-6);
        // Opposite couples on the corners: 4 EI/h of the column and 2 EI/l of the beam resist.
        let (_, turn) = answer(&mesh, Parity::Symmetric, top, DVec3::ZERO, DVec3::X);
        close(turn.x, (4.0 * EI / height + 2.0 * beam / span).recip(), 1e-6);
        // Couples of one sense out of the plane, on beam and column: the columns bend alike, the beam is carried along.
        let (_, turn) = answer(&mesh, Parity::Symmetric, top, DVec3::ZERO, DVec3::Z);
        close(turn.z, height / EI, 1e-6);
    }
}

/// The geometric matrix of a mesh with one newton of compression in every piece.
fn compressed(mesh: &Mesh, parity: Parity) -> Skyline {
    let mut matrix = Skyline::new(&mesh.envelope());
    for piece in mesh.pieces() {
        let part = geometric(piece.axis, piece.length, -1.0);
        parity.add(&mut matrix, mesh, piece.nodes.map(End::Node), &part, 1.0);
    }
    matrix
}

fn critical_load(mesh: &Mesh, parity: Parity) -> f64 {
    let matrix = parity.stiffness(mesh);
    let factor = matrix.clone().factor().expect("a stable frame");
    critical::lowest(&matrix, &factor, &compressed(mesh, parity)).expect("it buckles")
}

#[test]
fn columns_buckle_as_euler_says() {
    let (length, weak) = (0.9, 120.0);
    let euler = PI * PI * weak / (length * length);
    // Free at the top: K = 2. Four pieces are enough for one part in ten thousand.
    let mut free = Mesh::default();
    column(&mut free, DVec3::Z, upright(), length, bending(EI, weak), 4);
    free.number();
    close(critical_load(&free, Parity::Symmetric), euler / 4.0, 1e-4);
    // Held sideways at the top but free to turn: tan(kL) = kL, kL = 4.49341. Cubic pieces err by (kL/pieces)^4/720.
    let mut held = Mesh::default();
    let top = column(&mut held, DVec3::Z, upright(), length, bending(EI, weak), 8);
    let at = held.nodes()[top].at;
    let stop = Coupling::springs(at, along(DVec3::X, 1e12) + along(DVec3::Z, 1e12), DMat3::ZERO);
    held.connect([End::Ground, End::Node(top)], &stop, 1.0);
    held.number();
    close(critical_load(&held, Parity::Symmetric), 4.493_409_f64.powi(2) * weak / (length * length), 2e-4);
}

#[test]
fn a_portal_buckles_sideways_at_a_quarter_of_what_it_bears_held() {
    // Fixed ends that can shift against each other: K = 1; that cannot: K = 1/2. Out of its plane: K = 2.
    let (height, span) = (0.8, 0.5);
    let euler = PI * PI * EI / (height * height);
    let (mut mesh, top) = portal(height, span, 1e9, 10);
    let at = mesh.nodes()[top].at;
    let guided = Coupling::springs(at, along(DVec3::X, 1e12), along(DVec3::Z, 1e12));
    mesh.connect([End::Ground, End::Node(top)], &guided, 1.0);
    mesh.number();
    close(critical_load(&mesh, Parity::Antisymmetric), euler, 3e-4);
    close(critical_load(&mesh, Parity::Symmetric), 4.0 * euler, 3e-4);
}

#[test]
fn a_board_on_yielding_ends_is_springs_in_a_row() {
    // Against equal turns of both ends (no shear force): l/EI and both connections in a row.
    let (near, section, yielding) = (DVec3::new(0.0, 0.0, 0.25), bending(EI, 2.0 * EI), 1.0 / 400.0);
    for softness in [0.0, yielding] {
        let ends = Ends {
            first_turn: DVec3::splat(softness),
            second_shift: DVec3::ZERO,
            second_turn: DVec3::splat(softness),
        };
        let axes = DMat3::from_cols(DVec3::NEG_Z, DVec3::NEG_X, DVec3::Y);
        let bar = Bar { end: mirrored(near), axes, length: 0.5, section, ends };
        let blocks = bar.coupling().between(near, mirrored(near));
        // Bending along y turns about x: ends turned oppositely, by one radian each.
        let couple = blocks[1][1].x_axis.x - blocks[1][3].x_axis.x;
        close(couple, 2.0 / (0.5 / (2.0 * EI) + 2.0 * softness), 1e-12);
        // A rigid shift or turn of the whole needs no force.
        let turned = blocks[0][1] * DVec3::Y
            + blocks[0][2] * DVec3::Y.cross(mirrored(near) - near)
            + blocks[0][3] * DVec3::Y;
        assert!(turned.length() < 1e-9 * section.ea, "{turned}");
    }
}
