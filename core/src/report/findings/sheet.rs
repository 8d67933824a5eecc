//! Whether the wooden parts of each thickness can come off one sheet, by their area alone.
use crate::design::Design;
use crate::parts::{parts, sheet_areas};
use crate::quantity::{Amount, Length, Phrase, capital};
use crate::report::Report;
use crate::report::finding::{Finding, Grade, Spot};

/// Above this share of the sheet, kerf and odd offcuts usually decide (common practice, no source).
const TIGHT: f64 = 0.9;

/// Areas closer than this are the same, as a part of a sheet.
const SAME: f64 = 1e-9;

/// Sheets that an area takes at least; `share` is that area over a sheet's.
fn sheets(share: f64) -> String {
    match (share - SAME).ceil().max(1.0) {
        count if count < 2.0 => "one".to_owned(),
        count if count < 3.0 => "two".to_owned(),
        count if count < 4.0 => "three".to_owned(),
        count => format!("{count:.0}"),
    }
}

/// Words behind a sentence, as its beginning where there is none.
fn join(told: Phrase, words: &str) -> Phrase {
    if told == Phrase::default() { told.and(capital(words)) } else { told.and("; ").and(words) }
}

/// Area of a design's sheet, m2.
fn whole(design: &Design) -> f64 {
    design.shop.sheet_length.to_m() * design.shop.sheet_width.to_m()
}

/// What a tenth off the arms' width and off the deck's would bring, tried out; only what takes less of the thickness that `now` takes that share.
fn slimmer(design: &Design, thickness: Length, now: f64) -> Phrase {
    let less = |length: Length| Length::mm((0.9 * length.to_mm()).floor());
    let (mut arms, mut deck) = (design.clone(), design.clone());
    arms.arms.width = less(arms.arms.width);
    deck.frames.deck_width = less(deck.frames.deck_width);
    let tried = [
        ("arms ", " wide take ", arms.arms.width, &arms),
        ("a deck ", " wide takes ", deck.frames.deck_width, &deck),
    ];
    tried.into_iter().fold(Phrase::default(), |told, (what, takes, width, design)| {
        let areas = sheet_areas(&parts(design));
        let share = areas.iter().find(|of| of.0 == thickness).map_or(0.0, |of| of.1) / whole(design);
        if share > now - SAME {
            return told;
        }
        join(told, what).with(Amount::AtMost(width.to_m())).and(takes).with(Amount::Share(share))
    })
}

/// What parts of several thicknesses take in all.
fn in_all(areas: &[(Length, f64)], whole: f64) -> Phrase {
    let last = areas.len() - 1;
    let list = areas.iter().enumerate().fold(Phrase::default(), |list, (at, (thickness, area))| {
        let before = match at {
            0 => " By area they need ",
            at if at == last => " and ",
            _ => ", ",
        };
        let word = match at {
            0 if area / whole > 1.0 + SAME => " sheets of ",
            0 => " sheet of ",
            _ => " of ",
        };
        list.and(before).and(sheets(area / whole)).and(word).with(Amount::Laid(*thickness))
    });
    list.and(".")
}

/// The parts' area against the sheet's, each thickness by itself and the fullest told. A layout may still not exist: this is the first sieve.
pub(super) fn area(report: &Report) -> Finding {
    let design = &report.design;
    let (areas, whole) = (sheet_areas(&report.parts), whole(design));
    let fuller = |most: (Length, f64), of: &(Length, f64)| if of.1 > most.1 { *of } else { most };
    let (thickness, taken) = areas.iter().fold((Length::ZERO, 0.0), fuller);
    let several = areas.len() > 1;
    let share = taken / whole;
    let grade = if share > 1.0 + SAME {
        Grade::Over
    } else if share > TIGHT {
        Grade::Watch
    } else {
        Grade::Fine
    };
    let mut start = Phrase::new("Sheet: the wooden parts take ")
        .with(Amount::Area(taken))
        .and(" of ")
        .with(Amount::Area(whole))
        .and(", ")
        .with(Amount::Share(share));
    if several {
        start = start.and(" of a sheet ").with(Amount::Laid(thickness)).and(" thick");
    }
    let (mut phrase, remedy) = match grade {
        Grade::Over => {
            let slim = slimmer(design, thickness, share);
            let words = if slim == Phrase::default() { "take " } else { "or take " };
            let more = join(slim, words).and(sheets(share)).and(" sheets");
            let more = if several { more.and(" of ").with(Amount::Laid(thickness)) } else { more };
            (start.and(": more than one sheet."), Some(more.and(".")))
        }
        Grade::Watch => (
            start.and(": too full for kerf and offcuts."),
            Some(
                join(slimmer(design, thickness, share), "below ")
                    .with(Amount::Share(TIGHT))
                    .and(" a layout is usually found."),
            ),
        ),
        Grade::Fine => (start.and(" before kerf and offcuts."), None),
    };
    if several {
        phrase = phrase.then(in_all(&areas, whole));
    }
    Finding { grade, ratio: share, phrase, remedy, cure: None, height: None, spot: Spot::Deck, curve: None }
}
