//! The end elevation that sways under a push.
use std::rc::Rc;

use super::Sway;
use crate::drawing::end::{MOST_PUSH, Scene, SwayLive, SwaySheet};
use crate::drawing::{Layout, Mark, View, widths};
use crate::pages::Live;
use crate::quantity::{Amount, System, figures};
use crate::report::{Case, PUSH, Station, SwayReport};

/// What stands still of the picture, kept as long as the view and the figures behind it stay.
#[derive(Debug)]
pub(super) struct Kept {
    view: View,
    sheet: SwaySheet,
    still: Rc<str>,
    edition: u32,
}

impl Sway {
    /// The picture for a room, a deck height, m, and a push, N.
    pub(super) fn picture(&mut self, view: &View, deck: f64, push: f64) -> Live {
        let scene = Scene {
            report: &self.report,
            sway: self.known.as_ref(),
            findings: &self.findings,
            beside: view.layout == Layout::Wide,
        };
        let kept = self.kept.take().filter(|kept| kept.view == *view).unwrap_or_else(|| {
            self.edition = self.edition.wrapping_add(1);
            let sheet = SwaySheet::new(&scene, view, &widths);
            Kept { view: view.clone(), still: sheet.still_marks().into(), sheet, edition: self.edition }
        });
        let station = self.report.at(deck);
        let (marks, live) = kept.sheet.moving(&scene, &station, push, &widths);
        let picture = Live {
            width: kept.sheet.width,
            height: kept.sheet.height,
            still: Rc::clone(&kept.still),
            edition: kept.edition,
            moving: marks.iter().map(Mark::svg).collect(),
            spoken: spoken(self.known.as_ref(), &station, &live, view.system),
            pushed: live.pushed,
            most_push: if live.push.is_some() { MOST_PUSH } else { 0.0 },
            per_newton: live.per_newton,
            per_metre: kept.sheet.frame.scale.length(1e3),
            lift: kept.sheet.frame.lift,
            deck: live.deck,
            push: live.push,
            carriage: live.carriage,
            settled: self.is_settled(),
            sketch: None,
        };
        self.kept = Some(kept);
        picture
    }
}

/// What one would read off the picture.
fn spoken(sway: Option<&SwayReport>, station: &Station, live: &SwayLive, system: System) -> String {
    let height = station.height;
    let words = |amount: Amount| amount.text(system);
    let mut sentences = vec![format!("Deck at {}.", words(Amount::Size(height)))];
    let Some(sway) = sway else {
        sentences.push("The table stands straight; no push is drawn.".into());
        return sentences.join(" ");
    };
    let pushed = live.pushed.abs() > 0.0;
    let push = if pushed { live.pushed.abs() } else { PUSH };
    let give = |case| sway.give(case, height).map(|metres| metres * push / PUSH);
    if let Some(middle) = give(Case::Middle) {
        let start = match (pushed, live.pushed > 0.0) {
            (false, _) => format!("To {} it gives", words(Amount::Force(push))),
            (true, true) => format!("Pushed to the right with {} the deck gives", words(Amount::Force(push))),
            (true, false) => format!("Pushed to the left with {} the deck gives", words(Amount::Force(push))),
        };
        let band = match (give(Case::Stiff), give(Case::Soft)) {
            (Some(stiff), Some(soft)) => {
                format!(", between {} and {}", figures::sag(stiff, system).number, words(Amount::Give(soft)))
            }
            _ => String::new(),
        };
        sentences.push(format!("{start} {}{band}.", words(Amount::Give(middle))));
    }
    if let Some(rattle) = sway.rattle(height) {
        sentences.push(format!("It rattles by {}.", words(Amount::GiveRange(rattle.least, rattle.most))));
    }
    if let Some(multiple) = sway.multiple(Case::Middle, height) {
        sentences
            .push(format!("It would collapse under {} times its load.", words(Amount::Factor(multiple))));
    }
    sentences.join(" ")
}
