//! A plot as a picture of its own, with its own height axis.
use super::face::widths;
use super::frame::{Area, PlotArea};
use super::lettering::{Lettering, text};
use super::mark::{Anchor, Mark};
use super::outline::tidy;
use super::plain;
use super::plan::{AXIS, HEADING, steps};
use super::plot::Placed;
use super::plotted::Plotted;
use super::pole::{Pole, band};
use super::scale::{Scale, Screen};
use super::svg::escaped;
use super::ticks::Ticks;
use super::usage::Small;

/// Size of the picture, its margin, and the room for pole and heights at the left, px.
const SIZE: (f64, f64) = (480.0, 560.0);
const MARGIN: f64 = 20.0;
const POLE: f64 = 64.0;
/// From the last label of the value axis to the design's name, px.
const FOOT: f64 = 30.0;

impl Plotted {
    /// The plot as an SVG file for light paper: true text, its own axes, title, curve names and style, nothing fetched from elsewhere.
    #[must_use]
    pub fn svg(&self) -> String {
        let (width, height) = SIZE;
        let mut marks = vec![Mark::rect("sheet", Screen::default(), width, height)];
        marks.extend(self.lines(SIZE));
        let foot = Screen::new(MARGIN, height - MARGIN + 4.0);
        marks.push(text(
            "q",
            foot,
            Anchor::Start,
            &format!("{}. Height axis: the deck’s surface above the floor.", self.design),
        ));
        let classes: Vec<&str> =
            marks.iter().filter(|mark| !mark.is_left_out()).map(|mark| mark.class).collect();
        let body: String = marks.iter().map(Mark::svg).collect();
        let (width, height) = (tidy(width), tidy(height));
        format!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"dwg\" width=\"{width}\" height=\"{height}\" \
             viewBox=\"0 0 {width} {height}\" role=\"img\"><title>{}</title><style>{}</style>{body}</svg>\n",
            escaped(&format!("{}: {}", self.design, self.table().caption)),
            escaped(&plain::style(&classes)),
        )
    }

    /// The plot of a size, px, among words: the same without paper, style and the line at its foot.
    #[must_use]
    pub fn small(&self, size: (f64, f64)) -> Small {
        let marks = self.lines((size.0, size.1 + FOOT)).iter().map(Mark::svg).collect();
        Small { marks, width: size.0, height: size.1 }
    }

    /// Axes, curves and their names within a size, px.
    fn lines(&self, size: (f64, f64)) -> Vec<Mark> {
        let paper = Area { x: 0.0, y: 0.0, width: size.0, height: size.1 };
        let mut lettering = Lettering::new(&widths, paper);
        let mut marks = Vec::new();
        if let Some((area, ticks, pole)) = self.place(size) {
            let placed = Placed { plot: &self.plot, area: &area, ticks: &ticks };
            marks.extend(pole.rule());
            let unit = Screen::new(pole.x, pole.scale.y(pole.ends[1]) - 8.0);
            marks.push(lettering.set(text(
                "q",
                unit,
                Anchor::Start,
                &format!("deck, {}", self.height_unit()),
            )));
            marks.extend(pole.labels(&mut lettering, f64::NAN));
            marks.extend(placed.axes());
            marks.extend(placed.words(&mut lettering));
            let (line, limit) = placed.limit(&mut lettering);
            marks.push(line);
            let names = placed.names(&mut lettering);
            for curve in placed.curves(0) {
                marks.push(Mark::path(curve.ink.class, curve.notation()));
            }
            marks.extend(names.into_iter().chain([limit]).flat_map(|name| name.parts));
        }
        marks
    }

    /// Where the plot, its value axis and its pole lie; nothing without a curve.
    fn place(&self, (width, height): (f64, f64)) -> Option<(PlotArea, Ticks, Pole)> {
        let places = self.places();
        let (low, high) = (places.first()? * 1e3, places.last()? * 1e3);
        let top = MARGIN + HEADING + 12.0;
        let bottom = height - MARGIN - AXIS - FOOT;
        let rough = (bottom - top) / (high - low).max(1e-3);
        let one = band(self.system, rough);
        let ends = [(low / one + 1e-9).floor() * one, (high / one - 1e-9).ceil() * one];
        // Whole bands: the pole begins below the lowest deck and ends above the highest.
        let per_mm = (bottom - top) / (ends[1] - ends[0]).max(1e-3);
        let scale = Scale { per_mm, origin: Screen::new(0.0, top + ends[1] * per_mm) };
        let pole = Pole { x: MARGIN + 0.5, scale, ends, band: one, system: self.system, names_unit: false };
        let left = MARGIN + POLE;
        let each = width - left - MARGIN - 12.0;
        let (least, most) = self.plot.extremes();
        let per_si = self.plot.per_si;
        let ticks = Ticks::covering(least * per_si, most * per_si, steps(each));
        let per_shown = each / (ticks.last() - ticks.first);
        let area = PlotArea {
            chart: self.plot.chart,
            area: Area::between([left, left + each], [scale.y(low), scale.y(high)]),
            scale,
            zero: left - ticks.first * per_shown,
            per_value: per_shown * per_si,
        };
        Some((area, ticks, pole))
    }
}
