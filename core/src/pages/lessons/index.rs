//! The lessons, to choose from.
use crate::pages::document::{Act, Block, Text};
use crate::pages::{Document, Page, Reader};
use crate::share::address::View;
use crate::share::lesson::Lesson;

/// The page.
pub(in crate::pages) struct Index;

impl Page for Index {
    fn document(&self, _: &Reader) -> Document {
        let steps = Lesson::ALL.into_iter().map(|lesson| {
            let open = Act::View { words: lesson.title().into(), view: lesson.word() };
            vec![Block::Text(Text::default().act(open).words(" ").words(line(lesson)))]
        });
        Document {
            title: View::Lessons.title().into(),
            blocks: vec![
                Block::text(
                    "Ten things about lifting tables, ten minutes each. You guess first, then move the deck and see, then say why. \
                     Each has a table of its own; your design stays as it is.",
                ),
                Block::Group("lessons", vec![Block::Steps(steps.collect())]),
            ],
        }
    }
}

const fn line(lesson: Lesson) -> &'static str {
    match lesson {
        Lesson::Bottom => "The load stays the same all the way up. Does the screw’s force?",
        Lesson::Place => "Move the load along the deck: what does the screw feel?",
        Lesson::Stages => "Half as long, just as high. What does it cost?",
        Lesson::Holding => "A screw that cannot run back, and where the work goes.",
        Lesson::Sideways => "A stout table, pressed down and pushed from the side.",
        Lesson::Play => "A fifth of a millimetre in every hole.",
        Lesson::Overhang => "The wheels run inwards as the deck goes up.",
        Lesson::Drilling => "Every hole a little off its mark.",
        Lesson::Cures => "A stiffer bar, a pair of straps: which helps what?",
        Lesson::Tall => "How much can stand up there before it leans over?",
    }
}
