//! Running dimensions (ISO 129-1): one origin, one line, an arrowhead at each place and its distance beside it.
use super::spread::spread;
use crate::drawing::arrow::dimension_head;
use crate::drawing::dimension::upright;
use crate::drawing::lettering::{Lettering, text};
use crate::drawing::mark::{Anchor, Mark};
use crate::drawing::outline::{tidy, write};
use crate::drawing::scale::{Screen, crisp};

/// From the dimension line to where its figures begin, px; a bent leader lies between.
pub(super) const LEADER: f64 = 16.0;
/// From one base line of figures to the next, px.
const GAP: f64 = 13.5;
/// Radius of the circle at the origin, px.
const ORIGIN: f64 = 3.0;
/// Extension lines begin this far from the part, px.
const OFF_PART: f64 = 4.0;
/// From a base line up to the middle of its figures, px.
const MIDDLE: f64 = 4.0;

/// A row of running dimensions.
pub(super) struct Running<'a> {
    /// Where the line lies: below the part, or to its left.
    pub line: f64,
    /// Where extension lines begin: the part's edge.
    pub edge: f64,
    /// Where the origin lies along the line, and each place with its figure, in order away from it.
    pub origin: f64,
    pub places: &'a [(f64, String)],
    /// Figures keep between these.
    pub bounds: [f64; 2],
}

impl Running<'_> {
    /// Along the part: a level line beneath it, figures read from the right.
    pub(super) fn level(&self, lettering: &mut Lettering<'_>) -> Vec<Mark> {
        self.draw(lettering, Screen::new, |at, words| {
            upright("dt halo", at.by(MIDDLE, 0.0), Anchor::End, words)
        })
    }

    /// Across the part: an upright line at its left, figures level beside it.
    pub(super) fn rising(&self, lettering: &mut Lettering<'_>) -> Vec<Mark> {
        self.draw(
            lettering,
            |along, across| Screen::new(across, along),
            |at, words| text("dt halo", at.by(0.0, MIDDLE), Anchor::End, words),
        )
    }

    /// `point` takes a place along the line and one across it.
    fn draw(
        &self,
        lettering: &mut Lettering<'_>,
        point: impl Fn(f64, f64) -> Screen,
        figure: impl Fn(Screen, &str) -> Mark,
    ) -> Vec<Mark> {
        let line = crisp(self.line);
        let away = (line - self.edge).signum();
        let origin = crisp(self.origin);
        let mut all: Vec<(f64, &str)> = vec![(origin, "0")];
        all.extend(self.places.iter().map(|(place, words)| (crisp(*place), words.as_str())));
        // In order along the paper.
        all.sort_by(|one, other| one.0.total_cmp(&other.0));
        let wanted: Vec<f64> = all.iter().map(|(place, _)| *place).collect();
        let stands = spread(&wanted, GAP, self.bounds);
        let (mut leaders, mut heads, mut figures) = (String::new(), String::new(), Vec::new());
        for ((place, words), stand) in all.iter().zip(stands) {
            let mut run = |points: [Screen; 2]| {
                let [a, b] = points;
                write(&mut leaders, format_args!("M{} {}L{} {}", tidy(a.x), tidy(a.y), tidy(b.x), tidy(b.y)));
            };
            run([point(*place, self.edge + away * OFF_PART), point(*place, line + away * 3.0)]);
            let placed = lettering.place([figure(point(stand, line + away * (LEADER + 2.0)), words)]);
            if !placed.is_left_out() {
                run([point(*place, line + away * 3.0), point(stand, line + away * LEADER)]);
            }
            figures.push(placed);
            let tip = point(*place, line);
            if (place - origin).abs() > ORIGIN {
                heads += &dimension_head(point(origin, line), tip);
            }
        }
        let far = all
            .iter()
            .map(|(place, _)| *place)
            .max_by(|one, other| (one - origin).abs().total_cmp(&(other - origin).abs()));
        let mut marks = vec![Mark::path("ext", leaders)];
        marks.push(Mark::line("dl", point(origin, line), point(far.unwrap_or(origin), line)));
        marks.push(Mark::path("ah", heads));
        marks.push(Mark::circle("origin", point(origin, line), ORIGIN));
        marks.extend(figures);
        marks
    }
}
