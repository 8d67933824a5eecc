//! The plot of a lesson: what is sought over the deck's height.
use super::plan::Plan;
use super::studied::{SAMPLES, Studied};
use crate::drawing::{Scale, Ticks, escaped, write as put};
use crate::quantity::{System, figures};

/// Heights at which the reader guesses.
pub(super) const HANDLES: usize = 9;

/// Room over the greatest value: the axis does not tell where the curve ends.
const SPARE: f64 = 1.3;

/// Where the value axis lies under the lowest deck, px.
const BELOW: f64 = 12.0;

/// Between the lines of heights that are named, px, at least.
const NAMED: f64 = 24.0;
/// Radius of a handle, px; of neighbours that stand closer a share of what lies between them.
const HANDLE: f64 = 5.0;
const OF_GAP: f64 = 0.4;

/// A plot less wide than this has no room for names of its own, px; where they then begin.
const NARROW: f64 = 260.0;
const EDGE: f64 = 12.0;

/// A plot beside a drawing, at its level.
pub(super) struct Plot<'a> {
    pub plan: &'a Plan,
    pub known: &'a Studied,
    pub scale: Scale,
    pub left: f64,
    pub right: f64,
    pub system: System,
    /// Whether there is room for heights at its left.
    pub heights: bool,
}

/// The value at which the axis ends, SI.
pub(super) fn axis_end(plan: &Plan, known: &Studied, system: System) -> f64 {
    ticks(plan, known, system).last() * plan.unit.axis(system).0
}

fn ticks(plan: &Plan, known: &Studied, system: System) -> Ticks {
    let values = known.sought.iter().chain(&known.given).copied().filter(|value| value.is_finite());
    Ticks::covering(0.0, SPARE * values.fold(0.0, f64::max) / plan.unit.axis(system).0, 4)
}

impl Plot<'_> {
    pub fn x(&self, share: f64) -> f64 {
        self.left + share * (self.right - self.left)
    }

    fn at(&self, value: f64) -> f64 {
        self.x((value / axis_end(self.plan, self.known, self.system)).clamp(-0.05, 1.05))
    }

    pub fn bottom(&self) -> f64 {
        self.scale.level(self.known.lift()[0]) + BELOW
    }

    /// The height of a handle, m.
    pub fn height(&self, handle: usize) -> f64 {
        handle_height(self.known, handle)
    }

    /// Axes, with nothing in them.
    pub fn axes(&self, out: &mut String) {
        let (bottom, top) = (self.bottom(), self.scale.level(self.known.lift()[1]) - 8.0);
        let (left, right) = (self.left, self.right);
        put(
            out,
            format_args!("<path class=\"axis none\" d=\"M{left:.2} {top:.2}V{bottom:.2}H{right:.2}\"/>"),
        );
        let ticks = ticks(self.plan, self.known, self.system);
        let unit = self.plan.unit.axis(self.system).1;
        let last = ticks.count.saturating_sub(1);
        for (at, value) in ticks.values().enumerate() {
            let x = self.x(at as f64 / last.max(1) as f64);
            put(out, format_args!("<path class=\"rule\" d=\"M{x:.2} {top:.2}V{bottom:.2}\"/>"));
            let words = if at == last { format!("{} {unit}", ticks.text(value)) } else { ticks.text(value) };
            let anchor = if at == last { "end" } else { "middle" };
            let place = if at == last { x + 8.0 } else { x };
            put(
                out,
                format_args!(
                    "<text class=\"s\" x=\"{place:.2}\" y=\"{:.2}\" text-anchor=\"{anchor}\">{words}</text>",
                    bottom + 16.0
                ),
            );
        }
        if self.heights {
            self.named_heights(out);
        }
        let (x, y) = if self.is_narrow() { (EDGE, 16.0) } else { (left, top - 8.0) };
        put(
            out,
            format_args!(
                "<text class=\"b\" x=\"{x:.2}\" y=\"{y:.2}\">{}</text>",
                escaped(self.plan.sought.0)
            ),
        );
    }

    /// Heights of the deck: those of the handles, every one, every other or the two ends, as there is room.
    fn named_heights(&self, out: &mut String) {
        let apart = self.between_handles();
        let step = [1, 2, 4].into_iter().find(|step| apart * f64::from(*step) >= NAMED).unwrap_or(8);
        for at in (0..HANDLES).step_by(step as usize) {
            let (y, metres) = (self.scale.level(self.height(at)), self.height(at));
            let size = figures::size(metres, self.system);
            let words = if at + 1 == HANDLES { size.to_string() } else { size.number };
            put(
                out,
                format_args!(
                    "<path class=\"rule\" d=\"M{:.2} {y:.2}H{:.2}\"/><text class=\"s\" x=\"{:.2}\" y=\"{:.2}\" text-anchor=\"end\">{words}</text>",
                    self.left - 4.0,
                    self.right,
                    self.left - 6.0,
                    y - 3.0
                ),
            );
        }
    }

    /// From one handle to the next, px.
    fn between_handles(&self) -> f64 {
        let [low, high] = self.known.lift();
        self.scale.length(1e3 * (high - low)) / (HANDLES - 1) as f64
    }

    /// Whether names beside the plot have no room: they then begin at the edge of the picture.
    fn is_narrow(&self) -> bool {
        self.right - self.left < NARROW
    }

    /// A line through sampled values between two heights, m.
    pub fn curve(&self, out: &mut String, class: &str, values: &[f64], [from, to]: [f64; 2]) {
        let mut d = String::new();
        for (height, value) in self.known.heights.iter().zip(values) {
            if *height >= from - 1e-9 && *height <= to + 1e-9 && value.is_finite() {
                let sign = if d.is_empty() { 'M' } else { 'L' };
                put(&mut d, format_args!("{sign}{:.2} {:.2}", self.at(*value), self.scale.level(*height)));
            }
        }
        if !d.is_empty() {
            put(out, format_args!("<path class=\"{class}\" d=\"{d}\"/>"));
        }
    }

    /// What is given, with its name.
    pub fn given(&self, out: &mut String) {
        if let Some((name, _)) = self.plan.given {
            self.curve(out, "c-ink-3", &self.known.given, self.known.lift());
            let (x, y) = if self.is_narrow() {
                (EDGE, self.scale.y(0.0) + 34.0)
            } else {
                (self.left, self.bottom() + 34.0)
            };
            put(
                out,
                format_args!(
                    "<path class=\"c-ink-3\" d=\"M{x:.2} {:.2}h22\"/><text class=\"s\" x=\"{:.2}\" y=\"{y:.2}\">{}</text>",
                    y - 4.0,
                    x + 28.0,
                    escaped(name)
                ),
            );
        }
    }

    /// The reader's guess; with handles while it can be changed.
    pub fn guess(&self, out: &mut String, guess: &[f64; HANDLES], handles: bool) {
        let points: Vec<String> = guess
            .iter()
            .enumerate()
            .map(|(at, share)| format!("{:.2} {:.2}", self.x(*share), self.scale.level(self.height(at))))
            .collect();
        put(out, format_args!("<path class=\"lesson-guess\" d=\"M{}\"/>", points.join("L")));
        let radius = HANDLE.min(OF_GAP * self.between_handles());
        for (at, share) in guess.iter().enumerate().filter(|_| handles) {
            let (x, y) = (self.x(*share), self.scale.level(self.height(at)));
            put(out, format_args!("<circle class=\"grip\" cx=\"{x:.2}\" cy=\"{y:.2}\" r=\"{radius:.2}\"/>"));
        }
    }

    /// The truth at a height, m, as a dot.
    pub fn dot(&self, out: &mut String, height: f64) {
        let value = sampled(self.known, &self.known.sought, height);
        if value.is_finite() {
            let (x, y) = (self.at(value), self.scale.level(height));
            put(out, format_args!("<circle class=\"d-force\" cx=\"{x:.2}\" cy=\"{y:.2}\" r=\"4.5\"/>"));
        }
    }
}

/// The height of a handle, m.
pub(super) fn handle_height(known: &Studied, handle: usize) -> f64 {
    let [low, high] = known.lift();
    low + (high - low) * handle as f64 / (HANDLES - 1) as f64
}

/// A value between two samples, on the straight line; not a number where there is none.
pub(super) fn sampled(known: &Studied, values: &[f64], height: f64) -> f64 {
    let [low, high] = known.lift();
    let place = ((height - low) / (high - low) * (SAMPLES - 1) as f64).clamp(0.0, (SAMPLES - 1) as f64);
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "between zero and the number of samples"
    )]
    let at = (place.floor() as usize).min(SAMPLES - 2);
    match (values.get(at), values.get(at + 1)) {
        (Some(one), Some(next)) => one + (next - one) * (place - at as f64),
        _ => f64::NAN,
    }
}
