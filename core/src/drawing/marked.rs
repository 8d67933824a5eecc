//! The part a reader came to see: its outline wide in the hue of what can be touched, the sign of its check, its name and ratio.
use super::elevation::Subject;
use super::lettering::{Lettering, text};
use super::mark::{Anchor, Mark};
use super::outline::{Bounds, Stroke};
use super::plan::Plan;
use super::scale::Screen;
use super::state;
use crate::checks::Check;
use crate::report::Grade;

/// From the part's edge to the middle of the sign, and from there to the words, px.
const OFF: f64 = 14.0;
const WORDS: f64 = 13.0;

/// The part of a check: outline, sign and words, always as many marks.
pub(super) fn part(
    lettering: &mut Lettering<'_>,
    plan: &Plan,
    subject: &Subject<'_>,
    check: &Check,
) -> Vec<Mark> {
    let strokes: Vec<Stroke> = subject
        .part(check.member)
        .into_iter()
        .map(|outline| Stroke { class: "part live", outline })
        .collect();
    let mut marks = plan.paint(&strokes);
    let words = format!("{} {}", check.title, check.ratio_words());
    let Some(bounds) = Bounds::around(&strokes) else { return marks };
    let upper = plan.scale.to_screen(bounds.most.into());
    let lower = plan.scale.to_screen(bounds.least.into());
    let middle = Screen::new((upper.x + lower.x) / 2.0, (upper.y + lower.y) / 2.0);
    let places = [
        (Screen::new(middle.x, upper.y - OFF), 1.0),
        (Screen::new(middle.x, upper.y - OFF), -1.0),
        (Screen::new(upper.x + OFF, middle.y), 1.0),
        (Screen::new(lower.x - OFF, middle.y), -1.0),
        (Screen::new(middle.x, lower.y + OFF), 1.0),
        (Screen::new(middle.x, lower.y + OFF), -1.0),
        (Screen::new(upper.x + OFF, upper.y - OFF), 1.0),
        (Screen::new(lower.x - OFF, upper.y - OFF), -1.0),
    ];
    let written = |(at, side): (Screen, f64)| {
        let anchor = if side > 0.0 { Anchor::Start } else { Anchor::End };
        text("b halo", at.by(side * WORDS, 4.0), anchor, &words)
    };
    let fits = |place: &&(Screen, f64)| {
        lettering.is_free(&state::around(place.0))
            && lettering.area(&written(**place)).is_some_and(|area| lettering.is_free(&area))
    };
    let (at, side) = *places.iter().find(fits).unwrap_or(&places[0]);
    lettering.keep(state::around(at));
    marks.extend(state::sign(Grade::of(check.verdict), Some(at), ""));
    marks.push(lettering.place([written((at, side))]));
    marks
}
