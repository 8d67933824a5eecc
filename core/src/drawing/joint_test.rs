//! How a joint is tested: two arms seen on edge, one clamped, the other pulled square to its face.
use super::arrow::{dimension_head, force};
use super::mark::{Anchor, Mark};
use super::outline::{tidy, write};
use super::scale::Screen;
use super::sheet::hatched;
use glam::DVec2;

/// Size of the figure, px.
pub const SIZE: [f64; 2] = [520.0, 206.0];

const BENCH: f64 = 136.0;
const BENCH_ENDS: [f64; 2] = [14.0, 148.0];
const THICK: f64 = 24.0;
const GAP: f64 = 5.0;
const BOLT: f64 = 176.0;
const HOOK: f64 = 404.0;
/// How far the pulled arm is drawn to rise, as a part of its length.
const RISE: f64 = 0.085;

/// The figure, in the classes of the drawing language; `reach` is what is written at the distance from the bolt to the hook.
#[must_use]
pub fn joint_test(reach: &str) -> Vec<Mark> {
    let rest = BENCH - 1.5 * THICK - GAP;
    let pivot = DVec2::new(BOLT, rest);
    let along = DVec2::new(1.0, -RISE).normalize();
    let turned = |x: f64, y: f64| Screen::from(pivot + along.rotate(DVec2::new(x, y) - pivot));
    let block = |class: &'static str, x: [f64; 2], y: [f64; 2]| {
        Mark::rect(class, Screen::new(x[0], y[0]), x[1] - x[0], y[1] - y[0])
    };
    let pulled = [
        turned(BOLT - 26.0, rest - THICK / 2.0),
        turned(HOOK + 22.0, rest - THICK / 2.0),
        turned(HOOK + 22.0, rest + THICK / 2.0),
        turned(BOLT - 26.0, rest + THICK / 2.0),
    ];
    let hook = turned(HOOK, rest - THICK / 2.0);
    let tip = turned(HOOK + 22.0, rest + THICK / 2.0);
    let still = rest + THICK / 2.0;
    let mut marks = hatched(BENCH, BENCH_ENDS);
    marks.push(block("w near", [30.0, BOLT + 26.0], [BENCH - THICK, BENCH]));
    marks.push(block("ph", [BOLT - 26.0, HOOK + 22.0], [rest - THICK / 2.0, rest + THICK / 2.0]));
    // The bolt turns with neither: it stands between both.
    marks.push(block("n steel", [BOLT - 12.0, BOLT + 12.0], [BENCH - THICK - GAP, BENCH - THICK]));
    marks.push(Mark::path("w near", closed(&pulled)));
    marks.push(block("w steel", [BOLT - 10.0, BOLT + 10.0], [rest - THICK / 2.0 - 11.0, rest - THICK / 2.0]));
    marks.push(block("w steel", [BOLT - 10.0, BOLT + 10.0], [BENCH, BENCH + 9.0]));
    marks.push(Mark::line("cl", Screen::new(BOLT, rest - 40.0), Screen::new(BOLT, BENCH + 20.0)));
    // The clamp.
    for (tail, point) in [(BENCH - THICK - 34.0, BENCH - THICK), (BENCH + 42.0, BENCH + 8.0)] {
        let [shaft, head] = force(Screen::new(66.0, tail), Screen::new(66.0, point));
        marks.extend([Mark::path("dl", shaft), Mark::path("ah", head)]);
    }
    let top = Screen::new(hook.x, hook.y - 44.0);
    let [shaft, head] = force(hook, top);
    marks.extend([Mark::path("fl", shaft), Mark::path("fh", head)]);
    // The ruler, and between both places of the arm what it shows.
    let ruler = 470.0;
    marks.push(block("n sheet", [ruler, ruler + 14.0], [22.0, BENCH]));
    let ticks = (0..).map(|tick| 28.0 + 6.0 * f64::from(tick)).take_while(|y| *y < BENCH - 2.0);
    marks.extend(ticks.map(|y| Mark::line("tick", Screen::new(ruler, y), Screen::new(ruler + 6.0, y))));
    let measure = ruler - 14.0;
    for y in [still, tip.y] {
        marks.push(Mark::line("ext", Screen::new(HOOK + 26.0, y), Screen::new(ruler - 2.0, y)));
    }
    marks.extend(arrow(Screen::new(measure, still), Screen::new(measure, tip.y)));
    let level = BENCH + 40.0;
    for x in [BOLT, HOOK] {
        let from = if x < HOOK { BENCH + 24.0 } else { still + 6.0 };
        marks.push(Mark::line("ext", Screen::new(x, from), Screen::new(x, level + 6.0)));
    }
    marks.extend(arrow(Screen::new(BOLT, level), Screen::new(HOOK, level)));
    let words = |class: &'static str, x: f64, y: f64, anchor: Anchor, words: &str| {
        Mark::text(class, Screen::new(x, y), anchor, words)
    };
    marks.extend([
        words("halo", f64::midpoint(BOLT, HOOK), level - 4.0, Anchor::Middle, reach),
        words("ft halo", top.x, top.y - 6.0, Anchor::Middle, "pull, by the luggage scale"),
        words("halo", measure - 6.0, f64::midpoint(still, tip.y) + 4.0, Anchor::End, "gives"),
        words("s", ruler + 7.0, BENCH + 15.0, Anchor::Middle, "ruler"),
        words("s", 66.0, BENCH - THICK - 40.0, Anchor::Middle, "clamp"),
        words("s", 128.0, BENCH - 8.0, Anchor::End, "one arm"),
        words("s", 300.0, BENCH - 4.0, Anchor::Start, "the other arm"),
        words("s", BOLT, 18.0 + rest - 62.0, Anchor::Middle, "bolt, bushings, washers"),
    ]);
    marks
}

fn closed(corners: &[Screen]) -> String {
    let mut d = String::new();
    for (place, corner) in corners.iter().enumerate() {
        let command = if place == 0 { 'M' } else { 'L' };
        write(&mut d, format_args!("{command}{} {}", tidy(corner.x), tidy(corner.y)));
    }
    d + "Z"
}

/// A dimension line with both heads.
fn arrow(from: Screen, to: Screen) -> [Mark; 3] {
    [
        Mark::line("dl", from, to),
        Mark::path("ah", dimension_head(from, to)),
        Mark::path("ah", dimension_head(to, from)),
    ]
}
