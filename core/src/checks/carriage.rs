//! Wheels, their axles, and the bars across the table that carry the ends of the screw.
//!
//! Plain `f64` in SI.
use super::bolt;
use super::check::{Check, Group, Lever, Member, Rule, Use, Weight, worst};
use super::level::Loaded;
use super::table::{Table, add};
use crate::catalogue::steel::Section;
use crate::catalogue::{Source, Standing};
use crate::mechanics::statics::Forces;
use crate::mechanics::stiffness::rectangle;
use crate::parts::{ScrewBar, screw_bars, stub, wheel_overhang};
use crate::quantity::{Amount, Length, Phrase};

/// The hole in a bar for the screw is so many times the screw's outside diameter (common practice, no source).
const HOLE_OF_SCREW: f64 = 1.1;

const BEAM: Source = Source::new("Beam theory; any text on the strength of materials", Standing::Practice);
const RATING: Source = Source::new("Static rating of the bought wheel or bearing", Standing::Practice);

/// Both sets of wheels.
const WHEELS: [(Member, bool); 2] = [(Member::BaseWheels, false), (Member::DeckWheels, true)];

fn wheel_force(forces: &Forces, deck: bool) -> f64 {
    if deck { forces.top_wheel } else { forces.base_wheel }
}

impl Loaded<'_> {
    /// The greatest force on the wheels in any state and either sense, N, all sides.
    fn wheels(&self, deck: bool) -> f64 {
        self.forces().into_iter().fold(0.0, |most, forces| most.max(wheel_force(forces, deck).abs()))
    }
}

pub(super) fn checks(table: &Table<'_>, list: &mut Vec<Check>) {
    add(list, [wheels(table), axle(table), bars(table, false), bars(table, true)]);
}

fn wheels(table: &Table<'_>) -> Option<Check> {
    let rating = table.design.strength.wheel_rating.to_n();
    let rule = Rule {
        id: "wheel-rating",
        group: Group::Carriage,
        title: "Force on a wheel",
        weight: Weight::Limit,
        formula: "N ≤ rating",
        source: RATING,
        unit: Amount::Force,
        levers: &[Lever::HigherStop],
    };
    rule.check(
        table.levels,
        |at| worst(WHEELS.map(|(member, deck)| Use::new(member, at.wheels(deck) * table.share, rating))),
        |_, most| Phrase::new("N = ").with(Amount::Force(most.demand)).and(" on the worse wheel"),
    )
}

fn axle(table: &Table<'_>) -> Option<Check> {
    let (d, strength) = (table.design.running.axle.to_m(), table.steel());
    let out = [false, true].map(|deck| wheel_overhang(table.design, deck).to_m());
    let stubs = [false, true].map(|deck| stub(table.design, deck).map(Length::to_m));
    let wheel = |at: &Loaded<'_>, deck: bool| at.wheels(deck) * table.share;
    let push = |at: &Loaded<'_>| at.drive() * table.share;
    // Across and along the rail. The arm's share of the wheel's couple is left to the axle: on the safe side.
    let moment = |at: &Loaded<'_>, deck: bool| {
        let along = stubs[usize::from(deck)].map_or(0.0, |stub| push(at) * stub);
        libm::hypot(wheel(at, deck) * out[usize::from(deck)], along)
    };
    let rule = Rule {
        id: "axle-overhang",
        group: Group::Carriage,
        title: "Wheel axle bent",
        weight: Weight::Limit,
        formula: "σ = 32 M / π d³,  M = N a between arm and wheel, with F b / 2 between tube and arm where the screw pushes: √((N a)² + (F b / 2)²)",
        source: BEAM,
        unit: Amount::Stress,
        levers: &[Lever::Axle, Lever::HigherStop],
    };
    rule.check(
        table.levels,
        |at| {
            worst(WHEELS.map(|(member, deck)| Use::new(member, bolt::bending(moment(at, deck), d), strength)))
        },
        |at, most| {
            let deck = most.member == Member::DeckWheels;
            let by_wheel = Phrase::default()
                .with(Amount::Force(wheel(at, deck)))
                .and(" × ")
                .with(Amount::Size(out[usize::from(deck)]));
            let both = match stubs[usize::from(deck)] {
                Some(stub) => Phrase::new("M = √((")
                    .then(by_wheel)
                    .and(")² + (")
                    .with(Amount::Thrust(push(at)))
                    .and(" × ")
                    .with(Amount::Size(stub))
                    .and(")²)"),
                None => Phrase::new("M = ").then(by_wheel),
            };
            both.and(" = ")
                .with(Amount::Torque(moment(at, deck)))
                .and(", σ = ")
                .with(Amount::Stress(most.demand))
        },
    )
}

/// Section modulus of a square tube with a hole through the two walls that are bent most, m3.
#[must_use]
pub fn drilled_tube(side: f64, wall: f64, hole: f64, second_moment: f64) -> f64 {
    let inner = (side - 2.0 * wall).max(0.0);
    let lost = rectangle(hole, side) - rectangle(hole, inner);
    (second_moment - lost).max(0.0) / (side / 2.0)
}

fn modulus(table: &Table<'_>, bar: &ScrewBar) -> f64 {
    let Section::SquareTube { side, wall } = bar.section else { return bar.section.section_modulus() };
    let hole = HOLE_OF_SCREW * table.design.drive.major.to_m();
    drilled_tube(side.to_m(), wall.to_m(), hole, bar.section.second_moment())
}

/// The bars that carry the screw's ends, with the screw's hole in their middle.
fn bars(table: &Table<'_>, on_frame: bool) -> Option<Check> {
    let bars: Vec<ScrewBar> =
        screw_bars(table.design).into_iter().filter(|bar| bar.on_frame == on_frame).collect();
    let member = if on_frame { Member::BearingTube } else { Member::CrossBar };
    let strength = table.steel();
    let rule = Rule {
        id: if on_frame { "bearing-tube" } else { "cross-bar" },
        group: Group::Carriage,
        title: if on_frame { "Bearing tube bent by the screw" } else { "Cross-bar bent by the nut" },
        weight: Weight::Limit,
        formula: "σ = M / W,  M = F l / 4,  W without the screw's hole",
        source: BEAM,
        unit: Amount::Stress,
        levers: if on_frame {
            &[Lever::BearingTube, Lever::HigherStop]
        } else {
            &[Lever::CrossBar, Lever::HigherStop]
        },
    };
    let moment = |at: &Loaded<'_>, bar: &ScrewBar| at.drive() * bar.span.to_m() / 4.0;
    let stress = |at: &Loaded<'_>, bar: &ScrewBar| {
        let modulus = modulus(table, bar);
        // A hole as wide as the bar leaves nothing.
        if modulus > 0.0 { moment(at, bar) / modulus } else { f64::INFINITY }
    };
    rule.check(
        table.levels,
        |at| worst(bars.iter().map(|bar| Use::new(member, stress(at, bar), strength))),
        |at, most| {
            let worse = bars.iter().reduce(
                |one, other| {
                    if stress(at, other) > stress(at, one) { other } else { one }
                },
            );
            worse.map_or_else(Phrase::default, |bar| {
                Phrase::new("M = ")
                    .with(Amount::Thrust(at.drive()))
                    .and(" × ")
                    .with(Amount::Size(bar.span.to_m()))
                    .and(" / 4 = ")
                    .with(Amount::Torque(moment(at, bar)))
                    .and(", σ = M / ")
                    .with(Amount::Modulus(modulus(table, bar)))
                    .and(" = ")
                    .with(Amount::Stress(most.demand))
            })
        },
    )
}
