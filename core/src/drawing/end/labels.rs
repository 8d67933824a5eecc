//! Lettering, arrow and dimension that tell how the deck gives way.
use super::sheet::{Scene, SwaySheet};
use super::{EndSubject, frames};
use crate::drawing::arrow;
use crate::drawing::dimension::{Dimension, OFF_PART, PAST_LINE};
use crate::drawing::lettering::{Lettering, text};
use crate::drawing::mark::{Anchor, Mark};
use crate::drawing::moving::{centre_of_mass, load_words};
use crate::drawing::outline::Bounds;
use crate::drawing::scale::Screen;
use crate::drawing::sheet::with_extensions;
use crate::quantity::{Amount, figures};
use crate::report::{Case, PUSH, Report, Station};
use glam::DVec2;

/// Length of the arrow for [`PUSH`], and the least it is drawn with, px.
const ARROW: f64 = 34.0;
const LEAST_ARROW: f64 = 10.0;
/// From the deck's surface up to the dimension of the give, and the levels that are tried after it, px.
const OVER_DECK: f64 = 16.0;
/// Free play that reads as nothing is not drawn, px.
const LEAST_PLAY: f64 = 0.4;

impl SwaySheet {
    /// The free play of the deck to either side, drawn with the factor of the give, as a tint over its edge.
    pub(super) fn slack(&self, scene: &Scene<'_>, end: &EndSubject<'_>, station: &Station) -> Vec<Mark> {
        let most = scene.sway.and_then(|sway| sway.rattle(station.height)).map_or(0.0, |rattle| rattle.most);
        let reach = self.drawn(most, 1.0);
        if self.plan.scale.length(reach) < LEAST_PLAY {
            return vec![Mark::path("b-play", String::new())];
        }
        let panel = Bounds::around(&[frames::panel(&EndSubject { leaning: None, ..*end }, "ph")]);
        let Some(panel) = panel else { return vec![Mark::path("b-play", String::new())] };
        let (least, most) = (panel.least - DVec2::new(reach, 0.0), panel.most + DVec2::new(reach, 0.0));
        let corners = [least, DVec2::new(most.x, least.y), most, DVec2::new(least.x, most.y)];
        let outline = crate::drawing::outline::Outline::polygon(&corners);
        vec![Mark::path("b-play", outline.notation(&self.plan.scale))]
    }

    /// Centre of mass and what the load weighs.
    pub(super) fn load_labels(
        &self,
        lettering: &mut Lettering<'_>,
        report: &Report,
        middle: DVec2,
    ) -> Vec<Mark> {
        let at = self.plan.scale.to_screen(middle.into());
        let mut marks: Vec<Mark> = centre_of_mass(lettering, at).into();
        let words = load_words(report, self.view.system);
        let sides = [
            (12.0, -8.0, Anchor::Start),
            (-12.0, -8.0, Anchor::End),
            (12.0, 16.0, Anchor::Start),
            (0.0, -14.0, Anchor::Middle),
            (0.0, 26.0, Anchor::Middle),
        ];
        let forms = sides.map(|(right, down, anchor)| text("b halo", at.by(right, down), anchor, &words));
        let first = forms[0].clone();
        let placed = lettering.place(forms);
        marks.push(if placed.is_left_out() { lettering.set(first) } else { placed });
        marks
    }

    /// The push as an arrow, the give it makes as a dimension from the centre line, and how much the deck gives and rattles in words.
    pub(super) fn given(
        &self,
        lettering: &mut Lettering<'_>,
        scene: &Scene<'_>,
        end: &EndSubject<'_>,
        station: &Station,
        push: f64,
    ) -> Vec<Mark> {
        let mut marks = self.push_arrow(lettering, end, push);
        marks.extend(self.give_dimension(lettering, scene, end, station, push));
        marks.extend(self.words(lettering, scene, end, station));
        marks
    }

    /// Shaft, head and figure of the push at the deck's edge.
    fn push_arrow(&self, lettering: &mut Lettering<'_>, end: &EndSubject<'_>, push: f64) -> Vec<Mark> {
        let [left, right] = self.deck_edges(end);
        let length = (push.abs() / PUSH * ARROW).max(LEAST_ARROW);
        let (tail, tip) =
            if push >= 0.0 { (left.by(-length, 0.0), left) } else { (right.by(length, 0.0), right) };
        let [shaft, head] =
            if push.abs() > 0.0 { arrow::force(tail, tip) } else { [String::new(), String::new()] };
        let words = if push.abs() > 0.0 {
            figures::small_force(push.abs(), self.view.system).to_string()
        } else {
            String::new()
        };
        let anchor = if push >= 0.0 { Anchor::End } else { Anchor::Start };
        let aside = if push >= 0.0 { -4.0 } else { 4.0 };
        let middle = tail.by((tip.x - tail.x) / 2.0, 0.0);
        let forms = [
            text("ft halo", tail.by(aside, 4.0), anchor, &words),
            text("ft halo", middle.by(0.0, -8.0), Anchor::Middle, &words),
            text("ft halo", middle.by(0.0, 17.0), Anchor::Middle, &words),
        ];
        vec![Mark::path("fl", shaft), Mark::path("fh", head), lettering.place(forms)]
    }

    /// The best guess of the give under this push, between the centre line and the middle of the leaning deck.
    fn give_dimension(
        &self,
        lettering: &mut Lettering<'_>,
        scene: &Scene<'_>,
        end: &EndSubject<'_>,
        station: &Station,
        push: f64,
    ) -> Vec<Mark> {
        let give = scene.sway.and_then(|sway| sway.give(Case::Middle, station.height)).unwrap_or(f64::NAN);
        let number = figures::sag(give * push.abs() / PUSH, self.view.system).number;
        let dimension =
            Dimension { word: "gives", number: &number, live: false, always: false, words_below: false };
        let scale = &self.plan.scale;
        let panel = Bounds::around(&[frames::panel(end, "ph")]);
        let drawn = push.abs() > 0.0 && give.is_finite();
        let Some(panel) = panel.filter(|_| drawn) else {
            return with_extensions(dimension.nothing(), [[Screen::default(); 2]; 2]);
        };
        let straight = scale.x(self.middle);
        let leaning = scale.x(f64::midpoint(panel.least.x, panel.most.x));
        let top = scale.y(panel.most.y).min(scale.y(super::load::load(end).top)) - OVER_DECK;
        let line = dimension.level(lettering, top, [straight, leaning]);
        with_extensions(
            line,
            [straight, leaning]
                .map(|x| [Screen::new(x, top + OVER_DECK - OFF_PART), Screen::new(x, top - PAST_LINE)]),
        )
    }

    /// How much the deck gives and rattles, beside the deck or between the arms.
    fn words(
        &self,
        lettering: &mut Lettering<'_>,
        scene: &Scene<'_>,
        end: &EndSubject<'_>,
        station: &Station,
    ) -> Vec<Mark> {
        let system = self.view.system;
        let height = station.height;
        let range = |from: f64, to: f64| Amount::GiveRange(from, to).text(system);
        let gives = scene.sway.and_then(|sway| {
            let middle = sway.give(Case::Middle, height)?;
            let [stiff, soft] =
                [Case::Stiff, Case::Soft].map(|case| sway.give(case, height).unwrap_or(middle));
            let push = figures::small_force(PUSH, system);
            Some(format!("gives {} at {push}", range(stiff, soft)))
        });
        let rattles = scene
            .sway
            .and_then(|sway| sway.rattle(height))
            .map(|rattle| format!("rattles by {}", range(rattle.least, rattle.most)));
        let [left, right] = self.deck_edges(end);
        let middle = Screen::new(self.plan.scale.x(self.middle), left.y);
        let over = self.plan.scale.y(super::load::load(end).top) - middle.y;
        let under = self.plan.scale.length(end.side.design.lift.deck_stack.to_mm()) + 24.0;
        let lines = [("sag-t b halo", gives, 0.0), ("play-t halo", rattles, 16.0)];
        lines
            .into_iter()
            .map(|(class, words, line)| {
                let words = words.unwrap_or_default();
                let aside = [-30.0, 22.0, under].into_iter().flat_map(|down| {
                    [(right.by(8.0, down), Anchor::Start), (left.by(-8.0, down), Anchor::End)]
                });
                let inside =
                    [over - 26.0, over - 50.0, over - 74.0, -30.0, under, under + 44.0, under + 88.0];
                let forms: Vec<Mark> = inside[..3]
                    .iter()
                    .map(|down| (middle.by(0.0, *down), Anchor::Middle))
                    .chain(aside)
                    .chain(inside[3..].iter().map(|down| (middle.by(0.0, *down), Anchor::Middle)))
                    .map(|(at, anchor)| text(class, at.by(0.0, line), anchor, &words))
                    .filter(|form| lettering.area(form).is_none_or(|area| self.plan.drawing.holds(&area)))
                    .collect();
                let nothing = text(class, Screen::default(), Anchor::Start, "");
                if forms.is_empty() { nothing } else { lettering.place(forms) }
            })
            .collect()
    }
}
