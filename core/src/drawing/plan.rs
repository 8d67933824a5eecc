//! Where everything comes to lie: one scale for drawing, pole and plots, the smaller of what height and width allow.
use super::chart::Plot;
use super::dimension::{Dimension, OFF_PART, PAST_LINE, extension};
use super::face::Measure;
use super::frame::{Area, Frame, PlotArea};
use super::lettering::Lettering;
use super::mark::Mark;
use super::outline::{Bounds, Stroke};
use super::pole::{Pole, WIDTH, band, tag_width};
use super::poster::{self, PAPER};
use super::scale::{Scale, Screen};
use super::ticks::Ticks;
use super::view::{Layout, View};
use crate::quantity::{System, figures};
use crate::report::Report;

/// Left of the drawing, for the three upright dimensions, and their lines from the left edge, px.
const DIMENSIONS: f64 = 90.0;
const COLUMNS: [f64; 3] = [69.0, 45.0, 21.0];
const NARROW_DIMENSIONS: f64 = 80.0;
const NARROW_COLUMNS: [f64; 3] = [61.0, 40.0, 19.0];
/// Between drawing and pole, for forces and marks, px.
const BESIDE: f64 = 48.0;
/// From the right edge of the picture to the plots, px.
const MARGIN: f64 = 16.0;
/// Below the floor, px: hatching, and more where a title block must keep off the axes of a deck that comes down low; and from the lowest
/// part that hangs below the floor to the edge.
const BELOW_FLOOR: f64 = 34.0;
const BELOW_PARTS: f64 = 6.0;
/// Height of the title block, px.
pub(super) const TITLE: f64 = 52.0;
/// What a plot needs above the highest deck (heading, unit) and below the lowest (ticks and their figures), px.
pub(super) const HEADING: f64 = 50.0;
pub(super) const AXIS: f64 = 26.0;
/// Share of the picture's width that plots get, their least and greatest width, and the gap between two, px.
const SHARE: f64 = 0.355;
const LEAST: f64 = 150.0;
const MOST: f64 = 300.0;
const GAP: f64 = 38.0;
const NARROW_LEAST: f64 = 128.0;
const NARROW_GAP: f64 = 24.0;
/// Below the floor on paper, px: hatching, and the dimensions of the frame.
const PRINT_BELOW: f64 = 78.0;
const BARE_BELOW: f64 = 14.0;
/// Height of a plot beneath a narrow drawing, px.
const NARROW_PLOT: [f64; 2] = [176.0, 320.0];
/// The window's share that a narrow elevation may take in height.
const NARROW_SHARE: f64 = 2.0 / 3.0;
/// A value axis has at most one step for so many px.
const STEP: f64 = 38.0;
/// Height of the table of values, px, and the least in which its lines do not crowd.
const READING: f64 = 106.0;
const READING_LEAST: f64 = 78.0;

/// Plots that stand beside one pole.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Row {
    pub(super) pole: Pole,
    /// The plots of the row by their place among all.
    pub(super) plots: core::ops::Range<usize>,
    /// Right end of its level and reach lines, px.
    pub(super) right: f64,
}

/// Places of everything that does not move.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Plan {
    pub(super) paper: Area,
    pub(super) scale: Scale,
    /// Everything the table ever reaches, mm.
    pub(super) bounds: Bounds,
    /// Lines of the dimensions of lowest, present and highest deck, px.
    pub(super) columns: [f64; 3],
    pub(super) drawing: Area,
    pub(super) rows: Vec<Row>,
    pub(super) areas: Vec<PlotArea>,
    pub(super) ticks: Vec<Ticks>,
    pub(super) title: Option<Area>,
    pub(super) reading: Option<Area>,
    /// For paper: the table is drawn at one to so much.
    pub(super) ratio: Option<u32>,
}

impl Plan {
    /// The deck's present height, m, as a dimension from the floor, its extension line from the deck's left edge, px; on paper it is the deck's
    /// height and a wide line like all others. Nothing where dimensions are not shown.
    pub(super) fn deck_now(
        &self,
        view: &View,
        lettering: &mut Lettering<'_>,
        edge: f64,
        height: f64,
    ) -> Vec<Mark> {
        if !view.show.dimensions {
            return Vec::new();
        }
        let (x, y) = (self.columns[1], self.scale.level(height));
        let number = height_number(height, view.system);
        let word = if view.live() { "deck now" } else { "deck" };
        let dimension =
            Dimension { word, number: &number, live: view.live(), always: true, words_below: false };
        let mut marks = vec![extension(Screen::new(edge - OFF_PART, y), Screen::new(x - PAST_LINE, y))];
        marks.extend(dimension.vertical(lettering, x, [y, self.scale.y(0.0)]));
        marks
    }

    /// Where things lie, for the page; `bent_factor` is the factor by which give is drawn larger than life.
    pub(super) fn frame(&self, report: &Report, bent_factor: u16) -> Frame {
        Frame {
            scale: self.scale,
            drawing: self.drawing,
            plots: self.areas.clone(),
            reading: self.reading,
            lift: [report.lowest(), report.highest()],
            ratio: self.ratio,
            bent_factor,
        }
    }

    /// Outlines of the table on paper.
    pub(super) fn paint(&self, strokes: &[Stroke]) -> Vec<Mark> {
        strokes.iter().map(|stroke| Mark::path(stroke.class, stroke.outline.notation(&self.scale))).collect()
    }
}

/// What the plan needs to know beforehand.
pub(super) struct Needs<'a> {
    pub(super) report: &'a Report,
    pub(super) view: &'a View,
    pub(super) measure: Measure<'a>,
    pub(super) plots: &'a [Plot],
    pub(super) bounds: Bounds,
}

impl Needs<'_> {
    fn lift(&self) -> [f64; 2] {
        [self.report.lowest() * 1e3, self.report.highest() * 1e3]
    }

    /// The widest tag over the lift, px.
    fn tag(&self) -> f64 {
        let lettering = Lettering::new(self.measure, Area::default());
        let [low, high] = self.lift();
        (0..=64)
            .map(|step| (low + (high - low) * f64::from(step) / 64.0) / 1e3)
            .map(|height| tag_width(&lettering, &figures::size(height, self.view.system).number))
            .fold(0.0, f64::max)
    }

    fn pole(&self, x: f64, scale: Scale, ends: [f64; 2], names_unit: bool) -> Pole {
        let band = band(self.view.system, scale.per_mm);
        let whole = [(ends[0] / band + 1e-9).floor() * band, (ends[1] / band + 1e-9).floor() * band];
        Pole { x, scale, ends: whole, band, system: self.view.system, names_unit }
    }

    /// From the pole's left edge to the first plot.
    fn pole_room(&self, pole: &Pole) -> f64 {
        let lettering = Lettering::new(self.measure, Area::default());
        let labels = |named| pole.label_x() - pole.x + pole.labels_width(&lettering, named);
        let headed = if pole.names_unit { labels(true) + 12.0 } else { 0.0 };
        (labels(false) + 22.0).max(headed).max(WIDTH + self.tag() + 16.0)
    }

    pub(super) fn plan(&self) -> Plan {
        match self.view.layout {
            Layout::Wide => self.wide(),
            Layout::Narrow => self.narrow(),
            Layout::Print => self.print(),
        }
    }

    fn width(&self) -> f64 {
        f64::from(self.view.width.clamp(240, 10_000))
    }

    fn height(&self) -> f64 {
        f64::from(self.view.height.clamp(320, 10_000))
    }

    /// How wide and high the table ever is, mm, the floor included.
    fn size(&self) -> (f64, f64) {
        let across = (self.bounds.most.x - self.bounds.least.x).max(1.0);
        (across, self.bounds.most.y.max(self.lift()[1]).max(1.0))
    }

    /// What lies below the floor, px: hatching, or more where a crank hangs through it.
    fn below(&self, per_mm: f64) -> f64 {
        BELOW_FLOOR.max(-self.bounds.least.y * per_mm + BELOW_PARTS)
    }

    fn wide(&self) -> Plan {
        let (width, height, head) = (self.width(), self.height(), f64::from(self.view.head));
        let (across, up) = self.size();
        let [low, high] = self.lift();
        // No scale is larger than the one the height allows, so no label is longer than those of its bands.
        let largest = Scale { per_mm: (height / up).max(0.02), origin: Screen::default() };
        let pole_guess = self.pole(0.0, largest, [0.0, up], true);
        let room = self.pole_room(&pole_guess);
        let fitting = |space: f64| fit(space, LEAST, GAP).min(self.plots.len()).max(1);
        let span = |count: usize, each: f64| count as f64 * each + (count as f64 - 1.0) * GAP;
        let mut count = fitting(SHARE * width);
        let mut plots = (SHARE * width).clamp(span(count, LEAST), span(count, MOST));
        let free = |plots: f64| width - MARGIN - plots - room - BESIDE - DIMENSIONS;
        let by_width = |plots: f64| (free(plots) / across).max(0.02);
        let by_height =
            |floor: f64| ((floor - head - 8.0) / up).min((floor - head - HEADING) / high).max(0.02);
        let below = self.below(by_width(plots).min(by_height(height - BELOW_FLOOR)));
        let mut floor = height - below;
        let mut per_mm = by_width(plots).min(by_height(floor));
        if floor - low * per_mm + AXIS > height - TITLE {
            floor = height - TITLE - AXIS
                + (low * by_width(plots).min(by_height(height - TITLE - AXIS))).min(TITLE + AXIS - below);
            per_mm = by_width(plots).min(by_height(floor));
        }
        // What the height leaves over in width goes to the plots until they are wide enough, then to both sides.
        let spare = (free(plots) - across * per_mm).max(0.0);
        count = fitting(plots + spare);
        plots = (plots + spare).min(span(count, MOST)).max(plots);
        let aside = ((free(plots) - across * per_mm) / 2.0).clamp(0.0, 60.0);
        let spare = (free(plots) - across * per_mm - 2.0 * aside).max(0.0);
        plots += spare;
        let origin = Screen::new((DIMENSIONS + aside - self.bounds.least.x * per_mm).round(), floor.round());
        let scale = Scale { per_mm, origin };
        let pole_x = (width - MARGIN - plots - room).floor() + 0.5;
        let pole_top = up.max(high).min((origin.y - head - 8.0) / per_mm);
        let pole = self.pole(pole_x, scale, [0.0, pole_top], true);
        let each = (plots - (count as f64 - 1.0) * GAP) / count as f64;
        let left = width - MARGIN - plots;
        let (areas, ticks) = self.areas(0..count, scale, left, each, GAP);
        let title = Area::between([left - 12.0, width], [height - TITLE, height]);
        let reading = reading(plots, left, [scale.y(low), scale.y(high)], [head.min(12.0), title.y]);
        Plan {
            paper: Area { x: 0.0, y: 0.0, width, height },
            scale,
            bounds: self.bounds,
            columns: COLUMNS.map(|x| x + aside),
            drawing: Area::between([0.0, pole_x], [0.0, height]),
            rows: vec![Row { pole, plots: 0..count, right: width - MARGIN }],
            areas,
            ticks,
            title: Some(title),
            reading,
            ratio: None,
        }
    }

    fn narrow(&self) -> Plan {
        let (width, head) = (self.width(), f64::from(self.view.head));
        let (across, up) = self.size();
        let [low, high] = self.lift();
        let tag = self.tag();
        let free = width - NARROW_DIMENSIONS - tag - 12.0;
        let tallest = NARROW_SHARE * self.height();
        let per_mm = (free / across).min(tallest / up).max(0.02);
        let aside = ((free - across * per_mm) / 2.0).max(0.0);
        let floor = (head + 8.0 + up * per_mm).round();
        let below = self.below(per_mm);
        let origin = Screen::new((NARROW_DIMENSIONS + aside - self.bounds.least.x * per_mm).round(), floor);
        let scale = Scale { per_mm, origin };
        let plot_high = ((high - low) * per_mm).clamp(NARROW_PLOT[0], NARROW_PLOT[1]);
        let plot_mm = plot_high / (high - low).max(1e-3);
        let mut rows = Vec::new();
        let (mut areas, mut ticks) = (Vec::new(), Vec::new());
        let mut y = floor + below;
        let mut next = 0;
        while next < self.plots.len() {
            let guess = Scale { per_mm: plot_mm, origin: Screen::default() };
            let one = band(self.view.system, plot_mm);
            let ends = [low, (high / one - 1e-9).ceil() * one];
            let room = self.pole_room(&self.pole(10.5, guess, ends, false));
            let left = 10.0 + room;
            let space = width - left - MARGIN;
            let count = fit(space, NARROW_LEAST, NARROW_GAP).clamp(1, self.plots.len() - next);
            let each = ((space - (count as f64 - 1.0) * NARROW_GAP) / count as f64).min(MOST * 1.2);
            let above = HEADING.max((ends[1] - high) * plot_mm + 22.0);
            let row_scale =
                Scale { per_mm: plot_mm, origin: Screen::new(0.0, (y + above + high * plot_mm).round()) };
            let (more, steps) = self.areas(next..next + count, row_scale, left, each, NARROW_GAP);
            let right = left + count as f64 * each + (count as f64 - 1.0) * NARROW_GAP;
            areas.extend(more);
            ticks.extend(steps);
            let pole = self.pole(10.5, row_scale, ends, false);
            // Beneath the figures of the axes, and where the pole's lowest band ends.
            y = (row_scale.y(low) + AXIS + 26.0).max(row_scale.y(pole.ends[0]) + 10.0).round();
            rows.push(Row { pole, plots: next..next + count, right });
            next += count;
        }
        let height = if rows.is_empty() { floor + below } else { y };
        Plan {
            paper: Area { x: 0.0, y: 0.0, width, height },
            scale,
            bounds: self.bounds,
            columns: NARROW_COLUMNS.map(|x| x + aside),
            drawing: Area::between([0.0, width], [0.0, floor + below - 4.0]),
            rows,
            areas,
            ticks,
            title: None,
            reading: None,
            ratio: None,
        }
    }

    /// The scale that is asked for, or the largest standard one that fits.
    fn print(&self) -> Plan {
        let on_paper = self.view.on_paper;
        let print_below = if on_paper.frame { PRINT_BELOW } else { BARE_BELOW };
        let (width, height) = (self.width(), self.height());
        let (across, up) = self.size();
        let parts = |per_mm: f64| -self.bounds.least.y * per_mm + BARE_BELOW;
        let fits = |ratio: u32| {
            let per_mm = PAPER / f64::from(ratio);
            let below = print_below.max(parts(per_mm));
            across * per_mm <= width - DIMENSIONS - 24.0 && up * per_mm <= height - below - 6.0
        };
        let known = poster::ratios(self.view.system);
        let ratio = on_paper
            .ratio
            .or_else(|| known.iter().copied().find(|ratio| fits(*ratio)))
            .unwrap_or(known[known.len() - 1]);
        let per_mm = PAPER / f64::from(ratio);
        let aside = ((width - DIMENSIONS - 24.0 - across * per_mm) / 2.0).max(0.0);
        let floor = (height - print_below.max(parts(per_mm))).round();
        let origin = Screen::new((DIMENSIONS + aside - self.bounds.least.x * per_mm).round(), floor);
        let paper = Area { x: 0.0, y: 0.0, width, height };
        Plan {
            paper,
            scale: Scale { per_mm, origin },
            bounds: self.bounds,
            columns: COLUMNS.map(|x| x + aside),
            drawing: paper,
            rows: Vec::new(),
            areas: Vec::new(),
            ticks: Vec::new(),
            title: None,
            reading: None,
            ratio: Some(ratio),
        }
    }

    /// Areas and value axes of a row of plots.
    fn areas(
        &self,
        which: core::ops::Range<usize>,
        scale: Scale,
        left: f64,
        each: f64,
        gap: f64,
    ) -> (Vec<PlotArea>, Vec<Ticks>) {
        let [low, high] = self.lift();
        self.plots[which]
            .iter()
            .enumerate()
            .map(|(place, plot)| {
                let x = (left + place as f64 * (each + gap)).floor();
                let (least, most) = plot.extremes();
                let ticks = Ticks::covering(least * plot.per_si, most * plot.per_si, steps(each));
                let per_shown = each / (ticks.last() - ticks.first);
                let area = PlotArea {
                    chart: plot.chart,
                    area: Area::between([x, x + each], [scale.y(low), scale.y(high)]),
                    scale,
                    zero: x - ticks.first * per_shown,
                    per_value: per_shown * plot.per_si,
                };
                (area, ticks)
            })
            .unzip()
    }
}

/// How many things of a least width fit into a space.
fn fit(space: f64, least: f64, gap: f64) -> usize {
    (1..8)
        .rev()
        .find(|count| f64::from(*count) * (least + gap) - gap <= space)
        .map_or(1, |count: u8| usize::from(count))
}

/// The most steps a value axis of a width has room for.
pub(super) fn steps(width: f64) -> usize {
    (2..14).rev().find(|count| f64::from(*count) * STEP <= width).map_or(2, |count: u8| usize::from(count))
}

/// Where the table of values has room: beneath the plots' axes or above their headings.
fn reading(width: f64, left: f64, [low, high]: [f64; 2], [top, bottom]: [f64; 2]) -> Option<Area> {
    let below = low + AXIS + 6.0;
    let above = high - HEADING - 8.0;
    let room = (bottom - 8.0 - below).min(READING);
    if width < 240.0 {
        None
    } else if room >= READING_LEAST {
        Some(Area { x: left, y: below + (READING - room).min(4.0), width, height: room })
    } else if top + READING <= above {
        Some(Area { x: left, y: above - READING, width, height: READING })
    } else {
        None
    }
}

/// Everything a table reaches anywhere in its lift, mm: the boxes at both ends and in the middle of it, floor included.
pub(super) fn reach(report: &Report, subject: impl Fn(f64) -> Vec<Stroke>) -> Bounds {
    let (low, high) = (report.lowest(), report.highest());
    let origin = glam::DVec2::ZERO;
    [0.0, 0.25, 0.5, 0.75, 1.0]
        .into_iter()
        .filter_map(|part| Bounds::around(&subject(low + (high - low) * part)))
        .fold(Bounds { least: origin, most: origin }, Bounds::with)
}

/// The number of a height without its unit.
pub(super) fn height_number(metres: f64, system: System) -> String {
    figures::size(metres, system).number
}
