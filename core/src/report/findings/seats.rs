//! Whether everything stays on its seat: casters, wheels, pivots.
use crate::mechanics::JointId;
use crate::quantity::{Amount, Phrase};
use crate::report::finding::{Finding, Grade, Spot};
use crate::report::{Report, Station};

/// A caster line with less than this share of the weight on both counts as near to tipping.
const LIGHT: f64 = 0.1;

/// A wheel or pivot counts as pulled from this share of the largest force on it.
const PULLED: f64 = 1e-6;

/// Whether both pairs of casters press at every height.
pub(super) fn tipping(report: &Report) -> Finding {
    let least = |station: &Station| station.casters()[0].min(station.casters()[1]);
    let (less, height) = report.greatest(|station| -least(station));
    let force = -less;
    let at = report.at(height).casters();
    let total = at[0] + at[1];
    let left = at[0] < at[1];
    let side = if left { "left" } else { "right" };
    let spot = if left { Spot::LeftCaster } else { Spot::RightCaster };
    let share = force / total;
    let (grade, phrase) = if force <= 0.0 {
        let phrase = Phrase::new(format!("Tipping: the {side} casters lift, by "))
            .with(Amount::Force(-force))
            .and(" at deck ")
            .with(Amount::Size(height))
            .and(".");
        (Grade::Over, phrase)
    } else if share < LIGHT {
        let phrase = Phrase::new("Tipping: only ")
            .with(Amount::Force(force))
            .and(format!(" stay on the {side} casters at deck "))
            .with(Amount::Size(height))
            .and(", a small part of the weight.");
        (Grade::Watch, phrase)
    } else {
        let phrase = Phrase::new("Tipping: all four casters press at every height, least ")
            .with(Amount::Force(force))
            .and(format!(" on the {side} pair at deck "))
            .with(Amount::Size(height))
            .and(".");
        (Grade::Fine, phrase)
    };
    let remedy = (grade != Grade::Fine).then(|| {
        Phrase::new(format!(
            "Move the {side} casters outwards, or the load the other way; swivel casters stand at their worst trail when you push."
        ))
    });
    Finding { grade, ratio: 1.0 - share, phrase, remedy, height: Some(height), spot, curve: None }
}

/// A bearing that presses on its seat as long as nothing overhangs too far.
struct Seat {
    spot: Spot,
    who: &'static str,
    help: &'static str,
    press: fn(&Station) -> f64,
}

const SEATS: [Seat; 4] = [
    Seat {
        spot: Spot::BaseWheel,
        who: "The base wheels",
        help: "A rail above the wheels must hold them down.",
        press: |station| station.state.rest.base_wheel,
    },
    Seat {
        spot: Spot::DeckWheel,
        who: "The deck wheels",
        help: "A rail under the wheels must hold the deck down.",
        press: |station| station.state.rest.top_wheel,
    },
    Seat {
        spot: Spot::BasePivot,
        who: "The base pivots",
        help: "Their cheeks must hold them down: bolts, not the weight.",
        press: |station| station.state.rest.joint(JointId::Bl).y,
    },
    Seat {
        spot: Spot::DeckPivot,
        who: "The deck pivots",
        help: "Their cheeks must hold the deck down: bolts, not the weight.",
        press: |station| station.state.rest.joint(JointId::Tl).y,
    },
];

/// Wheels and pivots that are pulled off their seats somewhere in the lift.
pub(super) fn uplift(report: &Report) -> Vec<Finding> {
    SEATS.iter().filter_map(|seat| pulled(report, seat)).collect()
}

fn pulled(report: &Report, seat: &Seat) -> Option<Finding> {
    let (pull, height) = report.greatest(|station| -(seat.press)(station));
    let largest = report.at(height).state.rest.largest();
    (pull > PULLED * largest).then(|| Finding {
        grade: Grade::Watch,
        ratio: pull / largest,
        phrase: Phrase::new(format!("{} are pulled off their seat with up to ", seat.who))
            .with(Amount::Force(pull))
            .and(", at deck ")
            .with(Amount::Size(height))
            .and("."),
        remedy: Some(Phrase::new(seat.help)),
        height: Some(height),
        spot: seat.spot,
        curve: None,
    })
}
