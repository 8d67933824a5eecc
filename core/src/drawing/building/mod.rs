//! Small figures of the build order: what comes in at a step is drawn wide, everything else narrow.
//!
//! Pieces lie flat before they are joined; frames are seen from above, the deck from below; from the casters on the table is seen from
//! the side, all of these figures at one scale.

mod above;
mod canvas;
mod flat;
mod side;

use super::cutting::Drawn;
use super::face::Measure;
use crate::quantity::System;
use crate::report::Report;
use crate::workshop::steps::{Step, Task};
use canvas::Canvas;

/// The figure of a step, no larger than this, px.
#[must_use]
pub fn figure(report: &Report, step: &Step, system: System, measure: Measure<'_>) -> Drawn {
    let mut canvas = Canvas::new(report, system, measure);
    match step.task {
        Task::Stock => flat::stock(&mut canvas),
        Task::Sawing => flat::sawn(&mut canvas),
        Task::Gluing => flat::layers(&mut canvas),
        Task::Shaping => flat::shaped(&mut canvas),
        Task::Drilling => flat::drilled(&mut canvas),
        Task::Bushings => flat::bushed(&mut canvas),
        Task::Ladders => above::ladder(&mut canvas),
        Task::Base => above::base(&mut canvas),
        Task::Axles => above::axle(&mut canvas),
        Task::Deck => above::deck(&mut canvas),
        Task::Rails | Task::Casters | Task::Scissors | Task::OntoBase => side::part(&mut canvas, step.task),
        Task::Screw | Task::DeckOn | Task::Props | Task::Proof => side::part(&mut canvas, step.task),
    }
    canvas.drawn()
}

/// What a figure shows, for those who cannot see it.
#[must_use]
pub const fn seen(task: Task) -> &'static str {
    match task {
        Task::Stock => "The sheet with the four places to measure at.",
        Task::Sawing => "A sawn piece with its number and an arrow along the grain.",
        Task::Gluing => "Sections of arm and rail with their layers apart.",
        Task::Shaping => "The arms with rounded ends, one of each kind.",
        Task::Drilling => "The arms with their holes, one of each kind, and the distance from pin to pin.",
        Task::Bushings => "The arms with a bushing in each pivot hole.",
        Task::Ladders => "Two arms of one name from above with the boards between them and both diagonals.",
        Task::Base => "The base frame from above with both diagonals.",
        Task::Rails => "The base from the side with wheel strip and end stops.",
        Task::Casters => "The base from the side on its casters.",
        Task::Axles => "The axle of the base wheels from above with the distance of the wheels.",
        Task::Deck => "The deck from below with its rails, their strips and both diagonals.",
        Task::Scissors => "The arms from the side, pinned together.",
        Task::OntoBase => "The scissors on the base, wheels under their keepers.",
        Task::Screw => "The screw with its crank, put into the table.",
        Task::DeckOn => "The deck on the scissors.",
        Task::Props => "The deck at its highest on its props.",
        Task::Proof => "The table at its lowest with the load on it.",
    }
}
