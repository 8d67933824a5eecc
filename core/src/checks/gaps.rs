//! Gaps that close on hands: how narrow they get, and what they can crush.
//!
//! Plain `f64` in SI. A scissor has places where two arms meet at every height; these gaps are those a hand may rest in.
use super::check::{Check, Group, Member, Rule, Use, Weight};
use super::level::Loaded;
use super::table::{Table, add};
use crate::catalogue::{Source, Standing};
use crate::mechanics::ArmId;
use crate::quantity::{Amount, Phrase};

/// A part of the body, and the least gap that does not crush it, m.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BodyPart {
    /// What it is called.
    pub name: &'static str,
    /// The least gap, m.
    pub gap: f64,
}

const fn body_part(name: &'static str, millimetres: f64) -> BodyPart {
    BodyPart { name, gap: millimetres / 1e3 }
}

/// Least gaps, the largest first (ISO 13854:2017, formerly EN 349, as given by AUVA).
pub const BODY: [BodyPart; 8] = [
    body_part("the body", 500.0),
    body_part("the head", 300.0),
    body_part("a leg", 180.0),
    body_part("a foot", 120.0),
    body_part("an arm", 120.0),
    body_part("a hand or fist", 100.0),
    body_part("toes", 50.0),
    body_part("a finger", 25.0),
];

const ISO_13854: Source = Source::new("ISO 13854:2017, table 1, as given by AUVA", Standing::SecondHand);

pub(super) fn checks(table: &Table<'_>, list: &mut Vec<Check>) {
    let gap = |id, title, member, size: &dyn Fn(&Loaded<'_>) -> Option<f64>| {
        closing(table, id, title, member, size)
    };
    let arms = Member::Arm(ArmId::a(1));
    add(
        list,
        [
            gap("gap-parallel", "Between arms of neighbouring stages", arms, &|at| parallel(table, at)),
            gap("gap-crossing", "Between crossing arms, halfway out", arms, &|at| Some(crossing(table, at))),
            gap("gap-base", "Between arms and base beams, in the middle", Member::BaseBeams, &|at| {
                Some(over_base(table, at))
            }),
            gap("gap-frames", "Between deck rails and base beams", Member::DeckRails, &|at| {
                Some(frames(table, at))
            }),
        ],
    );
}

/// Neighbouring arms that stay parallel lie L sin(theta) cos(theta) apart, middle to middle; none with a single stage.
fn parallel(table: &Table<'_>, at: &Loaded<'_>) -> Option<f64> {
    let pose = at.level.pose;
    let apart = |theta: &f64| pose.arm_length * libm::sin(*theta) * libm::cos(*theta);
    let least = pose.theta.iter().map(apart).fold(f64::INFINITY, f64::min);
    (pose.n > 1).then_some(least - table.design.arms.width.to_m())
}

/// Crossing arms seen from the side, upright, halfway from the centre pin to the ends.
fn crossing(table: &Table<'_>, at: &Loaded<'_>) -> f64 {
    let pose = at.level.pose;
    let apart = |theta: &f64| {
        pose.arm_length / 2.0 * libm::sin(*theta) - table.design.arms.width.to_m() / libm::cos(*theta)
    };
    pose.theta.iter().map(apart).fold(f64::INFINITY, f64::min)
}

/// Height of the top of the base beams over the floor, m.
fn beam_top(table: &Table<'_>) -> f64 {
    let (frames, running) = (&table.design.frames, &table.design.running);
    (running.caster_height + frames.beam_depth + frames.strip_thickness).to_m()
}

/// From the underside of the lowest crossing to the base beams.
fn over_base(table: &Table<'_>, at: &Loaded<'_>) -> f64 {
    let (pose, lift) = (at.level.pose, &table.design.lift);
    let centre = pose.joint(crate::mechanics::JointId::C(1)).y + lift.pin_line.to_m();
    let cosine = pose.theta.first().map_or(1.0, |theta| libm::cos(*theta));
    centre - table.design.arms.width.to_m() / (2.0 * cosine) - beam_top(table)
}

/// From the underside of the deck rails to the base beams.
fn frames(table: &Table<'_>, at: &Loaded<'_>) -> f64 {
    let frames = &table.design.frames;
    at.deck()
        - (frames.deck_thickness + frames.deck_rail_depth + frames.strip_thickness).to_m()
        - beam_top(table)
}

/// The largest part of the body that fits in where the gap is widest; the smallest of all where none does.
fn crushed(widest: f64) -> BodyPart {
    BODY.into_iter().find(|part| part.gap <= widest).unwrap_or(BODY[BODY.len() - 1])
}

fn closing(
    table: &Table<'_>,
    id: &'static str,
    title: &'static str,
    member: Member,
    size: &dyn Fn(&Loaded<'_>) -> Option<f64>,
) -> Option<Check> {
    let widest = table.levels.iter().filter_map(size).fold(f64::NEG_INFINITY, f64::max);
    let part = crushed(widest);
    let rule = Rule {
        id,
        group: Group::Gaps,
        title,
        weight: Weight::Advice,
        formula: "least gap over the lift ≥ gap of the largest part of the body that fits in at its widest",
        source: ISO_13854,
        unit: Amount::Size,
        levers: &[],
    };
    rule.check(
        table.levels,
        |at| Some(Use::new(member, part.gap, size(at)?.max(0.0))),
        |_, most| {
            Phrase::new("opens to ")
                .with(Amount::Size(widest))
                .and(", closes to ")
                .with(Amount::Size(most.capacity))
                .and(format!("; least gap for {}: ", part.name))
                .with(Amount::Size(part.gap))
        },
    )
}
