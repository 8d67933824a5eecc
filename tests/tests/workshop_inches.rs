//! What a builder with inch tools is told: sixty-fourths for rule, fence and bits, thousandths where a caliper is set, and bars as they are sold.
//!
//! One sixty-fourth of an inch is 0.396875 mm (international yard and pound agreement, 1959).
#![allow(clippy::unwrap_used, clippy::expect_used, reason = "a test stops at the first surprise")]

use std::rc::Rc;

use proptest::prelude::*;
use risewright::design::{Demo, Design};
use risewright::pages::{Reader, page};
use risewright::quantity::figures::{Fit, bit, drilled, laid, marked, pinned, ruled, slack, threads, within};
use risewright::quantity::{Length, System};
use risewright::report::analyse;
use risewright::share::address::View;
use risewright::workshop::sheets::bars;

use System::{Inch, Metric};

const SIXTY_FOURTH: f64 = 25.4 / 64.0;

fn mm(mm: f64) -> Length {
    Length::mm(mm)
}

/// The value of a number as it is printed: whole, decimal, fraction or mixed, behind a mark for rounding.
fn value(number: &str) -> f64 {
    let words = number.trim_start_matches('≈').split(' ');
    words
        .map(|word| match word.split_once('/') {
            Some((over, under)) => over.parse::<f64>().unwrap() / under.parse::<f64>().unwrap(),
            None => word.parse().unwrap(),
        })
        .sum()
}

/// By hand: 15.417 in is 15 26.7/64, 18.542 in is 18 34.7/64, 6.85 mm is 17.26/64, 4.45 mm is 11.2/64, 1.5 mm is 3.8/64, 1 mm is 2.5/64.
#[test]
fn inches_are_those_of_rules_and_bits() {
    let number = |figure: risewright::quantity::figures::Figure| figure.number;
    assert_eq!(number(marked(mm(15.417 * 25.4), Inch)), "≈15 27/64");
    assert_eq!(
        number(marked(Length::inch(18.0 + 35.0 / 64.0), Inch)),
        "18 35/64",
        "no mark where it is exact"
    );
    assert_eq!(number(marked(mm(15.417 * 25.4), Metric)), "391.6");
    assert_eq!(number(marked(Length::inch(0.095), Inch)), "0.095", "stock by gauge");
    assert_eq!(number(pinned(mm(15.417 * 25.4), Inch)), "15.417", "a pivot's place keeps its thousandths");
    assert_eq!(number(ruled(0.681, Inch)), "≈26 13/16");
    assert_eq!(number(ruled(0.681_4, Metric)), "681");
    assert_eq!(number(laid(mm(461.25), Metric)), "461.25");
    assert_eq!(number(slack(1.5e-3, Inch)), "≈1/16");
    assert_eq!(number(within(1e-3, Inch)), "1/32", "a limit is rounded down");
    assert_eq!([number(within(1e-3, Metric)), number(slack(1.5e-3, Metric))], ["1.0", "1.5"]);
    assert_eq!(number(bit(mm(6.85), Fit::Free, Inch)), "9/32");
    assert_eq!(number(bit(mm(4.45), Fit::Thread, Inch)), "11/64");
    assert_eq!(number(bit(Length::inch(0.625), Fit::Close, Inch)), "5/8");
    assert_eq!(bit(mm(22.0), Fit::Close, Inch).to_string(), "22\u{A0}mm", "no bit in inches is as wide");
    assert_eq!(number(bit(mm(6.85), Fit::Free, Metric)), "6.9");
    assert_eq!([number(drilled(0.5e-3, Inch)), number(drilled(0.5e-3, Metric))], ["0.020", "0.5"]);
    // Six threads to the inch, and two starts at ten.
    assert_eq!(number(threads(Length::inch(1.0 / 6.0), Inch).unwrap()), "1/6");
    assert_eq!(number(threads(Length::inch(2.0 / 11.0), Inch).unwrap()), "2/11");
    assert_eq!([threads(mm(4.0), Inch), threads(Length::inch(1.0 / 6.0), Metric)], [None, None]);
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    /// What is marked out is half a sixty-fourth off at most, and says so; a bit clears by less than a sixty-fourth.
    #[test]
    fn nothing_is_further_off_than_its_rule_says(steps in 1_i64..4_000_000) {
        let length = Length::from_steps(steps);
        let off = |number: &str| value(number) * 25.4 - length.to_mm();
        let rule = marked(length, Inch).number;
        prop_assert!(off(&rule).abs() <= SIXTY_FOURTH / 2.0 + 1e-9, "{}", rule);
        let exact = off(&rule).abs() < 1e-9;
        prop_assert!(exact || rule.starts_with('≈') || rule.starts_with("0."), "{}", rule);
        prop_assert!(off(&pinned(length, Inch).number).abs() <= 0.0128);
        let clears = off(&bit(length, Fit::Free, Inch).number);
        prop_assert!((-1e-9..SIXTY_FOURTH).contains(&clears), "{}", clears);
        let limit = off(&within(length.to_m(), Inch).number);
        prop_assert!(limit <= 1e-9 || length.to_mm() < SIXTY_FOURTH, "{}", limit);
    }
}

fn words(view: View, design: &Design) -> String {
    let report = analyse(design).unwrap();
    let mut page = page(view, &Rc::new(report)).unwrap();
    while page.advance() {}
    let reader = Reader { system: Inch, address: "https://example.org/".into(), date: "2026-01-31".into() };
    page.document(&reader).html().replace('\u{A0}', " ")
}

/// Every fence setting and every bit of the inch demo can be set: none of them has a decimal point.
#[test]
fn the_inch_demo_can_be_sawn_and_drilled() {
    let design = Demo::PottingBench.design();
    let sheets = words(View::Sheets, &design);
    let fences: Vec<&str> = sheets.split("fence at ").skip(1).collect();
    assert!(fences.len() > 10);
    for fence in fences {
        let setting = fence.split([':', ',']).next().unwrap();
        assert!(!setting.contains('.'), "{setting}");
    }
    let drilling = words(View::Drilling, &design);
    for kind in [" brad-point,", " brad-point<", " Forstner<", " twist,", " twist<"] {
        assert!(drilling.contains(kind), "{kind}");
        for (at, _) in drilling.match_indices(kind) {
            let bit = drilling[..at].rsplit('>').next().unwrap();
            assert!(!bit.contains('.') && value(bit) > 0.0, "{bit}");
        }
    }
    assert!(drilling.contains(">9/32 brad-point, sunk to 35/64<"));
    let steps = words(View::Steps, &design);
    for told in ["the same within 1/32 in.", "Slack under the keepers ≈1/16 in all along."] {
        assert!(steps.contains(told), "{told}");
    }
    let hardware = words(View::Hardware, &design);
    assert!(hardware.contains("3/4 outside, 1/6 lead") && hardware.contains("Threaded bar 3/4, lead 1/6"));
}

/// Lengths over the counter, common practice, no source: whole inches to who measures so, and metres to who does not.
#[test]
fn bars_are_bought_in_the_lengths_they_are_sold_in() {
    for demo in Demo::ALL {
        let design = demo.design();
        let parts = risewright::parts::parts(&design);
        let step = |system, of: Length| {
            let list = bars(&parts, design.shop.kerf, system);
            assert!(
                list.len() > 8 && list.iter().all(|bar| bar.length.steps() % of.steps() == 0),
                "{list:?}"
            );
        };
        step(Inch, Length::inch(1.0));
        step(Metric, Length::mm(100.0));
    }
}
