//! Crank force against turns: every table that was kept as a point, the proposals with their numbers.
use crate::drawing::{Ticks, escaped, write as put};
use crate::quantity::{System, figures};
use crate::report::search::{Kept, Measure};

/// Size of the picture and of its margins, px.
pub(super) const SIZE: (f64, f64) = (460.0, 300.0);
const LEFT: f64 = 56.0;
const RIGHT: f64 = 24.0;
const TOP: f64 = 26.0;
const FOOT: f64 = 40.0;

/// A table in the picture.
pub(super) struct Point<'a> {
    pub kept: &'a Kept,
    /// Its number among the proposals; none for one that is only a point.
    pub number: Option<usize>,
    /// Whether it is looked at.
    pub picked: bool,
}

/// A scale that begins near the least value, not at zero: differences are what is looked at.
struct Axis {
    first: f64,
    last: f64,
    step: f64,
    from: f64,
    to: f64,
}

impl Axis {
    fn new(values: impl Iterator<Item = f64> + Clone, from: f64, to: f64) -> Self {
        let least = values.clone().fold(f64::INFINITY, f64::min);
        let most = values.fold(f64::NEG_INFINITY, f64::max);
        let room = (0.12 * (most - least)).max(0.02 * most.abs()).max(1e-6);
        let step = Ticks::covering(0.0, most - least + 2.0 * room, 5).step;
        let first = ((least - room).max(0.0) / step).floor() * step;
        let last = ((most + room) / step).ceil() * step;
        Self { first, last, step, from, to }
    }

    fn at(&self, value: f64) -> f64 {
        self.from + (value - self.first) / (self.last - self.first) * (self.to - self.from)
    }

    fn ticks(&self) -> impl Iterator<Item = f64> + '_ {
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a dozen at most")]
        let count = ((self.last - self.first) / self.step).round() as usize;
        (0..=count).map(|at| self.first + at as f64 * self.step)
    }
}

/// A numbered point's ring is so wide, and its middle stays this far from another's, px.
const RING: f64 = 9.0;
const APART: f64 = 22.0;

/// Where the rings of numbered points stand, px: at their own places, and beside them where another ring stands there already.
fn rings(places: &[(f64, f64)]) -> Vec<(f64, f64)> {
    const AROUND: [(f64, f64); 8] = [
        (1.0, 0.0),
        (0.7, -0.7),
        (0.0, -1.0),
        (-0.7, -0.7),
        (-1.0, 0.0),
        (-0.7, 0.7),
        (0.0, 1.0),
        (0.7, 0.7),
    ];
    let mut rings: Vec<(f64, f64)> = Vec::with_capacity(places.len());
    for (x, y) in places.iter().copied() {
        let room = |(x, y): (f64, f64)| {
            let edges = (x - LEFT).min(SIZE.0 - x).min(y).min(SIZE.1 - FOOT - y) - RING;
            let others = rings.iter().map(|ring| libm::hypot(ring.0 - x, ring.1 - y) - APART);
            others.fold(edges, f64::min)
        };
        let own = rings.iter().all(|ring| libm::hypot(ring.0 - x, ring.1 - y) >= APART);
        let beside = [1.2 * APART, 2.4 * APART]
            .into_iter()
            .flat_map(|far| AROUND.map(|(right, down)| (x + far * right, y + far * down)));
        let found = if own {
            (x, y)
        } else {
            beside.clone().find(|at| room(*at) >= 0.0).unwrap_or_else(|| {
                beside.fold((x, y), |best, at| if room(at) > room(best) { at } else { best })
            })
        };
        rings.push(found);
    }
    rings
}

/// The picture; `key` is what a press on a point answers.
pub(super) fn marks(points: &[Point<'_>], key: &str, system: System) -> String {
    let crank = |kept: &Kept| figures::small_force(kept.figures.of(Measure::Crank), system);
    let force = |kept: &Kept| figures::small_force_number(kept.figures.of(Measure::Crank), system);
    let turns = |kept: &Kept| kept.figures.of(Measure::Turns);
    let x = Axis::new(points.iter().map(|point| turns(point.kept)), LEFT, SIZE.0 - RIGHT);
    let y = Axis::new(points.iter().map(|point| force(point.kept)), SIZE.1 - FOOT, TOP);
    let unit = points.first().map_or("", |point| crank(point.kept).unit);
    let mut out = String::new();
    put(
        &mut out,
        format_args!(
            "<path class=\"axis\" d=\"M{:.1} {:.1}H{:.1}M{:.1} {:.1}V{:.1}\"/>",
            x.from, y.from, x.to, x.from, y.from, y.to
        ),
    );
    for tick in x.ticks() {
        let at = x.at(tick);
        put(
            &mut out,
            format_args!(
                "<path class=\"tick\" d=\"M{at:.1} {:.1}v4\"/><text class=\"q\" x=\"{at:.1}\" y=\"{:.1}\" text-anchor=\"middle\">{tick:.0}</text>",
                y.from,
                y.from + 16.0
            ),
        );
    }
    for tick in y.ticks() {
        let at = y.at(tick);
        put(
            &mut out,
            format_args!(
                "<path class=\"tick\" d=\"M{:.1} {at:.1}h-4\"/><text class=\"q\" x=\"{:.1}\" y=\"{:.1}\" text-anchor=\"end\">{tick:.0}</text>",
                x.from,
                x.from - 8.0,
                at + 4.0
            ),
        );
    }
    put(
        &mut out,
        format_args!(
            "<text class=\"s\" x=\"{:.1}\" y=\"{:.1}\" text-anchor=\"end\">turns for the whole lift</text>",
            x.to,
            SIZE.1 - 6.0
        ),
    );
    put(&mut out, format_args!("<text class=\"s\" x=\"8\" y=\"14\">crank at most, {unit}</text>"));
    // Numbered ones lie on top.
    let mut order: Vec<&Point<'_>> = points.iter().collect();
    order.sort_by_key(|point| (point.number, point.picked));
    let place = |point: &Point<'_>| (x.at(turns(point.kept)), y.at(force(point.kept)));
    let numbered = order.iter().filter(|point| point.number.is_some());
    let mut rings = rings(&numbered.map(|point| place(point)).collect::<Vec<_>>()).into_iter();
    for point in order {
        let own = place(point);
        let (cx, cy) = point.number.and_then(|_| rings.next()).unwrap_or(own);
        let class = if point.picked { "picked" } else { "point" };
        put(
            &mut out,
            format_args!(
                "<g class=\"{class}\" data-answer=\"{}\" value=\"{}\">",
                escaped(key),
                point.kept.at
            ),
        );
        let off = libm::hypot(cx - own.0, cy - own.1);
        if off > 0.0 {
            // A leader from the point's own place to its ring.
            let part = 1.0 - RING / off;
            put(
                &mut out,
                format_args!(
                    "<circle class=\"dot\" cx=\"{:.1}\" cy=\"{:.1}\" r=\"4\"/><path class=\"tick\" d=\"M{:.1} {:.1}L{:.1} {:.1}\"/>",
                    own.0,
                    own.1,
                    own.0,
                    own.1,
                    own.0 + part * (cx - own.0),
                    own.1 + part * (cy - own.1)
                ),
            );
        }
        let told = format!("{}, {}", crank(point.kept), figures::turns(turns(point.kept)));
        put(
            &mut out,
            format_args!(
                "<title>{}</title><circle class=\"none\" cx=\"{cx:.1}\" cy=\"{cy:.1}\" r=\"12\"/>",
                escaped(&told)
            ),
        );
        match point.number {
            Some(number) => put(
                &mut out,
                format_args!(
                    "<circle class=\"ring\" cx=\"{cx:.1}\" cy=\"{cy:.1}\" r=\"{RING}\"/><text class=\"b\" x=\"{cx:.1}\" y=\"{:.1}\" text-anchor=\"middle\">{number}</text>",
                    cy + 4.0
                ),
            ),
            None => {
                put(&mut out, format_args!("<circle class=\"dot\" cx=\"{cx:.1}\" cy=\"{cy:.1}\" r=\"4\"/>"));
            }
        }
        out.push_str("</g>");
    }
    out
}

#[cfg(test)]
mod tests {
    use super::{APART, FOOT, LEFT, RING, SIZE, rings};

    #[test]
    fn points_on_one_place_are_told_apart() {
        let (corner, middle) = ((LEFT + RING, SIZE.1 - FOOT - RING), (250.0, 120.0));
        let places = [middle, corner, middle, (255.0, 121.0), corner, (400.0, 60.0)];
        let rings = rings(&places);
        // What stands alone, or comes first, stays.
        assert_eq!([rings[0], rings[1], rings[5]], [places[0], places[1], places[5]]);
        for (at, one) in rings.iter().enumerate() {
            let inside = one.0 - RING >= LEFT && one.0 + RING <= SIZE.0;
            assert!(inside && one.1 >= RING && one.1 + RING <= SIZE.1 - FOOT, "{one:?}");
            for other in &rings[..at] {
                assert!(libm::hypot(one.0 - other.0, one.1 - other.1) >= APART - 1e-9, "{one:?} {other:?}");
            }
        }
    }
}
