//! Lettering that finds its place: every text has a box, and no two boxes may meet.
use super::face::{Face, Measure};
use super::frame::Area;
use super::mark::{Anchor, Mark, Shape};
use super::scale::Screen;

/// How far lettering reaches above and below its base line, as parts of its size.
const ABOVE: f64 = 0.78;
const BELOW: f64 = 0.22;
/// Two boxes keep at least this far apart, px.
const APART: f64 = 1.0;

/// The face a class of the drawing language is set in.
#[must_use]
pub(super) fn face(class: &str) -> Face {
    let has = |name: &str| class.split(' ').any(|one| one == name);
    if has("th") || has("tagt") {
        Face::Head
    } else if has("mt") {
        Face::Number
    } else if has("q") {
        Face::Note
    } else if has("b") || has("live") {
        Face::Bold
    } else {
        Face::Plain
    }
}

impl Mark {
    /// The box of a text; none for other shapes and for words left out.
    #[must_use]
    pub fn lettering(&self, measure: Measure<'_>) -> Option<Area> {
        let Shape::Text { at, anchor, upright, words } = &self.shape else { return None };
        if words.is_empty() {
            return None;
        }
        let face = face(self.class);
        let width = measure(words, face);
        let (above, below) = (ABOVE * face.size(), BELOW * face.size());
        let before = anchor.share() * width;
        Some(if *upright {
            // Turned by a quarter: the text runs upwards, its upper side to the left.
            Area::between([at.x - above, at.x + below], [at.y + before, at.y + before - width])
        } else {
            Area::between([at.x - before, at.x - before + width], [at.y - above, at.y + below])
        })
    }

    /// The same text without its words: what stands in a layer for a text that has no room.
    pub(super) fn silent(mut self) -> Self {
        if let Shape::Text { words, .. } = &mut self.shape {
            words.clear();
        }
        self
    }
}

/// A text at a place.
pub(super) fn text(class: &'static str, at: Screen, anchor: Anchor, words: &str) -> Mark {
    Mark::text(class, at, anchor, words)
}

/// A line that lettering shuns is covered by boxes no longer than this, px.
const PIECE: f64 = 8.0;
/// A line is never cut into more pieces than this.
const PIECES: u32 = 200;

/// The boxes taken so far, and those that lettering keeps off where it has a choice.
#[derive(Clone)]
pub(super) struct Lettering<'a> {
    measure: Measure<'a>,
    paper: Area,
    taken: Vec<Area>,
    shunned: Vec<Area>,
}

impl<'a> Lettering<'a> {
    /// An empty sheet.
    pub(super) fn new(measure: Measure<'a>, paper: Area) -> Self {
        Self::with(measure, paper, &[])
    }

    /// A sheet on which some places are taken.
    pub(super) fn with(measure: Measure<'a>, paper: Area, taken: &[Area]) -> Self {
        Self { measure, paper, taken: taken.to_vec(), shunned: Vec::new() }
    }

    /// The boxes taken so far.
    pub(super) fn into_taken(self) -> Vec<Area> {
        self.taken
    }

    /// What it measures with.
    pub(super) fn measure(&self) -> Measure<'a> {
        self.measure
    }

    /// How wide words are, px.
    pub(super) fn width(&self, class: &str, words: &str) -> f64 {
        (self.measure)(words, face(class))
    }

    /// Keeps lettering out of an area.
    pub(super) fn keep(&mut self, area: Area) {
        self.taken.push(area);
    }

    /// Leads lettering off a straight line of a half width, px, where it has a choice.
    pub(super) fn shun(&mut self, from: Screen, to: Screen, half: f64) {
        let span = to.vector() - from.vector();
        // A level or upright line is one box.
        let slant = span.x.abs().min(span.y.abs());
        if !span.is_finite() {
            return;
        }
        let count = (1..PIECES).find(|count| f64::from(*count) * PIECE >= slant).unwrap_or(PIECES);
        let at = |piece: u32| from.vector() + f64::from(piece) / f64::from(count) * span;
        self.shunned.extend((0..count).map(|piece| {
            let (one, other) = (at(piece), at(piece + 1));
            Area::between([one.x, other.x], [one.y, other.y]).grown(half)
        }));
    }

    fn crosses(&self, area: &Area) -> bool {
        self.shunned.iter().any(|line| line.meets(area))
    }

    fn fits(&self, area: &Area) -> bool {
        let wanted = area.grown(APART);
        self.paper.holds(area) && !self.taken.iter().any(|taken| taken.meets(&wanted))
    }

    /// The box a text would take.
    pub(super) fn area(&self, mark: &Mark) -> Option<Area> {
        mark.lettering(self.measure)
    }

    /// Whether an area is still free.
    pub(super) fn is_free(&self, area: &Area) -> bool {
        self.fits(area)
    }

    /// Whether a text there meets nothing and crosses no shunned line; so does one without words.
    pub(super) fn is_clear(&self, mark: &Mark) -> bool {
        self.area(mark).is_none_or(|area| self.fits(&area) && !self.crosses(&area))
    }

    /// Sets a text where it stands, whatever is there already.
    pub(super) fn set(&mut self, mark: Mark) -> Mark {
        if let Some(area) = mark.lettering(self.measure) {
            self.taken.push(area);
        }
        mark
    }

    /// Sets the first of several forms of a text that meets nothing, if there is one that crosses no shunned line either; the first
    /// without words when all meet something.
    pub(super) fn place(&mut self, forms: impl IntoIterator<Item = Mark>) -> Mark {
        let (mut first, mut crossing) = (None, None);
        for mark in forms {
            match mark.lettering(self.measure) {
                Some(area) if self.fits(&area) => {
                    if !self.crosses(&area) {
                        self.taken.push(area);
                        return mark;
                    }
                    crossing.get_or_insert(mark);
                }
                _ => {
                    first.get_or_insert(mark);
                }
            }
        }
        match (crossing, first) {
            (Some(mark), _) => self.set(mark),
            (None, Some(mark)) => mark.silent(),
            (None, None) => Mark::text("", Screen::default(), Anchor::Start, ""),
        }
    }

    /// The longest beginning of a text that is no wider than `room`, with an ellipsis where it is cut.
    pub(super) fn shortened(&self, class: &str, words: &str, room: f64) -> String {
        if self.width(class, words) <= room {
            return words.to_owned();
        }
        let signs: Vec<char> = words.chars().collect();
        (0..signs.len())
            .rev()
            .map(|kept| signs[..kept].iter().collect::<String>().trim_end().to_owned() + "…")
            .find(|short| self.width(class, short) <= room)
            .unwrap_or_default()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::drawing::face::widths;

    #[test]
    fn a_text_gives_way_to_one_that_stands() {
        let paper = Area { x: 0.0, y: 0.0, width: 200.0, height: 60.0 };
        let mut lettering = Lettering::new(&widths, paper);
        lettering.set(text("s", Screen::new(20.0, 30.0), Anchor::Start, "first"));
        let forms = [Screen::new(24.0, 32.0), Screen::new(24.0, 50.0)]
            .map(|at| text("s", at, Anchor::Start, "second"));
        let Shape::Text { at, words, .. } = lettering.place(forms.clone()).shape else { unreachable!() };
        assert_eq!((at.y, words.as_str()), (50.0, "second"));
        // Both places are taken now: the words go.
        let Shape::Text { words, .. } = lettering.place(forms).shape else { unreachable!() };
        assert!(words.is_empty());
    }

    #[test]
    fn a_text_keeps_off_a_line_where_it_has_a_choice() {
        let paper = Area { x: 0.0, y: 0.0, width: 200.0, height: 60.0 };
        let mut lettering = Lettering::new(&widths, paper);
        lettering.shun(Screen::new(0.0, 0.0), Screen::new(60.0, 60.0), 1.0);
        let place = |x: f64| text("s", Screen::new(x, 30.0), Anchor::Start, "word");
        let Shape::Text { at, .. } = lettering.place([place(20.0), place(60.0)]).shape else {
            unreachable!()
        };
        assert!((at.x - 60.0).abs() < 1e-9);
        // The box around the slanting line is not taken, only the line.
        let Shape::Text { at, .. } = lettering.place([place(0.0)]).shape else { unreachable!() };
        assert!(at.x.abs() < 1e-9);
        let Shape::Text { words, .. } = lettering.place([place(30.0)]).shape else { unreachable!() };
        assert_eq!(words, "word", "better across a line than not at all");
    }

    #[test]
    fn long_words_are_cut_to_the_room() {
        let lettering = Lettering::new(&widths, Area::default());
        let long = "A table for the printing room upstairs";
        let short = lettering.shortened("b", long, 90.0);
        assert!(short.ends_with('…') && lettering.width("b", &short) <= 90.0);
        assert_eq!(lettering.shortened("b", "Table", 90.0), "Table");
    }
}
