//! Putting it together, and the tests of the whole.
use super::{Bench, CROSS_BARS, Step, Task, from_pivots, is_deck_first, on_base, on_deck, say, size, step};
use crate::design::{DriveKind, StrutEnd};
use crate::mechanics::{Detail, Fault};
use crate::parts::{CLEAT_SCREWS, CLEATS, Part, has_tube};
use crate::quantity::{Amount, Length, Phrase};

/// Test load as a share of the load (common practice for lifting gear, no source).
const PROOF: f64 = 1.25;

/// How much out of level is looked for, as a slope: a two-metre level shows it (common practice, no source).
const LEVEL: f64 = 0.002;

/// Pivots with what goes on them.
const PIVOTS: [&str; 5] = ["Pivot bolt", "Pivot nut", "Pivot washer", "Spacer washer", "Plastic disc"];

/// What a bearing tube lies across.
const BASE_BEAMS: &str = "base beams";
const DECK_RAILS: &str = "deck rails";

/// What holds the wheels down.
const KEEPERS: [&str; 2] = ["Keeper", "Keeper screw"];

fn pivot_or_keeper(part: &Part) -> bool {
    PIVOTS.contains(&part.name) || KEEPERS.contains(&part.name)
}

impl Bench<'_> {
    pub(super) fn scissors(&self) -> Step {
        let stages = self.design.lift.stages.get();
        let order = if stages == 1 {
            "On its side on the floor: join the two ladders at their centres, grease in every bushing."
                .to_owned()
        } else {
            format!(
                "On its side on the floor: join the ladders of each of the {stages} stages at their centres, then stage to stage, grease in every bushing."
            )
        };
        Step {
            caution: "From here on arms can close on fingers: two people, and a block between the arms whenever hands are near.",
            ..step(
                Task::Scissors,
                "Put the scissors together",
                self.fitted(|part| PIVOTS.contains(&part.name) && !on_base(part) && !on_deck(part)),
                vec![
                    say(order),
                    say(
                        "Run up each locking nut until the joint is free of play along the bolt and still falls by its own weight.",
                    ),
                ],
                vec![say(
                    "Dry fit: opened and folded by hand over the whole lift, nothing rubs but the washers.",
                )],
            )
        }
    }

    pub(super) fn onto_base(&self) -> Step {
        let running = &self.design.running;
        step(
            Task::OntoBase,
            "Scissors onto the base",
            self.fitted(|part| pivot_or_keeper(part) && on_base(part)),
            vec![say(
                "Bolt the lower arms A to the base pivots, set the base wheels on their strips, and screw the keepers over them, a spacer tube on every screw.",
            )],
            vec![
                say("Slack under the keepers ")
                    .with(Amount::Slack(running.rail_gap.to_m()))
                    .and(" all along."),
                say("The carriage rolls from stop to stop with one hand."),
            ],
        )
    }

    pub(super) fn screw(&self) -> Result<Step, Fault> {
        let drive = &self.design.drive;
        let length = |deck: Length| -> Result<f64, Fault> {
            let pose = self.solver.pose_at_height(deck.to_m())?;
            Ok(self.solver.state(&pose, Detail::FORCES)?.screw_length)
        };
        let travel = (length(self.design.lift.highest)? - length(self.design.lift.lowest)?).abs();
        let turns = travel / drive.lead.to_m();
        let across = |rails: &str, place: Length| {
            say(format!("Bearing tube across the {rails}, its middle "))
                .then(from_pivots(place))
                .and(", a bolt at either end through tube and wood behind it.")
        };
        let at_end = |end: StrutEnd, place: Length| match end {
            StrutEnd::Base => Some(across(BASE_BEAMS, place)),
            StrutEnd::Deck => Some(across(DECK_RAILS, place)),
            _ => None,
        };
        let hung = || say("Hang the screw between its two points, on pins and seats of your own.");
        let mut work: Vec<Phrase> = match drive.kind {
            DriveKind::BaseCarriage => vec![across(BASE_BEAMS, drive.bearing_place)],
            DriveKind::TopCarriage => vec![across(DECK_RAILS, drive.bearing_place)],
            DriveKind::SidePivots => vec![hung()],
            DriveKind::Strut => [at_end(drive.foot, drive.foot_x), at_end(drive.head, drive.head_x)]
                .into_iter()
                .flatten()
                .chain([hung()])
                .collect(),
        };
        let hangs = !has_tube(self.design);
        if hangs && self.count("Cross-bar") > 0 {
            work.insert(
                0,
                say("Drive the plugs into the ends of the cross-bars, each held by a spring pin from the side."),
            );
        }
        let pushed = if hangs {
            "to which the load pushes the first"
        } else {
            "to which the load pushes the first, away from the fixed pivots"
        };
        let second = say(format!(
            "Recommended, on the hardware list but in no figure here: a second nut on the same screw, on the side {pushed}, one turn off it. Two longer bolts of the first one’s flange keep it from turning and let it slide. It carries nothing until the first one strips; if the gap closes, the first is worn. It needs "
        ))
        .with(size(drive.nut_length + drive.lead))
        .and(" of screw behind the first at both stops.");
        let parts = self.fitted(|part| {
            part.name.starts_with("Nut")
                || hangs && CROSS_BARS.contains(&part.name)
                || ["Screw", "Bearing tube", "Thrust bearing", "Screw collar", "Crank"].contains(&part.name)
        });
        work.extend([
            say("Push the crank on the screw’s end and drill both together for its pin."),
            say(
                "Let nut and bearing find their line before their bolts are tight: turn the screw through its whole travel, then tighten.",
            ),
            second,
        ]);
        Ok(Step {
            caution: "A nut that strips drops the table, unless a second one catches it.",
            ..step(
                Task::Screw,
                "Screw, nut and crank",
                parts,
                work,
                vec![
                    say("From stop to stop ")
                        .with(Amount::Turns(turns))
                        .and(", ")
                        .with(Amount::Ruled(travel))
                        .and(" of travel, the crank as light at the end as at the beginning."),
                ],
            )
        })
    }

    pub(super) fn deck_on(&self) -> Step {
        let mut work = vec![say(
            "Bolt the deck’s pivots to the upper arms B, set its rails on the deck wheels, and screw the keepers beneath them, a spacer tube on every screw.",
        )];
        let mut tests = vec![
            say("Slack over the keepers ")
                .with(Amount::Slack(self.design.running.rail_gap.to_m()))
                .and(" all along."),
        ];
        let mut caution = "";
        if is_deck_first(self.design) {
            work.insert(0, say("Fold the scissors down on blocks."));
            tests.push(say("The deck wheels roll from end to end of their rails with one hand on the deck."));
            caution = "There is no screw yet: nothing but the blocks holds arms and deck.";
        }
        let parts = self.fitted(|part| pivot_or_keeper(part) && on_deck(part));
        Step { caution, ..step(Task::DeckOn, "Deck onto the scissors", parts, work, tests) }
    }

    /// How high and how level the deck stands at both ends of its lift, once both it and the screw are in.
    pub(super) fn levels(&self) -> Result<[Phrase; 2], Fault> {
        let lift = &self.design.lift;
        let level = |name: &str, deck: Length| {
            let tilt = self.solver.pose_at_height(deck.to_m())?.phi;
            Ok(say(format!("At the {name} deck: "))
                .with(size(deck))
                .and(" above the floor at the fixed pivots, ")
                .then(if tilt.abs() < LEVEL {
                    say("level both ways within 1 in 500.")
                } else {
                    say(if tilt > 0.0 { "rising by " } else { "falling by " })
                        .with(Amount::Angle(tilt.abs()))
                        .and(" towards the wheels, level across.")
                }))
        };
        Ok([level("lowest", lift.lowest)?, level("highest", lift.highest)?])
    }

    pub(super) fn props(&self) -> Step {
        let length =
            self.parts.iter().find(|part| part.name == "Prop").map_or(Length::ZERO, |part| part.size[0]);
        Step {
            caution: "Never reach in or lie beneath a raised table that stands on its screw alone.",
            ..step(
                Task::Props,
                "Props",
                self.named(&["Prop"]),
                vec![
                    say(format!("Cut {} props ", self.count("Prop"))).with(size(length)).and(format!(" long. {CLEATS} cleats each, of offcuts of the sheet, {CLEAT_SCREWS} screws a cleat, keep their ends on beam and rail from both sides. Raise the deck fully, set them, and lower until they carry.")),
                ],
                vec![say("Both props carry, neither can be knocked out by hand.")],
            )
        }
    }

    pub(super) fn proof(&self) -> Result<Step, Fault> {
        let (design, lift) = (self.design, &self.design.lift);
        let pose = self.solver.pose_at_height(lift.lowest.to_m())?;
        let state = self.solver.state(&pose, Detail { deflection: true, ..Detail::FORCES })?;
        let sag = state.deflection.map_or(0.0, |deflection| deflection.drop.total());
        let released = if self.solver.mechanism().screw.as_ref().is_none_or(|screw| screw.is_self_locking()) {
            say("Released, the crank stays where it is.")
        } else {
            say("The screw does not hold by itself: what holds the crank in its place must not slip.")
        };
        let load = Amount::Mass(PROOF * design.load.mass.to_kg());
        Ok(Step {
            caution: "Stand clear of the table’s ends and keep hands off the deck. Never lift people. Chock the casters.",
            ..step(
                Task::Proof,
                "Load test, low down",
                Vec::new(),
                vec![
                    say("At the lowest deck, load 125 %: ")
                        .with(load)
                        .and(", its middle ")
                        .then(from_pivots(design.load.centre))
                        .and(". Leave it for ten minutes."),
                    say(
                        "Then raise by a quarter of the lift and lower again, listening. Take the load off before anything is touched.",
                    ),
                ],
                vec![
                    say("The deck sinks by about ")
                        .with(Amount::Give(PROOF * sag))
                        .and(" and comes back when unloaded."),
                    say("No crack is heard or seen, no bolt has moved, and the crank turns as before."),
                    released,
                ],
            )
        })
    }
}
