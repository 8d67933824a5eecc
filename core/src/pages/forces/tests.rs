use super::*;
use crate::design::Demo;
use crate::report::analyse;

fn reader(system: System) -> Reader {
    Reader { system, address: "https://example.org/".into(), date: "2026-01-31".into() }
}

fn page(demo: Demo) -> Forces {
    Forces::new(Rc::new(analyse(&demo.design()).unwrap()))
}

#[test]
fn every_part_is_offered_and_one_is_chosen() {
    for demo in Demo::ALL {
        for system in [System::Metric, System::Inch] {
            let reader = reader(system);
            let mut page = page(demo);
            for part in Freed::all(page.stages()) {
                for doing in ["rest", "raise", "lower"] {
                    page.answer(PART, &part.to_string(), &reader);
                    page.answer(DOING, doing, &reader);
                    let html = page.document(&reader).html();
                    assert_eq!(html.matches("data-answer=\"part\"").count(), 2 * page.stages() + 4);
                    assert_eq!(html.matches("aria-pressed=\"true\"").count(), 2);
                    assert!(!html.contains("NaN") && !html.contains("inf"), "{part} {doing}");
                    // A head, a line for every force, and the sums.
                    let body = page.report.body(&page.report.at(page.deck), page.doing, part).unwrap();
                    assert_eq!(html.matches("<tr>").count(), body.acting.len() + 2);
                }
            }
        }
    }
}

#[test]
fn what_is_no_answer_changes_nothing() {
    let reader = reader(System::Metric);
    let mut page = page(Demo::PaperLift);
    page.answer(PART, "B2", &reader);
    page.answer(DECK, "0.6", &reader);
    for (key, text) in [(PART, "A9"), (PART, ""), (DOING, "fly"), (DECK, "NaN"), (DECK, "high"), ("x", "y")] {
        page.answer(key, text, &reader);
    }
    assert_eq!(page.part.to_string(), "B2");
    assert!((page.deck - 0.6).abs() < 1e-12 && page.doing == Doing::Standing);
    page.answer(DECK, "99", &reader);
    assert!((page.deck - page.report.highest()).abs() < 1e-12);
}

#[test]
fn the_picture_follows_the_deck_and_what_stands_still_is_kept() {
    let mut page = page(Demo::PaperLift);
    let view = View::new(1000, 440, Layout::Wide, System::Metric);
    let (low, high) = (page.report.lowest(), page.report.highest());
    let first = page.live(&view, low, 0.0).unwrap();
    let second = page.live(&view, high, 0.0).unwrap();
    assert_eq!((first.edition, &first.still), (second.edition, &second.still));
    assert_ne!(first.moving, second.moving);
    page.answer(PART, "deck", &reader(System::Metric));
    assert_ne!(page.live(&view, low, 0.0).unwrap().edition, first.edition);
}
