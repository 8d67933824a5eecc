//! Sheets, bars and parts in plan of both demos and odd ones: no lettering meets other lettering, none leaves its paper.
#![allow(clippy::unwrap_used, clippy::expect_used, reason = "tests fail by panicking")]
use super::*;
use crate::design::{Cutting, Demo, Design};
use crate::drawing::boring::{plan, tiles};
use crate::drawing::{Shape, widths};
use crate::parts::parts;
use crate::quantity::{Count, Length, System};
use crate::workshop::drilling::tables;
use crate::workshop::sheets::{self as laid, Search, jobs, passes, sequence};

const SYSTEMS: [System; 2] = [System::Metric, System::Inch];
const WIDTHS: [f64; 4] = [340.0, 620.0, 690.0, 1060.0];

fn designs() -> Vec<Design> {
    let mut list: Vec<Design> = Demo::ALL.iter().map(|demo| demo.design()).collect();
    let mut odd = |change: fn(&mut Design)| {
        let mut design = Design::default();
        change(&mut design);
        list.push(design);
    };
    odd(|design| design.shop.cutting = Cutting::Free);
    odd(|design| {
        design.shop.sheet_length = Length::mm(900.0);
        design.shop.sheet_width = Length::mm(700.0);
    });
    odd(|design| design.shop.keep_grain = false);
    odd(|design| {
        design.arms.layers = Count::of(4);
        design.shop.offcut_length = Length::mm(1200.0);
        design.shop.offcut_width = Length::mm(300.0);
    });
    odd(|design| design.lift.stages = Count::of(4));
    odd(|design| {
        design.lift.arm_length = Length::mm(1500.0);
        design.shop.kerf = Length::ZERO;
        design.shop.trim = Length::ZERO;
    });
    list
}

/// Fails where texts meet, or one leaves the paper.
fn tidy(drawn: &Drawn, what: &str) {
    assert!(drawn.width > 0.0 && drawn.height > 0.0, "{what}");
    let boxes: Vec<_> =
        drawn.marks.iter().filter_map(|mark| Some((mark.lettering(&widths)?, mark))).collect();
    for (at, (area, mark)) in boxes.iter().enumerate() {
        let inside = area.x >= -0.5
            && area.y >= -0.5
            && area.right() <= drawn.width + 0.5
            && area.bottom() <= drawn.height + 0.5;
        assert!(inside, "{what}: {mark:?} leaves {} by {}", drawn.width, drawn.height);
        for (other, second) in &boxes[at + 1..] {
            assert!(!area.meets(other), "{what}: {mark:?} meets {second:?}");
        }
    }
    let svg = drawn.svg();
    assert!(!svg.contains("NaN") && !svg.contains("inf"), "{what}");
}

#[test]
fn sheets_keep_their_lettering_apart() {
    for design in designs() {
        for job in jobs(&design, &parts(&design)) {
            let mut search = Search::new(&job);
            search.advance(300);
            for sheet in &search.best().sheets {
                let order =
                    sequence(&job, sheet).filter(|_| job.cutting == Cutting::Straight).unwrap_or_default();
                let steps = passes(&job, sheet, &order);
                for (system, width) in
                    SYSTEMS.into_iter().flat_map(|system| WIDTHS.map(|width| (system, width)))
                {
                    for upright in [false, true] {
                        let of = Panel {
                            job: &job,
                            sheet,
                            passes: &steps,
                            offcuts: &order.offcuts,
                            system,
                            upright,
                        };
                        let drawn = panel(&of, width, &widths);
                        tidy(&drawn, "sheet");
                        let pieces = drawn.marks.iter().filter(|mark| mark.class == "n ply").count();
                        assert_eq!(pieces, sheet.placed.len());
                    }
                }
            }
        }
    }
}

/// Pieces are drawn at one scale, a kerf apart.
#[test]
fn a_sheet_is_to_scale() {
    let design = Demo::PaperLift.design();
    let job = jobs(&design, &parts(&design)).remove(0);
    let search = Search::new(&job);
    let sheet = &search.best().sheets[0];
    let of = Panel { job: &job, sheet, passes: &[], offcuts: &[], system: System::Metric, upright: false };
    let drawn = panel(&of, 690.0, &widths);
    let size = |mark: &Mark| match mark.shape {
        Shape::Rect { width, height, .. } => [width, height],
        _ => [0.0; 2],
    };
    let whole = drawn.marks.iter().find(|mark| mark.class == "w sheet").map(size).unwrap();
    let per_mm = whole[0] / design.shop.sheet_length.to_mm();
    assert!((whole[1] / design.shop.sheet_width.to_mm() - per_mm).abs() < 1e-9);
    let drawn: Vec<[f64; 2]> = drawn.marks.iter().filter(|mark| mark.class == "n ply").map(size).collect();
    for ([wide, high], placed) in drawn.into_iter().zip(&sheet.placed) {
        assert!((wide - placed.length.to_mm() * per_mm).abs() < 1e-9);
        assert!((high - placed.width.to_mm() * per_mm).abs() < 1e-9);
    }
}

#[test]
fn bars_keep_their_lettering_apart() {
    for design in designs() {
        for (system, width) in SYSTEMS.into_iter().flat_map(|system| WIDTHS.map(|width| (system, width))) {
            let list = laid::bars(&parts(&design), design.shop.kerf, system);
            let drawn = bars(&list, design.shop.kerf, system, width, &widths);
            tidy(&drawn, "bars");
            let cuts: usize = list.iter().map(|bar| bar.cuts.len()).sum();
            assert_eq!(drawn.marks.iter().filter(|mark| mark.class == "n ply").count(), cuts);
        }
    }
}

#[test]
fn parts_in_plan_keep_their_lettering_apart() {
    for design in designs() {
        let list = parts(&design);
        for table in tables(&list, Length::mm(0.3)) {
            let part = list.iter().find(|part| part.number == table.part).unwrap();
            for system in SYSTEMS {
                for width in WIDTHS {
                    let plan = plan(part, &table.rows, system, width, &widths);
                    tidy(&plan.drawn, &table.name);
                }
                for tile in tiles(part, &table.rows, system, &widths) {
                    tidy(&tile.drawn, &table.name);
                }
            }
        }
    }
}

/// On a figure as wide as half a page every hole of the demos has its letter.
#[test]
fn every_hole_has_its_letter() {
    for demo in Demo::ALL {
        let list = parts(&demo.design());
        for table in tables(&list, Length::mm(0.3)) {
            let part = list.iter().find(|part| part.number == table.part).unwrap();
            let plan = plan(part, &table.rows, System::Metric, 620.0, &widths);
            let letters: Vec<&str> = plan
                .drawn
                .marks
                .iter()
                .filter(|mark| mark.class == "b halo")
                .filter_map(|mark| match &mark.shape {
                    Shape::Text { words, .. } => Some(words.as_str()),
                    _ => None,
                })
                .collect();
            let wanted: Vec<&str> = table.rows.iter().map(|row| row.letter.as_str()).collect();
            assert_eq!(letters, wanted, "{}", table.name);
        }
    }
}
