//! Sheet layouts: nothing lost, nothing overlapping, all inside, kerf and grain kept, and the cuts really free what is shown.
#![allow(clippy::unwrap_used, clippy::expect_used, reason = "a test stops at the first surprise")]

mod cutting;

use proptest::prelude::*;
use risewright::design::{Cutting, Demo, Design};
use risewright::parts::{Form, parts};
use risewright::quantity::{Length, System};
use risewright::report::{Grade, analyse};
use risewright::workshop::sheets::{
    Adviser, Blank, Hint, Job, Layout, Pass, Piece, Search, bars, jobs, passes, sequence,
};

/// Any job a builder may have, and some that nobody has: pieces larger than the sheet, no kerf, offcuts.
fn any_job() -> impl Strategy<Value = Job> {
    let piece = (20_000_i64..1_600_000, 20_000_i64..800_000, any::<bool>());
    let offcut = prop::option::of((100_000_i64..1_500_000, 100_000_i64..1_500_000));
    (prop::collection::vec(piece, 1..30), offcut, 0_i64..16_000, 0_i64..40_000, any::<bool>()).prop_map(
        |(pieces, offcut, kerf, trim, straight)| {
            let mut blanks =
                vec![Blank { length: Length::mm(1220.0), width: Length::mm(610.0), count: None }];
            if let Some((length, width)) = offcut {
                let [length, width] = [length, width].map(Length::from_steps);
                blanks.insert(0, Blank { length, width, count: Some(1) });
            }
            let pieces = pieces.into_iter().zip(1..).map(|((length, width, may_turn), part)| Piece {
                part,
                name: format!("Piece {part}"),
                length: Length::from_steps(length),
                width: Length::from_steps(width),
                may_turn,
            });
            Job {
                thickness: Length::mm(18.0),
                pieces: pieces.collect(),
                blanks,
                kerf: Length::from_steps(kerf),
                trim: Length::from_steps(trim),
                cutting: if straight { Cutting::Straight } else { Cutting::Free },
            }
        },
    )
}

/// The laws of a layout, told by where it breaks them.
fn lawful(job: &Job, layout: &Layout) -> Result<(), TestCaseError> {
    let mut seen: Vec<usize> = layout.left.clone();
    for sheet in &layout.sheets {
        let blank = job.blanks[sheet.blank];
        for placed in &sheet.placed {
            seen.push(placed.piece);
            let piece = &job.pieces[placed.piece];
            let sides = if placed.turned { (piece.width, piece.length) } else { (piece.length, piece.width) };
            prop_assert_eq!((placed.length, placed.width), sides, "the size is the piece's own");
            prop_assert!(!placed.turned || piece.may_turn, "grain");
            let inside = |from: Length, size: Length, whole: Length| {
                from >= job.trim && from + size <= whole - job.trim
            };
            prop_assert!(inside(placed.x, placed.length, blank.length), "inside the trimmed sheet");
            prop_assert!(inside(placed.y, placed.width, blank.width), "inside the trimmed sheet");
        }
        for (at, one) in sheet.placed.iter().enumerate() {
            for other in &sheet.placed[at + 1..] {
                let beside =
                    one.x + one.length + job.kerf <= other.x || other.x + other.length + job.kerf <= one.x;
                let above =
                    one.y + one.width + job.kerf <= other.y || other.y + other.width + job.kerf <= one.y;
                prop_assert!(beside || above, "a kerf between {:?} and {:?}", one, other);
            }
        }
    }
    seen.sort_unstable();
    prop_assert_eq!(seen, (0..job.pieces.len()).collect::<Vec<_>>(), "no piece lost or added");
    for blank in 0..job.blanks.len() {
        let used = layout.sheets.iter().filter(|sheet| sheet.blank == blank).count();
        prop_assert!(
            job.blanks[blank].count.is_none_or(|count| used <= count as usize),
            "no more offcuts than there are"
        );
    }
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn a_layout_keeps_its_laws(job in any_job()) {
        let mut search = Search::new(&job);
        lawful(&job, search.best())?;
        search.advance(400);
        lawful(&job, search.best())?;
    }

    #[test]
    fn a_longer_search_is_never_worse_and_always_the_same(job in any_job()) {
        let (mut one, mut other) = (Search::new(&job), Search::new(&job));
        let first = (one.best().left.len(), one.best().bought(&job));
        one.advance(600);
        for _ in 0..6 {
            other.advance(100);
        }
        prop_assert_eq!(one.best(), other.best());
        prop_assert!((one.best().left.len(), one.best().bought(&job)) <= first);
        // What is left over fits on no sheet at all.
        for piece in &one.best().left {
            let piece = &job.pieces[*piece];
            let room = job.room(*job.blanks.last().unwrap());
            let fits = |length, width| length <= room[0] && width <= room[1];
            let turned = piece.may_turn && fits(piece.width, piece.length);
            prop_assert!(!fits(piece.length, piece.width) && !turned);
        }
    }

    #[test]
    fn cuts_from_edge_to_edge_free_every_piece(job in any_job()) {
        let job = Job { cutting: Cutting::Straight, ..job };
        let mut search = Search::new(&job);
        search.advance(200);
        for sheet in &search.best().sheets {
            let order = sequence(&job, sheet).expect("a layout for the panel saw can be sawn");
            let freed = cutting::saw(&job, sheet, &order.cuts)?;
            let mut wanted: Vec<_> =
                sheet.placed.iter().map(|placed| [placed.x, placed.y, placed.length, placed.width]).collect();
            let mut offcuts: Vec<_> =
                order.offcuts.iter().map(|rest| [rest.x, rest.y, rest.length, rest.width]).collect();
            wanted.append(&mut offcuts);
            wanted.sort_unstable();
            prop_assert_eq!(freed, wanted, "the saw frees pieces and offcuts, and nothing else");
        }
    }
}

#[test]
fn every_wooden_part_is_on_the_sheets() {
    for demo in Demo::ALL {
        let design = demo.design();
        let list = parts(&design);
        let jobs = jobs(&design, &list);
        let area: f64 = jobs.iter().map(Job::area).sum();
        let wanted: f64 = list.iter().map(risewright::parts::Part::sheet_area).sum();
        assert!((area - wanted).abs() < 1e-9, "{area} against {wanted}");
    }
}

/// The hand-made row layout of both demos (independent hand calculation, unpublished) fits one sheet each, with some spare.
#[test]
fn the_demos_come_off_one_sheet() {
    for demo in Demo::ALL {
        let design = demo.design();
        for job in jobs(&design, &parts(&design)) {
            let mut search = Search::new(&job);
            while !search.is_least() && search.tried() < 20_000 {
                search.advance(500);
            }
            assert_eq!((search.best().bought(&job), search.best().left.len()), (1, 0), "{demo:?}");
            let waste = search.best().waste(&job);
            assert!(waste > 0.10 && waste < 0.30, "{demo:?}: {waste}");
        }
    }
}

/// One strip too wide for the sheet by a known amount: the adviser finds it to its own fineness.
#[test]
fn the_adviser_finds_what_is_missing() {
    let piece = |part, width| Piece {
        part,
        name: format!("Strip {part}"),
        length: Length::mm(1000.0),
        width: Length::mm(width),
        may_turn: false,
    };
    let job = Job {
        thickness: Length::mm(18.0),
        pieces: vec![piece(1, 250.0), piece(2, 250.0), piece(3, 100.0)],
        blanks: vec![Blank { length: Length::mm(1000.0), width: Length::mm(594.0), count: None }],
        kerf: Length::mm(3.0),
        trim: Length::ZERO,
        cutting: Cutting::Straight,
    };
    // Three strips and two kerfs take 606 mm of 594.
    let search = Search::new(&job);
    assert_eq!(search.best().bought(&job), 2);
    let mut adviser = Adviser::new(&job, 2);
    for _ in 0..1000 {
        if adviser.advance(5000) {
            break;
        }
    }
    assert!(adviser.is_done());
    let near = |by: Length| by >= Length::mm(12.0) && by <= Length::mm(14.0);
    assert!(
        adviser.hints().iter().any(|hint| matches!(hint, Hint::WiderSheet(by) if near(*by))),
        "{:?}",
        adviser.hints()
    );
    for part in 1..=3 {
        let narrower = adviser
            .hints()
            .iter()
            .any(|hint| matches!(hint, Hint::Narrower(of, _, by) if *of == part && near(*by)));
        assert!(narrower, "{part}: {:?}", adviser.hints());
    }
    assert!(
        !adviser.hints().iter().any(|hint| matches!(hint, Hint::LongerSheet(_))),
        "length is not what is missing"
    );
}

#[test]
fn bars_hold_their_cuts() {
    for (demo, system) in
        Demo::ALL.into_iter().flat_map(|demo| [(demo, System::Metric), (demo, System::Inch)])
    {
        let design = demo.design();
        let list = parts(&design);
        let kerf = design.shop.kerf;
        let bars = bars(&list, kerf, system);
        for bar in &bars {
            let cuts: Length = bar.cuts.iter().map(|(_, length)| *length).sum();
            let kerfs = kerf * (bar.cuts.len() as i64 - 1);
            assert!(cuts + kerfs <= bar.length, "{bar:?}");
        }
        let barred = [
            Form::FlatBar,
            Form::LightBar,
            Form::RoundBar,
            Form::SquareTube,
            Form::Batten,
            Form::BronzeTube,
            Form::ThreadedBar,
        ];
        let wanted: u32 = list.iter().filter(|part| barred.contains(&part.form)).map(|part| part.count).sum();
        assert_eq!(bars.iter().map(|bar| bar.cuts.len()).sum::<usize>(), wanted as usize);
    }
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    /// Steps told to the sawyer are the cuts of the sequence, every one once, and finish every piece once, with the fence where they say.
    #[test]
    fn passes_are_the_cuts(job in any_job()) {
        let job = Job { cutting: Cutting::Straight, ..job };
        let mut search = Search::new(&job);
        search.advance(100);
        for sheet in &search.best().sheets {
            let order = sequence(&job, sheet).expect("a layout for the panel saw can be sawn");
            let steps = passes(&job, sheet, &order);
            prop_assert_eq!(steps.iter().map(Pass::count).sum::<usize>(), order.cuts.len());
            let mut freed: Vec<usize> = steps.iter().flat_map(|pass| pass.freed.iter().copied()).collect();
            let mut wanted: Vec<usize> = sheet.placed.iter().map(|placed| placed.piece).collect();
            // A piece as large as the trimmed sheet needs no cut.
            let room = job.room(job.blanks[sheet.blank]);
            if let [only] = sheet.placed.as_slice() && [only.length, only.width] == room {
                wanted.clear();
            }
            freed.sort_unstable();
            wanted.sort_unstable();
            prop_assert_eq!(freed, wanted);
            for pass in &steps {
                for cut in &pass.firsts {
                    let start = if cut.across { cut.from.x } else { cut.from.y };
                    prop_assert_eq!(cut.at - start, pass.fence);
                    prop_assert_eq!(cut.across, pass.firsts[0].across);
                }
            }
        }
    }

    /// Setting strips in order never makes more cuts than there are sides to cut: four a piece at most.
    #[test]
    fn no_piece_takes_more_than_four_cuts(job in any_job()) {
        let job = Job { cutting: Cutting::Straight, ..job };
        let search = Search::new(&job);
        for sheet in &search.best().sheets {
            let cuts = sequence(&job, sheet).expect("a layout for the panel saw can be sawn").cuts.len();
            prop_assert!(cuts <= 4 * sheet.placed.len(), "{} cuts for {}", cuts, sheet.placed.len());
        }
    }
}

/// The finding counts each thickness by itself, and no fewer sheets than a layout of them, nor more.
#[test]
fn the_finding_counts_sheets_of_each_thickness() {
    let mut design = Demo::PaperLift.design();
    design.arms.board_thickness = Length::mm(9.0);
    design.frames.deck_thickness = Length::mm(12.0);
    let told = |design: &Design| {
        let report = analyse(design).unwrap();
        let finding =
            report.findings.iter().find(|found| found.phrase.opening().starts_with("Sheet")).unwrap();
        (finding.grade, finding.ratio, finding.phrase.text(System::Metric).replace('\u{a0}', " "))
    };
    let (grade, ratio, text) = told(&design);
    assert_eq!(grade, Grade::Fine, "{text}");
    assert!(text.ends_with("By area they need one sheet of 18 mm, one of 12 mm and one of 9 mm."), "{text}");
    let jobs = jobs(&design, &parts(&design));
    let whole = design.shop.sheet_length.to_m() * design.shop.sheet_width.to_m();
    let fullest = jobs.iter().map(Job::area).fold(0.0, f64::max) / whole;
    assert!((ratio - fullest).abs() < 1e-9, "{ratio} {fullest}");
    assert_eq!(jobs.len(), 3);
    for job in &jobs {
        let mut search = Search::new(job);
        search.advance(2_000);
        assert_eq!(search.best().bought(job), 1, "{:?}", job.thickness);
    }
    // A smaller sheet: of the thickest two are needed, of the others still one each.
    design.shop.sheet_width = Length::mm(760.0);
    let (grade, _, text) = told(&design);
    assert!(
        grade == Grade::Over && text.ends_with("two sheets of 18 mm, one of 12 mm and one of 9 mm."),
        "{text}"
    );
}
