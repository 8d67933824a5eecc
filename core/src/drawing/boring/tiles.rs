//! A part in true scale on tiles that go on A4 as well as on Letter, with a ruler bar and lines where neighbours meet.
use super::PX_PER_MM;
use super::face::{Lie, face};
use crate::drawing::cutting::Drawn;
use crate::drawing::dimension::upright;
use crate::drawing::face::Measure;
use crate::drawing::frame::Area;
use crate::drawing::lettering::{Lettering, text};
use crate::drawing::mark::{Anchor, Mark};
use crate::drawing::outline::{tidy, write};
use crate::drawing::scale::{Scale, Screen};
use crate::parts::Part;
use crate::quantity::{Length, System, figures};
use crate::workshop::drilling::Row;

/// Width and height of a tile, mm: what is left of A4 (210 by 297) and of Letter (215.9 by 279.4) within margins of 12 mm, some spare.
pub const TILE: [f64; 2] = [180.0, 248.0];

/// Beneath the drawing for bar and words, mm.
const STRIP: f64 = 20.0;
/// Free around the part, mm: registration crosses stand there.
const MARGIN: f64 = 9.0;
/// Neighbours share so much, mm.
const OVERLAP: f64 = 12.0;
/// A part that takes more tiles than this is marked out from its table.
const MOST: usize = 24;
/// Length of the ruler bar, mm, and of its divisions: 100 mm in tens, 4 in in quarters.
const BAR_METRIC: (f64, u8, &str) = (100.0, 10, "100 mm");
const BAR_INCH: (f64, u8, &str) = (101.6, 16, "4 in");

/// One tile.
#[derive(Clone, Debug, PartialEq)]
pub struct Tile {
    /// The drawing, px; divided by [`PX_PER_MM`] it is [`TILE`].
    pub drawn: Drawn,
    /// Where its window begins on the part, mm from datum end and datum edge.
    pub corner: [f64; 2],
    /// How much of the part's length and width the window takes, mm.
    pub window: [f64; 2],
}

/// Where windows begin along a side of the part, mm from its datum; they are `window` long and overlap.
fn starts(size: f64, window: f64) -> Vec<f64> {
    let step = window - OVERLAP;
    let mut list = vec![-MARGIN];
    while list.len() <= MOST && list.last().is_some_and(|start| start + window < size + MARGIN) {
        list.push(list.len() as f64 * step - MARGIN);
    }
    list
}

/// The part on as few tiles as it takes, its length along the longer side of the paper where it is long; none where it would take too many.
#[must_use]
pub fn tiles(part: &Part, rows: &[Row], system: System, measure: Measure<'_>) -> Vec<Tile> {
    let [long, wide] = [part.size[0], part.size[1]].map(Length::to_mm);
    let window = [TILE[0], TILE[1] - STRIP];
    let lying = [starts(long, window[0]), starts(wide, window[1])];
    let standing = [starts(long, window[1]), starts(wide, window[0])];
    let count = |starts: &[Vec<f64>; 2]| starts[0].len() * starts[1].len();
    let turned = count(&standing) < count(&lying);
    let starts = if turned { standing } else { lying };
    let count = count(&starts);
    if count > MOST {
        return Vec::new();
    }
    let mut list = Vec::new();
    for across in &starts[1] {
        for along in &starts[0] {
            let corner = [*along, *across];
            let number = list.len() + 1;
            let sheet = Sheet { part, rows, system, turned, starts: &starts, corner, number, count };
            list.push(Tile { drawn: sheet.draw(measure), corner, window: [sheet.span(0), sheet.span(1)] });
        }
    }
    list
}

/// What one tile is drawn from.
struct Sheet<'a> {
    part: &'a Part,
    rows: &'a [Row],
    system: System,
    turned: bool,
    starts: &'a [Vec<f64>; 2],
    /// The part's place at the window's datum corner, mm.
    corner: [f64; 2],
    number: usize,
    count: usize,
}

impl Sheet<'_> {
    fn lie(&self) -> Lie {
        let [along, across] = self.corner;
        let window = [TILE[0] * PX_PER_MM, (TILE[1] - STRIP) * PX_PER_MM];
        // Lying, the datum corner is at the lower left; standing, the datum edge is at the right.
        let origin = if self.turned {
            Screen::new(window[0] + across * PX_PER_MM, window[1] + along * PX_PER_MM)
        } else {
            Screen::new(-along * PX_PER_MM, window[1] + across * PX_PER_MM)
        };
        Lie { scale: Scale { per_mm: PX_PER_MM, origin }, upright: self.turned }
    }

    fn draw(&self, measure: Measure<'_>) -> Drawn {
        let [width, height] = TILE.map(|side| side * PX_PER_MM);
        let window = Area { x: 0.0, y: 0.0, width, height: (TILE[1] - STRIP) * PX_PER_MM };
        let lie = self.lie();
        let mut lettering = Lettering::new(measure, Area { x: 0.0, y: 0.0, width, height });
        let mut marks = face(self.part, &lie);
        marks.extend(self.joins(&lie, &mut lettering));
        let strip = Area { x: 0.0, y: window.bottom(), width, height: STRIP * PX_PER_MM };
        marks.push(Mark::rect("sheet", Screen::new(strip.x, strip.y), strip.width, strip.height + 1.0));
        lettering.keep(Area { x: 0.0, y: strip.y, width, height: 2.0 });
        for row in self.rows {
            let at = lie.at([row.along.to_mm(), row.across.to_mm()]);
            if !window.contains(at) {
                continue;
            }
            let reach = row.bit.countersink.unwrap_or(row.bit.diameter).to_mm() / 2.0 * PX_PER_MM + 7.0;
            let words = format!("{} {}", row.letter, row.bits(self.system).0);
            let forms = [
                (reach, -6.0, Anchor::Start),
                (reach, 14.0, Anchor::Start),
                (-reach, -6.0, Anchor::End),
                (0.0, -reach, Anchor::Middle),
                (0.0, reach + 9.0, Anchor::Middle),
            ];
            marks.push(lettering.place(
                forms.map(|(right, down, anchor)| text("b halo", at.by(right, down), anchor, &words)),
            ));
        }
        marks.extend(self.strip(&strip, &mut lettering));
        Drawn { width, height, marks }
    }

    /// Lines where this tile meets its neighbours, with crosses beyond the part's edges to lay over each other.
    fn joins(&self, lie: &Lie, lettering: &mut Lettering<'_>) -> Vec<Mark> {
        let mut marks = Vec::new();
        for side in 0..2 {
            let at =
                |mine: f64, other: f64| if side == 0 { lie.at([mine, other]) } else { lie.at([other, mine]) };
            let size = [self.part.size[0], self.part.size[1]].map(Length::to_mm);
            let other = size[1 - side];
            for start in self.starts[side].iter().skip(1) {
                let line = start + OVERLAP / 2.0;
                let near = line > self.corner[side] && line < self.corner[side] + self.span(side);
                if !near {
                    continue;
                }
                let reach = [-MARGIN, other + MARGIN];
                marks.push(Mark::line("cl", at(line, reach[0]), at(line, reach[1])));
                let mut crosses = String::new();
                for place in [-MARGIN / 2.0, other + MARGIN / 2.0, other / 2.0] {
                    let Screen { x, y } = at(line, place);
                    let arm = 3.0 * PX_PER_MM;
                    write(
                        &mut crosses,
                        format_args!(
                            "M{} {}H{}M{} {}V{}",
                            tidy(x - arm),
                            tidy(y),
                            tidy(x + arm),
                            tidy(x),
                            tidy(y - arm),
                            tidy(y + arm)
                        ),
                    );
                }
                marks.push(Mark::path("n none", crosses));
                let distance = figures::marked(Length::mm(line), self.system);
                let words = format!("join at {distance}");
                let level = (side == 0) == self.turned;
                let places = [0.3, 0.7, 0.15, 0.85].map(|share| at(line, share * other));
                marks.push(lettering.place(places.map(|place| {
                    if level {
                        text("q halo", place.by(0.0, -5.0), Anchor::Middle, &words)
                    } else {
                        upright("q halo", place.by(-5.0, 0.0), Anchor::Middle, &words)
                    }
                })));
            }
        }
        marks
    }

    /// How much of a side of the part the window covers, mm.
    fn span(&self, side: usize) -> f64 {
        let window = [TILE[0], TILE[1] - STRIP];
        window[usize::from((side == 0) == self.turned)]
    }

    /// The ruler bar, and which tile of which part this is.
    fn strip(&self, strip: &Area, lettering: &mut Lettering<'_>) -> Vec<Mark> {
        let (length, parts, words) = match self.system {
            System::Metric => BAR_METRIC,
            System::Inch => BAR_INCH,
        };
        let (left, base) = (2.0, strip.y + 9.0 * PX_PER_MM);
        let mut ticks = String::new();
        for tick in 0..=parts {
            let x = left + length * PX_PER_MM * f64::from(tick) / f64::from(parts);
            let high = if tick % (parts / 2) == 0 { 5.0 } else { 2.5 } * PX_PER_MM;
            write(&mut ticks, format_args!("M{} {}V{}", tidy(x), tidy(base), tidy(base - high)));
        }
        write(&mut ticks, format_args!("M{left} {}H{}", tidy(base), tidy(left + length * PX_PER_MM)));
        let beside = Screen::new(left + length * PX_PER_MM + 8.0, base);
        let title = format!(
            "{} {}, {} off: sheet {} of {}",
            self.part.number,
            self.part.title(),
            self.part.count,
            self.number,
            self.count
        );
        let advice = format!(
            "The bar is {words} long. If yours is not, print again at 100 %, without fitting to the page."
        );
        vec![
            Mark::path("bar", ticks),
            lettering.set(text("s", beside, Anchor::Start, words)),
            lettering.set(text("b", Screen::new(left, base + 18.0), Anchor::Start, &title)),
            lettering.set(text("q", Screen::new(left, base + 33.0), Anchor::Start, &advice)),
        ]
    }
}
