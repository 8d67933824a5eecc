//! Whether every hole and every recess lies on the part it is cut into.
use super::laps::laps;
use crate::parts::{Part, Rides};
use crate::quantity::{Amount, Phrase};
use crate::report::Report;
use crate::report::finding::{Finding, Grade, Spot};

/// A stored step and its rounding, m: less is no matter.
const STEP: f64 = 2e-6;

/// One finding a kind of part with a hole that reaches past its outline or a recess that mostly lies off it, the worst; what
/// [`laps`](super::laps) has said of deck and planks is not said again.
pub(super) fn off(report: &Report) -> Vec<Finding> {
    let mut worst: Vec<(&Part, f64, Amount)> = Vec::new();
    for part in &report.parts {
        let holes = part.holes.iter().map(|hole| (part.beyond(hole), Amount::Size(hole.diameter.to_m())));
        // A beam's recess for a plank lies off it only where the casters stand past the base.
        let recesses = part
            .housings
            .iter()
            .filter(|housing| housing.takes != "Base plank")
            .map(|housing| (part.misses(housing), Amount::Size(housing.length.to_m())));
        let Some((past, size)) = holes.chain(recesses).max_by(|one, other| one.0.total_cmp(&other.0)) else {
            continue;
        };
        match worst.iter_mut().find(|known| known.0.name == part.name) {
            Some(known) if known.1 >= past => {}
            Some(known) => *known = (part, past, size),
            None => worst.push((part, past, size)),
        }
    }
    let told = laps(report);
    let said = |part: &Part| {
        let lap = match part.name {
            "Deck" => Spot::Deck,
            "Base plank" => Spot::Base,
            _ => return false,
        };
        told.iter().any(|found| found.spot == lap)
    };
    worst
        .into_iter()
        .filter(|(part, past, _)| *past > STEP && !said(part))
        .map(|(part, past, size)| Finding {
            grade: Grade::Over,
            ratio: 1.0 + past / part.size[1].to_m().max(1e-3),
            phrase: Phrase::new(format!("{}: a hole or recess of ", part.name))
                .with(size)
                .and(" does not lie on it; it is ")
                .with(Amount::Give(past))
                .and(" past its edge."),
            remedy: Some(Phrase::new(help(part.name))),
            cure: None,
            height: None,
            spot: spot(part.rides),
            curve: None,
        })
        .collect()
}

/// What makes room for the holes of a part.
fn help(name: &str) -> &'static str {
    match name {
        "Arm A" | "Arm B" => {
            "Wider arms, longer ends past the pins, or thinner axles and bushings make room."
        }
        "Deck" => "Make the deck longer, or let its rails begin elsewhere.",
        "Base beam" => "Let the base begin farther out past the pivots, or make its beams longer.",
        "Base pivot cheek" | "Inner base cheek" => {
            "The cheeks are as long as both ends of an arm past its pin and as high as the pin line: make those greater."
        }
        "Deck pivot cheek" | "Inner deck cheek" => {
            "The cheeks are as long as both ends of an arm past its pin and as high as the deck stands above its pins: make those greater, or \
             the deck rails less deep."
        }
        _ => "Make the part bigger, or what goes through it thinner.",
    }
}

/// Where a part sits in the drawing.
const fn spot(rides: Rides) -> Spot {
    match rides {
        Rides::Base(_) | Rides::Aside => Spot::Base,
        Rides::Deck(_) => Spot::Deck,
        Rides::BaseCarriage => Spot::BaseWheel,
        Rides::DeckCarriage => Spot::DeckWheel,
        Rides::Arm(_) | Rides::OnArm(..) => Spot::Arms,
    }
}
