//! A bar to check the printer by.
use super::{PAPER, text};
use crate::drawing::mark::{Anchor, Mark};
use crate::drawing::scale::Screen;
use crate::quantity::System;

/// A bar of a known length with its ticks, and what to do with it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Ruler {
    /// What to do with it.
    pub words: &'static str,
    /// Its marks as the inside of an SVG element.
    pub marks: String,
}

/// Left of the bar, for half of its first figure, and its thickness, px.
const LEFT: f64 = 6.0;
const THICK: f64 = 10.0;
const FIGURES: f64 = 23.0;

impl Ruler {
    /// Width and height of the picture, px: one for both systems.
    pub const SIZE: (f64, f64) = (404.0, 27.0);

    /// 100 mm in ten parts, or 4 in in eight.
    #[must_use]
    pub fn new(system: System) -> Self {
        let (words, parts, part, every) = match system {
            System::Metric => {
                ("This bar is 100\u{A0}mm long on paper; if not, print at 100\u{A0}%.", 10_u8, 10.0, 1_u8)
            }
            System::Inch => ("This bar is 4\u{A0}in long on paper; if not, print at 100\u{A0}%.", 8, 12.7, 2),
        };
        let step = part * PAPER;
        let mut marks = Vec::new();
        for index in 0..parts {
            let at = Screen::new(
                LEFT + f64::from(index) * step,
                if index % 2 == 0 { 0.5 } else { 0.5 + THICK / 2.0 },
            );
            marks.push(Mark::rect("pb", at, step, THICK / 2.0));
        }
        marks.push(Mark::rect("n none bar", Screen::new(LEFT, 0.5), f64::from(parts) * step, THICK));
        for index in (0..=parts).step_by(usize::from(every)) {
            let figure = match system {
                System::Metric => u16::from(index) * 10,
                System::Inch => u16::from(index / every),
            };
            let at = Screen::new(LEFT + f64::from(index) * step, FIGURES);
            let anchor = if index == parts { Anchor::End } else { Anchor::Middle };
            let at = if index == parts { at.by(LEFT, 0.0) } else { at };
            marks.push(Mark::text("s", at, anchor, figure.to_string()));
        }
        Self { words, marks: text(&marks) }
    }
}
