//! The table of a lesson beside its plot, at one level.
use super::lesson::{Answers, Beat};
use super::plan::Plan;
use super::plot::{HANDLES, Plot, handle_height, sampled};
use super::studied::Studied;
use crate::drawing::{Grip, Placed, Screen, View, placed, write as put};
use crate::pages::{Live, Sketch};
use crate::quantity::{Amount, System};
use std::rc::Rc;

/// Around the picture, and between its halves, px.
const EDGE: f64 = 12.0;
const GAP: f64 = 44.0;
/// Room for the heights beside the plot, px, and the least width of a picture that has them.
const HEIGHTS: f64 = 36.0;
const WIDE: f64 = 480.0;
/// Over the highest deck for what stands on it and the plot's name, and below the floor for the hatching, px.
const HEAD: f64 = 46.0;
const FOOT: f64 = 56.0;
/// How much of the width the table has.
const SHARE: f64 = 0.46;
/// A picture is no larger than this, px.
const WIDEST: f64 = 1360.0;
const HIGHEST: f64 = 460.0;
/// Below this no table is drawn, px.
const LEAST: [f64; 2] = [240.0, 260.0];

/// What is to be seen.
pub(super) struct Seen<'a> {
    pub plan: &'static Plan,
    pub known: &'a Studied,
    pub answers: &'a Answers,
    /// Between which heights the truth is shown, m.
    pub shown: Option<[f64; 2]>,
}

/// What stands still, as long as it is the same.
pub(super) struct Kept {
    still: Option<Rc<str>>,
    edition: u32,
}

impl Kept {
    pub const NONE: Self = Self { still: None, edition: 0 };

    /// The picture in the room of a view, with the deck at a height, m.
    pub fn picture(&mut self, seen: &Seen<'_>, view: &View, deck: f64) -> Option<Live> {
        let room =
            [f64::from(view.width).clamp(LEAST[0], WIDEST), f64::from(view.height).clamp(LEAST[1], HIGHEST)];
        let (scene, plot) = scene(seen.plan, seen.known, deck, room, view.system)?;
        let mut still = String::new();
        plot.axes(&mut still);
        plot.given(&mut still);
        let guessing = seen.answers.beat == Beat::Guess;
        if guessing || seen.answers.guessed {
            plot.guess(&mut still, &seen.answers.guess, guessing);
        }
        let mut moving = scene.marks.clone();
        if let Some(range) = seen.shown {
            plot.curve(&mut moving, "c-raise", &seen.known.sought, range);
        }
        let level = plot.scale.level(deck);
        put(
            &mut moving,
            format_args!("<path class=\"level\" d=\"M{EDGE:.2} {level:.2}H{:.2}\"/>", plot.right),
        );
        let grip = Grip { centre: Screen::new(scene.right + GAP * 0.35, level), radius: 7.0 };
        put(
            &mut moving,
            format_args!(
                "<circle class=\"grip\" cx=\"{:.2}\" cy=\"{level:.2}\" r=\"{}\"/>",
                grip.centre.x, grip.radius
            ),
        );
        if seen.shown.is_some() {
            plot.dot(&mut moving, deck);
        }
        let same = self.still.take().filter(|kept| **kept == *still);
        let still = same.unwrap_or_else(|| {
            self.edition = self.edition.wrapping_add(1);
            still.into()
        });
        self.still = Some(Rc::clone(&still));
        let sketch = (seen.answers.beat == Beat::Guess).then(|| Sketch {
            left: plot.left,
            right: plot.right,
            ys: (0..HANDLES).map(|at| plot.scale.level(handle_height(seen.known, at))).collect(),
        });
        Some(Live {
            width: room[0],
            height: plot.scale.y(0.0) + FOOT,
            still,
            edition: self.edition,
            moving,
            spoken: spoken(seen, deck, view.system),
            pushed: 0.0,
            most_push: 0.0,
            per_newton: 0.0,
            per_metre: plot.scale.length(1e3),
            lift: seen.known.lift(),
            deck: Some(grip),
            push: None,
            carriage: None,
            settled: true,
            sketch,
        })
    }
}

/// The table with its load at a height, m, and the plot beside it, in a room (width, height; px).
pub(super) fn scene<'a>(
    plan: &'a Plan,
    known: &'a Studied,
    deck: f64,
    room: [f64; 2],
    system: System,
) -> Option<(Placed, Plot<'a>)> {
    let report = known.first()?;
    let load = &report.design.load;
    let above = load.height.to_m() / (load.height.to_m() + report.highest());
    let tall = room[1] - HEAD - FOOT;
    let inner = (SHARE * (room[0] - 2.0 * EDGE), tall * (1.0 - above));
    let mut scene = placed(report, deck, inner, Screen::new(EDGE, HEAD + tall * above));
    let scale = scene.scale;
    let (x, y) = (
        scale.x(1e3 * (load.centre.to_m() - 0.5 * load.length.to_m())),
        scale.level(deck + load.height.to_m()),
    );
    let (width, height) = (scale.length(1e3 * load.length.to_m()), scale.length(1e3 * load.height.to_m()));
    put(
        &mut scene.marks,
        format_args!("<path class=\"load near\" d=\"M{x:.2} {y:.2}h{width:.2}v{height:.2}h-{width:.2}z\"/>"),
    );
    let heights = if room[0] >= WIDE { HEIGHTS } else { 0.0 };
    let left = scene.right + GAP + heights;
    let right = (room[0] - EDGE - 8.0).max(left + 60.0);
    Some((scene, Plot { plan, known, scale, left, right, system, heights: heights > 0.0 }))
}

/// What one would read off the picture.
fn spoken(seen: &Seen<'_>, deck: f64, system: System) -> String {
    let height = Amount::Size(deck).text(system);
    let unit = seen.plan.unit;
    let given = seen.plan.given.map_or_else(String::new, |(name, _)| {
        format!(" {name}: {}.", unit.amount(sampled(seen.known, &seen.known.given, deck), system))
    });
    if seen.shown.is_none() {
        return format!("Deck at {height}.{given} Nothing but the guess is shown yet.");
    }
    let value = unit.amount(sampled(seen.known, &seen.known.sought, deck), system);
    format!("Deck at {height}. {}: {value}.{given}", seen.plan.sought.0)
}
