//! Parts, and heights of a curve, in words.
use crate::checks::{Check, Member, NEAR};
use crate::drawing::joint_words;
use crate::mechanics::{JointId, Side};
use crate::quantity::{Amount, System};

/// Ratios this near to each other are the same to a reader.
const SAME: f64 = 0.005;

/// The part a check speaks of, in the words of a builder.
pub(super) fn part(member: Member) -> String {
    match member {
        Member::Arm(arm) => {
            let side = if arm.side == Side::A { 'A' } else { 'B' };
            format!("arm {side} of stage {}", arm.stage)
        }
        Member::Joint(joint @ (JointId::C(_) | JointId::Jl(_) | JointId::Jr(_))) => {
            format!("the pin at {}", joint_words(joint))
        }
        Member::Joint(joint) => format!("the {}", joint_words(joint)),
        Member::BaseWheels => "the base wheels".into(),
        Member::DeckWheels => "the deck wheels".into(),
        Member::CrossBar => "the cross-bar".into(),
        Member::BearingTube => "the bearing tube".into(),
        Member::Screw => "the screw".into(),
        Member::Nut => "the nut".into(),
        Member::ThrustBearing => "the thrust bearing".into(),
        Member::Deck => "the deck panel".into(),
        Member::DeckRails => "the deck rails".into(),
        Member::BaseBeams => "the base beams".into(),
        Member::LeftCasters => "the left casters".into(),
        Member::RightCasters => "the right casters".into(),
        Member::Crank => "the crank".into(),
    }
}

/// What one would read off the curve.
pub(super) fn curve(check: &Check, system: System) -> String {
    let at = |height: f64| Amount::Size(height).text(system);
    let mut words =
        format!("Ratio over the deck’s height: {} at deck {}", check.ratio_words(), at(check.height));
    let ends = [("lowest", check.curve.first()), ("highest", check.curve.last())];
    for (name, end) in ends {
        if let Some((height, ratio)) = end
            && height.total_cmp(&check.height).is_ne()
        {
            words += &format!(", {} at the {name}, {}", Amount::Number(*ratio).text(system), at(*height));
        }
    }
    format!("{words}. The table stands at deck {}; drawn wide: {}.", at(check.height), part(check.member))
}

/// Whether the height makes no difference to a check.
fn is_everywhere(check: &Check) -> bool {
    let least = check.curve.iter().map(|point| point.1).fold(check.ratio, f64::min);
    check.ratio - least < SAME
}

/// The height at which a check is worst; every height where it makes no difference.
pub(super) fn place(check: &Check, system: System) -> String {
    if is_everywhere(check) {
        "at every height".into()
    } else {
        format!("at deck {}", Amount::Size(check.height).text(system))
    }
}

/// The same in the column of heights.
pub(super) fn worst_at(check: &Check, system: System) -> String {
    if is_everywhere(check) { "every".into() } else { Amount::Size(check.height).text(system) }
}

/// Between which deck heights a check is over its limit, or near it where it is nowhere over; none where it is neither.
pub(super) fn stretch(check: &Check, system: System) -> Option<String> {
    let over = check.ratio > 1.0;
    let bound = if over { 1.0 } else { NEAR };
    let mut passed = check.curve.iter().filter(|(_, ratio)| *ratio > bound).map(|(height, _)| *height);
    let first = passed.next()?;
    let last = passed.next_back().unwrap_or(first);
    let at = |height: f64| Amount::Size(height).text(system);
    let whole = check.curve.iter().all(|(_, ratio)| *ratio > bound);
    let what = if over { "Over the limit" } else { "Near the limit" };
    Some(if whole {
        format!("{what} at every height.")
    } else if first.total_cmp(&last).is_eq() {
        format!("{what} at deck {} only.", at(first))
    } else {
        format!("{what} with the deck between {} and {}.", at(first), at(last))
    })
}
