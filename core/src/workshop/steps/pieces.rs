//! Making the pieces: from the sheet to arms with their bushings.
use super::{Bench, DIAGONALS, Step, Task, say, size, step};
use crate::parts::{Form, Part, arm_thickness, frame_thickness};
use crate::quantity::{Amount, Length, Phrase};
use crate::workshop::sheets::{Job, jobs};

/// How far the sheet's real thickness may lie from the one entered before joints are loose or do not go together (common practice, no source).
const THICKNESS: f64 = 0.3e-3;

impl Bench<'_> {
    pub(super) fn stock(&self) -> Step {
        let thick = self.design.arms.thickness;
        step(
            Task::Stock,
            "Measure the sheet",
            Vec::new(),
            vec![say(
                "Measure the sheet’s thickness with a caliper in the middle of its four edges, and enter the mean in the program, as “Thickness, measured” under Arms, before anything is cut.",
            )],
            vec![
                say("Thickness within ")
                    .with(Amount::Give(THICKNESS))
                    .and(" of ")
                    .with(size(thick))
                    .and("; else every recess and every bolt changes."),
            ],
        )
    }

    pub(super) fn sawing(&self) -> Step {
        let jobs: Vec<Job> = jobs(self.design, self.parts);
        let pieces: usize = jobs.iter().map(|job| job.pieces.len()).sum();
        let area: f64 = jobs.iter().map(Job::area).sum();
        step(
            Task::Sawing,
            "Cut the pieces",
            Vec::new(),
            vec![
                say(format!("Cut {pieces} pieces, "))
                    .with(Amount::Area(area))
                    .and(" in all, in the order of the sheet layout, the saw’s kerf at ")
                    .with(size(self.design.shop.kerf))
                    .and("."),
                say("Write its number on every piece, and an arrow along the grain."),
            ],
            vec![
                say(format!("{pieces} pieces on the bench, arms of one length all equal within "))
                    .with(Amount::Within(DIAGONALS))
                    .and("."),
            ],
        )
    }

    pub(super) fn gluing(&self) -> Step {
        let layered: Vec<&Part> =
            self.parts.iter().filter(|part| part.form == Form::Sheet && part.layers > 1).collect();
        if layered.is_empty() {
            return step(
                Task::Gluing,
                "Look at the pieces",
                Vec::new(),
                vec![say(
                    "Nothing is glued from layers. Hold every piece against a straightedge and put the bowed ones aside.",
                )],
                vec![say("No light under a straightedge along any arm.")],
            );
        }
        let count: u32 = layered.iter().map(|part| part.count).sum();
        let mut each: Vec<u32> = layered.iter().map(|part| part.layers).collect();
        each.sort_unstable();
        each.dedup();
        let lists: Vec<String> = each
            .into_iter()
            .map(|layers| {
                let mut kinds: Vec<(String, u32)> = Vec::new();
                for part in layered.iter().filter(|part| part.layers == layers) {
                    let title = part.title();
                    match kinds.iter_mut().find(|(known, _)| *known == title) {
                        Some((_, count)) => *count += part.count,
                        None => kinds.push((title, part.count)),
                    }
                }
                let list: Vec<String> =
                    kinds.iter().map(|(title, count)| format!("{title} ×\u{A0}{count}")).collect();
                format!("{layers} layers each for {}", list.join(", "))
            })
            .collect();
        step(
            Task::Gluing,
            "Glue up the layers",
            Vec::new(),
            vec![
                say(format!("Glue {count} pieces from their layers: {}.", lists.join("; "))),
                say(
                    "Datum edges flush, clamped on a flat bed between two straight cauls; leave them overnight before they are drilled.",
                ),
            ],
            vec![
                say("Arms ")
                    .with(size(arm_thickness(self.design)))
                    .and(" thick, frames ")
                    .with(size(frame_thickness(self.design)))
                    .and(", no light under a straightedge along any arm."),
            ],
        )
    }

    pub(super) fn shaping(&self) -> Step {
        let arms = &self.design.arms;
        step(
            Task::Shaping,
            "Trim the arms and round their ends",
            self.named(&["Arm A", "Arm B"]),
            vec![
                say("Take the glue off and bring all arms to one width at one fence setting: ")
                    .with(size(arms.width))
                    .and(", or as little less as cleans every edge."),
                say("Round their ends to ")
                    .with(size(arms.end.min(Length::from_steps(arms.width.steps() / 2))))
                    .and(" radius: the corners would sweep into base and deck."),
            ],
            vec![say("All arms side by side on edge: no step to be felt.")],
        )
    }

    pub(super) fn drilling(&self) -> Step {
        step(
            Task::Drilling,
            "Drill the arms",
            self.named(&["Drill guide"]),
            vec![
                say(
                    "Drill the pivot holes in the order of the drilling sheet: pinned at the centre, in pairs, turned end for end.",
                ),
                say("All other holes and recesses by the hole table, from the datum end and edge."),
                say(
                    "The drill guide is for holes made by hand: bore it square on a press and clamp it over the mark, as the order of work under Drilling says.",
                ),
            ],
            vec![
                say(
                    "Dry fit: all arms of one length stacked on three bolts go together by hand, in every order, and turned end for end.",
                ),
                say("Pin to pin ").with(size(self.design.lift.arm_length)).and(" on every arm."),
            ],
        )
    }

    pub(super) fn bushings(&self) -> Step {
        let count = self.count("Bushing") + self.count("Axle bushing");
        if count == 0 {
            return step(
                Task::Bushings,
                "Seal the holes",
                Vec::new(),
                vec![say(
                    "Soak the bores with thin epoxy and ream them when it is hard: the bolts turn in the wood itself.",
                )],
                vec![say("Every bolt turns by hand and does not rattle.")],
            );
        }
        let play: Phrase = say("Every bolt turns in its bushing by hand; its play is about ")
            .with(Amount::Give(self.design.running.clearance.to_m()))
            .and(".");
        step(
            Task::Bushings,
            "Press in the bushings",
            self.named(&["Bushing", "Axle bushing"]),
            vec![
                say(format!("Cut {count} bushings from tube, ")).with(size(arm_thickness(self.design))).and(
                    " long, square and free of burrs, and press them in with a film of epoxy, flush on both faces.",
                ),
            ],
            vec![play],
        )
    }
}
