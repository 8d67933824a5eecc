//! Dimensions after ISO 129-1: filled heads, the figure above its line, vertical ones read from the right.
use super::arrow::dimension_head;
use super::frame::Area;
use super::lettering::{Lettering, text};
use super::mark::{Anchor, Mark, Shape};
use super::outline::{tidy, write};
use super::scale::{Screen, crisp};

/// Below this length the heads stand outside and point inwards, px.
const HEADS_OUTSIDE: f64 = 40.0;
/// Length of the line outside a head, px.
const TAIL: f64 = 16.0;
/// From the line to the base line of the figure, px.
const ABOVE_LINE: f64 = 4.0;
/// Half the strip along a line that other lettering keeps off, px; its own figure stands just beside.
const THIN: f64 = 0.3;
/// Extension lines begin this far from the part and pass the dimension line by so much, px.
pub(super) const OFF_PART: f64 = 4.0;
pub(super) const PAST_LINE: f64 = 6.0;

/// A dimension: its words and its number, and whether it moves with the deck.
#[derive(Clone, Copy)]
pub(super) struct Dimension<'a> {
    /// The word before the number.
    pub(super) word: &'a str,
    /// The number without its unit.
    pub(super) number: &'a str,
    /// Whether it is part of the live layer.
    pub(super) live: bool,
    /// Whether the number must stand, come what may.
    pub(super) always: bool,
    /// Whether word and number may stand beneath a level line that is too short for them.
    pub(super) words_below: bool,
}

impl Dimension<'_> {
    fn both(&self) -> String {
        format!("{} {}", self.word, self.number)
    }

    const fn classes(&self) -> [&'static str; 3] {
        if self.live { ["dl live", "ah live", "dt live halo"] } else { ["dl", "ah", "dt halo"] }
    }

    /// The line, both heads and the figure of a vertical dimension at `x`.
    pub(super) fn vertical(&self, lettering: &mut Lettering<'_>, x: f64, ends: [f64; 2]) -> Vec<Mark> {
        let x = crisp(x);
        let (top, bottom) = (ends[0].min(ends[1]), ends[0].max(ends[1]));
        let span = bottom - top;
        let at = |y: f64| Screen::new(x - ABOVE_LINE, y);
        let form = |words: &str, y: f64, anchor: Anchor| upright(self.classes()[2], at(y), anchor, words);
        let fits = |words: &str, room: f64| lettering.width(self.classes()[2], words) <= room;
        let middle = top + span / 2.0;
        let outside = top - if span < HEADS_OUTSIDE { TAIL + 2.0 } else { 4.0 };
        let both = self.both();
        let mut forms = Vec::new();
        for words in [both.as_str(), self.number] {
            if fits(words, span - 8.0) {
                forms.extend([0.0, -0.2, 0.2].map(|shift| {
                    form(words, middle + shift * (span - 8.0 - lettering.width("dt", words)), Anchor::Middle)
                }));
            }
        }
        for words in [both.as_str(), self.number] {
            forms.push(form(words, outside, Anchor::Start));
        }
        let figure = lettering.place(forms);
        let figure = self.stand(lettering, figure, form(self.number, middle, Anchor::Middle));
        lettering.keep(Area::between([x - THIN, x + THIN], [top, bottom]));
        self.assemble(Screen::new(x, top), Screen::new(x, bottom), figure)
    }

    /// The line, both heads and the figure of a level dimension at `y`.
    pub(super) fn level(&self, lettering: &mut Lettering<'_>, y: f64, ends: [f64; 2]) -> Vec<Mark> {
        let y = crisp(y);
        let (left, right) = (ends[0].min(ends[1]), ends[0].max(ends[1]));
        let span = right - left;
        let class = self.classes()[2];
        let outside = if span < HEADS_OUTSIDE { TAIL + 4.0 } else { 4.0 };
        let both = self.both();
        let mut forms = Vec::new();
        let middle = left + span / 2.0;
        for words in [both.as_str(), self.number] {
            let above = text(class, Screen::new(middle, y - ABOVE_LINE), Anchor::Middle, words);
            if lettering.width(class, words) <= span - 4.0 {
                forms.push(above.clone());
            }
            if self.words_below {
                forms.push(text(class, Screen::new(middle, y + 16.0), Anchor::Middle, words));
            }
            if words == self.number {
                forms.push(above);
                forms.push(text(class, Screen::new(right + outside, y + 4.0), Anchor::Start, words));
                forms.push(text(class, Screen::new(left - outside, y + 4.0), Anchor::End, words));
            }
        }
        let figure = lettering.place(forms);
        self.assemble(Screen::new(left, y), Screen::new(right, y), figure)
    }

    /// The marks of a dimension that is not drawn.
    pub(super) fn nothing(&self) -> Vec<Mark> {
        let [line, heads, figure] = self.classes();
        let none = |class| Mark::path(class, String::new());
        vec![none(line), none(heads), text(figure, Screen::default(), Anchor::Start, "")]
    }

    /// Sets the last form whatever it meets when the number must stand and nothing had room.
    fn stand(&self, lettering: &mut Lettering<'_>, figure: Mark, last: Mark) -> Mark {
        if figure.is_left_out() && self.always { lettering.set(last) } else { figure }
    }

    /// Line, heads and figure; without room for the figure all of it goes.
    fn assemble(&self, from: Screen, to: Screen, figure: Mark) -> Vec<Mark> {
        let [line, heads, _] = self.classes();
        let silent = figure.is_left_out();
        let span = to.vector() - from.vector();
        let length = span.length();
        let (mut shaft, mut points) = (String::new(), String::new());
        if !silent && length.is_finite() && length > 0.0 {
            let along = span / length;
            let outside = length < HEADS_OUTSIDE;
            let tail = if outside { TAIL } else { 0.0 };
            let (a, b) =
                (Screen::from(from.vector() - tail * along), Screen::from(to.vector() + tail * along));
            write(&mut shaft, format_args!("M{} {}L{} {}", tidy(a.x), tidy(a.y), tidy(b.x), tidy(b.y)));
            points = if outside {
                dimension_head(a, from) + &dimension_head(b, to)
            } else {
                dimension_head(to, from) + &dimension_head(from, to)
            };
        }
        vec![Mark::path(line, shaft), Mark::path(heads, points), figure]
    }
}

/// A text that is read from the right.
pub(super) fn upright(class: &'static str, at: Screen, anchor: Anchor, words: &str) -> Mark {
    Mark { class, shape: Shape::Text { at, anchor, upright: true, words: words.to_owned() } }
}

/// An extension line between two points, as a path so that it can be left out; snapped to the pixels.
pub(super) fn extension(from: Screen, to: Screen) -> Mark {
    let level = (from.y - to.y).abs() < (from.x - to.x).abs();
    let (from, to) = if level {
        (Screen::new(from.x, crisp(from.y)), Screen::new(to.x, crisp(from.y)))
    } else {
        (Screen::new(crisp(from.x), from.y), Screen::new(crisp(from.x), to.y))
    };
    let mut d = String::new();
    write(&mut d, format_args!("M{} {}L{} {}", tidy(from.x), tidy(from.y), tidy(to.x), tidy(to.y)));
    Mark::path("ext", d)
}
