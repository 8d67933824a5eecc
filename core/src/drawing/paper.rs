//! Dimensions of the frame, for the elevation on paper.
use super::dimension::{Dimension, OFF_PART, PAST_LINE, extension};
use super::elevation::LoadShape;
use super::lettering::Lettering;
use super::mark::Mark;
use super::plan::height_number;
use super::scale::Screen;
use super::sheet::{Sheet, with_extensions};
use crate::report::Report;

/// The first level dimension beneath the floor, and the distance of the next, px.
const FIRST: f64 = 24.0;
const NEXT: f64 = 22.0;

impl Sheet {
    /// Height of the pin line, places of the casters and length of the base.
    pub(super) fn frame_dimensions(&self, lettering: &mut Lettering<'_>, report: &Report) -> Vec<Mark> {
        let scale = &self.plan.scale;
        let design = &report.design;
        let floor = scale.y(0.0);
        let system = self.view.system;
        let mut marks = Vec::new();
        let pin = design.lift.pin_line;
        let number = height_number(pin.to_m(), system);
        let dimension =
            Dimension { word: "pin", number: &number, live: false, always: false, words_below: false };
        let (x, y) = (self.plan.columns[0], scale.y(pin.to_mm()));
        marks.push(extension(Screen::new(scale.x(0.0) - OFF_PART, y), Screen::new(x - PAST_LINE, y)));
        marks.extend(dimension.vertical(lettering, x, [y, floor]));
        let base = design.frames.base_left;
        let spans = [
            ("casters", design.running.caster_left, design.running.caster_right),
            ("base", base, base + design.frames.base_length),
        ];
        for ((word, from, to), line) in spans.into_iter().zip(0_u8..) {
            let y = floor + FIRST + NEXT * f64::from(line);
            let x = [from, to].map(|place| scale.x(place.to_mm()));
            let number = height_number((to - from).to_m(), system);
            let dimension =
                Dimension { word, number: &number, live: false, always: false, words_below: false };
            let line = dimension.level(lettering, y, x);
            marks.extend(with_extensions(
                line,
                x.map(|x| [Screen::new(x, floor + 8.0), Screen::new(x, y + PAST_LINE)]),
            ));
        }
        marks
    }

    /// Height of the load's upper edge above the floor, where it is drawn whole.
    pub(super) fn with_load(&self, lettering: &mut Lettering<'_>, load: &LoadShape) -> Vec<Mark> {
        let scale = &self.plan.scale;
        let top = load.corners[3];
        let drawn = !load.broken && (top - load.corners[0]).length() > 0.0;
        let number = height_number(top.y / 1e3, self.view.system);
        let dimension =
            Dimension { word: "with load", number: &number, live: false, always: false, words_below: false };
        let (x, y) = (self.plan.columns[2], scale.y(top.y));
        if !drawn {
            return [vec![Mark::path("ext", String::new())], dimension.nothing()].concat();
        }
        let edge = scale.x(top.x);
        let mut marks = vec![extension(Screen::new(edge - OFF_PART, y), Screen::new(x - PAST_LINE, y))];
        marks.extend(dimension.vertical(lettering, x, [y, scale.y(0.0)]));
        marks
    }
}
