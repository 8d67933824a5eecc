//! The springs that hold a table sideways, each worked out from sizes, with what is assumed about it.
//!
//! Plain `f64` in SI: N/m, N m/rad. No handbook has these for a shop-built pivot: each is a band from soft to stiff whose
//! middle is the best guess. The pressing of wood across its grain is taken at a fifteenth of the modulus along it, as
//! EN 338 has it for hardwoods.
use super::stiffness::{self, rectangle};
use crate::catalogue::steel::STEEL_MODULUS;
use crate::design::Design;
use crate::parts::{arm_thickness, flange_thickness, spacer_outside, strap_bolt, strap_span, wheel_overhang};
use core::f64::consts::PI;

/// Modulus across the grain as a part of that along it (EN 338, hardwoods).
const ACROSS: f64 = 1.0 / 15.0;
/// What pressing of washers on wood keeps of its stiffness for being neither flat nor tight. Assumed.
const LOOSE_WASHERS: f64 = 1.0 / 3.0;
/// The soft guess of a board's end as a part of the middle one, and the stiff one. Assumed.
const BOARD_SOFT: f64 = 0.375;
const BOARD_STIFF: f64 = 2.0;
/// Of two crossed straps only the one that is pulled holds.
const ONE_PULLS: f64 = 0.5;
/// What a strap keeps of its stiffness for slack in its bolt holes: soft, middle, stiff. Assumed.
const STRAP_FIT: [f64; 3] = [0.5, 0.7, 1.0];
/// The soft and the stiff guess of a side guide as parts of the middle one. Assumed.
const GUIDE: [f64; 3] = [0.5, 1.0, 2.0];

/// Which guess of a stiffness.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Firmness {
    /// The softest to be expected.
    Soft,
    /// The best guess.
    Middle,
    /// The stiffest to be expected.
    Stiff,
}

impl Firmness {
    /// All three, from soft to stiff.
    pub const ALL: [Self; 3] = [Self::Soft, Self::Middle, Self::Stiff];
}

/// What a stiffness is measured in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SpringUnit {
    /// Force for a shift, N/m.
    Shift,
    /// Couple for a turn, N m/rad.
    Turn,
    /// Force for a strain, N.
    Strain,
}

/// A stiffness that is not known exactly.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spring {
    /// What it is.
    pub title: &'static str,
    /// What it is measured in.
    pub unit: SpringUnit,
    /// Its guesses from soft to stiff.
    pub values: [f64; 3],
    /// Formula and source, and what is assumed.
    pub reason: &'static str,
}

impl Spring {
    /// One of its guesses.
    #[must_use]
    pub const fn of(&self, firmness: Firmness) -> f64 {
        let [soft, middle, stiff] = self.values;
        match firmness {
            Firmness::Soft => soft,
            Firmness::Middle => middle,
            Firmness::Stiff => stiff,
        }
    }
}

/// All springs of a table. A table without boards, straps or guides has those of none.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Springs {
    /// A pivot across its bolt.
    pub slip: Spring,
    /// A pivot along its bolt.
    pub axial: Spring,
    /// A pivot against rocking of its bolt.
    pub rock: Spring,
    /// An end of a cross board against turning in its arm.
    pub board_end: Spring,
    /// A pair of crossed straps between the arms A, and between the arms B.
    pub straps: [Spring; 2],
    /// A wheel with its strip and the axle that stands out of the arm.
    pub wheel: Spring,
    /// A side guide that touches: below and above.
    pub guides: [Spring; 2],
    /// The driven carriage against turning about the vertical.
    pub square: Spring,
}

impl Springs {
    /// The springs of a design.
    #[must_use]
    pub fn of(design: &Design) -> Self {
        let guides = [false, true].map(|deck| guide(design, deck));
        Self {
            slip: slip(design),
            axial: axial(design),
            rock: rock(design),
            board_end: board_end(design),
            straps: [false, true].map(|b| strap(design, b)),
            wheel: wheel(design),
            guides,
            square: square(design, guides),
        }
    }

    /// Those that this table has, in the order in which they are shown.
    pub fn shown(&self) -> impl Iterator<Item = &Spring> {
        let braces = [&self.board_end, &self.straps[0], &self.straps[1]];
        [&self.rock, &self.slip, &self.axial]
            .into_iter()
            .chain(braces)
            .chain([&self.wheel, &self.guides[0], &self.guides[1], &self.square])
            .filter(|spring| spring.values[2] > 0.0)
    }
}

/// Modulus of the wood across its grain, Pa.
fn across(design: &Design) -> f64 {
    ACROSS * design.arms.modulus.to_pa()
}

/// Slip of a bushing in an arm, wood to wood, N/m.
fn bush_slip(design: &Design) -> f64 {
    stiffness::slip(design.arms.density.to_kg_m3(), design.running.bush.to_m())
}

fn slip(design: &Design) -> Spring {
    let full = bush_slip(design);
    Spring {
        title: "Pivot, across its bolt",
        unit: SpringUnit::Shift,
        values: [0.5 * full, full, full],
        reason: "K_ser = ρ^1.5 d/23 of EN 1995-1-1 table 7.1 with the bushing as dowel, wood to wood; soft is one half of it.",
    }
}

fn axial(design: &Design) -> Spring {
    let [outside, bore] = [spacer_outside(design), design.running.pin].map(|size| size.to_m());
    let area = PI / 4.0 * (outside * outside - bore * bore).max(0.0);
    let both = 0.5 * stiffness::block(across(design), area, arm_thickness(design).to_m());
    let loose = LOOSE_WASHERS * both;
    Spring {
        title: "Pivot, along its bolt",
        unit: SpringUnit::Shift,
        values: [loose, loose, loose],
        reason: "E₉₀ A/t of the wood under the washers of both arms, one behind the other (E₉₀: stiffness across the grain, a fifteenth of that along it); a third of it is assumed to be left, for washers are neither flat nor tight.",
    }
}

/// Rocking of a bolt: slip spread evenly over the grip of either arm, k_1 t^2/12, both arms one behind the other. A hub
/// washer pressed firmly adds the bending of the pressed wood, E_90 pi D^4/(64 t), to either arm.
fn rock(design: &Design) -> Spring {
    match measured(design) {
        Some(value) => Spring {
            title: "Pivot, rocking",
            unit: SpringUnit::Turn,
            values: [value; 3],
            reason: "Measured on a joint: pull times the square of its reach over the give, the arm's own bending taken off.",
        },
        None => Spring {
            title: "Pivot, rocking",
            unit: SpringUnit::Turn,
            values: guessed_rock(design),
            reason: "k t²/12 of either arm, one behind the other: the slip k = 2 K_ser spread evenly over the grip t. Soft is half of that; stiff adds the \
                     washers' grip E₉₀ π D⁴/(64 t), which a pivot that turns freely does not keep. Assumed; measure yours.",
        },
    }
}

/// The rocking stiffness of a joint that nobody has tested: soft, middle and stiff, N m/rad.
fn guessed_rock(design: &Design) -> [f64; 3] {
    let thick = arm_thickness(design).to_m();
    let firm = design.sway.wear.firm();
    let member = firm * 2.0 * bush_slip(design) * thick * thick / 12.0;
    let hub = |outside: f64| across(design) * PI * outside * outside * outside * outside / (64.0 * thick);
    let sprung = hub(design.sway.hub.to_m());
    let washer = firm * hub(spacer_outside(design).to_m());
    [0.25 * member, 0.5 * (member + sprung), 0.5 * (member + washer.max(sprung))]
}

/// The rocking stiffness of a tested joint, N m/rad: what is left of the give when the pulled arm's own bending as a
/// cantilever, F l^3/(3 E I), is taken off. None where no joint was tested, or where the arm alone gives as much.
fn measured(design: &Design) -> Option<f64> {
    let sway = &design.sway;
    let (pull, reach) = (sway.test_pull.to_n(), sway.test_reach.to_m());
    let rocking = sway.test_give.to_m() - bending(design, pull, reach);
    (pull > 0.0 && rocking > 0.0).then(|| pull * reach * reach / rocking)
}

/// How far the pulled arm of a joint test bends by itself under a pull, N, at a reach from the bolt, m: a cantilever, m.
fn bending(design: &Design, pull: f64, reach: f64) -> f64 {
    let thick = arm_thickness(design).to_m();
    let ei = design.arms.modulus.to_pa() * rectangle(design.arms.width.to_m(), thick);
    pull / stiffness::bar_at_tip(ei, reach)
}

/// What a ruler should show in a joint test with a pull, N, at a reach from the bolt, m, if the joint is as stiff as guessed: soft,
/// middle and stiff, m. The arm's own bending is in it, free play is not.
#[must_use]
pub fn joint_test(design: &Design, pull: f64, reach: f64) -> [f64; 3] {
    let bent = bending(design, pull, reach);
    guessed_rock(design).map(|rock| bent + pull * reach * reach / rock)
}

/// Whether a joint was tested but its arm alone gives all that was measured, so that the test says nothing.
#[must_use]
pub fn test_is_void(design: &Design) -> bool {
    design.sway.test_pull.to_n() > 0.0 && measured(design).is_none()
}

/// A board's end that presses on the wood of the arm: through its thickness, or as deep as half the board is high where the
/// arm is thinner, since pressure spreads about so far.
fn board_end(design: &Design) -> Spring {
    let arms = &design.arms;
    let has = arms.boards_a || arms.boards_b;
    let high = arms.board_width.to_m();
    let deep = arm_thickness(design).to_m().max(0.5 * high);
    let full = across(design) * rectangle(arms.board_thickness.to_m(), high) / deep;
    let middle = if has { design.sway.board_fit.value() * full } else { 0.0 };
    Spring {
        title: "Cross board, its end",
        unit: SpringUnit::Turn,
        values: [BOARD_SOFT * middle, middle, (BOARD_STIFF * middle).min(full)],
        reason: "E₉₀ b h³/(12 t), t at least h/2, if the board's end presses over its whole face, times the fit you entered; soft is 3/8 of \
                 that, stiff twice as much. Assumed.",
    }
}

/// Crossed straps as one bar of a stiffness E A: steel and two bolts an end one behind the other, over the diagonal
/// between the arms.
fn strap(design: &Design, b: bool) -> Spring {
    let arms = &design.arms;
    let has = if b { arms.straps_b } else { arms.straps_a };
    let steel = STEEL_MODULUS.to_pa() * arms.strap_width.to_m() * arms.strap_thickness.to_m();
    let bolts = 2.0 * 2.0 * stiffness::slip(arms.density.to_kg_m3(), strap_bolt(design).diameter.to_m());
    let bar = stiffness::block(steel, 1.0, strap_span(design, b).to_m());
    let along = arms_between_boards(design);
    let diagonal = libm::hypot(along, crate::parts::arm_spread(design, b).to_m());
    let full = if has { ONE_PULLS * diagonal * stiffness::series([bar, bolts, bolts]) } else { 0.0 };
    Spring {
        title: if b { "X straps on B" } else { "X straps on A" },
        unit: SpringUnit::Strain,
        values: STRAP_FIT.map(|fit| fit * full),
        reason: "Flat steel and its bolts (K_ser doubled, steel on wood) one behind the other; only one of two pulls, and \
                 the fit of the holes is assumed at a half, 0.7 and 1.",
    }
}

/// Along an arm from one pair of boards to the other, m.
fn arms_between_boards(design: &Design) -> f64 {
    design.lift.arm_length.to_m() * (1.0 - 2.0 * design.arms.board_place.value())
}

/// The softer of a base and a deck wheel.
fn wheel(design: &Design) -> Spring {
    let value = [false, true].map(|deck| wheel_stiffness(design, deck));
    let least = value[0].min(value[1]);
    Spring {
        title: "Wheel on its strip",
        unit: SpringUnit::Shift,
        values: [least; 3],
        reason: "The wheel's give as entered, behind it the axle's overhang, 3 E I/l³.",
    }
}

/// A wheel with its strip and with the axle that stands out of the arm, N/m.
pub(super) fn wheel_stiffness(design: &Design, deck: bool) -> f64 {
    let bar = crate::catalogue::steel::Section::RoundBar { diameter: design.running.axle };
    let ei = STEEL_MODULUS.to_pa() * bar.second_moment();
    let out = stiffness::bar_at_tip(ei, wheel_overhang(design, deck).to_m());
    stiffness::series([design.running.wheel_stiffness.to_n_per_m(), out])
}

fn guide(design: &Design, deck: bool) -> Spring {
    let has = flange_thickness(design, deck) > crate::quantity::Length::ZERO;
    let middle = if has { design.sway.guide_stiffness.to_n_per_m() } else { 0.0 };
    Spring {
        title: if deck { "Side guide above" } else { "Side guide below" },
        unit: SpringUnit::Shift,
        values: GUIDE.map(|part| part * middle),
        reason: "As entered for a guide that touches its rail, one half and twice as much for soft and stiff. Assumed. Within \
                 its play a guide holds nothing.",
    }
}

/// Two guides on either end of the driven axle, a distance apart along the rail: four springs at half that distance from
/// the axle, k s^2 about the vertical.
fn square(design: &Design, guides: [Spring; 2]) -> Spring {
    let apart = design.sway.guide_span.to_m();
    let driven = guides[usize::from(design.drive.kind == crate::design::DriveKind::TopCarriage)];
    Spring {
        title: "Carriage kept square",
        unit: SpringUnit::Turn,
        values: driven.values.map(|value| value * apart * apart),
        reason: "Four guides, each half the distance s from the axle: k s² about the vertical.",
    }
}
