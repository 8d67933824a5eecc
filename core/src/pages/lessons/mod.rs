//! Lessons: one thing about lifting tables each, to guess, to see and to explain. Each has designs of its own and knows nothing of the
//! reader's.
mod bottom;
mod cures;
mod drilling;
mod holding;
mod index;
mod lesson;
mod overhang;
mod paper;
mod picture;
mod place;
mod plan;
mod play;
mod plot;
mod sideways;
mod stages;
mod studied;
mod table;
mod tall;
mod told;

pub use studied::{Studied, study};

pub(super) use index::Index;

use super::Page;
use crate::share::lesson::Lesson;
use plan::Plan;

/// The page of a lesson.
pub(super) fn page(lesson: Lesson) -> Box<dyn Page> {
    Box::new(lesson::Taught::new(plan(lesson)))
}

const fn plan(lesson: Lesson) -> &'static Plan {
    match lesson {
        Lesson::Bottom => &bottom::PLAN,
        Lesson::Place => &place::PLAN,
        Lesson::Stages => &stages::PLAN,
        Lesson::Holding => &holding::PLAN,
        Lesson::Sideways => &sideways::PLAN,
        Lesson::Play => &play::PLAN,
        Lesson::Overhang => &overhang::PLAN,
        Lesson::Drilling => &drilling::PLAN,
        Lesson::Cures => &cures::PLAN,
        Lesson::Tall => &tall::PLAN,
    }
}
