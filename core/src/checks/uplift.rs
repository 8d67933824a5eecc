//! Wheels and pivots that press on their seats by weight alone, until something overhangs too far.
//!
//! Plain `f64` in SI.
use super::check::{Check, Group, Lever, Member, Rule, Use, Verdict, Weight};
use super::table::{Table, add};
use crate::catalogue::{Source, Standing};
use crate::mechanics::JointId;
use crate::mechanics::statics::Forces;
use crate::quantity::figures::NEWTON_IN_LBF;
use crate::quantity::{Amount, Phrase};

/// A wheel or pivot counts as pulled from this share of the largest force on.
const PULLED: f64 = 1e-6;

/// And from so much on, N: half a pound-force, the least that is not shown as nothing in either system of units.
const SHOWN: f64 = 0.5 / NEWTON_IN_LBF;

const STATICS: Source = Source::new("Equilibrium of the whole linkage", Standing::Practice);

/// Something that stays down as long as it is pressed.
struct Seat {
    id: &'static str,
    title: &'static str,
    member: Member,
    press: fn(&Forces) -> f64,
}

const SEATS: [Seat; 4] = [
    Seat {
        id: "uplift-base-wheels",
        title: "Base wheels pulled off their rail",
        member: Member::BaseWheels,
        press: |forces| forces.base_wheel,
    },
    Seat {
        id: "uplift-deck-wheels",
        title: "Deck wheels pulled off their rail",
        member: Member::DeckWheels,
        press: |forces| forces.top_wheel,
    },
    Seat {
        id: "uplift-base-pivots",
        title: "Base pivots pulled up",
        member: Member::Joint(JointId::Bl),
        press: |forces| forces.joint(JointId::Bl).y,
    },
    Seat {
        id: "uplift-deck-pivots",
        title: "Deck pivots pulled up",
        member: Member::Joint(JointId::Tl),
        press: |forces| forces.joint(JointId::Tl).y,
    },
];

pub(super) fn checks(table: &Table<'_>, list: &mut Vec<Check>) {
    add(list, SEATS.iter().map(|seat| pulled(table, seat)));
}

/// The pull against the largest force in the table. A captured rail or a bolted cheek holds it, so it is never more than to be watched.
fn pulled(table: &Table<'_>, seat: &Seat) -> Option<Check> {
    let rule = Rule {
        id: seat.id,
        group: Group::Carriage,
        title: seat.title,
        weight: Weight::Advice,
        formula: "N ≥ 0, else it must be held down",
        source: STATICS,
        unit: Amount::Force,
        levers: &[Lever::Load],
    };
    let check = rule.check(
        table.levels,
        |at| {
            let pull = at.forces().into_iter().fold(0.0, |most: f64, forces| most.max(-(seat.press)(forces)));
            Some(Use::new(seat.member, pull, at.level.state.rest.largest()))
        },
        |_, most| Phrase::new("pulled with ").with(Amount::Force(most.demand)).and(" at most"),
    )?;
    let shown = matches!(check.demand, Amount::Force(pull) if pull >= SHOWN);
    let verdict = if shown && check.ratio > PULLED { Verdict::Watch } else { Verdict::Fine };
    Some(Check { verdict, ..check })
}
